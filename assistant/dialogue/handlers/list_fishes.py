"""Which fishes: of a group, with a feature, in a place; and what the base lacks, for those who keep it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside.eaters_of import eaters_told
from assistant.dialogue.beside.left_out import set_aside
from assistant.dialogue.conversation import Held, Order
from assistant.dialogue.fitting import Fitting, Found, by_size, fitting, whole_families, with_places
from assistant.dialogue.gaps_told import asks_gaps, gaps
from assistant.dialogue.handlers.describe import handle as describe
from assistant.dialogue.kinds_among import counts, invasive, membership
from assistant.dialogue.lessons.words import words_for_lesson
from assistant.dialogue.life_asked import LIFE as LIVING_SIDES
from assistant.dialogue.life_asked import (
    RISK,
    WATERS,
    asks_spawning,
    at_risk,
    life_there,
    living,
    seasons,
    spawners,
    waters_meant,
)
from assistant.dialogue.list_pool import (
    OF_THOSE,
    anew,
    kinds_held,
    narrows,
    of_last_list,
    of_other_place,
    only_there,
    pool_of,
    same_of_others,
    seen_so_far,
    taking_out,
    with_crosses,
)
from assistant.dialogue.name_languages import in_languages
from assistant.dialogue.named_marks import of_last_term, of_part
from assistant.dialogue.observing import other_state
from assistant.dialogue.ranking import IN_ORDER, SIZE, Placed, from_smallest, order_asked, placed
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.rules.invented_waters import invented_place, told_of
from assistant.dialogue.subjects import groups, named, side_by_side
from assistant.dialogue.tallied import tallied
from assistant.dialogue.telling import MEMORY, named_for_waters, place_name, place_names, plain, which_fish
from assistant.dialogue.turn import Turn
from assistant.dialogue.waters_untold import with_others_there
from assistant.dialogue.whether import whether
from assistant.dialogue.wider import common_taxon
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import lists, speak
from assistant.dialogue.wording import order as orders
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import LIVING, living_in, status_in
from assistant.reasoning.observed import Observation
from assistant.reasoning.place_prior import expand_places, narrowest
from assistant.text import join, key, singular, unique

SHOWN, MOST_ORDERED, MOST_TAXA = 16, 20, 40
MOST_SILENT, MOST_WATERS = 60, 3
AT_HOME, BROUGHT = ("native", "reintroduced"), ("introduced", "stocked")
NATURAL = (*AT_HOME, "extirpated", "uncertain")
"""Statuses that speak for a native range somewhere."""
CROSSES_TOO = "crosses-too"
HOLDING = frozenset({"everything", "all", "held", "hold", "have", "got", "statements", "records", "facts"})
"""Words of a line that asks for all that is held on one fish."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The fishes that fit group, features and place; the gaps of the base where those are asked for."""
    kb, held = turn.kb, turn.held
    sides = aspects(kb, turn.reading)
    if "vocabulary" in sides:
        return words_for_lesson(turn), held
    if not of_other_place(turn) and (spoken := in_languages(turn, sides, "list")) is not None:
        return spoken, held
    if (counted := tallied(turn)) is not None:
        return counted, held
    if asks_gaps(turn, sides):
        return gaps(turn, sides), held
    if ("how-many-held" in sides or "self-count" in turn.cues) and not groups(turn.reading):
        return counts(kb), held
    if "invasive" in sides and not turn.reading.seen:
        return invasive(turn, kinds_held(kb)), held
    if (answer := membership(turn)) is not None:
        return answer, held
    if (others := _of_others(turn)) is not None:
        return others, held
    pool, name = pool_of(turn, sides)
    pool = with_crosses(kb, pool) if CROSSES_TOO in turn.cues else pool
    order = order_asked(turn, sides, pool)
    if order is None and _little(turn):
        order, (pool, name) = Order(SIZE, True), _with_family(kb, name, pool)
    plain_list = order is None and not (turn.reading.seen or turn.reading.places or turn.reading.measures)
    if named(turn) and len(pool) == 1 and plain_list and HOLDING & set(turn.reading.words):
        answer, held = describe(turn)
        return answer._replace(intent="list"), held
    if (eaters := eaters_told(turn, pool)) is not None:
        return eaters, held
    told = seen_so_far(turn) or tuple(of_last_term(turn))
    hints = held.hints if all(s in told for s in held.seen) else ()
    return _listed(turn, sides, order, pool, name), held.after(seen=told, hints=hints, order=order)


