"""Where a fish is native, introduced or missing, in a place or over all (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import list_fishes
from assistant.dialogue.kinds_among import UNWANTED, WARNED
from assistant.dialogue.subjects import groups, named, species_of
from assistant.dialogue.telling import (
    MEMORY,
    named_for_waters,
    place_name,
    place_names,
    plain,
    trusted,
    which_fish,
    with_memory,
)
from assistant.dialogue.turn import Turn
from assistant.dialogue.wider import common_taxon
from assistant.dialogue.wording import care, lists
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Place, Range
from assistant.reasoning.evidence import about, below
from assistant.reasoning.living import LIVING, ORDER, living_in, rows, status_in, telling
from assistant.reasoning.place_prior import covered
from assistant.text import key

PLACES = ("state", "province", "territory", "district")
MOST_PLACES = 14
MOST_SHOWN = 8
FEW = 3
"""More fishes than this are told by status, not one by one."""
RISK = "conservation-status"
BROUGHT, NATURAL = ("introduced", "stocked"), ("native", "reintroduced", "extirpated")
LIKELY = 0.5
"""Share of the states on a water that must have a fish for it to be told of the water (common practice, no source)."""
NATIVE, INVASIVE, FROM_OLD, ARRIVED = "native", "invasive", "of-old", "arrived"
ONLY = "range-only"
"""The cue of a line that asks whether a fish lives in a place and nowhere else."""
STATES = frozenset({"state", "states", "province", "provinces", "list", "every", "all"})
"""Words that ask for every place by name."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The status of the fish in the place asked about, or where it lives."""
    kb, reading, held = turn.kb, turn.reading, turn.held
    asked, remarks = asked_about(turn)
    taxa = species_of(kb, asked)
    if reading.unknown_place and not reading.places:
        return _nowhere_known(turn, taxa, told_taxa(turn, asked)), held
    if not taxa and reading.places:
        from assistant.dialogue.handlers import handler_of

        return handler_of("list")(turn)
    if not taxa:
        return which_fish("range", say.WHICH_FISH), held
    places = reading.places or (() if turn.cues & {"asks-where", "range-else"} else held.places)
    if places and (invented := _invented(kb, (*((reading.water,) if reading.water else ()), *places))):
        return plain("range", say.range_invented(invented), taxa=told_taxa(turn, asked)), held
    sides = aspects(kb, reading) | ({NATIVE} if FROM_OLD in turn.cues else frozenset())
    if turn.cues & {FROM_OLD, ARRIVED} and places and groups(reading):
        taxa = _living_there(kb, taxa, places)
    elif places and (groups(reading) or len(taxa) > MOST_SHOWN) and not (named(turn) or reading.water):
        answer, after = list_fishes.handle(turn)
        listed = groups(reading) and "stocked-there" not in turn.cues
        return answer._replace(intent="list" if listed else "range"), after
    blocks: list[Block]
    if ARRIVED in turn.cues and places and groups(reading) and not (named(turn) or living_in(kb, taxa, places)):
        kinds = kinds_name(kb, groups(reading)[0].ids[0], 2)
        blocks = [Block("point", lists.none_arrived(kinds, place_names(kb, places)), claim=False)]
    elif len(taxa) > MOST_SHOWN:
        blocks = _group(kb, asked, taxa, places)
    elif ONLY in turn.cues and len(taxa) == 1 and (told := _whether_only(kb, taxa[0], places)):
        blocks = told
    elif places:
        native = NATIVE in sides and "introduced" not in sides
        blocks = [b for t in taxa for b in here(kb, t, places, "asks-where" in turn.cues, native, ARRIVED in turn.cues)]
    else:
        full = bool(set(reading.words) & STATES) or bool(turn.cues & {"more", "how-far"})
        blocks = [b for t in taxa for b in overall(kb, t, full)[: len(ORDER) if len(taxa) <= FEW else 1]]
        if INVASIVE in sides and len(taxa) == 1:
            blocks = _unwanted(turn, taxa[0]) + blocks
    first, *rest = [*blocks, *remarks]
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("range", (head, *rest), taxa=told_taxa(turn, asked)), held


def _whether_only(kb: KnowledgeBase, taxon: str, places: Sequence[str]) -> list[Block]:
    """Whether a fish lives in no other state or province than those told of, and where else it does.

    Empty where it is not held to live there.
    """
    living = [r for r in rows(kb, taxon) if r.status in LIVING]
    living = [r for r in living if (p := kb.place(r.place)) is not None and p.kind in PLACES]
    there = {x for at in places if (p := kb.place(at)) is not None for x in (at, *covered(kb, p))}
    here_too = [r for r in living if r.place in there]
    others = [r for r in living if r.place not in there]
    if not here_too:
        return []
    name, where = label(kb, taxon), place_names(kb, places)
    ids = tuple(f"range:{r.id}" for r in (others or here_too)[:MOST_SHOWN])
    if not others:
        return [Block("point", lists.only_held_of(name, where), statements=ids)]
    return [Block("point", lists.not_only(name, where), statements=ids), *overall(kb, taxon, full=True)]


