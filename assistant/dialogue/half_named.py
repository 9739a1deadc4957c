"""The parents of a cross that a line guesses at: "is it half bluegill?", "a cross of the two?" (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Reading

_BEFORE = re.compile(r"\b(?:(?:half|part|partly)[\s-]+(?:an?\s+)?|(?:crossed|mixed|bred)\s+with\s+(?:an?\s+)?)$")
_BEHIND = re.compile(r"^[\s-]+(?:blood|in (?:it|him|her|there))\b")
"""What stands before or behind the parent that is named."""


def half_named(reading: Reading) -> tuple[str, ...]:
    """Ids of the fishes of which a catch is said to be half or a part."""
    text = reading.text.lower()
    return tuple(m.ids[0] for m in reading.of("taxon")
                 if len(m.ids) == 1 and (_BEFORE.search(text[: m.start]) or _BEHIND.search(text[m.end :])))


def two_crossed(reading: Reading) -> tuple[str, ...]:
    """Ids of the two fishes that the line names or likens a catch to, and of which it is guessed to be the cross."""
    text, told = reading.text.lower(), [m for m in reading.of("taxon", "likeness") if len(m.ids) == 1]
    pair = tuple(dict.fromkeys(m.ids[0] for m in told))
    each = len(told) == 2 and all(_IN_PART.search(text[: m.start]) for m in told)
    return pair if len(pair) == 2 and (each or _OF_TWO.search(text)) else ()


_IN_PART = re.compile(r"\b(?:kinda|kind of|sorta|sort of|part|partly|some)[\s-]+(?:an?\s+|like an?\s+|like\s+)?$")
"""What stands before each of two fishes that a catch is said to be in part ("kinda gill kinda green sunfish")."""
_OF_TWO = re.compile(r"\b(?:cross(?:breed)?|hybrid|mix|blend) (?:of|between) (?:the two|them|both|these|those)\b")
"""Words by which a catch is guessed to be a cross of the fishes just named."""
