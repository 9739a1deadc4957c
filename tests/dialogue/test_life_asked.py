"""Fishes asked for by how they live, and the sexes of one fish set beside each other."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk
from tests.dialogue.handlers.test_core import text


@pytest.mark.parametrize(
    ("line", "fish", "other"),
    [
        ("which fish spawn in fall", "lepomis-macrochirus", ""),
        ("name some fish that eat snails", "lepomis-microlophus", "esox-lucius"),
        ("do you know any fish that breathe air", "amia-calva", "lepomis-macrochirus"),
        ("which fish build nests", "lepomis-macrochirus", "sander-vitreus"),
    ],
)
def test_fishes_are_listed_by_their_life(line: str, fish: str, other: str, talk: Talk) -> None:
    """The fishes of which the base says so are listed, others are not (the base's own statements)."""
    answer, _ = talk(line)
    assert answer.intent == "list"
    assert (fish in answer.taxa) == (line != "which fish spawn in fall")
    assert other not in answer.taxa
    assert any(b.statements for b in answer.blocks)


def test_a_standing_names_the_place_it_holds_in(talk: Talk) -> None:
    """A fish that is threatened in one state is not called threatened everywhere."""
    assert "banded sunfish (in " in text(talk("what fish are threatened")[0])


@pytest.mark.parametrize(
    "line",
    ["how do I tell a male bluegill from a female", "difference between male and female bluegill",
     "how do i sex a bluegill"],
)
def test_the_sexes_are_set_beside_each_other(line: str, talk: Talk) -> None:
    """What is held of breeding males stands with its statement, and no second fish is brought in."""
    answer, _ = talk(line)
    assert answer.taxa == ("lepomis-macrochirus",)
    assert "breeding males" in text(answer)
    assert any(".male-breeding" in s for b in answer.blocks for s in b.statements)


def test_no_word_on_the_sexes_is_said_so(talk: Talk) -> None:
    """Where nothing is held, that is the answer."""
    assert "holds nothing" in text(talk("how do i sex a yellow bullhead")[0])


@pytest.mark.parametrize(
    ("line", "fish", "other"),
    [
        ("which catfishes live in Texas rivers", "ictalurus-punctatus", "noturus-miurus"),
        ("what sunfish live in ponds", "lepomis-cyanellus", "esox-lucius"),
        ("which trout live in cold streams", "salvelinus-fontinalis", "lepomis-macrochirus"),
        ("which fish in Ohio spawn in fall", "salvelinus-namaycush", "oncorhynchus-nerka"),
    ],
)
def test_waters_and_places_narrow_a_list(line: str, fish: str, other: str, talk: Talk) -> None:
    """One of several waters is enough; a place is kept, and a kind of water beside it leaves nobody out."""
    answer, _ = talk(line)
    assert answer.intent == "list"
    assert fish in answer.taxa
    assert other not in answer.taxa
