"""A comparison for a lesson: what ``contrast`` answers where a table or a class is spoken of (layer 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.turn import Turn

if TYPE_CHECKING:
    from assistant.dialogue.beside.comparison import Comparison, Row

CUE, NUMERIC = "lesson-table", "numeric"
ROWS = 8


def wants_table(turn: Turn) -> bool:
    """True where the line asks for a table, or for something for a class, but not for what can be counted."""
    return CUE in turn.cues and NUMERIC not in aspects(turn.kb, turn.reading)


def handle(turn: Turn, meant: tuple[str, ...] = ()) -> tuple[Answer, Held]:
    """The fishes ``meant``, else those of the line, set side by side, feature by feature, in the words asked for."""
    from assistant.dialogue.beside.comparison import MOST, compare
    from assistant.dialogue.lessons.request import request_of
    from assistant.dialogue.wording import lesson as say

    wanted = request_of(turn, "picture")
    taxa = (meant or wanted.taxa)[:MOST]
    if len(taxa) < 2:
        return Answer("contrast", (Block("lead", say.TABLE_NEEDS_TWO, claim=False),), taxa), turn.held
    look = wanted.look if wanted.look in ("picture", "hand", "lab") else "hand"
    found = compare(turn.kb, taxa, look, wanted.level, ROWS)
    blocks = [Block("lead", say.table_lead(found.title, found.level), claim=False),
              *(_line(found, r) for r in found.rows)]
    blocks += [Block("doubt", note, claim=False) for note in (*found.notes[:2], *found.legend())]
    blocks.append(Block("next", say.TABLE_OFFER, claim=False))
    return Answer("contrast", tuple(blocks), taxa), turn.held


def _line(found: Comparison, row: Row) -> Block:
    from assistant.dialogue.wording import lesson as say

    told = say.table_cells(found.names, [c.marked for c in row.cells])
    return Block("point", say.lead(row.feature, told), statements=tuple(s for c in row.cells for s in c.statements))
