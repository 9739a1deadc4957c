"""The verdict on a fish under the rules, as a value without wording: codes, ids and numbers (layer 3)."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from assistant.model.regulations import LengthLimit, OverCount, Placement


class Word(StrEnum):
    """The five verdicts."""

    KEEP = "keep"
    RELEASE = "release"
    CLOSED = "closed"
    DO_NOT_RELEASE = "do-not-release"
    UNKNOWN = "unknown"


class Act(StrEnum):
    """What may lawfully be done with the fish."""

    KEEP = "keep"
    RELEASE = "release"
    KEEP_DEAD = "keep-dead"


class Why(StrEnum):
    """Why a verdict is what it is."""

    MAY_KEEP = "may-keep"
    PROTECTED = "protected"
    PROHIBITED = "prohibited"
    CLOSED_WATER = "closed-water"
    CLOSED_SEASON = "closed-season"
    CLOSED_HOURS = "closed-hours"
    CLOSED_ICE = "closed-without-open-water"
    NOT_FOR_THIS_ANGLER = "not-for-this-angler"
    RELEASE_ONLY = "release-only"
    LENGTH = "length"
    ONE_OVER = "one-over"
    SUB_LIMIT = "sub-limit"
    BAG = "bag"
    UMBRELLA = "umbrella"
    TOTAL_ACROSS_WATERS = "total-across-waters"
    POSSESSION = "possession"
    LENGTH_UNSURE = "length-unsure"
    LENGTH_UNSAID = "length-unsaid"
    LENGTH_METHOD = "length-method"
    KEPT_UNSURE = "kept-unsure"
    AGE_UNSAID = "age-unsaid"
    TIME_UNSAID = "time-unsaid"
    ICE_UNSAID = "ice-unsaid"
    NO_RULE = "no-rule"
    OUTSIDE_RULE_YEAR = "outside-rule-year"
    NO_LAWFUL_ACT = "no-lawful-act"
    NO_PLACE = "no-place"
    SEVERAL_PLACES = "several-places"
    NO_RULES_FOR_PLACE = "no-rules-for-place"
    PRIVATE_WATER = "private-water"
    NO_FISH = "no-fish"
    NO_DATE = "no-date"


class Ask(StrEnum):
    """The one question whose answer would change the verdict."""

    PLACE = "place"
    SEGMENT = "segment"
    SIDE = "side"
    DATE = "date"
    TIME = "time"
    FISH = "fish"
    LENGTH = "length"
    TOTAL_LENGTH = "total-length"
    KEPT = "kept"
    KEPT_LENGTHS = "kept-lengths"
    KEPT_KINDS = "kept-kinds"
    AGE = "age"
    ICE = "ice"


class Assumed(StrEnum):
    """What was taken for granted because it was not said."""

    NOTHING_KEPT = "nothing-kept"
    NOTHING_STORED = "nothing-stored"
    STRICTER_PARENT = "stricter-parent"
    STRICTER_SIDE = "stricter-side"
    STRICTER_PART = "stricter-part"
    GROUP_MEMBERS = "group-members"
    TOTAL_LENGTH = "total-length"


class Remark(StrEnum):
    """What is worth saying besides the verdict."""

    CONFLICT = "conflict"
    NAME_NOT_NEEDED = "name-not-needed"
    DEAD_SUITS_ALL = "dead-suits-all"
    DEAD_STILL_GOES_BACK = "dead-still-goes-back"
    CUT_THE_LINE = "cut-the-line"
    MEASURED_AS_IT_IS = "measured-as-it-is"
    NOT_COVERED_BY_WATER_RULE = "not-covered-by-water-rule"
    ONE_LIMIT = "one-limit"
    NEVER_CARRY_ALIVE = "never-carry-alive"
    ORDER_IN_FORCE = "order-in-force"


@dataclass(frozen=True, slots=True)
class Season:
    """Where a day stands: the mode in force, its window and rule, and the next harvest opening otherwise."""

    mode: str
    rule: str
    first: date | None = None
    last: date | None = None
    next_open: date | None = None
    next_rule: str = ""
    ice_matters: bool = False


@dataclass(frozen=True, slots=True)
class Tally:
    """A count against a limit: between ``have`` and ``at_most`` of ``limit``, in a group or of one taxon.

    ``kind`` is bag, sub-limit, umbrella, total-across-waters, possession or one-over. ``limit`` None is
    "no limit" as the rule states it.
    """

    kind: str
    name: str
    have: int
    at_most: int
    limit: int | None
    rule: str

    @property
    def full(self) -> bool:
        """True when no further fish may be added for certain."""
        return self.limit is not None and self.have >= self.limit

    @property
    def may_be_full(self) -> bool:
        """True when what was said leaves it open whether another may be added."""
        return self.limit is not None and self.at_most >= self.limit

    @property
    def left(self) -> int | None:
        """How many more there is room for at least; None for no limit."""
        return None if self.limit is None else max(self.limit - self.at_most, 0)


@dataclass(frozen=True, slots=True)
class Replacement:
    """A field of a weaker rule that a stronger one overwrote."""

    rule: str
    field: str
    by: str


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two rules of equal rank that say different things of one field: a finding for the curator."""

    field: str
    first: str
    second: str


@dataclass(frozen=True, slots=True)
class Reason:
    """Why, under which rule and field, with the numbers that decided."""

    why: Why
    rule: str = ""
    field: str = ""
    taxon: str = ""
    season: Season | None = None
    length: LengthLimit | None = None
    over: OverCount | None = None
    tally: Tally | None = None
    hours: tuple[str, str] | None = None
    under_age: int | None = None
    span: tuple[date, date] | None = None
    asks: Ask | None = None


@dataclass(frozen=True, slots=True)
class Outcome:
    """What the rules allow for one candidate at one place: acts that are lawful for certain, and at best."""

    taxon: str
    position: Placement
    certain: frozenset[Act]
    possible: frozenset[Act]
    reason: Reason
    season: Season | None = None
    tallies: tuple[Tally, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    obligations: tuple[tuple[str, str], ...] = ()
    replaced: tuple[Replacement, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    rules: tuple[str, ...] = ()
    as_of: str = ""
    rule_year: tuple[str, str] = ("", "")

    @property
    def closed(self) -> bool:
        """True when fishing itself is not open."""
        return self.reason.why in CLOSED


CLOSED: frozenset[Why] = frozenset(
    {Why.CLOSED_WATER, Why.CLOSED_SEASON, Why.CLOSED_HOURS, Why.CLOSED_ICE, Why.NOT_FOR_THIS_ANGLER})
NOT_KNOWN: frozenset[Why] = frozenset({Why.NO_RULE, Why.OUTSIDE_RULE_YEAR})


@dataclass(frozen=True, slots=True)
class Verdict:
    """The answer for one fish: the word, the reason that binds, and all that must be said with it.

    ``obligations`` are pairs (what, rule id); ``remarks`` pairs (remark, rule id or empty).
    """

    word: Word
    reason: Reason
    day: date | None = None
    places: tuple[str, ...] = ()
    acts: frozenset[Act] = frozenset()
    outcomes: tuple[Outcome, ...] = ()
    binding: Tally | None = None
    tallies: tuple[Tally, ...] = ()
    assumed: tuple[Assumed, ...] = ()
    obligations: tuple[tuple[str, str], ...] = ()
    replaced: tuple[Replacement, ...] = ()
    conflicts: tuple[Conflict, ...] = ()
    remarks: tuple[tuple[Remark, str], ...] = ()
    ask: Ask | None = None
    rules: tuple[str, ...] = ()
    as_of: str = ""
    rule_year: tuple[str, str] = ("", "")
