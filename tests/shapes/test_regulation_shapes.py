"""Shapes of fishing rules: each good sample conforms, each faulty one is found by the shape it names."""

from __future__ import annotations

from pathlib import Path

import pytest
from pyshacl import validate
from rdflib import Graph
from rdflib.namespace import SH

ROOT = Path(__file__).parents[2]
SHAPES = [ROOT / "shapes" / name for name in ("regulations.ttl", "regulation-values.ttl")]
CONTEXT = [ROOT / "ontology" / name
           for name in ("places/demo-world.ttl", "sources/practice.ttl", "vocabulary/core.ttl")]
SAMPLES = sorted((Path(__file__).parent / "regulations").glob("*.ttl"))
SHAPE = "https://tellfin.example/shape/"


@pytest.fixture(scope="module")
def shapes() -> Graph:
    """The shapes of rules and of their values."""
    return _read(SHAPES)


@pytest.fixture(scope="module")
def context() -> Graph:
    """The places and sources that the samples name."""
    return _read(CONTEXT)


def _read(paths: list[Path]) -> Graph:
    graph = Graph()
    for path in paths:
        graph.parse(path)
    return graph


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda p: p.stem)
def test_sample(sample: Path, shapes: Graph, context: Graph) -> None:
    """A sample gives the finding that its first line names, with a message for the curator."""
    expected = sample.read_text(encoding="utf-8").splitlines()[0].removeprefix("# expect: ")
    conforms, report, _ = validate(context + Graph().parse(sample), shacl_graph=shapes)
    sources = {str(s).removeprefix(SHAPE) for s in report.objects(None, SH.sourceShape)}
    if expected == "nothing":
        assert conforms, sources
    else:
        assert expected in sources and len(sources) <= 2, sources
        assert all(len(str(m)) > 15 for m in report.objects(None, SH.resultMessage))


def test_every_node_shape_has_a_target(shapes: Graph) -> None:
    """Each class of fishing rules has a shape, so that nothing conforms unseen."""
    targets = {str(t).rpartition("/")[2] for t in shapes.objects(None, SH.targetClass)}
    assert targets == {"RuleSet", "Placement", "FishGroup", "SeasonWindow", "LengthLimit", "OverCount", "SubLimit",
                       "ClosedHours", "Obligation", "FishingRule"}
