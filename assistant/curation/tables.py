"""Tables as files: CSV, TSV and XLSX read with suspicion and written the same way every time (layer 4)."""

from __future__ import annotations

import csv
import io
import re
import zipfile
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

from assistant.curation.files import replace_file
from assistant.errors import DataError, UsageError

LARGEST_FILE = 60_000_000
LARGEST_UNPACKED = 300_000_000
LARGEST_RATIO = 120
MOST_ROWS = 200_000
LONGEST_CELL = 20_000
_FORMULA = re.compile(r"[=+@\t\r]|-(?![\d.(])")
_ESCAPED = re.compile(r"'(?=[=+@\t\r-])")
_MOMENT = (2000, 1, 1, 0, 0, 0)
_WHEN = datetime(2000, 1, 1)


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell: its text, and what is wrong with it (empty when nothing is)."""

    text: str
    fault: str = ""


@dataclass(frozen=True, slots=True)
class Table:
    """A header and rows; each row has its number in the file and one cell a column."""

    header: tuple[str, ...]
    rows: tuple[tuple[int, dict[str, Cell]], ...]


def read_table(path: Path) -> Table:
    """Read a table. DataError for what is no table, too large, no UTF-8, or packed like a bomb."""
    try:
        size = path.stat().st_size
        data = path.read_bytes() if size <= LARGEST_FILE else b""
    except OSError as error:
        raise UsageError(f"the sheet cannot be read: {error.strerror}", "check its path", str(path)) from error
    if size > LARGEST_FILE:
        raise DataError(f"the sheet is larger than {LARGEST_FILE // 1_000_000} MB", "split it", str(path))
    suffix = path.suffix.lower()
    if suffix == ".xlsx":
        lines = _read_xlsx(data, path)
    elif suffix in (".csv", ".tsv", ".txt"):
        lines = _read_text(data, path, "," if suffix == ".csv" else "\t")
    else:
        raise UsageError("is no sheet that can be read", "give a .csv, .tsv or .xlsx file", str(path))
    return _table(lines, path)


def _table(lines: list[tuple[int, list[Cell]]], path: Path) -> Table:
    filled = [(n, cells) for n, cells in lines if any(c.text.strip() or c.fault for c in cells)]
    if not filled:
        raise DataError("the sheet is empty", "it needs a header and rows", str(path))
    header = tuple(c.text.strip() for c in filled[0][1])
    while header and not header[-1]:
        header = header[:-1]
    twice = sorted({h for h in header if header.count(h) > 1})
    if not header or "" in header or twice:
        raise DataError(f"the header has {'a column twice: ' + twice[0] if twice else 'a column without a name'}",
                        "give every column a name of its own", str(path))
    if len(filled) > MOST_ROWS:
        raise DataError(f"the sheet has more than {MOST_ROWS:,} rows", "split it", str(path))
    rows = []
    for number, cells in filled[1:]:
        extra = [c.text for c in cells[len(header):] if c.text.strip()]
        row = {h: cells[i] if i < len(cells) else Cell("") for i, h in enumerate(header)}
        if extra:
            row[header[-1]] = Cell(extra[0], "there are more cells than columns (a comma inside a cell needs quotes)")
        rows.append((number, row))
    return Table(header, tuple(rows))


def _cell(text: str) -> Cell:
    if len(text) > LONGEST_CELL:
        return Cell(text[:80], f"the cell is longer than {LONGEST_CELL:,} characters")
    if any(_is_control(ord(c)) for c in text):
        return Cell(text, "the cell holds control characters")
    if _ESCAPED.match(text):
        return Cell(text[1:].strip())
    if _FORMULA.match(text):
        return Cell(text, "the cell looks like a formula (put an apostrophe before it if it is text)")
    return Cell(text.strip())


def _is_control(code: int) -> bool:
    return (code < 32 and code not in (9, 10, 13)) or code == 127 or 0xD800 <= code <= 0xDFFF or code in _INVISIBLE


_INVISIBLE = frozenset({0x200B, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068, 0x2069,
                        0xFEFF, 0xFFFD})


def _read_text(data: bytes, path: Path, delimiter: str) -> list[tuple[int, list[Cell]]]:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise DataError("the sheet is not UTF-8 text", "save it as UTF-8", f"{path}:{line}") from error
    if "\0" in text:
        raise DataError("the sheet holds binary data", "save it as CSV, UTF-8", str(path))
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=delimiter == ",",
                        quoting=csv.QUOTE_MINIMAL if delimiter == "," else csv.QUOTE_NONE)
    lines: list[tuple[int, list[Cell]]] = []
    try:
        for row in reader:
            if row and row[0].startswith("#") and lines:
                continue
            lines.append((reader.line_num, [_cell(c) for c in row]))
    except csv.Error as error:
        raise DataError(f"the sheet is no CSV: {error}", "check quotes", f"{path}:{reader.line_num}") from error
    return lines


def _read_xlsx(data: bytes, path: Path) -> list[tuple[int, list[Cell]]]:
    _refuse_bomb(data, path)
    import openpyxl

    try:
        book = openpyxl.load_workbook(io.BytesIO(data), read_only=True, data_only=False)
        sheet = book.worksheets[0]
        lines = []
        for number, row in enumerate(sheet.iter_rows(), start=1):
            if number > MOST_ROWS + 1:
                raise DataError(f"the sheet has more than {MOST_ROWS:,} rows", "split it", str(path))
            lines.append((number, [_xlsx_cell(c) for c in row]))
        book.close()
        return lines
    except DataError:
        raise
    except Exception as error:  # openpyxl raises many kinds for a damaged file
        raise DataError(f"the sheet is no readable XLSX file ({type(error).__name__})", "save it anew",
                        str(path)) from error


def _refuse_bomb(data: bytes, path: Path) -> None:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            total = sum(i.file_size for i in archive.infolist())
            odd = [n for n in archive.namelist() if n.startswith("/") or ".." in n.split("/")]
    except zipfile.BadZipFile as error:
        raise DataError("the sheet is no readable XLSX file", "save it anew", str(path)) from error
    if odd:
        raise DataError("the sheet holds a path that leads out of it", "do not open it", str(path))
    if total > LARGEST_UNPACKED or total > LARGEST_RATIO * max(len(data), 100_000):
        raise DataError("the sheet unpacks to far more than it should", "do not open it", str(path))


def _xlsx_cell(cell: Any) -> Cell:  # Any: the cell classes of openpyxl
    value = cell.value
    if value is None:
        return Cell("")
    if getattr(cell, "data_type", "") == "f":
        return Cell(str(value), "the cell holds a formula")
    if isinstance(value, bool):
        return Cell("true" if value else "false")
    if isinstance(value, (int, float)):
        return Cell(f"{value:.10g}")
    if isinstance(value, str):
        return _cell(value)
    return Cell(str(value), "the cell is a date (10-12 may have become one); format the column as text")


def write_table(path: Path, header: tuple[str, ...], rows: list[tuple[str, ...]]) -> None:
    """Write a table, the same bytes for the same rows. UsageError for a form that cannot be written."""
    replace_file(path, table_bytes(path.suffix.lower(), header, rows, str(path)))


def table_bytes(suffix: str, header: tuple[str, ...], rows: list[tuple[str, ...]], where: str = "") -> bytes:
    """The bytes of a table of the form that a file ending names."""
    guarded = [tuple("'" + c if _FORMULA.match(c) or _ESCAPED.match(c) else c for c in row) for row in rows]
    if suffix == ".csv":
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerows([header, *guarded])
        return out.getvalue().encode("utf-8")
    if suffix in (".tsv", ".txt"):
        lines = ["\t".join(re.sub(r"[\t\r\n]+", " ", c) for c in row) for row in [header, *guarded]]
        return ("\n".join(lines) + "\n").encode("utf-8")
    if suffix == ".xlsx":
        return _xlsx_bytes(header, rows)
    raise UsageError("is no form that can be written", "name a .csv, .tsv or .xlsx file", where)


def _xlsx_bytes(header: tuple[str, ...], rows: list[tuple[str, ...]]) -> bytes:
    import openpyxl

    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for y, row in enumerate([header, *rows], start=1):
        for x, text in enumerate(row, start=1):
            cell = sheet.cell(y, x)
            cell.number_format = "@"
            cell.value = text or None
            if text:
                cell.data_type = "s"
    book.properties.created = book.properties.modified = _WHEN
    raw = io.BytesIO()
    book.save(raw)
    return _settled(raw.getvalue())


def _settled(data: bytes) -> bytes:
    """The same archive without its times, so that equal sheets are equal bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in sorted(old.namelist()):
            body = old.read(name)
            if name == "docProps/core.xml":
                body = re.sub(rb"(<dcterms:modified[^>]*>)[^<]*", rb"\g<1>2000-01-01T00:00:00Z", body)
            info = zipfile.ZipInfo(name, _MOMENT)
            info.compress_type = zipfile.ZIP_DEFLATED
            new.writestr(info, body)
    return out.getvalue()
