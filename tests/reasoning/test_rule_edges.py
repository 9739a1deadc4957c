"""The thirty edge cases of fishing rules, numbered; each test says what is promised there."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, time
from decimal import Decimal

import pytest

from assistant.model.regulations import LengthLimit, Placement, Rule, SeasonWindow
from assistant.reasoning import catch as c
from assistant.reasoning.legality import verdict
from assistant.reasoning.verdict import Ask, Assumed, Remark, Verdict, Why, Word
from tests.helpers.rule_cases import at, demo_book, extended

BOOK = demo_book()
BLUEGILL, WALLEYE, LARGEMOUTH = "lepomis-macrochirus", "sander-vitreus", "micropterus-nigricans"


def made_up(name: str, **fields: object) -> Rule:
    """A rule of Quillander invented for one test."""
    plain = Rule(name, name.upper(), name, ("quillander-2026",), "water", ("ollimarsh-lake",), (), "replace-fields",
                 "2026-01-01", "2026-12-31")
    return replace(plain, **fields)  # type: ignore[arg-type]


def told(found: Verdict) -> tuple[Word, Why]:
    """Word and reason."""
    return found.word, found.reason.why


@pytest.mark.parametrize(("effect", "low", "low_in", "high", "high_in", "length", "word"), [
    ("keep-within", "15", True, None, False, "15 in", Word.KEEP),
    ("keep-within", "15", False, None, False, "15 in", Word.RELEASE),
    ("keep-within", None, False, "18", True, "18 in", Word.KEEP),
    ("keep-within", None, False, "18", False, "18 in", Word.RELEASE),
    ("release-within", "13", True, "17", True, "13 in", Word.RELEASE),
    ("release-within", "13", False, "17", True, "13 in", Word.KEEP),
    ("release-within", "13", True, "17", True, "17 in", Word.RELEASE),
    ("release-within", "13", True, "17", False, "17 in", Word.KEEP),
    ("release-within", "13", True, "17", True, "17.01 in", Word.KEEP),
])
def test_01_exactly_on_a_bound(
    effect: str, low: str | None, low_in: bool, high: str | None, high_in: bool, length: str, word: Word,
) -> None:
    """A fish exactly on a bound is inside when the bound is included, and outside when it is not."""
    limit = LengthLimit("edge", effect, Decimal(low) if low else None, low_in, Decimal(high) if high else None,
                        high_in, "IN")
    book = extended(BOOK, made_up("e1", groups=("qui-bass-group",), lengths=("edge",)), lengths=[limit])
    assert verdict(at("ollimarsh-lake", "2026-06-01", LARGEMOUTH, length=length, kept=()), book).word is word


def test_02_length_in_the_other_unit() -> None:
    """15 in is 38.1 cm exactly: over a 38 cm minimum, and never rounded up to a 38.2 cm one."""
    for minimum, word in (("38", Word.KEEP), ("38.1", Word.KEEP), ("38.2", Word.RELEASE)):
        limit = LengthLimit("edge", "keep-within", Decimal(minimum), True, None, False, "CentiM")
        book = extended(BOOK, made_up("e2", groups=("qui-bass-group",), lengths=("edge",)), lengths=[limit])
        assert verdict(at("ollimarsh-lake", "2026-06-01", LARGEMOUTH, length="15 in"), book).word is word


def test_03_a_range_that_straddles_a_bound() -> None:
    """14 to 15.5 in against a minimum of 15 is unknown; a range wholly on one side is decided."""
    unsure = verdict(at("ollimarsh-lake", "2026-06-01", WALLEYE, length="14-15.5 in"), BOOK)
    assert told(unsure) == (Word.UNKNOWN, Why.LENGTH_UNSURE) and unsure.ask is Ask.LENGTH
    assert verdict(at("ollimarsh-lake", "2026-06-01", WALLEYE, length="13-14 in"), BOOK).word is Word.RELEASE
    assert verdict(at("ollimarsh-lake", "2026-06-01", WALLEYE, length="15-16 in"), BOOK).word is Word.KEEP


def test_04_only_fork_length_known() -> None:
    """A fork length under a total-length rule is unknown and asks for the total length; where no length matters
    it does no harm."""
    found = verdict(at("ollimarsh-lake", "2026-06-01", WALLEYE, length="fork 16 in"), BOOK)
    assert told(found) == (Word.UNKNOWN, Why.LENGTH_METHOD) and found.ask is Ask.TOTAL_LENGTH
    assert verdict(at("ollimarsh-lake", "2026-06-01", BLUEGILL, length="fork 7 in"), BOOK).word is Word.KEEP


def test_05_torn_tail_is_measured_as_it_is() -> None:
    """Nothing is added for a torn tail; the verdict says that the fish counts as measured."""
    found = verdict(at("ollimarsh-lake", "2026-06-01", WALLEYE, length="14.8 in", tail_torn=True), BOOK)
    assert found.word is Word.RELEASE
    assert (Remark.MEASURED_AS_IT_IS, "") in found.remarks


def test_06_two_windows_in_one_rule() -> None:
    """Harvest until 31 October, release only from 1 November, in one rule, with the next harvest day told."""
    def trout(day: str) -> Verdict:
        return verdict(at("copperlathe-tailwater", day, "salmo-trutta", length="17 in", moment=time(9)), BOOK)
    assert trout("2026-10-31").word is Word.KEEP
    after = trout("2026-11-01")
    assert told(after) == (Word.RELEASE, Why.RELEASE_ONLY)
    assert after.reason.season is not None and after.reason.season.next_open == date(2027, 3, 1)


@pytest.mark.parametrize(("day", "why"), [
    ("2028-02-28", Why.RELEASE_ONLY), ("2028-02-29", Why.RELEASE_ONLY), ("2028-03-01", Why.MAY_KEEP),
])
def test_07_the_29th_of_february(day: str, why: Why) -> None:
    """In a leap year a window to the last day of February holds on the 29th."""
    sets = {k: replace(s, valid_through="2028-12-31") for k, s in BOOK.rule_sets.items()}
    rules = {k: replace(r, valid_through="2028-12-31") for k, r in BOOK.rules.items()}
    book = replace(BOOK, rule_sets=sets, rules=rules)
    found = verdict(at("copperlathe-tailwater", day, "salmo-trutta", length="17 in", moment=time(9)), book)
    assert found.reason.why is why


@pytest.mark.parametrize(("opens", "closes", "day", "word"), [
    ("nth:3-Sat-May", "fixed:05-16", "2026-05-16", Word.KEEP),
    ("nth:3-Sat-May", "fixed:05-16", "2026-05-17", Word.CLOSED),
    ("nth:3-Sat-May", "fixed:05-17", "2026-05-17", Word.KEEP),
    ("nth:3-Sat-May", "fixed:05-15", "2026-06-01", Word.KEEP),
])
def test_08_floating_opener_and_fixed_closer(opens: str, closes: str, day: str, word: Word) -> None:
    """A closer on or after the floating opener ends the same year; one before it ends the next year."""
    window = SeasonWindow("edge", opens, closes, "harvest", False)
    book = extended(BOOK, made_up("e8", groups=("qui-sunfish-group",), seasons=("edge",)), seasons=[window])
    assert verdict(at("ollimarsh-lake", day, BLUEGILL), book).word is word


def test_09_open_on_one_bank_only() -> None:
    """Where one side is open and the other closed, an unknown side gives release, and the side is asked."""
    found = verdict(at("twinmarrow-lake", "2026-05-01", WALLEYE, length="16 in"), BOOK)
    assert found.word is Word.RELEASE and found.ask is Ask.SIDE
    assert Assumed.STRICTER_SIDE in found.assumed
    hrw = verdict(at("twinmarrow-hrw", "2026-05-01", WALLEYE, length="16 in"), BOOK)
    qui = verdict(at("twinmarrow-qui", "2026-05-01", WALLEYE, length="16 in"), BOOK)
    assert (hrw.word, qui.word) == (Word.CLOSED, Word.KEEP)


def test_10_the_rule_year_changes_at_midnight() -> None:
    """Fish kept on the last day of a rule year no longer count for the next day, but still for possession, and the
    next day stands under the next rule set."""
    yesterday = c.Kept(25, (BLUEGILL,), today=False)
    same = at("threlwick-lake", "2027-03-31", BLUEGILL, kept=(replace(yesterday, today=True),))
    assert verdict(same, BOOK).reason.why is Why.BAG
    assert verdict(at("threlwick-lake", "2027-04-01", BLUEGILL, kept=(yesterday,)), BOOK).reason.why \
        is Why.OUTSIDE_RULE_YEAR
    new_set = replace(BOOK.rule_sets["harrowelt-2026"], id="harrowelt-2027", valid_from="2027-04-01",
                      valid_through="2028-03-31")
    new_rule = replace(BOOK.rules["h05"], id="h05-2027", daily=10, possession=30, valid_from="2027-04-01",
                       valid_through="2028-03-31")
    book = replace(BOOK, rule_sets={**BOOK.rule_sets, new_set.id: new_set},
                   rules={**BOOK.rules, new_rule.id: new_rule})
    after = verdict(at("threlwick-lake", "2027-04-01", BLUEGILL, kept=(yesterday,)), book)
    assert (after.word, after.reason.rule) == (Word.KEEP, "h05-2027")
    more = (yesterday, c.Kept(5, (BLUEGILL,)))
    assert verdict(at("threlwick-lake", "2027-04-01", BLUEGILL, kept=more), book).reason.why is Why.POSSESSION


def test_11_umbrella_full_while_its_parts_are_not() -> None:
    """30 panfish fill the umbrella though sunfish and crappie have room; all counts are reported."""
    kept = (c.Kept(15, (BLUEGILL,)), c.Kept(10, ("pomoxis-annularis",)), c.Kept(5, ("perca-flavescens",)))
    found = verdict(at("ollimarsh-lake", "2026-06-01", "pomoxis-nigromaculatus", length="10 in", kept=kept), BOOK)
    assert told(found) == (Word.RELEASE, Why.UMBRELLA)
    assert {(t.name, t.have, t.limit) for t in found.tallies if t.kind != "possession"} == {
        ("qui-crappie-group", 10, 15), ("qui-panfish-group", 30, 30)}


def test_12_sub_limit_full_while_the_aggregate_is_not() -> None:
    """Two lake trout fill their sub-limit in a bag of five; a brook trout still fits."""
    kept = (c.Kept(2, ("salvelinus-namaycush",)),)
    lake = verdict(at("lake-skarrowin", "2026-07-01", "salvelinus-namaycush", kept=kept), BOOK)
    assert told(lake) == (Word.RELEASE, Why.SUB_LIMIT) and lake.binding is not None and lake.binding.limit == 2
    assert verdict(at("lake-skarrowin", "2026-07-01", "salvelinus-fontinalis", kept=kept), BOOK).word is Word.KEEP


def test_13_a_looser_water_rule_stays_looser() -> None:
    """A water rule looser than the general one is not tightened by it."""
    found = verdict(at("drennick-reservoir", "2026-06-01", LARGEMOUTH, length="12 in", kept=()), BOOK)
    assert found.word is Word.KEEP
    assert any((r.rule, r.field, r.by) == ("q01", "length", "q10") for r in found.replaced)


def test_14_an_order_that_loosens() -> None:
    """A salvage order lifts bag and length for game fish, but never a prohibition."""
    kept = (c.Kept(40, (LARGEMOUTH,), c.measured(18, "in")),)
    found = verdict(at("drennick-reservoir", "2026-10-10", LARGEMOUTH, length="15 in", kept=kept), BOOK)
    assert (found.word, found.reason.rule) == (Word.KEEP, "q14")
    assert (Remark.ORDER_IN_FORCE, "q14") in found.remarks
    assert verdict(at("drennick-reservoir", "2026-11-01", LARGEMOUTH, length="15 in"), BOOK).word is Word.RELEASE
    assert verdict(at("drennick-reservoir", "2026-10-10", "channa-argus"), BOOK).word is Word.DO_NOT_RELEASE


def test_15_an_order_without_end() -> None:
    """An order without an end date holds until it is rescinded, the day of rescission included."""
    order = made_up("eo", layer="emergency", all_fish=True, seasons=("edge",), valid_from="2026-06-01",
                    valid_through="", order_number="EO-26-99")
    window = SeasonWindow("edge", "fixed:01-01", "fixed:12-31", "closed", False)
    book = extended(BOOK, order, seasons=[window])
    assert verdict(at("ollimarsh-lake", "2026-05-31", BLUEGILL), book).word is Word.KEEP
    assert verdict(at("ollimarsh-lake", "2026-12-30", BLUEGILL), book).word is Word.CLOSED
    ended = extended(book, replace(order, rescinded_on="2026-08-01"))
    assert verdict(at("ollimarsh-lake", "2026-08-01", BLUEGILL), ended).word is Word.CLOSED
    assert verdict(at("ollimarsh-lake", "2026-08-02", BLUEGILL), ended).word is Word.KEEP


def test_16_same_lake_name_in_two_jurisdictions() -> None:
    """A name that fits two places is asked about, never guessed."""
    catch = replace(at("ollimarsh-lake", "2026-06-01", BLUEGILL), places=("ollimarsh-lake", "vennimoor-lake"))
    found = verdict(catch, BOOK)
    assert told(found) == (Word.UNKNOWN, Why.SEVERAL_PLACES) and found.ask is Ask.PLACE


def test_17_river_named_but_not_the_segment() -> None:
    """Without the segment the stricter one holds, and the segment is asked where it would change the word."""
    found = verdict(at("ketterfoss-river", "2026-06-20", "salmo-trutta", length="35 cm"), BOOK)
    assert told(found) == (Word.RELEASE, Why.RELEASE_ONLY) and found.reason.rule == "h17"
    assert found.ask is Ask.SEGMENT and Assumed.STRICTER_PART in found.assumed


def test_18_tributary_of_a_special_water() -> None:
    """An inlet or tributary is not covered by the rule of the water: the zone's and general rules hold there."""
    kept = (c.Kept(8, (BLUEGILL,)),)
    lake = at("vennimoor-lake", "2026-07-04", BLUEGILL, kept=kept)
    inlet = verdict(replace(lake, away=True), BOOK)
    assert verdict(lake, BOOK).word is Word.RELEASE
    assert (inlet.word, inlet.reason.rule) == (Word.KEEP, "h05")
    assert (Remark.NOT_COVERED_BY_WATER_RULE, "") in inlet.remarks


