"""SPARQL over a base: read only, within its time, our prefixes ready."""

# ruff: noqa: E501
from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.errors import UsageError
from assistant.graph.sparql import query_form, with_prefixes
from tests.helpers.bases import Tellfin, contents_of


@pytest.mark.parametrize("query", [
    "INSERT DATA { <a:a> <a:b> <a:c> }", "DELETE WHERE { ?s ?p ?o }", "LOAD <http://x.example/>", "DROP ALL", "CLEAR ALL",
    "SELECT * { SERVICE <http://x.example/> { ?s ?p ?o } }", "select * { service ?s { ?a ?b ?c } }", "DESCRIBE taxon:lepomis",
    "", "hello", "ASK { } ; INSERT DATA { <a:a> <a:b> <a:c> }", "CREATE GRAPH <g:g>", "COPY DEFAULT TO <g:g>"])
def test_what_is_no_plain_question_is_refused(query: str) -> None:
    """Updates, services, loads and texts that are no query are refused before anything runs."""
    with pytest.raises(UsageError):
        query_form(query)


@pytest.mark.parametrize(("query", "form"), [
    ("SELECT ?load WHERE { ?load a dwc:Taxon }", "SELECT"), ('ASK { ?s ?p "insert data" }', "ASK"),
    ("# delete this comment\nSELECT * {}", "SELECT"), ("CONSTRUCT { ?s ?p ?o } WHERE { ?s ?p ?o }", "CONSTRUCT"),
    ("PREFIX drop: <http://x.example/load#> SELECT * { ?s drop:insert ?o }", "SELECT"),
    ("SELECT * { <http://x.example/service> ?p ?o }", "SELECT")])
def test_words_inside_names_and_texts_do_not_matter(query: str, form: str) -> None:
    """Only keywords count, not variables, names, texts, comments or addresses."""
    assert query_form(query) == form


def test_names_with_dots_are_understood(tiny_base: Path, tellfin: Tellfin) -> None:
    """A statement can be named in its short form though it holds several dots."""
    key = "st:vennia-rubra.gill-rakers.any.vell-2001"
    assert "<https://tellfin.example/statement/a.b.c>" in with_prefixes("ASK { st:a.b.c ?p ?o }")
    assert '"st:a.b.c"' in with_prefixes('ASK { ?s ?p "st:a.b.c" }')
    assert tellfin("--base", tiny_base, "query", f"ASK {{ {key} tf:low ?low }}").out == "yes\n"


def test_every_form_of_result(tiny_base: Path, tellfin: Tellfin) -> None:
    """Table, CSV, JSON and Turtle come from the same answer; the base stays as it was."""
    before = contents_of(tiny_base)
    query = "SELECT ?t ?n WHERE { ?t dwc:taxonRank 'genus' ; dwc:scientificName ?n } ORDER BY ?n"
    table = tellfin("--base", tiny_base, "query", query).out.splitlines()
    assert table[1].split() == ["taxon:ommaria", "Ommaria"] and table[-1] == "2 rows"
    assert tellfin("--base", tiny_base, "query", query, "--format", "csv").out.splitlines()[0] == "t,n"
    data = json.loads(tellfin("--base", tiny_base, "query", query, "--format", "json").out)
    assert [b["n"]["value"] for b in data["results"]["bindings"]] == ["Ommaria", "Vennia"]
    built = tellfin("--base", tiny_base, "query", stdin="CONSTRUCT { ?t skos:altLabel ?n } WHERE { ?t dwc:scientificName ?n }")
    assert 'taxon:vennia skos:altLabel "Vennia"' in built.out and contents_of(tiny_base) == before
    assert tellfin("--base", tiny_base, "query", query, "--format", "turtle").code == 2


def test_a_slow_question_is_stopped(tiny_base: Path, tellfin: Tellfin) -> None:
    """A query that would take for ever ends at its limit with a clear line; one that is faulty names line and column."""
    slow = "SELECT (COUNT(*) AS ?n) WHERE { ?a ?b ?c . ?d ?e ?f . ?g ?h ?i . ?j ?k ?l }"
    ran = tellfin("--base", tiny_base, "query", slow, "--seconds", "1")
    assert ran.code == 3 and "longer than 1 seconds" in ran.err


@pytest.mark.parametrize(("query", "said"), [
    ("SELECT ?x\nWHERE { ?x", ("line 2, column 11: it ends too early", "still open")),
    ("SELECT * WHERE { ?x a foo:bar }", ("the prefix foo: is not declared", "tf")),
    ("SELECT ?x\nWERE { ?x a dwc:Taxon }", ("line 2, column 6, at '{ ?x a dwc:Taxon }'", "misspelt"))])
def test_a_faulty_question_is_told_where_and_why(query: str, said: tuple[str, ...], tiny_base: Path,
                                                 tellfin: Tellfin) -> None:
    """Line and column as typed, what stands there, and what to look for."""
    ran = tellfin("--base", tiny_base, "query", query)
    assert ran.code == 2 and all(words in ran.err for words in said), ran
