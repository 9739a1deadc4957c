"""Bases and commands for tests: a made-up base to change, its bytes, its records, a command run in process."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from assistant.graph.locate import shipped_ontology
from assistant.graph.read import read_file, turtle_files
from assistant.graph.values import Node
from assistant.model.build import build_folder
from assistant.model.knowledge import KnowledgeBase, MemoryStore

TINY = Path(__file__).parents[1] / "data" / "tiny"
"""Three made-up species of two genera, six characters, two invented waters."""


@dataclass(frozen=True, slots=True)
class Ran:
    """What a command left behind: exit code, standard output, standard error."""

    code: int
    out: str
    err: str


Tellfin = Callable[..., Ran]
"""Runs a command in process: ``tellfin("check", "--all")``; ``stdin`` is what it reads."""


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


def contents_of(folder: Path) -> dict[str, bytes]:
    """Every Turtle file of a base by its path, to be held against another moment."""
    return {p.relative_to(folder).as_posix(): p.read_bytes() for p in sorted(folder.rglob("*.ttl"))}


def files_of(folder: Path) -> Iterator[tuple[Path, dict[str, Node]]]:
    """Each Turtle file of a folder with its nodes, in the order of their paths."""
    for path in turtle_files(folder):
        yield path, read_file(path)
