"""What an angler says of a fish, the place, the day and what was kept: the input of a verdict (layer 3)."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, time
from decimal import Decimal

from assistant.units import to_mm

TOTAL = "total"
FORK = "fork"
ABOUT = Decimal("0.1")
"""How far "about 15 in" may be off, as a share: our own choice, so that no guess decides a close call."""

ANY_FISH = "any-fish"
"""Stands for a fish of no stated kind, as in "any fish"."""


@dataclass(frozen=True, slots=True)
class Length:
    """A length in exact millimetres between two bounds; equal bounds are a measured length.

    ``value`` and ``unit`` keep what was said; ``method`` is total or fork.
    """

    low: Decimal
    high: Decimal | None
    low_included: bool = True
    high_included: bool = True
    method: str = TOTAL
    about: bool = False
    value: Decimal | None = None
    unit: str = ""

    @property
    def exact(self) -> bool:
        """True for one measured length."""
        return self.low == self.high


def measured(value: Decimal | int | str, unit: str, method: str = TOTAL) -> Length:
    """A fish measured at exactly this length.

    >>> measured("15", "in").low
    Decimal('381.0')
    """
    mm = to_mm(value, unit)
    return Length(mm, mm, method=method, value=Decimal(str(value)), unit=unit)


def between(low: Decimal | int | str, high: Decimal | int | str, unit: str) -> Length:
    """A fish somewhere between two lengths, both possible."""
    return Length(to_mm(low, unit), to_mm(high, unit), value=Decimal(str(high)), unit=unit)


def about(value: Decimal | int | str, unit: str) -> Length:
    """A guessed length: a tenth either way is possible."""
    mm = to_mm(value, unit)
    return Length(mm * (1 - ABOUT), mm * (1 + ABOUT), about=True, value=Decimal(str(value)), unit=unit)


def over(value: Decimal | int | str, unit: str, included: bool = False) -> Length:
    """A fish longer than this (or as long, when included)."""
    return Length(to_mm(value, unit), None, low_included=included, value=Decimal(str(value)), unit=unit)


def under(value: Decimal | int | str, unit: str, included: bool = False) -> Length:
    """A fish shorter than this (or as long, when included)."""
    return Length(
        Decimal(0), to_mm(value, unit), False, high_included=included, value=Decimal(str(value)), unit=unit)


UNSAID = Length(Decimal(0), None, low_included=False)
"""The length of a fish that nobody measured."""

NOT_LARGE = Length(Decimal(0), Decimal(0))
"""Stands for fish that are taken not to be large, where the mark for large ones is told beside the verdict."""


@dataclass(frozen=True, slots=True)
class Kept:
    """Fish kept already; ``taxa`` are what each of them may be.

    ``today`` counts for the day, ``held`` for possession: eaten fish are no longer held, stored ones not of today.
    """

    count: int
    taxa: tuple[str, ...]
    length: Length = UNSAID
    today: bool = True
    held: bool = True


@dataclass(frozen=True, slots=True)
class Catch:
    """One fish in hand (or asked about) and all that a rule may depend on; None or empty means: not said.

    ``candidates`` holds every taxon that the fish may be. ``places`` holds place ids: more than one when the
    name fits several. ``side`` narrows a border water to one jurisdiction or a river to one part. ``away`` is a
    tributary or inlet, beside the water named. ``besides`` are fish that are to be kept with this one.
    """

    candidates: tuple[str, ...]
    places: tuple[str, ...]
    day: date | None
    moment: time | None = None
    length: Length = UNSAID
    kept: tuple[Kept, ...] | None = None
    side: str = ""
    away: bool = False
    private: bool = False
    age: int | None = None
    on_ice: bool | None = None
    dead: bool = False
    deep_hooked: bool = False
    tail_torn: bool = False
    licences: tuple[str, ...] = ()
    besides: tuple[Kept, ...] = ()
