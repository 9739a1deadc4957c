"""Reasons: what goes with sex, age or season, what changed in a name, and what is left when asked how sure."""

from __future__ import annotations

import re

from tests.dialogue.conftest import Talk


def _said(talk: Talk, *lines: str) -> str:
    return "\n".join(b.text for b in talk(*lines)[0].blocks)


def test_a_colour_of_some_fish_of_a_kind(talk: Talk) -> None:
    """Why bellies turn orange is answered by what is told of breeding males."""
    assert "breeding male" in _said(talk, "why do the bellies of some bluegills turn orange in June?")


def test_a_name_that_changed(talk: Talk) -> None:
    """Why a scientific name now means another fish is answered by the note on the name."""
    assert "2022" in _said(talk, "why is micropterus salmoides the florida bass now?")


def test_the_shares_add_up(talk: Talk) -> None:
    """The shares told of an undecided fish and what is left for the others make a hundred, but for rounding."""
    told = _said(talk, "long black ear, red belly, small mouth", "how sure are you")
    shares = [int(x) for x in re.findall(r"(\d+) %", told)]
    assert len(shares) > 3 and abs(sum(shares) - 100) <= 3


def test_who_is_right_on_a_fish_is_no_question_on_sources(talk: Talk) -> None:
    """A neighbour's other name for the fish in hand is weighed by what was seen."""
    answer, _ = talk("sunfish, stiff ear with one red dot at the end, side fins long and pointed",
                     "my neighbour insists it is a bluegill, who is right")
    told = " ".join(b.text for b in answer.blocks).lower()
    assert answer.intent == "why" and "bluegill is less likely" in told
