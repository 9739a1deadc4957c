"""Catches told in everyday order: water and jurisdiction, days beside fish, kept fish told before (common practice)."""

from __future__ import annotations

from decimal import Decimal

import pytest

from assistant.dialogue.rules.words import limit_words
from assistant.model.knowledge import KnowledgeBase
from assistant.model.rulebook import rulebook
from assistant.reasoning.counting import UNITS
from assistant.units import MM
from tests.dialogue.conftest import Talk


def test_a_water_counts_before_the_jurisdiction_named_after_it(talk: Talk) -> None:
    """The lake's own bag of two is full, whatever the jurisdiction at large allows."""
    answer, _ = talk("Is a 40 cm sauger OK to keep at Lake Skarrowin, Harrowelt, on 20 July 2026 if I already kept two "
                     "39 cm walleye today?")
    assert answer.verdict == "release"
    assert "2 of 2" in answer.blocks[0].text


def test_fishes_and_days_go_side_by_side(talk: Talk) -> None:
    """Two fishes on two days are two catches, not four."""
    answer, _ = talk("rainbow trout, 16.0 in, copperlathe river tailwater, 31 october 2026, none kept before. and then "
                     "one more of 16.0 in on 1 november 2026. what do i do with each?")
    assert answer.verdict == "keep, then release"


def test_fish_kept_before_the_place_was_told_count(talk: Talk) -> None:
    """A count told first holds for the water named next."""
    answer, _ = talk("20 bluegill kept so far.", "Twinmarrow Lake, 12 July 2026, can't tell which side, Harrowelt or "
                     "Quillander. One more bluegill, 7 inches: keep?")
    assert answer.verdict == "release"


def test_keeping_dead_what_every_candidate_allows(talk: Talk) -> None:
    """What may be a bowfin to keep or a snakehead is kept dead; with the bowfin's bag full nothing is sure."""
    told = "Tidderbrack Creek, Mossavane, 10 October 2026. 18 in, either a bowfin or a snakehead, can't decide. "
    answer, _ = talk(told + "One bowfin kept today. What now?")
    assert answer.verdict == "do-not-release"
    assert any("every fish it may be" in b.text for b in answer.blocks)
    answer, _ = talk(told + "5 bowfin kept today.")
    assert answer.verdict == "unknown"


def test_days_counted_from_the_one_judged(talk: Talk) -> None:
    """A week after a release-only day the season has opened; another water may still be shut."""
    first = "Threlwick Lake, South zone, 20 June 2026. smallmouth, 41 cm. can I keep her?"
    assert talk(first)[0].verdict == "release"
    assert talk(first, "a week later?")[0].verdict == "keep"
    assert talk(first, "a week later?", "and Skarrowin on the 20th, up north")[0].verdict == "closed"


def test_without_a_count_the_kept_bowfins_are_asked_for(talk: Talk) -> None:
    """That it may be kept dead rests on a bag that is not full."""
    answer, _ = talk("Tidderbrack Creek, 10 October 2026: 18 in, bowfin or snakehead, cannot tell. keep?")
    assert answer.asked is not None and answer.asked.kind == "count"


def test_other_talk_moves_no_day(talk: Talk) -> None:
    """"A week later" beside eggs or a list is no day of a catch."""
    first = "Threlwick Lake, South zone, 20 June 2026. smallmouth, 41 cm. can I keep her?"
    assert talk(first, "how do the young look? eggs hatch a week later")[1].date == "2026-06-20"
    assert talk(first, "guarding eggs the day before hatching, is that so?")[1].date == "2026-06-20"


def test_today_beside_another_day_is_today(talk: Talk) -> None:
    """Yesterday and today are two days; what was kept on a day before says nothing of today's date."""
    answer, _ = talk("Threlwick Lake. I caught a 41 cm smallmouth yesterday and a 41 cm smallmouth today. keep them?")
    text = " ".join(b.text for b in answer.blocks)
    assert "3 July 2026" in text and "4 July 2026" in text


def test_kept_fish_stay_on_their_day(talk: Talk) -> None:
    """Four kept today are not four kept tomorrow."""
    answer, _ = talk("Threlwick Lake, South zone: smallmouth 41 cm, 4 smallmouth kept. Can I keep it?", "and tomorrow?")
    assert answer.verdict == "keep"


def test_each_part_of_a_sequence_has_its_place(talk: Talk) -> None:
    """A jurisdiction named after "then" stands beside the water of the first part."""
    answer, _ = talk("Threlwick Lake, 20 June 2026, smallmouth 41 cm, then in Quillander, 27 June 2026, can I keep it?")
    assert any("Quillander" in b.text for b in answer.blocks)


def test_the_hybrid_may_be_the_only_fish_named(talk: Talk) -> None:
    """A cross named in the question itself is the fish."""
    assert talk("Ollimarsh Lake, 5 July 2026, 20 in. Can I keep the hybrid striped bass?")[0].verdict == "keep"
    answer, _ = talk("Hybrid of spotted bass and smallmouth bass, 12.9 inches, at Drennick Reservoir, 1 June 2026. "
                     "Two bass of 12 inches kept. May I keep the hybrid?")
    assert answer.verdict == "keep"


@pytest.mark.parametrize("line", [
    "45, i was holding the tape wrong", "make it 45, the tape slipped", "remeasured, 45, he wouldnt hold still",
    "45 cm actually, hadnt pinched the tail",
])
def test_words_beside_a_length_told_again_name_no_fish(talk: Talk, line: str) -> None:
    """Why the length is another is no name; the fish judged before is judged at the new length."""
    answer, held = talk("keeper walley?", "lake skarrowin, 47 cm, july 5", line)
    assert answer.verdict == "keep"
    assert "called" not in " ".join(b.text for b in answer.blocks)
    assert held.taxa[0] == "sander-vitreus"


def test_another_name_offered_beside_a_length_is_told_as_unknown(talk: Talk) -> None:
    """A name that nobody knows is not passed over."""
    answer, _ = talk("walleye at lake skarrowin, 47 cm, july 5, keep?", "that's a zorb, 45 cm")
    assert answer.verdict == "unknown"


def test_a_minimum_is_never_shown_shorter_than_it_is(kb: KnowledgeBase) -> None:
    """A limit in the other unit is rounded so that a fish which fits what is shown fits the limit."""
    kept = (x for x in rulebook(kb).lengths.values() if x.effect == "keep-within")
    limits = [x for x in kept if x.low is None or x.high is None]
    assert limits
    for limit in limits:
        number, unit = limit_words(limit).split("(")[1].split(")")[0].split()
        own = (limit.low or limit.high or Decimal(0)) * MM[UNITS[limit.unit]]
        other = Decimal(number) * MM[unit]
        assert other >= own if limit.low is not None else other <= own


def test_waters_have_no_agency(talk: Talk) -> None:
    """A lake or river is named once and sends to the state or province; a state beside it is what counts."""
    lake, _ = talk("can I keep a walleye on Lake Erie")
    told = " ".join(b.text for b in lake.blocks)
    assert "agency of Lake Erie" not in told and "Lake Erie and Lake Erie" not in told
    state, _ = talk("can I keep a walleye from the Mississippi River in Minnesota")
    assert "agency of Minnesota" in " ".join(b.text for b in state.blocks)
