"""Whether a fish goes to the sea, and which word that has: what is asked, and yes or no to it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.aspects import phrases_of
from assistant.dialogue.life_answered import asks_yes_no
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, core
from assistant.model.records import Statement
from assistant.reasoning.evidence import about
from assistant.text import key

LIFE_HISTORY = "life-history"
"""The character of a life between the sea and fresh water."""
TO_SEA, RUN_WORD = "to-sea", "sea-run-word"
"""Cues of a line that names the sea, and of one that names a word for such a life."""
AT_SEA = "life-history.spawns-at-sea"
COMING = frozenset({"from", "back", "return", "returns", "returning", "leave"})
"""Words of a line that asks whether a fish comes out of the sea to breed."""
BREEDING = frozenset({"spawn", "spawns", "spawning", "spawned", "breed", "breeds", "breeding", "mate", "lay", "eggs"})


def asks_sea(turn: Turn) -> bool:
    """True for a line that asks of the sea or by a word for a life between it and fresh water."""
    return bool(turn.cues & {TO_SEA, RUN_WORD})


def with_life(turn: Turn, taxa: Sequence[str]) -> tuple[str, ...]:
    """Of some fishes asked about the sea those of which such a life is told; all where it is told of none."""
    told = tuple(t for t in taxa if about(turn.kb, t, LIFE_HISTORY)[0]) if asks_sea(turn) else ()
    return told or tuple(taxa)


def of_all(turn: Turn, taxa: Sequence[str]) -> str:
    """Yes or no where it is the same for all fishes of which such a life is told; else empty."""
    answers = {sea_answer(turn, about(turn.kb, t, LIFE_HISTORY)[0]) for t in with_life(turn, taxa)}
    return answers.pop() if len(answers) == 1 else ""


def sea_answer(turn: Turn, found: Sequence[Statement]) -> str:
    """Yes or no to what is asked of the sea, by the life stated; empty where nothing is asked of it."""
    stated = {s for one in found for s in one.states}
    if not asks_sea(turn) or not stated:
        return ""
    if RUN_WORD in turn.cues:
        words = {key(t) for s in stated for t in (turn.kb.state(s).trade,) if t}
        return core.YES if words & set(phrases_of(turn.reading.words)) else care.the_reverse(sorted(words))
    if not asks_yes_no(turn):
        return ""
    if BREEDING & set(turn.reading.words):
        if COMING & set(turn.reading.words):
            return care.SPAWNS_AT_SEA if AT_SEA in stated else core.YES
        return core.YES if AT_SEA in stated else care.SPAWNS_INLAND
    return core.YES
