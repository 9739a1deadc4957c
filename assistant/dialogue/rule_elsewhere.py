"""Places that no rules are held for, and limits that the angler quotes: what can still be said (layer 4)."""

from __future__ import annotations

from assistant.dialogue import phrases_rules as say
from assistant.dialogue import rule_words as words
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.reading import Measure
from assistant.dialogue.rule_context import Context, length_of
from assistant.dialogue.subjects import MOST, label, subjects
from assistant.dialogue.turn import Turn
from assistant.text import join


def elsewhere(turn: Turn, found: Context, unknown: str) -> Answer:
    """No rules are held: name the place, say how to find what holds there, offer naming and handling."""
    kb = turn.kb
    asked = subjects(turn)[:MOST]
    fish = join([label(kb, t) for t in asked[:2]], "or")
    place = join([words.place_words(kb, p) for p in found.real[:2]]) or unknown
    if found.real:
        blocks = [Block("lead", say.real_lead(place, fish), claim=False), Block("point", say.real_how(place, fish), claim=False)]
    else:
        lead = say.unknown_place(unknown or say.UNKNOWN_PLACE)
        blocks = [Block("lead", lead, claim=False), Block("point", say.real_unknown_how(unknown), claim=False)]
    if turn.held.lengths:
        length = words.fish_length(length_of(turn.held.lengths[-1]))
        blocks.append(Block("point", say.real_length(f"{length} {fish}".strip()), claim=False))
    blocks += [Block("help", say.REAL_HELP, claim=False), Block("rule-note", say.REAL_NOTE, claim=False)]
    return Answer("rules", tuple(blocks), taxa=asked, verdict="unknown")


def quoted(turn: Turn, found: Context) -> Answer | None:
    """The fish against a limit that the angler names; None where none is named or rules are held for the place."""
    if found.places:
        return None
    limit = next((m for m in reversed(turn.reading.measures) if m.kind == "length" and not m.own), None)
    own = next((m for m in turn.reading.measures if m.kind == "length" and m.own), None)
    if limit is None or own is None:
        return None
    short = own.high < limit.low
    asked = subjects(turn)[:MOST]
    text = _short(own, limit) if short else say.meets(_said(own), _said(limit))
    blocks = (Block("lead", text, claim=False), Block("point", say.QUOTED_AGAIN if short else say.QUOTED_CHECK, claim=False),
              *((Block("point", say.QUOTED_CHECK, claim=False),) if short else ()),
              Block("rule-note", say.REAL_NOTE, claim=False))
    return Answer("rules", blocks, taxa=asked, verdict="release" if short else "unknown")


def _said(measure: Measure) -> str:
    return words.fish_length(length_of(measure))


def _short(own: Measure, limit: Measure) -> str:
    gap = limit.low - own.high
    unit = "cm" if limit.unit in ("cm", "mm", "m") else "in"
    return say.short_of(_said(own), _said(limit), words.gap_words(gap, unit))
