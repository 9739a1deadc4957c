"""Weight from length or girth, length from weight, fat or thin, how near to the largest (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from assistant.dialogue.amount_words import Amounts, amounts, middle, system, typed
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside.compared import answered, in_order, less_asked, set_against, yes_or_no
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure
from assistant.dialogue.subjects import groups, named, species_of
from assistant.dialogue.telling import MEMORY, basis_of, place_names, plain, trusted
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core, order
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about, numbers
from assistant.reasoning.size import (
    HEAVIEST,
    MAXIMUM,
    Weight,
    condition,
    girth_weight,
    length_fit,
    length_for_weight,
    own_sizes,
    relative,
    size_range,
    standard_weight,
    total_length,
)
from assistant.text import unique, word_set
from assistant.units import joined, show_length, show_weight

FEW = 2
POUND = 453.59237
"""Grams a pound: half of it and more is told in pounds."""
ABSURD = 1.5
"""So many times the largest length known no fish of a kind reaches: something else was measured (common practice)."""
USUAL = "usual-adult-weight"
GIRTH, CONDITION = "practice:girth-formula", "practice:condition-words"
BIG, POUNDS = word_set("big large huge good nice decent monster heavy lot"), word_set("pound pounds lb lbs")
OUNCES, KILOS = word_set("ounce ounces oz ozs"), word_set("kg kgs kilo kilos kilogram kilograms")
STREAM = frozenset({"stream", "river", "creek", "brook", "streams", "rivers"})


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The weight of the length told, the length of the weight told, or what both say of the fish's shape."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    against = set_against(turn) if "heavier-than" in turn.cues else ()
    taxa = against or species_of(kb, asked)
    told = amounts(turn.reading, held, bool(named(turn)) and not _same(turn))
    if told.empty and held.lengths and (_same(turn) or held.intent in ("weight", "undo")):
        told = Amounts(held.lengths[-1], None, None)
    if told.empty and held.lengths and _of_it(turn):
        told = Amounts(held.lengths[-1], None, None)
    if told.weight is not None and told.length is None and held.lengths and _guessed_of_it(turn):
        told = replace(told, length=held.lengths[-1])
    blocks = _at_one_length(turn, against, told) + _blocks(turn, taxa, told)
    of = against if against and not named(turn) else told_taxa(turn, asked)
    if not blocks and "weight-unit" in turn.cues and told.weight is not None:
        blocks = [Block("point", order.weight_in(typed(told.weight, held)), claim=False)]
    if not blocks:
        return _ask(turn, of, taxa, told), held
    blocks += _record(turn, taxa, told)
    first, *rest = [*blocks, *remarks]
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("weight", (head, *rest), taxa=of), held


def _of_it(turn: Turn) -> bool:
    """True for "what would it weigh" after a length of the fish spoken of was judged."""
    return turn.held.intent == "size" and not named(turn) and not groups(turn.reading) and "it" in turn.reading.words


def _guessed_of_it(turn: Turn) -> bool:
    """True for a weight told of the fish whose length was judged just before ("id guess it went two pounds?")."""
    asks_length = {"long", "length", "inches"} & set(turn.reading.words)
    return turn.held.intent in ("size", "weight") and not asks_length and not named(turn) and not groups(turn.reading)


def _at_one_length(turn: Turn, against: Sequence[str], told: Amounts) -> list[Block]:
    """Which of several fishes of one length weighs more, by their standard weights."""
    if told.length is None or told.weight is not None or len(against) < 2:
        return []
    kb = turn.kb
    found: dict[str, Weight] = {}
    for t in _shown_against(turn, against):
        line_of = relative(kb, t)
        weight = _standard(turn, t, line_of, told) if line_of == t else None
        if weight is not None:
            found[t] = weight[0]
    if len(found) < 2:
        return []
    heights = {t: w.grams for t, w in found.items()}
    ranked = in_order(heights, least_first=False)
    pounds = bool(POUNDS & set(turn.reading.words)) or any(g >= POUND for g in heights.values())
    rows = [(label(kb, t), show_weight(heights[t], system(turn.held, told.length), pounds)) for t in ranked]
    text = order.with_answer(answered(turn, heights), order.heavier_at(typed(told.length, turn.held), rows))
    return [Block("point", text, statements=tuple(f"size:{found[t].record.id}" for t in ranked))]


def _shown_against(turn: Turn, against: Sequence[str]) -> tuple[str, ...]:
    """The fishes compared: named ones, and of each group the best known that have a line of their own."""
    kb = turn.kb
    own = set(named(turn))
    others = [t for t in against if t not in own and relative(kb, t) == t]
    return unique((*(t for t in against if t in own), *sorted(others, key=lambda t: (-len(kb.ranges(t)), t))[:FEW]))


def _same(turn: Turn) -> bool:
    return "same" in turn.reading.words


def _ask(turn: Turn, of: tuple[str, ...], taxa: Sequence[str], told: Amounts) -> Answer:
    """What is held of the heaviest and of weights by length; a length is asked for where a fish in hand is meant."""
    kb, units = turn.kb, system(turn.held)
    if "heavier-than" in turn.cues and (first := _in_order(turn, taxa)):
        return Answer("weight", (first, *(b for t in taxa[:FEW] for b in heaviest(kb, t, units))), taxa=of)
    usual = [] if "biggest" in aspects(kb, turn.reading) else [b for t in taxa[:FEW] for b in _usual(turn, t)]
    tops = usual + [b for t in taxa[:FEW] for b in heaviest(kb, t, units)]
    notes: list[Block] = []
    if aspects(kb, turn.reading) & {"biggest", "record"}:
        notes.append(Block("doubt", say.RECORD, claim=False))
    elif taxa:
        tops += [b for t in _shown(turn, taxa) for b in _by_length(turn, t)]
    if taxa and not usual and not heaviest(kb, taxa[0], units) and len(taxa) == 1:
        tops.insert(0, Block("point", order.no_weight(label(kb, taxa[0])), claim=False))
    if not tops and not taxa and told.length is not None:
        return plain("weight", order.WEIGHT_OF_WHICH, asked=Asked("fish", say.WHICH_FISH))
    if not tops:
        return plain("weight", say.WEIGHT_NEEDS, asked=Asked("length", say.LENGTH), taxa=of)
    head = tops[0]._replace(kind="lead")
    if notes:
        return Answer("weight", (head, *tops[1:], *notes), taxa=of)
    asked = Asked("length", say.LENGTH)
    blocks = (head, *tops[1:], Block("help", say.WEIGHT_NEEDS, claim=False))
    return Answer("weight", blocks, taxa=of, asked=asked)


def _usual(turn: Turn, taxon: str) -> list[Block]:
    """What a grown fish usually weighs, where that is held."""
    kb, units = turn.kb, system(turn.held)
    found = numbers(kb, taxon, USUAL) if kb.find("character", USUAL) else None
    if found is None:
        return []
    low, high = (show_weight(x, units) for x in found[:2])
    shown = joined(low, high) if low != high else low
    text = trusted(order.usual_weight(label(kb, taxon), shown), basis_of(about(kb, taxon, USUAL)[0]))
    return [Block("point", text, statements=tuple(f"st:{s}" for s in found[2]))]


def _by_length(turn: Turn, taxon: str) -> list[Block]:
    """What a fish weighs at the ends of its usual length, by its own standard weight."""
    kb, units = turn.kb, system(turn.held)
    sizes = size_range(kb, taxon)
    if relative(kb, taxon) != taxon or sizes.usual_low is None or sizes.usual_high is None:
        return []
    found = [(mm, w) for mm in (sizes.usual_low, sizes.usual_high) if (w := standard_weight(kb, taxon, mm)) is not None
             and "below-minimum" not in w.limits]
    if not found:
        return []
    rows = [(show_length(mm, units).partition(" (")[0], show_weight(w.grams, units)) for mm, w in found]
    text = order.weights_by_length(label(kb, taxon), rows)
    return [Block("point", text, statements=tuple(f"size:{w.record.id}" for _, w in found[:1]))]


def _in_order(turn: Turn, taxa: Sequence[str]) -> Block | None:
    """Which of several fishes grows heaviest (or stays lightest), by the heaviest held of each, yes or no first."""
    kb, units = turn.kb, system(turn.held)
    known = {t: found for t in taxa if (found := numbers(kb, t, HEAVIEST)) is not None}
    if len(known) < 2:
        lone = next(iter(known), "")
        if not lone or len(taxa) < 2:
            return None
        others = say.names_with([label(kb, t) for t in taxa if t != lone][:FEW], "or")
        text = order.one_known(label(kb, lone), show_weight(known[lone][1], units), others)
        return Block("lead", text, statements=tuple(f"st:{s}" for s in known[lone][2]))
    heights = {t: found[1] for t, found in known.items()}
    answer = answered(turn, heights)
    least = less_asked(turn) and not answer
    ranked = in_order(heights, least)
    rows = [(label(kb, t), show_weight(heights[t], units)) for t in ranked]
    text = order.with_answer(answer, order.weight_order(rows, least))
    basis = MEMORY if MEMORY in {basis_of(about(kb, t, HEAVIEST)[0]) for t in ranked} else ""
    return Block("lead", trusted(text, basis), statements=tuple(f"st:{s}" for t in ranked for s in known[t][2]))


def _blocks(turn: Turn, taxa: Sequence[str], told: Amounts) -> list[Block]:
    units = system(turn.held, told.length or told.weight)
    out: list[Block] = []
    if told.length is not None and told.girth is not None:
        out.append(_by_girth(told, units))
    for taxon in _shown(turn, taxa):
        out += _for(turn, taxon, told, units)
    return out


def _shown(turn: Turn, taxa: Sequence[str]) -> tuple[str, ...]:
    """The fish asked about, or the best known ones of a group."""
    kb = turn.kb
    if len(taxa) <= FEW and not groups(turn.reading):
        return tuple(taxa)
    with_line = [t for t in taxa if relative(kb, t) == t]
    most = FEW if len(taxa) <= FEW + 1 else 1
    return tuple(sorted(with_line or taxa, key=lambda t: (-len(kb.ranges(t)), t))[:most])


def _by_girth(told: Amounts, units: str) -> Block:
    assert told.length is not None and told.girth is not None
    found = girth_weight(middle(told.length), middle(told.girth))
    low, high = (show_weight(x, units).partition(" (")[0] for x in (found.low, found.high))
    text = say.weight_girth(show_weight(found.grams, units), low, high)
    return Block("point", text, statements=(GIRTH,))


def _for(turn: Turn, taxon: str, told: Amounts, units: str) -> list[Block]:
    kb = turn.kb
    line_of = relative(kb, taxon)
    if line_of is None:
        return [Block("point", say.no_weight_line(label(kb, taxon)), claim=False)] if told.girth is None else []
    if told.length is not None and told.weight is not None:
        return _condition(turn, taxon, line_of, told)
    if told.length is not None:
        return _weight(turn, taxon, line_of, told, units)
    if told.weight is not None:
        return _length(turn, taxon, line_of, told, units)
    return []


def _standard(turn: Turn, taxon: str, line_of: str, told: Amounts) -> tuple[Weight, tuple[str, ...]] | None:
    """The standard weight of the length told, and the limits to say; fork and standard lengths are turned first."""
    kb = turn.kb
    assert told.length is not None
    length, method, limits = middle(told.length), told.length.method or "total", []
    if method != "total" and (turned := total_length(kb, line_of, length, method)) is not None:
        length, method = turned[0], "total"
        limits.append("converted")
    water = "streams" if STREAM & set(turn.reading.words) else ""
    found = standard_weight(kb, line_of, length, method, water)
    if found is None:
        return None
    if line_of != taxon:
        limits.append("kin")
    return found, (*limits, *found.limits)


def _weight(turn: Turn, taxon: str, line_of: str, told: Amounts, units: str) -> list[Block]:
    found = _standard(turn, taxon, line_of, told)
    if found is None:
        return []
    assert told.length is not None
    weight, limits = found
    kb = turn.kb
    if beyond := _no_such_length(turn, taxon, told.length, units):
        return beyond
    words = set(turn.reading.words)
    pounds = bool(POUNDS & words) or (weight.grams >= POUND / 2 and not OUNCES & words)
    shown = show_weight(weight.grams, units, pounds, bool(KILOS & words), bool(OUNCES & words) and not POUNDS & words)
    text = say.weight_lead(label(kb, taxon), typed(told.length, turn.held), shown)
    size = (f"size:{weight.record.id}",)
    note = say.weight_median_note if "median" in weight.record.label else say.weight_standard_note
    return [
        Block("point", text, statements=size),
        Block("point", note(label(kb, line_of)), statements=(*size, CONDITION)),
        *_limits(limits, size),
    ]


def _no_such_length(turn: Turn, taxon: str, length: Measure, units: str) -> list[Block]:
    """That no fish of the kind is so long, where the length told is no fish's (a depth, a slip); else nothing."""
    sizes = own_sizes(turn.kb, taxon)
    if not sizes.largest or middle(length) <= ABSURD * sizes.largest:
        return []
    text = order.no_such_length(label(turn.kb, taxon), typed(length, turn.held), show_length(sizes.largest, units))
    told = about(turn.kb, taxon, MAXIMUM)[0]
    found = tuple(f"st:{s}" for s in sizes.largest_statements)
    return [Block("point", trusted(text, basis_of(told)), statements=found)]


