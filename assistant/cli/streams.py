"""The three streams that a command reads and writes, handed in so that commands are testable in process (layer 7)."""

from __future__ import annotations

from typing import NamedTuple, TextIO


class Streams(NamedTuple):
    """Standard input, output and error of one run."""

    stdin: TextIO
    stdout: TextIO
    stderr: TextIO

    def out(self, text: str = "") -> None:
        """Write a line to standard output."""
        self.stdout.write(text + "\n")

    def wait(self, text: str) -> None:
        """Tell somebody at a terminal, on standard error, that what follows takes a while."""
        if self.stderr.isatty():
            self.err(text)
            self.stderr.flush()

    def err(self, text: str) -> None:
        """Write a line to standard error."""
        self.stderr.write(text + "\n")
