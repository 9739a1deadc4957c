"""Every information handler on nothing, on nonsense, and on more than it can tell."""

from __future__ import annotations

import importlib

import pytest

from assistant.dialogue.answer import KINDS
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import HANDLERS
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import fish, group, length, pounds, turn_of

INTENTS = ("list", "hybrids", "range", "size", "weight", "handling", "tackle", "habitat", "names", "term")
LINES = ("", "?", "zzzz qqq", "the", "12", "why not both of them or neither", "\u0301\u200b", "a " * 400)


def handle(intent: str):  # type: ignore[no-untyped-def]
    return importlib.import_module(f"assistant.dialogue.handlers.{HANDLERS[intent]}").handle


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("line", LINES)
def test_nothing_to_go_by_is_answered(kb: KnowledgeBase, intent: str, line: str) -> None:
    """A line without a fish gets a question or a plain word, never an error."""
    answer, _ = handle(intent)(turn_of(kb, line))
    assert answer.intent == intent
    assert answer.blocks and all(b.kind in KINDS and b.text.strip() for b in answer.blocks)
    assert answer.blocks[0].kind == "lead"


@pytest.mark.parametrize("intent", INTENTS)
def test_every_claim_rests_on_something(kb: KnowledgeBase, intent: str) -> None:
    """Over every species and cross: a block that claims something names what it rests on."""
    for taxon in kb.species:
        answer, _ = handle(intent)(turn_of(kb, "tell me", fish(taxon), measures=(length("10 in", "10"),)))
        for block in answer.blocks:
            assert block.statements or not block.claim, (taxon, block.text)
            assert all(kb.record_at(s) is not None for s in block.statements), (taxon, block.statements)


@pytest.mark.parametrize("intent", INTENTS)
@pytest.mark.parametrize("name", ["panfish", "centrarchidae", "black-basses", "salmonids"])
def test_whole_groups_are_answered(kb: KnowledgeBase, intent: str, name: str) -> None:
    """A group of many kinds is answered in short, with no more fishes than can be carried on."""
    answer, _ = handle(intent)(turn_of(kb, "what about them", group(name, name)))
    assert answer.blocks and len(answer.blocks) < 14


@pytest.mark.parametrize("intent", INTENTS)
def test_places_and_measures_never_upset(kb: KnowledgeBase, intent: str) -> None:
    """Invented waters, absurd sizes and both at once are taken."""
    held = Held(taxa=("lepomis-macrochirus",), places=("vennimoor-lake",))
    for measures in ((length("0 in", "0"),), (length("9999 in", "9999"),), (pounds("0"),), (pounds("5000"),)):
        answer, _ = handle(intent)(turn_of(kb, "this one", fish("lepomis-macrochirus"), held=held, measures=measures))
        assert answer.blocks
    answer, _ = handle(intent)(turn_of(kb, "there", held=held, places=("us-oh", "nowhere-at-all")))
    assert answer.blocks
