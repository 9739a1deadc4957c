"""What a rules answer tells first: counts, hours, months, sides, openings, who may fish (common practice)."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.rules.months import alike, runs, span_words
from tests.dialogue.conftest import Talk


def lead(talk: Talk, *lines: str) -> str:
    """The first block of the last answer."""
    return talk(*lines)[0].blocks[0].text


def texts(talk: Talk, *lines: str) -> str:
    """The whole last answer."""
    return " ".join(b.text for b in talk(*lines)[0].blocks)


@pytest.mark.parametrize(
    ("lines", "verdict", "told"),
    [
        (("8 sunfish already at Vennimoor, one more?",), "release", "8 of 8 sunfish"),
        (("vennimoor, 8 bluegill, can i keep another",), "release", "8 of 8 sunfish"),
        (("vennimoor, 7 bluegill none over 20 cm, can the kid keep one more",), "keep", "7 of 8 sunfish"),
        (("I caught 5 trout in Harrowelt, can I keep another",), "release", "5 of 5 trout"),
        (("3 sunfish over 20cm at Vennimoor ok?",), "keep, then release", "keep, then release"),
        (("2 trout already at Copperlathe tailwater, another 17 incher?",), "release", "2 of 2 trout"),
        (("crappie 8 in, Quillander", "what about 9 inches exactly"), "keep", "9 in"),
        (("I have 30 crappie and perch in quillander, can i keep more panfish",), "release",
         "30 of 30 panfish (limit"),
        (("landed 5 largemouth and kept none, Quillander. can I keep one more of 15 in",), "keep", "0 of 5"),
    ],
)
def test_fish_told_as_had_count(talk: Talk, lines: tuple[str, ...], verdict: str, told: str) -> None:
    """Fish already had or caught count for the day, several of one kind together; "exactly" is no guess."""
    answer, _ = talk(*lines)
    assert answer.verdict == verdict and told in answer.blocks[0].text


def test_a_bare_count_is_no_length(talk: Talk) -> None:
    """After lengths "I already have 15" counts fish and measures none."""
    _, held = talk("crappie 10 in, Quillander, keep?", "I already have 15")
    assert all(float(m.low) < 300 for m in held.lengths)


def test_caught_fish_let_go_do_not_count(talk: Talk) -> None:
    """Fish that went back leave the bag empty."""
    line = "I caught 5 trout in Harrowelt and released all of them, can I keep another"
    assert talk(line)[0].verdict == "keep"


def test_the_hour_is_answered(talk: Talk) -> None:
    """Closed or not at the hour asked about; for a month with the days."""
    assert lead(talk, "can i fish fenwrithe creek at 6pm on august 1 2026").startswith("Closed at 18:00")
    assert "closes 09:00" in lead(talk, "can i fish fenwrithe creek at 9am on august 1 2026")
    assert "10 to 31 July 2026" in lead(talk, "Can I fish the Copperlathe tailwater at 5 pm in July?")


def test_a_month_is_told_in_spans(talk: Talk) -> None:
    """Where a month changes, each part has its verdict; another year's rules come first and are named as such."""
    answer, _ = talk("can i keep a smallmouth in May on Threlwick Lake")
    assert "By the rules of the year held" in answer.blocks[0].text and answer.verdict == "unknown"
    assert any("16 to 31 May 2026" in b.text for b in answer.blocks)


def test_openings_sides_and_later_rules(talk: Talk) -> None:
    """When a season opens is told by its days, the side told is kept, and a rule still to come is named."""
    assert "from 27 June 2026" in texts(talk, "when does bass season open in harrowelt")
    told = texts(talk, "bass season at Twinmarrow Lake?", "I'm on the Quillander side", "what's the size limit")
    assert "14 in" in told and "Harrowelt" not in told.split("Demo")[0]
    told = texts(talk, "hallowbrim river bass minimum length")
    assert "Quillander side" in told and "From 1 September 2026" in told and "13 in" in told
    assert "15 September" in texts(talk, "trout limit ketterfoss river")


def test_follow_ups_keep_fish_and_subject(talk: Talk) -> None:
    """"How many" is of the fish judged before; a place alone is asked of the duty spoken of."""
    told = lead(talk, "pumpkinseed at Vennimoor Lake, keep?", "how many")
    assert told.startswith("Pumpkinseed") and "8 a day" in told
    assert "licence" in lead(talk, "do you need a license", "in Quillander")
    assert "leeches and worms" in lead(talk, "Can I use worms in the North zone of Harrowelt?", "and live minnows")


def test_kinds_counted_together(talk: Talk) -> None:
    """Yes for one bag and for crosses that a group takes in, no with the limit above both."""
    assert lead(talk, "Does a saugeye count as a walleye in Quillander?").startswith("Yes")
    assert lead(talk, "do hybrids count as bluegill in quillander").startswith("Yes")
    told = lead(talk, "are crappie and bluegill in the same bag at Drennick")
    assert told.startswith("No") and "30 panfish" in told


