"""A month told without a day: its days, and the spans of them for which the same holds (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import date, timedelta

from assistant.dialogue.reader.when import in_some_year, tells_past
from assistant.dialogue.rules.words import MONTHS
from assistant.dialogue.turn import Turn

_MONTH = re.compile(r"(?:-|\d{4})-\d\d")


def days_told(turn: Turn, day: date | None) -> list[date]:
    """The one day known, else every day of the month told."""
    return [day] if day is not None else month_days(first_of_month(turn))


def month_told(turn: Turn) -> list[date]:
    """The days of the month told without a day; nothing where a day or no month was told."""
    return month_days(first_of_month(turn)) if is_month(turn.held.date or "") else []


def is_month(told: str) -> bool:
    """True for a month without a day.

    >>> is_month("--07"), is_month("2026-07"), is_month("--07-04"), is_month("2026-07-04")
    (True, True, False, False)
    """
    return _MONTH.fullmatch(told) is not None


def first_of_month(turn: Turn) -> date:
    """The first day of the month asked about: the coming one, this month, or one gone by where the line tells of it."""
    text = turn.held.date or ""
    if is_month(text) and not text.startswith("--"):
        return date.fromisoformat(f"{text}-01")
    month = int(text[2:4]) if text.startswith("--") else turn.clock.month
    this_month = turn.clock.replace(day=1)
    return in_some_year(lambda year: date(year, month, 1), this_month, tells_past(turn.reading.text)) or this_month


def month_days(first: date) -> list[date]:
    """The days of the month that begins on a day."""
    return [d for n in range(31) if (d := first + timedelta(days=n)).month == first.month]


def runs(days: Sequence[date]) -> list[tuple[date, date]]:
    """Days in order as spans without a gap.

    >>> runs([date(2026, 7, 1), date(2026, 7, 2), date(2026, 7, 9)])
    [(datetime.date(2026, 7, 1), datetime.date(2026, 7, 2)), (datetime.date(2026, 7, 9), datetime.date(2026, 7, 9))]
    """
    return alike(days, lambda _: True)


def alike(days: Sequence[date], outcome: Callable[[date], object]) -> list[tuple[date, date]]:
    """Days in order as spans without a gap in which the outcome is the same."""
    out: list[tuple[date, date]] = []
    last: object = None
    for day in days:
        found = outcome(day)
        if out and found == last and day - out[-1][1] == timedelta(days=1):
            out[-1] = (out[-1][0], day)
        else:
            out.append((day, day))
        last = found
    return out


def span_words(first: date, last: date) -> str:
    """Days of one month in words.

    >>> span_words(date(2026, 7, 1), date(2026, 7, 9))
    '1 to 9 July 2026'
    """
    end = f"{MONTHS[last.month - 1]} {last.year}"
    if first == last:
        return f"{last.day} {end}"
    whole = first.day == 1 and (last + timedelta(days=1)).day == 1
    return end if whole else f"{first.day} to {last.day} {end}"
