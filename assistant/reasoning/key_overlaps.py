"""Counts of a key that do not part for sure: fishes that may be met on the other side of a choice (layer 3).

A count is cut where most fish part. What is recorded of a few of them may lie beyond the cut; whoever follows the key
with such a fish ends at another one. That is told with the count, together with a feature that settles it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about
from assistant.reasoning.key import Couplet, Key, Lead, build_key
from assistant.reasoning.selection import species_below

MOST_SETTLED = 4
"""Fishes up to which one further feature is looked for."""


@dataclass(frozen=True, slots=True)
class Overlap:
    """A taxon that a lead (0 or 1) does not name, with the counts by which a few of its fish take that lead."""

    couplet: int
    lead: int
    taxon: str
    low: int
    high: int
    statements: tuple[str, ...]


def overlaps(kb: KnowledgeBase, key: Key) -> tuple[Overlap, ...]:
    """Every such taxon of a key, by couplet and lead."""
    out: list[Overlap] = []
    for couplet in key.couplets:
        for place, lead in enumerate(couplet.leads):
            beside = [t for t in couplet.leads[1 - place].taxa if t not in lead.taxa]
            for taxon in beside if not lead.states else ():
                found = _beyond(kb, taxon, couplet.character, lead)
                if found is not None:
                    out.append(Overlap(couplet.number, place, taxon, *found))
    return tuple(out)


def _beyond(kb: KnowledgeBase, taxon: str, character: str, lead: Lead) -> tuple[int, int, tuple[str, ...]] | None:
    """The counts recorded of grown fish of a taxon that a lead allows, with the statements that say so."""
    lows, highs, said = [], [], []
    for species in species_below(kb, taxon) or (taxon,):
        for s in about(kb, species, character)[0]:
            if s.low is None or s.high is None or s.stage == "juvenile":
                continue
            low = ceil(s.low) if lead.low is None else max(ceil(s.low), lead.low)
            high = floor(s.high) if lead.high is None else min(floor(s.high), lead.high)
            if low <= high:
                lows.append(low)
                highs.append(high)
                said.append(s.id)
    return (min(lows), max(highs), tuple(said)) if lows else None


def settling(kb: KnowledgeBase, key: Key, found: Sequence[Overlap]) -> Couplet | None:
    """Another feature that parts the fishes which overlap at one couplet; None where they are many or none does."""
    couplet = key.couplet(found[0].couplet)
    taxa = tuple(dict.fromkeys((*(o.taxon for o in found),
                                *(t for o in found for t in couplet.leads[o.lead].taxa))))
    if not 1 < len(taxa) <= MOST_SETTLED or any(couplet.leads[o.lead].goes_to for o in found):
        return None
    made = build_key(kb, taxa, key.look, without=(couplet.character,))
    return made.couplets[0] if len(made.couplets) == len(taxa) - 1 else None


def way_to(key: Key, number: int, lead: int) -> tuple[tuple[int, int], ...]:
    """The couplets and leads from the first to a lead of a couplet."""
    steps = [(number, lead)]
    while (back := key.couplet(steps[0][0]).back) > 0:
        leads = key.couplet(back).leads
        steps.insert(0, (back, 0 if leads[0].goes_to == steps[0][0] else 1))
    return tuple(steps)
