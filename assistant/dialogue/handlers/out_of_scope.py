"""What the assistant cannot know or do: a short friendly line and a way on (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.rules.unlawful import unlawful_means
from assistant.dialogue.subjects import subjects
from assistant.dialogue.telling import advice
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import classroom, info
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import self as own
from assistant.dialogue.wording.speak import fish as label

LONGEST_ECHO, MOST_WORDS = 40, 6
COUNTED, OF_NOW = frozenset({"abundance", "asks-many"}), frozenset({"this-moment", "now-bite", "now-report"})
"""Cues of a line that asks how many there are, and of one on what bites now."""
LONG, LONGEST_WORD = 3, 20
ASKS_A_WORD = frozenset({"what-is", "what-is-a", "term"})
FISHING = frozenset({"moon", "forecast", "odds", "now-bite", "now-report", "this-moment", "secret-spot", "pinned"})
"""Cues of a line that asks what will be caught, when, or at which spot."""
POINTING = frozenset({"they", "them", "it", "any", "those", "these", "one", "some"})
"""Words for the fish spoken of before in a line on what will bite."""
OF_THE_FISH = frozenset({"price"})
"""Cues of a line that asks something of the fish spoken of."""
OF_A_CLASS = (("lesson-standard", classroom.NO_STANDARDS), ("grade-work", classroom.NO_GRADING))
"""What a teacher may ask for that is not held or done here, by its cue."""
BEYOND = (
    ("secret-spot", own.NO_SPOTS),
    ("pinned", own.NO_SPOTS),
    ("other-game", own.OTHER_GAME),
    ("stocking-when", own.STOCKING),
    ("both-eyes", own.FLATFISH),
    ("go-online", own.NO_NET),
    ("world-act", own.NO_ERRANDS),
    ("written-work", own.NO_WRITING),
    ("same-one", own.SAME_ONE),
    ("caught-before", own.SAME_ONE),
    ("moon", own.MOON),
    ("forecast", own.FORECAST),
    ("odds", own.FORECAST),
    ("now-report", own.NOW_BITE),
    ("now-bite", own.NOW_BITE),
    ("is-biting", own.NOW_BITE),
    ("now-water", own.NOW_WATER),
    ("price", own.PRICE),
    ("this-moment", own.NOW_BITE),
)
"""What no statement can answer, or talk cannot do, by the cue that tells of it."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Say that it is outside, never echoing more than a plain short name."""
    if turn.cues & {"picture", "self-sending"} and not turn.cues & {"meddling", "medical", "hostile"}:
        lead = Block("lead", wording.lead_nothing_seen(picture=True), claim=False)
        return Answer("out-of-scope", (lead,), subjects(turn, carried=False)), turn.held
    if (means := unlawful_means(turn.kb, turn.reading, turn.cues)) is not None:
        return Answer("out-of-scope", (advice("caution", means, "lead"),), subjects(turn, carried=False)), turn.held
    if asked := next((text for cue, text in OF_A_CLASS if cue in turn.cues), ""):
        told = (Block("lead", asked, claim=False), Block("help", classroom.FOR_A_LESSON, claim=False))
        return Answer("out-of-scope", told, subjects(turn, carried=False)), turn.held
    blocks = [Block("lead", _text(turn), claim=False)]
    pointing = turn.cues & FISHING and POINTING & set(turn.reading.words)
    carried = bool(turn.cues & (OF_THE_FISH | COUNTED) or pointing)
    known = subjects(turn, carried=carried)
    if known and turn.cues & FISHING:
        blocks.append(Block("help", own.known_fishing(label(turn.kb, known[0])), claim=False))
    elif known:
        blocks.append(Block("help", say.known_fish(label(turn.kb, known[0])), claim=False))
    elif not turn.cues & {"meddling", "medical"} and blocks[0].text not in (say.NOT_UNDERSTOOD, say.PET):
        blocks.append(Block("help", say.OUTSIDE_WAY_ON, claim=False))
    return Answer("out-of-scope", tuple(blocks), known), turn.held


def _text(turn: Turn) -> str:
    cues, reading = turn.cues, turn.reading
    if "meddling" in cues:
        return say.MEDDLING
    if "medical" in cues:
        return say.MEDICAL
    if {"pet", "ill"} <= cues:
        return say.PET
    counted = bool(cues & COUNTED) and "far-off" not in cues
    if (told := next((text for cue, text in BEYOND if cue in cues and not (counted and cue in OF_NOW)), "")):
        return told
    if counted:
        return say.ABUNDANCE
    if reading.outside and (echo := safe_echo(reading.outside[0])):
        return say.outside_fish(echo)
    if "hostile" in cues:
        return say.HOSTILE
    if {"record", "records"} & set(reading.words) and (reading.of("taxon", "likeness") or turn.held.taxa):
        return info.RECORD
    if "creature" in cues or cues >= {"wild-animal", "steals"}:
        return own.NO_FISH
    if cues & ASKS_A_WORD and "elsewhere" not in cues and (word := _strange_word(turn)):
        return own.strange_word(word)
    if not reading.words or reading.noise or not cues & {"elsewhere", "far-off", "kitchen", "motor", "good-name"}:
        return say.NOT_UNDERSTOOD
    return say.OUTSIDE


def _strange_word(turn: Turn) -> str:
    """The last word of a short line where the base does not hold it, as it may be said again."""
    lexicon, words = lexicon_of(turn.kb), turn.reading.words
    word = words[-1] if 1 < len(words) <= MOST_WORDS else ""
    strange = LONG < len(word) <= LONGEST_WORD and not (lexicon.known(word) or lexicon.cues(word))
    return safe_echo(word) if strange else ""


def safe_echo(words: str) -> str:
    """Plain letters of a short name that was typed; empty when nothing harmless is left."""
    kept = "".join(c for c in words if c.isalpha() or c in " -").strip()
    return " ".join(kept.split())[:LONGEST_ECHO]
