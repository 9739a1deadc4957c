"""Information answers in conversation: what was spoken of carries over, narrows and comes back."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from tests.dialogue.conftest import Talk


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("lines", "intent", "taxon", "must"),
    [
        (("how big do rock bass get", "biggest ever"), "size", "ambloplites-rupestris", "largest"),
        (("how big do rock bass get", "what does it eat"), "habitat", "ambloplites-rupestris", "food"),
        (("are redears native to california", "and texas?"), "range", "lepomis-microlophus", "native to texas"),
        (("what would a 10 inch bluegill weigh", "11?"), "weight", "lepomis-macrochirus", "11 in"),
        (("i have a 30 in pike, whats it go", "kg please"), "weight", "esox-lucius", "kg"),
        (("Describe the redbreast", "bait?"), "tackle", "lepomis-auritus", "worm"),
        (("whats the max size of a longear", "hybrids?"), "hybrids", "lepomis-megalotis", "known crosses"),
        (
            ("does the flier live in georgia", "what do folks call it there"),
            "names",
            "centrarchus-macropterus",
            "called",
        ),
        (
            ("can a bluegill and a green sunfish cross", "which sex mostly"),
            "hybrids",
            "lepomis-cyanellus-x-lepomis-macrochirus",
            "males",
        ),
        (("he swallowed the hook what now", "bleeding a lot"), "handling", "", "gills"),
        (("whats an operculum", "how do you say it for 7 year olds"), "term", "", "gill"),
        (("redear vs redbreast", "which one bites topwater"), "tackle", "lepomis-auritus", "redbreast"),
    ],
)
def test_follow_ups(talk: Talk, lines: tuple[str, ...], intent: str, taxon: str, must: str) -> None:
    """The second line is answered about the fish of the first."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert not taxon or taxon in answer.taxa
    assert must in text(answer)


def test_a_list_is_carried_on_as_its_kinds(talk: Talk) -> None:
    """After a list of three catfishes the next question is about these three, not about the family."""
    answer, _ = talk("Which catfishes have a forked tail?", "how long do they get")
    assert answer.taxa[:3] == ("ictalurus-punctatus", "ictalurus-furcatus", "ameiurus-catus")
    assert "bullhead" not in text(answer) and "white catfish" in text(answer)


def test_which_gets_biggest(talk: Talk) -> None:
    """Of the fishes listed the largest leads."""
    answer, _ = talk("Which catfishes have a forked tail?", "which gets biggest")
    assert "blue catfish" in answer.blocks[0].text


def test_a_place_told_later_settles_a_name(talk: Talk) -> None:
    """What a brim is, once the state is told."""
    answer, _ = talk("whats a brim", "here in alabama")
    assert answer.intent == "names" and "in alabama" in text(answer) and "bluegill" in text(answer)


def test_sources_of_an_information_answer(talk: Talk) -> None:
    """Advice and sizes name their sources when asked."""
    hook, _ = talk("he swallowed the hook what now", "says who")
    assert hook.intent == "sources" and "casselman" in text(hook)
    line, _ = talk("weight of 20in walleye", "which source")
    assert "standard" in text(line) or "fsa" in text(line)


def test_counts_as_bounds(talk: Talk) -> None:
    """More than ten dorsal spines and more than four anal spines: rock basses and kin, no black bass."""
    answer, _ = talk("Which species in the base have more than ten dorsal spines and more than four anal spines?")
    assert "ambloplites-rupestris" in answer.taxa and "micropterus-nigricans" not in answer.taxa
    assert "at least 11 dorsal spines" in answer.blocks[0].text


@pytest.mark.parametrize(
    ("line", "first"),
    [("which sunfish is the smallest", "lepomis-symmetricus"), ("which catfish gets biggest", "ictalurus-furcatus")],
)
def test_kinds_by_size(talk: Talk, line: str, first: str) -> None:
    """The smallest and the biggest of a group lead, with their lengths."""
    answer, _ = talk(line)
    assert answer.taxa[0] == first and " in (" in answer.blocks[0].text


def test_a_hook_in_a_hand_is_no_fish_matter(talk: Talk) -> None:
    """Getting a hook out of a hand is first aid, not unhooking a fish."""
    answer, _ = talk("how to get hook out of my hand")
    assert answer.blocks[0].statements == ("caution:hook-in-person",)


def test_asking_whether_a_fish_stings_is_no_emergency(talk: Talk) -> None:
    """Do bullheads sting: the spines are told of, not the emergency room."""
    answer, _ = talk("do bullheads sting")
    assert "spines" in answer.blocks[0].text and "medical" not in answer.blocks[0].text
