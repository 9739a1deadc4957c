"""What was read out of a line of text, before anybody decides what is meant (layer 4)."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

from assistant.reasoning.observed import Hint, Observation


class Mention(NamedTuple):
    """A thing of the base named in the text; several ``ids`` when the words mean several things.

    ``kind``: taxon, hybrid, group, place, water, term, character, likeness (a fish named only to compare).
    """

    kind: str
    ids: tuple[str, ...]
    words: str
    start: int
    end: int
    exact: bool = True
    ambiguous: bool = False


class Seen(NamedTuple):
    """An observation with the words it was read from; ``retract`` when it is taken back rather than made."""

    observation: Observation
    words: str
    start: int
    end: int
    retract: bool = False


LENGTH_DENIED = "length-denied"
"""The sign, among the cues of a reading, that it puts right the length told before ("27 not 17")."""


class Measure(NamedTuple):
    """A typed measure: ``kind`` length, girth, weight or temperature, ``low`` and ``high`` in mm, g or degrees C.

    ``about`` for rounded or guessed values; ``method`` total, fork, standard or empty; ``own`` False when it is a
    rule ("the board says ten") or a part of the fish and not the length of the catch.
    """

    kind: str
    low: Decimal
    high: Decimal
    unit: str
    words: str
    start: int
    end: int
    about: bool = False
    method: str = ""
    own: bool = True
    bare: bool = False


class Reading(NamedTuple):
    """One line of typed text, read. Words are folded; offsets count in ``text``, which is the cleaned line.

    ``answer`` is what the line answers to a question asked back: yes, no, unsure, skip, either, first ... fourth,
    last, the id of the choice picked, or the words of an observation about the character asked for. ``seen`` holds
    what is taken back too (``retract``); ``corrections`` are the characters put right. ``outside`` are
    fishes that the base lacks, ``unknown_place`` a water or place that it lacks. ``cues`` are the cue families found,
    without "cue-".
    """

    text: str
    words: tuple[str, ...]
    mentions: tuple[Mention, ...] = ()
    seen: tuple[Seen, ...] = ()
    hints: tuple[Hint, ...] = ()
    measures: tuple[Measure, ...] = ()
    counts: tuple[int, ...] = ()
    places: tuple[str, ...] = ()
    water: str | None = None
    unknown_place: str = ""
    date: str | None = None
    season: str = ""
    sex: str = ""
    stage: str = ""
    breeding: str = ""
    size_word: str = ""
    answer: str = ""
    cues: frozenset[str] = frozenset()
    outside: tuple[str, ...] = ()
    question: bool = False
    noise: bool = False
    corrections: tuple[str, ...] = ()

    def of(self, *kinds: str) -> tuple[Mention, ...]:
        """The mentions of some kinds, in the order of the text."""
        return tuple(m for m in self.mentions if m.kind in kinds)

    def taxa(self) -> tuple[str, ...]:
        """Ids of the taxa, crosses and groups named outright (not merely compared with), each once, in order."""
        out: dict[str, None] = {}
        for m in self.of("taxon", "hybrid"):
            if len(m.ids) == 1:
                out.setdefault(m.ids[0])
        return tuple(out)
