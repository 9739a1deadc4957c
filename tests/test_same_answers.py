"""The same answers, to the byte of their JSON, from the files, from their compiled form, and from a damaged one."""

from __future__ import annotations

import csv
import json
import os
import shutil
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import respond
from assistant.graph.locate import shipped_ontology
from assistant.loading import OpenBase, SteadyStore, open_base, snapshot_path
from assistant.model.knowledge import KnowledgeBase
from assistant.render.json import render_json

CLOCK = date(2026, 7, 4)
QUESTIONS = 200


def questions() -> Iterator[tuple[str, str]]:
    """Conversation and line of the open utterances."""
    with (Path(__file__).parent / "cases" / "utterances_open.tsv").open(encoding="utf-8", newline="") as file:
        rows = csv.DictReader(
            (line for line in file if not line.startswith("#")), delimiter="\t", quoting=csv.QUOTE_NONE
        )
        for row, _ in zip(rows, range(QUESTIONS), strict=False):
            yield row["conversation"], row["say"]


def answers(base: OpenBase) -> list[str]:
    """The JSON of every answer, the turns of a conversation together."""
    held: dict[str, Held] = {}
    out = []
    for conversation, say in questions():
        answer, held[conversation] = respond(base, say, held.get(conversation, Held()), CLOCK)
        out.append(json.dumps(render_json(base.kb, say, conversation, answer, held[conversation]), ensure_ascii=False))
    return out


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped base that looks as if it had lain there for long."""
    place = shutil.copytree(shipped_ontology(), tmp_path_factory.mktemp("bases") / "base")
    for path in place.rglob("*.ttl"):
        os.utime(path, ns=(10**18, 10**18))
    return place


@pytest.mark.long
def test_same_answers_whatever_the_base_is_read_from(folder: Path, tmp_path: Path) -> None:
    """Held in memory, compiled just now, read from the compiled form, and with that form damaged under way."""
    store = SteadyStore(folder, None)
    right = answers(OpenBase(KnowledgeBase(store), folder, store))
    assert len(right) == QUESTIONS and len(set(right)) > QUESTIONS // 2
    assert answers(open_base(folder, cache=tmp_path)) == right
    again = open_base(folder, cache=tmp_path)
    assert answers(again) == right
    damaged = open_base(folder, cache=tmp_path)
    path = snapshot_path(folder, tmp_path)
    assert path is not None
    data = bytearray(path.read_bytes())
    for at in range(8192, len(data), 997):
        data[at] ^= 16
    path.write_bytes(data)
    assert answers(damaged) == right
