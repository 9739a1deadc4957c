"""The rule book of a knowledge base, made from its records (layer 2)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Lineage, Rulebook, assemble


class Ancestors(Mapping[str, tuple[str, ...]]):
    """Each taxon's genus, family and so on, looked up when asked for, so that a large base costs nothing here."""

    def __init__(self, kb: KnowledgeBase) -> None:
        self._kb = kb
        self._known: dict[str, tuple[str, ...]] = {}

    def __getitem__(self, taxon: str) -> tuple[str, ...]:
        if taxon not in self._known:
            if self._kb.find("taxon", taxon) is None:
                raise KeyError(taxon)
            self._known[taxon] = self._kb.lineage(taxon)[1:]
        return self._known[taxon]

    def __iter__(self) -> Iterator[str]:
        return iter(self._kb.ids("taxon"))

    def __len__(self) -> int:
        return len(self._kb.ids("taxon"))


class Crosses(Mapping[str, tuple[str, ...]]):
    """The two parents of each cross, looked up when asked for."""

    def __init__(self, kb: KnowledgeBase) -> None:
        self._kb = kb

    def __getitem__(self, taxon: str) -> tuple[str, ...]:
        found = self._kb.find("taxon", taxon)
        if found is None or not found.parents:
            raise KeyError(taxon)
        parents: tuple[str, ...] = found.parents
        return parents

    def __iter__(self) -> Iterator[str]:
        return (t for t in self._kb.ids("taxon") if "-x-" in t and t in self)

    def __len__(self) -> int:
        return sum(1 for _ in self)


def rulebook(kb: KnowledgeBase) -> Rulebook:
    """Every rule that a base holds, with the family tree its groups need."""
    return assemble(
        kb.all("rule-set"), kb.all("placement"), kb.all("fish-group"), kb.all("season-window"),
        kb.all("length-limit"), kb.all("over-count"), kb.all("sub-limit"), kb.all("closed-hours"), kb.all("rule"),
        Lineage(Ancestors(kb), Crosses(kb)))
