"""The ids of the base that stand in code: a renamed character or state must not be passed over in silence."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from assistant.model.knowledge import KnowledgeBase

PACKAGE = Path(__file__).parent.parent.parent / "assistant"
TRAITS = ("one", "knows", "shows", "colour", "count")
"""What a drawing asks of a fish: a character first, then states of it."""
OWN = frozenset({"anal-front", "anal-front-tip", "pelvic-front", "pelvic-front-tip", "mouth-barbels", "blue-green",
                 "blue-silver"})
"""Hyphened words of the drawing itself: places on the paper, inks."""
ATTRIBUTES = ("stroke-", "fill-", "font-", "text-", "clip-")
"""How attributes of an SVG begin."""


def calls() -> Iterator[tuple[str, str, list[str | None]]]:
    """File, name and arguments of every call; an argument is a text, or a constant of the module that is one."""
    for path in sorted(PACKAGE.rglob("*.py")):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        texts = {target.id: node.value.value for node in tree.body
                 if isinstance(node, ast.Assign) and isinstance(node.value, ast.Constant)
                 and isinstance(node.value.value, str) for target in node.targets if isinstance(target, ast.Name)}

        def text(node: ast.expr, known: dict[str, str] = texts) -> str | None:
            if isinstance(node, ast.Name):
                return known.get(node.id)
            return node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else None

        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute | ast.Name):
                name = node.func.attr if isinstance(node.func, ast.Attribute) else node.func.id
                yield str(path.relative_to(PACKAGE)), name, [text(a) for a in node.args]


def test_what_code_looks_up_is_in_the_base(kb: KnowledgeBase) -> None:
    """A character, state or record that is looked up by a literal exists."""
    looked = 0
    for file, name, args in calls():
        if name == "find" and len(args) == 2 and args[0] and args[1]:
            looked += 1
            assert kb.find(args[0], args[1]) is not None, (file, args)
        character = {"character": args[:1], "about": args[2:3], "statements_on": args[1:2],
                     **dict.fromkeys(TRAITS if file.startswith("render/") else (), args[:1])}.get(name, [])
        for key in filter(None, character):
            looked += 1
            assert kb.find("character", key) is not None, (file, name, key)
            for state in filter(None, args[1:] if name == "shows" else ()):
                assert kb.state(f"{key}.{state}"), (file, key, state)
    assert looked > 150


def test_what_a_drawing_names_is_in_the_base(kb: KnowledgeBase) -> None:
    """Every hyphened word of the drawing is a character, a part of the body or a state, or a word of its own."""
    known = {c.id for c in kb.characters} | {c.part for c in kb.characters} | OWN
    known |= {s.id.partition(".")[2] for c in kb.characters for s in kb.states(c.id)}
    for path in sorted((PACKAGE / "render").glob("drawing*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and re.fullmatch(r"[a-z]+(-[a-z0-9]+)+", word := str(node.value)):
                assert word in known or word.startswith(ATTRIBUTES), (path.name, word)
