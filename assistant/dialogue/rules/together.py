"""Whether kinds of fish count together in one bag under the rules of a place (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.catch_judge import meant
from assistant.dialogue.rules.catch_query import Named
from assistant.dialogue.rules.context import Context
from assistant.dialogue.rules.outlook import survey
from assistant.dialogue.rules.reasons import CROSSED
from assistant.dialogue.rules.telling import standing, statements
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import surveys as tell
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.outlook import Line, outlooks
from assistant.text import join, unique, word_set

ON_MY_COUNT = "on-my-count"
"""The cue of a line that asks whether the fish spoken of counts in the bag of the one named."""
ON_COUNT = frozenset({ON_MY_COUNT, "counted-together"})
"""Cues of a line that may speak of the fish held by a pronoun ("do they and walleyes count together")."""
CROSSING = frozenset({"hybrid", "hybrid-word"})
"""Cues of a line that speaks of crosses."""
COUNTING = word_set("count counts counted counting included include includes")
POINTING = word_set("it its this that they them these those one ones")


def asks_together(turn: Turn, found: Context, sides: frozenset[str]) -> bool:
    """True for a line that asks whether the kinds it names share a bag at a place."""
    if crosses_counted(turn, found) is not found:
        return True
    asked = "rule-together" in sides or bool(ON_COUNT & turn.cues)
    return bool(found.places) and asked and len(with_pointed(turn, found).named) > 1


def crosses_counted(turn: Turn, found: Context) -> Context:
    """The line with the one fish spoken of beside its crosses, where it asks whether these count, too ("them half breed
    ones count too?"); the same context where it asks no such thing.
    """
    kb, words_said = turn.kb, set(turn.reading.words)
    bare = all(set(n.words.lower().split()) <= CROSSED for n in found.named)
    told = CROSSING & turn.cues and COUNTING & words_said and turn.held.intent == "rules" and found.places
    kinds = species_of(kb, turn.held.taxa)
    if not told or not bare or len(kinds) != 1 or kb.taxon(kinds[0]).is_hybrid:
        return found
    return replace(found, named=(Named(kb.taxon(kinds[0]).label, kinds), Named(tell.ITS_CROSSES, ())))


def with_pointed(turn: Turn, found: Context) -> Context:
    """The line with the fish spoken of as one of its kinds ("does it go on my walleye count")."""
    held = next((t for t in turn.held.taxa if turn.kb.find("taxon", t) is not None), "")
    if not held or len(found.named) != 1 or held in found.named[0].taxa or not ON_COUNT & turn.cues or not (
            POINTING & set(turn.reading.words)):
        return found
    return replace(found, named=(Named(turn.kb.taxon(held).label, (held,)), *found.named))


def together(turn: Turn, found: Context) -> Answer:
    """Yes or no with the bag, or the bags, in which the kinds named count."""
    found = with_pointed(turn, crosses_counted(turn, found))
    kb, book, place, day = turn.kb, found.book, found.places[0], found.day or turn.clock
    crossed = [n for n in found.named if set(n.words.lower().split()) <= CROSSED]
    kinds = tuple(n for n in found.named if n not in crossed)
    lines = [line for o in outlooks(place, day, book) for line in o.lines if not line.listed]
    bags = [_bags(n, found, lines) for n in kinds]
    shared = set.intersection(*bags) if bags else set()
    if crossed:
        shared = {g for g in shared if g in book.groups and book.groups[g].crosses}
    told = survey(kb, book, place, day, kinds)
    names = join(list(unique(n.words.lower() for n in found.named)))
    labels = join(sorted(words.counted(kb, book, g) for g in shared))
    at = words.at_words(kb, place)
    if not lines or not all(bags):
        lead = Block("lead", tell.together_unknown(names, at), claim=False)
    else:
        rules = tuple(unique(line.rule for line in lines if line.group in shared))
        text = tell.together(names, labels, at, _above(kb, book, lines, bags))
        lead = Block("lead", text, statements=statements(rules or told.rules))
    notes = standing(book, told.rules, told.as_of, told.rule_year, "", turn.held.noted)
    blocks = tuple(b._replace(kind="point") if b.kind == "lead" else b for b in told.blocks)
    return Answer("rules", (lead, *blocks, *notes), taxa=_taxa(kinds), rules=statements(told.rules))


def _bags(name: Named, found: Context, lines: Iterable[Line]) -> set[str]:
    """The groups counted together in which a fish named counts, or itself where it has a bag of its own."""
    taxa = meant(name, found.book.positions(found.places[0]), found.book)
    return {_bag(line) for line in lines if any(_counts(t, line, found.book) for t in taxa)}


def _bag(line: Line) -> str:
    return line.group or line.taxa[0]


def _counts(taxon: str, line: Line, book: Rulebook) -> bool:
    return taxon in (line.group, *line.taxa) or (bool(line.group) and book.in_group(taxon, line.group))


def _above(kb: KnowledgeBase, book: Rulebook, lines: Sequence[Line], bags: Sequence[set[str]]) -> str:
    """The limit over several bags to which all of the kinds count, in words."""
    each = [{(b.count, b.name) for line in lines if _bag(line) in mine for b in line.shared if b.count is not None}
            for mine in bags]
    both = sorted(set.intersection(*each)) if each else []
    return join([f"{count} {words.counted(kb, book, name)}" for count, name in both])


def _taxa(kinds: Sequence[Named]) -> tuple[str, ...]:
    return tuple(unique(n.taxa[0] for n in kinds if len(n.taxa) == 1))
