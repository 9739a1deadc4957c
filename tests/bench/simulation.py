"""Random observers describe random fishes of the base: ``python -m tests.bench.simulation [--fish N] [--seed S]``.

A fish of each taxon (crosses among them) is drawn from the distributions of the base, in a place where it lives. An
observer reports three to eight of its features, erring as often as the base says; or answers questions until the
verdict is sure, likely, or nothing is left to ask. Printed: how often the first and the first three candidates are
right, the calibration error of the stated probability, and how many questions the assistant, a random and a fixed
order of questions need, beside the least that any asker could need. The observers err exactly as the base assumes, so
that the figures say how well the assistant uses what it knows, not how well it knows fishes.
"""

from __future__ import annotations

import argparse
import json
import math
import random
import statistics
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from assistant.loading import open_base
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.identify import LIKELY, posterior, prior
from assistant.reasoning.next_question import askable, information, next_question
from assistant.reasoning.observed import Evidence, Observation
from assistant.reasoning.tables import Table

FEWEST, MOST = 3, 8
MOST_ASKED = 12
Fish = tuple[int, tuple[str, ...]]
"""The position of a taxon in the table, and where the fish was caught."""
Asker = Callable[[Sequence[Observation], np.ndarray], str | None]


@dataclass(frozen=True, slots=True)
class Figures:
    """What came of the simulated fishes; ``asked`` is by asker: mean questions, share that got to likely and right."""

    fish: int
    first: float
    three: float
    calibration: float
    species_first: float
    species_three: float
    expected_first: float
    expected_three: float
    expected_calibration: float
    least: float
    asked: dict[str, tuple[float, float]]


def reported(kb: KnowledgeBase, table: Table, taxon: int, character: str, rng: random.Random) -> Observation:
    """What an ordinary observer reports of a fish of the taxon."""
    a, b = table.spans[character]
    column = rng.choices(range(a, b), table.report[a:b, taxon].tolist())[0]
    name = table.columns[column]
    if kb.character(character).is_stated:
        return Observation(character, (name,))
    return Observation(character, value=float(name.partition("=")[2]))


def features_of(kb: KnowledgeBase, table: Table, taxon: int) -> list[str]:
    """The characters of which something is known of the taxon and that a live fish shows."""
    known = table.known[:, taxon]
    return [c for c, told in zip(table.characters, known, strict=True) if told and askable(kb.character(c))]


def home(kb: KnowledgeBase, taxon: str, rng: random.Random) -> tuple[str, ...]:
    """A place where the taxon, or the first parent of a cross, is listed as living."""
    first = (kb.taxon(taxon).parents or (taxon,))[0]
    places = [r.place for r in kb.ranges(first) if r.status in ("native", "introduced", "stocked")]
    return (rng.choice(places),) if places else ()


