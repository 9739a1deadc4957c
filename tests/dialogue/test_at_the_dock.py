"""What is asked of a fish just caught, in few words: its weight, its hold, its bait, where it may go."""

from __future__ import annotations

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base
from assistant.dialogue.lessons.sheet import safety_of
from assistant.dialogue.reader.read import read_line
from assistant.reasoning.advice import line_stems
from tests.dialogue.conftest import CLOCK, last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("lipping a walleye same as a bass, bad idea?", "handling", "do not lip it"),
    ("how heavy of a spoon for lake trout, 60 foot down", "tackle", "trout"),
    ("are circle hooks any good for bluegill with the grandkids", "tackle", "circle hooks hook fewer of them deep"),
    ("40 lb flathead at the boat, want one pic before she swims / how long up", "handling", "ten seconds"),
    ("40 lb flathead at the boat, want one pic / bleeding some from the gill now", "handling", "flathead"),
    ("channel cat 27 1/2 long, whats it go / turning it loose, 95 out. anything special", "handling", "warm water"),
    ("shellcraker eleven even, what should it wiegh", "weight", "redear sunfish of 11 in"),
    ("flat heads got teeth thatll cut a thumb?", "handling", "no cutting teeth"),
    ("flat heads got teeth thatll cut a thumb? / 41 lbs, whats the hold for a pic", "handling", "two hands"),
    ("back fins hooked together, stripes broken over the anal fin, bass / would a hybrid striper fool me on that",
     "contrast", "two separate fins"),
    ("describe the white crappie / n the back fin? / vs a black one", "contrast", "dorsal spines"),
    ("bow fin or snakehead?? wisconsin slough / anal fin is short, tube noses", "identify", "bowfin"),
    ("are the eyes biting on mille lacs right now", "out-of-scope", "can't see what is biting now"),
    ("hubby swears its a small wally, i say perch. settle it for us", "contrast", "walleye - present"),
    ("not a bluegill, no smudge on the back fin. white edged ear, rusty orange specks, 3 inches", "identify",
     "orangespotted"),
    ("walleye twenty inches / in pounds?", "weight", "walleye of 20 in"),
    ("8 3/4 gill / with the tail pinched tho / ounces?", "weight", " oz (256 g)"),
    ("black crappie fifteen and a half, guess it for me / oops 14 flat, ruler was off", "undo", "weighs about 1.8 lb"),
    ("walleye 24 inches, how heavy / no wait 20 / make that 18", "undo", "walleye of 18 in"),
    ("got a crappie, dark blotches. easiest way to fillet it", "handling", "backbone"),
    ("redear, eleven n a half. thats a dandy aint it", "size", "yes: 11.5 in"),
    ("12 inch crappie, hoss or no", "size", "yes"),
    ("walleye / thas what unc said too, preciate it", "small-talk", "glad"),
    ("my 2 stroke wont idle after i swapped the plugs", "out-of-scope", "outside what i know"),
    ("wiper next to a plain white bass, go", "contrast", "white bass"),
    ("a bluegill pairs with a redear, what would the young look like", "hybrids", "bluegill x redear"),
    ("gill swallered hook, bleedin out the gills", "handling", "do not lift it again"),
])
def test_few_words_at_the_dock(open_base: Base, talk: str, intent: str, must: str) -> None:
    """Each line is taken for what it asks, of the fish it is about."""
    answer = last(open_base, talk)
    assert answer.intent == intent
    assert must in text(answer)


@pytest.mark.parametrize("line", ["how much does a 12 ft crappie weigh", "how heavy is a 5 foot bluegill"])
def test_no_weight_for_a_length_that_no_fish_has(open_base: Base, line: str) -> None:
    """A length far beyond the largest known is no fish's: no weight is worked out for it."""
    told = text(last(open_base, line))
    assert "is known: the longest held is" in told and "in good shape weighs" not in told


def test_no_length_for_a_weight_that_no_fish_has(open_base: Base) -> None:
    """Nor a length for a weight far beyond the largest."""
    told = text(last(open_base, "a 40 lb crappie how long is it"))
    assert "no white crappie of 40 lb" in told and "in good shape" not in told


@pytest.mark.parametrize("line", ["crappie, 12 foot brush", "walleye on a 15 foot ledge", "12 foot of timber, crappie"])
def test_a_depth_is_no_length_of_a_fish(open_base: Base, line: str) -> None:
    """What the figure is followed by tells that it is a depth."""
    assert not any(m.own for m in read_line(open_base.kb, line, Held(), CLOCK).measures)


