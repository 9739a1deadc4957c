"""What a curator should know about a rule book: ties, gaps, and parts that lead nowhere (layer 3).

Arithmetic and joins over rules that shapes cannot express; each finding names the rule and the fix.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from assistant.errors import DataError
from assistant.model.regulations import LAYERS, Rule, Rulebook
from assistant.reasoning.calendar import clock_time, day_in_year
from assistant.reasoning.precedence import compose, in_force, stands_at


@dataclass(frozen=True, slots=True)
class RuleFinding:
    """A fault or doubt in a rule: ``kind`` is tie, gap, dead-reference, bad-date, bad-bound or outside-rule-year."""

    kind: str
    rule: str
    about: str
    fix: str


def rule_findings(book: Rulebook) -> tuple[RuleFinding, ...]:
    """Every finding, in order of rule."""
    found = {*_references(book), *_dates(book), *_bounds(book), *_validity(book), *_gaps(book)}
    if not any(f.kind in ("bad-date", "dead-reference") for f in found):
        found |= set(_ties(book))
    return tuple(sorted(found, key=lambda f: (f.rule, f.kind, f.about)))


def _references(book: Rulebook) -> Iterator[RuleFinding]:
    """Ids that lead to nothing, and rules that lie nowhere or name no fish."""
    places = {p for pl in book.placements.values() for p in (pl.place, pl.part_of, pl.zone, pl.jurisdiction)}
    kinds = {t for pl in book.placements.values() for t in pl.water_types}
    for rule in book.rules.values():
        parts = ((rule.seasons, book.seasons), (rule.lengths, book.lengths), (rule.overs, book.overs),
                 (rule.sub_limits, book.sub_limits), (rule.closed_hours, book.hours), (rule.groups, book.groups),
                 ((rule.aggregate,) if rule.aggregate else (), book.groups), (rule.rule_set, book.rule_sets))
        for ids, held in parts:
            for name in ids:
                if name not in held:
                    yield RuleFinding("dead-reference", rule.id, name, "add the part or correct its name")
        for place in (*(p for p in rule.places if p not in places), *(t for t in rule.water_types if t not in kinds)):
            yield RuleFinding("dead-reference", rule.id, place, "give the place a placement")
        if not (rule.places or rule.water_types):
            yield RuleFinding("dead-reference", rule.id, "no place", "say where the rule applies")
        if not (rule.all_fish or rule.taxa or rule.groups):
            yield RuleFinding("dead-reference", rule.id, "no fish", "name taxa, groups or all fish")
        if rule.layer not in LAYERS:
            yield RuleFinding("dead-reference", rule.id, rule.layer, "use one of the layers of precedence")


def _dates(book: Rulebook) -> Iterator[RuleFinding]:
    for window in book.seasons.values():
        for expression in (window.opens, window.closes):
            try:
                for year in range(2024, 2032):
                    day_in_year(expression, year)
            except DataError as fault:
                yield RuleFinding("bad-date", window.id, expression, fault.hint)
    for hours in book.hours.values():
        for text in (hours.starts, hours.ends):
            try:
                clock_time(text)
            except ValueError:
                yield RuleFinding("bad-date", hours.id, text, "write the hour as HH:MM")


def _bounds(book: Rulebook) -> Iterator[RuleFinding]:
    for limit in book.lengths.values():
        if limit.low is None and limit.high is None:
            yield RuleFinding("bad-bound", limit.id, "no bound", "give a lower or an upper bound")
        elif limit.low is not None and limit.high is not None and limit.low > limit.high:
            yield RuleFinding("bad-bound", limit.id, f"{limit.low} > {limit.high}", "exchange the bounds")
    for rule in book.rules.values():
        over = rule.daily is not None and rule.possession is not None and rule.possession < rule.daily
        if over:
            yield RuleFinding("bad-bound", rule.id, f"possession {rule.possession} < daily {rule.daily}",
                              "a day's bag may not exceed possession")
        for name in rule.sub_limits:
            sub = book.sub_limits.get(name)
            if sub is not None and rule.daily is not None and sub.count > rule.daily:
                yield RuleFinding("bad-bound", rule.id, f"{name} {sub.count} > {rule.daily}",
                                  "a sub-limit may not exceed its bag")


def _validity(book: Rulebook) -> Iterator[RuleFinding]:
    """Rules that reach beyond every rule year they belong to."""
    for rule in book.rules.values():
        sets = [book.rule_sets[s] for s in rule.rule_set if s in book.rule_sets]
        if not sets:
            continue
        if rule.valid_from < min(s.valid_from for s in sets):
            yield RuleFinding("outside-rule-year", rule.id, rule.valid_from, "begin it with its rule year")
        if rule.valid_through > max(s.valid_through for s in sets):
            yield RuleFinding("outside-rule-year", rule.id, rule.valid_through, "end it with its rule year")


def _gaps(book: Rulebook) -> Iterator[RuleFinding]:
    """Days without rules between two rule years, and open seasons without any bag."""
    for jurisdiction in sorted({s.jurisdiction for s in book.rule_sets.values()}):
        sets = book.rule_sets_of(jurisdiction)
        for before, after in pairwise(sets):
            if date.fromisoformat(before.valid_through) + timedelta(days=1) < date.fromisoformat(after.valid_from):
                yield RuleFinding("gap", after.id, f"{before.valid_through} to {after.valid_from}",
                                  "close the gap between the two rule years")
    for rule in book.rules.values():
        open_season = any(book.seasons[s].mode == "harvest" for s in rule.seasons if s in book.seasons)
        if rule.override == "base-rule" and open_season and rule.daily is None and not rule.no_daily_limit:
            yield RuleFinding("gap", rule.id, "open season without a bag", "state a bag or that there is no limit")


def _ties(book: Rulebook) -> Iterator[RuleFinding]:
    """Rules of equal rank that disagree about one field of one fish somewhere."""
    days = sorted({r.valid_from for r in book.rules.values()})
    for position in book.placements.values():
        here = [r for r in book.rules.values() if stands_at(r, position)]
        taxa = sorted({t for rule in here for t in _members(rule, book)})
        for day in (date.fromisoformat(d) for d in days):
            if not any(in_force(r, day) for r in here):
                continue
            for taxon in taxa:
                for tie in compose(taxon, position, day, book).conflicts:
                    yield RuleFinding("tie", tie.first, f"{tie.field} of {taxon}: {tie.first} and {tie.second}",
                                      "let one of them replace the other, or give them different layers")


def _members(rule: Rule, book: Rulebook) -> frozenset[str]:
    return frozenset(rule.taxa).union(*(book.members[g] for g in rule.groups))
