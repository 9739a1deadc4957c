"""Answers in a talk: the fish spoken of first, standing notices in full once, nothing offered that was not asked."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held

Talk = Callable[..., tuple[Answer, Held]]
CATCH = "I caught a 16 inch walleye at Vennimoor Lake"


def notes(answer: Answer) -> list[str]:
    """The standing notices of an answer."""
    return [b.text for b in answer.blocks if b.kind == "rule-note"]


def said(answer: Answer) -> str:
    """All words of an answer."""
    return "\n".join(b.text for b in answer.blocks)


@pytest.mark.parametrize("later", ["can I keep it", "and at 5 inches?", "how many bluegill can I keep"])
def test_notices_are_said_in_full_once_and_never_left_out(talk: Talk, later: str) -> None:
    """After the first verdict one line holds what must always be said: demo, date, official rules, no legal advice."""
    begun = talk(CATCH + ", can I keep it")[0]
    assert len(notes(begun)) == 2 and "rule year" in notes(begun)[0]
    again = notes(talk(CATCH + ", can I keep it", later)[0])
    assert len(again) == 1 and len(again[0]) < 150
    assert all(x in again[0] for x in ("Demo rules only", "as of 15 March 2026", "official rules", "Not legal advice"))


def test_a_new_conversation_hears_them_in_full_again(talk: Talk) -> None:
    """Starting over forgets that the notices were said."""
    assert len(notes(talk(CATCH + ", can I keep it", "start over", CATCH + ", can I keep it")[0])) == 2


def test_how_many_speaks_of_the_fish_in_hand(talk: Talk) -> None:
    """In a talk about a walleye "how many can I keep" tells its bag alone; "all fishes" gives the rest."""
    one = said(talk(CATCH, "how many can I keep on Vennimoor Lake")[0])
    assert "4 a day, all walleye and sauger together" in one and "perch" not in one and "all fishes" in one
    assert "perch" in said(talk(CATCH, "how many can I keep on Vennimoor Lake", "how many of all fishes")[0])
    assert "perch" in said(talk("how many can I keep on Vennimoor Lake")[0])


def test_which_rule_gave_way_is_told_once(talk: Talk) -> None:
    """That one rule stands in place of another is said with the first verdict only."""
    line = "caught a bluegill 7 inches at Vennimoor Lake, can I keep it"
    assert "in place of" in said(talk(line)[0]) and "in place of" not in said(talk(line, "can I keep it")[0])


def test_nothing_is_offered_that_was_not_asked(talk: Talk) -> None:
    """One plain question has no "You also asked"; two joined ones have."""
    assert "You also asked" not in said(talk("can I eat the eggs of a bowfin")[0])
    assert "You also asked" not in said(talk("is a walleye the same as a sauger")[0])


def test_no_takes_the_choice_that_denies(talk: Talk) -> None:
    """"No" to a question with several kinds of spots and "no spots" is the last."""
    _, held = talk("bluegill with an orange belly, 8 inches, ohio")
    assert held.asked is not None and any(words.startswith("no ") for _, words in held.asked.choices)
    denied = next(state for state, words in held.asked.choices if words.startswith("no "))
    _, after = talk("no", held=held)
    assert denied in {x for s in after.seen for x in s.observation.states}


def test_care_with_a_fish_is_said_once(talk: Talk) -> None:
    """The grip is told with the first answer on a fish, not with every mark after it; a new fish has its own."""
    lines = ("bluegill with an orange belly, 8 inches, ohio", "no")
    assert [b for b in talk(lines[0])[0].blocks if b.kind == "caution"]
    assert not [b for b in talk(*lines)[0].blocks if b.kind == "caution"]
    assert [b for b in talk(*lines, "start over", lines[0])[0].blocks if b.kind == "caution"]
