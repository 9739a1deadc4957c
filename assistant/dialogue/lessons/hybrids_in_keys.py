"""Why hybrids do not go through a key, with marks of one of them beside its parents' (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.grounds import both
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import classroom as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS, contrast
from assistant.text import key, lower_first, singular, unique

OFTEN = ("common", "uncommon", "rare")
EXAMPLES, CITED = 2, 12
LIMIT = "identification-limit"
GENUS = "genus"
AT_LARGE = ("hybrid", "cross", "crossbreed")
"""Words for hybrids at large, which also stand for single crosses in some places."""


def spoils(turn: Turn) -> Answer:
    """That a hybrid fits neither side of a step, two steps at which one of the crosses meant fails, what to do."""
    kb = turn.kb
    crosses = _crosses(turn)
    limits = tuple(f"st:{s.id}" for t in crosses for s in kb.statements(t) if s.character == LIMIT)[:CITED]
    genera = unique(g for t in crosses for p in kb.taxon(t).parents for g in kb.lineage(p) if kb.taxon(g).rank == GENUS)
    blocks = [Block("lead", say.SPOILT, statements=limits, claim=bool(limits))]
    blocks += _examples(turn, crosses)
    names = kb.taxon(genera[0]).label if len(genera) == 1 else ""
    blocks.append(Block("point", say.crosses_held(len(crosses), names), statements=tuple(
        f"taxon:{t}" for t in crosses[:CITED])))
    blocks.append(Block("help", say.IN_A_CLASS, claim=False))
    return Answer("why", tuple(blocks), genera if len(genera) == 1 else ())


def _crosses(turn: Turn) -> tuple[str, ...]:
    """The crosses of the fishes named, else all that are held; the common ones first."""
    kb = turn.kb
    mentions = [m for m in turn.reading.of("taxon", "hybrid", "group") if singular(key(m.words)) not in AT_LARGE]
    told = species_of(kb, tuple(i for m in mentions for i in m.ids))
    own = unique(c for t in told for c in ((t,) if kb.taxon(t).is_hybrid else kb.crosses_of(t)))
    crosses = own or tuple(t for t in kb.species if kb.taxon(t).is_hybrid)
    return tuple(sorted(crosses, key=lambda t: (_rank(kb, t), -len(kb.statements(t)), t)))


def _rank(kb: KnowledgeBase, cross: str) -> int:
    word = kb.taxon(cross).occurrence
    return OFTEN.index(word) if word in OFTEN else len(OFTEN)


def _examples(turn: Turn, crosses: tuple[str, ...]) -> list[Block]:
    """Marks stated of the commonest cross itself, beside those of its parents."""
    kb = turn.kb
    for cross in crosses:
        own = {s.character for s in kb.statements(cross)}
        trio = (*kb.taxon(cross).parents, cross)
        if len(trio) != 3 or len(own) <= EXAMPLES:
            continue
        rows = [r for r in contrast(kb, trio, LOOKS["hand"]).separating if r.character in own and all(r.told)]
        blocks = [Block("point", say.for_instance(lower_first(speak.heading(kb.character(r.character))), both(turn, r)),
                        statements=speak.short_ids(s for t in r.told if t for s in t.statements))
                  for r in rows[:EXAMPLES]]
        if blocks:
            return blocks
    return []
