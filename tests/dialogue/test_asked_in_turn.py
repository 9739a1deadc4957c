"""What is asked of fishes named in short or in turn: rows cut short, either of two, one doubted, values that clash."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    # Names cut short beside another fish.
    ("shoal bass next to a spotted", "contrast", "the spotted bass usually has one patch"),
    ("white crappie alongside a black", "contrast", "black crappie"),
    ("brook trout beside a brown", "contrast", "brown trout"),
    ("channel cat compared with a blue", "contrast", "the blue catfish has"),
    ("black, brown or yellow bullhead, gimme the one place to look", "contrast",
     "to sort black bullhead, brown bullhead and yellow bullhead"),
    ("blue, channel or flathead catfish, where do I look", "contrast", "to sort blue catfish, channel catfish and"),
    ("rock, spotted, or striped bass", "contrast", "to sort rock bass, spotted bass and striped bass"),
    ("sacalait, how big do they run / just the white, in centimeters", "size", "white crappie usually reaches 15"),
    ("sacalait, how big do they run / just the white, in centimeters / bait?", "tackle", "white crappie: live minnows"),
    ("crappie size? / the black only", "size", "the black crappie usually reaches"),
    ("how big do catfish get / only the blue, in pounds", "weight", "heaviest blue catfish"),
    ("how long do bullheads get / just the yellow one in cm", "size", "yellow bullhead usually reaches 15"),
    ("what do crappie eat / just the black", "habitat", "food of the black crappie"),
    ("whats a spotted gar look like / and the big alligator ones", "describe", "the alligator gar"),
    ("where do spotted gar live / and the big alligator ones", "habitat", "water of the alligator gar"),
    # Two fishes spoken of in turn.
    ("what do fliers eat / and redears / either one on a popper?", "tackle", "flier:"),
    ("how big do bluegill get / and green sunfish / do either of them hit flies", "tackle", "bluegill: small poppers"),
    ("where do walleye live / and sauger / what bait for both", "tackle", "walleye: minnows"),
    ("describe the bluegill / now the warmouth / which of those has teeth on the tongue", "contrast",
     "bluegill - none"),
    ("what do fliers eat / and redears / either one in ohio?", "range", "flier is not expected in ohio"),
    ("describe the spotted bass / why not largemouth", "contrast", "the largemouth bass has"),
    # Those just compared, and the asker's own.
    ("longear or redbreast / which ones ear got the white rim", "contrast", "longear sunfish - usually pale"),
    ("walleye vs sauger / which ones have the white tail tip", "contrast", "walleye - white tip"),
    ("longear or redbreast / which ones ear got the white rim / ok mines plain black and narrow", "identify",
     "that is a redbreast sunfish"),
    ("walleye vs sauger / mines plain", "identify", "sauger"),
    # A fish doubted after its rules.
    ("snakehead outta Drennick Reservoir, throw it back or what / hold up, what if its a grinnel", "contrast",
     "bony plate under the chin"),
    ("walleye in Quillander, can I keep it / or is it a sauger", "contrast", "the sauger usually has"),
    ("bass in Quillander, can I keep it? / might be a smallmouth", "rules", "the fish being smallmouth bass"),
    ("30 inch muskie on vennimoor lake, can I keep it / what if it is a pike", "rules", "the fish being pike"),
    # Bounds that may just be reached; what eats a fish; other things to be written.
    ("Which sunfishes never get past five inches or so?", "list", "dollar sunfish and bantam sunfish"),
    ("sunfishes that top out around five inches", "list", "no longer than 5 in"),
    ("which catfishes max out at 6 inches", "list", "tadpole madtom"),
    ("which sunfish are no bigger than 5 inches", "list", "no longer than 5 inches"),
    ("what eats trout", "habitat", "not held"),
    ("predators of the bluegill", "habitat", "herons"),
    ("what preys on walleye", "habitat", "not held"),
    ("write my boy's book report an forget the fish", "out-of-scope", "i can't write that"),
    ("never mind fish, do my math homework", "out-of-scope", "freshwater fishes"),
    ("Which trout and char have red spots with rings round them?", "list", "1 trout or char"),
    # Values that clash.
    ("taxa holding two unlike values for max-total-length", "list", "greatest total length"),
    ("which taxa have clashing values for dorsal spines", "list", "do not say the same about dorsal spines"),
    ("list species where sources disagree about anal ray counts", "list", "anal soft rays"),
])
def test_asked_in_turn(talk: str, intent: str, must: str, open_base: Base) -> None:
    """Each is taken for what it asks of the fishes meant, and is answered."""
    answer = last(open_base, talk)
    assert answer.intent == intent and must in text(answer).lower()
