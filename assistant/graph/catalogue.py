"""What stands in which file of a folder, kept between edits so that only changed files are read again (layer 1).

For each file: its stamp (size, times, inode), the digest of its content and the heads of its subjects. A file is read
again when its stamp differs, or when it had just changed as it was read last. The catalogue may be kept on disk, with
a checksum over all of it; one that is damaged or foreign is made anew. What is read later is held against the digest,
so that nothing is taken from a file that has changed meanwhile.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import time
from bisect import bisect_left
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path
from typing import NamedTuple
from zlib import crc32

from assistant.errors import DataError
from assistant.graph.blocks import Blocks, blocks_of, heads_of

FORMAT = 1
RACY = 2_000_000_000
"""A file changed less than this (ns) before it was read may change again under the same stamp: it is read again."""
MOST_HELD = 48_000_000
"""Bytes of file contents held for the next edit."""
WORTH_KEEPING = 12
"""Files read anew from which it pays to write the catalogue again."""

Stamp = tuple[int, int, int, int]
"""Size, time of change (ns), inode, time of the change of the inode (ns)."""


class Entry(NamedTuple):
    """What is known of a file."""

    stamp: Stamp
    read: int
    digest: str
    odd: bool
    heads: frozenset[str]


class Catalogue:
    """The files of a folder; ``refresh`` brings it up to date."""

    def __init__(self, folder: Path, kept: Path | None = None, lasting: bool = True) -> None:
        """Begin with what is kept at ``kept``, where that is sound. Call ``refresh`` before use.

        A ``lasting`` catalogue serves many indexes and holds only some contents; another holds all that it has read.
        """
        self.folder = folder
        self._kept = kept
        self._lasting = lasting
        self.entries: dict[str, Entry] = _load(kept) if kept else {}
        self._unsaved = 0 if self.entries else WORTH_KEEPING
        self._holders: dict[str, tuple[str, ...]] | None = None
        self._ordered: dict[str, list[str]] | None = None
        self._held: dict[str, Blocks] = {}

    @property
    def held(self) -> tuple[str, ...]:
        """The files whose contents are held."""
        return tuple(self._held)

    def take(self, contents: Mapping[Path, bytes]) -> None:
        """Take these contents for those of the files."""
        for path, data in contents.items():
            self._put(path.relative_to(self.folder).as_posix(), data, (0, 0, 0, 0), 0)

    def refresh(self) -> None:
        """Read what has changed. DataError for a file that cannot be read, or a folder without a Turtle file."""
        stamps = dict(_walk(str(self.folder), "")) if self.folder.is_dir() else None
        if not stamps:
            what, hint = (("is not a folder", "give the folder that holds the Turtle files") if stamps is None
                          else ("holds no Turtle file", "an empty folder is not a base"))
            raise DataError(what, hint, str(self.folder))
        for name in self.entries.keys() - stamps.keys():
            self._replace(name, None)
        for name, stamp in stamps.items():
            old = self.entries.get(name)
            if old is None or old.stamp != stamp or _is_racy(old):
                self._read(name)
        if self._kept and self._unsaved >= WORTH_KEEPING:
            self._unsaved = 0
            _save(self._kept, self.entries)

    def blocks(self, name: str) -> Blocks:
        """The subjects of a file. DataError when it is no longer what the catalogue says."""
        found = self._held.pop(name, None)
        if found is None:
            found = blocks_of(self.folder / name, self.text(name))
        self._hold(name, found)
        return found

    def text(self, name: str) -> bytes:
        """The content of a file. DataError when it is no longer what the catalogue says."""
        held = self._held.get(name)
        if held is not None:
            return held.data
        entry = self.entries[name]
        data, stamp = read_content(self.folder / name)
        if (stamp != entry.stamp or _is_racy(entry)) and digest_of(data) != entry.digest:
            raise DataError("was changed by somebody else just now", "try again", str(self.folder / name))
        return data

    def holders(self, head: str) -> tuple[str, ...]:
        """The files that hold subjects with this head, in order."""
        return self._table().get(head, ())

    def heads(self, prefix: str) -> list[str]:
        """The sorted heads under a prefix; not to be changed."""
        return self._by_prefix().get(prefix, [])

    def prefixes(self) -> list[str]:
        """The sorted prefixes of all subjects."""
        return sorted(p for p, heads in self._by_prefix().items() if heads)

    def digests(self) -> dict[str, str]:
        """The digest of every file."""
        return {name: entry.digest for name, entry in self.entries.items()}

    def _by_prefix(self) -> dict[str, list[str]]:
        if self._ordered is None:
            self._ordered = {}
            for head in sorted(self._table()):
                self._ordered.setdefault(head.partition(":")[0], []).append(head)
        return self._ordered

    def _table(self) -> dict[str, tuple[str, ...]]:
        if self._holders is None:
            self._holders = {}
            for name in sorted(self.entries, key=place_of):
                for head in self.entries[name].heads:
                    self._holders[head] = (*self._holders.get(head, ()), name)
        return self._holders

    def _read(self, name: str) -> None:
        when = time.time_ns()
        data, stamp = read_content(self.folder / name)
        self._put(name, data, stamp, when)

    def _put(self, name: str, data: bytes, stamp: Stamp, when: int) -> None:
        digest, old = digest_of(data), self.entries.get(name)
        if old is not None and old.digest == digest:
            self.entries[name] = old._replace(stamp=stamp, read=when)
            self._unsaved += 1
            return
        found = blocks_of(self.folder / name, data)
        self._replace(name, Entry(stamp, when, digest, found.odd, heads_of(found.spots)))
        self._hold(name, found)

    def _replace(self, name: str, entry: Entry | None) -> None:
        old = self.entries.pop(name, None)
        before = old.heads if old else frozenset()
        after = entry.heads if entry else frozenset()
        if entry is not None:
            self.entries[name] = entry
        self._held.pop(name, None)
        self._unsaved += 1
        if self._holders is None:
            return
        for head in before ^ after:
            files = set(self._holders.pop(head, ()))
            files = files | {name} if head in after else files - {name}
            if files:
                self._holders[head] = tuple(sorted(files, key=place_of))
            if self._ordered is not None:
                _keep_in_order(self._ordered.setdefault(head.partition(":")[0], []), head, bool(files))

    def _hold(self, name: str, found: Blocks) -> None:
        if found.odd and self._lasting:  # an edit must not leave a trace in its nodes: they are parsed anew each time
            return
        self._held[name] = found
        if not self._lasting:
            return
        total = sum(len(b.data) for b in self._held.values())
        while total > MOST_HELD and len(self._held) > 1:
            total -= len(self._held.pop(next(iter(self._held))).data)


def _keep_in_order(heads: list[str], head: str, there: bool) -> None:
    at = bisect_left(heads, head)
    found = at < len(heads) and heads[at] == head
    if there and not found:
        heads.insert(at, head)
    elif found and not there:
        del heads[at]


def place_of(name: str) -> tuple[str, ...]:
    """What files are ordered by: their path part by part."""
    return tuple(name.split("/"))


def _is_racy(entry: Entry) -> bool:
    """True when the file may have changed since it was read without a new stamp."""
    return max(entry.stamp[1], entry.stamp[3]) > entry.read - RACY


def digest_of(data: bytes) -> str:
    """The digest of the content of a file."""
    return hashlib.blake2b(data, digest_size=16).hexdigest()


def _walk(folder: str, above: str) -> Iterator[tuple[str, Stamp]]:
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_dir(follow_symlinks=False):
                yield from _walk(entry.path, f"{above}{entry.name}/")
            elif entry.name.endswith(".ttl"):
                yield above + entry.name, _stamp(entry.stat())


def _stamp(found: os.stat_result) -> Stamp:
    return (found.st_size, found.st_mtime_ns, found.st_ino, found.st_ctime_ns)


def read_content(path: Path) -> tuple[bytes, Stamp]:
    """The bytes of a file and its stamp as it was opened. DataError when it cannot be read."""
    try:
        with path.open("rb") as file:
            stamp = _stamp(os.fstat(file.fileno()))
            return file.read(), stamp
    except OSError as error:
        raise DataError(f"cannot be read: {error.strerror}", "check its permissions", str(path)) from error


@cache
def _mark() -> str:
    """What a kept catalogue begins with: its layout and a checksum of the code that makes it."""
    check = 0
    for name in ("graph/blocks.py", "graph/catalogue.py", "graph/read.py", "graph/canonical.py", "iris.py"):
        path = Path(__file__).parent.parent / name
        check = crc32(path.read_bytes() if path.is_file() else b"", check)
    return f"tellfin files {FORMAT} {check:08x}"


def _load(path: Path) -> dict[str, Entry]:
    """The entries kept in a file; none where it is missing, damaged or made by other code."""
    try:
        first, _, body = path.read_bytes().partition(b"\n")
        if first.decode("ascii") != f"{_mark()} {digest_of(body)}":
            return {}
        rows: Mapping[str, list[object]] = json.loads(body)
        return {name: _entry(row) for name, row in rows.items()}
    except (OSError, ValueError, TypeError, AttributeError):
        return {}


def _entry(row: list[object]) -> Entry:
    stamp, read, digest, odd, heads = row
    if not (isinstance(stamp, list) and isinstance(read, int) and isinstance(heads, str)):
        raise ValueError("not a row of a catalogue")
    size, changed, inode, moved = map(int, stamp)
    return Entry((size, changed, inode, moved), read, str(digest), bool(odd), frozenset(heads.split("\n")) - {""})


def _save(path: Path, entries: Mapping[str, Entry]) -> None:
    """Keep entries, in one step; where they cannot be kept they are made again next time."""
    import tempfile

    rows = {name: [e.stamp, e.read, e.digest, int(e.odd), "\n".join(sorted(e.heads))]
            for name, e in sorted(entries.items())}
    body = json.dumps(rows, separators=(",", ":"), ensure_ascii=False).encode()
    with contextlib.suppress(OSError):
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, stage = tempfile.mkstemp(dir=path.parent, prefix=".making-", suffix=".files")
        try:
            with os.fdopen(handle, "wb") as out:
                out.write(f"{_mark()} {digest_of(body)}\n".encode() + body)
            os.replace(stage, path)
        except BaseException:
            Path(stage).unlink(missing_ok=True)
            raise
