"""The compiled form of a base: one file of rows and flat tables, read piece by piece and never trusted (layer 1).

Layout: magic, length and checksum of a JSON header, the header, then aligned blocks. A kind of rows is a hash
table on file: a slot per bucket (place, length, checksum) and the buckets themselves, lines of "key TAB row". So an
answer reads a few rows and not the base, and every byte that is used has been checked first. Reading is by position
in the open file and not by mapping it, so that a file cut short while it is in use is noticed instead of ending the
process. The file is written under another name and put in place in one step; it is safe to delete. A file that is
damaged, foreign or of another version raises ``SnapshotError``: the caller makes it again.
"""

from __future__ import annotations

import json
import os
import struct
import sys
import threading
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple, Self
from zlib import crc32

FORMAT = 7
"""Raised when the layout changes; a snapshot of another layout is not read."""
MAGIC = b"tellfin base 2\n"
_HEAD = struct.Struct("<16sQI")
_SLOT = struct.Struct("<QII")
_ALIGN = 64
_MOST_HEADER = 1 << 24
_ITEM_BYTES: Mapping[str, int] = {"float32": 4, "float64": 8, "int32": 4, "int64": 8, "uint8": 1, "bool": 1}

_ENCODER = json.JSONEncoder(ensure_ascii=False, separators=(",", ":"))

Rows = Mapping[str, Any]
"""Row by key; a value of type bytes is a row that is encoded already."""
Array = tuple[str, Sequence[int], bytes]
"""A flat table: dtype, shape, bytes in C order."""


class Packed(NamedTuple):
    """A kind of rows as it stands in a file: how many, their keys, the slots and the buckets.

    Every checksum starts from ``salt``, which follows from the rows, so that pieces of two forms of a kind are not
    taken for each other, and a kind that has not changed can be copied as it is.
    """

    size: int
    keys: bytes
    slots: bytes
    rows: bytes
    salt: int


class SnapshotError(Exception):
    """The file is damaged, foreign, or made by another version: make it again."""


def encode_row(row: Any) -> bytes:
    """A row as it stands in the file."""
    return _ENCODER.encode(row).encode()


def write_snapshot(path: Path, key: str, kinds: Mapping[str, Rows | Packed], arrays: Mapping[str, Array],
                   extra: Mapping[str, Any]) -> None:
    """Write rows by kind and flat tables in one atomic step. Raises OSError when it cannot."""
    body = _Body(_salt(key, extra["version"]))
    table = {kind: _write_kind(body, key, kind, kinds[kind]) for kind in sorted(kinds)}
    shapes = {name: {"dtype": dtype, "shape": list(shape), "block": body.add(data, body.salt)}
              for name, (dtype, shape, data) in sorted(arrays.items())}
    header = json.dumps({"format": FORMAT, "key": key, "kinds": table, "arrays": shapes, "extra": dict(extra),
                         "size": body.size}, separators=(",", ":")).encode()
    head = _HEAD.pack(MAGIC, len(header), crc32(header)) + header
    path.parent.mkdir(parents=True, exist_ok=True)
    _put_in_place(path, [head.ljust(_pad(len(head)), b"\0"), *body.blocks])


class _Body:
    """The aligned blocks of a snapshot while it is made."""

    def __init__(self, salt: int) -> None:
        self.salt = salt
        self.blocks: list[bytes] = []
        self.size = 0

    def add(self, block: bytes, salt: int) -> tuple[int, int, int]:
        """Where the block stands, its length and checksum."""
        at = self.size
        self.blocks.append(block)
        if gap := _pad(len(block)) - len(block):
            self.blocks.append(b"\0" * gap)
        self.size += _pad(len(block))
        return at, len(block), crc32(block, salt)


def _write_kind(body: _Body, key: str, kind: str, rows: Rows | Packed) -> dict[str, Any]:
    found = rows if isinstance(rows, Packed) else pack(key, kind, rows)
    blocks = {name: body.add(getattr(found, name), found.salt) for name in ("keys", "slots", "rows")}
    return {"n": found.size, "salt": found.salt, **blocks}


def pack(key: str, kind: str, rows: Rows) -> Packed:
    """The rows of a kind as they stand in a file whose code has this key."""
    keys = sorted(rows, key=str.encode)
    buckets: list[list[bytes]] = [[] for _ in keys]
    for name in keys:
        row = rows[name]
        raw = name.encode()
        if b"\t" in raw or b"\n" in raw:
            raise ValueError(f"a key may not hold a tab or a line end: {name!r}")
        buckets[crc32(raw) % len(keys)].append(raw + b"\t" + (row if isinstance(row, bytes) else encode_row(row)))
    parts = [b"\n".join(bucket) for bucket in buckets]
    all_keys, all_rows = "\n".join(keys).encode(), b"".join(parts)
    salt = crc32(all_rows, crc32(all_keys, crc32(f"{key} {kind}".encode())))
    slots, at = [], 0
    for number, block in enumerate(parts):
        slots.append(_SLOT.pack(at, len(block), crc32(block, salt ^ number)))
        at += len(block)
    return Packed(len(keys), all_keys, b"".join(slots), all_rows, salt)


def _salt(key: str, version: str) -> int:
    """What the checksums of flat tables start from, so that those of two files are not taken for each other."""
    return crc32(f"{key} {version}".encode())


def _put_in_place(path: Path, blocks: Sequence[bytes]) -> None:
    import tempfile

    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=".making-", suffix=".snapshot")
    try:
        with os.fdopen(handle, "wb") as out:
            out.writelines(blocks)
        os.replace(temporary, path)
    except BaseException:
        Path(temporary).unlink(missing_ok=True)
        raise


def _pad(n: int) -> int:
    return (n + _ALIGN - 1) // _ALIGN * _ALIGN


