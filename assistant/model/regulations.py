"""The frozen records of fishing rules and the rule book they make together (layer 2).

Identifiers are local parts of IRIs. Lengths are exact decimals in the unit of the rule. Dates are ISO text;
opening and closing days are date expressions (``assistant.reasoning.calendar``). Rules, season windows, length
limits and the rest refer to one another by id; :class:`Rulebook` holds them all with the family tree that groups
need.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Protocol, TypeVar

LAYERS: tuple[str, ...] = (
    "jurisdiction", "zone", "water-type", "water", "segment", "border", "emergency",
    "protected", "prohibited",
)
"""Layers of precedence, weakest first."""


@dataclass(frozen=True, slots=True)
class RuleSet:
    """One rule year of one jurisdiction: outside it nothing is known."""

    id: str
    label: str
    jurisdiction: str
    unit: str
    valid_from: str
    valid_through: str
    as_of: str
    invented: bool
    source: tuple[str, ...]
    basis: str
    note: str


@dataclass(frozen=True, slots=True)
class Placement:
    """Where a place stands under the rules: jurisdiction, zone, water types, and the water it is a part of.

    A border water has one placement a side; a river in parts has one a segment.
    """

    id: str
    place: str
    part_of: str
    jurisdiction: str
    zone: str
    water_types: tuple[str, ...]
    side: str
    note: str


@dataclass(frozen=True, slots=True)
class RuleGroup:
    """Fish that a rule names together; ``crosses`` takes in every cross whose two parents both belong."""

    id: str
    label: str
    words: tuple[str, ...]
    jurisdiction: tuple[str, ...]
    taxa: tuple[str, ...]
    includes: tuple[str, ...]
    crosses: bool
    note: str


@dataclass(frozen=True, slots=True)
class SeasonWindow:
    """Days from ``opens`` to ``closes``, both included; ``mode`` is harvest, catch-and-release or closed."""

    id: str
    opens: str
    closes: str
    mode: str
    open_water: bool


@dataclass(frozen=True, slots=True)
class LengthLimit:
    """Keep only (``keep-within``) or put back (``release-within``) fish between two lengths.

    An end without a value is open.
    """

    id: str
    effect: str
    low: Decimal | None
    low_included: bool
    high: Decimal | None
    high_included: bool
    unit: str


@dataclass(frozen=True, slots=True)
class OverCount:
    """At most ``count`` kept fish longer than ``length`` (or as long, when ``included``)."""

    id: str
    count: int
    length: Decimal
    included: bool
    unit: str


@dataclass(frozen=True, slots=True)
class SubLimit:
    """Of the fish of an aggregate, at most ``count`` may be of these taxa."""

    id: str
    label: str
    taxa: tuple[str, ...]
    count: int


@dataclass(frozen=True, slots=True)
class ClosedHours:
    """A part of every day in which nobody may fish; "24:00" is the end of the day."""

    id: str
    starts: str
    ends: str


@dataclass(frozen=True, slots=True)
class Obligation:
    """What a rule demands besides limits; ``topic`` is bait, gear, transport, licence, report or border."""

    id: str
    label: str
    text: str
    topic: str
    words: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule as its text states it: what is absent is inherited from weaker layers, never "no limit"."""

    id: str
    notation: str
    label: str
    rule_set: tuple[str, ...]
    layer: str
    places: tuple[str, ...]
    water_types: tuple[str, ...]
    override: str
    valid_from: str
    valid_through: str
    all_fish: bool = False
    taxa: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()
    seasons: tuple[str, ...] = ()
    daily: int | None = None
    no_daily_limit: bool = False
    possession: int | None = None
    no_possession_limit: bool = False
    counting: str = ""
    aggregate: str = ""
    sub_limits: tuple[str, ...] = ()
    lengths: tuple[str, ...] = ()
    overs: tuple[str, ...] = ()
    no_length_limit: bool = False
    length_method: str = ""
    closed_hours: tuple[str, ...] = ()
    under_age: int | None = None
    obligations: tuple[str, ...] = ()
    border_regime: str = ""
    lifts: tuple[str, ...] = ()
    culling: bool = False
    order_number: str = ""
    rescinded_on: str = ""
    reviewer: str = ""
    invented: bool = False
    source: tuple[str, ...] = ()
    basis: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Lineage:
    """What groups need of the family tree: for each taxon its ancestors, for each cross its two parents."""

    ancestors: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    crosses: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    def parents(self, taxon: str) -> tuple[str, ...]:
        """The two parents of a cross, else nothing; a cross that the base does not hold is read from its id.

        >>> Lineage().parents("lepomis-cyanellus-x-lepomis-gibbosus")
        ('lepomis-cyanellus', 'lepomis-gibbosus')
        """
        known = self.crosses.get(taxon)
        if known is not None:
            return known
        parts = tuple(taxon.split("-x-"))
        return parts if len(parts) == 2 else ()

    def above(self, taxon: str) -> tuple[str, ...]:
        """The genus, family and so on that a taxon belongs to."""
        return self.ancestors.get(taxon, ())

    def cross_of(self, first: str, second: str) -> str:
        """The id of the cross of two taxa, whichever way round it is held."""
        for cross, parents in sorted(self.crosses.items()):
            if set(parents) == {first, second}:
                return cross
        return "-x-".join(sorted((first, second)))


