"""What a rule says that is asked for by its number ("what is rule H03"; layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.rules import telling
from assistant.dialogue.rules.catch_query import Named
from assistant.dialogue.rules.outlook import survey
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import surveys as tell
from assistant.model.regulations import Rulebook

MOST = 4
"""Rules of one number that are told: it may stand for one a group of fishes."""


def told_by_number(turn: Turn, book: Rulebook, named: Sequence[str], day: date) -> Answer:
    """What each of some rules is about, and what holds under it where it stands."""
    rules = [book.rules[r] for r in named[:MOST]]
    blocks: list[Block] = []
    for rule in rules:
        head = tell.rule_named(rule.notation, rule.label)
        own = telling.statements((rule.id,))
        blocks.append(Block("point" if blocks else "lead", head, statements=own))
        place = rule.places[0] if rule.places else book.rule_sets[rule.rule_set[0]].jurisdiction
        fishes = [Named("", (g,)) for g in (*rule.groups, *rule.taxa)]
        found = survey(turn.kb, book, place, day, fishes).blocks if fishes else ()
        blocks += [b._replace(kind="point") for b in found if set(own) <= set(b.statements)][:1]
        duties = [r.text for o in rule.obligations if (r := turn.kb.find("obligation", o)) is not None]
        if duties:
            blocks.append(Block("point", " ".join(t.rstrip(".") + "." for t in duties), statements=own))
        if rule.note:
            blocks.append(Block("point", rule.note, statements=own))
    first = book.rule_sets[rules[0].rule_set[0]]
    ids = tuple(r.id for r in rules)
    years = (first.valid_from, first.valid_through)
    blocks += telling.standing(book, ids, first.as_of, years, "", turn.held.noted)
    return Answer("rules", tuple(blocks), rules=telling.statements(ids))
