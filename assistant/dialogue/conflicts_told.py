"""Where sources disagree, told at the prompt: of one fish by feature, of many the graver ones first (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.telling import plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import lists, speak
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from assistant.reasoning.disagreement import Disagreement, disagreements, several_sources, value
from assistant.text import unique

MOST_CONFLICTS, MOST_NAMED, MOST_TAXA = 6, 15, 8
Rows = dict[str, Statement]


def conflicts_of_one(turn: Turn, taxon: str, wanted: Collection[str]) -> Answer:
    """The features of a fish on which sources differ, each value with its source; of those named where any is."""
    kb = turn.kb
    found: dict[str, list[Statement]] = {}
    for s in kb.statements(taxon):
        if not wanted or s.character in wanted:
            found.setdefault(s.character, []).append(s)
    told = {character: _told(turn, rows) for character, rows in found.items()}
    unlike = {character: rows for character, rows in told.items()
              if len({value(s) for s in rows.values()}) > 1 and len({s.source for s in rows.values()}) > 1}
    sources = {x for rows in found.values() for s in rows for x in s.source}
    why = lists.NO_CONFLICT if not wanted or len(sources) > 1 else lists.ONE_SPEAKS if sources else lists.NONE_SPEAKS
    what = say.names_with([kb.character(c).label for c in sorted(found) or sorted(wanted)]) if wanted else ""
    none = lists.none_of_one(label(kb, taxon), what, why)
    blocks = [Block("lead", lists.conflicts(len(unlike)) if unlike else none, claim=False)]
    shown = unlike or (told if wanted else {})
    blocks += [_values(kb, taxon, rows) for _, rows in sorted(shown.items())[:MOST_CONFLICTS]]
    return Answer("list", tuple(blocks), taxa=(taxon,))


def conflicts_among(turn: Turn, taxa: Sequence[str], asked: tuple[str, ...], wanted: Collection[str],
                    place: str) -> Answer:
    """Of which of some fishes sources differ, on the features named or on any: values that exclude each other first."""
    kb = turn.kb
    found = sorted((d for d in disagreements(kb, taxa, wanted) if len(_told(turn, d.statements)) > 1),
                   key=lambda d: kb.character(d.character).use != "identify")
    among = lists.among(say.names_with([label(kb, t) for t in asked[:MOST_TAXA] if kb.find("taxon", t)]), place)
    what = say.names_with([kb.character(c).label for c in wanted]) if wanted else ""
    if not found:
        spoken = sum(several_sources(kb, t, wanted) for t in taxa) if wanted else 0
        return plain("list", lists.none_disagree(what, among, spoken), taxa=asked)
    grave = [d for d in found if d.excluding]
    mild = [d for d in found if not d.excluding]
    lead = lists.disagreeing(what, among, len({d.taxon for d in found}), len(found), len({d.taxon for d in grave}),
                             len(grave))
    shown = (grave or mild)[:len(found) if "more" in turn.cues else MOST_CONFLICTS]
    blocks = [Block("lead", lead, claim=False)]
    blocks += [_values(kb, d.taxon, _told(turn, d.statements)) for d in shown]
    blocks += _rest(turn, [d for d in grave if d not in shown], bool(wanted), lists.more_excluding)
    blocks += _rest(turn, [d for d in mild if d not in shown], bool(wanted), lists.only_differing)
    return Answer("list", tuple(blocks), taxa=asked[:MOST_TAXA] or unique(d.taxon for d in shown)[:MOST_TAXA])


def _told(turn: Turn, rows: Sequence[Statement]) -> Rows:
    return {speak.statement_words(turn.kb, s, turn.held.units): s for s in rows}


def _values(kb: KnowledgeBase, taxon: str, rows: Rows) -> Block:
    """The values of one feature of a fish, each with its source."""
    told = [lists.by_source(words, speak.short_cite(kb, s.source[0]) if s.source else "") for words, s in rows.items()]
    return Block("point", lists.conflict(label(kb, taxon), told), statements=tuple(f"st:{s.id}" for s in rows.values()))


def _rest(turn: Turn, found: Sequence[Disagreement], named: bool, words: lists.Listing) -> list[Block]:
    """The disagreements of which no values are told, by fish (and by feature where none was named)."""
    kb = turn.kb
    pairs = [(label(kb, d.taxon), kb.character(d.character).label) for d in found]
    names = unique(fish if named else lists.feature_of(fish, feature) for fish, feature in pairs)
    if not names:
        return []
    shown = names if "more" in turn.cues or len(names) <= MOST_NAMED + 2 else names[:MOST_NAMED]
    left = len(names) - len(shown)
    text = say.counted(", ".join(shown), left) if left else say.names_with(list(shown))
    ids = tuple(f"st:{s.id}" for d in found[:MOST_NAMED] for s in d.statements[:2])
    return [Block("point", words(text), statements=ids)]
