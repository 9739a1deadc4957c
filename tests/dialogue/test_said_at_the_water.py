"""Wants half said, as they are typed on the phone at the water: what is answered, and what must stand in it."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("24 inch walleye in october, nothin runnin out of it. hen or no", "describe", "i can't tell it for sure"),
    ("is a 30 inch pike likely a female", "describe", "females larger"),
    ("creek at 70 and i keep catching browns, am i ok releasing them", "handling", "warm water"),
    ("gill ate it clean to his gut. yank it or", "handling", "do not pull"),
    ("do lampreys suck blood", "habitat", "yes, some of them"),
    ("do sea lampreys suck blood from people", "handling", "hardly ever fastens on people"),
    ("do gar eat people", "handling", "it does not hunt people"),
    ("do pike eat ducks", "habitat", "yes"),
    ("do largemouth bass eat frogs", "habitat", "nothing here speaks of just that food"),
    ("give me a quiz on sunfish / now do catfish", "quiz", "1 of 5"),
    ("whiskers, forked tail, black dots on the side / them dots was mud", "undo", "taken back: dark spots"),
    ("what cats got a squared off or round tail, no fork / any of them go over two foot", "list", "flathead catfish"),
    ("how big do flatheads get / what would a 38 incher go / n a blue that long", "weight", "blue catfish of 38 in"),
    ("how big do bluegill get / and the red one", "size", "redear sunfish usually reaches"),
    ("how do i hold a muskey for a pic / oh and whats a tiger one anyway", "hybrids", "northern pike"),
    ("what bait for shell cracker / nvm wife wants trout now, same thing but for stocked rainbows", "tackle", "worm"),
    ("mountain whitefish vs grayling / the one with the sail, what fly", "tackle", "arctic grayling"),
    ("4 ft fish rolling on top of the backwater, gar?", "identify", "longnose gar"),
    ("in two or three plain lines, what does a ruffe look like?", "describe", "perch family"),
    ("gizard shad, the one with the long string off the back fin, right?", "describe", "yes: the gizzard shad"),
    ("old boys up here in western new york holler mullet when they hook em. aint no mullet is it", "names",
     "usually means the white sucker"),
    ("they call them mullet in western new york, what are they", "names", "white sucker"),
    ("is the sauger native to the Potomac", "range", "not native"),
    ("are northern pike native to the Susquehanna", "range", "i can't say for the susquehanna"),
    ("can pike and musky breed together?", "hybrids", "yes, they cross"),
    ("got a sheephead, where are the lucky stones in it", "describe", "ear stones"),
    ("smallmouth buffalo, will they take corn off the bottom", "tackle", "yes, for smallmouth buffalo"),
    ("which fish eat frogs", "list", "northern pike"),
    ("what do the yellow ones eat", "habitat", "which fish"),
    ("quiz me on trout / k stop the quiz. what do brookies eat", "habitat", "water insects"),
    ("quiz me on trout / hang on whats vermiculation", "term", "1 of 5"),
    ("upright bars but faint, seven spines on top, speckles over the bars, papermouth. a bit of both?", "identify",
     "hybrid"),
    ("will the walleye be running friday", "out-of-scope", "no report of catches"),
    ("pond gills quit growin at 4 in. hows come", "why", "stunted"),
    ("why do ponds end up with a million dinky ones", "why", "stunted"),
    ("how ya tell a buck crappie from a hen come may", "contrast", "breeding males"),
    ("them big eels up the st lawrence all girls or what", "describe", "females larger"),
    ("bull trout / fair enough back it goes. any special way", "handling", "two hands"),
    ("quiz me on bullheads / what is a barbel / huh ok. back to the quiz", "quiz", "1 of 5"),
    ("quiz me on bullheads / how big do brown bullheads get", "size", "brown bullhead usually reaches"),
    ("striper or hybrid, two patches on the tongue, broken lines, silver / felt again, its just one patch in the "
     "middle", "undo", "corrected: one patch"),
    ("can i keep a 50 cm walleye on skarrowin / 42 not 50 sorry / thatd be my 3rd today", "rules",
     "bag is full: 2 of 2"),
    ("can i keep a 42 cm walleye on skarrowin / that would be my second today", "rules", "1 of 2 walleye"),
    ("phones at 4 percent. what all you good for", "help", "just type"),
])
def test_a_want_half_said_is_met(open_base: Base, talk: str, intent: str, must: str) -> None:
    """The last line of a conversation is understood and its answer holds what was wanted."""
    answer = last(open_base, talk)
    assert answer.intent == intent
    assert must in text(answer)


def test_a_quiz_on_other_fishes_begins_anew(open_base: Base) -> None:
    """A group that the quiz holds nothing of begins a quiz on it; a bare name is an answer, though no choice."""
    anew = last(open_base, "give me a quiz on sunfish / actually make it about pike")
    assert anew.taxa == ("esox",)
    assert last(open_base, "give me a quiz on sunfish / walleye").taxa == ("lepomis",)


def test_of_two_states_left_open_either_counts(open_base: Base) -> None:
    """The line "rounded or maybe square" is one mark with two states, so that neither speaks against a fish."""
    from assistant.dialogue.conversation import Held
    from assistant.dialogue.reader.read import read_line
    from tests.dialogue.conftest import CLOCK

    for line in ("the tail was rounded or maybe squared off", "it had a squared off or round tail"):
        seen = read_line(open_base.kb, line, Held(), CLOCK).seen
        assert [set(s.observation.states) for s in seen] == [{"caudal-fin-shape.rounded", "caudal-fin-shape.truncate"}]


def test_who_is_told_to_kill_a_fish_is_told_what_it_is_mixed_up_with(open_base: Base) -> None:
    """The order to kill a snakehead that is not sure comes with the bowfin and what tells the two apart."""
    said = text(last(open_base, "think i got a snakhead in a ditch in virginia. long fin down the back"))
    assert "kill it" in said and "be sure of the northern snakehead" in said and "bowfin" in said


def test_a_count_takes_back_that_there_were_none(open_base: Base) -> None:
    """After "no stripes", six stripes put right leave no word of there being none."""
    talk = "silver fish, no stripes, hump behind the head / hang on i wiped the slime off. theres 6 stripes"
    answer = last(open_base, talk)
    assert "no lengthwise stripes" not in text(answer)
    assert "6 dark lengthwise stripes" in text(answer)
