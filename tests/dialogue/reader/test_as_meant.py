"""Words that could tell of a fish and do not (lines and readings are our own, common practice)."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.reader.test_ways_of_telling import told


@pytest.mark.parametrize("line", [
    "jar label, ink faded", "colour too faded to use", "four of us in the boat", "bars, which of the two",
    "throat teeth 2,5-4,2", "head scales large, snake-like",
])
def test_words_by_the_way(kb: KnowledgeBase, line: str) -> None:
    """How a label, a count of people or a likeness of scales is told is no colour, count or build of the fish."""
    assert not any(x.startswith(("body-", "lower-lip-lobes")) and x != "body-bars.bars" for x in told(kb, line))


def test_fins_that_stand_clean_apart(kb: KnowledgeBase) -> None:
    """Clean apart is wholly apart, not without marks."""
    assert told(kb, "back fins stood clean apart") == {"dorsal-fin-arrangement.two-separate"}
    assert "last-dorsal-ray.long-filament" not in told(kb, "top fin starts a hair behind the bottom one")


@pytest.mark.parametrize("line", [
    "barbels not noted by crew", "snout not measured", "i did not see the teeth",
    "one child says whiskers, the other says none, so count that as not seen",
    "whether the cheek had lines they could not agree", "one tooth patch? did not check the tongue",
    "my dad says the tongue has two rows of teeth, i say one",
])
def test_what_was_not_looked_at_or_agreed_on(kb: KnowledgeBase, line: str) -> None:
    """A part that nobody looked at, or of which two people say two things, is left open."""
    assert told(kb, line) == set()


def test_what_all_have_seen_stands_beside_a_dispute(kb: KnowledgeBase) -> None:
    """What is told behind the disputed part counts."""
    line = "one of us saw teeth and the other did not, but we all saw the long snout"
    assert told(kb, line) == {"snout-length.long"}
