"""On what the name or the rank of a fish rests: notes on names with their source, else the list followed (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import info, speak
from assistant.dialogue.wording import naming as wording
from assistant.text import key, word_set

SPLITTING = word_set(
    "split splits splitting separate separated separates separating raise raised raises raising elevate elevated "
    "elevating elevation lump lumped lumping synonymy recognize recognized recognizing recognise recognised "
    "recognising rank status renamed renaming revalidated resurrected")
"""Words for what is done to names and ranks."""


def name_grounds(turn: Turn, fish: tuple[str, ...]) -> tuple[Block, ...]:
    """The work that a split or a rank rests on, where the line asks for it; that none is held, with the list that the
    names follow. Empty where the line asks no such thing.
    """
    kb = turn.kb
    if "cited-for" not in turn.cues or not SPLITTING & set(turn.reading.words):
        return ()
    kinds = [t for t in fish if (x := kb.find("taxon", t)) is not None and not x.is_hybrid]
    notes = {c.id for c in kb.characters if c.use == "note" and {"name", "nomenclature"} & set(key(c.label).split())}
    rows = [s for t in kinds for s in kb.statements(t) if s.text and s.character in notes and s.source]
    out: list[Block] = []
    for s in rows:
        cited, basis = speak.short_cite(kb, s.source[0], s.page), wording.BASIS_WORDS.get(s.basis, s.basis)
        told = wording.rests_on(f"{speak.fish(kb, s.taxon)}: {s.text}", cited, basis)
        out.append(Block("point" if out else "lead", say.capital(told), statements=speak.short_ids((s.id,))))
    if not out:
        out.append(Block("lead", wording.NO_SPLIT, claim=False))
    for t in kinds:
        found = kb.taxon(t)
        if told := info.according(found.scientific, found.authorship, found.according_to):
            out.append(Block("point", told, statements=(f"taxon:{t}",)))
    return tuple(out)
