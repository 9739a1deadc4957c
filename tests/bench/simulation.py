"""Random observers describe random fishes of the base: ``python -m tests.bench.simulation [--fish N] [--seed S]``.

A fish of each taxon (crosses among them) is drawn from the distributions of the base, in a place where it lives. An
observer answers questions about three to eight of its features, erring as often as the base says; or tells three to
eight that set it apart, now and then misread; or answers until the verdict is sure, likely, or nothing is left to ask.
Printed: how often the first and the first three candidates are right, the calibration error of the stated probability,
what the verdict words are worth, and how many questions the assistant, a random and a fixed order of questions need,
beside the least that any asker could need. The observers err exactly as the base assumes, so that the figures say how
well the assistant uses what it knows, not how well it knows fishes.

A stated probability can only hold among fishes as frequent as the assistant takes them to be. Fishes are therefore
drawn as often as the base expects them, and each taxon as often with even odds; the last row keeps the odds of the
base where a third of all fishes are crosses, and shows what being wrong about that costs.
"""

from __future__ import annotations

import argparse
import json
import math
import random
import statistics
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict, dataclass, replace

import numpy as np

from assistant.loading import open_base
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.identify import LIKELY, READING, Weighed, identify, posterior, prior, weigh
from assistant.reasoning.next_question import askable, information, next_question
from assistant.reasoning.observed import Evidence, Observation
from assistant.reasoning.tables import Table

FEWEST, MOST = 3, 8
MOST_ASKED = 12
UNREMARKABLE = 0.05
"""Bits added to what sets a fish apart: an ordinary feature is mentioned now and then too."""
Fish = tuple[int, tuple[str, ...]]
"""The position of a taxon in the table, and where the fish was caught."""
Asker = Callable[[Sequence[Observation], np.ndarray], str | None]
Observer = Callable[[int, random.Random], tuple[Observation, ...]]
"""What somebody reports of a fish of the taxon at a position."""
Ranked = tuple[float, int]
"""The probability of the first candidate, and the place of the right one (0 = first)."""


@dataclass(frozen=True, slots=True)
class Score:
    """How often the right fish came first and among three, and how far stated probabilities were off."""

    fish: int
    first: float
    three: float
    calibration: float


@dataclass(frozen=True, slots=True)
class Figures:
    """What came of the simulated fishes.

    ``described`` is by kind of fishes and observers; ``verdicts`` by word: how many, and how often the first
    candidate was right; ``asked`` by asker: mean questions, share that got to likely and right.
    """

    described: dict[str, Score]
    verdicts: dict[str, tuple[int, float]]
    least: float
    asked: dict[str, tuple[float, float]]


SHOWS = 0.3
"""The chance that anything is reported of a character below which the fish lacks the part for it."""
EXPECTED, TOLD, SPECIES, EVEN, CROSSES = (
    "as often as expected, answers",
    "as often as expected, told of one's own accord",
    "each species as often, answers",
    "each taxon as often, even odds, answers",
    "each taxon as often, a third of them crosses, answers",
)


def reported(kb: KnowledgeBase, table: Table, taxon: int, character: str, rng: random.Random) -> Observation:
    """What an ordinary observer reports of a fish of the taxon."""
    a, b = table.spans[character]
    return named(kb, table, character, rng.choices(range(a, b), table.report[a:b, taxon].tolist())[0])


def named(kb: KnowledgeBase, table: Table, character: str, column: int) -> Observation:
    """The observation that a column of the table stands for."""
    name = table.columns[column]
    if kb.character(character).is_stated:
        return Observation(character, (name,))
    return Observation(character, value=float(name.partition("=")[2]))


def features_of(kb: KnowledgeBase, table: Table, taxon: int) -> list[str]:
    """The characters of which something is known of the taxon and that a live fish shows.

    What the fish lacks the part for (the colour of barbels in a bass) is nobody's answer.
    """
    known = table.known[:, taxon]
    shown = {c: float(table.report[a:b, taxon].sum()) for c, (a, b) in table.spans.items()}
    return [c for c, told in zip(table.characters, known, strict=True)
            if told and shown[c] >= SHOWS and askable(kb.character(c))]


