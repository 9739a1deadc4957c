"""Fishes put in and taken out of a set made before: "leave out the crappie", "swap the redear for a flier"."""

from __future__ import annotations

import re

from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lesson as say
from assistant.text import key, singular

DROP, ADD = "drop", "add"
"""The plainest words for taking out and for putting in."""


def _taken_out(text: str) -> list[tuple[int, str]]:
    """The words of taking that a word of away belongs to ("take the white one out"), as if they said "drop"."""
    told = [(m.start(), m.group()) for m in re.finditer(r"[a-z]+", text)]
    away = [at for at, w in told if w in say.AWAY_WORDS]
    return [(at, DROP) for at, w in told if w in say.TAKE_WORDS and any(at < x for x in away)]


def _put_in(text: str) -> list[tuple[int, str]]:
    """The words of throwing that a word of in belongs to ("toss a flier in there too"), as if they said "add"."""
    told = [(m.start(), m.group()) for m in re.finditer(r"[a-z]+", text)]
    within = [at for at, w in told if w in say.IN_WORDS]
    return [(at, ADD) for at, w in told if w in say.THROW_WORDS and any(at < x for x in within)]


def puts_in(text: str) -> bool:
    """True for a line by which a fish comes beside those of a set ("add a flier", "throw a flier in there")."""
    return bool(say.ADD_WORDS & set(re.findall(r"[a-z]+", text.lower()))) or bool(_put_in(text.lower()))


def takes_out(text: str) -> bool:
    """True for a line with a word of taking out or of trading that is none of putting in."""
    words = _moving(text.lower())
    return any(w in say.DROP_WORDS | say.SWAP_WORDS for _, w in words)


def _moving(text: str) -> list[tuple[int, str]]:
    """The words of putting in, taking out and trading with where they stand."""
    put, out = _put_in(text), _taken_out(text)
    at_put = {at for at, _ in put}
    told = [(m.start(), w) for m in re.finditer(r"[a-z]+", text)
            if (w := m.group()) in say.DROP_WORDS | say.ADD_WORDS | say.SWAP_WORDS and m.start() not in at_put]
    return sorted([*told, *put, *(x for x in out if x[0] not in at_put)])


def _named_in_or_out(turn: Turn) -> list[tuple[int, str]]:
    """Fishes with no more than "in" or "out" said of them ("black crappie in, perch out"), as by "add" and "drop"."""
    text = turn.reading.text.lower()
    found = []
    for m in turn.reading.of("taxon", "hybrid", "group"):
        before, after = _BEFORE.search(text[: m.start]), _IN_OR_OUT.match(text[m.end :])
        with_it = _WITH_IT.search(text[: m.start])
        if (before and after) or with_it:
            word = with_it[1] if with_it else after[1] if after else ""
            found.append((m.start, DROP if word in say.AWAY_WORDS else ADD))
    return found


_BEFORE = re.compile(r"(?:^|[,;.!:]|\b(?:and|but|so|ok|now|then))\s*(?:the |a |an )?$")
_IN_OR_OUT = re.compile(r"\s+(in|out)(?: (?:please|instead|now|too|then|for (?:it|them|that)))*\s*"
                        r"(?:$|[,;.!?]|and\b|but\b)")
_WITH_IT = re.compile(r"\b(in|out) with (?:the |a |an )?$")


def _moves(turn: Turn) -> list[tuple[int, str]]:
    """Every word of a line by which fishes come and go, and where it stands."""
    return sorted([*_moving(turn.reading.text.lower()), *_named_in_or_out(turn)])


def changes_set(turn: Turn) -> bool:
    """True for a line with a word of putting in or taking out."""
    return bool(_moves(turn))


def moved(turn: Turn, named: tuple[str, ...]) -> tuple[frozenset[str], tuple[str, ...]]:
    """The fishes to be taken out of a set and those to be put in: each by the word that stands before it."""
    words = _moves(turn)
    swaps = any(w in say.SWAP_WORDS for _, w in words)
    out: set[str] = set()
    into: list[str] = []
    told = _ORDINAL.search(turn.reading.text.lower())
    if told is not None and turn.held.taxa and not (swaps and len(named) > 1):
        at = -1 if told[1] == "last" else min(_PLACES[told[1]], len(turn.held.taxa) - 1)
        out.add(turn.held.taxa[at])
    for mention in sorted(turn.reading.of("taxon", "hybrid", "group"), key=lambda m: m.start):
        if out and _OF_THE_SET.search(turn.reading.text[: mention.start].lower()):
            continue
        before = [w for at, w in words if at <= mention.start]
        meant = {*mention.ids, *species_of(turn.kb, mention.ids)}
        if (swaps and not out) or (not swaps and before and before[-1] in say.DROP_WORDS):
            out |= _borne(turn, mention, meant)
        elif swaps or before:
            into += [t for t in named if t in meant]
    return frozenset(out), tuple(t for t in into if t not in out)


def by_place(text: str) -> bool:
    """True for a line that tells a fish of the set by its place in it."""
    return _ORDINAL.search(text.lower()) is not None


def _borne(turn: Turn, mention: Mention, meant: set[str]) -> set[str]:
    """The fishes that a name takes out of a set: of those that a loose one may mean, the ones that bear it."""
    word = singular(key(mention.words).split()[-1]) if len(mention.ids) > 1 and key(mention.words) else ""
    kinds = [t for t in meant if (x := turn.kb.find("taxon", t)) is not None and x.is_species]
    borne = {t for t in kinds if word in {singular(w) for w in key(turn.kb.taxon(t).label).split()}}
    return borne or meant


_PLACES = {"first": 0, "second": 1, "third": 2}
_ORDINAL = re.compile(r"\b(last|first|second|third) (?:one|fish)\b")
"""A fish of the set told by its place in it ("swap the last one for a rock bass")."""
_OF_THE_SET = re.compile(
    r"\b(?:(?:from|of)(?: (?:the|this|that|my|our|your))?|(?:in|on) (?:the|this|that|my|our|your)) $")
"""What stands before the name of the set itself ("drop the flier from the sunfish key")."""


def put_in_last(turn: Turn) -> tuple[str, ...]:
    """The one fish that the turn before put into a set ("swap the crappie for a rock bass", "tell it from ...")."""
    held, before = turn.held, turn.held.before
    if before is None or held.intent != before.intent or len(held.taxa) < 2:
        return ()
    new = tuple(t for t in held.taxa if t not in before.taxa)
    return new if len(new) == 1 and len(before.taxa) > 1 else ()
