"""Numbers written out, as spoken and as misspelt: "forty eight", "fourty-eight", "a hundred and ten" (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise

from assistant.model.stems import NUMBERS
from assistant.text import word_set

_SLIPS: dict[str, str] = {
    slip: word
    for word, slips in {
        "two": "tow",
        "three": "tree thre",
        "eight": "eigth eihgt eigt",
        "nine": "nien",
        "eleven": "elevin elleven",
        "twelve": "twelf twelv twelth",
        "thirteen": "thirten therteen",
        "fourteen": "forteen fourten",
        "fifteen": "fiveteen fiften fivteen fifthteen",
        "eighteen": "eightteen eigthteen eigteen eighten",
        "nineteen": "ninteen nineten",
        "twenty": "twent twenny tweny twenety twentie",
        "thirty": "thirthy therty thirdy thrity",
        "forty": "fourty fourthy forthy fourtie",
        "fifty": "fivety fivty fifthy fifety",
        "sixty": "sixthy sixtie",
        "seventy": "seventie sevnty",
        "eighty": "eigthy eightty eigty",
        "ninety": "ninty ninetie",
    }.items()
    for slip in slips.split()
}
"""Slips in writing out numbers. "tow" and "tree" count only behind tens."""
_WORDS_TOO = word_set("tow tree")
"""Slips that are words of their own."""
_HUNDRED = word_set("hundred hundert hunderd hundered")
_AND = word_set("and n nd &")
_DASH = ("-",)
_TENS = 20
MOST_WORDS = 6
"""Words and dashes in the longest number written out ("two hundred and forty-eight")."""


def spelt_at(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """The whole number written out from a word on, with the place of the word after it; None where there is none.

    >>> spelt_at(["fourty", "eight", "cm"], 0), spelt_at(["a", "hundred", "and", "ten"], 0), spelt_at(["cm"], 0)
    ((48, 2), (110, 4), None)
    """
    hundreds = _hundreds(words, at)
    if hundreds is None:
        return _below_hundred(words, at)
    value, after = hundreds
    rest = _below_hundred(words, after + (_word(words, after) in (*_AND, *_DASH)))
    return (value + rest[0], rest[1]) if rest else hundreds


_PIECE = re.compile(r"[^\W\d_]+|-|&")
_COUNTED = re.compile(
    r"\s*(?:-|(?:and|n)\s+(?:a\s+|one\s+)?(?:half|quarter)|and\s+three\s+quarter)?\s*-?"
    r"(?:in|ins|inch|inches|incher|cm|cms|mm|centi\w+|milli\w+|f(?:oo|ee)t|ft|met(?:er|re)s?)\b", re.IGNORECASE)
"""A unit of length behind a number, with a fraction between."""


def in_figures(text: str) -> str:
    """The text with figures for numbers of several words and for those of a length ("fifteen inches").

    >>> in_figures("kept twenty five of them, one fourty inches"), in_figures("two pike")
    ('kept 25 of them, one 40 inches', 'two pike')
    """
    pieces = list(_PIECE.finditer(text))
    words = [p.group().lower() for p in pieces]
    out, done, at = "", 0, 0
    while at < len(pieces):
        found = spelt_at(words[at : at + MOST_WORDS], 0)
        if found is None or not _adjoin(text, pieces[at : at + found[1]]):
            at += 1
            continue
        end = pieces[at + found[1] - 1].end()
        if found[1] > 1 or _COUNTED.match(text, end):
            out, done = f"{out}{text[done : pieces[at].start()]}{found[0]}", end
        at += found[1]
    return out + text[done:]


def _adjoin(text: str, pieces: Sequence[re.Match[str]]) -> bool:
    """True for words with nothing but spaces between them."""
    return all(not text[a.end() : b.start()].strip() for a, b in pairwise(pieces))


def _hundreds(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """Whole hundreds: "hundred", "a hundred", "two hundred"."""
    if _word(words, at) in _HUNDRED:
        return 100, at + 1
    if _word(words, at + 1) not in _HUNDRED:
        return None
    many = 1 if _word(words, at) in ("a", "an") else _value(_word(words, at))
    return (100 * many, at + 2) if many is not None and 0 < many < 10 else None


def _below_hundred(words: Sequence[str], at: int) -> tuple[int, int] | None:
    """A number from one to 99, its tens and units parted, joined by a dash or written as one."""
    word = _word(words, at)
    value = _value(word) if word not in _WORDS_TOO else None
    if value is None:
        together = _written_together(word)
        return (together, at + 1) if together else None
    follows = at + 1 + (_word(words, at + 1) in _DASH)
    unit = _value(_word(words, follows))
    if value >= _TENS and unit is not None and 0 < unit < 10:
        return value + unit, follows + 1
    return (value, at + 1) if value else None


def _written_together(word: str) -> int | None:
    """The value of "fortyeight" or "twentyfive"."""
    if len(word) < len("sixtyone"):
        return None
    for cut in range(5, len(word) - 2):
        tens, unit = _value(word[:cut]), _value(word[cut:])
        if tens is not None and tens >= _TENS and unit is not None and 0 < unit < 10:
            return tens + unit
    return None


def _value(word: str) -> int | None:
    figure = NUMBERS.get(_SLIPS.get(word, word), "")
    return int(figure) if figure else None


def _word(words: Sequence[str], at: int) -> str:
    return words[at] if 0 <= at < len(words) else ""
