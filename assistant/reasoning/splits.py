"""Ways to part a set of taxa in two by one character, with what each costs the reader (layer 3).

A split sends every taxon to one side, or to both where enough of its fish show either (or where nothing is known). Sets
of taxa are bit masks over their positions, so that a key can weigh thousands of splits.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from types import MappingProxyType

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, State
from assistant.reasoning.contrast import ADULT, decides, settled_by, word_names
from assistant.reasoning.evidence import Distribution, about, below, leaves
from assistant.reasoning.observer import scored, taxon_distribution
from assistant.reasoning.selection import species_below

BOTH = 0.15
"""Share of a taxon's fish from which the rarer side of a split is kept open for it."""
@dataclass(frozen=True, slots=True)
class Reader:
    """What a choice costs somebody, in steps beyond the step itself.

    ``ease`` is the cost of looking, ``error`` of a wrong turn, ``relative`` of a measure that is more or less (a scale
    is small beside another), ``unnamed`` of a feature that no list of look-alikes names for fishes parted by it,
    ``second`` of a second state in the shorter line, ``further`` of each state beyond the first in the longer.
    """

    ease: Mapping[str, float]
    error: float
    relative: float
    unnamed: float
    second: float
    further: float


READER = Reader({"glance": 0.0, "hand": 0.06, "count": 0.5, "dead": 0.8}, 0.6, 0.05, 0.1, 0.1, 0.08)
"""Anybody with a fish in the hand."""
CHILD = Reader({"glance": 0.0, "hand": 0.6, "count": 1.2, "dead": 2.0}, 2.0, 0.9, 0.6, 0.5, 0.25)
"""A child: a longer way by plain marks is better than a short one by measures."""
APART = 0.5
"""Share of the observer's error that stays where the two sides are not neighbours."""
MOST_TOLD = 0.6
"""Share of the species of a genus that must be told of before the genus is."""
MOST_STATES = 9
"""States up to which pairs of them are tried together on one side."""
_PASSING = frozenset({"breeding", "spawning", "young", "juvenile", "nest"})
"""Words by which a character says itself that only some fish show it for a time."""


@dataclass(frozen=True, slots=True)
class Split:
    """One character, what lies on the left and on the right (states, or a count up to ``at``), and the taxa there."""

    character: str
    left: tuple[str, ...]
    right: tuple[str, ...]
    at: int | None
    a: int
    b: int
    cost: float


@dataclass(frozen=True, slots=True)
class Cells:
    """What is known of one character: a distribution per position (None where nothing is), and who shows each state."""

    character: Character
    told: tuple[Distribution | None, ...]
    order: tuple[str, ...]
    shows: Mapping[str, int]
    closed: frozenset[str] = frozenset()
    """States that a way has left behind."""

    def within(self, states: Collection[str]) -> Cells:
        """The same with no other states (or counts) than some, as on a way that leaves only these open."""
        return replace(self, order=tuple(s for s in self.order if s in states),
                       shows={s: who for s, who in self.shows.items() if s in states},
                       closed=self.closed | (frozenset(self.order) - frozenset(states)))


def cells_of(kb: KnowledgeBase, taxa: Sequence[str], looks: Collection[str]) -> tuple[Cells, ...]:
    """The characters that can be seen at some looks and are known of two taxa or more, with what is known."""
    out = []
    for character in kb.characters:
        if not usable(character, looks) or not _applies(kb, character, taxa):
            continue
        told = tuple(recorded(kb, t, character.id) for t in taxa)
        if sum(d is not None for d in told) < 2:
            continue
        order = leaves(kb, character.id) if character.is_stated else _numbers(told)
        shows = _shows(kb, character, told, order)
        out.append(Cells(character, told, order, shows))
    return tuple(out)


def _shows(kb: KnowledgeBase, character: Character, told: Sequence[Distribution | None],
           order: Sequence[str]) -> Mapping[str, int]:
    """Who shows each state: who has it often enough, or is told of an umbrella over it and often has none of its parts.

    A fish told of "dark spots" may have any of them, so that a line which names dark specks does not take it away.
    """
    out = {s: sum(1 << i for i, d in enumerate(told) if d and d.shares.get(s, 0.0) >= BOTH) for s in order}
    known = [(i, d) for i, d in enumerate(told) if d is not None and character.kind == "states"]
    for i, found in known:
        for under in (below(kb, state) for state in stated(kb, found)):
            if len(under) > 1 and found.share(under) >= BOTH and not any(out[s] >> i & 1 for s in under):
                out |= {s: out[s] | 1 << i for s in under}
    return out


def stated(kb: KnowledgeBase, found: Distribution) -> frozenset[str]:
    """The states that the statements behind a distribution name, umbrellas as they stand."""
    records = (kb.record_at(f"st:{key}") for key in found.statements)
    return frozenset(s for record in records if record is not None for s in record.states)


