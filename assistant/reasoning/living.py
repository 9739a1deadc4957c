"""Where a fish lives by what the base lists: the rows that count for it, the most telling first (layer 3).

Whoever asks whether a fish lives somewhere (a list, a key, a sheet, a name settled by its place) asks here.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Range
from assistant.reasoning.place_prior import expand_places, narrowest, waters_of

MEMORY = "memory"
LIVING = ("native", "reintroduced", "introduced", "stocked")
"""Statuses of a fish that may be met in a place, the most telling first."""
ORDER = (*LIVING, "vagrant", "uncertain", "extirpated", "absent")
"""The statuses, the most telling first."""


def rows(kb: KnowledgeBase, taxon: str) -> tuple[Range, ...]:
    """The ranges of a species, those of its own subspecies and of its species included."""
    keys = [k for k in kb.lineage(taxon) if kb.taxon(k).is_species]
    return tuple(r for k in dict.fromkeys([*keys, *kb.children.get(taxon, ())]) for r in kb.ranges(k))


def telling(found: list[Range]) -> list[Range]:
    """Preferred and whole-place rows first, then read ones, then by status."""
    return sorted(
        found,
        key=lambda r: (
            not r.preferred,
            bool(r.area) and r.status in ("absent", "extirpated"),
            bool(r.area),
            r.basis == MEMORY,
            ORDER.index(r.status) if r.status in ORDER else 9,
            r.id,
        ),
    )


def remembered(found: Iterable[Range]) -> tuple[int, int]:
    """Of how many places some rows speak from memory alone, and of how many in all."""
    bases: dict[str, set[str]] = {}
    for row in found:
        bases.setdefault(row.place, set()).add(row.basis)
    return sum(b == {MEMORY} for b in bases.values()), len(bases)


def status_in(kb: KnowledgeBase, taxon: str, places: Iterable[str]) -> Range | None:
    """The row of the most telling status of a fish in some places; None when nothing is listed.

    What is said of a water itself counts before what is said of the states and provinces on it.
    """
    wanted: Collection[str] = frozenset(places)
    found = rows(kb, taxon)
    waters = waters_of(kb, wanted)
    wanted = waters if any(r.place in waters for r in found) else wanted
    best: dict[str, Range] = {}
    for row in telling([r for r in found if r.place in wanted]):
        best.setdefault(row.place, row)
    return min(best.values(), key=lambda r: ORDER.index(r.status) if r.status in ORDER else len(ORDER), default=None)


def living_in(kb: KnowledgeBase, taxa: Sequence[str], places: Sequence[str]) -> tuple[str, ...]:
    """The fishes that live in some places by what is listed; all of them where no place is told."""
    if not (wanted := expand_places(kb, narrowest(kb, places))):
        return tuple(taxa)
    found = ((t, status_in(kb, t, wanted)) for t in taxa)
    return tuple(t for t, row in found if row is not None and row.status in LIVING)
