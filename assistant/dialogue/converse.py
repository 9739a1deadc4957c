"""Whether a mark makes a fish of one kind: "is a white tail tip always a walleye" asks who else shows it (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.answer import Block
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import contrast as say
from assistant.dialogue.wording import speak
from assistant.reasoning.contrast import ADULT
from assistant.reasoning.evidence import below
from assistant.reasoning.observed import Observation
from assistant.reasoning.observer import taxon_distribution
from assistant.text import word_set

MAKING = word_set("always mean means meaning only")
"""Words between a mark and a fish by which it is asked whether the mark makes it that fish."""
BESIDE = word_set("a an the it its is its it's s that this be must sign of to for sure")
"""Words that may stand beside those."""
SHOWN = 4
FEW = 0.2
"""Share of the fish of a kind from which the kind is told to show a mark."""
_WORD = re.compile(r"[^\W_]+")


def converse(turn: Turn, taxon: str) -> tuple[Block, ...]:
    """Which other fishes show the mark that stands before the fish; empty where the line asks something else."""
    reading = turn.reading
    mention = next((m for m in reading.of("taxon", "hybrid") if taxon in m.ids), None)
    seen = next((s for s in reading.seen if s.observation.states), None)
    if mention is None or seen is None or seen.end > mention.start:
        return ()
    between = set(_WORD.findall(reading.text[seen.end : mention.start].lower()))
    if not MAKING & between or between - MAKING - BESIDE:
        return ()
    others = _others(turn, taxon, seen.observation)
    what = speak.seen_words(turn.kb, seen.observation._replace(hedged=False))
    own = _shown(turn, taxon, seen.observation)
    ids = tuple(i for _, _, told in others[:SHOWN] for i in told) or own[1]
    name = speak.fish(turn.kb, taxon)
    text = (say.others_too(speak.fishes(turn.kb, [t for _, t, _ in others[:SHOWN]]), what) if others
            else say.no_other(name, what))
    return (Block("lead", text, statements=speak.short_ids(ids), claim=bool(ids)),)


def _others(turn: Turn, taxon: str, mark: Observation) -> list[tuple[tuple[bool, bool, float], str, tuple[str, ...]]]:
    """The other fishes of the family and the crosses of the fish that show a mark, its look-alikes in front."""
    kb = turn.kb
    near = {x.other for x in kb.look_alikes(taxon)} | set(kb.taken_for(taxon)) | set(kb.crosses_of(taxon))
    family = kb.members(kb.lineage(taxon)[-1])
    out = []
    for other in dict.fromkeys((*near, *family)):
        if other == taxon or kb.find("taxon", other) is None or not kb.taxon(other).is_species:
            continue
        share, ids = _shown(turn, other, mark)
        if share >= FEW and ids:
            out.append(((other not in near, kb.taxon(other).is_hybrid, -share), other, ids))
    return sorted(out)


def _shown(turn: Turn, taxon: str, mark: Observation) -> tuple[float, tuple[str, ...]]:
    """The share of the fish of a kind that show a mark, and the statements behind it."""
    found = taxon_distribution(turn.kb, taxon, mark.character, ADULT)
    if found is None:
        return 0.0, ()
    return found.share({leaf for s in mark.states for leaf in below(turn.kb, s)}), found.statements
