"""Crosses: what is expected of a hybrid from its parents, and the hybrid index of measured fish (layer 3)."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import ANY, Distribution, Scope, distribution, leaves

CURATED = 0.75
"""Weight of a cross's own statements against what its parents lead one to expect."""
BETWEEN = 0.4
"""Share of crosses expected between the parents in an ordered character; the rest resembles one or the other."""


def cross_distribution(kb: KnowledgeBase, cross: str, character: str, scope: Scope = ANY) -> Distribution | None:
    """The expected distribution of a character in a cross: curated statements on top of a mixture of the parents."""
    own = distribution(kb, cross, character, scope)
    first, second = (distribution(kb, p, character, scope) for p in kb.taxon(cross).parents)
    expected = None
    if first and second:
        expected = between(kb, character, first, second)
    if own is None:
        return expected
    if expected is None:
        return own
    keys = {**own.shares, **expected.shares}
    shares = {k: CURATED * own.shares.get(k, 0.0) + (1 - CURATED) * expected.shares.get(k, 0.0) for k in keys}
    return Distribution(character, shares, own.statements + expected.statements, None, own.basis)


def between(kb: KnowledgeBase, character: str, first: Distribution, second: Distribution) -> Distribution:
    """Counts midway between two independent parents; states mixed, and intermediate where they have an order."""
    found = kb.character(character)
    shares: dict[str, float] = {}
    if found.kind == "count":
        shares = _midway({int(k): v for k, v in first.shares.items()}, {int(k): v for k, v in second.shares.items()})
    else:
        for part in (first, second):
            for key, value in part.shares.items():
                shares[key] = shares.get(key, 0.0) + 0.5 * value
        if found.kind == "ordered":
            order = leaves(kb, character)
            place = {s: i for i, s in enumerate(order)}
            one, other = ({place[k]: v for k, v in d.shares.items()} for d in (first, second))
            middle = _midway(one, other)
            shares = {k: (1 - BETWEEN) * v for k, v in shares.items()}
            for key, value in middle.items():
                state = order[int(key)]
                shares[state] = shares.get(state, 0.0) + BETWEEN * value
    basis = first.basis if first.basis == second.basis else "memory"
    return Distribution(character, shares, first.statements + second.statements, None, basis)


def _midway(first: Mapping[int, float], second: Mapping[int, float]) -> dict[str, float]:
    sums: dict[int, float] = {}
    for a, p in first.items():
        for b, q in second.items():
            if (both := p * q) >= 1e-7:
                sums[a + b] = sums.get(a + b, 0.0) + both
    out: dict[int, float] = {}
    for twice, share in sums.items():
        for k in (twice // 2, (twice + 1) // 2):
            out[k] = out.get(k, 0.0) + 0.5 * share
    total = sum(out.values()) or 1.0
    return {str(k): out[k] / total for k in sorted(out)}


class HybridIndex(NamedTuple):
    """Per-character indices (0 first parent, 100 second, not clipped), their mean and spread, and what was left out."""

    values: Mapping[str, float]
    mean: float | None
    spread: float | None
    left_out: tuple[str, ...]


def hybrid_index(measured: Mapping[str, float], first: Mapping[str, float], second: Mapping[str, float],
                 least_difference: float = 0.05) -> HybridIndex:
    """The hybrid index of a measured fish between two parents' means.

    HI = 100 (H - P0) / (P1 - P0) per character (Hubbs and Kuronuma 1942; formula from memory, checked against a
    published worked example). Characters whose parent means differ by less than ``least_difference`` of the larger
    are left out (rule of Hubbs and Miller 1953). Values outside 0 to 100 are kept: a cross is often a mosaic.
    """
    values: dict[str, float] = {}
    out: list[str] = []
    for key in sorted(measured):
        if key not in first or key not in second:
            out.append(key)
            continue
        gap = second[key] - first[key]
        if abs(gap) < least_difference * max(abs(first[key]), abs(second[key])):
            out.append(key)
            continue
        values[key] = 100.0 * (measured[key] - first[key]) / gap
    mean = sum(values.values()) / len(values) if values else None
    spread = _spread(list(values.values()))
    return HybridIndex(values, mean, spread, tuple(out))


def _spread(values: Sequence[float]) -> float | None:
    if len(values) < 2:
        return None
    mean = sum(values) / len(values)
    return math.sqrt(sum((v - mean) ** 2 for v in values) / (len(values) - 1))
