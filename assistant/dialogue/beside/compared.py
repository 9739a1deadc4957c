"""Several fishes set against each other: the sides named, and yes or no to "does A get bigger than B" (layer 4)."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from assistant.dialogue.conversation import Held
from assistant.dialogue.kinship import kinds_meant
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core
from assistant.model.knowledge import KnowledgeBase
from assistant.text import unique, word_set

ASKING = word_set("do does did is are was were can could will would")
POINTING = word_set("they it these those them one ones")
LESS = word_set("smaller shorter lighter less least lightest smallest shortest littler littlest tinier tiniest lower "
                "lowest fewer fewest colder coldest earlier earliest first younger")
EVEN = 0.95
"""From this share on one fish is as big as another."""
MOST_KINDS = 8
"""A single group of more kinds is no comparison."""
TURNS = 3
"""So many turns back the fishes of "which is bigger?" are looked for."""


TAGS = frozenset({("aint", "it"), ("isnt", "it"), ("dont", "it"), ("huh",), ("right",), ("eh",), ("or", "no"),
                  ("or", "what"), ("or", "not")})
"""Ends of a line that want to hear yes or no."""


def yes_or_no(turn: Turn) -> bool:
    """True for a line that opens like a question to be answered by yes or no, or ends so ("..., aint it")."""
    words = turn.reading.words
    if words[-1:] in TAGS or words[-2:] in TAGS:
        return True
    return bool(words) and (words[0] in ASKING or (words[0] in ("and", "so", "but") and words[1:2] != () and
                                                   words[1] in ASKING))


def less_asked(turn: Turn) -> bool:
    """True where the lesser one is asked for: "which is smaller", "which stays shorter"."""
    return bool(LESS & set(turn.reading.words))


def sides_named(turn: Turn) -> tuple[tuple[str, ...], ...]:
    """The kinds behind each fish or group that the line names, in the order of the text.

    A pronoun beside a single one stands before it for the fish spoken of ("do they get bigger than pumpkinseeds"),
    as the word left out does in "bigger than a gill?".
    """
    kb = turn.kb
    named = sorted(turn.reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    out: list[tuple[str, ...]] = []
    for m in named:
        found = species_of(kb, m.ids if m.kind != "group" else m.ids[:1])
        found = tuple(one) if len(one := kinds_meant(kb, m)) == 1 else found
        if found and not any(set(found) <= set(x) or set(x) <= set(found) for x in out):
            out.append(found)
    likened = [m.ids for m in turn.reading.of("likeness") if len(m.ids) == 1] if "bigger-than" in turn.cues else []
    if not out and len(likened) == 1 and len(held := species_of(kb, turn.held.taxa)) == 1:
        return (held, likened[0]) if held != likened[0] else ()
    if len(out) == 1 and POINTING & set(turn.reading.words):
        held = tuple(t for t in species_of(kb, turn.held.taxa) if t not in out[0])
        return (held, *out) if held else tuple(out)
    return tuple(out)


def lately(kb: KnowledgeBase, held: Held) -> tuple[str, ...]:
    """The kinds spoken of last: where that is one alone, with those of the turns before ("which is bigger?")."""
    found = tuple(t for t in held.taxa if (x := kb.find("taxon", t)) is not None and x.is_species)
    at: Held | None = held
    for _ in range(TURNS):
        at = at.before if at is not None else None
        if len(found) > 1 or at is None:
            break
        found = unique((*(t for t in at.taxa if (x := kb.find("taxon", t)) is not None and x.is_species), *found))
    return found


def set_against(turn: Turn) -> tuple[str, ...]:
    """The kinds that a comparing line is about: those it names, else those spoken of last; empty where too few."""
    sides = sides_named(turn)
    found = unique(t for side in sides for t in side) if sides else lately(turn.kb, turn.held)
    apart = len(sides) != 1 or len(found) <= MOST_KINDS
    return found if len(found) > 1 and apart else ()


def answered(turn: Turn, heights: Mapping[str, float]) -> str:
    """Yes or no to "does A get bigger than B", by the greatest of each side; empty where it asks something else."""
    sides = sides_named(turn)
    if not yes_or_no(turn) or len(sides) != 2:
        return ""
    tops = [max((heights[t] for t in side if t in heights), default=None) for side in sides]
    if tops[0] is None or tops[1] is None:
        return ""
    words = turn.reading.words
    if "as" in words and words.count("as") > 1:
        return core.YES if tops[0] >= EVEN * tops[1] else core.NO
    more = tops[0] < tops[1] if less_asked(turn) else tops[0] > tops[1]
    return core.YES if more else core.NO


def in_order(heights: Mapping[str, float], least_first: bool) -> Sequence[str]:
    """The fishes with the most first, or with the least first."""
    return sorted(heights, key=lambda t: (heights[t] if least_first else -heights[t], t))
