"""The ways through a key: its ends, the steps to them, and each lead as an observation (layer 3)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT
from assistant.reasoning.evidence import below
from assistant.reasoning.key import Couplet, Key, Lead, observation_of
from assistant.reasoning.observed import Evidence
from assistant.reasoning.observer import taxon_distribution


@dataclass(frozen=True, slots=True)
class Step:
    """A couplet and the lead taken (0 or 1)."""

    couplet: int
    lead: int


@dataclass(frozen=True, slots=True)
class Path:
    """The steps from the first couplet to an end, and the taxa named there."""

    steps: tuple[Step, ...]
    taxa: tuple[str, ...]


def paths(key: Key) -> tuple[Path, ...]:
    """Every way through a key, in the order of its couplets."""
    return tuple(_below(key, 1, ())) if key.couplets else (Path((), key.taxa),)


def _below(key: Key, number: int, steps: tuple[Step, ...]) -> Iterator[Path]:
    for i, lead in enumerate(key.couplet(number).leads):
        here = (*steps, Step(number, i))
        if lead.goes_to:
            yield from _below(key, lead.goes_to, here)
        else:
            yield Path(here, lead.taxa)


def evidence_of(key: Key, path: Path) -> Evidence:
    """All that was seen on the way to an end."""
    seen = []
    for step in path.steps:
        couplet = key.couplet(step.couplet)
        seen.append(observation_of(couplet.character, couplet.leads[step.lead]))
    return Evidence(tuple(seen))


def share_of_lead(kb: KnowledgeBase, taxon: str, couplet: Couplet, lead: int) -> float:
    """The share of a taxon's grown fish that take a lead; a half where nothing is known of the character."""
    found = taxon_distribution(kb, taxon, couplet.character, ADULT)
    if found is None:
        return 0.5
    here, there = (_amount(kb, found.shares, couplet.leads[i]) for i in (lead, 1 - lead))
    return here / (here + there) if here + there else 0.5


def _amount(kb: KnowledgeBase, shares: Mapping[str, float], lead: Lead) -> float:
    if lead.states:
        return sum(shares.get(leaf, 0.0) for leaf in {x for s in lead.states for x in below(kb, s)})
    return sum(v for k, v in shares.items() if (lead.high is None or int(k) <= lead.high)
               and (lead.low is None or int(k) >= lead.low))


def expected_steps(kb: KnowledgeBase, key: Key) -> float:
    """Couplets read on average to an end, each taxon equally likely, its fish spread over the leads by their shares."""
    if not key.couplets:
        return 0.0
    total = 0.0
    for taxon in key.taxa:
        for path in paths(key):
            if taxon not in path.taxa:
                continue
            chance = 1.0
            for step in path.steps:
                couplet = key.couplet(step.couplet)
                if taxon in couplet.leads[1 - step.lead].taxa:
                    chance *= share_of_lead(kb, taxon, couplet, step.lead)
            total += chance * len(path.steps)
    return total / len(key.taxa)
