"""Names of fishes and of ruled places as the reader of catch sentences asks for them: whole phrases only; the year of a
day told without one (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from datetime import date

from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.reading import Reading
from assistant.dialogue.rules.catch_query import Named, Step
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.catch import UNSAID
from assistant.text import key, singular

Resolve = Callable[[str], tuple[str, ...]]
OWN_NAMES = frozenset({"accepted", "scientific"})


def depth_of(book: Rulebook) -> Callable[[str], int]:
    """How narrow a ruled place is: 0 a jurisdiction, 1 a zone, 2 a water, 3 a part of one."""
    by_place = {p.place: 3 if p.part_of else 2 for p in book.placements.values() if p.place}
    waters = {p.part_of: 2 for p in book.placements.values() if p.part_of}
    zones = {p.zone: 1 for p in book.placements.values() if p.zone}
    depths = {**by_place, **waters, **zones, **{p.jurisdiction: 0 for p in book.placements.values()}}
    return lambda place: depths.get(place, 0)


def resolvers(kb: KnowledgeBase, reading: Reading, book: Rulebook) -> tuple[Resolve, Resolve]:
    """Which taxa and which ruled places a whole phrase means; what the reader of the line mended counts, too.

    A word of a mark told ("a dark stripe") names no fish, nor does an everyday word ("spring") where the reader of the
    line found others and took it for none.
    """
    mentions = reading.of("taxon", "hybrid", "group", "likeness")
    mended = {key(m.words): m.ids for m in mentions if not m.exact and m.kind != "likeness"}
    named = {w for m in mentions for w in key(m.words).split()}
    marks = {w for s in reading.seen for w in key(s.words).split()} - named

    def taxa_of(text: str) -> tuple[str, ...]:
        phrase = key(text)
        if phrase in marks or (named and phrase not in named and "weak-name" in lexicon_of(kb).cues(phrase)):
            return ()
        for tried in dict.fromkeys((phrase, " ".join(singular(w) for w in phrase.split()))):
            if tried and (found := _taxa(kb, tried)):
                return found
        return tuple(t for i in mended.get(phrase, ()) for t in members_of(kb, i))

    spots = {s for p in book.placements.values() for s in (p.place, p.part_of, p.jurisdiction, p.zone) if s}
    misspelt = {key(m.words): m.ids for m in reading.of("place", "water") if not m.exact}

    def places_of(text: str) -> tuple[str, ...]:
        phrase = key(text)
        found = (e[1] for e in lexicon_of(kb).spoken(phrase) if e[0] == "place") if phrase else ()
        return tuple(sorted({p for p in (*found, *misspelt.get(phrase, ())) if p in spots}))

    return taxa_of, places_of


def _taxa(kb: KnowledgeBase, phrase: str) -> tuple[str, ...]:
    entries = lexicon_of(kb).spoken(phrase)
    own = {thing for kind, thing, how in entries if kind == "taxon" and how in OWN_NAMES}
    loose = {thing for kind, thing, _ in entries if kind == "taxon"}
    for kind, thing, _ in entries:
        if kind == "group":
            loose.update(members_of(kb, thing))
    return tuple(sorted(own or loose))


def members_of(kb: KnowledgeBase, thing: str) -> tuple[str, ...]:
    """The members of a group as listed; anything else by itself."""
    group = kb.find("group", thing)
    return tuple(group.members) if group is not None else (thing,)


def named_in(reading: Reading, kb: KnowledgeBase) -> tuple[Named, ...]:
    """The fishes that the line names, with their words."""
    mentions = reading.of("taxon", "hybrid", "group")
    return tuple(Named(m.words, tuple(t for i in m.ids for t in members_of(kb, i))) for m in mentions)


def in_year_held(step: Step, told: str | None, clock: date, book: Rulebook) -> Step:
    """The step on its day as the one gone by instead of the coming one (or the other way about), where it was told
    without a year of a fish with its length or of kept ones, and rules are held at its place for that alone."""
    if step.day is None or (step.length == UNSAID and step.kept is None):
        return step
    if not told or not told.startswith("--") or not step.day.isoformat()[4:].startswith(told[1:]):
        return step
    sets = [s for place in step.places for x in book.positions(place) for s in book.rule_sets_of(x.jurisdiction)]
    for year in (step.day.year, step.day.year + (1 if step.day < clock else -1)):
        with suppress(ValueError):
            day = step.day.replace(year=year)
            if any(s.valid_from <= day.isoformat() <= s.valid_through for s in sets):
                return replace(step, day=day)
    return step


_ON_BAIT = re.compile(
    r",?\s*\b(?:taken|caught|hooked|landed|got|came|took it)?\s*\b(?:on|with) (?:an?|some) (\w+(?: \w+)?)"
    r"(?=\s*(?:[,;.:?!]|$))", re.IGNORECASE)


def without_bait(text: str, taxa_of: Resolve, places_of: Resolve) -> str:
    """The text without what a fish was caught on, unless that is a fish or a place ("taken on a leech")."""
    return _ON_BAIT.sub(lambda m: m[0] if taxa_of(m[1]) or places_of(m[1]) or m[1].lower() in _NO_BAIT else " ", text)


_NO_BAIT = frozenset({"stringer", "boat", "river", "lake", "creek", "friend", "limit", "boat ramp", "trip"})
