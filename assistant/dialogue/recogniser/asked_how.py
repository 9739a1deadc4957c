"""In what manner a line asks: of a part of the fish how large it is, of a fish which sex (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.half_named import cross_thought
from assistant.dialogue.reader.reading import Reading
from assistant.dialogue.recogniser.sex_asked import sex_asked
from assistant.model.knowledge import KnowledgeBase

_HOW_LARGE = re.compile(
    r"\bhow (?:big|large|long|wide|tall|deep|high|small)(?: of)?(?: is| are)?"
    r"(?: an?| the| its| it's| their| his| her| that)? $")
"""Words behind which a part of the fish is named whose size is asked, not that of the fish."""


def asked_how(kb: KnowledgeBase, reading: Reading) -> set[str]:
    """ "part-sized" for a line that asks how large a part of the fish is ("how big of a mouth"), "sex-asked" for one
    that asks the sex of a fish, "cross-thought" for one that wonders whether a catch is a cross."""
    text = reading.text.lower()
    parts = (m for m in reading.of("character", "term") if _HOW_LARGE.search(text[: m.start]))
    on_fish = any(m.kind == "term" or any(kb.character(i).use == "identify" for i in m.ids) for m in parts)
    flags = {"part-sized": on_fish, "sex-asked": sex_asked(reading), "cross-thought": cross_thought(reading)}
    return {name for name, true in flags.items() if true}
