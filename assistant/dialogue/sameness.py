"""Whether two names that a line holds mean one fish: yes, no, a cross of the other, or only in places (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue import phrases_sameness as say
from assistant.dialogue import speak
from assistant.dialogue.answer import Block
from assistant.dialogue.reading import Mention
from assistant.dialogue.speak import fish as label
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.text import join, key, unique

ASKED_BY = frozenset({"asks-do", "names-weak", "equals"})
"""Cues of a line that may ask whether two names mean one fish."""
OTHERS = 4
"""Fishes of a group that are named beside the one asked about."""


def sameness(turn: Turn, mentions: Sequence[Mention], meanings: Sequence[Sequence[str]]) -> list[Block]:
    """The yes or no on the first two names that are not written alike; nothing where the line holds no two.

    ``meanings`` are the species that each mention may mean. Two plain names of different fishes, of which neither is
    a cross of the other, are answered with the names alone; what tells them apart is added by whoever calls.
    """
    kb = turn.kb
    told = [(m, tuple(ids)) for m, ids in zip(mentions, meanings, strict=True) if m.words and ids]
    if len({key(m.words) for m, _ in told if m.exact}) > 1:
        told = [(m, ids) for m, ids in told if m.exact]
    names = unique(key(m.words) for m, _ in told)
    shared = set.intersection(*(set(ids) for _, ids in told)) if told else set()
    if len(names) > 2 and len(shared) == 1:
        fish = shared.pop()
        text = say.same_fish_all(join([f'"{p}"' for p in names]), speak.fish_both(kb, fish))
        return [Block("point", text, statements=(f"taxon:{fish}",))]
    if len(names) != 2:
        return []
    (first, one), (second, two) = (next((m, ids) for m, ids in told if key(m.words) == p) for p in names)
    if not turn.cues & ASKED_BY and not len(one) == len(two) == len({*one, *two}) == 1:
        return []
    if len(one) == 1 and len(two) == 1:
        return [_single(kb, first, one[0], second, two[0])]
    loose, many, own = (first, one, two) if len(one) > 1 else (second, two, one)
    if len(own) != 1:
        return []
    ids = tuple(f"taxon:{t}" for t in (*own, *(t for t in many if t not in own))[:4])
    rest = [t for t in many if t != own[0]]
    text = (say.sometimes_same(loose.words, label(kb, own[0]), len(rest)) if own[0] in many
            else say.never_same(loose.words, label(kb, own[0])))
    return [Block("point", text, statements=ids)]


def _single(kb: KnowledgeBase, first: Mention, one: str, second: Mention, two: str) -> Block:
    """The answer on two names of one fish each."""
    ids = (f"taxon:{one}", f"taxon:{two}")
    if one == two:
        return Block("point", say.same_fish(first.words, second.words, speak.fish_both(kb, one)), statements=ids[:1])
    for cross, parent in ((one, two), (two, one)):
        if parent in kb.taxon(cross).parents:
            parents = speak.fishes(kb, kb.taxon(cross).parents)
            return Block("point", say.cross_not_parent(label(kb, cross), parents), statements=ids)
    return Block("point", say.two_fishes(speak.fish_both(kb, one), speak.fish_both(kb, two)), statements=ids)


def of_group(turn: Turn) -> list[Block]:
    """For "are bluegill and sunfish the same": that the fish is one of the group; nothing where it is not, or where the
    line does not ask for sameness."""
    kb, own = turn.kb, turn.reading.taxa()
    wide = turn.reading.of("group")
    asks = "equals" in turn.cues or turn.cues >= {"names-weak", "asks-do"}
    if not asks or len(own) != 1 or len(wide) != 1:
        return []
    pool = [t for t in species_of(kb, wide[0].ids) if not kb.taxon(t).is_hybrid]
    if own[0] not in pool or len(pool) < 2:
        return []
    others = sorted((t for t in pool if t != own[0]), key=lambda t: (-len(kb.ranges(t)), t))[:OTHERS]
    text = say.one_of_group(label(kb, own[0]), wide[0].words, speak.fishes(kb, others))
    return [Block("lead", text, statements=tuple(f"taxon:{t}" for t in (own[0], *others)))]
