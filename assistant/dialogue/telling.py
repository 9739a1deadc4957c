"""Blocks that information answers share: advice records, statements and ranges as claims with their ids (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.reader.reading import Measure
from assistant.dialogue.subjects import species_of
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.core import memory_of_places
from assistant.dialogue.wording.speak import short_ids
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Place, Range, Statement
from assistant.reasoning.advice import Record
from assistant.reasoning.living import remembered
from assistant.reasoning.place_prior import REGIONS, WATERS
from assistant.text import key as folded
from assistant.units import GRAMS, METRIC, METRIC_UNITS, MM, show_length, show_weight

MEMORY, READ = "memory", "read"
SHOWN = 5
"""Points shown until somebody asks for more."""
MOST_TAXA = 12
PLAIN_WATER = "cue-waters"
LONGEST_NOTE = 110
PRIVATE = ("not opened", "look in", "read as", "quoted there", "see ")
"""How notes begin that speak to curators about sources."""
_SINGULAR = re.compile(r"(?<=[\d \-])(?:inch|foot|pound|ounce|meter|metre|inchers?|pounders?)$", re.I)
"""Units that read oddly behind a number ("a bluegill of 12 inch", "15 incher")."""
LENGTH_UNITS, WEIGHT_UNITS = tuple(MM), tuple(GRAMS)


def advice(prefix: str, record: Record, kind: str, text: str = "") -> Block:
    """A caution or practice as a block, with "from memory" where nothing better is known."""
    said = text or record.text
    return Block(kind, say.unchecked(said) if record.basis == MEMORY else said, statements=(f"{prefix}:{record.id}",))


def ids(statements: Iterable[Statement]) -> tuple[str, ...]:
    """Short forms of statements."""
    return short_ids(s.id for s in statements)


def basis_of(items: Sequence[Statement]) -> str:
    """The best basis among some statements."""
    found = {s.basis for s in items}
    return next((b for b in ("read", "common-practice", MEMORY) if b in found), "")


def shown_note(note: str, most: int = LONGEST_NOTE) -> str:
    """A curator's note that readers may see beside a value: short, without remarks on what was opened."""
    parts = [p.strip().rstrip(".") for p in note.split(";")]
    text = "; ".join(p for p in parts if p and not p.lower().startswith(PRIVATE))
    return text if len(text) <= most else ""


def named_for_waters(kb: KnowledgeBase, place: Place) -> bool:
    """True for a lake or drainage, or a region named for its waters, of which the base tells by the states on it."""
    words = folded(place.label).split() if place.kind in REGIONS else ()
    return place.kind in WATERS or any(kind == "cue" and thing == PLAIN_WATER
                                       for w in words for kind, thing, _ in kb.spoken(w))


def trusted(text: str, basis: str) -> str:
    """A claim marked where its basis is memory alone."""
    return say.unchecked(text) if basis == MEMORY else text


def with_memory(text: str, rows: Sequence[Range]) -> str:
    """A line on where a fish lives, with how many of its places are told from memory alone."""
    return say.noted(text, memory_of_places(*remembered(rows)))


def plain(
    intent: str, text: str, *, asked: Asked | None = None, taxa: tuple[str, ...] = (), rest: Sequence[Block] = ()
) -> Answer:
    """An answer that states nothing about fishes."""
    blocks = [Block("lead", text, claim=False), *rest]
    if asked is not None and asked.question not in text:
        blocks.append(Block("next", asked.question, claim=False))
    return Answer(intent, tuple(blocks), taxa=taxa, asked=asked)


def spread(kb: KnowledgeBase, asked: Sequence[str], most: int = MOST_TAXA) -> tuple[str, ...]:
    """The taxa an answer is about: a group as its taxa and then their species, the widest spread first."""
    out: dict[str, None] = {}
    for key in asked:
        species = species_of(kb, (key,))
        group = kb.find("group", key)
        wider = (group.members if group is not None else (key,)) if len(species) != 1 else ()
        out.update(dict.fromkeys(wider))
        out.update(dict.fromkeys(sorted(species, key=lambda t: (-len(kb.ranges(t)), t))))
    return tuple(out)[:most]


def place_name(place: Place) -> str:
    """A place as it is said in a sentence: "the Ozarks", "the Midwest", "Ohio"."""
    name = place.label
    takes = place.kind == "drainage" or name.startswith("United") or (
        place.kind in REGIONS and re.search(r"(s|west|east|south|north)$", name, re.I)
    )
    return f"the {name}" if takes and not name.lower().startswith("the ") else name


def place_names(kb: KnowledgeBase, places: Iterable[str]) -> str:
    """Places in a list."""
    return say.names_with([place_name(p) for key in places if (p := kb.place(key)) is not None])


def which_fish(intent: str, lead: str) -> Answer:
    """Ask for a fish."""
    return plain(intent, lead, asked=Asked("fish", say.WHICH_FISH))


def as_typed(measure: Measure, units: str) -> str:
    """A measure in the asker's own words where they hold digits, the other system in brackets.

    Fractions and units stay as they were typed ("9 and 7/8 in"); words without digits are shown as a number.
    """
    middle = (measure.low + measure.high) / 2
    length = measure.kind in ("length", "girth")
    show = show_length if length else show_weight
    metric = measure.unit in METRIC_UNITS
    words = " ".join(measure.words.split())
    known = LENGTH_UNITS if length else WEIGHT_UNITS
    wanted = units or ("metric" if metric else "us")
    if not any(c.isdigit() for c in words) or (wanted in METRIC) != metric or measure.low != measure.high:
        return show(middle, wanted)
    if measure.unit == "lb+oz" and not any(c.isalpha() for c in words):
        words = " ".join(f"{n} {unit}" for n, unit in zip(re.findall(r"\d+", words), ("lb", "oz"), strict=False))
    elif measure.bare or not any(c.isalpha() or c in "\"'″”" for c in words):
        words = f"{words} {measure.unit}"
    elif words.split()[-1].isalpha() and words.split()[-1] not in known and measure.unit in known and len(words) > 18:
        words = show(middle, wanted).split(" (")[0]
    if measure.unit in known:
        words = _SINGULAR.sub(measure.unit, words)
    return f"{words} ({other(middle, length, metric)})"


def other(value: Decimal, length: bool, metric: bool) -> str:
    """A value in the other system only."""
    text = (show_length if length else show_weight)(value, "us" if metric else "metric")
    return text.split(" (")[0]


def cut(points: list[Block], more: bool, most: int = SHOWN) -> list[Block]:
    """The first points, with a hint at the rest."""
    if more or len(points) <= most + 1:
        return points
    return [*points[:most], Block("help", say.more(len(points) - most), claim=False)]
