"""Naming a catch: a name offered is weighed and told of, what is too small stays unnamed.

Which marks a fish has is asked of the base itself; no fact stands here.
"""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


def _said(talk: Talk, *lines: str) -> str:
    return "\n".join(b.text for b in talk(*lines)[0].blocks)


def test_a_named_fish_is_told_of_though_others_lead(talk: Talk) -> None:
    """Whoever names a fish with marks hears how that fish stands, and which of its kind show the mark."""
    answer, _ = talk("bluegill with a red eye")
    assert "lepomis-macrochirus" in answer.taxa and any(b.text.startswith("Bluegill (") for b in answer.blocks)
    assert "breeding males of the bluegill" in _said(talk, "bluegill with an orange belly")


@pytest.mark.parametrize(("size", "doubt"), [("17 inches", "longer than the largest"), ("5 lb", "heavier than the"),
                                             ("1 lb", "")])
def test_what_outgrows_its_kind_is_doubted(size: str, doubt: str, talk: Talk) -> None:
    """A bluegill past the largest known by length or weight is named with the doubt; one of a pound is not doubted."""
    said = _said(talk, f"black ear flap, deep body, dark spot at the back of the top fin, {size}")
    assert "luegill" in said and (doubt in said if doubt else "than the" not in said)


def test_a_loose_name_means_first_the_fish_that_bears_it(talk: Talk) -> None:
    """"A perch" is first a fish whose English name ends so; a mark of another that is called so in places decides."""
    first = talk("caught a perch")[0].candidates[0].taxon
    assert first == "perca-flavescens"
    assert talk("caught a perch with a red edge on the ear")[0].candidates[0].taxon == "lepomis-microlophus"


def test_a_name_given_weighs_more_than_a_likeness(talk: Talk) -> None:
    """"A bluegill with ..." makes the bluegill likelier than "like a bluegill" does."""
    def share(line: str) -> float:
        return next(c.probability for c in talk(line)[0].candidates if c.taxon == "lepomis-macrochirus")

    assert share("caught a bluegill, orange belly") > share("caught something like a bluegill, orange belly")


def test_marks_that_none_of_the_named_has(talk: Talk) -> None:
    """Where what was seen speaks against every fish named, the one that it fits is told."""
    answer, _ = talk("rainbow or brown", "it has a red slash under the jaw")
    assert "oncorhynchus-clarkii" in answer.taxa and "none of those you named" in _said(
        talk, "rainbow or brown", "it has a red slash under the jaw")


def test_a_fish_too_small_stays_unnamed(talk: Talk) -> None:
    """A sunfish of 20 mm gets no species, no question and no grip: it is too small to name."""
    answer, _ = talk("sunfish 20 mm long, what is it")
    assert answer.blocks[0].text.startswith("Too small to name") and answer.asked is None
    assert [b.kind for b in answer.blocks] == ["lead"]


@pytest.mark.parametrize("place", ["Ontario", "Michigan", "Ohio", "Pennsylvania"])
def test_a_group_word_stays_open_where_no_place_narrows_it(talk: Talk, place: str) -> None:
    """A "trout" of a place that calls no fish just so may be any trout: a brook trout is not lost by naming it."""
    answer, _ = talk(f"trout from {place}, worm tracks on the back, red dots with blue rings round them")
    assert answer.candidates[0].taxon == "salvelinus-fontinalis"
    assert answer.candidates[0].probability > 0.8


def test_a_comparison_before_bends_no_catch_that_it_does_not_fit(talk: Talk) -> None:
    """A black ear after "white crappie or black crappie?" is told of the fish that has it, as it is without; marks of
    a crappie stay with the two.
    """
    fresh, _ = talk("deep body, black ear, caught in Ohio")
    after, _ = talk("white crappie or black crappie?", "deep body, black ear, caught in Ohio")
    assert after.blocks[0].text == fresh.blocks[0].text and "not go together" not in " ".join(
        b.text for b in after.blocks)
    crappie, _ = talk("white crappie or black crappie?", "deep body, 7 dorsal spines")
    assert crappie.taxa[0] == "pomoxis-nigromaculatus"


def test_only_what_it_is_not_names_no_fish(talk: Talk) -> None:
    """"It is not a bluegill" alone is noted, and nothing is guessed."""
    answer, _ = talk("it is not a bluegill")
    assert not answer.taxa and "not a bluegill" in answer.blocks[0].text.lower()


def test_marks_of_no_fish_are_told_together(talk: Talk) -> None:
    """Marks that no fish has together are named beside those that they do not go with."""
    answer, _ = talk("adipose fin and black ear flap with red spot and 8 whiskers")
    told = next(b.text for b in answer.blocks if "go together" in b.text)
    assert "ear flap with" in told and "eight barbels" in told
