"""A comparison of two to eight fishes as words in a table, ready for any face (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from assistant.dialogue.lessons.levels import character_words, clause_words, value_words
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.errors import UsageError
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS, Contrast, ContrastRow, contrast
from assistant.reasoning.evidence import below
from assistant.text import join, unique

FEWEST, MOST = 2, 8
COUNTED = frozenset({"count", "dead"})
"""Looks that take more than a fish in the hand."""
ROWS_SHOWN = 12
PAGE_COLUMNS = 5
"""Fishes that fit side by side on a printed page."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What is told of one fish: words, basis (empty where nothing is held), whether its group is meant, statements."""

    text: str
    basis: str
    shared: bool
    statements: tuple[str, ...]

    @property
    def marked(self) -> str:
        """The words with the marks of doubt behind them."""
        marks = (say.MEMORY_MARK if self.basis == "memory" else "") + (say.SHARED_MARK if self.shared else "")
        return self.text + marks


@dataclass(frozen=True, slots=True)
class Row:
    """One feature over all fishes; ``separation`` runs from 0 (alike) to 1."""

    character: str
    feature: str
    separation: float
    cells: tuple[Cell, ...]


@dataclass(frozen=True, slots=True)
class Comparison:
    """The fishes, the rows that separate them, those that do not, and remarks on what misleads."""

    taxa: tuple[str, ...]
    names: tuple[str, ...]
    scientific: tuple[str, ...]
    look: str
    level: str
    rows: tuple[Row, ...]
    shared: tuple[Row, ...]
    notes: tuple[str, ...]

    @property
    def title(self) -> str:
        """The title of the comparison."""
        return say.compare_title(self.names)

    def columns(self, most: int = PAGE_COLUMNS) -> tuple[tuple[int, int], ...]:
        """The fishes as stretches of columns that fit a page side by side, as even as can be."""
        parts = -(-len(self.taxa) // most)
        cuts = [round(i * len(self.taxa) / parts) for i in range(parts + 1)]
        return tuple(pairwise(cuts))

    def legend(self, shared: bool = False) -> tuple[str, ...]:
        """What the marks and the frequency words in the rows shown mean."""
        cells = [c for r in (*self.rows, *(self.shared if shared else ())) for c in r.cells]
        out = [say.MEMORY_NOTE] if any(c.basis == "memory" for c in cells) else []
        out += [say.SHARED_NOTE] if any(c.shared for c in cells) else []
        return (*out, say.YOUNG_FREQUENCY_NOTE if self.level == "young" else say.FREQUENCY_NOTE)


def check_number(taxa: Sequence[str], fewest: int = FEWEST, most: int = MOST) -> tuple[str, ...]:
    """The taxa, each once. Raises UsageError where they are too few or too many."""
    chosen = unique(taxa)
    if len(chosen) < fewest:
        raise UsageError(f"{fewest} fishes or more can be set side by side, not {len(chosen)}",
                         "name another fish or a group")
    if len(chosen) > most:
        raise UsageError(f"{most} fishes at most can be set side by side, not {len(chosen)}",
                         "name some of them, or choose a smaller group and place")
    return chosen


def compare(kb: KnowledgeBase, taxa: Sequence[str], look: str = "hand", level: str = "plain",
            most: int = ROWS_SHOWN) -> Comparison:
    """The comparison of some taxa at a look (picture, hand, lab) in the words of a level (young, plain, trade).

    What is told of most of them goes before what is told of half or fewer, what is seen before what is counted under a
    lens; otherwise the order is that of the contrast.
    """
    found = contrast(kb, check_number(taxa), LOOKS[look])
    told_first = sorted(found.separating, key=lambda r: (2 * sum(t is None for t in r.told) >= len(r.told),
                                                         kb.character(r.character).look in COUNTED))
    rows = tuple(_row(kb, r, level) for r in told_first[:most])
    shared = tuple(_row(kb, r, level) for r in found.shared[:most])
    return Comparison(
        found.taxa, tuple(speak.fish(kb, t) for t in found.taxa), tuple(speak.scientific_of(kb, t) for t in found.taxa),
        look, level, rows, shared, _notes(kb, found, [r.character for r in rows], level))


def _row(kb: KnowledgeBase, row: ContrastRow, level: str) -> Row:
    cells = tuple(
        Cell(value_words(kb, told, level), told.basis if told else "", bool(told and told.inherited_from),
             speak.short_ids(told.statements) if told else ()) for told in row.told)
    return Row(row.character, character_words(kb, row.character, level), row.separation, cells)


def _notes(kb: KnowledgeBase, found: Contrast, shown: Sequence[str], level: str) -> tuple[str, ...]:
    """What fools people: young, females or breeding males that show what another of the fishes shows as a rule."""
    usual = {(r.character, t): _leaves(kb, [s for s, _ in told.states])
             for r in found.separating for t, told in zip(found.taxa, r.told, strict=True) if told}
    out: dict[tuple[str, str, str], list[str]] = {}
    for item in found.misleading:
        s = kb.record_at(f"st:{item.statement}")
        if s is None or item.character not in shown or not s.states:
            continue
        seen = _leaves(kb, s.states)
        own = usual.get((item.character, s.taxon), frozenset())
        others = [leaves for (c, t), leaves in usual.items() if c == item.character and t != s.taxon]
        if seen & own or not any(seen & leaves for leaves in others):
            continue
        feature = character_words(kb, item.character, "young" if level == "young" else "plain")
        value = say.either([clause_words(kb, x, level) for x in s.states])
        out.setdefault((feature, speak.scope_words(s), value), []).append(speak.fish(kb, s.taxon))
    notes = [say.fools(who, join(unique(names)), feature, value) for (feature, who, value), names in out.items()]
    crosses = [say.crossing([speak.fish(kb, t) for t in found.crosses])] if found.crosses else []
    return (*notes[:4], *crosses)


def _leaves(kb: KnowledgeBase, states: Sequence[str]) -> frozenset[str]:
    return frozenset(leaf for s in states for leaf in below(kb, s))
