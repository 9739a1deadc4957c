"""Agreement among taxa: parents, ranks, crosses, accepted names (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.curation.view import View, many, one
from assistant.graph.values import Node

RANKS = ("family", "genus", "species", "subspecies")
"""From wide to narrow."""
NAMED_RANKS = ("species", "subspecies")
"""Ranks whose taxa have an accepted name."""

NAMED_BY = {"dwc:scientificName": "scientific name", "skos:prefLabel": "label"}
"""Properties by which a taxon is called, of which no two in use share one."""

Fault = tuple[str, str, str, str, str]
"""Severity, rule, found, expected, how to mend."""


def taxonomy_findings(node: Node, view: View) -> Iterator[Fault]:
    """What is wrong with a taxon or a name among the others."""
    if "dwc:Taxon" in node.types():
        yield from _parents(node, view)
        yield from _crosses(node, view)
        yield from _accepted(node, view)
    elif "tf:Name" in node.types():
        yield from _one_accepted(node, view)


def _parents(node: Node, view: View) -> Iterator[Fault]:
    rank, seen = one(node, "dwc:taxonRank"), [node.id]
    parent = one(node, "tf:parent")
    if rank in RANKS[1:] and not parent and one(node, "owl:deprecated") != "true":
        yield ("error", "parent", f"a {rank} without tf:parent", "the taxon above it", "add tf:parent")
    while parent:
        if parent in seen:
            yield ("error", "cyclic parents", " > ".join([*seen, parent]), "a line that ends in a family",
                   "mend tf:parent")
            return
        seen.append(parent)
        above = view.node(parent)
        if above is None:
            return
        higher = one(above, "dwc:taxonRank")
        if len(seen) == 2 and rank in RANKS and higher in RANKS and RANKS.index(higher) >= RANKS.index(rank):
            yield ("error", "parent", f"a {rank} under a {higher}", "a parent of a higher rank", "mend tf:parent")
        parent = one(above, "tf:parent")


def _crosses(node: Node, view: View) -> Iterator[Fault]:
    parents = many(node, "tf:hybridParent")
    is_cross = one(node, "dwc:taxonRank") == "hybrid"
    if is_cross and len(parents) != 2:
        yield ("error", "cross", f"{len(parents)} parents", "two parents", "set tf:hybridParent twice")
    if not is_cross and parents:
        yield ("error", "cross", "tf:hybridParent on a taxon that is no cross", "the rank hybrid", "mend the rank")
    for key in parents:
        parent = view.node(key)
        if parent is not None and one(parent, "dwc:taxonRank") not in ("species", "subspecies", "hybrid"):
            yield ("error", "cross", f"the parent {key}, a {one(parent, 'dwc:taxonRank')}", "a species", "mend it")


def _accepted(node: Node, view: View) -> Iterator[Fault]:
    if one(node, "dwc:taxonRank") not in NAMED_RANKS or one(node, "owl:deprecated") == "true":
        return
    if not accepted(node.id, view):
        yield ("error", "names without an accepted one", f"{len(_names(node.id, view))} names, none of kind accepted",
               "one accepted name", "add one (tellfin add name kind=accepted …)")


def accepted(taxon: str, view: View) -> list[Node]:
    """The accepted names of a taxon, one a language."""
    return [n for n in _names(taxon, view) if one(n, "tf:nameKind") == "tf:accepted"]


def same_names(old: Node | None, node: Node, view: View) -> Iterator[Fault]:
    """Names that a change gives a taxon and that another one in use has already."""
    if "dwc:Taxon" not in node.types() or one(node, "owl:deprecated") == "true":
        return
    was_in_use = old is not None and one(old, "owl:deprecated") != "true"
    for predicate, what in NAMED_BY.items():
        text = one(node, predicate)
        if not text or (was_in_use and old is not None and one(old, predicate).lower() == text.lower()):
            continue
        others = [view.node(k) for k in view.with_text(predicate, text, "taxon") if k != node.id]
        yield from (_shared(what, text, n.id) for n in others if n is not None and one(n, "owl:deprecated") != "true")


def shared_names(nodes: Iterable[Node]) -> Iterator[tuple[Node, Fault]]:
    """Names that several taxa of a base in use have, told of all but the first."""
    holders: dict[tuple[str, str], Node] = {}
    for node in nodes:
        if "dwc:Taxon" not in node.types() or one(node, "owl:deprecated") == "true":
            continue
        for predicate, what in NAMED_BY.items():
            text = one(node, predicate)
            first = holders.setdefault((predicate, text.lower()), node)
            if text and first is not node:
                yield node, _shared(what, text, first.id)


def _shared(what: str, text: str, other: str) -> Fault:
    return ("error", "name of another taxon", f"the {what} {text!r}, which is that of {other}", "a name of its own",
            "give another name; two taxa that are one are lumped (tellfin lump)")


def _one_accepted(node: Node, view: View) -> Iterator[Fault]:
    if one(node, "tf:nameKind") != "tf:accepted":
        return
    language = one(node, "dcterms:language")
    for other in _names(one(node, "tf:nameOf"), view):
        if other.id == node.id or one(other, "tf:nameKind") != "tf:accepted":
            continue
        if one(other, "dcterms:language") == language:
            yield ("error", "two accepted names", f"accepted, as is {other.id}, both in {language}",
                   "one accepted name a language", "make one of them vernacular")


def _names(taxon: str, view: View) -> list[Node]:
    keys = view.ids("name", taxon.partition(":")[2])
    view.fetch(keys)
    return [n for n in map(view.node, keys) if n is not None]
