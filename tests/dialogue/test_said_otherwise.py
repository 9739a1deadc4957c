"""What people say in other words than most: halves of names, words that point, bounds denied (common practice)."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from tests.dialogue.conftest import Talk


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize("line", ["half green half gill right?", "half gill half green"])
def test_halves_of_cut_names_make_a_cross(line: str, talk: Talk) -> None:
    """Green and gill beside each other are the parents of one cross."""
    answer, _ = talk(line)
    assert answer.taxa[0] == "lepomis-cyanellus-x-lepomis-macrochirus"


@pytest.mark.parametrize(("line", "begins"), [
    ("is warmouth just an old name for green sunfish?", "no"), ("is a saugeye the same as a sauger", "no"),
    ("are goggle-eye and rock bass the same fish", "sometimes"),
])
def test_whether_two_names_mean_one_fish(line: str, begins: str, talk: Talk) -> None:
    """A plain yes, no or sometimes comes first."""
    answer, _ = talk(line)
    assert answer.intent == "names" and answer.blocks[0].text.lower().startswith(begins)


def test_several_names_of_one_fish(talk: Talk) -> None:
    """More than two names that one fish bears are said to be all its own."""
    assert "all names of one fish, the burbot" in text(talk("eelpout, ling, burbot: all the same fish?")[0])


def test_a_bound_is_no_order(talk: Talk) -> None:
    """Eleven or more spines are a bound, and the one of a place can be pointed to afterwards."""
    answer, _ = talk("which of the sunfish family has 11 or more spines in the back fin")
    assert {"centrarchus-macropterus", "archoplites-interruptus", "ambloplites-rupestris"} <= set(answer.taxa)
    assert talk("which of the sunfish family has 11 or more spines in the back fin",
                "whats the california one look like")[0].taxa == ("archoplites-interruptus",)


def test_a_bound_denied(talk: Talk) -> None:
    """Never past five inches means the small ones."""
    answer, _ = talk("Which Louisiana sunfishes never get much past five inches?")
    assert "lepomis-symmetricus" in answer.taxa and "lepomis-microlophus" not in answer.taxa


def test_all_that_is_held_on_one_fish(talk: Talk) -> None:
    """A list of a single fish is what is told of it, not its name alone."""
    assert "spines" in text(talk("Everything held on Lepomis symmetricus, counts with ranges.")[0])


def test_a_fish_is_taken_out_of_a_key_by_its_group(talk: Talk) -> None:
    """Leaving out the crappie leaves the other three."""
    answer, _ = talk("a key to bluegill, pumpkinseed, rock bass and black crappie please", "Leave out the crappie.")
    assert answer.intent == "key" and "rock bass" in text(answer) and "crappie" not in text(answer)


def test_pictures_are_not_looked_at(talk: Talk) -> None:
    """Who sends a picture is told so and asked for words."""
    assert "cannot look at a picture" in text(talk("here is a picture of my fish what is it")[0])


@pytest.mark.parametrize("line", ["can i use dynamite to get the catfish", "lets zap the pond with a truck battery"])
def test_unlawful_means_are_warned_of(line: str, talk: Talk) -> None:
    """Current and explosives are answered with the warning."""
    assert "against the law" in text(talk(line)[0])


def test_a_river_is_no_fish(talk: Talk) -> None:
    """In the Altamaha is a river, though a bass is called so."""
    assert talk("Did flatheads always live in the Altamaha in Georgia?")[0].taxa == ("pylodictis-olivaris",)


def test_the_eater_is_the_one_spoken_of(talk: Talk) -> None:
    """In "do they eat the redbreast" the food of the fish before is asked for."""
    assert talk("are flatheads native to Georgia?", "and do they eat up the redbreast?")[0].taxa == (
        "pylodictis-olivaris",)


def test_one_cut_name_after_its_kin(talk: Talk) -> None:
    """A black one after the white crappie is the black crappie."""
    assert talk("white crappie, 13 in, what would it weigh?", "and a black one the same length?")[0].taxa[0] == (
        "pomoxis-nigromaculatus")


def test_names_of_a_list_in_another_language(talk: Talk) -> None:
    """French names after a list are told of every fish listed."""
    assert text(talk("sunfishes of ontario", "with the french names please")[0]).count("in french") >= 5