def answering(kb: KnowledgeBase, table: Table) -> Observer:
    """An observer who is asked about features at random."""

    def observe(taxon: int, rng: random.Random) -> tuple[Observation, ...]:
        pool = features_of(kb, table, taxon)
        chosen = rng.sample(pool, min(len(pool), rng.randint(FEWEST, MOST)))
        return tuple(reported(kb, table, taxon, c, rng) for c in chosen)

    return observe


def telling(kb: KnowledgeBase, table: Table) -> Observer:
    """An observer who mentions what sets the fish apart, the easily seen before the rest, and is misread at times."""
    apart = remarkable(kb, table)

    def observe(taxon: int, rng: random.Random) -> tuple[Observation, ...]:
        pool = features_of(kb, table, taxon)
        weights = [float(apart[table.characters.index(c), taxon]) for c in pool]
        out = []
        for _ in range(min(len(pool), rng.randint(FEWEST, MOST))):
            at = rng.choices(range(len(pool)), weights)[0]
            character = pool.pop(at)
            weights.pop(at)
            if rng.random() < READING:
                out.append(named(kb, table, character, rng.randrange(*table.spans[character])))
            else:
                out.append(reported(kb, table, taxon, character, rng))
        return tuple(out)

    return observe


def remarkable(kb: KnowledgeBase, table: Table) -> np.ndarray:
    """How far a character sets a taxon apart from fishes at large (bits, over the effort), by character and taxon."""
    odds = prior(kb, table, Evidence())
    out = np.zeros((len(table.characters), len(table.taxa)))
    for row, (a, b) in enumerate(table.spans.values()):
        report = np.asarray(table.report[a:b], dtype=np.float64)
        usual = report @ odds
        report, usual = report / report.sum(axis=0), usual / usual.sum()
        bits = (report * np.log2(np.maximum(report, 1e-6) / np.maximum(usual, 1e-6)[:, None])).sum(axis=0)
        out[row] = (UNREMARKABLE + np.maximum(bits, 0.0)) / table.effort[row]
    return out


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


def described(
    kb: KnowledgeBase,
    table: Table,
    fish: Sequence[Fish],
    observer: Observer,
    rng: random.Random,
    volunteered: bool = False,
) -> list[tuple[int, Weighed]]:
    """For each fish its taxon and what was reported of it, weighed."""
    return [
        (taxon, weigh(kb, table, Evidence(observer(taxon, rng), places=places, volunteered=volunteered)))
        for taxon, places in fish
    ]


def ranked(taxon: int, weights: np.ndarray) -> Ranked:
    """The probability of the first candidate and the place of the right one; of equals the first in the table leads."""
    return float(weights.max()), int((weights > weights[taxon]).sum() + (weights[:taxon] == weights[taxon]).sum())


def evenly(weighed: Weighed) -> Weighed:
    """The same evidence where each taxon is as likely to begin with."""
    return replace(weighed, prior=np.ones(len(weighed.prior)))


def score(told: Sequence[Ranked]) -> Score:
    """First, among three, calibration error."""
    return Score(
        len(told),
        statistics.mean(rank == 0 for _, rank in told),
        statistics.mean(rank < 3 for _, rank in told),
        calibration([(p, rank == 0) for p, rank in told]),
    )


def describe(kb: KnowledgeBase, table: Table, rounds: int, rng: random.Random) -> dict[str, Score]:
    """``rounds`` described fishes of each taxon in all the ways of drawing and describing them."""
    answers = answering(kb, table)
    each = [(i, home(kb, t, rng)) for i, t in enumerate(table.taxa) for _ in range(rounds)]
    often = expected(kb, table, len(each), rng)
    usual = described(kb, table, often, answers, rng)
    told = described(kb, table, often, telling(kb, table), rng, volunteered=True)
    plain = described(kb, table, each, answers, rng)
    unplaced = described(kb, table, [(i, ()) for i, _ in each], answers, rng)
    species = [(i, w) for i, w in plain if not kb.taxon(table.taxa[i]).is_hybrid]
    kinds = {EXPECTED: usual, TOLD: told, SPECIES: species, EVEN: [(i, evenly(w)) for i, w in unplaced], CROSSES: plain}
    return {name: score([ranked(i, w.posterior) for i, w in kind]) for name, kind in kinds.items()}


