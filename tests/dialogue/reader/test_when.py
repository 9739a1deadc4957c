"""Dates and seasons are read against the day of the clock."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.tokens import tokenize
from assistant.dialogue.reader.when import When, dated, in_some_year, read_when, tells_past
from assistant.model.knowledge import KnowledgeBase
from tests.cases.reader import rows

CASES = rows("dates")
CLOCK = date(2026, 7, 4)


def _when(kb: KnowledgeBase, text: str, clock: date = CLOCK) -> When:
    return read_when(text, tokenize(text), lexicon_of(kb), clock)


@pytest.mark.parametrize("case", CASES, ids=[f"{c['typed']} on {c['clock']}" for c in CASES])
def test_forms(kb: KnowledgeBase, case: dict[str, str]) -> None:
    """Each typed date gives one of the allowed readings, an impossible one gives none."""
    found = _when(kb, case["typed"], date.fromisoformat(case["clock"]))
    assert (found.date or found.season or "-") in case["expected"].split("|")


@pytest.mark.parametrize(
    "text", ["may i keep it", "what may i keep", "march up the creek", "it can fall off", "spring creek"]
)
def test_ordinary_words(kb: KnowledgeBase, text: str) -> None:
    """Words that are also months or seasons are left alone where they are not meant so."""
    found = _when(kb, text)
    assert (found.date, found.season) == (None, "")


def test_date_inside_a_question(kb: KnowledgeBase) -> None:
    """The stretch of the line that is the date is given, so that its numbers are read for nothing else."""
    found = _when(kb, "walleye, 40 cm, 10 june 2026 - mine to keep?")
    assert found.date == "2026-06-10"
    assert found.spans == ((16, 28),)


@pytest.mark.parametrize(("line", "past"), [
    ("I caught a walleye on april 20", True), ("was it open last april", True),
    ("may I keep a walleye next april", False), ("is it open the last saturday in may", False),
])
def test_a_line_of_days_gone_by(line: str, past: bool) -> None:
    """Words of a catch made, or a month said to be the last one, tell of the past."""
    assert tells_past(line) is past


def test_a_day_of_every_year() -> None:
    """A day without its year is the coming one, today counted; 29 February waits for its year, 31 June never comes."""
    assert in_some_year(lambda y: date(y, 7, 4), CLOCK, False) == CLOCK
    assert in_some_year(lambda y: date(y, 4, 5), CLOCK, False) == date(2027, 4, 5)
    assert in_some_year(lambda y: date(y, 4, 5), CLOCK, True) == date(2026, 4, 5)
    assert in_some_year(lambda y: date(y, 2, 29), CLOCK, False) == date(2028, 2, 29)
    assert in_some_year(lambda y: date(y, 6, 31), CLOCK, False) is None


@pytest.mark.parametrize(("line", "told"), [
    ("a week later?", "2026-06-27?"), ("and the next day", "and 2026-06-21"), ("two days earlier", "2026-06-18"),
    ("and Skarrowin on the 27th, up north", "and Skarrowin 2026-06-27, up north"), ("the day before", "2026-06-19"),
    ("the 10th walleye", "the 10th walleye"), ("3 days after spawning", "3 days after spawning"),
    ("the day after tomorrow", "the day after tomorrow"), ("the day before yesterday", "the day before yesterday"),
    ("12.5 days later", "12.5 days later"), ("half a week later", "half a week later"),
    ("the day before I caught it", "the day before I caught it"), ("the 3rd, can I keep it", "the 3rd, can I keep it"),
])
def test_days_counted_from_the_one_spoken_of(line: str, told: str) -> None:
    """A day told by its distance from the one judged becomes that date; other talk of days stays as it is."""
    assert dated(line, date(2026, 6, 20)) == told


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("can I keep a bass next week", "2026-07-11"),
        ("this week", "2026-07-04"),
        ("last week", "2026-06-27"),
        ("next weekend", "2026-07-11"),
        ("this weekend", "2026-07-04"),
        ("next month", "2026-08"),
        ("last month", "2026-06"),
    ],
)
def test_weeks_and_months_to_come(kb: KnowledgeBase, text: str, day: str) -> None:
    """A week, weekend or month counted from the day of the clock is no longer taken for today."""
    assert _when(kb, text).date == day


def test_this_weekend_from_a_weekday(kb: KnowledgeBase) -> None:
    """On a weekday the weekend begins on Saturday, on Sunday it is today; December is followed by January."""
    assert _when(kb, "this weekend", date(2026, 11, 27)).date == "2026-11-28"
    assert _when(kb, "this weekend", date(2026, 11, 29)).date == "2026-11-29"
    assert _when(kb, "next month", date(2026, 12, 5)).date == "2027-01"
