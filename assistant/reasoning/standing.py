"""What is known of the taxa of a score table besides their features: range, size, kin, parents, as arrays (layer 3)."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.place_prior import ABSENT, FAR, breadth, cross_weight, listed_ranges, unlisted
from assistant.reasoning.size import size_range
from assistant.reasoning.sparse import Positions, Sparse, Weights, sparse
from assistant.text import key, singular

HALF_IN, BOTH_IN = 0.5, 0.9
"""How far a cross belongs to a group that one or both of its parents belong to."""
LESS = 0.25
"""How far a name that is not the accepted one makes a fish one of those called so."""
NO_SIZE = 0.6
"""Fit of any size to a taxon of which no size is stated."""


@dataclass(frozen=True, repr=False)
class Standing:
    """Arrays over ``taxa``: the ``count`` taxa of the table, then parents of crosses that the table leaves out.

    ``first`` and ``second`` are the positions of a cross's parents (-1 for other taxa), ``depth`` how many crosses
    stand behind it; sizes are millimetres, NaN where not stated. ``places`` weighs the taxa at a place, ``kin`` those
    below a genus or family, ``scoped`` lists those with statements about some fish only, ``own`` the crosses of which
    something is stated, both by character; ``called`` those with an English name that ends in a word.
    """

    taxa: tuple[str, ...]
    count: int
    first: Positions
    second: Positions
    depth: Positions
    common: Weights
    ranged: npt.NDArray[np.bool_]
    breadth: Weights
    unlisted: Weights
    low: Weights
    high: Weights
    top: Weights
    places: Sparse
    kin: Sparse
    scoped: Sparse
    own: Sparse
    called: Sparse

    @cached_property
    def index(self) -> Mapping[str, int]:
        """Taxon id to its position."""
        return {t: i for i, t in enumerate(self.taxa)}

    @cached_property
    def crosses(self) -> Positions:
        """Positions of the crosses of the table whose parents both stand in it."""
        n = self.count
        both = (self.first[:n] >= 0) & (self.first[:n] < n) & (self.second[:n] < n)
        return np.asarray(np.flatnonzero(both), dtype=np.int32)

    def place_weights(
        self, places: Collection[str], real: bool, around: Collection[str] = (), waters: Collection[str] = ()
    ) -> Weights:
        """The weight of each taxon of the table at any of some places; ``real`` when one of them is not invented.

        ``around`` are the places of the same regions: a taxon that is listed, but for none of them, is far away.
        What is listed for ``waters`` themselves counts before what is listed for the states and provinces on them.
        """
        listed = self.breadth
        if places:
            best = np.full(len(self.taxa), -1.0)
            for place in sorted(places):
                where, weight = self.places.get(place)
                best[where] = np.maximum(best[where], weight)
            for water in sorted(waters):
                where, weight = self.places.get(water)
                best[where] = weight
            listed = np.where(best >= 0, best, self._unlisted(around) if real else 1.0)
        out = listed * np.sqrt(self.breadth) if places else self.breadth.copy()
        for depth in range(1, int(self.depth.max(initial=0)) + 1):
            cross = np.flatnonzero(self.depth == depth)
            here = np.minimum(out[self.first[cross]], out[self.second[cross]])
            if places:
                here = np.where(self.ranged[cross], np.maximum(here, listed[cross]), here)
            out[cross] = here * self.common[cross]
        return np.asarray(out[: self.count])

    def _unlisted(self, around: Collection[str]) -> Weights:
        if not around:
            return self.unlisted
        near = np.zeros(len(self.taxa), bool)
        for place in sorted(around):
            where, weight = self.places.get(place)
            near[where[weight > ABSENT]] = True
        return np.where(near | ~self.ranged, self.unlisted, np.minimum(self.unlisted, FAR))

    def size_weights(self, length: float | Weights) -> Weights:
        """How well a length (mm) fits each taxon, 0 to 1: full within the usual, falling to near nothing past the
        largest."""
        low, high, top = (a[: self.count] for a in (self.low, self.high, self.top))
        top = np.where(np.isnan(top), high * 1.6, top)
        usual = np.minimum(np.where(np.isnan(high), 0.6 * top, high), top)
        low = np.where(np.isnan(low), 0.3 * usual, low)
        with np.errstate(invalid="ignore", over="ignore"):
            short = np.where(length >= low, 1.0, 0.55 + 0.45 * length / low)
            long = 1.0 - 0.8 * (length - usual) / np.maximum(top - usual, 1.0)
            past = np.maximum(0.003, 0.2 * np.exp(-12.0 * np.maximum(length / top - 1.0, 0.0)))
        fit = np.where(length <= usual, short, np.where(length <= top, long, past))
        return np.asarray(np.where(np.isnan(top), NO_SIZE, fit))

    def word_weights(self, word: str) -> Weights:
        """How well "small" or "large" fits each taxon (see ``size.word_fit``)."""
        top = np.where(np.isnan(self.high), self.top, self.high)[: self.count]
        ratio = top / 160.0 if word == "small" else 250.0 / top
        return np.asarray(np.where(np.isnan(top), NO_SIZE, 0.45 + 0.55 / (1.0 + ratio**2)))

    def membership(self, members: npt.NDArray[np.bool_]) -> Weights:
        """1 for members of a set over ``taxa``, less for crosses of members, 0 for the rest."""
        inside = members.astype(np.float64)
        cross = np.flatnonzero(self.depth > 0)
        if cross.size:
            parents = members[self.first[cross]].astype(int) + members[self.second[cross]]
            inside[cross] = np.where(members[cross], 1.0, np.array([0.0, HALF_IN, BOTH_IN])[parents])
        return np.asarray(inside[: self.count])


def build_standing(kb: KnowledgeBase, taxa: Sequence[str]) -> Standing:
    """The standing of some taxa, read from the base once."""
    everyone = (*taxa, *left_out(kb, taxa))
    where = {t: i for i, t in enumerate(everyone)}
    parents = [kb.taxon(t).parents if kb.taxon(t).is_hybrid else () for t in everyone]
    sizes = [size_range(kb, t) for t in everyone]
    def floats(values: Iterable[float | None]) -> Weights:
        return np.array([np.nan if v is None else v for v in values], np.float64)

    def side(number: int) -> Positions:
        return np.array([where[p[number]] if p else -1 for p in parents], np.int32)

    return Standing(
        taxa=everyone, count=len(taxa), first=side(0), second=side(1),
        depth=np.array([_depth(kb, t) for t in everyone], np.int32),
        common=floats(cross_weight(kb.taxon(t)) for t in everyone),
        ranged=np.array([bool(kb.ranges(t)) for t in everyone], bool),
        breadth=floats(breadth(kb, t) for t in everyone), unlisted=floats(unlisted(kb, t) for t in everyone),
        low=floats(s.usual_low for s in sizes), high=floats(s.usual_high for s in sizes),
        top=floats(s.largest for s in sizes),
        places=sparse(_place_entries(kb, everyone)), kin=sparse(_kin_entries(kb, taxa)),
        scoped=sparse((c, i, 1.0) for i, t in enumerate(taxa) for c in _scoped(kb, t)),
        own=sparse((c, i, 1.0) for i, t in enumerate(taxa) if parents[i] for c in kb.told_of(t)),
        called=sparse((word, i, weight) for i, t in enumerate(taxa) for word, weight in _called(kb, t)))


def _called(kb: KnowledgeBase, taxon: str) -> Iterator[tuple[str, float]]:
    """The last words of the English names of a taxon ("bass" for a rock bass) and of its family; others count less."""
    family = kb.taxon(kb.lineage(taxon)[-1]).label.removesuffix(" family")
    others = ((n.text, LESS) for n in kb.names(taxon) if n.language == "en")
    for text, weight in ((kb.taxon(taxon).label, 1.0), (family, 1.0), *others):
        if words := key(text).split():
            yield singular(words[-1]), weight


def left_out(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    """Parents of crosses that are not among the taxa."""
    held, out, ahead = set(taxa), dict[str, None](), list(taxa)
    while ahead:
        for parent in kb.taxon(ahead.pop(0)).parents:
            if parent not in held:
                held.add(parent)
                out[parent] = None
                ahead.append(parent)
    return tuple(out)


def _depth(kb: KnowledgeBase, taxon: str, most: int = 4) -> int:
    found = kb.taxon(taxon)
    if not found.is_hybrid or most == 0:
        return 0
    return 1 + max(_depth(kb, p, most - 1) for p in found.parents)


def _place_entries(kb: KnowledgeBase, taxa: Sequence[str]) -> Iterator[tuple[str, int, float]]:
    for i, taxon in enumerate(taxa):
        for place, weight in listed_ranges(kb, taxon):
            yield place, i, weight


def _kin_entries(kb: KnowledgeBase, taxa: Sequence[str]) -> Iterator[tuple[str, int, float]]:
    for i, taxon in enumerate(taxa):
        lines = [kb.lineage(p) for p in (kb.taxon(taxon).parents or (taxon,))]
        for above in {x for line in lines for x in line}:
            yield above, i, sum(above in line for line in lines) / len(lines)


def _scoped(kb: KnowledgeBase, taxon: str) -> set[str]:
    """The characters for which the statements that count for a taxon speak of some fish only."""
    out: set[str] = set()
    told: set[str] = set()
    for above in kb.lineage(taxon):
        for character in kb.told_of(above):
            if character not in told:
                told.add(character)
                if any(s.scoped for s in kb.statements_on(above, character)):
                    out.add(character)
    return out


