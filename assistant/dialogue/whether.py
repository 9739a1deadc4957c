"""Whether a fish shows a mark: yes, no or how often, and where on it the mark is that was meant (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.aspects import phrases_of
from assistant.dialogue.conversation import Wanted
from assistant.dialogue.portrait import asked_told
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.records import Character
from assistant.model.stems import DROPPED, NEGATORS
from assistant.reasoning.contrast import ADULT, Told, tell, tell_some
from assistant.reasoning.evidence import ANY, Scope, below, distribution
from assistant.reasoning.observed import Observation
from assistant.reasoning.observer import taxon_distribution
from assistant.text import key, singular, unique

FEW = 0.2
"""Share of fish from which a mark is worth telling of."""
WHETHER = ((0.65, say.YES), (0.35, say.OFTEN), (FEW, say.SOMETIMES), (0.06, say.MOSTLY_NOT), (0.02, say.HARDLY))
"""From what share of fish on a question whether they show a mark is answered how; below all of them with no."""
ASKED = frozenset({"asks-do", "asks-can", "have-verb", "lacking", "without", "always"})
OPEN = frozenset({"asks-what", "asks-how", "asks-many", "asks-where"})
OPENING = (("how",), ("what",), ("whats",), ("which",), ("where",))
"""Words that open a question that wants more than yes or no."""
EITHER = frozenset({"or", "y/n"})
PRESENT = ".present"
PARTS_NAMED = 3


def answered(turn: Turn, taxon: str, wanted: Wanted) -> tuple[Block, ...]:
    """The answer to a question that wants yes or no, or to words for a mark that the fish has elsewhere; else none."""
    cues, seen = turn.cues, turn.reading.seen
    opened = bool(cues & OPEN) or turn.reading.words[:1] in OPENING
    asks = bool(cues & ASKED) and not opened and "range" not in cues
    counts = bool(wanted.characters) and all(turn.kb.character(c).kind == "count" for c in wanted.characters)
    if (asks or seen) and not counts and (elsewhere := _elsewhere(turn, taxon)):
        return tuple(elsewhere)
    if not seen:
        block = _again(turn, taxon, wanted)
        return (block,) if block is not None else ()
    bare = all(x.endswith(PRESENT) for s in seen for x in s.observation.states)
    if _either(turn) or opened or (bare and not asks):
        return ()
    if asks or len({turn.kb.character(c).part for c in wanted.characters}) == 1:
        found = next((s for s in seen if s.observation.states), seen[0])
        o = found.observation
        block = _numbered(turn, taxon, o) if not o.states else whether(
            turn, taxon, o.character, o.states, o.seen, wanted.who, key(found.words))
        return (block,) if block is not None else ()
    return ()


def _numbered(turn: Turn, taxon: str, seen: Observation) -> Block | None:
    """Whether a fish has so many of something; with "always" whether it never has another number."""
    found = turn.kb.character(seen.character)
    told = tell(turn.kb, found, taxon)
    if told is None or told.numbers is None or seen.value is None:
        return None
    low, usual_low, usual_high, high = told.numbers
    top = seen.value if seen.value_high is None else seen.value_high
    word = say.YES if usual_low <= top and seen.value <= usual_high else say.NO
    word = say.SOMETIMES if word == say.NO and low <= top and seen.value <= high else word
    if word == say.YES and "always" in turn.cues:
        word = say.ALWAYS_SO if low == high else say.NOT_ALWAYS
    text = say.yes_no(word, speak.fish(turn.kb, taxon), speak.told_clause(turn.kb, told, found, turn.held.units))
    return Block("lead", text, statements=speak.short_ids(told.statements))


def _either(turn: Turn) -> bool:
    """True for a line that offers a choice ("small or big"), not for "or not"."""
    words = turn.reading.words
    return any(w in EITHER and words[i + 1 : i + 2] not in (("not",), ("no",)) for i, w in enumerate(words))


def _again(turn: Turn, taxon: str, wanted: Wanted) -> Block | None:
    """What was asked of the fish before, asked of this one or of how often it holds ("is it always there")."""
    kb = turn.kb
    states: Sequence[str] = wanted.states
    if not states and "always" in turn.cues:
        known = [told.states[:1] for _, told in asked_told(kb, taxon, wanted.characters) if told.states]
        states = [s for s, _ in known[0]] if known else ()
    return whether(turn, taxon, states[0].partition(".")[0], states, True, wanted.who) if states else None


def whether(turn: Turn, taxon: str, character: str, states: Sequence[str], shown: bool, who: Scope = ANY,
            words: str = "") -> Block | None:
    """Whether a fish shows (or lacks) some states, in the words of the share that does, with what is told of it.

    ``words`` are those that the states were read from: a state told of the fish that holds them all is meant as well.
    """
    kb, found = turn.kb, turn.kb.character(character)
    shares = taxon_distribution(kb, taxon, character, ADULT if who == ANY else who)
    some = tell_some(kb, found, taxon, who) if who != ANY else None
    told = some or tell(kb, found, taxon)
    if shares is None or told is None:
        return None
    meant = unique([leaf for s in (*states, *_so_called(turn, told, words)) for leaf in below(kb, s)])
    share = shares.share(meant)
    share = share if shown else 1.0 - share
    word = next((w for least, w in WHETHER if share >= least and not (w == say.YES and told.only and some is None)),
                say.NO)
    if word == say.YES and "always" in turn.cues:
        word = say.ALWAYS_SO if share >= speak.PLAIN else say.NOT_ALWAYS
    if word == say.YES and some is not None and not any(set(below(kb, s)) & set(meant) for s, _ in some.states):
        word = say.NOT_ALWAYS
    name = speak.fish(kb, taxon)
    name = say.who_words(name, who.sex, who.stage, who.breeding) if some is not None else name
    text = say.yes_no(word, name, speak.told_clause(kb, told, found, turn.held.units))
    return Block("lead", text, statements=speak.short_ids(told.statements))


def _so_called(turn: Turn, told: Told, words: str) -> list[str]:
    """The states told of the fish whose words hold all of those asked with ("red spots" of "red and dark spots")."""
    asked = {singular(w) for w in words.split()} - DROPPED
    out, denied = [], bool(NEGATORS & set(words.split()))
    for name, _ in told.states:
        state = turn.kb.state(name)
        own = set(key(f"{state.label} {state.clause}").split())
        if asked and asked <= {singular(w) for w in own} and denied == bool(NEGATORS & own):
            out.append(name)
    return out


def _elsewhere(turn: Turn, taxon: str) -> list[Block]:
    """Where the marks are that words of the line may mean ("a black spot"), if the fish has none on the part they are
    read of or no part is read at all: marks that it has, else parts on which such a mark is told of others."""
    kb = turn.kb
    seen = next((s for s in turn.reading.seen if s.observation.states), None)
    here = seen.observation.character if seen is not None else ""
    if seen is not None:
        found = distribution(kb, taxon, here)
        if found is not None and found.share({x for s in seen.observation.states for x in below(kb, s)}) >= FEW:
            return []
    spoken = {p for p in phrases_of(turn.reading.words) if " " in p and (seen is None or key(seen.words) in p)}
    others = unique(c for k in kb.lineage(taxon) for c in kb.told_of(k) if c != here)
    able = {c: hits for c in others if (hits := {v for s in kb.states(c) for v in s.values} & spoken)}
    told = {c: x for c in able if (x := tell(kb, kb.character(c), taxon)) is not None}
    shown = {c: {v for s, p in x.states if p >= FEW for v in kb.state(s).values} & spoken for c, x in told.items()}
    meant = [c for c in told if shown[c]] or list(told)[:PARTS_NAMED]
    if not meant:
        return []
    lacking = bool(NEGATORS & set(turn.reading.words) or turn.cues & {"lacking", "without"})
    if len(meant) == 1 and (lacking or turn.cues & ASKED):
        states = [s.id for s in kb.states(meant[0]) if set(s.values) & able[meant[0]]]
        if block := whether(turn, taxon, meant[0], states, not lacking):
            return [block]
    points = [point(turn, kb.character(c), told[c]) for c in meant]
    if seen is not None and " " in key(seen.words) and (own := tell(kb, kb.character(here), taxon)) is not None:
        points.append(point(turn, kb.character(here), own))
    words = max((v for c in meant for v in shown[c] or able[c]), key=lambda v: (len(v), v))
    return [Block("lead", say.may_be(words, speak.fish(kb, taxon)), claim=False), *points]


def point(turn: Turn, character: Character, told: Told) -> Block:
    """What is said of a character of a fish, as a line of a list."""
    value = speak.told_words(turn.kb, told, character, turn.held.units)
    return Block("point", say.entry(speak.heading(character), value),
                 statements=speak.short_ids(told.statements))
