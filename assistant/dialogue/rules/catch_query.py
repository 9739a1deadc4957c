"""A sentence about a catch as a value: fish as named, places, days, lengths, kept fish, step by step (layer 4)."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, time

from assistant.reasoning import catch as c


@dataclass(frozen=True, slots=True)
class Named:
    """A name as it was said and the taxa it may mean; none when it is not known."""

    words: str
    taxa: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class KeptSaid:
    """Kept fish as said: ``name`` None means of the same kind as the fish asked about."""

    count: int
    name: Named | None
    length: c.Length = c.UNSAID
    today: bool = True
    held: bool = True

    @property
    def mixed(self) -> bool:
        """True where several kinds share one count ("30 crappie and perch")."""
        return self.name is not None and " and " in self.name.words


@dataclass(frozen=True, slots=True)
class Step:
    """One fish at one place on one day, or ``count`` of them that are to be kept together."""

    fish: tuple[Named, ...] = ()
    any_fish: bool = False
    crosses: bool = False
    length: c.Length = c.UNSAID
    places: tuple[str, ...] = ()
    day: date | None = None
    kept: tuple[KeptSaid, ...] | None = None
    moment: time | None = None
    count: int = 1


def kept_names(step: Step) -> tuple[Named, ...]:
    """The known names of the fish kept, each once."""
    return tuple(dict.fromkeys(k.name for k in step.kept or () if k.name is not None and k.name.taxa))


@dataclass(frozen=True, slots=True)
class Circumstances:
    """What was said once and holds for every step."""

    moments: tuple[time, ...] = ()
    side: str = ""
    age: int | None = None
    on_ice: bool | None = None
    away: bool = False
    private: bool = False
    dead: bool = False
    deep_hooked: bool = False
    tail_torn: bool = False
    doubt: bool = False
    licences: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class CatchQuery:
    """The steps in the order in which they were said.

    ``growing`` means that the steps are several fish of one outing, so that one that may be kept counts for the
    next. ``unknown_place`` and ``unknown_names`` hold words that lead to nothing in the base; ``day_said`` is False
    when the day is taken from the clock.
    """

    text: str
    steps: tuple[Step, ...]
    about: Circumstances = field(default_factory=Circumstances)
    growing: bool = False
    unknown_place: str = ""
    unknown_names: tuple[str, ...] = ()
    day_said: bool = True
