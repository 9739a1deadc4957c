"""What a fish eats or where it lives, told beside a part of its body that a line asks the reason of (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.mattering import MATTERING
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, speak
from assistant.dialogue.wording import grounds as wording
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from assistant.reasoning.contrast import tell
from assistant.reasoning.evidence import about
from assistant.text import unique

FEEDING = frozenset({"mouth", "throat", "tongue", "gill-arch", "snout", "chin", "eye"})
"""Parts of the body that serve feeding first; beside a fin or the head stands where the fish lives."""
SENSES = frozenset({"eye", "chin"})
"""Parts that find food: beside them stands when the fish is about."""
FIN, HEAD = "fin", "head"
FOOD, WATER, HOURS = "diet", "habitat", "activity"
REASON = frozenset({"why", "what-for"})
SELDOM, YOUNG = ("rarely", "never"), "juvenile"
MOST, FISHES = 4, 2


def life_beside(turn: Turn, kinds: Sequence[str], asked: Sequence[str]) -> list[Block]:
    """The food or the home of the fishes, then the feature itself, where a line asks why they have such a part.

    The one is told as standing beside the other, never as its cause, which no statement says. Empty where the line
    asks for no such reason, of a colour, or where nothing is held.
    """
    kb, words = turn.kb, set(turn.reading.words)
    if not REASON & turn.cues or MATTERING & words or "you" in words:
        return []
    formed = [c for c in asked if not kb.character(c).colouring]
    parts = {kb.character(c).part for c in formed}
    feeding = bool(parts & FEEDING)
    if not feeding and not any(p == HEAD or FIN in p.split("-") for p in parts):
        return []
    sides = (FOOD, *((HOURS,) if SENSES & parts else ())) if feeding else (WATER, FOOD)
    alive = [b for t in kinds[:FISHES] for b in _life(kb, t, sides)]
    if not alive:
        return []
    first = alive[0]._replace(kind="lead", text=f"{alive[0].text} {wording.NO_CAUSE}")
    return [first, *alive[1:], *_feature(turn, kinds[0], formed)]


def _life(kb: KnowledgeBase, taxon: str, sides: Sequence[str]) -> list[Block]:
    """The sides of the life of a fish in one block."""
    told: list[str] = []
    found: list[Statement] = []
    for side in (s for s in sides if kb.find("character", s) is not None):
        rows = [s for s in about(kb, taxon, side)[0] if s.states and s.frequency not in SELDOM and s.stage != YOUNG]
        each = [x for s in rows for x in s.states]
        states = sorted(unique(each), key=lambda x: -each.count(x))[:MOST]
        if states:
            found += rows
            heading = care.ASPECT.get(side, kb.character(side).label)
            told.append(wording.side(heading, speak.fish(kb, taxon), [kb.state(x).label for x in states]))
    if not found:
        return []
    memory = all(s.basis == "memory" for s in found)
    return [Block("point", wording.beside(told, memory),
                  statements=tuple(f"st:{s.id}" for s in found[: 2 * MOST]))]


def _feature(turn: Turn, taxon: str, asked: Sequence[str]) -> list[Block]:
    """What is held of the first of the characters asked about that anything is held of."""
    kb = turn.kb
    name, told = next(((c, t) for c in asked if (t := tell(kb, kb.character(c), taxon)) is not None), ("", None))
    if told is None:
        return []
    character = kb.character(name)
    text = speak.told_words(kb, told, character, turn.held.units)
    return [Block("point", wording.feature(character.label, speak.fish(kb, taxon), text),
                  statements=speak.short_ids(told.statements))]
