"""Lengths, girths and weights are read in every form in which people type them.

Factors: 1 in = 25.4 mm, 1 lb = 453.59237 g (assistant/units.py names their sources). The forms are our own gathering
(common practice, no source).
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from assistant.dialogue.reader.measures import Setting, read_measures
from tests.cases.reader import rows

CASES = rows("measures")
PLACES = frozenset(("ohio", "june"))


@pytest.mark.parametrize("case", CASES, ids=[c["typed"] for c in CASES])
def test_forms(case: dict[str, str]) -> None:
    """Each typed form gives its kind, unit and value to half a per cent, or nothing where no number may be read."""
    found = read_measures(case["typed"], Setting())
    if case["value"] == "-":
        assert found == ()
        return
    low, _, high = case["value"].partition("..")
    assert len(found) == 1
    assert (found[0].kind, found[0].unit) == (case["kind"], case["unit"])
    assert float(found[0].low) == pytest.approx(float(low), rel=0.005)
    assert float(found[0].high) == pytest.approx(float(high or low), rel=0.005)
    if case["certainty"] in ("about", "exact"):
        assert found[0].about is (case["certainty"] == "about")


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("an inch short of forty", "990.6"),
        ("half an inch over a foot", "317.5"),
        ("two inches shy of 30", "711.2"),
        ("ten and a quarter", "260.35"),
        ("9 and 7/8", "250.825"),
        ("58 centimeters", "580"),
        ("twenty two inches", "558.8"),
        ("a 15 incher 15 in", "381"),
    ],
)
def test_words(typed: str, mm: str) -> None:
    """Lengths spelt out or said as a difference are worked out."""
    assert float(read_measures(typed, Setting())[-1].low) == pytest.approx(float(mm))


@pytest.mark.parametrize(
    "typed",
    [
        "caught 4 in the creek",
        "I got 12 in ohio",
        "5 question quiz",
        "grade 4",
        "2 kids",
        "7 spines",
        "july 4 2026",
        "D XI, 12",
        "on 9/10",
        "3 of them",
    ],
)
def test_no_measure(typed: str) -> None:
    """Counts, dates and the word "in" are no lengths."""
    assert read_measures(typed, Setting(is_place=PLACES.__contains__)) == ()


@pytest.mark.parametrize(("typed", "inches"), [
    ("redear eleven even, what should it weigh", 11), ("walleye 22 flat", 22),
])
def test_a_number_told_to_be_exact_is_a_length(typed: str, inches: int) -> None:
    """ "Eleven even" needs no unit; "even with" something and "95 out of 100" are no measures."""
    assert [m.low for m in read_measures(typed, Setting())] == [inches * Decimal("25.4")]
    assert not read_measures("7 even with the eye", Setting()) and not read_measures("95 out of 100", Setting())


def test_bare_numbers_need_context() -> None:
    """A bare whole number is a length only where the talk is of lengths, and then in the unit in use."""
    assert read_measures("what if it was 69", Setting()) == ()
    found = read_measures("what if it was 69", Setting(unit="cm", bare=True))
    assert [(m.low, m.bare) for m in found] == [(Decimal(690), True)]


@pytest.mark.parametrize(
    "typed",
    [
        "limit is 10 in",
        "the board says 10 inches",
        "6 lb test",
        "10 feet deep",
        "minimum of 14 inches",
        "3 inch worm",
        "at least 15 in",
    ],
)
def test_not_the_fish(typed: str) -> None:
    """A rule's figure, a depth, a line's strength or a lure's size is not the length of the catch."""
    assert [m.own for m in read_measures(typed, Setting())] == [False]


def test_part_of_the_fish() -> None:
    """The length of a fin is not the length of the fish."""
    parts = frozenset(("fin", "ear"))
    assert [m.own for m in read_measures("side fin about 2 inches", Setting(is_part=parts.__contains__))] == [False]
    assert [m.own for m in read_measures("long ear. 9 inches", Setting(is_part=parts.__contains__))] == [True]


@pytest.mark.parametrize(
    ("typed", "method"),
    [
        ("190mm TL", "total"),
        ("FL 240 mm", "fork"),
        ("14in to the fork", "fork"),
        ("SL 95 mm", "standard"),
        ("9 in", ""),
    ],
)
def test_method(typed: str, method: str) -> None:
    """How a length was taken is kept."""
    assert read_measures(typed, Setting())[0].method == method