Named = Mapping[str, Sequence[tuple[int, int]]]
"""By character, the pairs of positions for which a list of look-alikes names it as what settles them."""


def named_pairs(kb: KnowledgeBase, taxa: Sequence[str], cells: Sequence[Cells]) -> Named:
    """What the listed look-alikes among some taxa are told apart by: the name of the feature, or of a state shown."""
    at = {t: i for i, t in enumerate(taxa)}
    pairs = {(min(at[t], at[x.other]), max(at[t], at[x.other])) for t in taxa for x in kb.look_alikes(t)
             if x.other in at}
    out: dict[str, list[tuple[int, int]]] = {}
    for i, j in sorted(pairs):
        words = settled_by(kb, (taxa[i], taxa[j]))
        for cell in cells if words else ():
            shown = [s for s, who in cell.shows.items() if who >> i & 1 or who >> j & 1] if cell.order else []
            if decides(kb, cell.character.id, words) or any(_names_state(kb, s, words) for s in shown
                                                            if cell.character.is_stated):
                out.setdefault(cell.character.id, []).append((i, j))
    return out


def _names_state(kb: KnowledgeBase, state: str, words: frozenset[str]) -> bool:
    """True when all words of a name of a state or of an umbrella over it, one of two or more, are among the words."""
    return any(len(name) > 1 and name <= words for s in (kb.state(state), *_umbrellas(kb, state))
               for name in word_names(kb, s.id, (s.label, *s.values, *s.phrases)))


def usable(character: Character, looks: Collection[str]) -> bool:
    """True for a character that a key may ask: scored, seen at these looks, and shown the year round by grown fish."""
    words = set(f"{character.label} {character.question}".lower().replace("-", " ").split())
    return scored(character) and character.look in looks and bool(character.question) and not words & _PASSING


def _applies(kb: KnowledgeBase, character: Character, taxa: Sequence[str]) -> bool:
    """True when every taxon has what the character needs (no barbels, no barbel colour)."""
    for need in {n.partition(".")[0] for n in character.needs}:
        states = [leaf for n in character.needs if n.startswith(need + ".") for leaf in below(kb, n)]
        for taxon in taxa:
            found = taxon_distribution(kb, taxon, need, ADULT)
            if found is None or found.share(states) < 0.5:
                return False
    return True


def recorded(kb: KnowledgeBase, taxon: str, character: str) -> Distribution | None:
    """The distribution in grown fish; None where all that is said holds for one sex, the young or a season.

    A genus shows what its species show, each counted alike, once most of them are told of.
    """
    if kb.taxon(taxon).rank == "genus":
        return _of_genus(kb, taxon, character)
    if not kb.taxon(taxon).is_hybrid:
        statements, _ = about(kb, taxon, character)
        if statements and all(s.sex or s.breeding or s.stage == "juvenile" for s in statements):
            return None
    found = taxon_distribution(kb, taxon, character, ADULT)
    loose = loose_denials(kb, character) if kb.character(character).is_stated else frozenset()
    return None if found is not None and found.share(loose) > BOTH else found


def _of_genus(kb: KnowledgeBase, genus: str, character: str) -> Distribution | None:
    species = species_below(kb, genus)
    told = [d for s in species if (d := recorded(kb, s, character)) is not None]
    if not told or len(told) < MOST_TOLD * len(species):
        return None
    states = {s for d in told for s in d.shares}
    shares = {s: sum(d.shares.get(s, 0.0) for d in told) / len(told) for s in sorted(states)}
    return Distribution(character, shares, tuple(s for d in told for s in d.statements), genus, told[0].basis)


def loose_denials(kb: KnowledgeBase, character: str) -> frozenset[str]:
    """States that deny only a part ("no red spots" beside "no spots"): a fish may show another state as well."""
    return kb.derived(f"loose denials {character}", lambda _: _loose_denials(kb, character))


def _loose_denials(kb: KnowledgeBase, character: str) -> frozenset[str]:
    denials = sorted((s for s in kb.states(character) if s.clause.startswith("no ")), key=lambda s: (len(s.clause),
                                                                                                     s.id))
    return frozenset(s.id for s in denials[1:])


def _numbers(told: Sequence[Distribution | None]) -> tuple[str, ...]:
    seen = sorted({int(k) for d in told if d for k, v in d.shares.items() if v > 1e-4})
    return tuple(str(k) for k in range(seen[0], seen[-1] + 1)) if seen else ()


def splits_of(kb: KnowledgeBase, cells: Sequence[Cells], size: int, reader: Reader = READER,
              named: Named = MappingProxyType({})) -> tuple[Split, ...]:
    """Every split of ``size`` taxa by the characters in ``cells`` that sends some taxon to one side only."""
    out: dict[tuple[str, int, int], Split] = {}
    for cell in cells:
        for left, right, at, near in _parts(kb, cell):
            split = _split(cell, left, right, at, near, size, reader)
            if split is None:
                continue
            if not any(_parted(split, i, j) for i, j in named.get(split.character, ())):
                split = replace(split, cost=split.cost + reader.unnamed)
            slot = (split.character, split.a, split.b)
            if slot not in out or split.cost < out[slot].cost:
                out[slot] = split
    return tuple(out.values())


