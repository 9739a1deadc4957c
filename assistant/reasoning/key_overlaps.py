"""Choices of a key that do not part for sure: fishes that may be met on the other side of them (layer 3).

A count is cut where most fish part. What is recorded of a few of them may lie beyond the cut; whoever follows the key
with such a fish ends at another one. So it is with a mark that a good part of the fish of a kind has, whom the key
leads the other way because another fish has it more often. Both are told, together with a feature that settles it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT
from assistant.reasoning.evidence import about, below
from assistant.reasoning.key import Couplet, Key, Lead, build_key
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.selection import species_below

MOST_SETTLED = 4
"""Fishes up to which one further feature is looked for."""
OFTEN = 0.3
"""Share of a fish's kind from which a mark that leads elsewhere is told of."""


@dataclass(frozen=True, slots=True)
class Overlap:
    """A taxon that a lead (0 or 1) does not name, and by what a few of its fish take that lead: a count from ``low`` to
    ``high``, or (both None) the states of the lead with the ``share`` of its fish.
    """

    couplet: int
    lead: int
    taxon: str
    low: int | None
    high: int | None
    statements: tuple[str, ...]
    share: float = 0.0


def overlaps(kb: KnowledgeBase, key: Key) -> tuple[Overlap, ...]:
    """Every such taxon of a key, by couplet and lead."""
    out: list[Overlap] = []
    for couplet in key.couplets:
        for place, lead in enumerate(couplet.leads):
            beside = [t for t in couplet.leads[1 - place].taxa if t not in lead.taxa]
            for taxon in beside:
                found = _marked(kb, taxon, couplet, place) if lead.states else _counted(kb, taxon, couplet, place)
                if found is not None:
                    out.append(found)
    return tuple(out)


def _marked(kb: KnowledgeBase, taxon: str, couplet: Couplet, place: int) -> Overlap | None:
    """The overlap of a taxon of which a good part shows the states of a lead; None where few or no fish do."""
    found = taxon_distribution(kb, taxon, couplet.character, ADULT)
    if found is None:
        return None
    share = found.share({leaf for state in couplet.leads[place].states for leaf in below(kb, state)})
    return Overlap(couplet.number, place, taxon, None, None, found.statements, share) if share >= OFTEN else None


def _counted(kb: KnowledgeBase, taxon: str, couplet: Couplet, place: int) -> Overlap | None:
    found = _beyond(kb, taxon, couplet.character, couplet.leads[place])
    return None if found is None else Overlap(couplet.number, place, taxon, *found)


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
