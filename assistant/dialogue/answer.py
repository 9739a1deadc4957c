"""The answer as a value: blocks that rest on statements, for any face to show (layer 4)."""

from __future__ import annotations

from typing import NamedTuple

from assistant.reasoning.observed import Candidate

KINDS = ("lead", "point", "table", "caution", "rule-note", "doubt", "next", "sources", "help")


class Block(NamedTuple):
    """A piece of an answer. ``statements`` are short forms (st:..., range:..., rule:...) of what it rests on.

    ``rows`` is for tables: the first row is the header. ``claim`` is False for blocks that state nothing about fishes
    (greetings, questions back, help), which need no statement.
    """

    kind: str
    text: str = ""
    rows: tuple[tuple[str, ...], ...] = ()
    statements: tuple[str, ...] = ()
    claim: bool = True


class Asked(NamedTuple):
    """The question asked back: a character with the offered states (id, words), or another kind of question.

    ``kind``: character, which (which of several things was meant: ``choices`` are their ids), place, length, confirm,
    key (a couplet), quiz (an item).
    """

    kind: str
    question: str
    character: str = ""
    choices: tuple[tuple[str, str], ...] = ()


class Answer(NamedTuple):
    """One turn's answer. ``taxa`` are ids, the leading one first; ``wider`` those of a group or a cross spoken of."""

    intent: str
    blocks: tuple[Block, ...]
    taxa: tuple[str, ...] = ()
    candidates: tuple[Candidate, ...] = ()
    confidence: str | None = None
    verdict: str | None = None
    rules: tuple[str, ...] = ()
    asked: Asked | None = None
    wider: tuple[str, ...] = ()
