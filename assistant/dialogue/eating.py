"""What must be heard before a fish is eaten, put first wherever eating is spoken of (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.telling import advice
from assistant.dialogue.turn import Turn
from assistant.model.records import Caution
from assistant.reasoning.advice import GENERAL, Found, weigh

ASKED = frozenset({"edible", "eat"})
"""Cues of a line that speaks of eating."""
EATING = "eat"
PREFIX = "caution"


def comes_first(found: Found) -> bool:
    """True for a caution on eating these very fishes that must come before all else."""
    record = found.record
    return isinstance(record, Caution) and record.lead and EATING in record.acts and found.fit > GENERAL


def warnings(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """The cautions that come first where the line speaks of eating one of these fishes, or of what they warn of."""
    if not taxa:
        return []
    found = [f for f in weigh(turn.kb, PREFIX, turn.reading.words, taxa) if comes_first(f)]
    return [advice(PREFIX, f.record, "caution") for f in found if f.met or ASKED & turn.cues]
