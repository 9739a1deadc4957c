"""What is held of the invented waters: which there are, where they lie, that no fishes are listed (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.reader.reading import Reading
from assistant.dialogue.rules import words
from assistant.dialogue.rules.context import book_of
from assistant.dialogue.rules.outlook import named_here
from assistant.dialogue.wording import surveys as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Place
from assistant.text import join

WATER, COUNTRY = "demo-water", "demo-jurisdiction"


def invented_place(kb: KnowledgeBase, reading: Reading) -> Place | None:
    """The water, else the place, that a line names, where it names none but invented ones."""
    keys = (*((reading.water,) if reading.water else ()), *reading.places)
    found = [p for key in keys if (p := kb.place(key)) is not None]
    return found[0] if found and all(p.invented for p in found) else None


def told_of(kb: KnowledgeBase, place: Place, day: date, intent: str) -> Answer:
    """That a place is invented, where it lies, that no list of its fishes is held, and which ones its rules name."""
    lead = say.invented_place(place.label, join(_labels(kb, place.within, COUNTRY)), place.kind != COUNTRY)
    names, rules = named_here(kb, book_of(kb), place.id, day)
    blocks = [Block("lead", lead, claim=False)]
    if names:
        statements = tuple(f"rule:{r}" for r in rules)
        blocks.append(Block("point", say.rules_name(place.label, join(names)), statements=statements))
    if place.kind == COUNTRY:
        blocks.append(Block("point", say.waters_of(place.label, _waters(kb, place)), claim=False))
    return Answer(intent, tuple(blocks))


def all_waters(kb: KnowledgeBase, lead: str = say.WATERS_HELD) -> Answer:
    """The waters that rules are held for, by the land they lie in."""
    lands = [p for p in kb.all("place") if p.kind == COUNTRY]
    lines = [say.waters_of(p.label, _waters(kb, p)) for p in sorted(lands, key=lambda p: p.label)]
    points = [Block("point", line, claim=False) for line in lines]
    return Answer("rules", (Block("lead", lead, claim=False), *points, Block("help", say.ASK_WATER,
                                                                                       claim=False)))


def _waters(kb: KnowledgeBase, land: Place) -> str:
    inside = [p.label for p in kb.all("place") if p.kind == WATER and land.id in p.within]
    return join(sorted(inside))


def _labels(kb: KnowledgeBase, keys: Sequence[str], kind: str) -> list[str]:
    return [words.place_words(kb, k) for k in keys if (p := kb.place(k)) is not None and p.kind == kind]
