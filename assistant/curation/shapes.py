"""The shapes applied to single nodes without the validator, for edits that must answer at once (layer 4).

Only the constraints that our shapes use are known; a shape that uses any other is refused when it is read, so that
nothing is passed over in silence. ``tests/curation/test_shapes.py`` holds this reading against the validator's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from decimal import Decimal, InvalidOperation

from assistant.curation.findings import Finding
from assistant.curation.view import View, many, one
from assistant.curation.vocabulary import Vocabulary
from assistant.errors import ToolError
from assistant.graph.load import full_iri
from assistant.graph.values import Literal, Node, Value

_KNOWN = frozenset({
    "rdf:type", "skos:editorialNote", "sh:closed", "sh:message", "sh:nodeKind", "sh:pattern", "sh:property",
    "sh:severity", "sh:targetClass", "sh:targetSubjectsOf", "sh:path", "sh:minCount", "sh:maxCount", "sh:datatype",
    "sh:class", "sh:minInclusive", "sh:maxInclusive", "sh:minExclusive", "sh:lessThanOrEquals",
})
_SEVERITY = {"sh:Violation": "error", "sh:Warning": "warning", "sh:Info": "hint", "": "error"}
SEVERITY_OF = {"Violation": "error", "Warning": "warning", "Info": "hint"}


@dataclass(frozen=True, slots=True)
class _Part:
    """A property shape."""

    id: str
    path: str
    least: int
    most: int | None
    kind: str
    datatype: str
    classes: tuple[str, ...]
    pattern: re.Pattern[str] | None
    floor: Decimal | None
    above: Decimal | None
    ceiling: Decimal | None
    at_most: str
    message: str
    severity: str


@dataclass(frozen=True, slots=True)
class _Whole:
    """A node shape."""

    id: str
    classes: tuple[str, ...]
    subjects_of: tuple[str, ...]
    closed: bool
    pattern: re.Pattern[str] | None
    parts: tuple[_Part, ...]
    message: str
    severity: str


class ShapeSet:
    """The shapes of a folder, ready to be applied to single nodes."""

    def __init__(self, nodes: Mapping[str, Node]) -> None:
        """Read shapes. ToolError for a constraint that this module does not know."""
        for node in nodes.values():
            for predicate in node.props:
                if predicate not in _KNOWN:
                    raise ToolError(f"{node.id} uses {predicate}, which edits cannot apply",
                                    "teach it to assistant/curation/shapes.py, with a test", str(node.file or ""))
        parts = {k: _part(n) for k, n in nodes.items() if "sh:PropertyShape" in n.types()}
        self.shapes = tuple(_whole(n, parts) for _, n in sorted(nodes.items()) if "sh:NodeShape" in n.types())

    def check(self, node: Node, view: View, vocabulary: Vocabulary) -> Iterator[Finding]:
        """What the shapes that target a node have to say about it."""
        types = node.types()
        for shape in self.shapes:
            if any(vocabulary.is_a(types, c) for c in shape.classes) or any(p in node.props for p in shape.subjects_of):
                yield from _apply(shape, node, view, vocabulary)


def _apply(shape: _Whole, node: Node, view: View, vocabulary: Vocabulary) -> Iterator[Finding]:
    where = view.where(node.id)
    if shape.pattern is not None and not shape.pattern.search(full_iri(node.id)):
        yield Finding(shape.severity, shape.id, node.id, where, f"the identifier {node.id}", shape.message,
                      "mint another")
    if shape.closed:
        allowed = {part.path for part in shape.parts}
        for predicate in sorted(set(node.props) - allowed):
            yield Finding(shape.severity, shape.id, node.id, where, f"the property {predicate}", shape.message,
                          "check its spelling, or take it away")
    for part in shape.parts:
        for found in (*_faults(part, node.props.get(part.path, []), view, vocabulary), *_exceeds(part, node)):
            yield Finding(part.severity, part.id, node.id, where, found, part.message, f"mend {part.path}")


def _faults(part: _Part, values: list[Value], view: View, vocabulary: Vocabulary) -> Iterator[str]:
    if len(values) < part.least:
        yield f"{'no' if not values else 'only ' + str(len(values))} {part.path}"
    if part.most is not None and len(values) > part.most:
        yield f"{len(values)} values of {part.path}"
    for value in values:
        if _wrong(part, value, view, vocabulary):
            yield f"{part.path} {shown(value)}"


def _exceeds(part: _Part, node: Node) -> Iterator[str]:
    """Values of the path that are greater than a value of the property they must not exceed."""
    for value in node.props.get(part.path, []) if part.at_most else ():
        for other in node.props.get(part.at_most, []):
            if isinstance(value, str) or isinstance(other, str) or not _at_most(value, other):
                yield f"{part.path} {shown(value)} beside {part.at_most} {shown(other)}"


def _at_most(value: Literal, other: Literal) -> bool:
    if value.datatype in ("xsd:date", "xsd:string") and value.datatype == other.datatype:
        return value.value <= other.value
    try:
        return Decimal(value.value) <= Decimal(other.value)
    except InvalidOperation:
        return False


def _wrong(part: _Part, value: Value, view: View, vocabulary: Vocabulary) -> bool:
    if isinstance(value, str):
        if part.datatype or part.kind == "sh:Literal":
            return True
        target = view.node(value) if part.classes else None
        types = target.types() if target else []
        return any(not vocabulary.is_a(types, c) for c in part.classes) or _misfits(part.pattern, full_iri(value))
    if part.kind == "sh:IRI" or part.classes:
        return True
    if part.datatype and (value.datatype != part.datatype or not is_valid(value)):
        return True
    return _misfits(part.pattern, value.value) or _out_of_bounds(part, value)


def _misfits(pattern: re.Pattern[str] | None, text: str) -> bool:
    return pattern is not None and not pattern.search(text)


def _out_of_bounds(part: _Part, value: Literal) -> bool:
    if part.floor is None and part.ceiling is None and part.above is None:
        return False
    try:
        number = Decimal(value.value)
    except InvalidOperation:
        return True
    if part.above is not None and number <= part.above:
        return True
    return (part.floor is not None and number < part.floor) or (part.ceiling is not None and number > part.ceiling)


def is_valid(value: Literal) -> bool:
    """True when the text of a literal is a value of its datatype (datatypes that we do not use are taken as valid)."""
    text, kind = value.value, value.datatype
    try:
        if kind == "xsd:date":
            date.fromisoformat(text)
            return re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", text) is not None
        if kind == "xsd:dateTime":
            datetime.fromisoformat(text)
            return True
    except ValueError:
        return False
    if kind == "xsd:integer":
        return re.fullmatch(r"[+-]?[0-9]+", text) is not None
    if kind == "xsd:decimal":
        return re.fullmatch(r"[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)", text) is not None
    if kind == "xsd:boolean":
        return text in ("true", "false", "1", "0")
    return True


def shown(value: Value) -> str:
    """A value as a finding quotes it."""
    if isinstance(value, str):
        return value
    tag = f"@{value.lang}" if value.lang else "" if value.datatype == "xsd:string" else f" ({value.datatype})"
    return f'"{value.value[:80]}"{tag}'


def _part(node: Node) -> _Part:
    most = one(node, "sh:maxCount")
    return _Part(
        node.id, one(node, "sh:path"), int(one(node, "sh:minCount") or 0), int(most) if most else None,
        one(node, "sh:nodeKind"), one(node, "sh:datatype"), tuple(many(node, "sh:class")), _regex(node),
        _decimal(node, "sh:minInclusive"), _decimal(node, "sh:minExclusive"), _decimal(node, "sh:maxInclusive"),
        one(node, "sh:lessThanOrEquals"), one(node, "sh:message"), _SEVERITY[one(node, "sh:severity")])


def _whole(node: Node, parts: Mapping[str, _Part]) -> _Whole:
    return _Whole(
        node.id, tuple(many(node, "sh:targetClass")), tuple(many(node, "sh:targetSubjectsOf")),
        one(node, "sh:closed") == "true", _regex(node), tuple(parts[p] for p in many(node, "sh:property")),
        one(node, "sh:message"), _SEVERITY[one(node, "sh:severity")])


def _regex(node: Node) -> re.Pattern[str] | None:
    text = one(node, "sh:pattern")
    return re.compile(text) if text else None


def _decimal(node: Node, predicate: str) -> Decimal | None:
    text = one(node, predicate)
    return Decimal(text) if text else None


def read_shapes(nodes: Iterable[Node]) -> ShapeSet:
    """The shape set of some nodes."""
    return ShapeSet({node.id: node for node in nodes})