def _of_others(turn: Turn) -> Answer | None:
    """Whether each of a few other fishes has what the last list asked for, or lives there ("and pike?"); None where
    that is not asked, is no feature in states, or where the others are too many."""
    kb, asked = turn.kb, [s.observation for s in turn.held.seen if not s.retract]
    if only_there(turn):
        from assistant.dialogue.handlers import handler_of

        return handler_of("range")(turn)[0]._replace(intent="list")
    if not same_of_others(turn) or not all(o.states for o in asked) or turn.reading.places or taking_out(turn):
        return None
    pool, name = pool_of(turn, frozenset())
    pool = tuple(living_in(kb, pool, turn.held.places)) or pool if name else pool
    wider = {k for t in pool for k in kb.lineage(t) if k != t}
    pool = tuple(sorted((t for t in pool if t not in wider), key=lambda t: (-len(kb.ranges(t)), t)))
    if len(pool) > MOST_OTHERS or any(kb.character(o.character).use in LIVING_SIDES for o in asked):
        return None
    blocks = [b for t in pool for o in asked if (b := whether(turn, t, o.character, o.states, o.seen)) is not None]
    if not blocks:
        what = say.names_with([speak.seen_words(kb, o) for o in asked])
        fish = _called(turn, name, 2) if name else label(kb, pool[0])
        return plain("list", lists.nothing_told(what, fish, many=bool(name)), taxa=pool)
    told = (blocks[0], *(b._replace(kind="point") for b in blocks[1:]))
    return Answer("list", told, taxa=unique((*pool, *_wider(turn))))


MOST_OTHERS = 8
"""Other fishes of which the same is told one by one."""
SMALL = ("cue", "cue-size-small")


def _little(turn: Turn) -> bool:
    """True for a group asked for by its little kinds in a place ("which little sunfishes ... in a Maryland ditch")."""
    reading = turn.reading
    before = (key(reading.text[: m.start]).split()[-1:] for m in groups(reading)[:1])
    return bool(reading.places) and not reading.seen and any(
        e[:2] == SMALL for words in before for w in words for e in turn.kb.spoken(w))


def _family_of(kb: KnowledgeBase, name: str) -> tuple[str, str, bool]:
    """The genus that a group is, its family, and whether the whole family bears the word for the group ("sunfish")."""
    genus = common_taxon(kb, name) if name else None
    if genus is None or kb.taxon(genus).rank != "genus":
        return "", "", False
    family = kb.lineage(genus)[-1]
    word = singular(kinds_name(kb, name).split()[-1].lower())
    return genus, family, word in key(kb.taxon(family).label).split()


