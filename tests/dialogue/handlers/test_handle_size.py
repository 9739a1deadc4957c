"""Size: usual and largest, a length judged, the asker's own unit and fraction kept."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.size import handle
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, group, length, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_usual_and_largest(kb: KnowledgeBase) -> None:
    """How big a fish gets: both figures, in inches and millimetres."""
    answer, _ = handle(turn_of(kb, "how big do rock bass get", fish("ambloplites-rupestris")))
    assert "usually" in answer.blocks[0].text and " in " in answer.blocks[0].text and "cm" in answer.blocks[0].text


def test_the_largest_leads_when_asked_for(kb: KnowledgeBase) -> None:
    """The biggest ever: the largest figure first."""
    answer, _ = handle(turn_of(kb, "biggest ever", held=Held(taxa=("lepomis-gulosus",))))
    assert answer.blocks[0].text.startswith("The largest warmouth held is")


@pytest.mark.parametrize(
    ("inches", "word"), [("2", "small for"), ("7", "ordinary"), ("15", "very big"), ("30", "longer than the largest")]
)
def test_a_length_is_judged(kb: KnowledgeBase, inches: str, word: str) -> None:
    """Small, ordinary, very big, not believable: by what is held of the bluegill."""
    measure = length(f"{inches} in", inches)
    answer, _ = handle(turn_of(kb, "is it big", fish("lepomis-macrochirus"), measures=(measure,)))
    assert word in answer.blocks[0].text


def test_the_fraction_typed_is_kept(kb: KnowledgeBase) -> None:
    """A fraction is answered as typed, the metric value in brackets."""
    measure = length("7 1/2 in", "7.5")
    answer, _ = handle(turn_of(kb, "good one", fish("lepomis-macrochirus"), measures=(measure,)))
    assert answer.blocks[0].text.startswith("7 1/2 in (19.1 cm)")


def test_inches_please(kb: KnowledgeBase) -> None:
    """A unit asked for afterwards turns the length told before."""
    measure = length("38 cm", "38", "cm")
    held = Held(taxa=("esox-niger",), lengths=(measure,), units="us", intent="size")
    answer, _ = handle(turn_of(kb, "inches please", held=held))
    assert answer.blocks[0].text.startswith("15 in (38 cm)")


def test_age_and_maturity_are_not_guessed(kb: KnowledgeBase) -> None:
    """A length does not tell the age; what is not held of maturity is said."""
    old, _ = handle(turn_of(kb, "how old is it", fish("lepomis-macrochirus"), measures=(length("10 in", "10"),)))
    assert "does not tell the age" in text(old)
    mature, _ = handle(turn_of(kb, "length at maturity", fish("ameiurus-nebulosus")))
    assert "length at maturity of the brown bullhead is not held" in text(mature)


def test_a_keeper_is_for_the_rule_to_say(kb: KnowledgeBase) -> None:
    """No size is called legal."""
    answer, _ = handle(turn_of(kb, "what size is a keeper perch", fish("perca-flavescens")))
    assert "local rule" in text(answer)


def test_a_group_is_told_by_its_kinds(kb: KnowledgeBase) -> None:
    """The size of crappies is told of each."""
    answer, _ = handle(turn_of(kb, "how big do they get", group("crappies", "crappies")))
    assert "white crappie" in text(answer) and "black crappie" in text(answer)


def test_a_cross_has_no_figures_but_its_parents(kb: KnowledgeBase) -> None:
    """Lengths of the larger parent are told as that parent's, whether the cross is asked of or measured."""
    saugeye = fish("sander-canadensis-x-sander-vitreus")
    answer, _ = handle(turn_of(kb, "how big do saugeye get", saugeye))
    assert answer.blocks[0].text.startswith("No largest length is held of the saugeye itself")
    assert "its larger parent, the walleye, usually reaches" in answer.blocks[0].text
    told, _ = handle(turn_of(kb, "is it big", saugeye, measures=(length("25 in", "25"),)))
    assert "for the walleye" in told.blocks[0].text and "figures of its larger parent" in text(told)


@pytest.mark.parametrize(("line", "head"), [
    ("Enneacanthus chaetodon, 97 mm TL entered. Plausible or a typo?", "Plausible: "),
    ("Lepomis humilis 340 mm total length: typo?", "Doubtful: "),
    ("flier, 40 mm in the sheet. realistic?", "Plausible for a young fish: "),
    ("is a 30 inch bluegill even possible", "Doubtful: "),
])
def test_whether_a_length_can_be_right(talk: Talk, line: str, head: str) -> None:
    """A curator's doubt is answered from the usual and the largest length."""
    answer, _ = talk(line)
    assert answer.intent == "size" and answer.blocks[0].text.startswith(head)
    assert "largest known" in answer.blocks[0].text