def _no_such_weight(turn: Turn, taxon: str, told: Amounts, length: float, units: str) -> list[Block]:
    """That no fish of the kind is so heavy, where it would be far longer than any held; else nothing."""
    top = size_range(turn.kb, taxon).largest
    if not top or length <= ABSURD * top or told.weight is None:
        return []
    known = heaviest(turn.kb, taxon, units)
    text = order.no_such_weight(label(turn.kb, taxon), typed(told.weight, turn.held))
    return [Block("point", text, claim=False), *known]


def _length(turn: Turn, taxon: str, line_of: str, told: Amounts, units: str) -> list[Block]:
    kb = turn.kb
    assert told.weight is not None
    found = length_for_weight(kb, line_of, middle(told.weight))
    if found is None:
        return []
    if beyond := _no_such_weight(turn, taxon, told, found.grams, units):
        return beyond
    size = (f"size:{found.record.id}",)
    text = say.length_lead(label(kb, taxon), typed(told.weight, turn.held), show_length(found.grams, units))
    text = order.with_answer(_is_big(turn, taxon, found.grams), text)
    limits = (*(("kin",) if line_of != taxon else ()), *found.limits)
    top = size_range(kb, taxon).largest
    beyond = (
        [Block("doubt", say.weight_beyond(label(kb, taxon)), statements=size)] if top and found.grams > top else []
    )
    return [Block("point", text, statements=size), *beyond, *_limits(limits, size), *heaviest(kb, taxon, units)]


