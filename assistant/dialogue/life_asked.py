"""Fishes asked for by how they live: what they eat, where, when they spawn, whether they build a nest (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.aspects import characters, states
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about
from assistant.reasoning.months import MONTHS, seasons_of
from assistant.reasoning.observed import Observation
from assistant.text import key, singular, unique, word_set

LIFE = ("life",)
WITHOUT = ("none", "absent")
SEASON, BREEDING = "season-", "season-spawning"
_MONTH = re.compile(r"^(?:\d{4}|-)-(?P<month>\d\d)")
WATERS, PLAIN_WATER = "habitat", "cue-waters"
RISK, AT_RISK = "conservation-status", "at-risk"
"""A standing that holds in the place of which it is said, not everywhere, and the cue that asks for it."""
SPAWNING = "spawning-season"
FED = "diet"
FISH = ("fish", "fishes")
AS_FOOD = word_set("other small young little eat eats eating")
"""Words after which "fish" is food."""
FEEDING = word_set("feed feeds feeding live lives eater eaters crunch crunches crush crushes prey diet food")


def living(turn: Turn) -> tuple[Seen, ...]:
    """What the line says of the life of the fishes it asks for, as observations.

    States spelt out stand; without any, a side of life that is only named ("which build nests") means all its states
    but the one that denies it; food does not, for every fish eats.
    """
    kb = turn.kb
    sides = [c.id for c in kb.characters if c.use in LIFE]
    fed = asks_food(turn)
    known = characters(kb, turn.reading, LIFE)
    spelt = {c: told for c in sides if (told := _spelt(turn, c, c in known)) and (c != FED or fed)}
    if FED in spelt:
        spelt = {FED: spelt[FED]}
    if not spelt:
        named = [c for c in known if kb.character(c).is_stated and c != FED]
        named = sorted(named, key=lambda c: -sum(c in kb.told_of(t) for t in kb.species))[:1]
        spelt = {c: tuple(s.id for s in kb.states(c) if not s.id.endswith(WITHOUT)) for c in named}
    return tuple(Seen(Observation(c, told), "", 0, 0) for c, told in spelt.items())


def life_there(turn: Turn) -> list[Seen]:
    """The side of life that a line names beside a place: a kind of water ("a farm pond in Iowa"), how fishes stand, or
    what they eat ("which fish eat snails in Ohio").

    Empty where it names no kind of water or food in particular.
    """
    told = living(turn) if turn.reading.places or AT_RISK in turn.cues else ()
    if foods := [s for s in told if s.observation.character == FED and asks_food(turn)]:
        return foods
    kinds = {s.id for s in turn.kb.states(WATERS)}
    standing = [s for s in told if s.observation.character == RISK and AT_RISK in turn.cues]
    return standing or [s for s in told if s.observation.character == WATERS and set(s.observation.states) < kinds]


def at_risk(kb: KnowledgeBase, pool: Sequence[str], places: Sequence[str]) -> tuple[str, ...]:
    """Those of some fishes whose standing is told of one of the places, or of no place in particular."""
    return tuple(t for t in pool
                 if any(not s.regions or set(s.regions) & set(places) for s in about(kb, t, RISK)[0]))


def asks_food(turn: Turn) -> bool:
    """True for a line that speaks of eating, so that "mud" and "fish" may be food."""
    return "eat" in turn.cues or bool(FEEDING & set(turn.reading.words))


def _spelt(turn: Turn, character: str, named: bool) -> tuple[str, ...]:
    """The states of a side of life in the line; the word "fish" stands for what is asked for, not for food.

    A side that is not ``named`` itself is denied by none of its words.
    """
    told = turn.reading.words
    words = tuple(w for i, w in enumerate(told) if w not in FISH or (i and told[i - 1] in AS_FOOD))
    if character == WATERS:
        asking = frozenset(_asking(turn))
        words = tuple(w for w in words if w in asking)
    found = states(turn.kb, turn.reading._replace(words=words), character)
    if not named:
        found = tuple(s for s in found if not s.endswith(WITHOUT))
    if found or character != WATERS:
        return found
    return tuple(sorted({s for named in waters_meant(turn).values() for s in named}))


def _of_places(turn: Turn) -> frozenset[str]:
    """The words by which places are named in a line."""
    return frozenset(w for m in turn.reading.of("place", "water") for w in key(m.words).split())


def _asking(turn: Turn) -> tuple[str, ...]:
    """The words that may ask for a kind of water: none of a place's name ("the Great Lakes"), nor of what follows the
    question ("... It is for a tank label.")."""
    text, taken = turn.reading.text, _of_places(turn)
    told = key(text.partition("?")[0]).split() if "?" in text else turn.reading.words
    return tuple(w for w in told if w not in taken)


def waters_meant(turn: Turn) -> dict[str, frozenset[str]]:
    """The plain words for waters in a line ("lakes"), each with the kinds of water in whose names it stands."""
    kb = turn.kb
    plain = [w for w in _asking(turn) if any(e[:2] == ("cue", PLAIN_WATER) for e in kb.spoken(w))]
    named = {s.id: {singular(w) for text in (s.label, *s.values, *s.phrases) for w in key(text).split()}
             for s in kb.states(WATERS)} if plain else {}
    out: dict[str, frozenset[str]] = {}
    for word in plain:
        single = singular(word)
        found = frozenset(s for s, words in named.items() if single in words)
        if found:
            out[word] = found
    return out


def seasons(turn: Turn) -> tuple[str, ...]:
    """The seasons the line names, by the word that stands for each."""
    cues = sorted(c for c in turn.cues if c.startswith(SEASON) and c != BREEDING)
    found = (turn.kb.find("word", f"cue-{c}") for c in cues)
    month = _MONTH.search(turn.reading.date or "")
    told = seasons_of(MONTHS[int(month["month"]) - 1]) if month else frozenset()
    return unique((*(w.head for w in found if w is not None), *sorted(told)))


def spawners(turn: Turn, pool: Sequence[str], wanted: Sequence[str]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Of some fishes those that spawn in one of these seasons, each with the statements that say so."""
    out = []
    for taxon in pool:
        found = [s for s in about(turn.kb, taxon, SPAWNING)[0] if set(wanted) & seasons_of(s.text)]
        if found:
            out.append((taxon, tuple(f"st:{s.id}" for s in found)))
    return tuple(out)


def asks_spawning(turn: Turn) -> bool:
    """True for a line on when fishes spawn."""
    return SPAWNING in characters(turn.kb, turn.reading, LIFE)