def _with_family(kb: KnowledgeBase, name: str, pool: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The kinds of a genus with those of its family, where the whole family bears the word it is asked for by."""
    genus, family, borne = _family_of(kb, name)
    if not genus or not borne:
        return pool, name
    return unique((*pool, *kb.members(family))), family


def _listed(
    turn: Turn, sides: frozenset[str], order: Order | None, pool: tuple[str, ...], name: str
) -> Answer:
    kb, reading = turn.kb, turn.reading
    kinds = set(kb.species)
    pool = tuple(t for t in pool if t in kinds) or pool
    narrowing = narrows(turn) or taking_out(turn)
    places = reading.places or (turn.held.places if narrowing or not reading.seen else ())
    seen = [s for s in reading.seen if not s.retract and not (order and _is_of(order, s))]
    if not seen and (taking_out(turn) or same_of_others(turn) or of_other_place(turn)):
        seen = [s for s in turn.held.seen if not s.retract]
    seen = seen or of_last_term(turn) or ([] if order else of_part(turn))
    if (invented := invented_place(kb, reading)) is not None:
        return told_of(kb, invented, turn.clock, "list")
    if asks_spawning(turn) and seasons(turn):
        return _spawning(turn, pool, name, places)
    if asks_spawning(turn) and "asks-when" in turn.cues and not (name or named(turn) or narrowing):
        return which_fish("habitat", say.WHICH_FISH)
    seen = seen or (life_there(turn) if places else list(living(turn)))
    if places and any(s.observation.character == RISK for s in seen):
        pool = at_risk(kb, pool, places)
    if not (seen or places or name or narrowing or order or turn.reading.measures) and not named(turn):
        return plain("list", lists.LIST_NEEDS, asked=Asked("place", say.WHERE))
    if order is not None and not order.able and not seen:
        return plain("list", lists.no_order(" ".join(order.words)), taxa=_wider(turn))
    pool, size_words = by_size(turn, pool, sides)
    if narrowing and "sized-ones" in turn.cues:
        order, seen = Order(SIZE, from_smallest(sides)), []
    found = fitting(kb, pool, [s.observation for s in seen])
    if order is not None and order.able and found.fits:
        here = set(living_in(kb, [f.taxon for f in found.fits], places))
        fits = [f for f in found.fits if f.taxon in here]
        statuses = _statuses(turn, sides)
        if places and statuses != LIVING:
            by_status = _by_status(kb, fits, places)
            fits = [f for s in statuses for f, _ in by_status.get(s, ())]
        what = _what(turn, name, seen, places, len(fits), size_words)
        return _ranked(turn, fits, " ".join([what, *(_as_asked(statuses) if places else ())]), order)
    if places:
        answer = _by_place(turn, found, name, places, seen, size_words, sides)
        kin = _with_family(kb, name, pool)[0] if name and _statuses(turn, sides) == LIVING else ()
        return with_others_there(turn, answer, kin, places, seen)
    if _statuses(turn, sides) == BROUGHT and not (seen or narrowing):
        return _from_elsewhere(turn, found.fits, name)
    return _plain_list(turn, found, name, seen, sides, size_words)


def _is_of(order: Order, seen: Seen) -> bool:
    """True for a part that is read as seen from the very words that ask for an order ("the most scales")."""
    return set(key(seen.words).split()) <= set(order.words)


def _spawning(turn: Turn, pool: Sequence[str], name: str, places: Sequence[str]) -> Answer:
    """The fishes that spawn in a season, those of the place where one is told."""
    kb = turn.kb
    pool = living_in(kb, pool, places)
    found = spawners(turn, pool, seasons(turn))
    what = lists.spawning_in(kinds_name(kb, name, len(found)) if name else lists.fishes(len(found)), seasons(turn))
    what = " ".join([what, *([lists.in_place(place_names(kb, places))] if places else [])])
    if not found:
        return Answer("list", (Block("lead", lists.list_none(what), claim=False),), taxa=_wider(turn))
    ordered = sorted(found, key=lambda f: (-len(kb.ranges(f[0])), f[0]))
    text = lists.list_lead(len(found), what, _shown(turn, [label(kb, t) for t, _ in ordered], SHOWN))
    lead = Block("lead", text, statements=tuple(i for _, ids in ordered for i in ids[:1]))
    return Answer("list", (lead,), taxa=unique((*(t for t, _ in ordered), *_wider(turn)))[:MOST_TAXA])


def _ranked(turn: Turn, fits: Sequence[Fitting], what: str, order: Order) -> Answer:
    """Fishes in the order of their size or of a feature, with what is said of each."""
    kb = turn.kb
    rows = placed(turn, [f.taxon for f in fits], order)
    if not rows:
        text = lists.none_told(kb.character(order.character).label) if fits else lists.list_none(what)
        return plain("list", text, taxa=_wider(turn))
    shown = rows if len(rows) <= MOST_ORDERED or "more" in turn.cues else rows[:SHOWN]
    feature = "" if order.character == SIZE else kb.character(order.character).label
    blocks = [Block("point", lists.with_value(label(kb, p.taxon), p.words), statements=p.statements) for p in shown]
    if turn.cues & {IN_ORDER, "sized-ones"} or len(rows) < 2:
        lead = Block("lead", lists.in_order(len(rows), len(shown), what, feature, order.least_first), claim=False)
        blocks = [lead, *blocks]
    else:
        blocks = [_first(turn, rows, what, feature, order),
                  Block("help", orders.then(len(shown), len(rows), order.least_first), claim=False), *blocks]
    if feature and (silent := len(fits) - len(rows)):
        blocks.append(Block("doubt", lists.not_told(silent), claim=False))
    return Answer("list", tuple(blocks), taxa=unique((*(p.taxon for p in shown), *_wider(turn))))


def _first(turn: Turn, rows: Sequence[Placed], what: str, feature: str, order: Order) -> Block:
    """Which fish comes first ("which is the biggest") or second."""
    kb = turn.kb
    nth = next((i for i, word in enumerate(orders.NTH) if i and word in turn.reading.words), 0)
    if 0 < nth < len(rows):
        text = orders.nth_of(orders.NTH[nth], label(kb, rows[nth].taxon), rows[nth].words)
        return Block("lead", text, statements=rows[nth].statements)
    top = [p for p in rows if p.height == rows[0].height][:MOST_FIRST]
    names, ids = say.names_with([label(kb, p.taxon) for p in top]), tuple(s for p in top for s in p.statements)
    if feature:
        text = orders.top_by(len(rows), what, feature, names, top[0].words, order.least_first)
    else:
        text = orders.top_of(len(rows), what, names, top[0].words, order.least_first)
    return Block("lead", text, statements=ids)


MOST_FIRST = 4
"""So many fishes that come first together are named."""


def _called(turn: Turn, name: str, count: int) -> str:
    """The group asked for; several named side by side all of them ("bullheads and madtoms")."""
    several = unique(m.ids[0] for m in side_by_side(turn.reading))
    names = [kinds_name(turn.kb, g, count) for g in several or (name,)]
    return join(names, "or") if count == 1 else say.names_with(names)


def _what(
    turn: Turn, name: str, seen: Sequence[Seen], places: Sequence[str], count: int, size_words: str = ""
) -> str:
    """What is listed, in words: "catfishes with a forked tail fin in Ohio"."""
    kb = turn.kb
    parts = [_called(turn, name, count) if name else lists.fishes(count, of_last_list(turn))]
    if seen and not seen[0].words:
        sides = [s.observation for s in seen[:3]]
        told = [(kb.character(o.character).label, _in_words(turn, o)) for o in sides]
        parts.append(lists.of_life(told))
    elif seen:
        parts.append(lists.with_what(say.names_with([speak.seen_words(kb, s.observation) for s in seen[:3]])))
    if size_words:
        parts.append(size_words)
    if places:
        parts.append(lists.in_place(place_names(kb, places)))
    return " ".join(parts)


def _in_words(turn: Turn, seen: Observation) -> str:
    """The states of a side of life in words; a plain word for many kinds of water as it was typed ("lake")."""
    typed = list(waters_meant(turn)) if seen.character == WATERS and len(seen.states) > MOST_WATERS else []
    return say.names_with(typed or [turn.kb.state(x).label for x in seen.states], "or")


def _shown(turn: Turn, names: Sequence[str], most: int) -> str:
    """Names in a list, cut unless more are wanted."""
    full = "more" in turn.cues or len(names) <= most + 2
    return say.names_with(list(names)) if full else say.counted(", ".join(names[:most]), len(names) - most)


def _wider(turn: Turn) -> tuple[str, ...]:
    """The families and genera that the line asks about (or a narrowed list was of), which close the list of taxa."""
    kb = turn.kb
    if anew(turn) or set_aside(turn):
        return ()
    if not groups(turn.reading) and not named(turn):
        if other_state(turn.held, turn.reading) and not pool_of(turn, frozenset())[1]:
            return ()
        return tuple(t for t in turn.held.taxa if (x := kb.find("taxon", t)) is not None and not x.is_species)
    out: dict[str, None] = {}
    for m in groups(turn.reading)[:2]:
        group = kb.find("group", m.ids[0])
        out.update(dict.fromkeys(group.members if group is not None else m.ids[:1]))
    out.update(dict.fromkeys(t for t in named(turn) if not kb.taxon(t).is_species))
    return tuple(out)


def _plain_list(
    turn: Turn, found: Found, name: str, seen: Sequence[Seen], sides: frozenset[str], size_words: str
) -> Answer:
    kb = turn.kb
    fits, maybe = found.fits, found.maybe
    what = _what(turn, name, seen, (), len(fits), size_words)
    local = any(s.observation.character == RISK for s in seen)
    if not fits:
        none = lists.none_of_life if seen and not seen[0].words else lists.none_as_rule if maybe else lists.list_none
        blocks = [Block("lead", none(what), claim=False)]
    else:
        names = [with_places(kb, f) if local else label(kb, f.taxon) for f in fits]
        text = lists.list_lead(len(fits), what, _shown(turn, names, SHOWN))
        blocks = [Block("lead", text, statements=tuple(dict.fromkeys(s for f in fits for s in f.statements[:2])))]
    families = whole_families(kb, fits, name) if seen else ()
    blocks += _all_of(kb, families, there=False)
    if maybe:
        doubtful = say.names_with([with_places(kb, f) if local else label(kb, f.taxon) for f in maybe[:SHOWN]])
        ids = tuple(s for f in maybe[:SHOWN] for s in f.statements[:2])
        blocks.append(Block("point", lists.doubtful(doubtful, also=bool(fits)), statements=ids))
    if seen and not seen[0].words:
        blocks.append(Block("doubt", lists.AS_RECORDED, claim=False))
    elif seen and 0 < found.silent < MOST_SILENT:
        blocks.append(Block("doubt", lists.not_told(found.silent), claim=False))
    spoken = bool(size_words or seen)
    kin, others = _in_family(turn, name, seen, sides, none=not fits) if spoken else ("", ())
    if others:
        told = lists.in_family(label(kb, kin), say.names_with([label(kb, f.taxon) for f in others[:KIN_SHOWN]]))
        ids = tuple(s for f in others[:KIN_SHOWN] for s in f.statements[:2])
        blocks.insert(1, Block("point", told, statements=ids))
    taxa = tuple(f.taxon for f in (*fits, *others[:KIN_SHOWN], *maybe[:SHOWN]))[:MOST_TAXA]
    return Answer("list", tuple(blocks), taxa=unique((*taxa, *families, *_wider(turn))))


KIN_SHOWN = 10


def _in_family(
    turn: Turn, name: str, seen: Sequence[Seen], sides: frozenset[str], none: bool
) -> tuple[str, tuple[Fitting, ...]]:
    """The family of a genus asked for by a word that the whole family bears ("sunfish", "bass family") or of which
    ``none`` fits, and who of the rest fits; of a word that others bear too ("bass"), those."""
    kb = turn.kb
    genus, family, borne = _family_of(kb, name)
    if not genus:
        return "", ()
    rest = tuple(t for t in kb.members(family) if genus not in kb.lineage(t))
    if not (none or borne or "family" in turn.reading.words):
        rest = _of_one_word(turn, rest)
    pool, _ = by_size(turn, rest, sides)
    return family, fitting(kb, pool, [s.observation for s in seen]).fits


def _of_one_word(turn: Turn, pool: Sequence[str]) -> tuple[str, ...]:
    """Those whose name ends with the one word by which a group was asked for ("bass": rock bass)."""
    asked = groups(turn.reading)[:1]
    word = singular(key(asked[0].words)) if asked else ""
    return tuple(t for t in pool if word and key(label(turn.kb, t)).split()[1:] == [word])


def _all_of(kb: KnowledgeBase, families: Sequence[str], there: bool) -> list[Block]:
    """That every kind of some families fits."""
    if not families:
        return []
    told = lists.whole_families(say.names_with([label(kb, f) for f in families]), there)
    return [Block("point", told, statements=tuple(f"taxon:{f}" for f in families))]


# --- places -----------------------------------------------------------------------------------------------------


def _statuses(turn: Turn, sides: frozenset[str]) -> tuple[str, ...]:
    """The statuses asked for: "which natives", "which were brought in", else all that live there.

    "Which of those are sunfishes" keeps those of the list before.
    """
    last = turn.held.last
    if "native-or-not" in turn.cues or (sides >= {"native", "introduced"} and "versus" in turn.cues):
        return AT_HOME if turn.cues & {"asks-any", "asks-do"} else LIVING
    if not sides & {"native", "introduced"} and OF_THOSE & set(turn.reading.words) and last is not None and last.blocks:
        sides = frozenset({"native"}) if lists.AT_HOME in last.blocks[0].text else sides
    return BROUGHT if "introduced" in sides else AT_HOME if "native" in sides else LIVING


def _as_asked(statuses: Sequence[str]) -> tuple[str, ...]:
    return (lists.BROUGHT_IN,) if statuses == BROUGHT else (lists.AT_HOME,) if statuses == AT_HOME else ()


def _from_elsewhere(turn: Turn, fits: Sequence[Fitting], name: str) -> Answer:
    """The fishes that are native nowhere in the base, only brought in."""
    kb = turn.kb
    found = []
    for f in fits:
        rows = kb.ranges(f.taxon)
        if (brought := [r for r in rows if r.status in BROUGHT]) and not any(r.status in NATURAL for r in rows):
            found.append((f, f"range:{brought[0].id}"))
    what = f"{kinds_name(kb, name, len(found)) if name else lists.fishes(len(found))} {lists.FROM_ELSEWHERE}"
    if not found:
        return Answer("list", (Block("lead", lists.list_none(what), claim=False),), taxa=_wider(turn))
    names = _shown(turn, [label(kb, f.taxon) for f, _ in found], SHOWN * 2)
    lead = Block("lead", lists.list_lead(len(found), what, names), statements=tuple(r for _, r in found))
    return Answer("list", (lead,), taxa=unique((*(f.taxon for f, _ in found), *_wider(turn)))[:MOST_TAXA])


def _by_place(
    turn: Turn, found: Found, name: str, places: Sequence[str], seen: Sequence[Seen], size_words: str,
    sides: frozenset[str],
) -> Answer:
    """The fitting fishes of a place by status, the widest spread first; those of the statuses asked for."""
    kb = turn.kb
    statuses = _statuses(turn, sides)
    by_status = _by_status(kb, found.fits, places)
    living = [x for s in statuses for x in by_status.get(s, ())]
    what = " ".join([_what(turn, name, seen, places, len(living), size_words), *_as_asked(statuses)])
    family, others = _in_family(turn, name, seen, sides, none=False)
    there = _by_status(kb, others, places)
    kin = [x for s in statuses for x in there.get(s, ())]
    here = set(living_in(kb, [f.taxon for f in found.maybe], places)) if seen else set()
    maybe = [f for f in found.maybe if f.taxon in here]
    if not living and not kin and not maybe:
        none = Block("lead", (lists.none_of_life if seen and not seen[0].words else lists.list_none)(what), claim=False)
        local = any(s.observation.character == RISK for s in seen)
        more = (Block("point", kb.character(RISK).how, claim=False),) if local else ()
        return Answer("list", (none, *more), taxa=_wider(turn))
    ids = tuple(dict.fromkeys(i for f, r in living for i in (r, *(f.statements[:1] if seen else ()))))
    names = _shown(turn, [label(kb, f.taxon) for f, _ in living], SHOWN * 2)
    lead = lists.list_lead(len(living), what, names) if living else (
        lists.none_as_rule(what) if maybe and not kin else lists.list_none(what))
    blocks = [Block("lead", lead, statements=ids, claim=bool(living))]
    families = whole_families(kb, [f for f, _ in living], name, places) if seen else ()
    blocks += _all_of(kb, families, there=True)
    if maybe:
        ids = tuple(s for f in maybe for s in f.statements[:2])
        told = lists.doubtful(_shown(turn, [label(kb, f.taxon) for f in maybe], SHOWN), also=bool(living))
        blocks.append(Block("point", told, statements=ids))
    if kin:
        known = _shown(turn, [label(kb, f.taxon) for f, _ in kin], SHOWN)
        told = (lists.in_family if living or maybe else lists.only_in_family)(label(kb, family), known)
        block = Block("point", told, statements=tuple(r for _, r in kin))
        blocks = [*blocks, block] if living or maybe else [
            block._replace(kind="lead"), *(b._replace(kind="point") for b in blocks)]
    for status in (*LIVING[1:], "uncertain", "extirpated"):
        if (some := by_status.get(status)) and (statuses == LIVING or (status in statuses and len(some) < len(living))):
            text = say.range_line(status, say.names_with([label(kb, f.taxon) for f, _ in some]))
            blocks.append(Block("point", text, statements=tuple(r for _, r in some)))
    if seen and not seen[0].words:
        blocks.append(Block("doubt", lists.AS_RECORDED, claim=False))
    bases = [r.basis for _, key in (*living, *kin) if (r := kb.record_at(key)) is not None]
    if memory := bases.count(MEMORY):
        blocks.append(Block("doubt", lists.placed_from_memory(memory, len(bases)), claim=False))
    at = [p for x in narrowest(kb, places) if (p := kb.place(x)) is not None]
    if waters := [place_name(p) for p in at if named_for_waters(kb, p)]:
        blocks.append(Block("doubt", lists.states_not_waters(say.names_with(waters)), claim=False))
    taxa = [*(f.taxon for f, _ in living), *(f.taxon for f in maybe), *(f.taxon for f, _ in kin)][:MOST_TAXA]
    return Answer("list", tuple(blocks), taxa=unique((*taxa, *families, *_wider(turn))))


def _by_status(
    kb: KnowledgeBase, fits: Sequence[Fitting], places: Sequence[str]
) -> dict[str, list[tuple[Fitting, str]]]:
    """The fishes listed for some places by their status there, each with the record that says so."""
    wanted = expand_places(kb, narrowest(kb, places))
    out: dict[str, list[tuple[Fitting, str]]] = {}
    for f in fits:
        if (row := status_in(kb, f.taxon, wanted)) is not None:
            out.setdefault(row.status, []).append((f, f"range:{row.id}"))
    return out
