"""What the signs of a line lean to, beside the choice of the recogniser table."""

from __future__ import annotations

import random
from datetime import date

import pytest

from assistant.dialogue import engine
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond, understand
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.recogniser.intent_rows import ROWS
from assistant.dialogue.recogniser.intents import Recognised
from assistant.dialogue.recogniser.leaning import FIRST, OWN, SHORT, SURE, lean, leanings, signs
from assistant.model.knowledge import KnowledgeBase
from tests.bench.leanings import TARGET, Line, conversations, fitted, text_of
from tests.bench.score_utterances import CASES

INTENTS = sorted({row.intent for row in ROWS} - {"@same", "key"})


LONG = tuple(f"word.{letter}" for letter in "abcdefghi")


def _signs(kb: KnowledgeBase, line: str) -> frozenset[str]:
    reading, facts, _ = understand(kb, read_line(kb, line, Held(), date(2026, 7, 4)), Held())
    return signs(reading, facts)


def test_named_things_count_by_their_kind(kb: KnowledgeBase) -> None:
    """The fish and the number are no words of their own; two words side by side are a sign."""
    found = _signs(kb, "How big do 2 bluegills get?")
    assert {"pair.how.big", "pair.do.a-number", "pair.a-number.a-taxon", "word.a-question", "always"} <= found
    assert not any("bluegill" in sign for sign in found)


def test_a_sure_row_stands() -> None:
    """From its score on, the table's choice is not overruled."""
    sums = {"rules": 0.0, "size": 50.0}
    assert lean(Recognised("rules", SURE), sums, LONG).intent == "rules"
    assert lean(Recognised("rules", SURE - 1), sums, LONG).intent == "size"


def test_in_a_short_line_more_speaks_for_the_table() -> None:
    """The same leaning overrules a row in a long line and not in two words that begin a conversation."""
    sums = {"rules": 0.0, "size": OWN + SHORT / 2}
    assert lean(Recognised("rules", 60), sums, LONG).intent == "size"
    assert lean(Recognised("rules", 60), sums, ("word.a", "word.b", FIRST)).intent == "rules"
    assert lean(Recognised("rules", 60), sums, ("word.a", "word.b", "last.contrast")).intent == "size"


def test_no_leaning_takes_anything_back_alone() -> None:
    """Without a word for it in the line, what was told stays, however much the signs lean to taking it back."""
    sums = {"rules": 0.0, "undo": 50.0}
    assert lean(Recognised("rules", 60), sums, LONG).intent == "rules"
    assert lean(Recognised("rules", 60), sums, (*LONG, "fact.undo")).intent == "undo"


def test_an_intent_without_leanings_is_left_to_the_table() -> None:
    """A base without leanings, or an intent that none was fitted for, changes nothing."""
    assert lean(Recognised("rules", 40, "size"), {}, LONG) == Recognised("rules", 40, "size")


def test_leanings_of_the_base_are_used(open_base: Base) -> None:
    """Words that no row foresees still lean: a new way to ask for a length."""
    sums = leanings(open_base.kb, _signs(open_base.kb, "how hefty do they get, bluegills, length wise"))
    assert max(sums, key=lambda intent: sums[intent]) in ("size", "weight")


def test_fitting_tells_two_kinds_of_lines_apart() -> None:
    """Weights favour the intent whose lines have the sign; one line's own sign is left out."""
    told = (("big", "size"), ("long", "size"), ("law", "rules"), ("limit", "rules"), ("eat", "habitat")) * 5
    lines = [Line(frozenset({"always", f"word.{word}"}), Recognised("size", 50), (intent,)) for word, intent in told]
    weights = fitted([*lines, Line(frozenset({"word.once"}), Recognised("size", 50), ("size",))])
    assert weights["word.big"]["size"] > 0 > weights["word.law"]["size"]
    assert "word.once" not in weights


def test_the_file_is_as_the_fit_writes_it() -> None:
    """The shipped leanings are in the form that fitting writes, with weights to two places."""
    text = TARGET.read_text(encoding="utf-8")
    assert text.startswith(text_of({}).splitlines()[0])
    assert text.count("tf:Leaning ;") > 1000


@pytest.mark.parametrize("turns", [80, pytest.param(600, marks=pytest.mark.long)])
def test_any_handler_answers_any_line(open_base: Base, monkeypatch: pytest.MonkeyPatch, turns: int) -> None:
    """Whatever intent a line is given, in whatever conversation, its handler has an answer."""
    lines = [line for name in ("ways_of_asking.tsv", "utterances_open.tsv")
             for talk in conversations(CASES / name) for line, _ in talk]
    rng = random.Random(turns)
    monkeypatch.setattr(engine, "lean", lambda *_: Recognised(rng.choice(INTENTS), 50))
    held = Held()
    for number in range(turns):
        held = Held() if number % 4 == 0 else held
        line = rng.choice(lines)
        answer, held = respond(open_base, line, held, date(2026, 7, 4))
        assert answer.blocks, line
