"""What the assistant can do and how to ask (layer 4)."""

from __future__ import annotations

from assistant.dialogue import phrases as say
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.subjects import subjects
from assistant.dialogue.turn import Turn

CURATING = frozenset({"validation", "validate", "import", "export", "edit", "curate", "report", "check", "csv",
                      "spreadsheet", "download"})
SALT = frozenset({"saltwater", "salt", "marine", "ocean", "sea"})


def handle(turn: Turn) -> tuple[Answer, Held]:
    """A short way in, with examples to type; counts of the base when asked how much it knows."""
    words = set(turn.reading.words)
    blocks = [Block("lead", say.HELP_LEAD if words else say.EMPTY, claim=False)]
    if words & CURATING or "curating" in turn.cues:
        blocks = [Block("lead", say.HELP_CURATE, claim=False)]
    elif "lesson-other" in turn.cues:
        blocks = [Block("lead", say.HELP_LESSON, claim=False)]
    elif words & SALT:
        blocks = [Block("lead", say.HELP_SALT, claim=False)]
    elif "asks-many" in turn.cues:
        blocks.append(Block("point", _counts(turn), claim=False))
    blocks += [Block("help", text, claim=False) for text in say.HELP_POINTS]
    return Answer("help", tuple(blocks), subjects(turn, carried=False)), turn.held


def _counts(turn: Turn) -> str:
    kb = turn.kb
    crosses = sum(kb.taxon(t).is_hybrid for t in kb.species)
    statements = sum(len(kb.store.get("statement", t) or ()) for t in kb.ids("statement"))
    return say.help_counts(len(kb.species) - crosses, crosses, statements)
