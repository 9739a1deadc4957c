"""The counts of a base by group: what stands in it, and how much of it was read."""

from __future__ import annotations

import json
from pathlib import Path

from assistant.curation.census import census, shares, table
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_ontology
from tests.helpers.bases import Tellfin


def test_every_statement_is_counted_once(tiny_base: Path) -> None:
    """The sum over groups is the number of statements that stand; a retracted one is left out."""
    nodes = Index(tiny_base).all_nodes()
    standing = [k for k, n in nodes.items() if k.startswith("st:") and "prov:invalidatedAtTime" not in n.props]
    found = census(nodes)
    assert sum(found.total.statements.values()) == len(standing)
    assert sum(sum(g.statements.values()) for g in found.groups) == len(standing)
    assert [row[0] for row in table(found)][-1] == "all"


def test_check_prints_the_groups(tiny_base: Path, tellfin: Tellfin) -> None:
    """The check of a base ends with its groups and their shares by basis."""
    out = tellfin("--base", tiny_base, "check").out
    assert "Vennidae" in out and "shares: read / from memory / common practice" in out
    groups = json.loads(tellfin("--base", tiny_base, "check", "--format", "json").out)["groups"]
    assert groups[-1]["name"] == "all" and groups[-1]["statements"]["read"] > 0


def test_shares_are_per_cent_of_all_bases() -> None:
    """Shares by hand: 3 of 4 read, 1 of 4 from memory."""
    assert shares({"read": 3, "memory": 1}) == "75/25/0" and shares({}) == ""


def test_the_shipped_base_is_as_large_as_was_aimed_at() -> None:
    """The goals of the base: kinds, crosses, statements, ranges and names (our own aims)."""
    found = census(Index(shipped_ontology()).all_nodes())
    assert found.total.species >= 115 and found.total.crosses >= 30 and found.names >= 900
    assert sum(found.total.statements.values()) >= 2600 and sum(found.total.ranges.values()) >= 3000
    assert found.total.statements["read"] >= 0.6 * sum(found.total.statements.values())
