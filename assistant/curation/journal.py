"""Several files changed as one: staged, journalled, moved into place; a reader or the next writer finishes a half-done
change (layer 4).

All lives in ``.tellfin/`` inside the base: ``lock`` (held while a change is made), ``stage/`` (new contents) and
``journal.json`` (which staged file goes where). The journal appearing is the moment of commit: before it the old
state stands, after it the new one, whatever is killed.
"""

from __future__ import annotations

import contextlib
import json
import os
import shutil
import sys
import time
from collections.abc import Iterator, Mapping
from pathlib import Path

from assistant.curation.files import move, sync_folder, write_synced
from assistant.errors import DataError, ToolError

FOLDER = ".tellfin"
WAIT = 60.0
"""Seconds to wait for another writer."""


@contextlib.contextmanager
def locked(base: Path, wait: float = WAIT) -> Iterator[None]:
    """Hold the base for writing; a half-done change is finished first. ToolError when another holds it too long."""
    place = base / FOLDER
    try:
        place.mkdir(exist_ok=True)
        handle = os.open(place / "lock", os.O_RDWR | os.O_CREAT, 0o644)
    except OSError as error:
        raise ToolError(f"cannot be locked: {error.strerror}", "check the folder's permissions", str(base)) from error
    try:
        _acquire(handle, wait, base)
        _finish(base)
        yield
    finally:
        os.close(handle)


def commit(base: Path, contents: Mapping[str, bytes | None]) -> None:
    """Give files (paths relative to the base) new contents, or remove those given as None, as one. Needs the lock."""
    stage = base / FOLDER / "stage"
    steps: list[tuple[str, str]] = []
    try:
        shutil.rmtree(stage, ignore_errors=True)
        stage.mkdir(parents=True)
        for number, (name, data) in enumerate(sorted(contents.items())):
            if data is None:
                steps.append(("", name))
                continue
            (base / name).parent.mkdir(parents=True, exist_ok=True)
            write_synced(stage / str(number), data)
            steps.append((str(number), name))
        sync_folder(stage)
        write_synced(stage / "journal.json", json.dumps(steps).encode())
        move(stage / "journal.json", base / FOLDER / "journal.json")
    except (OSError, ToolError) as error:
        shutil.rmtree(stage, ignore_errors=True)
        reason = error.message if isinstance(error, ToolError) else f"cannot be written: {error.strerror}"
        raise ToolError(reason, "nothing was changed; check free space and permissions", str(base)) from error
    _finish(base)


def recover(base: Path) -> None:
    """Finish a change that was committed but not moved into place, when there is one and the base can be written."""
    if (base / FOLDER / "journal.json").exists() and os.access(base / FOLDER, os.W_OK):
        with locked(base):
            pass


def _finish(base: Path) -> None:
    journal, stage = base / FOLDER / "journal.json", base / FOLDER / "stage"
    if not journal.exists():
        return
    try:
        steps = json.loads(journal.read_bytes())
    except (OSError, ValueError) as error:
        raise DataError("the journal of a half-done change cannot be read", "move it away and run tellfin check",
                        str(journal)) from error
    for staged, name in steps:
        target = base / name
        if not staged:
            target.unlink(missing_ok=True)
            sync_folder(target.parent)
        elif (stage / staged).exists():
            move(stage / staged, target)
    journal.unlink()
    sync_folder(base / FOLDER)
    shutil.rmtree(stage, ignore_errors=True)


def _acquire(handle: int, wait: float, base: Path) -> None:
    deadline = time.monotonic() + wait
    while not _try_lock(handle):
        if time.monotonic() > deadline:
            raise ToolError(f"another change has held the base for {wait:g} seconds", "try again when it is done",
                            str(base))
        time.sleep(0.01)


def _try_lock(handle: int) -> bool:
    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True
