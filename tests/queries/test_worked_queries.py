"""The worked queries of this folder: each runs over the shipped base and answers what its first line asks."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from pathlib import Path

import pyoxigraph as ox
import pytest

from assistant.graph.locate import shipped_ontology
from assistant.graph.read import turtle_files
from assistant.graph.sparql import query_form, with_prefixes

HERE = Path(__file__).parent
QUERIES = sorted(HERE.glob("*.rq"))


@pytest.fixture(scope="module")
def store() -> Iterator[ox.Store]:
    """The shipped base in one store, loaded once for all queries."""
    found = ox.Store()
    for path in turtle_files(shipped_ontology()):
        found.load(path=str(path), format=ox.RdfFormat.TURTLE)
    yield found


def asked(store: ox.Store, name: str) -> list[dict[str, str]]:
    """The rows that a query gives."""
    result = store.query(with_prefixes((HERE / name).read_text(encoding="utf-8")))
    assert isinstance(result, ox.QuerySolutions)
    text = (result.serialize(format=ox.QueryResultsFormat.CSV) or b"").decode()
    return list(csv.DictReader(io.StringIO(text)))


def test_there_are_ten_or_more() -> None:
    """Ten worked queries or more, of all three forms, each with its question in the first line."""
    texts = [p.read_text(encoding="utf-8") for p in QUERIES]
    assert len(texts) >= 10
    assert {query_form(t) for t in texts} == {"SELECT", "ASK", "CONSTRUCT"}
    assert all(t.startswith("# ") and t.splitlines()[0].endswith(("?", ".", ")")) for t in texts)


@pytest.mark.parametrize("path", [p for p in QUERIES if query_form(p.read_text(encoding="utf-8")) == "SELECT"],
                         ids=lambda p: p.stem)
def test_every_selection_finds_something_the_same_each_time(store: ox.Store, path: Path) -> None:
    """Each query finds rows, no two alike, and in the same order each time."""
    first, second = asked(store, path.name), asked(store, path.name)
    assert first and first == second
    assert len({tuple(r.items()) for r in first}) == len(first)


def test_answers_are_those_of_the_base(store: ox.Store) -> None:
    """Some answers are checked against what the base is known to hold."""
    assert "bluegill" in {r["label"] for r in asked(store, "sunfishes_of_a_state.rq")}
    assert "North American catfish family" in {r["label"] for r in asked(store, "adipose_fin.rq")}
    assert any("bluegill" in r["parents"] and " x " in r["parents"] for r in asked(store, "crosses_and_parents.rq"))
    longest = [float(r["millimetres"]) for r in asked(store, "longest_fishes.rq")]
    assert longest == sorted(longest, reverse=True) and longest[0] > 1500


def test_every_statement_has_a_source(store: ox.Store) -> None:
    """The question whether any statement lacks a source is answered with no."""
    text = (HERE / "statements_without_source.rq").read_text(encoding="utf-8")
    assert not bool(store.query(with_prefixes(text)))


def test_classification_is_a_graph(store: ox.Store) -> None:
    """The construction gives the pikes with what stands above them."""
    result = store.query(with_prefixes((HERE / "classification.rq").read_text(encoding="utf-8")))
    assert isinstance(result, ox.QueryTriples)
    found = {(t.subject.value.rpartition("/")[2], t.object.value.rpartition("/")[2]) for t in result}
    assert ("esox-lucius", "esox") in found and ("esox", "esocidae") in found
