"""A base opens the same way with and without its compiled form, and survives whatever happens to that form."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.graph.snapshot import Snapshot
from assistant.loading import OpenBase, SteadyStore, open_base, snapshot_path
from assistant.model.knowledge import KnowledgeBase
from assistant.signature import RACY, same_files


def told(base: OpenBase) -> object:
    """Everything that the small base says."""
    kb = base.kb
    rows = {
        kind: {key: kb.store.get(kind, key) for key in kb.ids(kind)}
        for kind in ("taxon", "statement", "spoken", "near")
    }
    return rows, kb.species, base.table.report.tolist(), base.table.standing.places.names


def settle(folder: Path) -> None:
    """Make the files look as if they had been written long ago."""
    for path in folder.rglob("*.ttl"):
        os.utime(path, ns=(10**18, 10**18))


@pytest.fixture()
def cache(tmp_path: Path) -> Path:
    """An empty cache folder."""
    return tmp_path / "cache"


def file_of(folder: Path, cache: Path) -> Path:
    """Where the compiled form of a base lies."""
    found = snapshot_path(folder.absolute(), cache)
    assert found is not None
    return found


def test_same_with_and_without_the_compiled_form(tiny_base: Path, cache: Path) -> None:
    """Made now, read again, or held in memory: the base says the same."""
    settle(tiny_base)
    first, again = open_base(tiny_base, cache=cache), open_base(tiny_base, cache=cache)
    store = SteadyStore(tiny_base, None)
    memory = OpenBase(KnowledgeBase(store), tiny_base, store)
    assert told(first) == told(again) == told(memory)
    assert first.kb.version == again.kb.version == memory.kb.version


def test_untouched_files_are_not_read_again(tiny_base: Path, cache: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A second opening compiles nothing."""
    settle(tiny_base)
    open_base(tiny_base, cache=cache)
    monkeypatch.setattr("assistant.compiling.compile_folder", lambda *_: pytest.fail("compiled again"))
    assert open_base(tiny_base, cache=cache).kb.species


def test_a_changed_file_is_noticed(tiny_base: Path, cache: Path) -> None:
    """A changed statement is read at the next opening, also when size and time stay as they were."""
    settle(tiny_base)
    before = open_base(tiny_base, cache=cache).kb.version
    path = tiny_base / "taxa" / "vennidae" / "ommaria.ttl"
    path.write_text(path.read_text().replace('"slow ommar"@en', '"slim ommar"@en'))
    after = open_base(tiny_base, cache=cache)
    assert after.kb.version != before
    assert after.kb.taxon("ommaria-lenta").label == "slim ommar"


def test_a_new_or_removed_file_is_noticed(tiny_base: Path, cache: Path) -> None:
    """A file more or less makes another base."""
    versions = {open_base(tiny_base, cache=cache).kb.version}
    (tiny_base / "taxa" / "more.ttl").write_text("# nothing yet\n")
    versions.add(open_base(tiny_base, cache=cache).kb.version)
    (tiny_base / "ranges" / "vennidae" / "ommaria.ttl").unlink()
    versions.add(open_base(tiny_base, cache=cache).kb.version)
    assert len(versions) == 3


def test_a_file_changed_just_before_is_read_to_be_sure(tmp_path: Path) -> None:
    """The same size and time do not count where the file was written at the moment of compiling."""
    path = tmp_path / "a.ttl"
    path.write_text("a")
    when = path.stat().st_mtime_ns
    signature = {"a.ttl": (1, when, "not its digest")}
    assert not same_files(tmp_path, signature, made=when + 1)
    assert same_files(tmp_path, signature, made=when + 2 * RACY)


def cut(path: Path) -> None:
    """Cut the file short in place."""
    with path.open("r+b") as file:
        file.truncate(path.stat().st_size // 3)


def flip(path: Path) -> None:
    """Turn over a bit of every fiftieth byte after the header."""
    data = bytearray(path.read_bytes())
    for at in range(4096, len(data), 50):
        data[at] ^= 4
    path.write_bytes(data)


def overwrite(path: Path) -> None:
    """Write something else over the file."""
    path.write_bytes(b"something else altogether " * 4000)


DAMAGE: list[Callable[[Path], None]] = [cut, flip, overwrite, Path.unlink, lambda p: os.replace(_junk(p), p)]


def _junk(path: Path) -> Path:
    junk = path.with_suffix(".junk")
    junk.write_bytes(b"junk" * 1000)
    return junk


@pytest.mark.parametrize("damage", DAMAGE, ids=["cut", "flipped", "overwritten", "deleted", "swapped"])
def test_damage_before_opening(tiny_base: Path, cache: Path, damage: Callable[[Path], None]) -> None:
    """A damaged compiled form is made again, and says the same."""
    settle(tiny_base)
    right = told(open_base(tiny_base, cache=cache))
    damage(file_of(tiny_base, cache))
    assert told(open_base(tiny_base, cache=cache)) == right


@pytest.mark.parametrize("damage", DAMAGE, ids=["cut", "flipped", "overwritten", "deleted", "swapped"])
def test_damage_while_in_use(tiny_base: Path, cache: Path, damage: Callable[[Path], None]) -> None:
    """Damage to the compiled form of an open base changes no answer."""
    settle(tiny_base)
    right = told(open_base(tiny_base, cache=cache))
    base = open_base(tiny_base, cache=cache)
    assert base.kb.taxon("ommaria-lenta")
    damage(file_of(tiny_base, cache))
    assert told(base) == right


def test_no_cache_folder(tiny_base: Path, tmp_path: Path) -> None:
    """Where the cache cannot be written the base works from memory and says so once."""
    blocked = tmp_path / "file"
    blocked.write_text("not a folder")
    said: list[str] = []
    base = open_base(tiny_base, lambda doing, done, of: said.append(doing), blocked / "below")
    assert base.table.taxa == base.kb.species
    assert sum("in memory" in line for line in said) == 1


def test_old_forms_are_cleared_away(tiny_base: Path, cache: Path) -> None:
    """The compiled form that another version of the code left behind is removed when a new one is made."""
    path = file_of(tiny_base, cache)
    old = path.with_name(path.name.rpartition("-")[0] + "-0123abc.snapshot")
    old.parent.mkdir()
    old.write_bytes(b"old")
    open_base(tiny_base, cache=cache)
    assert [p.name for p in cache.iterdir()] == [path.name]
    with Snapshot(path) as found:
        assert dict(found.items("taxon"))
