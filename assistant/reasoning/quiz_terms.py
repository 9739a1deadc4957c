"""Quiz items on words of the body instead of fishes: what a word means, and where on a fish to look (layer 3)."""

from __future__ import annotations

import random
from collections.abc import Collection, Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.reasoning.quiz import CHOICES, LEAST, Fact, Item, Quiz
from assistant.text import key, singular

KINDS = ("term", "term-where")
ALL = frozenset({"glance", "hand", "count", "dead"})


def body_words(kb: KnowledgeBase, about: Sequence[str] = (), looks: Collection[str] = ALL) -> tuple[Term, ...]:
    """The words of the glossary for parts and marks that the features of fishes speak of; only those ``about`` some.

    ``about`` are words such as "fin" or "scale"; a term named by it goes before one that is explained by it.
    ``looks`` limits the features where no such word is given.
    """
    texts = " ".join(f" {c.label} {c.trade} " for c in kb.characters if c.use == "identify" and c.look in looks).lower()
    terms = [t for t in kb.all("term") if t.where and any(f" {w.lower()} " in texts for w in (t.label, *t.words))]
    if not about:
        return tuple(sorted(terms, key=lambda t: t.id))
    named = [t for t in kb.all("term") if t.where and set(about) & _words(t.label, *t.words)]
    told = [t for t in kb.all("term") if t.where and t not in named and set(about) & _words(t.plain, t.where)]
    return (*sorted(named, key=lambda t: (t not in terms, t.id)), *sorted(told, key=lambda t: (t not in terms, t.id)))


def most_spoken_of(kb: KnowledgeBase, terms: Sequence[Term]) -> tuple[Term, ...]:
    """Words in the order of how many features of fishes speak of them; none that only begins the name of another."""
    texts = [f" {key(c.label)} {key(c.question)} " for c in kb.characters if c.use == "identify"]
    often = {t.id: sum(any(f" {key(w)} " in text for w in (t.label, *t.words)) for text in texts) for t in terms}
    whole = [t for t in terms if not any(f" {key(t.label)} " in f" {key(o.label)}" for o in terms if o.id != t.id)]
    return tuple(sorted(whole, key=lambda t: (-often[t.id], t.id)))


def _words(*texts: str) -> set[str]:
    return {singular(w) for text in texts for w in key(text).split()}


def build_words_quiz(kb: KnowledgeBase, terms: Sequence[Term], count: int, seed: int,
                     looks: Collection[str] = ALL) -> Quiz:
    """A quiz of up to ``count`` items on some words, each asked once; wrong choices from words seen at some looks.

    Where the words are very few, others are asked after them.
    """
    rng = random.Random(seed)
    pool = list(dict.fromkeys((*terms, *body_words(kb, (), looks))))
    asked = _shuffled(rng, terms)
    if len(asked) < LEAST:
        asked += _shuffled(rng, [t for t in pool if t not in terms])
    items: list[Item] = []
    for term in asked:
        kind = KINDS[len(items) % len(KINDS)]
        kind = KINDS[0] if _words(term.label, *term.words) & _words(term.where) else kind
        wrong = [t.id for t in _shuffled(rng, pool) if _apart(term, t)]
        wrong = _unlike(kb, wrong)[: CHOICES - 1]
        if len(items) >= count or len(wrong) < CHOICES - 1:
            continue
        choices = [term.id, *wrong]
        rng.shuffle(choices)
        fact = Fact("", "", term.id, (), "common-practice")
        items.append(Item(kind, "", (fact,), tuple(choices), choices.index(term.id), None, ()))
    return Quiz((), tuple(items), seed)


def _shuffled(rng: random.Random, terms: Sequence[Term]) -> list[Term]:
    out = list(terms)
    rng.shuffle(out)
    return out


def _apart(term: Term, other: Term) -> bool:
    """True when another word is no name of the same thing, sits elsewhere and is not given away by the meaning."""
    same = _words(term.label, *term.words) & _words(other.label, *other.words) - {"fin", "tail", "ray", "scale"}
    near = _words(term.where) & _words(other.where) - {"of", "the", "to", "a", "and", "behind", "under", "before"}
    return other.id != term.id and not same and not near and not _words(other.label) <= _words(term.plain)


def _unlike(kb: KnowledgeBase, terms: Sequence[str]) -> list[str]:
    """Words no two of which sit in the same place."""
    out: dict[str, str] = {}
    for term in terms:
        found = kb.find("term", term)
        if found is not None:
            out.setdefault(found.where, term)
    return list(out.values())