def test_19_private_pond() -> None:
    """For a private pond nothing is known."""
    found = verdict(at("ollimarsh-lake", "2026-06-01", BLUEGILL, private=True), BOOK)
    assert told(found) == (Word.UNKNOWN, Why.PRIVATE_WATER)


def test_20_species_absent_from_the_rules() -> None:
    """A fish that no rule names is unknown, never without limit."""
    found = verdict(at("ollimarsh-lake", "2026-07-01", "lepisosteus-osseus", length="30 in"), BOOK)
    assert told(found) == (Word.UNKNOWN, Why.NO_RULE) and not found.acts


def test_21_prohibited_look_alike_of_a_protected_species() -> None:
    """When one candidate must go back and the other must not, no act is lawful for certain."""
    found = verdict(at("threlwick-lake", "2026-07-01", "acipenser-fulvescens", "neogobius-melanostomus"), BOOK)
    assert told(found) == (Word.UNKNOWN, Why.NO_LAWFUL_ACT) and found.ask is Ask.FISH
    assert (Remark.NEVER_CARRY_ALIVE, "") in found.remarks


def test_22_dead_fish_that_must_be_released() -> None:
    """A dead fish that may not be kept still goes back."""
    found = verdict(at("threlwick-lake", "2026-08-01", "esox-lucius", length="75 cm", dead=True), BOOK)
    assert found.word is Word.RELEASE and (Remark.DEAD_STILL_GOES_BACK, "h02") in found.remarks


