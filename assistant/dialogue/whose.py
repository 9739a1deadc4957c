"""What is told of the males, the females, the young or the breeding fish of one kind (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.portrait import asked_told, features, plain_worth
from assistant.dialogue.turn import Turn
from assistant.dialogue.whether import point
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import Told, tell, tell_some, told_of
from assistant.reasoning.evidence import Scope
from assistant.text import key

MOST, BESIDE = 8, 3
"""Features told of such fish, and ordinary ones told beside where none sets them apart."""
JUVENILE = "juvenile"
NOTES = ("juvenile-note",)


def whose(turn: Turn) -> Scope:
    """The sex, the age and the season that the line itself speaks of; grown fish are the ordinary ones."""
    reading = turn.reading
    return Scope(reading.sex, JUVENILE if f"stage-{JUVENILE}" in turn.cues else "", reading.breeding)


def who_told(turn: Turn, taxon: str, who: Scope, asked: Sequence[str] = ()) -> list[Block]:
    """What sets such fish apart, best first; for ``asked`` characters what is told of all fish where nothing is told of
    these. Where nothing is told of such fish at all, that is said before a few ordinary features.
    """
    kb, name = turn.kb, say.who_words(speak.fish(turn.kb, taxon), who.sex, who.stage, who.breeding)
    known = asked or [c for c in told_of(kb, (taxon,)) if kb.character(c).use == "identify"]
    found = [(kb.character(c), told) for c in known if (told := tell_some(kb, kb.character(c), taxon, who)
                                                        or _of_breeding(kb, c, taxon, who)) is not None]
    found.sort(key=lambda x: (x[1].inherited_from is not None, -plain_worth(*x), x[0].id))
    notes = [] if asked or who.stage != JUVENILE else _notes(turn, taxon)
    if found:
        first, *rest = [point(turn, c, told) for c, told in found[:MOST]]
        return [Block("lead", say.describe_single(name, first.text), statements=first.statements), *rest, *notes]
    if notes:
        first, *rest = notes
        return [Block("lead", say.describe_single(name, first.text), statements=first.statements), *rest]
    return _ordinary(turn, taxon, name, asked)


def _of_breeding(kb: KnowledgeBase, character: str, taxon: str, who: Scope) -> Told | None:
    """What is told of a feature that only breeding fish have ("colour of a spawning fish"), which needs no scope."""
    found = kb.character(character)
    return tell(kb, found, taxon) if who.breeding and BREEDING & set(key(found.label).split()) else None


BREEDING = frozenset({"spawning", "breeding"})
"""Words of the label of a feature of breeding fish."""


def _ordinary(turn: Turn, taxon: str, name: str, asked: Sequence[str]) -> list[Block]:
    """What is told of the fish in general, behind a word that nothing is told of these."""
    kb = turn.kb
    told = asked_told(kb, taxon, asked) or features(kb, taxon, (), BESIDE)
    points = [point(turn, c, x) for c, x in told[:MOST]]
    ids = tuple(i for p in points for i in p.statements[:1]) or (f"taxon:{taxon}",)
    return [Block("lead", say.nothing_apart(name), statements=ids), *points]


def _notes(turn: Turn, taxon: str) -> list[Block]:
    """Remarks on the young in words, told of the kind or of the parents of a cross."""
    kb = turn.kb
    rows = [s for k in (taxon, *kb.taxon(taxon).parents) for s in kb.statements(k) if s.character in NOTES and s.text]
    return [Block("point", say.capital(speak.statement_words(kb, s, turn.held.units)), statements=(f"st:{s.id}",))
            for s in rows[:BESIDE]]
