"""Questions on crosses are answered in the first line: whether kinds cross, names, growth, how one is known."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("line", "start"), [
    ("can a crappie breed with a bluegill", "No hybrid of crappie and bluegill"),
    ("do walleyes and perch ever cross", "No hybrid of walleye and perch"),
    ("does a northern pike cross with pickerel", "Yes"),
    ("do suckers hybridize", "Yes"),
    ("can goldfish and carp interbreed", "Yes, they cross")])
def test_two_kinds_of_which_one_is_a_group_get_yes_or_no(talk: Talk, line: str, start: str) -> None:
    """A word for several fishes beside a fish is the second parent, not left out."""
    assert talk(line)[0].blocks[0].text.startswith(start)


@pytest.mark.parametrize(("line", "name"), [
    ("what do you call a cross between a walleye and a sauger", "saugeye"),
    ("what do you get if you cross a brook trout with a lake trout", "splake")])
def test_what_a_cross_is_called(talk: Talk, line: str, name: str) -> None:
    """The name of the cross comes first."""
    assert name in talk(line)[0].blocks[0].text.split(",")[0]


def test_how_a_hybrid_is_known(talk: Talk) -> None:
    """Marks of both parents, the proof, and what the commonest crosses of that fish look like."""
    blocks = talk("how can i tell if my pumpkinseed is a hybrid")[0].blocks
    assert blocks[0].text.startswith("Look for marks of both parents") and "pumpkinseed" in blocks[0].text


@pytest.mark.parametrize(("line", "word"), [
    ("which hybrid fish are the most common", "The common crosses: "),
    ("do hybrids grow faster than the parents", "Some do"),
    ("why do bass hybridize", "Why that is so is not held here")])
def test_hybrids_in_general_are_answered_by_name_or_owned_up_to(talk: Talk, line: str, word: str) -> None:
    """Common ones by name, growth where held, and no reason where none is held."""
    assert talk(line)[0].blocks[0].text.startswith(word)


def test_what_was_seen_picks_a_cross(talk: Talk) -> None:
    """Features told with "is it a hybrid" are weighed among the crosses of the fish named."""
    answer, _ = talk("is this a hybrid? looks like a bluegill with a big mouth and yellow edges on the fins")
    assert "green sunfish x bluegill" in answer.blocks[0].text


def test_a_cross_or_its_parent_is_a_comparison(talk: Talk) -> None:
    """Which of the two a fish is wants their differences, with the limit of looks in the first line."""
    answer, _ = talk("is my fish a saugeye or a sauger")
    assert answer.intent == "contrast" and "cross" in answer.blocks[0].text


def test_a_pond_gets_the_permit_first(talk: Talk) -> None:
    """Whether a hybrid suits a pond: ask the agency, then what is held."""
    assert "agency" in talk("is a hybrid bluegill good for a farm pond")[0].blocks[0].text
