"""Kinship, spelling, plurals, authors, local names and shared names of fishes (layer 4)."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond

CLOCK = date(2026, 7, 4)


@pytest.mark.parametrize(("talk", "parts"), [
    ("what family is the walleye", ("perch family", "Percidae")),
    ("what genus is rock bass", ("genus Ambloplites",)),
    ("is rock bass a bass", ("Not strictly", "sunfish family", "black basses")),
    ("is a largemouth bass a bass", ("Yes", "black basses")),
    ("is a yellow perch a perch", ("Yes", "perch family")),
    ("is a Sacramento perch a real perch", ("Not strictly", "sunfish family")),
    ("is a northern the same as a pike", ("same fish", "northern pike")),
    ("is there a difference between a sunny and a pumpkinseed", ("Often none", "sunny")),
    ("what is the difference between a bream and a sunfish", ("Mostly none", "bluegill")),
    ("Is a goggle-eye a rock bass or a warmouth?", ("Either", "warmouth")),
    ("what's the plural of bluegill", ("bluegills",)),
    ("how do you spell muskellunge", ("muskellunge",)),
    ("who described the pumpkinseed", ("Linnaeus", "1758")),
    ("what does Lepomis mean", ("not held",)),
    ("What do they call crappie in Louisiana?", ("sac-à-lait",)),
    ("what was Stizostedion", ("Sander", "walleye")),
    ("Is Micropterus salmoides still largemouth bass?", ("older name", "Florida bass")),
    ("scientific name of largemouth bass / didnt it used to be salmoides", ("older name", "largemouth")),
    ("what's the scientific name of black crappie / and white crappie", ("Pomoxis annularis",)),
    ("scientific name of sunfish", ("genus Lepomis", "Centrarchidae")),
    ("How do you say pumpkinseed in French?", ("called crapet-soleil",)),
    ("nombre en español de bluegill", ("mojarra",)),
])
def test_the_first_line_answers_what_is_asked_of_a_name(open_base: Base, talk: str, parts: tuple[str, ...]) -> None:
    """The first block of the last answer holds these parts."""
    held = Held()
    for line in talk.split(" / "):
        answer, held = respond(open_base, line, held, CLOCK)
    assert answer.intent == "names"
    assert all(p in answer.blocks[0].text for p in parts), answer.blocks[0].text


def test_a_question_on_kinship_asks_no_place_back(open_base: Base) -> None:
    """Yes or no on kinship ends the answer."""
    answer, _ = respond(open_base, "are crappies sunfish", Held(), CLOCK)
    assert answer.asked is None


def test_two_fishes_of_like_name_are_still_set_side_by_side(open_base: Base) -> None:
    """A loose word that stands in one accepted name alone is taken for that fish."""
    answer, _ = respond(open_base, "what is the difference between a pike and a muskie", Held(), CLOCK)
    assert answer.intent == "contrast"
