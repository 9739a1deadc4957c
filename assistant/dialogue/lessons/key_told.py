"""What is said of a key beside its steps: where counts overlap, why a step is asked, how it is printed (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from assistant.dialogue.answer import Block
from assistant.dialogue.lessons.key_walk import KeyWalk
from assistant.dialogue.lessons.levels import character_words, choice_words, question_words
from assistant.dialogue.lessons.sheet import terms_in
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about
from assistant.reasoning.key import Key
from assistant.reasoning.key_overlaps import Overlap, overlaps, settling, way_to
from assistant.reasoning.selection import species_below
from assistant.text import join

MOST_NAMED, MOST_IN_COMMAND, MOST_WORDS = 5, 8, 3
TOLD_AT_END = 2
"""Overlaps told of at the end of a walk."""


def overlaps_told(kb: KnowledgeBase, walk: KeyWalk) -> dict[int, Block]:
    """By couplet of a printed key, which counts do not part for sure and what settles it."""
    found = groupby(overlaps(kb, walk.key), key=lambda o: o.couplet)
    return {number: _overlap(kb, walk, list(group), number) for number, group in found}


def overlaps_at_end(kb: KnowledgeBase, walk: KeyWalk, lead: int) -> list[Block]:
    """The fishes that a walk by counts may have missed: those that a few counts lead to the same end."""
    way = set(way_to(walk.key, walk.at, lead))
    missed = [o for o in overlaps(kb, walk.key) if (o.couplet, o.lead) in way]
    found = [list(group) for _, group in groupby(missed, key=lambda o: o.couplet)]
    return [_overlap(kb, walk, group) for group in found[-TOLD_AT_END:]]


def _overlap(kb: KnowledgeBase, walk: KeyWalk, found: Sequence[Overlap], step: int = 0) -> Block:
    character = walk.key.couplet(found[0].couplet).character
    feature = character_words(kb, character, walk.level)
    spans = sorted({(o.low, o.high) for o in found})
    told = join([say.count_met(low, high, _named(kb, [o.taxon for o in found if (o.low, o.high) == (low, high)]))
                 for low, high in spans])
    ids = [s for o in found for s in o.statements]
    settles, other = "", settling(kb, walk.key, found)
    if other is not None:
        leads = [say.lead_in(choice_words(kb, lead, walk.level), speak.fishes(kb, lead.taxa, "or"))
                 for lead in other.leads if lead.taxa]
        settles = say.settled_by(character_words(kb, other.character, walk.level), leads)
        ids += [s.id for lead in other.leads for t in lead.taxa for s in about(kb, t, other.character)[0]]
    text = say.key_overlap(step, feature, told, settles) if step else say.key_overlap_end(feature, told, settles)
    return Block("doubt", text, statements=speak.short_ids(ids))


def why_asked(kb: KnowledgeBase, walk: KeyWalk) -> str:
    """Why the open step is asked: the fishes to which its two leads go."""
    feature = character_words(kb, walk.couplet.character, walk.level)
    return say.key_why(feature, [_named(kb, lead.taxa) for lead in walk.couplet.leads])


def step_explained(kb: KnowledgeBase, walk: KeyWalk) -> str:
    """How to look at the open step, and what its words of the body mean."""
    character = kb.character(walk.couplet.character)
    choices = (choice_words(kb, lead, walk.level) for lead in walk.couplet.leads)
    texts = [question_words(kb, character.id, walk.level), *choices]
    words = [say.word_means(term, plain) for term, plain, _ in terms_in(kb, texts, walk.level, MOST_WORDS)]
    return " ".join([character.how, *words]).strip()


def left_told(kb: KnowledgeBase, walk: KeyWalk) -> str:
    """The fishes still in play, by name."""
    return say.key_left(speak.fishes(kb, walk.left, "or"))


def _named(kb: KnowledgeBase, taxa: Sequence[str]) -> str:
    return speak.fishes(kb, taxa) if len(taxa) <= MOST_NAMED else say.so_many_kinds(len(taxa))


def print_command(kb: KnowledgeBase, made: Key, level: str) -> str:
    """The command that writes the key to a page for printing; empty where no short one makes the same key."""
    if all(kb.taxon(t).is_species for t in made.taxa) and len(made.taxa) <= MOST_IN_COMMAND:
        return say.key_command(" ".join(f'"{speak.fish(kb, t)}"' for t in made.taxa), level, made.look)
    wider = [t for t in kb.lineage(made.taxa[0])[1:] if set(species_below(kb, t)) == set(made.taxa)]
    return say.key_command(f'--group "{speak.fish(kb, wider[0])}"', level, made.look) if wider else ""
