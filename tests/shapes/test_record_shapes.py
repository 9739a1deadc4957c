"""Shapes of records: each good sample conforms, each faulty one is found by the shape that its first line names."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.curation.shapes import read_shapes
from assistant.curation.view import Draft
from assistant.curation.vocabulary import read_vocabulary
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_ontology, shipped_shapes
from assistant.graph.read import read_file
from assistant.graph.shacl import validate
from assistant.graph.values import Node
from assistant.model.schema import KINDS
from tests.helpers.bases import copy_tiny_base

HERE = Path(__file__).parent
RULES = sorted((HERE / "regulations").glob("*.ttl"))
SAMPLES = [p for p in sorted(HERE.glob("*/*.ttl")) if p.parent.name != "regulations"]


@pytest.fixture(scope="module")
def context(tmp_path_factory: pytest.TempPathFactory) -> Index:
    """The made-up base, whose records the samples point to."""
    return Index(copy_tiny_base(tmp_path_factory.mktemp("shapes") / "base"))


@pytest.fixture(scope="module")
def classes(context: Index) -> list[Node]:
    """The declared classes, which shapes climb to wider ones."""
    return [n for n in context.all_nodes().values() if "rdfs:Class" in n.types()]


def shapes_of(name: str) -> list[Node]:
    """The shapes of one file, and those that close the vocabulary."""
    files = {*shipped_shapes().glob(f"{name.rstrip('s')}*.ttl"), shipped_shapes() / "closed.ttl"}
    return [node for path in sorted(files) for node in read_file(path).values()]


def pointed_to(nodes: dict[str, Node], context: Index) -> list[Node]:
    """The records of the base that some nodes point to."""
    keys = {v for n in nodes.values() for values in n.props.values() for v in values if isinstance(v, str)}
    return [found for key in sorted(keys - set(nodes)) if (found := context.node(key)) is not None]


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda p: f"{p.parent.name}-{p.stem}")
def test_sample(sample: Path, context: Index, classes: list[Node]) -> None:
    """The validator and the checks of an edit find the same in a sample, and it is what its first line names."""
    expected = sample.read_text(encoding="utf-8").splitlines()[0].removeprefix("# expect: ")
    nodes = read_file(sample)
    shapes = shapes_of(sample.parent.name)
    around = {n.id: n for n in (*classes, *pointed_to(nodes, context))}
    report = validate([*around.values(), *nodes.values()], shapes)
    found = {(r.focus, r.shape) for r in report.results if r.focus in nodes}
    draft = Draft(context, dict(nodes))
    vocabulary = read_vocabulary(draft, {*context.spots, *nodes})
    applied = read_shapes(shapes)
    quick = {(f.thing, f.rule) for n in nodes.values() for f in applied.check(n, draft, vocabulary)}
    assert quick == found
    if expected == "nothing":
        assert found == set()
    else:
        assert expected in {shape for _, shape in found} and len({s for _, s in found}) <= 2, found
        assert all(len(r.message) > 15 for r in report.results if r.focus in nodes)


@pytest.mark.parametrize("sample", RULES, ids=lambda p: p.stem)
def test_rules_are_read_the_same(sample: Path, context: Index, classes: list[Node]) -> None:
    """Bounds beside bounds and dates beside dates are judged as the validator judges them."""
    nodes, shapes = read_file(sample), shapes_of("regulations")
    around = {n.id: n for n in (*classes, *pointed_to(nodes, context))}
    found = {(r.focus, r.shape) for r in validate([*around.values(), *nodes.values()], shapes).results
             if r.focus in nodes}
    draft = Draft(context, dict(nodes))
    vocabulary, applied = read_vocabulary(draft, {*context.spots, *nodes}), read_shapes(shapes)
    assert {(f.thing, f.rule) for n in nodes.values() for f in applied.check(n, draft, vocabulary)} == found


def test_every_file_of_shapes_has_samples() -> None:
    """A file of shapes has a folder with a good sample and at least one faulty one."""
    for path in sorted(shipped_shapes().glob("*.ttl")):
        name = "regulations" if path.stem.startswith("regulation") else path.stem
        kinds = {p.stem.partition("-")[0] for p in (HERE / name).glob("*.ttl")}
        assert kinds == {"pass", "fail"}, path


def test_the_made_up_base_conforms_under_both(context: Index) -> None:
    """On a sound base neither the validator nor the checks of an edit find anything."""
    shapes = Index(shipped_shapes()).all_nodes()
    nodes = context.all_nodes()
    assert validate(nodes.values(), shapes.values()).results == ()
    vocabulary, applied = read_vocabulary(context, context.spots), read_shapes(shapes.values())
    assert [f for n in nodes.values() for f in applied.check(n, context, vocabulary)] == []


def test_every_field_of_every_kind_has_its_shape() -> None:
    """A field that the schema table gains must be told to the shapes and to the vocabulary as well."""
    shapes = Index(shipped_shapes()).all_nodes()
    declared = set(Index(shipped_ontology()).ids("tf"))
    for kind in KINDS:
        for target in kind.types:
            whole = next(s for s in shapes.values()
                         if target in s.props.get("sh:targetClass", []) and "sh:closed" in s.props)
            paths = {path for part in whole.props["sh:property"] for path in shapes[str(part)].props["sh:path"]}
            assert {f.term for f in kind.fields} <= paths, (kind.name, target)
        own = {f.term for f in kind.fields if f.term.startswith("tf:")} | {t for t in kind.types if t.startswith("tf:")}
        assert own <= declared, kind.name
