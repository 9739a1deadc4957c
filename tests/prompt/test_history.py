"""The file of earlier lines."""

from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from assistant.prompt import history
from assistant.prompt.history import LineHistory, history_path


def kept(path: Path | None) -> list[str]:
    """The lines that a new sitting finds, newest first."""
    return list(LineHistory(path).load_history_strings())


def test_lines_come_back_newest_first(tmp_path: Path) -> None:
    """Lines of one sitting are there in the next, newest first, each once."""
    path = tmp_path / "deep" / "er" / "lines.txt"
    first = LineHistory(path)
    for line in ("one", "two", "one", "drei über\nvier \x1b[31m"):
        first.store_string(line)
    assert kept(path) == ["drei über vier", "one", "two"]


@pytest.mark.skipif(os.name != "posix", reason="modes are a matter of posix systems")
def test_only_the_owner_may_read(tmp_path: Path) -> None:
    """The file is made for its owner only, and a file that others could read is closed to them."""
    path = tmp_path / "folder" / "lines.txt"
    LineHistory(path).store_string("one")
    assert stat.S_IMODE(path.stat().st_mode) == 0o600 and stat.S_IMODE(path.parent.stat().st_mode) == 0o700
    path.chmod(0o644)
    LineHistory(path)
    assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_file_stays_small(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A file grown too large loses its oldest lines, never its newest, and is never half written."""
    monkeypatch.setattr(history, "MOST_BYTES", 2000)
    path = tmp_path / "lines.txt"
    lines = LineHistory(path)
    for n in range(400):
        lines.store_string(f"question number {n}")
    assert path.stat().st_size <= 2000 and kept(path)[0] == "question number 399"
    assert [p.name for p in tmp_path.iterdir()] == ["lines.txt"]


def test_huge_foreign_file_is_cut_down(tmp_path: Path) -> None:
    """A file that something else made huge is read at its end only and cut down."""
    path = tmp_path / "lines.txt"
    path.write_bytes(b"\xff\xfe broken \n" * 100_000 + b"last\n")
    assert kept(path)[0] == "last"
    assert path.stat().st_size <= history.MOST_BYTES


def test_folder_that_cannot_be_made(tmp_path: Path) -> None:
    """Where the folder cannot be made, lines live in memory and the fault is told."""
    (tmp_path / "file").write_text("in the way")
    lines = LineHistory(tmp_path / "file" / "lines.txt")
    assert lines.fault
    lines.append_string("one")
    assert lines.get_strings() == ["one"]


def test_fault_while_storing(tmp_path: Path) -> None:
    """A file that vanishes behind a folder of its name is no reason to fail later either."""
    path = tmp_path / "lines.txt"
    lines = LineHistory(path)
    path.unlink()
    path.mkdir()
    lines.append_string("one")
    assert lines.fault and lines.get_strings() == ["one"]


def test_nothing_is_kept_when_not_wanted(tmp_path: Path) -> None:
    """Without a path nothing is written and nothing is wrong."""
    lines = LineHistory(None)
    lines.append_string("one")
    assert not lines.fault and not list(tmp_path.iterdir())


def test_no_home(monkeypatch: pytest.MonkeyPatch) -> None:
    """Without a home folder there is either an absolute path or none, never a folder called "~"."""
    for name in ("HOME", "XDG_STATE_HOME", "USERPROFILE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(os.path, "expanduser", lambda path: path)
    assert history_path() is None
