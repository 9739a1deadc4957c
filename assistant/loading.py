"""Open a base: the shipped one or a folder of one's own, by way of its compiled form (above the layers it joins).

The compiled form lies in the user's cache folder, or beside the shipped base inside the installed package. It is used
while the Turtle files are those it was made from: sizes and times are compared, and only a file that looks touched is
read to see whether it really changed. A compiled form that is missing, damaged, cut short, foreign or out of date is
made again, also while a conversation runs on it; where no cache can be written the base is held in memory.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.graph.locate import cache_folder, shipped_ontology
from assistant.graph.snapshot import Snapshot, SnapshotError
from assistant.model.knowledge import KnowledgeBase, MemoryStore, Store
from assistant.signature import code_key, same_files

if TYPE_CHECKING:
    from assistant.compiling import Compiled
    from assistant.reasoning.tables import Table

Progress = Callable[[str, int, int], None]
"""Called with what is being done, how far it is, and how far it goes."""
READY_MADE = "base.snapshot"
"""Name of the compiled form that an installed package carries beside its folder of Turtle files."""


def quiet(_doing: str, _done: int, _of: int) -> None:
    """The progress of somebody who does not want to hear of it."""


class OpenBase:
    """A knowledge base with its score table, which is read or compiled when first asked for."""

    def __init__(self, kb: KnowledgeBase, folder: Path, store: SteadyStore) -> None:
        self.kb = kb
        self.folder = folder
        self.store = store

    @cached_property
    def table(self) -> Table:
        """The score table of all taxa that an identification may name."""
        return self.store.table(self.kb)

    def close(self) -> None:
        """Let go of the compiled form."""
        self.store.close()


class SteadyStore:
    """Rows from a snapshot as long as it holds; from a fresh one, or from memory, once it turns out to be damaged."""

    def __init__(self, folder: Path, path: Path | None, progress: Progress = quiet) -> None:
        """Take the compiled form at ``path``, make it where needed; None keeps the base in memory."""
        self._folder = folder
        self._path = path
        self._progress = progress
        self._compiled: Compiled | None = None
        self._store: Snapshot | MemoryStore = self._open()
        self.version = self._store.version

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        try:
            return self._store.keys(kind)
        except SnapshotError:
            return self._again().keys(kind)

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none."""
        try:
            return self._store.get(kind, key)
        except SnapshotError:
            return self._again().get(kind, key)

    def table(self, kb: KnowledgeBase) -> Table:
        """The score table, from the compiled form where it has one."""
        from assistant.reasoning.tables import compile_table, read_table

        if isinstance(self._store, Snapshot):
            try:
                return read_table(self._store)
            except SnapshotError:
                self._again()
        if isinstance(self._store, Snapshot):
            try:
                return read_table(self._store)
            except SnapshotError:
                pass
        return self._compiled.table if self._compiled else compile_table(kb)

    def close(self) -> None:
        """Let go of the file."""
        if isinstance(self._store, Snapshot):
            self._store.close()

    def _open(self) -> Snapshot | MemoryStore:
        ready = self._folder.parent / READY_MADE
        if ready.parent.name == "_data" and ready.is_file() and (found := _usable(ready, self._folder)):
            return found
        if self._path is not None and (found := _usable(self._path, self._folder)):
            return found
        return self._make()

    def _make(self) -> Snapshot | MemoryStore:
        from assistant.compiling import compile_folder
        from assistant.recompiling import bring_up_to_date

        if self._path is not None and bring_up_to_date(self._folder, self._path, self._progress):
            with contextlib.suppress(SnapshotError):
                return Snapshot(self._path, code_key())
        compiled = compile_folder(self._folder, self._progress)
        if self._path is not None:
            try:
                compiled.write(self._path)
                _clear_away(self._path)
                return Snapshot(self._path, compiled.key)
            except (OSError, SnapshotError):
                self._progress("the compiled base cannot be kept, it is held in memory", 1, 1)
        self._compiled = compiled
        rows = compiled.rows
        return MemoryStore(rows.shared, rows.grouped, rows.version)

    def _again(self) -> Store:
        """A store to go on with after damage; damage found twice leads to memory."""
        if isinstance(self._store, Snapshot):
            self._store = self._make()
        return self._store


def open_base(folder: Path | None = None, progress: Progress = quiet, cache: Path | None = None) -> OpenBase:
    """Open a base folder (the shipped one when None). Raises DataError where it is at fault."""
    where = (shipped_ontology() if folder is None else folder).absolute()
    store = SteadyStore(where, snapshot_path(where, cache), progress)
    return OpenBase(KnowledgeBase(store), where, store)


def snapshot_path(folder: Path, cache: Path | None = None) -> Path | None:
    """Where the compiled form of a folder is kept; None where the user has no cache folder."""
    from zlib import crc32

    where = cache or cache_folder()
    if where is None:
        return None
    name = folder.name[:40] or "base"
    return where / f"{name}-{crc32(str(folder).encode()):08x}-{code_key()}.snapshot"


def _clear_away(path: Path) -> None:
    """Remove the compiled forms of the same folder that other versions of the code have made."""
    for other in path.parent.glob(path.name.rpartition("-")[0] + "-*.snapshot"):
        if other != path:
            other.unlink(missing_ok=True)


def _usable(path: Path, folder: Path) -> Snapshot | None:
    """The snapshot at a path when it is sound and made from the files as they are; None otherwise."""
    try:
        found = Snapshot(path, code_key())
    except SnapshotError:
        return None
    try:
        if same_files(folder, found.extra["files"], int(found.extra["made"]), path.name == READY_MADE):
            return found
    except (KeyError, TypeError, ValueError, OSError):
        pass
    found.close()
    return None
