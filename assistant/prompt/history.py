"""Earlier lines, kept in a file of one's own: readable by its owner only, capped, never a reason to fail (layer 6)."""

from __future__ import annotations

import io
import os
import tempfile
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import TypeVar

from prompt_toolkit.history import History

from assistant.text import strip_controls

T = TypeVar("T")
MOST_LINES = 1000
MOST_BYTES = 256 * 1024
LONGEST = 1000
"""Characters of a line that are kept."""
MODE = 0o600
FOLDER_MODE = 0o700


class LineHistory(History):
    """Lines kept in a file; ``fault`` says why the file is not used, then the lines live in memory only."""

    def __init__(self, path: Path | None) -> None:
        """Make the file ready; None keeps the lines in memory without calling it a fault."""
        super().__init__()
        self._path = path
        self.fault = ""
        self._with_file(_ready, None)

    def load_history_strings(self) -> Iterable[str]:
        """The lines of the file, newest first; one typed again and again comes once."""
        no_lines: list[str] = []
        return list(dict.fromkeys(reversed(self._with_file(_lines, no_lines))))

    def store_string(self, string: str) -> None:
        """Add a line to the file; a file grown too large loses its oldest lines."""
        line = " ".join(strip_controls(string).split())[:LONGEST]
        if line:
            self._with_file(lambda path: _add(path, line), None)

    def _with_file(self, work: Callable[[Path], T], otherwise: T) -> T:
        if self._path is None:
            return otherwise
        try:
            return work(self._path)
        except OSError as error:
            self._path = None
            self.fault = error.strerror or type(error).__name__
            return otherwise


def history_path() -> Path | None:
    """Where the lines are kept; None where the user has no folder for such things."""
    try:
        import platformdirs

        path = platformdirs.user_state_path("tellfin", appauthor=False) / "lines.txt"
    except (OSError, RuntimeError, KeyError):
        return None
    return path if path.is_absolute() else None


def _ready(path: Path) -> None:
    """Make the folder and the file, for the owner only; raises OSError where that cannot be done."""
    path.parent.mkdir(parents=True, exist_ok=True, mode=FOLDER_MODE)
    with _appending(path) as file:
        if os.name == "posix" and os.fstat(file.fileno()).st_mode & 0o077:
            path.chmod(MODE)
        size = os.fstat(file.fileno()).st_size
    if size > MOST_BYTES:
        _shorten(path)


def _lines(path: Path) -> list[str]:
    with path.open("rb") as file:
        file.seek(max(0, path.stat().st_size - 2 * MOST_BYTES))
        text = file.read().decode("utf-8", "replace")
    return [strip_controls(line) for line in text.splitlines() if line.strip()][-MOST_LINES:]


def _add(path: Path, line: str) -> None:
    with _appending(path) as file:
        file.write(line.encode("utf-8", "replace") + b"\n")
        size = file.tell()
    if size > MOST_BYTES:
        _shorten(path)


def _appending(path: Path) -> io.FileIO:
    return io.FileIO(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_APPEND, MODE), "a")


def _shorten(path: Path) -> None:
    """Keep the newest lines, to half the size allowed, by writing a new file in the place of the old one."""
    kept: list[str] = []
    room = MOST_BYTES // 2
    for line in reversed(_lines(path)):
        room -= len(line.encode("utf-8", "replace")) + 1
        if room < 0:
            break
        kept.append(line)
    number, name = tempfile.mkstemp(dir=path.parent, prefix=path.name)
    with os.fdopen(number, "w", encoding="utf-8", errors="replace") as file:
        file.write("".join(line + "\n" for line in reversed(kept)))
    os.replace(name, path)
