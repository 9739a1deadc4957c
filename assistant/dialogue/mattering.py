"""Why a feature is looked at: the look-alikes that it tells apart (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ContrastRow, contrast_row
from assistant.text import word_set

MATTERING = word_set("matter matters important importance bother care check checking count counting look looking "
                     "useful worry significant significance measure measuring")
"""Words by which a line asks what a feature is good for."""
TELLING, SHOWN, LOOKED_AT = 0.5, 3, 4
"""From which separation a feature tells two fishes apart, pairs told, and features of a line looked at."""


def matters(turn: Turn, asked: tuple[str, ...]) -> Answer | None:
    """Which look-alikes the feature of the line tells apart; None where it asks no such thing or tells none apart."""
    if not MATTERING & set(turn.reading.words):
        return None
    seen = tuple(s.observation.character for s in turn.reading.seen)
    for character in dict.fromkeys((*seen, *asked[:LOOKED_AT])):
        if rows := _parted(turn.kb, character):
            return _told(turn, character, rows)
    return None


def _parted(kb: KnowledgeBase, character: str) -> list[ContrastRow]:
    """The pairs of look-alikes that a feature tells apart, near kin and the widest spread first, each fish once."""
    found: dict[frozenset[str], ContrastRow] = {}
    for taxon in kb.species:
        for other in (x.other for x in kb.look_alikes(taxon)):
            pair = frozenset((taxon, other))
            if pair in found or kb.find("taxon", other) is None or not kb.taxon(other).is_species:
                continue
            row = contrast_row(kb, kb.character(character), (taxon, other))
            if row is not None and row.separation >= TELLING and all(t is not None and t.statements for t in row.told):
                found[pair] = row
    def order(item: tuple[frozenset[str], ContrastRow]) -> tuple[int, int, list[str]]:
        return _apart(kb, item[0]), -min(len(kb.ranges(t)) for t in item[0]), sorted(item[0])

    ranked = sorted(found.items(), key=order)
    used: set[str] = set()
    out: list[ContrastRow] = []
    for pair, row in ranked:
        if not used & pair:
            out.append(row)
            used |= pair
    return out[:SHOWN]


def _apart(kb: KnowledgeBase, pair: frozenset[str]) -> int:
    """0 for two fishes of a genus, 1 of a family, 2 of two families."""
    one, two = (kb.lineage(t) for t in sorted(pair))
    return 0 if one[1:2] == two[1:2] else 1 if one[-1] == two[-1] else 2


def _told(turn: Turn, character: str, rows: list[ContrastRow]) -> Answer:
    kb, units = turn.kb, turn.held.units
    found = kb.character(character)
    blocks = [Block("lead", wording.matters(speak.heading(found)), claim=False)]
    for row in rows:
        sides = [(speak.fish(kb, t.taxon), speak.told_words(kb, t, found, units)) for t in row.told if t]
        text = "; ".join(say.each(name, words) for name, words in sides)
        ids = speak.short_ids(s for t in row.told if t for s in t.statements)
        blocks.append(Block("point", say.capital(text), statements=ids))
    return Answer("why", tuple(blocks), tuple(t.taxon for row in rows for t in row.told if t))
