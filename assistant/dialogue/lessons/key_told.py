"""What is said of a key beside its steps: why a step is asked, what its words mean, how it is printed (layer 4)."""

from __future__ import annotations

from assistant.dialogue.lessons.key_doubts import kinds_named
from assistant.dialogue.lessons.key_walk import KeyWalk
from assistant.dialogue.lessons.levels import character_words, choice_words, question_words
from assistant.dialogue.lessons.sheet import terms_in
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import Key
from assistant.reasoning.selection import species_below

MOST_IN_COMMAND, MOST_WORDS = 8, 3


def why_asked(kb: KnowledgeBase, walk: KeyWalk) -> str:
    """Why the open step is asked: the fishes to which its two leads go."""
    feature = character_words(kb, walk.couplet.character, walk.level)
    return say.key_why(feature, [kinds_named(kb, lead.taxa) for lead in walk.couplet.leads])


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


def print_command(kb: KnowledgeBase, made: Key, level: str) -> str:
    """The command that writes the key to a page for printing; empty where no short one makes the same key."""
    if all(kb.taxon(t).is_species for t in made.taxa) and len(made.taxa) <= MOST_IN_COMMAND:
        return say.key_command(" ".join(f'"{speak.fish(kb, t)}"' for t in made.taxa), level, made.look)
    wider = [t for t in kb.lineage(made.taxa[0])[1:] if set(species_below(kb, t)) == set(made.taxa)]
    return say.key_command(f'--group "{speak.fish(kb, wider[0])}"', level, made.look) if wider else ""


def ways_to(made: Key) -> dict[str, list[str]]:
    """For each fish of a key the ways to it, each as the choices to be made one after another ("1b 2a")."""
    out: dict[str, list[str]] = {}
    ahead = [(made.couplets[0].number, "")] if made.couplets else []
    while ahead:
        number, way = ahead.pop(0)
        for letter, lead in zip("ab", made.couplet(number).leads, strict=True):
            step = f"{way} {number}{letter}".strip()
            if lead.goes_to:
                ahead.append((lead.goes_to, step))
            else:
                for taxon in lead.taxa:
                    out.setdefault(taxon, []).append(step)
    return out
