"""Fishes are listed by what they show and by how long or heavy they get; counts told as bounds are bounds."""

from __future__ import annotations

import pytest

from assistant.dialogue.fitting import by_size, fitting
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about, number_range
from assistant.reasoning.observed import Observation
from assistant.reasoning.size import size_range
from tests.dialogue.conftest import Talk
from tests.helpers.turns import length, turn_of


def test_the_long_and_the_short(kb: KnowledgeBase) -> None:
    """A length parts the fishes by the largest held of each, and what is told says which side is kept."""
    pool = tuple(t for t in kb.species if size_range(kb, t).largest is not None)
    turn = turn_of(kb, "under a foot", measures=(length("a foot", "12"),))
    small, said = by_size(turn, pool, frozenset({"smaller-than"}))
    large, _ = by_size(turn, pool, frozenset({"bigger-than"}))
    assert small and large and not set(small) & set(large) and "shorter" in said
    assert all((size_range(kb, t).largest or 0) < 304.8 for t in small)


@pytest.mark.parametrize(
    ("line", "least"), [("which fish get over fifty pounds", 22680), ("which fish are heavier than 20 kg", 20000)]
)
def test_by_weight(line: str, least: float, talk: Talk, kb: KnowledgeBase) -> None:
    """Every fish listed by weight has a greatest weight held above the one told."""
    answer, _ = talk(line)
    species = [t for t in answer.taxa if kb.taxon(t).is_species]
    assert answer.intent == "list" and len(species) > 3
    for taxon in species:
        tops = [r[3] for s in about(kb, taxon, "max-weight")[0] if (r := number_range(s)) is not None]
        assert max(tops) > least


def test_shares_decide(kb: KnowledgeBase) -> None:
    """What most fish of a kind show fits, what some show is told as such, and silence is counted."""
    wanted = (Observation("caudal-fin-shape", ("caudal-fin-shape.forked",)),)
    found = fitting(kb, kb.members("ictaluridae"), wanted)
    assert {f.taxon for f in found.fits} >= {"ictalurus-punctatus", "ictalurus-furcatus"}
    assert not {f.taxon for f in found.fits} & {f.taxon for f in found.maybe}


@pytest.mark.parametrize(
    ("line", "inside", "outside"),
    [
        ("which of the sunfish family have five or more anal spines", "pomoxis-annularis", "lepomis-macrochirus"),
        ("which of the sunfish family have more than three anal spines", "centrarchus-macropterus", "lepomis-gulosus"),
        ("which of the sunfish family have fewer than four anal spines", "micropterus-nigricans", "pomoxis-annularis"),
    ],
)
def test_bounds(line: str, inside: str, outside: str, talk: Talk) -> None:
    """Words before or behind a count make a bound of it."""
    answer, _ = talk(line)
    assert answer.intent == "list" and inside in answer.taxa and outside not in answer.taxa


def test_an_empty_list_looks_into_the_family(talk: Talk) -> None:
    """No true sunfish has six anal spines; who of the family has is told, and said to be outside the genus."""
    answer, _ = talk("any sunfish with six or more stickers on the bottom fin")
    assert "pomoxis-nigromaculatus" in answer.taxa
    assert "none" in answer.blocks[0].text.lower() and "outside that genus" in answer.blocks[1].text.lower()


def test_whole_families_are_named(talk: Talk) -> None:
    """Where every kind of a family fits, the family is told beside the kinds."""
    answer, _ = talk("which fishes have an adipose fin")
    assert {"ictaluridae", "salmonidae"} <= set(answer.taxa)
