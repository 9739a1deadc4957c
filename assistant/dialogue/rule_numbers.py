"""The rules that a line names by their numbers ("what does H03 say"; layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase

_NUMBER = re.compile(r"\b[a-z]\d{2}\b")


def numbered(kb: KnowledgeBase, reading: Reading) -> tuple[str, ...]:
    """The ids of the rules whose number the line names beside no fish; empty where it names none."""
    said = set(_NUMBER.findall(reading.text.lower()))
    if not said or reading.of("taxon", "hybrid", "group"):
        return ()
    return tuple(r.id for r in kb.all("rule") if r.notation.lower() in said)
