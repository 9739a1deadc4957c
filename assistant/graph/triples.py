"""Single triples as short text and back, for the record of what a change added and took away (layer 1)."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from assistant.graph.read import read_bytes
from assistant.graph.values import Node, Value
from assistant.graph.write import write_nodes
from assistant.iris import PREFIXES

_PROLOGUE = "".join(f"@prefix {p}: <{iri}> .\n" for p, iri in PREFIXES.items())


def triple_text(subject: str, predicate: str, value: Value) -> str:
    """A triple in the words of our Turtle, without its dot.

    >>> triple_text("st:a.b.any.c", "tf:low", "tf:read")
    'st:a.b.any.c tf:low tf:read'
    """
    lines = write_nodes([Node(subject, {predicate: [value]})]).splitlines()
    return f"{lines[-3]} {lines[-2].strip().removesuffix(' ;')}"


def node_triples(node: Node) -> list[str]:
    """Every triple of a node as text, sorted."""
    return sorted(triple_text(node.id, p, v) for p, values in node.props.items() for v in values)


def parse_triples(lines: Iterable[str], where: str = "history") -> dict[str, Node]:
    """Triples as text back to nodes. DataError when one cannot be read."""
    body = "".join(f"{line} .\n" for line in lines)
    return read_bytes((_PROLOGUE + body).encode("utf-8"), Path(where))


def parse_turtle(text: str, where: str) -> dict[str, Node]:
    """A piece of Turtle in which our prefixes need not be declared. DataError when it cannot be read."""
    return read_bytes((_PROLOGUE + text).encode("utf-8", "surrogatepass"), Path(where), len(PREFIXES))
