"""Lengths, counts, days and hours as anglers write them."""

from __future__ import annotations

from datetime import date, time
from decimal import Decimal

import pytest

from assistant.dialogue.rules.catch_measures import plain_numbers, read_days, read_lengths, read_times
from assistant.reasoning import catch as c

TODAY = date(2026, 7, 4)


@pytest.mark.parametrize(("text", "length", "rest"), [
    ("bluegill 17 cm", c.measured(17, "cm"), "bluegill"),
    ("walleye 13 3/4 in", c.measured("13.75", "in"), "walleye"),
    ("13¾ in bass", c.measured("13.75", "in"), "bass"),
    ('15" bass', c.measured(15, "in"), "bass"),
    ("a 14-inch largemouth", c.measured(14, "in"), "a largemouth"),
    ("3 ft 2 in pike", c.measured(38, "in"), "pike"),
    ("pike, 1.1 m", c.measured("1.1", "m"), "pike,"),
    ("14-15 in", c.between(14, 15, "in"), ""),
    ("between 14 and 15 in", c.between(14, 15, "in"), ""),
    ("14 to 15 inches", c.between(14, 15, "in"), ""),
    ("about 15 in", c.about(15, "in"), ""),
    ("20 cm or so", c.about(20, "cm"), ""),
    ("just under 15 in", c.under(15, "in"), ""),
    ("over 20 cm", c.over(20, "cm"), ""),
    ("at least 15 in", c.over(15, "in", True), ""),
    ("fork length 16 in", c.measured(16, "in", c.FORK), ""),
    ("16 in to the fork", c.measured(16, "in", c.FORK), ""),
    ("exactly 15 in", c.measured(15, "in"), ""),
])
def test_length(text: str, length: c.Length, rest: str) -> None:
    """A length is read exactly, with its doubt and method, and taken out of the text."""
    (found,), left = read_lengths(plain_numbers(text))
    assert (found.low, found.high, found.low_included, found.high_included, found.method, found.about) == (
        length.low, length.high, length.low_included, length.high_included, length.method, length.about)
    assert left == rest


@pytest.mark.parametrize("text", [
    "38 in the freezer", "12 kept today", "in my bag", "3 in a bucket", "caught in 5 m of water", "20 ft deep",
    "2.5 lb",
])
def test_no_length(text: str) -> None:
    """"38 in the freezer" is a count, not 38 inches; depths and weights are no lengths of fish."""
    assert read_lengths(plain_numbers(text))[0] == ()


def test_a_list_is_not_a_range() -> None:
    """"44, 46 and 48 cm" are three lengths."""
    assert [x.low for x in read_lengths("44, 46 and 48 cm")[0]] == [Decimal(440), Decimal(460), Decimal(480)]


@pytest.mark.parametrize(("text", "days"), [
    ("2026-02-28, then 2026-03-01", [date(2026, 2, 28), date(2026, 3, 1)]),
    ("4 July 2026", [date(2026, 7, 4)]), ("July 4th, 2026", [date(2026, 7, 4)]), ("june 2", [date(2027, 6, 2)]),
    ("yesterday", [date(2026, 7, 3)]), ("third saturday in may 2026", [date(2026, 5, 16)]),
    ("memorial day", [date(2027, 5, 31)]), ("3 days ago", [date(2026, 7, 1)]), ("today", [TODAY]),
    ("tomorrow", [date(2026, 7, 5)]), ("2026-02-30", []), ("may I keep 16 in", []),
])
def test_days(text: str, days: list[date]) -> None:
    """Days are read in order; a day that does not exist is not read at all."""
    assert list(read_days(text, TODAY)[0]) == days


@pytest.mark.parametrize(("text", "moment"), [
    ("15:30", time(15, 30)), ("3 pm", time(15)), ("9 a.m.", time(9)), ("at noon", time(12)), ("12 am", time(0)),
    ("2:15 p.m.", time(14, 15)), ("23:50", time(23, 50)), ("14 in", None),
])
def test_time(text: str, moment: time | None) -> None:
    """Hours are read with and without halves of the day."""
    assert read_times(text)[0] == (() if moment is None else (moment,))


def test_a_day_gone_by() -> None:
    """Where the line tells of the past a day without its year is the last one gone by; the day itself is today."""
    assert read_days("june 2", TODAY, past=True)[0] == (date(2026, 6, 2),)
    assert read_days("july 4", TODAY)[0] == read_days("july 4", TODAY, past=True)[0] == (TODAY,)
