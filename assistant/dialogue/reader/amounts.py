"""Numbers as people write them: figures, mixed fractions, words; the lower half of the measures (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal, InvalidOperation
from typing import NamedTuple

from assistant.dialogue.reader.number_words import MOST_WORDS, spelt_at
from assistant.model.stems import NUMBERS
from assistant.text import word_set

_LEX = re.compile(
    r"(?P<frac>\d{1,3}\s?[/⁄]\s?\d{1,3}(?!\d|/))"
    r"|(?P<num>\d{1,3}(?:,\d{3})+(?:\.\d+)?(?!\d)|\d+[.,]\d+(?!\d)|\.\d+|\d+)"
    r"|(?P<uni>[¼½¾⅛⅜⅝⅞⅓⅔])"
    r"|(?P<word>[^\W\d_]+)"
    r"|(?P<mark>''|[\"”“″'’′#~°-]|–)"
    r"|(?P<other>\S)",
    re.UNICODE,
)
_UNICODE = {
    "¼": "0.25",
    "½": "0.5",
    "¾": "0.75",
    "⅛": "0.125",
    "⅜": "0.375",
    "⅝": "0.625",
    "⅞": "0.875",
    "⅓": "0.3333",
    "⅔": "0.6667",
}
_BRED = word_set("breed breeds bred blood bloods blooded caste castes")
"""Words after "half" by which a cross is meant ("them half breed ones")."""
_PARTS = {"half": Decimal("0.5"), "quarter": Decimal("0.25"), "third": Decimal("0.3333"), "eighth": Decimal("0.125")}
UNITS: dict[str, str] = {
    word: unit
    for unit, words in {
        "in": "in inch inches incher inchers inche inchs ins \" ” “ ″ ''",
        "ft": "ft foot feet foots ' ′ ’",
        "cm": "cm cms centimeter centimeters centimetre centimetres centimetr",
        "m": "m meter meters metre metres",
        "mm": "mm mms millimeter millimeters millimetre millimetres",
        "lb": "lb lbs pound pounds # lber pounder pounders lb's",
        "oz": "oz ozs ounce ounces",
        "g": "g gr gm gms gram grams gramme grammes",
        "kg": "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
    }.items()
    for word in words.split()
}
"""Unit words and signs as typed."""
_AND = word_set("and n an & nd")
_MOST_DIGITS = 9


class Piece(NamedTuple):
    """A lexical piece of a line: its kind (frac, num, uni, word, mark, other), its lower-case text and its place."""

    kind: str
    text: str
    start: int
    end: int


class Amount(NamedTuple):
    """A number read from pieces ``start`` up to ``end``; ``mixed`` with a fraction, ``words`` when spelt out."""

    value: Decimal
    start: int
    end: int
    mixed: bool = False
    words: bool = False


def pieces_of(text: str) -> tuple[Piece, ...]:
    """The line in pieces."""
    return tuple(Piece(str(m.lastgroup), m.group().lower(), m.start(), m.end()) for m in _LEX.finditer(text))


def amount_at(pieces: Sequence[Piece], at: int) -> Amount | None:
    """The number that begins at a piece, with the fraction that belongs to it; None when there is none."""
    whole = _whole(pieces, at)
    if whole is None:
        part = fraction_at(pieces, at)
        return Amount(part[0], at, part[1], mixed=True) if part else None
    value, after, spelt = whole
    if value == value.to_integral_value():
        part = _joined_fraction(pieces, after)
        if part:
            return Amount(value + part[0], at, part[1], mixed=True, words=spelt)
    return Amount(value, at, after, words=spelt)


def fraction_at(pieces: Sequence[Piece], at: int) -> tuple[Decimal, int] | None:
    """A fraction at a piece ("3/4", "½", "a half", "three quarters", "half a") and the piece after it."""
    piece = _get(pieces, at)
    if piece is None:
        return None
    if piece.kind == "uni":
        return Decimal(_UNICODE[piece.text]), at + 1
    if piece.kind == "frac":
        top, bottom = (Decimal(x.strip()) for x in re.split(r"[/⁄]", piece.text))
        return (top / bottom, at + 1) if bottom and top < bottom * 20 else None
    if piece.text in ("a", "an", "one") and _text(pieces, at + 1) in _PARTS:
        return _PARTS[_text(pieces, at + 1)], at + 2
    if piece.text in ("three", "3", "two", "2") and _text(pieces, at + 1).rstrip("s") in ("quarter", "third", "eighth"):
        return Decimal(NUMBERS.get(piece.text, piece.text)) * _PARTS[_text(pieces, at + 1).rstrip("s")], at + 2
    if piece.text in _PARTS and _text(pieces, at + 1) not in _BRED:
        skip = 1 + (_text(pieces, at + 1) in ("a", "an"))
        return _PARTS[piece.text], at + skip
    return None


def _joined_fraction(pieces: Sequence[Piece], at: int) -> tuple[Decimal, int] | None:
    """The fraction after a whole number: "7 1/2", "7-1/2", "7½", "7 and a half"."""
    word = _text(pieces, at)
    if word in _AND:
        return _small(fraction_at(pieces, at + 1))
    if word == "-":
        following = _get(pieces, at + 1)
        return _small(fraction_at(pieces, at + 1)) if following and following.kind in ("frac", "uni") else None
    following = _get(pieces, at)
    return _small(fraction_at(pieces, at)) if following and following.kind in ("frac", "uni") else None


def _small(part: tuple[Decimal, int] | None) -> tuple[Decimal, int] | None:
    return part if part and part[0] < 1 else None


def _whole(pieces: Sequence[Piece], at: int) -> tuple[Decimal, int, bool] | None:
    piece = _get(pieces, at)
    if piece is None:
        return None
    if piece.kind == "num" and len(piece.text) <= _MOST_DIGITS:
        value = figure(piece.text)
        if value is not None and _text(pieces, at + 1).rstrip("s") in ("quarter", "third", "eighth"):
            return None
        return (value, at + 1, False) if value is not None else None
    spelt = spelt_at([p.text for p in pieces[at : at + MOST_WORDS]], 0)
    if spelt is None:
        return None
    after = at + spelt[1]
    parts = _text(pieces, after).rstrip("s") in ("quarter", "third", "eighth") or _text(pieces, after) == "half"
    return None if after == at + 1 and parts else (Decimal(spelt[0]), after, True)


def figure(text: str) -> Decimal | None:
    """A typed figure as a number: a comma before three digits parts thousands, otherwise it is a decimal comma.

    >>> figure("1,020"), figure("21,5"), figure(".65")
    (Decimal('1020'), Decimal('21.5'), Decimal('0.65'))
    """
    if re.fullmatch(r"\d{1,3}(,\d{3})+(\.\d+)?", text):
        text = text.replace(",", "")
    try:
        return Decimal(text.replace(",", "."))
    except InvalidOperation:
        return None


def _get(pieces: Sequence[Piece], at: int) -> Piece | None:
    return pieces[at] if 0 <= at < len(pieces) else None


def _text(pieces: Sequence[Piece], at: int) -> str:
    piece = _get(pieces, at)
    return piece.text if piece else ""
