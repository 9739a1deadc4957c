"""The compiled form of a base folder: rows, score table, signature of its files (above the layers it joins)."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.graph.load import paused_collector
from assistant.graph.snapshot import write_snapshot
from assistant.model.build import Rows, build_folder
from assistant.model.knowledge import KnowledgeBase, MemoryStore
from assistant.signature import code_key

if TYPE_CHECKING:
    from assistant.reasoning.tables import Table, Workings

Progress = Callable[[str, int, int], None]


@dataclass(frozen=True, slots=True)
class Compiled:
    """The rows and the score table of a base, the key of the code that made them, and when (ns) that began."""

    rows: Rows
    table: Table
    workings: Workings
    key: str
    made: int

    def write(self, path: Path) -> None:
        """Write it to a snapshot in one step. Raises OSError when that cannot be."""
        from assistant.reasoning.tables import table_parts

        kinds, arrays = table_parts(self.table, self.workings)
        with paused_collector():
            write_snapshot(path, self.key, {**self.rows.shared, **self.rows.grouped, **kinds}, arrays,
                           {"version": self.rows.version, "files": self.rows.files, "made": self.made})


def compile_folder(folder: Path, progress: Progress) -> Compiled:
    """Compile a base folder. Raises DataError where it is at fault."""
    from assistant.reasoning.tables import work_out

    made = time.time_ns()
    with paused_collector():
        rows = build_folder(folder, lambda done, of: progress("reading the base", done, of))
        kb = KnowledgeBase(MemoryStore(rows.shared, rows.grouped, rows.version))
        table, workings = work_out(kb, progress=lambda done, of: progress("compiling the base", done, of))
    return Compiled(rows, table, workings, code_key(), made)
