"""Names are found however they are spelt; fishes the base lacks are never bent to the nearest string.

What the names stand for in which place is our own judgement (common practice, no source); see tests/cases/README.md.
"""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.model.knowledge import KnowledgeBase
from tests.cases.reader import rows

VALID, OUTSIDE = rows("names_valid"), rows("names_outside")
CLOCK = date(2026, 7, 4)
EXACT = frozenset(
    (
        "exact",
        "split",
        "joined",
        "plural",
        "capitals",
        "spelling",
        "transposed",
        "short",
        "slang",
        "hybrid",
        "abbreviation",
        "old-name",
        "gender",
    )
)
"""Kinds of cases in which every single one must be read; regional ones are counted together."""


def _read(kb: KnowledgeBase, text: str, place: str = "-") -> Reading:
    ids = {p.code: p.id for p in kb.all("place") if p.code}
    held = Held(places=(ids[place],) if place != "-" else ())
    return read_line(kb, text, held, CLOCK)


def _fishes(reading: Reading) -> tuple[Mention, ...]:
    return reading.of("taxon", "hybrid", "group")


def _leads(kb: KnowledgeBase, case: dict[str, str]) -> bool:
    found = _fishes(_read(kb, case["typed"], case["place"]))
    if len(found) != 1:
        return False
    if case["expected"] == "ask":
        return found[0].kind == "group" or len(found[0].ids) > 1
    wanted = set(case["expected"].split("; "))
    if found[0].kind == "group":
        members = {kb.taxon(s).scientific for i in found[0].ids for s in kb.members(i)}
        return wanted <= members and len(members) <= 4
    return wanted == {kb.taxon(i).scientific for i in found[0].ids[: len(wanted)]}


SURE = [c for c in VALID if c["kind"] in EXACT]


@pytest.mark.parametrize("case", SURE, ids=[f"{c['typed']} in {c['place']}" for c in SURE])
def test_spelling(kb: KnowledgeBase, case: dict[str, str]) -> None:
    """A name leads to its fish whether written exactly, split, joined, in the plural, by ear or with a slip."""
    assert _leads(kb, case)


def test_regional_names(kb: KnowledgeBase) -> None:
    """Of the regional names nine in ten lead with the fish meant there, or are left open where one must ask."""
    cases = [c for c in VALID if c["kind"] not in EXACT]
    right = sum(_leads(kb, c) for c in cases)
    assert right >= 0.9 * len(cases), [c["typed"] for c in cases if not _leads(kb, c)]


@pytest.mark.parametrize("typed", [c["typed"] for c in OUTSIDE])
def test_outside(kb: KnowledgeBase, typed: str) -> None:
    """A fish that the base lacks is told as outside, not bent to a near name."""
    reading = _read(kb, typed)
    assert reading.outside
    assert not _fishes(reading)


@pytest.mark.parametrize(
    "typed",
    [
        "it has a red ear",
        "yellow belly turning orange, black ear",
        "small mouth, black ear, short fins",
        "the gill cover is scaled",
        "with a really long ear",
    ],
)
def test_features_are_no_names(kb: KnowledgeBase, typed: str) -> None:
    """Words that could be a name but describe the fish are read as features."""
    reading = _read(kb, typed)
    assert not _fishes(reading)
    assert reading.seen


@pytest.mark.parametrize(
    ("typed", "taxon"),
    [
        ("red ear", "lepomis-microlophus"),
        ("red ear or bluegill", "lepomis-microlophus"),
        ("small mouth vs largemouth", "micropterus-dolomieu"),
    ],
)
def test_split_names_are_names(kb: KnowledgeBase, typed: str, taxon: str) -> None:
    """The same words are a name where they are used as one."""
    assert taxon in _read(kb, typed).taxa()


def test_likeness(kb: KnowledgeBase) -> None:
    """A fish that is only compared with is not what the line is about, but a hint."""
    reading = _read(kb, "like a walleye but no white on the tail")
    assert reading.taxa() == ()
    assert [(h.kind, h.seen) for h in reading.hints] == [("like", True)]


