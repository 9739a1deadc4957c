"""Fixtures of the dialogue tests: the shipped base with its score table, compiled once for the run."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import closing
from datetime import date

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.loading import OpenBase
from assistant.loading import open_base as open_shipped

CLOCK = date(2026, 7, 4)


@pytest.fixture(scope="session")
def open_base() -> Iterator[OpenBase]:
    """The shipped base, opened once."""
    with closing(open_shipped()) as base:
        yield base


Talk = Callable[..., tuple[Answer, Held]]


@pytest.fixture()
def talk(open_base: Base) -> Talk:
    """Say some lines in one conversation; gives the last answer and what is held after it."""

    def run(*lines: str, held: Held | None = None) -> tuple[Answer, Held]:
        answer, now = Answer("", ()), held or Held()
        for line in lines:
            answer, now = respond(open_base, line, now, CLOCK)
        return answer, now

    return run


def last(base: Base, talk: str) -> Answer:
    """The answer to the last of some lines joined by a slash."""
    held, answer = Held(), None
    for line in talk.split(" / "):
        answer, held = respond(base, line, held, CLOCK)
    assert answer is not None
    return answer


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()
