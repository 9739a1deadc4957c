"""Means of taking fish that are against the law and dangerous: which lines speak of one (layer 4)."""

from __future__ import annotations

from collections.abc import Collection

from assistant.dialogue.reader.fished_for import WATERS
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution
from assistant.reasoning.advice import line_stems, met

UNLAWFUL = "unlawful"
FISHY = frozenset({"fish-word", "fishy"})


def unlawful_means(kb: KnowledgeBase, reading: Reading, cues: Collection[str]) -> Caution | None:
    """The warning against the means that a line about fish or their water speaks of; None where it speaks of none."""
    words = reading.words
    if not (FISHY & set(cues) or WATERS & set(words) or reading.of("taxon", "hybrid", "group")):
        return None
    stems, text = line_stems(words), " ".join(words)
    return next((c for c in kb.all("caution") if c.topic == UNLAWFUL and met(c, stems, text)), None)
