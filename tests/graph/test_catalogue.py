"""The catalogue of a folder: what has changed is noticed, what has not is not read again, damage is made good."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.errors import DataError
from assistant.graph import catalogue as module
from assistant.graph.catalogue import Catalogue
from assistant.graph.lines import Index
from tests.graph.test_lines import everything

GENUS = "taxa/vennidae/ommaria.ttl"


def fresh(folder: Path, kept: Path | None = None) -> Catalogue:
    """A catalogue that is up to date."""
    found = Catalogue(folder, kept)
    found.refresh()
    return found


@pytest.fixture()
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the files that are read from now on."""
    names: list[str] = []
    plain = module.read_content

    def watched(path: Path) -> tuple[bytes, module.Stamp]:
        names.append(path.name)
        return plain(path)

    monkeypatch.setattr(module, "read_content", watched)
    return names


@pytest.fixture()
def settled(tiny_base: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The made-up base, of which nothing counts as changed just now."""
    monkeypatch.setattr(module, "RACY", 0)
    return tiny_base


def test_only_what_has_changed_is_read_again(settled: Path, read: list[str]) -> None:
    """A changed, a new and a removed file are noticed, the others are left alone."""
    found = fresh(settled)
    first = set(read)
    read.clear()
    found.refresh()
    assert GENUS.rpartition("/")[2] in first and not read
    path = settled / GENUS
    path.write_text(path.read_text().replace("taxon:ommaria-lenta\n", "taxon:ommaria-brevis\n"))
    (settled / "taxa" / "more.ttl").write_text("# nothing yet\n")
    (settled / "sources" / "practice.ttl").unlink()
    found.refresh()
    assert sorted(read) == ["more.ttl", "ommaria.ttl"]
    index = Index(settled, catalogue=found)
    assert "taxon:ommaria-brevis" in index and "taxon:ommaria-lenta" not in index
    assert everything(index) == everything(Index(settled))


def test_a_file_that_had_just_changed_is_read_to_be_sure(tiny_base: Path) -> None:
    """The same size, inode and time do not count where the file was written at the moment of reading."""
    found = fresh(tiny_base)
    path = tiny_base / GENUS
    before = path.stat()
    with path.open("r+b") as file:
        data = file.read()
        file.seek(data.index(b"slow ommar"))
        file.write(b"slim ommar")
    os.utime(path, ns=(before.st_atime_ns, before.st_mtime_ns))
    entry = found.entries[GENUS]
    now = path.stat()
    found.entries[GENUS] = entry._replace(stamp=(now.st_size, now.st_mtime_ns, now.st_ino, now.st_ctime_ns))
    found.refresh()
    assert everything(Index(tiny_base, catalogue=found)) == everything(Index(tiny_base))
    assert Index(tiny_base, catalogue=found).with_text("skos:prefLabel", "slim ommar", "taxon")


def test_nothing_is_taken_from_a_file_that_has_changed_meanwhile(settled: Path, tmp_path: Path) -> None:
    """A file that changes between the look at its stamp and its reading is refused."""
    fresh(settled, tmp_path / "kept")
    found = fresh(settled, tmp_path / "kept")
    path = settled / GENUS
    path.write_text(path.read_text().replace("slow", "slim"))
    with pytest.raises(DataError, match="changed by somebody else"):
        Index(settled, catalogue=found).node("taxon:ommaria-lenta")
    found.refresh()
    assert Index(settled, catalogue=found).node("taxon:ommaria-lenta")


def test_a_kept_catalogue_saves_reading(settled: Path, tmp_path: Path, read: list[str]) -> None:
    """The next process reads none of the files that are as they were, and knows the same."""
    fresh(settled, tmp_path / "kept")
    read.clear()
    found = fresh(settled, tmp_path / "kept")
    assert not read
    assert everything(Index(settled, catalogue=found)) == everything(Index(settled))


def _flip(path: Path) -> None:
    data = bytearray(path.read_bytes())
    data[len(data) // 2] ^= 1
    path.write_bytes(data)


DAMAGE: dict[str, Callable[[Path], object]] = {
    "cut": lambda p: p.write_bytes(p.read_bytes()[:-40]), "flipped": _flip, "deleted": Path.unlink,
    "foreign": lambda p: p.write_bytes(p.read_bytes().replace(b"tellfin files", b"tellfin filez", 1)),
    "junk": lambda p: p.write_bytes(b"junk\n" * 99)}


@pytest.mark.parametrize("damage", DAMAGE.values(), ids=DAMAGE.keys())
def test_a_damaged_catalogue_is_made_again(settled: Path, tmp_path: Path, read: list[str],
                                           damage: Callable[[Path], object]) -> None:
    """Whatever happened to the kept file: all is read anew, and it is kept again."""
    kept = tmp_path / "kept"
    fresh(settled, kept)
    whole = kept.read_bytes()
    damage(kept)
    read.clear()
    found = fresh(settled, kept)
    assert len(read) == len(found.entries)
    assert everything(Index(settled, catalogue=found)) == everything(Index(settled))
    assert len(kept.read_bytes()) == len(whole)


def test_contents_are_not_hoarded(settled: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Contents over the limit are let go, and read again when asked for."""
    monkeypatch.setattr(module, "MOST_HELD", 1)
    found = fresh(settled)
    index = Index(settled, catalogue=found)
    assert everything(index) == everything(Index(settled))
    assert len(found.held) == 1


def test_a_folder_that_is_no_base(tmp_path: Path) -> None:
    """An empty folder and a missing one are refused."""
    for folder in (tmp_path, tmp_path / "none"):
        with pytest.raises(DataError):
            fresh(folder)
