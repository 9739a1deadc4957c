"""How big: usual and largest lengths, standard weight, size categories, and their honest limits (layer 3)."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import SizeRecord, Statement
from assistant.reasoning.evidence import about, number_range

MAXIMUM = "max-total-length"
USUAL = "usual-adult-length"
LENGTHS = (MAXIMUM, USUAL)
"""What a line asks for that asks of length at large."""
HEAVIEST = "max-weight"


class SizeRange(NamedTuple):
    """Lengths in mm of a taxon: usual adult range and largest known (None where not stated), with the statements."""

    usual_low: float | None
    usual_high: float | None
    largest: float | None
    usual_statements: tuple[str, ...]
    largest_statements: tuple[str, ...]


class Weight(NamedTuple):
    """A standard weight in g for a length in mm, its record, and what limits it (ids such as "below-minimum")."""

    grams: float
    record: SizeRecord
    limits: tuple[str, ...]


def own_sizes(kb: KnowledgeBase, taxon: str) -> SizeRange:
    """The lengths stated of a taxon itself."""
    usual, largest = preferred(about(kb, taxon, USUAL)[0]), about(kb, taxon, MAXIMUM)[0]
    lows = [r[0] for s in usual if (r := number_range(s))]
    highs = [r[3] for s in usual if (r := number_range(s))]
    tops = [r[3] for s in largest if (r := number_range(s))]
    return SizeRange(
        min(lows, default=None),
        max(highs, default=None),
        max(tops, default=None),
        tuple(s.id for s in usual),
        tuple(s.id for s in largest),
    )


def size_range(kb: KnowledgeBase, taxon: str) -> SizeRange:
    """The lengths to reckon with for a taxon: its own, or the larger parent's where a cross has none."""
    found, parent = own_sizes(kb, taxon), larger_parent(kb, taxon)
    if found.largest is not None or not parent:
        return found
    best = size_range(kb, parent)
    return best if found.usual_high is None else found._replace(
        largest=best.largest, largest_statements=best.largest_statements)


def larger_parent(kb: KnowledgeBase, taxon: str) -> str:
    """The parent of a cross that grows longest; empty for a species."""
    return max(kb.taxon(taxon).parents, key=lambda p: size_range(kb, p).largest or 0.0, default="")


def preferred(statements: Sequence[Statement]) -> tuple[Statement, ...]:
    """The statements marked preferred; all of them where none is."""
    return tuple(s for s in statements if s.preferred) or tuple(statements)


def word_fit(kb: KnowledgeBase, taxon: str, word: str) -> float:
    """How well "small" or "large" fits what a taxon usually grows to; weak evidence."""
    sizes = size_range(kb, taxon)
    top = sizes.usual_high or sizes.largest
    if top is None:
        return 0.6
    if word == "small":
        return 0.45 + 0.55 / (1.0 + (top / 160.0) ** 2)
    return 0.45 + 0.55 / (1.0 + (250.0 / top) ** 2)


def standard_weight(
    kb: KnowledgeBase, taxon: str, length: float, from_length: str = "total", water: str = ""
) -> Weight | None:
    """The standard weight (g) of a length (mm total) by the taxon's published line; None when the base has none.

    log10 W = a + b log10 L (+ c log10(L) squared). ``limits`` names what makes the figure doubtful. Of several lines
    the one whose label holds ``water`` ("streams") is taken, else the first whose limits hold the length.
    """
    lines = [s for s in kb.sizes(taxon) if s.kind == "standard-weight" and s.a is not None and s.b is not None]
    if not lines or length <= 0:
        return None
    line = _line_for(lines, length, water)
    assert line.a is not None and line.b is not None
    log = math.log10(length)
    grams = 10 ** (line.a + line.b * log + (line.c or 0.0) * log * log)
    limits = []
    if line.min_length and length < line.min_length:
        limits.append("below-minimum")
    top = line.max_length or size_range(kb, taxon).largest
    if top and length > top:
        limits.append("above-data")
    if line.doubt:
        limits.append("line-in-doubt")
    if from_length != line.from_length:
        limits.append("other-length-given")
    return Weight(grams, line, tuple(limits))


def _line_for(lines: Sequence[SizeRecord], length: float, water: str) -> SizeRecord:
    if water and (named := [x for x in lines if water in x.label]):
        return named[0]
    main = lines[0]
    if main.min_length and length < main.min_length:
        return next((x for x in lines if (x.min_length or 0) <= length <= (x.max_length or 0)), main)
    return main


def length_for_weight(kb: KnowledgeBase, taxon: str, grams: float) -> Weight | None:
    """The length (mm, in ``grams`` of the result's place) at which the standard weight is reached, by bisection."""
    low, high = 20.0, 3000.0
    if standard_weight(kb, taxon, low) is None or grams <= 0:
        return None
    for _ in range(60):
        middle = (low + high) / 2
        found = standard_weight(kb, taxon, middle)
        assert found is not None
        low, high = (middle, high) if found.grams < grams else (low, middle)
    found = standard_weight(kb, taxon, low)
    assert found is not None
    return Weight(low, found.record, found.limits)


