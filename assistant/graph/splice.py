"""A changed file made from its own text: untouched blocks are copied, changed ones written anew (layer 1).

On a file in canonical form this gives what writing all of it would give; nothing but the touched blocks is parsed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from assistant.graph.blocks import Blocks
from assistant.graph.read import read_bytes
from assistant.graph.values import Node
from assistant.graph.write import node_text, prologue, split_header, subject_key, write_nodes
from assistant.iris import PREFIXES

_TYPES = re.compile(rb"[^\n]+\n((?:    a [^\n]+ ;\n)*)")
_DECLARED = re.compile(r"^@prefix ([a-z]+):", re.M)
_ALL_PREFIXES = "".join(f"@prefix {p}: <{iri}> .\n" for p, iri in PREFIXES.items())

Place = tuple[int, str]
"""What subjects are ordered by: class, then id."""


class _Text(NamedTuple):
    """A block as it will stand in the file."""

    place: Place
    text: str


def spliced(blocks: Blocks, changes: Mapping[str, Node | None]) -> bytes | None:
    """The new content of a canonical file with these subjects changed, added, or (None) taken away.

    None when the file loses its last subject.
    """
    used: set[str] = set()
    fresh = {k: _Text(subject_key(n), node_text(n, used)) for k, n in changes.items() if n is not None}
    old = [k for k in changes if k in blocks.spots]
    lost = _prefixes_of(blocks, old) - used
    first = next(iter(blocks.spots.values())).start if blocks.spots else 0
    head = blocks.data[:first].decode("utf-8")
    if lost:
        return _whole(blocks, changes, head)
    body = _body(blocks, fresh, set(old))
    if not body:
        return None
    declared = set(_DECLARED.findall(head))
    if used - declared:
        head = prologue(split_header(head)[0], used | declared)
    return head.encode() + b"\n".join(body)


def _body(blocks: Blocks, fresh: Mapping[str, _Text], old: set[str]) -> list[bytes]:
    """The blocks in order: a changed one stays in its place while its class stays, a new one goes where it belongs."""
    names: list[str] = []
    parts: list[bytes] = []
    for key, spot in blocks.spots.items():
        if key not in old:
            names.append(key)
            parts.append(blocks.data[spot.start:spot.end])
        elif key in fresh and fresh[key].place == _place(blocks, key):
            names.append(key)
            parts.append(fresh[key].text.encode())
    for key in sorted(set(fresh) - set(names), key=lambda k: fresh[k].place):
        at = _where(blocks, names, fresh, fresh[key].place)
        names.insert(at, key)
        parts.insert(at, fresh[key].text.encode())
    return parts


def _where(blocks: Blocks, names: list[str], fresh: Mapping[str, _Text], place: Place) -> int:
    low, high = 0, len(names)
    while low < high:
        middle = (low + high) // 2
        key = names[middle]
        if (fresh[key].place if key in fresh else _place(blocks, key)) < place:
            low = middle + 1
        else:
            high = middle
    return low


def _place(blocks: Blocks, key: str) -> Place:
    spot = blocks.spots[key]
    found = _TYPES.match(blocks.data, spot.start, spot.end)
    types = [line.strip().split(" ")[1] for line in found[1].decode().splitlines()] if found else []
    return subject_key(Node(key, {"rdf:type": list(types)}))


def _prefixes_of(blocks: Blocks, keys: list[str]) -> set[str]:
    used: set[str] = set()
    for node in _nodes(blocks, keys).values():
        node_text(node, used)
    return used


def _nodes(blocks: Blocks, keys: list[str]) -> dict[str, Node]:
    text = b"\n".join(blocks.data[blocks.spots[k].start:blocks.spots[k].end] for k in keys)
    return read_bytes(_ALL_PREFIXES.encode() + b"\n" + text, blocks.path) if keys else {}


def _whole(blocks: Blocks, changes: Mapping[str, Node | None], head: str) -> bytes | None:
    """All of the file written anew, since a prefix may be used no longer."""
    nodes = {**_nodes(blocks, [k for k in blocks.spots if k not in changes]),
             **{k: n for k, n in changes.items() if n is not None}}
    return write_nodes(nodes.values(), split_header(head)[0]).encode() if nodes else None
