"""A whole base as a folder of sheets, one a kind of record, and back without loss (layer 4).

A record that a row cannot hold exactly is written triple by triple in ``other.csv``; headers of files stand in
``files.csv``. So a base written out and read into an empty folder is the same graph and the same bytes.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from assistant.curation.tables import Table, read_table, table_bytes
from assistant.errors import DataError
from assistant.graph.lines import Index
from assistant.graph.triples import node_triples, parse_triples
from assistant.graph.values import Literal, Node, Value
from assistant.graph.write import split_header, write_nodes
from assistant.model.build import kind_of
from assistant.model.schema import KINDS, Field, Kind

_DATATYPE = {"text": "xsd:string", "date": "xsd:date", "int": "xsd:integer", "number": "xsd:decimal",
             "decimal": "xsd:decimal", "bool": "xsd:boolean"}
_TAG = re.compile(r"(.*)@([a-z]{2,3}(?:-[a-z0-9]{1,8})*)\Z", re.S)
_NAMES = {k.name: k for k in KINDS}


def export_whole(index: Index) -> dict[str, bytes]:
    """The sheets of a base by file name."""
    rows: dict[str, list[tuple[str, ...]]] = {k.name: [] for k in KINDS}
    other: list[tuple[str, ...]] = []
    nodes = index.all_nodes()
    for key in sorted(nodes):
        node, file = nodes[key], index.where(key).rpartition(":")[0]
        row = _row(node, file)
        if row is None:
            other += [(file, text) for text in node_triples(node)]
        else:
            rows[row[0]].append(row[1])
    heads = [(index.name(p), split_header(d.decode("utf-8"))[0].strip("\n")) for p, d in index.contents.items()]
    sheets = {f"{name}.csv": table_bytes(".csv", _header(_NAMES[name]), lines) for name, lines in rows.items() if lines}
    sheets["other.csv"] = table_bytes(".csv", ("file", "triple"), other)
    tops: list[tuple[str, ...]] = [(file, head.replace("\n", "\\n")) for file, head in sorted(heads)]
    sheets["files.csv"] = table_bytes(".csv", ("file", "header"), tops)
    return sheets


def _header(kind: Kind) -> tuple[str, ...]:
    return ("file", "id", "class", *(f.name for f in kind.fields))


def _row(node: Node, file: str) -> tuple[str, tuple[str, ...]] | None:
    """The kind and row of a node, None where a row would not give the same node back."""
    try:
        kind = kind_of(node)
    except DataError:
        return None
    if kind is None or len(node.types()) != 1:
        return None
    cells = tuple("|".join(_escape(_cell(f, v)) for v in sorted(node.props.get(f.term, []), key=str))
                  for f in kind.fields)
    row = (file, node.id, node.types()[0], *cells)
    if any("\n" in c or "\t" in c or c != c.strip() for c in row):
        return None
    back = _node(kind, dict(zip(_header(kind), row, strict=True)))
    return (kind.name, row) if _same(node, back) else None


def _same(first: Node, second: Node) -> bool:
    return {p: set(v) for p, v in first.props.items() if v} == {p: set(v) for p, v in second.props.items() if v}


def _cell(field: Field, value: Value) -> str:
    if isinstance(value, str):
        return value.removeprefix(f"{field.value}:") if field.value != "curie" else value
    if field.value == "lang" and value.lang and value.lang != "en":
        return f"{value.value}@{value.lang}"
    return value.value


def _escape(text: str) -> str:
    return text.replace("\\", "\\\\").replace("|", "\\p")


def _unescape(text: str) -> str:
    return re.sub(r"\\(.)", lambda m: "|" if m.group(1) == "p" else m.group(1), text)


def _node(kind: Kind, row: dict[str, str]) -> Node:
    node = Node(row["id"], {"rdf:type": [row["class"]]})
    for field in kind.fields:
        if text := row.get(field.name, ""):
            node.props[field.term] = [_value(field, _unescape(part)) for part in text.split("|")]
    return node


def _value(field: Field, text: str) -> Value:
    if field.value == "lang":
        tagged = _TAG.fullmatch(text)
        words, tag = (tagged.group(1), tagged.group(2)) if tagged else (text, "en")
        return Literal(words, "rdf:langString", tag)
    if field.value in _DATATYPE:
        return Literal(text, _DATATYPE[field.value])
    return text if field.value == "curie" else f"{field.value}:{text}"


def import_whole(folder: Path) -> dict[str, bytes]:
    """The files of the base that a folder of sheets makes. DataError where a sheet or a cell does not fit."""
    nodes: dict[str, dict[str, Node]] = {}
    headers: dict[str, str] = {}
    for path in sorted(folder.glob("*.csv")):
        table = read_table(path)
        for number, row in _plain(table, path):
            file = _safe(row.get("file", ""), path, number)
            if path.name == "files.csv":
                headers[file] = row.get("header", "").replace("\\n", "\n")
            elif path.name == "other.csv":
                for key, node in parse_triples([row["triple"]], f"{path}:{number}").items():
                    target = nodes.setdefault(file, {}).setdefault(key, Node(key))
                    for predicate, values in node.props.items():
                        target.props.setdefault(predicate, []).extend(values)
            elif path.stem in _NAMES:
                made = _node(_NAMES[path.stem], row)
                nodes.setdefault(file, {})[made.id] = made
            else:
                raise DataError("is no sheet of a whole base", "take it out of the folder", str(path))
    if not nodes:
        raise DataError("holds no sheet", "give a folder that tellfin export made", str(folder))
    return {file: write_nodes(members.values(), headers.get(file, "")).encode("utf-8")
            for file, members in sorted(nodes.items())}


def _plain(table: Table, path: Path) -> Iterator[tuple[int, dict[str, str]]]:
    for number, row in table.rows:
        for column, cell in row.items():
            if cell.fault:
                raise DataError(f"column {column}: {cell.fault}", "mend the cell", f"{path}:{number}")
        yield number, {column: cell.text for column, cell in row.items()}


def _safe(name: str, path: Path, number: int) -> str:
    if not re.fullmatch(r"[a-z0-9-]+(/[a-z0-9-]+)*\.ttl", name):
        raise DataError(f"the file {name!r} is no place in a base", "a path such as taxa/family/genus.ttl",
                        f"{path}:{number}")
    return name
