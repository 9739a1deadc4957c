"""A key with its title and remarks, ready for any face (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.dialogue.lessons.key_doubts import crosses_told, overlaps_told
from assistant.dialogue.lessons.levels import reader_of
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import Key, build_key
from assistant.reasoning.key_paths import expected_steps
from assistant.reasoning.selection import find_place, find_taxon
from assistant.reasoning.splits import recorded
from assistant.text import join

NAMED_IN_TITLE = 4


@dataclass(frozen=True, slots=True)
class LessonKey:
    """A key, its title, the level of its words and remarks for the reader."""

    key: Key
    title: str
    level: str
    notes: tuple[str, ...]


def lesson_key(kb: KnowledgeBase, taxa: Sequence[str], look: str = "hand", level: str = "plain", group: str = "",
               place: str = "") -> LessonKey:
    """The key of some taxa with a title that names them, their group or their place. Raises UsageError."""
    key = build_key(kb, taxa, look, reader=reader_of(level))
    doubts = tuple(b.text for b in overlaps_told(kb, key, level).values())
    return LessonKey(key, title_of(kb, key.taxa, group, place), level, (*doubts, *notes_of(kb, key)))


def title_of(kb: KnowledgeBase, taxa: Sequence[str], group: str, place: str) -> str:
    """The title of a key."""
    where = kb.place(find_place(kb, place)) if place else None
    if group:
        names = speak.fish(kb, find_taxon(kb, group))
    else:
        names = speak.fishes(kb, taxa) if len(taxa) <= NAMED_IN_TITLE else say.so_many(len(taxa))
    return say.key_title(names, where.label if where is not None else "")


def notes_of(kb: KnowledgeBase, key: Key) -> tuple[str, ...]:
    """Remarks on a key: how long it takes, which fishes stand twice, which are not parted."""
    ends: dict[str, int] = {}
    for lead in (lead for c in key.couplets for lead in c.leads if not lead.goes_to):
        for taxon in lead.taxa:
            ends[taxon] = ends.get(taxon, 0) + 1
    if not key.couplets:
        return (say.not_parted(join([speak.fish(kb, t) for t in key.taxa])),)
    out = [say.steps(expected_steps(kb, key))]
    silent = silent_of(kb, key)
    twice = [speak.fish(kb, t) for t in key.taxa if ends.get(t, 0) > 1 and t not in silent]
    if twice:
        out.append(say.twice(join(twice)))
    if silent:
        out.append(say.unrecorded(join([speak.fish(kb, t) for t in key.taxa if t in silent])))
    return (*out, *crosses_told(kb, key))


def silent_of(kb: KnowledgeBase, key: Key) -> frozenset[str]:
    """The fishes that stand on both sides of some couplet because nothing is recorded of them for it."""
    return frozenset(t for c in key.couplets for t in set(c.leads[0].taxa) & set(c.leads[1].taxa)
                     if recorded(kb, t, c.character) is None)
