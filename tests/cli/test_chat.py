"""``tellfin chat`` and ``tellfin`` alone, in process and as a real process on a real terminal."""

from __future__ import annotations

import os
import select
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
pty = pytest.importorskip("pty", reason="needs a pseudo-terminal")


class Terminal:
    """A real process on a pseudo-terminal of some size."""

    def __init__(self, words: list[str], env: dict[str, str], columns: int = 80, rows: int = 24) -> None:
        import fcntl
        import struct
        import termios

        self.master, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.process = subprocess.Popen(
            [sys.executable, "-m", "assistant", *words],
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=ROOT,
            env=env,
            start_new_session=True,
        )
        os.close(slave)
        self.text = ""

    def wait_for(self, words: str, seconds: float = 60) -> str:
        """Everything shown up to some words; fails when they do not come."""
        end = time.monotonic() + seconds
        while words not in self.text and time.monotonic() < end:
            if select.select([self.master], [], [], 0.2)[0]:
                try:
                    data = os.read(self.master, 4096)
                except OSError:
                    break
                if b"\x1b[6n" in data:
                    os.write(self.master, b"\x1b[1;1R")
                self.text += data.decode("utf-8", "replace")
        assert words in self.text, self.text[-2000:]
        return self.text

    def send(self, keys: str) -> None:
        """Type."""
        self.text = ""
        os.write(self.master, keys.encode())

    def leave(self) -> int:
        """Ctrl-D, again until it is heard (what is typed while an answer is made may be lost), and the exit code."""
        for _ in range(40):
            os.write(self.master, b"\x04")
            try:
                return self.process.wait(0.5)
            except subprocess.TimeoutExpired:
                continue
        raise AssertionError("Ctrl-D does not leave")

    def close(self) -> None:
        """End the process if it is still there."""
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()
        os.close(self.master)


@pytest.fixture()
def environ(tmp_path: Path) -> dict[str, str]:
    """An environment of one's own, on a terminal that can place a cursor."""
    kept = {k: v for k, v in os.environ.items() if k not in ("TELLFIN_BASE", "NO_COLOR")}
    return {**kept, "TERM": "xterm", "XDG_STATE_HOME": str(tmp_path / "state")}


@pytest.fixture()
def opened(environ: dict[str, str]) -> Iterator[Callable[..., Terminal]]:
    """Start ``tellfin`` with some words on a pseudo-terminal."""
    terminals: list[Terminal] = []

    def start(*words: str, columns: int = 80, rows: int = 24, **env: str | None) -> Terminal:
        changed = {k: v for k, v in {**environ, **env}.items() if v is not None}
        terminals.append(Terminal(list(words), changed, columns, rows))
        return terminals[-1]

    yield start
    for terminal in terminals:
        terminal.close()


def test_piped_questions_are_answered(tellfin: Callable[..., object]) -> None:
    """``tellfin`` with piped lines answers each; pronouns carry over; nothing but answers is printed."""
    ran = tellfin(stdin="How do I tell a white crappie from a black crappie?\nwhat about their fins?\nbye\n")
    assert ran.code == 0 and ran.err in ("", "Preparing the base for first use, a few seconds ...\n")
    assert "dorsal" in ran.out and "Tellfin" not in ran.out and "\x1b" not in ran.out


def test_bad_options_are_told(tellfin: Callable[..., object]) -> None:
    """An unknown place or a day that is none ends with exit code 2 and what to do."""
    assert tellfin("chat", "--date", "someday").code == 2
    ran = tellfin("chat", "--place", "Nowhereland Pit")
    assert ran.code == 2 and "Nowhereland" in ran.err


def test_place_and_units_are_held_from_the_start(tellfin: Callable[..., object]) -> None:
    """A place and units given as options hold for the conversation."""
    out = tellfin("chat", "--units", "metric", stdin="how big do bluegills get\n").out
    assert "mm (" in out.splitlines()[0] or "cm (" in out


