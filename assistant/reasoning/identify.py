"""Name the fish: a posterior over taxa and crosses from what was seen, where, and how big (layer 3).

Every observation multiplies the odds by how often an ordinary observer would report it of each taxon. Place and size
weigh, they never exclude. A fish that fits nothing known is told as such.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import ANY, Scope, below, numbers
from assistant.reasoning.gather import gather
from assistant.reasoning.observed import NAMING, Candidate, Evidence, Hint, Identification, Observation, statements_for
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.place_prior import around, expand_places, is_real, narrowest, waters_of
from assistant.reasoning.size import stoutness
from assistant.reasoning.standing import Standing
from assistant.reasoning.tables import Table, character_block
from assistant.text import singular

Vector = npt.NDArray[np.float64]
Flags = npt.NDArray[np.bool_]
HEDGE = 0.55
"""How much of a hedged observation ("maybe", "looks like") counts; the rest is as if nothing was said."""
FLOOR = 0.006
"""No single observation counts more than this against a taxon."""
READING = 0.03
"""Chance that an observation typed in plain words was not meant as it was read (7 of 239 of the project's own
utterances of known meaning); a choice picked in answer to a question is taken as it is."""
GROUP_ERROR = 0.10
"""How often people use a group word ("bass", "bream") for a fish outside the group."""
GROUP_NEAR, GROUP_KIN = 0.35, 0.06
"""What the word is worth for a fish outside the group: where people call it so ("bass" for a rock bass; of another
family, where it bears the word in its name: a white bass), and where they do not but its family has members in it."""
STRICT_ERROR = 0.01
"""The same for a word that is hardly ever used of a fish outside the group (common practice, no source)."""
STRANGE, BESIDE_BEST = 0.12, 0.35
"""Chance below which, and share of the best fish's chance below which, what was seen speaks strongly against a fish."""
EITHER, COMPARED = 100.0, 25.0
"""How much likelier an asker wavers between fishes of which one is right, and has compared them before the catch was
told of (common practice, no source)."""
ONE_WAY = 0.7
"""What a likeness is worth for a fish that is taken for the one named and not the other way round, as a share of what
it is for a look-alike of it (common practice, no source)."""
LIKENESS, LIKE_KIN = 12.0, 0.35
"""How much likelier a fish or its listed look-alikes become when the catch is said to look like it, and what that is
worth for others of its family (common practice, no source)."""
LIKE_BUT = 0.35
"""What a likeness is worth for the fish itself where the asker goes on with "but": mostly it is another (common
practice, no source)."""
ALIKE, NAMED_ALIKE, NAMED_KIN = 0.7, 0.35, 0.12
"""What a likeness is worth for the fishes listed as look-alikes of the one named; and what a name given outright to the
catch is worth for these and for others of its family (common practice, no source)."""
ANSWERED, SALIENT = 1.3, 1.45
"""Powers of an answer to a question and of what is told of one's own accord. What can be answered is what the base
states of the fish, and what people mention sets it apart, so both say a little more than the chances alone. Fitted on
simulated fishes and checked with other seeds (``python -m tests.bench.simulation --powers``); what is told lies between
these, who err often (best 1.4), and fishes told in writing as published texts tell them (best from 1.8)."""
MUCH_BETTER, RIVAL = 2.5, 0.05
"""How much likelier a thing told is of the next fish that it disputes the first, and how likely that fish must be."""
TOWARD, OF_ITS_OWN, UNPROVEN_CROSS = 1.6, 1.3, 0.12
"""How much likelier a feature must be in one parent than in the other, or in a cross than in both, to speak for the
cross; and the weight of a cross for which nothing speaks so."""
MOST_SCOPED = 400
"""In a base of more taxa, sex, age and the like of the fish count for so many of the likeliest."""
SURE, LIKELY, BETWEEN = 0.95, 0.80, 0.75
"""Verdict thresholds on the posterior: one taxon (sure, likely), or the best three together (between)."""
SLACK = 0.25
"""Variance added for each thing told: people see and word a feature in more ways than the states allow."""
LOOSELY = 0.5
"""What a fish that is called by a word only in places counts beside those that bear it in their English names."""
OUTGROWN = 0.19
"""Fit of a size so far past the largest known that no fish is surely of the kind (common practice, no source)."""
REGULAR = frozenset({"always", "nearly-always", "usually", "often"})
"""Frequencies of a state that fits a taxon when it is seen."""
ODD = -2.6
"""Standard deviations below what the best candidate leads one to expect, at which nothing known fits."""


