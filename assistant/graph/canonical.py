"""A quick reader of Turtle in the writer's own form, several times faster than a general parser (layer 1).

A file in canonical form has one subject a block and one object a line, and most of its lines occur again and again, so
that a line is taken apart once and then remembered. Whatever does not have exactly that form is left to the general
parser: None is returned, nothing is guessed.
"""

from __future__ import annotations

import re
from pathlib import Path

from assistant.graph.values import Literal, Node, Value
from assistant.iris import PREFIXES, compact

_NAME = r"([a-z]+):([A-Za-z0-9_](?:[A-Za-z0-9_.\-]*[A-Za-z0-9_\-])?)"
_PREFIX = re.compile(r"@prefix ([a-z]+): <([^<>\s\"]+)> \.\Z")
_SUBJECT = re.compile(rf"{_NAME}\Z")
_LINE = re.compile(
    rf"    (?:a|{_NAME}) (?:{_NAME}"
    r"|<([a-z][a-z0-9+.\-]*:[!#$%&'()*+,\-./0-9:;=?@A-Z\[\]_a-z~]*)>"
    rf'|"([^"\\\n\r\x00-\x1f]*)"(?:@([A-Za-z]{{1,8}}(?:-[A-Za-z0-9]{{1,8}})*)|\^\^{_NAME})?'
    r"|([+-]?[0-9]+)|([+-]?[0-9]*\.[0-9]+)|(true|false)) ;\Z")
_END = "    ."

Said = tuple[str, Value]
"""A predicate and its object."""


def read_canonical(data: bytes, path: Path | None = None) -> dict[str, Node] | None:
    """Every subject of a text in canonical form with its properties; None when any line has another form."""
    try:
        lines = data.decode("utf-8").split("\n")
    except UnicodeDecodeError:
        return None
    known: dict[str, Said] = {}
    declared: set[str] = set()
    nodes: dict[str, Node] = {}
    props: dict[str, list[Value]] | None = None
    for line in lines:
        said = known.get(line)
        if said is None and line.startswith("    ") and line != _END:
            said = _said(line, declared)
            if said is None:
                return None
            known[line] = said
        if said is not None:
            if props is None:
                return None
            props.setdefault(said[0], []).append(said[1])
        elif line == _END:
            if not props:
                return None
            props = None
        elif line and not line.startswith("#"):
            if props is not None:
                return None
            if line.startswith("@"):
                if (prefix := _declared(line)) is None:
                    return None
                declared.add(prefix)
            else:
                match = _SUBJECT.match(line)
                if match is None or match[1] not in declared:
                    return None
                props = nodes.setdefault(line, Node(line, file=path)).props
        elif line and props is not None:
            return None
    return nodes if props is None else None


def _declared(line: str) -> str | None:
    match = _PREFIX.match(line)
    return match[1] if match and PREFIXES.get(match[1]) == match[2] else None


def _said(line: str, declared: set[str]) -> Said | None:
    match = _LINE.match(line)
    if match is None:
        return None
    (verb, verb_local, kin, local, iri, text, lang, kind, kind_local, integer, decimal, truth) = match.groups()
    if any(prefix is not None and prefix not in declared for prefix in (verb, kin, kind)):
        return None
    predicate = f"{verb}:{verb_local}" if verb else "rdf:type"
    if kin:
        return predicate, f"{kin}:{local}"
    if iri:
        return predicate, compact(iri)
    if integer:
        return predicate, Literal(integer, "xsd:integer")
    if decimal:
        return predicate, Literal(decimal, "xsd:decimal")
    if truth:
        return predicate, Literal(truth, "xsd:boolean")
    if lang:
        return predicate, Literal(text, "rdf:langString", lang.lower())
    return predicate, Literal(text, f"{kind}:{kind_local}" if kind else "xsd:string")
