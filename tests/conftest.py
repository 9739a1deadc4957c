"""Fixtures that many tests share: the shipped base, read once, a small made-up base of one's own, a command runner."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from assistant.graph.locate import shipped_ontology
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.bases import Ran, Tellfin, copy_tiny_base, knowledge_of


@pytest.fixture(scope="session")
def kb() -> KnowledgeBase:
    """The shipped base; read-only, shared by the whole run."""
    return knowledge_of(shipped_ontology())


@pytest.fixture()
def tiny_base(tmp_path: Path) -> Path:
    """The folder of a made-up base that a test may change."""
    return copy_tiny_base(tmp_path / "base")


@pytest.fixture()
def tiny_kb(tiny_base: Path) -> KnowledgeBase:
    """The knowledge base of the made-up base."""
    return knowledge_of(tiny_base)


@pytest.fixture()
def tellfin(monkeypatch: pytest.MonkeyPatch) -> Tellfin:
    """Run a command in process; ``stdin`` is what it reads."""
    monkeypatch.delenv("TELLFIN_BASE", raising=False)

    def run(*words: object, stdin: str = "") -> Ran:
        from assistant.cli.main import main

        out, err = io.StringIO(), io.StringIO()
        code = main([str(w) for w in words], io.StringIO(stdin), out, err)
        return Ran(code, out.getvalue(), err.getvalue())

    return run
