"""The compiled form of a base: one flat file of rows and tables, mapped and never trusted (layer 1).

Layout: a magic line, the length and the BLAKE2b digest of a JSON header, the header, then aligned blocks. Rows of a
kind are JSON lines behind a sorted key list, found by bisection, so that one answer reads a few rows and not the
base. The file is written under another name and put in place in one step; it is safe to delete. A file that is
damaged, foreign or of another code version is not read: it is made again.
"""

from __future__ import annotations

import hashlib
import json
import mmap
import os
import struct
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

FORMAT = 3
"""Raised when the layout changes; part of the key that a snapshot must match."""
MAGIC = b"tellfin base 1\n"
_HEAD = struct.Struct("<16sQ32s")
_ALIGN = 64


class SnapshotError(Exception):
    """The file is damaged, foreign, or made by another version: make it again."""


def _pad(n: int) -> int:
    return (n + _ALIGN - 1) // _ALIGN * _ALIGN


def write_snapshot(path: Path, key: str, kinds: Mapping[str, Mapping[str, Any]],
                   arrays: Mapping[str, tuple[str, Sequence[int], bytes]], extra: Mapping[str, Any]) -> None:
    """Write rows by kind and flat arrays (dtype, shape, bytes) in one atomic step. Raises OSError when it cannot."""
    blocks: list[bytes] = []
    position = 0

    def add(block: bytes) -> tuple[int, int]:
        nonlocal position
        at = position
        blocks.append(block + b"\0" * (_pad(len(block)) - len(block)))
        position += _pad(len(block))
        return at, len(block)

    table: dict[str, Any] = {}
    for kind in sorted(kinds):
        keys = sorted(kinds[kind], key=lambda k: k.encode())
        rows = [json.dumps(kinds[kind][k], ensure_ascii=False, separators=(",", ":")).encode() for k in keys]
        table[kind] = {"n": len(keys), "keys": add("\n".join(keys).encode()), "rows": add(b"\n".join(rows)),
                       "at_key": add(_offsets([k.encode() for k in keys])), "at_row": add(_offsets(rows))}
    shapes = {name: {"dtype": dtype, "shape": list(shape), "block": add(data)}
              for name, (dtype, shape, data) in sorted(arrays.items())}
    body = b"".join(blocks)
    digest = hashlib.blake2b(body, digest_size=16).hexdigest()
    header = json.dumps({"format": FORMAT, "key": key, "kinds": table, "arrays": shapes, "extra": dict(extra),
                         "size": len(body), "digest": digest}, separators=(",", ":")).encode()
    head = _HEAD.pack(MAGIC, len(header), hashlib.blake2b(header, digest_size=32).digest())
    start = _pad(len(head) + len(header))
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".making-", suffix=".snapshot")
    try:
        with os.fdopen(handle, "wb") as out:
            out.write((head + header).ljust(start, b"\0"))
            out.write(body)
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def _offsets(items: Sequence[bytes]) -> bytes:
    out = []
    at = 0
    for item in items:
        out.append(at)
        at += len(item) + 1
    out.append(at)
    return struct.pack(f"<{len(out)}Q", *out)


class Snapshot:
    """A mapped snapshot; serves as the store of a knowledge base. Keep it open as long as records are read."""

    def __init__(self, path: Path, key: str, verify: bool = False) -> None:
        """Map a snapshot that must carry ``key``. Raises SnapshotError when it cannot be used; ``verify`` reads all of it."""
        try:
            with path.open("rb") as file:
                self._map = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
            magic, length, digest = _HEAD.unpack_from(self._map, 0)
            raw = self._map[_HEAD.size : _HEAD.size + length]
            if magic.rstrip(b"\0") != MAGIC or hashlib.blake2b(raw, digest_size=32).digest() != digest:
                raise SnapshotError("not a snapshot, or its header is damaged")
            header = json.loads(raw)
        except (OSError, ValueError, struct.error) as error:
            raise SnapshotError(str(error)) from error
        if header.get("format") != FORMAT or header.get("key") != key:
            raise SnapshotError("made from another base or by another version")
        self._start = _pad(_HEAD.size + length)
        if len(self._map) < self._start + int(header["size"]):
            raise SnapshotError("cut short")
        self._kinds: dict[str, Any] = header["kinds"]
        self._arrays: dict[str, Any] = header["arrays"]
        self.extra: dict[str, Any] = header["extra"]
        self.version: str = self.extra["version"]
        self._views: dict[tuple[str, str], memoryview] = {}
        self._lists: dict[str, tuple[str, ...]] = {}
        if verify and hashlib.blake2b(self._map[self._start : self._start + header["size"]],
                                      digest_size=16).hexdigest() != header["digest"]:
            raise SnapshotError("damaged")

    def _block(self, place: Sequence[int]) -> tuple[int, int]:
        return self._start + place[0], self._start + place[0] + place[1]

    def _at(self, kind: str, what: str) -> memoryview:
        slot = (kind, what)
        if slot not in self._views:
            a, b = self._block(self._kinds[kind][what])
            self._views[slot] = memoryview(self._map)[a:b].cast("Q")
        return self._views[slot]

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        if kind not in self._lists:
            found = self._kinds.get(kind)
            a, b = self._block(found["keys"]) if found else (0, 0)
            text = self._map[a:b].decode()
            self._lists[kind] = tuple(text.split("\n")) if found and found["n"] else ()
        return self._lists[kind]

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key by bisection, None when there is none. Raises SnapshotError when damaged."""
        found = self._kinds.get(kind)
        if not found or not found["n"]:
            return None
        wanted = key.encode()
        at, start = self._at(kind, "at_key"), self._block(found["keys"])[0]
        low, high = 0, found["n"]
        while low < high:
            middle = (low + high) // 2
            if self._map[start + at[middle] : start + at[middle + 1] - 1] < wanted:
                low = middle + 1
            else:
                high = middle
        if low >= found["n"] or self._map[start + at[low] : start + at[low + 1] - 1] != wanted:
            return None
        rows, first = self._at(kind, "at_row"), self._block(found["rows"])[0]
        try:
            row: list[Any] = json.loads(self._map[first + rows[low] : first + rows[low + 1] - 1])
        except ValueError as error:
            raise SnapshotError("damaged row") from error
        return row

    def array(self, name: str) -> tuple[str, list[int], memoryview] | None:
        """A flat table as (dtype, shape, bytes), mapped; None when the snapshot has none of that name."""
        found = self._arrays.get(name)
        if not found:
            return None
        a, b = self._block(found["block"])
        return found["dtype"], list(found["shape"]), memoryview(self._map)[a:b]
