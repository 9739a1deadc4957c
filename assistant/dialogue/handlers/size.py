"""How long a fish gets, and whether a length is small, usual or large for it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue import phrases_info as say
from assistant.dialogue import phrases_self as own
from assistant.dialogue.amount_words import Amounts, amounts, middle, span, system, typed
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held, Order
from assistant.dialogue.ranking import OF_SIZE, SIZE, from_smallest, placed
from assistant.dialogue.speak import fish as label
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.telling import basis_of, trusted, which_fish
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import SizeRecord
from assistant.reasoning.evidence import about, numbers
from assistant.reasoning.living import living_in
from assistant.reasoning.size import MAXIMUM, USUAL, category, length_fit, size_range
from assistant.units import show_length, show_weight

AGE, MATURITY, HEAVIEST = "max-age", "size-at-maturity", "max-weight"
METRIC_UNITS = frozenset({"mm", "cm", "m", "g", "kg"})
EACH = 5
"""Up to so many fishes are told one by one."""
STEPS = ("stock", "quality", "preferred", "memorable", "trophy")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Usual and largest length, or how a given length compares with them."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    taxa = species_of(kb, asked)
    told = amounts(turn.reading, held, bool(named(turn)))
    if {"units-us", "units-metric"} <= turn.cues and not subjects(turn, carried=False) and (same := _converted(turn)):
        return Answer("size", (Block("lead", same, claim=False),), taxa=held.taxa), held
    if not taxa:
        return which_fish("size", say.WHICH_FISH), held
    shown = _fewest(kb, taxa)
    sides = aspects(kb, turn.reading)
    if OF_SIZE in sides and len(taxa) > 1:
        here = living_in(kb, taxa, turn.reading.places) or taxa
        shown = tuple(p.taxon for p in placed(turn, here, Order(SIZE, from_smallest(sides))))[:EACH] or shown
        sides = sides | {"biggest"}
    blocks = [b for t in shown for b in _one(turn, t, told, sides, len(shown) > 1)]
    if told.length is None and (OF_SIZE in sides or "bigger-than" in turn.cues):
        blocks = _in_order(turn, shown) + blocks
    blocks += _of_parents(kb, shown) + _terms(turn) + _general(turn, sides, told)
    first, *rest = blocks
    asked_back = _asked(turn, told)
    after = [Block("next", asked_back.question, claim=False)] if asked_back else []
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("size", (head, *rest, *remarks, *after), taxa=told_taxa(turn, asked), asked=asked_back), held


def _converted(turn: Turn) -> str:
    """A length or weight typed in one unit, in the others; empty where none is typed."""
    measure = next((m for m in turn.reading.measures if m.kind in ("length", "weight")), None)
    if measure is None:
        return ""
    into = "us" if measure.unit in METRIC_UNITS else "metric"
    shown = (show_length if measure.kind == "length" else show_weight)(measure.low, into)
    return own.converted(measure.words, shown)


def _in_order(turn: Turn, shown: Sequence[str]) -> list[Block]:
    """Which of several fishes grows longest, by the largest length held of each."""
    found = placed(turn, shown, Order(SIZE, least_first=False))
    if len(found) < 2:
        return []
    text = say.size_order([(label(turn.kb, p.taxon), p.words) for p in found])
    return [Block("point", text, statements=tuple(s for p in found for s in p.statements))]


def _of_parents(kb: KnowledgeBase, shown: Sequence[str]) -> list[Block]:
    """Crosses without a length of their own, whose figures are those of a parent."""
    crosses = [t for t in shown if kb.taxon(t).is_hybrid and not about(kb, t, MAXIMUM)[0]]
    return [Block("doubt", say.of_parents(label(kb, t)), claim=False) for t in crosses[:2]]


def _fewest(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    """Of many fishes the widest spread ones."""
    if len(taxa) <= EACH:
        return tuple(taxa)
    return tuple(sorted(taxa, key=lambda t: (-len(kb.ranges(t)), t))[:EACH])


def _one(turn: Turn, taxon: str, told: Amounts, sides: frozenset[str], many: bool) -> list[Block]:
    kb = turn.kb
    if told.length is not None:
        return _verdict(turn, taxon, told)
    units = system(turn.held)
    blocks: list[Block] = []
    if "age" in sides:
        blocks += _age(kb, taxon)
    if "maturity" in sides:
        blocks += _maturity(kb, taxon, units)
    blocks.append(_lengths(kb, taxon, units, bool(sides & {"biggest", "record"})))
    if not many:
        blocks += _scale(kb, taxon) + _heaviest(kb, taxon, units)
    return blocks


def _lengths(kb: KnowledgeBase, taxon: str, units: str, biggest: bool) -> Block:
    sizes = size_range(kb, taxon)
    name = label(kb, taxon)
    usual = span(sizes.usual_low, sizes.usual_high, units)
    largest = show_length(sizes.largest, units) if sizes.largest else ""
    statements = (*about(kb, taxon, USUAL)[0], *about(kb, taxon, MAXIMUM)[0])
    if not usual and not largest:
        return Block("point", say.size_none(name), claim=False)
    text = say.size_biggest(name, largest, usual) if biggest and largest else say.size_lead(name, usual, largest)
    found = tuple(f"st:{s}" for s in dict.fromkeys((*sizes.usual_statements, *sizes.largest_statements)))
    return Block("point", trusted(text, basis_of(statements)), statements=found)


def _verdict(turn: Turn, taxon: str, told: Amounts) -> list[Block]:
    kb, held = turn.kb, turn.held
    assert told.length is not None
    units = system(held, told.length)
    sizes = size_range(kb, taxon)
    length = middle(told.length)
    word = length_fit(kb, taxon, length)
    name = label(kb, taxon)
    if not word:
        lengths = _lengths(kb, taxon, units, biggest=False)
        if sizes.largest:
            share = say.size_share(typed(told.length, held), f"{100 * length / sizes.largest:.0f} %", name)
            return [Block("point", share, statements=lengths.statements), lengths]
        return [lengths]
    usual = span(sizes.usual_low, sizes.usual_high, units)
    largest = show_length(sizes.largest, units) if sizes.largest else ""
    text = say.size_verdict(typed(told.length, held), name, word, usual, largest)
    statements = (*about(kb, taxon, USUAL)[0], *about(kb, taxon, MAXIMUM)[0])
    found = tuple(f"st:{s}" for s in dict.fromkeys((*sizes.usual_statements, *sizes.largest_statements)))
    out = [Block("point", trusted(text, basis_of(statements)), statements=found)]
    if word == "beyond":
        out.append(Block("doubt", say.size_beyond(), claim=False))
    if (step := category(kb, taxon, length)) is not None and word != "beyond":
        out.append(
            Block("point", say.size_category(step[0], _next(step[1], length)), statements=(f"size:{step[1].id}",))
        )
    return out


def steps(table: SizeRecord) -> list[tuple[float, str]]:
    """The steps of a table of size categories in words, each with its length in mm.

    The published tables give whole inches beside rounded metric values, which are no exact conversions of each other.
    """
    known = [(s, value) for s in STEPS if (value := getattr(table, s)) is not None]
    return [(value, say.step(word, f"{value / 25.4:.0f} in ({value / 10:g} cm)")) for word, value in known]


def _next(table: SizeRecord, length: float) -> str:
    return next((text for edge, text in steps(table) if edge > length), "")


def _scale(kb: KnowledgeBase, taxon: str) -> list[Block]:
    table = next((s for s in kb.sizes(taxon) if s.kind == "size-categories"), None)
    if table is None:
        return []
    return [
        Block("point", say.size_scale(", ".join(text for _, text in steps(table))), statements=(f"size:{table.id}",))
    ]


def _heaviest(kb: KnowledgeBase, taxon: str, units: str) -> list[Block]:
    found = numbers(kb, taxon, HEAVIEST) if kb.find("character", HEAVIEST) else None
    if found is None:
        return []
    text = say.heaviest(label(kb, taxon), show_weight(found[1], units))
    return [
        Block(
            "point",
            trusted(text, basis_of(about(kb, taxon, HEAVIEST)[0])),
            statements=tuple(f"st:{s}" for s in found[2]),
        )
    ]


def _age(kb: KnowledgeBase, taxon: str) -> list[Block]:
    found = numbers(kb, taxon, AGE) if kb.find("character", AGE) else None
    if found is None:
        return [Block("point", say.AGE_UNKNOWN, claim=False)]
    text = say.size_age(label(kb, taxon), f"{found[1]:.0f}")
    return [
        Block(
            "point", trusted(text, basis_of(about(kb, taxon, AGE)[0])), statements=tuple(f"st:{s}" for s in found[2])
        )
    ]


def _maturity(kb: KnowledgeBase, taxon: str, units: str) -> list[Block]:
    found = numbers(kb, taxon, MATURITY) if kb.find("character", MATURITY) else None
    if found is None:
        return [Block("point", say.ids_or_none(label(kb, taxon), "the length at maturity"), claim=False)]
    text = say.maturity(label(kb, taxon), span(found[0], found[1], units))
    return [
        Block(
            "point",
            trusted(text, basis_of(about(kb, taxon, MATURITY)[0])),
            statements=tuple(f"st:{s}" for s in found[2]),
        )
    ]


def _terms(turn: Turn) -> list[Block]:
    """Anglers' words for sizes that the line uses ("slab")."""
    kb = turn.kb
    keys = dict.fromkeys(i for m in turn.reading.of("term") for i in m.ids)
    terms = [t for k in keys if (t := kb.find("term", k)) is not None]
    return [Block("point", say.titled(t.label, t.plain), statements=(f"term:{t.id}",)) for t in terms[:2]]


def _general(turn: Turn, sides: frozenset[str], told: Amounts) -> list[Block]:
    out: list[Block] = []
    if "keeper" in sides:
        out.append(Block("caution", say.KEEPER, claim=False))
    if "record" in sides:
        out.append(Block("doubt", say.RECORD, claim=False))
    return out + (
        _age(turn.kb, species_of(turn.kb, subjects(turn))[0]) if "age" in sides and told.length is not None else []
    )


def _asked(turn: Turn, told: Amounts) -> Asked | None:
    """A number is asked for where only a word of size was given."""
    judged = bool(turn.reading.size_word) or "judge" in aspects(turn.kb, turn.reading)
    return Asked("length", say.LENGTH) if told.length is None and judged else None
