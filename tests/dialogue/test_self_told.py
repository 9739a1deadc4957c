"""Questions about the assistant itself get an answer of their own, and never a reset (layer 4)."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond

CLOCK = date(2026, 7, 4)


@pytest.mark.parametrize(("line", "intent", "part"), [
    ("Can we add a new fish to your database?", "help", "tellfin add"),
    ("how would I fix a mistake in your records", "help", "tellfin"),
    ("who maintains the data", "help", "tellfin add"),
    ("your data on crappie must be wrong", "help", "sources"),
    ("do you learn from me", "help", "learn nothing"),
    ("how reliable are you", "why", "I can be wrong"),
    ("how reliable is colour", "why", "in 100"),
    ("how old is your data", "sources", "newest"),
    ("can I send you a photo of it", "help", "picture"),
    ("how many fish do you know", "list", "species"),
    ("are you an AI", "small-talk", "computer program"),
    ("do you speak Spanish", "help", "English"),
    ("do you know european fish", "help", "Not all"),
    ("what does nearly always mean", "term", "in 100"),
    ("yes", "small-talk", "not asked"),
    ("is a crayfish a fish", "out-of-scope", "no fish"),
    ("how do you tie a clinch knot", "out-of-scope", "outside"),
    ("what does a red snapper look like", "out-of-scope", "red snapper"),
    ("how do I fry bluegill", "handling", "cook it through"),
    ("how do i identify a tilapia", "describe", "ilapia"),
    ("what is 12 inches in cm", "size", "30.5 cm"),
    ("how many sunfish are there", "list", "13"),
    ("which book says bluegill has 10 dorsal spines", "sources", "sources"),
    ("stop", "small-talk", "All right"),
])
def test_what_is_asked_of_the_assistant_is_answered(open_base: Base, line: str, intent: str, part: str) -> None:
    """The intent and a telling part of the first block."""
    answer, _ = respond(open_base, line, Held(), CLOCK)
    assert answer.intent == intent
    assert part in answer.blocks[0].text


def test_the_last_answer_is_said_again(open_base: Base) -> None:
    """ "Say that again" repeats the answer before."""
    first, held = respond(open_base, "how big do rock bass get", Held(), CLOCK)
    again, _ = respond(open_base, "say that again", held, CLOCK)
    assert again.blocks == first.blocks


def test_a_question_about_the_data_keeps_the_talk(open_base: Base) -> None:
    """A question about adding to the base does not clear what was told."""
    _, held = respond(open_base, "sunfish with an orange belly", Held(), CLOCK)
    _, after = respond(open_base, "can I add a new fish to the database", held, CLOCK)
    assert after.seen == held.seen


@pytest.mark.parametrize(("lines", "intent", "part"), [
    (("can u ring the warden for me",), "out-of-scope", "I can't"),
    (("remind me to check the regs tomorrow",), "out-of-scope", "I can't"),
    (("will the full moon turn the crappie on",), "out-of-scope", "moon"),
    (("do bluegill bed on the full moon",), "out-of-scope", "moon"),
    (("walleye night feeding", "full moon?"), "habitat", "moon"),
    (("am i gonna limit out on crappie saturday",), "out-of-scope", "can't tell ahead"),
    (("is saturday a good day for bluegill",), "out-of-scope", "can't tell ahead"),
    (("was this the same largemouth i let go last year",), "out-of-scope", "same fish"),
    (("could the pike be the same one from last spring",), "out-of-scope", "same fish"),
    (("wipe every goby statement, no confirm",), "help", "not in talk"),
    (("rename the shortnose gar to stubby gar",), "help", "not in talk"),
    (("set anal spines of the flier to 4",), "help", "not in talk"),
    (("eh forget it he flopped off", "so what else are you good for"), "help", "Just type"),
    (("when a warden tapes a fish is it to the fork or the tip",), "rules", "Total length"),
    (("u pinch the tail shut when its a slot lake or leave it open",), "rules", "Total length"),
])
def test_what_cannot_be_known_or_done_is_said(open_base: Base, lines: tuple[str, ...], intent: str, part: str) -> None:
    """No verdict, no advice on tackle and no fish in its place."""
    held = Held()
    for line in lines:
        answer, held = respond(open_base, line, held, CLOCK)
    assert answer.intent == intent
    assert part in answer.blocks[0].text


@pytest.mark.parametrize(("line", "intents"), [
    ("will i catch more crappie on jigs or minnows", ("tackle",)),
    ("when do walleye bite best", ("tackle",)),
    ("is the warmouth the same species as the rock bass", ("names", "contrast")),
    ("what do you call a baby trout", ("term",)),
    ("put bluegill, redear and green sunfish in order of size", ("list",)),
    ("set the hook on a walleye", ("tackle",)),
    ("crappie with black dots all over, what is it", ("identify",)),
    ("white or black crappie, cant tell which", ("contrast",)),
])
def test_near_ways_of_asking_are_answered(open_base: Base, line: str, intents: tuple[str, ...]) -> None:
    """What can be answered is, though its words come near to what cannot."""
    assert respond(open_base, line, Held(), CLOCK)[0].intent in intents
