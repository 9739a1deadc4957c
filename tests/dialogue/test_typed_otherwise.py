"""What is typed otherwise than books write it: names apart, measures in two parts, foreign and polite words."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import respond
from assistant.loading import OpenBase

CLOCK = date(2026, 7, 4)


def _said(base: OpenBase, conversation: str) -> tuple[str, str]:
    """The intent and the text of the answer to the last turn."""
    held, answer = Held(), None
    for line in conversation.split(" / "):
        answer, held = respond(base, line, held, CLOCK)
    assert answer is not None
    return answer.intent, "\n".join(b.text for b in answer.blocks)


@pytest.mark.parametrize(
    ("conversation", "intent", "told"),
    [
        ("describe the red ear sun fish", "describe", "redear sunfish"),
        ("describe the orange spotted sun fish", "describe", "orangespotted sunfish"),
        ("describe the green sun fish", "describe", "green sunfish"),
        ("describe the blue cat fish", "describe", "blue catfish"),
        ("tell me about the white cat fish", "describe", "white catfish"),
        ("whats a saw guy its on the board at the bait shop", "hybrids", "saugeye"),
        ('Please, "sac a lé" in Louisiana, my boss says it', "names", "crappie"),
    ],
)
def test_a_name_written_apart_or_as_heard_is_that_name(
    open_base: OpenBase, conversation: str, intent: str, told: str
) -> None:
    """Both halves of a name may be parted, and a name may be written as it is heard."""
    given, text = _said(open_base, conversation)
    assert given == intent and told in text


@pytest.mark.parametrize(
    ("conversation", "intent", "told"),
    [
        ("pike 1 m 30, how heavy", "weight", "1 m 30"),
        ("size of musky / mine has 1 m 30", "size", "51.2 in"),
        ("Estimate the mass of a sixteen-inch white bass for our math problem.", "weight", "white bass of 16 in"),
        ("my scale says one fifteen what is that in grams for a croppy", "weight", "879 g"),
        ("13 3/8 redear, on the big side?", "size", "redear sunfish"),
    ],
)
def test_a_measure_is_read_as_it_is_said(open_base: OpenBase, conversation: str, intent: str, told: str) -> None:
    """Metres and centimetres, pounds and ounces in words, a mass."""
    given, text = _said(open_base, conversation)
    assert given == intent and told in text


@pytest.mark.parametrize(
    ("conversation", "intent", "told"),
    [
        ("sorry for my english, I am new in this country", "small-talk", "Your English does well"),
        ("can I write in my bad english or you need special words", "help", "Your English does well"),
        ("I wish a pleasant sunday to you", "small-talk", "the same to you"),
        ("quiz on pikes / no more quiz please", "quiz", "The quiz is over"),
        ("My catch was forgotten four hours in sun. Throw?", "handling", "thrown away"),
        ("What sunfish hybrids do you hold? / Any from Ohio?", "hybrids", "both live in Ohio"),
        ("which pike hybrids live in Wyoming", "hybrids", "crosses"),
        ("bluegill / in spanish?", "names", "In Spanish the bluegill"),
    ],
)
def test_a_wish_in_plain_or_foreign_words_is_met(
    open_base: OpenBase, conversation: str, intent: str, told: str
) -> None:
    """Excuses, good wishes, an end to a quiz, spoilt fish, crosses of a place, a name in another language."""
    given, text = _said(open_base, conversation)
    assert given == intent and told in text
