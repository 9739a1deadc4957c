"""Males beside females of one fish: what the base says of one sex or of breeding fish (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.answer import Block
from assistant.dialogue.recogniser.sex_asked import sex_asked
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.records import Statement
from assistant.reasoning.evidence import about
from assistant.text import join, singular, word_set

BOTH = frozenset({"sex-male", "sex-female"})
SEX_WORDS = word_set("girl boy lady hen buck guy")
_HE_OR_SHE = re.compile(r"\b(?:a|the) he\b.*\b(?:a|the) she\b|\b(?:a|the) she\b.*\b(?:a|the) he\b")
SIZE = "sexual-size-difference"
MOST_KINDS = 2
"""Kinds of a group told of."""


def asks_sexes(turn: Turn) -> bool:
    """True for a line that sets males and females against each other, asks the sex of one fish, or whether its colours
    change."""
    told = SEX_WORDS & {singular(w) for w in turn.reading.words}
    other = len(told) > 1 or (bool(turn.cues & BOTH) and bool(told) and "contrast" in turn.cues)
    pair = _HE_OR_SHE.search(turn.reading.text.lower()) is not None
    return turn.cues >= BOTH or bool(turn.cues & {"sexes", "colour-change"}) or other or pair or sex_asked(turn.reading)


def sexes_told(turn: Turn, taxon: str) -> tuple[Block, ...]:
    """A lead and a line for every feature and sex of which something is held; says so where nothing is."""
    kb = turn.kb
    kinds = (taxon,) if kb.taxon(taxon).is_species else species_of(kb, (taxon,))
    widest = sorted(kinds, key=lambda t: (-len(kb.ranges(t)), t))
    told = [found for t in widest if len(found := _of_one(turn, t)) > 1][:MOST_KINDS]
    if not told:
        return (Block("lead", say.no_sexes(speak.fish(kb, taxon)), claim=False),)
    (first, *points), *others = told
    if sex_asked(turn.reading):
        first = first._replace(text=say.sex_unsettled(first.text))
    return (first, *points, *(b for found in others for b in found), Block("doubt", say.SEXES_DOUBT, claim=False))


def _of_one(turn: Turn, taxon: str) -> tuple[Block, ...]:
    """A lead and what is held of the sexes of one kind; nothing but the lead where nothing is."""
    kb, units = turn.kb, turn.held.units
    told: dict[tuple[str, str], list[Statement]] = {}
    for line in kb.lineage(taxon)[:2]:
        for s in kb.statements(line):
            if (s.sex or s.breeding) and s.states and kb.character(s.character).use == "identify":
                told.setdefault((speak.scope_words(s, units), s.character), []).append(s)
    sizes = [s for s in about(kb, taxon, SIZE)[0] if s.states]
    points = [Block("point", say.sex_point(speak.heading(kb.character(character)), who, _values(turn, found)),
                    statements=speak.short_ids(s.id for s in found)) for (who, character), found in told.items()]
    if sizes:
        points.append(Block("point", say.entry(kb.character(SIZE).label, _values(turn, sizes)),
                            statements=speak.short_ids(s.id for s in sizes)))
    ids = tuple(i for p in points[:2] for i in p.statements)
    return (Block("lead", say.sexes_lead(speak.fish(kb, taxon)), statements=ids), *points)


def _values(turn: Turn, found: list[Statement]) -> str:
    states = dict.fromkeys(x for s in found for x in s.states)
    return join([turn.kb.state(x).label for x in states], "or")