def stoutness(kb: KnowledgeBase, taxon: str) -> float:
    """Grams of a well-fed fish by its length in mm cubed, of a fish of usual length: by its own published line of
    weights, else the mean of its parents', its genus's or its family's, else of all fishes that have one.
    """
    own = kb.derived("stoutness", _stoutness)
    near = [own[x] for x in (taxon, *kb.taxon(taxon).parents, *kb.lineage(taxon)[1:], "") if x in own]
    parents = [own[x] for x in kb.taxon(taxon).parents if x in own]
    return sum(parents) / len(parents) if parents and taxon not in own else near[0] if near else PLAIN_STOUTNESS


PLAIN_STOUTNESS = 1.3e-5
"""Grams by cubic millimetre of length where no line of weights is held (common practice, no source)."""


def _stoutness(kb: KnowledgeBase) -> dict[str, float]:
    """The fishes that have a line of weights, with the means of the genera and families above them and of all ("")."""
    out: dict[str, list[float]] = {}
    for taxon in kb.species:
        sizes = size_range(kb, taxon)
        top = sizes.usual_high or sizes.largest
        if top is not None and (found := standard_weight(kb, taxon, top)) is not None:
            for above in (*kb.lineage(taxon), ""):
                out.setdefault(above, []).append(found.grams / top**3)
    return {taxon: sum(values) / len(values) for taxon, values in out.items()}


def category(kb: KnowledgeBase, taxon: str, length: float, inches: bool = False) -> tuple[str, SizeRecord] | None:
    """The published size category of a length (mm total): below stock, stock, quality, preferred, memorable, trophy.

    The tables give whole inches beside rounded metric values: a length told in ``inches`` goes by the inches.
    """
    tables = [s for s in kb.sizes(taxon) if s.kind == "size-categories"]
    if not tables:
        return None
    table = tables[0]
    steps = (
        ("trophy", table.trophy),
        ("memorable", table.memorable),
        ("preferred", table.preferred),
        ("quality", table.quality),
        ("stock", table.stock),
    )
    for name, edge in steps:
        if edge is not None and length >= (round(edge / MM_PER_INCH) * MM_PER_INCH - 0.05 if inches else edge):
            return name, table
    return "below stock", table


class Girth(NamedTuple):
    """A weight in g from length and girth: the middle of the formula's divisors and its bounds."""

    grams: float
    low: float
    high: float


GIRTH_DIVISORS = (900.0, 800.0, 750.0)
"""Cubic inches a pound in the girth formula: for slim fish, the middle, for stout fish (common practice, no source)."""
MM_PER_INCH, G_PER_POUND = 25.4, 453.59237
THIN, LEAN, GOOD, FAT = 0.8, 0.95, 1.2, 1.6
"""Shares of the standard weight up to which a fish counts as thin, a little lean, in good shape, fat."""


def girth_weight(length: float, girth: float) -> Girth:
    """The weight of a fish by length and girth (mm), pounds = L G G / divisor with inches."""
    volume = (length / MM_PER_INCH) * (girth / MM_PER_INCH) ** 2
    low, middle, high = (volume / d * G_PER_POUND for d in GIRTH_DIVISORS)
    return Girth(middle, low, high)


def condition(share: float) -> str:
    """The word for a weight as a share of the standard weight: thin, lean, good, fat or odd."""
    for word, top in (("thin", THIN), ("lean", LEAN), ("good", GOOD), ("fat", FAT)):
        if share < top:
            return word if share > 0.4 else "odd"
    return "odd"


def length_fit(kb: KnowledgeBase, taxon: str, length: float) -> str:
    """How a length (mm) compares with what is stated of a taxon: small, ordinary, large, huge, beyond, or empty."""
    sizes = size_range(kb, taxon)
    if sizes.largest and length > sizes.largest * 1.005:
        return "beyond"
    if sizes.largest and length >= 0.85 * sizes.largest and length > (sizes.usual_high or 0.0):
        return "huge"
    if sizes.usual_high and length > sizes.usual_high:
        return "large"
    if sizes.usual_low and length < sizes.usual_low:
        return "small"
    return "ordinary" if sizes.usual_low or sizes.usual_high else ""


def total_length(kb: KnowledgeBase, taxon: str, length: float, method: str) -> tuple[float, SizeRecord] | None:
    """The total length (mm) of a fork or standard length by the taxon's conversion line; None when none is held."""
    for line in kb.sizes(taxon):
        if line.kind == "length-conversion" and line.from_length == method and line.to_length == "total":
            return (line.a or 0.0) + (line.b or 1.0) * length, line
    return None


def relative(kb: KnowledgeBase, taxon: str) -> str | None:
    """The taxon itself when it has a standard-weight line, else the nearest of its genus (or a parent) that has."""
    if any(s.kind == "standard-weight" for s in kb.sizes(taxon)):
        return taxon
    found = kb.taxon(taxon)
    pool = found.parents or kb.children.get(found.parent or "", ())
    near = [t for t in pool if any(s.kind == "standard-weight" for s in kb.sizes(t))]
    top = size_range(kb, taxon).largest or 0.0
    return min(near, key=lambda t: (abs((size_range(kb, t).largest or 0.0) - top), t)) if near else None
