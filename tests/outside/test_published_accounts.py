"""Fishes described in plain words after published accounts and keys, named by the conversation as an angler would.

``published_accounts.jsonl`` holds one fish a line: what the account tells of it in the words of somebody who has it in
hand (ours; the features are the account's), where it was, the name the account gives, and the work. Agencies, museums,
journals and old books; the base may have read the same works for other statements.
"""

from __future__ import annotations

import json
from contextlib import closing
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.loading import open_base

FIRST, THREE, SAID = 0.75, 0.88, 0.9
"""The least share named first and among the first three (measured: 0.81 and 0.94), and what no wrong name may reach."""
PATH = Path(__file__).with_name("published_accounts.jsonl")


def accounts() -> list[dict[str, Any]]:
    """The described fishes."""
    return [json.loads(line) for line in PATH.read_text(encoding="utf-8").splitlines()]


def named(base: Base, account: dict[str, Any]) -> list[tuple[str, float]]:
    """The scientific names of the candidates with their probabilities, best first."""
    kb = base.kb
    answer, held = respond(base, account["say"], Held(), date(2026, 7, 4))
    if account["place"] and not held.places:
        place = kb.place(account["place"].lower())
        assert place is not None, account["place"]
        answer, _ = respond(base, f"{account['say']}, {place.label}", Held(), date(2026, 7, 4))
    return [(_plain(kb.taxon(c.taxon).scientific), c.probability) for c in answer.candidates]


def _plain(name: str) -> str:
    return " x ".join(sorted(name.replace("×", "x").split(" x ")))


Outcomes = list[tuple[str, set[str], list[tuple[str, float]]]]


@pytest.fixture(scope="module", params=[pytest.param(2, id="half"), pytest.param(1, id="all", marks=pytest.mark.long)])
def outcomes(request: pytest.FixtureRequest) -> Outcomes:
    """The id of each account, the names that are right, the candidates."""
    with closing(open_base()) as base:
        return [(a["id"], {_plain(n) for n in (a["expected"], *a["accept"])}, named(base, a))
                for a in accounts()[::request.param]]


def test_every_account_names_its_source() -> None:
    """A work, and where it was read."""
    assert all(a["source"]["title"] and a["source"]["author"] for a in accounts())


def test_described_fishes_are_named(outcomes: Outcomes) -> None:
    """Most come first, nearly all among the first three."""
    first = [bool(found) and found[0][0] in right for _, right, found in outcomes]
    three = [any(name in right for name, _ in found[:3]) for _, right, found in outcomes]
    assert sum(first) >= FIRST * len(first), sum(first) / len(first)
    assert sum(three) >= THREE * len(three), sum(three) / len(three)


def test_no_wrong_name_is_said_with_confidence(outcomes: Outcomes) -> None:
    """What is said with 0.9 or more is right."""
    assert not [(i, found[0]) for i, right, found in outcomes if found and found[0][1] >= SAID
                and found[0][0] not in right]
