"""Sentences about a catch, from words to verdicts: the worked examples and many ways of saying the parts."""

from __future__ import annotations

from datetime import date, time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assistant.dialogue.reader.catch_text import parse_catch
from assistant.dialogue.rules.catch_judge import catches, judge
from assistant.dialogue.rules.catch_query import CatchQuery
from assistant.dialogue.rules.names import depth_of
from assistant.reasoning import catch as c
from tests.helpers.plain_names import resolvers
from tests.helpers.rule_cases import case_ids, demo_book, read_cases

BOOK = demo_book()
TAXA, PLACES = resolvers()
DEPTH = depth_of(BOOK)
TODAY = date(2026, 7, 4)
CASES = read_cases(BOOK)


def read(text: str, previous: CatchQuery | None = None) -> CatchQuery:
    """The query of a sentence."""
    query = parse_catch(text, TAXA, PLACES, TODAY, previous, DEPTH)
    assert query is not None
    return query


def one(text: str) -> c.Catch:
    """The only catch of a sentence."""
    (found,) = catches(read(text), BOOK)
    return found


def words(text: str) -> list[str]:
    """The verdict words of a sentence."""
    return [str(v.word) for v in judge(read(text), BOOK)]


@pytest.mark.parametrize("case_id", case_ids())
def test_worked_example_from_its_words(case_id: str) -> None:
    """Each worked example gives its verdicts, reasons and rules from its own words, too."""
    case = next(x for x in CASES if x.id == case_id)
    before = read("Tidderbrack Creek, 2026-10-05: 20 in fish, bowfin or northern snakehead, cannot tell")
    found = judge(read(f"{case.where_when}: {case.catch}. Can I keep it?", before), BOOK)
    assert [(v.word, v.reason.why, v.reason.rule) for v in found] == list(
        zip(case.verdicts, case.whys, case.rules, strict=True))


@pytest.mark.parametrize(("said", "kept"), [
    ("nothing kept", ()), ("none kept", ()), ("no fish kept", ()), ("first fish of the day", ()),
    ("8 kept already", ((8, 1, True, True),)), ("eight kept", ((8, 1, True, True),)),
    ("12 kept today, 38 in the freezer", ((12, 1, True, True), (38, 1, False, True))),
    ("nothing kept today, 38 at home", ((38, 1, False, True),)),
    ("3 in the livewell", ((3, 1, True, True),)), ("I have 4 in the cooler", ((4, 1, True, True),)),
    ("5 kept, 2 eaten at lunch", ((5, 1, True, True), (2, 1, True, False))),
    ("4 kept, and fried two of them for lunch", ((2, 1, True, True), (2, 1, True, False))),
    ("4 kept, none of them eaten", ((4, 1, True, True),)),
    ("5 kept, ate two of them, gave away one of them", ((2, 1, True, True), (1, 1, True, False), (2, 1, True, False))),
    ("12 kept this morning, 8 more kept this afternoon", ((12, 1, True, True), (8, 1, True, True))),
])
def test_kept_fish(said: str, kept: tuple[tuple[int, int, bool, bool], ...]) -> None:
    """Counts of kept fish are read with what counts for the day and for possession."""
    catch = one(f"Threlwick Lake, 2026-07-04: yellow perch 22 cm, {said}. Can I keep it?")
    assert catch.candidates == ("perca-flavescens",) and catch.kept is not None
    assert tuple((k.count, len(k.taxa), k.today, k.held) for k in catch.kept) == kept


def test_kept_kinds_and_lengths() -> None:
    """Each kind keeps its own count; "two of them over 20 cm" leaves the others at 20 cm or less."""
    catch = one("Ollimarsh Lake, 2026-06-01: black crappie 10 in; kept 15 bluegill, 10 crappie, 5 yellow perch")
    assert catch.kept is not None
    assert [(k.count, k.taxa[0]) for k in catch.kept] == [
        (15, "lepomis-macrochirus"), (10, "pomoxis-annularis"), (5, "perca-flavescens")]
    catch = one("Vennimoor Lake, 2026-07-04: bluegill 21 cm; kept 3 sunfish, two of them over 20 cm")
    assert catch.kept is not None
    assert [(k.count, k.length.low, k.length.high) for k in catch.kept] == [(2, 200, None), (1, 0, 200)]
    catch = one("Threlwick Lake, 2026-08-01: walleye 47 cm, kept 2 walleye of 44 and 48 cm")
    assert catch.kept is not None and [k.length.low for k in catch.kept] == [440, 480]


