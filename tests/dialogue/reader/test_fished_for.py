"""Everyday words that are fishes by what they do or what is done to them, and stay parts or marks elsewhere.

The lines and their readings are our own judgement (common practice, no source).
"""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.model.knowledge import KnowledgeBase

CLOCK = date(2026, 7, 4)


def _named(kb: KnowledgeBase, line: str) -> set[str]:
    return {i for m in read_line(kb, line, Held(), CLOCK).of("taxon", "group") for i in m.ids}


@pytest.mark.parametrize(
    ("line", "fish"),
    [
        ("best bait for gills", "lepomis-macrochirus"),
        ("where do gills spawn", "lepomis-macrochirus"),
        ("when do gills bed up", "lepomis-macrochirus"),
        ("why are all the gills in my pond tiny", "lepomis-macrochirus"),
        ("specks wont bite in july", "pomoxis-nigromaculatus"),
        ("how deep do blues go in winter", "ictalurus-furcatus"),
        ("the shell crackers on our bed keep stealing my bait", "lepomis-microlophus"),
        ("bait for red ears", "lepomis-microlophus"),
        ("what does a red ear eat", "lepomis-microlophus"),
        ("caught some gills today", "lepomis-macrochirus"),
        ("kept 12 gills this morning", "lepomis-macrochirus"),
        ("how many gills can i keep", "lepomis-macrochirus"),
        ("big gills in the shallows, what bait", "lepomis-macrochirus"),
        ("specks, black or white?", "pomoxis-nigromaculatus"),
        ("Small mouth went 3 lb", "micropterus-dolomieu"),
        ("hook way down in a blues throat, cut it or dig", "ictalurus-furcatus"),
        ("flat heads got teeth?", "pylodictis-olivaris"),
        ("how many perch on simcoe this winter", "perca-flavescens"),
        ("vennimoor, 7 gills none over 20 cm, can the kid keep one more", "lepomis-macrochirus"),
        ("browns at dusk, what do i throw", "salmo-trutta"),
        ("blues at night", "ictalurus-furcatus"),
        ("drennick, april, 15 in brown. keep it?", "salmo-trutta"),
    ],
)
def test_what_is_fished_for_is_a_fish(line: str, fish: str, kb: KnowledgeBase) -> None:
    """A plural that bites, spawns, is baited for or lives in a water is read as the fish."""
    assert fish in _named(kb, line)


@pytest.mark.parametrize(
    "line",
    ["hook in the gills, what now", "it has red gills and a black tail", "bleeding from the gills",
     "how many gills are there on each side", "spots, black or white, on the side",
     "specks run in rows down the side", "bars go all the way down", "fish with a red ear", "he had red ears",
     "how would i pick one out", "a 10 in brown fish with whiskers", "browns on its back and a yellow belly",
     "it has tube noses", "anything running this spring"],
)
def test_parts_and_marks_stay_what_they_are(line: str, kb: KnowledgeBase) -> None:
    """Of a fish in the hand the same words tell of its parts and marks."""
    assert not _named(kb, line)


@pytest.mark.parametrize(
    ("line", "fish"),
    [
        ("what is a speck in the smokies?", "salvelinus-fontinalis"),
        ("round here they say speck. which fish is that", "pomoxis-nigromaculatus"),
        ("what is a gill in ohio", "lepomis-macrochirus"),
        ("buddy says spot i say largemouth", "micropterus-punctulatus"),
        ("guy at the ramp said redeye, what fish", "ambloplites-rupestris"),
    ],
)
def test_what_people_call_it_is_a_name(line: str, fish: str, kb: KnowledgeBase) -> None:
    """A word that people are said to use is a name, though it may name a mark or a part elsewhere."""
    assert fish in _named(kb, line)


@pytest.mark.parametrize("line", ["the tail is a blue, sides silver", "they say the specks fade in winter"])
def test_a_colour_told_of_a_part_is_no_name(line: str, kb: KnowledgeBase) -> None:
    """A word that does not end what people say, or is said of a part, stays what it is."""
    assert not _named(kb, line)
