"""What holds of hybrids in general, where no fish is named: how known, how common, how fertile they are (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Block
from assistant.dialogue.beside import crossing
from assistant.dialogue.telling import ids
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.dialogue.wording import crossing as wording
from assistant.dialogue.wording import info as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement

BETWEEN = ("intermediate",)
FERTILITY = "fertility"


def general(turn: Turn, sides: frozenset[str]) -> list[Block]:
    """What holds of hybrids in general, where no fish is named."""
    kb = turn.kb
    if turn.reading.taxa() or turn.reading.of("group"):
        return []
    out: list[Block] = []
    if "index" in sides:
        out += _term(kb, "hybrid-index") + _between(kb)
    if "new-species" in sides:
        out += [Block("point", care.NOT_SPECIES, statements=("term:hybrid",)), *_term(kb, "hybrid")]
    if "by-eye" in sides and not turn.held.taxa:
        out.append(Block("point", care.NOT_BY_EYE, statements=limits(kb)))
    if "halfway" in sides and not turn.held.taxa:
        out += [Block("point", care.HALFWAY, statements=_halfway(kb)), *_between(kb)]
    if "fertile" in sides and not turn.held.taxa:
        out += _fertility_of_all(kb)
    if "how-common" in sides and not turn.held.taxa:
        out += [crossing.commonest(turn, wording.CROSSES, [t for t in kb.species if kb.taxon(t).is_hybrid]),
                *_how_common(kb)]
    if crossing.GROWING in sides and not turn.held.taxa:
        out += crossing.growing(turn, [t for t in kb.species if kb.taxon(t).is_hybrid])
    if crossing.TELLING_ONE in sides and not out and not turn.held.taxa:
        out.append(Block("point", wording.LOOK_FOR, statements=limits(kb)))
    if not out and not turn.held.taxa:
        out = [*_term(kb, "hybrid"), Block("help", care.HYBRID_NEEDS, claim=False)]
    return out


def _term(kb: KnowledgeBase, key: str) -> list[Block]:
    term = kb.find("term", key)
    return (
        [Block("point", say.titled(term.label, term.plain), statements=(f"term:{key}",))]
        if term is not None
        else []
    )


def _described(kb: KnowledgeBase) -> list[tuple[str, Statement]]:
    """Statements that call something of a cross intermediate."""
    return [
        (t, s)
        for t in kb.species
        if kb.taxon(t).is_hybrid
        for s in kb.statements(t)
        if any(x.rpartition(".")[2] in BETWEEN for x in s.states)
    ]


def _halfway(kb: KnowledgeBase) -> tuple[str, ...]:
    return ids(s for _, s in _described(kb))[:12]


def _between(kb: KnowledgeBase) -> list[Block]:
    found = _described(kb)
    total = sum(kb.taxon(t).is_hybrid for t in kb.species)
    if not found:
        return []
    return [
        Block(
            "point",
            care.halfway_count(len({t for t, _ in found}), total),
            statements=ids(s for _, s in found)[:12],
        )
    ]


def _fertility_of_all(kb: KnowledgeBase) -> list[Block]:
    """What is stated of the fertility of all crosses together."""
    crosses = [t for t in kb.species if kb.taxon(t).is_hybrid]
    told = [(t, s) for t in crosses for s in kb.statements(t) if s.character == FERTILITY]
    counts: dict[str, set[str]] = {}
    for t, s in told:
        for state in s.states:
            counts.setdefault(kb.state(state).label, set()).add(t)
    if not counts:
        return []
    ranked = sorted(counts.items(), key=lambda kv: (-len(kv[1]), kv[0]))[:6]
    text = care.fertility_of_all(
        len({t for t, _ in told}), ", ".join(f"{name} {len(ids)}" for name, ids in ranked)
    )
    return [Block("point", text, statements=tuple(f"st:{s.id}" for _, s in told[:12]))]


def _how_common(kb: KnowledgeBase) -> list[Block]:
    """How many of the crosses held are common, uncommon and rare."""
    crosses = [kb.taxon(t) for t in kb.species if kb.taxon(t).is_hybrid]
    counts = {word: sum(t.occurrence == word for t in crosses) for word in crossing.OCCURRENCE}
    told = ", ".join(f"{n} {word}" for word, n in counts.items() if n)
    return [
        Block(
            "point", care.how_common(len(crosses), told), statements=tuple(f"taxon:{t.id}" for t in crosses[:12])
        )
    ]


def limits(kb: KnowledgeBase) -> tuple[str, ...]:
    """The statements that say how far outside marks of crosses can be trusted."""
    return ids(
        s
        for t in kb.species
        if kb.taxon(t).is_hybrid
        for s in kb.statements(t)
        if s.character == "identification-limit"
    )[:12]
