"""Which rules bear on one kind of fish at one place and day, and the row of fields they leave (layer 3).

Layers are laid from the weakest to the strongest; within a layer a rule for all fish comes before one for a
group, that before one for the species, and an older before a newer. Two rules of equal rank that disagree give
the stricter value and a conflict for the curator.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from assistant.model.regulations import (
    LAYERS,
    ClosedHours,
    LengthLimit,
    OverCount,
    Placement,
    Rule,
    Rulebook,
    SeasonWindow,
    SubLimit,
)
from assistant.reasoning.calendar import window_holding
from assistant.reasoning.catch import ANY_FISH
from assistant.reasoning.verdict import Conflict, Replacement

ALL_FISH, GROUP, SPECIES = 1, 2, 3
"""How closely a rule names a fish."""


@dataclass(frozen=True, slots=True)
class Bag:
    """A limit on a number of fish of a group or a taxon; ``count`` None is "no limit" as stated."""

    kind: str
    count: int | None
    group: str
    taxon: str
    rule: str

    @property
    def name(self) -> str:
        """The group or taxon that is counted."""
        return self.group or self.taxon


@dataclass(frozen=True, slots=True)
class Opening:
    """A season window with its rule and the rank of the layer that stated it."""

    window: SeasonWindow
    rule: str
    rank: int
    all_fish: bool


@dataclass(frozen=True, slots=True)
class LengthField:
    """All length parts of one rule: limits and over-counts stand or fall together."""

    limits: tuple[LengthLimit, ...]
    overs: tuple[OverCount, ...]
    method: str
    rules: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Row:
    """The fields in force for one taxon at one placement on one day; None where no rule states a field."""

    taxon: str
    position: Placement
    season: tuple[Opening, ...] = ()
    daily: Bag | None = None
    possession: Bag | None = None
    length: LengthField | None = None
    subs: tuple[tuple[SubLimit, str], ...] = ()
    extra: tuple[Bag, ...] = ()
    hours: tuple[tuple[ClosedHours, str], ...] = ()
    access: tuple[int, str] | None = None
    obligations: tuple[tuple[str, str], ...] = ()
    replaced: tuple[Replacement, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    regime: tuple[str, ...] = ()

    @property
    def rules(self) -> tuple[str, ...]:
        """The rules whose words still count, in order of id."""
        found = {opening.rule for opening in self.season} | {bag.rule for bag in self.extra}
        found |= set(self.regime)
        found |= {bag.rule for bag in (self.daily, self.possession) if bag}
        found |= set(self.length.rules) if self.length else set()
        found |= {rule for _, rule in self.subs} | {rule for _, rule in self.hours}
        found |= {self.access[1]} if self.access else set()
        return tuple(sorted(found))


def in_force(rule: Rule, day: date) -> bool:
    """True between a rule's validity dates, both included; an order without end runs until rescinded."""
    last = rule.valid_through or rule.rescinded_on
    return rule.valid_from <= day.isoformat() and (not last or day.isoformat() <= last)


def closeness(rule: Rule, taxon: str, book: Rulebook) -> int:
    """How closely a rule names a taxon: 3 species, 2 group or higher taxon, 1 all fish, 0 not at all."""
    if taxon in rule.taxa:
        return SPECIES
    if taxon != ANY_FISH:
        above = book.lineage.above(taxon)
        if any(a in rule.taxa for a in above) or any(book.in_group(taxon, g) for g in rule.groups):
            return GROUP
    return ALL_FISH if rule.all_fish else 0


def stands_at(rule: Rule, position: Placement) -> bool:
    """True when a rule is made for this place or for one that it lies in."""
    spots = {position.place, position.part_of, position.zone, position.jurisdiction}
    typed = any(kind in position.water_types for kind in rule.water_types)
    return typed or any(place in spots for place in rule.places if place)


def groups_at(positions: Iterable[Placement], book: Rulebook) -> tuple[str, ...]:
    """The fish groups that rules at these placements name, those of the strongest layers first."""
    where = tuple(positions)
    here = [r for r in book.rules.values() if any(stands_at(r, p) for p in where)]
    ranked = sorted(here, key=lambda r: (-LAYERS.index(r.layer), r.id))
    return tuple(dict.fromkeys(g for rule in ranked for g in (*rule.groups, rule.aggregate) if g))