@dataclass(frozen=True, slots=True)
class Rulebook:
    """All rules that are held, by id, with their parts; a value that answers are computed from."""

    rule_sets: Mapping[str, RuleSet]
    placements: Mapping[str, Placement]
    groups: Mapping[str, RuleGroup]
    seasons: Mapping[str, SeasonWindow]
    lengths: Mapping[str, LengthLimit]
    overs: Mapping[str, OverCount]
    sub_limits: Mapping[str, SubLimit]
    hours: Mapping[str, ClosedHours]
    rules: Mapping[str, Rule]
    lineage: Lineage
    members: Mapping[str, frozenset[str]]
    """Each group's listed taxa, its included groups unfolded."""

    def positions(self, place: str) -> tuple[Placement, ...]:
        """Every placement that a place may mean: its own and those of its parts (sides, segments)."""
        return tuple(p for p in self.placements.values() if place in (p.place, p.part_of))

    def rule_sets_of(self, jurisdiction: str) -> tuple[RuleSet, ...]:
        """The rule years held for a jurisdiction, in order of their beginning."""
        mine = (s for s in self.rule_sets.values() if s.jurisdiction == jurisdiction)
        return tuple(sorted(mine, key=lambda s: s.valid_from))

    def in_group(self, taxon: str, group: str, seen: frozenset[str] = frozenset()) -> bool:
        """True when a taxon is in a group: listed, under a listed genus or family, or a cross inside it."""
        listed = self.members.get(group, frozenset())
        if taxon in listed or any(a in listed for a in self.lineage.above(taxon)):
            return True
        record = self.groups.get(group)
        parents = self.lineage.parents(taxon)
        if record is None or not parents:
            return False
        if record.crosses and all(self.in_group(p, group) for p in parents):
            return True
        seen |= {group}
        return any(self.in_group(taxon, inner, seen) for inner in record.includes if inner not in seen)


def _unfold(
    group: str, groups: Mapping[str, RuleGroup], seen: frozenset[str] = frozenset(),
) -> frozenset[str]:
    if group in seen or group not in groups:
        return frozenset()
    record = groups[group]
    inner = [_unfold(g, groups, seen | {group}) for g in record.includes]
    return frozenset(record.taxa).union(*inner)


class _HasId(Protocol):
    @property
    def id(self) -> str: ...


R = TypeVar("R", bound=_HasId)


def _by_id(records: Iterable[R]) -> dict[str, R]:
    return {record.id: record for record in sorted(records, key=lambda r: r.id)}


def assemble(
    rule_sets: Iterable[RuleSet], placements: Iterable[Placement], groups: Iterable[RuleGroup],
    seasons: Iterable[SeasonWindow], lengths: Iterable[LengthLimit], overs: Iterable[OverCount],
    sub_limits: Iterable[SubLimit], hours: Iterable[ClosedHours], rules: Iterable[Rule], lineage: Lineage,
) -> Rulebook:
    """The rule book of these records."""
    by_group = _by_id(groups)
    return Rulebook(
        _by_id(rule_sets), _by_id(placements), by_group, _by_id(seasons), _by_id(lengths), _by_id(overs),
        _by_id(sub_limits), _by_id(hours), _by_id(rules), lineage,
        {group: _unfold(group, by_group) for group in by_group},
    )
