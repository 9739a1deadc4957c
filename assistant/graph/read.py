"""Turtle files to nodes of plain values by a streaming parser (layer 1)."""

from __future__ import annotations

import re
from pathlib import Path

import pyoxigraph as ox

from assistant.errors import DataError
from assistant.graph.canonical import read_canonical
from assistant.graph.values import Literal, Node, Value
from assistant.iris import compact

_PLACE = re.compile(r"^.*? at line \d+[^:]*: ")
"""How the parser begins its message: the place, which we tell ourselves."""


def read_file(path: Path) -> dict[str, Node]:
    """Every subject of a Turtle file with its properties.

    Raises DataError with file:line where the file does not parse, holds blank nodes, or cannot be read.
    """
    try:
        data = path.read_bytes()
    except OSError as error:
        raise DataError(f"cannot be read: {error.strerror}", "check the path and its permissions", str(path)) from error
    return read_bytes(data, path)


def read_bytes(data: bytes, path: Path, ahead: int = 0) -> dict[str, Node]:
    """The same from bytes; ``path``, and ``ahead`` lines that nobody typed, are used for error messages only.

    Text in canonical form takes a shorter way.
    """
    quick = read_canonical(data, path)
    return parse_bytes(data, path, ahead) if quick is None else quick


def parse_bytes(data: bytes, path: Path, ahead: int = 0) -> dict[str, Node]:
    """The same by the general parser, whatever the form of the text."""
    nodes: dict[str, Node] = {}
    shorts: dict[str, str] = {}
    try:
        for quad in ox.parse(data, format=ox.RdfFormat.TURTLE):
            subject, predicate, obj = quad.subject, quad.predicate, quad.object
            if not isinstance(subject, ox.NamedNode) or isinstance(obj, ox.BlankNode):
                raise DataError("holds a node without a name", "give every node an IRI of its own", str(path))
            key = shorts.get(subject.value) or shorts.setdefault(subject.value, compact(subject.value))
            node = nodes.get(key)
            if node is None:
                node = nodes[key] = Node(key, file=path)
            term = shorts.get(predicate.value) or shorts.setdefault(predicate.value, compact(predicate.value))
            node.props.setdefault(term, []).append(_value(obj, shorts))
    except (SyntaxError, ValueError) as error:
        raise _syntax(error, data, path, ahead) from error
    return nodes


def _value(obj: object, shorts: dict[str, str]) -> Value:
    if isinstance(obj, ox.NamedNode):
        return shorts.get(obj.value) or shorts.setdefault(obj.value, compact(obj.value))
    if isinstance(obj, ox.Literal):
        kind = obj.datatype.value
        short = shorts.get(kind) or shorts.setdefault(kind, compact(kind))
        return Literal(obj.value, short, (obj.language or "").lower())
    raise ValueError("a kind of object that the base does not use")


def _syntax(error: Exception, data: bytes, path: Path, ahead: int) -> DataError:
    line = getattr(error, "lineno", None) or 0
    rows = data.decode("utf-8", "replace").splitlines()
    shown = rows[line - 1].strip()[:80] if 0 < line <= len(rows) else ""
    message = _PLACE.sub("", getattr(error, "msg", None) or str(error))
    hint = f"near: {shown}" if shown else "a dot, a semicolon or a prefix may be missing just before"
    return DataError(f"is not readable Turtle: {message}", hint, f"{path}:{line - ahead}" if line else str(path))


def turtle_files(folder: Path) -> list[Path]:
    """Every Turtle file below a folder, sorted by path; DataError when there is none."""
    if not folder.is_dir():
        raise DataError("is not a folder", "give the folder that holds the Turtle files", str(folder))
    files = sorted(folder.rglob("*.ttl"))
    if not files:
        raise DataError("holds no Turtle file", "an empty folder is not a base", str(folder))
    return files
