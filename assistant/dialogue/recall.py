"""Advice and notes of the base that share the most words with a line (layer 4)."""

from __future__ import annotations

from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.text import key, singular

LEAST = 3
"""Words that a record must share with the line."""
COMMON = frozenset(
    {
        "the",
        "a",
        "an",
        "is",
        "are",
        "why",
        "how",
        "do",
        "does",
        "it",
        "to",
        "of",
        "in",
        "when",
        "they",
        "and",
        "that",
        "fish",
        "i",
        "my",
        "for",
        "go",
        "by",
        "on",
        "be",
        "not",
        "so",
        "what",
        "whats",
        "point",
        "me",
    }
)


def recall(kb: KnowledgeBase, reading: Reading, most: int = 2) -> list[tuple[str, str]]:
    """Texts with their short ids: the records that share the most telling words with the line, three at the least."""
    wanted = {singular(w) for w in reading.words} - COMMON
    scored = []
    for words, text, short in kb.derived("advice-words", _advice):
        shared = len(wanted & words)
        if shared >= LEAST:
            scored.append((-shared, len(text), text, short))
    best = min((shared for shared, *_ in scored), default=0)
    return [(text, short) for shared, _, text, short in sorted(scored)[:most] if shared == best]


def _advice(kb: KnowledgeBase) -> tuple[tuple[frozenset[str], str, str], ...]:
    """The telling words of every caution and practice, with its text and short id."""
    out = []
    for kind in ("caution", "practice"):
        for record in kb.all(kind):
            words = {singular(w) for phrase in record.words for w in key(phrase).split()} - COMMON
            out.append((frozenset(words), str(record.text), f"{kind}:{record.id}"))
    return tuple(out)
