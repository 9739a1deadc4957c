"""The wording of answers to wants within a comparison: one mark, what misleads, colour, dead, young fish (layer 4)."""

from __future__ import annotations

from assistant.dialogue.wording.core import has
from assistant.text import join, lower_first, sentence

COLOUR_CHANGES = "colour changes with water, light and season and fades in a dead fish"
COLOUR_WORD = "colour"


def in_each(heading: str, told: str) -> str:
    """A feature and what each fish shows, inside a sentence."""
    return f"{heading} ({told})"


def surer(heading: str, told: str) -> str:
    """What to go by instead."""
    return sentence(f"go by the {heading}: {told}")


def misled(headings: list[str]) -> str:
    """The marks that mislead."""
    told = join([f"the {x}" for x in headings], "or")
    return sentence(f"do not rely on {told}, in which they overlap: {COLOUR_CHANGES}")


def nothing_misleads(names: str) -> str:
    """No mark is held in which the fishes overlap."""
    return sentence(f"no mark is held in which {names} are alike though people go by it; {COLOUR_CHANGES}")


def alike_in(heading: str, told: str) -> str:
    """A mark that does not tell, as a point."""
    return sentence(f"alike or overlapping, {heading}: {told}")


def colour_verdict(told: str) -> str:
    """Whether colour tells two fishes apart; ``told`` is the colour that does so best, if any."""
    if not told:
        return sentence(f"no: no colour is held that sets them apart, and {COLOUR_CHANGES}")
    return sentence(f"not by itself: {COLOUR_CHANGES}; of the colours the best is the {told}")


def size_verdict(told: str, apart: bool) -> str:
    """Whether size tells two fishes apart."""
    if not told:
        return "No: every large fish was small once, and I hold no lengths that set them apart."
    why = "only a fish too large for the one is surely the other" if apart else "grown fish overlap"
    return sentence(f"not by itself: every large fish was small once, and {why} (grown: {told})")


def mark_verdict(told: str, separation: float, shared: str = "") -> str:
    """Whether a named feature tells two fishes apart; ``shared``: what both may show of it."""
    word = "yes, mostly" if separation >= MOSTLY else "it helps, but not by itself" if separation >= HELPS else "no"
    word = "mostly, but not by itself" if shared and word.startswith("yes") else word
    return sentence(f"{word}: {told}{f'; both may show {shared}' if shared else ''}")


def span(low: float, high: float) -> str:
    """The numbers of an overlap."""
    return f"{low:g}" if low == high else f"{low:g} {'or' if high - low == 1 else 'to'} {high:g}"


MOSTLY, HELPS = 0.55, 0.3
"""Separation from which a feature is said to tell two fishes apart, or to help."""


def of_some(who: str, heading: str, told: str) -> str:
    """What the young, the breeding fish or one sex of each fish show."""
    return sentence(f"{who}, {heading}: {told}")


def young_too(heading: str, told: str) -> str:
    """A feature that young fish show as well, as the first to look at."""
    return sentence(f"in small fish, too, look at the {heading}: {told}")


def none_of_some(who: str) -> str:
    """Nothing is held of such fish alone."""
    return sentence(f"nothing is held on {who} of these alone")


def of_all(told: str) -> str:
    """What is told of all fish of a kind where nothing is told of those asked about."""
    return f"{told} (told of all)"


def not_by_eye(settles: str) -> str:
    """That two fishes cannot be told surely by eye, and what settles it."""
    return sentence(f"not surely by eye: {lower_first(settles)}")


FADED = "Colours fade in a dead fish, so go by structure and counts."
NOT_SURE = "Looks alone do not make it sure, for one of them is a cross of the other."


def advice(fish: str, text: str) -> str:
    """Advice on the young of one fish."""
    return sentence(f"on young {fish}: {text}")


def who_are(sex: str, stage: str, breeding: str) -> str:
    """The fish of one sex or age, or breeding ones, as a plural: "breeding males"."""
    noun = f"{sex}s" if sex else "young fish" if stage == "juvenile" else "fish"
    return f"{breeding} {noun}".strip()


def others_too(names: str, what: str) -> str:
    """Other fishes that show a mark."""
    return sentence(f"no: {names} can have {what}, too")


def no_other(name: str, what: str) -> str:
    """No other fish of the family is told to show a mark."""
    return sentence(f"as far as is held, yes: of its family only the {name} is told to have {what}")


def by_seen(first: str, second: str, marks: list[str]) -> str:
    """Which of two fishes the marks told before speak for."""
    return sentence(f"by what you saw ({join(marks)}) the {first} rather than the {second}")


def native_each(told: str, memory: str) -> str:
    """Where each of two fishes is native that mostly live apart."""
    return sentence(f"where they are native: {told}{f' [{memory}]' if memory else ''}")


def third(fish: str) -> str:
    """A fish that was not named and that the marks told fit better than those set side by side."""
    return sentence(f"yet what you saw fits a third fish better, the {fish}")


def leans(first: str, second: str, marks: list[str]) -> str:
    """Which of two fishes a mark told leans to without settling it."""
    return sentence(f"{join(marks)}: that leans to the {first} rather than the {second}, but does not settle it")


def mark_open(marks: list[str]) -> str:
    """A mark told that decides nothing between the fishes."""
    return sentence(f"{join(marks)}: that does not decide between them")


def mark_unheld(marks: list[str], names: str) -> str:
    """A mark told of which nothing is held for fishes set side by side."""
    return sentence(f"{join(marks)}: nothing is held of that for {names}, so it decides nothing here")


def mark_of_each(heading: str, told: str) -> str:
    """What each fish shows of a mark told."""
    return sentence(f"{heading}: {told}")


def not_held_beside(other: str, fish: str) -> str:
    """A fish that is not held, to be set beside one that is."""
    return f'The base does not hold "{other}", so I can\'t set it beside the {fish}; this is held of the {fish}.'


def nearest_apart(names: str) -> str:
    """What heads the features that tell the fishes nearest to what was seen apart."""
    return sentence(f"look at these; they tell {names} apart")


def two_kinds(one: str, other: str) -> str:
    """Two fishes that are asked about as if they were one."""
    return sentence(f"no: the {one} and the {other} are kinds of their own")


def told_of_one(marks: list[tuple[str, str]]) -> str:
    """Marks of each fish of which nothing is held for the other."""
    told = "; ".join(f"the {fish} {has(text)}" for fish, text in marks)
    return sentence(f"told of one only, nothing held of the other: {told}")
