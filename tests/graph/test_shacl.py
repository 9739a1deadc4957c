"""The validator behaves as the checks rely on: counts, copies, severities, the flattening of shapes."""

# ruff: noqa: E501
from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import ToolError
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from assistant.graph.read import read_file
from assistant.graph.shacl import count_focus_nodes, validate
from assistant.graph.triples import parse_turtle
from assistant.graph.values import Node

SHAPES = """
shape:t a sh:NodeShape ; sh:targetClass dwc:Taxon ; sh:closed true ; sh:message "closed"@en ;
  sh:property shape:t.type, shape:t.name, shape:t.parent .
shape:t.type a sh:PropertyShape ; sh:path rdf:type .
shape:t.name a sh:PropertyShape ; sh:path dwc:scientificName ; sh:minCount 1 ; sh:maxCount 1 ; sh:message "one name"@en .
shape:t.parent a sh:PropertyShape ; sh:path tf:parent ; sh:class dwc:Taxon ; sh:severity sh:Warning .
"""


def nodes(text: str) -> list[Node]:
    """Nodes of a piece of Turtle."""
    return list(parse_turtle(text, "sample").values())


def test_results_name_focus_path_value_and_severity() -> None:
    """Each fault is one result with all that a person needs; warnings are told apart."""
    report = validate(nodes('taxon:a a dwc:Taxon ; tf:parent tf:read ; tf:low 1.0 .'), nodes(SHAPES))
    found = {(r.severity, r.focus, r.path, r.value, r.shape) for r in report.results}
    assert found == {("Violation", "taxon:a", "dwc:scientificName", "", "shape:t.name"),
                     ("Violation", "taxon:a", "tf:low", "1.0", "shape:t"),
                     ("Warning", "taxon:a", "tf:parent", "tf:read", "shape:t.parent")}
    assert report.focus_counts == {"shape:t": 1}


@pytest.mark.parametrize("sample", sorted((Path(__file__).parents[1] / "shapes").glob("*/fail-*.ttl")), ids=lambda p: p.stem)
def test_flattened_shapes_mean_the_same(sample: Path) -> None:
    """Giving property shapes the targets of their node shape changes no result, on every faulty sample."""
    folder = sample.parent.name.rstrip("s")
    files = [p for p in sorted(shipped_shapes().glob("*.ttl")) if p.stem.startswith((folder, "closed"))]
    shapes = [n for p in files for n in read_file(p).values()]
    data = nodes(sample.read_text())
    assert validate(data, shapes).results == validate(data, shapes, flat=False).results


def test_nothing_given_is_changed() -> None:
    """Data and shapes are copied: what was handed over is as before."""
    data, shapes = nodes("taxon:a a dwc:Taxon ."), nodes(SHAPES)
    before = [(n.id, {p: list(v) for p, v in n.props.items()}) for n in (*data, *shapes)]
    validate(data, shapes)
    assert before == [(n.id, n.props) for n in (*data, *shapes)]


def test_a_mistyped_class_is_targeted_by_nothing_but_the_closed_shape() -> None:
    """The reason for closed.ttl: without it a node of a mistyped class conforms."""
    data = nodes("taxon:a a dwc:Taxa .")
    assert validate(data, nodes(SHAPES)).results == ()
    closed = list(Index(shipped_shapes()).all_nodes().values())
    assert "shape:typed.type" in {r.shape for r in validate(data, closed).results}
    assert count_focus_nodes(data, nodes(SHAPES)) == {"shape:t": 0}


def test_broken_shapes_are_a_failure_of_the_tool() -> None:
    """A shape that cannot be used is told, not passed over."""
    with pytest.raises((ToolError, Exception), match=r"[Pp]ath|[Ss]hape"):
        validate(nodes("taxon:a a dwc:Taxon ."), nodes("shape:x a sh:PropertyShape ; sh:targetClass dwc:Taxon ; sh:minCount 1 ."))
