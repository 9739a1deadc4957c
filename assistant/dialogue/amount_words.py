"""Lengths and weights of a turn: which of those typed and held count, and how they are shown (layer 4)."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure, Reading
from assistant.dialogue.telling import as_typed
from assistant.units import METRIC_UNITS, show_span, show_weight


@dataclass(frozen=True, slots=True)
class Amounts:
    """The length, girth and weight that a line is about; None where none is told."""

    length: Measure | None
    girth: Measure | None
    weight: Measure | None

    @property
    def empty(self) -> bool:
        """True when nothing was measured."""
        return self.length is None and self.weight is None and self.girth is None


CARRYING = ("size", "weight", "identify", "rules", "contrast")
"""Intents after which a measure told earlier still stands for the fish in hand."""


def amounts(reading: Reading, held: Held, anew: bool) -> Amounts:
    """The measures of the line; where it has none, those held, unless another fish is spoken of anew."""
    own = {k: next((m for m in reading.measures if m.kind == k), None) for k in ("length", "girth", "weight")}
    if any(own.values()):
        return Amounts(own["length"], own["girth"], own["weight"])
    if anew or held.intent not in CARRYING:
        return Amounts(None, None, None)
    length = held.lengths[-1] if held.lengths else None
    return Amounts(length, None, held.weights[-1] if held.weights else None)


def middle(measure: Measure) -> float:
    """The middle of a measure in mm or g."""
    return float((measure.low + measure.high) / 2)


def system(held: Held, measure: Measure | None = None) -> str:
    """The asker's unit system: asked for, else as typed, else inches and pounds."""
    if held.units:
        return held.units
    if measure is not None and measure.unit in METRIC_UNITS:
        return "metric"
    return "us"


def typed(measure: Measure, held: Held) -> str:
    """A measure as it was typed, the other system in brackets."""
    return as_typed(measure, held.units)


def span(low: float | None, high: float | None, units: str) -> str:
    """A range of lengths with the unit once: "4 to 10 in (102 to 254 mm)"; empty when nothing is known."""
    known = [x for x in (low, high) if x is not None]
    return show_span(min(known), max(known), units) if known else ""


def grams(value: float, units: str) -> str:
    """A weight shown in the asker's system first."""
    return show_weight(value, units)
