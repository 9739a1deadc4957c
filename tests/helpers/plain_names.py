"""Plain resolvers for catch tests: whole phrases only, from the names, groups and places of the shipped base."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from assistant.graph.locate import shipped_ontology
from assistant.model.build import Rows, add_told, finish, read_told
from assistant.model.knowledge import KnowledgeBase, MemoryStore
from assistant.text import key, singular


def _words(text: str) -> str:
    return " ".join(singular(w) for w in key(text).split())


@lru_cache(maxsize=1)
def _base() -> KnowledgeBase:
    rows = Rows()
    ontology = shipped_ontology()
    for pattern in ("taxa/**/*.ttl", "hybrids/*.ttl", "places/*.ttl", "vocabulary/groups.ttl"):
        for path in sorted(ontology.glob(pattern)):
            add_told(rows, read_told(path.read_bytes(), path))
    finish(rows, "test")
    return KnowledgeBase(MemoryStore(rows.shared, rows.grouped, rows.version))


@lru_cache(maxsize=1)
def resolvers() -> tuple[Callable[[str], tuple[str, ...]], Callable[[str], tuple[str, ...]]]:
    """Which taxa and which demonstration places a phrase means; nothing for anything else."""
    kb = _base()
    accepted: dict[str, set[str]] = {}
    loose: dict[str, set[str]] = {}
    for taxon in kb.all("taxon"):
        accepted.setdefault(_words(taxon.label), set()).add(taxon.id)
        accepted.setdefault(_words(taxon.scientific), set()).add(taxon.id)
        for name in kb.names(taxon.id):
            table = accepted if name.kind == "accepted" else loose
            table.setdefault(_words(name.text), set()).add(taxon.id)
    for group in kb.all("group"):
        for word in (group.label, group.plural, *group.words):
            loose.setdefault(_words(word), set()).update(group.members)
    places: dict[str, set[str]] = {}
    for place in kb.all("place"):
        if place.kind.startswith("demo"):
            for word in (place.label, place.code, *place.nicknames, *place.hidden):
                places.setdefault(key(word), set()).add(place.id)

    def taxa_of(text: str) -> tuple[str, ...]:
        return tuple(sorted(accepted.get(_words(text)) or loose.get(_words(text)) or ()))

    def places_of(text: str) -> tuple[str, ...]:
        return tuple(sorted(places.get(key(text), ()))) if key(text) else ()
    return taxa_of, places_of