def _living_there(kb: KnowledgeBase, taxa: tuple[str, ...], places: Sequence[str]) -> tuple[str, ...]:
    """Those of some kinds that live in a place, or all of them where none does."""
    there = living_in(kb, [t for t in taxa if not kb.taxon(t).is_hybrid], places)
    return tuple(t for t in taxa if t in there) or taxa


def _nowhere_known(turn: Turn, taxa: Sequence[str], told: tuple[str, ...]) -> Answer:
    """That a place is not known, and where the fish lives as far as that is held."""
    blocks = overall(turn.kb, taxa[0], full=False)[: len(ORDER)] if len(taxa) == 1 else []
    where = Asked("place", say.WHERE)
    lead = Block("lead", say.no_such_place(turn.reading.unknown_place), claim=False)
    return Answer("range", (lead, *blocks, Block("next", where.question, claim=False)), taxa=told, asked=where)


def _invented(kb: KnowledgeBase, places: Iterable[str]) -> str:
    found = [p for key in places if (p := kb.place(key)) is not None]
    return found[0].label if found and all(p.invented for p in found) else ""


def _unwanted(turn: Turn, taxon: str) -> list[Block]:
    """Whether a fish is an unwanted newcomer: by the warnings held, and by where it was brought."""
    kb, name = turn.kb, label(turn.kb, taxon)
    unwanted = set(below(kb, UNWANTED))
    warnings = [s for s in about(kb, taxon, WARNED)[0] if unwanted & set(s.states)]
    brought = [r for r in rows(kb, taxon) if r.status in BROUGHT]
    native = any(r.status == "native" for r in rows(kb, taxon))
    if warnings:
        return [Block("point", lists.is_unwanted(name, native), statements=tuple(f"st:{s.id}" for s in warnings))]
    if not brought:
        return [Block("point", lists.not_brought(name), claim=False)]
    return [Block("point", lists.brought_elsewhere(name, native), statements=(f"range:{brought[0].id}",))]


def here(
    kb: KnowledgeBase, taxon: str, places: Sequence[str], where: bool = False, native: bool = False,
    arrived: bool = False,
) -> list[Block]:
    """The status of a fish in some places, each told apart; an unknown one is said to be unknown.

    ``where``: asked where it lives, so no yes or no stands first; ``native``: asked whether it is native there;
    ``arrived``: asked whether it is there by now, however it came.
    """
    return [b for place in places for b in _one_place(kb, taxon, place, where, native, arrived)]


def _one_place(
    kb: KnowledgeBase, taxon: str, at: str, where: bool = False, native: bool = False, arrived: bool = False
) -> list[Block]:
    place, name = kb.place(at), label(kb, taxon)
    if place is None:
        return []
    found = telling([r for r in rows(kb, taxon) if r.place == at])
    if found:
        told = _told(kb, taxon, name, place, found, where, arrived)
        if found[0].status not in LIVING:
            told += _namesake(kb, taxon, at)
        if native and found[0].status not in BROUGHT and not any(r.status in NATURAL for r in found):
            ids = tuple(f"range:{r.id}" for r in found[:3])
            told = [Block("point", lists.not_native(name, place_name(place)), statements=ids), *told]
        return told
    if kb.taxon(taxon).is_hybrid:
        return _cross(kb, taxon, at)
    parts = telling([r for r in rows(kb, taxon) if r.place in covered(kb, place)])
    if parts:
        return _parts(kb, name, place, parts, where, arrived)
    wider = telling([r for r in rows(kb, taxon) if (w := kb.place(r.place)) is not None and at in w.covers])
    if wider:
        first = wider[0]
        text = trusted(say.range_wider(name, first.status, place_names(kb, (first.place,)), place.label), first.basis)
        return [Block("point", text, statements=(f"range:{first.id}",))]
    listed = [r for r in rows(kb, taxon) if r.status == "native"]
    out = [*_namesake(kb, taxon, at)]
    out += [
        Block(
            "point",
            say.range_unknown(name, place.label),
            statements=tuple(f"range:{r.id}" for r in listed[:3]),
            claim=bool(listed),
        )
    ]
    if listed:
        out.append(_line(kb, name, listed, lead=True))
    return out


