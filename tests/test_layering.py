"""The layers of the house: imports go one way, heavy libraries stay in their room, modules stay small."""

from __future__ import annotations

import ast
import re
from collections import Counter
from functools import cache
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parent.parent / "assistant"
LEAVES = ("errors", "text", "units", "iris")
ALLOWED: dict[str, set[str]] = {
    "graph": set(),
    "model": {"graph"},
    "reasoning": {"model"},
    "dialogue": {"model", "reasoning"},
    "curation": {"graph", "model", "reasoning"},
    "render": {"model", "reasoning", "dialogue"},
    "prompt": {"model", "reasoning", "dialogue", "render"},
    "cli": {"graph", "model", "reasoning", "dialogue", "curation", "render", "prompt", "loading",
            "compiling", "signature"},
    "packaging": {"graph", "model", "reasoning", "loading", "compiling", "signature"},
    "loading": {"graph", "model", "reasoning", "compiling", "recompiling", "signature"},
    "recompiling": {"graph", "model", "reasoning", "signature"},
    "compiling": {"graph", "model", "reasoning", "signature"},
    "signature": {"graph", "model"},
}
GRAPH_READERS = {"model/build.py"}
"""The modules of the model that may see the graph layer."""
HOMES = {"rdflib": "graph", "pyoxigraph": "graph", "pyshacl": "graph", "prompt_toolkit": "prompt"}
LONGEST_MODULE, LONGEST_FUNCTION = 500, 60
UNNAMED = {
    "ReadyBase",  # found by the build tool
}
"""Names that nothing in the package speaks of."""
MODULES = sorted(PACKAGE.rglob("*.py"))


def layer_of(path: Path) -> str:
    """The layer of a module: its folder, or its own name at the top."""
    parts = path.relative_to(PACKAGE).parts
    return parts[0] if len(parts) > 1 else path.stem


@cache
def tree_of(path: Path) -> ast.Module:
    """A module, parsed once."""
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def imports_of(path: Path) -> set[str]:
    """The dotted names that a module imports, inside functions too; imports for type checking alone are left out."""
    tree = tree_of(path)
    guarded = [b for b in ast.walk(tree) if isinstance(b, ast.If) and "TYPE_CHECKING" in ast.dump(b.test)]
    skipped = {id(n) for branch in guarded for n in ast.walk(branch)}
    found: set[str] = set()
    for node in ast.walk(tree):
        if id(node) in skipped:
            continue
        if isinstance(node, ast.Import):
            found.update(a.name for a in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module)
            found.update(f"{node.module}.{a.name}" for a in node.names)
    return found


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_imports_go_downward_only(path: Path) -> None:
    """A module imports only lower layers and leaves; siblings never import each other."""
    layer = layer_of(path)
    if layer in LEAVES:
        assert not [i for i in imports_of(path) if i.startswith("assistant")]
        return
    if layer in ("__init__", "__main__"):
        return
    for name in imports_of(path):
        parts = name.split(".")
        if parts[0] != "assistant" or len(parts) < 2 or parts[1] in LEAVES or parts[1].startswith("__"):
            continue
        assert parts[1] == layer or parts[1] in ALLOWED[layer], f"{layer} may not import {name}"
        if layer == "model" and parts[1] == "graph":
            assert str(path.relative_to(PACKAGE)) in GRAPH_READERS


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_heavy_libraries_stay_in_their_layer(path: Path) -> None:
    """rdflib, pyoxigraph and pyshacl are imported in graph/, prompt_toolkit in prompt/; print in the faces."""
    for name in imports_of(path):
        home = HOMES.get(name.split(".")[0])
        assert home is None or layer_of(path) == home, f"{name} outside {home}/"
    calls = [n for n in ast.walk(tree_of(path))
             if isinstance(n, ast.Call) and isinstance(n.func, ast.Name) and n.func.id == "print"]
    assert not calls or layer_of(path) in ("prompt", "cli")


@pytest.mark.parametrize("path", MODULES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_modules_and_functions_stay_small_and_say_their_job(path: Path) -> None:
    """No module over 500 lines, no function over 60; each module and each public function and class has a docstring."""
    text = path.read_text(encoding="utf-8")
    tree = tree_of(path)
    assert ast.get_docstring(tree)
    assert text.count("\n") <= LONGEST_MODULE
    for node in ast.walk(tree):
        if isinstance(node, ast.FunctionDef):
            assert (node.end_lineno or 0) - node.lineno < LONGEST_FUNCTION, node.name
    classes = [n for n in tree.body if isinstance(n, ast.ClassDef) and not n.name.startswith("_")]
    for node in [*tree.body, *(n for c in classes for n in c.body)]:
        if isinstance(node, ast.FunctionDef | ast.ClassDef) and not node.name.startswith("_"):
            overload = [d for d in node.decorator_list if isinstance(d, ast.Name) and d.id == "overload"]
            assert overload or ast.get_docstring(node), node.name


def test_what_is_public_is_used() -> None:
    """Each function, class and constant of the package is named a second time in it (or overrides one of a library)."""
    text = "".join(p.read_text(encoding="utf-8") for p in PACKAGE.rglob("*") if p.suffix in (".py", ".html"))
    words = Counter(re.findall(r"\w+", text))
    for path in MODULES:
        for node in tree_of(path).body:
            targets = node.targets if isinstance(node, ast.Assign) else [node.target] \
                if isinstance(node, ast.AnnAssign) else []
            names = [t.id for t in targets if isinstance(t, ast.Name)]
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                names.append(node.name)
            for name in names:
                assert words[name] > 1 or name.startswith("__") or name in UNNAMED, (path.name, name)


def test_no_import_cycle_between_modules() -> None:
    """Imports at module level form no cycle."""
    names = {"assistant." + ".".join(p.relative_to(PACKAGE).with_suffix("").parts): p for p in MODULES}
    edges: dict[str, set[str]] = {}
    for name, path in names.items():
        tree = tree_of(path)
        top = [n for n in tree.body if isinstance(n, ast.ImportFrom) and n.module]
        edges[name] = {c for n in top for c in (n.module, *(f"{n.module}.{a.name}" for a in n.names)) if c in names}
    done: set[str] = set()

    def walk(name: str, trail: tuple[str, ...]) -> None:
        assert name not in trail, " -> ".join((*trail, name))
        if name not in done:
            for other in sorted(edges[name]):
                walk(other, (*trail, name))
            done.add(name)

    for name in sorted(edges):
        walk(name, ())


def test_no_fact_about_a_fish_stands_in_code(kb: object) -> None:
    """No scientific name and no vernacular of a species appears as a literal in the package."""
    from assistant.model.knowledge import KnowledgeBase

    assert isinstance(kb, KnowledgeBase)
    words = {t.scientific for t in kb.all("taxon") if not t.is_hybrid} | {
        t.label for t in kb.all("taxon") if t.is_species and not t.is_hybrid}
    ids = {t.id for t in kb.all("taxon")}
    for path in MODULES:
        if path.name == "intent_rows.py":
            continue  # worked examples of what people type, which run as tests
        tree = tree_of(path)
        docs = {id(n.value) for n in ast.walk(tree) if isinstance(n, ast.Expr) and isinstance(n.value, ast.Constant)}
        for node in ast.walk(tree):
            if isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in docs:
                assert node.value not in words and node.value not in ids, (path.name, node.value)
