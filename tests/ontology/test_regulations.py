"""The shipped demonstration rules: complete, marked invented, without ties, gaps or dead ids."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from assistant.graph.locate import shipped_ontology
from assistant.graph.write import format_text
from assistant.model.regulations import Rulebook, SeasonWindow
from assistant.reasoning.catch import Kept
from assistant.reasoning.legality import verdict
from assistant.reasoning.rule_findings import rule_findings
from tests.helpers.rule_cases import at, demo_book, extended

BOOK = demo_book()


def test_forty_rules_all_invented() -> None:
    """The demonstration holds forty rules by number, every one marked invented and sourced as such."""
    numbers = {rule.notation for rule in BOOK.rules.values()}
    wanted = {*(f"H{n:02}" for n in range(1, 19)), *(f"Q{n:02}" for n in range(1, 15)),
              *(f"M{n:02}" for n in range(1, 7)), "B01", "B02"}
    assert numbers == wanted
    assert all(rule.invented and rule.source == ("invented-demo",) for rule in BOOK.rules.values())
    assert all(held.invented for held in BOOK.rule_sets.values())


def test_no_findings() -> None:
    """The shipped rules have no tie, gap, dead id, bad date or bad bound."""
    assert rule_findings(BOOK) == ()


def test_every_group_member_is_a_taxon_of_the_base() -> None:
    """Groups, rules and sub-limits name only taxa that the base holds."""
    named = {t for members in BOOK.members.values() for t in members}
    named |= {t for rule in BOOK.rules.values() for t in rule.taxa}
    named |= {t for sub in BOOK.sub_limits.values() for t in sub.taxa}
    assert named <= set(BOOK.lineage.ancestors)


@pytest.mark.parametrize("name", ["regulations/harrowelt", "regulations/quillander", "regulations/mossavane",
                                  "regulations/border-waters", "vocabulary/regulations"])
def test_files_are_canonical(name: str) -> None:
    """The files stand in canonical form and hold no blank node."""
    path = shipped_ontology() / f"{name}.ttl"
    text = path.read_text(encoding="utf-8")
    assert format_text(text, path) == text
    assert "_:" not in text and "[" not in text.replace("[0-9]", "")


def _tie(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["q02"], id="q02-twin", daily=12))


def _gap(book: Rulebook) -> Rulebook:
    late = replace(book.rule_sets["quillander-2026"], id="late", valid_from="2027-02-01", valid_through="2027-12-31")
    return replace(book, rule_sets={**book.rule_sets, "late": late})


def _dead(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["q02"], aggregate="no-such-group"))


def _date(book: Rulebook) -> Rulebook:
    return extended(book, seasons=[SeasonWindow("h01-season", "nth:5-Sat-Feb", "fixed:03-15", "harvest", False)])


def _bound(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["q02"], possession=3))


def _year(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["q02"], valid_through="2027-06-30"))


def _no_bag(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["q02"], daily=None))


def _no_fish(book: Rulebook) -> Rulebook:
    return extended(book, replace(book.rules["h06"], taxa=(), groups=()))


def _no_bound(book: Rulebook) -> Rulebook:
    return extended(book, lengths=[replace(book.lengths["q05-minimum"], low=None)])


@pytest.mark.parametrize(("spoil", "kind"), [
    (_no_fish, "dead-reference"), (_no_bound, "bad-bound"),
    (_tie, "tie"), (_gap, "gap"), (_dead, "dead-reference"), (_date, "bad-date"), (_bound, "bad-bound"),
    (_year, "outside-rule-year"), (_no_bag, "gap"),
])
def test_faults_are_found(spoil: Callable[[Rulebook], Rulebook], kind: str) -> None:
    """Each kind of fault in a rule is found and told with a fix."""
    found = rule_findings(spoil(BOOK))
    assert {f.kind for f in found} == {kind}
    assert all(f.fix for f in found)


EXCEPTION = """
@prefix tf: <https://tellfin.example/vocab/> .
@prefix rule: <https://tellfin.example/rule/> .
@prefix place: <https://tellfin.example/place/> .
@prefix src: <https://tellfin.example/source/> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix dcterms: <http://purl.org/dc/terms/> .
@prefix schema: <https://schema.org/> .
@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .

rule:h19
    a tf:FishingRule ;
    skos:prefLabel "Sunfish of Threlwick Lake"@en ;
    skos:notation "H19" ;
    tf:ruleSet rule:harrowelt-2026 ;
    tf:layer tf:water ;
    tf:appliesAt place:threlwick-lake ;
    tf:overrideMode tf:replace-fields ;
    schema:validFrom "2026-04-01"^^xsd:date ;
    schema:validThrough "2027-03-31"^^xsd:date ;
    tf:ofGroup rule:hrw-sunfish-group ;
    tf:aggregate rule:hrw-sunfish-group ;
    tf:dailyBag 10 ;
    tf:invented true ;
    dcterms:source src:invented-demo ;
    tf:basis tf:common-practice ;
    .
"""


def test_an_exception_written_in_turtle_is_used(tmp_path: Path) -> None:
    """A curator's new rule for one water holds there, cites itself, and changes nothing elsewhere."""
    path = tmp_path / "exception.ttl"
    path.write_text(EXCEPTION, encoding="utf-8")
    book = demo_book(path)
    assert rule_findings(book) == ()
    kept = (Kept(10, ("lepomis-gibbosus",)),)
    there = verdict(at("threlwick-lake", "2026-07-04", "lepomis-macrochirus", kept=kept), book)
    assert (there.word, there.reason.rule) == ("release", "h19")
    assert any((r.rule, r.field, r.by) == ("h05", "bag", "h19") for r in there.replaced)
    elsewhere = verdict(at("lake-skarrowin", "2026-07-04", "lepomis-macrochirus", kept=kept), book)
    assert (elsewhere.word, elsewhere.reason.rule) == ("keep", "h05")