class Reported(NamedTuple):
    """What a thing told says of every taxon of a table: its chance, the logarithm of it, and where it speaks for a
    cross: toward the first parent, toward the second, and as a feature of the cross's own.
    """

    seen: Observation
    chance: Vector
    log: Vector
    toward: tuple[Flags, Flags, Flags]


@dataclass(frozen=True)
class Weighed:
    """Evidence against every taxon of a table: a vector of chances for each thing told, made once, and the prior."""

    kb: KnowledgeBase
    table: Table
    evidence: Evidence
    prior: Vector
    observed: tuple[Reported, ...]
    hinted: tuple[Vector, ...]
    powers: tuple[float, float]

    @cached_property
    def posterior(self) -> Vector:
        """The probability of each taxon of the table; sums to 1."""
        logs: Vector = np.log(self.prior)
        answered, salient = self.powers
        for told in self.observed:
            logs += (salient if _told(self.evidence, told.seen) else answered) * told.log
        for chance in self.hinted:
            logs += (salient if self.evidence.volunteered else answered) * np.log(chance)
        hints = [h for h in self.evidence.hints if h.kind in NAMING and h.seen]
        named = [x for h in hints for t in h.taxa for x in (t, *(self.kb.crosses_of(t) if h.loose else ()))]
        logs[self.table.standing.crosses] += np.log(cross_factor(self.table.standing, self.observed, named))
        weights = np.exp(logs - logs.max())
        return np.asarray(weights / weights.sum(), dtype=np.float64)


