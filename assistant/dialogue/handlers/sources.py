"""Who says so: the sources behind the last answer, a fish, a feature of a fish, or the base as a whole (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.dialogue import phrases_naming as wording
from assistant.dialogue import phrases_self as own
from assistant.dialogue import speak
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.parts import characters_asked
from assistant.dialogue.subjects import named, subjects
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from assistant.reasoning.evidence import about
from assistant.reasoning.size import MAXIMUM, USUAL

MOST, MOST_ALL = 6, 40
LENGTHS = (MAXIMUM, USUAL)


def handle(turn: Turn) -> tuple[Answer, Held]:
    """List sources with page, basis and what they were used for."""
    if "self-date" in turn.cues and not subjects(turn, carried=False):
        newest = max((s.year for s in turn.kb.all("source") if s.year.isdigit()), default="")
        lead = Block("lead", own.dated(newest), claim=False)
        return Answer("sources", (lead, *(b._replace(kind="point") for b in _whole(turn).blocks))), turn.held
    fish = named(turn) or subjects(turn, carried=bool(turn.reading.of("character")))
    if fish:
        records = _of_fish(turn, fish)
        if records:
            return _listed(turn, records, fish), turn.held
    last = turn.held.last
    if last is not None:
        records = _cited(turn.kb, (s for b in last.blocks for s in b.statements))
        records += _cited(turn.kb, (s for c in last.candidates[:1] for s in c.supports)) if not records else []
        if records:
            return _listed(turn, records, last.taxa), turn.held
    return _whole(turn), turn.held


def _of_fish(turn: Turn, fish: tuple[str, ...]) -> list[object]:
    kb = turn.kb
    asked = characters_asked(kb, turn.reading)
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
    if not out and turn.held.last is None:
        out = [s for t in fish if kb.find("taxon", t) for s in kb.statements(t)]
    return out


def _cited(kb: KnowledgeBase, shorts: Iterable[str]) -> list[object]:
    found = [kb.record_at(s if ":" in s else f"st:{s}") for s in dict.fromkeys(shorts)]
    return [r for r in found if r is not None and hasattr(r, "source") and r.source]


def _listed(turn: Turn, records: list[object], taxa: tuple[str, ...]) -> Answer:
    kb = turn.kb
    lines: dict[tuple[str, str], list[object]] = {}
    for record in records:
        named: tuple[str, ...] = getattr(record, "source", ())
        for source in named:
            lines.setdefault((source, getattr(record, "page", "")), []).append(record)
    ranked = sorted(lines.items(), key=lambda kv: (getattr(kv[1][0], "basis", "") != "read", -len(kv[1]), kv[0]))
    most = MOST_ALL if "more" in turn.cues else MOST
    name = speak.fishes(kb, taxa[:3]) if taxa else ""
    blocks = [Block("lead", wording.sources_lead(len({s for s, _ in lines}), name), claim=False)]
    for (source, page), used in ranked[:most]:
        blocks.append(
            Block(
                "sources", _line(kb, source, page, used), statements=tuple(dict.fromkeys(_short(r) for r in used))[:20]
            )
        )
    if len(ranked) > most:
        blocks.append(Block("help", wording.more_sources(len(ranked) - most), claim=False))
    return Answer("sources", tuple(blocks), taxa)


def _line(kb: KnowledgeBase, source: str, page: str, used: list[object]) -> str:
    found = kb.find("source", source)
    cited = speak.cite(found, page) if found is not None else source
    basis = wording.BASIS_WORDS.get(getattr(used[0], "basis", ""), "")
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
