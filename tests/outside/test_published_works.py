"""The base against published works other than those its statements were read in; each row names its source."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import contrast
from assistant.reasoning.evidence import Scope, below
from assistant.reasoning.identify import identify
from assistant.reasoning.observed import Evidence, Observation
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.tables import Table, compile_table

HERE = Path(__file__).parent


def rows(name: str) -> list[list[str]]:
    """The rows of a table beside this file, comments left out."""
    lines = (HERE / name).read_text(encoding="utf-8").splitlines()
    return [line.split("\t") for line in lines if line and not line.startswith("#")]


@pytest.fixture(scope="module")
def table(kb: KnowledgeBase) -> Table:
    """The score table of the shipped base."""
    return compile_table(kb)


def share(kb: KnowledgeBase, taxon: str, character: str, states: str) -> float:
    """The share of grown fish of a taxon that show any of some states."""
    found = taxon_distribution(kb, taxon, character, Scope(stage="adult"))
    assert found is not None, (taxon, character)
    return found.share({leaf for s in states.split("|") for leaf in below(kb, f"{character}.{s}")})


@pytest.mark.parametrize("row", rows("published_contrasts.tsv"), ids=lambda r: f"{r[0]}-{r[1]}-{r[2]}")
def test_a_published_contrast_is_ours_too(kb: KnowledgeBase, row: list[str]) -> None:
    """What the work prints of each fish is what most fish show in the base, and the character separates the two."""
    first, second, character, one, other, source = row
    assert source
    assert share(kb, first, character, one) > 0.5
    assert share(kb, second, character, other) > 0.5
    assert character in {r.character for r in contrast(kb, [first, second]).separating}


@pytest.mark.parametrize("row", rows("published_catches.tsv"), ids=lambda r: f"{r[0]}-{r[1]}")
def test_a_fish_as_a_published_work_describes_it_is_named(kb: KnowledgeBase, table: Table, row: list[str]) -> None:
    """The features printed in the work, seen on one fish at its place, lead to that fish."""
    expected, place, told, source = row
    assert source
    seen = tuple(Observation(c, tuple(f"{c}.{s}" for s in states.split("|")))
                 for c, _, states in (part.strip().partition("=") for part in told.split(";")))
    found = identify(kb, table, Evidence(seen, places=(place,)))
    assert found.candidates[0].taxon in expected.split("|"), [(c.taxon, c.probability) for c in found.candidates]
