"""The last list counted: by species where it told of statements, else by genus or family (layer 4)."""

from __future__ import annotations

from collections import Counter

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import MEMORY
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import keeping as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.records import Range, Statement
from assistant.text import unique

LIST, TALLY = "list", "tally"
MOST, MOST_ASKED = 24, 40


def tallied(turn: Turn) -> Answer | None:
    """The count asked for; None where the last answer was no list that can be counted."""
    kb, last = turn.kb, turn.held.last
    if TALLY not in turn.cues or turn.held.intent != LIST or last is None or not last.blocks:
        return None
    records = [kb.record_at(s) for b in last.blocks for s in b.statements]
    told = [r for r in records if isinstance(r, Statement)]
    if told and len(told) == len(records) and all(s.basis == MEMORY for s in told):
        return _of_memory(turn)
    listed = unique(r.taxon for s in last.blocks[0].statements if isinstance(r := kb.record_at(s), Range))
    shown = listed or tuple(t for t in last.taxa if (x := kb.find("taxon", t)) is not None and x.is_species)
    words = set(turn.reading.words)
    if len(shown) < 2 or not words & {"family", "families", "genus", "genera"}:
        return _of_statements(turn, told) if told else None
    rank = "genus" if words & {"genus", "genera"} else "family"
    above = Counter(k for t in shown for k in kb.lineage((kb.taxon(t).parents or (t,))[0]) if kb.taxon(k).rank == rank)
    rows = [(kinds_name(kb, k, 2), n) for k, n in above.most_common()]
    first = not listed and len(shown) >= MOST_ASKED
    text = say.tally(len(shown), rank, rows, first)
    lead = Block("lead", text, statements=tuple(f"taxon:{k}" for k in above))
    return Answer("list", (lead,), taxa=last.taxa)


def _of_memory(turn: Turn) -> Answer:
    """How many statements on each of the fishes spoken of rest on memory, and how many in all."""
    kb = turn.kb
    last = turn.held.last
    assert last is not None
    taxa = species_of(kb, last.taxa)[:MOST_ASKED]
    counts = {t: (sum(s.basis == MEMORY for s in kb.statements(t)), len(kb.statements(t))) for t in taxa}
    ranked = sorted((t for t in taxa if counts[t][0]), key=lambda t: (-counts[t][0], t))
    rows = [say.memory_of(label(kb, t), *counts[t]) for t in ranked[:MOST]]
    text = say.memory_tally(rows, sum(n for n, _ in counts.values()), sum(n for _, n in counts.values()))
    ids = tuple(f"st:{s.id}" for t in ranked for s in kb.statements(t) if s.basis == MEMORY)[:MOST]
    return Answer("list", (Block("lead", text, statements=ids),), taxa=last.taxa)


def _of_statements(turn: Turn, told: list[Statement]) -> Answer:
    """How many of the statements told of speak of each fish."""
    last = turn.held.last
    assert last is not None
    found = Counter(s.taxon for s in {s.id: s for s in told}.values())
    rows = [(label(turn.kb, t), n) for t, n in found.most_common(MOST)]
    lead = Block("lead", say.tally_of_statements(sum(found.values()), rows),
                 statements=tuple(f"st:{s.id}" for s in told)[:MOST])
    return Answer("list", (lead,), taxa=last.taxa)