def _parted(split: Split, i: int, j: int) -> bool:
    """True when two taxa stand on one side each, and not on the same."""
    only_a, only_b = split.a & ~split.b, split.b & ~split.a
    return bool((only_a >> i & 1 and only_b >> j & 1) or (only_b >> i & 1 and only_a >> j & 1))


Part = tuple[tuple[str, ...], tuple[str, ...], int | None, bool]
"""States left and right, the count at which a number parts, and whether neighbours are parted."""


def _parts(kb: KnowledgeBase, cell: Cells) -> list[Part]:
    present = [s for s in cell.order if cell.shows[s]]
    if not cell.character.is_stated:
        return [(cell.order[:i], cell.order[i:], int(cell.order[i - 1]),
                 bool(cell.shows[cell.order[i - 1]] and cell.shows[s]))
                for i, s in enumerate(cell.order) if i and present and int(present[0]) < int(s) <= int(present[-1])]
    if cell.character.kind == "ordered":
        return _cuts(kb, present)
    return [(left, right, None, True) for left, right in _groupings(kb, present)]


def _cuts(kb: KnowledgeBase, present: Sequence[str]) -> list[Part]:
    rank = {s: kb.state(s).order or 0 for s in present}
    levels = sorted(set(rank.values()))
    return [(tuple(s for s in present if rank[s] <= level), tuple(s for s in present if rank[s] > level), None,
             levels[i + 1] - level < 2) for i, level in enumerate(levels[:-1])]


def _groupings(kb: KnowledgeBase, present: Sequence[str]) -> list[tuple[tuple[str, ...], tuple[str, ...]]]:
    """One state, one umbrella or two states against the rest; a state is never parted from its own finer one."""
    kin = [(s, u.id) for s in present for u in _umbrellas(kb, s) if u.id in present]
    named: set[frozenset[str]] = {frozenset({s}) for s in present}
    named |= {frozenset(below(kb, u.id)) & frozenset(present) for s in present for u in _umbrellas(kb, s)}
    if len(present) <= MOST_STATES:
        named |= {frozenset(pair) for pair in combinations(present, 2)}
    out: dict[frozenset[str], tuple[tuple[str, ...], tuple[str, ...]]] = {}
    for group in sorted(named, key=sorted):
        rest = frozenset(present) - group
        parted = any((finer in group) != (wider in group) for finer, wider in kin)
        if not group or not rest or parted or rest in out:
            continue
        out[group] = (tuple(s for s in present if s in group), tuple(s for s in present if s in rest))
    return list(out.values())


def _umbrellas(kb: KnowledgeBase, state: str) -> list[State]:
    out: list[State] = []
    current = kb.state(state).broader
    while current:
        out.append(kb.state(current))
        current = out[-1].broader
    return out


def _split(cell: Cells, left: tuple[str, ...], right: tuple[str, ...], at: int | None, near: bool,
           size: int, reader: Reader) -> Split | None:
    a = b = (1 << size) - 1
    missed = 0.0
    known = 0
    for i, told in enumerate(cell.told):
        goes_left, goes_right = (told.share(left), told.share(right)) if told else (0.0, 0.0)
        whole = goes_left + goes_right
        if not whole:
            continue
        known += 1
        if min(goes_left, goes_right) >= BOTH:
            continue
        missed += min(goes_left, goes_right) / whole
        if goes_left <= goes_right:
            a &= ~(1 << i)
        else:
            b &= ~(1 << i)
    if a == b or not (a & ~b) or not (b & ~a):
        return None
    found = cell.character
    error = found.error * (1.0 if near else APART)
    cost = 1.0 + reader.error * (error + missed / known) + reader.ease.get(found.look, 0.5)
    cost += reader.relative * (found.kind == "ordered")
    return Split(found.id, left, right, at, a, b, cost)


def folded(kb: KnowledgeBase, here: Sequence[str], there: Sequence[str]) -> tuple[str, ...]:
    """The states of a lead, several under one umbrella named by it, unless the other lead has it or one of them."""
    out = list(here)
    for umbrella in kb.states(here[0].partition(".")[0]) if here else ():
        under = set(below(kb, umbrella.id)) - {umbrella.id}
        inside = [s for s in out if s in under]
        if inside and (len(inside) > 1 or umbrella.id in out) and not {umbrella.id, *under} & set(there):
            at = min(out.index(s) for s in (*inside, umbrella.id) if s in out)
            out = [s for s in out if s not in under and s != umbrella.id]
            out.insert(min(at, len(out)), umbrella.id)
    return tuple(out)