def weigh(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Weighed:
    """Evidence against every taxon of a table; what the table has no columns for is left out."""
    evidence = gather(kb, evidence)
    before = prior(kb, table, evidence)
    hinted = tuple(hint_likelihood(kb, table, h) for h in evidence.hints)
    likely = None
    if evidence.scope != ANY and len(table.taxa) > MOST_SCOPED:
        plain = weigh(kb, table, evidence._replace(scope=ANY)).posterior
        likely = np.argpartition(-plain, MOST_SCOPED)[:MOST_SCOPED]
    observed = tuple(reported(kb, table, o, evidence, likely)
                     for o in evidence.observations if o.character in table.spans)
    return Weighed(kb, table, evidence, before, observed, hinted, (ANSWERED, SALIENT))


def posterior(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector:
    """The probability of each taxon of the table; sums to 1."""
    return weigh(kb, table, evidence).posterior


def prior(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector:
    """How likely each taxon is before looking: where it lives, how wide-spread it is, how big or heavy it grows."""
    places = expand_places(kb, narrowest(kb, evidence.places))
    waters = waters_of(kb, (*places, *evidence.places))
    weights: Vector = table.standing.place_weights(places, is_real(kb, places), around(kb, places), waters)
    fit = size_fits(kb, table, evidence)
    if fit is not None:
        weights = weights * fit
    elif evidence.size_word:
        weights = weights * table.standing.word_weights(evidence.size_word)
    for taxon in evidence.excluded:
        if taxon in table.index:
            weights[table.index[taxon]] *= 0.01
    return np.asarray(np.maximum(weights, 1e-9), dtype=np.float64)


def size_fits(kb: KnowledgeBase, table: Table, evidence: Evidence) -> Vector | None:
    """How well the length or weight told fits each taxon, 0 to 1; None where neither is told."""
    if evidence.length:
        return table.standing.size_weights(evidence.length[0])
    if evidence.grams:
        return table.standing.size_weights(np.cbrt(evidence.grams / np.array([stoutness(kb, t) for t in table.taxa])))
    return None


def outgrown(kb: KnowledgeBase, table: Table, evidence: Evidence, lead: int) -> bool:
    """True where the length or weight told lies so far past the largest of the candidate that it is not sure."""
    fit = size_fits(kb, table, evidence)
    return fit is not None and float(fit[lead]) < OUTGROWN


def reported(kb: KnowledgeBase, table: Table, seen: Observation, evidence: Evidence,
             likely: npt.NDArray[np.int_] | None = None) -> Reported:
    """What an observation says of every taxon, kept for the next turn unless it holds for the ``likely`` alone."""

    def make() -> Reported:
        chance = observation_likelihood(kb, table, seen, evidence, likely)
        return Reported(seen, chance, np.log(chance), toward_cross(table.standing, seen.character, chance))

    if likely is not None:
        return make()
    size = evidence.length[1] if evidence.length else None
    return table.recent.recall((seen, evidence.scope, evidence.volunteered, size), make)


def observation_likelihood(kb: KnowledgeBase, table: Table, seen: Observation, evidence: Evidence,
                           likely: npt.NDArray[np.int_] | None = None) -> Vector:
    """How often an observer would report this of each taxon; what is known of the fish counts for ``likely`` ones."""
    rows = scoped_rows(kb, table, seen.character, evidence, likely)
    columns = reported_columns(kb, table, seen)
    start = table.spans[seen.character][0]
    if not columns:
        return np.ones(len(table.taxa))
    chance = np.asarray(rows[[c - start for c in columns]].sum(axis=0), dtype=np.float64)
    if seen.beside and (more := reported_columns(kb, table, seen._replace(states=seen.beside))):
        chance = np.sqrt(chance * rows[[c - start for c in more]].sum(axis=0))
    share = len(columns) / rows.shape[0]
    if not seen.seen:
        chance, share = 1.0 - chance, 1.0 - share
    if _told(evidence, seen):
        chance = (1 - READING) * chance + READING * max(share, 0.05)
    smallest = kb.character(seen.character).min_length
    if evidence.length and evidence.length[1] < smallest:
        chance = 0.25 * chance + 0.75 * chance.mean()
    if seen.hedged:
        chance = HEDGE * chance + (1 - HEDGE) * chance.mean()
    return np.asarray(np.maximum(chance, FLOOR))


def _told(evidence: Evidence, seen: Observation) -> bool:
    return evidence.volunteered and not seen.asked


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


def scoped_rows(kb: KnowledgeBase, table: Table, character: str, evidence: Evidence,
                likely: npt.NDArray[np.int_] | None = None) -> npt.NDArray[np.float32]:
    """The rows of a character, recomputed where a statement speaks of the sex, age, season, size or place known."""
    scope = evidence.scope
    rows = table.rows(character)
    if scope == ANY:
        return rows
    spoken_of = table.standing.scoped.get(character)[0]
    touched = [int(i) for i in (spoken_of if likely is None else np.intersect1d(spoken_of, likely))]
    if not touched:
        return rows
    held = table.recent.columns(character, scope)
    if missing := [i for i in touched if i not in held]:
        held |= scoped_columns(kb, table, character, scope, missing)
    told = {i: column for i in touched if (column := held[i]) is not None}
    if not told:
        return rows
    out = rows.copy()
    out[:, list(told)] = np.stack(list(told.values()), axis=1)
    return out


def scoped_columns(kb: KnowledgeBase, table: Table, character: str, scope: Scope,
                   touched: Sequence[int]) -> dict[int, npt.NDArray[np.float32] | None]:
    """What an observer reports of some taxa when so much is known of the fish; None where nothing is stated."""
    found = kb.character(character)
    a, b = table.spans[character]
    keys = [c if found.is_stated else c.partition("=")[2] for c in table.columns[a:b]]
    cells = [taxon_distribution(kb, table.taxa[i], character, scope) for i in touched]
    if not any(cells):
        return dict.fromkeys(touched)
    block, known = character_block(kb, found, keys, cells)
    return {i: block[:, n].copy() if known[n] else None for n, i in enumerate(touched)}


def hint_likelihood(kb: KnowledgeBase, table: Table, hint: Hint) -> Vector:
    """A group word or a likeness as evidence with an error rate, never as a filter."""
    standing = table.standing
    member = standing.membership(_among(standing, hint.taxa))
    if hint.kind == "either":
        chance = np.where(member, 1.0, 1.0 / (EITHER if hint.strict else COMPARED))
    elif hint.kind in ("like", "named"):
        alike_worth, kin_worth = (ALIKE, LIKE_KIN) if hint.kind == "like" else (NAMED_ALIKE, NAMED_KIN)
        near = {x.other for t in hint.taxa for x in kb.look_alikes(t)}
        mistaken = {x for t in hint.taxa for x in kb.taken_for(t)} - near
        alike = np.maximum(member, alike_worth * _among(standing, near)[: standing.count])
        alike = np.maximum(alike, ONE_WAY * alike_worth * _among(standing, mistaken)[: standing.count])
        alike = np.maximum(alike, kin_worth * _relatives(kb, standing, hint.taxa))
        if hint.kind == "like" and hint.loose:
            alike[_among(standing, hint.taxa)[: standing.count]] = LIKE_BUT
        chance = (1.0 + (LIKENESS - 1.0) * alike) / LIKENESS
    else:
        error = STRICT_ERROR if hint.strict else GROUP_ERROR
        called = np.full(standing.count, GROUP_KIN)
        where, weight = standing.called.get(singular(hint.word.split()[-1]) if hint.word else "")
        called[where] += (GROUP_NEAR - GROUP_KIN) * weight
        properly = np.zeros(standing.count, bool)
        properly[where] = weight >= 1.0
        if hint.loose and (properly & (member > 0)).any():
            member = np.where(properly, member, LOOSELY * member)
        inside = np.maximum(np.maximum(member, GROUP_NEAR * properly), called * _relatives(kb, standing, hint.taxa))
        chance = np.maximum((1 - error) * inside, 0.5 * error)
    if not hint.seen:
        chance = 1.0 - 0.9 * chance
    if hint.hedged:
        chance = HEDGE * chance + (1 - HEDGE) * chance.mean()
    return np.asarray(np.maximum(chance, FLOOR))


def _relatives(kb: KnowledgeBase, standing: Standing, taxa: Iterable[str]) -> Vector:
    out = np.zeros(standing.count)
    for family in sorted({kb.lineage(t)[-1] for t in taxa if kb.find("taxon", t)}):
        where, part = standing.kin.get(family)
        out[where] = np.maximum(out[where], part)
    return out


def _among(standing: Standing, taxa: Iterable[str]) -> npt.NDArray[np.bool_]:
    out = np.zeros(len(standing.taxa), bool)
    places = [i for t in taxa if (i := standing.index.get(t)) is not None]
    out[places] = True
    return out


def toward_cross(standing: Standing, character: str, chance: Vector) -> tuple[Flags, Flags, Flags]:
    """Where a report speaks for the first parent of a cross, for the second, or for the cross itself."""
    cross = standing.crosses
    a, b = chance[standing.first[cross]], chance[standing.second[cross]]
    own = np.isin(cross, standing.own.get(character)[0])
    return a > TOWARD * b, b > TOWARD * a, own & (chance[cross] > OF_ITS_OWN * np.maximum(a, b))


def cross_factor(standing: Standing, observed: Sequence[Reported], named: Iterable[str] = ()) -> Vector:
    """A cross counts in full only when features of both parents, or its own curated features, were seen, or when the
    asker names it.
    """
    first, second, special = (np.zeros(standing.crosses.size, bool) for _ in range(3))
    for told in observed:
        first |= told.toward[0]
        second |= told.toward[1]
        special |= told.toward[2]
    offered = np.isin(standing.crosses, [standing.index[t] for t in named if t in standing.index])
    unproven = np.maximum(UNPROVEN_CROSS, standing.common[standing.crosses])
    return np.where(special | offered | (first & second), 1.0, unproven)


def identify(kb: KnowledgeBase, table: Table, evidence: Evidence, most: int = 6) -> Identification:
    """The answer to "what did I catch": candidates, verdict, clashes, and the group that holds when no name does."""
    weighed = weigh(kb, table, evidence)
    weights = weighed.posterior
    order = [int(i) for i in np.argsort(-weights, kind="stable")]
    typical = typicality(weighed, order[0])
    candidates = tuple(_candidate(weighed, i, float(weights[i]), order) for i in order[:most])
    shares = dict(zip(table.taxa, weights.tolist(), strict=True))
    group, held = group_of(kb, table.standing, weights, candidates[0].taxon)
    clash = clashes(weighed, order[0])
    verdict = verdict_of(weights[order], evidence, typical, len(clash))
    small = bool(evidence.length and evidence.length[1] < 25.0)
    if small and verdict in ("sure", "likely"):
        verdict = "not-enough"
    if verdict in ("sure", "likely") and (undecided(weighed, order[0]) or disputed(weighed, order)):
        verdict = "between"
    lead_cross = kb.taxon(candidates[0].taxon).is_hybrid
    if verdict == "sure" and (lead_cross or outgrown(kb, table, evidence, order[0])):
        verdict = "likely"
    together = not clash or goes_together(weighed)
    if verdict in ("sure", "likely") and not together:
        verdict = "between"
    return Identification(candidates, verdict, typical, clash, group, held, shares, small, together)


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


def undecided(weighed: Weighed, lead: int) -> bool:
    """True when the asker wavers between fishes and nothing recorded of both parts the lead from another."""
    table = weighed.table
    rows = [(told.log, table.known[table.characters.index(told.seen.character)]) for told in weighed.observed]

    def apart(other: int) -> bool:
        told = (log[lead] - log[other] for log, known in rows if known[lead] and known[other])
        return float(sum(told)) >= float(np.log(TOWARD))

    offers = [{table.index[t] for t in h.taxa if t in table.index} for h in weighed.evidence.hints
              if h.kind == "either" and h.seen]
    return any(not apart(other) for offered in offers if lead in offered for other in offered - {lead})


def disputed(weighed: Weighed, order: Sequence[int]) -> bool:
    """True when the lead is not sure and a thing told fits the next fish, where there is one, much better."""
    if len(order) < 2:
        return False
    lead, second = order[:2]
    better = (told.log[second] - told.log[lead] for told in weighed.observed)
    shares = weighed.posterior
    open_yet = float(shares[lead]) < SURE and float(shares[second]) >= RIVAL
    return open_yet and float(max(better, default=0.0)) > float(np.log(MUCH_BETTER))


def typicality(weighed: Weighed, taxon: int) -> float:
    """How many standard deviations the observations lie from what a fish of the taxon would show (0 = as expected).

    What an observer would report of the taxon is compared with what was reported, in log chances; a character of
    which nothing is known in the taxon says nothing.
    """
    surprise = variance = 0.0
    table = weighed.table
    for seen in (told.seen for told in weighed.observed):
        columns = reported_columns(weighed.kb, table, seen)
        row = table.characters.index(seen.character)
        if seen.hedged or not columns or not table.known[row, taxon]:
            continue
        start, stop = table.spans[seen.character]
        chances = np.asarray(table.report[start:stop, taxon], dtype=np.float64)
        inside = float(chances[[c - start for c in columns]].sum())
        rest = np.delete(chances, [c - start for c in columns]) if seen.seen else np.array([max(1.0 - inside, 0.0)])
        parts = np.maximum(np.array([inside, *rest]), 1e-3)
        parts = parts / parts.sum()
        logs = np.log(parts)
        expected = float(parts @ logs)
        surprise += float(logs[0 if seen.seen else 1]) - expected
        variance += float(parts @ (logs - expected) ** 2) + SLACK
    return float(surprise / np.sqrt(variance)) if variance else 0.0


def clashes(weighed: Weighed, taxon: int) -> tuple[str, ...]:
    """Characters whose observation speaks strongly against the taxon; never what is stated of it."""
    against = (seen for seen, chance, *_ in weighed.observed
               if not seen.hedged and chance[taxon] < STRANGE and chance[taxon] < BESIDE_BEST * chance.max())
    return tuple(seen.character for seen in against if not _fits(weighed.kb, weighed.table.taxa[taxon], seen))


def goes_together(weighed: Weighed) -> bool:
    """True when some taxon has nothing that speaks strongly against it."""
    against = np.zeros(len(weighed.table.taxa), bool)
    for seen, chance, *_ in weighed.observed:
        if not seen.hedged:
            against |= (chance < STRANGE) & (chance < BESIDE_BEST * chance.max())
    return not bool(against.all())


def group_of(kb: KnowledgeBase, standing: Standing, weights: Vector, lead: str) -> tuple[str | None, float]:
    """The lowest genus or family that holds at least 90 in 100 of the probability, crosses shared by their parents."""
    first = kb.taxon(lead).parents or (lead,)
    for above in kb.lineage(first[0])[1:]:
        where, part = standing.kin.get(above)
        total = float(weights[where] @ part)
        if total >= 0.9:
            return above, total
    return None, 0.0


def _candidate(weighed: Weighed, taxon: int, share: float, order: Sequence[int]) -> Candidate:
    kb, table = weighed.kb, weighed.table
    supports: list[str] = []
    opposes: list[str] = []
    rivals = [i for i in order[:8] if i != taxon]
    for seen, chance, *_ in weighed.observed:
        typical = float(np.mean(chance[rivals])) if rivals else 0.5
        ids = statements_for(kb, table.taxa[taxon], seen)
        if _fits(kb, table.taxa[taxon], seen) or chance[taxon] >= 0.5 or chance[taxon] > 1.2 * typical:
            supports += ids
        elif chance[taxon] < 0.3 or chance[taxon] < 0.7 * typical:
            opposes += ids
    return Candidate(table.taxa[taxon], share, tuple(dict.fromkeys(supports)), tuple(dict.fromkeys(opposes)))


def _fits(kb: KnowledgeBase, taxon: str, seen: Observation) -> bool:
    """True for what is stated of the taxon, however rarely people report it."""
    return _within(kb, taxon, seen) or _usual(kb, taxon, seen)


def _usual(kb: KnowledgeBase, taxon: str, seen: Observation) -> bool:
    """True for a state seen that is stated of the taxon at any age, sex and season, not as an exception: it fits."""
    told = {leaf for state in seen.states for leaf in below(kb, state)}
    lasting = (s for s in kb.statements_on(taxon, seen.character) if not (s.sex or s.stage or s.breeding or s.season))
    return seen.seen and any(told.issuperset(below(kb, state)) for s in lasting if s.frequency in REGULAR
                             for state in s.states)


def _within(kb: KnowledgeBase, taxon: str, seen: Observation) -> bool:
    """True for a count or measure that lies within what is stated of the taxon: it fits, however rare it may be."""
    if seen.value is None or not seen.seen or seen.at_least or seen.at_most:
        return False
    told = numbers(kb, taxon, seen.character)
    return told is not None and told[0] <= seen.value and (seen.value_high or seen.value) <= told[1]
