"""A day that no rules are held for: what those of the year held say of the same day (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date

from assistant.dialogue.answer import Block
from assistant.dialogue.rules import telling, words
from assistant.dialogue.rules.catch_judge import judge
from assistant.dialogue.rules.catch_query import CatchQuery, Step
from assistant.dialogue.rules.months import alike, span_words
from assistant.dialogue.rules.outlook import in_rule_year
from assistant.dialogue.rules.reasons import Told
from assistant.dialogue.wording import rules as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.verdict import Verdict, Why, Word


def in_year_held(
    kb: KnowledgeBase, book: Rulebook, query: CatchQuery, verdicts: Sequence[Verdict], days: Sequence[date],
    blocks: list[Block], year_told: bool = False,
) -> list[Block]:
    """The blocks with what the rule year held says of the same day, or of the days of the month asked about.

    That comes first for a month (unless its year was told), and for a fish that must not go back; all else leads with
    what is not known.
    """
    first, last = verdicts[0].rule_year
    asked = [s.day for s in query.steps]
    if any(v.reason.why is not Why.OUTSIDE_RULE_YEAR for v in verdicts) or not first or None in asked:
        return blocks
    year = (date.fromisoformat(first), date.fromisoformat(last))
    if days and len(query.steps) == 1:
        more = _of_month(kb, book, query, [in_rule_year(d, *year) for d in days])
    else:
        steps = [replace(s, day=in_rule_year(s.day, *year)) for s in query.steps if s.day is not None]
        told = _judged(kb, book, query, steps)
        more = [_block(words.day_words(t.step.day or ""), t, True) for t in told]
        if any(t.verdict.word is Word.DO_NOT_RELEASE for t in told) and len(told) == 1:
            act = Block("lead", say.listed_in_year(telling.lead_text(told[0]), words.day_words(told[0].day)),
                        statements=telling.statements(told[0].verdict.rules))
            return [act, blocks[0]._replace(kind="point"), *blocks[1:]]
    if days and not year_told:
        return [more[0]._replace(kind="lead"), *more[1:], blocks[0]._replace(kind="point"), *blocks[1:]]
    return [blocks[0], *more, *blocks[1:]]


def _of_month(kb: KnowledgeBase, book: Rulebook, query: CatchQuery, days: Sequence[date]) -> list[Block]:
    """A block for each span of days of which the rules held say the same."""
    step = query.steps[0]
    found = {d: _judged(kb, book, query, [replace(step, day=d)])[0] for d in days}
    spans = alike(days, lambda d: (found[d].verdict.word, found[d].verdict.reason.why))
    return [_block(span_words(a, b), found[a], a == b) for a, b in spans]


def _judged(kb: KnowledgeBase, book: Rulebook, query: CatchQuery, steps: Sequence[Step]) -> list[Told]:
    again = judge(replace(query, steps=tuple(steps)), book)
    return [Told(kb, book, v, s) for v, s in zip(again, steps, strict=True)]


def _block(days: str, told: Told, one_day: bool) -> Block:
    return Block("point", say.in_year_held(days, telling.lead_text(told), one_day),
                 statements=telling.statements(told.verdict.rules), claim=bool(told.verdict.rules))
