"""Lessons find their fishes by names, groups and places."""

from __future__ import annotations

import pytest

from assistant.errors import UsageError
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.selection import find_place, find_taxon, select, species_below


def test_names_groups_and_families_are_found(kb: KnowledgeBase) -> None:
    """English names, plurals, groups and genera lead to their species."""
    assert find_taxon(kb, "Bluegill") == "lepomis-macrochirus"
    assert set(select(kb, ["bluegill", "walleye"])) == {"lepomis-macrochirus", "sander-vitreus"}
    assert set(species_below(kb, find_taxon(kb, "pikes"))) == set(species_below(kb, "esox"))
    assert len(select(kb, [], group="sunfishes")) >= 10


def test_a_family_that_is_also_a_group_does_not_run_in_circles(kb: KnowledgeBase) -> None:
    """A group that has a family of the same name as its member spreads out to the species of the family."""
    assert len(species_below(kb, "centrarchidae")) > 30


def test_places_narrow(kb: KnowledgeBase) -> None:
    """A place keeps the fishes met there, by name or code."""
    here = select(kb, [], group="true sunfishes", place="US-OH")
    assert "lepomis-macrochirus" in here and "lepomis-miniatus" not in here
    assert find_place(kb, "Ohio") == find_place(kb, "us-oh")


@pytest.mark.parametrize("name", ["clownfish", "", "zzz"])
def test_unknown_names_are_refused(kb: KnowledgeBase, name: str) -> None:
    """A fish that the base lacks is named as lacking, never replaced by the nearest string."""
    with pytest.raises(UsageError):
        select(kb, [name])


def test_unknown_place_is_refused(kb: KnowledgeBase) -> None:
    """A place that the base lacks is told as such."""
    with pytest.raises(UsageError):
        select(kb, [], place="Atlantis")
