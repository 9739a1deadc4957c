"""Catches told in everyday order: water and jurisdiction, days beside fish, kept fish told before (common practice)."""

from __future__ import annotations

from tests.dialogue.conftest import Talk


def test_a_water_counts_before_the_jurisdiction_named_after_it(talk: Talk) -> None:
    """The lake's own bag of two is full, whatever the jurisdiction at large allows."""
    answer, _ = talk("Is a 40 cm sauger OK to keep at Lake Skarrowin, Harrowelt, on 20 July 2026 if I already kept two "
                     "39 cm walleye today?")
    assert answer.verdict == "release"
    assert len(answer.rules) and "2 of 2" in answer.blocks[0].text


def test_fishes_and_days_go_side_by_side(talk: Talk) -> None:
    """Two fishes on two days are two catches, not four."""
    answer, _ = talk("rainbow trout, 16.0 in, copperlathe river tailwater, 31 october 2026, none kept before. and then one "
                     "more of 16.0 in on 1 november 2026. what do i do with each?")
    assert answer.verdict == "keep, then release"


def test_fish_kept_before_the_place_was_told_count(talk: Talk) -> None:
    """A count told first holds for the water named next."""
    answer, _ = talk("20 bluegill kept so far.", "Twinmarrow Lake, 12 July 2026, can't tell which side, Harrowelt or "
                     "Quillander. One more bluegill, 7 inches: keep?")
    assert answer.verdict == "release"


def test_keeping_dead_what_every_candidate_allows(talk: Talk) -> None:
    """A bowfin may be kept and a snakehead must not go back: it is kept dead; with the bowfin's bag full nothing is sure."""
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
