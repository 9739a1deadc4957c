"""Which base is meant by ``--base`` or TELLFIN_BASE, and making one of one's own (layer 4)."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path

from assistant.curation.files import sync_folder
from assistant.curation.journal import recover
from assistant.errors import ToolError, UsageError
from assistant.graph.locate import shipped_ontology

IGNORED = ".tellfin/\n"
"""What a base of one's own keeps out of version control: lock, journal, the curator's name on this machine."""


def is_server(text: str | None) -> bool:
    """True when the base is given as the address of a server."""
    return bool(text) and str(text).startswith(("http://", "https://"))


def base_folder(text: str | None, tell: Callable[[str], None] | None = None) -> Path:
    """The folder to read: the shipped base when nothing is given; a half-done change in it is finished first.

    For the address of a server it is a snapshot of what the server holds; ``tell`` is called with a line when the
    server did not answer and the snapshot is an older one.
    """
    if not text:
        return shipped_ontology()
    if is_server(text):
        from assistant.curation.served import snapshot_folder

        return snapshot_folder(text, tell or (lambda _: None))
    folder = Path(text)
    if not folder.is_dir():
        raise UsageError("is not a folder", "give the folder of a base; tellfin new-base makes one", text)
    recover(folder)
    return folder


def own_folder(text: str | None) -> Path:
    """The folder to change. UsageError for the shipped base."""
    if not text:
        raise UsageError("the shipped base is read-only", "make one of your own: tellfin new-base DIR, then --base DIR")
    folder = base_folder(text)
    if folder.resolve() == shipped_ontology().resolve():
        raise UsageError("the shipped base is read-only", "make one of your own: tellfin new-base DIR, then --base DIR",
                         text)
    if not os.access(folder, os.W_OK):
        raise ToolError("the folder cannot be written to", "check its permissions", text)
    return folder


def new_base(target: Path) -> int:
    """Copy the shipped base into a new folder; gives the number of files. UsageError when something stands there."""
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise UsageError("is not an empty folder", "name a folder that does not exist yet", str(target))
    stage = target.with_name(target.name + ".new")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.rmtree(stage, ignore_errors=True)
        shutil.copytree(shipped_ontology(), stage, copy_function=shutil.copyfile)
        (stage / ".gitignore").write_text(IGNORED, encoding="utf-8")
        if target.exists():
            target.rmdir()
        stage.rename(target)
        sync_folder(target.parent)
    except OSError as error:
        shutil.rmtree(stage, ignore_errors=True)
        raise ToolError(f"cannot be made: {error.strerror}", "check free space and permissions", str(target)) from error
    return sum(1 for _ in target.rglob("*.ttl"))
