"""Identifiers: the one place where IRIs and their short forms are spelt (leaf module: imports nothing of ours)."""

from __future__ import annotations

BASE = "https://tellfin.example/"
"""Every IRI of our own stands under this reserved domain; change it here when the project owns a name."""

PREFIXES: dict[str, str] = {
    "tf": BASE + "vocab/",
    "taxon": BASE + "taxon/",
    "name": BASE + "name/",
    "group": BASE + "group/",
    "char": BASE + "character/",
    "state": BASE + "state/",
    "st": BASE + "statement/",
    "range": BASE + "range/",
    "alike": BASE + "look-alike/",
    "place": BASE + "place/",
    "rule": BASE + "rule/",
    "caution": BASE + "caution/",
    "practice": BASE + "practice/",
    "size": BASE + "size/",
    "term": BASE + "term/",
    "word": BASE + "word/",
    "lean": BASE + "leaning/",
    "freq": BASE + "frequency/",
    "src": BASE + "source/",
    "agent": BASE + "agent/",
    "change": BASE + "change/",
    "shape": BASE + "shape/",
    "rdf": "http://www.w3.org/1999/02/22-rdf-syntax-ns#",
    "rdfs": "http://www.w3.org/2000/01/rdf-schema#",
    "owl": "http://www.w3.org/2002/07/owl#",
    "xsd": "http://www.w3.org/2001/XMLSchema#",
    "skos": "http://www.w3.org/2004/02/skos/core#",
    "skosxl": "http://www.w3.org/2008/05/skos-xl#",
    "dcterms": "http://purl.org/dc/terms/",
    "bibo": "http://purl.org/ontology/bibo/",
    "prov": "http://www.w3.org/ns/prov#",
    "dwc": "http://rs.tdwg.org/dwc/terms/",
    "dwciri": "http://rs.tdwg.org/dwc/iri/",
    "dwcem": "http://rs.tdwg.org/dwcem/values/",
    "dwcdoe": "http://rs.tdwg.org/dwcdoe/values/",
    "qudt": "http://qudt.org/schema/qudt/",
    "unit": "http://qudt.org/vocab/unit/",
    "schema": "https://schema.org/",
    "geo": "http://www.opengis.net/ont/geosparql#",
    "obo": "http://purl.obolibrary.org/obo/",
    "sh": "http://www.w3.org/ns/shacl#",
}

_BY_NAMESPACE: dict[str, str] = {iri: prefix for prefix, iri in PREFIXES.items()}
OWN: frozenset[str] = frozenset(p for p, iri in PREFIXES.items() if iri.startswith(BASE))
"""Prefixes of the namespaces that are ours and therefore closed."""


def expand(curie: str) -> str:
    """The full IRI of a short form.

    >>> expand("taxon:lepomis-gibbosus")
    'https://tellfin.example/taxon/lepomis-gibbosus'
    """
    prefix, _, local = curie.partition(":")
    return PREFIXES[prefix] + local


def compact(iri: str) -> str:
    """The short form of a full IRI, or the IRI itself when its namespace is not one of ours to know.

    >>> compact("http://rs.tdwg.org/dwc/terms/Taxon")
    'dwc:Taxon'
    """
    cut = max(iri.rfind("/"), iri.rfind("#")) + 1
    prefix = _BY_NAMESPACE.get(iri[:cut])
    return f"{prefix}:{iri[cut:]}" if prefix and iri[cut:] else iri


def local(iri: str) -> str:
    """The part of an IRI or short form after its namespace.

    >>> local("https://tellfin.example/taxon/lepomis"), local("char:body-form")
    ('lepomis', 'body-form')
    """
    if "://" in iri:
        return iri[max(iri.rfind("/"), iri.rfind("#")) + 1 :]
    return iri.partition(":")[2]
