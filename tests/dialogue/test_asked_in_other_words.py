"""Wishes in the words of guests, second languages and children: weights, tapes, tables, animals, lessons, names."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("smalmouth fourty eight centimetre, how much kilo", "weight", "48 cm"),
    ("a hundred and ten cm musky how heavy", "weight", "110 cm"),
    ("pike ninety centimeters how many kilos", "weight", "90 cm"),
    ("drennick reservoir large mouth fifteen inches is that lunch", "rules", "13 to 17 in"),
    ("kept twenty five bluegill on Drennick Reservoir, ok?", "rules", "25 of 20 sunfish"),
    ("warden measure with tail squeezed, me with tail open. what is correct", "rules", "pinch the lobes"),
    ("officer measured my fish with mouth open and tail spread, correct?", "rules", "pinch the lobes"),
    ("what is fork length", "term", "fork in the tail"),
    ("little black points in the meat of perch, we can eat or throw", "handling", "cooked through"),
    ("marigane, you call it how in english / is good in the pan?", "handling", "mild flesh"),
    ("kids want to set their pet goldfish free in the camp lake ok or no", "handling", "no, for the goldfish"),
    ("my aquarium fish got too big can i let it go in the creek", "handling", "never let a fish from an aquarium"),
    ("bull head spine stuck my camper in the palm now what", "handling", "medical care"),
    ("can we keep this blue gill / were in iowa / never mind how do we let it go nice", "handling", "wet your hands"),
    ("moulac is half from which fishes", "hybrids", "brook trout and lake trout"),
    ("nephew swears its a snake head i say bow fin who wins", "contrast", "anal fin"),
    ("my kid says a pike would beat a muskie in a fight who wins", "out-of-scope", ""),
    ("how i be sure is achigan small mouth and not large mouth", "contrast", "largemouth bass"),
    ("how can i be sure its a walleye and not a sauger", "contrast", "white tip"),
    ("how big does catfish flathead get", "size", "flathead catfish"),
    ("what sunfish stay tiny like never over four inches", "list", "bantam sunfish"),
    ("which catfish stay small, never more than a foot", "list", "tadpole madtom"),
    ("what suckers never top 20 inches", "list", "no longer than 20 in"),
    ("need to be sure i have a bowfin not a snakehead, what do i check", "contrast", "gular plate"),
    ("catfish spine went in my thumb what now", "handling", "pain of a catfish sting"),
    ("our koi outgrew the tank, may we turn it loose in the river", "handling", "never let a fish from an aquarium"),
    ("can the kids count gill rakers and then let it go", "why", "already kept"),
    ("what do folks in maine call a crappie / and florida", "names", "speck"),
    ("what kind of turtle keeps stealing our worms", "out-of-scope", "no fish"),
    ("what kind of fish keeps stealing our worms", "tackle", ""),
    ("Why is counting gill rakers a bad task for a live-fish day?", "why", "already kept"),
    ("is it bad to count dorsal spines on a live fish", "why", "wet hands"),
    ("what do folks in florida call a crappie", "names", "speck"),
    ("what do folks in florida call a crappie / and new england", "names", "calico bass"),
    ("where the calico go in november", "habitat", "in fall is not held"),
    ("Ketterfoss River up of the Old Weir, 3 october, it is open? / so june, below the weir, for brookies", "rules",
     "barbless"),
    ("when does trout open on ketterfoss river below the old weir", "rules", "release only from"),
])
def test_a_wish_in_other_words(talk: str, intent: str, must: str, open_base: Base) -> None:
    """Each of these gets the answer that its plain wording gets."""
    answer = last(open_base, talk)
    assert answer.intent == intent and must in text(answer)


@pytest.mark.parametrize("line", [
    "Take the perch out, black crappie in.", "black crappie in, perch out",
    "out with the perch, in with the black crappie",
])
def test_a_key_with_fishes_in_and_out(line: str, open_base: Base) -> None:
    """Fishes with no more than "in" or "out" said of them change the set."""
    answer = last(open_base, f"Make a two-way key: bluegill, pumpkinseed, rock bass, yellow perch. / {line}")
    assert answer.intent == "key" and "rock bass and black crappie" in text(answer)


def test_a_quiz_on_fishes_of_one_mark(open_base: Base) -> None:
    """A mark before "fish" names the fishes of a quiz, not words of the body."""
    answer = last(open_base, "Four quick questions on whiskered fish for my cabin group, please")
    assert answer.intent == "quiz" and {"ictalurus-punctatus", "cyprinus-carpio"} <= set(answer.taxa)
    assert not last(open_base, "quiz me on whiskers").taxa


@pytest.mark.parametrize(("line", "families"), [
    ("yep it has whiskers four of them", {"acipenseridae", "cyprinidae"}),
])
def test_a_family_goes_by_its_kinds(line: str, families: set[str], open_base: Base) -> None:
    """A family of which nothing is stated leaves a key where none of its kinds shows what was told."""
    assert set(last(open_base, f"help me name a fish ask me stuff one at a time / {line}").taxa) == families


def test_one_family_left_leads_into_its_key(open_base: Base) -> None:
    """Eight whiskers leave the catfishes alone, and the key goes on among them."""
    answer = last(open_base, "help me name a fish ask me stuff one at a time / it has eight whiskers")
    assert "catfish family" in text(answer) and "ameiurus-natalis" in answer.taxa
