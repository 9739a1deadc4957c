"""What the base tells of a fish, as the drawing needs it: commonest states, numbers, the body plan (layer 5)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import Told, tell
from assistant.render.drawing_plans import OTHER, PLANS, Plan

COLOURS: Mapping[str, str] = {
    "blue-green": "#4f8f8c", "blue-black": "#27364a", "blue-silver": "#8fa6b8", "blue-grey": "#6c7f8c",
    "dark-green": "#3f5f48",
    "turquoise": "#3f9a98", "silvery-blue": "#8fa9bb", "red-orange": "#cf5a33", "yellow-orange": "#d99a35",
    "olive": "#7d7f4b",
    "red": "#b8322c", "orange": "#d9742b", "yellow": "#d8b13a", "gold": "#c69a3a", "golden": "#c2a052",
    "copper": "#a8623c",
    "blue": "#3f6fa5", "green": "#5b8557", "brown": "#7b5b3f", "black": "#1d2226", "blackish": "#2b3033",
    "dark": "#33393d",
    "dusky": "#5b6163", "silver": "#a9b4b9", "silvery": "#a9b4b9", "white": "#ffffff", "pale": "#efe9da",
    "pink": "#cf8d8a",
    "purple": "#6f4b7d", "grey": "#8b9294", "maroon": "#7c2f33", "bronze": "#9a7440",
}
"""Inks for colour words; the longest that a state names wins."""


@dataclass(frozen=True, slots=True)
class Traits:
    """The states told by character (commonest first), the middle of numbers, the plan, whether that is told."""

    states: Mapping[str, tuple[str, ...]]
    numbers: Mapping[str, float]
    plan: Plan
    plan_known: bool
    looked_up: set[str] = field(default_factory=set, compare=False)
    """Characters that the drawing has asked for: what it never asks for, it does not show."""

    def one(self, character: str) -> str:
        """The commonest state of a character, without the name of the character; empty where nothing is told."""
        self.looked_up.add(character)
        found = self.states.get(character, ())
        return found[0] if found else ""

    def knows(self, character: str) -> bool:
        """True where something is told of a character."""
        return character in self.states or character in self.numbers

    def shows(self, character: str, *names: str) -> bool:
        """True where the commonest state is one of these, or stands under one of them."""
        self.looked_up.add(character)
        return any(name in self.states.get(character, ())[:1] or f"<{name}" in self.states.get(character, ())
                   for name in names)

    def colour(self, character: str, otherwise: str = "") -> str:
        """The ink of the colour word in the commonest state of a character."""
        return ink(self.one(character), otherwise)

    def count(self, character: str, otherwise: int) -> int:
        """The usual number of a counted character."""
        self.looked_up.add(character)
        return round(self.numbers.get(character, otherwise))


def ink(words: str, otherwise: str = "") -> str:
    """The ink of the first colour word (the longest at that place) in some words joined by hyphens."""
    found = [(f"-{words}-".find(f"-{name}-"), -len(name), code) for name, code in COLOURS.items()
             if f"-{name}-" in f"-{words}-"]
    return min(found)[2] if found else otherwise


def read_traits(kb: KnowledgeBase, taxon: str) -> Traits:
    """The traits of a taxon or cross."""
    states: dict[str, tuple[str, ...]] = {}
    numbers: dict[str, float] = {}
    for character in kb.characters:
        told = tell(kb, character, taxon) if character.use in ("identify", "describe") else None
        if told is None or _of_some_alone(kb, told):
            continue
        if told.numbers is not None:
            numbers[character.id] = (told.numbers[1] + told.numbers[2]) / 2
        elif told.states:
            names = [s.partition(".")[2] for s, share in told.states
                     if share >= 0.3] or [told.states[0][0].partition(".")[2]]
            states[character.id] = (*names, *_above(kb, told.states[0][0]))
    plan = plan_of(kb, taxon)
    return Traits(states, numbers, PLANS.get(plan, PLANS[OTHER]), plan in PLANS)


def _of_some_alone(kb: KnowledgeBase, told: Told) -> bool:
    """True where all that is told of a character is the dress of spawning fish or of young ones."""
    if not told.only:
        return False
    records = [s for s in kb.statements(told.inherited_from or told.taxon) if s.id in told.statements]
    return bool(records) and all(s.breeding or s.stage == "juvenile" or s.max_length for s in records)


def _above(kb: KnowledgeBase, state: str) -> tuple[str, ...]:
    """The umbrellas over a state, each with a mark before it."""
    out: list[str] = []
    current: str | None = state
    while current:
        out.append("<" + current.partition(".")[2])
        current = kb.state(current).broader
    return tuple(out)


def plan_of(kb: KnowledgeBase, taxon: str) -> str:
    """The body plan given to a taxon or the nearest taxon above it; that of the first parent for a cross."""
    first = kb.taxon(taxon).parents or (taxon,)
    for above in kb.lineage(first[0]):
        if plan := kb.taxon(above).body_plan:
            return plan
    return ""


