"""What to curate next: pairs that cannot be told apart, and the cells that would tell most of them (layer 4)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from itertools import combinations

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from assistant.reasoning.contrast import EASE, LOOKS, ContrastRow, contrast, contrast_row
from assistant.reasoning.disagreement import exclude, topic
from assistant.reasoning.living import LIVING

TOLD_APART = 0.5
"""Separation from which a pair counts as told apart on a live fish."""
MOST_PAIRS = 400


@dataclass(frozen=True, slots=True)
class Pair:
    """Two taxa that live together: in how many places, and the feature that separates them best on a live fish."""

    first: str
    second: str
    places: int
    best: ContrastRow | None

    @property
    def confusion(self) -> float:
        """How much of the difference an observer would miss, 0 to 1."""
        return 1.0 - (self.best.separation if self.best else 0.0)


@dataclass(frozen=True, slots=True)
class Cell:
    """A missing (taxon, character): the confusion that a value is expected to cut, and the pairs it would serve."""

    taxon: str
    character: str
    gain: float
    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Gaps:
    """All that is worth curating, most useful first in each list."""

    unseparated: tuple[Pair, ...]
    cells: tuple[Cell, ...]
    memory_only: tuple[Pair, ...]
    used_once: tuple[str, ...]
    conflicts: tuple[tuple[Statement, Statement], ...]
    expired: tuple[tuple[str, str], ...]


def find_gaps(kb: KnowledgeBase, today: date, fishes: tuple[str, ...] = ()) -> Gaps:
    """The gaps of a base, as of a day; with ``fishes`` only those of these fishes, nothing of sources and rules."""
    pairs = living_together(kb)
    if fishes:
        cells = (c for c in missing_cells(kb, pairs, limit=None) if c.taxon in fishes)
        told = (pair for pair in conflicts(kb) if pair[0].taxon in fishes)
        pairs = tuple(p for p in pairs if p.first in fishes or p.second in fishes)
        return Gaps(_mixed_up(pairs), tuple(cells), _by_memory(pairs), (), tuple(told), ())
    over = tuple((s.id, s.valid_through) for s in kb.all("rule-set")
                 if s.valid_through and s.valid_through < today.isoformat())
    return Gaps(
        _mixed_up(pairs), missing_cells(kb, pairs), _by_memory(pairs), sources_used_once(kb), tuple(conflicts(kb)),
        over)


def _mixed_up(pairs: tuple[Pair, ...]) -> tuple[Pair, ...]:
    return tuple(p for p in pairs if p.confusion > 1 - TOLD_APART)


def _by_memory(pairs: tuple[Pair, ...]) -> tuple[Pair, ...]:
    return tuple(p for p in pairs if p.best and _rests_on_memory(p.best))


def living_together(kb: KnowledgeBase) -> tuple[Pair, ...]:
    """Listed look-alikes and congeners that share a place, most confusing first (weighted by shared places)."""
    where = {t: frozenset(r.place for r in kb.ranges(t) if r.status in LIVING) for t in kb.species}
    listed = {tuple(sorted((t, x.other))) for t in kb.species for x in kb.look_alikes(t) if x.other in where}
    kin: dict[str, list[str]] = {}
    for taxon in kb.species:
        record = kb.taxon(taxon)
        if not record.is_hybrid and record.parent:
            kin.setdefault(record.parent, []).append(taxon)
    close = {pair for members in kin.values() for pair in combinations(sorted(members), 2)}
    shared = [(len(where[a] & where[b]) or (1 if (a, b) in listed else 0), a, b) for a, b in sorted(listed | close)]
    chosen = sorted((s for s in shared if s[0]), key=lambda s: (-s[0], s[1], s[2]))[:MOST_PAIRS]
    found = [Pair(a, b, n, _best(kb, a, b)) for n, a, b in chosen]
    return tuple(sorted(found, key=lambda p: (-p.confusion * p.places, p.first, p.second)))


def _best(kb: KnowledgeBase, first: str, second: str) -> ContrastRow | None:
    result = contrast(kb, (first, second), LOOKS["hand"])
    rows = (*result.separating, *result.shared)
    return max(rows, key=lambda r: (r.separation, r.character), default=None)


def missing_cells(kb: KnowledgeBase, pairs: tuple[Pair, ...], limit: int | None = 60) -> tuple[Cell, ...]:
    """Cells that one of a confusable pair has and the other lacks, by the confusion that a value should cut.

    The gain of a cell is summed over its pairs: confusion of the pair, times the places it shares, times how well
    the character separates where both values are known, times how easily it is seen.
    """
    power = _power(kb, pairs)
    gains: dict[tuple[str, str], float] = {}
    served: dict[tuple[str, str], list[tuple[str, str]]] = {}
    for pair in pairs:
        if pair.confusion <= 0.05:
            continue
        told = {t: {c for key in kb.lineage(t) for c in kb.told_of(key)} for t in (pair.first, pair.second)}
        for lacking, having in ((pair.first, pair.second), (pair.second, pair.first)):
            for character in sorted(told[having] - told[lacking]):
                if power.get(character):
                    cell = (lacking, character)
                    gains[cell] = gains.get(cell, 0.0) + pair.confusion * pair.places * power[character]
                    served.setdefault(cell, []).append((pair.first, pair.second))
    best = sorted(gains, key=lambda cell: (-gains[cell], cell))[:limit]
    return tuple(Cell(t, c, round(gains[(t, c)], 3), tuple(served[(t, c)])) for t, c in best)


def _power(kb: KnowledgeBase, pairs: tuple[Pair, ...]) -> Mapping[str, float]:
    """For each character that a live fish shows, its mean separation over the pairs where both values are known."""
    sums: dict[str, list[float]] = {}
    for pair in pairs:
        both = set(kb.told_of(pair.first)) & set(kb.told_of(pair.second))
        for key in both:
            character = kb.character(key)
            if character.look in LOOKS["hand"] and (row := contrast_row(kb, character, (pair.first, pair.second))):
                sums.setdefault(key, []).append(row.separation)
    return {k: sum(v) / len(v) * EASE.get(kb.character(k).look, 0.7) for k, v in sums.items()}


def _rests_on_memory(row: ContrastRow) -> bool:
    return any(told is not None and told.basis == "memory" for told in row.told)


def sources_used_once(kb: KnowledgeBase) -> tuple[str, ...]:
    """Sources on which a single record of the base rests."""
    uses: dict[str, int] = {}
    for kind in ("statement", "name", "range", "look-alike", "size"):
        for group in kb.ids(kind):
            for record in kb.group(kind, group):
                for source in record.source:
                    uses[source] = uses.get(source, 0) + 1
    return tuple(sorted(s for s, n in uses.items() if n == 1))


def conflicts(kb: KnowledgeBase) -> Iterator[tuple[Statement, Statement]]:
    """Statements of the same taxon, character and scope whose values exclude one another, none being preferred."""
    for taxon in kb.ids("statement"):
        groups: dict[tuple[object, ...], list[Statement]] = {}
        for s in kb.statements(taxon):
            groups.setdefault(topic(s), []).append(s)
        for members in groups.values():
            if len(members) > 1 and not any(m.preferred for m in members):
                yield from (pair for pair in combinations(members, 2) if exclude(kb, *pair))