def fit(
    kb: KnowledgeBase, table: Table, fish: int, powers: Sequence[float], seed: int
) -> Iterator[tuple[float, float, float]]:
    """For each power the calibration error of answers and of what is told, fishes as often as expected."""
    rng = random.Random(seed)
    often = expected(kb, table, fish, rng)
    kinds = (
        described(kb, table, often, answering(kb, table), rng),
        described(kb, table, often, telling(kb, table), rng, volunteered=True),
    )
    for power in powers:
        errors = [
            score([ranked(i, replace(w, powers=(power, power)).posterior) for i, w in kind]).calibration
            for kind in kinds
        ]
        yield power, errors[0], errors[1]


def verdicts(kb: KnowledgeBase, table: Table, count: int, rng: random.Random) -> dict[str, tuple[int, float]]:
    """By verdict word how many fishes, as often as expected, half asked and half told, got it, and how many rightly."""
    found: dict[str, list[bool]] = {}
    for observer, volunteered in ((answering(kb, table), False), (telling(kb, table), True)):
        for taxon, places in expected(kb, table, count // 2, rng):
            seen = observer(taxon, rng)
            named_ = identify(kb, table, Evidence(seen, places=places, volunteered=volunteered), most=1)
            found.setdefault(named_.verdict, []).append(named_.candidates[0].taxon == table.taxa[taxon])
    return {word: (len(right), statistics.mean(right)) for word, right in sorted(found.items())}


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
    scores = describe(kb, table, rounds, rng)
    words = verdicts(kb, table, rounds * len(table.taxa), rng)
    some = [rng.randrange(len(table.taxa)) for _ in range(asked)]
    runs = {}
    for name, asker in askers(kb, table, rng).items():
        ends = [ask(kb, table, taxon, asker, rng) for taxon in some]
        runs[name] = (statistics.mean(n for n, _ in ends), statistics.mean(ok for _, ok in ends))
    return Figures(scores, words, least_questions(kb, table), runs)


def show(found: Figures) -> None:
    """Print the figures."""
    for name, row in found.described.items():
        print(
            f"{name:55} {row.fish:6} fishes: right first {row.first:.1%}, among three {row.three:.1%}, "
            f"calibration error {row.calibration:.3f}"
        )
    told = ", ".join(f"{word} {count} ({right:.1%} right)" for word, (count, right) in found.verdicts.items())
    print(f"verdicts, as often as expected: {told}")
    print(f"questions to '{LIKELY:.0%} likely' (none can need fewer than {found.least:.1f} on average):")
    for name, (mean, right) in found.asked.items():
        print(f"  {name:14} {mean:5.2f} questions, right and likely at the end {right:.1%}")


def main() -> None:
    """Simulate and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.bench.simulation", description=__doc__.splitlines()[0])
    parser.add_argument("--fish", type=int, default=12, help="described fishes of each taxon")
    parser.add_argument("--asked", type=int, default=300, help="questioned fishes in all")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--powers", type=float, nargs="+", help="only the calibration error at these powers")
    parser.add_argument("--json", action="store_true")
    args = parser.parse_args()
    base = open_base()
    if args.powers:
        for power, answers, told in fit(base.kb, base.table, args.fish * len(base.table.taxa), args.powers, args.seed):
            print(f"power {power:.2f}: calibration error of answers {answers:.3f}, of what is told {told:.3f}")
        return
    found = simulate(base.kb, base.table, args.fish, args.asked, args.seed)
    if args.json:
        print(json.dumps(asdict(found), indent=1))
    else:
        show(found)


if __name__ == "__main__":
    main()
