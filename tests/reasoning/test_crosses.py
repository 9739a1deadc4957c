"""Crosses: what is expected between two parents."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.crosses import cross_distribution


def test_counts_of_a_cross_lie_between_its_parents(kb: KnowledgeBase) -> None:
    """The expected dorsal spines of the black x white crappie cross stand between the parents' commonest counts."""
    cross = cross_distribution(kb, "pomoxis-annularis-x-pomoxis-nigromaculatus", "dorsal-spines")
    assert cross is not None
    common = max(cross.shares, key=lambda k: cross.shares[k])
    assert 6 <= int(common) <= 7
    assert sum(cross.shares.values()) == pytest.approx(1.0, abs=1e-6)