def test_23_deep_hooked_fish_of_illegal_size() -> None:
    """A deep-hooked fish that may not be kept is let go with the line cut."""
    found = verdict(at("threlwick-lake", "2026-08-01", "esox-lucius", length="75 cm", deep_hooked=True), BOOK)
    assert found.word is Word.RELEASE and (Remark.CUT_THE_LINE, "h02") in found.remarks


def test_24_asking_before_fishing() -> None:
    """With no fish yet there is no verdict, only the rules: season, bag and lengths of the place and day."""
    from assistant.reasoning.outlook import outlook

    assert told(verdict(at("threlwick-lake", "2026-08-01"), BOOK)) == (Word.UNKNOWN, Why.NO_FISH)
    lines = {line.rule: line for line in outlook("threlwick-lake", date(2026, 8, 1), BOOK).lines}
    assert lines["h02"].season.mode == "harvest" and lines["h02"].daily == 4
    assert [x.id for x in lines["h02"].lengths] == ["h02-slot"] and [x.id for x in lines["h02"].overs] == ["h02-over"]


def test_25_child_at_the_pond_with_an_adult_holding_the_rod() -> None:
    """The angler is whoever holds the rod: closed for an adult, open to a child, asked when not said."""
    def pond(age: int | None) -> Verdict:
        return verdict(at("little-ommary-pond", "2026-07-11", "lepomis-gibbosus", age=age), BOOK)
    assert told(pond(41)) == (Word.CLOSED, Why.NOT_FOR_THIS_ANGLER)
    assert told(pond(16)) == (Word.CLOSED, Why.NOT_FOR_THIS_ANGLER)
    assert pond(15).word is Word.KEEP
    assert told(pond(None)) == (Word.UNKNOWN, Why.AGE_UNSAID) and pond(None).ask is Ask.AGE


