"""Several observations of one character gathered into one before they are scored (layer 3).

A flap edge pale above and red behind is both; "a small mouth, to just beyond the front of the eye" is the finer of
the two; a number said twice counts once. Scoring them one by one would count one look at the fish twice.
"""

from __future__ import annotations

from collections.abc import Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import below
from assistant.reasoning.observed import Evidence, Observation


def gather(kb: KnowledgeBase, evidence: Evidence) -> Evidence:
    """The evidence with what was seen of each character in one observation; denials stay apart."""
    kept: list[Observation] = []
    for seen in evidence.observations:
        at = next((i for i, o in enumerate(kept) if _same_look(o, seen)), None)
        if at is None:
            kept.append(seen)
        else:
            kept[at] = _both(kb, kept[at], seen)
    return evidence if len(kept) == len(evidence.observations) else evidence._replace(observations=tuple(kept))


def _same_look(one: Observation, other: Observation) -> bool:
    same = one.character == other.character and one.seen and other.seen
    return same and bool(one.states) == bool(other.states) and not (one.at_least or one.at_most or other.at_most)


def _both(kb: KnowledgeBase, one: Observation, other: Observation) -> Observation:
    hedged = one.hedged and other.hedged
    one = one._replace(asked=one.asked or other.asked)
    if not one.states:
        return other._replace(hedged=hedged, asked=one.asked)
    first, second = _leaves(kb, one.states), _leaves(kb, other.states)
    if common := [s for s in first if s in second]:
        return one._replace(states=tuple(common), hedged=hedged)
    return one._replace(hedged=hedged, beside=one.beside or tuple(second))


def _leaves(kb: KnowledgeBase, states: Sequence[str]) -> list[str]:
    return list(dict.fromkeys(leaf for s in states for leaf in below(kb, s)))
