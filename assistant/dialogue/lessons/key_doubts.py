"""Where a key does not part its fishes for sure: counts and marks met on the other side, crosses (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from assistant.dialogue.answer import Block
from assistant.dialogue.lessons.levels import character_words, choice_words
from assistant.dialogue.wording import lesson, speak
from assistant.dialogue.wording import overlaps as say
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about
from assistant.reasoning.key import Key
from assistant.reasoning.key_overlaps import Overlap, overlaps, settling, way_to
from assistant.text import join

MOST_NAMED = 5
TOLD_AT_END = 2
"""Overlaps told of at the end of a walk."""


def overlaps_told(kb: KnowledgeBase, key: Key, level: str) -> dict[int, Block]:
    """By couplet of a printed key, which counts and marks do not part for sure and what settles it."""
    found = groupby(overlaps(kb, key), key=lambda o: o.couplet)
    return {number: _overlap(kb, key, level, list(group), number) for number, group in found}


def overlaps_at_end(kb: KnowledgeBase, key: Key, level: str, at: int, lead: int) -> list[Block]:
    """The fishes that a walk to a lead of the couplet ``at`` may have missed."""
    way = set(way_to(key, at, lead))
    missed = [o for o in overlaps(kb, key) if (o.couplet, o.lead) in way]
    found = [list(group) for _, group in groupby(missed, key=lambda o: o.couplet)]
    return [_overlap(kb, key, level, group) for group in found[-TOLD_AT_END:]]


def _overlap(kb: KnowledgeBase, key: Key, level: str, found: Sequence[Overlap], step: int = 0) -> Block:
    couplet = key.couplet(found[0].couplet)
    feature = character_words(kb, couplet.character, level)
    told = join([*_counts(kb, found), *_marks(kb, key, level, found)])
    ids = [s for o in found for s in o.statements]
    settles, other = "", settling(kb, key, found)
    if other is not None:
        leads = [say.lead_in(choice_words(kb, lead, level), speak.fishes(kb, lead.taxa, "or"))
                 for lead in other.leads if lead.taxa]
        settles = say.settled_by(character_words(kb, other.character, level), leads)
        ids += [s.id for lead in other.leads for t in lead.taxa for s in about(kb, t, other.character)[0]]
    counts = found[0].low is not None
    text = (say.key_overlap(step, feature, told, settles, counts) if step
            else say.key_overlap_end(feature, told, settles, counts))
    return Block("doubt", text, statements=speak.short_ids(ids))


def _counts(kb: KnowledgeBase, found: Sequence[Overlap]) -> list[str]:
    spans = sorted({(o.low, o.high) for o in found if o.low is not None and o.high is not None})
    return [say.count_met(low, high, kinds_named(kb, [o.taxon for o in found if (o.low, o.high) == (low, high)]))
            for low, high in spans]


def _marks(kb: KnowledgeBase, key: Key, level: str, found: Sequence[Overlap]) -> list[str]:
    """The states of leads that fishes led elsewhere often show, with how often."""
    marks: dict[tuple[int, str], list[Overlap]] = {}
    for o in found:
        if o.low is None:
            marks.setdefault((o.lead, speak.word_of(kb, o.share, 2)), []).append(o)
    couplet = key.couplet(found[0].couplet)
    return [say.state_met(choice_words(kb, couplet.leads[lead], level), often, kinds_named(kb, [o.taxon for o in some]))
            for (lead, often), some in marks.items()]


def crosses_told(kb: KnowledgeBase, key: Key) -> tuple[str, ...]:
    """That a key proves no hybrid, where one is among its fishes."""
    crosses = [t for t in key.taxa if kb.taxon(t).is_hybrid]
    return (say.crosses_in_key(join([speak.fish(kb, t) for t in crosses])),) if crosses else ()


def kinds_named(kb: KnowledgeBase, taxa: Sequence[str]) -> str:
    """Some fishes by name, or how many they are."""
    return speak.fishes(kb, taxa) if len(taxa) <= MOST_NAMED else lesson.so_many_kinds(len(taxa))
