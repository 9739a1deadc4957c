"""Terms of open standards in the base against the standards' own lists.

Lists: ``standard_terms.csv`` beside this file (each row names the standard's file in which the term was checked), and
the closed namespaces that rdflib generates from the W3C, DCMI, OGC and schema.org vocabularies.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from rdflib import namespace as ns

from assistant.graph.locate import shipped_ontology
from assistant.graph.values import Literal
from assistant.iris import OWN, PREFIXES, expand
from tests.helpers.bases import files_of

HERE = Path(__file__).parent
CLOSED = {"rdf": ns.RDF, "rdfs": ns.RDFS, "owl": ns.OWL, "skos": ns.SKOS, "dcterms": ns.DCTERMS, "prov": ns.PROV,
          "geo": ns.GEO, "schema": ns.SDO, "xsd": ns.XSD, "sh": ns.SH}
SKOS_XL = {"Label", "literalForm", "prefLabel", "altLabel", "hiddenLabel", "labelRelation"}
"""The six terms of SKOS-XL (W3C, SKOS Reference, Appendix B; value from memory)."""


def listed() -> set[str]:
    """IRIs of the list beside this file."""
    with (HERE / "standard_terms.csv").open(encoding="utf-8") as file:
        return {row["iri"] for row in csv.DictReader(file)}


def used() -> set[str]:
    """Short forms of every foreign IRI that the shipped base uses."""
    out: set[str] = set()
    for _, nodes in files_of(shipped_ontology()):
        for node in nodes.values():
            for predicate, values in node.props.items():
                out.add(predicate)
                out.update(v for v in values if isinstance(v, str))
                out.update(v.datatype for v in values if isinstance(v, Literal))
    return {x for x in out if (p := x.partition(":")[0]) in PREFIXES and p not in OWN}


@pytest.fixture(scope="module")
def foreign() -> set[str]:
    """The foreign terms of the base."""
    return used()


def test_every_foreign_term_is_a_term_of_its_standard(foreign: set[str]) -> None:
    """Each term that is not ours is declared by the standard it claims to come from."""
    known = listed()
    unknown = []
    for short in sorted(foreign):
        prefix, _, name = short.partition(":")
        if expand(short) in known or (prefix == "skosxl" and name in SKOS_XL):
            continue
        if prefix in CLOSED and name in CLOSED[prefix]:
            continue
        unknown.append(short)
    assert not unknown


def test_the_standards_are_used_at_all(foreign: set[str]) -> None:
    """The base stands on Darwin Core, SKOS, PROV-O, Dublin Core, QUDT and GeoSPARQL."""
    assert {"dwc", "skos", "prov", "dcterms", "qudt", "geo"} <= {t.partition(":")[0] for t in foreign}
