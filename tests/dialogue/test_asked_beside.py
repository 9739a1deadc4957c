"""Asked beside a talk: what else to look at, with what shells are broken, whether a cross is a species."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    "line", ["what else do i look at", "anything else i should look at", "what else should i check"]
)
def test_what_else_tells_the_nearest_apart(talk: Talk, line: str) -> None:
    """What was asked stays open, and the fishes nearest to what was seen are told apart."""
    first, held = talk("silver panfish with black flecks and thin papery lips")
    answer, after = talk(line, held=held)
    assert answer.intent == "next-question"
    assert {"pomoxis-nigromaculatus", "pomoxis-annularis"} <= set(answer.taxa)
    assert any("white crappie - usually 5 or 6" in b.text for b in answer.blocks)
    assert first.asked is not None and after.asked is not None and after.asked.character == first.asked.character


def test_to_skip_still_leaves_the_question_aside(talk: Talk) -> None:
    """"Skip" after a question asks the next one."""
    answer, _ = talk("sunfish with an orange belly", "skip")
    assert answer.blocks[0].text.startswith("No matter")


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (("What do pumpkinseeds eat?", "And redears?", "How can they crack a shell?"), "molar-like"),
        (("how does a freshwater drum break mussels",), "molar-like"),
        (("how does a northern pike crack a shell",), "not held"),
    ],
)
def test_shells_are_broken_by_throat_teeth(talk: Talk, lines: tuple[str, ...], said: str) -> None:
    """How a shell is broken is told by what is stated of the throat teeth."""
    answer, _ = talk(*lines)
    assert answer.intent == "describe"
    assert "throat teeth" in answer.blocks[0].text and said in answer.blocks[0].text


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("My pupils ask whether a hybrid fish is a new species. Is it?", "No: a hybrid is not a new species"),
        ("Do hybrids count as a species?", "No: a hybrid is not a new species"),
        ("when a bluegill crosses with a green sunfish is that a new species", "No: a hybrid is not a new species"),
        ("is a saugeye a real species", "No: a hybrid is not a new species"),
        ("is the dollar sunfish its own species", "Yes: the dollar sunfish is a species of its own"),
    ],
)
def test_a_cross_is_no_species(talk: Talk, line: str, first: str) -> None:
    """Whether a hybrid is a species is denied first; a species named is one."""
    answer, _ = talk(line)
    assert answer.intent == "hybrids"
    assert answer.blocks[0].text.startswith(first)


@pytest.mark.parametrize("line", ["yea whiskers, i count 8", "whiskers: 8", "whiskers, there are 8 of them"])
def test_a_number_behind_the_thing_counted_within_a_key(talk: Talk, line: str) -> None:
    """Eight whiskers lead a key of the families to the catfishes, whichever way they are told."""
    answer, _ = talk("walk me thru figuring out my fish one question at a time", line)
    assert answer.intent == "key"
    assert "catfish family" in answer.blocks[0].text
