"""What must be heard before a fish that is not wanted in many waters is kept or let go (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.telling import advice
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution
from assistant.reasoning.advice import GENERAL, weigh

TOPICS = frozenset({"invasive", "unwanted"})
"""Topics of cautions on kinds that are not wanted."""
PREFIX = "caution"


def unwelcome(kb: KnowledgeBase, taxa: Sequence[str]) -> list[Block]:
    """The cautions that come first where fishes of these kinds are kept, moved or let go."""
    if not taxa:
        return []
    found = [f.record for f in weigh(kb, PREFIX, (), taxa) if f.fit > GENERAL and f.record.topic in TOPICS]
    return [advice(PREFIX, r, "caution") for r in found if isinstance(r, Caution) and r.lead]
