"""What a base holds, counted by group of fishes, and how much of it was read (layer 4)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from typing import NamedTuple

from assistant.curation.view import many, one
from assistant.graph.values import Node

BASES = ("read", "memory", "common-practice")


class Group(NamedTuple):
    """One family (or all of them): kinds of fishes, crosses, and its statements and ranges by basis."""

    name: str
    species: int
    crosses: int
    statements: Mapping[str, int]
    ranges: Mapping[str, int]


class Census(NamedTuple):
    """The groups by name, their sum, and how many names and look-alike pairs the base holds."""

    groups: tuple[Group, ...]
    total: Group
    names: int
    look_alikes: int


def census(nodes: Mapping[str, Node]) -> Census:
    """Count what stands in a base; what was retracted does not count."""
    rows: dict[str, dict[str, Counter[str]]] = {}
    for key, node in nodes.items():
        what = _counted(key, node)
        if what:
            taxon = (one(node, "tf:taxon") or key).partition(":")[2]
            parts = rows.setdefault(_family(nodes, taxon), {})
            parts.setdefault(what, Counter())[one(node, "tf:basis").partition(":")[2]] += 1
    groups = tuple(_group(name, rows[name]) for name in sorted(rows))
    total = {what: sum((r.get(what, Counter()) for r in rows.values()), Counter()) for what in _KINDS}
    return Census(groups, _group("all", total), _number(nodes, "name:"), _number(nodes, "alike:"))


_KINDS = ("species", "hybrid", "st", "range")


def _counted(key: str, node: Node) -> str:
    """The kind of a record that is counted, or empty."""
    prefix = key.partition(":")[0]
    if "prov:invalidatedAtTime" in node.props or one(node, "owl:deprecated") == "true":
        return ""
    if prefix in ("st", "range"):
        return prefix
    return rank if prefix == "taxon" and (rank := one(node, "dwc:taxonRank")) in _KINDS else ""


def _family(nodes: Mapping[str, Node], taxon: str) -> str:
    """The scientific name of the family of a taxon, by its parents (the first one of a cross)."""
    seen: set[str] = set()
    while (node := nodes.get(f"taxon:{taxon}")) is not None and taxon not in seen:
        seen.add(taxon)
        if one(node, "dwc:taxonRank") == "family":
            return one(node, "dwc:scientificName")
        above = many(node, "tf:parent") or many(node, "tf:hybridParent")
        taxon = above[0].partition(":")[2] if above else ""
    return "no family"


def _group(name: str, parts: Mapping[str, Counter[str]]) -> Group:
    species, crosses, told, where = (parts.get(kind, Counter()) for kind in _KINDS)
    return Group(name, species.total(), crosses.total(), dict(told), dict(where))


def _number(nodes: Mapping[str, Node], prefix: str) -> int:
    return sum(1 for key in nodes if key.startswith(prefix))


def table(found: Census) -> list[list[str]]:
    """The census as rows of text, the head first: counts, each with its shares (see ``shares``)."""
    head = ["group", "species", "crosses", "traits", "shares", "ranges", "shares"]
    return [head, *(_row(g) for g in (*found.groups, found.total))]


def _row(group: Group) -> list[str]:
    told, where = sum(group.statements.values()), sum(group.ranges.values())
    return [group.name, str(group.species), str(group.crosses), f"{told:,}", shares(group.statements),
            f"{where:,}", shares(group.ranges)]


def shares(bases: Mapping[str, int]) -> str:
    """Per cent read, from memory and of common practice ("64/34/2"); empty where there is nothing."""
    total = sum(bases.values())
    return "/".join(f"{100 * bases.get(b, 0) / total:.0f}" for b in BASES) if total else ""
