"""What to look at next: expected information per effort, over what can be seen on a live fish (layer 3)."""

from __future__ import annotations

from collections.abc import Collection
from typing import NamedTuple

import numpy as np

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.evidence import below
from assistant.reasoning.identify import Vector
from assistant.reasoning.tables import Table

UNLIKELY = 0.02
"""Share of an even chance below which a taxon is left out when a question is chosen."""
MOST_LIVE = 400
"""So many of the likeliest taxa decide what to ask."""
GATHER = 30
"""How many times as long it takes to pick a taxon out of the table as to multiply it where it stands."""
ENOUGH = 0.04
"""Bits below which a question would hardly change the verdict."""

HELD = 0.3
"""Probability of the fishes of which something is held on a character, below which it is not asked about."""


class Question(NamedTuple):
    """A character to look at, the bits it is expected to bring, and the states worth offering as choices."""

    character: str
    bits: float
    choices: tuple[str, ...]


def information(table: Table, weights: Vector) -> Vector:
    """The expected information (bits) of each character's report about the taxon, in the order of the table.

    Entropy of the report less its entropy once the taxon is known; unlikely taxa are left out, of many only the
    likeliest ``MOST_LIVE`` are kept.
    """
    live = np.flatnonzero(weights > UNLIKELY / max(len(weights), 1))
    if live.size > MOST_LIVE:
        live = np.sort(np.argpartition(-weights, MOST_LIVE)[:MOST_LIVE])
    if live.size == 0:
        return np.zeros(len(table.characters))
    shares = np.asarray(weights[live] / weights[live].sum(), dtype=np.float32)
    if GATHER * live.size > len(weights):
        everyone = np.zeros(len(weights), np.float32)
        everyone[live] = shares
        answer, noise = table.report @ everyone, table.noise @ everyone
    else:
        answer, noise = table.report[:, live] @ shares, table.noise[:, live] @ shares
    terms = -answer * np.log2(np.maximum(answer, 1e-12))
    return np.asarray(np.maximum(np.add.reduceat(terms, table.starts) - noise, 0.0), dtype=np.float64)


def askable(character: Character, dead: bool = False, length: float | None = None) -> bool:
    """True for a character with a question, which a live fish of this size shows; counting waits for a dead one."""
    if not character.question or (character.look in ("dead", "count") and not dead):
        return False
    return not (length and length < character.min_length)


def next_question(kb: KnowledgeBase, table: Table, weights: Vector, done: Collection[str], dead: bool = False,
                  length: float | None = None, least: float = ENOUGH) -> Question | None:
    """The best character to look at now, never one answered or skipped; None when nothing would change the verdict.

    What is not held of the likely fishes tells nothing of them, however unlike it is in the others.
    """
    bits = information(table, weights)
    held = np.asarray(table.known @ weights, dtype=np.float64)
    worth = np.where((bits >= least) & (held >= HELD), held * bits / table.effort, 0.0)
    for i in np.argsort(-worth, kind="stable"):
        key = table.characters[i]
        if worth[i] <= 0.0:
            break
        if key not in done and askable(character := kb.character(key), dead, length) and _applies(
                kb, table, weights, character):
            return Question(key, float(bits[i]), choices(kb, table, weights, key))
    return None


def _applies(kb: KnowledgeBase, table: Table, weights: Vector, character: Character) -> bool:
    if not character.needs:
        return True
    columns = [table.column[leaf] for need in character.needs for leaf in below(kb, need) if leaf in table.column]
    return not columns or float(table.report[columns].sum(axis=0) @ weights) > 0.6


DENIAL = "no-"
"""How the id of a state begins that only denies some of the others ("no red spots"), no answer beside these."""


def choices(kb: KnowledgeBase, table: Table, weights: Vector, character: str, most: int = 5) -> tuple[str, ...]:
    """The states a fish still in play may show, two at the least, in the order of the character."""
    if not kb.character(character).is_stated:
        return ()
    a, b = table.spans[character]
    chance = table.report[a:b] @ weights
    able = [i for i in range(b - a) if not table.columns[a + i].partition(".")[2].startswith(DENIAL)]
    keep = sorted(able, key=lambda i: -chance[i])[:most]
    return tuple(table.columns[a + i] for i in sorted(keep) if chance[i] > 0.03 or i in keep[:2])
