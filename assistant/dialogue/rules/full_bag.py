"""A bag told of by its limit, "already have my limit", as the count that the rules make of it (layer 4)."""

from __future__ import annotations

from dataclasses import replace

from assistant.dialogue.reader.catch_plain import short_of_limit
from assistant.dialogue.rules.catch_judge import judge
from assistant.dialogue.rules.catch_query import CatchQuery, KeptSaid
from assistant.model.regulations import Rulebook

BAG = "bag"


def with_bag_told(text: str, query: CatchQuery, book: Rulebook, fresh: bool) -> CatchQuery:
    """The query with as many fish kept as the daily limit, less those that the line says are still lacking.

    Unchanged where no limit is told of, the line (``fresh``) tells a count, or the rules give the fish no daily limit.
    """
    short = short_of_limit(text)
    if short is None or len(query.steps) != 1 or (fresh and query.steps[0].kept):
        return query
    limits = [t.limit for v in judge(query, book) for t in v.tallies if t.kind == BAG and t.limit is not None]
    if not limits:
        return query
    kept = (KeptSaid(max(0, min(limits) - short), None),)
    return replace(query, steps=(replace(query.steps[0], kept=kept),))
