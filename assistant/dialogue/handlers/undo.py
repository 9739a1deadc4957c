"""Take back the last turn or one observation, correct one, or start over (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.called_so import last_meanings
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import size, weight
from assistant.dialogue.handlers.identify import claimed, guessed, name_it
from assistant.dialogue.lessons.key_walk import KeyWalk
from assistant.dialogue.name_languages import singular_key
from assistant.dialogue.observing import forget, observe
from assistant.dialogue.subjects import subjects
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import speak
from assistant.dialogue.wording.info import name_means
from assistant.dialogue.wording.lesson import KEY_STOPPED, QUIZ_STOPPED
from assistant.dialogue.wording.speak import fish as label
from assistant.model.records import Name
from assistant.reasoning.observed import NAMING
from assistant.text import join


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Start over, take back what the line names, or take back the last turn."""
    if {"start-over", "another-fish"} & turn.cues and not ("correct" in turn.cues and _fish(turn)):
        return _start_over(turn)
    if turn.reading.seen or turn.reading.corrections:
        return _correct(turn)
    if any(m.own for m in turn.reading.measures) and (turn.held.taxa or turn.held.seen):
        return _measured_anew(turn)
    if turn.reading.places and turn.held.seen:
        return _placed_anew(turn)
    if turn.held.intent in ASKED_AGAIN and (turn.reading.places or ("correct" in turn.cues and _fish(turn))):
        return _asked_anew(turn)
    if {"self-drop", "fish-gone"} <= turn.cues and not turn.reading.of("character"):
        return _dropped(turn)
    if "leave-walk" in turn.cues and turn.held.walk is not None:
        return _left_key(turn)
    return _back(turn)


ASKED_AGAIN = ("rules", "size", "weight", "range", "habitat", "tackle", "handling", "describe", "names")
"""Intents that are answered again for the fish, place or measure put right."""


def _fish(turn: Turn) -> tuple[str, ...]:
    return subjects(turn, carried=False)


def _asked_anew(turn: Turn) -> tuple[Answer, Held]:
    """The last question answered for the place, the fish or the measure that was meant."""
    from assistant.dialogue.handlers import handler_of

    told = [*_measures(turn)]
    told += [place_names(turn.kb, turn.reading.places[-1:])] if turn.reading.places else []
    told += [label(turn.kb, t) for t in _fish(turn)[:1]]
    answer, after = handler_of(turn.held.intent)(turn)
    lead = Block("lead", wording.corrected(join(told)), claim=False)
    first, *rest = answer.blocks
    blocks = (lead, first._replace(kind="point") if first.kind == "lead" else first, *rest)
    fish = _fish(turn)
    return answer._replace(intent="undo", blocks=blocks), after.after(taxa=fish, shown=fish) if fish else after


def _start_over(turn: Turn) -> tuple[Answer, Held]:
    held = forget(turn.held)
    lead = Block("lead", wording.STARTED_OVER, claim=False)
    if not any(not s.retract for s in turn.reading.seen):
        meant = subjects(turn, carried=False)
        if not meant:
            return Answer("undo", (lead,)), held
        lead = Block("lead", wording.started_over_with(kinds_name(turn.kb, meant[0], 1)), claim=False)
        return Answer("undo", (lead,), meant), observe(turn.kb, held, turn.reading)
    answer, after = name_it(turn, observe(turn.kb, held, turn.reading), ())
    return answer._replace(intent="undo"), after


def _correct(turn: Turn) -> tuple[Answer, Held]:
    kb, before = turn.kb, turn.held
    held = observe(kb, before, turn.reading)
    held = held.after(skipped=held.skipped - {s.observation.character for s in held.seen})
    gone = [s for s in before.seen if s not in held.seen]
    new = [s for s in held.seen if s not in before.seen]
    told = join([speak.seen_words(kb, s.observation) for s in new or gone])
    lead = Block(
        "lead", wording.corrected(told) if new else wording.left_out(told) if gone else wording.UNDONE, claim=False
    )
    guesses = guessed(turn)
    borne = None if guesses else _borne(turn)
    if borne is not None:
        told_last = before.seen[len(before.before.seen):] if before.before is not None else ()
        held, guesses = held.after(seen=tuple(s for s in held.seen if s not in told_last)), (borne[0],)
    if guesses:
        kept = tuple(h for h in held.hints if h.kind not in NAMING)
        held = held.after(hints=(*kept, *claimed(kb, guesses)))
    if not held.seen and not held.hints:
        return Answer("undo", (lead, Block("next", wording.NOTHING_LEFT, claim=False))), held.after(taxa=(), shown=())
    answer, after = name_it(turn, held, ())
    meant = () if borne is None else (Block("point", name_means(borne[1].text, speak.fish_both(kb, borne[0])),
                                            statements=(f"name:{borne[1].id}", f"taxon:{borne[0]}")),)
    return answer._replace(intent="undo", blocks=(lead, *meant, *answer.blocks)), after


