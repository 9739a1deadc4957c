"""The compiled file gives back what was put in, and nothing else, whatever happens to it."""

from __future__ import annotations

import os
import random
import struct
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.graph.snapshot import Snapshot, SnapshotError, write_snapshot

ROWS = {
    "taxon": {f"t{i}": [f"t{i}", 'é\n\t"', i, None, [1.5, "x"]] for i in range(40)},
    "near": {word: [word.upper()] for word in ("a", "ab", "abc", "b c", "zebra", "~x", "=y", "é")},
    "none": {},
}
ARRAY = struct.pack("<6f", *range(6))


def written(path: Path, key: str = "k") -> Path:
    """A small snapshot at a path."""
    write_snapshot(path, key, ROWS, {"report": ("float32", (2, 3), ARRAY)}, {"version": "v1", "files": {}})
    return path


def everything(found: Snapshot) -> object:
    """All that can be read from a snapshot."""
    rows = {kind: {key: found.get(kind, key) for key in found.keys(kind)} for kind in ROWS}
    return rows, found.array("report"), found.version, found.get("near", "absent"), found.get("missing", "x")


def test_what_is_written_is_read(tmp_path: Path) -> None:
    """Rows, key lists and arrays come back as they were; unknown keys and kinds give None."""
    with Snapshot(written(tmp_path / "s"), "k") as found:
        assert everything(found) == (ROWS, ("float32", (2, 3), ARRAY), "v1", None, None)
        assert list(found.keys("near")) == sorted(ROWS["near"], key=str.encode)
        assert {key for key, _ in found.items("taxon")} == set(ROWS["taxon"])


def test_the_same_rows_make_the_same_file(tmp_path: Path) -> None:
    """The file does not depend on the order in which rows are given."""
    written(tmp_path / "one")
    turned = {kind: dict(reversed(rows.items())) for kind, rows in reversed(ROWS.items())}
    write_snapshot(
        tmp_path / "two", "k", turned, {"report": ("float32", (2, 3), ARRAY)}, {"version": "v1", "files": {}}
    )
    assert (tmp_path / "one").read_bytes() == (tmp_path / "two").read_bytes()


def test_another_key_is_not_read(tmp_path: Path) -> None:
    """A snapshot of another version of the code is refused."""
    with pytest.raises(SnapshotError):
        Snapshot(written(tmp_path / "s", "old"), "new")


@pytest.mark.parametrize("data", [b"", b"x", b"\0" * 64, b"@prefix tf: <x> .\n" * 40, os.urandom(4096)])
def test_foreign_files_are_refused(tmp_path: Path, data: bytes) -> None:
    """A file that is no snapshot is refused, whatever it holds."""
    (tmp_path / "s").write_bytes(data)
    with pytest.raises(SnapshotError):
        Snapshot(tmp_path / "s", "k")


def test_missing_file_and_folder_are_refused(tmp_path: Path) -> None:
    """No file, or a folder in its place, is refused in the same way."""
    for path in (tmp_path / "none", tmp_path):
        with pytest.raises(SnapshotError):
            Snapshot(path, "k")


def test_a_cut_is_noticed_at_every_length(tmp_path: Path) -> None:
    """A file cut short at any place is refused when it is opened."""
    whole = written(tmp_path / "s").read_bytes()
    for length in range(0, len(whole) - 64, 37):
        (tmp_path / "cut").write_bytes(whole[:length])
        with pytest.raises(SnapshotError):
            Snapshot(tmp_path / "cut", "k")


def test_a_cut_while_in_use_is_noticed(tmp_path: Path) -> None:
    """Reading from a file that was cut short after it was opened raises and does not end the process."""
    path = written(tmp_path / "s")
    with Snapshot(path, "k") as found:
        with path.open("r+b") as file:
            file.truncate(700)
        with pytest.raises(SnapshotError):
            everything(found)


@settings(max_examples=150, deadline=None)
@given(st.randoms(use_true_random=False))
def test_a_flipped_bit_never_gives_another_answer(rng: random.Random) -> None:
    """With any one bit turned over, each reading gives the right value or raises."""
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        path = written(Path(folder) / "s")
        data = bytearray(path.read_bytes())
        data[rng.randrange(len(data))] ^= 1 << rng.randrange(8)
        path.write_bytes(data)
        try:
            found = Snapshot(path, "k")
        except SnapshotError:
            return
        with found:
            for kind, rows in ROWS.items():
                for key, row in rows.items():
                    try:
                        assert found.get(kind, key) == row
                    except SnapshotError:
                        continue
            try:
                assert found.array("report") == ("float32", (2, 3), ARRAY)
                assert [list(found.keys(kind)) for kind in ROWS] == [
                    sorted(ROWS[kind], key=str.encode) for kind in ROWS
                ]
            except SnapshotError:
                return


def test_overwriting_in_place_is_noticed(tmp_path: Path) -> None:
    """Another valid snapshot written over the open file gives no rows of its own."""
    path = written(tmp_path / "s")
    other = tmp_path / "other"
    changed = {kind: {key: ["X", *row[1:]] for key, row in rows.items()} for kind, rows in ROWS.items()}
    write_snapshot(other, "k", changed, {"report": ("float32", (2, 3), ARRAY)}, {"version": "v2", "files": {}})
    with Snapshot(path, "k") as found:
        path.write_bytes(other.read_bytes())
        for key in ROWS["taxon"]:
            with pytest.raises(SnapshotError):
                found.get("taxon", key)


def test_replacing_the_file_leaves_the_open_one_whole(tmp_path: Path) -> None:
    """A file put in the place of an open one, or its removal, does not disturb the reader."""
    path = written(tmp_path / "s")
    with Snapshot(path, "k") as found:
        write_snapshot(path, "k", {"taxon": {"t1": ["new"]}}, {}, {"version": "v2", "files": {}})
        assert everything(found) == (ROWS, ("float32", (2, 3), ARRAY), "v1", None, None)
        path.unlink()
        assert everything(found) == (ROWS, ("float32", (2, 3), ARRAY), "v1", None, None)


def test_a_failed_write_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A write that fails leaves the old file and no half-made one."""
    path = written(tmp_path / "s")
    before = path.read_bytes()

    def refuse(*_: object) -> None:
        raise OSError("no space")

    monkeypatch.setattr(os, "replace", refuse)
    with pytest.raises(OSError, match="no space"):
        write_snapshot(path, "k", {"taxon": {}}, {}, {"version": "v2"})
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["s"]


def test_keys_with_a_tab_or_line_end_are_refused(tmp_path: Path) -> None:
    """A key that would break the layout is refused when it is written."""
    for key in ("a\tb", "a\nb"):
        with pytest.raises(ValueError, match="key"):
            write_snapshot(tmp_path / "s", "k", {"taxon": {key: []}}, {}, {"version": "v"})
