"""Bring Turtle files to canonical form, or say which are not in it (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

from assistant.curation.files import replace_file
from assistant.errors import DataError
from assistant.graph.write import format_text


def canonical(path: Path) -> tuple[str, str]:
    """The text of a file and its canonical form. DataError where it does not parse or a comment would be lost."""
    try:
        text = path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as error:
        raise DataError("is not UTF-8 text", "save it as UTF-8", str(path)) from error
    return text, format_text(text, path)


def unformatted(paths: Iterable[Path]) -> Iterator[tuple[Path, str]]:
    """The files that are not in canonical form, each with its first difference in words."""
    for path in paths:
        try:
            text, wanted = canonical(path)
        except DataError as error:
            line = error.where.rpartition(":")[2]
            yield path, f"line {line} {error.message}" if line.isdigit() else error.message
            continue
        if text != wanted:
            yield path, first_difference(text, wanted)


def first_difference(text: str, wanted: str) -> str:
    """The first line in which two texts differ, in words."""
    mine, theirs = text.splitlines(), wanted.splitlines()
    for number, (a, b) in enumerate(zip(mine, theirs, strict=False), start=1):
        if a != b:
            return f"line {number} {_unlike(a, b)}"
    if len(mine) != len(theirs):
        return f"{len(mine)} lines where {len(theirs)} should stand"
    return "line ends or the last newline differ"


def _unlike(line: str, wanted: str) -> str:
    """How a line differs from the one wanted; of blanks, which nobody sees, in words."""
    mine, theirs = line.strip(), wanted.strip()
    if mine != theirs:
        return f"is {mine[:60]!r} where {theirs[:60]!r} should stand"
    if line.rstrip() == wanted.rstrip():
        return f"ends in blanks that should not stand there: {mine[:60]!r}"
    return f"begins with {_blanks(line)} where {_blanks(wanted)} should stand: {mine[:60]!r}"


def _blanks(line: str) -> str:
    lead = line[: len(line) - len(line.lstrip())]
    counts = ((lead.count(" "), "blank"), (lead.count("\t"), "tab"))
    return " and ".join(f"{n} {what}{'' if n == 1 else 's'}" for n, what in counts if n) or "no blank"


def format_files(paths: Iterable[Path]) -> list[Path]:
    """Rewrite the files that are not in canonical form, atomically; gives the files that changed."""
    changed: list[Path] = []
    for path in paths:
        text, wanted = canonical(path)
        if text != wanted:
            replace_file(path, wanted.encode("utf-8"))
            changed.append(path)
    return changed
