"""Name the fish: a posterior over taxa and crosses from what was seen, where, and how big (layer 3).

Every observation multiplies the odds by how often an ordinary observer would report it of each taxon. Place and size
weigh, they never exclude. A fish that fits nothing known is told as such.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import ANY, Scope, about, below
from assistant.reasoning.place_prior import place_prior
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.tables import Table, character_block

Vector = npt.NDArray[np.float64]
HEDGE = 0.55
"""How much of a hedged observation ("maybe", "looks like") counts; the rest is as if nothing was said."""
FLOOR = 0.006
"""No single observation counts more than this against a taxon."""
READING = 0.05
"""Chance that an observation typed in plain words was not meant as it was read."""
GROUP_ERROR = 0.10
"""How often people use a group word ("bass", "bream") for a fish outside the group."""
LIKENESS = 3.5
"""How much likelier a fish or its listed look-alikes become when the catch is said to look like it."""
TEMPER = 0.9
"""Observations of one fish are not quite independent: their joint weight is tempered by this power."""
SURE, LIKELY, BETWEEN = 0.95, 0.80, 0.75
"""Verdict thresholds on the posterior: one taxon (sure, likely), or the best three together (between)."""
ODD = -2.6
"""Standard deviations below what the best candidate leads one to expect, at which nothing known fits."""


@dataclass(frozen=True, slots=True)
class Observation:
    """One thing seen or denied: states of a character, or a number (a range where ``value_high`` differs)."""

    character: str
    states: tuple[str, ...] = ()
    value: float | None = None
    value_high: float | None = None
    seen: bool = True
    hedged: bool = False
    at_least: bool = False
    at_most: bool = False


@dataclass(frozen=True, slots=True)
class Hint:
    """A group word or a likeness: the taxa it points to, how (``group`` or ``like``), denied or hedged."""

    kind: str
    taxa: frozenset[str]
    seen: bool = True
    hedged: bool = False
    word: str = ""


@dataclass(frozen=True, slots=True)
class Evidence:
    """Everything known of one fish. ``places`` are ids, ``length`` mm (low, high), ``size_word`` small or large."""

    observations: tuple[Observation, ...] = ()
    hints: tuple[Hint, ...] = ()
    places: tuple[str, ...] = ()
    length: tuple[float, float] | None = None
    size_word: str = ""
    scope: Scope = ANY
    excluded: frozenset[str] = frozenset()

    @property
    def weight(self) -> int:
        """How many separate things were told."""
        return len(self.observations) + len(self.hints)


@dataclass(frozen=True, slots=True)
class Candidate:
    """A taxon with its probability and the statements that speak for and against it."""

    taxon: str
    probability: float
    supports: tuple[str, ...]
    opposes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Identification:
    """Candidates best first, the verdict word, how typical the best is, what clashes, and the group that holds."""

    candidates: tuple[Candidate, ...]
    verdict: str
    typicality: float
    clashes: tuple[str, ...]
    group: str | None
    group_probability: float
    posterior: Mapping[str, float] = field(default_factory=dict)
    hybrid_needs_proof: bool = False
    too_small: bool = False


def posterior(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector:
    """The probability of each taxon of the table; sums to 1."""
    logs: Vector = np.log(prior(kb, table, evidence))
    for chance in likelihoods(kb, table, evidence):
        logs = logs + TEMPER * np.log(chance)
    logs = logs + np.log(cross_factor(kb, table, evidence))
    logs -= logs.max()
    weights = np.exp(logs)
    return np.asarray(weights / weights.sum(), dtype=np.float64)


def prior(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector:
    """How likely each taxon is before looking: where it lives, how wide-spread it is, how big it grows."""
    weights: Vector = place_prior(kb, table.taxa, evidence.places)
    if evidence.length or evidence.size_word:
        weights = weights * size_factor(kb, table.taxa, evidence.length, evidence.size_word)
    for taxon in evidence.excluded:
        if taxon in table.index:
            weights[table.index[taxon]] *= 0.01
    return np.asarray(np.maximum(weights, 1e-9), dtype=np.float64)


def likelihoods(kb: KnowledgeBase, table: Table, evidence: Evidence) -> list[Vector]:
    """One vector over taxa for every observation and hint, each in (0, 1]."""
    out = [observation_likelihood(kb, table, o, evidence) for o in evidence.observations if o.character in table.spans]
    out += [hint_likelihood(kb, table, h) for h in evidence.hints]
    return out


def observation_likelihood(kb: KnowledgeBase, table: Table, seen: Observation, evidence: Evidence) -> Vector:
    """How often an observer would report this of each taxon."""
    rows = scoped_rows(kb, table, seen.character, evidence)
    columns = reported_columns(kb, table, seen)
    start = table.spans[seen.character][0]
    if not columns:
        return np.ones(len(table.taxa))
    chance = np.asarray(rows[[c - start for c in columns]].sum(axis=0), dtype=np.float64)
    share = len(columns) / rows.shape[0]
    if not seen.seen:
        chance, share = 1.0 - chance, 1.0 - share
    chance = (1 - READING) * chance + READING * max(share, 0.05)
    smallest = kb.character(seen.character).min_length
    if evidence.length and evidence.length[1] < smallest:
        chance = 0.25 * chance + 0.75 * chance.mean()
    if seen.hedged:
        chance = HEDGE * chance + (1 - HEDGE) * chance.mean()
    return np.maximum(chance, FLOOR)


def reported_columns(kb: KnowledgeBase, table: Table, seen: Observation) -> list[int]:
    """The columns of the table that an observation names (umbrellas and bounds spread out)."""
    a, b = table.spans[seen.character]
    if seen.value is not None:
        low, high = seen.value, seen.value if seen.value_high is None else seen.value_high
        numbers = [(int(table.columns[i].partition("=")[2]), i) for i in range(a, b)]
        low = numbers[0][0] if seen.at_most else low
        high = numbers[-1][0] if seen.at_least else high
        inside = [i for n, i in numbers if low <= n <= high]
        return inside or [min(numbers, key=lambda pair: abs(pair[0] - low))[1]]
    told = {leaf for s in seen.states for leaf in below(kb, s)}
    columns = [table.column[s] for s in sorted(told) if s in table.column]
    if columns and (seen.at_least or seen.at_most):
        columns = list(range(min(columns), b)) if seen.at_least else list(range(a, max(columns) + 1))
    return columns


def scoped_rows(kb: KnowledgeBase, table: Table, character: str, evidence: Evidence) -> npt.NDArray[np.float32]:
    """The rows of a character, recomputed where a statement speaks of the sex, age, season, size or place known."""
    scope = evidence.scope
    rows = table.rows(character)
    if scope == ANY:
        return rows
    touched = [i for i, t in enumerate(table.taxa) if any(s.scoped for s in about(kb, t, character)[0])]
    if not touched:
        return rows
    found = kb.character(character)
    a, b = table.spans[character]
    keys = [c if found.is_stated else c.partition("=")[2] for c in table.columns[a:b]]
    cells = [taxon_distribution(kb, table.taxa[i], character, scope) for i in touched]
    if not any(cells):
        return rows
    block, known = character_block(kb, found, keys, cells)
    out = rows.copy()
    for position, i in enumerate(touched):
        if known[position]:
            out[:, i] = block[:, position]
    return out


def hint_likelihood(kb: KnowledgeBase, table: Table, hint: Hint) -> Vector:
    """A group word or a likeness as evidence with an error rate, never as a filter."""
    member = np.array([_in_hint(kb, t, hint.taxa) for t in table.taxa], dtype=np.float64)
    if hint.kind == "like":
        near = {x.other for t in hint.taxa for x in kb.look_alikes(t)} | {
            t for t in table.taxa if any(x.other in hint.taxa for x in kb.look_alikes(t))}
        related = np.array([t in near for t in table.taxa], dtype=np.float64)
        chance = (1.0 + (LIKENESS - 1.0) * np.maximum(member, 0.7 * related)) / LIKENESS
    else:
        chance = (1 - GROUP_ERROR) * member + GROUP_ERROR * (1 - member) * 0.5
    if not hint.seen:
        chance = 1.0 - 0.9 * chance
    if hint.hedged:
        chance = HEDGE * chance + (1 - HEDGE) * chance.mean()
    return np.maximum(chance, FLOOR)


def _in_hint(kb: KnowledgeBase, taxon: str, members: frozenset[str]) -> float:
    if taxon in members:
        return 1.0
    parents = kb.taxon(taxon).parents
    return 0.9 if parents and all(p in members for p in parents) else 0.5 if any(p in members for p in parents) else 0.0


def size_factor(kb: KnowledgeBase, taxa: Sequence[str], length: tuple[float, float] | None, word: str) -> Vector:
    """How well a length (mm) or a size word fits what each taxon grows to."""
    from assistant.reasoning.size import size_fit, word_fit

    return np.array([size_fit(kb, t, length[0]) if length else word_fit(kb, t, word) for t in taxa], dtype=np.float64)


def cross_factor(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector:
    """A cross counts in full only when features of both parents, or its own curated features, were seen."""
    factor = np.ones(len(table.taxa))
    scored = [o for o in evidence.observations if o.character in table.spans]
    chances = [observation_likelihood(kb, table, o, evidence) for o in scored]
    for i, taxon in enumerate(table.taxa):
        parents = kb.taxon(taxon).parents
        places = [table.index[p] for p in parents if p in table.index]
        if len(places) != 2:
            continue
        own = {s.character for s in kb.statements(taxon)}
        a, b = places
        toward_a = any(c[a] > 1.6 * c[b] for c in chances)
        toward_b = any(c[b] > 1.6 * c[a] for c in chances)
        special = sum(c[i] > 1.3 * max(c[a], c[b]) for o, c in zip(scored, chances, strict=True) if o.character in own)
        if not special and not (toward_a and toward_b):
            factor[i] = 0.12
    return factor


def identify(kb: KnowledgeBase, table: Table, evidence: Evidence, most: int = 6) -> Identification:
    """The answer to "what did I catch": candidates, verdict, clashes, and the group that holds when no name does."""
    weights = posterior(kb, table, evidence)
    order = sorted(range(len(weights)), key=lambda i: (-weights[i], table.taxa[i]))
    typical = typicality(kb, table, evidence, order[0])
    candidates = tuple(_candidate(kb, table, evidence, i, float(weights[i]), order) for i in order[:most])
    shares = {t: float(w) for t, w in zip(table.taxa, weights, strict=True)}
    group, held = group_of(kb, shares, candidates[0].taxon)
    clash = clashes(kb, table, evidence, order[0])
    verdict = verdict_of(weights[order], evidence, typical, len(clash))
    small = bool(evidence.length and evidence.length[1] < 25.0)
    if small and verdict in ("sure", "likely"):
        verdict = "not-enough"
    lead_cross = kb.taxon(candidates[0].taxon).is_hybrid
    if lead_cross and verdict == "sure":
        verdict = "likely"
    return Identification(candidates, verdict, typical, clash, group, held, shares, lead_cross, small)


def verdict_of(ranked: Vector, evidence: Evidence, typical: float, clashing: int) -> str:
    """The verdict word from the ranked posterior, the number of things told, and typicality."""
    told = evidence.weight
    if told == 0:
        return "not-enough"
    if told >= 2 and clashing >= 2 and typical < ODD:
        return "none-fits"
    if ranked[0] >= SURE and told >= 2 and clashing == 0:
        return "sure"
    if ranked[0] >= LIKELY:
        return "likely"
    return "between" if ranked[:3].sum() >= BETWEEN and told >= 1 else "not-enough"


def typicality(kb: KnowledgeBase, table: Table, evidence: Evidence, taxon: int) -> float:
    """How many standard deviations the observations lie from what a fish of the taxon would show (0 = as expected)."""
    surprise = variance = 0.0
    for seen in evidence.observations:
        if seen.character not in table.spans:
            continue
        columns = reported_columns(kb, table, seen)
        if not columns or seen.hedged:
            continue
        chance = float(observation_likelihood(kb, table, seen, evidence)[taxon])
        chance = min(max(chance, 1e-3), 1 - 1e-3)
        best = max(chance, 0.5)
        surprise += np.log(chance) - (best * np.log(best) + (1 - best) * np.log(1 - best + 1e-3))
        variance += best * (1 - best) * (np.log(best / (1 - best + 1e-3))) ** 2 + 0.15
    return float(surprise / np.sqrt(variance)) if variance else 0.0


def clashes(kb: KnowledgeBase, table: Table, evidence: Evidence, taxon: int) -> tuple[str, ...]:
    """Characters whose observation speaks strongly against the taxon."""
    out = []
    for seen in evidence.observations:
        if seen.character in table.spans and not seen.hedged:
            chance = observation_likelihood(kb, table, seen, evidence)
            if chance[taxon] < 0.12 and chance[taxon] < 0.35 * chance.max():
                out.append(seen.character)
    return tuple(out)


def group_of(kb: KnowledgeBase, shares: Mapping[str, float], lead: str) -> tuple[str | None, float]:
    """The lowest genus or family that holds at least 90 in 100 of the probability, crosses shared by their parents."""
    first = kb.taxon(lead).parents or (lead,)
    for above in kb.lineage(first[0])[1:]:
        total = 0.0
        for taxon, share in shares.items():
            lines = [kb.lineage(p) for p in (kb.taxon(taxon).parents or (taxon,))]
            total += share * sum(above in line for line in lines) / len(lines)
        if total >= 0.9:
            return above, total
    return None, 0.0


def _candidate(kb: KnowledgeBase, table: Table, evidence: Evidence, taxon: int, share: float,
               order: Sequence[int]) -> Candidate:
    supports: list[str] = []
    opposes: list[str] = []
    rivals = [i for i in order[:8] if i != taxon]
    for seen in evidence.observations:
        if seen.character not in table.spans:
            continue
        chance = observation_likelihood(kb, table, seen, evidence)
        typical = float(np.mean(chance[rivals])) if rivals else 0.5
        ids = statements_for(kb, table.taxa[taxon], seen)
        if chance[taxon] >= 0.5 or chance[taxon] > 1.2 * typical:
            supports += ids
        elif chance[taxon] < 0.3 or chance[taxon] < 0.7 * typical:
            opposes += ids
    return Candidate(table.taxa[taxon], share, tuple(dict.fromkeys(supports)), tuple(dict.fromkeys(opposes)))


def statements_for(kb: KnowledgeBase, taxon: str, seen: Observation) -> tuple[str, ...]:
    """The statements about a taxon (or, for a cross, its parents) that an observation touches."""
    keys = (taxon, *kb.taxon(taxon).parents)
    told = {leaf for s in seen.states for leaf in below(kb, s)}
    out: list[str] = []
    for key in keys:
        found = about(kb, key, seen.character)[0]
        near = [s.id for s in found if told & {leaf for x in s.states for leaf in below(kb, x)}]
        out += near or [s.id for s in found]
        if out:
            break
    return tuple(out[:4])