def _is_big(turn: Turn, taxon: str, length: float) -> str:
    """Yes or no to "is a 3 pound bass big", by the length that such a fish has."""
    if not yes_or_no(turn) or not BIG & set(turn.reading.words):
        return ""
    fit = length_fit(turn.kb, taxon, length)
    if fit in ("large", "huge", "beyond"):
        return core.YES
    return order.NOT_ESPECIALLY if fit == "ordinary" else core.NO if fit else ""


def _condition(turn: Turn, taxon: str, line_of: str, told: Amounts) -> list[Block]:
    found = _standard(turn, taxon, line_of, told)
    if found is None:
        return []
    assert told.length is not None and told.weight is not None
    weight, limits = found
    share = middle(told.weight) / weight.grams
    held = turn.held
    text = say.condition_lead(
        label(turn.kb, taxon),
        typed(told.weight, held),
        typed(told.length, held),
        f"{100 * share:.0f} %",
        say.CONDITION[condition(share)],
    )
    size = (f"size:{weight.record.id}",)
    units = system(held, told.length)
    standard = say.weight_lead(label(turn.kb, taxon), typed(told.length, held), show_weight(weight.grams, units))
    return [
        Block("point", text, statements=(*size, CONDITION)),
        Block("point", standard, statements=size),
        *_limits(limits, size),
    ]


