"""Cards for a class: a name on the front, what to look for on the back (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.lessons.levels import clause_words
from assistant.dialogue.wording import lesson, speak
from assistant.dialogue.wording import quiz as say
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import KEY_LOOKS
from assistant.reasoning.quiz import Fact, Pool, setting_apart
from assistant.reasoning.quiz_terms import body_words, most_spoken_of

CHILDREN = "young"
MARKS = 2
"""Marks on the back of a card."""


def fish_cards(kb: KnowledgeBase, taxa: Sequence[str], looks: Collection[str], level: str, most: int) -> list[Block]:
    """A card for each fish with the marks that set it apart from the others.

    For children they are no measures if may be; what these looks do not show is taken from a fish in the hand.
    """
    pools = [Pool(kb, taxa, seen, plain, firm=False) for seen, plain in (
        (looks, True), (looks, False), (KEY_LOOKS["hand"], False))][level != CHILDREN:]
    out = []
    for taxon in pools[0].taxa[:most]:
        marks: list[Fact] = []
        for pool in pools:
            if len(marks) < MARKS:
                marks = max(marks, setting_apart(pool, taxon, MARKS), key=len)
        told = [clause_words(kb, f.state, level) for f in sorted(marks, key=lambda f: f.usual)]
        ids = speak.short_ids(s for f in marks for s in f.statements)
        back = say.card_marks(lesson.either(told, "and"), any(f.usual for f in marks)) if told else say.CARD_EMPTY
        out.append(Block("point", say.card(speak.fish(kb, taxon), back), statements=ids, claim=bool(ids)))
    return out


def word_cards(kb: KnowledgeBase, about: Sequence[str], looks: Collection[str], most: int) -> list[Block]:
    """A card for each word of the body, with what it means."""
    return [Block("point", say.card(t.label, t.plain), statements=(f"term:{t.id}",))
            for t in (body_words(kb, about) if about else most_spoken_of(kb, body_words(kb, (), looks)))[:most]]

