"""Who says so: the sources behind the last answer, a fish, a feature of a fish, or the base as a whole (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterable

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conflicts_told import conflicts_of_one
from assistant.dialogue.conversation import Held, Wanted
from assistant.dialogue.names_sourced import name_grounds
from assistant.dialogue.reader.parts import called, characters_asked
from assistant.dialogue.rules.grounds import rule_grounds
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.telling import plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lists, speak
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import self as own
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from assistant.reasoning.evidence import about, number_range
from assistant.reasoning.size import LENGTHS
from assistant.text import join, sentence

MOST, MOST_ALL = 6, 40
FEW = 2
GOING_ON = 7
"""Words of a line up to which what was asked just before is asked again."""
PAGELESS = "pageless"
"""The cue for sources that name no page."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """List sources with page, basis and what they were used for."""
    if "self-date" in turn.cues and not subjects(turn, carried=False):
        newest = max((s.year for s in turn.kb.all("source") if s.year.isdigit()), default="")
        lead = Block("lead", own.dated(newest), claim=False)
        return Answer("sources", (lead, *(b._replace(kind="point") for b in _whole(turn).blocks))), turn.held
    if "cant-agree" in turn.cues and turn.held.intent == "sources" and not named(turn) and (unlike := _unlike(turn)):
        return unlike, turn.held
    if (figure := _who_gives(turn)) is not None:
        return figure, turn.held
    if "more-figures" in turn.cues and (figures := _more_figures(turn)) is not None:
        return figures, turn.held
    fish = named(turn) or species_of(turn.kb, subjects(turn, carried=False))
    fish = fish or subjects(turn, carried=bool(turn.reading.of("character")))
    fish = fish or (species_of(turn.kb, turn.held.taxa) if PAGELESS in turn.cues else ())
    if cross := _cross_meant(turn, fish):
        held: list[object] = [turn.kb.taxon(cross), *turn.kb.statements(cross)]
        return _listed(turn, held, (cross, *turn.kb.taxon(cross).parents), asked=True), turn.held
    if fish and (told := name_grounds(turn, fish)):
        return Answer("sources", told, fish), turn.held
    if fish:
        records = _of_fish(turn, fish)
        after = turn.held.after(wanted=Wanted(_characters(turn) or _asked_before(turn)))
        if records and PAGELESS in turn.cues:
            records = [r for r in records if not getattr(r, "page", "")]
            if not records:
                return plain("sources", wording.all_paged(speak.fishes(turn.kb, fish[:1])), taxa=fish), after
            answer = _listed(turn, records, fish, asked=True)
            lead = Block("lead", wording.unpaged(len(records), speak.fishes(turn.kb, fish[:1])), claim=False)
            return answer._replace(blocks=(lead, *answer.blocks[1:])), after
        if records:
            return _listed(turn, records, fish, asked=True), after
        if unheld := _unheld(turn):
            text = wording.no_source_for(speak.fishes(turn.kb, fish[:1]), unheld)
            return plain("sources", text, taxa=fish), turn.held
    last = turn.held.last
    if last is not None:
        records = _cited(turn.kb, (s for b in last.blocks for s in b.statements))
        records += _cited(turn.kb, (s for c in last.candidates[:1] for s in c.supports)) if not records else []
        if records:
            listed = _listed(turn, records, last.taxa)
            stated = rule_grounds(turn.kb, last)
            rest = [b._replace(kind="point") if b.kind == "lead" else b for b in listed.blocks] if stated else ()
            return listed._replace(blocks=(*stated, *rest)) if stated else listed, turn.held
    return _whole(turn), turn.held


def _cross_meant(turn: Turn, fish: tuple[str, ...]) -> str:
    """The cross of the fish whose crosses were told with the one fish named ("where is the bluegill one from")."""
    kb, held = turn.kb, turn.held
    first = next((t for t in held.taxa if (x := kb.find("taxon", t)) is not None and not x.is_hybrid), "")
    if held.intent != "hybrids" or len(fish) != 1 or not first or first == fish[0]:
        return ""
    return next((c for c in kb.crosses_of(first) if set(kb.taxon(c).parents) == {first, fish[0]}), "")


def _unlike(turn: Turn) -> Answer | None:
    """Whether the sources of what was said last of one fish disagree; None where it was said of several."""
    kb, last = turn.kb, turn.held.last
    kinds = species_of(kb, turn.held.taxa)
    told = [r for b in last.blocks for s in b.statements if isinstance(r := kb.record_at(s), Statement)] if last else []
    if len(kinds) != 1 or not told:
        return None
    return conflicts_of_one(turn, kinds[0], {s.character for s in told})._replace(intent="sources")


def _who_gives(turn: Turn) -> Answer | None:
    """Which source gives a figure on the features told of last ("who gives six?", "and the 250?"); None where no figure
    is typed, a fish is named, or many features were told."""
    kb, last = turn.kb, turn.held.last
    typed = _typed(turn)
    if not typed or last is None or turn.held.intent not in ("sources", "list") or named(turn):
        return None
    told = [r for r in _cited(kb, (s for b in last.blocks for s in b.statements)) if isinstance(r, Statement)]
    kinds, features = sorted({s.taxon for s in told}), list(dict.fromkeys(s.character for s in told))
    if not 0 < len(features) <= FEW or len(kinds) != 1:
        return None
    features += [c for c in LENGTHS if features[0] in LENGTHS and c not in features]
    known = [s for c in features for s in about(kb, kinds[0], c)[0]]
    found = [s for s in known if any(_near(x, s) for x in typed)]
    what = join([kb.character(c).label for c in features], "or")
    figure = next((m.words for m in turn.reading.measures if m.kind == "length"), f"{typed[0]:g}")
    text = wording.gives_figure(figure, what, speak.fishes(kb, (kinds[0],)), bool(found))
    blocks = (Block("lead", text, claim=False), *_told_each(turn, (found or known)[:MOST]))
    return Answer("sources", blocks, (kinds[0],))


def _typed(turn: Turn) -> tuple[float, ...]:
    """The lengths and bare numbers that a line gives; no "one" that stands for a thing ("the higher one")."""
    pointing = "one" in turn.reading.words
    lengths = [float(m.low + m.high) / 2 for m in turn.reading.measures if m.kind == "length"]
    return (*lengths, *(float(n) for n in turn.reading.counts if n != 1 or not pointing))


def _near(figure: float, s: Statement) -> bool:
    """True for a statement that gives a figure: as a count to the unit, as a length closely."""
    edges = [x for x in (s.low, s.usual_low, s.usual_high, s.high, s.mean) if x is not None]
    return any(x == figure or (s.character in LENGTHS and abs(x - figure) <= CLOSE * figure) for x in edges)


def _more_figures(turn: Turn) -> Answer | None:
    """What else is stated on the one or two features whose sources were told; None where they were more."""
    kb, last = turn.kb, turn.held.last
    shorts = [s for b in last.blocks for s in b.statements] if last is not None else []
    told = [r for r in _cited(kb, shorts) if isinstance(r, Statement)]
    pairs = list(dict.fromkeys((r.taxon, r.character) for r in told))
    if not 0 < len(pairs) <= FEW or turn.held.intent != "sources":
        return None
    fish = next(iter(last.taxa), pairs[0][0]) if last is not None else pairs[0][0]
    said = {r.id for r in told}
    others = [s for t, c in pairs for s in about(kb, t, c)[0] if s.id not in said]
    of_length = any(c in LENGTHS for _, c in pairs)
    near = [s for c in LENGTHS if of_length for s in about(kb, fish, c)[0] if s.id not in said and s not in others]
    features = join(list(dict.fromkeys(kb.character(c).label for _, c in pairs)))
    lead = wording.other_figures(len(others), features, speak.fishes(kb, (fish,)))
    blocks = (Block("lead", lead, claim=False), *_values(turn, list(others)), *_values(turn, list(near)))
    return Answer("sources", blocks, (fish,))


def _asked_before(turn: Turn) -> tuple[str, ...]:
    """The characters whose sources were asked for just before, for a short line that goes on ("and for the flier?")."""
    on = turn.held.intent == "sources" and len(turn.reading.words) <= GOING_ON
    return turn.held.wanted.characters if on and not turn.cues & {"size", "range"} else ()


def _of_fish(turn: Turn, fish: tuple[str, ...]) -> list[object]:
    kb = turn.kb
    asked = _characters(turn) or _asked_before(turn)
    out: list[object] = []
    for taxon in fish:
        if kb.find("taxon", taxon) is None:
            continue
        if asked:
            out += [s for name in asked for s in about(kb, taxon, name)[0]]
        elif "size" in turn.cues and (sized := [s for name in LENGTHS for s in about(kb, taxon, name)[0]]):
            out += sized
        elif "range" in turn.cues:
            out += kb.ranges(taxon)
        else:
            out += [s for s in kb.statements(taxon) if s.basis == "read"] or kb.statements(taxon)
    out = _figures(turn, out)
    if not out and turn.held.last is None and not _unheld(turn):
        out = [s for t in fish if kb.find("taxon", t) for s in kb.statements(t)]
    return out


_BACKED = re.compile(r"\b(?:sources?|books?|papers?|works?|stud(?:y|ies)|pages?|what|that|who)\s+backs?\b(?! colou?r)")
CLOSE = 0.03
"""How near a figure typed must be to one stated."""


def _characters(turn: Turn) -> tuple[str, ...]:
    """The characters whose sources are asked for; not the back in "how many sources back that"."""
    kb, text = turn.kb, turn.reading.text.lower()
    found = called(kb, turn.reading) or characters_asked(kb, turn.reading)
    backed = _BACKED.search(text)
    if backed and not re.search(r"\bback\b", text[backed.end() :]):
        found = tuple(c for c in found if kb.character(c).part != "back" and "back" not in c.split("-"))
    if not found and any(m.kind == "length" for m in turn.reading.measures):
        return LENGTHS
    counts = tuple(c for c in found if kb.character(c).kind == "count")
    return counts if counts and {"count", "counts"} & set(turn.reading.words) else found


def _unheld(turn: Turn) -> str:
    """The features named for which a source is asked, in words; empty where the line names none outright."""
    found = _characters(turn) if turn.reading.of("character") else ()
    return join([turn.kb.character(c).label for c in found[:FEW]], "or")


def _figures(turn: Turn, records: list[object]) -> list[object]:
    """Of some statements those that give the figure typed ("what page says bluegill reach 16 inches")."""
    typed = [float(m.low + m.high) / 2 for m in turn.reading.measures if m.kind == "length"]
    near = [r for r in records if isinstance(r, Statement) and (span := number_range(r)) is not None and any(
        abs(x - value) <= CLOSE * value for value in typed for x in (span[0], span[3]))]
    return list(near) or records


def _cited(kb: KnowledgeBase, shorts: Iterable[str]) -> list[object]:
    found = [kb.record_at(s if ":" in s else f"st:{s}") for s in dict.fromkeys(shorts)]
    return [r for r in found if r is not None and hasattr(r, "source") and r.source]


def _listed(turn: Turn, records: list[object], taxa: tuple[str, ...], asked: bool = False) -> Answer:
    """The sources of some records, the most used first; ``asked``: of a fish named, not of what was said before."""
    kb = turn.kb
    lines: dict[tuple[str, str], list[object]] = {}
    for record in records:
        named: tuple[str, ...] = getattr(record, "source", ())
        for source in named:
            lines.setdefault((source, getattr(record, "page", "")), []).append(record)
    ranked = sorted(lines.items(), key=lambda kv: (getattr(kv[1][0], "basis", "") != "read", -len(kv[1]), kv[0]))
    most = MOST_ALL if "more" in turn.cues else MOST
    name = speak.fishes(kb, taxa[:3]) if taxa else ""
    count = len({s for s, _ in lines})
    said = not asked and turn.held.last is not None
    lead = wording.sources_lead(count, name) if said else wording.sources_used(count, name)
    blocks = [Block("lead", lead, claim=False), *(_values(turn, records) if asked else ())]
    if turn.held.intent == "sources" and {"most", "main"} & set(turn.reading.words) and ranked:
        (source, _), used = max(ranked, key=lambda kv: len(kv[1]))
        text = wording.most_used(speak.short_cite(kb, source), len(used))
        blocks[0] = Block("lead", text, statements=tuple(dict.fromkeys(_short(r) for r in used))[:20])
    for (source, page), used in ranked[:most]:
        blocks.append(
            Block(
                "sources", _line(kb, source, page, used), statements=tuple(dict.fromkeys(_short(r) for r in used))[:20]
            )
        )
    if len(ranked) > most:
        blocks.append(Block("help", wording.more_sources(len(ranked) - most), claim=False))
    return Answer("sources", tuple(blocks), taxa)


def _values(turn: Turn, records: list[object]) -> list[Block]:
    """What the sources say each, where they are asked for on one or two features of a fish."""
    told = [r for r in records if isinstance(r, Statement)]
    if len(told) != len(records) or len({s.character for s in told}) > FEW or len(told) > MOST:
        return []
    return _told_each(turn, told)


def _told_each(turn: Turn, told: list[Statement]) -> list[Block]:
    """What some statements say, each with its source."""
    kb, units = turn.kb, turn.held.units
    return [Block("point", lists.by_source(
        sentence(speak.statement_words(kb, s, units)),
        speak.short_cite(kb, s.source[0], s.page) if s.source else ""), statements=(f"st:{s.id}",)) for s in told]


def _line(kb: KnowledgeBase, source: str, page: str, used: list[object]) -> str:
    found = kb.find("source", source)
    cited = speak.cite(found, page) if found is not None else source
    basis = wording.BASIS_WORDS.get(getattr(used[0], "basis", ""), "")
    if found is not None and found.kind != "common-practice":
        basis = basis.removesuffix(wording.NO_SOURCE)
    what = list(dict.fromkeys(kb.character(s.character).label for s in used if isinstance(s, Statement)))
    read = wording.what_read(found.what_read) if found is not None and found.what_read else ""
    return wording.source_line(cited, "; ".join(x for x in (basis, read) if x), wording.used_for(what[:3], len(what)))


def _short(record: object) -> str:
    from assistant.model.schema import KINDS

    prefix = next((k.prefix for k in KINDS if type(record) is k.record), "st")
    return f"{prefix}:{getattr(record, 'id', '')}"


def _whole(turn: Turn) -> Answer:
    kb = turn.kb
    sources = kb.all("source")
    read = sum(bool(s.what_read) or s.basis == "read" for s in sources)
    return Answer("sources", (Block("lead", wording.base_sources(read, len(sources), len(kb.species)), claim=False),))