def calibration(told: Sequence[tuple[float, bool]], bins: int = 10) -> float:
    """The mean gap between the probability stated of the first candidate and how often it is right."""
    ordered = sorted(told)
    groups = [ordered[len(ordered) * i // bins : len(ordered) * (i + 1) // bins] for i in range(bins)]
    gaps = [len(g) * abs(statistics.mean(p for p, _ in g) - statistics.mean(ok for _, ok in g)) for g in groups if g]
    return sum(gaps) / len(ordered)


def expected(kb: KnowledgeBase, table: Table, count: int, rng: random.Random) -> list[Fish]:
    """Fishes as often as the base expects them at a place, places drawn evenly."""
    places = [p.id for p in kb.all("place") if p.kind in ("state", "province")]
    out = []
    for place in (rng.choice(places) for _ in range(count)):
        weights = prior(kb, table, Evidence(places=(place,)))
        out.append((rng.choices(range(len(weights)), weights.tolist())[0], (place,)))
    return out


def describe(kb: KnowledgeBase, table: Table, fish: Sequence[Fish], rng: random.Random) -> list[tuple[float, int]]:
    """For each fish the probability of the first candidate and the rank of the right one."""
    out = []
    for taxon, places in fish:
        pool = features_of(kb, table, taxon)
        chosen = rng.sample(pool, min(len(pool), rng.randint(FEWEST, MOST)))
        seen = tuple(reported(kb, table, taxon, c, rng) for c in chosen)
        weights = posterior(kb, table, Evidence(seen, places=places))
        out.append((float(weights.max()), int((weights > weights[taxon]).sum())))
    return out


def ask(kb: KnowledgeBase, table: Table, taxon: int, asker: Asker, rng: random.Random) -> tuple[int, bool]:
    """Ask until one taxon is likely or nothing is left: how many questions, and whether the right one was reached."""
    seen: list[Observation] = []
    places = home(kb, table.taxa[taxon], rng)
    while True:
        weights = posterior(kb, table, Evidence(tuple(seen), places=places))
        if weights.max() >= LIKELY or len(seen) >= MOST_ASKED:
            return len(seen), bool(weights.max() >= LIKELY and weights.argmax() == taxon)
        character = asker(seen, weights)
        if character is None:
            return len(seen), False
        seen.append(reported(kb, table, taxon, character, rng))


def askers(kb: KnowledgeBase, table: Table, rng: random.Random) -> dict[str, Asker]:
    """The assistant's choice, a random one, and one fixed order (the best first question, the second best, ...)."""
    allowed = [c for c in table.characters if askable(kb.character(c))]
    even = np.full(len(table.taxa), 1.0 / len(table.taxa))
    worth = dict(zip(table.characters, information(table, even) / table.effort, strict=True))
    fixed = sorted(allowed, key=lambda c: -worth[c])

    def best(seen: Sequence[Observation], weights: np.ndarray) -> str | None:
        found = next_question(kb, table, weights, {o.character for o in seen})
        return found.character if found else None

    def at_random(seen: Sequence[Observation], weights: np.ndarray) -> str | None:
        left = [c for c in allowed if c not in {o.character for o in seen}]
        return rng.choice(left) if left else None

    def in_order(seen: Sequence[Observation], weights: np.ndarray) -> str | None:
        asked = {o.character for o in seen}
        return next((c for c in fixed if c not in asked), None)

    return {"assistant": best, "random order": at_random, "fixed order": in_order}


def least_questions(kb: KnowledgeBase, table: Table) -> float:
    """No asker needs fewer on average: the bits from an even start to likely, over the best question's bits."""
    count = len(table.taxa)
    even = np.full(count, 1.0 / count)
    bits = [b for c, b in zip(table.characters, information(table, even), strict=True) if askable(kb.character(c))]
    rest = -(LIKELY * math.log2(LIKELY) + (1 - LIKELY) * math.log2((1 - LIKELY) / max(count - 1, 1)))
    widest = math.log2(max(b - a for c, (a, b) in table.spans.items() if askable(kb.character(c))))
    return (math.log2(count) - rest) / max(max(bits), widest)


def simulate(kb: KnowledgeBase, table: Table, rounds: int, asked: int, seed: int) -> Figures:
    """``rounds`` described fishes of each taxon, and ``asked`` questioned ones in all."""
    rng = random.Random(seed)
    fish = [(i, home(kb, t, rng)) for i, t in enumerate(table.taxa) for _ in range(rounds)]
    told = describe(kb, table, fish, rng)
    likely = describe(kb, table, expected(kb, table, len(fish), rng), rng)
    plain = [told[n] for n, (i, _) in enumerate(fish) if not kb.taxon(table.taxa[i]).is_hybrid]
    some = [rng.randrange(len(table.taxa)) for _ in range(asked)]
    runs = {}
    for name, asker in askers(kb, table, rng).items():
        ends = [ask(kb, table, taxon, asker, rng) for taxon in some]
        runs[name] = (statistics.mean(n for n, _ in ends), statistics.mean(ok for _, ok in ends))
    return Figures(
        len(fish), *ranks(told), gap(told), *ranks(plain), *ranks(likely), gap(likely), least_questions(kb, table), runs
    )


def ranks(told: Sequence[tuple[float, int]]) -> tuple[float, float]:
    """The shares of fishes whose taxon came first, and among the first three."""
    return statistics.mean(rank == 0 for _, rank in told), statistics.mean(rank < 3 for _, rank in told)


def gap(told: Sequence[tuple[float, int]]) -> float:
    """The calibration error of described fishes."""
    return calibration([(p, rank == 0) for p, rank in told])


def main() -> None:
    """Simulate and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.simulation", description=__doc__.splitlines()[0])
    parser.add_argument("--fish", type=int, default=4, help="described fishes of each taxon")
    parser.add_argument("--asked", type=int, default=300, help="questioned fishes in all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--json", action="store_true")
    args = parser.parse_args()
    base = open_base()
    found = simulate(base.kb, base.table, args.fish, args.asked, args.seed)
    if args.json:
        print(json.dumps({name: getattr(found, name) for name in Figures.__slots__}, indent=1))
        return
    print(
        f"{found.fish} described fishes, each taxon as often: right first {found.first:.1%} (crosses left out "
        f"{found.species_first:.1%}), among the first three {found.three:.1%} ({found.species_three:.1%}), "
        f"calibration error {found.calibration:.3f}"
    )
    print(
        f"{found.fish} described fishes, as often as expected at their places: right first {found.expected_first:.1%}, "
        f"among the first three {found.expected_three:.1%}, calibration error {found.expected_calibration:.3f}"
    )
    print(f"questions to '{LIKELY:.0%} likely' (none can need fewer than {found.least:.1f} on average):")
    for name, (mean, right) in found.asked.items():
        print(f"  {name:14} {mean:5.2f} questions, right and likely at the end {right:.1%}")


if __name__ == "__main__":
    main()