def closes_only(rule: Rule, book: Rulebook) -> bool:
    """True for a rule whose season is nothing but closed windows: outside them it says nothing."""
    modes = {book.seasons[s].mode for s in rule.seasons}
    return modes == {"closed"}


def bearing(taxon: str, position: Placement, day: date, book: Rulebook) -> tuple[tuple[int, Rule], ...]:
    """The rules that bear on a fish at a place and day with how closely they name it, weakest first."""
    found = []
    for rule in book.rules.values():
        if not stands_at(rule, position) or not in_force(rule, day) or not (close := closeness(rule, taxon, book)):
            continue
        if closes_only(rule, book) and not any(_holds(book.seasons[s], day) for s in rule.seasons):
            continue
        found.append((close, rule))
    return tuple(sorted(found, key=lambda f: (LAYERS.index(f[1].layer), f[0], f[1].valid_from, f[1].id)))


def _holds(window: SeasonWindow, day: date) -> bool:
    return window_holding(window.opens, window.closes, day) is not None


def compose(taxon: str, position: Placement, day: date, book: Rulebook) -> Row:
    """The row of fields left when all rules but the protected and prohibited lists are laid in order."""
    row = Row(taxon, position)
    ranks: dict[str, tuple[tuple[int, int, str], str]] = {}
    for close, rule in bearing(taxon, position, day, book):
        if rule.layer in ("protected", "prohibited"):
            continue
        rank = (LAYERS.index(rule.layer), close, rule.valid_from)
        row = _lay(row, rule, rank, ranks, book)
    return row


def _lay(
    row: Row, rule: Rule, rank: tuple[int, int, str],
    ranks: dict[str, tuple[tuple[int, int, str], str]], book: Rulebook,
) -> Row:
    """One more rule on the row; ``ranks`` remembers who set each field, to find ties."""
    if rule.override == "replace-row" and not any(r == rank for r, _ in ranks.values()):
        row = _dropped(row, rule)
        ranks.clear()
    row = _laid_season(row, rule, rank, ranks, book)
    row = _laid_bags(row, rule, rank, ranks)
    row = _laid_length(row, rule, rank, ranks, book)
    hours = tuple((book.hours[h], rule.id) for h in rule.closed_hours)
    duties = tuple((what, rule.id) for what in rule.obligations)
    access = row.access
    if rule.under_age is not None:
        access = (min(rule.under_age, access[0] if access else rule.under_age), rule.id)
    regime = (rule.id,) if rule.border_regime else ()
    return replace(row, hours=row.hours + hours, obligations=row.obligations + duties, access=access,
                   regime=row.regime + regime)


def _dropped(row: Row, rule: Rule) -> Row:
    """The row emptied by ``replace-row``; counts over several waters stay, but not under a joint schedule."""
    fields = [("season", o.rule) for o in row.season] + [(b.kind, b.rule) for b in (row.daily,) if b]
    fields += [("length", r) for r in (row.length.rules if row.length else ())]
    gone = tuple(Replacement(old, name, rule.id) for name, old in dict.fromkeys(fields))
    extra = () if rule.layer == "border" else row.extra
    return replace(row, season=(), daily=None, possession=None, length=None, subs=(), extra=extra,
                   replaced=row.replaced + gone)


def _tie(
    field: str, rule: Rule, rank: tuple[int, int, str], ranks: dict[str, tuple[tuple[int, int, str], str]],
) -> str:
    """The other rule of equal rank that set this field already, if any; the field is now this rule's."""
    before = ranks.get(field)
    ranks[field] = (rank, rule.id)
    return before[1] if before is not None and before[0] == rank else ""


def _laid_season(
    row: Row, rule: Rule, rank: tuple[int, int, str],
    ranks: dict[str, tuple[tuple[int, int, str], str]], book: Rulebook,
) -> Row:
    if not rule.seasons:
        return row
    new = tuple(Opening(book.seasons[s], rule.id, rank[0], rule.all_fish) for s in rule.seasons)
    if rule.override == "add":
        return replace(row, season=row.season + new)
    other = _tie("season", rule, rank, ranks)
    if other:
        found = Conflict("season", other, rule.id)
        same = {o.window for o in new} == {o.window for o in row.season if o.rule == other}
        conflicts = row.conflicts if same else (*row.conflicts, found)
        return replace(row, season=row.season + new, conflicts=conflicts)
    gone = tuple(Replacement(o.rule, "season", rule.id) for o in row.season)
    return replace(row, season=new, replaced=row.replaced + tuple(dict.fromkeys(gone)))


