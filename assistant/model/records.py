"""The frozen records of the base (layer 2): what a node of the graph becomes once it is read.

They are named tuples and not dataclasses: a first answer makes hundreds of them and waits for their classes, and both
cost a fraction so (measured: a class of 37 fields 0.4 against 4 ms).

Identifiers are the local part of an IRI ("lepomis-gibbosus", "opercular-flap-edge", "opercular-flap-edge.pale-edge");
``assistant.iris`` turns them back. Lengths are millimetres, weights grams, temperatures degrees Celsius.
"""

from __future__ import annotations

from typing import NamedTuple


class Taxon(NamedTuple):
    """A species, subspecies, genus, family or cross; ``parents`` holds the two parents of a cross."""

    id: str
    scientific: str
    rank: str
    label: str
    authorship: str
    parent: str | None
    parents: tuple[str, ...]
    according_to: str
    source: tuple[str, ...]
    basis: str
    occurrence: str
    origin: str
    body_plan: str
    replaced_by: tuple[str, ...]
    deprecated: bool
    note: str

    @property
    def is_hybrid(self) -> bool:
        """True for a cross of two taxa."""
        return len(self.parents) == 2

    @property
    def is_species(self) -> bool:
        """True for a kind that an identification may name (species, subspecies or cross)."""
        return self.rank in ("species", "subspecies", "hybrid")


class Name(NamedTuple):
    """What a taxon is called by somebody; ``kind`` is accepted, former (accepted before a rename), vernacular,
    ambiguous, synonym, misspelling, plural-name or form."""

    id: str
    taxon: str
    text: str
    language: str
    kind: str
    regions: tuple[str, ...]
    region_text: str
    source: tuple[str, ...]
    basis: str
    note: str


class Group(NamedTuple):
    """A word people use for several taxa ("panfish", "black basses"); members may be families, genera or species."""

    id: str
    label: str
    plural: str
    words: tuple[str, ...]
    hidden: tuple[str, ...]
    members: tuple[str, ...]
    note: str


class Character(NamedTuple):
    """What can be observed; ``error`` is how often an ordinary observer records the wrong state (0 to 1)."""

    id: str
    kind: str
    label: str
    trade: str
    part: str
    anatomy: tuple[str, ...]
    question: str
    how: str
    look: str
    error: float
    min_length: float
    needs: tuple[str, ...]
    words: tuple[str, ...]
    hidden: tuple[str, ...]
    use: str
    colouring: bool
    """True for a matter of colour or of marks in the skin, which change with water and season and fade after death."""
    note: str

    @property
    def is_stated(self) -> bool:
        """True when its values are named states."""
        return self.kind in ("states", "ordered")

    @property
    def is_number(self) -> bool:
        """True when its values are numbers."""
        return self.kind in ("count", "ratio", "length", "mass", "temperature")


class State(NamedTuple):
    """One state of a character; ``broader`` is its umbrella state, ``clause`` is spoken of a fish after "has", and
    ``except_for`` are the marks of other characters beside which a denial means the others ("no other marks");
    ``share`` is how common it is, beside 1, among fishes of which only its umbrella is told.
    """

    id: str
    character: str
    label: str
    clause: str
    trade: str
    order: int | None
    broader: str | None
    except_for: tuple[str, ...]
    share: float | None
    values: tuple[str, ...]
    phrases: tuple[str, ...]
    hidden: tuple[str, ...]
    quality: tuple[str, ...]
    note: str


class Statement(NamedTuple):
    """One taxon, one character, state(s) or a number range or a text, under a scope, with its sources and basis."""

    id: str
    taxon: str
    character: str
    states: tuple[str, ...]
    low: float | None
    usual_low: float | None
    usual_high: float | None
    high: float | None
    mean: float | None
    sd: float | None
    n: int | None
    unit: str
    text: str
    frequency: str
    sex: str
    stage: str
    breeding: str
    season: str
    regions: tuple[str, ...]
    min_length: float | None
    max_length: float | None
    view: str
    scope_text: str
    source: tuple[str, ...]
    page: str
    basis: str
    preferred: bool
    because: str
    note: str
    entered_by: str
    entered_on: str
    retracted_on: str
    retracted_because: str

    @property
    def scoped(self) -> bool:
        """True when it speaks of only some fish of the taxon."""
        return bool(self.sex or self.stage or self.breeding or self.season or self.regions
                    or self.min_length or self.max_length)


class Range(NamedTuple):
    """A taxon in a place: native, introduced, stocked, absent, extirpated or uncertain."""

    id: str
    taxon: str
    place: str
    area: str
    status: str
    source: tuple[str, ...]
    basis: str
    preferred: bool
    note: str


class LookAlike(NamedTuple):
    """Two taxa that people mix up; ``separable`` is yes, hard or not-by-eye."""

    id: str
    taxon: str
    other: str
    separable: str
    settles: str
    source: tuple[str, ...]
    basis: str
    note: str


class Place(NamedTuple):
    """A state, province, region, lake or (invented) demo water; ``covers`` lists the members of a region."""

    id: str
    label: str
    code: str
    kind: str
    within: tuple[str, ...]
    covers: tuple[str, ...]
    nicknames: tuple[str, ...]
    hidden: tuple[str, ...]
    invented: bool
    note: str


class Source(NamedTuple):
    """A published work, or common practice, or memory; ``what_read`` says how much of it was opened."""

    id: str
    kind: str
    authors: str
    year: str
    title: str
    publisher: str
    address: str
    what_read: str
    basis: str
    note: str


class Frequency(NamedTuple):
    """A word for the share of fish that show a state, with its bounds and the point used in computing (0 to 1)."""

    id: str
    label: str
    low: float
    high: float
    point: float
    words: tuple[str, ...]
    note: str


class Caution(NamedTuple):
    """Advice on hands, health or the fish; ``about`` holds CURIEs of taxa and groups, ``acts`` what calls for it."""

    id: str
    topic: str
    about: tuple[str, ...]
    acts: tuple[str, ...]
    text: str
    words: tuple[str, ...]
    number: str
    unit: str
    lead: bool
    source: tuple[str, ...]
    basis: str


class Practice(NamedTuple):
    """How a fish is caught: tackle, bait, cover, depth, season."""

    id: str
    topic: str
    about: tuple[str, ...]
    text: str
    words: tuple[str, ...]
    number: str
    unit: str
    season: str
    source: tuple[str, ...]
    basis: str


class SizeRecord(NamedTuple):
    """A standard-weight line, a set of size categories or a length conversion of one taxon."""

    id: str
    kind: str
    taxon: str
    label: str
    a: float | None
    b: float | None
    c: float | None
    min_length: float | None
    max_length: float | None
    from_length: str
    to_length: str
    stock: float | None
    quality: float | None
    preferred: float | None
    memorable: float | None
    trophy: float | None
    doubt: str
    source: tuple[str, ...]
    basis: str
    note: str


class Term(NamedTuple):
    """A glossary term in words that a child follows, with where to look on the fish."""

    id: str
    label: str
    plural: str
    plain: str
    where: str
    words: tuple[str, ...]
    hidden: tuple[str, ...]


class WordFamily(NamedTuple):
    """Words that people use for one another ("scarlet", "crimson" for "red"); ``kind`` names the family's use."""

    id: str
    head: str
    kind: str
    words: tuple[str, ...]
    note: str


class Leaning(NamedTuple):
    """What a sign of a typed line speaks for: entries "intent weight", weights as natural logarithms of odds."""

    id: str
    toward: tuple[str, ...]
