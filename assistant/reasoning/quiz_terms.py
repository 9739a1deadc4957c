"""Quiz items on words of the body instead of fishes: what a word means, and where on a fish to look (layer 3)."""

from __future__ import annotations

import random
import re
from collections.abc import Collection, Sequence

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.reasoning.quiz import CHOICES, LEAST, Fact, Item, Quiz
from assistant.text import key, singular, word_set

KINDS = ("term", "term-where")
ALL = frozenset({"glance", "hand", "count", "dead"})


FEW = 6
"""Words on a thing below which those that are only explained by it are taken, too."""
_BESIDE = word_set("before behind above below under over to without")
"""Words of a place that lies beside what they name ("just before the tail fin"), not in it."""

_ALL_OVER = word_set("anywhere whole")


def body_words(kb: KnowledgeBase, about: Sequence[str] = (), looks: Collection[str] = ALL) -> tuple[Term, ...]:
    """The words of the glossary for parts and marks that the features of fishes speak of; only those ``about`` some.

    ``about`` are names of parts such as "fin" or "tail fin"; a term named by one goes before one that sits on it. Where
    both are few, those explained by it follow. ``looks`` limits the features where no such name is given.
    """
    texts = " ".join(f" {c.label} {c.trade} " for c in kb.characters if c.use == "identify" and c.look in looks).lower()
    terms = [t for t in kb.all("term") if t.where and any(f" {w.lower()} " in texts for w in (t.label, *t.words))]
    if not about:
        return tuple(sorted(terms, key=lambda t: t.id))
    topics = _topics(kb, about)
    placed = [t for t in kb.all("term") if t.where]
    named = [t for t in placed if any(topic <= _words(name) for topic in topics for name in (t.label, *t.words))]
    there = [t for t in placed if t not in named and any(topic <= _seat(t) for topic in topics)]
    told = [t for t in placed if t not in (*named, *there) and not _words(t.where) & _ALL_OVER and any(
        len(topic) == 1 and topic <= _words(t.plain) for topic in topics)]
    piles = (named, there, told if len(named) + len(there) < FEW else [])
    return tuple(t for pile in piles for t in sorted(pile, key=lambda t: (t not in terms, t.id)))


def _topics(kb: KnowledgeBase, about: Sequence[str]) -> list[set[str]]:
    """The words of each part asked about, and of its other names ("tail fin": "caudal fin")."""
    out = []
    for part in about:
        same = [t for t in kb.all("term") if t.where and any(_words(part) == _words(n) for n in (t.label, *t.words))]
        out += [_words(name) for name in (part, *(n for t in same for n in (t.label, *t.words)))]
    return out


def _seat(term: Term) -> set[str]:
    """The words of the one place, or the first of several, where a thing sits; empty where that is only beside it."""
    first = _words(re.split(r",|\bor\b|\band\b", term.where)[0])
    return set() if first & _BESIDE else first


def most_spoken_of(kb: KnowledgeBase, terms: Sequence[Term]) -> tuple[Term, ...]:
    """Words in the order of how many features of fishes speak of them; none that only begins the name of another."""
    texts = [f" {key(c.label)} {key(c.question)} " for c in kb.characters if c.use == "identify"]
    often = {t.id: sum(any(f" {key(w)} " in text for w in (t.label, *t.words)) for text in texts) for t in terms}
    whole = [t for t in terms if not any(f" {key(t.label)} " in f" {key(o.label)}" for o in terms if o.id != t.id)]
    return tuple(sorted(whole, key=lambda t: (-often[t.id], t.id)))


def _words(*texts: str) -> set[str]:
    return {singular(w) for text in texts for w in key(text).split()}


def build_words_quiz(kb: KnowledgeBase, terms: Sequence[Term], count: int, seed: int,
                     looks: Collection[str] = ALL, about: Sequence[str] = ()) -> Quiz:
    """A quiz of up to ``count`` items on some words, each asked once; wrong choices from words seen at some looks.

    Of words ``about`` a part those named by it are asked first, and the wrong choices are other such words as far as
    there are any. Where the words are very few, others are asked after them.
    """
    rng = random.Random(seed)
    pool = list(dict.fromkeys((*terms, *body_words(kb, (), looks))))
    topics = _topics(kb, about)
    named = [t for t in terms if any(topic <= _words(name) for topic in topics for name in (t.label, *t.words))]
    asked = _shuffled(rng, [t for t in named if _words(t.label) not in topics] or named)
    asked += _shuffled(rng, [t for t in terms if t not in named])
    if len(asked) < LEAST:
        asked += _shuffled(rng, [t for t in pool if t not in terms])
    items: list[Item] = []
    for term in asked:
        kind = KINDS[len(items) % len(KINDS)]
        kind = KINDS[0] if _words(term.label) & _words(term.where) else kind
        others = _shuffled(rng, pool)
        near = [t for t in others if about and t in terms]
        wrong = [t.id for t in (*near, *(t for t in others if t not in near)) if _apart(term, t)]
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
