"""The prompt for pipes, plain terminals and screen readers: a line in, lines out, no codes (layer 6)."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from typing import TextIO

from assistant.prompt import wording
from assistant.prompt.talk import Talk, greeting, wrapped
from assistant.prompt.toolbar import held_words
from assistant.render.terminal import WIDEST, Line, encodable, plain

INTERRUPTIONS = 3
"""Ctrl-C so many times in a row, with nothing typed between, leaves."""


class PlainLoop:
    """Reads lines until the input ends; ``talking`` when a person types them (then it greets and shows a mark)."""

    def __init__(self, talk: Talk, stdin: TextIO, stdout: TextIO, talking: bool, width: int = 0) -> None:
        self._talk = talk
        self._in = stdin
        self._out = stdout
        self._talking = talking
        self._width = width
        self._held = ""

    def run(self, notices: Sequence[str] = ()) -> int:
        """Hold the conversation; 0 when it ends. A closed pipe raises BrokenPipeError."""
        self._show(wrapped([("quiet", n) for n in notices], self._columns()))
        if self._talking:
            self._show(wrapped(greeting(self._talk.kb), self._columns()))
        interrupted = 0
        while interrupted < INTERRUPTIONS:
            try:
                line = self._read()
                if line is None:
                    break
                interrupted = 0
                if self._answer(line):
                    return 0
            except KeyboardInterrupt:
                interrupted += 1
                self._write("\n" + (wording.LEAVING + "\n" if interrupted > 1 else ""))
        if self._talking:
            self._write("\n")
        return 0

    def _read(self) -> str | None:
        if self._talking:
            self._write("\n" + wording.MARK)
        line = self._in.readline()
        return line if line else None

    def _answer(self, line: str) -> bool:
        shown = self._talk.say(line, self._columns())
        self._show(shown.lines)
        if shown.lines and not self._talking and not shown.leave:
            self._write("\n")
        if self._talking:
            self._tell_held()
        return shown.leave

    def _tell_held(self) -> None:
        """What the bottom line of the full prompt shows, said once whenever it changes."""
        held = held_words(self._talk.kb, self._talk.held, ("place", "units"))
        if held and held != self._held:
            self._show(wrapped([("quiet", wording.holding(held))], self._columns()))
        self._held = held

    def _columns(self) -> int:
        """Columns to write in: those given, those of the terminal, or the widest readable ones into a pipe."""
        if self._width:
            return self._width
        return shutil.get_terminal_size().columns if self._talking else WIDEST + 1

    def _show(self, lines: Sequence[Line]) -> None:
        if lines:
            self._write(plain(lines) + "\n")

    def _write(self, text: str) -> None:
        self._out.write(encodable(text, getattr(self._out, "encoding", None)))
        self._out.flush()
