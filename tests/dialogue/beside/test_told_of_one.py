"""Marks of one of two fishes of which nothing is held for the other are told as such, where few differences are."""

from __future__ import annotations

from tests.dialogue.conftest import Talk

ONE = "Told of one only"


def test_marks_of_one_fish_are_told_as_such(talk: Talk) -> None:
    """The northern madtom's banded fins are told beside the brindled madtom, of which nothing is held there."""
    told = [b for b in talk("northern madtom vs brindled madtom")[0].blocks if b.text.startswith(ONE)]
    assert len(told) == 1 and "northern madtom" in told[0].text and told[0].statements
    assert "brindled" not in told[0].text


def test_nothing_of_it_where_differences_abound_or_counts_are_wanted(talk: Talk) -> None:
    """Bluegill and green sunfish differ enough; who wants counts or no colour gets no marks of one fish."""
    for line in ("bluegill vs green sunfish", "northern madtom vs brindled madtom, counts only",
                 "northern madtom vs brindled madtom without using colour"):
        assert not any(b.text.startswith(ONE) for b in talk(line)[0].blocks)
