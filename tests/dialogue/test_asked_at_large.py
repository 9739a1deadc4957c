"""What is asked at large: from of old or brought in, a spot, what to note, hybrid or not, a fish by its name."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent", "must"), [
    (("was there always gobys in the great lakes",), "range", "introduced, not native: the round goby"),
    (("have snakeheads always been in maryland",), "range", "introduced, not native: the northern snakehead"),
    (("did lake trout always live in the great lakes",), "range", "yes: the lake trout is native"),
    (("list every black bass in texas, native or brought there",), "list", "largemouth bass"),
    (("which trout live in colorado, native or stocked",), "list", "introduced: rainbow trout"),
    (("are any trout native to colorado or were they all brought in",), "range", "that is native there: cutthroat"),
    (("were any sunfishes native to the far west, or was every one stocked",), "list", "sacramento perch"),
    (("my buddys honey hole for perch on st clair, where is it",), "out-of-scope", "no fishing spots"),
    (("give me gps coordinates for bluegill beds in clear lake",), "out-of-scope", "no coordinates"),
    (("what should I note down for you before i let a fish go",), "next-question", "tell me what you saw"),
    (("sorry, cat on the keys. first time, what do i type",), "help", "type a question about a fish"),
    (("granny fried jack salmon every spring, what was she cooking",), "names", "walleye"),
    (("folks around here just say perch. kansas. which is it",), "names", "yellow perch"),
    (("goggle eye an warmouth, cuz says they the same fish",), "names", "anal spines"),
    (("hybird or straight striper, 8 lb, caught under the dam",), "contrast", "hybrid striped bass"),
    (("is it a hybrid or a pure walleye",), "contrast", "saugeye"),
    (("hybrid or pure bluegill",), "contrast", "green sunfish x bluegill hybrid"),
    (("wiper or striper? caught below the dam, 8 pounds",), "contrast", "look first"),
    (("how do i show fifth graders that a crappie is not a bass",), "contrast", "black crappie and smallmouth bass"),
    (("show my class why a bluegill is not a crappie",), "contrast", "bluegill, white crappie and black crappie"),
    (("tell me abt pumpkinseeds", "n the red ear one"), "describe", "redear sunfish"),
    (("how big do bluegill get", "and the long ear kind"), "size", "longear sunfish"),
    (("describe the bluegill", "and the red ear kind", "which gets bigger"), "size", "redear sunfish grows longest"),
    (("hybrid records with Lepomis cyanellus as a parent", "basis = read only", "cite the bluegill one"), "sources",
     "green sunfish x bluegill hybrid"),
    (("warmouth or green sunfish, what check would satisfy us", "no teeth at all on the tongue, we both felt"),
     "identify", "green sunfish"),
    (("what sunfish got a black smudge on the back end of the top fin",), "list", "bluegill"),
    (("which bass have red eyes",), "list", "rock bass"),
])
def test_what_is_asked(talk: Talk, lines: tuple[str, ...], intent: str, must: str) -> None:
    """The intent, and what its answer says."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert must in " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(("line", "intent"), [
    ("is a walleye a hybrid or a species", "hybrids"),
    ("first time fishing for catfish, what bait", "tackle"),
    ("which sunfishes in oregon are introduced, not native", "list"),
    ("how far west does the flier go", "range"),
])
def test_what_stands_near(talk: Talk, line: str, intent: str) -> None:
    """What is told in like words wants something else."""
    answer, _ = talk(line)
    assert answer.intent == intent