def test_26_a_question_about_yesterday() -> None:
    """A past day is judged by the rules of that day."""
    assert verdict(at("threlwick-lake", "2026-05-15", WALLEYE, length="40 cm"), BOOK).word is Word.CLOSED
    assert verdict(at("threlwick-lake", "2026-05-16", WALLEYE, length="40 cm"), BOOK).word is Word.KEEP


def test_27_kept_count_unknown() -> None:
    """With no count said the verdict is keep, on the assumption of fewer than the limit, which is asked."""
    found = verdict(at("vennimoor-lake", "2026-07-04", BLUEGILL, length="17 cm"), BOOK)
    assert found.word is Word.KEEP and Assumed.NOTHING_KEPT in found.assumed and found.ask is Ask.KEPT
    assert found.binding is not None and (found.binding.have, found.binding.limit) == (0, 8)


def test_28_local_slang_is_a_candidate_set() -> None:
    """"Bream" is judged as every fish of the group, so that the redear's sub-limit can still bind."""
    kept = (c.Kept(10, ("lepomis-microlophus",)),)
    found = verdict(at("corrabloom-reservoir", "2026-10-01", "msv-bream-group", kept=kept), BOOK)
    assert told(found) == (Word.RELEASE, Why.SUB_LIMIT) and found.ask is Ask.FISH


