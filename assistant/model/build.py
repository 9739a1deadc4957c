"""Nodes of the graph to rows of the record table; the only model module that sees the graph layer (layer 2)."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from assistant.errors import DataError
from assistant.graph.read import read_bytes, turtle_files
from assistant.graph.values import Literal, Node, Value
from assistant.iris import PREFIXES
from assistant.model.accounts import Told, account_of, key_of, place_in_group
from assistant.model.kinship import build_kinship
from assistant.model.schema import BY_NAME, BY_TYPE, KINDS, Field, Kind, empty
from assistant.model.spoken import build_spoken

Row = list[Any]
VOCABULARY_TYPES = frozenset({
    "owl:Ontology", "rdfs:Class", "rdf:Property", "owl:Class", "owl:ObjectProperty", "owl:DatatypeProperty",
    "skos:Concept", "skos:ConceptScheme", "skos:OrderedCollection", "prov:Agent", "prov:Activity", "tf:Change",
})
"""Types that are read by the checks and by SPARQL, not turned into records."""


@dataclass(slots=True)
class Rows:
    """Rows by kind: ``{kind: {id: row}}`` for shared kinds, ``{kind: {group: [row, ...]}}`` for grouped ones.

    ``files`` holds size, time of change (ns) and digest of the files they were made from, by path below the folder.
    """

    shared: dict[str, dict[str, Row]] = field(default_factory=lambda: {k.name: {} for k in KINDS if not k.by})
    grouped: dict[str, dict[str, list[Row]]] = field(default_factory=lambda: {k.name: {} for k in KINDS if k.by})
    version: str = ""
    files: dict[str, tuple[int, int, str]] = field(default_factory=dict)


def build_folder(folder: Path, progress: Callable[[int, int], None] | None = None) -> Rows:
    """The rows of a base folder. Raises DataError with file and node at the first fault."""
    rows = Rows()
    paths = turtle_files(folder)
    for number, path in enumerate(paths, start=1):
        try:
            found = path.stat()
            data = path.read_bytes()
        except OSError as error:
            raise DataError(f"cannot be read: {error.strerror}", "check its permissions", str(path)) from error
        digest = hashlib.blake2b(data, digest_size=16).hexdigest()
        name = path.relative_to(folder).as_posix()
        rows.files[name] = (found.st_size, found.st_mtime_ns, digest)
        told = told_by(read_bytes(data, path))
        add_told(rows, told)
        for kind, row in account_of(told).items():
            rows.shared.setdefault(kind, {})[key_of(name)] = row
        if progress:
            progress(number, len(paths))
    finish(rows, version_of({name: entry[2] for name, entry in rows.files.items()}))
    return rows


def version_of(digests: Mapping[str, str]) -> str:
    """The version of a base from the digests of its files, by path below the folder."""
    lines = "".join(f"{digests[name]} {name}\n" for name in sorted(digests))
    return hashlib.blake2b(lines.encode(), digest_size=8).hexdigest()


def add_told(rows: Rows, told: Iterable[Told]) -> None:
    """Put rows in their place, by kind and by what they belong to."""
    for kind, key, row in told:
        if BY_NAME[kind].by:
            rows.grouped[kind].setdefault(key, []).append(row)
        else:
            rows.shared[kind][key] = row


def read_told(data: bytes, path: Path) -> list[Told]:
    """The rows that the content of a file comes to. Raises DataError with file and node at the first fault."""
    return told_by(read_bytes(data, path))


def told_by(nodes: Mapping[str, Node]) -> list[Told]:
    """The rows that nodes come to, each with its kind and key; retracted statements are left out."""
    out: list[Told] = []
    for node in nodes.values():
        kind = kind_of(node)
        if kind is None:
            continue
        row = row_of(kind, node)
        if kind.name == "statement" and row[1 + _index(kind.name, "retracted_on")]:
            continue
        out.append((kind.name, row[1 + _index(kind.name, kind.by)] if kind.by else row[0], row))
    return out


def finish(rows: Rows, version: str) -> None:
    """Sort what was added, so that the rows do not depend on the order of files, and set the version."""
    for by in rows.grouped.values():
        for items in by.values():
            items.sort(key=place_in_group)
    rows.grouped = {k: dict(sorted(v.items())) for k, v in rows.grouped.items()}
    rows.shared = {k: dict(sorted(v.items())) for k, v in rows.shared.items()}
    rows.shared.update(build_spoken(rows.shared, rows.grouped))
    rows.shared.update(build_kinship(rows.shared, rows.grouped))
    rows.version = version


def kind_of(node: Node) -> Kind | None:
    """The kind of a node; None for vocabulary. Raises DataError for a node of no known type."""
    types = node.types()
    for name in types:
        if name in BY_TYPE:
            return BY_TYPE[name]
    if any(t in VOCABULARY_TYPES for t in types):
        return None
    raise DataError(f"{node.id} has {'no type' if not types else 'the unknown type ' + types[0]}",
                    "give it one of the classes declared in vocabulary/core.ttl", _where(node))


def row_of(kind: Kind, node: Node) -> Row:
    """The row of a node. Raises DataError for an unknown property, a missing one, or a value of the wrong type."""
    plan = _plan(kind.name)
    prefix = f"{kind.prefix}:"
    row = [node.id[len(prefix):], *plan.blank]
    for predicate, values in node.props.items():
        if predicate == "rdf:type":
            continue
        found = plan.fields.get(predicate)
        if found is None:
            raise DataError(f"{node.id} has the property {predicate}, which a {kind.name} does not take",
                            "check its spelling against vocabulary/core.ttl", _where(node))
        place, spec = found
        row[place] = _cell(spec, values, node)
    if not node.id.startswith(prefix):
        raise DataError(f"{node.id} should stand under {PREFIXES[kind.prefix]}", "mint it there", _where(node))
    for spec in plan.needed:
        if not node.props.get(spec.term):
            raise DataError(f"{node.id} lacks {spec.term}", "every record of this kind needs one", _where(node))
    return row


@dataclass(frozen=True, slots=True)
class _Plan:
    """How the rows of a kind are filled: an empty row, the place of each property, the fields that must be there."""

    blank: tuple[Any, ...]
    fields: dict[str, tuple[int, Field]]
    needed: tuple[Field, ...]


@cache
def _plan(name: str) -> _Plan:
    kind = BY_NAME[name]
    return _Plan(tuple(empty(f) for f in kind.fields), {f.term: (i, f) for i, f in enumerate(kind.fields, start=1)},
                 tuple(f for f in kind.fields if f.need))


def _cell(spec: Field, values: Sequence[Value], node: Node) -> Any:
    if len(values) == 1:
        value = _plain(spec, values[0], node)
        return [value] if spec.many else value
    if spec.many:
        return sorted({_plain(spec, value, node) for value in values})
    raise DataError(f"{node.id} has {len(values)} values of {spec.term}, one is allowed",
                    "keep one, or make two statements", _where(node))


def _plain(spec: Field, value: Value, node: Node) -> Any:
    if isinstance(value, Literal):
        try:
            return _from_literal(spec, value)
        except (KeyError, ValueError, TypeError):
            raise DataError(f"{node.id}: {spec.term} {value.value!r} is not a {spec.value}",
                            "write a value of that type", _where(node)) from None
    if spec.value == "curie":
        return value
    prefix, _, rest = value.partition(":")
    if prefix != spec.value:
        raise DataError(f"{node.id}: {spec.term} points to {value}", f"it should point into {spec.value}", _where(node))
    return rest


def _from_literal(spec: Field, value: Literal) -> Any:
    if spec.value in ("text", "lang", "date", "decimal"):
        return value.value
    if spec.value == "int":
        return int(value.value)
    if spec.value == "number":
        return float(value.value)
    if spec.value == "bool":
        return {"true": True, "1": True, "false": False, "0": False}[value.value]
    raise TypeError(spec.value)


@cache
def _index(kind: str, name: str) -> int:
    return next(i for i, f in enumerate(BY_NAME[kind].fields) if f.name == name)


def _where(node: Node) -> str:
    return f"{node.file}:{node.line}" if node.line else str(node.file or "")
