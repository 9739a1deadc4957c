"""The quick reader of canonical Turtle says what the general parser says, or steps aside."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.graph.canonical import read_canonical
from assistant.graph.locate import shipped_ontology
from assistant.graph.read import parse_bytes, turtle_files
from assistant.graph.values import Node

HEAD = (
    "@prefix tf: <https://tellfin.example/vocab/> .\n@prefix st: <https://tellfin.example/statement/> .\n"
    "@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .\n\n"
)
ODD = [
    "tf:read",
    '"two ""',
    '"a \\" quote"',
    "tf:a, tf:b",
    "[]",
    "'single'",
    '"""long"""',
    "1e3",
    "+",
    "tf:",
    "xx:y",
    "tf:x.",
    "<relative>",
    '"x"@',
    '"x"^^tf:',
    "st:a%20b",
    "tf:x ; tf:more tf:y",
    "tf:x # note",
    "<https://a.example/ b>",
    "TRUE",
]
PLAIN = [
    "tf:read",
    "st:a.b-c.any",
    '"plain"',
    '"Crapet à oreilles"@fr',
    '"x"@EN-us',
    '"2026-01-05"^^xsd:date',
    "5",
    "-7",
    "007",
    "5.0",
    "+.5",
    "true",
    "<https://else.example/x#y>",
    "<https://tellfin.example/vocab/read>",
    '""',
]


def shape(nodes: dict[str, Node]) -> dict[str, object]:
    """What two readings are compared by."""
    return {key: (node.id, node.file, node.props) for key, node in nodes.items()}


def test_every_shipped_file_reads_alike() -> None:
    """Both readers give the same nodes of every shipped file, and the quick one reads nearly all of them."""
    quick = 0
    files = turtle_files(shipped_ontology())
    for path in files:
        data = path.read_bytes()
        found = read_canonical(data, path)
        if found is not None:
            quick += 1
            assert shape(found) == shape(parse_bytes(data, path)), path
    assert quick > 0.8 * len(files)


@pytest.mark.parametrize("value", PLAIN)
def test_plain_values_read_alike(value: str) -> None:
    """A value of a plain form is read by the quick reader as by the parser."""
    data = f"{HEAD}st:a\n    a tf:StateStatement ;\n    tf:note {value} ;\n    .\n".encode()
    found = read_canonical(data)
    assert found is not None
    assert {k: n.props for k, n in found.items()} == {k: n.props for k, n in parse_bytes(data, Path("x.ttl")).items()}


@pytest.mark.parametrize("value", ODD)
def test_odd_values_are_left_to_the_parser(value: str) -> None:
    """A value of any other form is never read differently from what the parser says."""
    data = f"{HEAD}st:a\n    a tf:StateStatement ;\n    tf:note {value} ;\n    .\n".encode()
    found = read_canonical(data)
    if found is not None:
        assert {k: n.props for k, n in found.items()} == {
            k: n.props for k, n in parse_bytes(data, Path("x.ttl")).items()
        }


@pytest.mark.parametrize(
    "text",
    [
        "st:a\n    tf:x tf:y ;\n",
        "    tf:x tf:y ;\n    .\n",
        "st:a\nst:b\n    tf:x tf:y ;\n    .\n",
        "st:a\n    .\n",
        "st:a\n    tf:x tf:y ;\n\n    tf:x tf:z ;\n    .\n\n    tf:x tf:y ;\n",
        "st:a tf:x tf:y .\n",
        "st:a\n\ttf:x tf:y ;\n    .\n",
        "st:a\n    tf:x tf:y .\n",
        "@prefix tf: <https://other.example/> .\nst:a\n    tf:x tf:y ;\n    .\n",
        "\ufeffst:a\n",
    ],
)
def test_other_layouts_are_left_to_the_parser(text: str) -> None:
    """A text that is not laid out by the writer is not read by the quick reader."""
    assert read_canonical((HEAD + text).encode()) is None


def test_bytes_that_are_no_text_are_left_to_the_parser() -> None:
    """Bytes that are not UTF-8 are not read by the quick reader."""
    assert read_canonical(b"\xff\xfe") is None
