"""Yes, no or which of the two, where a line asks whether a fish lives, eats or breeds in some way (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.aspects import phrases_of, without_fish
from assistant.dialogue.life_asked import waters_meant
from assistant.dialogue.preying import food_told, prey
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, core
from assistant.model.records import Statement
from assistant.reasoning.evidence import below
from assistant.text import key, singular, word_set

WITHOUT = ("none", "absent")
OPENING = word_set("do does did is are was were can could will would has have")
WHICH_WORDS = word_set("what which who where when why how whats wheres whens")
BEFORE = 4
"""A yes or no is asked where one of the first words opens such a question."""
DENYING = word_set("not less seldom rarely never avoids avoid without no hardly")
WARM, COLD = word_set("warm warmer hot bathwater"), "cold"
SHORT = 3
"""Words up to this length begin no longer one of the same meaning."""
FED, SOUGHT, FISH_FOOD = "diet", "habitat", "fish"


def asks_yes_no(turn: Turn) -> bool:
    """True for a line to be answered by yes or no: it opens with "do", "can", "is", and asks not what or when."""
    words = turn.reading.words[:BEFORE]
    for word in words:
        if word in WHICH_WORDS:
            return False
        if word in OPENING:
            return True
    return False


ASLEEP = word_set("sleep sleeps sleeping asleep")
"""Words for what the times at which a fish is active answer only by the way."""


def whether(turn: Turn, character: str, found: Sequence[Statement], told: str) -> str:
    """Yes, no, one of two, or that it is not told, where a state of the character is asked about; else empty."""
    kb = turn.kb
    if not asks_yes_no(turn) or ASLEEP & set(turn.reading.words):
        return ""
    if found and all(s.text.startswith(WITHOUT) for s in found):
        return core.NO
    stated = {leaf for s in found for x in s.states for leaf in below(kb, x)}
    without = {s.id for s in kb.states(character) if s.id.endswith(WITHOUT)}
    asked = states_by_words(turn, character)
    if stated and without and not asked:
        return core.NO if stated <= without else core.YES
    if character == SOUGHT and warm_asked(turn) and all_cold(turn, found):
        return care.HARDLY
    if "or" in turn.reading.words:
        return _one_of(asked, stated)
    if not asked:
        return ""
    if character == FED and not any(states or said_in(w, told) for w, states in asked.items()):
        return care.NOT_SPOKEN_OF
    asked = {w: states for w, states in asked.items() if states or said_in(w, told)}
    if not asked:
        return ""
    met = [bool(states & stated) or said_in(words, told) for words, states in asked.items()]
    if all(met):
        return core.YES
    return care.IN_PART if any(met) else care.NOT_TOLD_SO


def warm_asked(turn: Turn) -> bool:
    """True for a line that speaks of warm water."""
    return bool(WARM & set(turn.reading.words))


def all_cold(turn: Turn, found: Sequence[Statement]) -> bool:
    """True where every kind of water told of a fish is a cold one."""
    stated = [x for s in found for x in s.states]
    return bool(stated) and all(COLD in key(turn.kb.state(x).label).split() for x in stated)


def states_by_words(turn: Turn, character: str) -> dict[str, frozenset[str]]:
    """The words of the line that stand for states of a character, each with the states that they mean, finer ones too.

    A fish named as food stands for the state of eating fish.
    """
    kb = turn.kb
    words = without_fish(turn.reading)
    spelt: dict[str, set[str]] = {}
    for phrase in phrases_of(words):
        for kind, thing, _ in kb.spoken(phrase):
            if kind == "state" and thing.startswith(f"{character}."):
                spelt.setdefault(phrase, set()).update(below(kb, thing))
    longest = {p for p in spelt if not any(p != q and f" {p} " in f" {q} " for q in spelt)}
    out = {p: frozenset(spelt[p]) for p in longest}
    if character == SOUGHT:
        out.update((w, found) for w, found in waters_meant(turn).items() if not any(w in p.split() for p in out))
    if character == FED and not out and (prey(turn.reading) or food_told(turn.reading)):
        fish = {s.id for s in kb.states(character) if prey(turn.reading) and FISH_FOOD in key(s.label).split()}
        out[food_told(turn.reading)] = frozenset(leaf for s in fish for leaf in below(kb, s))
    return out


def _one_of(asked: dict[str, frozenset[str]], stated: set[str]) -> str:
    """Which of the things offered by "or" is told of the fish: its own words, both, or that neither is told."""
    met = [words for words, states in asked.items() if states & stated]
    if len(met) == 1:
        return f"{met[0][:1].upper()}{met[0][1:]}"
    return care.BOTH if len(met) > 1 else ""


def said_in(words: str, told: str) -> bool:
    """True where the words stand in what is told, or begin a word of it ("ducks": "duckling"), and are not denied in
    the same clause ("bears mud less well")."""
    wanted = {singular(w) for w in key(words).split()}
    for clause in told.replace(";", ",").replace("(", ",").split(","):
        found = {singular(w) for w in key(clause).split()}
        if all(any(f == w or (len(w) > SHORT and f.startswith(w)) for f in found) for w in wanted) \
                and not DENYING & found:
            return True
    return False
