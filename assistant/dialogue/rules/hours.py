"""Hours without fishing: whether a place is open at an hour, on a day or through a month (layer 4)."""

from __future__ import annotations

from datetime import date, time

from assistant.dialogue.answer import Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.context import Context
from assistant.dialogue.rules.months import days_told, runs, span_words
from assistant.dialogue.rules.telling import special, statements
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import rules as say
from assistant.dialogue.wording import surveys as tell
from assistant.model.regulations import Rulebook
from assistant.reasoning.calendar import within_hours
from assistant.reasoning.lawful import covered, rule_set_on
from assistant.text import join, unique


def hours_answer(turn: Turn, found: Context) -> tuple[list[Block], list[str]]:
    """The hours without fishing at the place on the days told, or that no rule speaks of hours; and those rules."""
    place = words.place_words(turn.kb, found.places[0]) if found.places else ""
    days = days_told(turn, found.day)
    shut = {d: _shutting(found, d) for d in days}
    rules = list(unique(r for found_rules in shut.values() for r in found_rules))
    moment = found.about.moments[0] if found.about.moments else None
    if moment is None or not place or not any(_held(found, d) for d in days):
        text = " ".join(special(found.book, rules)) if rules else tell.no_duty("hours", place)
        return [Block("point", text, statements=statements(rules), claim=bool(rules))], rules
    closed = [d for d in days if any(_within(found.book, r, moment) for r in shut[d])]
    hour, when = f"{moment:%H:%M}", span_words(days[0], days[-1])
    if not closed:
        lead = Block("point", tell.hour_open(hour, place, when), statements=statements(rules), claim=False)
        return [lead, *_orders(found.book, rules)], rules
    spans = "" if len(closed) == len(days) else join([span_words(a, b) for a, b in runs(closed)])
    first = next(r for r in shut[closed[0]] if _within(found.book, r, moment))
    hours = next(h for h in (found.book.hours[x] for x in found.book.rules[first].closed_hours)
                 if within_hours(h.starts, h.ends, moment))
    text = tell.hour_closed(hour, place, spans or when, bool(spans), say.closed_hours(
        hours.starts, hours.ends, say.rule(words.rule_tag(found.book, first), say.FIELD["hours"])))
    return [Block("point", text, statements=statements((first,))), *_orders(found.book, rules)], rules


def _shutting(found: Context, day: date) -> tuple[str, ...]:
    """The rules with hours without fishing that hold at the place on a day."""
    here = [r for p in found.places for x in found.book.positions(p) for r in covered(x, day, found.book)]
    return unique(r.id for r in here if r.closed_hours)


def _held(found: Context, day: date) -> bool:
    return any(rule_set_on(x, day, found.book) for p in found.places for x in found.book.positions(p))


def _within(book: Rulebook, rule: str, moment: time) -> bool:
    return any(within_hours(h.starts, h.ends, moment) for h in (book.hours[x] for x in book.rules[rule].closed_hours))


def _orders(book: Rulebook, rules: list[str]) -> list[Block]:
    return [Block("point", text, statements=statements((r,))) for r in rules for text in special(book, (r,))]
