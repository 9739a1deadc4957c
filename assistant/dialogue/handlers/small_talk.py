"""Greetings, thanks and chatter: one friendly line (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import self as own


def handle(turn: Turn) -> tuple[Answer, Held]:
    """A line that fits the greeting, the thanks or the joke."""
    cues = turn.cues
    if "self-said" in cues and (last := turn.held.last) is not None:
        return last._replace(asked=turn.held.asked), turn.held
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
    elif "self-said" in cues:
        text = own.NOTHING_SAID
    elif "self-lost" in cues:
        text = own.LOST
    elif "self-who" in cues:
        text = own.WHO
    elif "self-stop" in cues:
        text = own.STOP
    elif turn.reading.answer and not turn.held.intent and "chatter" not in cues:
        text = own.NOTHING_ASKED
    return Answer("small-talk", (Block("lead", text, claim=False),)), turn.held
