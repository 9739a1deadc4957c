"""Fixtures that many tests share: the shipped base, read once, and a small made-up base of one's own."""

from __future__ import annotations

import io
import shutil
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import pytest

from assistant.graph.locate import shipped_ontology
from assistant.model.build import build_folder
from assistant.model.knowledge import KnowledgeBase, MemoryStore

TINY = Path(__file__).parent / "data" / "tiny"
"""Three made-up species of two genera, six characters, two invented waters."""


def copy_tiny_base(folder: Path) -> Path:
    """A writable copy of the made-up base, with the shipped vocabulary beside it."""
    shutil.copytree(TINY, folder)
    for name in ("core.ttl", "qualifiers.ttl", "regulations.ttl"):
        shutil.copy(shipped_ontology() / "vocabulary" / name, folder / "vocabulary" / name)
    return folder


def knowledge_of(folder: Path) -> KnowledgeBase:
    """The knowledge base of a folder, held in memory."""
    rows = build_folder(folder)
    return KnowledgeBase(MemoryStore(rows.shared, rows.grouped, rows.version))


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


@dataclass(frozen=True, slots=True)
class Ran:
    """What a command left behind: exit code, standard output, standard error."""

    code: int
    out: str
    err: str


@pytest.fixture()
def tellfin(monkeypatch: pytest.MonkeyPatch) -> Callable[..., Ran]:
    """Run a command in process; ``stdin`` is what it reads."""
    monkeypatch.delenv("TELLFIN_BASE", raising=False)

    def run(*words: object, stdin: str = "") -> Ran:
        from assistant.cli.main import main

        out, err = io.StringIO(), io.StringIO()
        code = main([str(w) for w in words], io.StringIO(stdin), out, err)
        return Ran(code, out.getvalue(), err.getvalue())

    return run


def contents_of(folder: Path) -> dict[str, bytes]:
    """Every Turtle file of a base by its path, to be held against another moment."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*.ttl"))}
