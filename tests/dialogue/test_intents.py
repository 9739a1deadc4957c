"""The recogniser table."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond, understand
from assistant.dialogue.handlers import HANDLERS, handler_of
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.recogniser.cues import find_cues
from assistant.dialogue.recogniser.facts import ASKING, Facts
from assistant.dialogue.recogniser.intent_row import Row
from assistant.dialogue.recogniser.intent_rows import ROWS
from assistant.dialogue.recogniser.intents import FOLLOW, holds, recognise
from assistant.dialogue.recogniser.leaning import lean, leanings, signs
from assistant.dialogue.wording.core import ALSO
from assistant.model.knowledge import KnowledgeBase
from tests.bench.score_utterances import CASES, cases

CLOCK = date(2026, 7, 4)
EXAMPLES = [(row, example) for row in ROWS for example in row.examples]


@pytest.mark.parametrize(("row", "example"), EXAMPLES, ids=[e for _, e in EXAMPLES])
def test_every_example_of_a_row_comes_out_as_the_row_says(row: Row, example: str, open_base: Base) -> None:
    """The last line of each worked example is recognised as the intent of its row, in the conversation before it."""
    held = Held()
    *before, last = example.split(" / ")
    for line in before:
        _, held = respond(open_base, line, held, CLOCK)
    reading = read_line(open_base.kb, last, held, CLOCK)
    _, facts, _ = understand(open_base.kb, reading, held)
    wanted = held.intent if row.intent == FOLLOW else row.intent
    assert recognise(facts).intent == wanted


def test_every_intent_has_a_row_and_every_row_an_intent() -> None:
    """No intent without a way of asking for it, no row for an unknown intent, a file each."""
    assert {r.intent for r in ROWS} - {FOLLOW} == set(HANDLERS)
    assert all(callable(handler_of(intent)) for intent in HANDLERS)


def test_every_cue_of_the_table_is_in_the_base(kb: KnowledgeBase) -> None:
    """A cue that is asked for by a row or counts as asking has phrases in the base."""
    held = {w.id.removeprefix("cue-") for w in kb.all("word") if w.kind == "cue"}
    assert held >= ASKING


def test_offered_second_wishes_have_words() -> None:
    """Whatever can be asked beside something else can be named back."""
    assert set(ALSO) <= set(HANDLERS)


def test_nothing_known_is_out_of_scope() -> None:
    """A line without any fact is outside, never a crash."""
    assert recognise(Facts(frozenset())).intent == "out-of-scope"


def test_an_item_may_offer_and_deny() -> None:
    """``a|b`` wants one of them, ``!a|b`` wants neither."""
    assert holds(("a|b",), frozenset({"b"}))
    assert not holds(("!a|b",), frozenset({"b"}))
    assert holds(("!a|b", "c"), frozenset({"c"}))


def test_a_cue_inside_a_longer_one_does_not_count(kb: KnowledgeBase) -> None:
    """ "how long" is size; "long" inside it is nothing else, and "hook size" asks for tackle, not for size."""
    reading = read_line(kb, "hook size for crappie", Held(), CLOCK)
    found = {c.id for c in find_cues(kb, reading)}
    assert "tackle" in found
    assert "size" not in found


def ways_of_asking() -> list[tuple[tuple[str, ...], str]]:
    """Our own single lines with the intents that are right for each."""
    path = Path(__file__).parent.parent / "cases" / "ways_of_asking.tsv"
    rows = [line.split("\t") for line in path.read_text(encoding="utf-8").splitlines() if line and line[0] != "#"]
    return [(tuple(r[0].split("|")), r[1]) for r in rows[1:] if " / " not in r[1]]


@pytest.mark.parametrize("step", [
    pytest.param(20, id="twentieth"), pytest.param(3, id="third", marks=pytest.mark.long)])
def test_the_lines_that_the_leanings_are_fitted_to_are_read(open_base: Base, step: int) -> None:
    """Table and leanings together read nearly all single lines of our own ways of asking: the fit is not stale."""
    right = []
    for wanted, line in ways_of_asking()[::step]:
        reading, facts, _ = understand(open_base.kb, read_line(open_base.kb, line, Held(), CLOCK), Held())
        told = signs(reading, facts)
        right.append(lean(recognise(facts), leanings(open_base.kb, told), told).intent in wanted)
    assert len(right) > 4500 / step
    assert sum(right) / len(right) >= 0.97


def test_nine_in_ten_lines_that_nothing_was_fitted_to_are_recognised(open_base: Base) -> None:
    """The intent of the unseen utterances, each in its conversation, is right; nothing but the share is looked at."""
    right: list[bool] = []
    held, current = Held(), ""
    for case in cases(CASES / "utterances_unseen.tsv"):
        held, current = (held if case.conversation == current else Held()), case.conversation
        answer, held = respond(open_base, case.say, held, CLOCK)
        right.append(answer.intent in case.intents)
    share = sum(right) / len(right)
    assert len(right) >= 240 and share >= 0.9
