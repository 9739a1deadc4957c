"""Crosses: what is expected of a hybrid from its parents (layer 3)."""

from __future__ import annotations

from collections.abc import Mapping

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
