"""The rule book of a knowledge base, made from its records (layer 2)."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Lineage, Rulebook, assemble


def rulebook(kb: KnowledgeBase) -> Rulebook:
    """Every rule that a base holds, with the family tree its groups need."""
    return assemble(
        kb.all("rule-set"), kb.all("placement"), kb.all("fish-group"), kb.all("season-window"),
        kb.all("length-limit"), kb.all("over-count"), kb.all("sub-limit"), kb.all("closed-hours"), kb.all("rule"),
        lineage_of(kb))


def lineage_of(kb: KnowledgeBase) -> Lineage:
    """Ancestors of every taxon and parents of every cross of a base."""
    taxa = kb.all("taxon")
    return Lineage({t.id: kb.lineage(t.id)[1:] for t in taxa}, {t.id: t.parents for t in taxa if t.parents})
