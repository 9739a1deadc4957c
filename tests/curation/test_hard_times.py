"""Kills, crowds and full disks: what was said to be done is done, nothing else is half done (long tests)."""

from __future__ import annotations

import random
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.curation.check import check_folder
from assistant.curation.history import read_changes
from assistant.curation.journal import recover
from assistant.curation.view import one
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from tests.helpers.bases import Tellfin, contents_of, copy_tiny_base

pytestmark = pytest.mark.long
KEY = "st:vennia-rubra.gill-rakers.any.vell-2001"
ROOT = Path(__file__).parents[2]
EDITOR = """
import io, sys
from assistant.cli.main import main
base, first = sys.argv[1], int(sys.argv[2])
for n in range(first, first + 400):
    print("try", n, flush=True)
    out, err = io.StringIO(), io.StringIO()
    code = main(["--base", base, "correct", sys.argv[3], f"n={n}", "--by", "Ansa Merrow", "--why", "count"],
                io.StringIO(), out, err)
    assert code == 0, (out.getvalue(), err.getvalue())
    print("done", n, flush=True)
"""
CROWD = """
import io, sys
from assistant.cli.main import main
base, who = sys.argv[1], sys.argv[2]
for n in range(int(sys.argv[3])):
    out, err = io.StringIO(), io.StringIO()
    words = ["--base", base, "add", "name", "taxon=vennia-rubra", f"text=name {who} {n}", "language=en",
             "kind=vernacular", "source=vell-2001", "basis=read", "--by", f"Curator {who}", "--why", "crowd"]
    code = main(words, io.StringIO(), out, err)
    assert code == 0, (out.getvalue(), err.getvalue())
"""


def start(program: str, *words: object) -> subprocess.Popen[str]:
    """A child process that runs a program against the package."""
    return subprocess.Popen([sys.executable, "-c", program, *map(str, words)], stdout=subprocess.PIPE,
                            stderr=subprocess.PIPE, text=True, cwd=ROOT)


def held(base: Path) -> int:
    """The sample size that the edited statement now states; 0 before the first edit."""
    node = Index(base).node(KEY)
    assert node is not None
    return int(one(node, "tf:sampleSize") or 0)


def test_three_hundred_kills(tmp_path: Path) -> None:
    """After each of 300 kills the base is sound and holds the last edit told as done, or the one under way."""
    base, chance = copy_tiny_base(tmp_path / "base"), random.Random(20261125)
    number = 1
    caught_in_the_act = 0
    for kill in range(300):
        child = start(EDITOR, base, number, KEY)
        assert child.stdout is not None and child.stderr is not None
        lines = [child.stdout.readline()]
        if kill % 4:
            lines.append(child.stdout.readline())
        time.sleep(chance.uniform(0.0, 0.3))
        child.send_signal(signal.SIGKILL)
        lines += child.stdout.read().split("\n")
        complaints = child.stderr.read()
        child.wait()
        child.stdout.close()
        child.stderr.close()
        assert complaints == ""
        done = max([int(x.split()[1]) for x in lines if x.startswith("done ")], default=number - 1)
        tried = max([int(x.split()[1]) for x in lines if x.startswith("try ")], default=number)
        recover(base)
        now = held(base)
        assert now in (done, tried), (kill, now, done, tried)
        caught_in_the_act += now != done
        assert [int(one(c, "tf:changeNumber")) for c in read_changes(base)] == list(range(1, now + 1))
        outcome = check_folder(base, shipped_shapes(), with_shapes=kill % 25 == 0)
        assert outcome.passed, outcome.findings
        number = now + 1
    print(f"300 kills, {number - 1} edits, {caught_in_the_act} committed but not yet told")


def test_eight_processes_make_four_hundred_edits(tmp_path: Path) -> None:
    """Eight processes at once: every edit is there once, the history is whole and in order, the base passes."""
    base = copy_tiny_base(tmp_path / "base")
    children = [start(CROWD, base, who, 50) for who in "abcdefgh"]
    for child in children:
        _out, err = child.communicate(timeout=900)
        assert child.returncode == 0, err
    index = Index(base)
    names = [one(n, "skosxl:literalForm") for n in map(index.node, index.ids("name", "vennia-rubra")) if n is not None]
    mine = sorted(n for n in names if n.startswith("name "))
    assert mine == sorted(f"name {who} {n}" for who in "abcdefgh" for n in range(50))
    changes = read_changes(base)
    assert [int(one(c, "tf:changeNumber")) for c in changes] == list(range(1, 401))
    moments = [one(c, "prov:startedAtTime") for c in changes]
    assert moments == sorted(moments)
    for who in "abcdefgh":
        told = [c for c in changes if one(c, "prov:wasAssociatedWith") == f"agent:curator-{who}"]
        assert len(told) == 50
    assert check_folder(base, shipped_shapes()).passed


@pytest.fixture()
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A file system of 400 kB that is nearly full, where the machine lets one be mounted."""
    place = tmp_path / "disk"
    place.mkdir()
    words = ["mount", "-t", "tmpfs", "-o", "size=400k", "tmpfs", str(place)]
    if shutil.which("mount") is None or subprocess.run(words, capture_output=True, check=False).returncode:
        pytest.skip("no file system can be mounted here")
    yield place
    subprocess.run(["umount", "-l", str(place)], check=False)


def test_a_full_disk(small_disk: Path, tellfin: Tellfin) -> None:
    """On a full disk an edit is refused in one line, the base is as before, and works again once there is room."""
    base = copy_tiny_base(small_disk / "base")
    words = ("--base", base, "correct", KEY, "value=9-11", "--by", "Ansa Merrow", "--why", "x")
    before = contents_of(base)
    ballast = small_disk / "ballast"
    with ballast.open("wb", buffering=0) as file:
        try:
            while True:
                file.write(b"x" * 512)
        except OSError:
            pass
    ran = tellfin(*words)
    assert ran.code == 3 and len(ran.err.splitlines()) <= 2 and "Traceback" not in ran.err, ran
    assert contents_of(base) == before and check_folder(base, shipped_shapes(), with_shapes=False).passed
    ballast.unlink()
    assert tellfin(*words).code == 0 and held(base) == 0


def test_a_read_only_disk(small_disk: Path, tellfin: Tellfin) -> None:
    """On a read-only file system edits are refused in one line; reading and checking still work."""
    base = copy_tiny_base(small_disk / "base")
    before = contents_of(base)
    subprocess.run(["mount", "-o", "remount,ro", str(small_disk)], check=True)
    for words in (("correct", KEY, "value=9-11", "--by", "A", "--why", "x"), ("undo", "1", "--by", "A"), ("format",)):
        ran = tellfin("--base", base, *words)
        assert ran.code in (0, 2, 3) and "Traceback" not in ran.err and len(ran.err.splitlines()) <= 2, ran
    assert tellfin("--base", base, "check").code == 0 and contents_of(base) == before
