"""Which fishes eat a thing that is no kind of food of the base, by the words on their food (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.life_answered import FED, said_in
from assistant.dialogue.life_asked import living
from assistant.dialogue.preying import who_eats
from assistant.dialogue.telling import shown_note
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lists, speak
from assistant.reasoning.evidence import about
from assistant.reasoning.living import living_in

MOST = 12
"""Fishes named at most."""


def eaters_told(turn: Turn, pool: Sequence[str]) -> Answer | None:
    """The fishes of whose food the thing is told ("which fish eat frogs"), or that it is of none; None where the line
    asks for no eaters, or for those of a kind of food that the base holds."""
    food = who_eats(turn.reading)
    if not food or any(s.observation.character == FED for s in living(turn)):
        return None
    told = {}
    for taxon in living_in(turn.kb, pool, turn.reading.places):
        found = [s for s in about(turn.kb, taxon, FED)[0] if said_in(food, f"{s.text}, {shown_note(s.note)}")]
        if found:
            told[taxon] = found
    if not told:
        return Answer("list", (Block("lead", lists.eaten_by_none(food), claim=False),))
    named = sorted(told, key=lambda t: (-len(turn.kb.ranges(t)), t))
    text = lists.eaten_by(food, speak.fishes(turn.kb, named[:MOST]), len(named) - MOST)
    ids = speak.short_ids(s.id for t in named[:MOST] for s in told[t])
    return Answer("list", (Block("lead", text, statements=ids),), taxa=tuple(named[:MOST]))
