"""What fishermen and curators ask in passing: a name given by another, a water's state, a price, a length left out."""

from __future__ import annotations

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base
from assistant.dialogue.reader.read import read_line
from tests.dialogue.conftest import CLOCK, last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("bony plate under the chin, ringed spot up by the tail. buddy says snakehead", "identify", "bowfin"),
    ("has whiskers and no scales, wife says eel", "identify", "catfish"),
    ("silver w/ broken stripes, 13 in, caught under the lock wall", "identify", "white bass"),
    ("silver w/ broken stripes / two tooth patches side by side on the tongue", "identify", "two patches of teeth"),
    ("white pearch outta the ohio, humpback and it grunts", "identify", "freshwater drum"),
    ("warmouth vs rock bass / spines in the anal fin, how many each / mines got six", "identify", "rock bass"),
    ("warmouth vs rock bass / anal spines, how many each / mines got six / 9 inches any good for one", "size",
     "ordinary"),
    ("yellow bullhead against a brown one, are the whiskers enough", "contrast", "chin barbels"),
    ("describe a bowfin / and the northern snakehead / which has the longer fin underneath", "contrast",
     "bowfin - short; northern snakehead - long"),
    ("stumpknocker v warmouth, loser buys supper", "contrast", "the warmouth itself goes by it too"),
    ("walleye or sauger / what about dorsal spines", "contrast", "dorsal spines: walleye"),
    ("is redfish bitin off folly beach pier", "out-of-scope", "can't see what is biting"),
    ("what are walleye biting on right now", "tackle", "minnow"),
    ("how is the bite on crappie this week", "out-of-scope", "can't see what is biting"),
    ("river stage at cincinnati right now??", "out-of-scope", "no river stage"),
    ("bluegill / whats it bring a pound at the market", "out-of-scope", "what a fish or a mount of one costs"),
    ("how many sauger on the indiana side of the ohio", "rules", "indiana"),
    ("how many bass per day on the west virginia side", "rules", "rules for west virginia"),
    ("E. niger, label says 750 g, length blank. What TL would you expect?", "weight", "about 48"),
    ("taxa where adipose-fin is present but body-covering is scaleless", "list", "catfish"),
    ("why does it matter whether the pectoral fin reaches past the eye?", "why", "bluegill"),
    ("why do fish need fins", "why", "not held"),
    ("which paper is cited for splitting Amia ocellicauda from A. calva?", "sources", "none to cite"),
    ("what publication split the Florida bass from the largemouth", "sources", "kim"),
])
def test_what_is_asked_in_passing_is_answered(open_base: Base, talk: str, intent: str, must: str) -> None:
    """Each kind of wish gets its own kind of answer."""
    answer = last(open_base, talk)
    assert answer.intent == intent, text(answer)
    assert must in text(answer), text(answer)


def test_a_price_is_asked_of_the_fish_spoken_of(open_base: Base) -> None:
    """Who asks what it brings still speaks of the same fish."""
    assert last(open_base, "freshwater drum / whats it bring a pound at the market").taxa == ("aplodinotus-grunniens",)


def test_a_colour_stays_a_name_where_its_marks_fit(open_base: Base) -> None:
    """ "Silver with small specks" may well be a coho."""
    assert "coho salmon" in text(last(open_base, "silver with small black specks, caught in lake michigan"))


@pytest.mark.parametrize(("line", "told"), [
    ("tail forked and adipose fin absent", {("caudal-fin-shape", True), ("adipose-fin", True)}),
    ("gular plate is absent and tail is forked", {("gular-plate", True), ("caudal-fin-shape", True)}),
    ("spots and bars absent", {("body-spots", True), ("body-bars", True)}),
])
def test_a_denial_stops_at_what_was_told_in_full(open_base: Base, line: str, told: set[tuple[str, bool]]) -> None:
    """ "Absent" denies every bare mark before it, but no mark with a state of its own."""
    seen = read_line(open_base.kb, line, Held(), CLOCK).seen
    assert {(s.observation.character, s.observation.seen) for s in seen} == told
