"""Crosses: the hybrid index against published figures, and what is expected between two parents."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.crosses import cross_distribution, hybrid_index

# Berinkey 1960, Ann. Hist.-Nat. Mus. Nat. Hung. 52, Table II, p. 455: rudd (0), roach (100), mean of four hybrids,
# per cent of body length. The indices below are worked out by hand from those printed means.
RUDD = {"body depth": 35.0, "before dorsal": 60.0, "dorsal base": 12.9, "dorsal height": 19.2}
ROACH = {"body depth": 31.5, "before dorsal": 52.8, "dorsal base": 15.8, "dorsal height": 21.5}
HYBRID = {"body depth": 31.4, "before dorsal": 59.8, "dorsal base": 12.1, "dorsal height": 20.5}


def test_hybrid_index_reproduces_the_published_worked_example() -> None:
    """The figures of Berinkey 1960 give 102.9, 2.8, -27.6 and 56.5, mean 33.6, shown and not clipped."""
    found = hybrid_index(HYBRID, RUDD, ROACH)
    assert {k: round(v, 1) for k, v in found.values.items()} == {
        "body depth": 102.9, "before dorsal": 2.8, "dorsal base": -27.6, "dorsal height": 56.5}
    assert found.mean == pytest.approx(33.6, abs=0.05)
    assert found.spread is not None and found.spread > 50


def test_hybrid_index_of_a_count() -> None:
    """Berinkey 1960 p. 450, rudd x bleak: rakers 11-12 and 18-22, hybrid 16: the midpoints give 52.9."""
    found = hybrid_index({"gill rakers": 16}, {"gill rakers": 11.5}, {"gill rakers": 20.0})
    assert found.mean == pytest.approx(52.9, abs=0.05)
    assert found.spread is None


def test_characters_whose_parents_hardly_differ_are_left_out() -> None:
    """Parent means within 5 per cent are left out (rule of Hubbs and Miller 1953, pp. 218-225)."""
    found = hybrid_index({"a": 10.2, "b": 15.0}, {"a": 10.0, "b": 10.0}, {"a": 10.4, "b": 20.0})
    assert found.left_out == ("a",) and found.values == {"b": 50.0}


def test_counts_of_a_cross_lie_between_its_parents(kb: KnowledgeBase) -> None:
    """The expected dorsal spines of the black x white crappie cross stand between the parents' commonest counts."""
    cross = cross_distribution(kb, "pomoxis-annularis-x-pomoxis-nigromaculatus", "dorsal-spines")
    assert cross is not None
    common = max(cross.shares, key=lambda k: cross.shares[k])
    assert 6 <= int(common) <= 7
    assert sum(cross.shares.values()) == pytest.approx(1.0, abs=1e-6)
