"""A file changed by copying its untouched blocks is the file that writing all of it would give."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from assistant.graph.blocks import blocks_of
from assistant.graph.locate import shipped_ontology
from assistant.graph.read import read_bytes
from assistant.graph.splice import spliced
from assistant.graph.values import Literal, Node
from assistant.graph.write import split_header, write_nodes

FILES = ("taxa/moronidae/morone.ttl", "sources/practice.ttl", "vocabulary/core.ttl", "hybrids/lepomis.ttl")


def written(data: bytes, path: Path, changes: dict[str, Node | None]) -> bytes | None:
    """The file with all of it written anew."""
    nodes = {**read_bytes(data, path), **changes}
    kept = [n for n in nodes.values() if n is not None]
    return write_nodes(kept, split_header(data.decode())[0]).encode() if kept else None


def changed(node: Node, chance: random.Random) -> Node | None:
    """The node with a value more, of another class, with a prefix of its own, or gone."""
    copy = Node(node.id, {p: list(v) for p, v in node.props.items()})
    what = chance.randrange(5)
    if what == 0:
        return None
    if what == 1:
        copy.props["rdf:type"] = [chance.choice(("skos:Concept", "tf:Range", "bibo:Document"))]
    if what == 2:
        copy.props["dwcem:odd"] = ["obo:ENVO_1", Literal("a \\ and a \"\n")]
    if what == 3:
        copy.props = {p: v for p, v in copy.props.items() if p in ("rdf:type", "tf:basis")} or copy.props
    copy.props["skos:editorialNote"] = [Literal(f"note {chance.random()}", "rdf:langString", "en")]
    return copy


@pytest.mark.parametrize("name", FILES)
def test_splicing_equals_writing(name: str) -> None:
    """Over forty rounds of changed, new and removed subjects the bytes are those of a whole writing."""
    path, chance = shipped_ontology() / name, random.Random(name)
    data = path.read_bytes()
    for _ in range(40):
        nodes = read_bytes(data, path)
        picked = chance.sample(sorted(nodes), min(chance.randrange(1, 5), len(nodes)))
        changes = {k: changed(nodes[k], chance) for k in picked}
        for _ in range(chance.randrange(3)):
            like = nodes[chance.choice(sorted(nodes))]
            key = f"{like.id.partition(':')[0]}:{chance.choice('am')}{chance.randrange(999)}"
            changes[key] = Node(key, dict(like.props))
        found = spliced(blocks_of(path, data), changes)
        assert found == written(data, path, changes)
        data = found or path.read_bytes()
        assert not blocks_of(path, data).odd


def test_the_last_subject_goes(tmp_path: Path) -> None:
    """A file without a subject left is no file."""
    data = write_nodes([Node("src:a", {"rdf:type": ["bibo:Document"]})]).encode()
    assert spliced(blocks_of(tmp_path / "a.ttl", data), {"src:a": None}) is None


def test_a_block_in_a_place_of_its_own_stays_there(tmp_path: Path) -> None:
    """Where somebody put the blocks in another order, only the touched one changes."""
    nodes = [Node(f"src:{x}", {"rdf:type": ["bibo:Document"], "dcterms:title": [Literal(x)]}) for x in "abc"]
    text = write_nodes(nodes)
    head, *blocks = text.rstrip("\n").split("\n\n")
    data = ("\n\n".join([head, *reversed(blocks)]) + "\n").encode()
    found = spliced(blocks_of(tmp_path / "a.ttl", data),
                    {"src:b": Node("src:b", {"rdf:type": ["bibo:Document"], "dcterms:title": [Literal("B")]})})
    assert found == data.replace(b'"b"', b'"B"')
