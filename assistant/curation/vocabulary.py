"""The declared vocabulary of a base: classes, properties and value lists (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from assistant.curation.view import View, many, one
from assistant.model.schema import KINDS

RECORD_PREFIXES = frozenset(k.prefix for k in KINDS if k.prefix != "tf") | {"agent", "change"}
"""Prefixes of what is told, not of the words that it is told in."""


@dataclass(frozen=True, slots=True)
class Vocabulary:
    """Declared terms; ``lists`` gives the values of a property, as ids and as literal notations."""

    classes: frozenset[str]
    properties: frozenset[str]
    above: dict[str, frozenset[str]]
    lists: dict[str, frozenset[str]]

    def is_a(self, types: Iterable[str], wanted: str) -> bool:
        """True when one of the types is the wanted class or stands below it."""
        return any(t == wanted or wanted in self.above.get(t, ()) for t in types)


def read_vocabulary(view: View, keys: Iterable[str]) -> Vocabulary:
    """The vocabulary among the given ids (all ids of a base may be given: records are passed over)."""
    wanted = [k for k in keys if k.partition(":")[0] not in RECORD_PREFIXES]
    view.fetch(wanted)
    classes: set[str] = set()
    properties: set[str] = set()
    parents: dict[str, set[str]] = {}
    values: dict[str, set[str]] = {}
    scheme_of: dict[str, list[str]] = {}
    for key in wanted:
        node = view.node(key)
        if node is None:
            continue
        types = node.types()
        if "rdfs:Class" in types:
            classes.add(key)
            parents.setdefault(key, set()).update(many(node, "rdfs:subClassOf"))
        if "rdf:Property" in types:
            properties.add(key)
            scheme_of[key] = many(node, "tf:valuesFrom")
        for scheme in many(node, "skos:inScheme"):
            values.setdefault(scheme, set()).update({key, one(node, "skos:notation")} - {""})
    lists = {p: frozenset().union(*(values.get(s, set()) for s in schemes))
             for p, schemes in scheme_of.items() if schemes}
    return Vocabulary(frozenset(classes), frozenset(properties), {k: _closure(k, parents) for k in parents}, lists)


def _closure(key: str, parents: dict[str, set[str]]) -> frozenset[str]:
    seen: set[str] = set()
    todo = list(parents.get(key, ()))
    while todo:
        current = todo.pop()
        if current not in seen:
            seen.add(current)
            todo += parents.get(current, ())
    return frozenset(seen)
