"""Turns made by hand for handler tests: a line's words with the fishes, places and measures that it is read to name."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from decimal import Decimal
from typing import NoReturn

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure, Mention, Reading, Seen
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Observation
from assistant.text import key
from assistant.units import G_PER_POUND, to_mm

CLOCK = date(2026, 7, 4)


def no_table() -> NoReturn:
    """Information answers never score a catch."""
    raise AssertionError("an information handler asked for the score table")


def length(words: str, value: str, unit: str = "in", method: str = "", kind: str = "length") -> Measure:
    """A length as read."""
    mm = to_mm(value, unit)
    return Measure(kind, mm, mm, unit, words, 0, len(words), method=method)


def weight(words: str, grams: Decimal | str, unit: str = "lb") -> Measure:
    """A weight as read, in grams."""
    g = Decimal(str(grams))
    return Measure("weight", g, g, unit, words, 0, len(words))


def pounds(value: str) -> Measure:
    """A weight in pounds."""
    return weight(f"{value} lb", Decimal(value) * G_PER_POUND)


def fish(*ids: str, words: str = "") -> Mention:
    """One fish named; several ids where the words mean several."""
    return Mention("taxon", ids, words, 0, len(words), ambiguous=len(ids) > 1)


def group(key_: str, words: str = "") -> Mention:
    """A group named."""
    return Mention("group", (key_,), words, 0, len(words))


def seen(character: str, *states: str, value: float | None = None, at_least: bool = False) -> Seen:
    """Something asked for or seen."""
    states_ = tuple(f"{character}.{s}" for s in states)
    return Seen(Observation(character, states_, value=value, at_least=at_least), "", 0, 0)


def turn_of(
    kb: KnowledgeBase,
    text: str,
    *mentions: Mention,
    held: Held | None = None,
    places: Sequence[str] = (),
    measures: Sequence[Measure] = (),
    cues: Sequence[str] = (),
    observed: Sequence[Seen] = (),
) -> Turn:
    """A turn as the engine would hand it to a handler: the line read, places and measures carried into what is held."""
    reading = Reading(
        text,
        tuple(key(text).split()),
        mentions=mentions,
        places=tuple(places),
        measures=tuple(measures),
        seen=tuple(observed),
        cues=frozenset(cues),
    )
    now = held or Held()
    if places:
        now = now.after(places=tuple(places))
    for name in ("length", "weight"):
        if own := tuple(m for m in measures if m.kind == name):
            now = now.after(**{f"{name}s": own})
    return Turn(kb, reading, now, CLOCK, no_table)
