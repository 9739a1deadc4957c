"""A second fish of which the same thing was counted ("8 on mine and 5 on his"): what that one is (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue import naming
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import speak
from assistant.model.stems import NUMBERS
from assistant.reasoning.identify import identify
from assistant.text import unique

_NUMBER = rf"(\d{{1,3}}|{'|'.join(NUMBERS)})"
_WHOSE = r"(mine|ours|his|hers|theirs|(?:my|our|his|her|their|the)\s+(?:other|fish|one|buddy'?s|first|second))"
_COUNT_FIRST = re.compile(rf"\b{_NUMBER}\b(?:\s+[a-z]+){{0,2}}?\s+(?:on|in|for)\s+{_WHOSE}\b")
_OWNER_FIRST = re.compile(
    rf"\b{_WHOSE}\b(?:\s+(?:fish|one))?(?:\s+(?:has|had|got|shows|counted|is|was))?\s+{_NUMBER}\b")
MOST_WORDS = 14
"""Words of a line that tells no more than the two counts."""


def with_second(turn: Turn, held: Held, answer: Answer) -> Answer:
    """The answer, with what the second fish is where the line counts one thing on two of them."""
    value = _second(turn)
    told = [s for s in turn.reading.seen if s.observation.value is not None and not s.retract]
    if value is None or len(told) != 1 or told[0].observation.value == value:
        return answer
    kb, counted = turn.kb, told[0].observation
    other = counted._replace(value=float(value), value_high=None)
    seen = tuple(s._replace(observation=other) if s.observation.character == counted.character else s
                 for s in held.seen)
    beside = held.after(seen=seen)
    found = identify(kb, turn.table, evidence_of(beside))
    if not found.candidates or not found.candidates[0].supports:
        return answer
    lead = naming.lead(kb, beside, found)
    point = Block("point", wording.the_other(speak.seen_words(kb, other), lead.text), statements=lead.statements)
    taxa = tuple(c.taxon for c in naming.shown(found))[: 1 if found.verdict in ("sure", "likely") else 3]
    first, *rest = answer.blocks
    return answer._replace(blocks=(first, point, *rest), taxa=tuple(unique((*answer.taxa, *taxa))))


def _second(turn: Turn) -> int | None:
    """The number counted on the second of two fishes of two people; None where the line tells of one."""
    text = turn.reading.text.lower()
    if len(turn.reading.words) > MOST_WORDS:
        return None
    found = [(m[1], m[2]) for m in _COUNT_FIRST.finditer(text)]
    found = found if len(found) == 2 else [(m[2], m[1]) for m in _OWNER_FIRST.finditer(text)]
    if len(found) != 2 or found[0][1] == found[1][1]:
        return None
    word = found[1][0]
    return int(NUMBERS.get(word, word))
