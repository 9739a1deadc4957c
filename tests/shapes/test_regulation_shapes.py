"""Shapes of fishing rules: each good sample conforms, each faulty one is found by the shape it names."""

from __future__ import annotations

from pathlib import Path

import pytest
from pyshacl import validate
from rdflib import Graph
from rdflib.namespace import SH

SHAPES = Path(__file__).parents[2] / "shapes" / "regulations.ttl"
SAMPLES = sorted((Path(__file__).parent / "regulations").glob("*.ttl"))
SHAPE = "https://tellfin.example/shape/"


@pytest.fixture(scope="module")
def shapes() -> Graph:
    """The shapes graph."""
    return Graph().parse(SHAPES)


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda p: p.stem)
def test_sample(sample: Path, shapes: Graph) -> None:
    """A sample gives exactly the finding that its first line names, with a message for the curator."""
    expected = sample.read_text(encoding="utf-8").splitlines()[0].removeprefix("# expect: ")
    conforms, report, _ = validate(Graph().parse(sample), shacl_graph=shapes)
    sources = {str(s).removeprefix(SHAPE) for s in report.objects(None, SH.sourceShape)}
    if expected == "nothing":
        assert conforms, sources
    else:
        assert sources == {expected}
        assert all(len(str(m)) > 15 for m in report.objects(None, SH.resultMessage))


def test_every_node_shape_has_a_target(shapes: Graph) -> None:
    """Each class of fishing rules has a shape, so that nothing conforms unseen."""
    targets = {str(t).rpartition("/")[2] for t in shapes.objects(None, SH.targetClass)}
    assert targets == {"RuleSet", "Placement", "FishGroup", "SeasonWindow", "LengthLimit", "OverCount", "SubLimit",
                       "ClosedHours", "Obligation", "FishingRule"}
