"""Which prompt is used."""

from __future__ import annotations

import io

import pytest

from assistant.prompt.choose import choose


class Seat(io.StringIO):
    """A stream that says whether a person sits at it."""

    def __init__(self, person: bool) -> None:
        super().__init__()
        self._person = person

    def isatty(self) -> bool:
        """As told."""
        return self._person


@pytest.mark.parametrize(
    ("typed", "shown", "term", "plain", "full"),
    [
        (True, True, "xterm-256color", False, True),
        (True, True, "xterm-256color", True, False),
        (True, True, "dumb", False, False),
        (True, True, "", False, False),
        (False, True, "xterm", False, False),
        (True, False, "xterm", False, False),
    ],
)
def test_full_prompt_only_on_a_terminal(typed: bool, shown: bool, term: str, plain: bool, full: bool) -> None:
    """The full prompt needs a person at both ends, a terminal that places a cursor, and no wish for plain lines."""
    way = choose(Seat(typed), Seat(shown), {"TERM": term}, plain)
    assert way.full is full
    assert way.talking is typed


def test_windows_needs_no_term() -> None:
    """On Windows a console is enough, TERM is not set there."""
    assert choose(Seat(True), Seat(True), {}, windows=True).full


def test_closed_stream_is_no_terminal() -> None:
    """A closed stream is taken for a pipe, not for a fault."""
    stream = io.StringIO()
    stream.close()
    assert not choose(stream, Seat(True), {"TERM": "xterm"}).full
