"""Counts of a key that overlap: told with the counts, and only where statements say so."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import build_key
from assistant.reasoning.key_overlaps import overlaps, settling, way_to
from assistant.reasoning.key_paths import paths
from assistant.reasoning.selection import species_below


def test_crappies_overlap_in_their_spines(kb: KnowledgeBase) -> None:
    """Either crappie has a count of the other in a few fish; another feature parts the two."""
    key = build_key(kb, species_below(kb, "pomoxis"))
    found = overlaps(kb, key)
    assert {o.taxon for o in found} == set(key.taxa) and all(o.statements for o in found)
    other = settling(kb, key, found)
    assert other is not None and other.character != key.couplets[0].character


def test_an_overlap_lies_inside_its_lead(kb: KnowledgeBase) -> None:
    """Counts told of are those that the lead allows, of a fish that the lead does not name."""
    for family in ("centrarchidae", "ictaluridae", "catostomidae"):
        key = build_key(kb, species_below(kb, family), "lab")
        for o in overlaps(kb, key):
            lead = key.couplet(o.couplet).leads[o.lead]
            assert o.taxon not in lead.taxa and o.low <= o.high
            assert (lead.low is None or o.low >= lead.low) and (lead.high is None or o.high <= lead.high)


def test_the_way_to_an_end(kb: KnowledgeBase) -> None:
    """The way back from the last step of a path is the path."""
    key = build_key(kb, species_below(kb, "esox"))
    for path in paths(key):
        last = path.steps[-1]
        assert way_to(key, last.couplet, last.lead) == tuple((s.couplet, s.lead) for s in path.steps)