def test_29_group_name_only() -> None:
    """"Sunfish" alone is enough where one group rule covers every member; a genus takes the named members."""
    for name in ("hrw-sunfish-group", "lepomis"):
        found = verdict(at("threlwick-lake", "2026-07-04", name, length="17 cm", kept=()), BOOK)
        assert found.word is Word.KEEP and Assumed.GROUP_MEMBERS in found.assumed


def test_30_ice_where_the_season_depends_on_open_water() -> None:
    """A season of open water only is closed through the ice, open without, and asked when not said."""
    window = SeasonWindow("edge", "fixed:01-01", "fixed:12-31", "harvest", True)
    book = extended(BOOK, made_up("e30", groups=("qui-sunfish-group",), seasons=("edge",)), seasons=[window])

    def fish(on_ice: bool | None) -> Verdict:
        return verdict(at("ollimarsh-lake", "2026-12-20", BLUEGILL, on_ice=on_ice), book)
    assert told(fish(True)) == (Word.CLOSED, Why.CLOSED_ICE)
    assert fish(False).word is Word.KEEP
    assert told(fish(None)) == (Word.UNKNOWN, Why.ICE_UNSAID) and fish(None).ask is Ask.ICE


def test_tie_gives_the_stricter_value_and_a_conflict() -> None:
    """Two rules of equal rank that disagree: the stricter holds, and the curator is told."""
    twin = made_up("twin", layer="jurisdiction", places=("qui",), override="base-rule", groups=("qui-sunfish-group",),
                   daily=12, aggregate="qui-sunfish-group")
    kept = (c.Kept(12, (BLUEGILL,)),)
    found = verdict(at("ollimarsh-lake", "2026-06-01", BLUEGILL, kept=kept), extended(BOOK, twin))
    assert told(found) == (Word.RELEASE, Why.BAG) and found.reason.rule == "twin"
    assert [(x.field, {x.first, x.second}) for x in found.conflicts] == [("bag", {"q02", "twin"})]


