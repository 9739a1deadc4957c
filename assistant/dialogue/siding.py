"""Which of several sources is gone with, and on what grounds: preference, basis, place, all together (layer 4)."""

from __future__ import annotations

from collections import Counter

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.reader.parts import characters_asked
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.telling import MEMORY
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import keeping as say
from assistant.dialogue.wording import speak
from assistant.dialogue.wording.core import capital
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Statement
from assistant.reasoning.evidence import ANY, BASIS_WEIGHT, PREFERRED_WEIGHT, about, distribution, weight

SIDING = frozenset({"side-with", "of-sources"})
_GROUNDS = say.grounds(BASIS_WEIGHT["read"] / BASIS_WEIGHT[MEMORY], PREFERRED_WEIGHT)
MOST, SHOWN_SHARE, MOST_SHARES, FEW = 8, 0.05, 4, 2


def siding(turn: Turn) -> Answer | None:
    """How the statements on a feature of a fish count; None where it is plain of no fish and feature."""
    kb = turn.kb
    taxon, character = _meant(turn)
    if not taxon or not character:
        return Answer("why", (Block("lead", say.FEATURE_BY_FEATURE, claim=False),
                              Block("point", _GROUNDS, claim=False)), turn.held.taxa) if turn.held.last else None
    rows, whose = about(kb, taxon, character)
    feature, fish = kb.character(character), speak.fish(kb, whose or taxon)
    if len(rows) < 2:
        lead = Block("lead", say.only_one(feature.label, fish), statements=speak.short_ids(s.id for s in rows))
        return Answer("why", (lead, *(_line(turn, s, 1.0, alone=True) for s in rows)), (taxon,)) if rows else None
    weights = [weight(s, ANY) for s in rows]
    total = sum(weights)
    ranked = sorted(zip(rows, weights, strict=True), key=lambda pair: (-pair[1], pair[0].id))
    preferred = [s for s in rows if s.preferred]
    ids = speak.short_ids(s.id for s in preferred or rows)
    if len({(s.states, s.low, s.usual_low, s.usual_high, s.high, s.text) for s in rows}) == 1:
        text = say.all_agree(len(rows), feature.label, fish)
    elif preferred:
        cited = _cited(kb, preferred[0])
        text = say.preferred(cited, feature.label, fish, preferred[0].because)
    else:
        text = say.none_preferred(len(rows), feature.label, fish)
    blocks = [Block("lead", text, statements=ids)]
    if together := _together(kb, taxon, feature):
        blocks.append(Block("point", say.together(together), statements=speak.short_ids(s.id for s in rows)))
    blocks += [_line(turn, s, w / total) for s, w in ranked[:MOST]]
    if len(ranked) > MOST:
        blocks.append(Block("help", say.more_statements(len(ranked) - MOST), claim=False))
    blocks.append(Block("doubt", _GROUNDS, claim=False))
    return Answer("why", tuple(blocks), (taxon,))


def _meant(turn: Turn) -> tuple[str, str]:
    """The fish and feature of the line, else those that most statements of the last answer speak of."""
    kb, last = turn.kb, turn.held.last
    told = [r for b in (last.blocks if last is not None else ()) for s in b.statements
            if isinstance(r := kb.record_at(s), Statement)]
    own = species_of(kb, named(turn) or subjects(turn, carried=False))
    taxa = own or tuple(t for t, _ in Counter(s.taxon for s in told).most_common(1)) or turn.held.taxa
    taxon = next((t for t in taxa if kb.find("taxon", t) is not None), "")
    asked = characters_asked(kb, turn.reading) if turn.reading.of("character") else ()
    several = Counter(s.character for s in told if s.taxon == taxon)
    spoken = next((c for c in asked if about(kb, taxon, c)[0]), "") if taxon else ""
    return taxon, spoken or (next(iter(dict(several.most_common(1))), "") if len(several) <= FEW else "")


def _cited(kb: KnowledgeBase, s: Statement) -> str:
    """The source of a statement; empty for one that rests on memory alone."""
    return speak.short_cite(kb, s.source[0], s.page) if s.source and s.basis != MEMORY else ""


def _line(turn: Turn, s: Statement, share: float, alone: bool = False) -> Block:
    """One statement with its source, its basis and what it counts of all."""
    kb = turn.kb
    words = capital(speak.statement_words(kb, s, turn.held.units)).rstrip(".")
    text = say.counts(words, _cited(kb, s), say.BASIS.get(s.basis, s.basis), 0 if alone else round(100 * share))
    return Block("point", text, statements=(f"st:{s.id}",))


def _together(kb: KnowledgeBase, taxon: str, feature: Character) -> list[tuple[str, int]]:
    """What all statements together come to, in 100; empty for what is measured."""
    found = distribution(kb, taxon, feature.id)
    if found is None:
        return []
    ranked = sorted(found.shares.items(), key=lambda kv: (-kv[1], kv[0]))[:MOST_SHARES]
    stated = {s.id: s.label for s in kb.states(feature.id)}
    return [(stated.get(k, k), round(100 * share)) for k, share in ranked if share >= SHOWN_SHARE]
