"""The rules of a place and day without a fish in hand."""

from __future__ import annotations

from datetime import date

from assistant.reasoning.outlook import Line, duties_at, outlook, outlooks
from tests.helpers.rule_cases import demo_book

BOOK = demo_book()


def line(place: str, day: str, taxon: str) -> Line:
    """The line under which one fish stands."""
    return next(x for x in outlook(place, date.fromisoformat(day), BOOK).lines if taxon in x.taxa)


def test_open_fish_of_a_water() -> None:
    """What is open, with bag, lengths and umbrella of the water: its own rule in place of the general one."""
    sunfish = line("vennimoor-lake", "2026-07-04", "lepomis-gibbosus")
    assert (sunfish.rule, sunfish.daily, sunfish.possession) == ("h14", 8, 8)
    assert [x.id for x in sunfish.overs] == ["h14-over"]
    crappie = line("ollimarsh-lake", "2026-06-01", "pomoxis-annularis")
    assert (crappie.daily, [(b.name, b.count) for b in crappie.shared]) == (15, [("qui-panfish-group", 30)])
    assert set(crappie.taxa) == {"pomoxis-annularis", "pomoxis-nigromaculatus"}


def test_when_it_opens() -> None:
    """A closed fish tells the day on which harvest opens; an open one the day on which it closes."""
    closed = line("threlwick-lake", "2026-04-20", "sander-vitreus").season
    assert (closed.mode, closed.next_open, closed.next_rule) == ("closed", date(2026, 5, 16), "h01")
    held = line("threlwick-lake", "2026-08-01", "sander-vitreus").season
    assert (held.mode, held.first, held.last) == ("harvest", date(2026, 5, 16), date(2027, 3, 15))
    released = line("threlwick-lake", "2026-06-10", "micropterus-dolomieu").season
    assert (released.mode, released.last, released.next_open) == (
        "catch-and-release", date(2026, 6, 26), date(2026, 6, 27))


def test_duties() -> None:
    """Bait, transport and gear duties are those of the place: no fish as bait only in the North zone."""
    north = {what for what, _ in duties_at("vennimoor-lake", date(2026, 7, 4), BOOK)}
    south = {what for what, _ in duties_at("threlwick-lake", date(2026, 7, 4), BOOK)}
    assert "no-fish-as-bait" in north - south
    assert {"kill-or-release-at-the-water", "drain-wells-and-buckets", "licence-from-16"} <= north & south
    assert ("artificial-lures-only", "h17") in duties_at("ketterfoss-below", date(2026, 7, 4), BOOK)


def test_listed_fish() -> None:
    """Protected and prohibited fish are told as such, not by a season."""
    assert line("lake-skarrowin", "2026-07-04", "acipenser-fulvescens").listed == "protected"
    assert line("ollimarsh-lake", "2026-07-04", "channa-argus").listed == "prohibited"


def test_closure_and_access() -> None:
    """A closure of the whole water and an age limit are told with their rules."""
    assert outlook("ketterfoss-above", date(2027, 2, 1), BOOK).closures == ("h16",)
    assert outlook("ketterfoss-above", date(2026, 7, 1), BOOK).closures == ()
    assert outlook("little-ommary-pond", date(2026, 7, 4), BOOK).under_age == 16


def test_outside_the_rule_year() -> None:
    """Outside the rule year nothing is told, and the year that is held is named."""
    found = outlook("corrabloom-reservoir", date(2026, 8, 20), BOOK)
    assert not found.held and found.lines == () and found.rule_year == ("2026-09-01", "2027-08-31")


def test_each_side_of_a_border_water() -> None:
    """A border water gives one outlook a side."""
    assert {o.position.jurisdiction for o in outlooks("twinmarrow-lake", date(2026, 7, 1), BOOK)} == {"hrw", "qui"}


def test_no_limit_is_told_as_stated() -> None:
    """"No limit" appears only where an order states it."""
    assert line("drennick-reservoir", "2026-10-10", "micropterus-nigricans").no_limit
    assert not line("drennick-reservoir", "2026-09-30", "micropterus-nigricans").no_limit
