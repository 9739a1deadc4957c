"""What is wanted: a table of recognisers over cues, things mentioned and what the conversation holds (layer 4).

A row says: when these facts hold of the line, the intent scores so much. A fact is a cue of the base (``cue:contrast``)
or something of ``facts`` ("fish", "two-fish", "seen", "after:size", ...). In ``need`` every item must hold; an item may
offer alternatives with ``|`` and deny one with ``!``. The best score wins, the second best other intent is offered.
Examples run as tests: the last line of an example is recognised in the conversation of the lines before (`` / ``).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from assistant.dialogue.recogniser.facts import Facts
from assistant.dialogue.recogniser.intent_row import Row
from assistant.dialogue.recogniser.intent_rows import ROWS


class Recognised(NamedTuple):
    """The intent with its score, and the next best other one that was asked for in the same line (or empty)."""

    intent: str
    score: int
    other: str = ""


OFFERED = 59
"""A second intent is offered when it scores at least this."""
PLAIN_ANSWER = 95
"""From this score on a line answers what was asked, or is an order: nothing else is offered beside it."""
FOLLOW = "@same"
"""A row with this intent means: the same as was answered last."""


def recognise(facts: Facts, rows: Sequence[Row] = ROWS) -> Recognised:
    """The best intent for the facts of a line; ``out-of-scope`` when no row holds."""
    best: dict[str, int] = {}
    for row in rows:
        intent = facts.last if row.intent == FOLLOW else row.intent
        if intent and row.score > best.get(intent, 0) and holds(row.need, facts.all):
            best[intent] = row.score
    if not best:
        return Recognised("out-of-scope", 0)
    ranked = sorted(best.items(), key=lambda kv: -kv[1])
    if ranked[0][1] >= PLAIN_ANSWER:
        return Recognised(ranked[0][0], ranked[0][1])
    other = next((i for i, s in ranked[1:] if s >= OFFERED and (ranked[0][0], i) not in SAME_ANSWER), "")
    return Recognised(ranked[0][0], ranked[0][1], other)


SAME_ANSWER = frozenset(
    {
        ("why", "sources"),
        ("sources", "why"),
        ("undo", "identify"),
        ("weight", "size"),
        ("size", "weight"),
        ("contrast", "identify"),
        ("identify", "contrast"),
        ("size", "contrast"),
        ("weight", "contrast"),
        ("names", "term"),
        ("term", "names"),
        ("list", "habitat"),
        ("list", "handling"),
        ("tackle", "contrast"),
        ("rules", "contrast"),
        ("rules", "describe"),
        ("rules", "identify"),
        ("rules", "names"),
        ("rules", "range"),
        ("rules", "tackle"),
        ("rules", "term"),
        ("term", "rules"),
    }
)
"""Pairs of which the second is no separate wish."""


def holds(need: Sequence[str], facts: frozenset[str]) -> bool:
    """True when every item holds: a fact, one of several after ``|``, or with ``!`` none of several.

    >>> holds(("a|b", "!c"), frozenset({"b"})), holds(("!a|b",), frozenset({"b"}))
    (True, False)
    """
    return all(facts.isdisjoint(names) == denied for denied, names in _items(tuple(need)))


@lru_cache(maxsize=2048)
def _items(need: tuple[str, ...]) -> tuple[tuple[bool, tuple[str, ...]], ...]:
    """Each item as whether it is denied and the facts that it names."""
    return tuple((item.startswith("!"), tuple(item.lstrip("!").split("|"))) for item in need)
