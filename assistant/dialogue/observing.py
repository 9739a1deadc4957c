"""What has been seen of the fish in hand, carried from turn to turn: added, replaced, taken back (layer 4)."""

from __future__ import annotations

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure, Reading, Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import Scope, below
from assistant.reasoning.observed import NAMING, Evidence, Hint, Observation


def observe(kb: KnowledgeBase, held: Held, reading: Reading, afresh: bool = False) -> Held:
    """The conversation with the observations and hints of a line taken in; ``afresh`` forgets the earlier ones first.

    A new observation of a character stands in place of an older one, unless the line says "too" or "also".
    """
    seen = () if afresh else held.seen
    hints = () if afresh else held.hints
    added: list[Seen] = []
    for new in reading.seen:
        if new.retract:
            seen = tuple(s for s in seen if not _taken_back(kb, s.observation, new.observation))
            added = [s for s in added if not _taken_back(kb, s.observation, new.observation)]
        else:
            added.append(_answer(held, new))
    characters = {s.observation.character for s in added if s.observation.seen}
    adding = "adding" in reading.cues or "cue-adding" in reading.cues
    kept = seen if adding else tuple(s for s in seen if not _replaced(kb, s.observation, characters, added))
    return held.after(
        seen=kept + tuple(a for a in added if a.observation not in {k.observation for k in kept}),
        hints=_hints(hints, (*_of_the_name(held, reading), *reading.hints)),
    )


MOST_CALLED = 10
"""A name that means more fishes than this tells nothing of a catch."""


def _of_the_name(held: Held, reading: Reading) -> tuple[Hint, ...]:
    """The fishes that go by the name asked about in the turn before ("this one has 6 anal spines")."""
    asked = held.intent == "names" and not held.seen and 1 < len(held.shown) <= MOST_CALLED
    if not asked or not reading.seen or reading.of("taxon", "hybrid", "group", "likeness"):
        return ()
    return (Hint("either", frozenset(held.shown)),)


def _answer(held: Held, new: Seen) -> Seen:
    """What is told of the character just asked for, marked as an answer."""
    if held.asked is None or held.asked.kind != "character" or held.asked.character != new.observation.character:
        return new
    return new._replace(observation=new.observation._replace(asked=True))


def other_state(held: Held, reading: Reading) -> bool:
    """True for a line that tells another state of a feature told before ("which have one barbel / and four?")."""
    own = {s.observation.character for s in reading.seen if not s.retract}
    return bool(own) and own <= {s.observation.character for s in held.seen}


def _hints(old: tuple[Hint, ...], new: tuple[Hint, ...]) -> tuple[Hint, ...]:
    fresh = tuple(h for h in new if all((h.kind, h.taxa, h.seen) != (o.kind, o.taxa, o.seen) for o in old))
    kinds = {h.kind for h in fresh if h.kind == "group" and h.seen}
    kept = tuple(o for o in old if not (o.kind in kinds and o.seen and not _agree(o, fresh)))
    return kept + fresh


def _agree(old: Hint, fresh: tuple[Hint, ...]) -> bool:
    return any(old.taxa & h.taxa for h in fresh if h.kind == old.kind)


def _taken_back(kb: KnowledgeBase, old: Observation, taken: Observation) -> bool:
    if old.character != taken.character:
        return False
    if not taken.states or not old.states:
        return True
    told = {leaf for s in taken.states for leaf in below(kb, s)}
    return bool(told & {leaf for s in old.states for leaf in below(kb, s)})


def _replaced(kb: KnowledgeBase, old: Observation, characters: set[str], added: list[Seen]) -> bool:
    """A new positive observation of a character replaces the older one; an older denial stays if it agrees."""
    if old.character not in characters:
        return (
            any(s.observation.character == old.character and _taken_back(kb, old, s.observation) for s in added)
            and old.seen
        )
    if old.seen:
        return True
    return any(_taken_back(kb, old, s.observation) for s in added if s.observation.seen)


def evidence_of(held: Held, extra: tuple[Hint, ...] = ()) -> Evidence:
    """The evidence that the conversation holds, for ``reasoning.identify``."""
    length = span_of(held.lengths)
    scope = Scope(
        sex=held.sex,
        stage=held.stage,
        breeding=held.breeding,
        place=held.places[0] if held.places else "",
        length=None if length is None else length[1],
    )
    return Evidence(
        tuple(s.observation for s in held.seen),
        held.hints + extra,
        held.places,
        length,
        held.size_word,
        scope,
        ruled_out(held.hints + extra),
        volunteered=True,
        grams=None if (mass := span_of(held.weights)) is None else mass[1],
    )


def ruled_out(hints: tuple[Hint, ...]) -> frozenset[str]:
    """The fishes that the asker has outright said it is not, and has not offered again since."""
    out: set[str] = set()
    for hint in hints:
        if hint.seen and hint.kind in NAMING:
            out -= hint.taxa
        elif not hint.seen and not hint.hedged and len(hint.taxa) == 1:
            out |= hint.taxa
    return frozenset(out)


def span_of(measures: tuple[Measure, ...]) -> tuple[float, float] | None:
    """The last own measure as a span of floats."""
    own = [m for m in measures if m.own]
    return (float(own[-1].low), float(own[-1].high)) if own else None


def forget(held: Held) -> Held:
    """A conversation about a new fish: place, water, date and units stay."""
    return Held(
        places=held.places, water=held.water, date=held.date, season=held.season, units=held.units,
        units_wished=held.units_wished, before=held.before
    )