@pytest.mark.parametrize(("line", "taxa"), [
    ("bleeding from the gill", ()),
    ("hook in its gill", ()),
    ("bait for gills", ("lepomis-macrochirus",)),
    ("some bream, greenish", ()),
    ("blues in texas", ("ictalurus-furcatus",)),
    ("were spots always in california", ("micropterus-punctulatus", "micropterus-henshalli")),
])
def test_which_words_are_fishes(open_base: Base, line: str, taxa: tuple[str, ...]) -> None:
    """A part that something comes from is none; a shade is no name cut short; a plural that lives somewhere is one."""
    reading = read_line(open_base.kb, line, Held(), CLOCK)
    species = {t for m in reading.of("taxon", "group") for i in m.ids for t in (i, *open_base.kb.members(i))}
    assert set(taxa) <= species
    assert taxa or not reading.of("taxon")


@pytest.mark.parametrize("line", ["snakehead, do i chuck it back", "is it legal to release a silver carp"])
def test_a_fish_not_wanted_is_told_of_before_the_rules(open_base: Base, line: str) -> None:
    """Without a place no rule is known, but what holds of such a fish nearly everywhere is said first."""
    answer = last(open_base, line)
    assert answer.intent == "rules" and answer.blocks[0].kind == "caution"
    assert "report it" in answer.blocks[0].text


def test_specks_in_the_meat_name_no_fish(open_base: Base) -> None:
    """What is seen in the meat changes nothing about which fish is spoken of."""
    answer = last(open_base, "bluegill, how do i clean it / keepin it. lil black specks in the meat, safe?")
    assert answer.taxa[:1] == ("lepomis-macrochirus",)


@pytest.mark.parametrize(("line", "intent"), [
    ("a fisherman keeps saying its a crappie with 7 spines", "identify"),
    ("walleye, appreciate it if you tell me the size limit in Vennimoor Lake", "rules"),
    ("how long can a pike live out of the water", "handling"),
    ("spots in a row along the side, what is it", "identify"),
])
def test_like_words_that_ask_something_else(open_base: Base, line: str, intent: str) -> None:
    """Words that open such a wish elsewhere do not take other lines for it."""
    assert last(open_base, line).intent == intent


def test_a_lost_g_is_heard() -> None:
    """A word without its g is met by what is said with it."""
    assert set(line_stems(["bleeding"])) <= set(line_stems(["bleedin"]))


@pytest.mark.parametrize(("talk", "intent"), [
    ("i caught a bluegill / how do I let it go / what is it", "identify"),
    ("how do I let a bluegill go / what is it", "describe"),
    ("a catfish stung my hand / help", "help"),
    ("30 inch muskie on vennimoor lake, can I keep it / is it maybe a tiger muskie / what if it is a pike", "rules"),
    ("deep fish with long side fins and black ear, orange belly, Vennimoor Lake, 8.5 inches, can I keep it, 7 kept",
     "rules"),
])
def test_the_wish_is_heard_behind_care_and_marks(talk: str, intent: str, open_base: Base) -> None:
    """A name, help or a verdict asked for is given whatever was spoken of before, and whatever marks are told."""
    assert last(open_base, talk).intent == intent


def test_an_unwanted_fish_caught_is_not_let_go(open_base: Base) -> None:
    """What must be done with a catch called by the name of an unwanted kind is told at once."""
    answer = last(open_base, "I caught a snakehead in Ohio, what should I do")
    assert any("do not release" in b.text.lower() for b in answer.blocks[:2])


def test_so_many_asked_for_are_parted(open_base: Base) -> None:
    """A number that a question behind the fish asks for is held against the bag."""
    answer = last(open_base, "bluegill from Little Ommary Pond, I am 12, can I keep 30")
    assert answer.verdict == "keep, then release"


def test_a_sheet_warns_of_what_is_poisonous(open_base: Base) -> None:
    """The safety strip of a sheet with gars leads with their roe."""
    kb = open_base.kb
    assert safety_of(kb, ("lepisosteus-osseus", "atractosteus-spatula"))[0].id == "gar-roe"
    assert "gar-roe" not in [c.id for c in safety_of(kb, ("lepomis-macrochirus", "lepomis-gibbosus"))]


def test_a_mark_names_no_second_fish(open_base: Base) -> None:
    """ "A black stripe" beside a named catch is no fish called stripe."""
    answer = last(open_base, "10 inch bass on Vennimoor Lake, black stripe on the side, can i keep it")
    assert answer.intent == "rules" and "stripe;" not in text(answer)