def test_silent_hybrid_takes_the_stricter_parent() -> None:
    """A cross that no rule names stands under both parents: a length of one and a closed season of the other bind;
    a protected parent protects it."""
    cross = "esox-lucius-x-esox-niger"
    assert told(verdict(at("threlwick-lake", "2026-08-01", cross, length="60 cm"), BOOK)) == (
        Word.UNKNOWN, Why.NO_RULE)
    found = verdict(at("ollimarsh-lake", "2026-06-01", "micropterus-nigricans-x-morone-chrysops", length="13 in"), BOOK)
    assert told(found) == (Word.RELEASE, Why.LENGTH) and Assumed.STRICTER_PARENT in found.assumed
    protected = verdict(at("threlwick-lake", "2026-08-01", "acipenser-fulvescens-x-perca-flavescens"), BOOK)
    assert told(protected) == (Word.RELEASE, Why.PROTECTED)


def test_protection_can_be_lifted_only_by_name() -> None:
    """A water rule loosens a protection only when it names it."""
    loose = Rule("loose", "L", "loose", ("harrowelt-2026",), "water", ("lake-skarrowin",), (), "replace-fields",
                 "2026-04-01", "2027-03-31", taxa=("acipenser-fulvescens",), seasons=("year-round",), daily=1)
    catch = at("lake-skarrowin", "2026-07-01", "acipenser-fulvescens", kept=())
    assert verdict(catch, extended(BOOK, loose)).word is Word.RELEASE
    assert verdict(catch, extended(BOOK, replace(loose, lifts=("h09",)))).word is Word.KEEP


def test_an_order_never_reaches_a_place_it_does_not_name() -> None:
    """A new placement without rules of its own stands under its jurisdiction's rules alone."""
    pond = Placement("at-new", "new-pond", "", "qui", "", (), "", "")
    book = extended(BOOK, placements=[pond])
    found = verdict(at("new-pond", "2026-10-10", LARGEMOUTH, length="15 in"), book)
    assert found.rules == ("q01",)
