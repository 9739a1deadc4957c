"""Fishes put in and taken out of a set made before: "leave out the crappie", "swap the redear for a flier"."""

from __future__ import annotations

import re

from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lesson as say

DROP = "drop"
"""The plainest word for taking out."""


def _taken_out(text: str) -> list[tuple[int, str]]:
    """The words of taking that a word of away belongs to ("take the white one out"), as if they said "drop"."""
    told = [(m.start(), m.group()) for m in re.finditer(r"[a-z]+", text)]
    away = [at for at, w in told if w in say.AWAY_WORDS]
    return [(at, DROP) for at, w in told if w in say.TAKE_WORDS and any(at < x for x in away)]


def changes_set(turn: Turn) -> bool:
    """True for a line with a word of putting in or taking out."""
    text = turn.reading.text.lower()
    words = set(re.findall(r"[a-z]+", text))
    return bool(words & (say.DROP_WORDS | say.ADD_WORDS | say.SWAP_WORDS)) or bool(_taken_out(text))


def moved(turn: Turn, named: tuple[str, ...]) -> tuple[frozenset[str], tuple[str, ...]]:
    """The fishes to be taken out of a set and those to be put in: each by the word that stands before it."""
    words = [(m.start(), w) for m in re.finditer(r"[a-z]+", turn.reading.text.lower())
             if (w := m.group()) in say.DROP_WORDS | say.ADD_WORDS | say.SWAP_WORDS]
    words += _taken_out(turn.reading.text.lower())
    words.sort()
    swaps = any(w in say.SWAP_WORDS for _, w in words)
    out: set[str] = set()
    into: list[str] = []
    mentions = turn.reading.of("taxon", "hybrid", "group")
    placed = {t: m.start for m in mentions for t in (*m.ids, *species_of(turn.kb, m.ids))}
    for taxon in named:
        before = [w for at, w in words if at <= placed.get(taxon, at)]
        if swaps:
            (into.append if out else out.add)(taxon)
        elif before and before[-1] in say.DROP_WORDS:
            out.add(taxon)
        elif before:
            into.append(taxon)
    return frozenset(out), tuple(into)
