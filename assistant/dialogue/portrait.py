"""The features worth telling of one fish, best first, spread over its body (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.contrast import Told, contrast_row, tell

SHAPE, COLOUR = "body-form", "body-colour"
AREAS: tuple[frozenset[str], ...] = (
    frozenset({"ear-flap", "gill-cover", "cheek"}),
    frozenset({"mouth", "chin", "snout", "tongue", "head", "eye", "throat"}),
    frozenset({"dorsal-fin", "spiny-dorsal-fin", "soft-dorsal-fin", "adipose-fin", "unpaired-fins"}),
    frozenset({"anal-fin", "pectoral-fin", "pelvic-fin", "lower-fins", "fins", "pectoral-spine"}),
    frozenset({"tail-fin", "tail-base"}),
    frozenset({"side", "back", "belly", "whole-fish", "skin", "shoulder"}),
)
"""Regions of the body; a portrait takes the best feature of each before a second of any."""
TELLING = 0.3
"""The part of the worth of the best feature below which another says too little of a fish."""
LOOKS = ("glance", "hand", "count")
EASY = {"glance": 1.0, "hand": 0.6, "count": 0.45}
SELDOM = 0.2
"""What a character is worth that is looked at on dead fish alone."""
NARROW = 3
"""Up to so many characters a question is about one thing, which a follow-up asks of other fish."""
COMPARED = 32
"""Characters that are set against the look-alikes; the others are told too seldom to matter."""
LACKING = frozenset({"none", "absent", "no", "plain", "normal"})
"""States that tell of something missing: rarely what a fish is remembered by."""


def features(kb: KnowledgeBase, taxon: str, others: Sequence[str], most: int) -> list[tuple[Character, Told]]:
    """What to tell of a fish: in each region the character that sets it off best from ``others``."""
    plain: list[tuple[float, str, Told]] = []
    for character in kb.characters:
        if character.use != "identify" or character.look not in LOOKS or character.id == SHAPE:
            continue
        told = tell(kb, character, taxon)
        if told is not None:
            plain.append((plain_worth(character, told), character.id, told))
    plain.sort(key=lambda x: (-x[0], x[1]))
    scored = [(worth(kb, kb.character(c), taxon, others, told, value), c, told) for value, c, told in plain[:COMPARED]]
    scored.sort(key=lambda x: (-x[0], x[1]))
    return _spread(kb, scored, most)


def plain_worth(character: Character, told: Told) -> float:
    """The worth of a character by itself: how often authors tell it, own before inherited, read before remembered."""
    value = 0.4 + 0.1 * min(len(told.statements), 5)
    value -= (0.3 if told.inherited_from else 0.0) + (0.2 if told.basis == "memory" else 0.0)
    return value * EASY.get(character.look, SELDOM) * (0.6 if lacks(told) else 1.0)


def asked_told(kb: KnowledgeBase, taxon: str, asked: Sequence[str]) -> list[tuple[Character, Told]]:
    """What is told of some characters of a fish; of more than a few the most telling first."""
    known = [(kb.character(c), told) for c in asked if (told := tell(kb, kb.character(c), taxon)) is not None]
    on_fish = [(c, told) for c, told in known if c.use == "identify"]
    known = on_fish if len(asked) > 1 and on_fish else known
    if len(asked) <= NARROW:
        return known
    worthy = [x for x in known if plain_worth(*x) > 0.0] or known
    return sorted(worthy, key=lambda x: -plain_worth(*x))


def worth(
    kb: KnowledgeBase, character: Character, taxon: str, others: Sequence[str], told: Told, plain: float
) -> float:
    """How much a character says of a fish: its plain worth and how far it sets the fish off from others."""
    apart = 0.0
    for other in others:
        row = contrast_row(kb, character, (taxon, other))
        apart += min(row.worth, 1.0) if row is not None else 0.0
    return plain + apart * EASY[character.look] * (0.6 if lacks(told) else 1.0)


def lacks(told: Told) -> bool:
    """True where what is told is that something is missing."""
    if told.states:
        return told.states[0][0].partition(".")[2] in LACKING
    return told.numbers is not None and told.numbers[3] == 0


def _spread(kb: KnowledgeBase, scored: list[tuple[float, str, Told]], most: int) -> list[tuple[Character, Told]]:
    """The best features, one a region before a second of any; a region with nothing that tells is passed over."""
    chosen: dict[str, tuple[float, Told]] = {}
    used: dict[int, int] = {}
    least = TELLING * scored[0][0] if scored else 0.0
    for limit in (1, 2, 3):
        for value, name, told in scored:
            area = next((i for i, a in enumerate(AREAS) if kb.character(name).part in a), len(AREAS))
            if len(chosen) < most and name not in chosen and used.get(area, 0) < limit and value >= least:
                chosen[name] = (-value, told)
                used[area] = used.get(area, 0) + 1
    ordered = sorted(chosen.items(), key=lambda kv: (kv[1][0], kv[0]))
    return [(kb.character(name), told) for name, (_, told) in ordered]
