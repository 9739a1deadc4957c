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
    ("is warmouth just an old name for green sunfish?", "no"),
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


@pytest.mark.parametrize("line", ["can i use dynamite to get the catfish", "lets zap the pond with a truck battery",
                                  "can i use dynamite in my pond", "is it legal to use dynamite in the lake",
                                  "can i use bleach to kill fish in a creek"])
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


@pytest.mark.parametrize("line", ["we went 2-3 times and caught one, 8 inches", "largemouths here weigh 5-8 on average",
                                  "it has dorsal spines 9-10 and weighs 2 lb 4 oz", "fish weighed 10-12"])
def test_a_dash_is_not_always_pounds_and_ounces(line: str, talk: Talk) -> None:
    """Ranges and counts stay what they are."""
    assert not any(m.unit == "lb+oz" and "-" in m.words for m in talk(line)[1].weights)


def test_no_in_another_clause_turns_no_bound_round(talk: Talk) -> None:
    """Fishes without spots that get over a length are the long ones."""
    answer, _ = talk("which Ohio sunfishes do not have spots and get over 10 inches")
    assert "shorter" not in text(answer)


def test_a_river_word_is_a_fish_elsewhere(talk: Talk) -> None:
    """Away from "in the", the same word is the bass."""
    assert "micropterus-calliurus" in talk("how do you tell altamaha from redeye")[0].taxa


def test_its_name_is_asked_of_one_fish(talk: Talk) -> None:
    """After one fish was described, "it" is not the whole list before."""
    answer, _ = talk("list sunfishes of ontario", "tell me about the bluegill", "what's it called in french?")
    assert text(answer).count("in french") == 1


def test_a_second_question_is_about_its_own_fish(talk: Talk) -> None:
    """What walleye eat is asked of walleye."""
    assert "sander-vitreus" in talk("tell me about bluegill", "do they hunt? and what do walleye eat")[0].taxa


def test_a_battery_on_a_boat_is_no_crime(talk: Talk) -> None:
    """The warning is for fish and waters only."""
    assert "against the law" not in text(talk("how do i use a truck battery charger on my boat")[0])


def test_a_denied_fish_is_set_beside_the_one_named(talk: Talk) -> None:
    """Proving the one and not the other is telling the two apart."""
    answer, _ = talk("How would I prove to a warden it's a spotted bass and not a largemouth?")
    assert {"micropterus-punctulatus", "micropterus-nigricans"} <= set(answer.taxa)


def test_a_change_of_mind_denies_nothing(talk: Talk) -> None:
    """In "wait no those whiskers are black" they are black."""
    held = talk("bullhead, pale whiskers on the chin", "wait no those whiskers are black")[1]
    assert any("barbel-colour.dark" in s.observation.states and s.observation.seen for s in held.seen)


def test_a_fish_is_swapped_in_a_comparison(talk: Talk) -> None:
    """The others of the comparison stay."""
    answer, _ = talk("compare bluegill, green sunfish and redear", "swap the redear for black crappie")
    assert set(answer.taxa) == {"lepomis-macrochirus", "lepomis-cyanellus", "pomoxis-nigromaculatus"}


def test_marks_of_both_parents_bring_the_cross_to_mind(talk: Talk) -> None:
    """What speaks for and against each of two fishes may be their cross."""
    answer, _ = talk("sunny 9 and a half long. ear tip kinda orange edged, no real dot. cheek squiggles but faint. "
                     "sorta smudge in the back fin")
    assert "hybrid is possible too" in text(answer)
    assert "hybrid" not in text(talk("got a sunfish off the dock, ear flap black all the way to the edge")[0])


def test_a_fish_not_held_is_set_beside_none_before(talk: Talk) -> None:
    """A bare name that the base lacks is said to be lacking, whatever was spoken of before."""
    answer, _ = talk("half green half gill right?", "fathead minnow")
    assert answer.intent == "out-of-scope" and "does not hold" in text(answer) and len(answer.blocks) <= 2


def test_a_likeness_may_be_one_word(talk: Talk) -> None:
    """ "Carplike" is like a carp, and "alike" is like nothing."""
    told, _ = talk("carplike fish, big scales")
    assert told.taxa == talk("carp-like fish, big scales")[0].taxa and told.taxa[0] == "cyprinus-carpio"
    assert talk("are they alike")[0].intent == "out-of-scope"


def test_several_spots_are_no_blotch(talk: Talk) -> None:
    """Spots on the first dorsal are those of a sauger, one spot is the walleye's blotch (the base's own phrases)."""
    assert talk("a sauger or a walleye, spots on the first dorsal")[0].taxa[0] == "sander-canadensis"
    assert talk("a sauger or a walleye, black spot on the first dorsal")[0].taxa[0] == "sander-vitreus"
