"""What to look at next: expected information per effort, over what can be seen on a live fish (layer 3)."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass

import numpy as np

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.identify import Vector
from assistant.reasoning.tables import Table

EFFORT: Mapping[str, float] = {"glance": 1.0, "hand": 1.5, "count": 2.6, "dead": 6.0}
ENOUGH = 0.04
"""Bits below which a question would hardly change the verdict."""


@dataclass(frozen=True, slots=True)
class Question:
    """A character to look at, the bits it is expected to bring, and the states worth offering as choices."""

    character: str
    bits: float
    choices: tuple[str, ...]


def information(table: Table, weights: Vector) -> Vector:
    """The expected information (bits) of each character's report about the taxon, in the order of the table."""
    live = np.flatnonzero(weights > 1e-4)
    if live.size == 0:
        return np.zeros(len(table.characters))
    shares = weights[live] / weights[live].sum()
    answer = table.report[:, live] @ shares.astype(np.float32)
    terms = -answer * np.log2(np.maximum(answer, 1e-12))
    total = np.add.reduceat(terms, table.starts)
    return np.asarray(np.maximum(total - table.noise[:, live] @ shares.astype(np.float32), 0.0), dtype=np.float64)


def askable(character: Character, dead: bool = False, length: float | None = None) -> bool:
    """True for a character with a question, which a live fish of this size shows; counting waits for a dead one."""
    if not character.question or (character.look in ("dead", "count") and not dead):
        return False
    return not (length and length < character.min_length)


def next_question(kb: KnowledgeBase, table: Table, weights: Vector, done: Collection[str], dead: bool = False,
                  length: float | None = None, least: float = ENOUGH) -> Question | None:
    """The best character to look at now, never one answered or skipped; None when nothing would change the verdict."""
    bits = information(table, weights)
    best: tuple[float, str, float] | None = None
    for i, key in enumerate(table.characters):
        if key in done or bits[i] < least:
            continue
        character = kb.character(key)
        if not askable(character, dead, length) or not _applies(kb, table, weights, character, done):
            continue
        worth = float(bits[i]) / EFFORT.get(character.look, 2.0)
        if best is None or (worth, key) > (best[0], best[1]):
            best = (worth, key, float(bits[i]))
    if best is None:
        return None
    return Question(best[1], best[2], choices(kb, table, weights, best[1]))


def _applies(kb: KnowledgeBase, table: Table, weights: Vector, character: Character, done: Collection[str]) -> bool:
    if not character.needs:
        return True
    from assistant.reasoning.evidence import below

    columns = [table.column[leaf] for need in character.needs for leaf in below(kb, need) if leaf in table.column]
    return not columns or float(table.report[columns].sum(axis=0) @ weights) > 0.6


def choices(kb: KnowledgeBase, table: Table, weights: Vector, character: str, most: int = 5) -> tuple[str, ...]:
    """The states a fish still in play may show, likeliest first kept, in the order of the character."""
    if not kb.character(character).is_stated:
        return ()
    a, b = table.spans[character]
    chance = table.report[a:b] @ weights
    keep = sorted(range(b - a), key=lambda i: -chance[i])[:most]
    return tuple(table.columns[a + i] for i in sorted(keep) if chance[i] > 0.03)
