"""The front door: every command loads, helps and fails in two lines; exit codes; no trace ever."""

# ruff: noqa: E501
from __future__ import annotations

import errno
import io
import os
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.cli import main as front
from assistant.cli.main import COMMANDS, load_command, main
from tests.helpers.bases import Tellfin

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize("name", sorted(COMMANDS))
def test_every_command_is_whole(name: str, tellfin: Tellfin) -> None:
    """Each command has its name, a help line, options and an execution, and shows its help."""
    command = load_command(name)
    assert name == command.NAME and len(command.HELP) > 15
    ran = tellfin(name, "--help")
    assert ran.code == 0 and f"tellfin {name}" in ran.out and ran.err == ""


def test_help_lists_every_command_and_the_exit_codes(tellfin: Tellfin) -> None:
    """The overview names all commands, and what each exit code means."""
    out = tellfin("--help").out
    assert all(f"  {name} " in out for name in COMMANDS) and "exit codes: 0 fine" in out
    assert tellfin("--version").out.startswith("tellfin ")


@pytest.mark.parametrize("words", [("chek",), ("check", "--colour"), ("format", "/nowhere/at/all"), ("--base", "/nowhere", "check"),
                                   ("undo",), ("add", "fish", "a=b", "--base", "x"), ("query", "--seconds", "soon", "ASK {}")])
def test_wrong_use_is_two_lines_and_code_two(words: tuple[str, ...], tellfin: Tellfin) -> None:
    """A wrong word, option, path or number gives one line of what and one of what to do."""
    ran = tellfin(*words)
    assert ran.code in (1, 2) and ran.out == "" and 1 <= len(ran.err.splitlines()) <= 2, ran
    assert ran.err.startswith("tellfin: ")


def test_a_near_command_is_offered(tellfin: Tellfin) -> None:
    """A slip of the finger is answered with the command that was meant."""
    assert "did you mean 'check'?" in tellfin("chek").err


@pytest.mark.parametrize("words", [("how do I tell pike from muskie",), ("how", "do", "I", "tell", "pike", "from", "muskie")])
def test_a_question_without_its_command_is_shown_how_to_be_asked(words: tuple[str, ...], tellfin: Tellfin) -> None:
    """What was typed is said again behind the command that answers it."""
    assert 'tellfin ask "how do I tell pike from muskie"' in tellfin(*words).err


def test_global_options_stand_before_or_after(tiny_base: Path, tellfin: Tellfin, monkeypatch: pytest.MonkeyPatch) -> None:
    """--base may come first, last, joined by =, or from the environment."""
    for words in (("--base", tiny_base, "check"), ("check", "--base", tiny_base), (f"--base={tiny_base}", "check")):
        assert tellfin(*words).code == 0
    monkeypatch.setenv("TELLFIN_BASE", str(tiny_base))
    out = io.StringIO()
    assert main(["check"], io.StringIO(), out, out) == 0 and "checked 1" in out.getvalue()


def test_what_nobody_foresaw_is_logged_not_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, tellfin: Tellfin) -> None:
    """A failure of our own is one notice with the path of the log; --debug raises it."""
    def broken(name: str, after: object) -> object:
        raise RuntimeError("inner trouble")

    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path))
    monkeypatch.setattr(front, "load_command", broken)
    ran = tellfin("check")
    logs = list(tmp_path.rglob("failure-*.log"))
    assert ran.code == 3 and "Traceback" not in ran.err and len(logs) == 1 and str(logs[0]) in ran.err
    assert "inner trouble" in logs[0].read_text()
    with pytest.raises(RuntimeError):
        tellfin("--debug", "check")


def test_ctrl_c_and_a_closed_pipe_are_quiet(monkeypatch: pytest.MonkeyPatch, tellfin: Tellfin) -> None:
    """An interrupt ends with 130, a closed pipe with 0, neither with a trace."""
    def interrupted(argv: list[str], streams: object) -> int:
        raise KeyboardInterrupt

    def closed(argv: list[str], streams: object) -> int:
        raise BrokenPipeError

    monkeypatch.setattr(front, "_dispatch", interrupted)
    assert tellfin("check").code == 130
    monkeypatch.setattr(front, "_dispatch", closed)
    ran = tellfin("check")
    assert ran.code == 0 and ran.err == ""


def test_a_real_process_with_a_closed_pipe() -> None:
    """The installed entry stays quiet when its reader has gone, and needs no home folder."""
    command = f"{sys.executable} -m assistant --help | true"
    done = subprocess.run(["/bin/sh", "-c", command], cwd=ROOT, capture_output=True, text=True, check=False,
                          env={"PATH": "/usr/bin:/bin"})
    assert done.returncode == 0 and done.stderr == ""


def test_a_full_disk_is_told_in_words(monkeypatch: pytest.MonkeyPatch, tellfin: Tellfin) -> None:
    """What the system refuses is told in its words, without a log; 3."""
    def full(argv: list[str], streams: object) -> int:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    def lost(argv: list[str], streams: object) -> int:
        raise PermissionError(errno.EACCES, "Permission denied", "/some/file")

    monkeypatch.setattr(front, "_dispatch", full)
    assert tellfin("check").err.startswith("tellfin: the disk is full") and tellfin("check").code == 3
    monkeypatch.setattr(front, "_dispatch", lost)
    assert tellfin("check").err.startswith("tellfin: /some/file: the system refused: permission denied")


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_output_to_a_full_disk_fails(tiny_base: Path) -> None:
    """What could not be written is no success."""
    with open("/dev/full", "w") as out:
        said = io.StringIO()
        assert main(["--base", str(tiny_base), "history"], io.StringIO(), out, said) == 3
        assert "the disk is full" in said.getvalue()


@pytest.mark.parametrize("left", ("emptied", "deleted"))
def test_a_lost_file_of_the_base_is_a_damaged_base(left: str, tiny_base: Path, tellfin: Tellfin) -> None:
    """Where records that others name are gone, the base is at fault (1) and the check is named."""
    file = tiny_base / "taxa" / "vennidae" / "family.ttl"
    if left == "emptied":
        file.write_bytes(b"")
    else:
        file.unlink()
    ran = tellfin("--base", tiny_base, "ask", "what is a slow ommar")
    assert ran.code == 1 and "the base is damaged" in ran.err and "tellfin check" in ran.err, ran
