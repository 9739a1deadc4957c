"""Marks asked for without a word for their state: those of a word just explained, of a part only named (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.list_pool import POINTING
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.subjects import groups, named
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import DROPPED
from assistant.reasoning.observed import Observation
from assistant.text import key, unique

PRESENT = "present"


def of_last_term(turn: Turn) -> list[Seen]:
    """ "Who has one?" after a word was explained that is a feature, too: that it is there."""
    kb, last = turn.kb, turn.held.last
    of_some = bool(groups(turn.reading) or named(turn))
    if last is None or turn.held.intent != "term" or (of_some and not POINTING & set(turn.reading.words)):
        return []
    terms = [s.removeprefix("term:") for b in last.blocks[:1] for s in b.statements if s.startswith("term:")]
    return _told_of(turn, terms) or _there(kb, terms) or _so_called(kb, terms)


def _told_of(turn: Turn, terms: Sequence[str]) -> list[Seen]:
    """The state of such a feature that the line names by a word of its own ("an incomplete one")."""
    kb, said = turn.kb, set(turn.reading.words)
    for term in terms:
        own = set(term.split("-"))
        kin = [c.id for c in kb.characters if c.use == "identify" and c.id.startswith(term)]
        for state in (s for c in kin for s in kb.states(c)):
            if said & (set(state.id.partition(".")[2].split("-")) - own - set(DROPPED) - set(POINTING)):
                return [Seen(Observation(state.id.partition(".")[0], (state.id,)), state.label, 0, 0)]
    return []


def _so_called(kb: KnowledgeBase, terms: Sequence[str]) -> list[Seen]:
    """The state that a term is the name of ("subterminal")."""
    names = [key(t.label) for i in terms if (t := kb.find("term", i)) is not None]
    words = unique(w for n in names for w in (n, *n.split()[:1]))
    states = unique(thing for w in words for kind, thing, _ in kb.spoken(w) if kind == "state")
    return [Seen(Observation(s.partition(".")[0], (s,)), kb.state(s).label, 0, 0) for s in states[:1]]


def of_part(turn: Turn) -> list[Seen]:
    """ "Which fish got teeth": that a part or mark is there which is only named."""
    if not turn.cues & {"who-has", "list"}:
        return []
    return _there(turn.kb, [i for m in turn.reading.of("character") for i in m.ids])


def _there(kb: KnowledgeBase, characters: Sequence[str]) -> list[Seen]:
    states = [f"{c}.{PRESENT}" for c in characters if kb.find("character", c) is not None]
    known = [s for s in states if any(x.id == s for x in kb.states(s.partition(".")[0]))]
    return [Seen(Observation(s.partition(".")[0], (s,)), s, 0, 0) for s in known[:1]]
