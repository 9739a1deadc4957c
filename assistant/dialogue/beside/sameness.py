"""Whether two names that a line holds mean one fish: yes, no, a cross of the other, or only in places (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.called_so import names_like
from assistant.dialogue.kinship import accepted_of, both_loose, is_a
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import names as names_say
from assistant.dialogue.wording import sameness as say
from assistant.dialogue.wording import speak
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.text import join, key, unique

ASKED_BY = frozenset({"asks-do", "names-weak", "equals", "sameness"})
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
    if len(names) == 3 and (found := _either(kb, told)) is not None:
        return [found]
    if len(names) != 2:
        return []
    (first, one), (second, two) = (next((m, ids) for m, ids in told if key(m.words) == p) for p in names)
    if not turn.cues & ASKED_BY and not len(one) == len(two) == len({*one, *two}) == 1:
        return []
    if len(one) == 1 and len(two) == 1:
        return [_single(kb, first, one[0], second, two[0])]
    if min(len(one), len(two)) > 1:
        one, two = accepted_of(kb, first, one), accepted_of(kb, second, two)
    elif (near := accepted_of(kb, first, one)) == accepted_of(kb, second, two):
        one = two = near
    if len(one) == len(two) == 1:
        return [_single(kb, first, one[0], second, two[0])]
    if min(len(one), len(two)) > 1:
        found = both_loose(kb, first, one, second, two)
        return [found] if found is not None else []
    return _loose(turn, *((first, one, two[0], second) if len(one) > 1 else (second, two, one[0], first)))


def _loose(turn: Turn, loose: Mention, many: Sequence[str], own: str, named: Mention) -> list[Block]:
    """The answer on a loose name and a fish: is the fish of these kinds, and is the name used for it."""
    kb = turn.kb
    rest = [t for t in many if t != own]
    ids = tuple(f"taxon:{t}" for t in (own, *rest)[:4])
    asks_kind = "asks-do" in turn.cues and not turn.cues & {"sameness", "equals"}
    if asks_kind and named.start < loose.start and (found := is_a(kb, own, loose, many)) is not None:
        return [found]
    if own not in many:
        found = is_a(kb, own, loose, many)
        never = Block("point", say.never_same(loose.words, label(kb, own)), statements=ids)
        return [found if found is not None else never]
    say_so = names_say.often_none if "contrast" in turn.cues and "names-weak" not in turn.cues else say.sometimes_same
    return [Block("point", say_so(loose.words, label(kb, own), len(rest)), statements=ids)]


def _either(kb: KnowledgeBase, told: Sequence[tuple[Mention, tuple[str, ...]]]) -> Block | None:
    """The answer where a loose name may stand for each of the two fishes that follow it."""
    (loose, many), *others = told
    if len(many) < 2 or any(len(ids) != 1 or ids[0] not in many for _, ids in others):
        return None
    fishes = [ids[0] for _, ids in others]
    parts = join([names_say.in_region(label(kb, t), "") for t in fishes])
    return Block("point", names_say.either(loose.words, parts), statements=tuple(f"taxon:{t}" for t in fishes))


def _single(kb: KnowledgeBase, first: Mention, one: str, second: Mention, two: str) -> Block:
    """The answer on two names of one fish each."""
    ids = (f"taxon:{one}", f"taxon:{two}")
    if one == two:
        return Block("point", say.same_fish(first.words, second.words, speak.fish_both(kb, one)), statements=ids[:1])
    for cross, parent in ((one, two), (two, one)):
        if parent in kb.taxon(cross).parents:
            parents = speak.fishes(kb, kb.taxon(cross).parents)
            return Block("point", say.cross_not_parent(label(kb, cross), parents), statements=ids)
    for fish, loose in ((one, second), (two, first)):
        if others := _others_called(kb, fish, loose):
            text = say.of_kind_so(label(kb, fish), loose.words, speak.fishes(kb, others))
            return Block("point", text, statements=tuple(f"taxon:{t}" for t in (fish, *others)))
    return Block("point", say.two_fishes(speak.fish_both(kb, one), speak.fish_both(kb, two)), statements=ids)


def _others_called(kb: KnowledgeBase, fish: str, loose: Mention) -> tuple[str, ...]:
    """The others of a group that the words name as a whole, where the fish is one of it ("bowfin")."""
    groups = [thing for kind, thing, how in kb.spoken(key(loose.words)) if kind == "group" and how == "label"]
    pool = species_of(kb, tuple(groups))
    return tuple(t for t in pool if t != fish)[:OTHERS] if fish in pool else ()


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


def kind_only(turn: Turn, same: Sequence[Block]) -> bool:
    """True for "is a walleye a pike", which one line on its family answers."""
    taxa = [turn.kb.taxon(s.removeprefix("taxon:")) for b in same for s in b.statements if s.startswith("taxon:")]
    return len(same) == 1 and "asks-do" in turn.cues and any(t.rank == "family" for t in taxa)


def bearing_too(kb: KnowledgeBase, fish: str, mentions: Sequence[Mention], meanings: Sequence[Sequence[str]]) -> str:
    """Of the other fishes that bear the loose name of the line and look like ``fish``, the one most met."""
    near = {*(x.other for x in kb.look_alikes(fish)), *kb.taken_for(fish)}
    loose = {t: len(kb.ranges(t)) * sum(len(n.regions) for n in names_like(kb, t, m.words)[:1])
             for m, ids in zip(mentions, meanings, strict=True) if fish in ids for t in ids if t in near}
    return min(loose, key=lambda t: (-loose[t], t), default="")
