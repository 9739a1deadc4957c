"""Lengths, girths, weights and temperatures in typed text: a small grammar over pieces of the line (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from decimal import Decimal
from itertools import takewhile
from typing import NamedTuple

from assistant.dialogue.reader.amounts import UNITS, Amount, Piece, amount_at, fraction_at, pieces_of
from assistant.dialogue.reader.own_lengths import own
from assistant.dialogue.reader.reading import Measure
from assistant.dialogue.reader.warmth import glued_scale, warmth_at
from assistant.text import word_set
from assistant.units import GRAMS, MM

ABOUT = word_set(
    "about bout abt around roughly maybe approximately approx almost nearly ~ circa near close probably "
    "say guessing guess perhaps some ish like over under shy"
)
_SOFT_ABOUT = word_set("a an the just to of bit at was is its it")
_TO = word_set("to - – or thru through")
_NO_UNIT_AFTER = word_set(
    "the a an my our his her this that these those one each all total front back lake river creek pond "
    "stream your their which what and"
)
_POINTING = word_set("the that this which every each any no whatever")
_PRONOUN, _OTHER_UNITS = word_set("one"), word_set("inches inch metric") | word_set(" ".join(UNITS)) - {"in"}
"""A number word that stands for a fish, and what its size is asked in ("just the yellow one in cm")."""
_TOLD = re.compile(r" (?:was|is) ")
"""Between a number and the unit that it was told to be in ("31 was inches")."""
_SHORTENED = word_set("s d ll ve re")
"""What an apostrophe ties to a number word ("this one's"), so that it is no sign for feet."""
IsWord = Callable[[str], bool]


def _no(_: str) -> bool:
    return False


class Setting(NamedTuple):
    """What helps to read a bare number: the unit in use, whether a bare number is a length, which words name places."""

    unit: str = "in"
    bare: bool = False
    is_place: IsWord = _no
    is_part: IsWord = _no
    is_fish: IsWord = _no


class _Found(NamedTuple):
    """A measure in the making: pieces ``first`` up to ``after``."""

    low: Decimal
    high: Decimal
    unit: str
    kind: str
    first: int
    after: int
    bare: bool = False
    mixed: bool = False
    about: bool = False


def read_measures(text: str, setting: Setting) -> tuple[Measure, ...]:
    """Every measure of a line in the order of the text; impossible ones (zero, negative) are left out."""
    pieces = pieces_of(text)
    out: list[Measure] = []
    at = 0
    while at < len(pieces):
        both = _length_by_girth(pieces, at, setting)
        if both is not None:
            long, round_it = (_finish(text, pieces, one, setting) for one in both)
            out += [long, round_it._replace(kind="girth")]
            at = both[1].after
            continue
        found = _measure_at(pieces, at, setting)
        if found is None:
            at += 1
            continue
        if found.low > 0 and not _negative(pieces, found.first):
            out.append(_finish(text, pieces, found, setting))
        at = max(found.after, at + 1)
    return _undenied(text, out)


_DENIED = re.compile(r"\b(?:not|isn'?t|wasn'?t|aint|ain't)\s+(?:an?\s+)?$", re.IGNORECASE)


def _undenied(text: str, found: Sequence[Measure]) -> tuple[Measure, ...]:
    """The measures without one that is denied beside another of its kind ("66 cm, not 76")."""
    denied = [m for m in found if _DENIED.search(text[: m.start].replace("’", "'"))]
    held = {m.kind for m in found if m not in denied}
    return tuple(m for m in found if m not in denied or m.kind not in held)


_BY = word_set("x by × *")
STOUTEST, THINNEST = Decimal(1), Decimal("0.2")
"""Girth as a share of length beyond which "44 by 20" is no fish (common practice, no source)."""


def _length_by_girth(pieces: Sequence[Piece], at: int, setting: Setting) -> tuple[_Found, _Found] | None:
    """ "44 by 20", "18 x 13 in": a length and a girth as anglers write them; None where it is something else."""
    first = amount_at(pieces, at)
    if first is None or first.value < 4:
        return None
    unit, after = _unit_at(pieces, first.end, setting)
    second = amount_at(pieces, after + 1) if _text(pieces, after) in _BY else None
    if second is None or not first.value * THINNEST < second.value < first.value * STOUTEST:
        return None
    unit2, end = _unit_at(pieces, second.end, setting)
    if {unit, unit2} - {""} - set(MM) or _counted(pieces, end, setting):
        return None
    long = _made(first.value, first.value, unit or unit2 or setting.unit, first.start, after)
    round_it = _made(second.value, second.value, unit2 or unit or setting.unit, second.start, end)
    return long._replace(bare=not unit), round_it._replace(bare=not unit2)


def _measure_at(pieces: Sequence[Piece], at: int, setting: Setting) -> _Found | None:
    found = _of_water(pieces, at, setting) or _pounds_ounces(pieces, at) or _short_of(pieces, at, setting)
    found = found or _bare_unit(pieces, at)
    return found or _with_amount(pieces, at, setting)


def _of_water(pieces: Sequence[Piece], at: int, setting: Setting) -> _Found | None:
    """A bare number that tells how warm the water or the air is."""
    told = warmth_at(pieces, at, setting.unit == "cm")
    return None if told is None else _made(told.value, told.value, told.unit, told.start, told.end)


def _pounds_ounces(pieces: Sequence[Piece], at: int) -> _Found | None:
    """ "Weighed 2-9", "5-2, lb-oz": pounds and ounces joined by a dash, told so or weighed and hardly a range."""
    if _text(pieces, at + 1) not in ("-", "–") or at + 2 >= len(pieces):
        return _spoken_pounds(pieces, at)
    low, high = pieces[at], pieces[at + 2]
    if low.kind != "num" or high.kind != "num" or low.end != pieces[at + 1].start or high.start != pieces[at + 1].end:
        return None
    if not (low.text.isdigit() and high.text.isdigit()) or int(high.text) >= OUNCES or _text(pieces, at + 3) in UNITS:
        return None
    pounds, ounces = int(low.text), int(high.text)
    behind = [p.text for p in takewhile(lambda p: p.kind not in ("num", "frac", "uni"), pieces[at + 3 : at + 10])]
    named = bool(_POUNDS & set(behind) and _OUNCES & set(behind))
    no_range = ounces < pounds or ounces > 2 * pounds
    if not (named or (no_range and _WEIGHED & {p.text for p in pieces[max(0, at - 2) : at]})):
        return None
    value = Decimal(low.text) + Decimal(high.text) / OUNCES
    return _made(value, value, "lb", at, at + 3)._replace(unit="lb+oz")


def _spoken_pounds(pieces: Sequence[Piece], at: int) -> _Found | None:
    """ "Scale says one fifteen": two number words after a word of weighing."""
    low, before = amount_at(pieces, at), {p.text for p in pieces[max(0, at - 3) : at]}
    high = amount_at(pieces, low.end) if low and low.words and before & (_WEIGHED | {"scale", "scales"}) else None
    if low is None or high is None or not high.words or high.value >= OUNCES or not _ends(pieces, high.end):
        return None
    value = low.value + high.value / OUNCES
    return None if _text(pieces, high.end) in UNITS else _made(value, value, "lb", at, high.end)._replace(unit="lb+oz")


OUNCES = 16
"""Ounces in a pound."""
_WEIGHED = word_set("weighed weighs weighing went")
_POUNDS, _OUNCES = word_set("lb lbs pound pounds"), word_set("oz ounce ounces")


def _with_amount(pieces: Sequence[Piece], at: int, setting: Setting) -> _Found | None:
    first = amount_at(pieces, at)
    if first is None:
        return None
    unit, after = _unit_at(pieces, first.end, setting)
    if unit:
        return _compound(pieces, first, unit, after)
    ranged = _range(pieces, first, setting)
    if ranged:
        return ranged
    return _bare(pieces, first, setting)


def _range(pieces: Sequence[Piece], first: Amount, setting: Setting) -> _Found | None:
    word = _text(pieces, first.end)
    if word not in _TO and not (word == "and" and _text(pieces, first.start - 1) == "between"):
        return None
    second = amount_at(pieces, first.end + 1)
    if second is None or second.value <= first.value:
        return None
    unit, after = _unit_at(pieces, second.end, setting)
    if not unit:
        return None
    return _made(first.value, second.value, unit, first.start, after)


def _bare(pieces: Sequence[Piece], amount: Amount, setting: Setting) -> _Found | None:
    """A number without a unit: a length when written with a fraction, or where the talk is of length."""
    girth = _girth_near(pieces, amount.start, amount.end)
    if girth or (
        (amount.mixed and amount.value >= 1)
        or (_text(pieces, amount.end) == "long" and amount.value > 2)
        or (_text(pieces, amount.end) in _EXACTLY and amount.value > 4 and _text(pieces, amount.end + 1) in _STOPS)
        or (setting.bare and not amount.words)
        or (setting.bare and amount.value > 4)
    ):
        ordinal = {_text(pieces, amount.end), _text(pieces, amount.start)} & _ORDINAL
        if ordinal or (_counted(pieces, amount.end, setting) and not amount.mixed):
            return None
        found = _made(amount.value, amount.value, setting.unit, amount.start, amount.end)
        return found._replace(bare=True, mixed=amount.mixed)
    return None


_ORDINAL = word_set("st nd rd th third eighth")
"""What makes a number or a fraction word one of an order ("my 3rd today", "that would be my third")."""
_EXACTLY = word_set("even flat")
_STOPS = frozenset({"", ",", ".", ";", "?", "!"})
"""What may stand behind "eleven even" for it to be a length."""


def _counted(pieces: Sequence[Piece], at: int, setting: Setting) -> bool:
    """True when what follows makes the number a count, a date or an age."""
    piece = pieces[at] if at < len(pieces) else None
    return piece is not None and (
        piece.text in ("/", ":", "%", "x", "grade", "items", "questions", "of")
        or piece.text in _TIMES
        or (piece.kind == "mark" and piece.text in ("-", "–") and at + 1 < len(pieces) and pieces[at + 1].kind == "num")
        or (piece.kind == "word" and (setting.is_part(piece.text) or setting.is_fish(piece.text)))
    )


_TIMES = word_set("years year yr days day weeks week months month hours hour minutes min later ago times")
"""What makes a number before it one of time ("2 days later")."""


def _compound(pieces: Sequence[Piece], first: Amount, unit: str, after: int) -> _Found | None:
    """An amount with its unit, and the smaller unit or fraction after it ("2 ft 3 in", "1#12oz", "1 m 30")."""
    value, last = first.value, after
    name = unit
    smaller = _SMALLER.get(unit)
    if _text(pieces, after) in ("and", "n", "&"):
        part = fraction_at(pieces, after + 1)
        if part and part[0] < 1:
            return _made(value + part[0], value + part[0], unit, first.start, part[1])
    if smaller:
        start = after + (_text(pieces, after) in ("and", "&", ","))
        second = amount_at(pieces, start)
        if second is not None:
            small_unit, small_after = _unit_at(pieces, second.end, Setting())
            loose = not small_unit and start == after and _loose(pieces, unit, second)
            if small_unit == smaller or loose:
                base = MM if unit in MM else GRAMS
                value += second.value * base[smaller] / base[unit]
                last = small_after if small_unit else second.end
                name = "lb+oz" if unit == "lb" else unit
    found = _made(value, value, unit, first.start, last)
    return found._replace(unit=name)


_SMALLER = {"ft": "in", "lb": "oz", "m": "cm", "kg": "g"}
"""The unit in which the rest of a measure is told."""
_DIGITS = {"m": 2, "kg": 3}
"""How many digits the rest has where its unit is left out ("1 m 30", "1 kg 200")."""


def _loose(pieces: Sequence[Piece], unit: str, rest: Amount) -> bool:
    """True for the rest of a measure told without its unit ("3 lb 11", "1 m 05", "one meter thirty")."""
    if unit not in ("lb", *_DIGITS) or not _ends(pieces, rest.end):
        return False
    if unit == "lb":
        return rest.value < OUNCES and not rest.words
    if rest.words:
        return unit == "m" and 10 <= rest.value < 100
    return pieces[rest.start].text.isdigit() and len(pieces[rest.start].text) == _DIGITS[unit] and not rest.mixed


_COUNTED_AFTER = word_set("spines rays fish years days bars spots whiskers dorsal anal soft fins scales kids")


def _ends(pieces: Sequence[Piece], at: int) -> bool:
    piece = pieces[at] if at < len(pieces) else None
    return piece is None or piece.kind == "other" or (piece.kind == "word" and piece.text not in _COUNTED_AFTER)


def _bare_unit(pieces: Sequence[Piece], at: int) -> _Found | None:
    """A unit with no number before it: "a foot long", "foot and a half", "half a pound", "pound n half"."""
    skip = 1 if _text(pieces, at) in ("a", "an") else 0
    word = _text(pieces, at + skip)
    unit = UNITS.get(word)
    if (
        unit is None
        or word not in ("foot", "pound", "inch", "kilo", "lb", "meter", "metre", "pounder")
        or _after_number(pieces, at)
    ):
        return None
    after = at + skip + 1
    if _text(pieces, after) in ("and", "n", "&", "an"):
        part = fraction_at(pieces, after + 1)
        if part and part[0] < 1:
            return _made(1 + part[0], 1 + part[0], unit, at, part[1])
    return _made(Decimal(1), Decimal(1), unit, at, after) if skip and _text(pieces, after) != "of" else None


def _after_number(pieces: Sequence[Piece], at: int) -> bool:
    piece = pieces[at - 1] if at else None
    return piece is not None and (piece.kind in ("num", "frac", "uni") or piece.text in ("half", "quarter"))


def _short_of(pieces: Sequence[Piece], at: int, setting: Setting) -> _Found | None:
    """ "two inches short of thirty", "an inch shy of 40", "half an inch over a foot"."""
    if _text(pieces, at) in ("a", "an"):
        first: Amount | None = Amount(Decimal(1), at, at + 1)
    else:
        first = amount_at(pieces, at)
    if first is None:
        return None
    unit, after = _unit_at(pieces, first.end, setting)
    way = _text(pieces, after)
    if not unit or way not in ("short", "shy", "under", "over", "past", "longer", "more"):
        return None
    after += 1 + (_text(pieces, after + 1) in ("of", "than"))
    second = amount_at(pieces, after)
    foot = _bare_unit(pieces, after) if second is None else None
    if foot is not None:
        second = Amount(foot.low, after, foot.after - 1)
    if second is None:
        return None
    unit2, end = _unit_at(pieces, second.end, setting)
    table = MM if unit in MM else GRAMS
    if (unit2 or unit) not in table:
        return None
    gap = first.value * table[unit] / table[unit2 or unit]
    value = second.value - gap if way in ("short", "shy", "under") else second.value + gap
    return _made(value, value, unit2 or unit, at, end if unit2 else second.end)


def _unit_at(pieces: Sequence[Piece], at: int, setting: Setting) -> tuple[str, int]:
    """The unit at a piece and the piece after it; an empty unit when there is none."""
    if _text(pieces, at) == "-" and _text(pieces, at + 1).isalpha():
        at += 1
    if _text(pieces, at) == "ish" or (_text(pieces, at) in ("was", "is") and len(_text(pieces, at + 1)) > 2):
        at += 1
    if _text(pieces, at) in ("degrees", "degree", "°", "deg"):
        scale = _text(pieces, at + 1)[:1]
        return ("degC", at + 2) if scale == "c" else ("degF", at + 1 + (scale == "f"))
    word = _text(pieces, at)
    unit = UNITS.get(word, "")
    glued = at > 0 and at < len(pieces) and pieces[at - 1].end == pieces[at].start
    if not unit:
        scale = glued_scale(_text(pieces, at - 1), word) if glued else ""
        return scale, at + bool(scale)
    following = _text(pieces, at + 1)
    if (
        word == "in"
        and not glued
        and (following in _NO_UNIT_AFTER or setting.is_place(following) or following.isdigit()
             or (pieces[at - 1].text in _PRONOUN
                 and (following in _OTHER_UNITS or _text(pieces, at - 2) in _POINTING)))
    ):
        return "", at
    if word in ("m", "g") and not glued and pieces[at - 1].kind != "num":
        return "", at
    if word in ("'", "’", "′") and (not glued or following in _SHORTENED):
        return "", at
    return unit, at + 1


def _made(low: Decimal, high: Decimal, unit: str, first: int, after: int) -> _Found:
    kind = "temperature" if unit.startswith("deg") else "weight" if unit in GRAMS else "length"
    return _Found(low, high, unit, kind, first, after)


def _negative(pieces: Sequence[Piece], at: int) -> bool:
    before = pieces[at - 1] if at else None
    return (
        before is not None
        and before.text == "-"
        and before.end == pieces[at].start
        and (at < 2 or pieces[at - 2].end < before.start)
    )


def _finish(text: str, pieces: Sequence[Piece], found: _Found, setting: Setting) -> Measure:
    girth = found.kind == "length" and _girth_near(pieces, found.first, found.after)
    first, after = _widen(pieces, found)
    low, high = (_base(v, found.unit) for v in (found.low, found.high))
    return Measure(
        kind="girth" if girth else found.kind,
        low=low,
        high=high,
        unit=found.unit,
        words=_TOLD.sub(" ", text[pieces[found.first].start : pieces[found.after - 1].end]),
        start=pieces[first].start,
        end=pieces[after - 1].end,
        about=_about(pieces, found),
        method=_method(pieces, found),
        own=own(pieces, found.kind, found.unit, found.low, (found.first, found.after), setting.is_part),
        bare=found.bare,
    )


def _base(value: Decimal, unit: str) -> Decimal:
    if unit == "degF":
        return (value - 32) * 5 / 9
    if unit == "degC":
        return value
    unit = "lb" if unit == "lb+oz" else unit
    return value * (MM[unit] if unit in MM else GRAMS[unit])


def _widen(pieces: Sequence[Piece], found: _Found) -> tuple[int, int]:
    first = found.first
    while first and (pieces[first - 1].text in ABOUT or pieces[first - 1].text == "girth"):
        first -= 1
    after = found.after
    if _text(pieces, after) in ("long", "tl", "fl", "sl", "girth"):
        after += 1
    return first, after


def _about(pieces: Sequence[Piece], found: _Found) -> bool:
    if found.low != found.high:
        return False
    at = found.first - 1
    while at >= 0 and pieces[at].text in _SOFT_ABOUT and found.first - at < 4:
        at -= 1
    if at >= 0 and pieces[at].text in ABOUT and not (at and pieces[at - 1].text in ("what", "how")):
        return True
    return any(_text(pieces, i) == "ish" for i in (found.after - 1, found.after - 2, found.after)) or (
        _text(pieces, found.after) == "or" and _text(pieces, found.after + 1) == "so"
    )


def _girth_near(pieces: Sequence[Piece], first: int, after: int) -> bool:
    before = [p.text for p in pieces[max(0, first - 4) : first]]
    if "girth" in before and not any(p in (",", ";") for p in before[before.index("girth") :]):
        return True
    if before[-1:] == ["g"] and (first < 2 or pieces[first - 2].kind not in ("num", "uni", "frac")):
        return True
    following = [p.text for p in pieces[after : after + 3]]
    if following[:1] == ["girth"]:
        return not any(p.kind in ("num", "frac") for p in pieces[after + 1 : after + 2])
    if following[:1] == ["round"]:
        return following[1:2] in ([], [","], [";"], ["."], ["?"], ["the"], ["its"])
    return following[:1] == ["around"] or following[:2] in (["big", "around"], ["in", "girth"], ["about", "the"])


def _method(pieces: Sequence[Piece], found: _Found) -> str:
    near = [p.text for p in pieces[max(0, found.first - 2) : found.first]] + [
        p.text for p in pieces[found.after : found.after + 3]
    ]
    if "fl" in near or "fork" in near:
        return "fork"
    if "sl" in near or "standard" in near:
        return "standard"
    return "total" if "tl" in near or "total" in near else ""


def _text(pieces: Sequence[Piece], at: int) -> str:
    return pieces[at].text if 0 <= at < len(pieces) else ""