class Snapshot:
    """An open snapshot; serves as the store of a knowledge base. Safe to share between threads."""

    def __init__(self, path: Path, key: str | None = None) -> None:
        """Open a snapshot that must carry ``key`` (any when None). Raises SnapshotError when it cannot be used."""
        self._lock = threading.Lock()
        self._lists: dict[str, tuple[str, ...]] = {}
        self._file = -1
        try:
            self._file = os.open(path, os.O_RDONLY | getattr(os, "O_BINARY", 0))
        except OSError as error:
            raise SnapshotError(str(error)) from error
        try:
            header = self._read_header()
            if header["format"] != FORMAT or (key is not None and header["key"] != key):
                raise SnapshotError("made from another base or by another version")
            if os.fstat(self._file).st_size < self._start + header["size"]:
                raise SnapshotError("cut short")
            self.key: str = header["key"]
            self.extra: dict[str, Any] = header["extra"]
            self.version: str = self.extra["version"]
            self._salt = _salt(self.key, self.version)
            self._kinds: dict[str, Any] = header["kinds"]
            self._arrays: dict[str, Any] = header["arrays"]
        except (KeyError, TypeError, ValueError) as error:
            self.close()
            raise SnapshotError("its header is not one") from error
        except BaseException:
            self.close()
            raise

    def _read_header(self) -> dict[str, Any]:
        magic, length, check = _HEAD.unpack(self._read(0, _HEAD.size))
        if magic.rstrip(b"\0") != MAGIC or length > _MOST_HEADER:
            raise SnapshotError("not a snapshot")
        raw = self._read(_HEAD.size, length)
        if crc32(raw) != check:
            raise SnapshotError("its header is damaged")
        self._start = _pad(_HEAD.size + length)
        header = json.loads(raw)
        if not isinstance(header, dict):
            raise SnapshotError("its header is not one")
        return header

    def close(self) -> None:
        """Let go of the file; nothing can be read afterwards."""
        if self._file >= 0:
            os.close(self._file)
            self._file = -1

    def __del__(self) -> None:
        self.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def _read(self, at: int, length: int) -> bytes:
        try:
            if sys.platform != "win32":
                data = os.pread(self._file, length, at)
            else:
                with self._lock:
                    os.lseek(self._file, at, os.SEEK_SET)
                    data = os.read(self._file, length)
        except (OSError, ValueError) as error:
            raise SnapshotError(str(error)) from error
        if len(data) != length:
            raise SnapshotError("cut short")
        return data

    def _checked(self, block: Sequence[int], salt: int) -> bytes:
        data = self._read(self._start + block[0], block[1])
        if crc32(data, salt) != block[2]:
            raise SnapshotError("damaged")
        return data

    def kinds(self) -> tuple[str, ...]:
        """The kinds held."""
        return tuple(self._kinds)

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        if kind not in self._lists:
            found = self._kinds.get(kind)
            keys = self._checked(found["keys"], found["salt"]) if found and found["n"] else b""
            self._lists[kind] = tuple(keys.decode().split("\n")) if found and found["n"] else ()
        return self._lists[kind]

    def packed(self, kind: str) -> Packed | None:
        """A kind as it stands in the file; None when there is none. Raises SnapshotError when damaged."""
        found = self._kinds.get(kind)
        if not found:
            return None
        keys, slots, rows = (self._checked(found[name], found["salt"]) for name in ("keys", "slots", "rows"))
        return Packed(found["n"], keys, slots, rows, found["salt"])

    def arrays(self) -> tuple[str, ...]:
        """The names of the flat tables held."""
        return tuple(self._arrays)

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none. Raises SnapshotError when damaged."""
        raw = self.raw(kind, key)
        if raw is None:
            return None
        row: list[Any] = json.loads(raw)
        return row

    def raw(self, kind: str, key: str) -> bytes | None:
        """The encoded row under a key, None when there is none. Raises SnapshotError when damaged."""
        found = self._kinds.get(kind)
        if not found or not found["n"]:
            return None
        wanted = key.encode()
        bucket = crc32(wanted) % found["n"]
        slot = self._read(self._start + found["slots"][0] + bucket * _SLOT.size, _SLOT.size)
        at, length, check = _SLOT.unpack(slot)
        if at + length > found["rows"][1]:
            raise SnapshotError("damaged")
        block = self._read(self._start + found["rows"][0] + at, length) if length else b""
        if crc32(block, found["salt"] ^ bucket) != check:
            raise SnapshotError("damaged")
        head = wanted + b"\t"
        for line in block.split(b"\n"):
            if line.startswith(head):
                return line[len(head):]
        return None

    def items(self, kind: str) -> Iterator[tuple[str, bytes]]:
        """Every key of a kind with its encoded row, in no order of meaning. Raises SnapshotError when damaged."""
        found = self._kinds.get(kind)
        if not found or not found["n"]:
            return
        slots, rows = (self._checked(found[name], found["salt"]) for name in ("slots", "rows"))
        for at, length, _ in _SLOT.iter_unpack(slots):
            if length:
                for line in rows[at : at + length].split(b"\n"):
                    key, _, row = line.partition(b"\t")
                    yield key.decode(), row

    def array(self, name: str) -> tuple[str, tuple[int, ...], bytes] | None:
        """A flat table as (dtype, shape, bytes); None when there is none. Raises SnapshotError when damaged."""
        found = self._arrays.get(name)
        if not found:
            return None
        shape = tuple(int(n) for n in found["shape"])
        size = _ITEM_BYTES.get(found["dtype"], 0)
        for n in shape:
            size *= n
        if size != found["block"][1]:
            raise SnapshotError("a table of the wrong size")
        return found["dtype"], shape, self._checked(found["block"], self._salt)
