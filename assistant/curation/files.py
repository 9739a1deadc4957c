"""Writing files so that a kill, a full disk or a crash leaves the old or the new content, never a part (layer 4)."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

from assistant.errors import ToolError


def write_synced(path: Path, data: bytes, named: Path | None = None) -> None:
    """Write a file and wait until the disk has it. ToolError when it cannot be written, on the path ``named``."""
    try:
        with path.open("wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
    except OSError as error:
        with contextlib.suppress(OSError):
            path.unlink()
        hint = "check free space and permissions" if path.parent.is_dir() else f"make the folder {path.parent} first"
        raise ToolError(f"cannot be written: {error.strerror}", hint, str(named or path)) from error


def replace_file(path: Path, data: bytes) -> None:
    """Put new content in place of a file in one step."""
    stage = path.with_name(f".{path.name}.{os.getpid()}.new")
    write_synced(stage, data, named=path)
    move(stage, path)


def move(source: Path, target: Path) -> None:
    """Rename over the target and wait until the folder has it. ToolError when it cannot be done."""
    try:
        os.replace(source, target)
        sync_folder(target.parent)
    except OSError as error:
        raise ToolError(f"cannot be replaced: {error.strerror}", "check the folder's permissions",
                        str(target)) from error


def sync_folder(folder: Path) -> None:
    """Wait until the disk has the entries of a folder (where the system can be asked for it)."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
