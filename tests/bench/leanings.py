"""Fit the leanings of the base to our own ways of asking: ``python -m tests.bench.leanings [--try FILE ...]``.

The lines are those of ``tests/cases/ways_of_asking.tsv``, ``utterances_open.tsv`` and the examples of the recogniser
table; the last turn of a conversation counts, of the utterances every turn. Without options
``ontology/vocabulary/leanings.ttl`` is written anew. ``--try`` fits without writing and prints what share of other
files of either form is read rightly, by the table alone, by the leanings alone and by both, for several weights of
the table's choice. Whoever changes cues, facts or rows, or adds ways of asking, runs this again.
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond_to, understand
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.recogniser.intent_rows import ROWS
from assistant.dialogue.recogniser.intents import Recognised, recognise
from assistant.dialogue.recogniser.leaning import lean, signs
from assistant.graph.locate import shipped_ontology
from assistant.graph.values import Literal, Node
from assistant.graph.write import write_nodes
from assistant.loading import open_base
from tests.bench.score_utterances import CASES, CLOCK, cases

TARGET = shipped_ontology() / "vocabulary" / "leanings.ttl"
PENALTY = 1.0
"""Inverse strength of the L2 penalty of the regression."""
LEVELLING = 0.25
"""How far a rare intent counts for more than its lines: 0 not at all, 1 for as much as a common one."""
LEAST_LINES = 3
"""A sign of fewer lines is left out."""
LEAST_WEIGHT = 0.05
"""A smaller weight is left out."""
LENGTH = 8.0
"""Length to which the signs of every line are brought, so that a long line counts as much as a short one."""
SCALES = {"fact": 0.7, "after": 0.6}
"""How far signs of a kind count while they are fitted: facts and words after an intent vary with the line less than
its own words do. Chosen on lines of six further writers that nothing was fitted to."""
BONUSES = (-9.0, 0.0, 0.6, 0.9, 1.2, 1.5, 2.0, 3.0, 99.0)

Turn = tuple[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Line:
    """A turn as the recogniser sees it: its signs, what the table says, the intents that are right."""

    signs: frozenset[str]
    table: Recognised
    right: tuple[str, ...]


def conversations(path: Path) -> Iterator[list[Turn]]:
    """Conversations of a file of ways of asking or of utterances: lines with the intents that are right, or none."""
    header = next(x for x in path.read_text(encoding="utf-8").splitlines() if not x.startswith("#"))
    if header.startswith("intent\t"):
        for line in path.read_text(encoding="utf-8").splitlines():
            if line and not line.startswith(("#", "intent\t")):
                intents, _, turns = line.partition("\t")
                yield marked(turns, tuple(intents.split("|")))
        return
    held: list[Turn] = []
    current = ""
    for case in cases(path):
        if case.conversation != current and held:
            yield held
            held = []
        current = case.conversation
        held.append((case.say, case.intents))
    if held:
        yield held


def marked(turns: str, intents: tuple[str, ...]) -> list[Turn]:
    """Turns joined by " / ", of which the last has these intents."""
    lines = turns.split(" / ")
    return [(line, intents if number == len(lines) else ()) for number, line in enumerate(lines, start=1)]


def lines_of(base: Base, talks: Iterable[list[Turn]]) -> Iterator[Line]:
    """Every turn that has a right intent, read in its conversation."""
    for talk in talks:
        held = Held()
        for say, intents in talk:
            reading = read_line(base.kb, say, held, CLOCK)
            seen, facts, _ = understand(base.kb, reading, held)
            if intents:
                yield Line(signs(seen, facts), recognise(facts), intents)
            _, held = respond_to(base, reading, held, CLOCK)


def own_lines(base: Base) -> list[Line]:
    """The lines that the leanings are fitted to."""
    talks = [t for name in ("ways_of_asking.tsv", "utterances_open.tsv") for t in conversations(CASES / name)]
    talks += [marked(example, (row.intent,)) for row in ROWS for example in row.examples if row.intent != "@same"]
    return list(lines_of(base, talks))


def fitted(lines: list[Line]) -> dict[str, dict[str, float]]:
    """Weights by sign and intent. A line with several right intents counts as a part of a line for each."""
    from scipy.sparse import csr_matrix
    from sklearn.linear_model import LogisticRegression

    counts = Counter(sign for line in lines for sign in line.signs)
    names = sorted(sign for sign, number in counts.items() if number >= LEAST_LINES)
    at = {name: i for i, name in enumerate(names)}
    scales = np.array([SCALES.get(name.partition(".")[0], 1.0) for name in names])
    rows, columns, wanted, weights = [], [], [], []
    values: list[float] = []
    for line in lines:
        for intent in line.right:
            found = [at[s] for s in line.signs if s in at]
            rows += [len(wanted)] * len(found)
            columns += found
            values += list(LENGTH * scales[found] / np.linalg.norm(scales[found])) if found else []
            wanted.append(intent)
            weights.append(1 / len(line.right))
    seen = csr_matrix((np.array(values), (np.array(rows, np.int32), np.array(columns, np.int32))),
                      (len(wanted), len(names)))
    seen.indices, seen.indptr = seen.indices.astype(np.int32), seen.indptr.astype(np.int32)
    often = Counter(wanted)
    rare = {intent: (len(wanted) / (len(often) * n)) ** LEVELLING for intent, n in often.items()}
    model: Any = LogisticRegression(C=PENALTY, class_weight=rare, max_iter=2000, fit_intercept=False, tol=1e-5)
    model.fit(seen, wanted, sample_weight=weights)
    found = model.coef_ * scales
    return {name: told for i, name in enumerate(names) if (told := _told(model.classes_, found[:, i]))}


def _told(intents: Any, column: Any) -> dict[str, float]:
    return {str(k): round(float(v), 2) for k, v in zip(intents, column, strict=True) if abs(v) >= LEAST_WEIGHT}


def text_of(weights: Mapping[str, Mapping[str, float]]) -> str:
    """The weights as a file in canonical form."""
    nodes = [Node(f"lean:{sign}", {"rdf:type": ["tf:Leaning"],
                                   "tf:toward": [Literal(f"{k} {v:.2f}") for k, v in told.items()]})
             for sign, told in weights.items()]
    return write_nodes(nodes, "# Fitted by tests/bench/leanings.py; never edited by hand.\n\n")


def summed(weights: Mapping[str, Mapping[str, float]], line: Line) -> dict[str, float]:
    """The sum of the weights of a line by intent."""
    sums = dict.fromkeys({k for told in weights.values() for k in told}, 0.0)
    for sign in line.signs:
        for intent, weight in weights.get(sign, {}).items():
            sums[intent] += weight
    return sums


def share_right(told: list[tuple[Line, dict[str, float]]], own: float) -> float:
    """The share of lines with their sums of weights that are read rightly."""
    return float(np.mean([lean(x.table, s, x.signs, own).intent in x.right for x, s in told]))


def main() -> None:
    """Fit, then write the weights or print how other files are read."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--try", dest="files", nargs="+", type=Path, default=[])
    parser.add_argument("--with", dest="more", nargs="+", type=Path, default=[], help="further files to fit to")
    args = parser.parse_args()
    base = open_base()
    lines = own_lines(base) + [x for path in args.more for x in lines_of(base, conversations(path))]
    weights = fitted(lines)
    print(f"{len(lines)} lines, {len(weights)} signs, {sum(map(len, weights.values()))} weights")
    if not args.files:
        TARGET.write_text(text_of(weights), encoding="utf-8")
    for path in args.files:
        told = [(line, summed(weights, line)) for line in lines_of(base, conversations(path))]
        print(f"{path.name}, {len(told)} lines, per cent right by the weight of the table's choice: " + ", ".join(
            f"{bonus:g}: {100 * share_right(told, bonus):.1f}" for bonus in BONUSES))


if __name__ == "__main__":
    main()
