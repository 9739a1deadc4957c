"""How long a fish gets, and whether a length is small, usual or large for it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.amount_words import Amounts, amounts, middle, span, system, typed
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside.compared import answered, less_asked, set_against, yes_or_no
from assistant.dialogue.conversation import Held, Order
from assistant.dialogue.handlers import list_fishes
from assistant.dialogue.handlers.weight import heaviest
from assistant.dialogue.ranking import OF_SIZE, SIZE, from_smallest, placed
from assistant.dialogue.subjects import groups, named, species_of, subjects
from assistant.dialogue.telling import basis_of, place_names, trusted, which_fish
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core, lists, order
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import self as own
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import SizeRecord
from assistant.reasoning.evidence import about, number_range, numbers
from assistant.reasoning.living import living_in
from assistant.reasoning.place_prior import expand_places
from assistant.reasoning.size import (
    MAXIMUM,
    USUAL,
    category,
    larger_parent,
    length_fit,
    own_sizes,
    size_range,
    word_fit,
)
from assistant.text import word_set
from assistant.units import METRIC, METRIC_UNITS, show_length, show_weight

AGE, MATURITY = "max-age", "size-at-maturity"
EACH, MOST_IN_LINE = 5, 20
"""Up to so many fishes are told one by one; up to so many in one line."""
BIG = word_set("big large huge giant monster long nice good decent trophy dandy beaut whopper hoss slab stud doozy")
SMALL = word_set("small little tiny short dink")
GROWTH = "growth"
GENERAL = frozenset({"asks-how", "asks-what", "asks-who", "which-of", "bigger-than", "list"})
"""Cues of a line that asks of a kind at large, not of a fish in hand."""
TOP_STEPS = ("memorable", "trophy")
"""Steps of the scale of sizes that make a fish a big one."""
STEPS = ("stock", "quality", "preferred", "memorable", "trophy")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Usual and largest length, or how a given length compares with them."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    against = set_against(turn) if "bigger-than" in turn.cues else ()
    taxa = against or species_of(kb, asked)
    told = amounts(turn.reading, held, bool(named(turn)))
    if {"units-us", "units-metric"} <= turn.cues and not subjects(turn, carried=False) and (same := _converted(turn)):
        return Answer("size", (Block("lead", same, claim=False),), taxa=held.taxa), held
    sides = aspects(kb, turn.reading)
    if OF_SIZE in sides and told.length is None and (groups(turn.reading) or (held.intent == "list" and not against)):
        return list_fishes.handle(turn)
    if not taxa:
        return which_fish("size", say.WHICH_FISH), held
    shown = against[:EACH] or _fewest(kb, taxa)
    if OF_SIZE in sides and len(taxa) > 1:
        here = living_in(kb, taxa, turn.reading.places) or taxa
        shown = tuple(p.taxon for p in placed(turn, here, Order(SIZE, from_smallest(sides))))[:EACH] or shown
        sides = sides | {"biggest"}
    general = told.length is None and not against and OF_SIZE not in sides
    blocks = [b for t in shown for b in _one(turn, t, told, sides, len(shown) > 1)]
    if told.length is None and (OF_SIZE in sides or "bigger-than" in turn.cues):
        blocks = _in_order(turn, against or shown) + blocks
    elif general and len(taxa) > EACH and not sides & {"age", "maturity"}:
        blocks = _of_many(turn, asked, taxa) or blocks
    if general:
        blocks = _growth(turn, shown, sides) + _of_place(turn, shown) + blocks
    blocks += _terms(turn) + _general(turn, sides, told)
    first, *rest = blocks
    asked_back = _asked(turn, told)
    after = [Block("next", asked_back.question, claim=False)] if asked_back else []
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    few = bool(against) and (len(against) <= EACH or not named(turn))
    of = against if few else told_taxa(turn, asked)
    return Answer("size", (head, *rest, *remarks, *after), taxa=of, asked=asked_back), held


def _converted(turn: Turn) -> str:
    """A length or weight typed in one unit, in the others; empty where none is typed."""
    measure = next((m for m in turn.reading.measures if m.kind in ("length", "weight")), None)
    if measure is None:
        return ""
    into = "us" if measure.unit in METRIC_UNITS else "metric"
    shown = (show_length if measure.kind == "length" else show_weight)(measure.low, into)
    return own.converted(measure.words, shown)


def _in_order(turn: Turn, shown: Sequence[str]) -> list[Block]:
    """Which of several fishes grows longest (or stays smallest), yes or no first where that is asked for."""
    least = less_asked(turn)
    found = placed(turn, shown, Order(SIZE, least_first=least))
    if len(found) < 2:
        return []
    answer = answered(turn, {p.taxon: p.height for p in found})
    least = least and not answer
    found = placed(turn, shown, Order(SIZE, least_first=least))
    text = order.size_order([(label(turn.kb, p.taxon), p.words) for p in found], least)
    return [Block("point", order.with_answer(answer, text), statements=tuple(s for p in found for s in p.statements))]


def _of_many(turn: Turn, asked: Sequence[str], taxa: Sequence[str]) -> list[Block]:
    """From which to which size the kinds of a group grow, and the largest known of each."""
    kb, units = turn.kb, system(turn.held)
    found = placed(turn, living_in(kb, taxa, turn.reading.places) or taxa, Order(SIZE, least_first=False))
    if len(found) < 2:
        return []
    ids = tuple(s for p in found for s in p.statements)
    first, last = found[0], found[-1]
    kinds = kinds_name(kb, asked[0], len(found)) if len(asked) == 1 else lists.fishes(len(found))
    ends = (label(kb, last.taxon), last.words, label(kb, first.taxon), first.words)
    text = order.span_of_sizes(len(found), kinds, *ends)
    rows = [(label(kb, p.taxon), show_length(p.height, units)) for p in found[:MOST_IN_LINE]]
    return [Block("point", text, statements=(*first.statements, *last.statements)),
            Block("point", order.sizes_of(rows), statements=ids)]


def _growth(turn: Turn, shown: Sequence[str], sides: frozenset[str]) -> list[Block]:
    """That growth is not held, where a line asks how fast a fish grows or how long it is at an age."""
    if GROWTH not in sides:
        return []
    name = label(turn.kb, shown[0]) if len(shown) == 1 else ""
    return [Block("point", order.no_growth(name), claim=False)]


def _of_place(turn: Turn, shown: Sequence[str]) -> list[Block]:
    """What is told of the usual length in the place that the line names."""
    kb, places = turn.kb, turn.reading.places
    if not places or len(shown) != 1:
        return []
    wanted, name = expand_places(kb, places), label(kb, shown[0])
    found = [s for s in about(kb, shown[0], USUAL)[0] if wanted & set(s.regions)]
    ranges = [r for s in found if (r := number_range(s)) is not None]
    if not ranges:
        return [Block("doubt", order.not_of_place(place_names(kb, places), name), claim=False)]
    usual = span(min(r[0] for r in ranges), max(r[3] for r in ranges), system(turn.held))
    text = order.in_place(place_names(kb, places), name, usual)
    return [Block("point", trusted(text, basis_of(found)), statements=tuple(f"st:{s.id}" for s in found))]


def _of_parent(kb: KnowledgeBase, taxon: str, units: str) -> Block | None:
    """What the larger parent reaches, for a cross without a largest length of its own."""
    parent = larger_parent(kb, taxon)
    if not parent or own_sizes(kb, taxon).largest is not None:
        return None
    sizes = own_sizes(kb, parent)
    usual, largest = span(sizes.usual_low, sizes.usual_high, units), show_length(sizes.largest or 0.0, units)
    text = say.of_parent(label(kb, taxon), label(kb, parent), usual, largest)
    ids = tuple(f"st:{s}" for s in (*sizes.usual_statements, *sizes.largest_statements))
    return Block("doubt", text, statements=ids)


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
    lengths = _lengths(kb, taxon, units, bool(sides & {"biggest", "record"}))
    answer = "" if many else _is_big(turn, taxon)
    blocks.append(lengths._replace(text=order.with_answer(answer, lengths.text)) if answer else lengths)
    if not many:
        blocks += _scale(kb, taxon, units) + heaviest(kb, taxon, units)
    return blocks


def _is_big(turn: Turn, taxon: str) -> str:
    """Yes or no to "is it a small fish", "does it get very big", as fishes go."""
    words = set(turn.reading.words)
    if not yes_or_no(turn) or len(named(turn)) != 1 or not words & (BIG | SMALL):
        return ""
    small = word_fit(turn.kb, taxon, "small") > word_fit(turn.kb, taxon, "large")
    return core.YES if small == bool(words & SMALL) else core.NO


def _lengths(kb: KnowledgeBase, taxon: str, units: str, biggest: bool) -> Block:
    sizes = own_sizes(kb, taxon)
    name = label(kb, taxon)
    usual = span(sizes.usual_low, sizes.usual_high, units)
    largest = show_length(sizes.largest, units) if sizes.largest else ""
    statements = (*about(kb, taxon, USUAL)[0], *about(kb, taxon, MAXIMUM)[0])
    if not usual and not largest:
        return _of_parent(kb, taxon, units) or Block("point", say.size_none(name), claim=False)
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
    parent = "" if own_sizes(kb, taxon).largest else larger_parent(kb, taxon)
    name = label(kb, parent or taxon)
    if not word:
        lengths = _lengths(kb, taxon, units, biggest=False)
        if sizes.largest:
            share = say.size_share(typed(told.length, held), f"{100 * length / sizes.largest:.0f} %", name)
            return [Block("point", share, statements=lengths.statements), lengths]
        return [lengths]
    usual = span(sizes.usual_low, sizes.usual_high, units)
    largest = show_length(sizes.largest, units) if sizes.largest else ""
    inches = told.length.unit not in METRIC_UNITS
    step = category(kb, taxon, length, inches)
    top = word == "ordinary" and step is not None and step[0] in TOP_STEPS
    text = say.size_verdict(typed(told.length, held), name, "top" if top else word, usual, largest)
    text = order.with_answer(_judged(turn, word, top), text)
    statements = (*about(kb, taxon, USUAL)[0], *about(kb, taxon, MAXIMUM)[0])
    found = tuple(f"st:{s}" for s in dict.fromkeys((*sizes.usual_statements, *sizes.largest_statements)))
    out = [Block("point", trusted(text, basis_of(statements)), statements=found),
           *([Block("doubt", say.figures_of_parent(label(kb, taxon)), claim=False)] if parent else [])]
    longer = word == "beyond" and _scale_goes_on(kb, taxon)
    if word == "beyond":
        out.append(Block("doubt", order.SCALE_LONGER if longer else say.size_beyond(), claim=False))
    if step is not None and (word != "beyond" or longer):
        told_step = say.size_category(step[0], _next(step[1], length, units, inches))
        out.append(Block("point", told_step, statements=(f"size:{step[1].id}",)))
    return out


def _judged(turn: Turn, word: str, top: bool) -> str:
    """Yes or no to "is 20 inches big for a smallmouth" ("not especially" for an ordinary one); if it can be right."""
    words = set(turn.reading.words)
    if "plausible" in turn.cues:
        return order.DOUBTFUL if word == "beyond" else order.SMALL_YET_PLAUSIBLE if word == "small" else order.PLAUSIBLE
    if word == "beyond" and ("?" in turn.reading.text or yes_or_no(turn)) and not words & (BIG | SMALL) - {"long"}:
        return order.NO_AS_KNOWN
    if not yes_or_no(turn) or not words & (BIG | SMALL):
        return ""
    if words & SMALL:
        return core.YES if word == "small" else core.NO
    if word in ("large", "huge", "beyond") or top:
        return core.YES
    return order.NOT_ESPECIALLY if word == "ordinary" else core.NO


def _scale_goes_on(kb: KnowledgeBase, taxon: str) -> bool:
    """True where the scale of sizes names a length beyond the largest held."""
    largest = size_range(kb, taxon).largest
    tables = [s for s in kb.sizes(taxon) if s.kind == "size-categories"]
    return bool(tables and largest and tables[0].trophy is not None and tables[0].trophy > largest)


def steps(table: SizeRecord, units: str = "us") -> list[tuple[float, str]]:
    """The steps of a table of size categories in words, each with its length in mm.

    The published tables give whole inches beside rounded metric values, which are no exact conversions of each other.
    """
    known = [(s, value) for s in STEPS if (value := getattr(table, s)) is not None]
    forms = "{0:g} cm ({1:.0f} in)" if units in METRIC else "{1:.0f} in ({0:g} cm)"
    return [(value, say.step(word, forms.format(value / 10, value / 25.4))) for word, value in known]


def _next(table: SizeRecord, length: float, units: str, inches: bool) -> str:
    """The step above a length; one told in inches is held against the inches of the table, as ``category`` has it."""
    edges = [(round(edge / 25.4) * 25.4 if inches else edge, text) for edge, text in steps(table, units)]
    return next((text for edge, text in edges if edge > length + 0.05), "")


def _scale(kb: KnowledgeBase, taxon: str, units: str) -> list[Block]:
    table = next((s for s in kb.sizes(taxon) if s.kind == "size-categories"), None)
    if table is None:
        return []
    told = say.size_scale(", ".join(text for _, text in steps(table, units)))
    out = [Block("point", told, statements=(f"size:{table.id}",))]
    return [*out, Block("doubt", order.SCALE_LONGER, claim=False)] if _scale_goes_on(kb, taxon) else out


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
    judged = "judge" in aspects(turn.kb, turn.reading)
    judged = judged or (bool(turn.reading.size_word) and not turn.cues & GENERAL and not (
        named(turn) or groups(turn.reading)))
    return Asked("length", say.LENGTH) if told.length is None and judged else None
