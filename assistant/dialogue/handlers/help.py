"""What the assistant can do and how to ask (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.lessons.on_paper import on_paper
from assistant.dialogue.subjects import subjects
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import self as own

CURATING = frozenset({"validation", "validate", "import", "export", "edit", "curate", "report", "check", "csv",
                      "spreadsheet", "download"})
TOPICS = (("self-kept", own.KEPT), ("self-language", own.LANGUAGES), ("self-recall", own.RECALL),
          ("self-units", own.UNITS))
ORDERED = frozenset({"self-record", "order-hard", "order-set"})
"""Cues that make an order one to change the base."""
SALT = frozenset({"saltwater", "salt", "marine", "ocean", "sea"})


def handle(turn: Turn) -> tuple[Answer, Held]:
    """A short way in, with examples to type; counts of the base when asked how much it knows."""
    if topic := _topic(turn):
        return Answer("help", (Block("lead", topic, claim=False),), subjects(turn, carried=False)), turn.held
    if "on-paper" in turn.cues:
        return Answer("help", on_paper(turn), turn.held.taxa), turn.held
    words = set(turn.reading.words)
    first = own.WHAT_TO_TYPE if "self-type" in turn.cues else say.HELP_LEAD
    if "own-english" in turn.cues:
        first = own.PLAIN_ENOUGH
    blocks = [Block("lead", first if words else say.EMPTY, claim=False)]
    after_values = turn.held.intent in ("list", "sources") and "retract" in turn.cues
    if words & CURATING or "curating" in turn.cues or after_values:
        blocks = [Block("lead", say.HELP_CURATE, claim=False)]
    elif "lesson-other" in turn.cues:
        blocks = [Block("lead", say.HELP_LESSON, claim=False)]
    elif words & SALT:
        blocks = [Block("lead", say.HELP_SALT, claim=False)]
    elif "asks-many" in turn.cues:
        blocks.append(Block("point", _counts(turn), claim=False))
    blocks += [Block("help", text, claim=False) for text in say.HELP_POINTS]
    return Answer("help", tuple(blocks), subjects(turn, carried=False)), turn.held


def _topic(turn: Turn) -> str:
    """What is told of the assistant itself, where the line asks for one side of it; empty where it does not."""
    cues = turn.cues
    if "self-change-all" in cues or ("self-order" in cues and cues & ORDERED):
        return say.HELP_CURATE
    if {"self-base", "self-change"} <= cues and "self-error" not in cues:
        return say.HELP_CURATE
    if "self-error" in cues or {"self-base", "self-wrong"} <= cues:
        return own.REPORT
    if cues & {"picture", "self-sending"}:
        return wording.lead_nothing_seen(picture=True)
    return next((text for cue, text in TOPICS if cue in cues), _covered(turn) if "self-covers" in cues else "")


def _covered(turn: Turn) -> str:
    crosses = sum(turn.kb.taxon(t).is_hybrid for t in turn.kb.species)
    return own.covers(len(turn.kb.species) - crosses, crosses)


def _counts(turn: Turn) -> str:
    kb = turn.kb
    crosses = sum(kb.taxon(t).is_hybrid for t in kb.species)
    statements = sum(len(kb.store.get("statement", t) or ()) for t in kb.ids("statement"))
    return say.help_counts(len(kb.species) - crosses, crosses, statements)
