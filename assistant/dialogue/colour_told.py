"""Whether a word for a colour names a fish or tells its colour (layer 4).

"Silver with broken stripes": some call the coho so, but no coho shows stripes. Where what else was seen speaks plainly
against the fish of that name, the word is taken for the colour of the whole fish. So are a colour and a kind that some
call one fish by, where several marks tell of it ("little bronze bass, red fins, big mouth").
"""

from __future__ import annotations

from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.reading import Mention, Seen
from assistant.dialogue.turn import Turn
from assistant.dialogue.unlike import unlike
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Hint, Observation
from assistant.text import key

WHOLE = "body-colour"


def told_by_colour(turn: Turn) -> Turn:
    """The turn with a colour in place of a name of that word, where the marks of the line fit no fish so called."""
    turn = _of_kind(turn)
    kb, reading = turn.kb, turn.reading
    first = next((m for m in reading.of("taxon") if m.start == 0), None)
    if first is None or not _tint(kb, first) or not any(unlike(kb, first.ids, s) for s in reading.seen):
        return turn
    mentions = tuple(m for m in reading.mentions if m is not first)
    states = tuple(thing for kind, thing, _ in kb.spoken(first.words)
                   if kind == "state" and thing.partition(".")[0] == WHOLE)
    colour = (Seen(Observation(WHOLE, states), first.words, first.start, first.end),) if states else ()
    return turn.with_reading(reading._replace(mentions=mentions, seen=(*colour, *reading.seen)))


def _of_kind(turn: Turn) -> Turn:
    """The turn with a kind and its colour in place of a name made of the two that is not the accepted one of a fish."""
    kb, reading = turn.kb, turn.reading
    marks = {s.observation.character for s in reading.seen if not s.retract}
    named = reading.of("taxon")
    if len(named) != 1 or len(marks) < MARKS_TOLD or len(named[0].ids) != 1 or turn.cues & ASKED:
        return turn
    words = key(named[0].words).split()
    if len(words) != 2:
        return turn
    colours = [(WHOLE, t) for k, t, _ in kb.spoken(words[0]) if k == "state" and t.partition(".")[0] == WHOLE]
    kind = next((t for k, t, _ in kb.spoken(words[-1]) if k == "group"), "")
    accepted = any(k == "taxon" and how == "accepted" for k, _, how in kb.spoken(" ".join(words)))
    if not colours or not kind or accepted:
        return turn
    told = tuple(Seen(Observation(c, (s,)), named[0].words, named[0].start, named[0].end) for c, s in colours[:1])
    hint = Hint("group", frozenset(kb.members(kind)), word=words[-1])
    return turn.with_reading(reading._replace(
        mentions=tuple(m for m in reading.mentions if m is not named[0]), seen=(*told, *reading.seen),
        hints=(*reading.hints, hint)))


MARKS_TOLD = 2
"""Marks beside a name by which it is no more than a description."""
ASKED = frozenset({"confirm", "called-next", "disputed"})
"""Cues of a line that speaks of the name itself."""


def _tint(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a name that is a single word for a colour."""
    lexicon = lexicon_of(kb)
    return " " not in mention.words and lexicon.head(mention.words) in lexicon.tints
