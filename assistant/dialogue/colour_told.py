"""Whether a word for a colour at the head of a line names a fish or tells its colour (layer 4).

"Silver with broken stripes": some call the coho so, but no coho shows stripes. Where what else was seen speaks plainly
against the fish of that name, the word is taken for the colour of the whole fish.
"""

from __future__ import annotations

from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.reading import Mention, Seen
from assistant.dialogue.turn import Turn
from assistant.dialogue.unlike import unlike
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Observation

WHOLE = "body-colour"


def told_by_colour(turn: Turn) -> Turn:
    """The turn with a colour in place of a name of that word, where the marks of the line fit no fish so called."""
    kb, reading = turn.kb, turn.reading
    first = next((m for m in reading.of("taxon") if m.start == 0), None)
    if first is None or not _tint(kb, first) or not any(unlike(kb, first.ids, s) for s in reading.seen):
        return turn
    mentions = tuple(m for m in reading.mentions if m is not first)
    states = tuple(thing for kind, thing, _ in kb.spoken(first.words)
                   if kind == "state" and thing.partition(".")[0] == WHOLE)
    colour = (Seen(Observation(WHOLE, states), first.words, first.start, first.end),) if states else ()
    return turn.with_reading(reading._replace(mentions=mentions, seen=(*colour, *reading.seen)))


def _tint(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a name that is a single word for a colour."""
    lexicon = lexicon_of(kb)
    return " " not in mention.words and lexicon.head(mention.words) in lexicon.tints
