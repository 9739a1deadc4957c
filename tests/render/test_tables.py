"""Tables: columns that fit, Markdown that stays a table, CSV that a spreadsheet leaves alone."""

from __future__ import annotations

import csv
import io

import pytest

from assistant.render.tables import csv_table, markdown_table, safe_cell, text_table

FORMULAS = ("=1+1", "+1", "-1", "@SUM(A1)", " =1", "\t=1", "=cmd|' /C calc'!A0")
DATES = ("10-12", "3/4", "10-12-2024", "may 5", "Mar 10", "1-2", "5 Jun", "2:30", "1e5", "007", "1.2.2024")
PLAIN = ("10 to 12", "dark right to the edge", "usually 6 (5 to 7)", "maybe 5 spots", "12", "3.5", "",
         "march of the fishes")


@pytest.mark.parametrize("text", FORMULAS + DATES)
def test_cells_that_a_spreadsheet_would_change_are_made_safe(text: str) -> None:
    """No cell starts a formula or turns into a date or another number: an apostrophe stands before it."""
    assert safe_cell(text).startswith("'")


@pytest.mark.parametrize("text", PLAIN)
def test_other_cells_stay_as_they_are(text: str) -> None:
    """Plain words and plain numbers are left alone."""
    assert safe_cell(text) == text


def test_csv_is_read_back_whole() -> None:
    """Commas, quotes and line ends survive; lines end as RFC 4180 wants."""
    rows = [["a, b", 'say "so"'], ["two\nlines", "x"]]
    text = csv_table(rows)
    assert list(csv.reader(io.StringIO(text))) == [["a, b", 'say "so"'], ["two lines", "x"]]
    assert text.endswith("\r\n")


def test_markdown_keeps_its_columns() -> None:
    """A bar in a cell does not make a new column."""
    lines = markdown_table([["a", "b"], ["x|y", "*z*"]]).splitlines()
    assert [line.replace(r"\|", "").count("|") for line in lines] == [3, 3, 3]


@pytest.mark.parametrize("width", [30, 60, 100])
def test_text_fits_its_width(width: int) -> None:
    """No line is wider than asked for, and no word is lost, at any width."""
    rows = [["feature", "one fish", "another fish"], ["edge of the ear flap", "dark right to the edge",
                                                      "red or orange spot"]]
    text = text_table(rows, width)
    assert max(map(len, text.splitlines())) <= width
    assert all(word in text for row in rows for cell in row for word in cell.split() if word != "feature")
