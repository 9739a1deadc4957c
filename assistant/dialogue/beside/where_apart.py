"""Where two fishes set side by side are native, for pairs that mostly live apart (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import contrast as say
from assistant.dialogue.wording import core, speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import remembered, rows
from assistant.reasoning.place_prior import LISTED
from assistant.text import join


def where_apart(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """Where each of two fishes is native, where their states and provinces are mostly different ones."""
    kb = turn.kb
    if len(taxa) != 2 or any(kb.taxon(t).is_hybrid for t in taxa):
        return []
    home = {t: {r.place: r for r in rows(kb, t) if r.status == "native" and _listed(kb, r.place)} for t in taxa}
    first, second = home.values()
    if not first or not second or len(first.keys() & second.keys()) > MOSTLY_APART * min(len(first), len(second)):
        return []
    told = "; ".join(core.each(speak.fish(kb, t), _short(kb, places)) for t, places in home.items())
    found = [r for places in home.values() for r in list(places.values())[:PLACES]]
    memory = core.memory_of_places(*remembered([r for places in home.values() for r in places.values()]))
    return [Block("point", say.native_each(told, memory), statements=tuple(f"range:{r.id}" for r in found))]


def _listed(kb: KnowledgeBase, key_of: str) -> bool:
    place = kb.place(key_of)
    return place is not None and place.kind in LISTED


def _short(kb: KnowledgeBase, places: Iterable[str]) -> str:
    names = sorted(p.label for key_of in places if (p := kb.place(key_of)) is not None)
    return core.places_short(join(names) if len(names) <= PLACES else ", ".join(names[:PLACES]),
                             max(0, len(names) - PLACES))


PLACES, MOSTLY_APART = 5, 0.25
"""Places named of each fish, and the share of the fewer ones up to which two fishes live apart."""
