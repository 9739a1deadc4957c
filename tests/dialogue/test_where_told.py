"""Lists of places and ranges: statuses that differ by part, kin of like name, newcomers, natives in order."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("lines", "intent", "start"),
    [
        (("is the northern pike native in california",), "range", "No: the northern pike is not native to California"),
        (("do we have bowfin in Wisconsin?",), "range", "The eyetail bowfin is native to Wisconsin"),
        (("where do channel catfish live in canada",), "range", "The channel catfish is native to Canada"),
        (("is the green sunfish invasive",), "range", "In places: the green sunfish is native in one part"),
        (("is the round goby invasive",), "range", "Yes: the base warns of the round goby"),
        (("which sunfishes were introduced to oregon",), "list", "5 true sunfishes in Oregon that were brought in"),
        (("sunfish found in Texas",), "list", "10 true sunfishes in Texas"),
        (("biggest native fish in Wisconsin",), "list", "The lake sturgeon"),
        (("which sunfishes are in Ontario?", "what about quebec"), "list", "4 true sunfishes in Quebec"),
        (("is smallmouth bass native to california", "so where is it native"), "range", "The smallmouth bass is"),
    ],
)
def test_first_line(talk: Talk, lines: tuple[str, ...], intent: str, start: str) -> None:
    """The first line answers the question of that very fish and place."""
    answer, _ = talk(*lines)
    assert answer.intent == intent and answer.blocks[0].text.startswith(start)


def test_of_those(talk: Talk) -> None:
    """"Which of those" keeps to what was listed: no introduced sunfish among the natives."""
    answer, _ = talk("which fish are native to wisconsin", "which of those are sunfishes")
    assert "lepomis-microlophus" not in answer.taxa and "lepomis-humilis" in answer.taxa


def test_parts_of_a_state(talk: Talk) -> None:
    """A state with two statuses is said to have each in a part, and is not told as missing the fish."""
    answer, _ = talk("where are spotted bass native")
    assert any("parts of Alabama" in b.text for b in answer.blocks)
    answer, _ = talk("are brown trout native to america")
    assert "Florida" not in " ".join(b.text for b in answer.blocks if b.text.startswith("Not there"))


def test_newcomers_of_a_place_are_listed_there(talk: Talk) -> None:
    """Unwanted fishes of a state are those brought to that state; then the other introduced ones."""
    answer, _ = talk("invasive fish in ohio")
    assert "bullseye snakehead" not in answer.blocks[0].text and "common carp" in answer.blocks[1].text


def test_beyond_a_place_is_not_that_place(talk: Talk) -> None:
    """"West of the Rockies" is not the Rockies."""
    answer, _ = talk("are there any sunfish native west of the rockies")
    assert not any("Rocky Mountains" in b.text and b.claim for b in answer.blocks)
