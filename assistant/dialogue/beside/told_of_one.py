"""Marks that are told of one of two fishes alone, for pairs of which few differences are held (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.turn import SHORTER, Turn
from assistant.dialogue.wording import contrast as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import DENIALS, Told, tell
from assistant.text import join

PASSED_OVER = SHORTER | {"no-colour"}
"""Cues of a line that wants little, or nothing of colour."""
FEW, EACH, RARE = 6, 2, 0.34
"""Differences up to which such marks are told, how many of each fish, and the share of its family up to which a
feature of which something is told is a mark of the fish."""


def told_of_one(turn: Turn, taxa: Sequence[str], differences: int) -> list[Block]:
    """What is read of one of two fishes and seldom told of its family, where nothing is held of the other."""
    kb = turn.kb
    if len(taxa) != 2 or differences > FEW or turn.cues & PASSED_OVER or any(kb.taxon(t).is_hybrid for t in taxa):
        return []
    marks = {t: _marks(kb, t, other) for t, other in (taxa, tuple(reversed(taxa)))}
    told = [(speak.fish(kb, t), join([speak.told_words(kb, m, kb.character(c), clause=True) for c, m in found]))
            for t, found in marks.items() if found]
    ids = speak.short_ids(s for found in marks.values() for _, m in found for s in m.statements)
    return [Block("point", say.told_of_one(told), statements=ids)] if told else []


def _marks(kb: KnowledgeBase, own: str, other: str) -> list[tuple[str, Told]]:
    """The rarest marks of a fish of which nothing is held for the other, by how few of its family are told of them."""
    kin = kb.members(kb.lineage(own)[-1])
    found = []
    for c in (kb.character(key) for key in kb.told_of(own)):
        told = tell(kb, c, own) if c.use == "identify" and c.colouring and c.is_stated else None
        if told is None or told.only or told.basis != "read" or tell(kb, c, other) is not None:
            continue
        share = sum(c.id in kb.told_of(k) for k in kin) / len(kin)
        if len(told.states) == 1 and not told.states[0][0].partition(".")[2].startswith(DENIALS) and share <= RARE:
            found.append((share, c.id, told))
    return [(c, told) for _, c, told in sorted(found, key=lambda x: x[:2])[:EACH]]
