"""What must be heard before a fish that is not wanted in many waters is kept or let go (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.telling import advice
from assistant.dialogue.wording import care, speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution
from assistant.reasoning.advice import GENERAL, weigh

TOPICS = frozenset({"invasive", "unwanted"})
"""Topics of cautions on kinds that are not wanted."""
PREFIX = "caution"


MOST_ALIKE = 2
"""Look-alikes named to be ruled out before an unwanted fish is killed."""


def sure_first(kb: KnowledgeBase, taxon: str) -> list[Block]:
    """With what an unwanted fish is mixed up and what settles it, for whoever is told to kill one not surely named."""
    alike = [x for x in kb.look_alikes(taxon) if x.settles][:MOST_ALIKE]
    if not alike:
        return []
    told = [(speak.fish(kb, x.other), x.settles) for x in alike]
    text = care.sure_first(speak.fish(kb, taxon), told)
    return [Block("caution", text, statements=tuple(f"alike:{x.id}" for x in alike))]


def unwelcome(kb: KnowledgeBase, taxa: Sequence[str]) -> list[Block]:
    """The cautions that come first where fishes of these kinds are kept, moved or let go."""
    if not taxa:
        return []
    found = [f.record for f in weigh(kb, PREFIX, (), taxa) if f.fit > GENERAL and f.record.topic in TOPICS]
    return [advice(PREFIX, r, "caution") for r in found if isinstance(r, Caution) and r.lead]
