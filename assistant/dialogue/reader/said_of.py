"""What words are said of: parts compared with or like others, lists that go on, denials that part words (layer 4)."""

from __future__ import annotations

import re
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


def end_of_span(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for a part that is only where something ends ("spread even from head to tail"): nothing is said of it."""
    at = content[hit.first].first
    behind = [t.word for t in tokens[at + 1 : at + 3]]
    before = [t.word for t in tokens[max(0, at - 2) : at]]
    return len(hit.at) == 1 and (
        (behind[:1] == ["to"] and behind[1:] in _FAR_ENDS) or (before[1:] == ["to"] and before[:1] in _NEAR_ENDS))


_NEAR_ENDS = (["head"], ["nose"], ["snout"], ["gill"], ["gills"], ["lip"], ["chin"])
_FAR_ENDS = (["tail"], ["toe"], ["belly"], ["vent"])
"""The ends between which something runs."""


def over_denial(hit: Hit, content: Sequence[Content], tokens: Sequence[Token], denied: Collection[int]) -> bool:
    """True for words of which a denial in between parts some ("bluish, no spots" denies no blue ones)."""
    between = {t.word for t in tokens[content[hit.first].last + 1 : content[hit.last].first]}
    return bool(between & _NO) and hit.first not in denied


LISTED_ON = 2
"""Further clauses without a part word of their own over which a part is carried on."""
_ANEW, _IS = word_set("its it hes he shes she body"), word_set("is was are were")


def on_it(clause: int, tokens: Sequence[Token], part_clauses: Collection[int]) -> bool:
    """True for a clause that tells what is "on it", where the one before it speaks of a part ("flecks on it")."""
    words = " ".join(t.word for t in tokens if t.clause == clause)
    return clause - 1 in part_clauses and _ON_IT.search(words) is not None


_ON_IT = re.compile(r"\b(?:on|in|to|of) (?:it|them|there)\b(?! (?:all|too) )")


def listed_on(clause: int, tokens: Sequence[Token], part_clauses: Collection[int]) -> bool:
    """True for a clause that goes on with what a part before it "is" ("ear is long, all black, no white edge")."""
    opening = next((t for t in tokens if t.clause == clause), None)
    part = max((c for c in part_clauses if c < clause), default=-1)
    told = [t for t in tokens if t.clause == part]
    if opening is None or opening.word in _ANEW or clause - part > LISTED_ON + 1 or not told:
        return False
    return told[0].sentence == opening.sentence and any(t.word in _IS for t in told)


def likewise(part: Sequence[int], content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for a part that is told to be as another ("and the cheek too", "so is the cheek", "cheek the same")."""
    first, last = content[min(part)].first, content[max(part)].last
    clause = tokens[first].clause
    before = " ".join(t.word for t in tokens[max(0, first - LIKE_REACH) : first] if t.clause == clause)
    behind = " ".join(t.word for t in tokens[last + 1 : last + 1 + LIKE_REACH] if t.clause == clause)
    return bool(_SO_BEFORE.search(before)) or bool(_SO_BEHIND.match(behind))


LIKE_REACH = 6
"""Words round a part among which its likeness to another is told."""
_SO_BEFORE = re.compile(r"\b(?:so (?:is|are|was|were)|same (?:on|for|with))(?: the| its)?$")
_SO_BEHIND = re.compile(r"(?:and|n) (?:the |its )?\w+(?: \w+)? (?:are |were )?both\b|"
                        r"(?:is |are |was )?(?:too\b(?! \w)|(?:the )?same(?! \w)|likewise|as well|also$)")
