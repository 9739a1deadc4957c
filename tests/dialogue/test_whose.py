"""What is told of males, females, the young and breeding fish, and follow-ups on one thing."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "first"), [
    (("what do female pumpkinseeds look like",), "Female pumpkinseed - upright bars on the side: often faint bars"),
    (("pumpkinseed", "and the female?"), "Female pumpkinseed - "),
    (("describe a bluegill", "and breeding males"), "Breeding male bluegill - colour of the breast and belly"),
    (("what do male longears look like while breeding",), "Breeding male longear sunfish - "),
    (("what color is a bowfin when it is breeding",), "Breeding bowfin - colour of the lower fins"),
    (("is the belly of a redbreast always red", "females?"), "Female redbreast sunfish - colour of the breast"),
    (("what does a baby bluegill look like",), "Young bluegill - upright bars on the side"),
    (("female longear description",), "Nothing is held that sets the female longear sunfish apart"),
])
def test_fish_of_one_sex_age_or_season(lines: tuple[str, ...], first: str, talk: Talk) -> None:
    """What is told of these fish leads; where nothing is, that is said before what is told of all."""
    answer, _ = talk(*lines)
    assert answer.intent == "describe" and answer.blocks[0].text.startswith(first)


@pytest.mark.parametrize(("lines", "first"), [
    (("what color is a chinook's mouth inside", "coho?"), "Coho salmon - colour inside the mouth"),
    (("does a bluegill have scales on its cheek", "how about a warmouth"),
     "Yes: the warmouth has a fully scaled cheek"),
    (("what does a spotted bass look like", "tongue?", "and largemouth?"), "Largemouth bass - teeth on the tongue"),
    (("describe the pumpkinseed", "eye?"), "Pumpkinseed - colour of the eye"),
    (("grass pickerel", "cheek?", "same for chain pickerel"), "Chain pickerel - scales on the cheek"),
])
def test_the_same_is_asked_of_the_next_fish(lines: tuple[str, ...], first: str, talk: Talk) -> None:
    """A bare name after a question on one part asks that part of it."""
    assert talk(*lines)[0].blocks[0].text.startswith(first)


def test_a_new_description_asks_for_the_whole_fish(talk: Talk) -> None:
    """ "Tell me about" is no follow-up."""
    answer, _ = talk("black crappie", "tongue?", "tell me about the walleye")
    assert answer.blocks[0].text.startswith("The walleye (Sander vitreus)")
