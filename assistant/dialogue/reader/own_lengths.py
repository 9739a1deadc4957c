"""Whether a length or a weight in a line is that of the fish itself (layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from assistant.dialogue.reader.amounts import Piece
from assistant.text import word_set
from assistant.units import MM

LONGEST_FISH = 6000
"""Millimetres; no fish of fresh water is longer, a greater length is a depth or a distance (common practice)."""
_RULE_BEFORE = word_set(
    "limit minimum min max maximum says board sign rule slot law legal must least than over above exceed"
)
_MEASURING = word_set("tape ruler stick measure scale net mark bump")
"""What may say a length or a weight of the fish itself ("tape says 18")."""
OF_OTHERS = word_set(
    "deep down water depth test line leader mono braid hook hooks worm worms lure lures jig bait spoon plug rod "
    "mesh away net weights sinker brush brushpile timber stumps weeds weedline pads boat kayak canoe dock pier "
    "pole cliff dropoff ledge hump hole holes visibility clarity vis ice waves tippet rope stringer seine fence "
    "current chop column grub grubs swimbait crankbait fluke tube craw crawdad spinnerbait topwater popper bobber "
    "float fly streamer frog crawler minnow shiner chub chubs shad treble cast casts swivel longer shorter bigger "
    "smaller short"
)
"""Words behind a length that is none of a fish: a depth, a thing so long, what one fish is longer than another."""
_LIMITS = word_set("minimum limit min")
_WATERY = OF_OTHERS | _LIMITS | word_set("water cover structure")
"""What a length may be "of" that is none of a fish ("12 foot of brush")."""


_LONG_UNITS = ("ft", "m")
"""Units in which depths are told ("came up from 18 feet")."""


def own(
    pieces: Sequence[Piece], kind: str, unit: str, low: Decimal, at: tuple[int, int], is_part: Callable[[str], bool]
) -> bool:
    """False for a rule's figure, a depth, a line's strength, a lure's size, what one fish is longer than another, or
    the length of a part of the fish; ``at`` are the first piece of the measure and the one behind it.
    """
    first, after = at
    if kind == "length" and low * MM.get(unit, Decimal(1)) > LONGEST_FISH:
        return False
    before = [p.text for p in pieces[max(0, first - 3) : first]]
    if kind == "length" and unit in _LONG_UNITS and "from" in before[-2:]:
        return False
    about_over = before[-2:] == ["just", "over"] or before[-2:] == ["bit", "over"] or before[-3:-1] == ["just", "over"]
    told = before[-1:] in (["says"], ["say"]) and bool(_MEASURING & set(before))
    if not about_over and not told and _RULE_BEFORE & set(before):
        return False
    following = [p.text for p in pieces[after : after + 2]]
    if (OF_OTHERS | _LIMITS) & set(following[:1]) or (following[:1] == ["of"] and _WATERY & set(following[1:])):
        return False
    for piece in reversed(pieces[max(0, first - 6) : first]):
        if piece.kind == "other" or piece.text in _WHOLE_FISH:
            break
        if piece.kind == "word" and piece.text not in _OF_WHOLE and is_part(piece.text):
            return False
    return True


_WHOLE_FISH = word_set("fish it they they're theyre these girth and n")
"""Words that end the search for a part that a length is of."""
_OF_WHOLE = word_set("length long size total body fish measures measured")
"""Words before a figure that speak of the whole fish."""
