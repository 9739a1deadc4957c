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


LISTED_ON = 2
"""Further clauses without a part word of their own over which a part is carried on."""
_ANEW, _IS = word_set("its it hes he shes she body"), word_set("is was are were")


def listed_on(clause: int, tokens: Sequence[Token], part_clauses: Collection[int]) -> bool:
    """True for a clause that goes on with what a part before it "is" ("ear is long, all black, no white edge")."""
    opening = next((t for t in tokens if t.clause == clause), None)
    part = max((c for c in part_clauses if c < clause), default=-1)
    told = [t for t in tokens if t.clause == part]
    if opening is None or opening.word in _ANEW or clause - part > LISTED_ON + 1 or not told:
        return False
    return told[0].sentence == opening.sentence and any(t.word in _IS for t in told)
