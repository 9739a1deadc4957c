"""What is held, in a few words: for the bottom line of the full prompt and the remark of the plain one (layer 6)."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from assistant.prompt import wording
from assistant.text import strip_controls

if TYPE_CHECKING:
    from assistant.dialogue.conversation import Held
    from assistant.model.knowledge import KnowledgeBase

UNITS = {"us": "inches first", "metric": "metric first", "cm": "centimetres first", "mm": "millimetres first"}
BETWEEN = " | "
SHOWN = 2
"""Fishes named before the rest is only counted."""
CUT = ".."
LEAST = 10
"""Letters to which a value may be cut down."""
MINOR = 3
"""Rank from which parts are dropped before anything is cut."""


@dataclass(frozen=True, slots=True)
class Part:
    """One thing held: what it is, its value, and how early it goes when room is short (low goes last)."""

    name: str
    value: str
    rank: int


def held_parts(kb: KnowledgeBase, held: Held) -> tuple[Part, ...]:
    """Everything held that a person should see, in the order in which it is shown."""
    parts = (
        Part("asked", _asked(kb, held), 0), Part("fish", _fish(kb, held.taxa), 1), Part("place", _place(kb, held), 2),
        Part("length", held.lengths[-1].words if held.lengths else "", 4), Part("seen", _seen(held), 5),
        Part("date", held.date or held.season, 6), Part("units", UNITS.get(held.units, ""), 3),
    )
    return tuple(p for p in parts if p.value)


def held_words(kb: KnowledgeBase, held: Held, names: Collection[str]) -> str:
    """Some of what is held, in words."""
    return "; ".join(p.value for p in held_parts(kb, held) if p.name in names)


def fitted(parts: tuple[Part, ...], width: int) -> tuple[tuple[str, str], ...]:
    """(Name, value) of the parts that fit in a line; the last in rank go first, then the longest values are cut."""
    kept = list(parts)
    while len(kept) > 1 and _length(kept) > width and (_least(kept) > width or max(p.rank for p in kept) >= MINOR):
        kept.remove(max(kept, key=lambda p: p.rank))
    while kept and _length(kept) > width:
        at = max(range(len(kept)), key=lambda i: len(kept[i].value))
        value = kept[at].value.removesuffix(CUT)
        if not value:
            return ()
        kept[at] = replace(kept[at], value=value[:-1].rstrip() + CUT)
    return tuple((p.name, p.value) for p in kept)


def empty_words(width: int) -> str:
    """The bottom line while nothing is held."""
    text = f"{wording.NOTHING_HELD}{BETWEEN}{wording.KEYS}"
    return text if len(text) <= width else wording.KEYS[:width]


def _least(parts: list[Part]) -> int:
    """The room that some parts take with their values cut as far as makes sense."""
    return _length([replace(p, value=p.value[:LEAST]) for p in parts])


def _length(parts: list[Part]) -> int:
    return sum(len(p.name) + 2 + len(p.value) for p in parts) + len(BETWEEN) * (len(parts) - 1)


def _asked(kb: KnowledgeBase, held: Held) -> str:
    if held.asked is None:
        return ""
    found = kb.find("character", held.asked.character) if held.asked.character else None
    return found.label if found is not None else wording.ASKING.get(held.asked.kind, held.asked.question)


def _fish(kb: KnowledgeBase, taxa: tuple[str, ...]) -> str:
    if not taxa:
        return ""
    from assistant.dialogue.wording import speak

    names = [speak.fish(kb, t) for t in taxa[:SHOWN]]
    rest = f" +{len(taxa) - SHOWN}" if len(taxa) > SHOWN else ""
    return ", ".join(names) + rest


def _place(kb: KnowledgeBase, held: Held) -> str:
    found = kb.place(held.water) if held.water else None
    if held.water:
        return strip_controls(found.label if found is not None else held.water)
    if not held.places:
        return ""
    from assistant.dialogue.telling import place_names

    return place_names(kb, held.places)


def _seen(held: Held) -> str:
    count = len(held.seen)
    return f"{count} mark{'s' if count != 1 else ''}" if count else ""
