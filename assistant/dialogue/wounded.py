"""Whether a line tells that a fish has hurt somebody, and the words under which first aid for it is found (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.turn import Turn
from assistant.model.records import Caution
from assistant.reasoning.advice import SOME_KIN, Found

PIERCED = frozenset({"pierced", "limb"})
"""Cues of a line that tells of something gone into a hand or a foot ("spike went in my thumb")."""
ONLY_ASKED = frozenset({"harms"})
"""Cues of a line that asks what a fish could do to somebody."""
TOPIC, STUNG, STING = "first-aid", ("stung",), "sting"
"""The topic of harm to people, the word under which the cautions on a sting are found, and their act."""


def pierced(turn: Turn) -> bool:
    """True for a line that tells of a spine, or what people call one, gone into somebody.

    Words of both cues count where a longer phrase of a wound covers them ("stuck in my hand").
    """
    if ONLY_ASKED & turn.cues:
        return False
    return turn.cues >= PIERCED or ("hurt" in turn.cues and all(_says(turn, cue) for cue in PIERCED))


def _says(turn: Turn, cue: str) -> bool:
    """True where a phrase of a family stands in the line, as a cue or within a longer one."""
    family = turn.kb.find("word", f"cue-{cue}")
    line = f" {' '.join(turn.reading.words)} "
    return cue in turn.cues or (family is not None and any(f" {p} " in line for p in family.words))


_HARMS_NONE = re.compile(
    r"\b(?:does|do|will|would) (?:it|that|this) (?:hurt|harm) "
    r"(?:any ?thing|any(?: of them)?|them|the (?:fish|nest|bed|eggs))"
    r"|\bany harm in\b", re.IGNORECASE)
"""Words that ask whether something harms the fish ("does it hurt anything pulling them off the nest")."""


def only_asked(turn: Turn) -> bool:
    """True for a line that asks what a fish could do to somebody, and tells of nobody who is hurt."""
    if _HARMS_NONE.search(turn.reading.text) is not None:
        return True
    return bool(ONLY_ASKED & turn.cues) and not turn.cues & {"hurt", "unwell", "ate-it", "medical", "wound-later"}


def sting_words(turn: Turn, found: Sequence[Found]) -> tuple[str, ...]:
    """Words to look for first aid with where somebody is hurt and the line's own words do not find it.

    None where its words plainly find first aid for harm of another kind (a hook, a bone in the throat).
    """
    first_aid = [f for f in found if f.record.topic == TOPIC and f.met > 0 and f.fit > SOME_KIN]
    best = max(first_aid, key=lambda f: (f.met, _of_a_sting(f)), default=None)
    if best is not None and not _of_a_sting(best):
        return ()
    hurt = "hurt" in turn.cues and not ONLY_ASKED & turn.cues
    told = pierced(turn) or (hurt and (best is None or _says(turn, "pierced")))
    return STUNG if told else ()


def _of_a_sting(found: Found) -> bool:
    return isinstance(found.record, Caution) and STING in found.record.acts
