"""Words that are not said of what they stand by: parts compared with, denials that part words (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.text import word_set

_ARTICLES = word_set("a an the its his her their")
_INSTEAD = word_set("other rather")
_NO = word_set("no without zero lacks lacking")
"""Denials of the thing right behind them."""


def measured_by(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for a part that another is only compared with ("narrower than the eye"): nothing is said of it."""
    at = content[hit.first].first - 1
    while at > 0 and tokens[at].word in _ARTICLES:
        at -= 1
    return len(hit.at) == 1 and at > 0 and tokens[at].word == "than" and tokens[at - 1].word not in _INSTEAD


def over_denial(hit: Hit, content: Sequence[Content], tokens: Sequence[Token], denied: Collection[int]) -> bool:
    """True for words of which a denial in between parts some ("bluish, no spots" denies no blue ones)."""
    between = {t.word for t in tokens[content[hit.first].last + 1 : content[hit.last].first]}
    return bool(between & _NO) and hit.first not in denied
