"""A short run of the simulation: what the assistant makes of described and of questioned fishes."""

from __future__ import annotations

import random

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.tables import compile_table
from tests.bench.simulation import EVEN, EXPECTED, SPECIES, TOLD, calibration, describe, simulate


def test_simulated_fishes_are_named_asked_for_and_weighed(kb: KnowledgeBase) -> None:
    """Far better than chance from a few features, fewer questions than other askers, verdict words worth their name."""
    table = compile_table(kb)
    found = simulate(kb, table, rounds=2, asked=12, seed=5)
    assert found.described[SPECIES].first > 0.25 and found.described[SPECIES].three > 0.4
    assert found.described[EXPECTED].first > 0.25 and found.described[TOLD].first > 0.45
    means = {name: mean for name, (mean, _) in found.asked.items()}
    assert found.least < means["assistant"] <= min(means.values())
    others = [simulate(kb, table, rounds=2, asked=1, seed=seed).verdicts["likely"] for seed in (7, 11)]
    likely = [found.verdicts["likely"], *others]
    assert sum(n * share for n, share in likely) / sum(n for n, _ in likely) > 0.8
    assert found.verdicts["not-enough"][1] < 0.5
    assert found.verdicts["sure"][1] > found.verdicts["likely"][1] - 0.02 > found.verdicts["between"][1]


@pytest.mark.long
def test_stated_odds_hold_among_simulated_fishes(kb: KnowledgeBase) -> None:
    """The stated probability is the share of right answers, for answers, for tellers, and with even odds.

    The error of half such a sample from a perfect forecaster is 0.02; the goal for large samples is 0.03.
    """
    found = describe(kb, compile_table(kb), 8, random.Random(31))
    for kind in (EXPECTED, TOLD, SPECIES, EVEN):
        assert found[kind].calibration < 0.055, kind


def test_calibration_error_of_known_cases() -> None:
    """Nothing for probabilities that hold, the whole gap for ones that never do."""
    rng = random.Random(1)
    fair = [(p, rng.random() < p) for p in (rng.random() for _ in range(20000))]
    assert calibration(fair) < 0.02
    assert calibration([(0.9, False)] * 50) == 0.9
