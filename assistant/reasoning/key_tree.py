"""The search for a key: which character to ask at each couplet, so that the expected cost is least (layer 3).

At every couplet the taxa still in play count as equally likely, and one that stands on both sides counts half on each.
Up to ``EXACT`` taxa the best tree is found by dynamic programming over sets of taxa; above that the best couplet is
chosen by looking two couplets ahead. A character asked before on a way is asked again only within the states that the
way has left open; where the best couplet would go beyond, the next best takes its place. Sets of taxa are bit masks.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from types import MappingProxyType

from assistant.reasoning.splits import READER, Cells, Reader, Split

EXACT = 9
"""Number of taxa up to which the tree is optimal."""
AHEAD = 8
"""Couplets whose own best successors are looked at, above ``EXACT`` taxa."""
SPREAD = 1.28
"""Steps that a set of n taxa is taken to need, per binary digit of n, while looking ahead."""
UNTOLD = 3.0
"""Cost of a couplet that nothing is recorded for of some taxon: no line of it can be chosen with that fish in hand."""
Option = tuple[int, int, float, Split]
"""The taxa left and right, the cost of the couplet, and the split."""


@dataclass(frozen=True, slots=True)
class Fork:
    """A couplet of the tree: its split, what follows on the left and on the right, and the states closed before it."""

    split: Split
    left: Fork | int
    right: Fork | int
    closed: frozenset[str]


def taxa_of(tree: Fork | int) -> int:
    """The taxa that a tree ends in, as a bit mask."""
    return tree if isinstance(tree, int) else taxa_of(tree.left) | taxa_of(tree.right)


@dataclass
class Search:
    """Splits over bit masks, with the best first split of every set met so far."""

    splits: tuple[Split, ...]
    cells: Mapping[str, Cells]
    exact: int = EXACT
    reader: Reader = READER
    fold: Callable[[Sequence[str], Sequence[str]], Sequence[str]] = lambda here, there: here
    within: Callable[[Cells], Sequence[Split]] = lambda cells: ()
    """The splits by a character of which only some states are left."""
    best: dict[int, tuple[float, Split | None]] = field(default_factory=dict)
    inside: dict[tuple[str, frozenset[str]], tuple[Split, ...]] = field(default_factory=dict)
    lengths: dict[tuple[frozenset[str], frozenset[str]], tuple[int, int]] = field(default_factory=dict)

    def tree(self, taxa: int, left: Mapping[str, frozenset[str]] = MappingProxyType({})) -> Fork | int:
        """The tree of a set of taxa; the set itself where nothing parts it.

        ``left`` are the states (or counts) that the way to it leaves open, by character asked before.
        """
        split = self.solve(taxa)[1]
        if split is not None and split.character in left:
            split = self._inside(taxa, left)
        if split is None:
            return taxa
        cell = self.cells[split.character]
        here, there = (self.tree(side, {**left, split.character: frozenset(
            s for s in states if cell.shows[s] & side) or frozenset(states)})
            for side, states in ((split.a & taxa, split.left), (split.b & taxa, split.right)))
        return Fork(split, here, there, cell.within(left.get(split.character, frozenset(cell.order))).closed)

    def _inside(self, taxa: int, left: Mapping[str, frozenset[str]]) -> Split | None:
        """The best first split by characters not asked before, or by what is left of those that were."""
        splits = [s for s in self.splits if s.character not in left]
        for character, states in left.items():
            if (character, states) not in self.inside:
                self.inside[character, states] = tuple(self.within(self.cells[character].within(states)))
            splits += self.inside[character, states]
        options = sorted(self.options(taxa, splits), key=_first)[:AHEAD]
        after = self._glance if taxa.bit_count() > self.exact else lambda side: self.solve(side)[0]
        return min(options, key=lambda o: (_expected(o, after), _first(o)))[3] if options else None

    def solve(self, taxa: int) -> tuple[float, Split | None]:
        """The least expected cost of naming a fish of these taxa, and the first split of the tree that has it."""
        if taxa not in self.best:
            if taxa.bit_count() < 2:
                self.best[taxa] = (0.0, None)
            elif taxa.bit_count() <= self.exact:
                self._search(taxa)
            else:
                self.best[taxa] = self._look_ahead(taxa)
        return self.best[taxa]

    def options(self, taxa: int, splits: Sequence[Split] | None = None) -> list[Option]:
        """The splits (all, or some) that part these taxa, the cheapest of each way to part them."""
        found: dict[tuple[int, int], tuple[float, Split]] = {}
        for split in self.splits if splits is None else splits:
            a, b = split.a & taxa, split.b & taxa
            if a == taxa or b == taxa:
                continue
            held = found.get((a, b))
            if held is None or split.cost < held[0]:
                cost = split.cost + self.length(split, taxa)
                if held is None or cost < held[0]:
                    found[a, b] = (cost, split)
        return [(a, b, cost, split) for (a, b), (cost, split) in found.items()]

    def length(self, split: Split, taxa: int) -> float:
        """What the length of the longer lead costs, and the taxa of which nothing is recorded."""
        shows = self.cells[split.character].shows
        silent = (self.untold[split.character] & taxa).bit_count()
        untold = UNTOLD * (1 + silent / taxa.bit_count()) / 2 if silent else 0.0
        if split.at is not None:
            return untold
        sides = [frozenset(s for s in side if shows[s] & taxa) for side in (split.left, split.right)]
        fewer, more = self._names(*sides)
        return untold + self.reader.second * (fewer > 1) + self.reader.further * max(0, more - 1)

    def _names(self, here: frozenset[str], there: frozenset[str]) -> tuple[int, int]:
        """How many states the shorter and the longer line have to name."""
        if (here, there) not in self.lengths:
            one, other = sorted(here), sorted(there)
            first, second = len(self.fold(one, other)), len(self.fold(other, one))
            self.lengths[here, there] = (min(first, second), max(first, second))
        return self.lengths[here, there]

    @cached_property
    def untold(self) -> Mapping[str, int]:
        """By character, the taxa of which nothing is recorded, as a bit mask."""
        return {key: sum(1 << i for i, told in enumerate(cell.told) if told is None)
                for key, cell in self.cells.items()}

    def _search(self, taxa: int) -> tuple[float, Split | None]:
        if taxa in self.best:
            return self.best[taxa]
        if taxa.bit_count() < 2:
            self.best[taxa] = (0.0, None)
            return self.best[taxa]
        best: tuple[float, Split | None] = (_together(taxa), None)
        for a, b, cost, split in sorted(self.options(taxa), key=_first):
            p = share_left(a, b)
            if cost + p * _floor(a) + (1 - p) * _floor(b) >= best[0] - 1e-9:
                continue
            total = cost + p * self._search(a)[0] + (1 - p) * self._search(b)[0]
            if total < best[0] - 1e-9:
                best = (total, split)
        self.best[taxa] = best
        return best

    def _look_ahead(self, taxa: int) -> tuple[float, Split | None]:
        options = sorted(self.options(taxa), key=_first)[:AHEAD]
        if not options:
            return (_together(taxa), None)
        best = min(options, key=lambda o: (_expected(o, self._glance), o[3].character, *o[:2]))
        return _expected(best, lambda side: self.solve(side)[0]), best[3]

    def _glance(self, taxa: int) -> float:
        if taxa.bit_count() < 2:
            return 0.0
        return min((_guess(a, b, cost) for a, b, cost, _ in self.options(taxa)), default=_together(taxa))


def share_left(a: int, b: int) -> float:
    """The share of the taxa of a couplet that take its left lead; one on both sides counts half on each."""
    both = (a & b).bit_count()
    return (a.bit_count() - 0.5 * both) / (a.bit_count() + b.bit_count() - both)


def _guess(a: int, b: int, cost: float) -> float:
    p = share_left(a, b)
    return cost + SPREAD * (p * _floor(a) + (1 - p) * _floor(b))


def _first(option: Option) -> tuple[float, str, int]:
    """The order in which options are looked at: the most promising first, by name among equals."""
    return _guess(*option[:3]), option[3].character, option[0]


def _expected(option: Option, after: Callable[[int], float]) -> float:
    a, b, cost, _ = option
    p = share_left(a, b)
    return cost + p * after(a) + (1 - p) * after(b)


def _floor(taxa: int) -> float:
    """Steps that a set needs at the very least: every step costs one or more and parts in two."""
    return math.log2(max(1, taxa.bit_count()))


def _together(taxa: int) -> float:
    """What it costs to leave taxa together: more than any tree that parts them."""
    return 4.0 * taxa.bit_count()
