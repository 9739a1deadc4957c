"""Ordinary questions that a few words make plain, and the first thing their answers say."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent", "must"), [
    (("what might a family catch in an iowa farm pond",), "list", "kind of water: pond"),
    (("what could my class catch at a lake in wisconsin",), "list", "kind of water: lake)"),
    (("what lives in ponds in iowa",), "list", "it tells the main points of a life"),
    (("what fish live in Texas",), "list", "fishes in texas"),
    (("are there walleye in lake simcoe",), "range", "the walleye is native to"),
    (("are round gobies in moosehead lake",), "range", "brought by people to"),
    (("perch comes up from 45 ft with its guts in its mouth, put back or keep",), "handling", "barotrauma"),
    (("brought a perch up from 45 ft, put back or keep",), "handling", "barotrauma"),
    (("guts hanging out of its mouth after coming up from 50 feet",), "handling", "pressure injury"),
    (("can i keep a perch from 45 ft at Vennimoor Lake",), "rules", "vennimoor"),
    (("walleye at vennimoor lake came up from 40 ft, can i keep it",), "rules", "so measure first"),
    (("walleye came up from 18 feet at vennimoor lake, keep it?",), "rules", "so measure first"),
    (("caught a walleye in vennimoor lake, 35 ft, keeper?",), "rules", "so measure first"),
    (("ice safe on twinmarrow lake tonight?",), "out-of-scope", "no report of ice is held here"),
    (("when do walleye spawn", "on what"), "habitat", "spawning ground of the walleye"),
    (("do lake trout spawn in fall", "over what bottom"), "habitat", "spawning ground of the lake trout"),
    (("where are crappie in may", "and on what"), "tackle", "crappie"),
    (("do black crappies drop deeper once its january",), "habitat", "under ice in 20 to 50 ft"),
    (("where are smallmouth in january",), "habitat", "slow in winter"),
    (("do catfish go deep when it gets cold",), "habitat", "depth it keeps to of the catfishes is not held"),
    (("tiger musky 130 cm, harrowelt, july", "what are its parents"), "hybrids", "northern pike and muskellunge"),
    (("whats a tiger musky made of",), "hybrids", "northern pike and muskellunge"),
    (("whats the official name of a jackfish",), "names", "northern pike"),
    (("list the gars", "and sources"), "sources", "behind what i said about"),
    (("describe the flier", "with sources"), "sources", "behind what i said about the flier"),
    (("catfish with a forked tail", "so it cant be a bullhead"), "why", "less likely because you saw a forked tail"),
    (("walleye with white tail tip", "so not a sauger"), "why", "a sauger is less likely"),
    (("good name for my new fishing boat",), "out-of-scope", "outside what i know"),
    (("a good name for a bluegill in spanish",), "names", "mojarra"),
    (("perch, best bait", "will they bite tomorrow"), "out-of-scope", "what i can tell of the yellow perch"),
    (("crapies: is going by the markings good enough to split black from white",), "contrast",
     "go by the dorsal spines"),
    (("are the markings reliable for sauger vs walleye",), "contrast", "yes, mostly: tip of the lower tail lobe"),
    (("is colour enough to tell sauger from walleye",), "contrast", "go by the tip of the lower tail lobe"),
])
def test_the_question_is_answered(lines: tuple[str, ...], intent: str, must: str, talk: Talk) -> None:
    """The line is taken for what it asks, and the answer says it."""
    answer, _ = talk(*lines)
    assert answer.intent == intent and must in " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(("line", "first"), [
    ("red eyed blotchy thing at the cottage dock, six stickers in front of the belly fin by the tail, dots in rows",
     "ambloplites-rupestris"),
    ("tiny silvery sunfish, orange dots all over, black ear framed in white", "lepomis-humilis"),
    ("spotty back fin all in one piece, glassy eyes, no scales on its head", "gymnocephalus-cernua"),
])
def test_the_fish_told_comes_first(line: str, first: str, talk: Talk) -> None:
    """Marks told in plain words lead to the fish that has them."""
    assert talk(line)[0].taxa[0] == first


def test_a_red_or_orange_mark_is_any_of_them(talk: Talk) -> None:
    """Of a red or orange mark on the ear both a spot and a band are meant."""
    answer, _ = talk("Which sunfishes have a red or orange mark on the ear?")
    assert {"lepomis-gibbosus", "lepomis-microlophus"} <= set(answer.taxa)
    assert "redear sunfish" in answer.blocks[0].text
