"""Fixtures that many tests share: the shipped base, read once, and a small made-up base of one's own."""

from __future__ import annotations

import shutil
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
    for name in ("core.ttl", "qualifiers.ttl"):
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
