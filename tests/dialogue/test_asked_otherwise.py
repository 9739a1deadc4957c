"""What is asked, in words that name it otherwise: the intent and the first thing its answer says."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent", "must"), [
    # One place to look, one mark of two fishes, what somebody holds of a mark.
    (("pike n musky, give me the one spot to look",), "contrast", "look first at the pores"),
    (("gar n pickerel give me one spot to check",), "contrast", "look first at the shape of the snout"),
    (("walleye n sauger, which spot do i check",), "contrast", "look first at"),
    (("bowfin or snakehead which ones got the short belly fin",), "contrast", "length of the anal fin base"),
    (("largemouth or smallmouth which ones got the red eye",), "contrast", "colour of the eye"),
    (("blue cat or channel? buddy swears no spots = blue",), "contrast", "spots on the body"),
    (("black crappie or white? buddy swears bars = white",), "contrast", "upright bars"),
    (("dollar sunfish or a runty longear, southeast swamp",), "contrast", "the longear sunfish has"),
    # The tape.
    (("warden says fork, my club says tip of the tail. which is it",), "rules", "pinch the lobes"),
    (("the guide goes to the fork and i go to the tip of the tail, who is right",), "rules", "pinch the lobes"),
    (("tip of the tail or the fork?",), "rules", "pinch the lobes"),
    # What is held.
    (("list tail-shape values for Acantharchus pomotis",), "describe", "rounded"),
    (("list tail-shape values for Acantharchus pomotis", "source and basis of each?", "any that disagree"),
     "sources", "they say the same"),
    (("Enneacanthus chaetodon, counts held",), "describe", "dorsal spines: usually 10"),
    (("Lepomis cyanellus: every count held",), "describe", "anal spines: 3"),
    (("list all scale counts of the bluegill",), "describe", "scales in the lateral line"),
    # Little kinds of a water, and one of them.
    (("Which little sunfishes might my club net in a Maryland swamp ditch?",), "list", "the bluespotted sunfish"),
    (("Which little sunfishes might my club net in a Maryland swamp ditch?", "And how long does the banded one get?"),
     "size", "the banded sunfish usually reaches"),
    (("Which fish on a marsh walk can gulp air?",), "list", "northern snakehead"),
    (("which fish can breathe air",), "list", "northern snakehead"),
    # How far colour goes, why a fish is formed so.
    (("how come nobody trusts color on a sunfish",), "why", "age, sex, season and place"),
    (("can i go by color on a sunfish",), "why", "age, sex, season and place"),
    (("Why are bluegills so flat from side to side?",), "why", "the reason for that is not held"),
    (("why does a bluegill have such a small mouth",), "why", "the reason for that is not held"),
    (("why does a redear need such heavy throat teeth",), "why", "snails and mussels"),
    (("what does a walleye need those big eyes for",), "why", "at dawn and dusk"),
    (("does anal-spine count alone separate Archoplites from Ambloplites?",), "contrast", "both may show 6 or 7"),
    (("can I tell white crappie from black crappie by dorsal spines alone?",), "contrast", "mostly, but not by itself"),
    (("which bass got a jaw that stops before the back of the eye",), "list", "smallmouth bass"),
    (("rainbow trout", "would it make it in a warm pond"), "habitat", "hardly"),
    (("walleye vs sauger", "what if the limits are different and i cant tell"), "rules", "the stricter rule"),
    (("hook is way down a bluegills throat", "will it make it"), "handling", "often yes"),
    (("bluegill swallowed the hook, gills bleeding", "will it make it"), "handling", "nobody can promise"),
    (("sac a lait is what exactly", "french up in quebec call em that too?"), "names", "the warmouth"),
    # One of a kind just spoken of; what a cross is made of; a word; a picture.
    (("papaw in north carolina called em robins what fish", "how would i know one"), "describe",
     "the redbreast sunfish (lepomis auritus)"),
    (("grandma calls them shellcrackers", "how would i spot one"), "describe", "the redear sunfish"),
    (("tiger musky or plain musky", "what two make the tiger"), "hybrids", "northern pike and muskellunge"),
    (("cardioid scales: definition as used for Esox?",), "term", "heart-shaped"),
    (("sent u the pic whats that fish",), "out-of-scope", "i cannot look at a picture"),
    (("attached a picture, name it please",), "out-of-scope", "i cannot look at a picture"),
    # A walk through a key: a feature told in the middle, the walk or a quiz left.
    (("walk me thru it step by step", "two fins on the back, not joined"), "key", "noted: two dorsal fins"),
    (("walk me thru it step by step", "dunno", "ah forget it"), "undo", "ready for another fish"),
    (("walk me through a key of sunfishes", "a", "nah never mind"), "undo", "the key is put away"),
    (("quiz me on pikes", "ah forget it"), "undo", "the quiz is over"),
])
def test_asked_otherwise(talk: Talk, lines: tuple[str, ...], intent: str, must: str) -> None:
    """The last line is answered as what it asks."""
    answer, _ = talk(*lines)
    text = " ".join(b.text for b in answer.blocks).lower()
    assert (answer.intent, must in text) == (intent, True), text


@pytest.mark.parametrize(("lines", "intent"), [
    (("list of sunfishes in small streams of Ohio",), "list"),
    (("small sunfish from an Ohio pond, red ear, what is it",), "identify"),
    (("what color jig for crappie",), "tackle"),
    (("walk me through naming a fish", "skip it"), "key"),
    (("difference between fork length and total length",), "term"),
    (("heres the pic, it has a red ear flap and an orange belly",), "identify"),
])
def test_what_lies_near_is_asked_still(talk: Talk, lines: tuple[str, ...], intent: str) -> None:
    """Lines with like words that ask for something else."""
    assert talk(*lines)[0].intent == intent
