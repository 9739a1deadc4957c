"""Where each subject of a folder stands (IRI -> file:line); nodes are parsed when asked for (layer 1)."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import cached_property
from pathlib import Path

from assistant.graph.blocks import Blocks, Spot, head_of, subjects_holding
from assistant.graph.catalogue import Catalogue, place_of
from assistant.graph.read import read_bytes
from assistant.graph.values import Node
from assistant.iris import PREFIXES

_ALL_PREFIXES = b"".join(sorted(f"@prefix {p}: <{iri}> .\n".encode() for p, iri in PREFIXES.items()))


class Index:
    """The subjects of a folder; ``nodes`` are parsed on demand and must not be changed by the caller.

    It looks into the files that may hold what is asked for and no others, so that an edit of a large base reads little
    of it. What needs the whole base (``spots``, ``contents``, ``all_nodes``, ``referrers``) reads all of it.
    """

    def __init__(self, folder: Path, contents: Mapping[Path, bytes] | None = None,
                 catalogue: Catalogue | None = None) -> None:
        """Index a folder, the given contents of its files, or what an up-to-date catalogue says of it.

        Raises DataError where a file cannot be read.
        """
        self.folder = folder
        self._catalogue = catalogue or Catalogue(folder, lasting=False)
        if contents is not None:
            self._catalogue.take(contents)
        elif catalogue is None:
            self._catalogue.refresh()
        self._blocks: dict[str, Blocks] = {}
        self._nodes: dict[str, Node] = {}

    @cached_property
    def _names(self) -> list[str]:
        return sorted(self._catalogue.entries, key=place_of)

    def __contains__(self, key: str) -> bool:
        head = head_of(key)
        return bool(self._catalogue.holders(head)) if head == key else self.spot(key) is not None

    def spot(self, key: str) -> Spot | None:
        """Where a subject stands (the first place of several), None when the folder has none."""
        for name in self._catalogue.holders(head_of(key)):
            found = self._of(name).spots.get(key)
            if found is not None:
                return found
        return None

    def file_of(self, key: str) -> Path | None:
        """The file of a subject, None when the folder has none."""
        spot = self.spot(key)
        return spot.file if spot else None

    @property
    def spots(self) -> dict[str, Spot]:
        """Where every subject stands."""
        out: dict[str, Spot] = {}
        for blocks in self._all():
            for key, spot in blocks.spots.items():
                out.setdefault(key, spot)
        return out

    @property
    def double(self) -> list[tuple[str, Spot]]:
        """Subjects with the places they have besides the first."""
        out: list[tuple[str, Spot]] = []
        seen: set[str] = set()
        for blocks in self._all():
            out += [(key, spot) for key, spot in blocks.spots.items() if key in seen]
            out += blocks.double
            seen.update(blocks.spots)
        return out

    @property
    def contents(self) -> dict[Path, bytes]:
        """The content of every file."""
        return {blocks.path: blocks.data for blocks in self._all()}

    @property
    def odd(self) -> set[Path]:
        """The files that are not in canonical form."""
        return {self.folder / name for name in self._odd_names()}

    def digests(self) -> dict[str, str]:
        """The digest of every file, by its path below the folder."""
        return self._catalogue.digests()

    def node(self, key: str) -> Node | None:
        """The node with this id, None when the folder has none."""
        if key not in self._nodes:
            self.fetch([key])
        return self._nodes.get(key)

    def fetch(self, keys: Iterable[str]) -> None:
        """Parse the blocks of these subjects in one go, so that ``node`` finds them."""
        wanted = [(k, spot) for k in keys if k not in self._nodes and (spot := self.spot(k)) is not None]
        blocks: list[bytes] = []
        for key, spot in wanted:
            held = self._of(self.name(spot.file))
            if held.odd:
                self._nodes[key] = held.nodes[key]
            else:
                blocks.append(held.data[spot.start:spot.end])
        if not blocks:
            return
        found = read_bytes(_ALL_PREFIXES + b"\n" + b"\n".join(blocks), wanted[0][1].file)
        for key, spot in wanted:
            if key in found:
                node = self._nodes[key] = found[key]
                node.file = spot.file

    def line(self, spot: Spot) -> int:
        """The line of a spot, counted from 1."""
        return spot.line or self._of(self.name(spot.file)).data.count(b"\n", 0, spot.start) + 1

    def where(self, key: str) -> str:
        """file:line of a subject, with the file relative to the folder; empty when unknown."""
        spot = self.spot(key)
        return f"{self.name(spot.file)}:{self.line(spot)}" if spot else ""

    def name(self, path: Path) -> str:
        """The path of a file relative to the folder, with forward slashes."""
        return path.relative_to(self.folder).as_posix() if path.is_relative_to(self.folder) else path.as_posix()

    def ids(self, prefix: str, group: str = "") -> list[str]:
        """Sorted ids under a prefix; with ``group`` those that start with "prefix:group."."""
        heads = [f"{prefix}:{group}."] if group else self._catalogue.heads(prefix)
        grouped = {h for h in heads if h.endswith(".")}
        if not grouped:
            return list(heads)
        found = {h for h in heads if h not in grouped}
        for head in grouped:
            for name in self._catalogue.holders(head):
                found.update(self._of(name).with_head(head))
        return sorted(found)

    def last(self, prefix: str) -> str:
        """The last id under a prefix in the order of ids that have no group, empty without one."""
        heads = self._catalogue.heads(prefix)
        return heads[-1] if heads else ""

    def outside(self, prefixes: Collection[str]) -> list[str]:
        """Sorted ids under all other prefixes."""
        return sorted(k for p in self._catalogue.prefixes() if p not in prefixes for k in self.ids(p))

    def holders(self, prefixes: Collection[str]) -> list[tuple[str, str]]:
        """The files with ids under other prefixes than these, each with its digest; sorted."""
        names = {n for p in self._catalogue.prefixes() if p not in prefixes for h in self._catalogue.heads(p)
                 for n in self._catalogue.holders(h)}
        return sorted((n, self._catalogue.entries[n].digest) for n in names)

    def blocks(self, path: Path) -> Blocks | None:
        """The subjects of a file, None when the folder has no such file."""
        name = self.name(path)
        return self._of(name) if name in self._catalogue.entries else None

    def in_file(self, path: Path) -> list[str]:
        """Ids of the subjects that stand in a file and in none before it, sorted."""
        blocks = self.blocks(path)
        return sorted(k for k in blocks.spots if self.file_of(k) == path) if blocks else []

    def referrers(self, key: str) -> list[str]:
        """Sorted ids of the nodes that point to this one."""
        token = b" " + key.encode() + b" ;\n"
        found = set(self._holding([token], self._names))
        for blocks in self._all(self._odd_names()):
            found.update(k for k, n in blocks.nodes.items() if any(key in values for values in n.props.values()))
        return sorted(found - {key})

    def with_text(self, predicate: str, text: str, prefix: str) -> list[str]:
        """Sorted ids under a prefix of nodes that have this text (in any language) as a value of the predicate."""
        shown = text.replace("\\", "\\\\").replace('"', '\\"')
        token = f'    {predicate} "{shown}"'.encode().lower()
        names = {n for h in self._catalogue.heads(prefix) for n in self._catalogue.holders(h)}
        found = set(self._holding([token + b" ;\n", token + b"@"], names, fold=True))
        for blocks in self._all(names & self._odd_names()):
            found.update(k for k, n in blocks.nodes.items() if any(
                not isinstance(v, str) and v.value.lower() == text.lower() for v in n.props.get(predicate, [])))
        return sorted(k for k in found if k.startswith(f"{prefix}:"))

    def _holding(self, tokens: Collection[bytes], names: Iterable[str], fold: bool = False) -> Iterator[str]:
        """The subjects of canonical files among these whose block holds one of the tokens, whatever the case."""
        for name in names:
            if not self._catalogue.entries[name].odd:
                data = self._catalogue.text(name)
                text = data.lower() if fold else data
                for token in tokens:
                    yield from subjects_holding(token, text, data)

    def _odd_names(self) -> set[str]:
        return {name for name, entry in self._catalogue.entries.items() if entry.odd}

    def all_nodes(self) -> dict[str, Node]:
        """Every node, parsed file by file."""
        out: dict[str, Node] = {}
        for blocks in self._all():
            mine = [k for k in blocks.spots if k not in out]
            if not blocks.odd and any(k not in self._nodes for k in mine):
                for key, node in read_bytes(blocks.data, blocks.path).items():
                    node.file = blocks.path
                    self._nodes.setdefault(key, node)
            elif blocks.odd:
                self._nodes.update({k: blocks.nodes[k] for k in mine})
            out.update({k: self._nodes[k] for k in mine if k in self._nodes})
        return out

    def _all(self, names: Iterable[str] | None = None) -> Iterator[Blocks]:
        return map(self._of, self._names if names is None else sorted(names, key=place_of))

    def _of(self, name: str) -> Blocks:
        found = self._blocks.get(name)
        if found is None:
            found = self._blocks[name] = self._catalogue.blocks(name)
        return found
