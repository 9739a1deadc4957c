"""What is said right after a verdict: another length, how much longer, how many; and what is no length of the fish."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text

FIRST = "can i keep a 42 cm walleye on skarrowin"
"""May be kept: the invented rule of the lake lets walleye of 36 to 46 cm be kept, two a day."""


@pytest.mark.parametrize("line", [
    "make that 47", "i meant 47", "its 47", "47", "what if it were 47", "5 cm longer", "2 inches longer"])
def test_another_length_is_judged(open_base: Base, line: str) -> None:
    """A bare number near the length told is a length, and so much longer makes another one."""
    answer = last(open_base, f"{FIRST} / {line}")
    assert answer.verdict == "release"
    assert "does not fit the length rule" in text(answer) and "47" in text(answer)
    assert "47 kept" not in text(answer)


@pytest.mark.parametrize("line", [
    "what if its 2 days later", "we are 4 in the boat", "4 of us fishing", "caught it 20 feet down",
    "used a 3 inch lure", "a quarter inch shorter", "what if it was 5 cm shorter"])
def test_what_is_no_length_and_no_count_changes_no_verdict(open_base: Base, line: str) -> None:
    """Days, people, depths and lures are no fish; a little shorter it still fits."""
    answer = last(open_base, f"{FIRST} / {line}")
    assert answer.verdict == "keep"
    assert "fewer than 2" in text(answer)


@pytest.mark.parametrize(("line", "kept"), [("1", 1), ("got 2 in the boat", 2), ("thatd be my 3rd today", 2)])
def test_fish_kept_are_counted(open_base: Base, line: str, kept: int) -> None:
    """A small number, fish in the boat and the third of the day tell how many were kept before."""
    answer = last(open_base, f"{FIRST} / {line}")
    assert f"{kept} kept today" in text(answer) or f"{kept} of 2" in text(answer)
    assert answer.verdict == ("keep" if kept < 2 else "release")


def test_a_count_of_another_fish_is_no_length(open_base: Base) -> None:
    """In "and 5 bluegill" nothing is told of how long they are."""
    said = text(last(open_base, f"{FIRST} / and 5 bluegill"))
    assert "5 bluegill" in said and "5 cm" not in said


@pytest.mark.parametrize(("line", "verdict", "must"), [
    ("40 cm walleye skarrowin, kept 2 yesterday. keep?", "release", "2 stored from before"),
    ("40 cm walleye skarrowin, kept 2 yesterday. keep?", "release", "today, 4 july 2026"),
    ("drennick largemouth 1 foot 6, keep it?", "keep", "at 18 in"),
    ("15 3/4 largemouth from drennick, keep", "release", "15 3/4 in"),
    ("caught a 15 inch largemouth 20 feet down on a 3 inch grub, drennick, keep it?", "release", "15 in (38.1 cm)"),
    ("vennimoor lake bluegill 7 1/2, my third one today, keep it?", "keep", "2 of 8 sunfish before this one"),
])
def test_what_stands_beside_the_length_is_no_fish(open_base: Base, line: str, verdict: str, must: str) -> None:
    """Depth and lure are no fish, those of other days not of today's bag; the third today has two before it."""
    answer = last(open_base, line)
    assert answer.verdict == verdict and must in text(answer)
