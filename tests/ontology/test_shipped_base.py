"""The shipped base: a test for every rule that its curators promise."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from assistant.graph.locate import shipped_ontology
from assistant.graph.read import turtle_files
from assistant.graph.write import format_text
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Range
from assistant.reasoning.contrast import LOOKS, contrast
from assistant.reasoning.evidence import ANY, below
from assistant.reasoning.size import size_range
from assistant.reasoning.tables import taxon_distribution

OBSERVABLE = 8
DATABASE = re.compile(r"speciesid=|fishid=|scinameid=|famnameid=|[?&]taxon=|/database/", re.IGNORECASE)
"""What the address of a page of a species database asks for."""


def species(kb: KnowledgeBase) -> list[str]:
    """Everything with a name of its own: species and subspecies, crosses left out."""
    return [t for t in kb.species if not kb.taxon(t).is_hybrid]


def test_the_base_is_as_broad_as_promised(kb: KnowledgeBase) -> None:
    """No more than a twentieth of what was held on 2026-11-26 has gone."""
    assert len(species(kb)) >= 155
    assert sum(kb.taxon(t).is_hybrid for t in kb.species) >= 71
    assert sum(len(kb.statements(t)) for t in kb.ids("statement")) >= 5850
    assert sum(len(kb.ranges(t)) for t in kb.ids("range")) >= 5880
    assert sum(len(kb.names(t)) for t in kb.ids("name")) >= 2780


def test_most_statements_were_read_in_their_source(kb: KnowledgeBase) -> None:
    """At least 60 % of the trait statements are read; the rest say memory or common practice."""
    bases = Counter(s.basis for t in kb.ids("statement") for s in kb.statements(t))
    assert set(bases) <= {"read", "memory", "common-practice"}
    assert bases["read"] / sum(bases.values()) >= 0.6


def test_every_statement_has_a_source_that_the_base_holds(kb: KnowledgeBase) -> None:
    """Statements, ranges, names and look-alikes name a source; memory is never cited as a work that was read."""
    for kind in ("statement", "range", "name", "look-alike"):
        for key in kb.ids(kind):
            for record in kb.group(kind, key):
                assert record.source, record.id
                for source in record.source:
                    assert kb.source(source).title, record.id
                if record.source == ("memory",):
                    assert record.basis == "memory", record.id


def test_no_source_is_a_page_of_a_species_database(kb: KnowledgeBase) -> None:
    """No address asks a database for a species."""
    for source in kb.all("source"):
        assert not DATABASE.search(source.address), source.id


def test_one_page_has_one_key(kb: KnowledgeBase) -> None:
    """Two sources of trait statements never share an address, or what one page says would count twice."""
    cited = {x for t in kb.ids("statement") for s in kb.statements(t) for x in s.source}
    seen: dict[str, str] = {}
    for key in sorted(cited):
        address = kb.source(key).address
        if not address.startswith("http"):
            continue
        page = re.sub(r"^https?://(www\d?\.)?", "", address.casefold()).rstrip("/")
        assert page not in seen, (key, seen[page])
        seen[page] = key


def test_every_species_has_names_a_genus_a_size_and_a_range(kb: KnowledgeBase) -> None:
    """A species without one of these could not be spoken of."""
    for taxon in species(kb):
        found = kb.taxon(taxon)
        assert any(n.kind == "accepted" for n in kb.names(taxon)), taxon
        assert found.parent and kb.taxon(found.parent).rank in ("genus", "species"), taxon
        sizes = size_range(kb, taxon)
        assert sizes.largest or sizes.usual_high, taxon
        assert any(kb.ranges(k) for k in kb.lineage(taxon)[:2]), taxon


def test_a_fish_is_not_both_native_and_brought_to_the_whole_of_a_place(kb: KnowledgeBase) -> None:
    """Where records of a place differ so, one of them is of a part of it, or one is preferred."""
    for taxon in species(kb):
        by_place: dict[str, list[Range]] = {}
        for row in kb.ranges(taxon):
            by_place.setdefault(row.place, []).append(row)
        for place, rows in by_place.items():
            whole = {r.status for r in rows if not r.area}
            settled = any(r.preferred for r in rows) or any("not preferred" in r.note for r in rows)
            assert settled or not ("native" in whole and whole & {"introduced", "stocked"}), (taxon, place)


def test_every_species_shows_eight_characters(kb: KnowledgeBase) -> None:
    """At least eight characters that can be seen are stated, its own or inherited."""
    seen = [c.id for c in kb.characters if c.use == "identify" and c.look in LOOKS["hand"]]
    for taxon in species(kb):
        told = sum(taxon_distribution(kb, taxon, c, ANY) is not None for c in seen)
        assert told >= OBSERVABLE, (taxon, told)


def test_every_state_is_used_or_marked_reserved(kb: KnowledgeBase) -> None:
    """A state that no statement uses belongs to a reserved character, is an umbrella, or says so in its note."""
    used = {x for t in kb.ids("statement") for s in kb.statements(t) for state in s.states for x in below(kb, state)}
    used |= {state for t in kb.ids("statement") for s in kb.statements(t) for state in s.states}
    for character in kb.characters:
        if character.use == "reserved" or not character.is_stated:
            continue
        states = kb.states(character.id)
        umbrellas = {s.broader for s in states if s.broader}
        for state in states:
            assert state.id in used or state.id in umbrellas or "reserved" in state.note, state.id


def test_every_listed_look_alike_can_be_told_or_says_what_would_settle_it(kb: KnowledgeBase) -> None:
    """Two characters of a live fish separate each listed pair, or it is stated as not by eye with what settles it."""
    for key in kb.ids("look-alike"):
        for pair in kb.look_alikes(key):
            if pair.separable == "not-by-eye":
                assert pair.settles, pair.id
                continue
            rows = contrast(kb, [pair.taxon, pair.other], LOOKS["hand"]).separating
            assert len(rows) >= 2, pair.id


def test_what_decides_a_look_alike_pair_was_mostly_read(kb: KnowledgeBase) -> None:
    """At least 80 % of the statements behind the six best characters of the listed pairs are read."""
    bases: Counter[str] = Counter()
    for key in kb.ids("look-alike"):
        for pair in kb.look_alikes(key):
            for row in contrast(kb, [pair.taxon, pair.other], LOOKS["hand"]).separating[:6]:
                for told in row.told:
                    bases.update(kb.record_at(f"st:{s}").basis for s in (told.statements if told else ()))
    assert bases["read"] / sum(bases.values()) >= 0.8


@pytest.mark.parametrize("path", turtle_files(shipped_ontology()), ids=lambda p: p.name)
def test_every_file_is_canonical(path: object) -> None:
    """Formatting a shipped file changes nothing."""
    from pathlib import Path

    assert isinstance(path, Path)
    text = path.read_text(encoding="utf-8")
    assert format_text(text, path) == text


def test_texts_are_words(kb: KnowledgeBase) -> None:
    """What is told in words reads as words: no joined code stands in for them."""
    texts = {s.text for t in kb.ids("statement") for s in kb.statements(t) if s.text}
    assert texts and not [t for t in texts if re.fullmatch(r"[a-z0-9.]+(-[a-z0-9.]+){2,}", t)]
