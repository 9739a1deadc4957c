"""What holds for those fishes of a loose name that may be kept, where another that it may mean forbids it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.dialogue.answer import Block
from assistant.dialogue.rules import telling, words
from assistant.dialogue.rules.catch_judge import judge
from assistant.dialogue.rules.catch_query import CatchQuery, Named
from assistant.dialogue.rules.reasons import Told
from assistant.dialogue.wording import rules as say
from assistant.reasoning.verdict import Act, Word

WEAK = ("jurisdiction", "zone", "water-type", "water", "segment", "border")
MOST = 3
"""Bags of the fishes of a name that are told apart."""


def apart(told: Told, query: CatchQuery) -> list[Block]:
    """The verdicts on the fishes of the name that may be kept, bag by bag; nothing where none or all may."""
    step, found = told.step, told.verdict
    if found.word is not Word.RELEASE or len(step.fish) != 1 or step.crosses:
        return []
    shut = {o.taxon for o in found.outcomes if Act.KEEP not in o.certain}
    if not shut:
        return []
    out: list[Block] = []
    for name, taxa in _bags(told, [o.taxon for o in found.outcomes if o.taxon not in shut])[:MOST]:
        narrowed = replace(step, fish=(Named(name, taxa),))
        (verdict,) = judge(replace(query, steps=(narrowed,)), told.book)
        text = say.if_it_is(name, telling.lead_text(Told(told.kb, told.book, verdict, narrowed)))
        out.append(Block("point", text, statements=telling.statements(verdict.rules)))
    return out


def _bags(told: Told, taxa: Sequence[str]) -> list[tuple[str, tuple[str, ...]]]:
    """Fishes by the group in which the rules count them, under its label; the others each by its own name."""
    book = told.book
    groups = [r.aggregate for r in (book.rules[x] for x in told.verdict.rules) if r.aggregate and r.layer in WEAK]
    found: dict[str, list[str]] = {}
    for taxon in dict.fromkeys(taxa):
        group = next((g for g in groups if book.in_group(taxon, g)), "")
        found.setdefault(book.groups[group].label if group else words.name_of(told.kb, taxon), []).append(taxon)
    return [(name, tuple(each)) for name, each in found.items()]