def test_who_may_fish(talk: Talk) -> None:
    """An age rule is answered with yes or no, and licences are told beside it."""
    assert lead(talk, "can adults fish at little ommary pond").startswith("No")
    assert lead(talk, "can kids fish at little ommary pond").startswith("Yes")
    assert "16 and over" in texts(talk, "Can my 10 year old fish at Vennimoor Lake?")


def test_release_only_is_not_told_as_open(talk: Talk) -> None:
    """A bag of nothing is release only, in the short list as well."""
    assert "For release only: trout" in texts(talk, "is catch and release allowed in Ketterfoss River")


def test_a_loose_name_is_told_apart(talk: Talk) -> None:
    """Where one fish of a name forbids it, the others are told by their bags."""
    answer, _ = talk("drennick reservoir 18 inch bass legal?")
    assert answer.verdict == "release"
    assert any("If it is surely black bass: keep" in b.text for b in answer.blocks)


def test_a_listed_fish_comes_first_out_of_the_rule_year(talk: Talk) -> None:
    """That a snakehead must not go back is said before what is not known of the day."""
    answer, _ = talk("caught a snakehead in mossavane do i put it back")
    assert answer.blocks[0].text.startswith("Do not release") and answer.verdict == "unknown"


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("can I throw my leftover minnows in the lake", "No: leftover bait"),
        ("can i give my fish to my buddy and keep fishing", "still count as kept"),
        ("how much is a fishing license", "no prices"),
        ("how old before i need a licence", "commonly about 16"),
        ("what happens if I keep a fish thats too small", "fine"),
        ("do you pinch the tail when measuring a bass", "Total length"),
        ("are these real rules", "invented"),
        ("where do your rules come from", "invented"),
        ("Is Lake Skarrowin a real lake?", "invented water"),
    ],
)
def test_plain_questions_on_rules(talk: Talk, line: str, told: str) -> None:
    """What holds without a place is said first, and nothing is asked back."""
    answer, _ = talk(line)
    assert answer.intent == "rules" and told in answer.blocks[0].text and answer.asked is None


def test_spans_of_days() -> None:
    """Days fall into spans without a gap, and a whole month has no numbers."""
    days = [date(2026, 6, n) for n in (1, 2, 3, 5)]
    assert runs(days) == [(days[0], days[2]), (days[3], days[3])]
    assert alike(days[:3], lambda d: d.day < 3) == [(days[0], days[1]), (days[2], days[2])]
    assert [span_words(date(2026, 6, 1), date(2026, 6, n)) for n in (30, 9, 1)] == ["June 2026", "1 to 9 June 2026",
                                                                                     "1 June 2026"]


def test_month_beyond_the_year_held_is_told_as_of_that_year(talk: Talk) -> None:
    """What held in the same month of the year held leads, marked so, with the month asked about as not held yet."""
    for line in ("walleye limit at Vennimoor Lake in May", "what's open on Vennimoor Lake in May?"):
        answer, _ = talk(line)
        assert answer.verdict == "unknown"
        assert "May 2026, the year held (May 2027 is not held yet)" in answer.blocks[0].text
        told = "Unknown: no rules are held for Vennimoor Lake in May 2027"
        assert any(b.text.startswith(told) for b in answer.blocks)


def test_month_told_with_its_year(talk: Talk) -> None:
    """The year told counts: it is answered where it is held, and else what is not known leads."""
    answer, held = talk("walleye limit at Vennimoor Lake in May 2026")
    assert held.date == "2026-05" and answer.verdict != "unknown"
    assert "closed until 16 May 2026" in answer.blocks[0].text
    answer, _ = talk("can I keep a 40 cm walleye from Lake Skarrowin in July 2025")
    assert answer.verdict == "unknown" and answer.blocks[0].text.startswith("Unknown")


@pytest.mark.parametrize(
    ("line", "verdict", "told"),
    [
        ("vennimoor lake, 6 gills and 4 pumpkinseeds in the bucket. we good?", "release", "10 of 8 sunfish, 2 too"),
        ("harrowelt, 2 walleye and 3 sauger in the livewell, legal?", "release", "5 of 4 walleye and sauger"),
        ("harrowelt, 2 walleye and 30 perch in the livewell, legal?", "unknown, then release", "30 of 25 yellow perch"),
        ("kept four crappie and three perch at vennimoor lake. still ok?", "unknown, then keep", "3 of 25 yellow"),
    ],
)
def test_kinds_kept_together(talk: Talk, line: str, verdict: str, told: str) -> None:
    """Where only kept fish of several kinds are told, each is judged, or all at once where the same holds."""
    answer, _ = talk(line)
    assert answer.verdict == verdict and told in texts(talk, line)
