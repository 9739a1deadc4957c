"""A one-shot answer loads what it needs and no more, each checked in a process of its own."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

HEAVY = {"rdflib", "pyshacl", "prompt_toolkit", "jinja2", "openpyxl", "asyncio", "pyoxigraph"}
"""What no one-shot answer on a compiled base may load."""
PROGRAM = """
import io, json, sys
from assistant.cli.main import main
code = main(sys.argv[1:], io.StringIO(""), out := io.StringIO(), sys.stderr)
print(json.dumps([code, out.getvalue(), sorted(m for m in sys.modules if "." not in m)]))
"""


@pytest.fixture(scope="module")
def cache(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A cache folder in which the compiled form of the shipped base already lies."""
    folder = tmp_path_factory.mktemp("cache")
    run(folder, "ask", "hello")
    return folder


def run(cache: Path, *args: str) -> tuple[int, str, set[str]]:
    """Exit code, output and loaded top-level modules of a command in a fresh process."""
    env = {**os.environ, "TELLFIN_CACHE": str(cache), "PYTHONPATH": str(Path(__file__).parent.parent)}
    env.pop("TELLFIN_BASE", None)
    done = subprocess.run([sys.executable, "-c", PROGRAM, *args], env=env, capture_output=True, text=True, check=True)
    code, text, modules = json.loads(done.stdout.splitlines()[-1])
    return code, text, set(modules)


@pytest.mark.parametrize(
    "question",
    [
        "how do I tell a white crappie from a black crappie?",
        "what does a bluegill look like?",
        "is a walleye found in Ohio?",
        "how do I handle a channel catfish?",
        "what is a gill raker?",
        "thanks",
        "how big does a muskie get?",
    ],
)
def test_answers_about_named_fish_need_no_heavy_library(cache: Path, question: str) -> None:
    """Telling two fish apart, describing one and the like load neither numpy nor anything heavier."""
    code, text, modules = run(cache, "ask", question)
    assert (code, bool(text.strip())) == (0, True)
    assert not modules & (HEAVY | {"numpy"}), modules & (HEAVY | {"numpy"})


def test_naming_a_catch_needs_numpy_and_nothing_heavier(cache: Path) -> None:
    """Identification loads numpy but no library for editing, checking or chatting."""
    code, text, modules = run(cache, "ask", "it had a red spot on the ear flap and 10 dorsal spines")
    assert (code, bool(text.strip())) == (0, True)
    assert "numpy" in modules
    assert not modules & HEAVY, modules & HEAVY


def test_help_and_version_load_nothing(cache: Path) -> None:
    """Asking for the version loads no library but the standard one."""
    code, _, modules = run(cache, "--version")
    assert code == 0
    assert not modules & (HEAVY | {"numpy", "rapidfuzz", "platformdirs"})
