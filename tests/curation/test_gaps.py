"""What to curate next: the ranking follows what a value would be worth."""

from __future__ import annotations

import json
from datetime import date
from pathlib import Path

from assistant.curation.gaps import find_gaps
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.bases import Tellfin, knowledge_of

BY = ("--by", "Ansa Merrow", "--why", "trial")
TODAY = date(2026, 7, 4)


def test_a_pair_without_a_telling_feature_is_listed(tiny_base: Path, tellfin: Tellfin) -> None:
    """Two fishes that live together and differ in one feature are told apart by it; without it they are a gap."""
    before = find_gaps(knowledge_of(tiny_base), TODAY)
    assert before.unseparated == ()
    for key in ("side-marks.any", "side-marks.female", "jaw-reach.any", "depth-ratio.any", "fin-colour.any"):
        tellfin("--base", tiny_base, "retract", f"st:vennia-alta.{key}.vell-2001", *BY)
    after = find_gaps(knowledge_of(tiny_base), TODAY)
    assert [(p.first, p.second) for p in after.unseparated] == [("vennia-alta", "vennia-rubra")]
    assert {c.character for c in after.cells if c.taxon == "vennia-alta"} == set()


def test_conflicts_and_single_sources(tiny_base: Path, tellfin: Tellfin) -> None:
    """Statements that exclude one another are listed until one is preferred; a source used once is named."""
    for words in (("add", "source", "id=merrow-2019", "kind=paper", "title=Notes"),
                  ("add", "statement", "taxon=vennia-alta", "character=gill-rakers", "value=20-25",
                   "source=merrow-2019", "basis=read")):
        assert tellfin("--base", tiny_base, *words, *BY).code == 0
    found = find_gaps(knowledge_of(tiny_base), TODAY)
    assert [{a.source[0], b.source[0]} for a, b in found.conflicts] == [{"vell-2001", "merrow-2019"}]
    assert found.used_once == ("memory", "merrow-2019")
    assert tellfin("--base", tiny_base, "correct", "st:vennia-alta.gill-rakers.any.merrow-2019", "preferred=true",
                   "because=larger sample", *BY).code == 0
    assert find_gaps(knowledge_of(tiny_base), TODAY).conflicts == ()


def test_rules_past_their_year(tiny_base: Path, tellfin: Tellfin) -> None:
    """A rule year that is over on the day is listed, one that runs is not."""
    tellfin("--base", tiny_base, "add", "rule-set", "id=vnm-2025", "label=Vennimoor 2025", "jurisdiction=vennimoor",
            "unit=CentiM", "valid-from=2025-01-01", "valid-through=2025-12-31", "as-of=2025-01-02", "invented=yes",
            "source=common-practice", "basis=common-practice", *BY)
    kb = knowledge_of(tiny_base)
    assert find_gaps(kb, TODAY).expired == (("vnm-2025", "2025-12-31"),)
    assert find_gaps(kb, date(2025, 12, 31)).expired == ()


def test_the_cells_of_the_shipped_base_are_useful(kb: KnowledgeBase) -> None:
    """Each listed cell is really missing, can be seen on a live fish, and the list is in order of gain."""
    found = find_gaps(kb, TODAY)
    gains = [c.gain for c in found.cells]
    assert gains == sorted(gains, reverse=True) and gains[0] > 0
    for cell in found.cells:
        assert kb.character(cell.character).look != "dead" and cell.pairs
        assert not any(kb.statements_on(t, cell.character) for t in kb.lineage(cell.taxon))


def test_the_gaps_of_some_fishes_are_theirs_alone(kb: KnowledgeBase) -> None:
    """With fishes named, each pair and cell and conflict is of one of them, and is a gap of the whole base, too."""
    fishes = ("lepomis-megalotis", "lepomis-macrochirus")
    found, whole = find_gaps(kb, TODAY, fishes), find_gaps(kb, TODAY)
    assert found.cells and found.memory_only and found.conflicts and not found.used_once and not found.expired
    assert all({p.first, p.second} & set(fishes) for p in (*found.unseparated, *found.memory_only))
    assert {c.taxon for c in found.cells} <= set(fishes) and {a.taxon for a, _ in found.conflicts} <= set(fishes)
    assert set(found.memory_only) <= set(whole.memory_only) and set(found.conflicts) <= set(whole.conflicts)
    assert {c for c in whole.cells if c.taxon in fishes} <= set(found.cells)


def test_the_command_prints_every_part(tiny_base: Path, tellfin: Tellfin) -> None:
    """Text and JSON name the same parts."""
    ran = tellfin("--base", tiny_base, "gaps", "--date", "2026-07-04")
    assert ran.code == 0 and "pairs not told apart on a live fish (0)" in ran.out, ran
    some = tellfin("--base", tiny_base, "gaps", "tall vennet").out
    assert "pairs not told apart" in some and "sources with a single use" not in some
    data = json.loads(tellfin("--base", tiny_base, "gaps", "--format", "json").out)
    assert set(data) == {"unseparated", "cells", "memory_only", "conflicts", "used_once", "expired"}
