"""Values of the rule book in words: lengths in the rule's own unit, days, limits, counts, rule numbers (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal
from fractions import Fraction

from assistant.dialogue.wording import limits as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import LengthLimit, OverCount, Rulebook
from assistant.reasoning import catch as c
from assistant.reasoning.counting import UNITS
from assistant.reasoning.place_prior import REGIONS
from assistant.reasoning.verdict import Season, Tally
from assistant.text import join, unique
from assistant.units import MM

AREAS = frozenset({"demo-jurisdiction", "demo-zone", "state", "province", "territory", "district", "country", *REGIONS})
MONTHS = (
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
)


def day_words(day: date | str) -> str:
    """A day in words: "4 July 2026"."""
    found = date.fromisoformat(day) if isinstance(day, str) else day
    return f"{found.day} {MONTHS[found.month - 1]} {found.year}"


def month_words(day: date) -> str:
    """The month of a day in words: "July 2026"."""
    return f"{MONTHS[day.month - 1]} {day.year}"


def _plain(value: Decimal) -> str:
    text = f"{value:f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _other(mm: Decimal, unit: str, rounding: str = ROUND_HALF_UP) -> str:
    other = "in" if unit in ("cm", "mm", "m") else "cm"
    return f"{_plain((mm / MM[other]).quantize(Decimal('0.1'), rounding=rounding))} {other}"


def length_words(value: Decimal, unit: str, rounding: str = ROUND_HALF_UP) -> str:
    """A length in its own unit, the other in brackets: "14 in (35.6 cm)"; eighths of an inch as a fraction."""
    shown = _eighths(value) if unit == "in" else _plain(value)
    return f"{shown} {unit} ({_other(value * MM[unit], unit, rounding)})"


def _eighths(value: Decimal) -> str:
    """Inches with quarters and eighths as fractions, all else as a decimal: "9 7/8", "15.5", "13.9"."""
    eighths = value * 8
    if eighths != eighths.to_integral_value() or (value * 2) == (value * 2).to_integral_value():
        return _plain(value)
    whole, rest = divmod(int(eighths), 8)
    return f"{whole} {Fraction(rest, 8)}" if whole else str(Fraction(rest, 8))


def fish_length(length: c.Length) -> str:
    """The length of a catch as it was said; empty when it was not."""
    if length == c.UNSAID or length.value is None:
        return ""
    text = length_words(length.value, length.unit)
    if length.about:
        return say.about(text)
    if length.exact:
        return text
    if length.high is None:
        return say.over(text)
    low = length.low / MM[length.unit]
    return say.under(text) if length.low == 0 else say.from_to(_plain(low.quantize(Decimal("0.1"))), text)


def limit_words(limit: LengthLimit) -> str:
    """A length limit: "at least 15 in (38.1 cm)", "fish of 70 to 90 cm (...) go back, both ends included".

    In the other unit it is rounded so that a fish which fits what is shown fits the limit.
    """
    unit = UNITS[limit.unit]
    kept = limit.effect == "keep-within"
    least, most = (ROUND_CEILING, ROUND_FLOOR) if kept else (ROUND_FLOOR, ROUND_CEILING)
    if limit.low is not None and limit.high is not None:
        low, high = limit.low * MM[unit], limit.high * MM[unit]
        span = say.span_both(
            _plain(limit.low), _plain(limit.high), unit, _other(low, unit, least).split()[0],
            _other(high, unit, most)
        )
        ends = say.ends(limit.low_included, limit.high_included)
        return say.keep_span(span, ends) if kept else say.release_span(span, ends)
    if limit.low is not None:
        text = length_words(limit.low, unit, least)
        return say.minimum(text, limit.low_included) if kept else say.release_above(text, limit.low_included)
    text = length_words(limit.high or Decimal(0), unit, most)
    return say.maximum(text, limit.high_included) if kept else say.release_below(text, limit.high_included)


def over_words(over: OverCount) -> str:
    """ "at most 2 over 20 cm (7.9 in)"."""
    return say.at_most_over(over.count, length_words(over.length, UNITS[over.unit]), over.included)


def rule_tag(book: Rulebook, rule: str) -> str:
    """The number of a rule ("H14"), or its id where it has none."""
    found = book.rules.get(rule)
    return (found.notation or found.id) if found is not None else rule


def tags(book: Rulebook, rules: Iterable[str]) -> str:
    """The numbers of several rules, each once."""
    return join(unique(rule_tag(book, r) for r in rules if r))


def counted(kb: KnowledgeBase, book: Rulebook, name: str) -> str:
    """What a count counts: the label of a group, a taxon or a sub-limit."""
    if name in book.groups:
        return book.groups[name].label
    if name in book.sub_limits:
        return book.sub_limits[name].label
    found = kb.find("taxon", name)
    return found.label if found is not None else name


def fish_words(kb: KnowledgeBase, taxa: Sequence[str]) -> str:
    """Several fishes as alternatives; "any fish" for no stated kind."""
    if tuple(taxa) == (c.ANY_FISH,):
        return say.ANY_FISH
    return join([name_of(kb, t) for t in taxa], "or")


def name_of(kb: KnowledgeBase, taxon: str) -> str:
    """The English name of a taxon; a cross that the base does not hold by its parents."""
    found = kb.find("taxon", taxon)
    if found is not None:
        return str(found.label)
    return say.cross(*(name_of(kb, p) for p in taxon.split("-x-"))) if taxon.count("-x-") == 1 else say.words_of(taxon)


def place_words(kb: KnowledgeBase, place: str) -> str:
    """The name of a place."""
    found = kb.place(place)
    return found.label if found is not None else place


def at_words(kb: KnowledgeBase, place: str) -> str:
    """A place with its preposition: "on Vennimoor Lake", "in Harrowelt"."""
    found = kb.place(place)
    area = found is not None and found.kind in AREAS
    return say.in_area(found.label) if found is not None and area else say.on_water(place_words(kb, place))


def tally_words(kb: KnowledgeBase, book: Rulebook, tally: Tally) -> str:
    """A count with its limit: "8 of 8 sunfish"."""
    name = counted(kb, book, tally.name)
    if tally.limit is None:
        return say.no_limit(name)
    have = str(tally.have) if tally.have == tally.at_most else say.span(tally.have, tally.at_most)
    return say.of_limit(have, tally.limit, name, tally.kind)


def season_words(season: Season, day: date) -> str:
    """Whether it is open on the day, until when, and when it opens otherwise."""
    last = (
        ""
        if season.last is None or season.first is None or (season.last - season.first).days >= 364
        else day_words(season.last)
    )
    opens = "" if season.next_open is None else day_words(season.next_open)
    if season.mode == "harvest":
        return say.open_until(last)
    return say.release_only_until(last, opens) if season.mode == "catch-and-release" else say.closed_until(opens)


def gap_words(mm: Decimal, unit: str) -> str:
    """A difference of lengths: "1/8 in (0.3 cm)"."""
    return length_words((mm / MM[unit]).quantize(Decimal("0.001")).normalize(), unit)
