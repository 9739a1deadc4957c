"""What the rules allow for one kind of fish at one place: tests in order, each exact or openly unsure (layer 3)."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import date

from assistant.model.regulations import LAYERS, Placement, Rule, Rulebook, RuleSet
from assistant.reasoning.calendar import within_hours
from assistant.reasoning.catch import ANY_FISH, FORK, UNSAID, Catch, Kept, Length
from assistant.reasoning.counting import allowed_by, is_over, names, over_tally, sub_tally, tally
from assistant.reasoning.precedence import Row, bearing, compose, in_force, stands_at
from assistant.reasoning.season import season_on
from assistant.reasoning.verdict import Act, Ask, Assumed, Outcome, Reason, Season, Tally, Why

KEEP = frozenset({Act.KEEP, Act.RELEASE, Act.KEEP_DEAD})
"""A fish that may be kept may be killed as well: where another candidate must not go back, that is lawful for both."""
RELEASE = frozenset({Act.RELEASE})
DEAD = frozenset({Act.KEEP_DEAD})
NONE: frozenset[Act] = frozenset()
_STATES_A_ROW = ("seasons", "daily", "possession", "lengths", "overs")


@dataclass(frozen=True, slots=True)
class Finding:
    """One test that failed (``sure``) or could not be decided."""

    reason: Reason
    sure: bool


def outcomes(taxon: str, position: Placement, day: date, catch: Catch, book: Rulebook) -> tuple[Outcome, ...]:
    """What is lawful for a candidate at a placement. A cross that no rule names stands under both its parents."""
    parents = book.lineage.parents(taxon)
    if not parents or named(taxon, position, day, book):
        return (_outcome(taxon, position, day, catch, book),)
    each = [replace(o, assumed=(Assumed.STRICTER_PARENT, *o.assumed))
            for parent in parents for o in outcomes(parent, position, day, catch, book)]
    listed = tuple(o for o in each if o.reason.why in (Why.PROTECTED, Why.PROHIBITED))
    return listed or tuple(each)


def named(taxon: str, position: Placement, day: date, book: Rulebook) -> bool:
    """True when some rule names this fish, by itself or as one of a group, and says what may be done with it."""
    return any(close > 1 and _says_something(rule) for close, rule in bearing(taxon, position, day, book))


def _says_something(rule: Rule) -> bool:
    return rule.layer in ("protected", "prohibited") or any(getattr(rule, name) for name in _STATES_A_ROW)


def rule_set_on(position: Placement, day: date, book: Rulebook) -> RuleSet | None:
    """The rule year of a placement's jurisdiction that a day lies in, if one is held."""
    for held in book.rule_sets_of(position.jurisdiction):
        if held.valid_from <= day.isoformat() <= held.valid_through:
            return held
    return None


def _outcome(taxon: str, position: Placement, day: date, catch: Catch, book: Rulebook) -> Outcome:
    held = rule_set_on(position, day, book)
    if held is None:
        return _outside(taxon, position, book)
    row = compose(taxon, position, day, book)
    found = _judged(row, day, catch, book)
    return replace(found, obligations=found.obligations or row.obligations, replaced=row.replaced,
                   conflicts=row.conflicts, rules=tuple(sorted({*found.rules, *row.regime})),
                   as_of=held.as_of, rule_year=(held.valid_from, held.valid_through))


def _outside(taxon: str, position: Placement, book: Rulebook) -> Outcome:
    """Nothing is known: say which rule year is held, the latest one."""
    sets = book.rule_sets_of(position.jurisdiction)
    reason = Reason(Why.OUTSIDE_RULE_YEAR if sets else Why.NO_RULE, field="validity", taxon=taxon)
    if not sets:
        return Outcome(taxon, position, NONE, NONE, reason)
    last = sets[-1]
    span = (date.fromisoformat(last.valid_from), date.fromisoformat(last.valid_through))
    return Outcome(taxon, position, NONE, NONE, replace(reason, span=span), as_of=last.as_of,
                   rule_year=(last.valid_from, last.valid_through))


