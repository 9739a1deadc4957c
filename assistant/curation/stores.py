"""A base that can be changed, wherever it is kept: a folder of one's own, or a server (layer 4)."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Protocol
from zlib import crc32

from assistant.curation.bases import base_folder, is_server, own_folder
from assistant.curation.desk import Desk
from assistant.curation.history import Author, read_changes
from assistant.curation.transact import Outcome, Work, transact
from assistant.graph.lines import Index
from assistant.graph.locate import cache_folder, shipped_shapes
from assistant.graph.values import Node


class Store(Protocol):
    """What commands need of a base that they change."""

    def transact(self, author: Author, when: datetime, work: Work, dry_run: bool = False) -> Outcome:
        """Make one change, or refuse it, or only try it."""

    def changes(self) -> list[Node]:
        """Every change, oldest first."""

    def index(self) -> Index:
        """The base as it stands."""

    def curator(self) -> str:
        """The name remembered on this machine, or empty."""

    def remember(self, name: str) -> None:
        """Remember the curator's name on this machine."""


class FolderStore:
    """A folder of Turtle files."""

    def __init__(self, folder: Path, shapes: Path, cache: Path | None = None) -> None:
        """``cache`` is a folder in which it is kept what stands where, so that the next process need not look."""
        self.folder = folder
        name = f"{folder.name[:40] or 'base'}-{crc32(str(folder.absolute()).encode()):08x}.files"
        self.desk = Desk(folder, shapes, cache / name if cache else None)

    def transact(self, author: Author, when: datetime, work: Work, dry_run: bool = False) -> Outcome:
        """Make one change, or refuse it, or only try it."""
        return transact(self.desk, author, when, work, dry_run)

    def changes(self) -> list[Node]:
        """Every change, oldest first."""
        return read_changes(self.folder)

    def index(self) -> Index:
        """The base as it stands."""
        return self.desk.index()

    def curator(self) -> str:
        """The name remembered on this machine, or empty."""
        return read_name(self.folder / ".tellfin" / "curator")

    def remember(self, name: str) -> None:
        """Remember the curator's name on this machine."""
        write_name(self.folder / ".tellfin" / "curator", name)


def open_store(base: str | None, reading: bool = False) -> Store:
    """The base of ``--base``, ready to be changed (UsageError for the shipped one), or only to be read."""
    if base and is_server(base):
        from assistant.curation.served import ServerStore

        return ServerStore(base, shipped_shapes())
    return FolderStore(base_folder(base) if reading else own_folder(base), shipped_shapes(), cache_folder())


def read_name(path: Path) -> str:
    """The first line of a small text file, or empty."""
    try:
        return path.read_text(encoding="utf-8").strip()[:200]
    except (OSError, UnicodeDecodeError):
        return ""


def write_name(path: Path, name: str) -> None:
    """Keep a name in a small text file; a folder that cannot be written is passed over (it is asked for again)."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(name + "\n", encoding="utf-8")
    except OSError:
        return
