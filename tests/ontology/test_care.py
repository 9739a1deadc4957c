"""Cautions, angling practice and size standards of the shipped base: sourced, linked, and reached by a question."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.handlers import habitat, handling, tackle, weight
from assistant.graph.locate import shipped_ontology
from assistant.iris import local
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution, Practice
from assistant.text import key
from tests.helpers.bases import files_of
from tests.helpers.turns import fish, group, length, turn_of

BASES = ("read", "memory", "common-practice")
AMOUNTS = ("girth", "condition", "measuring")
"""Topics of practice that the weight answer rests on."""


def _ids(folder: str, prefix: str) -> list[str]:
    return sorted(
        node.id.removeprefix(f"{prefix}:")
        for _, nodes in files_of(shipped_ontology() / folder)
        for node in nodes.values()
    )


CAUTIONS, PRACTICES = _ids("cautions", "caution"), _ids("practice", "practice")


def _mention(kb: KnowledgeBase, record: Caution | Practice):  # type: ignore[no-untyped-def]
    if not record.about:
        return ()
    prefix, _, name = record.about[0].partition(":")
    if prefix == "group":
        return (group(name, name),)
    return (fish(name, words=name),)


def _reached(answer: Answer, short: str) -> bool:
    return any(short in b.statements for b in answer.blocks)


@pytest.mark.parametrize("name", CAUTIONS)
def test_every_caution_is_reached_by_its_own_words(kb: KnowledgeBase, name: str) -> None:
    """A question made of a caution's words, about a fish it is meant for, gets that caution."""
    record = kb.find("caution", name)
    assert record is not None
    if not record.words:
        turn = turn_of(kb, "stung by its spine", cues=("more",))
        assert _reached(handling.handle(turn)[0], f"caution:{name}")
        return
    for phrase in record.words:
        turn = turn_of(kb, phrase, *_mention(kb, record), cues=("more",))
        if _reached(handling.handle(turn)[0], f"caution:{name}"):
            return
    pytest.fail(f"none of {record.words} reaches {name}")


@pytest.mark.parametrize("name", PRACTICES)
def test_every_practice_is_reached_by_its_own_words(kb: KnowledgeBase, name: str) -> None:
    """A question made of a practice's words, about a fish it is meant for, gets that practice."""
    record = kb.find("practice", name)
    assert record is not None
    for phrase in record.words:
        turn = turn_of(kb, phrase, *_mention(kb, record), cues=("more",))
        if _reached(tackle.handle(turn)[0], f"practice:{name}"):
            return
    pytest.fail(f"none of {record.words} reaches {name}")


def test_advice_is_linked_to_fishes_and_sources_that_exist(kb: KnowledgeBase) -> None:
    """Every taxon, group and source that advice names is held, and every record says on what it rests."""
    for record in (*kb.all("caution"), *kb.all("practice")):
        for short in record.about:
            prefix, _, name = short.partition(":")
            assert kb.find(prefix, name) is not None, (record.id, short)
        assert record.source and record.basis in BASES, record.id
        for source in record.source:
            found = kb.find("source", source)
            assert found is not None, (record.id, source)
            if record.basis == "read":
                assert found.kind not in ("memory", "common-practice"), (record.id, source)


def test_phrases_are_folded_as_typed_text_is(kb: KnowledgeBase) -> None:
    """Words are kept as the reader folds a line, so that they can meet it."""
    for record in (*kb.all("caution"), *kb.all("practice")):
        assert all(w == key(w) and w for w in record.words), record.id


def test_no_meal_number_is_called_safe(kb: KnowledgeBase) -> None:
    """Advice on eating gives no numbers of meals: it sends people to the local advisory."""
    for record in kb.all("caution"):
        if record.topic == "eating":
            assert "per week" not in record.text and "a week" not in record.text, record.id


@pytest.mark.parametrize("topic", ["setup"])
def test_every_kind_of_fish_has_advice(kb: KnowledgeBase, topic: str) -> None:
    """Whatever fish is asked about, there is a set-up to answer with and a way to handle it."""
    for taxon in kb.species:
        assert tackle.handle(turn_of(kb, "what rig", fish(taxon)))[0].blocks[0].statements, taxon
        assert handling.handle(turn_of(kb, "how do i handle it", fish(taxon)))[0].blocks[0].statements, taxon


def test_size_records_are_sound(kb: KnowledgeBase) -> None:
    """Standard-weight lines are plausible, categories rise, conversions lengthen, and every one is sourced."""
    count = 0
    for taxon in kb.ids("size"):
        assert kb.find("taxon", taxon) is not None, taxon
        for s in kb.sizes(taxon):
            count += 1
            assert s.source and all(kb.find("source", x) for x in s.source), s.id
            if s.kind == "standard-weight":
                assert s.a is not None and s.b is not None and (s.c is not None or 2.6 < s.b < 4.0), s.id
            elif s.kind == "size-categories":
                edges = [x for x in (s.stock, s.quality, s.preferred, s.memorable, s.trophy) if x is not None]
                assert edges == sorted(edges) and len(set(edges)) == len(edges) >= 2, s.id
            else:
                assert s.b is not None and ((s.b > 1) == (s.to_length == "total")), s.id
    assert count > 130


def test_lines_in_doubt_are_flagged(kb: KnowledgeBase) -> None:
    """The slips known in the published tables are flagged or left out (metric and English forms of them disagree)."""
    redear = [s for s in kb.sizes("lepomis-microlophus") if s.kind == "standard-weight"]
    assert redear and all(s.doubt for s in redear)
    assert not [s for s in kb.sizes("micropterus-notius") if s.kind == "standard-weight"]
    saugeye = [s for s in kb.sizes("sander-canadensis-x-sander-vitreus") if s.kind == "size-categories"]
    assert saugeye[0].preferred == 460


@pytest.mark.parametrize("cross", ["esox-lucius-x-esox-masquinongy", "sander-canadensis-x-sander-vitreus",
                                   "morone-chrysops-x-morone-saxatilis"])  # fmt: skip
def test_well_known_crosses_have_a_weight_line(kb: KnowledgeBase, cross: str) -> None:
    """Tiger muskellunge, saugeye and hybrid striped bass have their own standard weight."""
    answer, _ = weight.handle(turn_of(kb, "weight", fish(cross), measures=(length("24 in", "24"),)))
    assert any(s.startswith(f"size:{cross}.standard-weight") for s in answer.blocks[0].statements)


def test_ids_are_local_names(kb: KnowledgeBase) -> None:
    """Short forms of advice lead back to their record."""
    for kind in ("caution", "practice"):
        for record in kb.all(kind):
            assert kb.record_at(f"{kind}:{record.id}") == record and local(f"{kind}:{record.id}") == record.id


@pytest.mark.parametrize("taxon", ["lepomis-macrochirus", "sander-vitreus", "lota-lota"])
def test_life_is_told_of_well_known_fishes(kb: KnowledgeBase, taxon: str) -> None:
    """Water, food and spawning are held for the fishes asked about most."""
    answer, _ = habitat.handle(turn_of(kb, "tell me its life", fish(taxon)))
    assert len([b for b in answer.blocks if b.statements]) >= 3
