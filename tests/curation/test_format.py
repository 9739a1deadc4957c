"""Canonical form: twice is once, nothing is lost, the check names what is out of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.curation.format import canonical, first_difference, format_files, unformatted
from assistant.errors import DataError
from assistant.graph.read import read_file
from tests.helpers.bases import Tellfin


def test_formatting_twice_is_formatting_once(tiny_base: Path, tellfin: Tellfin) -> None:
    """A shuffled file comes back to the bytes it had; the second run changes nothing."""
    path = tiny_base / "taxa/vennidae/vennia.ttl"
    wanted, nodes = path.read_bytes(), read_file(path)
    head, *blocks = path.read_text().split("\n\n")
    path.write_text("\n\n".join([head, *reversed([b.rstrip("\n") for b in blocks])]) + "\n")
    assert tellfin("--base", tiny_base, "format", "--check").code == 1
    assert tellfin("--base", tiny_base, "format").code == 0
    assert path.read_bytes() == wanted and {k: n.props for k, n in read_file(path).items()} == {
        k: n.props for k, n in nodes.items()}
    assert format_files([path]) == [] and tellfin("--base", tiny_base, "format", "--check").code == 0


def test_a_wrong_path_is_wrong_use(tmp_path: Path, tellfin: Tellfin) -> None:
    """What does not exist is the asker's slip, told with the path as it was given, in reading and in writing."""
    ran = tellfin("format", tmp_path / "none")
    assert ran.code == 2 and str(tmp_path / "none") in ran.err
    ran = tellfin("export", tmp_path / "none" / "f.csv", "--form", "names")
    assert ran.code == 3 and f"{tmp_path}/none/f.csv: cannot be written" in ran.err and "make the folder" in ran.err


def test_a_comment_is_not_dropped(tiny_base: Path) -> None:
    """A comment below the header stops the formatter, with its line."""
    path = tiny_base / "sources/papers.ttl"
    path.write_text(path.read_text() + "# to be checked\n")
    with pytest.raises(DataError) as caught:
        canonical(path)
    assert caught.value.where.endswith(":13") and [p for p, _ in unformatted([path])] == [path]


def test_differences_are_told_by_line() -> None:
    """The first differing line is quoted; line ends are told apart from lines."""
    assert first_difference("a\nb\n", "a\nc\n").startswith("line 2 is 'b'")
    assert first_difference("a\n  b ;\n", "a\n    b ;\n") == (
        "line 2 begins with 2 blanks where 4 blanks should stand: 'b ;'")
    assert "begins with 1 tab where no blank" in first_difference("\tb\n", "b\n")
    assert first_difference("b ; \n", "b ;\n") == "line 1 ends in blanks that should not stand there: 'b ;'"
    assert "1 lines where 2" in first_difference("a\n", "a\nb\n")
    assert "line ends" in first_difference("a\r\n", "a\n")