def test_denied_fish(kb: KnowledgeBase) -> None:
    """A fish that is ruled out is a hint against it."""
    reading = _read(kb, "it wasnt a pike")
    assert reading.taxa() == ()
    assert [h.seen for h in reading.hints] == [False]


def test_group_word_is_a_mention_and_a_hint(kb: KnowledgeBase) -> None:
    """A group word is both what the line is about and evidence."""
    reading = _read(kb, "some kind of crappie with 7 spines")
    assert [m.ids for m in reading.of("group")] == [("pomoxis",)]
    assert [(h.kind, h.word) for h in reading.hints] == [("group", "crappie")]


def test_cross_by_its_parents(kb: KnowledgeBase) -> None:
    """Two names joined by an x are their cross."""
    reading = _read(kb, "bluegill x green sunfish")
    assert [kb.taxon(i).is_hybrid for i in reading.taxa()] == [True]


@pytest.mark.parametrize(("line", "taxon"), [
    ("blk crappie", "pomoxis-nigromaculatus"), ("wht crappie", "pomoxis-annularis"), ("brn trout", "salmo-trutta"),
    ("grn sunfish", "lepomis-cyanellus"), ("ylw perch", "perca-flavescens")])
def test_colours_spelt_by_their_consonants(kb: KnowledgeBase, line: str, taxon: str) -> None:
    """Short forms of a colour stand for it in a name."""
    assert taxon in {i for m in read_line(kb, line, Held(), CLOCK).of("taxon") for i in m.ids}


@pytest.mark.parametrize("line", [
    "which is the greater snail eater", "where would i paddle to find that one", "a real rocket, jumped twice",
    "as slick as a mirror", "op says to let it go", "is it legal to chum the water", "we slept in the ski lodge",
    "sandy bottom, weeds", "sunshine all day and no bites"])
def test_everyday_words_name_no_fish(kb: KnowledgeBase, line: str) -> None:
    """Words that some fish is also called by are no fish in the middle of other talk."""
    assert not read_line(kb, line, Held(), CLOCK).of("taxon", "hybrid")


@pytest.mark.parametrize("line", ["All states held for Fundulus diaphanus, please", "describe Gasterosteus aculeatus"])
def test_a_scientific_name_that_is_not_held(kb: KnowledgeBase, line: str) -> None:
    """A capital and two unknown words with Latin endings are a fish that the base lacks."""
    assert _read(kb, line).outside


@pytest.mark.parametrize("line", ["Big Crappie caught in Texas Monday", "Tell me about Lake Erie walleye"])
def test_capitals_alone_make_no_scientific_name(kb: KnowledgeBase, line: str) -> None:
    """Words of English with a capital are none."""
    assert not _read(kb, line).outside


@pytest.mark.parametrize("line", ["a bluegill green sunfish cross", "bluegill/green sunfish hybrid, how big",
                                  "do bluegill-green sunfish crosses bite"])
def test_cross_by_its_parents_side_by_side(kb: KnowledgeBase, line: str) -> None:
    """Two names before "cross" or "hybrid" are that cross."""
    (found,) = _read(kb, line).of("hybrid")
    assert found.ids == ("lepomis-cyanellus-x-lepomis-macrochirus",)


def test_a_parent_before_its_cross_is_another_fish(kb: KnowledgeBase) -> None:
    """Two fishes set side by side stay two."""
    assert "sander-vitreus" in _read(kb, "walleye saugeye difference").taxa()
    assert not _read(kb, "bluegill, green sunfish, can they cross").of("hybrid")


@pytest.mark.parametrize(("line", "outside"), [
    ("hammerhead off the beach, how old would he be", True),
    ("caught a bluefish surf fishing", True),
    ("hammerhead in a creek, how old do they get", False),
    ("rockfish off the beach", False),
])
def test_a_nickname_that_is_a_sea_fish_too(kb: KnowledgeBase, line: str, outside: bool) -> None:
    """At the sea the sea fish is meant; a nickname that is no sea fish of the list stays a nickname."""
    found = _read(kb, line)
    assert bool(found.outside) is outside
    assert bool(found.of("taxon")) is not outside
