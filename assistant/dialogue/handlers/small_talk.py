"""Greetings, thanks and chatter: one friendly line (layer 4)."""

from __future__ import annotations

from assistant.dialogue import phrases as say
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.turn import Turn


def handle(turn: Turn) -> tuple[Answer, Held]:
    """A line that fits the greeting, the thanks or the joke."""
    cues = turn.cues
    text = say.CHATTER
    if "thanks" in cues:
        text = say.THANKS
    elif "bye" in cues:
        text = say.BYE
    elif "greeting" in cues:
        text = say.GREETING
    elif "units-metric" in cues:
        text = say.IN_METRIC
    elif "units-us" in cues:
        text = say.IN_INCHES
    return Answer("small-talk", (Block("lead", text, claim=False),)), turn.held
