"""Rows of the sheets that we know, as records and back: facts, names, ranges, sources, and a Darwin Core-style form
(layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeVar

from assistant.curation.lookup import Lookup
from assistant.curation.records import STATEMENT_TYPES, scope_text, value_props, value_text
from assistant.curation.tables import Cell
from assistant.curation.values import parse_scope
from assistant.curation.view import View, many, one
from assistant.curation.wanted import USUAL, fault_of
from assistant.errors import AssistantError, DataError
from assistant.graph.values import Literal, Node, Value
from assistant.model.schema import BY_NAME
from assistant.text import slug

FACTS = ("taxon", "character", "value", "frequency", "scope", "source_key", "basis", "note")
NAMES = ("taxon", "name", "language", "region", "kind", "source_key", "basis")
RANGES = ("taxon", "region", "status", "source_key", "basis")
SOURCES = ("source_key", "kind", "authors", "year", "title", "publisher", "address", "what_read", "basis", "note")
DARWIN_FACTS = ("scientificName", "measurementType", "measurementValue", "sex", "lifeStage", "reproductiveCondition",
                "scope", "frequency", "source", "basis", "measurementRemarks")
COLUMNS = {"facts": FACTS, "names": NAMES, "ranges": RANGES, "sources": SOURCES, "darwin-core": DARWIN_FACTS}
_DARWIN = {"scientificName": "taxon", "measurementType": "character", "measurementValue": "value",
           "measurementRemarks": "note", "source": "source_key", "vernacularName": "name", "stateProvince": "region",
           "place": "region", "text": "name",
           "locationID": "region", "establishmentMeans": "status"}
_ALLOWED_EXTRA = {"facts": {"page", "preferred", "because", "measurementUnit", "sex", "lifeStage",
                            "reproductiveCondition"},
                  "names": {"note"}, "ranges": {"area", "note", "preferred"}, "sources": set()}
_STATUS = {"nativereintroduced": "reintroduced", "nativeendemic": "native"}
BASES = ("read", "memory", "common-practice")
T = TypeVar("T")


class RowFault(Exception):
    """A cell that cannot be taken: column, value, reason."""

    def __init__(self, column: str, value: str, reason: str) -> None:
        super().__init__(reason)
        self.column = column
        self.value = value
        self.reason = reason


def sheet_kind(header: tuple[str, ...]) -> str:
    """Which sheet a header makes. DataError when it is none that we know."""
    names = {_DARWIN.get(h, h) for h in header}
    for kind, need in (("facts", {"taxon", "character", "value"}), ("names", {"taxon", "name"}),
                       ("ranges", {"taxon", "region", "status"}), ("sources", {"source_key", "title"})):
        if need <= names:
            unknown = sorted(names - set(COLUMNS[kind]) - _ALLOWED_EXTRA[kind])
            if unknown:
                allowed = ", ".join((*COLUMNS[kind], *sorted(_ALLOWED_EXTRA[kind])))
                raise DataError(f"a sheet of {kind} has no column {unknown[0]!r}", f"its columns are {allowed}")
            return kind
    raise DataError(f"the columns {', '.join(header[:8])} make no sheet that is known",
                    "known ones: " + "; ".join(f"{k}: {', '.join(c)}" for k, c in COLUMNS.items()))


_TERMS = {"note": "skos:editorialNote", "page": "bibo:locator", "because": "tf:preferredBecause",
          "preferred": "tf:preferred", "scope": "tf:scopeText", "frequency": "tf:frequency", "basis": "tf:basis",
          "authors": "dcterms:creator", "year": "dcterms:issued", "publisher": "dcterms:publisher",
          "address": "tf:address", "what_read": "tf:whatWasRead"}


def silent_terms(header: tuple[str, ...]) -> frozenset[str]:
    """The properties that a sheet with this header does not speak of, and so leaves as they are."""
    names = {_DARWIN.get(h, h) for h in header}
    return frozenset(term for column, term in _TERMS.items() if column not in names)


def row_node(kind: str, row: dict[str, Cell], lookup: Lookup) -> Node:
    """The record of a row, with an id only where the row gives one. RowFault for a cell that cannot be taken."""
    cells: dict[str, str] = {}
    for column, cell in row.items():
        if cell.fault:
            raise RowFault(column, cell.text, cell.fault)
        cells[_DARWIN.get(column, column)] = cell.text
    return {"facts": _fact, "names": _name, "ranges": _range, "sources": _source}[kind](cells, lookup)


def _at(column: str, cells: dict[str, str], convert: Callable[[str], T], need: bool = True) -> T:
    text = cells.get(column, "")
    if need and not text:
        raise RowFault(column, "", "the cell is empty")
    try:
        return convert(text)
    except AssistantError as error:
        raise RowFault(column, text, error.message + (f" ({error.hint})" if error.hint else "")) from error


def _sourced(cells: dict[str, str], lookup: Lookup) -> dict[str, list[Value]]:
    sources = _at("source_key", cells, lambda t: [lookup.source(k) for k in re.split(r"\s*[|;,]\s*", t) if k])
    basis = _at("basis", cells, _basis)
    out: dict[str, list[Value]] = {"dcterms:source": list(sources), "tf:basis": [f"tf:{basis}"]}
    if cells.get("note"):
        out["skos:editorialNote"] = [Literal(cells["note"])]
    return out


def _basis(text: str) -> str:
    word = text.strip().lower().replace(" ", "-")
    if word not in BASES:
        raise DataError(f"the basis {text!r} is not known", f"one of {', '.join(BASES)}")
    return word


def _fit(kind: str, name: str, text: str, lookup: Lookup) -> str:
    """A text that fits a field of a kind of record. DataError where it does not."""
    field = next(f for f in BY_NAME[kind].fields if f.name == name)
    if fault := fault_of(field, text, lookup):
        raise DataError(fault)
    return text


def _fact(cells: dict[str, str], lookup: Lookup) -> Node:
    taxon = _at("taxon", cells, lookup.taxon)
    if cells.get("character") == "look-alike":
        other = _at("value", cells, lookup.taxon)
        return Node("", {"rdf:type": ["tf:LookAlike"], "tf:taxon": [taxon], "tf:otherTaxon": [other],
                         "tf:separable": ["tf:yes"], **_sourced(cells, lookup)})
    character = lookup.view.node(_at("character", cells, lookup.character))
    assert character is not None
    kind = one(character, "tf:kind").removeprefix("tf:")
    unit = f" {cells['measurementUnit']}" if cells.get("measurementUnit") else ""
    props: dict[str, list[Value]] = {
        "rdf:type": [STATEMENT_TYPES.get(kind, "tf:NumberStatement")], "tf:taxon": [taxon],
        "tf:character": [character.id], **_at("value", cells, lambda t: value_props(t + unit, character, lookup))}
    word = _at("frequency", cells, lambda t: _frequency(t, lookup.view), need=False)
    if word:
        props["tf:frequency"] = [word]
    parts = [cells.get(c, "") for c in ("lifeStage", "sex", "reproductiveCondition", "scope")]
    scope = parse_scope("; ".join(p for p in parts if p))
    props.update(scope.props)
    if scope.places:
        props["tf:inRegion"] = list(_at("scope", cells, lambda _: [lookup.place(p) for p in scope.places], need=False))
    props.update(_sourced(cells, lookup))
    for column, term in (("page", "bibo:locator"), ("because", "tf:preferredBecause")):
        if cells.get(column):
            props[term] = [Literal(cells[column])]
    if cells.get("preferred", "").lower() in ("yes", "true", "1"):
        props["tf:preferred"] = [Literal("true", "xsd:boolean")]
    return Node("", props)


def _frequency(text: str, view: View) -> str:
    if not text:
        return ""
    key = f"freq:{slug(text)}"
    if key not in view:
        words = ", ".join(k.partition(":")[2] for k in view.ids("freq"))
        raise DataError(f"the frequency word {text!r} is not known", f"one of {words}")
    return key


def _name(cells: dict[str, str], lookup: Lookup) -> Node:
    taxon = _at("taxon", cells, lookup.taxon)
    text = _at("name", cells, lambda t: _fit("name", "text", t, lookup))
    filled = {c: cells.get(c) or usual for c, usual in USUAL["name"].items()}
    language = _at("language", filled, lambda t: _fit("name", "language", t, lookup))
    kind = _at("kind", filled, lambda t: _fit("name", "kind", slug(t), lookup))
    props: dict[str, list[Value]] = {
        "rdf:type": ["tf:Name"], "tf:nameOf": [taxon], "dcterms:language": [Literal(language)],
        "skosxl:literalForm": [Literal(text, "rdf:langString", language.lower())],
        "tf:nameKind": [f"tf:{kind}"], **_sourced(cells, lookup)}
    places, words = _regions(cells.get("region", ""), lookup)
    if places:
        props["dcterms:spatial"] = list(places)
    if words:
        props["tf:regionText"] = [Literal(words)]
    return Node("", props)


def _range(cells: dict[str, str], lookup: Lookup) -> Node:
    region, _, rest = _at("region", cells, str).partition("(")
    area = cells.get("area") or rest.strip().removesuffix(")")
    status = _at("status", cells, lambda t: _fit("range", "status", _STATUS.get(t.lower(), slug(t)), lookup))
    props: dict[str, list[Value]] = {
        "rdf:type": ["tf:Range"], "tf:taxon": [_at("taxon", cells, lookup.taxon)],
        "dcterms:spatial": [_at("region", {"region": region}, lookup.place)], "tf:rangeStatus": [f"tf:{status}"],
        **_sourced(cells, lookup)}
    if area:
        props["tf:area"] = [Literal(area)]
    return Node("", props)


def _regions(text: str, lookup: Lookup) -> tuple[list[str], str]:
    places: list[str] = []
    words: list[str] = []
    for part in (p.strip() for p in re.split(r"[|;]", text) if p.strip()):
        name, _, rest = part.partition("(")
        try:
            places.append(lookup.place(name))
            words += [rest.strip().removesuffix(")")] if rest else []
        except DataError:
            words.append(part)
    return places, "; ".join(words)


def _source(cells: dict[str, str], lookup: Lookup) -> Node:
    key = _at("source_key", cells, slug)
    known = lookup.view.node(f"src:{key}")
    guess = "common-practice" if "common-practice" in key else "book"
    kind = cells.get("kind") or (one(known, "tf:sourceKind").removeprefix("tf:") if known else guess)
    kind = _at("kind", {"kind": kind}, lambda t: _fit("source", "kind", slug(t), lookup))
    props: dict[str, list[Value]] = {
        "rdf:type": [{"common-practice": "tf:Practice", "memory": "tf:Recollection"}.get(kind, "bibo:Document")],
        "tf:sourceKind": [f"tf:{kind}"], "dcterms:title": [Literal(_at("title", cells, str))]}
    for column, term in (("authors", "dcterms:creator"), ("year", "dcterms:issued"), ("publisher", "dcterms:publisher"),
                         ("address", "tf:address"), ("what_read", "tf:whatWasRead"), ("note", "skos:editorialNote")):
        if cells.get(column):
            props[term] = [Literal(cells[column])]
    if cells.get("basis"):
        props["tf:basis"] = [f"tf:{_at('basis', cells, _basis)}"]
    return Node(f"src:{key}", props)


def fact_row(node: Node, view: View) -> tuple[str, ...]:
    """A statement as a row of facts; the inverse of reading it."""
    taxon = view.node(one(node, "tf:taxon"))
    return (one(taxon, "dwc:scientificName") if taxon else one(node, "tf:taxon"),
            one(node, "tf:character").partition(":")[2], value_text(node), one(node, "tf:frequency").partition(":")[2],
            scope_text(node), *_sourced_cells(node), one(node, "skos:editorialNote"))


def darwin_row(node: Node, view: View) -> tuple[str, ...]:
    """A statement as a row of the Darwin Core-style sheet."""
    taxon, character, value, frequency, _, source, basis, note = fact_row(node, view)
    apart = ("dwc:sex", "dwc:lifeStage", "dwc:reproductiveCondition")
    rest = Node(node.id, {p: v for p, v in node.props.items() if p not in apart})
    return (taxon, character, value, *(one(node, p) for p in apart), scope_text(rest), frequency, source, basis, note)


def name_row(node: Node, view: View) -> tuple[str, ...]:
    """A name as a row."""
    taxon = view.node(one(node, "tf:nameOf"))
    places = [p.partition(":")[2] for p in many(node, "dcterms:spatial")]
    region = "|".join([*places, *([one(node, "tf:regionText")] if one(node, "tf:regionText") else [])])
    return (one(taxon, "dwc:scientificName") if taxon else one(node, "tf:nameOf"), one(node, "skosxl:literalForm"),
            one(node, "dcterms:language"), region, one(node, "tf:nameKind").removeprefix("tf:"), *_sourced_cells(node))


def range_row(node: Node, view: View) -> tuple[str, ...]:
    """A range as a row."""
    taxon = view.node(one(node, "tf:taxon"))
    place = one(node, "dcterms:spatial").partition(":")[2]
    area = one(node, "tf:area")
    name = one(taxon, "dwc:scientificName") if taxon else one(node, "tf:taxon")
    return (name, f"{place} ({area})" if area else place, one(node, "tf:rangeStatus").removeprefix("tf:"),
            *_sourced_cells(node))


def source_row(node: Node, view: View) -> tuple[str, ...]:
    """A source as a row."""
    del view
    return (node.id.partition(":")[2], one(node, "tf:sourceKind").removeprefix("tf:"), *(one(node, t) for t in (
        "dcterms:creator", "dcterms:issued", "dcterms:title", "dcterms:publisher", "tf:address", "tf:whatWasRead")),
        one(node, "tf:basis").removeprefix("tf:"), one(node, "skos:editorialNote"))


def _sourced_cells(node: Node) -> tuple[str, str]:
    sources = "|".join(s.partition(":")[2] for s in many(node, "dcterms:source"))
    return sources, one(node, "tf:basis").removeprefix("tf:")
