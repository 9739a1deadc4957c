"""Cautions and practices are reached by their own bare phrases through the whole engine (marker long)."""

from __future__ import annotations

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from tests.dialogue.conftest import CLOCK


@pytest.mark.long
@pytest.mark.parametrize(("kind", "least"), [("caution", 0.95), ("practice", 0.75)])
def test_advice_is_reached_by_a_bare_phrase(open_base: Base, kind: str, least: float) -> None:
    """Typed alone, with no fish named, some phrase of nearly every caution, and of most practices, brings it up."""
    records = [r for r in open_base.kb.all(kind) if r.words]
    reached = sum(any(_brings(open_base, phrase, f"{kind}:{r.id}") for phrase in r.words) for r in records)
    assert reached >= least * len(records)


def _brings(base: Base, line: str, short: str) -> bool:
    answer, _ = respond(base, line, Held(), CLOCK)
    return any(short in block.statements for block in answer.blocks)
