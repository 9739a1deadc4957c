"""An earlier version of a base, written beside it from the record of its changes (layer 4)."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from pathlib import Path

from assistant.curation.history import invert
from assistant.curation.transact import new_contents
from assistant.curation.view import Draft, one
from assistant.errors import DataError, UsageError
from assistant.graph.catalogue import digest_of
from assistant.graph.lines import Index
from assistant.graph.values import Node
from assistant.model.build import version_of as digests_version


def replay(index: Index, changes: Sequence[Node], version: str, into: Path) -> int:
    """Write the given version of a base into a new folder; gives how many changes lie between it and now.

    Raises UsageError for a version that no change names, DataError when the files were also edited in other ways, so
    that the version cannot be brought back exactly.
    """
    if into.exists() and (not into.is_dir() or any(into.iterdir())):
        raise UsageError("is not an empty folder", "name a folder that does not exist yet", str(into))
    contents = {index.name(path): data for path, data in index.contents.items()}
    steps = 0 if version == digests_version(index.digests()) else _steps_back(changes, version)
    if steps:
        draft = Draft(index)
        for change in reversed(changes[len(changes) - steps:]):
            invert(change, draft)
            contents.pop(f"changes/{change.id.partition(':')[2]}.ttl", None)
        for name, data in new_contents(draft, None).items():
            if data is None:
                contents.pop(name, None)
            else:
                contents[name] = data
    _write(contents, into)
    written = {path: path.read_bytes() for path in into.rglob("*.ttl")}
    if digests_version({p.relative_to(into).as_posix(): digest_of(data) for p, data in written.items()}) != version:
        shutil.rmtree(into)
        raise DataError(f"version {version} cannot be brought back exactly",
                        "files were also edited outside tellfin; look in their version control")
    return steps


def _steps_back(changes: Sequence[Node], version: str) -> int:
    for number, change in enumerate(changes):
        if one(change, "tf:versionBefore") == version:
            return len(changes) - number
    raise UsageError(f"no change of this base names the version {version!r}", "tellfin history lists them")


def _write(contents: dict[str, bytes], into: Path) -> None:
    for name, data in contents.items():
        target = into / name
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(data)
