"""Date expressions of fishing rules and the windows between them (layer 3).

Forms: ``fixed:MM-DD``, ``fixed:YYYY-MM-DD``, ``nth:3-Sat-May``, ``last:Sat-Apr``, ``nearest:Sat-to-05-30``,
``holiday:Memorial-Day``, ``last-day:Feb``; each may end in an offset such as `` -1d``. Both ends of a window
are open days; a window whose end falls before its start ends in the next year.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time, timedelta
from functools import lru_cache

from dateutil.relativedelta import FR, MO, SA, SU, TH, TU, WE, relativedelta, weekday

from assistant.errors import DataError

WEEKDAYS: dict[str, weekday] = {"Mon": MO, "Tue": TU, "Wed": WE, "Thu": TH, "Fri": FR, "Sat": SA, "Sun": SU}
MONTHS: dict[str, int] = {
    name: number for number, name in enumerate(
        ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"), start=1)
}
DAY = timedelta(days=1)
_HINT = "see the date forms in assistant/reasoning/calendar.py, e.g. fixed:05-15 or nth:3-Sat-May -1d"


def nth_weekday(year: int, month: int, day: str, n: int) -> date:
    """The n-th given weekday of a month (1 to 5), or the last one for -1; DataError when there is none."""
    first = date(year, month, 1)
    base = first + relativedelta(day=31) if n < 0 else first
    found = base + relativedelta(weekday=WEEKDAYS[day](n))
    if found.month != month:
        raise DataError(f"{year}-{month:02d} has no {n}th {day}", _HINT)
    return found


def nearest_weekday(anchor: date, day: str) -> date:
    """The given weekday closest to a date: never more than three days off."""
    return anchor - 3 * DAY + relativedelta(weekday=WEEKDAYS[day](+1))


HOLIDAYS: dict[str, Callable[[int], date]] = {
    "New-Years-Day": lambda y: date(y, 1, 1),
    "Victoria-Day": lambda y: date(y, 5, 24) + relativedelta(weekday=MO(-1)),
    "Memorial-Day": lambda y: nth_weekday(y, 5, "Mon", -1),
    "Canada-Day": lambda y: date(y, 7, 1),
    "Independence-Day": lambda y: date(y, 7, 4),
    "Labor-Day": lambda y: nth_weekday(y, 9, "Mon", 1),
    "Canadian-Thanksgiving": lambda y: nth_weekday(y, 10, "Mon", 2),
    "Veterans-Day": lambda y: date(y, 11, 11),
    "Thanksgiving": lambda y: nth_weekday(y, 11, "Thu", 4),
    "Christmas-Day": lambda y: date(y, 12, 25),
}


def _fixed(body: str, year: int) -> date:
    if re.fullmatch(r"\d{4}-\d\d-\d\d", body):
        return date.fromisoformat(body)
    if body == "02-29":
        raise DataError("29 February is not in every year", "write last-day:Feb")
    return date.fromisoformat(f"{year}-{body}")


def _nth(body: str, year: int) -> date:
    n, day, month = body.split("-")
    return nth_weekday(year, MONTHS[month], day, int(n))


def _last(body: str, year: int) -> date:
    day, month = body.split("-")
    return nth_weekday(year, MONTHS[month], day, -1)


def _nearest(body: str, year: int) -> date:
    day, _, anchor = body.partition("-to-")
    target = HOLIDAYS[anchor](year) if anchor in HOLIDAYS else _fixed(anchor, year)
    return nearest_weekday(target, day)


def _last_day(body: str, year: int) -> date:
    return date(year, MONTHS[body], 1) + relativedelta(day=31)


_FORMS: dict[str, Callable[[str, int], date]] = {
    "fixed": _fixed, "nth": _nth, "last": _last, "nearest": _nearest, "last-day": _last_day,
    "holiday": lambda body, year: HOLIDAYS[body](year),
}
_EXPRESSION = re.compile(r"(?P<form>[a-z-]+):(?P<body>\S+)(?:\s+(?P<offset>[+-]\d+)d)?")


@lru_cache(maxsize=4096)
def day_in_year(expression: str, year: int) -> date:
    """The day that a date expression names in a year; DataError for one that cannot be read.

    >>> day_in_year("nth:4-Sat-Jun -1d", 2026), day_in_year("last-day:Feb", 2028)
    (datetime.date(2026, 6, 26), datetime.date(2028, 2, 29))
    """
    parts = _EXPRESSION.fullmatch(expression.strip())
    if parts is None or parts["form"] not in _FORMS:
        raise DataError(f"not a date expression: {expression!r}", _HINT)
    try:
        day = _FORMS[parts["form"]](parts["body"], year)
    except (KeyError, ValueError) as fault:
        raise DataError(f"not a date expression: {expression!r}", _HINT) from fault
    return day + int(parts["offset"] or 0) * DAY


@dataclass(frozen=True, slots=True)
class Span:
    """Two days and all between them, both included."""

    first: date
    last: date

    def __contains__(self, day: date) -> bool:
        return self.first <= day <= self.last


def window_of(opens: str, closes: str, year: int) -> Span:
    """The window that opens in ``year``; it runs into the next year when its end would come first."""
    first = day_in_year(opens, year)
    last = day_in_year(closes, year)
    if last < first:
        last = day_in_year(closes, year + 1)
    return Span(first, last)


def window_holding(opens: str, closes: str, day: date) -> Span | None:
    """The window that a day lies in, tried from the anchors of its own year and of the year before."""
    for year in (day.year, day.year - 1):
        span = window_of(opens, closes, year)
        if day in span:
            return span
    return None


def next_opening(opens: str, closes: str, day: date) -> Span | None:
    """The first window that opens after a day, or None for dates with a year that have passed."""
    for year in (day.year - 1, day.year, day.year + 1, day.year + 2):
        span = window_of(opens, closes, year)
        if span.first > day:
            return span
    return None


def clock_time(text: str) -> time:
    """A time of day written HH:MM; "24:00" is the last moment of the day."""
    if text == "24:00":
        return time.max
    return time.fromisoformat(text)


def within_hours(starts: str, ends: str, moment: time) -> bool:
    """True from ``starts`` on and before ``ends``; hours that run past midnight are understood."""
    first, last = clock_time(starts), clock_time(ends)
    if first <= last:
        return first <= moment < last or (last == time.max and moment >= first)
    return moment >= first or moment < last
