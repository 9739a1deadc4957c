"""Dates and seasons are read against the day of the clock."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.lexicon import lexicon_of
from assistant.dialogue.tokens import tokenize
from assistant.dialogue.when import When, read_when
from assistant.model.knowledge import KnowledgeBase
from tests.cases.reader import rows

CASES = rows("dates")
CLOCK = date(2026, 7, 4)


def _when(kb: KnowledgeBase, text: str, clock: date = CLOCK) -> When:
    return read_when(text, tokenize(text), lexicon_of(kb), clock)


@pytest.mark.parametrize("case", CASES, ids=[f"{c['typed']} on {c['clock']}" for c in CASES])
def test_forms(kb: KnowledgeBase, case: dict[str, str]) -> None:
    """Each typed date gives one of the allowed readings, an impossible one gives none."""
    found = _when(kb, case["typed"], date.fromisoformat(case["clock"]))
    assert (found.date or found.season or "-") in case["expected"].split("|")


@pytest.mark.parametrize(
    "text", ["may i keep it", "what may i keep", "march up the creek", "it can fall off", "spring creek"]
)
def test_ordinary_words(kb: KnowledgeBase, text: str) -> None:
    """Words that are also months or seasons are left alone where they are not meant so."""
    found = _when(kb, text)
    assert (found.date, found.season) == (None, "")


def test_date_inside_a_question(kb: KnowledgeBase) -> None:
    """The stretch of the line that is the date is given, so that its numbers are read for nothing else."""
    found = _when(kb, "walleye, 40 cm, 10 june 2026 - mine to keep?")
    assert found.date == "2026-06-10"
    assert found.spans == ((16, 28),)