def _laid_bags(
    row: Row, rule: Rule, rank: tuple[int, int, str], ranks: dict[str, tuple[tuple[int, int, str], str]],
) -> Row:
    if rule.counting in ("umbrella", "total-across-waters"):
        return replace(row, extra=row.extra + _bags_of(rule, row.taxon, rule.counting))
    if rule.daily is not None or rule.no_daily_limit:
        row = _laid_daily(row, rule, rank, ranks)
    if rule.possession is not None or rule.no_possession_limit:
        row = _laid_possession(row, rule, rank, ranks)
    return row


def _bags_of(rule: Rule, taxon: str, kind: str) -> tuple[Bag, ...]:
    """The day's count and the possession count of an umbrella or a total across waters."""
    own = "" if rule.aggregate else taxon
    day = (Bag(kind, rule.daily, rule.aggregate, own, rule.id),) if rule.daily is not None else ()
    if rule.possession is None:
        return day
    return (*day, Bag("possession", rule.possession, rule.aggregate, own, rule.id))


def _laid_daily(
    row: Row, rule: Rule, rank: tuple[int, int, str], ranks: dict[str, tuple[tuple[int, int, str], str]],
) -> Row:
    own = "" if rule.aggregate else row.taxon
    bag = Bag("bag", None if rule.no_daily_limit else rule.daily, rule.aggregate, own, rule.id)
    other = _tie("daily", rule, rank, ranks)
    subs: tuple[tuple[SubLimit, str], ...] = ()
    if other and row.daily is not None:
        stricter = min(bag, row.daily, key=lambda b: (b.count is None, b.count or 0))
        conflicts = row.conflicts
        if bag.count != row.daily.count:
            conflicts = (*row.conflicts, Conflict("bag", other, rule.id))
        return replace(row, daily=stricter, conflicts=conflicts)
    gone = (Replacement(row.daily.rule, "bag", rule.id),) if row.daily else ()
    extra = () if rule.no_daily_limit else row.extra
    return replace(row, daily=bag, subs=subs, extra=extra, replaced=row.replaced + gone)


def _laid_possession(
    row: Row, rule: Rule, rank: tuple[int, int, str], ranks: dict[str, tuple[tuple[int, int, str], str]],
) -> Row:
    own = "" if rule.aggregate else row.taxon
    limit = None if rule.no_possession_limit else rule.possession
    bag = Bag("possession", limit, rule.aggregate, own, rule.id)
    other = _tie("possession", rule, rank, ranks)
    if other and row.possession is not None:
        stricter = min(bag, row.possession, key=lambda b: (b.count is None, b.count or 0))
        conflicts = row.conflicts
        if bag.count != row.possession.count:
            conflicts = (*row.conflicts, Conflict("possession", other, rule.id))
        return replace(row, possession=stricter, conflicts=conflicts)
    return replace(row, possession=bag)


def _laid_length(
    row: Row, rule: Rule, rank: tuple[int, int, str],
    ranks: dict[str, tuple[tuple[int, int, str], str]], book: Rulebook,
) -> Row:
    if rule.sub_limits:
        row = replace(row, subs=row.subs + tuple((book.sub_limits[s], rule.id) for s in rule.sub_limits))
    if not (rule.lengths or rule.overs or rule.no_length_limit):
        return row
    new = LengthField(tuple(book.lengths[i] for i in rule.lengths), tuple(book.overs[i] for i in rule.overs),
                      rule.length_method, (rule.id,))
    old = row.length
    if old is None:
        ranks["length"] = (rank, rule.id)
        return replace(row, length=new)
    other = "" if rule.override == "add" else _tie("length", rule, rank, ranks)
    if rule.override == "add" or other:
        both = LengthField(old.limits + new.limits, old.overs + new.overs, old.method or new.method,
                           old.rules + new.rules)
        same = (old.limits, old.overs) == (new.limits, new.overs)
        conflicts = row.conflicts
        if other and not same:
            conflicts = (*row.conflicts, Conflict("length", other, rule.id))
        return replace(row, length=both, conflicts=conflicts)
    gone = tuple(Replacement(r, "length", rule.id) for r in old.rules)
    return replace(row, length=new, replaced=row.replaced + gone)
