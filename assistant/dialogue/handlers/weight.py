"""Weight from length or girth, length from weight, fat or thin, how near to the largest (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue import phrases_info as say
from assistant.dialogue.amount_words import Amounts, amounts, middle, system, typed
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.speak import fish as label
from assistant.dialogue.subjects import groups, named, species_of
from assistant.dialogue.telling import MEMORY, basis_of, plain, trusted
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about, numbers
from assistant.reasoning.size import (
    Weight,
    condition,
    girth_weight,
    length_for_weight,
    relative,
    size_range,
    standard_weight,
    total_length,
)
from assistant.units import show_length, show_weight

FEW = 2
HEAVIEST = "max-weight"
GIRTH, CONDITION = "practice:girth-formula", "practice:condition-words"
STREAM = frozenset({"stream", "river", "creek", "brook", "streams", "rivers"})


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The weight of the length told, the length of the weight told, or what both say of the fish's shape."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    taxa = species_of(kb, asked)
    told = amounts(turn.reading, held, bool(named(turn)) and not _same(turn))
    if told.empty and held.lengths and (_same(turn) or held.intent in ("weight", "undo")):
        told = Amounts(held.lengths[-1], None, None)
    blocks = _blocks(turn, taxa, told)
    if not blocks:
        return _ask(turn, asked, taxa), held
    blocks += _record(turn, taxa, told)
    first, *rest = [*blocks, *remarks]
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("weight", (head, *rest), taxa=told_taxa(turn, asked)), held


def _same(turn: Turn) -> bool:
    return "same" in turn.reading.words


def _ask(turn: Turn, asked: tuple[str, ...], taxa: Sequence[str]) -> Answer:
    """What is needed, with what is held of the heaviest."""
    rest = [b for t in taxa[:FEW] for b in heaviest(turn.kb, t, system(turn.held))]
    if "heavier-than" in turn.cues and (order := _in_order(turn, taxa)):
        return Answer("weight", (order, *rest), taxa=told_taxa(turn, asked))
    if rest and aspects(turn.kb, turn.reading) & {"biggest", "record"}:
        head = Block("lead", rest[0].text, statements=rest[0].statements)
        notes = Block("doubt", say.RECORD, claim=False)
        return Answer("weight", (head, *rest[1:], notes), taxa=told_taxa(turn, asked))
    return plain(
        "weight", say.WEIGHT_NEEDS, asked=Asked("length", say.LENGTH), taxa=told_taxa(turn, asked), rest=rest
    )


def _in_order(turn: Turn, taxa: Sequence[str]) -> Block | None:
    """Which of several fishes grows heaviest, by the heaviest held of each."""
    kb, units = turn.kb, system(turn.held)
    known = [(t, found) for t in taxa if (found := numbers(kb, t, HEAVIEST)) is not None]
    if len(known) < 2:
        return None
    ranked = sorted(known, key=lambda pair: (-pair[1][1], pair[0]))
    text = say.weight_order([(label(kb, t), show_weight(found[1], units)) for t, found in ranked])
    bases = {basis_of(about(kb, t, HEAVIEST)[0]) for t, _ in ranked}
    basis = MEMORY if MEMORY in bases else ""
    return Block("lead", trusted(text, basis), statements=tuple(f"st:{s}" for _, found in ranked for s in found[2]))


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
    text = say.weight_lead(label(kb, taxon), typed(told.length, turn.held), show_weight(weight.grams, units))
    size = (f"size:{weight.record.id}",)
    note = say.weight_median_note if "median" in weight.record.label else say.weight_standard_note
    return [
        Block("point", text, statements=size),
        Block("point", note(label(kb, line_of)), statements=(*size, CONDITION)),
        *_limits(limits, size),
    ]


def _length(turn: Turn, taxon: str, line_of: str, told: Amounts, units: str) -> list[Block]:
    kb = turn.kb
    assert told.weight is not None
    found = length_for_weight(kb, line_of, middle(told.weight))
    if found is None:
        return []
    size = (f"size:{found.record.id}",)
    text = say.length_lead(label(kb, taxon), typed(told.weight, turn.held), show_length(found.grams, units))
    limits = (*(("kin",) if line_of != taxon else ()), *found.limits)
    top = size_range(kb, taxon).largest
    beyond = (
        [Block("doubt", say.weight_beyond(label(kb, taxon)), statements=size)] if top and found.grams > top else []
    )
    return [Block("point", text, statements=size), *beyond, *_limits(limits, size), *heaviest(kb, taxon, units)]


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
    text = trusted(
        say.heaviest(label(kb, taxon), show_weight(found[1], units)), basis_of(about(kb, taxon, HEAVIEST)[0])
    )
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
