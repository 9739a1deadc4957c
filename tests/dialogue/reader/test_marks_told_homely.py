"""Marks told in homely, short or old words are read as those marks (our own wording and judgement, no source)."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.reader.test_ways_of_telling import told


@pytest.mark.parametrize(("line", "marks"), [
    ("no spot on the shoulder", {"shoulder-spot.none"}),
    ("two fins on its back not joined", {"dorsal-fin-arrangement.two-separate"}),
    ("no feelers around the mouth", {"barbels.none"}),
    ("destitute of barbels", {"barbels.none"}),
    ("lateral line wanting", {"lateral-line.absent"}),
])
def test_a_denial_that_is_a_phrase_of_its_own(kb: KnowledgeBase, line: str, marks: set[str]) -> None:
    """What is lacking is told as such, not as one kind of it that is denied."""
    assert told(kb, line) == marks


def test_what_nobody_saw(kb: KnowledgeBase) -> None:
    """A thing that nobody of some people saw is not there."""
    assert told(kb, "two fins on the back, blunt snout. Not one pupil saw a stripe") >= {"stripe-pattern.none"}
    assert told(kb, "none of us could find a scale") == {"body-covering.scaleless"}


def test_a_statement_behind_an_and(kb: KnowledgeBase) -> None:
    """A denial does not reach a statement of its own behind "and", and a colour before "and the" is none of the part
    behind it.
    """
    found = told(kb, "no silver on the tail and lower fins have white tips")
    assert found >= {"tail-fin-silver.none", "lower-fin-leading-edge.white-tip"}
    assert told(kb, "chin bright blue and the breast blue too") == {"throat-colour.blue", "breast-colour.blue"}


@pytest.mark.parametrize(("line", "marks"), [
    ("D 12, A 29", {"dorsal-soft-rays=12.0", "anal-soft-rays=29.0"}),
    ("gill rakers 25, caeca 42", {"gill-rakers=25.0", "pyloric-caeca=42.0"}),
    ("back fin XII, bottom fin VIII", {"dorsal-spines=12.0", "anal-spines=8.0"}),
    ("rakers 15 caeca 60", {"gill-rakers=15.0", "pyloric-caeca=60.0"}),
])
def test_counts_in_a_row(kb: KnowledgeBase, line: str, marks: set[str]) -> None:
    """Each number in a row of field notes goes to the thing before it."""
    assert told(kb, line) == marks


def test_an_inch_is_no_ray(kb: KnowledgeBase) -> None:
    """An article before a length counts no rays of the anal fin."""
    assert told(kb, "caught it at noon. A 29, it said on the tag") == set()


@pytest.mark.parametrize(("line", "colour"), [
    ("a silver hump-backed scrapper", "body-colour.silvery"),
    ("this silver thing, eye yellow as butter", "body-colour.silvery"),
    ("one whisker on the chin, mottled brown", "body-colour.brown"),
])
def test_the_colour_of_a_fish_not_named(kb: KnowledgeBase, line: str, colour: str) -> None:
    """A colour before a thing not named, or with a pattern alone in its clause, is that of the whole fish."""
    assert colour in told(kb, line)


def test_a_build_before_a_colour(kb: KnowledgeBase) -> None:
    """The build of a fish may stand before its colour, and the word for a part is not that of the fish."""
    assert "body-form.elongate" in told(kb, "a long slate-blue fish")
    assert told(kb, "it is a silver backed thing") == {"back-colour.silvery"}


@pytest.mark.parametrize(("line", "marks"), [
    ("eyes red as a stop light", {"eye-colour.red"}),
    ("tail red as fire", {"tail-fin-colour.red"}),
])
def test_a_colour_likened(kb: KnowledgeBase, line: str, marks: set[str]) -> None:
    """What a colour is likened to tells nothing of its own."""
    assert told(kb, line) == marks


@pytest.mark.parametrize("fin", ["top fin", "back fin", "dorsal", "dorsal fin", "upper fin"])
def test_homely_names_of_fins(kb: KnowledgeBase, fin: str) -> None:
    """All names of a fin tell the same of it."""
    assert told(kb, f"dark smudge at the hind end of the {fin}") == {"soft-dorsal-blotch.present"}


def test_the_fin_told_of_as_one(kb: KnowledgeBase) -> None:
    """ "The bottom one" behind a fin is a fin."""
    assert told(kb, "top fin starts in front of the bottom one") == {"dorsal-vs-anal-origin.ahead-of-anal"}


def test_another_like_it(kb: KnowledgeBase) -> None:
    """ "Another like it" is the mark told before, at its own place."""
    line = "dark smudge at the hind end of the top fin, another like it at the hind end of the bottom fin"
    assert told(kb, line) == {
        "soft-dorsal-blotch.present", "anal-fin-blotch.present"}


def test_a_thing_and_its_place_is_no_second_mark(kb: KnowledgeBase) -> None:
    """Red spots along the side are no other spots along the side."""
    assert told(kb, "red spots along the flank") == {"body-spots.red-spots"}


def test_a_feature_that_needs_another(kb: KnowledgeBase) -> None:
    """Teeth are those of the sucking disc where the line tells of one."""
    assert "disc-teeth.large-sharp" in told(kb, "mouth is a round sucking disc, wider than its head, full of big sharp"
                                                " teeth")
    assert "disc-teeth.large-sharp" not in told(kb, "tail forked, full of big sharp teeth")
