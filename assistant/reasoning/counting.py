"""Counts against limits, and lengths against bounds, exact and honest about what was not said (layer 3)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from assistant.model.regulations import LengthLimit, OverCount, Rulebook, SubLimit
from assistant.reasoning.catch import Kept, Length
from assistant.reasoning.precedence import Bag, Row
from assistant.reasoning.verdict import Tally
from assistant.units import to_mm

UNITS: dict[str, str] = {"CentiM": "cm", "IN": "in", "MilliM": "mm"}
"""Units of rule texts (QUDT local names) and our short names for them."""


def limit_mm(value: Decimal, unit: str) -> Decimal:
    """A length of a rule text in exact millimetres."""
    return to_mm(value, UNITS[unit])


def beyond(length: Length, bound: Decimal, included: bool) -> bool | None:
    """Is a fish at or above a lower bound? None when both are possible.

    >>> from assistant.reasoning.catch import measured, between
    >>> beyond(measured(15, "in"), Decimal("381"), True), beyond(measured(15, "in"), Decimal("381"), False)
    (True, False)
    >>> beyond(between(14, 15, "in"), Decimal("370"), True) is None
    True
    """
    if length.low > bound or (length.low == bound and (included or not length.low_included)):
        return True
    if length.high is None:
        return None
    if length.high < bound or (length.high == bound and not (included and length.high_included)):
        return False
    return None


def inside(length: Length, limit: LengthLimit) -> bool | None:
    """Is a fish inside a limit's bounds? None when both are possible."""
    above: bool | None = True
    below: bool | None = True
    if limit.low is not None:
        above = beyond(length, limit_mm(limit.low, limit.unit), limit.low_included)
    if limit.high is not None:
        past = beyond(length, limit_mm(limit.high, limit.unit), not limit.high_included)
        below = None if past is None else not past
    if above is False or below is False:
        return False
    return True if above and below else None


def allowed_by(length: Length, limit: LengthLimit) -> bool | None:
    """May a fish of this length be kept under a limit? None when it depends on the exact length."""
    within = inside(length, limit)
    if within is None:
        return None
    return within if limit.effect == "keep-within" else not within


def is_over(length: Length, over: OverCount) -> bool | None:
    """Is a fish longer than the length of an over-count? None when both are possible."""
    return beyond(length, limit_mm(over.length, over.unit), over.included)


def _belongs(bag: Bag, book: Rulebook) -> Callable[[str], bool]:
    """Does a taxon count in this bag?"""
    def test(taxon: str) -> bool:
        if bag.group:
            return book.in_group(taxon, bag.group) or _holds_some(taxon, book.members[bag.group], book)
        return taxon == bag.taxon or bag.taxon in book.lineage.parents(taxon) or _holds_some(
            taxon, frozenset({bag.taxon}), book)
    return test


def _holds_some(taxon: str, members: frozenset[str], book: Rulebook) -> bool:
    """True when ``taxon`` is a genus or family that one of the members belongs to."""
    return any(taxon in book.lineage.above(m) for m in members)


def tally(bag: Bag, kept: Sequence[Kept], book: Rulebook) -> Tally:
    """How many kept fish count in a bag. One that may be of the group counts: the strict reading."""
    belongs = _belongs(bag, book)
    counts = [k.count for k in kept if _of_time(k, bag.kind) and any(belongs(t) for t in k.taxa)]
    return Tally(bag.kind, bag.name, sum(counts), sum(counts), bag.count, bag.rule)


def _of_time(kept: Kept, kind: str) -> bool:
    return kept.held if kind == "possession" else kept.today


def sub_tally(sub: SubLimit, rule: str, kept: Sequence[Kept], book: Rulebook) -> Tally:
    """How many kept fish are of a sub-limit's taxa: surely, and at most."""
    today = [k for k in kept if k.today]
    sure = sum(k.count for k in today if k.taxa and all(names(sub, t, book) for t in k.taxa))
    maybe = sum(k.count for k in today if any(names(sub, t, book) for t in k.taxa))
    return Tally("sub-limit", sub.id, sure, maybe, sub.count, rule)


def names(sub: SubLimit, taxon: str, book: Rulebook) -> bool:
    """True when a sub-limit is for this taxon or for its genus or family."""
    near = {taxon, *book.lineage.above(taxon)}
    return any(t in near for t in sub.taxa)


def over_tally(over: OverCount, row: Row, kept: Sequence[Kept], book: Rulebook) -> Tally:
    """How many fish kept today are longer than an over-count's length: surely, and at most."""
    belongs = _belongs(row.daily, book) if row.daily else (lambda taxon: taxon == row.taxon)
    today = [k for k in kept if k.today and any(belongs(t) for t in k.taxa)]
    sure = sum(k.count for k in today if is_over(k.length, over) is True)
    maybe = sum(k.count for k in today if is_over(k.length, over) is not False)
    rule = row.length.rules[-1] if row.length else ""
    return Tally("one-over", row.daily.name if row.daily else row.taxon, sure, maybe, over.count, rule)
