"""Founding a base in an empty folder from the sheets of a whole one (layer 4)."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

from assistant.curation.check import check_folder
from assistant.curation.findings import errors
from assistant.curation.journal import commit, locked
from assistant.curation.whole_sheets import import_whole
from assistant.errors import DataError, UsageError
from assistant.graph.locate import shipped_shapes


def found_base(sheets: Path, target: str | None) -> int:
    """Write and check the base of some sheets into an empty folder; gives the number of files.

    UsageError when the folder is not empty, DataError when the base would not pass the check; nothing is then written.
    """
    if not target:
        raise UsageError("a whole base needs a folder of its own", "give --base DIR, a new or empty folder")
    folder = Path(target)
    if folder.exists() and (not folder.is_dir() or any(p.name != ".tellfin" for p in folder.iterdir())):
        raise UsageError("is not an empty folder", "a whole base is only imported into an empty one", target)
    files = import_whole(sheets)
    with TemporaryDirectory() as trial:
        for name, data in files.items():
            path = Path(trial) / name
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(data)
        faults = errors(check_folder(Path(trial), shipped_shapes()).findings)
    if faults:
        raise DataError(f"the base would not pass the check: {faults[0].found}; expected {faults[0].expected}",
                        f"{len(faults)} errors in all; mend the sheets", faults[0].thing)
    folder.mkdir(parents=True, exist_ok=True)
    with locked(folder):
        commit(folder, dict(files))
    return len(files)
