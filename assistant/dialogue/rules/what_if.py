"""How to be sure which of two fishes it is, where another verdict is asked ("what if its just a bowfin"; layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.beside.contrast_wants import row_ids, row_text
from assistant.dialogue.subjects import named, species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import rules, speak
from assistant.dialogue.wording import surveys as tell
from assistant.reasoning.contrast import contrast, firm_first
from assistant.text import unique

WHAT_IF = "what-if"
MOST = 3
"""Marks told."""
NOT_RELEASED = rules.VERDICT["do-not-release"]
"""How an answer begins that forbids to let a fish go."""


def with_marks(turn: Turn, answer: Answer) -> Answer:
    """The answer with the marks of the fish named against the one judged before, where that one may not go back alive.

    There a wrong name does the most harm.
    """
    kb, before = turn.kb, turn.held.last
    asked = species_of(kb, named(turn))
    if WHAT_IF not in turn.cues or turn.held.intent != "rules" or before is None or len(asked) != 1:
        return answer
    others = [t for t in species_of(kb, turn.held.taxa) if t not in asked]
    if not others or not any(b.text.startswith(NOT_RELEASED) for b in before.blocks):
        return answer
    other = min(others, key=lambda t: (-len(kb.ranges(t)), t))
    pair = (asked[0], other)
    rows = firm_first(kb, [r for r in contrast(kb, pair).separating if None not in r.told])[:MOST]
    if not rows:
        return answer
    marks = "; ".join(f"{heading}: {told}" for heading, told in (row_text(turn, pair, r) for r in rows))
    text = tell.be_sure(speak.fishes(kb, pair, "or"), marks)
    block = Block("point", text, statements=unique(i for r in rows for i in row_ids(r)))
    return answer._replace(blocks=(*answer.blocks, block), taxa=unique((*answer.taxa, *pair)))
