"""Recorded conversations: ``> question`` lines with the answers below them.

``python -m tests.dialogues.test_dialogues --accept`` writes the answers anew; the difference is reviewed like code.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.loading import OpenBase, open_base
from assistant.render.plain import render_plain

HERE = Path(__file__).parent
CLOCK = date(2026, 7, 4)
WIDTH = 100


def questions(text: str) -> list[str]:
    """The lines that somebody types in a recorded conversation."""
    return [line[2:] for line in text.splitlines() if line.startswith("> ")]


def title(text: str) -> str:
    """The remark at the head of a recording."""
    return "".join(line + "\n" for line in text.splitlines() if line.startswith("#"))


def played(base: Base, text: str) -> str:
    """The recording played anew."""
    held, out = Held(), title(text)
    for line in questions(text):
        answer, held = respond(base, line, held, CLOCK)
        out += f"\n> {line}\n{render_plain(answer, WIDTH)}\n"
    return out


@pytest.fixture(scope="module")
def base() -> Iterator[OpenBase]:
    """The shipped base."""
    with closing(open_base()) as found:
        yield found


@pytest.mark.parametrize("path", sorted(HERE.glob("*.txt")), ids=lambda p: p.stem)
def test_a_recorded_conversation_runs_as_it_was_reviewed(path: Path, base: Base) -> None:
    """Nothing in a reviewed conversation changes unnoticed."""
    text = path.read_text(encoding="utf-8")
    assert questions(text)
    assert played(base, text) == text


def main() -> None:
    """Write every recording anew."""
    if "--accept" not in sys.argv:
        raise SystemExit("add --accept to rewrite the recordings")
    with closing(open_base()) as found:
        for path in sorted(HERE.glob("*.txt")):
            path.write_text(played(found, path.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    main()
