"""Date expressions and windows, checked against common calendar arithmetic and a brute-force calendar."""

from __future__ import annotations

import calendar as civil
from datetime import date, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import DataError
from assistant.reasoning.calendar import (
    day_in_year,
    nearest_weekday,
    next_opening,
    window_holding,
    window_of,
    within_hours,
)

ANCHORS = [
    ("nth:3-Sat-May", date(2026, 5, 16)), ("nth:3-Sat-May", date(2027, 5, 15)),
    ("nth:4-Sat-Jun", date(2026, 6, 27)), ("nth:4-Sat-Jun -1d", date(2026, 6, 26)),
    ("nth:4-Sat-Apr", date(2026, 4, 25)), ("nth:4-Sat-Apr", date(2027, 4, 24)),
    ("nth:1-Sat-Apr", date(2026, 4, 4)), ("holiday:Memorial-Day", date(2026, 5, 25)),
    ("last:Sat-Apr", date(2026, 4, 25)), ("last-day:Feb", date(2026, 2, 28)), ("last-day:Feb", date(2028, 2, 29)),
    ("fixed:03-15", date(2027, 3, 15)), ("fixed:2026-07-10", date(2026, 7, 10)),
    ("nearest:Sat-to-05-25", date(2026, 5, 23)), ("nearest:Sat-to-Memorial-Day", date(2026, 5, 23)),
    ("holiday:Labor-Day", date(2026, 9, 7)), ("holiday:Thanksgiving", date(2026, 11, 26)),
    ("holiday:Victoria-Day", date(2026, 5, 18)), ("holiday:Canadian-Thanksgiving", date(2026, 10, 12)),
    ("holiday:Memorial-Day -14d", date(2026, 5, 11)), ("fixed:12-31 +1d", date(2027, 1, 1)),
]


@pytest.mark.parametrize(("expression", "day"), ANCHORS)
def test_anchor_days(expression: str, day: date) -> None:
    """Every form of expression gives the day that common calendar arithmetic gives."""
    year = day.year - 1 if expression.endswith("+1d") else day.year
    assert day_in_year(expression, year) == day


@given(st.integers(1990, 2080), st.integers(1, 12), st.integers(0, 6), st.integers(1, 4))
def test_nth_weekday_against_a_printed_month(year: int, month: int, weekday: int, n: int) -> None:
    """The n-th weekday is the n-th entry of that column in the month's calendar sheet."""
    column = [week[weekday] for week in civil.monthcalendar(year, month) if week[weekday]]
    name = f"nth:{n}-{civil.day_abbr[weekday]}-{civil.month_abbr[month]}"
    assert day_in_year(name, year) == date(year, month, column[n - 1])
    last = f"last:{civil.day_abbr[weekday]}-{civil.month_abbr[month]}"
    assert day_in_year(last, year) == date(year, month, column[-1])


@given(st.dates(date(1990, 1, 1), date(2080, 12, 31)), st.integers(0, 6))
def test_nearest_weekday_is_within_three_days(anchor: date, weekday: int) -> None:
    """The nearest weekday has the right name and is never more than three days away."""
    found = nearest_weekday(anchor, civil.day_abbr[weekday])
    assert found.weekday() == weekday
    assert abs((found - anchor).days) <= 3


OPENINGS = ["nth:3-Sat-May", "fixed:11-15", "last:Sat-Apr", "fixed:01-01", "nth:4-Sat-Jun", "fixed:12-31",
            "nearest:Sat-to-05-25", "holiday:Memorial-Day", "fixed:09-15", "last-day:Feb", "fixed:03-01"]
CLOSINGS = ["fixed:03-15", "fixed:11-30", "nth:4-Sat-Apr -1d", "last-day:Feb", "fixed:12-31", "fixed:01-01",
            "nth:1-Sun-Mar", "fixed:10-15", "holiday:Labor-Day"]


@given(st.sampled_from(OPENINGS), st.sampled_from(CLOSINGS), st.dates(date(2023, 1, 1), date(2029, 12, 31)))
def test_window_test_agrees_with_a_brute_force_calendar(opens: str, closes: str, day: date) -> None:
    """A day tried from its own year's anchor and the year before's lies in a window exactly when a list of all
    open days, written out day by day over ten years, holds it."""
    open_days = set()
    for year in range(2020, 2031):
        first, last = day_in_year(opens, year), day_in_year(closes, year)
        if last < first:
            last = day_in_year(closes, year + 1)
        open_days |= {first + timedelta(days=n) for n in range((last - first).days + 1)}
    assert (window_holding(opens, closes, day) is not None) == (day in open_days)


@given(st.sampled_from(OPENINGS), st.sampled_from(CLOSINGS), st.dates(date(2023, 1, 1), date(2029, 12, 31)))
def test_next_opening_is_the_first_after_the_day(opens: str, closes: str, day: date) -> None:
    """The next opening lies after the day, and no other opening lies between."""
    span = next_opening(opens, closes, day)
    assert span is not None and span.first > day
    between = [day_in_year(opens, y) for y in range(2020, 2033) if day < day_in_year(opens, y) < span.first]
    assert between == []


def test_both_ends_of_a_window_are_open_days() -> None:
    """Opening and closing day both count."""
    span = window_of("nth:3-Sat-May", "fixed:03-15", 2026)
    assert (span.first, span.last) == (date(2026, 5, 16), date(2027, 3, 15))
    assert span.first in span and span.last in span
    assert window_holding("nth:3-Sat-May", "fixed:03-15", date(2027, 3, 16)) is None


def test_window_with_years_happens_once() -> None:
    """A window whose dates name the year does not come back the next year."""
    assert window_holding("fixed:2026-07-10", "fixed:2026-09-10", date(2027, 8, 1)) is None
    assert next_opening("fixed:2026-07-10", "fixed:2026-09-10", date(2026, 10, 1)) is None


@pytest.mark.parametrize("expression", [
    "3-Sat-May", "nth:6-Sat-May", "nth:5-Sat-Feb", "fixed:02-29", "fixed:13-01", "holiday:No-Such-Day", "last:Sat",
    "nth:3-Sam-Mai", "", "fixed:05-15 + 1d", "last-day:Sept",
])
def test_unreadable_expressions_are_refused(expression: str) -> None:
    """An expression that names no day in every year is a fault of the data, not a guess."""
    with pytest.raises(DataError):
        day_in_year(expression, 2026)


@pytest.mark.parametrize(("starts", "ends", "moment", "closed"), [
    ("14:00", "24:00", time(13, 59), False), ("14:00", "24:00", time(14, 0), True),
    ("14:00", "24:00", time(23, 59), True), ("22:00", "05:00", time(23, 50), True),
    ("22:00", "05:00", time(4, 59), True), ("22:00", "05:00", time(5, 0), False),
])
def test_hours(starts: str, ends: str, moment: time, closed: bool) -> None:
    """Closed hours begin on the stroke, end before it, and may run past midnight."""
    assert within_hours(starts, ends, moment) is closed
