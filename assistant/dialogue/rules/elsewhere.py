"""Places that no rules are held for, and limits that the angler quotes: what can still be said (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.own_lengths import LONGEST_FISH
from assistant.dialogue.reader.reading import Measure
from assistant.dialogue.rules import words
from assistant.dialogue.rules.catch_measures import NUMBER_WORDS, count_of, number, plain_numbers
from assistant.dialogue.rules.context import Context, length_of
from assistant.dialogue.subjects import MOST, subjects
from assistant.dialogue.telling import place_name
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import surveys as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning import catch as c
from assistant.reasoning.place_prior import LISTED, narrowest
from assistant.text import join, unique


def elsewhere(turn: Turn, found: Context, unknown: str) -> Answer:
    """No rules are held: name the place, say how to find what holds there, offer naming and handling."""
    kb = turn.kb
    asked = subjects(turn)[:MOST]
    fish = _fish(turn)
    if found.real:
        place, _ = real_places(kb, found.real)
        blocks = [
            Block("lead", say.real_lead(place, fish), claim=False),
            Block("point", how_there(kb, found.real, fish), claim=False),
        ]
    else:
        lead = say.unknown_place(unknown or say.UNKNOWN_PLACE)
        blocks = [Block("lead", lead, claim=False), Block("point", say.real_unknown_how(unknown), claim=False)]
    if turn.held.lengths:
        length = words.fish_length(length_of(turn.held.lengths[-1]))
        blocks.append(Block("point", say.real_length(f"{length} {fish}".strip()), claim=False))
    blocks += [Block("help", say.REAL_HELP, claim=False), Block("rule-note", say.REAL_NOTE, claim=False)]
    return Answer("rules", tuple(blocks), taxa=asked, verdict="unknown")


def real_places(kb: KnowledgeBase, places: Sequence[str]) -> tuple[str, bool]:
    """The places that no rules are held for in words, and whether each has an agency of its own."""
    found = [p for x in narrowest(kb, unique(places))[:2] if (p := kb.place(x)) is not None]
    return join([place_name(p) for p in found]), all(p.kind in LISTED for p in found)


def how_there(kb: KnowledgeBase, places: Sequence[str], fish: str = "") -> str:
    """How to find what holds in some real places: a lake or river has no agency, the states on it have."""
    place, own = real_places(kb, places)
    return say.real_how(place, fish) if own and place else say.real_unknown_how(place)


def quoted(turn: Turn, found: Context) -> tuple[Answer, Held] | None:
    """The fish against a limit that the angler names; None where none is named or rules are held for the place."""
    if found.places:
        return None
    limit, own = _compared(turn)
    if limit is None or own is None or own.low is None:
        return None
    short = own.high is not None and own.high < limit.low
    spanned = limit.high is not None and limit.high > limit.low
    text = (_spanned if spanned else _short if short else _long_enough)(own, limit, _fish(turn))
    short = short and not spanned
    place, _ = real_places(turn.kb, found.real)
    points = (*((say.QUOTED_AGAIN,) if short else ()), say.quoted_check(place))
    blocks = (
        Block("lead", text, claim=False),
        *(Block("point", t, claim=False) for t in points),
        Block("rule-note", say.REAL_NOTE, claim=False),
    )
    held = turn.held
    if not any(m.kind == "length" and m.own for m in turn.reading.measures):
        held = held.after(
            lengths=(Measure("length", own.low, own.high or own.low, own.unit, words.fish_length(own), 0, 0),)
        )
    return Answer("rules", blocks, taxa=subjects(turn)[:MOST], verdict="release" if short else "unknown"), held


def _compared(turn: Turn) -> tuple[c.Length | None, c.Length | None]:
    """The limit named and the length of the fish: measures as read, else bare numbers beside a word for a limit."""
    own = [length_of(m) for m in turn.reading.measures if m.kind == "length" and m.own]
    named = [m for m in turn.reading.measures if m.kind == "length" and not m.own and m.low <= LONGEST_FISH]
    limits = [length_of(m) for m in named]
    text = plain_numbers(turn.reading.text)
    if ASKS_LIMIT.search(text):
        return None, None
    match = LIMIT.search(text)
    if not limits and match is not None:
        limits = [_bare(match["a"] or match["b"], match["unit_a"] or match["unit_b"] or "", own)]
        text = text[: match.start()] + " " + text[match.end() :]
    if limits and not own and (number := OWN.search(text)):
        own = [_bare(number["a"], number["unit_a"] or "", limits)]
    return (limits[-1] if limits else None), (own[0] if own else None)


_FIGURE = r"(?:\d+(?:\.\d+)?(?:(?: and)?[ -]\d+/\d+)?|" + "|".join(sorted(NUMBER_WORDS, key=len, reverse=True)) + ")"
_UNIT = r"(?:\s*(?P<unit_{0}>cm|mm|in(?:ch(?:es)?)?\b|\"))?"
LIMIT = re.compile(
    rf"\b(?:limit|minimum|min|board|sign|rules?|law|book|regs|size) "
    rf"(?:is|of|says?|said|was|reads?|asks? for|calls? for)?\s*"
    rf"(?:at least )?(?P<a>{_FIGURE})\b{_UNIT.format('a')}"
    rf"|\b(?P<b>{_FIGURE}){_UNIT.format('b')}[ -]*(?:inch )?(?:minimum|limit|min)\b",
    re.IGNORECASE,
)
"""A limit that somebody names: "the board says ten", "limit is 10", "a 12 inch minimum"."""
ASKS_LIMIT = re.compile(r"\bwhat(?:'?s| is|s)? (?:the )?(?:legal )?(?:min|minimum|limit|size)\b", re.IGNORECASE)
OWN = re.compile(rf"\b(?P<a>\d+(?:\.\d+)?(?:(?: and)?[ -]\d+/\d+)?){_UNIT.format('a')}", re.IGNORECASE)


def _bare(figure: str, unit: str, others: Sequence[c.Length]) -> c.Length:
    """A number as a length, in the unit said with it or with the other length, else inches."""
    unit = (
        "cm"
        if unit.lower() == "cm"
        else "mm"
        if unit.lower() == "mm"
        else "in"
        if unit
        else others[0].unit
        if others
        else "in"
    )
    counted = count_of(figure)
    return c.measured(number(figure.replace(" and ", " ")) if counted is None else counted, unit)


def _fish(turn: Turn) -> str:
    return join([label(turn.kb, t) for t in subjects(turn)[:2]], "or")


def _short(own: c.Length, limit: c.Length, fish: str) -> str:
    gap = limit.low - (own.high or own.low)
    return say.short_of(words.fish_length(own), words.fish_length(limit), words.gap_words(gap, limit.unit), fish)


def _long_enough(own: c.Length, limit: c.Length, fish: str) -> str:
    return say.meets(words.fish_length(own), words.fish_length(limit), fish)


def _spanned(own: c.Length, limit: c.Length, fish: str) -> str:
    inside = own.low <= (limit.high or limit.low) and (own.high or own.low) >= limit.low
    return (say.within if inside else say.outside)(words.fish_length(own), words.fish_length(limit), fish)