@pytest.mark.parametrize(("said", "candidates"), [
    ("bluegill", {"lepomis-macrochirus"}),
    ("bluegill or pumpkinseed", {"lepomis-macrochirus", "lepomis-gibbosus"}),
    ("bluegill/pumpkinseed", {"lepomis-macrochirus", "lepomis-gibbosus"}),
    ("either a bluegill or a pumpkinseed, not sure which", {"lepomis-macrochirus", "lepomis-gibbosus"}),
    ("bluegill, pumpkinseed or a hybrid of the two",
     {"lepomis-macrochirus", "lepomis-gibbosus", "lepomis-gibbosus-x-lepomis-macrochirus"}),
    ("pumpkinseed x bluegill hybrid", {"lepomis-gibbosus-x-lepomis-macrochirus"}),
    ("a cross of pumpkinseed and bluegill", {"lepomis-gibbosus-x-lepomis-macrochirus"}),
    ("pumpkinseed or its hybrid with bluegill", {"lepomis-gibbosus", "lepomis-gibbosus-x-lepomis-macrochirus"}),
    ("sunfish", {"hrw-sunfish-group"}), ("a sunfish cross of some sort", {"hrw-sunfish-group"}),
    ("largemouth or smallmouth bass", {"micropterus-nigricans", "micropterus-dolomieu"}),
    ("sunfish (bluegill or pumpkinseed)", {"lepomis-macrochirus", "lepomis-gibbosus"}),
    ("any fish", {c.ANY_FISH}), ("I caught a nice big bluegill here", {"lepomis-macrochirus"}),
])
def test_fish(said: str, candidates: set[str]) -> None:
    """Everything that the fish may be is kept, crosses included; a group word means the group of the rules there."""
    assert set(one(f"Threlwick Lake, 2026-07-04: {said}, 15 cm. Can I keep it?").candidates) == candidates


@pytest.mark.parametrize(("said", "field", "value"), [
    ("through the ice", "on_ice", True), ("open water", "on_ice", False), ("already dead", "dead", True),
    ("deep-hooked", "deep_hooked", True), ("it swallowed the hook", "deep_hooked", True),
    ("tail torn", "tail_torn", True), ("angler aged 11", "age", 11), ("angler is 34", "age", 34),
    ("16-year-old angler", "age", 16), ("adult angler", "age", 18), ("at 15:30", "moment", time(15, 30)),
    ("a child of 10 with an adult holding the rod", "age", 18),
])
def test_circumstances(said: str, field: str, value: object) -> None:
    """Circumstances are read wherever they stand, and never taken for a fish or a count."""
    for text in (f"Threlwick Lake, 2026-07-04, {said}: bluegill 15 cm",
                 f"Threlwick Lake, 2026-07-04: bluegill 15 cm, {said}"):
        catch = one(text)
        assert getattr(catch, field) == value
        assert (catch.candidates, catch.length.low, catch.kept) == (("lepomis-macrochirus",), 150, None)


@pytest.mark.parametrize(("where", "places", "side", "away"), [
    ("Twinmarrow Lake, HRW side", ("twinmarrow-lake",), "hrw", False),
    ("Twinmarrow Lake, on the Quillander side", ("twinmarrow-lake",), "qui", False),
    ("Twinmarrow Lake (QUI)", ("twinmarrow-lake",), "qui", False),
    ("Twinmarrow Lake, side not known", ("twinmarrow-lake",), "", False),
    ("inlet of Vennimoor Lake", ("vennimoor-lake",), "", True),
    ("at Vennimoor Lake", ("vennimoor-lake",), "", False),
    ("Ketterfoss River above the Old Weir", ("ketterfoss-above",), "", False),
    ("Copperlathe River tailwater, with both licences", ("copperlathe-tailwater",), "", False),
])
def test_places(where: str, places: tuple[str, ...], side: str, away: bool) -> None:
    """The place is read with its side, part, or the water it only flows into."""
    catch = one(f"{where}, 2026-07-04: walleye 40 cm. Can I keep it?")
    assert (catch.places, catch.side, catch.away) == (places, side, away)


