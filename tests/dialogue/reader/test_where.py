"""Places are read by name, code and nickname, and never out of everyday words."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.model.knowledge import KnowledgeBase

CLOCK = date(2026, 7, 4)


@pytest.mark.parametrize(
    ("text", "place"),
    [
        ("in Ohio", "us-oh"),
        ("bluegill OH", "us-oh"),
        ("pumpkinseed, pa", "us-pa"),
        ("md swamp", "us-md"),
        ("caught near mobile", "us-al"),
        ("and texas?", "us-tx"),
        ("northern ontario", "northern-ontario"),
        ("limit in me", "us-me"),
        ("in louisanna", "us-la"),
        ("a slough by new orleans", "us-la"),
        ("kentucky then", "us-ky"),
        ("caught in the ohio", "ohio-basin"),
        ("a slough in the missouri bootheel", "us-mo"),
        ("in the missouri ozarks", "us-mo"),
        ("on the ohio side of the lake", "us-oh"),
    ],
)
def test_places(kb: KnowledgeBase, text: str, place: str) -> None:
    """States and provinces by name, code, nickname, city or with a slip."""
    assert place in read_line(kb, text, Held(), CLOCK).places


@pytest.mark.parametrize(
    "text",
    [
        "can i keep it or not",
        "hi, is it ok for me",
        "oh and it had spots in rows",
        "id this: a fish",
        "one or two of the fins",
        "kentucky bass",
        "florida bass or largemouth",
        "mouth tilts up",
    ],
)
def test_everyday_words(kb: KnowledgeBase, text: str) -> None:
    """Words that are also codes, and places inside names of fishes, are no places."""
    assert read_line(kb, text, Held(), CLOCK).places == ()


def test_demo_water(kb: KnowledgeBase) -> None:
    """A water is kept apart from the jurisdiction it lies in."""
    reading = read_line(kb, "drennick reservoir largemouth 17 1/2", Held(), CLOCK)
    assert reading.water == "drennick-reservoir"
    assert reading.places == ("qui",)


@pytest.mark.parametrize(
    ("text", "name"), [("caught in lake gobbledrum", "lake gobbledrum"), ("zanquist creek bass", "zanquist creek")]
)
def test_unknown_water(kb: KnowledgeBase, text: str, name: str) -> None:
    """A water that is not known is named, not guessed at."""
    reading = read_line(kb, text, Held(), CLOCK)
    assert (reading.unknown_place, reading.water) == (name, None)