def _limits(limits: Sequence[str], size: tuple[str, ...]) -> list[Block]:
    return [Block("doubt", say.LIMIT[x], statements=size) for x in dict.fromkeys(limits) if x in say.LIMIT]


def heaviest(kb: KnowledgeBase, taxon: str, units: str) -> list[Block]:
    """The heaviest fish held, as a point; nothing where none is stated."""
    found = numbers(kb, taxon, HEAVIEST) if kb.find("character", HEAVIEST) else None
    if found is None:
        return []
    told = about(kb, taxon, HEAVIEST)[0]
    local = [s.regions for s in told if s.high == found[1]]
    where = place_names(kb, local[0]) if len(local) == 1 and local[0] else ""
    text = trusted(say.heaviest(label(kb, taxon), show_weight(found[1], units), where), basis_of(told))
    return [Block("point", text, statements=tuple(f"st:{s}" for s in found[2]))]


def _record(turn: Turn, taxa: Sequence[str], told: Amounts) -> list[Block]:
    """How near to the largest held, where a record is spoken of or the weight is beyond it."""
    kb = turn.kb
    top = numbers(kb, taxa[0], HEAVIEST) if len(taxa) == 1 and kb.find("character", HEAVIEST) else None
    weight = middle(told.weight) if told.weight is not None else None
    out: list[Block] = []
    if top is not None and weight is not None and weight >= 0.6 * top[1]:
        share = f"{100 * weight / top[1]:.0f} %"
        out.append(
            Block(
                "point",
                say.record_share(show_weight(top[1], system(turn.held)), share),
                statements=tuple(f"st:{s}" for s in top[2]),
            )
        )
    far = top is not None and weight is not None and weight >= 0.9 * top[1]
    if "record" in aspects(kb, turn.reading) or far or _too_long(kb, taxa, told):
        out.append(Block("doubt", say.RECORD, claim=False))
    return out


def _too_long(kb: KnowledgeBase, taxa: Sequence[str], told: Amounts) -> bool:
    if len(taxa) != 1 or told.length is None:
        return False
    top = size_range(kb, taxa[0]).largest
    return top is not None and middle(told.length) > top
