"""The rule book of the shipped base and the family tree that it asks."""

from __future__ import annotations

from dataclasses import replace

from tests.helpers.rule_cases import demo_book

BOOK = demo_book()


def test_parents_of_crosses_come_from_the_base() -> None:
    """A cross of the base has the parents stated there; every listed cross is one."""
    assert BOOK.lineage.parents("sander-canadensis-x-sander-vitreus") == ("sander-canadensis", "sander-vitreus")
    assert all(len(parents) == 2 for parents in BOOK.lineage.crosses.values())
    assert len(BOOK.lineage.crosses) >= 30
    assert "lepomis-macrochirus" not in BOOK.lineage.crosses


def test_a_cross_outside_the_base_is_read_from_its_id() -> None:
    """A cross that the base does not hold still has two parents, in either order of naming."""
    assert BOOK.lineage.parents("ambloplites-rupestris-x-esox-niger") == ("ambloplites-rupestris", "esox-niger")
    assert BOOK.lineage.cross_of("sander-vitreus", "sander-canadensis") == "sander-canadensis-x-sander-vitreus"
    assert BOOK.lineage.cross_of("esox-niger", "amia-calva") == "amia-calva-x-esox-niger"


def test_group_membership() -> None:
    """A group holds its members, the members of included groups, and crosses of two members only."""
    assert BOOK.in_group("lepomis-macrochirus", "qui-panfish-group")
    assert BOOK.in_group("pomoxis-annularis-x-pomoxis-nigromaculatus", "qui-panfish-group")
    assert BOOK.in_group("lepomis-cyanellus-x-lepomis-macrochirus", "qui-sunfish-group")
    assert not BOOK.in_group("lepomis-gibbosus-x-lepomis-macrochirus", "qui-sunfish-group")
    assert not BOOK.in_group("esox-lucius", "qui-panfish-group")


def test_groups_that_include_each_other_end() -> None:
    """A circle of groups is no endless loop."""
    looped = {**BOOK.groups, "qui-crappie-group": replace(
        BOOK.groups["qui-crappie-group"], includes=("qui-panfish-group",))}
    assert not replace(BOOK, groups=looped).in_group("esox-lucius-x-esox-niger", "qui-panfish-group")


def test_placements() -> None:
    """A border water has one placement a side, a river in parts one a segment."""
    assert {p.jurisdiction for p in BOOK.positions("twinmarrow-lake")} == {"hrw", "qui"}
    assert {p.place for p in BOOK.positions("ketterfoss-river")} == {"ketterfoss-above", "ketterfoss-below"}
    assert BOOK.positions("no-such-lake") == ()
