"""Names of fishes in other languages: of one fish, of a group, of all fishes listed before (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Name, Taxon
from assistant.reasoning.names import UNDERSTOOD
from assistant.text import join, key, singular

SHOWN, MOST_LISTED, MOST_SHARED = 8, 20, 3
LANGUAGES = (("lang-fr", "fr"), ("lang-es", "es"))
"""Sides of a matter that ask for a language, with the beginning of its tag."""


def in_languages(turn: Turn, sides: frozenset[str], intent: str = "names") -> Answer | None:
    """The names of every fish listed before in a language asked for; None where none is, or a fish is named."""
    wanted = [language for side, language in LANGUAGES if side in sides]
    listed = [t for t in turn.held.shown if (x := turn.kb.find("taxon", t)) is not None and x.is_species]
    about_one = len(turn.held.taxa) == 1 or {"it", "its", "that", "this"} & set(turn.reading.words)
    if not wanted or len(listed) < 2 or about_one or turn.reading.of("taxon", "hybrid", "group"):
        return None
    blocks = [b for t in listed[:MOST_LISTED] for b in in_language(turn.kb, turn.kb.taxon(t), wanted[0])]
    head = Block("lead", blocks[0].text, statements=blocks[0].statements, claim=blocks[0].claim)
    return Answer(intent, (head, *blocks[1:]), tuple(listed))


def singular_key(words: str) -> str:
    """The folded words, the last one without its plural ending."""
    folded = key(words).split()
    return " ".join([*folded[:-1], singular(folded[-1])]) if folded else ""


def distinct(names: Iterable[Name]) -> list[Name]:
    """Names of which no two differ in a plural or a space alone, the first of each."""
    out: dict[str, Name] = {}
    for n in names:
        out.setdefault(singular_key(n.text).replace(" ", ""), n)
    return list(out.values())


def in_language(kb: KnowledgeBase, record: Taxon, language: str) -> list[Block]:
    """The names of a fish in a language, the usual one first; that none is held where none is."""
    found = distinct(ranked_in_language(
        n for n in kb.names(record.id) if n.language.lower().split("-")[0] == language and n.kind not in UNDERSTOOD
    ))
    if not found:
        return [Block("point", say.no_name_in(record.label, say.LANGUAGES[language]), claim=False)]
    text = say.in_language(record.label, say.LANGUAGES[language], join([n.text for n in found[:SHOWN]]))
    return [Block("point", text, statements=tuple(f"name:{n.id}" for n in found[:SHOWN]))]


def group_in_language(turn: Turn, asked: Sequence[str], language: str) -> list[Block]:
    """The names in a language that several kinds of a group share; nothing where none do."""
    kb = turn.kb
    if len(asked) != 1 or len(kinds := species_of(kb, tuple(asked))) < 2:
        return []
    shared: dict[str, list[Name]] = {}
    for n in (n for t in kinds for n in kb.names(t)):
        if n.language.lower().split("-")[0] == language and n.kind not in UNDERSTOOD:
            shared.setdefault(key(n.text), []).append(n)
    several = (ns for ns in shared.values() if len({n.taxon for n in ns}) > 1)
    found = sorted(several, key=lambda ns: (-len(ns), ns[0].text))
    if not found:
        return []
    names = join([ns[0].text for ns in found[:MOST_SHARED]])
    text = say.in_language(kinds_name(kb, asked[0], 1), say.LANGUAGES[language], names)
    return [Block("point", text, statements=tuple(f"name:{n.id}" for ns in found[:MOST_SHARED] for n in ns))]


def ranked_in_language(names: Iterable[Name]) -> list[Name]:
    """Names in a language, those that were read and stand for one fish alone first, old ones last."""
    return sorted(names, key=lambda n: (
        n.kind != "vernacular", any(c.isdigit() for c in n.region_text), n.basis != "read", -len(n.regions)))
