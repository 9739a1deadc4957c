"""Verdicts on kept fish: the worked examples, and properties that hold for any candidates and rules."""

from __future__ import annotations

import os
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.reasoning import catch as c
from assistant.reasoning.legality import verdict
from assistant.reasoning.verdict import Word
from tests.helpers.rule_cases import at, case_ids, demo_book, extended, read_cases

BOOK = demo_book()
CASES = {case.id: case for case in read_cases(BOOK)}


@pytest.mark.parametrize("case_id", case_ids())
def test_worked_example(case_id: str) -> None:
    """Each worked example gives its verdict, for its reason, under its rule."""
    case = CASES[case_id]
    found = [verdict(catch, BOOK) for catch in case.catches]
    assert [(v.word, v.reason.why, v.reason.rule) for v in found] == list(
        zip(case.verdicts, case.whys, case.rules, strict=True))


def test_every_verdict_says_what_it_rests_on() -> None:
    """A verdict that is not unknown names its rules, its as-of date and its rule year."""
    for case in CASES.values():
        for catch in case.catches:
            found = verdict(catch, BOOK)
            if found.word is not Word.UNKNOWN:
                assert found.rules and found.as_of and all(found.rule_year), case.id
                assert found.reason.rule in found.rules, case.id


TAXA = sorted({t for case in CASES.values() for catch in case.catches for t in catch.candidates} | {
    "lepomis-peltastes", "ambloplites-rupestris", "micropterus-punctulatus", "cyprinus-carpio",
    "lepomis-gibbosus-x-lepomis-macrochirus", "carassius-auratus", "salvelinus-fontinalis-x-salvelinus-namaycush"})
PLACES = sorted({p for pl in BOOK.placements.values() for p in (pl.place, pl.part_of) if p})
DAYS = st.dates(min_value=date(2025, 12, 1),
                max_value=date(2027, 10, 1))
LENGTHS = st.one_of(
    st.just(c.UNSAID),
    st.builds(c.measured, st.decimals("2", "60", places=1), st.just("in")),
    st.builds(c.about, st.decimals("2", "60", places=1), st.just("cm")),
    st.builds(lambda low, more: c.between(low, low + more, "in"), st.integers(2, 30), st.integers(0, 9)),
)
KEPT = st.one_of(st.none(), st.lists(st.builds(
    c.Kept, st.integers(1, 30), st.lists(st.sampled_from(TAXA), min_size=1, max_size=2).map(tuple), LENGTHS),
    max_size=3).map(tuple))
CATCHES = st.builds(
    c.Catch, st.lists(st.sampled_from(TAXA), min_size=1, max_size=3, unique=True).map(tuple),
    st.sampled_from(PLACES).map(lambda p: (p,)), DAYS, st.none() | st.times(), LENGTHS, KEPT,
    age=st.none() | st.integers(5, 80), on_ice=st.none() | st.booleans())
RUNS = settings(max_examples=1500 if os.environ.get("CI") else 100, deadline=None)


@RUNS
@given(CATCHES, st.sampled_from(TAXA))
def test_a_further_candidate_never_allows_keeping(catch: c.Catch, taxon: str) -> None:
    """Adding a candidate never turns any verdict into keep."""
    wider = verdict(replace(catch, candidates=(*catch.candidates, taxon)), BOOK)
    if wider.word is Word.KEEP:
        assert verdict(catch, BOOK).word is Word.KEEP


@RUNS
@given(CATCHES, st.sampled_from(["daily", "length", "season", "protected", "possession"]))
def test_a_tighter_rule_never_loosens(catch: c.Catch, how: str) -> None:
    """Lowering a bag, raising a minimum, closing a season or protecting a fish never turns a verdict into keep."""
    tighter = BOOK
    for rule in BOOK.rules.values():
        changed = rule
        if how == "daily" and rule.daily:
            changed = replace(rule, daily=rule.daily - 1)
        elif how == "possession" and rule.possession:
            changed = replace(rule, possession=rule.possession - 1)
        elif how == "season" and rule.seasons == ("year-round",):
            changed = replace(rule, seasons=("q09-season",))
        elif how == "length" and rule.daily and not rule.lengths:
            changed = replace(rule, lengths=("h08-minimum",), no_length_limit=False)
        elif how == "protected" and rule.layer == "jurisdiction" and rule.taxa:
            changed = replace(rule, layer="protected")
        tighter = extended(tighter, changed)
    if verdict(catch, tighter).word is Word.KEEP:
        assert verdict(catch, BOOK).word is Word.KEEP


@RUNS
@given(CATCHES)
def test_vaguer_words_never_allow_keeping(catch: c.Catch) -> None:
    """Leaving the length or the side of the water unsaid never turns a verdict into keep."""
    if verdict(replace(catch, length=c.UNSAID), BOOK).word is Word.KEEP:
        assert verdict(catch, BOOK).word is not Word.CLOSED
    whole = {"twinmarrow-hrw": "twinmarrow-lake", "twinmarrow-qui": "twinmarrow-lake",
             "ketterfoss-above": "ketterfoss-river", "ketterfoss-below": "ketterfoss-river"}
    if catch.places[0] in whole:
        vague = verdict(replace(catch, places=(whole[catch.places[0]],)), BOOK)
        if vague.word is Word.KEEP:
            assert verdict(catch, BOOK).word is Word.KEEP


@RUNS
@given(CATCHES)
def test_one_more_kept_fish_never_allows_keeping(catch: c.Catch) -> None:
    """A further kept fish of the same kind never turns a verdict into keep."""
    more = replace(catch, kept=(*(catch.kept or ()), c.Kept(1, catch.candidates[:1], catch.length)))
    if verdict(more, BOOK).word is Word.KEEP:
        assert verdict(catch, BOOK).word is Word.KEEP


@RUNS
@given(CATCHES)
def test_order_of_candidates_does_not_matter(catch: c.Catch) -> None:
    """The word and the lawful acts do not depend on the order in which candidates are named."""
    turned = verdict(replace(catch, candidates=tuple(reversed(catch.candidates))), BOOK)
    straight = verdict(catch, BOOK)
    assert (turned.word, turned.acts) == (straight.word, straight.acts)


def test_never_more_than_one_question() -> None:
    """A settled verdict with nothing left open asks nothing; one that hangs on an input asks for it."""
    settled = verdict(at("threlwick-lake", "2026-07-04", "lepomis-macrochirus", length="17 cm", kept=()), BOOK)
    assert settled.ask is None
    open_one = verdict(at("ollimarsh-lake", "2026-07-04", "sander-vitreus", kept=()), BOOK)
    assert open_one.word is Word.UNKNOWN and open_one.ask == "length"
