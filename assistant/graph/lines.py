"""Where each subject of a folder stands (IRI -> file:line), found without parsing what is not needed (layer 1).

A file in canonical form is indexed by its text alone: subjects stand at the start of a line, one object follows a
line, a lone dot ends the block. A file in any other form is parsed whole. Nodes are parsed when asked for.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from assistant.errors import DataError
from assistant.graph.read import read_bytes, turtle_files
from assistant.graph.values import Node
from assistant.iris import PREFIXES, compact

_ODD = re.compile(rb"\n(?!    [^ \n]|@prefix |[a-z]+:[A-Za-z0-9_.\-]+\n|<[^>\s]+>\n|\n|\Z)")
_SUBJECT = re.compile(rb"\n\n([a-z]+:\S+|<\S+>)\n")
_HEADER = re.compile(rb"\A(?:#.*\n|\n)*")
_PREFIX_LINES = re.compile(rb"^@prefix .*$", re.M)
_CANONICAL_PREFIXES = frozenset(f"@prefix {p}: <{iri}> .".encode() for p, iri in PREFIXES.items())
_ALL_PREFIXES = b"\n".join(sorted(_CANONICAL_PREFIXES)) + b"\n"
_END = b"\n    .\n"


class Spot(NamedTuple):
    """A place in a file: the bytes of a block in a canonical file, else the line of the subject alone."""

    file: Path
    line: int
    start: int = 0
    end: int = 0


class Index:
    """The subjects of a folder; ``nodes`` are parsed on demand and must not be changed by the caller."""

    def __init__(self, folder: Path, contents: Mapping[Path, bytes] | None = None) -> None:
        """Index a folder, or the given contents of its files. DataError where a non-canonical file cannot be read."""
        self.folder = folder
        self.contents: dict[Path, bytes] = dict(contents) if contents is not None else _read_all(folder)
        self.spots: dict[str, Spot] = {}
        self.double: list[tuple[str, Spot]] = []
        self.odd: set[Path] = set()
        self._nodes: dict[str, Node] = {}
        self._folded: dict[Path, bytes] = {}
        self._groups: dict[tuple[str, str], list[str]] = {}
        self._files: dict[Path, list[str]] = {path: [] for path in self.contents}
        for path, data in self.contents.items():
            if _is_canonical(data):
                self._index_text(path, data)
            else:
                self.odd.add(path)
                self._index_parsed(path, data)

    def __contains__(self, key: str) -> bool:
        return key in self.spots

    def node(self, key: str) -> Node | None:
        """The node with this id, None when the folder has none."""
        if key in self._nodes:
            return self._nodes[key]
        self.fetch([key])
        return self._nodes.get(key)

    def fetch(self, keys: Iterable[str]) -> None:
        """Parse the blocks of these subjects in one go, so that ``node`` finds them."""
        wanted = [(k, self.spots[k]) for k in keys if k in self.spots and k not in self._nodes]
        if not wanted:
            return
        blocks = [self.contents[spot.file][spot.start:spot.end] for _, spot in wanted]
        found = read_bytes(_ALL_PREFIXES + b"\n".join(blocks), wanted[0][1].file)
        for key, spot in wanted:
            node = found[key]
            node.file = spot.file
            self._nodes[key] = node

    def line(self, spot: Spot) -> int:
        """The line of a spot, counted from 1."""
        return spot.line or self.contents[spot.file].count(b"\n", 0, spot.start) + 1

    def where(self, key: str) -> str:
        """file:line of a subject, with the file relative to the folder; empty when unknown."""
        spot = self.spots.get(key)
        return f"{self.name(spot.file)}:{self.line(spot)}" if spot else ""

    def name(self, path: Path) -> str:
        """The path of a file relative to the folder, with forward slashes."""
        return path.relative_to(self.folder).as_posix() if path.is_relative_to(self.folder) else path.as_posix()

    def ids(self, prefix: str, group: str = "") -> list[str]:
        """Sorted ids under a prefix; with ``group`` those that start with "prefix:group."."""
        if not self._groups:
            for key in self.spots:
                head, _, rest = key.partition(":")
                self._groups.setdefault((head, ""), []).append(key)
                if "." in rest:
                    self._groups.setdefault((head, rest.partition(".")[0]), []).append(key)
            for members in self._groups.values():
                members.sort()
        return list(self._groups.get((prefix, group), ()))

    def in_file(self, path: Path) -> list[str]:
        """Ids of the subjects that stand in a file, sorted."""
        return sorted(self._files.get(path, ()))

    def referrers(self, key: str) -> list[str]:
        """Sorted ids of the nodes that point to this one."""
        found = set(self._holding(b" " + key.encode() + b" ;\n"))
        for path in self.odd:
            for other in self.in_file(path):
                node = self._nodes[other]
                if any(key in values for values in node.props.values()):
                    found.add(other)
        return sorted(found - {key})

    def with_text(self, predicate: str, text: str) -> list[str]:
        """Sorted ids of the nodes that have this very text (in any language) as a value of the predicate."""
        shown = text.replace("\\", "\\\\").replace('"', '\\"')
        token = f'    {predicate} "{shown}"'.encode().lower()
        found = {*self._holding(token + b" ;\n", fold=True), *self._holding(token + b"@", fold=True)}
        for path in self.odd:
            for key in self.in_file(path):
                values = self._nodes[key].props.get(predicate, [])
                if any(not isinstance(v, str) and v.value.lower() == text.lower() for v in values):
                    found.add(key)
        return sorted(found)

    def all_nodes(self) -> dict[str, Node]:
        """Every node, parsed file by file."""
        for path, data in self.contents.items():
            if path not in self.odd and any(k not in self._nodes for k in self._files[path]):
                self._adopt(path, read_bytes(data, path))
        return {key: self._nodes[key] for key in self.spots if key in self._nodes}

    def _adopt(self, path: Path, nodes: Mapping[str, Node]) -> None:
        for key, node in nodes.items():
            spot = self.spots.get(key)
            if spot is not None and spot.file == path:
                node.file = path
                self._nodes.setdefault(key, node)

    def _holding(self, token: bytes, fold: bool = False) -> Iterator[str]:
        """The subjects of canonical files whose block holds these bytes."""
        for path, data in self.contents.items():
            if path in self.odd:
                continue
            text = self._folded.setdefault(path, data.lower()) if fold else data
            at = text.find(token)
            while at >= 0:
                start = data.rfind(b"\n\n", 0, at) + 2
                yield compact_subject(data[start:data.index(b"\n", start)])
                at = text.find(token, at + 1)

    def _index_text(self, path: Path, data: bytes) -> None:
        spots, mine = self.spots, self._files[path]
        start, key = -1, ""
        for match in _SUBJECT.finditer(data):
            if start >= 0:
                spot = Spot(path, 0, start, match.start() + 1)
                if spots.setdefault(key, spot) is spot:
                    mine.append(key)
                else:
                    self.double.append((key, spot))
            start, token = match.start(1), match.group(1)
            key = token.decode() if token[0] != 60 else compact_subject(token)
        if start >= 0:
            self._put(key, Spot(path, 0, start, len(data)))

    def _index_parsed(self, path: Path, data: bytes) -> None:
        nodes = read_bytes(data, path)
        rows = data.decode("utf-8", "replace").splitlines()
        starts: dict[str, int] = {}
        for number, row in enumerate(rows, start=1):
            word = row.split(maxsplit=1)[0] if row.strip() else ""
            starts.setdefault(compact_subject(word.encode()), number)
        for key in nodes:
            self._put(key, Spot(path, starts.get(key, 0)))
        self._adopt(path, nodes)

    def _put(self, key: str, spot: Spot) -> None:
        if key in self.spots:
            self.double.append((key, spot))
        else:
            self.spots[key] = spot
            self._files[spot.file].append(key)


def compact_subject(token: bytes) -> str:
    """The id behind a subject as written."""
    text = token.decode("utf-8", "replace")
    return compact(text[1:-1]) if text.startswith("<") else text


def _is_canonical(data: bytes) -> bool:
    """True when every line has one of the forms that the writer makes, so that the text can be trusted as an index."""
    body = b"\n" + data[_HEADER.match(data).end():]  # type: ignore[union-attr]
    lines, ends = body.count(b"\n    "), body.count(_END)
    return (_ODD.search(body) is None and data.endswith(_END) and lines == body.count(b" ;\n    ") + ends
            and all(line in _CANONICAL_PREFIXES for line in _PREFIX_LINES.findall(body, 0, 4096)))


def _read_all(folder: Path) -> dict[Path, bytes]:
    out: dict[Path, bytes] = {}
    for path in turtle_files(folder):
        try:
            out[path] = path.read_bytes()
        except OSError as error:
            raise DataError(f"cannot be read: {error.strerror}", "check its permissions", str(path)) from error
    return out
