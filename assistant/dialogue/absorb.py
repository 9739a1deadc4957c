"""What a line adds to the conversation whatever is asked: place, day, sizes, sex, age, units (layer 4)."""

from __future__ import annotations

from typing import Any

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.units import METRIC_UNITS, system_named


def absorb(kb: KnowledgeBase, held: Held, reading: Reading) -> Held:
    """The conversation with everything carried over that holds for every kind of question."""
    changes: dict[str, Any] = {}
    if reading.places:
        changes["places"] = reading.places
        if not reading.water and held.water and not _within(kb, held.water, reading.places):
            changes["water"] = None
    if reading.water:
        changes["water"] = reading.water
    for name in ("date", "season", "sex", "stage", "breeding", "size_word"):
        if value := getattr(reading, name):
            changes[name] = value
    lengths = tuple(m for m in reading.measures if m.kind == "length" and m.own)
    weights = tuple(m for m in reading.measures if m.kind == "weight" and m.own)
    if lengths:
        changes["lengths"] = lengths
    if weights:
        changes["weights"] = weights
    if wished := _units_wished(reading):
        changes.update(units=wished, units_wished=True)
    elif not held.units_wished and (typed := _units_typed(reading)):
        changes["units"] = typed
    if "dead" in reading.cues:
        changes["dead"] = True
    return held.after(**changes) if changes else held


def _within(kb: KnowledgeBase, water: str, places: tuple[str, ...]) -> bool:
    found = kb.place(water)
    return found is not None and any(p in found.within or p == water for p in places)


def _units_wished(reading: Reading) -> str:
    if reading.measures:
        return ""
    if "units-us" in reading.cues:
        return "us"
    if "units-metric" in reading.cues:
        asked = {system_named(w) for w in reading.words}
        return next((system for system in ("mm", "cm") if system in asked), "metric")
    return ""


def _units_typed(reading: Reading) -> str:
    typed = {m.unit for m in reading.measures if m.own and not m.bare}
    if typed & METRIC_UNITS:
        return "metric"
    return "us" if typed & {"in", "ft", "lb", "oz"} else ""
