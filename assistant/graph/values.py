"""Plain values that the graph layer hands up: short-form IRIs (str), literals and nodes (layer 1)."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

XSD_STRING = "xsd:string"


@dataclass(frozen=True, slots=True, order=True)
class Literal:
    """An RDF literal: lexical form, datatype in short form, language tag (lower case) or empty."""

    value: str
    datatype: str = XSD_STRING
    lang: str = ""


Value = str | Literal
"""An object of a triple: an IRI in short form where its namespace is known, else in full, or a literal."""


@dataclass(slots=True)
class Node:
    """A subject with its properties; ``file`` and ``line`` say where it was read (line 0 when unknown)."""

    id: str
    props: dict[str, list[Value]] = field(default_factory=dict)
    file: Path | None = None
    line: int = 0

    def types(self) -> list[str]:
        """The rdf:type values in short form, sorted."""
        return sorted(v for v in self.props.get("rdf:type", []) if isinstance(v, str))
