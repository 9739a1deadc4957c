"""Lengths told in words, fish of other days, fish kept since a verdict, and numbers that are none of fish."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from assistant.dialogue.reader.catch_plain import said_plainly, tells_other_days
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("said", "plain"), [
    ("a foot and a half long", "18 inches long"), ("a foot and three inches", "15 inches"),
    ("over 4 and a half feet", "over 54 inches"), ("12 and 3/4 inches", "12 3/4 inches"),
    ("16 and an eighth inches", "16 1/8 inches"), ("71,5 cm", "71.5 cm"),
])
def test_lengths_in_words_become_figures(said: str, plain: str) -> None:
    """A foot and a half is 18 inches, and a comma before tenths of a unit is a point."""
    assert said_plainly(said, 0, False) == plain


def test_fish_of_other_days_are_told_beside_one_of_today() -> None:
    """Only beside a fish asked about are those of yesterday told apart; by themselves they are the catch itself."""
    assert tells_other_days("walleye 16 in, 5 kept yesterday. keep?")
    assert not tells_other_days("i kept 2 walleye yesterday, was that ok")


@pytest.mark.parametrize(("talk", "verdict", "must"), [
    ("Crappie 9 in at Ollimarsh, 14 crappie kept today. can I keep it? / next crappie is also 9 in. kept the last one",
     "release", "15 of 15 crappie"),
    ("Bluegill 17 cm Vennimoor, kept 7. keep? / I kept that one. And now another of 18 cm", "release", "8 of 8"),
    ("Walleye 16 in Ollimarsh, four kept. keep? / ok it's in the cooler. Next one, 17 in?", "release", "5 of 5"),
    ("Walleye 15 in Ollimarsh keep? / half an inch shorter?", "release", "14.5 in"),
    ("Wexmallow Canal bowfin 24 in on Nov 14, keep? / next day?", "closed", "november"),
    ("Musky 54 inches Threlwick, keep? / my net mark says 53 and a half though", "release", "53.5 in"),
    ("pike 71,5 cm Threlwick keep?", "release", "71.5 cm"),
    ("walleye 40 cm Skarrowin, caught 3 and kept all but one. keep?", "release", "2 of 2"),
    ("crappie 10 in Ollimarsh, 1/8 oz jig, 4 lb test, 61 degree water, 3 hours, 12 kept, keep?", "keep", "12 of 15"),
    ("kept 4 with 2 anglers in boat, walleye 16 in Ollimarsh, keep?", "keep", "4 of 5"),
    ("Largemouth 15 in, Ollimarsh. Kept 4 this morning and 1 yesterday. keep?", "keep", "4 of 5"),
    ("Walleye 16 in Ollimarsh; 5 kept yesterday and eaten, 4 kept today. keep?", "keep", "4 of 5"),
    ("walleye 16 in Ollimarsh, 5 kept yesterday. keep?", "keep", "0 of 5"),
    ("muskie 138 cm Threlwick, kept one on Tuesday and ate it. keep?", "keep", "today, 4 july 2026"),
    ("walleye 40 cm Threlwick, 4 in the freezer are my wife's. none of mine. keep?", "keep", "fewer than 4"),
    ("walleye 40 cm skarrowin, I got out on the 3rd, keep?", "keep", "fewer than 2"),
    ("Sauger 16 and an eighth inches Skarrowin, kept one. Keep?", "keep", "1 of 2"),
    ("smallmouth a foot and a half long at Drennick, kept one 18 incher already today. keep this one?", "release",
     "1 kept already"),
    ("walleye 37,5 cm Skarrowin, keep?", "keep", "37.5 cm"),
    ("walleye 16 in Ollimarsh, kept a couple, keep?", "keep", "2 of 5"),
    ("walleye 16 in Ollimarsh, got a couple of walleye in the bucket, keep?", "keep", "2 of 5"),
    ("crappie 10 in Ollimarsh, kept half a dozen, keep?", "keep", "6 of 15"),
    ("crappie 10 in Ollimarsh, kept a dozen already, keep?", "keep", "12 of 15"),
    ("bluegill 8 in Ollimarsh, two dozen gills kept, keep?", "release", "24 of 20"),
    ("walleye 16 in Ollimarsh, kept a few, keep?", "keep", "fewer than 5"),
    ("smallmouth 15 in at Ollimarsh, half a dozen kept by my buddy, none by me, keep?", "keep", "fewer than 5"),
    ("third walleye today on Ollimarsh, this one goes 15 1/2 in", "keep", "2 of 5"),
    ("on the third day today I got a walleye of 16 in at Ollimarsh, keep it?", "keep", "fewer than 5"),
])
def test_the_verdict_is_that_of_what_was_told(open_base: Base, talk: str, verdict: str, must: str) -> None:
    """One verdict, on the length, the fish and the counts that the line tells."""
    answer = last(open_base, talk)
    assert answer.verdict == verdict and must in text(answer)


def test_a_duty_of_some_fishes_is_told_of_them_alone(open_base: Base) -> None:
    """The rule against carrying listed fishes alive is not cited for a perch, and names them where none is asked of."""
    perch = text(last(open_base, "Can I take my perch home alive from Threlwick"))
    assert "h12" in perch and "h10" not in perch
    assert "round goby: it must not be held" in text(last(open_base, "Can I take live fish home from Threlwick"))
    assert "h10" in text(last(open_base, "Can I take a goldfish home alive from Threlwick"))
