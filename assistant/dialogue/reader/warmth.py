"""Bare numbers that tell how warm the water or the air is: "the water is 71", "95 out today" (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple

from assistant.dialogue.reader.amounts import UNITS, Amount, Piece, amount_at
from assistant.text import word_set

_TEMPERATURES = word_set("temp temps temperature thermometer gauge")
_WATERS = word_set("water waters stream streams creek creeks river rivers crick brook lake lakes pond surface flow")
_IS = word_set("is at was hit hits reads read of about around temp temperature says")
COOLEST_F = 31
"""Below this a bare water temperature is in degrees Celsius (water freezes at 32 F)."""
WARM_F, HOTTEST = 46, 120
"""A bare figure of the air below the first is in degrees Celsius where lengths are in centimetres; none is higher than
the second."""
_OUT = word_set("out outside")
_TODAY = word_set("today now there here and so right already")


class Warmth(NamedTuple):
    """A temperature told by the pieces ``start`` up to ``end``, its unit degF or degC."""

    value: Decimal
    unit: str
    start: int
    end: int


def warmth_at(pieces: Sequence[Piece], at: int, metric: bool) -> Warmth | None:
    """The temperature of the water or the air that a bare number at a piece tells, in the scale that it fits."""
    first = amount_at(pieces, at)
    if first is None or first.words or not 0 <= first.value <= HOTTEST:
        return None
    before = [p.text for p in pieces[max(0, first.start - 4) : first.start]]
    behind = [p.text for p in pieces[first.end : first.end + 4]]
    if _of_air(first, behind):
        return Warmth(first.value, "degC" if metric and first.value < WARM_F else "degF", first.start, first.end + 1)
    told = (bool(_WATERS & set(before)) or bool(_TEMPERATURES & set(before))) and before[-1:] and before[-1] in _IS
    told = told or (before[-1:] == ["water"] and behind[:1] in (["f"], ["c"]))
    if not (told or "thermometer" in behind) or (behind and behind[0] in {*UNITS, "deep", "down", "degrees", "degree"}):
        return None
    end = first.end + (behind[:1] in (["f"], ["c"]))
    unit = "degC" if behind[:1] == ["c"] or (behind[:1] != ["f"] and first.value < COOLEST_F) else "degF"
    return Warmth(first.value, unit, first.start, end)


def glued_scale(figure: str, word: str) -> str:
    """The scale of a figure with its letter right behind it ("69F", "21c"); empty where no water is so warm."""
    if word not in ("f", "c") or not figure.isdigit():
        return ""
    if word == "f":
        return "degF" if COOLEST_F <= int(figure) <= HOTTEST else ""
    return "degC" if int(figure) < WARM_F else ""


def _of_air(amount: Amount, behind: Sequence[str]) -> bool:
    """True for a bare number that tells how hot it is out of doors ("95 out.", "88 outside today")."""
    ends = not behind[1:] or not behind[1].isalpha() or behind[1] in _TODAY
    return bool(behind) and behind[0] in _OUT and ends and amount.value > COOLEST_F
