"""Plain nodes as an rdflib graph, for SHACL and SPARQL only (layer 1); rdflib is imported when a graph is asked for."""

from __future__ import annotations

import gc
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from assistant.graph.values import Node, Value
from assistant.iris import PREFIXES

if TYPE_CHECKING:
    from rdflib import Graph


def rdf_graph(nodes: Iterable[Node]) -> Graph:
    """A fresh in-memory graph of these nodes, with our prefixes bound and no others."""
    from rdflib import Graph, Literal, URIRef

    graph = Graph(bind_namespaces="none")
    for prefix, iri in PREFIXES.items():
        graph.bind(prefix, iri)
    known: dict[str, Any] = {}  # Any: URIRef, which is not known while rdflib is not imported
    literals: dict[Value, Any] = {}  # Any: Literal; most are said many times, and making one is slow

    def iri_of(short: str) -> Any:
        if short not in known:
            known[short] = URIRef(full_iri(short))
        return known[short]

    def term(value: Value) -> Any:
        if isinstance(value, str):
            return iri_of(value)
        if value not in literals:
            kind = None if value.lang or value.datatype == "xsd:string" else iri_of(value.datatype)
            literals[value] = Literal(value.value, lang=value.lang or None, datatype=kind, normalize=False)
        return literals[value]

    with paused_collector():
        for node in nodes:
            subject = iri_of(node.id)
            for predicate, values in node.props.items():
                link = iri_of(predicate)
                for value in values:
                    graph.add((subject, link, term(value)))
    return graph


def full_iri(short: str) -> str:
    """The full IRI of a short form; a full IRI stays as it is.

    >>> full_iri("tf:read"), full_iri("https://example.org/x")
    ('https://tellfin.example/vocab/read', 'https://example.org/x')
    """
    prefix, _, rest = short.partition(":")
    return PREFIXES[prefix] + rest if prefix in PREFIXES and not rest.startswith("//") else short


@contextmanager
def paused_collector() -> Iterator[None]:
    """Hold the cyclic garbage collector while many small objects are made (a large load is twice as fast)."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()
