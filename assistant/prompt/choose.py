"""Which prompt to use: the full one or plain lines, decided once from the streams and the environment (layer 6)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TextIO

DUMB = ("dumb", "unknown")


@dataclass(frozen=True, slots=True)
class Choice:
    """``full``: the prompt with completion and colours; ``talking``: a person types the lines of the plain one."""

    full: bool
    talking: bool


def choose(stdin: TextIO, stdout: TextIO, environ: Mapping[str, str], plain: bool = False,
           windows: bool = False) -> Choice:
    """The full prompt only where both ends are terminals that can place a cursor, and nobody asked for plain lines."""
    typed, shown = is_terminal(stdin), is_terminal(stdout)
    term = environ.get("TERM", "").lower()
    able = windows or (term != "" and term not in DUMB)
    return Choice(full=typed and shown and able and not plain, talking=typed)


def is_terminal(stream: TextIO) -> bool:
    """True for a stream that a person sits at; a closed or odd stream is none."""
    try:
        return stream.isatty()
    except (AttributeError, ValueError, OSError):
        return False
