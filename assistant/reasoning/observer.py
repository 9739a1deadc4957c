"""What an ordinary observer reports of a taxon: its distribution seen through the observer's errors (layer 3).

Plain numbers without tables, so that one answer about a few taxa does not wait for numpy; ``tables`` says the same of
all taxa at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.crosses import cross_distribution
from assistant.reasoning.evidence import LEAK, Distribution, Scope, distribution, leaves

NEIGHBOUR = 0.35
"""How much likelier a wrong report is for each step nearer in an ordered character."""
KIN_ERROR = 0.15
"""How often a state is taken for another under the same umbrella (specks for dots in rows), beside other errors."""
COUNT_MARGIN = 2
SEEN = 1e-4
"""The share from which a number of a count gets a column."""
MOST_ERROR = 0.6
FARTHEST = 12
"""Steps from which a wrong report gets no rarer."""
MOST_KEPT = 20_000
"""Distributions that are remembered; some 10,000 are of use in the shipped base."""


def scored(character: Character) -> bool:
    """True for a character that observations of a fish can be scored with."""
    return character.use == "identify" and (character.is_stated or character.kind == "count")


def taxon_distribution(kb: KnowledgeBase, taxon: str, character: str, scope: Scope) -> Distribution | None:
    """The distribution of a character in a taxon or, for a cross, from its parents with its own statements on top.

    Those of a fish of which neither place nor length is known are kept with the base, up to a bound.
    """
    if scope.place or scope.length is not None:
        return _worked_out(kb, taxon, character, scope)
    kept: dict[tuple[str, str, Scope], Distribution | None] = kb.derived("distributions", lambda _: {})
    slot = (taxon, character, scope)
    if slot not in kept:
        if len(kept) >= MOST_KEPT:
            kept.clear()
        kept[slot] = _worked_out(kb, taxon, character, scope)
    return kept[slot]


def _worked_out(kb: KnowledgeBase, taxon: str, character: str, scope: Scope) -> Distribution | None:
    if kb.taxon(taxon).is_hybrid:
        return cross_distribution(kb, taxon, character, scope)
    return distribution(kb, taxon, character, scope)


def column_keys(kb: KnowledgeBase, character: Character, cells: Sequence[Distribution | None]) -> list[str]:
    """The columns of a character: its leaf states, or the integers that occur with a margin."""
    if character.is_stated:
        return list(leaves(kb, character.id))
    seen = [bounds for d in cells if d and (bounds := numbers_seen(d))]
    return count_keys(min(low for low, _ in seen), max(high for _, high in seen)) if seen else []


def numbers_seen(cell: Distribution) -> tuple[int, int] | None:
    """The smallest and largest number that a count takes now and then; None where there is none."""
    seen = [int(k) for k, v in cell.shares.items() if v > SEEN]
    return (min(seen), max(seen)) if seen else None


def count_keys(low: int, high: int) -> list[str]:
    """The columns of a count whose numbers lie between these."""
    return [str(k) for k in range(max(0, low - COUNT_MARGIN), high + COUNT_MARGIN + 1)]


def error_weights(character: Character, size: int) -> list[float]:
    """How likely a wrong report is by its distance in columns from the truth, before scaling; the first is for none."""
    if character.is_stated and character.kind != "ordered":
        return [0.0, *[1.0] * (size - 1)]
    return [0.0, *(NEIGHBOUR ** min(step, FARTHEST) for step in range(size - 1))]


class Kin(NamedTuple):
    """The number of the topmost umbrella over a column, and how readily another below it is taken for that column."""

    top: int
    share: float


def kin_of(kb: KnowledgeBase, character: Character, keys: Sequence[str]) -> tuple[Kin, ...]:
    """The umbrella of each column, with how common the state is below it; empty where no two states are so near."""
    if not character.is_stated or character.kind == "ordered":
        return ()
    states = kb.states(character.id)
    above = {s.id: s.broader for s in states}
    shares = {s.id: 1.0 if s.share is None else s.share for s in states}
    tops = []
    for key in keys:
        top, seen = key, {key}
        while (up := above.get(top)) and up not in seen:
            top = up
            seen.add(up)
        tops.append(top)
    kin = tuple(Kin(tops.index(top), shares.get(key, 1.0)) for top, key in zip(tops, keys, strict=True))
    return kin if len(set(tops)) < len(tops) else ()


def told_shares(keys: Sequence[str], cell: Distribution) -> list[float]:
    """The shares of a distribution by column, with a little left to every column."""
    shares = [cell.shares.get(key, 0.0) for key in keys]
    total = sum(shares) or 1.0
    return [(1 - LEAK) * share / total + LEAK / len(keys) for share in shares]


def report_chances(character: Character, truth: Sequence[float], kin: Sequence[Kin] = ()) -> list[float]:
    """How often an observer reports each column of a character, given the shares of fish that truly show it.

    ``kin`` tells the columns' umbrellas (see ``kin_of``): a red spot is sooner taken for a red rim than for none.
    """
    size = len(truth)
    if size < 2:
        return list(truth)
    error = min(MOST_ERROR, character.error)
    weights = error_weights(character, size)
    out = [(1.0 - error) * share for share in truth]
    if character.is_stated and character.kind != "ordered":
        if kin:
            return _kin_chances(error, truth, kin)
        wrong = error / (size - 1)
        total = sum(truth)
        return [right + wrong * (total - share) for right, share in zip(out, truth, strict=True)]
    sums = _running(weights)
    for place, share in enumerate(truth):
        if share:
            scale = error * share / (sums[place] + sums[size - 1 - place])
            for report in range(size):
                if report != place:
                    out[report] += scale * weights[abs(report - place)]
    return out


def _kin_chances(error: float, truth: Sequence[float], kin: Sequence[Kin]) -> list[float]:
    size = len(truth)
    out = [0.0] * size
    for place, share in enumerate(truth):
        near = [i for i in range(size) if i != place and kin[i].top == kin[place].top]
        shares = sum(kin[i].share for i in near)
        right = (1.0 - error) * share
        out[place] += right * (1.0 - KIN_ERROR * min(shares, 1.0))
        for i in near:
            out[i] += right * KIN_ERROR * kin[i].share / max(shares, 1.0)
        wrong = error * share / (size - 1)
        out = [chance + (0.0 if i == place else wrong) for i, chance in enumerate(out)]
    return out


def _running(weights: Sequence[float]) -> list[float]:
    """The sum of the weights up to each distance."""
    sums, total = [], 0.0
    for weight in weights:
        total += weight
        sums.append(total)
    return sums


def apart(character: Character, first: Sequence[float], second: Sequence[float], kin: Sequence[Kin] = ()) -> float:
    """The total variation distance between the reports of two truths, 0 (alike) to 1.

    Reports are linear in the truth, so that the difference of the truths gives that of the reports.
    """
    gap = [a - b for a, b in zip(first, second, strict=True)]
    return 0.5 * sum(abs(x) for x in report_chances(character, gap, kin))