FARTHEST_BACK, LONGEST_NAME, LONG_WORD = 4, 3, 6
"""Turns since a loose name was asked about, words of a name in the line, letters of a first word that names a fish."""


def _borne(turn: Turn) -> tuple[str, Name] | None:
    """Of the fishes that a loose name asked about before may mean, the one that bears the words of the line in a name.

    For "what is a brim / ... / no i meant red belly"; with that name; None where there is not just one.
    """
    kb, held = turn.kb, turn.held
    for _ in range(FARTHEST_BACK):
        if held.intent == "names" or held.before is None:
            break
        held = held.before
    words = turn.reading.words
    told = {"".join(words[i : i + n]) for n in range(1, LONGEST_NAME + 1) for i in range(len(words) - n + 1)}
    found: dict[str, Name] = {}
    for taxon, _ in last_meanings(turn._replace(held=held)):
        for name in kb.names(taxon):
            parts = singular_key(name.text).split()
            first = {parts[0]} if parts and len(parts[0]) >= LONG_WORD else set()
            if name.language.startswith("en") and told & {"".join(parts), *first}:
                found.setdefault(taxon, name)
    return next(iter(found.items())) if len(found) == 1 else None


def _measured_anew(turn: Turn) -> tuple[Answer, Held]:
    """A length or weight put right: a verdict is given again, what was seen is weighed again, else its size is told."""
    if turn.held.intent == "rules":
        return _asked_anew(turn)
    lead = Block("lead", wording.corrected(join(_measures(turn))), claim=False)
    if turn.held.seen:
        answer, after = name_it(turn, turn.held, ())
    else:
        answer, after = (weight if _asked_before(turn.held) == "weight" else size).handle(turn)
    return answer._replace(intent="undo", blocks=(lead, *answer.blocks)), after


def _asked_before(held: Held) -> str:
    """What was asked last, corrections passed over."""
    while held.intent == "undo" and held.before is not None:
        held = held.before
    return held.intent


def _measures(turn: Turn) -> list[str]:
    """The measures of the line as typed, with their unit."""
    text = turn.reading.text
    own = [m for m in turn.reading.measures if m.own]
    return [f"{text[m.start : m.end]} {m.unit}" if m.bare else text[m.start : m.end] for m in own]


def _placed_anew(turn: Turn) -> tuple[Answer, Held]:
    """A place put right ("not Alabama, Georgia"): the one told last holds, and what was seen is weighed again."""
    place = turn.reading.places[-1]
    lead = Block("lead", wording.corrected(place_names(turn.kb, (place,))), claim=False)
    answer, after = name_it(turn, turn.held.after(places=(place,)), ())
    return answer._replace(intent="undo", blocks=(lead, *answer.blocks)), after


def _dropped(turn: Turn) -> tuple[Answer, Held]:
    """The fish that is gone let go with all that was told of it; the talk is open for another."""
    lead = Block("lead", wording.dropped(_told_so_far(turn)), claim=False)
    return Answer("undo", (lead,)), forget(turn.held)


def _left_key(turn: Turn) -> tuple[Answer, Held]:
    """A key that is being walked (or a quiz) put away; the talk is open for another fish."""
    text = KEY_STOPPED if isinstance(turn.held.walk, KeyWalk) else QUIZ_STOPPED
    return Answer("undo", (Block("lead", text, claim=False),)), forget(turn.held).after(walk=None)


def _told_so_far(turn: Turn) -> str:
    """What was told of the fish that the talk is about, else the fishes spoken of."""
    kb, held = turn.kb, turn.held
    seen = join([speak.seen_words(kb, s.observation) for s in held.seen])
    return seen or speak.fishes(kb, held.taxa[:MOST_DROPPED])


MOST_DROPPED = 3


def _back(turn: Turn) -> tuple[Answer, Held]:
    before = turn.held.before
    if before is None:
        return Answer("undo", (Block("lead", wording.NOTHING_TO_UNDO, claim=False),)), turn.held
    what = join([speak.seen_words(turn.kb, s.observation) for s in before.seen]) or speak.fishes(turn.kb, before.taxa)
    text = wording.back_to(what) if what else wording.dropped(_told_so_far(turn))
    asked = before.asked if what or "leave-walk" not in turn.cues else None
    blocks = [Block("lead", text, claim=False)]
    if asked is not None:
        blocks.append(Block("next", asked.question, claim=False))
    return Answer("undo", tuple(blocks), before.taxa, asked=asked), before
