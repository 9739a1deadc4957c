"""A compiled base brought up to date where only some of its files have changed (above the layers it joins).

What comes out is the same file, byte for byte, that compiling all of the base gives. Kinds of rows that have not
changed are copied as they stand, with their checksums compared; whatever is odd leads to compiling all of it.
"""

from __future__ import annotations

import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from assistant.graph.load import paused_collector
from assistant.graph.snapshot import Packed, Rows, Snapshot, SnapshotError, encode_row, write_snapshot
from assistant.model.accounts import Row, Told
from assistant.model.build import read_told, version_of
from assistant.model.knowledge import KnowledgeBase
from assistant.model.revise import Revised, revise
from assistant.model.schema import BY_NAME
from assistant.signature import RACY, code_key, file_digest, stats_of

if TYPE_CHECKING:
    from assistant.reasoning.tables import Table, Workings

Progress = Callable[[str, int, int], None]
Files = dict[str, tuple[int, int, str]]
"""Size, time of change (ns) and digest by path below the folder."""
MOST = 0.5
"""The share of changed files from which it is quicker to compile all of the base."""
WIDE = ("character", "state", "frequency")
"""Kinds of rows on which every cell of the score table may depend."""


def bring_up_to_date(folder: Path, path: Path, progress: Progress) -> bool:
    """Bring the compiled form at a path up to date; False where it must be made anew. DataError for a faulty file."""
    made = time.time_ns()
    try:
        with paused_collector(), Snapshot(path, code_key()) as former:
            return _recompile(former, folder, path, made, progress)
    except (SnapshotError, OSError, LookupError, TypeError, ValueError):
        return False


def _recompile(former: Snapshot, folder: Path, path: Path, made: int, progress: Progress) -> bool:
    files, contents = _files(former, folder)
    old: Mapping[str, Sequence[Any]] = former.extra["files"]
    gone = old.keys() - files.keys()
    if not files or len(contents) + len(gone) > MOST * len(files):
        return False
    changed: dict[str, Sequence[Told] | None] = dict.fromkeys(gone)
    for number, (name, data) in enumerate(sorted(contents.items()), start=1):
        changed[name] = read_told(data, folder / name)
        progress("reading what has changed", number, len(contents))
    version = version_of({name: entry[2] for name, entry in files.items()})

    def read(name: str) -> Sequence[Told]:
        data = (folder / name).read_bytes()
        if file_digest(data) != files[name][2]:
            raise SnapshotError("a file changed meanwhile")
        return read_told(data, folder / name)

    revised = revise(former, changed, version, read, lambda name: name.split("/"))
    kinds, arrays = _table_parts(former, revised)
    write_snapshot(path, former.key, {**_kinds(former, revised), **kinds}, arrays,
                   {"version": version, "files": files, "made": made})
    return True


def _files(former: Snapshot, folder: Path) -> tuple[Files, dict[str, bytes]]:
    """Every file with what is known of it, in order, and the contents of those that have changed."""
    old, then = former.extra["files"], int(former.extra["made"])
    files: Files = {}
    contents: dict[str, bytes] = {}
    stats = stats_of(folder)
    for name in sorted(stats, key=lambda n: n.split("/")):
        size, when = stats[name]
        known = old.get(name)
        if known and known[0] == size and known[1] == when and when <= then - RACY:
            files[name] = (size, when, str(known[2]))
            continue
        data = (folder / name).read_bytes()
        digest = file_digest(data)
        files[name] = (size, when, digest)
        if not known or known[2] != digest:
            contents[name] = data
    return files, contents


def _kinds(former: Snapshot, revised: Revised) -> dict[str, Rows | Packed]:
    out: dict[str, Rows | Packed] = {}
    for kind in former.kinds():
        laid = revised.rows.get(kind)
        if not laid:
            found = former.packed(kind)
            if found is not None:
                out[kind] = found
            continue
        rows: dict[str, Any] = dict(former.items(kind))
        for key, row in laid.items():
            if row is None:
                rows.pop(key, None)
            else:
                rows[key] = encode_row(row)
        out[kind] = rows
    return out


def _table_parts(former: Snapshot, revised: Revised) -> tuple[dict[str, dict[str, list[Any]]], dict[str, Any]]:
    from assistant.reasoning.tables import table_parts

    return table_parts(*_table(former, revised))


def _table(former: Snapshot, revised: Revised) -> tuple[Table, Workings]:
    from assistant.reasoning.rework import rework
    from assistant.reasoning.tables import work_out

    kb = KnowledgeBase(revised)
    if any(revised.rows.get(kind) for kind in WIDE):
        return work_out(kb)
    taxa = revised.rows.get("taxon", {})
    moved = [t for t in taxa if _place(revised.get("taxon", t)) != _place(former.get("taxon", t))]
    renamed = [t for t in (*taxa, *revised.rows.get("name", {})) if revised.get("taxon", t) is not None]
    changed: dict[str, frozenset[str] | None] = dict.fromkeys((*revised.rows.get("range", {}), *renamed), frozenset())
    for taxon in revised.rows.get("statement", {}):
        changed[taxon] = _characters(former.get("statement", taxon), revised.get("statement", taxon))
    changed.update(dict.fromkeys(moved))
    return rework(kb, former, changed, bool(moved))


def _place(row: Row | None) -> list[Any] | None:
    """What of a taxon bears on others: all but its words."""
    names = ("id", *(f.name for f in BY_NAME["taxon"].fields))
    return None if row is None else [v for name, v in zip(names, row, strict=True) if name not in ("label", "note")]


def _characters(before: list[Any] | None, after: list[Any] | None) -> frozenset[str]:
    """The characters of which something else is stated than before."""
    at = 1 + next(i for i, f in enumerate(BY_NAME["statement"].fields) if f.name == "character")
    said = [{encode_row(row): str(row[at]) for row in rows or ()} for rows in (before, after)]
    return frozenset(one[row] for one, other in (said, said[::-1]) for row in one.keys() - other.keys())
