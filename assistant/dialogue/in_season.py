"""Where a fish keeps in a season: what of a line asks for it, and that it is not held where it is not (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.aspects import aspects, characters
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.model.records import Practice
from assistant.reasoning.advice import Record
from assistant.text import key, word_set

USES = ("life",)
WATER, FED = "habitat", "diet"
BREEDING = frozenset({"spawning-season", "spawning-ground", "spawning-temperature", "nest-form", "nest-habit"})
SEASONS = word_set("winter winters wintertime summer summertime spring fall autumn cold hot ice day daytime night "
                   "december january february march april june july august september october november")
PLACING = word_set(
    "hide hides where wheres go goes do stay stays hold holds hang live lives move moves depth deep sleep "
    "deeper shallower drop drops dropping head heads slide slides shift shifts school schools suspend suspends winter")
MARKS = {
    **dict.fromkeys(("winter", "wintertime", "winters", "cold", "ice", "december", "january", "february"),
                    ("winter", "ice")),
    **dict.fromkeys(("summer", "summertime", "hot", "june", "july", "august"), ("summer",)),
    **dict.fromkeys(("nest", "nests", "bed", "beds", "nesting", "bedding", "spawn", "spawning"), ("beds", "spawn")),
    "day": ("day",), "daytime": ("day",), "night": ("night",),
    **dict.fromkeys(("spring", "march", "april"), ("spring",)),
    **dict.fromkeys(("fall", "autumn", "september", "october", "november"), ("fall",)),
}
"""Words of a line for seasons and beds with the words by which advice on depth speaks of them."""


def marks_told(turn: Turn) -> frozenset[str]:
    """What the line says of the season, the bed or the hour, in the words of the advice on depth."""
    return frozenset(x for w in turn.reading.words for x in MARKS.get(w, ()))


def asks_of_season(turn: Turn) -> bool:
    """True for "where are they in winter", "where do they go when it gets cold": no question on breeding.

    After an answer on where a fish lives the season alone is enough ("come february?").
    """
    words = set(turn.reading.words)
    return bool(words & SEASONS) and bool(words & PLACING or _goes_on(turn)) and not {*BREEDING, FED} & set(
        characters(turn.kb, turn.reading, USES))


def _goes_on(turn: Turn) -> bool:
    """True for a short line after an answer on where a fish lives."""
    last = turn.held.last
    return (turn.held.intent == WATER and last is not None and len(turn.reading.words) <= MOST_GOING_ON
            and any(f".{WATER}." in s for b in last.blocks[:FIRST] for s in b.statements))


MOST_GOING_ON, FIRST = 5, 3
"""Words of a line that goes on from where a fish lives with no more than a season; blocks of the answer before."""
OF_SEASONS = ("winter", "summer", "spring", "fall")


def season_unheld(turn: Turn, told: Sequence[Block], name: str, many: bool = False) -> list[Block]:
    """That where a fish keeps in the season asked about is not held, where no advice told speaks of it."""
    marks = marks_told(turn)
    season = next((s for s in OF_SEASONS if s in marks), "")
    records = [turn.kb.record_at(i) for b in told for i in b.statements]
    if "depth-of" in aspects(turn.kb, turn.reading) and not told:
        return []
    where = bool(set(turn.reading.words) & PLACING - SEASONS) or _goes_on(turn)
    if not season or not where or not asks_of_season(turn) or any(
            isinstance(r, Practice) and (r.season == season or marks & words_of(r)) for r in records):
        return []
    return [Block("point", care.where_in_season(name, season, many), claim=False)]


def words_of(record: Record) -> set[str]:
    """The words of a piece of advice and those by which it is asked for."""
    return {w for text in (*record.words, record.text) for w in key(text).split()}


def sides_last(turn: Turn) -> list[str]:
    """The sides of life that the last answer told of, where it was about one."""
    assert turn.held.last is not None
    told = [b for b in turn.held.last.blocks if b.claim]
    found = [
        s.split(".")[1]
        for b in told[:1]
        for s in b.statements
        if s.startswith("st:") and s.count(".") > 1
    ]
    return list(dict.fromkeys(c for c in found if turn.kb.find("character", c) is not None))