@pytest.mark.parametrize(("text", "verdicts"), [
    ("can I keep a 17 cm bluegill on Vennimoor Lake today, 8 kept already?", ["release"]),
    ("may I keep a 17 cm bluegill at Vennimoor Lake?", ["keep"]),
    ("Fenwrithe Creek, 2026-09-10 at 14:00, brown trout 9 in, can I keep it?", ["closed"]),
    ("Threlwick Lake, 2026-08-01: walleye 40 cm, then 41 cm; 3 walleye kept. Can I keep it?", ["keep", "release"]),
    ("Threlwick Lake, 2026-08-01: walleye 50 cm, then 51 cm; nothing kept. Can I keep it?", ["keep", "release"]),
    ("Ollimarsh Lake, 2026-12-31, then 2027-01-01: bluegill 7 in. Can I keep it?", ["keep", "unknown"]),
    ("Ollimarsh Lake, 2026-06-01 23:50, then 2026-06-02 00:10: bluegill 7 in; 20 sunfish kept", ["release", "keep"]),
    ("Fenwrithe Creek, 2026-07-20 13:50, then 14:10: brown trout 10 in", ["keep", "closed"]),
    ("Ollimarsh Lake, 2026-07-01: walleye 14 in relaxed, 15 in pinched", ["keep"]),
    ("Vennimoor Lake, 2026-07-04: bluegill 17 cm, lost count of kept sunfish", ["keep"]),
    ("HRW, Threlwick Lake, 2026-07-04: bluegill 17 cm", ["keep"]),
    ("Ollimarsh Lake, 2026-06-01: my fifth walleye, 16 in", ["keep"]),
    ("Ollimarsh Lake, 2026-06-01: walleye 16 in, would be my sixth today", ["release"]),
    ("Ollimarsh Lake, 2026-06-01: bluegill 7 in; my partner kept 20, I kept none", ["keep"]),
    ("Ollimarsh Lake, 2026-06-01 - black crappie 10 in - 15 crappie kept", ["release"]),
    ("Threlwick Lake, 2026-08-01: pike 60 cm; 4 northerns kept", ["release"]),
    ("Private pond, 2026-07-01: largemouth bass 14 in. Can I keep it?", ["unknown"]),
    ("Ollimarsh Lake, July 1, 2026, 7 pm: 14 1/2 in largemouth bass, five bass kept. Can I keep it?", ["release"]),
    ("Tidderbrack Creek, 2026-11-03: 24 in, bowfin or snakehead, not sure which. Can I keep it?", ["do-not-release"]),
])
def test_whole_sentences(text: str, verdicts: list[str]) -> None:
    """Whole sentences in different orders give their verdicts; fish of one outing count for the next."""
    assert words(text) == verdicts


def test_same_fish_means_the_one_before() -> None:
    """"Same fish" takes candidates and length from the sentence before, and with none before asks for the fish."""
    before = read("Tidderbrack Creek, 2026-10-05: 20 in fish, bowfin or northern snakehead, cannot tell")
    after = read("Corrabloom Reservoir, 2026-10-06: same fish, same doubt. Can I keep it?", before)
    assert catches(after, BOOK)[0].candidates == catches(before, BOOK)[0].candidates
    assert after.steps[0].length == before.steps[0].length
    alone = judge(read("Corrabloom Reservoir, 2026-10-06: same fish, same doubt"), BOOK)
    assert alone[0].reason.why == "no-fish"


def test_unknown_names_and_places_are_told() -> None:
    """Words that lead to nothing are handed on, not dropped or guessed."""
    query = read("Lake Nowhere, 2026-07-01: glofin snapper 18 in. Can I keep it?")
    assert query.unknown_place == "Lake Nowhere" and query.unknown_names == ("glofin snapper",)
    assert judge(query, BOOK)[0].word == "unknown"


@pytest.mark.parametrize("text", [
    "", "how do I tell a white crappie from a black crappie?", "hello", "what is a couplet",
])
def test_other_talk_is_never_kept_fish(text: str) -> None:
    """A sentence without a length or kept fish gives no length and no kept fish."""
    query = parse_catch(text, TAXA, PLACES, TODAY, None, DEPTH)
    assert query is None or all(s.kept is None and s.length == c.UNSAID for s in query.steps)


@settings(max_examples=150, deadline=None)
@given(st.text(alphabet=st.sampled_from("abcdefinkoprtw 0123456789.,:;/-()'\"½cm"), max_size=80))
@example("1/0m")
@example("bass 13 0/00 in")
def test_no_text_breaks_the_reader(text: str) -> None:
    """Any text is read or refused without an error, and judged without one."""
    query = parse_catch(text, TAXA, PLACES, TODAY, None, DEPTH)
    if query is not None:
        assert len(judge(query, BOOK)) == len(query.steps)


def test_a_number_asked_for_behind_the_fish() -> None:
    """So many are judged where the question behind the fish asks for so many."""
    query = read("bluegill from Little Ommary Pond, I am 12, can I keep 30")
    assert [s.count for s in query.steps] == [30]
    assert [s.count for s in read("bluegill on Vennimoor Lake, can we keep twenty of them?").steps] == [20]
    assert [s.count for s in read("bluegill on Vennimoor Lake, can I keep one?").steps] == [1]
