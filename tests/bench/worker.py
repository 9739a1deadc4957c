"""What is measured inside one process on one base: ``python -m tests.bench.worker WHAT BASE CACHE`` prints JSON."""

from __future__ import annotations

import json
import os
import random
import resource
import statistics
import sys
import time
from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any

from assistant.loading import OpenBase, open_base
from assistant.model.knowledge import KnowledgeBase

CLOCK = date(2026, 7, 4)
TICK = time.process_time if os.environ.get("BENCH_CPU") else time.perf_counter
"""Wall time or, on a busy machine, the time of the processor."""
WARMING, ROUNDS = 2, 20
WARMED = 20
"""Answers taken before the clock counts."""
Figures = dict[str, float]


def times(work: Callable[[], object], repeats: int) -> list[float]:
    """Milliseconds of each run."""
    out = []
    for _ in range(repeats):
        start = TICK()
        work()
        out.append((TICK() - start) * 1e3)
    return out


def resident() -> float:
    """The largest resident memory of this process so far, MB."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def talks(kb: KnowledgeBase, seed: int, rounds: int) -> Iterator[list[str]]:
    """Conversations about fishes of the base: comparing, describing, naming a catch, asking on."""
    rng = random.Random(seed)
    plain = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    for _ in range(rounds):
        a, b = (kb.taxon(t).label for t in rng.sample(plain, 2))
        caught = rng.choice(plain)
        yield [
            f"how do I tell a {a} from a {b}?",
            f"what does a {a} look like?",
            f"I caught one with {seen_on(kb, rng, caught)} in Ohio",
            f"it also had {seen_on(kb, rng, caught)}",
            "not sure",
            f"what about {seen_on(kb, rng, caught)}?",
            f"is a {b} found in Ohio?",
        ]


def seen_on(kb: KnowledgeBase, rng: random.Random, taxon: str) -> str:
    """Words for a state that is stated of a taxon or its genus."""
    told = [
        s
        for key in kb.lineage(taxon)
        for s in kb.statements(key)
        if s.states and kb.character(s.character).use == "identify"
    ]
    if not told:
        return "big scales"
    state = kb.state(rng.choice(told).states[0])
    return state.clause or state.label


def warm(base: OpenBase) -> Figures:
    """Turns of conversation after two first talks, and the memory they leave."""
    from assistant.dialogue.conversation import Held
    from assistant.dialogue.engine import respond

    taken = []
    for number, lines in enumerate(talks(base.kb, 1, WARMING + ROUNDS)):
        held = Held()
        for line in lines:
            start = TICK()
            _, held = respond(base, line, held, CLOCK)
            taken += [(TICK() - start) * 1e3] if number >= WARMING else []
    return {"median": statistics.median(taken), "95th": statistics.quantiles(taken, n=20)[-1], "resident": resident()}


def score(base: OpenBase) -> Figures:
    """Take an answer, rank again, choose the next question; beside it one row of a plain categorical classifier."""
    from assistant.reasoning.identify import posterior
    from assistant.reasoning.next_question import next_question
    from assistant.reasoning.observed import Evidence, Observation

    kb, table, rng = base.kb, base.table, random.Random(3)
    stated = [c for c in table.characters if kb.character(c).is_stated]
    seen: list[Observation] = []
    taken, ranked = [], []
    for _ in range(WARMED + 180):
        character = rng.choice(stated)
        a, b = table.spans[character]
        seen = [*seen[-7:], Observation(character, (table.columns[rng.randrange(a, b)],))]

        def step(seen: list[Observation] = seen) -> float:
            start = TICK()
            weights = posterior(kb, table, Evidence(tuple(seen)))
            rank = (TICK() - start) * 1e3
            next_question(kb, table, weights, {o.character for o in seen})
            return rank

        start, rank = TICK(), step()
        taken.append((TICK() - start) * 1e3)
        ranked.append(rank)
    middle, rank = (statistics.median(x[WARMED:]) for x in (taken, ranked))
    return {"median": middle, "rank": rank, "classifier": classifier(base)}


def classifier(base: OpenBase) -> float:
    """Milliseconds of scikit-learn's CategoricalNB.predict_proba for one row over the characters with states."""
    import numpy as np
    from sklearn.naive_bayes import CategoricalNB

    table = base.table
    chosen = [s for c, s in table.spans.items() if base.kb.character(c).is_stated]
    model = CategoricalNB()
    count = len(table.taxa)
    model.classes_ = np.arange(count)
    model.class_count_ = np.ones(count)
    model.class_log_prior_ = np.full(count, -np.log(count))
    model.feature_log_prob_ = [np.log(table.report[a:b].T.astype(float)) for a, b in chosen]
    model.n_categories_ = np.array([b - a for a, b in chosen])
    model.n_features_in_ = len(chosen)
    row = np.zeros((1, len(chosen)), int)
    return statistics.median(times(lambda: model.predict_proba(row), 30))


