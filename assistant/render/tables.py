"""Tables for every face: text in columns, Markdown, CSV that a spreadsheet leaves alone (layer 5)."""

from __future__ import annotations

import csv
import io
import re
import textwrap
from collections.abc import Sequence

_STARTS = ("=", "+", "-", "@", "\t", "\r")
_DATELIKE = re.compile(
    r"""\s*(?: \d{1,4}\s*[-/:]\s*\d{1,4}(?:\s*[-/:]\s*\d{1,4})?          # 10-12, 3/4, 10:30
           | \d{1,4}\.\d{1,2}\.\d{1,4}                                  # 1.2.2024
           | \d{1,2}[-\s]?(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*(?:[-\s,]*\d{2,4})?
           | (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-\s]*\d{1,4}(?:[-\s,]+\d{2,4})?
           | \d+[eE]\d+ | 0\d+ )\s*""", re.IGNORECASE | re.VERBOSE)
NARROWEST = 14


def safe_cell(text: str) -> str:
    """A cell that no spreadsheet takes for a formula or a date: an apostrophe goes before what looks like one.

    >>> safe_cell("=1+1"), safe_cell("10-12"), safe_cell("10 to 12"), safe_cell("may 5")
    ("'=1+1", "'10-12", '10 to 12', "'may 5")
    """
    flat = " ".join(text.split("\n")) if "\n" in text else text
    formula = flat.lstrip().startswith(_STARTS) or flat.startswith(_STARTS)
    return "'" + flat if formula or _DATELIKE.fullmatch(flat) else flat


def csv_table(rows: Sequence[Sequence[str]]) -> str:
    """Rows as CSV (RFC 4180, CRLF line ends), every cell made safe."""
    out = io.StringIO()
    csv.writer(out, lineterminator="\r\n").writerows([safe_cell(c) for c in row] for row in rows)
    return out.getvalue()


def markdown_table(rows: Sequence[Sequence[str]]) -> str:
    """Rows as a Markdown table, the first row its head; marks that Markdown would read are escaped."""
    head, *body = [[_escaped(c) for c in row] for row in rows]
    lines = ["| " + " | ".join(head) + " |", "|" + "|".join(" --- " for _ in head) + "|"]
    return "\n".join([*lines, *("| " + " | ".join(row) + " |" for row in body)])


def _escaped(text: str) -> str:
    return re.sub(r"([\\|*_<>`\[\]])", r"\\\1", " ".join(text.split()))


def text_table(rows: Sequence[Sequence[str]], width: int = 100) -> str:
    """Rows in columns that fit a width, cells wrapped; a block for each row where the width is too small."""
    if not rows:
        return ""
    columns = len(rows[0])
    room = width - 2 * (columns - 1)
    widths = _widths(rows, room)
    if room // columns < NARROWEST or any(_longest_word(r[i]) > w for r in rows for i, w in enumerate(widths)):
        return _listed(rows, width)
    lines: list[str] = []
    for number, row in enumerate(rows):
        wrapped = [textwrap.wrap(c, w, break_on_hyphens=False) or [""] for c, w in zip(row, widths, strict=True)]
        for i in range(max(map(len, wrapped))):
            cells = [(w[i] if i < len(w) else "").ljust(size) for w, size in zip(wrapped, widths, strict=True)]
            lines.append("  ".join(cells).rstrip())
        if number == 0:
            lines.append("  ".join("-" * w for w in widths))
    return "\n".join(lines)


def _widths(rows: Sequence[Sequence[str]], room: int) -> list[int]:
    """Column widths: what a column needs at most, shared out where that is more than there is."""
    needs = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    widths = [0] * len(needs)
    left = list(range(len(needs)))
    while left:
        share = room // len(left)
        small = [i for i in left if needs[i] <= share]
        if not small:
            for i in left:
                widths[i] = share
            break
        for i in small:
            widths[i] = needs[i]
            room -= needs[i]
            left.remove(i)
    return widths


def _longest_word(text: str) -> int:
    return max(map(len, text.split()), default=0)


def _listed(rows: Sequence[Sequence[str]], width: int) -> str:
    head, *body = rows
    lines: list[str] = []
    for row in body:
        lines += textwrap.wrap(row[0], width)
        for name, cell in zip(head[1:], row[1:], strict=True):
            lines += textwrap.wrap(f"{name}: {cell}", width, initial_indent="  ", subsequent_indent="    ")
    return "\n".join(lines)