def _judged(row: Row, day: date, catch: Catch, book: Rulebook) -> Outcome:
    listed = _listed(row, day, book)
    if listed is not None:
        return listed
    season = season_on(row, day, catch.on_ice)
    shut = _shut(row, season, catch)
    if shut is not None and shut.sure:
        return _release(row, season, shut.reason)
    if row.taxon == ANY_FISH or not _bag_known(row, season):
        return Outcome(row.taxon, row.position, NONE, NONE, _no_rule(row), season, rules=row.rules)
    kept = (*(catch.kept or ()), *catch.besides)
    tallies = _tallies(row, kept, book)
    findings = [*([shut] if shut else []), *_tests(row, season, catch.length, tallies, kept, book)]
    failed = next((f for f in findings if f.sure), None)
    if failed is not None:
        return _release(row, season, failed.reason, tallies)
    if findings:
        return Outcome(row.taxon, row.position, RELEASE, KEEP, findings[0].reason, season, tallies,
                       _assumed(row, catch), rules=row.rules)
    return Outcome(row.taxon, row.position, KEEP, KEEP, _may_keep(row, season), season, tallies,
                   _assumed(row, catch), rules=row.rules)


def _release(row: Row, season: Season, reason: Reason, tallies: tuple[Tally, ...] = ()) -> Outcome:
    rules = _with(row, reason)
    return Outcome(row.taxon, row.position, RELEASE, RELEASE, reason, season, tallies, rules=rules)


def _with(row: Row, reason: Reason) -> tuple[str, ...]:
    return tuple(sorted({*row.rules, reason.rule} - {""}))


def _no_rule(row: Row) -> Reason:
    asks = Ask.FISH if row.taxon == ANY_FISH else None
    return Reason(Why.NO_FISH if row.taxon == ANY_FISH else Why.NO_RULE, taxon=row.taxon, asks=asks)


def _bag_known(row: Row, season: Season) -> bool:
    """An open season with no bag stated anywhere is not "no limit": nothing is known."""
    return row.daily is not None or bool(row.extra) or season.mode == "catch-and-release"


def _may_keep(row: Row, season: Season) -> Reason:
    bags = ([row.daily] if row.daily else []) + list(row.extra)
    rule = bags[0].rule if bags else season.rule
    return Reason(Why.MAY_KEEP, rule, "bag", row.taxon, season)


def _listed(row: Row, day: date, book: Rulebook) -> Outcome | None:
    """The protected and prohibited lists, which no other rule loosens unless it lifts them by name."""
    bears = [r for _, r in bearing(row.taxon, row.position, day, book)]
    lifted = {name for rule in bears for name in rule.lifts}
    lists = [r for r in bears if r.layer in ("protected", "prohibited") and r.id not in lifted]
    if not lists:
        return None
    rule = max(lists, key=lambda r: (LAYERS.index(r.layer), r.id))
    duties = tuple((what, rule.id) for what in rule.obligations) + row.obligations
    why, acts = (Why.PROTECTED, RELEASE) if rule.layer == "protected" else (Why.PROHIBITED, DEAD)
    return Outcome(row.taxon, row.position, acts, acts, Reason(why, rule.id, "list", row.taxon),
                   obligations=duties, rules=(rule.id,))


def _shut(row: Row, season: Season, catch: Catch) -> Finding | None:
    """Is fishing itself open: to this angler, on this day, at this hour, on this ice?"""
    if row.access is not None:
        limit, rule = row.access
        reason = Reason(Why.NOT_FOR_THIS_ANGLER, rule, "access", row.taxon, under_age=limit)
        if catch.age is not None and catch.age >= limit:
            return Finding(reason, True)
    if season.mode == "closed" and not (season.ice_matters and catch.on_ice is None):
        return Finding(_closed_reason(row, season, catch), True)
    hours = _hours(row, season, catch)
    if hours is not None and hours.sure:
        return hours
    if row.access is not None and catch.age is None:
        return Finding(replace(reason, why=Why.AGE_UNSAID, asks=Ask.AGE), False)
    if season.ice_matters and catch.on_ice is None:
        return Finding(Reason(Why.ICE_UNSAID, season.rule, "season", row.taxon, season, asks=Ask.ICE), False)
    return hours


def _closed_reason(row: Row, season: Season, catch: Catch) -> Reason:
    if season.ice_matters and catch.on_ice:
        return Reason(Why.CLOSED_ICE, season.rule, "season", row.taxon, season)
    whole = any(o.rule == season.rule and o.all_fish for o in row.season)
    return Reason(Why.CLOSED_WATER if whole else Why.CLOSED_SEASON, season.rule, "season", row.taxon, season)


def _hours(row: Row, season: Season, catch: Catch) -> Finding | None:
    for hours, rule in row.hours:
        reason = Reason(Why.CLOSED_HOURS, rule, "hours", row.taxon, season, hours=(hours.starts, hours.ends))
        if catch.moment is None:
            return Finding(replace(reason, why=Why.TIME_UNSAID, asks=Ask.TIME), False)
        if within_hours(hours.starts, hours.ends, catch.moment):
            return Finding(reason, True)
    return None