def _namesake(kb: KnowledgeBase, taxon: str, at: str) -> list[Block]:
    """The kin of like name that lives in a place of which this fish is not listed ("bowfin": the eyetail bowfin)."""
    name = label(kb, taxon)
    kin = [t for t in kb.children.get(kb.taxon(taxon).parent or "", ()) if t != taxon and kb.taxon(t).is_species]
    for t in kin:
        row = status_in(kb, t, [at, *(covered(kb, spot) if (spot := kb.place(at)) is not None else ())])
        if row is not None and row.status in LIVING and _called_alike(kb, t, name):
            place = kb.place(at)
            where = place_name(place) if place is not None else at
            text = trusted(lists.namesake(label(kb, t), name, where, row.status), row.basis)
            return [Block("point", text, statements=(f"range:{row.id}",))]
    return []


def _called_alike(kb: KnowledgeBase, taxon: str, name: str) -> bool:
    """True for a fish whose name ends in that of another, or which goes by its first word, too ("longear")."""
    return label(kb, taxon).endswith(f" {name}") or any(
        key(n.text) == key(name) or key(name).startswith(f"{key(n.text)} ") for n in kb.names(taxon))


def _told(
    kb: KnowledgeBase, taxon: str, name: str, place: Place, found: list[Range], where: bool, arrived: bool = False
) -> list[Block]:
    first = found[0]
    same = [r for r in found if r.status == first.status]
    sure = next((r for r in same if r.basis != MEMORY), first)
    said = say.range_here(name, place_name(place), first.status, where, arrived)
    text = trusted(said, sure.basis)
    out = [Block("point", text, statements=tuple(f"range:{r.id}" for r in same[:6]))]
    if first.area and _speaks(first.area):
        out.append(Block("point", say.range_part(first.area), statements=(f"range:{first.id}",)))
    for status in dict.fromkeys(r.status for r in found if r.status != first.status):
        other = [r for r in found if r.status == status]
        part = other[0].area if other[0].area and _speaks(other[0].area) else ""
        told = say.range_part_of(name, status, part) if part else say.range_also(status, place.label)
        out.append(
            Block("doubt", trusted(told, other[0].basis), statements=tuple(f"range:{r.id}" for r in other[:3]))
        )
    return out + _risk(kb, taxon, name, place)


def _speaks(area: str) -> bool:
    """True for a note that names a part of the place, not for a bare word of status."""
    return len(area) > 3 and not area.lower().startswith(("stocked", "native", "introduced"))


def _parts(kb: KnowledgeBase, name: str, place: Place, found: list[Range], where: bool = False,
           arrived: bool = False) -> list[Block]:
    """The status in the states and provinces that a place covers.

    Of waters it is no answer where few of them have the fish, or where they do not agree.
    """
    living = {r.place for r in found if r.status in LIVING}
    found = [r for r in found if r.status in LIVING or r.place not in living]
    waters = named_for_waters(kb, place)
    inside = [x for x in covered(kb, place) if (p := kb.place(x)) is not None and p.kind in PLACES]
    split = len({r.status for r in found if not r.area}) > 1
    only = waters and bool(living) and (split or len(living) < LIKELY * len(inside))
    out = [Block("point", lists.only_of_states(name, place_name(place)), claim=False)] if only else []
    count = {s: sum(r.status == s for r in found) for s in ORDER}
    for status in sorted(ORDER, key=lambda s: (s not in LIVING, -count[s])):
        same = [r for r in found if r.status == status]
        if same:
            names = _places(kb, [r.place for r in same], full=False)
            text = (
                say.range_here(name, f"{place_name(place)}, by state: {names}", status, where, arrived)
                if not out
                else say.range_line(status, names)
            )
            out.append(Block("point", with_memory(text, same), statements=tuple(f"range:{r.id}" for r in same)))
    told = waters and not only
    return [*out, *([Block("doubt", lists.states_not_waters(place_name(place)), claim=False)] if told else [])]


def _risk(kb: KnowledgeBase, taxon: str, name: str, place: Place) -> list[Block]:
    if kb.find("character", RISK) is None:
        return []
    out = []
    for s in about(kb, taxon, RISK)[0]:
        if place.id in s.regions and s.states:
            clause = kb.state(s.states[0])
            text = trusted(care.law_note(name, f"{clause.clause or clause.label} in {place.label}"), s.basis)
            out.append(Block("point", text, statements=(f"st:{s.id}",)))
    return out[:1]


def _cross(kb: KnowledgeBase, taxon: str, at: str) -> list[Block]:
    parents = kb.taxon(taxon).parents
    out = [_where_parents(kb, taxon)]
    return out + [b for p in parents for b in _one_place(kb, p, at)[:1]]


