"""Renaming, splitting and lumping taxa: identifiers stay, old names lead on, records wait for a person (layer 4).

A split leaves every record on the wide concept and lists them as undecided in the change that made it; a person then
gives each to one of the parts, or to several. A lump moves names and lists the other records the same way.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

from assistant.curation.edit import OWN_FIELDS, existing, put_new, retract_record
from assistant.curation.history import Author
from assistant.curation.lookup import Lookup
from assistant.curation.provenance import basis_of
from assistant.curation.values import name_fault
from assistant.curation.view import Draft, View, many, one
from assistant.errors import DataError, UsageError
from assistant.graph.values import Literal, Node, Value
from assistant.text import slug

Extra = dict[str, list[Value]]
_SCIENTIFIC = re.compile(r"[A-Z][a-z]+(?: [a-z]+(?:-[a-z]+)?){0,2}")
MOVED = ("st", "name", "range", "alike")
"""Prefixes of records that wait for a decision."""
LEADING = ("accepted", "former")
"""Kinds of names that lead to their taxon wherever and whatever else is called so."""


@dataclass(frozen=True, slots=True)
class Part:
    """A taxon that comes out of a split: scientific name, English label, and an id where it exists already."""

    scientific: str
    label: str
    key: str = ""


def rename(draft: Draft, key: str, scientific: str, label: str, author: Author, on: date) -> None:
    """Give a taxon a new scientific name, or a new English one, or both; the old ones stay as names that lead to it."""
    _needs_scientific(scientific)
    label = _needs_name(label)
    old = existing(draft, key)
    if not (scientific or label):
        raise UsageError("a rename needs a new name", "give --scientific or --label")
    _needs_paper(author)
    taxon = draft.edited(key)
    if scientific and scientific != one(old, "dwc:scientificName"):
        _add_name(draft, key, one(old, "dwc:scientificName"), "la", "synonym", author, on)
        taxon.props["dwc:scientificName"] = [Literal(scientific)]
        taxon.props["dwc:nameAccordingTo"] = [Literal(_paper(draft, author))]
    if label and label != one(old, "skos:prefLabel"):
        _demote_accepted(draft, key)
        _add_name(draft, key, one(old, "skos:prefLabel"), "en", "former", author, on)
        taxon.props["skos:prefLabel"] = [Literal(label, "rdf:langString", "en")]
        _add_name(draft, key, label, "en", "accepted", author, on)


def split(draft: Draft, wide: str, parts: Sequence[Part], author: Author, on: date) -> Extra:
    """Divide a taxon: new taxa beside it, the wide concept retired, its records listed as undecided."""
    _needs_paper(author)
    old = existing(draft, wide)
    if one(old, "owl:deprecated") == "true":
        raise DataError(f"{wide} was retired already", f"it led to {', '.join(many(old, 'dcterms:isReplacedBy'))}")
    if len(parts) < 2:
        raise UsageError("a split needs at least two parts", "give --into 'Scientific name=English name' twice")
    keys = [_ensure_part(draft, old, part, author, on) for part in parts]
    if len(set(keys)) != len(keys) or wide in keys:
        raise UsageError("the parts of a split must differ from one another and from the whole", "name each once")
    _retire(draft, wide, keys)
    shared = {one(n, "skosxl:literalForm"): n for n in _names(draft, wide) if one(n, "tf:nameKind") in (
        "tf:accepted", "tf:former", "tf:vernacular", "tf:ambiguous") and one(n, "dcterms:language") == "en"}
    for key in keys:
        own = {one(n, "skosxl:literalForm").lower() for n in _names(draft, key)}
        for text in sorted(shared):
            if text.lower() not in own:
                _add_name(draft, key, text, "en", "ambiguous", author, on)
    return {"tf:undecided": list(_records(draft, wide)), "tf:candidate": list(keys)}


def lump(draft: Draft, kept: str, others: Sequence[str], author: Author, on: date) -> Extra:
    """Join taxa under one: the others are retired, their names become names of the kept one, records wait."""
    _needs_paper(author)
    existing(draft, kept)
    undecided: list[Value] = []
    for other in others:
        old = existing(draft, other)
        if other == kept or one(old, "owl:deprecated") == "true":
            raise UsageError(f"{other} cannot be lumped into {kept}", "it is the same, or was retired already")
        _add_name(draft, kept, one(old, "dwc:scientificName"), "la", "synonym", author, on)
        for name in _names(draft, other):
            kind = one(name, "tf:nameKind").removeprefix("tf:")
            _add_name(draft, kept, one(name, "skosxl:literalForm"), one(name, "dcterms:language"),
                      "former" if kind == "accepted" else kind, author, on)
        undecided += [k for k in _records(draft, other) if not k.startswith("name:")]
        _retire(draft, other, [kept])
    return {"tf:undecided": undecided, "tf:candidate": [kept]}


def decide(draft: Draft, keys: Sequence[str], to: Sequence[str], changes: Iterable[Node], author: Author,
           on: date) -> Extra:
    """Give undecided records to one or more taxa; with none they are settled as staying where they are."""
    waiting = {item.record for item in queue(draft, changes)}
    for key in keys:
        if key not in waiting:
            raise DataError(f"{key} is not waiting for a decision", "tellfin split --queue lists those that are")
        node = existing(draft, key)
        for taxon in to:
            target = "tf:nameOf" if key.startswith("name:") else "tf:taxon"
            props = {p: list(v) for p, v in node.props.items() if p not in OWN_FIELDS}
            props[target] = [existing(draft, taxon).id]
            put_new(draft, Node("", props), author.key, on)
        if to:
            retract_record(draft, key, f"given to {', '.join(to)}: {author.why}", on)
    return {"tf:decided": list(keys)}


@dataclass(frozen=True, slots=True)
class Waiting:
    """A record that waits for a decision, and the taxa it may belong to."""

    record: str
    candidates: tuple[str, ...]
    change: str


def queue(view: View, changes: Iterable[Node]) -> list[Waiting]:
    """The records that still wait, in the order of the changes that left them so."""
    nodes = list(changes)
    undone = {u for c in nodes for u in many(c, "tf:undoes")}
    done = {k for c in nodes if c.id not in undone for k in many(c, "tf:decided")}
    out: list[Waiting] = []
    for change in nodes:
        if change.id in undone:
            continue
        for key in many(change, "tf:undecided"):
            node = view.node(key)
            if node is not None and key not in done and not one(node, "prov:invalidatedAtTime"):
                out.append(Waiting(key, tuple(many(change, "tf:candidate")), change.id))
    return out


def parse_part(text: str, lookup: Lookup) -> Part:
    """A part as written: "Scientific name=English name", or the id of a taxon that exists."""
    if text.startswith("taxon:"):
        return Part("", "", lookup.taxon(text))
    scientific, mark, label = (t.strip() for t in text.partition("="))
    if not mark or not label:
        raise UsageError(f"{text!r} is no part of a split", "write 'Scientific name=English name' or taxon:ID")
    _needs_scientific(scientific)
    return Part(scientific, _needs_name(label))


def _ensure_part(draft: Draft, wide: Node, part: Part, author: Author, on: date) -> str:
    if part.key:
        return existing(draft, part.key).id
    key = f"taxon:{slug(part.scientific)}"
    if key == wide.id:
        key += "-narrow"
    if key in draft:
        raise UsageError(f"{key} exists already", f"give {key} as the part")
    props: dict[str, list[Value]] = {
        "rdf:type": ["dwc:Taxon"], "dwc:scientificName": [Literal(part.scientific)],
        "skos:prefLabel": [Literal(part.label, "rdf:langString", "en")],
        "dwc:taxonRank": list(wide.props["dwc:taxonRank"]),
        "dcterms:source": list(author.sources), "tf:basis": [basis_of(author.sources, draft)],
        "dwc:nameAccordingTo": [Literal(_paper(draft, author))]}
    for predicate in ("tf:parent", "tf:bodyPlan"):
        if predicate in wide.props:
            props[predicate] = list(wide.props[predicate])
    put_new(draft, Node(key, props), author.key, on)
    _add_name(draft, key, part.label, "en", "accepted", author, on)
    return key


def _retire(draft: Draft, key: str, successors: Sequence[str]) -> None:
    node = draft.edited(key)
    node.props["owl:deprecated"] = [Literal("true", "xsd:boolean")]
    node.props["dcterms:isReplacedBy"] = list(successors)


def _records(draft: Draft, key: str) -> list[str]:
    local = key.partition(":")[2]
    keys = [k for prefix in MOVED for k in draft.ids(prefix, local)]
    return [k for k in keys if (n := draft.node(k)) is not None and not one(n, "prov:invalidatedAtTime")]


def _names(draft: Draft, key: str) -> list[Node]:
    return [n for n in map(draft.node, draft.ids("name", key.partition(":")[2])) if n is not None]


def _add_name(draft: Draft, taxon: str, text: str, language: str, kind: str, author: Author, on: date) -> None:
    for node in _names(draft, taxon):
        if one(node, "skosxl:literalForm").lower() == text.lower():
            if kind in LEADING and one(node, "tf:nameKind") not in ("tf:accepted", f"tf:{kind}"):
                name = draft.edited(node.id)
                name.props["tf:nameKind"] = [f"tf:{kind}"]
                for where in ("dcterms:spatial", "tf:regionText"):
                    name.props.pop(where, None)
            return
    props: dict[str, list[Value]] = {
        "rdf:type": ["tf:Name"], "tf:nameOf": [taxon], "dcterms:language": [Literal(language)],
        "skosxl:literalForm": [Literal(text, "rdf:langString", language.lower())], "tf:nameKind": [f"tf:{kind}"],
        "dcterms:source": list(author.sources), "tf:basis": [basis_of(author.sources, draft)]}
    put_new(draft, Node("", props), author.key, on)


def _demote_accepted(draft: Draft, taxon: str) -> None:
    for node in _names(draft, taxon):
        if one(node, "tf:nameKind") == "tf:accepted" and one(node, "dcterms:language") == "en":
            draft.edited(node.id).props["tf:nameKind"] = ["tf:former"]


def _needs_paper(author: Author) -> None:
    if not author.sources:
        raise UsageError("a change of names needs the work that makes it", "give --from-source KEY")


def _needs_scientific(text: str) -> None:
    if text and not _SCIENTIFIC.fullmatch(text):
        raise UsageError(f"{text!r} is no scientific name", "such as 'Lepomis gibbosus', without author")


def _needs_name(text: str) -> str:
    """The text without blanks that a name does not need. UsageError where it can be no name."""
    if fault := name_fault(text):
        raise UsageError(f"{text!r} is no name: {fault}", "such as 'pumpkinseed'")
    return " ".join(text.split())


def _paper(view: View, author: Author) -> str:
    key = author.sources[0]
    node = view.node(key)
    if node is None:
        raise DataError(f"there is no source {key!r}", "add the source first")
    words = [one(node, "dcterms:creator"), one(node, "dcterms:issued")]
    return " ".join(w for w in words if w) or one(node, "dcterms:title")
