"""Fishes in the order of what is asked for: the biggest, the longest ear flap, the fewest spines (layer 4).

What is ordered by is read from the base: the word for the most or the least of something (an aspect) stands before the
words of a count, a measure or a feature whose states have an order; before none, it is the size of the fish.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.dialogue.amount_words import system
from assistant.dialogue.aspects import LONGEST, aspects, phrases_of
from assistant.dialogue.conversation import Order
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core, speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.contrast import ADULT, tell
from assistant.reasoning.evidence import about
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.size import own_sizes
from assistant.units import show_length

SIZE = "max-total-length"
MOST, LEAST = "aspect-most-of", "aspect-least-of"
IN_ORDER, COUNTING = "in-order", frozenset({"number", "numbers", "count", "counts", "many"})
OF_SIZE, FROM_SMALLEST, FROM_LARGEST = "sort-size", "smallest-first", "largest-first"
"""The sides of a matter by which fishes are put in the order of their size."""


@dataclass(frozen=True, slots=True)
class Placed:
    """A fish with where it stands (the higher the more), what is said of it in words, and the statements."""

    taxon: str
    height: float
    words: str
    statements: tuple[str, ...]


def order_asked(turn: Turn, sides: Iterable[str], pool: Sequence[str]) -> Order | None:
    """What the fishes of a list are to be put in the order of; None where no order is asked for.

    Of several characters of one name it is the one of which something is said for the most of the fishes. A line that
    asks for more of a list, or for its other end, keeps the order of that list.
    """
    kb, words = turn.kb, turn.reading.words
    for i, word in enumerate(words):
        found = {thing for kind, thing, _ in kb.spoken(word) if kind == "aspect"}
        if not found & {MOST, LEAST} or _bounds(words, i):
            continue
        spoken, run = _characters(kb, words[i : i + LONGEST])
        if not spoken:
            spoken, run = _characters(kb, words[i + 1 : i + 1 + LONGEST])
        able = [c for c in spoken if c.kind != "states" and not (c.is_stated and not _scale(kb, c.id))]
        if able:
            best = max(able, key=lambda c: sum(bool(about(kb, t, c.id)[0]) for t in pool))
            return Order(best.id, LEAST in found, run)
        if spoken:
            return Order(spoken[0].id, LEAST in found, run, able=False)
    if ordered := _by_name(turn, pool):
        return ordered
    before = turn.held.order if turn.held.intent == "list" and not turn.reading.of("taxon", "hybrid", "group") else None
    if before is not None and (least := other_end(turn, sides)) is not None:
        return before._replace(least_first=least)
    if OF_SIZE in sides:
        return Order(SIZE, from_smallest(sides))
    return before if "more" in turn.cues else None


def _by_name(turn: Turn, pool: Sequence[str]) -> Order | None:
    """The character that a line orders by without a word for more or less ("in order by number of dorsal spines")."""
    kb, words = turn.kb, turn.reading.words
    if IN_ORDER not in turn.cues:
        return None
    for i, word in enumerate(words):
        if word not in ("by", "of"):
            continue
        for at in range(i + 1, min(i + 4, len(words))):
            spoken, run = _characters(kb, words[at : at + LONGEST])
            able = [c for c in spoken if c.kind != "states" and not (c.is_stated and not _scale(kb, c.id))]
            if COUNTING & set(words) and any(c.kind == "count" for c in able):
                able = [c for c in able if c.kind == "count"]
            if able:
                best = max(able, key=lambda c: sum(bool(about(kb, t, c.id)[0]) for t in pool))
                return Order(best.id, from_smallest(aspects(kb, turn.reading)), run)
    return None


def from_smallest(sides: Iterable[str]) -> bool:
    """Whether the smallest comes first; not for "biggest to smallest"."""
    found = set(sides)
    return FROM_SMALLEST in found and FROM_LARGEST not in found


def _bounds(words: Sequence[str], at: int) -> bool:
    """True for a word of "11 or more" and "fewer than 9", which is a bound and no order."""
    bound = words[at] in ("more", "less", "fewer")
    return words[at + 1 : at + 2] == ("than",) or (bound and at > 1 and words[at - 1] == "or")


def other_end(turn: Turn, sides: Iterable[str]) -> bool | None:
    """Whether a line asks for the least ("the fewest", "the smallest") or for the most; None where for neither."""
    kb = turn.kb
    found = {thing for w in turn.reading.words for kind, thing, _ in kb.spoken(w) if kind == "aspect"}
    if LEAST in found or from_smallest(sides):
        return True
    return False if MOST in found or OF_SIZE in sides else None


def _characters(kb: KnowledgeBase, words: tuple[str, ...]) -> tuple[list[Character], tuple[str, ...]]:
    """The characters that the words at the start of a run name, of the longest name, with it; size is no part."""
    for size in range(len(words), 0, -1):
        spoken = [x for p in phrases_of(words[:size]) if len(p.split()) == size for x in kb.spoken(p)]
        found = sorted({thing for kind, thing, _ in spoken if kind == "character" and thing != SIZE})
        known = [c for i in found if (c := kb.find("character", i)) is not None]
        if known:
            return known, words[:size]
    return [], ()


def _scale(kb: KnowledgeBase, character: str) -> dict[str, int]:
    """The states of an ordered character with their places in the order."""
    return {s.id: s.order for s in kb.states(character) if s.order is not None}


def placed(turn: Turn, pool: Iterable[str], order: Order) -> list[Placed]:
    """The fishes of which something is said on it, the most (or the least) first."""
    one = _by_size if order.character == SIZE else _by_feature
    found = [p for t in pool if (p := one(turn, t, order.character)) is not None]
    return sorted(found, key=lambda p: (p.height if order.least_first else -p.height, p.taxon))


def _by_size(turn: Turn, taxon: str, _: str) -> Placed | None:
    found = own_sizes(turn.kb, taxon)
    if found.largest is None:
        return None
    words = core.up_to(show_length(found.largest, system(turn.held)))
    return Placed(taxon, found.largest, words, tuple(f"st:{s}" for s in found.largest_statements[:2]))


def _by_feature(turn: Turn, taxon: str, character: str) -> Placed | None:
    kb = turn.kb
    found = kb.character(character)
    told = tell(kb, found, taxon)
    if told is None:
        return None
    if told.numbers is not None:
        height = (told.numbers[1] + told.numbers[2]) / 2
    else:
        scale, shares = _scale(kb, character), taxon_distribution(kb, taxon, character, ADULT)
        known = {s: p for s, p in shares.shares.items() if s in scale} if shares is not None else {}
        if not sum(known.values()):
            return None
        height = sum(scale[s] * p for s, p in known.items()) / sum(known.values())
    words = speak.told_words(kb, told, found, system(turn.held))
    return Placed(taxon, round(height, 3), words, tuple(f"st:{s}" for s in told.statements[:2]))
