"""First aid put before whatever else a line in which somebody is hurt asks for (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.subjects import species_of, subjects
from assistant.dialogue.telling import advice
from assistant.dialogue.turn import Turn
from assistant.reasoning.advice import SOME_KIN, weigh

CUES = frozenset({"hurt", "unwell"})
"""Cues of a line in which somebody may be hurt or unwell."""
TOPIC, PREFIX, DISCLAIMER = "first-aid", "caution", "aid-disclaimer"
PLAINLY = 2.0
"""A caution met by less (no phrase of two words) may speak of the fish: "a swollen belly"."""
MOST = 2


def first_aid(turn: Turn, told: tuple[str, ...]) -> list[Block]:
    """The best met cautions on harm to people, where the line plainly tells of it; ``told`` are the fishes answered."""
    if not CUES & turn.cues:
        return []
    taxa = species_of(turn.kb, subjects(turn, carried=False) or told)
    found = [f for f in weigh(turn.kb, PREFIX, turn.reading.words, taxa) if f.record.topic == TOPIC]
    met = [f.record for f in found if f.met >= PLAINLY and f.fit > SOME_KIN][:MOST]
    note = turn.kb.find(PREFIX, DISCLAIMER)
    return [advice(PREFIX, r, "caution") for r in (*met, *((note,) if note is not None else ())) if met]
