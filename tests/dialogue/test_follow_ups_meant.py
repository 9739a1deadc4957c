"""What people mean who go on: a fish put into a set, a length put right, a weight guessed, a test in a laboratory."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("describe a yellow perch / now set it beside a ruffe", "contrast", "yellow perch has two separate"),
    ("tell me about the bowfin / line it up with a snakehead", "contrast", "gular plate"),
    ("jig or minnow for walleye / where are they come august", "habitat", "walleye"),
    ("best bait for bluegill thru the ice / where do they go in summer", "habitat", "timber"),
    ("what's a hybrid bluegill / all boys i heard?", "hybrids", "mostly males, not all"),
    ("stump knocker, is that just a warmouth / im in north florida", "names", "means the spotted sunfish"),
    ("a catfish stuck me in the palm / one of them tiny madtoms", "handling", "mild venom"),
    ("spine in my finger from a catfish, swollen / channel cat, a small one", "handling", "as hot as you can bear"),
    ("got hooked in the thumb by a lure / how do i hold a walleye", "handling", "walleye: "),
    ("walk me through a key to the sunfish / skip / back of the mouth comes to mid eye", "key", "that leaves 2"),
    ("would a 60 cm pike count as large in Alberta?", "size", "ordinary"),
    ("would a 5 lb smallmouth pass for big in Maine", "weight", "about 20.4 in"),
    ("evening", "small-talk", "hello"),
    ("does it matter if i give you cm or inches", "help", "either is read"),
    ("do you understand pounds and ounces", "help", "either is read"),
    ("Does M. salmoides now denote only the Florida bass?", "names", "yes: in current lists"),
    ("does Micropterus salmoides still mean the largemouth", "names", "no: in current lists"),
    ("my dog swallowed a dead minnow will he be ok", "handling", "a dog or cat that has eaten"),
    ("my puppy swallowed a jig", "handling", "a hook in a dog or cat"),
    ("is raw salmon bad for my dog", "handling", "call a vet now"),
    ("smallie vs spotted bass / throw largemouth in there too", "contrast", "smallmouth bass, spotted bass and large"),
    ("bluegill vs redear / toss a green sunfish in the mix", "contrast", "bluegill, redear sunfish and green sunfish"),
    ("pike vs pickerel / chuck a musky in the mix", "contrast", "muskellunge"),
    ("smallie vs spotted bass / throw largemouth in there too / where do the spotted ones sit", "habitat", "reservoir"),
    ("bass, jaw quits under mid eye, bars up and down, brownish / n if it was a largemouth?", "contrast",
     "rather than the largemouth bass"),
    ("black or white crappie, froze in a bucket since tuesday, no colour left?", "contrast", "dorsal spines"),
    ("safe way to get a treble out of a pike", "handling", "pliers"),
    ("bluegil sucked the hook clear down, yank it or cut it", "handling", "cut the line"),
    ("Stream hit 69F by two o'clock. Should I quit on trout?", "handling", "68 f (20 c)"),
    ("creek is 21C, leave the trout alone? / whats the cutoff in celsius", "handling", "20 c"),
    ("ok to carry a dozen live sunnies to my cousins pond?", "rules", "never move live fish"),
    ("guy at the gas station says cut up green sunfish is ok for trot line bait in oklahoma, is he right", "rules",
     "green sunfish"),
    ("15 in largemouth, drennick reservoir, june. keeper? / hang on, tape says 18", "rules", "18 in (45.7 cm)"),
    ("walleye limit at vennimoor lake / mine is 17", "rules", "17 in (43.2 cm)"),
    ("walleye at Drennick Reservoir, 15 in, can I keep it / no wait its 18", "undo", "18 in (45.7 cm)"),
    ("18 inch small mouth, no scale on me, ruffly how hevy", "weight", "smallmouth bass of 18 in"),
    ("is a 14 inch brookie anything special / id guess it went two pounds?", "weight", "hard to believe"),
    ("what is a walleye called in quebec / he claims his was 34 inches", "size", "large, above the usual length"),
    ("half gill half green, is that even a thing / what would give it away", "hybrids", "reach of the upper jaw"),
    ("tell me about the saugeye / could a lab settle it", "hybrids", "genetic (dna) test"),
    ("sunfish, dark ear to the edge / what are you going by then", "why", "dark right to the edge"),
    ("which sunfishes live in ohio ponds / and the tail on each?", "describe", "slightly indented"),
    ("whats the tail like on a white catfish", "describe", "forked"),
    ("which trouts have them worm tracks on the back, crosses too", "list", "tiger trout, brook trout, splake"),
    ("is any sunfish native west of the rockies?", "list", "sacramento perch"),
    ("bass, tongue has a rough patch / fine. i'll apologise to the man", "small-talk", "next fish"),
    ("start a three-question catfish quiz for grade 5 / the stonecat", "quiz", "2 of 3"),
    ("channel cat, two foot even, what's it go / blue the same length?", "weight", "a blue catfish of 24 in"),
    ("how heavy is a 12 inch white crappie / black the same?", "weight", "a black crappie of 12 in"),
    ("rainbow trout 16 inches, how heavy / brown the same length?", "weight", "a brown trout of 16 in"),
    ("what do warmouth eat / rock bass the same?", "habitat", "food of the rock bass"),
    ("think i got a snakehead at Wexmallow Canal, do i let it go / what if its just a bowfin", "rules",
     "be sure first which it is, bowfin or northern snakehead"),
    ("vennimoor lake, 6 gills all about 21 cm, we legal? / them half breed ones count too?", "rules",
     "yes: bluegill and hybrids count together"),
    ("can I keep 5 bluegill on Vennimoor Lake / do the hybrids count too", "rules", "in the bag of sunfish"),
    ("down in georgia its all brim to them. which fish is that / the coppery nosed sort", "names",
     "the bluegill is also"),
    ("ice perch come up bug eyed w its gut in its mouth / still ok to eat?", "handling", "not of sickness"),
    ("walk me thru em one question at a time, its some kinda brim / cant tell, its dead n faded", "key",
     "for a dead fish on the bench. step 1. is the pectoral fin"),
    ("walk me thru em one question at a time, its some kinda brim / cant tell, its dead n faded / "
     "big mouth, back to the middle of the eye", "key", "that leaves 2 of the 10"),
    ("walk me through a key of bream / its got a big mouth, past the eye", "key", "upper jaw"),
    ("source for the bluegill ear flap / and its anal spines?", "sources", "anal spines: 3"),
    ("where did you get walleye white tail tip / and its dorsal blotch", "sources", "dark blotch"),
])
def test_what_goes_on_is_answered_for_what_it_asks(open_base: Base, talk: str, intent: str, must: str) -> None:
    """The last line of each conversation gets its own kind of answer."""
    answer = last(open_base, talk)
    assert answer.intent == intent, text(answer)
    assert must in text(answer), text(answer)


@pytest.mark.parametrize(("talk", "must_not"), [
    ("my dog swallowed a dead minnow will he be ok", "hook"),
    ("safe way to get a treble out of a pike", "advisory"),
    ("walleye inhaled my jig, hook way down. do i dig it out or cut the line", "medical care"),
    ("which trouts have worm tracks on the back", "tiger trout"),
    ("bluegill vs pumpkinseed vs redear / get the redear out of there", "redear"),
    ("bluegill vs redear / drop the redear and add a flier", "redear"),
    ("bluegill limit at Vennimoor Lake / them half breed ones count too?", "0.5 in"),
    ("can I keep a walleye on Vennimoor Lake / what if its a sauger", "be sure first"),
    ("perch from 40 feet, eyes popping out / can i still eat it", "raw"),
])
def test_what_is_not_asked_is_not_told(open_base: Base, talk: str, must_not: str) -> None:
    """Nothing of another wish stands in the answer."""
    assert must_not not in text(last(open_base, talk))


def test_sources_are_asked_for_the_next_fish_and_without_a_page(open_base: Base) -> None:
    """The feature asked about stays with the next fish; those without a page are told alone."""
    one = "Which reference carries the Lepomis auritus anal-spine count? / and for L. megalotis?"
    assert "anal spines: 3" in text(last(open_base, one))
    answer = last(open_base, f"{one} / only the ones without a page")
    assert answer.taxa == ("lepomis-megalotis",)
    assert "without a page" in text(answer)


def test_an_ear_told_to_help_is_evidence(open_base: Base) -> None:
    """ "Long ear" is no name where it is told to go on with."""
    talk = "panfish of some sort, thats all the memory i kept / long ear with a pale rim, does that help"
    answer = last(open_base, talk)
    assert answer.intent == "identify" and answer.taxa[0] == "lepomis-megalotis" and len(answer.candidates) > 1
