"""Which of the fishes named belong to a group, which are unwanted newcomers, and how many are held (layer 4)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.subjects import groups, species_of, subjects
from assistant.dialogue.telling import place_names, plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import lists
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about, below
from assistant.reasoning.living import status_in
from assistant.reasoning.place_prior import expand_places
from assistant.text import key

WARNED, UNWANTED = "legal-caution", "legal-caution.unwanted"
"""Warnings of law, and those among them that are given of a fish for the harm it does where it is brought."""
BROUGHT = ("introduced", "stocked")
MOST_TAXA, MOST_OTHERS = 40, 24


def counts(kb: KnowledgeBase) -> Answer:
    """How many kinds, crosses and statements the base holds."""
    crosses = sum(kb.taxon(t).is_hybrid for t in kb.species)
    statements = sum(len(kb.statements(t)) for t in kb.ids("statement"))
    ranges = sum(len(kb.ranges(t)) for t in kb.ids("range"))
    return plain("list", lists.counts_held(len(kb.species) - crosses, crosses, statements, ranges))


def membership(turn: Turn) -> Answer | None:
    """Which of the fishes named belong to a group ("which of these is a char: brook, brown, rainbow, lake")."""
    kb = turn.kb
    wider = groups(turn.reading)
    own = tuple(dict.fromkeys(i for m in turn.reading.of("taxon", "hybrid") for i in m.ids))
    if wider and len(own) < 2 and "which-of" in turn.cues:
        own = _by_first_words(turn, wider[0].ids[0])
    if len(own) < 2 or not wider or not any(kb.taxon(t).is_species for t in own):
        return None
    members = set(species_of(kb, (wider[0].ids[0],)))
    inside = [t for t in own if t in members]
    outside = [t for t in own if t not in members]
    if not inside:
        return None
    name = kinds_name(kb, wider[0].ids[0], 2)
    blocks = [
        Block(
            "lead",
            lists.member_yes(say.names_with([label(kb, t) for t in inside]), name),
            statements=tuple(f"taxon:{t}" for t in inside),
        )
    ]
    if outside:
        text = lists.member_no(say.names_with([label(kb, t) for t in outside]))
        blocks.append(Block("point", text, statements=tuple(f"taxon:{t}" for t in outside)))
    return Answer("list", tuple(blocks), taxa=tuple(inside))


def _by_first_words(turn: Turn, group: str) -> tuple[str, ...]:
    """Fishes of the same family told by the first words of their names ("brook, brown, rainbow, lake")."""
    kb = turn.kb
    families = {f for t in species_of(kb, (group,)) for f in kb.lineage(t) if kb.taxon(f).rank == "family"}
    names = {t: key(label(kb, t)).split() for t in species_of(kb, tuple(sorted(families)))}
    hits = [t for t, words in names.items() if len(words) == 2 and words[0] in turn.reading.words]
    last = Counter(names[t][1] for t in hits).most_common(1)
    return tuple(t for t in hits if names[t][1] == last[0][0])


def invasive(turn: Turn, every: Sequence[str]) -> Answer:
    """Fishes that come with a warning of law; in a place those brought there, and then the other introduced ones."""
    kb = turn.kb
    pool = species_of(kb, subjects(turn, carried=False)) or tuple(every)
    wanted = expand_places(kb, turn.held.places)
    found: list[tuple[str, tuple[str, ...]]] = []
    others: list[tuple[str, tuple[str, ...]]] = []
    unwanted = set(below(kb, UNWANTED))
    for t in pool:
        warnings = [s for s in about(kb, t, WARNED)[0] if unwanted & set(s.states)]
        row = status_in(kb, t, wanted) if wanted else None
        ids = tuple(f"st:{s.id}" for s in warnings)
        if wanted and row is not None and row.status in BROUGHT:
            (found if warnings else others).append((t, (*ids, f"range:{row.id}")))
        elif warnings and not wanted:
            found.append((t, ids))
    where = lists.in_place(place_names(kb, turn.held.places)) if wanted else ""
    blocks = [Block("lead", lists.no_newcomers(where), claim=False)]
    if found:
        names = say.names_with([label(kb, t) for t, _ in found])
        lead = lists.invasive_lead(len(found), names, where)
        blocks = [Block("lead", lead, statements=tuple(i for _, ids in found for i in ids))]
    if others:
        shown = sorted(others, key=lambda x: (-len(kb.ranges(x[0])), x[0]))[:MOST_OTHERS]
        names = say.names_with([label(kb, t) for t, _ in shown])
        text = lists.also_brought(say.counted(names, len(others) - len(shown)))
        blocks.append(Block("point", text, statements=tuple(i for _, ids in shown for i in ids)))
    blocks.append(Block("caution", lists.INVASIVE_NOTE, claim=False))
    return Answer("list", tuple(blocks), taxa=tuple(t for t, _ in (*found, *others))[:MOST_TAXA])
