"""Greetings, thanks and chatter: one friendly line (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import self as own

LINES = (
    ("own-english", own.PLAIN_ENOUGH), ("polite", own.SAME_TO_YOU),
    ("thanks", say.THANKS), ("bye", say.BYE), ("greeting", say.GREETING), ("units-metric", say.IN_METRIC),
    ("units-us", say.IN_INCHES), ("self-said", own.NOTHING_SAID), ("self-lost", own.LOST),
    ("self-angler", own.NO_ANGLER), ("self-who", own.WHO), ("self-stop", own.STOP), ("owning-up", own.OWNED_UP),
    ("time-of-day", say.GREETING),
)
"""What is said to the first of these cues that a line holds."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """A line that fits the greeting, the thanks or the joke."""
    cues = turn.cues
    if "self-said" in cues and (last := turn.held.last) is not None:
        return last._replace(asked=turn.held.asked), turn.held
    unasked = bool(turn.reading.answer) and not turn.held.intent and "chatter" not in cues
    text = next((line for cue, line in LINES if cue in cues), own.NOTHING_ASKED if unasked else say.CHATTER)
    return Answer("small-talk", (Block("lead", text, claim=False),)), turn.held
