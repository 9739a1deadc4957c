"""What an answer is about besides the fishes it names: the genus or family of a group, the parents of a cross (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer
from assistant.dialogue.reading import Reading
from assistant.dialogue.subjects import groups, species_of
from assistant.model.knowledge import KnowledgeBase
from assistant.text import unique

NAMED_BY_FEATURES = ("identify", "key")
"""Intents whose taxa are what the fish may be, whatever was called what."""


def wider(kb: KnowledgeBase, reading: Reading, answer: Answer) -> tuple[str, ...]:
    """Ids of taxa that the line or the answer speaks of by way of a group or a cross."""
    if answer.intent in NAMED_BY_FEATURES:
        return ()
    above = [t for m in groups(reading) for i in m.ids[:1] if (t := common_taxon(kb, i))]
    cited = [s.removeprefix("taxon:") for b in answer.blocks for s in b.statements if s.startswith("taxon:")]
    found = [kb.taxon(t) for t in unique([*answer.taxa, *cited]) if kb.find("taxon", t) is not None]
    crosses = [t for t in found if t.is_hybrid]
    return tuple(unique([*above, *(t.id for t in crosses), *(p for t in crosses for p in t.parents)]))


def common_taxon(kb: KnowledgeBase, group: str) -> str | None:
    """The lowest genus or family that holds all fishes of a group; None where they are of several families."""
    lines = [kb.lineage(t)[1:] for t in species_of(kb, (group,)) if not kb.taxon(t).is_hybrid]
    if not lines:
        return None
    shared = set(lines[0]).intersection(*lines)
    return next((t for t in lines[0] if t in shared and not kb.taxon(t).is_species), None)
