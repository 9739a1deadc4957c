"""How what was told gets on paper: copying from the terminal, and the commands that write pages (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import classroom as say
from assistant.dialogue.wording import speak

MOST = 8
"""Fishes that a table takes."""


def on_paper(turn: Turn) -> tuple[Block, ...]:
    """The commands for the fishes spoken of last, else for any."""
    kb, held = turn.kb, turn.held
    shown = held.shown if len(held.shown) > 1 else held.taxa
    fishes = [t for t in shown if (x := kb.find("taxon", t)) is not None and x.is_species]
    few = 1 < len(fishes) <= MOST
    names = " ".join(f'"{speak.fish(kb, t)}"' for t in fishes) if few else say.SOME_FISHES
    commands = (
        (say.sheet_command(names), say.SHEET),
        (say.table_command(names), say.TABLE),
        (say.key_command(names), say.KEY),
        (say.quiz_command(names), say.QUIZ),
    )
    lines = [Block("point", say.by_command(command, what), claim=False) for command, what in commands]
    return (Block("lead", say.ON_PAPER, claim=False), *lines, Block("help", say.OPEN_PAGE, claim=False))
