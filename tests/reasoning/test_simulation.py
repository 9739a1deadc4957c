"""A short run of the simulation: what the assistant makes of described and of questioned fishes."""

from __future__ import annotations

import random

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.tables import compile_table
from tests.bench.simulation import calibration, simulate


def test_simulated_fishes_are_named_asked_for_and_weighed(kb: KnowledgeBase) -> None:
    """Far better than chance from a few features, fewer questions than other askers, stated odds near the truth."""
    table = compile_table(kb)
    found = simulate(kb, table, rounds=1, asked=12, seed=5)
    assert found.species_first > 0.25 and found.species_three > 0.4
    assert found.expected_first > 0.25 and found.expected_three > 0.45
    assert found.calibration < 0.10 and found.expected_calibration < 0.15
    means = {name: mean for name, (mean, _) in found.asked.items()}
    assert found.least < means["assistant"] <= min(means.values())


def test_calibration_error_of_known_cases() -> None:
    """Nothing for probabilities that hold, the whole gap for ones that never do."""
    rng = random.Random(1)
    fair = [(p, rng.random() < p) for p in (rng.random() for _ in range(20000))]
    assert calibration(fair) < 0.02
    assert calibration([(0.9, False)] * 50) == 0.9
