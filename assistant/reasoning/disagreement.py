"""Where sources do not say the same of one character of one taxon, and where nothing is said of it (layer 3)."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import combinations
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Statement
from assistant.reasoning.evidence import about, below, number_range

STRONG = frozenset({"always", "nearly-always", "usually"})
"""Frequency words that leave little room for another state."""


class Disagreement(NamedTuple):
    """The statements of different sources on one character of one taxon, of which not all say the same.

    ``excluding`` where two of them cannot both be right of the same fish.
    """

    taxon: str
    character: str
    statements: tuple[Statement, ...]
    excluding: bool


def topic(s: Statement) -> tuple[object, ...]:
    """What a statement speaks of: the character, and of which fish of its taxon."""
    return (s.character, s.sex, s.stage, s.breeding, s.season, s.regions, s.min_length, s.max_length, s.view,
            s.scope_text)


def value(s: Statement) -> tuple[object, ...]:
    """What a statement says, whomever it speaks of and however often it holds."""
    return (frozenset(s.states), s.low, s.usual_low, s.usual_high, s.high, s.mean, s.text)


def exclude(kb: KnowledgeBase, a: Statement, b: Statement) -> bool:
    """True for two statements whose values have nothing in common: ranges apart, or states apart that mostly hold."""
    if a.states and b.states:
        one, two = ({leaf for x in s.states for leaf in below(kb, x)} for s in (a, b))
        return a.frequency in STRONG and b.frequency in STRONG and not one & two
    ranges = [r for s in (a, b) if (r := number_range(s)) is not None]
    return len(ranges) == 2 and max(r[0] for r in ranges) > min(r[3] for r in ranges)


def disagreements(kb: KnowledgeBase, taxa: Sequence[str], characters: Collection[str] = ()) -> Iterator[Disagreement]:
    """The disagreements on some characters (on any where none is given) of some taxa, in the order of these."""
    for taxon in taxa:
        rows: dict[tuple[object, ...], list[Statement]] = {}
        for s in kb.statements(taxon):
            if not characters or s.character in characters:
                rows.setdefault(topic(s), []).append(s)
        for told in rows.values():
            apart = [(a, b) for a, b in combinations(told, 2) if a.source != b.source and value(a) != value(b)]
            if apart:
                unlike = tuple(dict.fromkeys(s for pair in apart for s in pair))
                yield Disagreement(taxon, told[0].character, unlike, any(exclude(kb, a, b) for a, b in apart))


def several_sources(kb: KnowledgeBase, taxon: str, characters: Collection[str]) -> bool:
    """True where more than one source speaks of one of some characters of a taxon."""
    rows: dict[str, set[str]] = {}
    for s in kb.statements(taxon):
        if s.character in characters:
            rows.setdefault(s.character, set()).update(s.source)
    return any(len(sources) > 1 for sources in rows.values())


class Silence(NamedTuple):
    """The taxa of which a character has no value, own or inherited: those of families in which it is told of others,
    and those of families in which it is told of none, where it may not apply."""

    lacking: tuple[str, ...]
    unspoken: tuple[str, ...]
    among: int
    """How many taxa there are in the families in which it is told of some."""


def silence(kb: KnowledgeBase, taxa: Sequence[str], character: str) -> Silence:
    """Which of some taxa have no value of a character; one told of crosses alone may be lacking of any cross."""
    spoken, of_crosses = families_told(kb, character), kb.character(character).use == "hybrid"
    own = [t for t in taxa if (of_crosses and kb.taxon(t).is_hybrid) or family_of(kb, t) in spoken]
    return Silence(tuple(t for t in own if not about(kb, t, character)[0]),
                   tuple(t for t in taxa if t not in own), len(own))


def family_of(kb: KnowledgeBase, taxon: str) -> str:
    """The family of a taxon (of the first parent of a cross), empty where it has none."""
    line = kb.lineage((kb.taxon(taxon).parents or (taxon,))[0])
    return next((k for k in line if kb.taxon(k).rank == "family"), "")


def families_told(kb: KnowledgeBase, character: str) -> frozenset[str]:
    """The families of which a character is told: of the family, a genus or a species."""
    return frozenset(f for f, known in _told(kb).items() if character in known)


def _told(kb: KnowledgeBase) -> dict[str, frozenset[str]]:
    """The characters that are stated of some fish of a family, by family."""
    return kb.derived("characters-told-by-family", _by_family)


def _by_family(kb: KnowledgeBase) -> dict[str, frozenset[str]]:
    out: dict[str, set[str]] = {}
    for t in kb.species:
        if kb.taxon(t).is_hybrid:
            continue
        known = out.setdefault(family_of(kb, t), set())
        for k in (t, *kb.lineage(t)):
            known.update(s.character for s in kb.statements(k))
    return {f: frozenset(known) for f, known in out.items()}


def gaps_by_character(
    kb: KnowledgeBase, taxa: Sequence[str], wanted: Sequence[Character]
) -> list[tuple[str, int, int]]:
    """For each character that some of the taxa lack: its id, how many lack it and of how many; the most lacking first.

    Only families in which the character is told of some fish count.
    """
    rows = [(c.id, len(found.lacking), found.among) for c in wanted if (found := silence(kb, taxa, c.id)).lacking]
    return sorted(rows, key=lambda r: (-r[1], r[0]))
