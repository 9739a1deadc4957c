"""Which advice speaks of a fish and answers a line."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.advice import (
    ABOUT_FISH,
    ABOUT_KIN,
    GENERAL,
    OTHERS,
    SOME_KIN,
    kin,
    line_stems,
    met,
    strongest,
    topics,
    weigh,
)


def test_kin_holds_lineage_and_groups(kb: KnowledgeBase) -> None:
    """A fish stands for itself, its genus and family, and the groups it is a member of; a cross for both parents."""
    own = kin(kb, "lepomis-macrochirus")
    assert {"taxon:lepomis-macrochirus", "taxon:lepomis", "taxon:centrarchidae", "group:panfish"} <= own
    tiger = kin(kb, "esox-lucius-x-esox-masquinongy")
    assert {"taxon:esox-lucius", "group:muskies", "group:pikes"} <= tiger
    assert "group:catfishes" not in own


def test_a_phrase_is_met_in_any_order(kb: KnowledgeBase) -> None:
    """Every stem of a phrase must stand in the line, in whatever order and form."""
    record = kb.find("caution", "deep-hook-cut")
    assert record is not None

    def score(text: str) -> float:
        return met(record, line_stems(text.split()), text)

    assert score("my bluegill swallowed the hook") > score("it swallowed something") > 0
    assert score("what a nice evening") == 0


@pytest.mark.parametrize(
    ("text", "taxa", "topic"),
    [
        ("he swallowed the hook what now", (), "deep-hook"),
        ("how do you hold a bullhead without getting stuck", ("ameiurus-nebulosus",), "holding"),
        ("stuck by a catfish spine hurts like hell", ("ictalurus-punctatus",), "first-aid"),
        ("released perch floats deep water", ("perca-flavescens",), "deep-water"),
        ("kill a fish quick and kind how", (), "killing"),
        ("how thick should the ice be", (), "ice"),
        ("hook in my thumb", (), "first-aid"),
        ("can i put live bluegill in my pond", ("lepomis-macrochirus",), "moving"),
        ("black specks all over my perch", ("perca-flavescens",), "parasites"),
        ("what do i do with leftover minnows", (), "bait-rules"),
    ],
)
def test_lines_find_their_topic(kb: KnowledgeBase, text: str, taxa: tuple[str, ...], topic: str) -> None:
    """Ordinary questions lead to the topic that a careful person would speak of first."""
    assert topics(weigh(kb, "caution", text.split(), taxa))[0][0] == topic


def test_advice_for_other_fishes_does_not_fit(kb: KnowledgeBase) -> None:
    """Advice about catfishes fits a bullhead as kin, a bluegill not at all, and a line without a fish only in part."""

    def how(taxa: tuple[str, ...]) -> int:
        return next(f.fit for f in weigh(kb, "caution", (), taxa) if f.record.id == "catfish-spines")

    assert how(("ameiurus-nebulosus",)) == ABOUT_KIN
    assert how(("lepomis-macrochirus",)) == OTHERS
    assert how(()) == SOME_KIN
    found = {f.record.id: f.fit for f in weigh(kb, "caution", (), ("perca-flavescens",))}
    assert found["deep-water-perch"] == ABOUT_FISH and found["gills-eyes"] == GENERAL


def test_a_line_that_asks_for_advice_is_told_from_one_that_does_not(kb: KnowledgeBase) -> None:
    """Two words of a phrase together ask for advice; a description of a fish does not."""

    def score(kind: str, text: str) -> float:
        return strongest(kb, kind, text.split())

    assert score("caution", "my kid fell in the lake") >= 2
    assert score("practice", "set drag on my reel") >= 2
    assert score("caution", "seven dorsal spines and freckles") < 2
    assert strongest(kb, "caution", ()) == 0
