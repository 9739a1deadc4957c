"""The rules of a place and day without a fish in hand: what is open, bags, lengths, openings, duties (layer 3)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date

from assistant.model.regulations import LengthLimit, OverCount, Placement, Rule, Rulebook
from assistant.reasoning.calendar import window_holding
from assistant.reasoning.catch import ANY_FISH
from assistant.reasoning.lawful import rule_set_on
from assistant.reasoning.precedence import Bag, Row, bearing, closes_only, compose, in_force, stands_at
from assistant.reasoning.season import season_on
from assistant.reasoning.verdict import Season


@dataclass(frozen=True, slots=True)
class Line:
    """What holds for a fish or group: season, bag, possession, lengths; ``listed`` is protected or prohibited.

    ``taxa`` are the fish that stand under exactly this; ``daily`` and ``possession`` None are "no limit" when
    ``no_limit`` is set, else not stated. ``shared`` are umbrellas above the bag, ``windows`` the seasons that count.
    """

    taxa: tuple[str, ...]
    group: str
    rule: str
    season: Season
    daily: int | None = None
    possession: int | None = None
    no_limit: bool = False
    lengths: tuple[LengthLimit, ...] = ()
    overs: tuple[OverCount, ...] = ()
    sub_limits: tuple[str, ...] = ()
    shared: tuple[Bag, ...] = ()
    listed: str = ""
    rules: tuple[str, ...] = ()
    windows: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Outlook:
    """The lines of one placement on a day, its closures, duties and orders; ``held`` False: no rule year holds.

    ``ahead`` are rules that close it to all fishing on other days of the year.
    """

    position: Placement
    day: date
    held: bool
    lines: tuple[Line, ...] = ()
    closures: tuple[str, ...] = ()
    ahead: tuple[str, ...] = ()
    duties: tuple[tuple[str, str], ...] = ()
    under_age: int | None = None
    as_of: str = ""
    rule_year: tuple[str, str] = ("", "")


def outlook(place: str, day: date, book: Rulebook, taxa: Sequence[str] = ()) -> Outlook:
    """The rules at the first placement of a place; ``outlooks`` gives every side or part."""
    return outlooks(place, day, book, taxa)[0]


def outlooks(place: str, day: date, book: Rulebook, taxa: Sequence[str] = ()) -> tuple[Outlook, ...]:
    """The rules of a place and day, one outlook for each side or part, for all fish or for these."""
    return tuple(_at(position, day, book, taxa) for position in book.positions(place))


def _at(position: Placement, day: date, book: Rulebook, taxa: Sequence[str]) -> Outlook:
    held = rule_set_on(position, day, book)
    if held is None:
        sets = book.rule_sets_of(position.jurisdiction)
        year = (sets[-1].valid_from, sets[-1].valid_through) if sets else ("", "")
        return Outlook(position, day, False, as_of=sets[-1].as_of if sets else "", rule_year=year)
    here = [r for r in book.rules.values() if in_force(r, day) and stands_at(r, position)]
    named = taxa or sorted({t for rule in here for t in _named(rule, book)})
    lines: dict[tuple[object, ...], Line] = {}
    for taxon in named:
        line = _line(taxon, position, day, book)
        if line is None:
            continue
        key = (line.group or taxon, line.rule, line.rules, line.listed)
        same = lines.get(key)
        lines[key] = line if same is None else replace(same, taxa=(*same.taxa, taxon))
    empty = [r for _, r in bearing(ANY_FISH, position, day, book)]
    return Outlook(
        position, day, True, tuple(sorted(lines.values(), key=lambda x: (x.rule, x.taxa))),
        tuple(r.id for r in empty if r.seasons), tuple(r.id for r in here if _closes_later(r, day, book)),
        tuple((d, r.id) for r in empty for d in r.obligations),
        min((r.under_age for r in empty if r.under_age is not None), default=None), held.as_of,
        (held.valid_from, held.valid_through))


def _closes_later(rule: Rule, day: date, book: Rulebook) -> bool:
    """True for a rule that closes all fishing in a part of the year in which the day does not lie."""
    windows = [book.seasons[s] for s in rule.seasons]
    return rule.all_fish and closes_only(rule, book) and not any(
        window_holding(w.opens, w.closes, day) for w in windows)


def _named(rule: Rule, book: Rulebook) -> set[str]:
    return set(rule.taxa).union(*(book.members[g] for g in rule.groups))


def _line(taxon: str, position: Placement, day: date, book: Rulebook) -> Line | None:
    for _, rule in reversed(bearing(taxon, position, day, book)):
        if rule.layer in ("protected", "prohibited"):
            return Line((taxon,), "", rule.id, Season("closed", rule.id), listed=rule.layer, rules=(rule.id,))
    row = compose(taxon, position, day, book)
    if not row.season and row.daily is None and not row.extra:
        return None
    return _told(row, day)


def _told(row: Row, day: date) -> Line:
    season = season_on(row, day)
    bag = row.daily or (row.extra[0] if row.extra else None)
    length = row.length
    return Line(
        (row.taxon,), bag.group if bag else "", bag.rule if bag else season.rule, season,
        bag.count if bag else None, row.possession.count if row.possession else None,
        bag is not None and bag.count is None, length.limits if length else (), length.overs if length else (),
        tuple(s.id for s, _ in row.subs), tuple(b for b in row.extra if b is not bag and b.kind != "possession"),
        rules=row.rules, windows=tuple(o.window.id for o in row.season))


def upcoming(position: Placement, day: date, book: Rulebook, taxa: Sequence[str] = ()) -> tuple[Rule, ...]:
    """The rules of a placement that begin later within the rule year of the day, for all fish or for these."""
    held = rule_set_on(position, day, book)
    if held is None:
        return ()
    later = [r for r in book.rules.values() if held.id in r.rule_set and stands_at(r, position)
             and day.isoformat() < r.valid_from <= held.valid_through]
    mine = [r for r in later if not taxa or r.all_fish or _bears(r, taxa, book)]
    return tuple(sorted(mine, key=lambda r: (r.valid_from, r.id)))


def _bears(rule: Rule, taxa: Sequence[str], book: Rulebook) -> bool:
    return any(t in rule.taxa or any(book.in_group(t, g) for g in rule.groups) for t in taxa)


def duties_at(place: str, day: date, book: Rulebook) -> tuple[tuple[str, str], ...]:
    """Every obligation with its rule that holds somewhere at a place on a day, whatever the fish."""
    found = {(duty, rule.id) for position in book.positions(place) for rule in book.rules.values()
             if in_force(rule, day) and stands_at(rule, position) for duty in rule.obligations}
    return tuple(sorted(found))
