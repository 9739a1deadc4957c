"""Questions back: the next feature to look at, with its choices in plain words (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from assistant.dialogue.answer import Asked, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import span_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import naming as wording


def next_asked(turn: Turn, held: Held, posterior: Mapping[str, float], skip: Collection[str] = ()) -> Asked | None:
    """The best feature to ask for now, never one seen, skipped or in ``skip``; None when nothing would help."""
    import numpy as np

    from assistant.reasoning.next_question import next_question

    table = turn.table
    weights = np.array([posterior.get(t, 0.0) for t in table.taxa], dtype=np.float64)
    done = {s.observation.character for s in held.seen if s.observation.seen} | held.skipped | set(skip)
    length = span_of(held.lengths)
    found = next_question(turn.kb, table, weights, done, held.dead, None if length is None else length[1])
    if found is None:
        return None
    kb = turn.kb
    character = kb.character(found.character)
    choices = tuple((s, kb.state(s).label) for s in found.choices)
    return Asked("character", character.question, found.character, choices)


def ask_block(turn: Turn, asked: Asked) -> Block:
    """The question as a block, choices and how to look included."""
    how = turn.kb.character(asked.character).how if asked.character else ""
    text = wording.ask_choices(asked.question, [words for _, words in asked.choices], how)
    return Block("next", text, claim=False)
