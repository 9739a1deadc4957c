"""Fishes set against each other: bigger, heavier, older, earlier; yes or no first where that is asked."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("lines", "start"),
    [
        (("Do rock bass get as big as smallmouth?",), "No: the smallmouth bass grows longest"),
        (("does a walleye get bigger than a sauger",), "Yes: the walleye grows longest"),
        (("which is smaller, bluespotted or banded sunfish",), "The bluespotted sunfish stays smaller"),
        (("what do green sunfish eat", "do they get bigger than pumpkinseeds"), "No: the pumpkinseed grows longest"),
        (("how big do fliers get", "how about a mud sunfish", "which is bigger"), "The flier grows longest"),
        (("how big do flatheads get", "and blues", "which one is heavier"), "The blue catfish grows heaviest"),
        (("which weighs more at 10 inches, a bluegill or a crappie",), "At 10 inches (25.4 cm) the bluegill"),
        (("which lives longer, a bluegill or a crappie",), "The black crappie lives longest, to 13 years"),
        (("do sunfish live longer than bass",), "No: the smallmouth bass lives longest"),
        (("how long do sunfish live",), "True sunfishes: greatest ages from 3 years"),
        (("do black crappies spawn earlier than bluegills",), "Yes: the black crappie spawns first"),
        (("do bluegills spawn before walleye",), "No: the walleye spawns first"),
        (("do bluegills and pumpkinseeds live in the same lakes",), "Yes: of bluegill and pumpkinseed the base tells"),
    ],
)
def test_compared(talk: Talk, lines: tuple[str, ...], start: str) -> None:
    """The first line answers the question, with the figures it rests on."""
    answer, _ = talk(*lines)
    assert answer.blocks[0].text.startswith(start) and answer.blocks[0].statements


@pytest.mark.parametrize(
    ("lines", "start"),
    [
        (("is 20 inches big for a smallmouth",), "Yes: 20 inches"),
        (("is a 10 inch redbreast big",), "Yes: "),
        (("is a 7 inch bluegill big",), "Not especially: "),
        (("are longears a small fish",), "Yes: the longear sunfish usually"),
        (("does a flier get very big",), "No: the flier usually"),
        (("how big do sunfish get",), "13 true sunfishes: from the bantam sunfish"),
        (("how fast do bluegill grow",), "How fast the bluegill grows"),
        (("how big do bluegill get in kentucky",), "In Kentucky the bluegill usually reaches"),
        (("tell me about the size of the warmouth",), "The warmouth usually reaches"),
    ],
)
def test_big_or_small(talk: Talk, lines: tuple[str, ...], start: str) -> None:
    """Whether a length is big for a fish, whether a fish is big, how big a group grows, and what is not held."""
    answer, _ = talk(*lines)
    assert answer.intent == "size" and answer.blocks[0].text.startswith(start)


def test_a_step_of_the_scale_is_told_once(talk: Talk) -> None:
    """A fish of just the whole inches of a step belongs to it; the next one is not the same step."""
    answer, _ = talk("is 20 inches big for a smallmouth")
    assert "trophy" in answer.blocks[1].text and "top of the scale" in answer.blocks[1].text


@pytest.mark.parametrize("line", ["how big does a pumpkinseed get", "how much does a bluegill weigh"])
def test_no_length_is_asked_for_a_kind_at_large(talk: Talk, line: str) -> None:
    """A question on a kind is answered first."""
    answer, _ = talk(line)
    assert answer.blocks[0].statements and answer.blocks[0].claim


def test_the_second_of_an_order(talk: Talk) -> None:
    """After an order by size its second place is told."""
    answer, _ = talk("Which is the largest true sunfish?", "and the second largest")
    assert answer.blocks[0].text.startswith("Second comes the bluegill")
