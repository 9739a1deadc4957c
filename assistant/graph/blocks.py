"""The subjects of one Turtle file and where each stands, found without parsing what is not needed (layer 1).

A file in canonical form is indexed by its text alone: subjects stand at the start of a line, one object follows a
line, a lone dot ends the block. A file in any other form is parsed whole.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import NamedTuple

from assistant.graph.read import read_bytes
from assistant.graph.values import Node
from assistant.iris import PREFIXES, compact

_ODD = re.compile(rb"\n(?!    [^ \n]|@prefix |[a-z]+:[A-Za-z0-9_.\-]+\n|<[^>\s]+>\n|\n|\Z)")
_SUBJECT = re.compile(rb"\n\n([a-z]+:\S+|<\S+>)\n")
_HEADER = re.compile(rb"\A(?:#.*\n|\n)*")
_PREFIX_LINES = re.compile(rb"^@prefix .*$", re.M)
_CANONICAL_PREFIXES = frozenset(f"@prefix {p}: <{iri}> .".encode() for p, iri in PREFIXES.items())
_END = b"\n    .\n"


class Spot(NamedTuple):
    """A place in a file: the bytes of a block in a canonical file, else the line of the subject alone."""

    file: Path
    line: int
    start: int = 0
    end: int = 0


@dataclass(slots=True)
class Blocks:
    """The text of one file and its subjects in the order in which they stand.

    ``double`` lists further places of a subject that stands here already; ``nodes`` is filled in a file that is not
    in canonical form (``odd``) and had to be parsed.
    """

    path: Path
    data: bytes
    odd: bool = False
    spots: dict[str, Spot] = field(default_factory=dict)
    double: list[tuple[str, Spot]] = field(default_factory=list)
    nodes: dict[str, Node] = field(default_factory=dict)
    _grouped: dict[str, list[str]] = field(default_factory=dict)

    def with_head(self, head: str) -> list[str]:
        """The subjects with this head (see ``head_of``), in the order in which they stand."""
        if not self._grouped:
            for key in self.spots:
                self._grouped.setdefault(head_of(key), []).append(key)
        return self._grouped.get(head, [])


def subjects_holding(token: bytes, text: bytes, data: bytes) -> Iterator[str]:
    """The subjects of a canonical file whose block holds the token; ``text`` is the data, perhaps in lower case."""
    at = text.find(token)
    while at >= 0:
        start = data.rfind(b"\n\n", 0, at) + 2
        yield compact_subject(data[start:data.index(b"\n", start)])
        at = text.find(token, at + 1)


def blocks_of(path: Path, data: bytes) -> Blocks:
    """The subjects of a file. DataError where it is not in canonical form and cannot be read either."""
    found = Blocks(path, data, not is_canonical(data))
    if found.odd:
        _index_parsed(found)
    else:
        _index_text(found)
    return found


def heads_of(keys: Iterable[str]) -> frozenset[str]:
    """What must be known of a file to tell whether it may hold a subject: "taxon:a", and "st:a." for st:a.b.c."""
    return frozenset(map(head_of, keys))


def head_of(key: str) -> str:
    """The head of an id.

    >>> head_of("taxon:a"), head_of("st:a.b.any.c")
    ('taxon:a', 'st:a.')
    """
    at = key.find(".", key.find(":"))
    return key[: at + 1] if at >= 0 else key


def compact_subject(token: bytes) -> str:
    """The id behind a subject as written."""
    text = token.decode("utf-8", "replace")
    return compact(text[1:-1]) if text.startswith("<") else text


def is_canonical(data: bytes) -> bool:
    """True when every line has one of the forms that the writer makes, so that the text can be trusted as an index."""
    body = b"\n" + data[_HEADER.match(data).end():]  # type: ignore[union-attr]
    lines, ends = body.count(b"\n    "), body.count(_END)
    return (_ODD.search(body) is None and data.endswith(_END) and lines == body.count(b" ;\n    ") + ends
            and all(line in _CANONICAL_PREFIXES for line in _PREFIX_LINES.findall(body, 0, 4096)))


def _index_text(found: Blocks) -> None:
    path, data = found.path, found.data
    start, key = -1, ""
    for match in _SUBJECT.finditer(data):
        if start >= 0:
            _put(found, key, Spot(path, 0, start, match.start() + 1))
        start, token = match.start(1), match.group(1)
        key = token.decode() if token[0] != 60 else compact_subject(token)
    if start >= 0:
        _put(found, key, Spot(path, 0, start, len(data)))


def _index_parsed(found: Blocks) -> None:
    found.nodes = read_bytes(found.data, found.path)
    rows = found.data.decode("utf-8", "replace").splitlines()
    starts: dict[str, int] = {}
    for number, row in enumerate(rows, start=1):
        word = row.split(maxsplit=1)[0] if row.strip() else ""
        starts.setdefault(compact_subject(word.encode()), number)
    for key, node in found.nodes.items():
        node.file = found.path
        _put(found, key, Spot(found.path, starts.get(key, 0)))


def _put(found: Blocks, key: str, spot: Spot) -> None:
    if found.spots.setdefault(key, spot) is not spot:
        found.double.append((key, spot))
