"""The one call of the SHACL validator, on copies, with its results as plain values (layer 1).

Two costs of the validator are taken out. It asks for the truth of the data graph (its length) in every failing
branch: the graph handed over is always true. It evaluates the property shapes of a node shape once per focus node:
on the copy, named property shapes get the targets of their node shape, which means the same and lets it take all
focus nodes at once. ``tests/graph/test_shacl.py`` pins the behaviour that is relied on.
"""

from __future__ import annotations

import logging
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from assistant.errors import ToolError
from assistant.graph.load import full_iri, paused_collector, rdf_graph
from assistant.graph.values import Node
from assistant.iris import compact

if TYPE_CHECKING:
    from rdflib import Graph

_TARGETS = ("sh:targetClass", "sh:targetSubjectsOf", "sh:targetObjectsOf", "sh:targetNode")
_SH = "http://www.w3.org/ns/shacl#"


@dataclass(frozen=True, slots=True, order=True)
class Result:
    """One validation result: severity ("Violation", "Warning" or "Info"), focus node, path, value, shape, component."""

    severity: str
    focus: str
    path: str
    value: str
    shape: str
    component: str
    message: str


@dataclass(frozen=True, slots=True)
class Report:
    """The sorted results, and how many focus nodes each node shape had."""

    results: tuple[Result, ...]
    focus_counts: Mapping[str, int]


def validate(data: Iterable[Node], shapes: Iterable[Node], flat: bool = True) -> Report:
    """Validate nodes against shapes, both given as plain nodes; vocabulary nodes belong to ``data``.

    ``flat=False`` leaves the shapes as they are written: the same results, many times slower.
    """
    import pyshacl

    nodes = list(data)
    shape_nodes = list(shapes)
    data_graph = _steady(rdf_graph(nodes))
    shapes_graph = _flattened(shape_nodes) if flat else rdf_graph(shape_nodes)
    with paused_collector():
        _, report, text = pyshacl.validate(
            data_graph, shacl_graph=shapes_graph, inference="none", advanced=False, js=False, meta_shacl=False,
            allow_infos=True, allow_warnings=True, inplace=True, do_owl_imports=False, logger=_silent())
    if isinstance(report, Exception) or not hasattr(report, "triples"):
        raise ToolError(f"the SHACL validator failed: {text}", "check the files under shapes/")
    return Report(tuple(sorted(set(_results(report)))), count_focus_nodes(nodes, shape_nodes))


def count_focus_nodes(nodes: Iterable[Node], shapes: Iterable[Node]) -> dict[str, int]:
    """For each node shape, how many nodes its targets pick."""
    by_type: dict[str, set[str]] = {}
    by_property: dict[str, set[str]] = {}
    for node in nodes:
        for kind in node.types():
            by_type.setdefault(kind, set()).add(node.id)
        for predicate in node.props:
            by_property.setdefault(predicate, set()).add(node.id)
    counts: dict[str, int] = {}
    for shape in shapes:
        if "sh:NodeShape" in shape.types():
            picked: set[str] = set()
            for target in shape.props.get("sh:targetClass", []):
                picked |= by_type.get(str(target), set())
            for target in shape.props.get("sh:targetSubjectsOf", []):
                picked |= by_property.get(str(target), set())
            counts[shape.id] = len(picked)
    return dict(sorted(counts.items()))


def _flattened(shapes: list[Node]) -> Graph:
    """The shapes as a graph in which property shapes are targeted themselves; closed shapes list what they ignore."""
    from rdflib import BNode, URIRef
    from rdflib.collection import Collection

    by_id = {shape.id: Node(shape.id, {p: list(v) for p, v in shape.props.items()}) for shape in shapes}
    closed: dict[str, list[str]] = {}
    for shape in by_id.values():
        targets = {p: shape.props[p] for p in _TARGETS if p in shape.props}
        if not targets or "sh:NodeShape" not in shape.types():
            continue
        inner = [by_id[str(key)] for key in shape.props.pop("sh:property", []) if str(key) in by_id]
        for part in inner:
            for predicate, values in targets.items():
                known = part.props.setdefault(predicate, [])
                known += [v for v in values if v not in known]
        if "sh:closed" in shape.props:
            closed[shape.id] = sorted(str(v) for part in inner for v in part.props.get("sh:path", []))
    graph = rdf_graph(by_id.values())
    for key, paths in closed.items():
        head = BNode()
        Collection(graph, head, [URIRef(full_iri(path)) for path in paths])
        graph.add((URIRef(full_iri(key)), URIRef(_SH + "ignoredProperties"), head))
    return graph


def _results(report: Any) -> Iterable[Result]:  # Any: an rdflib graph
    from rdflib import URIRef

    def value(node: Any, name: str) -> Any:
        return report.value(node, URIRef(_SH + name))

    for node in report.subjects(URIRef(_SH + "resultSeverity")):
        messages = sorted(str(m) for m in report.objects(node, URIRef(_SH + "resultMessage")))
        yield Result(
            str(value(node, "resultSeverity")).rpartition("#")[2], _short(value(node, "focusNode")),
            _short(value(node, "resultPath")), _short(value(node, "value")), _short(value(node, "sourceShape")),
            str(value(node, "sourceConstraintComponent")).rpartition("#")[2], " ".join(messages))


def _short(term: Any) -> str:
    if term is None:
        return ""
    return compact(str(term)) if type(term).__name__ == "URIRef" else str(term)


def _steady(graph: Graph) -> Graph:
    """The same graph, always true: the validator asks for its truth value, which would be its length."""
    kind = type("SteadyGraph", (type(graph),), {"__bool__": lambda self: True})
    graph.__class__ = kind
    return graph


def _silent() -> logging.Logger:
    log = logging.getLogger("assistant.shacl")
    log.addHandler(logging.NullHandler())
    log.propagate = False
    log.setLevel(logging.CRITICAL)
    return log
