"""What a compiled base depends on: the files it was made from and the code that made it (above the graph layer)."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from zlib import crc32

from assistant import __version__

RACY = 2_000_000_000
"""A file changed less than this (ns) before it was read may change again without a new time: it is read to be sure."""
SHAPING = (
    "iris.py",
    "text.py",
    "compiling.py",
    "recompiling.py",
    "graph/canonical.py",
    "graph/read.py",
    "graph/snapshot.py",
    "graph/values.py",
    "model/accounts.py",
    "model/build.py",
    "model/kinship.py",
    "model/records.py",
    "model/regulations.py",
    "model/respoken.py",
    "model/revise.py",
    "model/schema.py",
    "model/spelling.py",
    "model/spoken.py",
    "model/stems.py",
    "reasoning/tables.py",
    "reasoning/evidence.py",
    "reasoning/crosses.py",
    "reasoning/observer.py",
    "reasoning/standing.py",
    "reasoning/rework.py",
    "reasoning/sparse.py",
    "reasoning/place_prior.py",
    "reasoning/size.py",
)
"""The code that decides what stands in a compiled base."""

Signature = Mapping[str, Sequence[int | str]]
"""Path below the folder to size, time of change (ns) and digest."""


@cache
def code_key() -> str:
    """A checksum of the code that shapes a compiled base, so that it is made again when that code changes."""
    package = Path(__file__).parent
    check, size = crc32(__version__.encode()), 0
    for name in SHAPING:
        path = package / name
        if path.is_file():
            text = path.read_bytes()
            check, size = crc32(text, crc32(name.encode(), check)), size + len(text)
    return f"{check:08x}{size:x}"


def stats_of(folder: Path) -> dict[str, tuple[int, int]]:
    """Size and time of change (ns) of every Turtle file below a folder, by its path with forward slashes."""
    return dict(sorted(_walk(str(folder), "")))


def _walk(folder: str, above: str) -> Iterator[tuple[str, tuple[int, int]]]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir():
                yield from _walk(entry.path, f"{above}{entry.name}/")
            elif entry.name.endswith(".ttl"):
                found = entry.stat()
                yield above + entry.name, (found.st_size, found.st_mtime_ns)


def file_digest(data: bytes) -> str:
    """The digest of the content of one file."""
    import hashlib

    return hashlib.blake2b(data, digest_size=16).hexdigest()


def same_files(folder: Path, signature: Signature, made: int, moved: bool = False) -> bool:
    """True when the files of a folder are those of the signature, taken at ``made`` (ns).

    A file of the same size and time is not read, unless it had just changed when the signature was taken. ``moved``
    files (an installed package) carry other times: theirs need only be of one batch.
    """
    stats = stats_of(folder)
    if stats.keys() != signature.keys():
        return False
    if moved:
        return _one_batch(stats, signature)
    for name, (size, when) in stats.items():
        old = signature[name]
        if size != old[0]:
            return False
        if (when != old[1] or when > made - RACY) and file_digest((folder / name).read_bytes()) != old[2]:
            return False
    return True


def _one_batch(stats: Mapping[str, tuple[int, int]], signature: Signature) -> bool:
    times = [when for _, when in stats.values()]
    return max(times) - min(times) < 60_000_000_000 and all(size == signature[n][0] for n, (size, _) in stats.items())