def test_full_prompt_on_a_terminal(opened: Callable[..., Terminal], tmp_path: Path) -> None:
    """On a terminal: greeting, answer, history for the owner only, a clean end."""
    terminal = opened()
    terminal.wait_for("tell>")
    terminal.send("how do I tell a white crappie from a black crappie\r")
    terminal.wait_for("dorsal")
    terminal.wait_for("white crappie, black crappie")
    assert terminal.leave() == 0
    kept = tmp_path / "state" / "tellfin" / "lines.txt"
    assert "white crappie" in kept.read_text() and kept.stat().st_mode & 0o077 == 0


def test_a_prompt_loads_nothing_heavy() -> None:
    """Before the first answer neither scoring nor RDF libraries are loaded, in plain lines not even prompt_toolkit."""
    code = (
        "import io, sys; from assistant.cli.main import main\n"
        "main(['chat', '--plain'], io.StringIO(''), io.StringIO(), io.StringIO())\n"
        "plain = set(sys.modules); from assistant.prompt import app\n"
        "print(sorted(plain & {'prompt_toolkit', 'numpy', 'rdflib', 'pyshacl', 'jinja2', 'rapidfuzz'}),"
        " sorted(set(sys.modules) & {'numpy', 'rdflib', 'pyshacl', 'jinja2', 'rapidfuzz'}))"
    )
    subprocess.run(
        [sys.executable, "-m", "assistant", "chat", "--plain"], input=b"", cwd=ROOT, check=True, capture_output=True
    )
    ran = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[] []"


@pytest.mark.long
def test_no_history(opened: Callable[..., Terminal], tmp_path: Path) -> None:
    """With ``--no-history`` no file is made."""
    terminal = opened("chat", "--no-history")
    terminal.wait_for("tell>")
    terminal.send("hello\r")
    terminal.wait_for("tell>")
    assert terminal.leave() == 0
    assert not (tmp_path / "state" / "tellfin" / "lines.txt").exists()


@pytest.mark.long
@pytest.mark.parametrize("words", [("chat", "--plain"), ()])
def test_plain_lines_on_a_terminal(opened: Callable[..., Terminal], words: tuple[str, ...]) -> None:
    """With ``--plain`` or on a dumb terminal not one escape code is sent, and the answer is the same in content."""
    terminal = opened(*words, TERM="xterm" if words else "dumb")
    terminal.wait_for("tell> ")
    terminal.send("how do I tell a white crappie from a black crappie\n")
    text = terminal.wait_for("tell> ")
    assert "dorsal" in text and "\x1b" not in text
    assert terminal.leave() == 0


@pytest.mark.long
def test_no_home_and_unwritable_folders(opened: Callable[..., Terminal], tmp_path: Path) -> None:
    """Where neither history nor cache can be written, one notice is shown and the prompt answers."""
    (tmp_path / "file").write_text("")
    blocked = str(tmp_path / "file" / "below")
    terminal = opened(HOME=None, XDG_STATE_HOME=blocked, TELLFIN_CACHE=blocked)
    text = terminal.wait_for("tell>")
    assert text.count("not kept") == 1 and "Traceback" not in text
    terminal.send("hello\r")
    terminal.wait_for("tell>")
    assert terminal.leave() == 0


@pytest.mark.long
def test_colours_can_be_refused(opened: Callable[..., Terminal]) -> None:
    """With NO_COLOR no colour is sent, only bold, underline and italic."""
    import re

    terminal = opened(NO_COLOR="1")
    terminal.wait_for("tell>")
    terminal.send("hello\r")
    text = terminal.wait_for("tell>")
    assert terminal.leave() == 0
    codes = {part for found in re.findall(r"\x1b\[([0-9;]*)m", text) for part in found.split(";")}
    assert codes <= {"", "0", "1", "3", "4", "7", "39", "49"}
