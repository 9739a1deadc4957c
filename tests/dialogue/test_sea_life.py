"""The sea in the life of a fish: whether it goes there, and which word that has."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("lines", "intent", "first"),
    [
        (("do eels in our creek rly swim to the ocean",), "habitat", "Yes."),
        (("do eels swim to the ocean", "so thats anadromous?"), "term", "No, the other way round: catadromous"),
        (("do eels swim to the ocean", "are they catadromous then"), "term", "Yes."),
        (("Are striped bass anadromous?",), "term", "Yes."),
        (("do salmon come back from the sea to spawn",), "habitat", "Yes"),
        (("do salmon come back from the sea to spawn", "so they're catadromous?"), "term",
         "No, the other way round: anadromous"),
        (("do american eels come back from the sea to spawn",), "habitat", "No, it goes to the sea to spawn"),
        (("do american shad spawn in the ocean",), "habitat", "No, it grows at sea but does not spawn there"),
    ],
)
def test_the_sea_is_answered_by_the_life_stated(
    talk: Talk, lines: tuple[str, ...], intent: str, first: str
) -> None:
    """Yes or no comes first, by what is stated of the fish; a word guessed wrong is put right."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert answer.blocks[0].text.startswith(first)


def test_a_life_not_stated_is_said_to_be_unheld(talk: Talk) -> None:
    """No fish is said to go to the sea, or not to, for want of a statement."""
    answer, _ = talk("is the bluegill anadromous")
    assert answer.blocks[0].text.endswith("is not held in this base.")


def test_a_word_alone_is_explained(talk: Talk) -> None:
    """What the word means is answered without a fish."""
    answer, _ = talk("do eels swim to the ocean", "what does anadromous mean")
    assert answer.blocks[0].text.startswith("Anadromous:")
