"""A dichotomous key for any set of taxa, near-optimal in the expected cost of its steps (layer 3).

The tree comes from ``key_tree``; here it is made honest and numbered. A way on which what is recorded of a taxon would
rather name another fish is taken out where the taxon has a better way, and said to be undecided where it has none. No
taxon is put aside by a couplet for which nothing is recorded of it: it stands on both sides there. Taxa that no
character parts end together.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property, partial
from types import MappingProxyType

import numpy as np

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.evidence import below
from assistant.reasoning.identify import ANSWERED, FLOOR, Vector, weigh
from assistant.reasoning.key_tree import EXACT, Fork, Search, taxa_of
from assistant.reasoning.observed import Evidence, Observation
from assistant.reasoning.splits import READER, Cells, Reader, Split, cells_of, folded, named_pairs, splits_of
from assistant.reasoning.tables import Table, compile_table

ROUNDS = 4
"""Times that the ways of a tree are looked through again after some were taken out."""
CLEAR = 0.999
"""A taxon leads on a way when its probability is at least this share of the best."""


@dataclass(frozen=True, slots=True)
class Lead:
    """One of the two choices: states (umbrellas folded in) or a count from ``low`` to ``high``, and where it leads.

    ``goes_to`` is the next couplet, 0 where the lead ends; ``taxa`` are the taxa still in play after it.
    """

    states: tuple[str, ...]
    low: int | None
    high: int | None
    taxa: tuple[str, ...]
    goes_to: int


@dataclass(frozen=True, slots=True)
class Couplet:
    """A numbered pair of leads on one character; ``back`` is the couplet that leads here (0 for the first)."""

    number: int
    character: str
    leads: tuple[Lead, Lead]
    back: int


@dataclass(frozen=True, slots=True)
class Key:
    """Couplets in their order, the taxa keyed, and the look allowed."""

    taxa: tuple[str, ...]
    look: str
    couplets: tuple[Couplet, ...]

    def couplet(self, number: int) -> Couplet:
        """The couplet with this number."""
        return self.couplets[number - 1]


KEY_LOOKS: Mapping[str, frozenset[str]] = {
    **LOOKS, "uncounted": frozenset({"glance", "hand"}), "touch": frozenset({"hand"}),
}
"""The looks of a key: those of a comparison, and a fish in the hand without counting or by touch alone."""


NONE_TOLD: Mapping[str, Lead] = MappingProxyType({})


def build_key(kb: KnowledgeBase, taxa: Sequence[str], look: str = "hand", exact: int = EXACT,
              without: Collection[str] = (), reader: Reader = READER, told: Mapping[str, Lead] = NONE_TOLD) -> Key:
    """The key of some taxa with characters seen at a look (``KEY_LOOKS``), those in ``without`` left out.

    ``told`` are leads taken before, by character: it is asked again only within what they leave open.
    """
    names = tuple(dict.fromkeys(taxa))
    cells = [c.within(_held(kb, c, told[c.character.id])) if c.character.id in told else c
             for c in cells_of(kb, names, KEY_LOOKS[look]) if c.character.id not in without]
    named = named_pairs(kb, names, cells)
    search = Search(splits_of(kb, cells, len(names), reader, named), {c.character.id: c for c in cells}, exact, reader,
                    partial(folded, kb), lambda cell: splits_of(kb, [cell], len(names), reader, named))
    whole = (1 << len(names)) - 1
    maker = _Maker(kb, names, search)
    tree = search.tree(whole) if len(names) > 1 else whole
    if not any(kb.taxon(t).rank == "genus" for t in names):
        tree = maker.settle(tree)
    couplets: list[Couplet] = []
    if isinstance(tree, Fork):
        maker.number(tree, 0, couplets)
    return Key(names, look, tuple(couplets))


def _held(kb: KnowledgeBase, cell: Cells, lead: Lead) -> frozenset[str]:
    """The states (or counts) of a character that a lead leaves open."""
    if lead.states:
        return frozenset(leaf for state in lead.states for leaf in below(kb, state))
    return frozenset(n for n in cell.order if (lead.low or 0) <= int(n) <= (int(n) if lead.high is None else lead.high))


def observation_of(character: str, lead: Lead) -> Observation:
    """What somebody who takes a lead has seen."""
    if lead.states:
        return Observation(character, lead.states)
    if lead.high is not None:
        return Observation(character, value=float(lead.high), at_most=True)
    return Observation(character, value=float(lead.low or 0), at_least=True)


@dataclass
class _Maker:
    """A tree of bit masks to couplets of names."""

    kb: KnowledgeBase
    taxa: tuple[str, ...]
    search: Search

    @cached_property
    def silent(self) -> Mapping[str, frozenset[str]]:
        """By character, the taxa of which nothing is recorded."""
        return {key: frozenset(t for t, told in zip(self.taxa, cell.told, strict=True) if told is None)
                for key, cell in self.search.cells.items()}

    def settle(self, tree: Fork | int) -> Fork | int:
        """The tree without the ways on which another fish would be named, as long as every taxon keeps one."""
        if isinstance(tree, int):
            return tree
        table = compile_table(self.kb, self.taxa)
        for _ in range(ROUNDS):
            ends: list[tuple[int, Vector]] = []
            self._ends(table, tree, (), ends)
            kept = _kept(ends, len(self.taxa))
            before: list[int] = []
            while before != kept:
                before = kept.copy()
                _open(tree, self.search.untold, ends, kept, 0)
            if kept == [mask for mask, _ in ends]:
                return tree
            tree = _pruned(tree, iter(kept)) or tree
        return tree

    def _ends(self, table: Table, tree: Fork | int, seen: tuple[Observation, ...],
              out: list[tuple[int, Vector]]) -> None:
        if isinstance(tree, int):
            found = standings(self.kb, table, Evidence(seen), self.silent)
            out.append((tree, found[[table.index[t] for t in self.taxa]]))
            return
        for side, child in enumerate((tree.left, tree.right)):
            lead = self.lead(tree, side)
            self._ends(table, child, (*seen, observation_of(tree.split.character, lead)), out)

    def number(self, tree: Fork, back: int, out: list[Couplet]) -> int:
        """Append the couplets of a tree, the shorter way first, and return the number of its own couplet."""
        number = len(out) + 1
        sides = sorted((0, 1), key=lambda i: (taxa_of((tree.left, tree.right)[i]).bit_count(), i))
        leads = [self.lead(tree, side) for side in sides]
        out.append(Couplet(number, tree.split.character, (leads[0], leads[1]), back))
        for place, side in enumerate(sides):
            child = (tree.left, tree.right)[side]
            if isinstance(child, Fork):
                found = leads[place]
                leads[place] = Lead(found.states, found.low, found.high, found.taxa, self.number(child, number, out))
        out[number - 1] = Couplet(number, tree.split.character, (leads[0], leads[1]), back)
        return number

    def lead(self, tree: Fork, side: int) -> Lead:
        """The lead of one side of a couplet, its states limited to those that the taxa there show."""
        split = tree.split
        masks = (taxa_of(tree.left), taxa_of(tree.right))
        names = tuple(t for i, t in enumerate(self.taxa) if masks[side] >> i & 1)
        if split.at is not None:
            return Lead((), split.at + 1 if side else None, None if side else split.at, names, 0)
        here, there = self._shown(split, side, masks[side]), self._shown(split, 1 - side, masks[1 - side])
        return Lead(folded(self.kb, here, (*there, *tree.closed)), None, None, names, 0)

    def _shown(self, split: Split, side: int, mask: int) -> list[str]:
        shows = self.search.cells[split.character].shows
        states = split.right if side else split.left
        return [s for s in states if shows[s] & mask] or list(states)


def standings(kb: KnowledgeBase, table: Table, evidence: Evidence, silent: Mapping[str, Collection[str]]) -> Vector:
    """How each taxon of a table stands beside the best of the others after a way through a key; 1 or more leads.

    A taxon has the benefit of the doubt where nothing is recorded of it (``silent``, by character): it then counts as
    high as the fish that fits best, for a way is not closed to a fish by what nobody has written down. Its rivals are
    taken as ``identify`` weighs them.
    """
    weighed = weigh(kb, table, evidence)
    weights = weighed.posterior
    doubt = np.zeros(len(table.taxa))
    for seen, chance, *_ in weighed.observed:
        places = [table.index[t] for t in silent.get(seen.character, ()) if t in table.index]
        if places:
            best = np.delete(chance, places).max(initial=FLOOR)
            doubt[places] += ANSWERED * np.maximum(np.log(best / chance[places]), 0.0)
    first, second = np.argsort(-weights)[:2]
    rivals = np.full(len(weights), weights[first])
    rivals[first] = weights[second]
    return np.asarray(weights * np.exp(doubt) / rivals, dtype=np.float64)


def _kept(ends: Sequence[tuple[int, Vector]], size: int) -> list[int]:
    """The taxa that each end keeps: those that lead there, and each taxon at its best end where it leads nowhere."""
    kept = [0] * len(ends)
    for i in range(size):
        mine = [(float(standing[i]), -end) for end, (mask, standing) in enumerate(ends) if mask >> i & 1]
        leading = [-end for value, end in mine if value >= CLEAR]
        for end in leading or [-max(mine)[1]]:
            kept[end] |= 1 << i
        if not leading:
            kept[-max(mine)[1]] |= 1 << int(ends[-max(mine)[1]][1].argmax())
    return [k | _equals(mask, k, standing) for k, (mask, standing) in zip(kept, ends, strict=True)]


def _open(tree: Fork | int, untold: Mapping[str, int], ends: Sequence[tuple[int, Vector]], kept: list[int],
          first: int) -> int:
    """Keep a taxon on both sides of a couplet that nothing is recorded for of it; gives the end after the last below.

    It stays where it stands best among the ends that are kept for another; ``first`` is the first end of the tree.
    """
    if isinstance(tree, int):
        return first + 1
    middle = _open(tree.left, untold, ends, kept, first)
    last = _open(tree.right, untold, ends, kept, middle)
    sides = range(first, middle), range(middle, last)
    for i in range(untold[tree.split.character].bit_length()):
        if untold[tree.split.character] >> i & 1:
            for here, there in (sides, sides[::-1]):
                open_ends = [e for e in here if kept[e] and ends[e][0] >> i & 1]
                if open_ends and not any(kept[e] >> i & 1 for e in here) and any(kept[e] >> i & 1 for e in there):
                    kept[max(open_ends, key=lambda e: float(ends[e][1][i]))] |= 1 << i
    return last


def _equals(mask: int, kept: int, standing: Vector) -> int:
    """Taxa that ended here beside a kept one and are at least half as likely: they are not parted, so they stay."""
    if not kept:
        return 0
    return sum(1 << i for i in range(len(standing)) if mask >> i & 1 and standing[i] >= 0.5)


def _pruned(tree: Fork | int, kept: object) -> Fork | int | None:
    """The tree with other taxa at its ends (in order); where one side of a couplet is empty or no other, one stays."""
    if isinstance(tree, int):
        mask = next(kept)  # type: ignore[call-overload]
        return int(mask) or None
    left = _pruned(tree.left, kept)
    right = _pruned(tree.right, kept)
    if left is None or right is None:
        return right if left is None else left
    if taxa_of(left) == taxa_of(right):
        return right if isinstance(left, int) else left
    return replace(tree, left=left, right=right)
