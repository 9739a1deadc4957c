"""Whether a hurt fish spoken of before will live: what was told of its harm, with the figures held (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.telling import advice
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.model.records import Caution
from assistant.reasoning.advice import GENERAL, weigh

PREFIX = "caution"
HARMS = frozenset({"bleeding", "deep-hook", "barotrauma", "deep-water", "air", "heat"})
"""Topics of what harms a fish that is let go."""
MOST = 3
HALF, DEAD = 50.0, "dead"
_NUMBER = re.compile(r"\d+(?:\.\d+)?")


def survival(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """The figures held on such harm, or that nobody can promise it, then the cautions told last on it; empty where none
    was told."""
    kb, last = turn.kb, turn.held.last
    if last is None or turn.held.intent != "handling":
        return []
    keys = [s.partition(":")[2] for b in last.blocks for s in b.statements if s.startswith(f"{PREFIX}:")]
    told = [c for k in dict.fromkeys(keys) if isinstance(c := kb.find(PREFIX, k), Caution) and c.topic in HARMS]
    if not told:
        return []
    topics = {c.topic for c in told}
    fitting = [f.record for f in weigh(kb, PREFIX, (), taxa) if f.fit > GENERAL]
    figures = [c for c in fitting if isinstance(c, Caution) and c.unit.startswith("%") and c.topic in topics]
    if figures:
        rest = [advice(PREFIX, c, "point") for c in told[:MOST] if c not in figures]
        deaths = [c for c in figures if DEAD in c.unit and len(topics) == 1]
        odds = care.chances(_least_dead(deaths[0])) if deaths else care.MAY_LIVE
        head, *more = (advice(PREFIX, c, "lead" if c == figures[0] else "point") for c in figures)
        return [head._replace(text=f"{odds} {head.text}"), *more, *rest]
    return [Block("lead", care.MAY_LIVE, claim=False), *(advice(PREFIX, c, "point") for c in told[:MOST])]


def _least_dead(figures: Caution) -> float:
    """The smallest share (percent) of such fish that died in the trial: what the best handling reached."""
    return min((float(n) for n in _NUMBER.findall(figures.number)), default=HALF)
