"""Counts of a key that overlap: told with the counts, and only where statements say so."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import build_key
from assistant.reasoning.key_overlaps import OFTEN, overlaps, settling, way_to
from assistant.reasoning.key_paths import paths
from assistant.reasoning.selection import species_below


def test_crappies_overlap_in_their_spines(kb: KnowledgeBase) -> None:
    """Either crappie has a count of the other in a few fish; another feature parts the two."""
    key = build_key(kb, species_below(kb, "pomoxis"))
    found = overlaps(kb, key)
    assert {o.taxon for o in found} == set(key.taxa) and all(o.statements for o in found)
    other = settling(kb, key, found)
    assert other is not None and other.character != key.couplets[0].character


def test_a_mark_of_a_cross_is_told(kb: KnowledgeBase) -> None:
    """The white tail tip that leads to the walleye is met in saugeyes, too; it is told with its share."""
    cross = "sander-canadensis-x-sander-vitreus"
    key = build_key(kb, ("sander-vitreus", "sander-canadensis", cross))
    found = [o for o in overlaps(kb, key) if o.taxon == cross]
    assert found and all(o.low is None and o.share >= OFTEN and o.statements for o in found)


def test_an_overlap_lies_inside_its_lead(kb: KnowledgeBase) -> None:
    """Counts told of are those that the lead allows, of a fish that the lead does not name."""
    for family in ("centrarchidae", "ictaluridae", "catostomidae"):
        key = build_key(kb, species_below(kb, family), "lab")
        for o in overlaps(kb, key):
            lead = key.couplet(o.couplet).leads[o.lead]
            assert o.taxon not in lead.taxa
            if o.low is None or o.high is None:
                assert lead.states and o.share >= OFTEN
                continue
            assert o.low <= o.high
            assert (lead.low is None or o.low >= lead.low) and (lead.high is None or o.high <= lead.high)


def test_the_way_to_an_end(kb: KnowledgeBase) -> None:
    """The way back from the last step of a path is the path."""
    key = build_key(kb, species_below(kb, "esox"))
    for path in paths(key):
        last = path.steps[-1]
        assert way_to(key, last.couplet, last.lead) == tuple((s.couplet, s.lead) for s in path.steps)
