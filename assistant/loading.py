"""Open a base: the shipped one or a folder of one's own, compiled tables included (above the layers it joins)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.graph.locate import shipped_ontology
from assistant.model.knowledge import KnowledgeBase, MemoryStore

if TYPE_CHECKING:
    from assistant.reasoning.tables import Table

Progress = Callable[[str, int, int], None]


@dataclass(frozen=True)
class OpenBase:
    """A knowledge base with its score table, which is compiled when first asked for."""

    kb: KnowledgeBase
    folder: Path

    @cached_property
    def table(self) -> Table:
        """The score table of all taxa that an identification may name."""
        from assistant.reasoning.tables import compile_table

        return compile_table(self.kb)


def open_base(folder: Path | None = None) -> OpenBase:
    """Open a base folder (the shipped one when None). Raises DataError where it is at fault."""
    from assistant.model.build import build_folder

    where = shipped_ontology() if folder is None else folder
    rows = build_folder(where)
    return OpenBase(KnowledgeBase(MemoryStore(rows.shared, rows.grouped, rows.version)), where)
