"""Which words of the glossary a line names, two that share a noun included ("pectoral vs pelvic fins") (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.aspects import phrases_of
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.text import key, singular, word_set

BETWEEN = word_set("and or vs versus from than to")
ARTICLES = word_set("a an the")
ENDINGS = ("ing", "ed", "ers", "er")
SHORTEST = 4


def terms_named(kb: KnowledgeBase, reading: Reading) -> list[Term]:
    """The terms of the glossary in a line, in their order, none that is only part of a longer one."""
    phrases = [*phrases_of(reading.words), *_shared_noun(reading.words)]
    keys = dict.fromkeys(thing for p in phrases for kind, thing, _ in kb.spoken(p) if kind == "term")
    found = outermost([t for k in keys if (t := kb.find("term", k)) is not None])
    at = {singular(w): i for i, w in reversed(list(enumerate(reading.words)))}
    return sorted(found, key=lambda t: at.get(singular(key(t.label).split()[0]), 0))


def outermost(found: Sequence[Term]) -> list[Term]:
    """The terms without those that are only part of a longer one named ("fin" beside "anal fin")."""
    return [t for t in found if not any(
        o.id != t.id and f" {key(t.label)} " in f" {key(o.label)} " for o in found)]


def _shared_noun(words: Sequence[str]) -> list[str]:
    """The first of two things with the noun of the second ("dorsal and anal fin": "dorsal fin")."""
    kept = [w for w in words if w not in ARTICLES]
    return [f"{kept[i - 1]} {singular(kept[i + 2])}" for i in range(1, len(kept) - 2) if kept[i] in BETWEEN]


def two_terms(kb: KnowledgeBase, reading: Reading) -> bool:
    """True where a line names two different words of the glossary."""
    return len(terms_named(kb, reading)) > 1


def by_stem(kb: KnowledgeBase, words: Sequence[str]) -> list[Term]:
    """Terms whose word stands in a line with another ending ("spawning")."""
    stems = [stem for w in words for end in ENDINGS if w.endswith(end) and len(w) - len(end) >= SHORTEST
             for stem in (w.removesuffix(end), f"{w.removesuffix(end)}e")]
    keys = dict.fromkeys(thing for s in stems for kind, thing, _ in kb.spoken(s) if kind == "term")
    return [t for k in keys if (t := kb.find("term", k)) is not None]


def by_meaning(kb: KnowledgeBase, words: Sequence[str]) -> list[Term]:
    """Terms whose whole meaning stands in a line ("the lower jaw")."""
    runs = {p for p in phrases_of(words) if " " in p}
    return [t for t in kb.all("term") if key(t.plain) in runs]