def _where_parents(kb: KnowledgeBase, taxon: str) -> Block:
    """Where a cross may be met, and how it comes about."""
    found = kb.taxon(taxon)
    a, b = (label(kb, p) for p in found.parents)
    text = say.range_cross(found.label, a, b, care.ORIGIN.get(found.origin, ""))
    return Block("point", trusted(text, found.basis), statements=(f"taxon:{taxon}",))


def overall(kb: KnowledgeBase, taxon: str, full: bool) -> list[Block]:
    """Where a fish lives: native range first, then where it was brought, where it is gone."""
    name = label(kb, taxon)
    parents = kb.taxon(taxon).parents
    found = [r for r in rows(kb, taxon) if (p := kb.place(r.place)) is not None and p.kind in PLACES]
    if not found and parents:
        return [_where_parents(kb, taxon)]
    out: list[Block] = []
    told: set[str] = set()
    living = {r.place for r in found if r.status in LIVING}
    for status in ORDER:
        same = [r for r in found if r.status == status and not (r.area and status in ("absent", "extirpated"))]
        same = [r for r in same if status in LIVING or status == "uncertain" or r.place not in living]
        if same and (status != "absent" or full):
            out.append(_line(kb, name, same, lead=not out, full=full, partly=frozenset(told)))
            told |= {r.place for r in same}
    rest = [r for r in rows(kb, taxon) if r not in found and r.status in ("native", "introduced")]
    if not out and rest:
        out = [
            _line(kb, name, [r for r in rest if r.status == s], lead=not i)
            for i, s in enumerate(s for s in ("native", "introduced") if any(r.status == s for r in rest))
        ]
    return out or [Block("point", say.range_nothing(name), claim=False)]


def _line(
    kb: KnowledgeBase, name: str, found: Sequence[Range], lead: bool, full: bool = False,
    partly: frozenset[str] = frozenset(),
) -> Block:
    """Where a fish has one status; ``partly``: places told with another one, of which only parts are meant."""
    names = _places(kb, [r.place for r in found], full, partly)
    text = say.range_lead(name, found[0].status, names) if lead else say.range_line(found[0].status, names)
    return Block("point", with_memory(text, found), statements=tuple(f"range:{r.id}" for r in found))


def _places(kb: KnowledgeBase, keys: Iterable[str], full: bool, partly: frozenset[str] = frozenset()) -> str:
    """Places by name; whole regions in place of all their states, the list cut unless all are wanted."""
    left = set(keys)
    regions: list[str] = []
    if not full:
        wide = [
            p
            for p in kb.all("place")
            if p.kind == "region"
            and len(p.covers) >= 4
            and not p.invented
            and all((c := kb.place(x)) is not None and c.kind in PLACES for x in p.covers)
        ]
        for region in sorted(wide, key=lambda p: (-len(p.covers), p.id)):
            if set(region.covers) <= left:
                regions.append(place_name(region))
                left -= set(region.covers)
    rest = sorted(place_name(p) for k in left - partly if (p := kb.place(k)) is not None)
    parts = sorted(place_name(p) for k in left & partly if (p := kb.place(k)) is not None)
    names = [*regions, *rest, *(lists.parts_of(n) for n in parts)]
    if full or len(names) <= MOST_PLACES + 2:
        return say.names_with(names)
    return say.counted(", ".join(names[:MOST_PLACES]), len(names) - MOST_PLACES)


def _group(kb: KnowledgeBase, asked: Sequence[str], taxa: Sequence[str], places: Sequence[str]) -> list[Block]:
    kin = common_taxon(kb, *asked)
    name = label(kb, asked[0]) if len(asked) == 1 else label(kb, kin) if kin is not None else lists.fishes(len(asked))
    if not places:
        return [_line(kb, name, [r for t in taxa for r in rows(kb, t) if r.status == "native"], lead=True)]
    wanted = [x for key in places if (p := kb.place(key)) is not None for x in (key, *covered(kb, p))]
    by_status: dict[str, list[tuple[str, Range]]] = {}
    for t in taxa:
        if (row := status_in(kb, t, wanted)) is not None:
            by_status.setdefault(row.status, []).append((t, row))
    living = [x for s in ("native", "reintroduced", "introduced", "stocked") for x in by_status.get(s, ())]
    lead = say.group_here(len(living), len(taxa), name, place_names(kb, places))
    out = [Block("point", lead, statements=tuple(f"range:{r.id}" for _, r in living), claim=bool(living))]
    for status in ORDER:
        if some := by_status.get(status):
            names = say.names_with([label(kb, t) for t, _ in some])
            text = with_memory(say.range_line(status, names), [r for _, r in some])
            out.append(Block("point", text, statements=tuple(f"range:{r.id}" for _, r in some)))
    return out