def test_length_and_girth_and_weight_in_one_line() -> None:
    """Several measures of one line are told apart."""
    found = read_measures("18 inch largemouth with a 13 inch girth, 3 lb 4 oz", Setting())
    assert [(m.kind, round(float(m.low), 1)) for m in found] == [
        ("length", 457.2),
        ("girth", 330.2),
        ("weight", 1474.2),
    ]


def test_temperature() -> None:
    """Degrees are temperatures, Fahrenheit unless told otherwise."""
    assert round(read_measures("68 degrees", Setting())[0].low, 6) == 20
    assert read_measures("20°C", Setting())[0].low == 20


@pytest.mark.parametrize(("typed", "long", "round_it"), [
    ("musky 44 by 20", 1117.6, 508.0), ("bass 18 x 13 in", 457.2, 330.2), ("60 x 30 cm carp", 600.0, 300.0),
])
def test_length_by_girth(typed: str, long: float, round_it: float) -> None:
    """Two numbers parted by "by" or "x" are a length and a girth where the second could be one."""
    found = read_measures(typed, Setting())
    assert [(m.kind, round(float(m.low), 1)) for m in found] == [("length", long), ("girth", round_it)]


@pytest.mark.parametrize("typed", ["8 x 3 scales", "12 x 12 pond", "a 6 by 40 rig"])
def test_no_girth(typed: str) -> None:
    """A second number that no girth could have makes no pair."""
    setting = Setting(is_part=lambda word: word == "scales")
    assert not any(m.kind == "girth" for m in read_measures(typed, setting))


@pytest.mark.parametrize(("typed", "celsius"), [
    ("water is 71 on my thermometer", 21.7), ("water temp was 20, rainbows", 20.0), ("water at 60 f", 15.6),
    ("turning it loose, 95 out. anything special", 35.0), ("its 88 outside today", 31.1),
])
def test_of_the_water(typed: str, celsius: float) -> None:
    """A bare number told of the water is a temperature, in the scale in which water could have it."""
    found = read_measures(typed, Setting())
    assert [(m.kind, round(float(m.low), 1)) for m in found] == [("temperature", celsius)]


def test_what_about_is_no_about() -> None:
    """ "What about an 18" names a length outright; "about 18 in" does not."""
    setting = Setting(bare=True)
    assert not read_measures("what about an 18", setting)[0].about and read_measures("about 18 in", setting)[0].about


@pytest.mark.parametrize("typed", ["11 inches long, 7.5 round the middle", "18 in, 13 in round the belly",
                                   "20 inches, 14 inches around"])
def test_what_goes_round_a_fish_is_its_girth(typed: str) -> None:
    """A figure before "round the middle" is a girth, not a second length."""
    assert [m.kind for m in read_measures(typed, Setting())] == ["length", "girth"]


def test_what_they_are_is_their_own_length() -> None:
    """The length behind "they're" is that of the fish, whatever part was named before."""
    found = read_measures("by the fin, when they're only 40 mm", Setting(is_part=lambda word: word == "fin"))
    assert [(float(m.low), m.own) for m in found] == [(40.0, True)]


@pytest.mark.parametrize(
    ("text", "base"),
    [
        ("muskie 1 m 30, how heavy", 1300),
        ("pike 1m05", 1050),
        ("1 m 30 cm", 1300),
        ("one meter thirty", 1300),
        ("1 kg 250", 1250),
        ("1 kg 250 g", 1250),
    ],
)
def test_a_metric_measure_is_told_in_two_parts(text: str, base: float) -> None:
    """The smaller unit may be left out where the digits tell it."""
    (found,) = read_measures(text, Setting())
    assert float(found.low) == base


@pytest.mark.parametrize("text", ["1 m 12 dorsal spines", "1 m, 30 years", "1 m 3 fish"])
def test_a_count_behind_metres_is_no_part_of_them(text: str) -> None:
    """What follows may be a count of something else."""
    assert float(read_measures(text, Setting())[0].low) == 1000


@pytest.mark.parametrize("text", ["my scale says one fifteen", "weighed one fifteen"])
def test_pounds_and_ounces_are_said_in_words(text: str) -> None:
    """Two number words after a word of weighing."""
    (found,) = read_measures(text, Setting())
    assert found.unit == "lb+oz" and round(float(found.low)) == 879
