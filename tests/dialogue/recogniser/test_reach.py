"""Cautions and practices are reached by their own phrases through the whole engine (marker long)."""

from __future__ import annotations

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.dialogue.wording.speak import fish
from tests.dialogue.conftest import CLOCK


@pytest.mark.long
@pytest.mark.parametrize("kind", ["caution", "practice"])
def test_advice_is_reached_by_its_phrases(open_base: Base, kind: str) -> None:
    """Some phrase of nearly every piece of advice brings it up: typed alone, or beside a fish that it is about."""
    kb = open_base.kb
    records = [r for r in kb.all(kind) if r.words]
    beside = {r.id: [fish(kb, a.partition(":")[2]) for a in r.about[:1]] for r in records}
    reached = sum(any(_brings(open_base, f"{name} {phrase}".strip(), f"{kind}:{r.id}")
                      for name in ("", *beside[r.id]) for phrase in r.words) for r in records)
    assert reached >= 0.95 * len(records)


def _brings(base: Base, line: str, short: str) -> bool:
    answer, _ = respond(base, line, Held(), CLOCK)
    return any(short in block.statements for block in answer.blocks)
