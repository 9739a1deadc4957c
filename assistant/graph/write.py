"""Canonical Turtle: one object a line, fixed orders, so that an added fact is a one-line diff (layer 1).

Subjects stand by the class order of the table, then by IRI; predicates by the fixed order, then by IRI; objects
sorted. Only a header of comment lines before the first prefix is kept.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable
from pathlib import Path

from assistant.errors import DataError
from assistant.graph.read import read_bytes
from assistant.graph.values import Node, Value
from assistant.iris import PREFIXES, compact

CLASS_ORDER = (
    "owl:Ontology", "rdfs:Class", "rdf:Property", "skos:ConceptScheme", "skos:Concept", "tf:Jurisdiction",
    "geo:Feature",
    "tf:Character", "tf:State", "tf:FrequencyWord", "tf:WordFamily", "tf:Term", "bibo:Document", "tf:Practice",
    "tf:Recollection", "dwc:Taxon", "tf:Name", "tf:Group", "tf:StateStatement", "tf:NumberStatement",
    "tf:TextStatement", "tf:LookAlike", "tf:Range",
)
PREDICATE_ORDER = (
    "rdf:type", "dwc:scientificName", "skosxl:literalForm", "skos:prefLabel", "tf:plural",
    "dwc:scientificNameAuthorship",
    "dwc:taxonRank", "tf:taxon", "tf:nameOf", "tf:stateOf", "tf:character", "tf:state", "tf:low", "tf:usualLow",
    "tf:usualHigh", "tf:high", "tf:mean", "tf:text", "qudt:hasUnit", "tf:frequency", "tf:parent", "tf:hybridParent",
    "tf:kind", "tf:tradeLabel", "tf:clause", "tf:question", "tf:howToLook", "tf:look", "tf:order", "skos:broader",
)
_TYPE_RANK = {t: i for i, t in enumerate(CLASS_ORDER)}
_PREDICATE_RANK = {p: i for i, p in enumerate(PREDICATE_ORDER)}
_LOCAL = re.compile(r"[A-Za-z0-9_](?:[A-Za-z0-9_.\-]*[A-Za-z0-9_\-])?\Z")
_INTEGER = re.compile(r"[+-]?(?:0|[1-9][0-9]*)\Z")
_DECIMAL = re.compile(r"[+-]?(?:0|[1-9][0-9]*)\.[0-9]+\Z")
_ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\r": "\\r", "\t": "\\t"}
_DECLARED = re.compile(r"@prefix\s|PREFIX\s|@base|BASE\s", re.IGNORECASE)


def write_nodes(nodes: Iterable[Node], header: str = "") -> str:
    """The canonical Turtle of some nodes; ``header`` is the comment block kept before the first prefix."""
    ordered = sorted(nodes, key=subject_key)
    used: set[str] = set()
    body = "\n".join(node_text(node, used) for node in ordered)
    return (prologue(header, used) + body).rstrip("\n") + "\n"


def prologue(header: str, used: Collection[str]) -> str:
    """What stands before the first subject: the header, and the prefixes that are used."""
    prefixes = [f"@prefix {p}: <{iri}> ." for p, iri in PREFIXES.items() if p in used]
    head = [header.rstrip("\n"), ""] if header.strip() else []
    return "\n".join([*head, *prefixes, "", ""])


def node_text(node: Node, used: set[str]) -> str:
    """The block of one subject with its line end; the prefixes it needs are added to ``used``."""
    return "\n".join(_node_lines(node, used)) + "\n"


def format_text(text: str, path: Path) -> str:
    """The canonical form of a Turtle text. Raises DataError where a comment other than the header would be lost."""
    header, rest = split_header(text)
    for number, line in enumerate(rest.splitlines(), start=header.count("\n") + 1):
        if line.lstrip().startswith("#"):
            raise DataError("holds a comment that formatting would drop",
                            "turn the note into a skos:editorialNote triple", f"{path}:{number}")
    nodes = read_bytes(text.encode("utf-8"), path)
    return write_nodes(nodes.values(), header)


def split_header(text: str) -> tuple[str, str]:
    """The comment block before the first prefix, and the rest."""
    lines = text.splitlines(keepends=True)
    cut = 0
    while cut < len(lines) and (not lines[cut].strip() or lines[cut].lstrip().startswith("#")):
        cut += 1
    return "".join(lines[:cut]).strip("\n") + ("\n" if cut else ""), "".join(lines[cut:])


def subject_key(node: Node) -> tuple[int, str]:
    """What subjects are ordered by: the order of their class, then their id."""
    ranks = [_TYPE_RANK.get(t, len(CLASS_ORDER)) for t in node.types()]
    return (min(ranks, default=len(CLASS_ORDER)), node.id)


def _node_lines(node: Node, used: set[str]) -> list[str]:
    lines = [_iri(node.id, used)]
    for predicate in sorted(node.props, key=lambda p: (_PREDICATE_RANK.get(p, len(PREDICATE_ORDER)), p)):
        shown = "a" if predicate == "rdf:type" else _iri(predicate, used)
        values = node.props[predicate]
        lines += [f"    {shown} {text} ;" for text in sorted({_object(v, used) for v in values})]
    return [*lines, "    ."]


def _iri(short: str, used: set[str]) -> str:
    if "://" in short:
        short = compact(short)
    prefix, _, name = short.partition(":")
    if prefix in PREFIXES and not name.startswith("//"):
        if _LOCAL.match(name):
            used.add(prefix)
            return f"{prefix}:{name}"
        return f"<{PREFIXES[prefix]}{name}>"
    return f"<{short}>"


def _object(value: Value, used: set[str]) -> str:
    if isinstance(value, str):
        return _iri(value, used)
    if value.lang:
        return f"{_quoted(value.value)}@{value.lang}"
    if value.datatype == "xsd:string":
        return _quoted(value.value)
    if value.datatype == "xsd:integer" and _INTEGER.match(value.value):
        return value.value
    if value.datatype == "xsd:decimal" and _DECIMAL.match(value.value):
        return value.value
    if value.datatype == "xsd:boolean" and value.value in ("true", "false"):
        return value.value
    return f"{_quoted(value.value)}^^{_iri(value.datatype, used)}"


def _quoted(text: str) -> str:
    return '"' + "".join(_ESCAPES.get(c, c) for c in text) + '"'
