"""One turn: the line is read, the intent recognised, its handler called, the conversation carried on (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING, Protocol

from assistant.dialogue.absorb import absorb
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import handler_of
from assistant.dialogue.harmed import first_aid
from assistant.dialogue.pointing import pointed, with_fish
from assistant.dialogue.reader.parts import of_fishes
from assistant.dialogue.reader.reading import LENGTH_DENIED, Mention, Reading
from assistant.dialogue.recogniser.cues import TAPE_ENDS, Cue, find_cues, whole_line
from assistant.dialogue.recogniser.facts import ASKING, Facts, gather
from assistant.dialogue.recogniser.intents import recognise
from assistant.dialogue.recogniser.leaning import lean, leanings, signs
from assistant.dialogue.rules.clipped_names import with_ruled_name
from assistant.dialogue.turn import Turn
from assistant.dialogue.wider import wider
from assistant.dialogue.wording import core as phrases
from assistant.model.knowledge import KnowledgeBase
from assistant.text import key, without_run

if TYPE_CHECKING:
    from assistant.reasoning.tables import Table

REMEMBERED = 8
"""Turns that can be taken back."""


class Base(Protocol):
    """What the engine needs of an open base."""

    @property
    def kb(self) -> KnowledgeBase:
        """The knowledge base."""

    @property
    def table(self) -> Table:
        """The score table, compiled when first asked for."""


_JOINED = re.compile(
    r"[,;&]|\b(?:and|also|plus|then)\b|\bor (?:is|are|do|does|can|how|what|where|when)\b|[?.!]\s*\w", re.I)
"""What a line holds that asks two things; a second intent in any other is only another reading of the same wish."""


_LEAVING = re.compile(
    r"^\W*(?:(?:k|ok|okay|so|well|now|alright|please)\W+)*(?:stop|end|quit|leave|drop|forget|enough of) "
    r"(?:the |this |that )?(?:quiz|key|game)\b(?: please| now| for now| there)?\s*[.,;:!-]+\s*(?=\w)", re.I)
"""Words that end a quiz or a key before something else is said in the same line."""


def respond(base: Base, text: str, held: Held, clock: date) -> tuple[Answer, Held]:
    """The answer to a typed line and the conversation after it; pure but for the score table compiled on demand."""
    from assistant.dialogue.reader.read import read_line

    left = _LEAVING.match(text) if held.walk is not None else None
    if left is not None:
        over, held = respond(base, left.group(), held, clock)
        answer, after = respond(base, text[left.end() :], held, clock)
        return answer._replace(blocks=(*over.blocks[:1], *answer.blocks)), after
    return respond_to(base, read_line(base.kb, text, held, clock), held, clock)


def respond_to(base: Base, reading: Reading, held: Held, clock: date) -> tuple[Answer, Held]:
    """The same from a line that has been read."""
    kb = base.kb
    reading, facts, cues = understand(kb, reading, held)
    intent, other = "", ""
    if fish := pointed(kb, reading, facts, held):
        reading = with_fish(reading, fish, [t for t in fish if kb.find("taxon", t) is None])
        asked_which = held.asked is not None and held.asked.kind == "which"
        intent = held.intent if asked_which and held.intent and "no-ask" in facts.all else ""
        facts = gather(kb, reading, cues, held)
    if not intent and held.intent in IN_UNITS and _only_units(reading):
        intent = "weight" if {"weight", "weight-unit"} & reading.cues else held.intent
    if not intent:
        told = signs(reading, facts)
        found = lean(recognise(facts), leanings(kb, told), told)
        intent, other = found.intent, found.other
    turn = with_catch(Turn(kb, reading, absorb(kb, held, reading), clock, lambda: base.table, intent))
    answer, after = handler_of(intent)(turn)
    if answer.intent not in FIRST_AID_TOLD and (aid := first_aid(turn, answer.taxa)):
        answer = answer._replace(blocks=(*aid, *answer.blocks))
    second = other in phrases.ALSO and other != answer.intent and answer.intent == intent
    inside = answer.intent in LESSONS and other in WITHIN_LESSONS
    if second and not inside and _JOINED.search(reading.text):
        answer = answer._replace(blocks=(*answer.blocks, Block("next", phrases.also(phrases.ALSO[other]), claim=False)))
    answer = answer._replace(wider=wider(kb, reading, answer, held))
    return answer, carry(held, after, answer)


FIRST_AID_TOLD = ("handling", "quiz", "key")
"""Intents that tell of harm themselves, or whose lines are answers."""
LESSONS, WITHIN_LESSONS = ("key", "quiz"), ("names", "list", "contrast", "describe", "term")
"""Intents whose lines name many fishes and parts of fishes, and what these words ask for elsewhere."""
IN_UNITS = ("size", "weight")
"""Intents whose last answer is said again in other units when a line names only these ("kg?")."""


def _only_units(reading: Reading) -> bool:
    return bool({"units-metric", "units-us"} & reading.cues) and not reading.measures and len(reading.words) <= 3


def understand(kb: KnowledgeBase, reading: Reading, held: Held) -> tuple[Reading, Facts, tuple[Cue, ...]]:
    """The reading freed of what is no observation, with the facts and cues that the recogniser table speaks of."""
    reading = observable(kb, with_ruled_name(kb, reading))
    cues = _besides_names(reading, find_cues(kb, reading))
    kept = reading.cues & {LENGTH_DENIED}
    reading = unasked(reading, cues)._replace(cues=kept.union(c.id for c in cues))
    return reading, gather(kb, reading, cues, held), cues


CROSSING, ON_GROUNDS = "hybrid", ("why", "how-sure", "sources")


def _besides_names(reading: Reading, cues: Sequence[Cue]) -> tuple[Cue, ...]:
    """The cues; a "hybrid" in the name of a fish asks for no crossing where something else is asked of that fish."""
    asked = {c.id for c in cues if c.id in ASKING or c.id in ("asks-where", "asks-when")} - {CROSSING, *ON_GROUNDS}
    if not asked:
        return tuple(cues)
    names = [(m.start, m.end) for m in reading.of("taxon", "hybrid", "group")]
    def named(cue: Cue) -> bool:
        return any(a <= cue.start and cue.end <= b and b - a > cue.end - cue.start for a, b in names)

    return tuple(c for c in cues if c.id != CROSSING or not named(c))


IN_THE_FLESH = frozenset({"meat"})
"""Cues of a line whose spots and specks are seen in the meat, which tell of no kind of fish."""
ABOUT_A_CATCH = ("rules", "handling", "size", "weight", "tackle", "habitat", "names", "range")
"""Intents that may come with marks of an unnamed fish ("red on the ear, is it legal"): it is identified first."""


def with_catch(turn: Turn) -> Turn:
    """The turn with the fish identified from its marks, where the line names none and asks something else."""
    if turn.intent not in ABOUT_A_CATCH or turn.reading.of("taxon", "hybrid") or turn.cues & IN_THE_FLESH:
        return turn
    if not any(not s.retract for s in turn.reading.seen):
        return turn
    from assistant.dialogue.handlers.identify import between_these
    from assistant.dialogue.naming import shown
    from assistant.dialogue.observing import evidence_of, observe
    from assistant.reasoning.identify import identify

    held = observe(turn.kb, turn.held, turn.reading)
    found = identify(turn.kb, turn.table, evidence_of(between_these(turn, held)))
    return turn._replace(held=held.after(taxa=tuple(c.taxon for c in shown(found))))


def observable(kb: KnowledgeBase, reading: Reading) -> Reading:
    """The reading with only what can be seen on a fish as observations; other characters become things mentioned.

    What the base says of crosses alone is mentioned only where the line speaks of one.
    """
    seen = tuple(s for s in reading.seen if kb.character(s.observation.character).use == "identify")
    told = tuple(
        Mention("character", (s.observation.character,), s.words, s.start, s.end) for s in reading.seen if s not in seen
    )
    mentions = reading.mentions + told
    if not any(
        kb.find("taxon", i) is not None and kb.taxon(i).is_hybrid for m in reading.of("taxon", "hybrid") for i in m.ids
    ):
        mentions = tuple(m for m in mentions if m.kind != "character" or any(of_fishes(kb, i) for i in m.ids))
    return reading._replace(seen=seen, mentions=mentions)


NO_MARKS = frozenset({"how-deep", "no-mark", "pressure", "ice-safety", "rules-measure"})
"""Cues whose words describe no fish ("a hook deep in its throat" tells of no deep body)."""
BRIEF = ("brief", "each-line")
LOOKING = ("one-look", "know-one")
"""Cues whose words name no mark and no fish ("the one spot to look", "how would i spot one")."""
CHATTING = ("greeting", "bye", "thanks", *BRIEF)


def _how(text: str, at: int) -> bool:
    """True where a stretch begins with "how": what it reaches into is asked, not told ("how long do fish live")."""
    return text[at : at + 4].lower() == "how "


def unasked(reading: Reading, cues: Sequence[Cue]) -> Reading:
    """The reading without observations made of the words of a question ("how long do they get" tells no long body)."""
    words: tuple[str, ...] = (*ASKING, *CHATTING, *LOOKING)
    looking = [(c.start, c.end) for c in cues if c.id in LOOKING]
    ends = TAPE_ENDS if {c.id for c in cues} >= TAPE_ENDS else frozenset()
    asking = [(c.start, c.end) for c in cues if c.id in words and " " in reading.text[c.start : c.end].strip()]
    asks = any(c.id in ASKING for c in cues)
    other = [(c.start, c.end) for c in cues if c.id in NO_MARKS | ends]
    seen = tuple(
        s
        for s in reading.seen
        if not any(a <= s.start and (s.end <= b or (s.start < b and _how(reading.text, a))) for a, b in asking)
        and not any(a < s.end and s.start < b for a, b in other)
        and not (asks and not s.retract and whole_line(reading, s))
    )
    things = tuple(
        m
        for m in reading.mentions
        if m.kind not in ("character", "state") or not any(a <= m.start and m.end <= b for a, b in asking)
    )
    named = [m for m in things if m.kind in ("taxon", "group") and any(a <= m.start and m.end <= b for a, b in looking)]
    things = tuple(m for m in things if m not in named)
    hints = tuple(h for h in reading.hints if h.word not in {m.words for m in named})
    words = reading.words
    for c in cues:
        if c.id in BRIEF:
            words = without_run(words, key(reading.text[c.start : c.end]).split())
    return reading._replace(seen=seen, mentions=things, hints=hints, words=words or reading.words[:1])


def carry(before: Held, after: Held, answer: Answer) -> Held:
    """The conversation after a turn: what was answered and asked, and the turn before for taking it back.

    A step back returns to an earlier conversation as it was then, so that the next one goes a turn further back. A turn
    that was small talk or not understood is no step of its own.
    """
    if answer.intent == "undo" and after is before.before:
        return after.after(asked=answer.asked)
    shown = after.shown
    if len(answer.taxa) > 1 or (answer.taxa and answer.taxa[0] not in shown):
        shown = answer.taxa
    taxa = answer.taxa or after.taxa
    if answer.intent == "undo" and not answer.candidates:
        taxa, shown = after.taxa, after.shown
    idle = answer.intent in ("small-talk", "help", "out-of-scope") and answer.asked is None
    grounds = idle or answer.intent in ("why", "sources") or not any(b.statements for b in answer.blocks)
    return after.after(
        taxa=taxa,
        shown=shown,
        wider=answer.wider if answer.taxa else after.wider,
        intent=after.intent if idle else "rules" if answer.verdict else answer.intent,
        asked=answer.asked,
        last=after.last if grounds and after.last is not None else answer,
        noted=after.noted | {b.text for b in answer.blocks if _said_once(b, answer)},
        before=before.before if idle and before.before is not None else _trimmed(before, REMEMBERED),
    )


NOTED, CARE = ("rule-note", "point", "caution"), "caution"
"""Kinds of blocks of an answer on rules that are not said again, or in short; and of care with a fish being named."""


def _said_once(block: Block, answer: Answer) -> bool:
    ruled = bool(answer.rules or answer.verdict) and block.kind in NOTED
    return ruled or (bool(answer.candidates) and block.kind == CARE)


def _trimmed(held: Held, depth: int) -> Held | None:
    if depth == 0:
        return None
    return held.after(before=_trimmed(held.before, depth - 1) if held.before is not None else None)
