"""What was meant is answered again, bounds of a talk are kept, and lists, keys and rules follow what is put right."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from tests.dialogue.conftest import Talk


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("lines", "taxon", "said"),
    [
        (("how big do flathead get", "i meant bluegill"), "lepomis-macrochirus", "bluegill usually reaches"),
        (("what may i keep of rock bass in kentucky", "i meant tennessee"), "ambloplites-rupestris", "tennessee"),
        (("where do redear live", "scratch that, redbreast"), "lepomis-auritus", "redbreast"),
    ],
)
def test_the_last_question_is_answered_for_what_was_meant(
    lines: tuple[str, ...], taxon: str, said: str, talk: Talk
) -> None:
    """A fish or a place put right gets the answer of the question before."""
    answer, _ = talk(*lines)
    assert answer.intent == "undo" and taxon in answer.taxa and said in text(answer)


def test_a_length_put_right_is_weighed_again(talk: Talk) -> None:
    """After a weight the new length gives a new weight."""
    first, _ = talk("19.5 bigmouth, no scale aboard. lbs?")
    again, _ = talk("19.5 bigmouth, no scale aboard. lbs?", "read it wrong, 18 and a half")
    assert "lb" in text(first) and "lb" in text(again) and text(first) != text(again)


@pytest.mark.parametrize(
    ("line", "inside", "outside"),
    [
        ("drop the longear, add warmouth", "lepomis-gulosus", "lepomis-megalotis"),
        ("swap the bluegill for a redear", "lepomis-microlophus", "lepomis-macrochirus"),
        ("leave out the pumpkinseed", "lepomis-megalotis", "lepomis-gibbosus"),
    ],
)
def test_a_key_with_other_fishes(line: str, inside: str, outside: str, talk: Talk) -> None:
    """Fishes are taken out of a key and put in as the words before them say."""
    answer, _ = talk("make me a key for bluegill, pumpkinseed, longear and green sunfish", line)
    assert answer.intent == "key" and inside in answer.taxa and outside not in answer.taxa


def test_the_small_ones_of_a_place(talk: Talk) -> None:
    """A list is ordered by size where the small ones are asked for, and stays in its place."""
    answer, _ = talk("catfish in ohio", "the small ones")
    assert answer.intent == "list" and "smallest first" in text(answer)
    assert answer.taxa[0] == "noturus-miurus" and "ameiurus-brunneus" not in answer.taxa


def test_one_line_on_each(talk: Talk) -> None:
    """The fishes of a list are described, and "line" asks for no stripes."""
    answer, _ = talk("which catfishes have a forked tail", "one line on each")
    assert answer.intent == "describe" and "stripe" not in text(answer) and "blue catfish" in text(answer)


def test_two_names_of_one_fish(talk: Talk) -> None:
    """Names of one fish set against each other are said to be of one fish."""
    answer, _ = talk("opelousas cat vs flathead, isnt it the same dang thing")
    assert text(answer).startswith("yes, the same fish") and answer.taxa[0] == "pylodictis-olivaris"


@pytest.mark.parametrize(
    ("line", "clock", "day"),
    [
        ("fishing wexmallow canal jan 10", date(2026, 11, 26), "10 january 2027"),
        ("rainbow 15 in, copperlathe tailwater, may. throw back?", date(2026, 11, 26), "1 may 2027"),
        ("fishing wexmallow canal 10 january 2026", date(2026, 11, 26), "10 january 2026"),
    ],
)
def test_a_day_without_its_year(line: str, clock: date, day: str, open_base: Base) -> None:
    """A day or month without its year is the coming one; one with its year stays as told."""
    answer, _ = respond(open_base, line, Held(), clock)
    assert answer.intent == "rules" and day in text(answer)


def test_months_are_no_fishes(talk: Talk) -> None:
    """ "July then" asks for the same fish in July."""
    answer, _ = talk("sallowgum lake bass in april", "july then")
    assert answer.intent == "rules" and "no fish called" not in text(answer) and "july" in text(answer)


def test_words_are_told_apart(talk: Talk) -> None:
    """Two words asked to be the same are said not to be."""
    answer, _ = talk("is 'invasive' the same as 'introduced'?")
    assert answer.intent == "term" and text(answer).startswith("no")


def test_raised_crosses_alone(talk: Talk) -> None:
    """Of the crosses of a fish those that are raised are told where these are asked for."""
    answer, _ = talk("what crosses with bluegill", "which one do they stock in ponds")
    assert "green sunfish" in text(answer) and "warmouth" not in text(answer)


def test_counts_alone(talk: Talk) -> None:
    """ "Meristics only" tells counts and nothing else."""
    answer, _ = talk("describe Enneacanthus chaetodon, meristics only")
    assert "dorsal spines" in text(answer) and "colour" not in text(answer)


def test_a_cross_shown_beside_its_parents(talk: Talk) -> None:
    """Who wants to prove a cross is told that looks cannot, and what to look at."""
    answer, _ = talk("saugeye whats its ma and pa", "how do i prove one")
    assert text(answer).startswith("looks alone") and "walleye -" in text(answer)
