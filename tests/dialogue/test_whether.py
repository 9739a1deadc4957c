"""Yes, no and how often: what is asked of a mark, and asked again of the next fish."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "first"), [
    (("is a lake trout's tail always forked",), "Yes, as far as is held: the lake trout"),
    (("does a redear always have the red edge on the ear flap",), "Not always: the redear sunfish usually"),
    (("does a brown trout have red spots",), "Often: the brown trout has red and dark spots"),
    (("does a bluegill have teeth on its tongue",), "No: the bluegill has no teeth on the tongue"),
    (("does the white crappie always have 6 dorsal spines",), "Not always: the white crappie usually has 5 or 6"),
    (("does a black crappie have 7 dorsal spines",), "Yes: the black crappie"),
    (("does a walleye have a white tip on its tail", "always?"), "Yes, as far as is held: the walleye"),
    (("does a walleye have a white tip on its tail", "and a sauger?"), "No: the sauger"),
    (("do female redears have the red ear too",), "Not always: the female redear sunfish"),
])
def test_a_yes_or_no_says_how_often(lines: tuple[str, ...], first: str, talk: Talk) -> None:
    """The first words answer, in step with what is told after them; a follow-up asks the same."""
    answer, _ = talk(*lines)
    assert answer.intent == "describe" and answer.blocks[0].text.startswith(first)


@pytest.mark.parametrize(("line", "first"), [
    ("is the mouth of a redear big or small", "Redear sunfish - reach of the upper jaw: a small mouth"),
    ("how long is the ear flap on a longear", "Longear sunfish - length of the ear flap"),
    ("how many whiskers does a channel catfish have", "Channel catfish - barbels: eight"),
    ("how many spines does a bluegill have", "The bluegill has 3 anal spines and usually 10 dorsal spines"),
])
def test_an_open_question_gets_no_yes(line: str, first: str, talk: Talk) -> None:
    """A choice, a size and a number are answered with what is told."""
    assert talk(line)[0].blocks[0].text.startswith(first)
