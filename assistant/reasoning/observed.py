"""What was seen of a fish, and what is made of it: values, free of numpy (layer 3)."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import ANY, Scope, about, below


class Observation(NamedTuple):
    """One thing seen or denied: states of a character, or a number (a range where ``value_high`` differs).

    Several ``states`` are "one of these"; what was seen besides on the same part ("pale above and red behind") is
    in ``beside``. ``asked`` when it answers a question about this character and was not told of one's own accord.
    """

    character: str
    states: tuple[str, ...] = ()
    value: float | None = None
    value_high: float | None = None
    seen: bool = True
    hedged: bool = False
    at_least: bool = False
    at_most: bool = False
    beside: tuple[str, ...] = ()
    asked: bool = False


NAMING = ("like", "named", "either")
"""Kinds of hints that name single fishes."""


class Hint(NamedTuple):
    """A group word, a likeness, a name given to the catch or a choice of names, denied or hedged: its taxa and its kind
    (group, like, named, either).

    ``strict`` for a group word that is hardly ever used of a fish outside the group ("gar", "sturgeon"), and for names
    offered for the catch itself; ``loose`` for a name that means several fishes, some of them only in places, and for a
    likeness that goes on with "but".
    """

    kind: str
    taxa: frozenset[str]
    seen: bool = True
    hedged: bool = False
    word: str = ""
    strict: bool = False
    loose: bool = False


class Evidence(NamedTuple):
    """Everything known of one fish. ``places`` are ids, ``length`` mm (low, high), ``size_word`` small or large,
    ``grams`` its mass.

    ``volunteered`` when typed in plain words of one's own accord, but for observations marked as ``asked``; else all
    of it answers questions about given characters.
    """

    observations: tuple[Observation, ...] = ()
    hints: tuple[Hint, ...] = ()
    places: tuple[str, ...] = ()
    length: tuple[float, float] | None = None
    size_word: str = ""
    scope: Scope = ANY
    excluded: frozenset[str] = frozenset()
    volunteered: bool = False
    grams: float | None = None

    @property
    def weight(self) -> int:
        """How many separate things were told."""
        return len(self.observations) + len(self.hints)


class Candidate(NamedTuple):
    """A taxon with its probability and the statements that speak for and against it."""

    taxon: str
    probability: float
    supports: tuple[str, ...]
    opposes: tuple[str, ...]


class Identification(NamedTuple):
    """Candidates best first, the verdict word, how typical the best is, what clashes, and the group that holds."""

    candidates: tuple[Candidate, ...]
    verdict: str
    typicality: float
    clashes: tuple[str, ...]
    group: str | None
    group_probability: float
    posterior: Mapping[str, float] = MappingProxyType({})
    too_small: bool = False
    together: bool = True
    """True where all that was seen goes together in some fish, be it not the best one."""


def statements_for(kb: KnowledgeBase, taxon: str, seen: Observation) -> tuple[str, ...]:
    """The statements about a taxon (or, for a cross, its parents) that an observation touches."""
    keys = (taxon, *kb.taxon(taxon).parents)
    told = {leaf for s in seen.states for leaf in below(kb, s)}
    out: list[str] = []
    for key in keys:
        found = about(kb, key, seen.character)[0]
        near = [s.id for s in found if told & {leaf for x in s.states for leaf in below(kb, x)}]
        out += near or [s.id for s in found]
        if out:
            break
    return tuple(out[:4])