def _tests(
    row: Row, season: Season, length: Length, tallies: tuple[Tally, ...], kept: tuple[Kept, ...],
    book: Rulebook,
) -> Iterator[Finding]:
    """Open for harvest, length, one-over, sub-limit, bag, umbrella, total across waters, possession."""
    none = row.daily is not None and row.daily.count == 0
    if season.mode == "catch-and-release" or none:
        rule = row.daily.rule if none and row.daily and season.mode == "harvest" else season.rule
        yield Finding(Reason(Why.RELEASE_ONLY, rule, "season", row.taxon, season), True)
        return
    yield from _length_tests(row, season, length, kept, book)
    for count in tallies:
        reason = Reason(_COUNTS[count.kind], count.rule, count.kind, row.taxon, season, tally=count)
        if count.full:
            yield Finding(reason, True)
        elif count.may_be_full:
            yield Finding(replace(reason, why=Why.KEPT_UNSURE, asks=Ask.KEPT_KINDS), False)


_COUNTS: dict[str, Why] = {
    "sub-limit": Why.SUB_LIMIT, "bag": Why.BAG, "umbrella": Why.UMBRELLA,
    "total-across-waters": Why.TOTAL_ACROSS_WATERS, "possession": Why.POSSESSION,
}


def _length_tests(
    row: Row, season: Season, length: Length, kept: tuple[Kept, ...], book: Rulebook,
) -> Iterator[Finding]:
    field = row.length
    if field is None:
        return
    for limit in field.limits:
        reason = Reason(Why.LENGTH, field.rules[-1], "length", row.taxon, season, length=limit)
        if _wrong_method(length, field.method):
            yield Finding(replace(reason, why=Why.LENGTH_METHOD, asks=Ask.TOTAL_LENGTH), False)
            continue
        allowed = allowed_by(length, limit)
        if allowed is False:
            yield Finding(reason, True)
        elif allowed is None:
            yield Finding(_unsure(reason, length), False)
    for over in field.overs:
        over_count = over_tally(over, row, kept, book)
        rule = field.rules[-1]
        reason = Reason(Why.ONE_OVER, rule, "length", row.taxon, season, over=over, tally=over_count)
        longer = None if _wrong_method(length, field.method) else is_over(length, over)
        if longer is False or not over_count.may_be_full:
            continue
        if longer and over_count.full:
            yield Finding(reason, True)
        elif longer:
            yield Finding(replace(reason, why=Why.KEPT_UNSURE, asks=Ask.KEPT_LENGTHS), False)
        else:
            yield Finding(_unsure(reason, length), False)


def _wrong_method(length: Length, method: str) -> bool:
    """A fork length says nothing under a total-length rule, nor the other way round."""
    return length != UNSAID and (length.method == FORK) != (method == "fork")


def _unsure(reason: Reason, length: Length) -> Reason:
    why = Why.LENGTH_UNSAID if length == UNSAID else Why.LENGTH_UNSURE
    return replace(reason, why=why, asks=Ask.LENGTH)


def _tallies(row: Row, kept: tuple[Kept, ...], book: Rulebook) -> tuple[Tally, ...]:
    """Every count this fish would add to, in the order in which they are tested."""
    subs = tuple(sub_tally(s, rule, kept, book) for s, rule in row.subs if names(s, row.taxon, book))
    bags = ((row.daily,) if row.daily else ()) + row.extra + ((row.possession,) if row.possession else ())
    order = list(_COUNTS)
    counted = (tally(bag, kept, book) for bag in bags if bag.count is not None)
    return subs + tuple(sorted(counted, key=lambda t: order.index(t.kind)))


def _assumed(row: Row, catch: Catch) -> tuple[Assumed, ...]:
    found = []
    limited = row.daily is not None and row.daily.count is not None
    if catch.kept is None and limited:
        found.append(Assumed.NOTHING_KEPT)
    stored = any(k.held and not k.today for k in catch.kept or ())
    held_limit = row.possession is not None and row.possession.count is not None
    if catch.kept is not None and not stored and held_limit:
        found.append(Assumed.NOTHING_STORED)
    return tuple(found)


def covered(position: Placement, day: date, book: Rulebook) -> tuple[Rule, ...]:
    """All rules in force at a placement on a day, whatever the fish."""
    return tuple(r for r in book.rules.values() if in_force(r, day) and stands_at(r, position))
