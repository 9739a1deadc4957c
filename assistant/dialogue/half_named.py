"""The parents of a cross that a line guesses at: "is it half bluegill?", "a cross of the two?" (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.reader.reading import Mention, Reading
from assistant.text import word_set

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
    return pair if len(pair) == 2 and (each or _OF_TWO.search(text) or _between(text, told)) else ()


def seen_between(reading: Reading) -> bool:
    """True where a catch is seen to stand between two fishes, not only guessed to be their cross."""
    return _between(reading.text.lower(), reading.of("taxon", "likeness"))


def _between(text: str, told: Sequence[Mention]) -> bool:
    return _IN_BETWEEN.search(text) is not None or _more_and_less(text, told)


def _more_and_less(text: str, told: Sequence[Mention]) -> bool:
    """True for a part that is more than one fish's and less than another's ("bigger than a gill's, smaller ...")."""
    sides = [_THAN.search(text[: m.start]) for m in told]
    return len({m.group(1) in _MORE for m in sides if m}) > 1


_IN_BETWEEN = re.compile(
    r"\b(?:half ?way|mid ?way|some ?where|something|smack|right|sort of|kinda|is|looks) (?:in )?between\b"
    r"|\bin[ -]between (?:the two|them|both)\b|\bpattern got (?:mixed|confused)\b|\b(?:looks|is) like both\b"
    r"|\b(?:a bit|some|features|marks|traits) of both\b|\bhalf (?:one|the one)(?: thing)?,? half the other\b")
"""Words by which a catch is seen to stand between the two fishes named."""
_MORE = word_set("bigger larger longer deeper wider thicker higher more")
_THAN = re.compile(r"\b(bigger|larger|longer|deeper|wider|thicker|higher|more|smaller|shorter|shallower|narrower|less)"
                   r"(?: \w+)? than (?:an?|the|any|on an?|in an?|on the)? ?$")


_IN_PART = re.compile(r"\b(?:kinda|kind of|sorta|sort of|part|partly|some)[\s-]+(?:an?\s+|like an?\s+|like\s+)?$")
"""What stands before each of two fishes that a catch is said to be in part ("kinda gill kinda green sunfish")."""
_OF_TWO = re.compile(
    r"\b(?:cross(?:breed)?|hybrid|mix|blend) (?:of|between) (?:the two|them|both|these|those)\b"
    r"|\b(?:cross(?:breed)?|hybrid|mix|mutt)\s*\?|\bpure or (?:a )?(?:mix|cross|hybrid)")
"""Words by which a catch is guessed to be a cross of the fishes just named."""


def cross_thought(reading: Reading) -> bool:
    """True where the line wonders whether a catch is a cross, of whatever fishes ("pure or mixed?", "some hybrid")."""
    return _MIXED.search(reading.text.lower()) is not None


def of_both(reading: Reading) -> bool:
    """True where marks of two fishes are seen in one ("some of both", "not a pure one")."""
    return _OF_BOTH.search(reading.text.lower()) is not None


_OF_BOTH = re.compile(r"\b(?:(?:bits?|some|parts?|marks|traits) of (?:both|each)|not (?:an? |the )?pure(?:bred)?)\b")
_MIXED = re.compile(r"\b(?:half one thing,? half the other|"
                    r"hybrids?|cross(?:es|breed|breeds)?|mixed (?:blood|breed)|mutts?|mongrels?|pure or (?:mixed|not)|"
                    r"(?:bits?|some|parts?|marks|traits) of (?:both|each)|not (?:an? |the )?pure(?:bred)?|"
                    r"\w+ blood in (?:it|him|her|them|these|this one|there))\b")
