"""What pyproject.toml declares is what the code imports."""

from __future__ import annotations

import ast
import re
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
CALLED = {"python-dateutil": "dateutil", "scikit-learn": "sklearn"}
"""Distributions that are imported under another name."""
RUN = {"pytest", "pytest-xdist", "hypothesis", "ruff", "mypy", "oxigraph"}
"""Tools of the development extra that are run, not imported (or imported by what runs them)."""


def declared(requirements: list[str]) -> set[str]:
    """The names under which requirements are imported; packages of type stubs are left out."""
    names = [re.split(r"[<>=!\[ ]", r, maxsplit=1)[0] for r in requirements]
    return {CALLED.get(n, n) for n in names if not n.startswith("types-")}


def imported(folder: str) -> set[str]:
    """The libraries that the modules of a folder import, inside functions too; not the standard library, not ours."""
    found: set[str] = set()
    for path in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                found.update(a.name.partition(".")[0] for a in node.names)
            elif isinstance(node, ast.ImportFrom) and node.module:
                found.add(node.module.partition(".")[0])
    return found - sys.stdlib_module_names - {"assistant", "tests"}


def test_every_runtime_dependency_is_used_and_every_import_declared() -> None:
    """What a user installs is imported by the package, and the package imports nothing else (but its build tool)."""
    assert imported("assistant") - {"hatchling"} == declared(PROJECT["project"]["dependencies"])


def test_what_tests_import_is_declared() -> None:
    """The tests import runtime and development dependencies only, and each of the latter is used."""
    development = declared(PROJECT["project"]["optional-dependencies"]["dev"])
    used = imported("tests") | imported("assistant")
    assert used <= development | declared(PROJECT["project"]["dependencies"])
    assert development <= used | RUN
