"""Printed keys: what a choice does not part for sure is told with them, in every form."""

from __future__ import annotations

from assistant.dialogue.lessons.key import lesson_key
from assistant.dialogue.lessons.key_doubts import crosses_told, overlaps_told
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.selection import species_below

SAUGEYE = "sander-canadensis-x-sander-vitreus"


def test_a_printed_key_tells_where_counts_overlap(kb: KnowledgeBase) -> None:
    """The crappies by their spines: the remark that the talk gives stands in the remarks of the printed key."""
    made = lesson_key(kb, species_below(kb, "pomoxis"))
    told = overlaps_told(kb, made.key, made.level)
    assert told and all(b.text in made.notes and b.statements for b in told.values())
    assert "The counts overlap at step 1" in made.notes[0] and "Check as well" in made.notes[0]


def test_a_key_with_a_cross_says_it_proves_none(kb: KnowledgeBase) -> None:
    """Walleye, sauger and saugeye: the white tip is met in saugeyes, and no key proves one."""
    made = lesson_key(kb, ("sander-vitreus", "sander-canadensis", SAUGEYE))
    notes = " ".join(made.notes)
    assert "often met in the saugeye, too" in notes and "cannot prove a hybrid (saugeye)" in notes
    assert not crosses_told(kb, lesson_key(kb, ("sander-vitreus", "sander-canadensis")).key)
