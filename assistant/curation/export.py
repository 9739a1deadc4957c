"""Records of a base as rows of sheets, in a fixed order (layer 4)."""

from __future__ import annotations

from pathlib import Path

from assistant.curation.files import write_synced
from assistant.curation.lookup import Lookup
from assistant.curation.sheet_rows import darwin_row, fact_row, name_row, range_row, source_row
from assistant.curation.view import one
from assistant.curation.whole_sheets import export_whole
from assistant.errors import ToolError, UsageError
from assistant.graph.lines import Index
from assistant.graph.values import Node

_FORMS = {"facts": ("st", fact_row), "darwin-core": ("st", darwin_row), "names": ("name", name_row),
          "ranges": ("range", range_row), "sources": ("src", source_row)}


def sheet_rows(index: Index, form: str, taxon: str | None = None) -> list[tuple[str, ...]]:
    """The rows of a sheet, by id; retracted statements are left out."""
    prefix, make = _FORMS[form]
    wanted = _below(index, Lookup(index, adding=False).fishes(taxon)) if taxon else None
    keys = [k for k in index.ids(prefix) if wanted is None or k.partition(":")[2].partition(".")[0] in wanted]
    index.fetch(keys)
    nodes: list[Node] = [n for n in map(index.node, keys) if n is not None]
    return [make(n, index) for n in nodes if not one(n, "prov:invalidatedAtTime")]


def _below(index: Index, keys: list[str]) -> set[str]:
    """The local ids of taxa and all below them."""
    taxa = index.ids("taxon")
    index.fetch(taxa)
    found, size = set(keys), 0
    while len(found) != size:
        size = len(found)
        found |= {t for t in taxa if (n := index.node(t)) is not None and one(n, "tf:parent") in found}
    return {k.partition(":")[2] for k in found}


def write_whole(index: Index, folder: Path) -> int:
    """Write a whole base as sheets into a new folder; gives their number."""
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise UsageError("is not an empty folder", "name a folder that does not exist yet", str(folder))
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise ToolError(f"cannot be made: {error.strerror}", "check permissions", str(folder)) from error
    sheets = export_whole(index)
    for name, data in sorted(sheets.items()):
        write_synced(folder / name, data)
    return len(sheets)
