"""The many ways of telling one feature are read as that feature and as nothing else (our own wording and judgement)."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.model.knowledge import KnowledgeBase
from tests.cases.reader import rows

CLOCK = date(2026, 7, 4)


def told(kb: KnowledgeBase, line: str) -> set[str]:
    """What is read of a line: state ids, with ! those said to be missing, and counts as character=number."""
    found: set[str] = set()
    for seen in read_line(kb, line, Held(), CLOCK).seen:
        what = seen.observation
        values = what.states or (f"{what.character}={what.value}",)
        found |= {value if what.seen else f"!{value}" for value in values}
    return found


def fits(reading: str, wanted: str) -> bool:
    """True for the very reading, or for one that begins so where the rest is left open."""
    return reading == wanted or (wanted.endswith("*") and reading.startswith(wanted[:-1]))


@pytest.mark.parametrize("step", [pytest.param(12, id="twelfth"), pytest.param(3, id="third", marks=pytest.mark.long)])
def test_a_feature_is_read_as_itself_and_nothing_else(kb: KnowledgeBase, step: int) -> None:
    """Nearly all lines give one of the readings that are right for them, and no other beside it."""
    right = []
    for case in rows("ways_of_telling")[::step]:
        found, wanted = told(kb, case["said"]), case["readings"].split("|")
        right.append(bool(found) and all(any(fits(x, w) for w in wanted) for x in found))
    assert len(right) > 6000 / step
    assert sum(right) / len(right) >= 0.94
