"""Marks that the fishes of a comparison share, which people look at in vain (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.beside import contrast_wants as wants
from assistant.dialogue.portrait import lacks
from assistant.dialogue.turn import SHORTER, Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ContrastRow

ALIKE = 4
"""Shared marks told."""


def marks_in_common(turn: Turn, shared: tuple[ContrastRow, ...]) -> list[Block]:
    """Marks that both have, which people look at in vain; only those that somebody states of one of the very fishes."""
    kb = turn.kb
    if turn.cues & SHORTER:
        return []
    rows = [
        r
        for r in shared
        if any(t and not t.inherited_from for t in r.told) and kb.character(r.character).look in ("glance", "hand")
    ]
    rows.sort(key=lambda r: (_lacking(r), _common(kb, r), r.character))
    rows = [r for r in rows if not _lacking(r)][:ALIKE] or rows[:1]
    if not rows:
        return []
    told = "; ".join(
        say.with_bracket(
            kb.character(r.character).label, speak.told_words(kb, r.told[0], kb.character(r.character), turn.held.units)
        )
        for r in rows
        if r.told[0]
    )
    return (
        [Block("point", say.alike(told), statements=speak.short_ids(s for r in rows for s in wants.row_ids(r)))]
        if told
        else []
    )


def _common(kb: KnowledgeBase, row: ContrastRow) -> float:
    """How ordinary a character is: statements in the whole base for each one made of these very fishes."""
    own = sum(len(t.statements) for t in row.told if t and not t.inherited_from)
    used = (kb.store.get("gist", row.character) or [1])[0]
    return float(used) / max(own, 1)


def _lacking(row: ContrastRow) -> bool:
    first = row.told[0]
    return first is not None and lacks(first)