def build(folder: Path, cache: Path) -> Figures:
    """Make the compiled form anew, with the memory it takes."""
    for old in cache.glob(f"{folder.name}-*.snapshot"):
        old.unlink()
    taken = times(lambda: open_base(folder, cache=cache), 1)[0]
    return {"seconds": taken / 1e3, "resident": resident()}


def rebuild(folder: Path, cache: Path) -> Figures:
    """Change one genus and open again."""
    open_base(folder, cache=cache).close()
    files = sorted((folder / "taxa").rglob("*.ttl"), key=lambda p: (-p.stat().st_size, p))
    path = files[len(files) // 2]
    text = path.read_text()
    path.write_text(text.replace("tf:frequency freq:usually", "tf:frequency freq:often", 1))
    try:
        taken = times(lambda: open_base(folder, cache=cache).table, 1)[0]
    finally:
        path.write_text(text)
    return {"seconds": taken / 1e3}


def parse(folder: Path) -> Figures:
    """Parse the same files with rdflib, one after the other into one graph."""
    from rdflib import Graph

    graph = Graph()
    taken = times(lambda: [graph.parse(p, format="turtle") for p in sorted(folder.rglob("*.ttl"))], 1)[0]
    return {"seconds": taken / 1e3}


def check(folder: Path) -> Figures:
    """Check all of a base; a made-up one without the SHACL validator, which takes many minutes there."""
    from assistant.curation.check import check_folder
    from assistant.graph.locate import shipped_shapes

    shaped = not (folder / "made-up.txt").exists()
    return {"seconds": times(lambda: check_folder(folder, shipped_shapes(), shaped), 1)[0] / 1e3}


def edit(folder: Path) -> Figures:
    """Correct one statement again and again: validate what was touched and commit."""
    from assistant.curation.edit import correct_record
    from assistant.curation.history import Author
    from assistant.curation.stores import FolderStore
    from assistant.curation.view import Draft
    from assistant.graph.locate import shipped_shapes

    kb = open_base(folder).kb
    taxon = next(t for t in kb.species if any(s.states and s.frequency for s in kb.statements(t)))
    key = "st:" + next(s.id for s in kb.statements(taxon) if s.states and s.frequency)
    author = Author("Bench", "measured")

    def change(word: str) -> Callable[[Draft], None]:
        def work(draft: Draft) -> None:
            correct_record(draft, key, {"frequency": word}, author.key, CLOCK)

        return work

    store, taken = FolderStore(folder, shipped_shapes()), []
    for number in range(8):
        moment = datetime(2026, 7, 4, 12, number, tzinfo=UTC)
        work = change(("rarely", "sometimes")[number % 2])
        start = TICK()
        outcome = store.transact(author, moment, work)
        taken.append((TICK() - start) * 1e3)
        assert outcome.change, outcome.findings
    return {"median": statistics.median(taken[2:])}


def main(what: str, folder: Path, cache: Path) -> Any:
    """The figures asked for."""
    if what in ("build", "rebuild"):
        return (build if what == "build" else rebuild)(folder, cache)
    if what in ("parse", "edit", "check"):
        return {"parse": parse, "edit": edit, "check": check}[what](folder)
    base = open_base(folder, cache=cache)
    if what == "lines":
        rng = random.Random(7)
        plain = [t for t in base.kb.species if not base.kb.taxon(t).is_hybrid]
        a, b = (base.kb.taxon(t).label for t in rng.sample(plain, 2))
        parts = [seen_on(base.kb, rng, plain[-3]) for _ in range(2)]
        return {
            "contrast": f"how do I tell a {a} from a {b}?",
            "identify": f"I caught a fish with {parts[0]} and {parts[1]}",
        }
    return (warm if what == "warm" else score)(base)


if __name__ == "__main__":
    print(json.dumps(main(sys.argv[1], Path(sys.argv[2]), Path(sys.argv[3]))))
