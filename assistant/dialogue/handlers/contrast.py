"""Tell two to eight fishes apart: the deciding feature first, then the rest, then what fools people (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside import contrast_wants as wants
from assistant.dialogue.beside import loosely_called as loosely
from assistant.dialogue.beside.in_common import marks_in_common
from assistant.dialogue.beside.left_out import left_out
from assistant.dialogue.beside.loosely_called import AGAINST, called, kin_called, listed, taken_for, too_loose
from assistant.dialogue.beside.sameness import of_group
from assistant.dialogue.beside.set_changed import moved, put_in_last, puts_in, takes_out
from assistant.dialogue.beside.told_of_one import told_of_one
from assistant.dialogue.beside.where_apart import where_apart
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import compare, out_of_scope
from assistant.dialogue.handlers.out_of_scope import safe_echo
from assistant.dialogue.observing import observe
from assistant.dialogue.ranking import SIZE, order_asked, placed
from assistant.dialogue.reader.parts import GENERAL, characters_asked, named_parts
from assistant.dialogue.sexes import asks_sexes, sexes_told
from assistant.dialogue.subjects import MOST, chief, groups, named, species_of, unclear
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import SHORTER, Turn
from assistant.dialogue.wider import common_taxon
from assistant.dialogue.wording import contrast as wording
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import order as orders
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import LookAlike
from assistant.reasoning.contrast import LOOKS, Contrast, ContrastRow, contrast, firm_first
from assistant.reasoning.size import own_sizes
from assistant.text import join, key, singular, unique

SHOWN, SHOWN_SHORT, FEW_LEFT = 9, 2, 2
"""Differences shown, where few are wished for, and how many more are shown rather than held back."""
BESIDE = 3
"""Rows told beside those that were asked for."""
ALL_FINS = frozenset({"unpaired-fins", "lower-fins"})
"""Parts that stand for several fins."""
ALSO = (("what", "about"), ("how", "about"))
SET = 3
"""A set of so many fishes takes in another."""
SEVERAL = frozenset({"them", "em", "both", "two", "these", "they", "each"})
"""Words for more fishes than the one spoken of last."""
WHICH_OF_THEM = frozenset({"comparing", "which-of"})
"""Cues of a line that asks which of the fishes spoken of has more ("which has the longer fin")."""
NOT_LIVING = frozenset({"absent", "extirpated"})
NUMERIC, BY_EYE = "numeric", "by-eye"
SIZE_RATIO = 1.4
"""How many times longer the largest must grow before size is told as a difference (common practice, no source)."""


def _taken_so(turn: Turn) -> bool:
    """True where a loose name means, beside other kinds, the one taken for them ("mudfish vs snakehead")."""
    taxa = _taxa(turn)
    near = {x.other for t in taxa for x in turn.kb.look_alikes(t)}
    return len(taxa) > 1 and any(t in near for t in taxa)


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Set the fishes of the line (or those held) side by side."""
    kb, held = turn.kb, turn.held
    if turn.reading.outside and not (named(turn) or groups(turn.reading) or unclear(turn)):
        return out_of_scope.handle(turn)
    if turn.reading.outside and turn.cues & AGAINST and len(turn.reading.of("taxon", "hybrid", "group")) == 1 and (
            echo := safe_echo(turn.reading.outside[0])):
        return _beside_unheld(turn, _taxa(turn)[0], echo), held
    if asks_sexes(turn) and len(turn.reading.of("taxon", "group")) == 1 and len(kinds := _taxa(turn)) > 1:
        of_one = common_taxon(kb, *kinds) or kinds[0]
        return Answer("contrast", sexes_told(turn, of_one), taxa=(of_one,)), held
    meant = loosely.meant_at_last(turn)
    if "vs" in turn.cues and not meant and any(too_loose(turn, m) for m in unclear(turn)) and not _taken_so(turn):
        return _loose(turn)
    if member := of_group(turn):
        return Answer("contrast", tuple(member), taxa=named(turn)), held
    taxa = meant or _taxa(turn)
    if len(taxa) < 2 and (same := _one_fish(turn)):
        return same
    if len(taxa) < 2:
        return _one(turn, taxa), held
    if compare.wants_table(turn):
        return compare.handle(turn, taxa if loosely.not_named(turn) else ())
    taxa = taxa[:MOST]
    sides, asked = aspects(kb, turn.reading), frozenset() if "no-counts" in turn.cues or _lacked(turn) else _asked(turn)
    found = contrast(kb, taxa, _looks(turn, sides))
    against = AGAINST & turn.cues and not _lacked(turn)
    own_told, told_of = wants.by_own_mark(turn, found) if against else ([], frozenset())
    rows = wants.told_first(kb, [r for r in _kept(turn, sides, found.separating) if r.character not in told_of])
    asked = frozenset() if own_told else asked
    if _dead(turn):
        rows = wants.lasting(turn, rows)
    if left := wants.further(turn, found, rows):
        return Answer("contrast", tuple(_points_of(turn, found, left)), taxa=taxa), held
    blocks = _wanted(turn, found, rows, sides, asked)
    told = wants.two_kinds(turn, taxa) or _in_order(turn, taxa, sides)
    if not blocks:
        kin = {(kb.character(c).part, kb.character(c).colouring) for c in asked}
        inside = firm_first(kb, [r for r in rows if r.character in asked]) or firm_first(
            kb, [r for r in rows if (kb.character(r.character).part, kb.character(r.character).colouring) in kin])
        exact = characters_asked(kb, turn.reading) if turn.reading.of("character") else ()
        inside = tuple(sorted(inside, key=lambda r: r.character not in exact))
        others = tuple(r for r in rows if r not in inside)
        rows = (*inside, *(others[:BESIDE] if inside else others))
        alike = marks_in_common(turn, _kept(turn, sides, found.shared))
        asked = asked | {r.character for r in inside}
        one = [] if asked or NUMERIC in sides or _dead(turn) else told_of_one(turn, taxa, len(rows))
        beside = (*one, *_sizes(turn, taxa), *where_apart(turn, taxa), *alike, *_caveats(turn, found))
        blocks = _hedged(turn, found, sides, [*points(turn, found, rows, asked), *beside])
        if not inside and (gap := wants.of_some_only(turn, found)):
            blocks = [*gap, blocks[0]._replace(kind="point"), *blocks[1:]]
        if seen_told := own_told or wants.by_seen(turn, found):
            other = wants.third(turn, taxa) if own_told else []
            blocks = [*seen_told, *other, blocks[0]._replace(kind="point"), *blocks[1:]]
    first = [x._replace(kind="point") if told and x.kind == "lead" else x for x in blocks]
    held = _with_own(turn, taxa) if own_told else held
    return Answer("contrast", (*told, *first, *taken_for(turn, taxa)), taxa=taxa), held


def _with_own(turn: Turn, taxa: tuple[str, ...]) -> Held:
    """The conversation with the marks of a catch that the line tells beside the names between which it wavers."""
    from assistant.dialogue.handlers.identify import claimed

    held = observe(turn.kb, turn.held, turn.reading, afresh=True)
    return held.after(hints=held.hints + tuple(h for h in claimed(turn.kb, taxa) if h not in held.hints))


def _wanted(turn: Turn, found: Contrast, rows: tuple[ContrastRow, ...], sides: frozenset[str],
            asked: frozenset[str]) -> list[Block]:
    """The answer to a want of its own: what misleads, whether a mark will do, one mark alone, fish of some kind."""
    if wants.MISLEADING in sides:
        return [*wants.misled(turn, found), *_caveats(turn, found)]
    if wants.RELIED in sides and (told := wants.relied_on(turn, found, sides, asked)):
        return [*told, *_caveats(turn, found)]
    if wants.ONE in sides and rows:
        best = next((r for r in rows if r.character in asked), rows[0])
        others = rows[1:len(found.taxa)] if "each" in turn.reading.words else ()
        return [_lead(turn, found, best), *_points_of(turn, found, others), *_hard(turn, found)]
    if some := wants.of_some(turn, found):
        first, *rest = some
        known = {i for b in some for i in b.statements}
        more = [r for r in wants.lasting(turn, rows) if not known & set(wants.row_ids(r))][:BESIDE]
        return [first._replace(kind="lead"), *rest, *_points_of(turn, found, more), *_caveats(turn, found)]
    return []


def _hedged(turn: Turn, found: Contrast, sides: frozenset[str], blocks: list[Block]) -> list[Block]:
    """The blocks; first that the eye does not settle it where that is so and asked, or where one is a cross of another;
    of a dead fish that its colours fade.
    """
    kb, (lead, *rest) = turn.kb, blocks
    pair = _pair_listed(kb, found.taxa)
    if pair is not None and pair.settles and (pair.separable == "not-by-eye" or BY_EYE in sides):
        first = Block("lead", wording.not_by_eye(pair.settles), statements=(f"alike:{pair.id}",))
        return [first, lead._replace(kind="point"), *(b for b in rest if b.statements != first.statements)]
    parents = {p for t in found.taxa for p in kb.taxon(t).parents}
    more = wording.NOT_SURE if parents & set(found.taxa) else wording.FADED if _dead(turn) else ""
    return [lead._replace(text=f"{lead.text} {more}"), *rest] if more else blocks


def _dead(turn: Turn) -> bool:
    return turn.held.dead or "dead" in turn.cues


def _pair_listed(kb: KnowledgeBase, taxa: Sequence[str]) -> LookAlike | None:
    """What the list of look-alikes says of two fishes that are hard to tell; None of others."""
    pair = next((x for t in taxa for x in kb.look_alikes(t) if x.other in taxa), None)
    return pair if pair is not None and pair.separable != "yes" and len(taxa) == 2 else None


def _points_of(turn: Turn, found: Contrast, rows: Sequence[ContrastRow]) -> list[Block]:
    told = ((wants.row_text(turn, found.taxa, r), r) for r in rows)
    return [Block("point", say.entry(*text), statements=wants.row_ids(r)) for text, r in told]


def _in_order(turn: Turn, taxa: tuple[str, ...], sides: frozenset[str]) -> list[Block]:
    """Which has more of a count or measure that the line names ("which has more dorsal spines"), as the first line."""
    order = order_asked(turn, sides, taxa)
    if order is None or not order.able or order.character == SIZE:
        return []
    kb, rows = turn.kb, placed(turn, taxa, order)
    if len(rows) < 2:
        return []
    text = orders.more_of(kb.character(order.character).label, [(speak.fish(kb, p.taxon), p.words) for p in rows],
                          order.least_first, rows[0].height == rows[-1].height)
    return [Block("lead", text, statements=tuple(s for p in rows for s in p.statements))]


def _loose(turn: Turn) -> tuple[Answer, Held]:
    """What a name may mean that stands for too many fishes to set one of them beside another."""
    from assistant.dialogue.handlers import handler_of

    answer, held = handler_of("names")(turn)
    return answer, held


def _one_fish(turn: Turn) -> tuple[Answer, Held] | None:
    """Two names of one fish set against each other: that they are the same; None for anything else."""
    from assistant.dialogue.handlers import handler_of

    mentions = [m for m in turn.reading.of("taxon", "hybrid") if len(m.ids) == 1]
    if len(mentions) < 2 or len({m.ids for m in mentions}) > 1 or len({key(m.words) for m in mentions}) < 2:
        return None
    answer, held = handler_of("names")(turn)
    first, *rest = answer.blocks
    fish = mentions[0].ids[0]
    told = Block("lead", say.one_fish(speak.fish(turn.kb, fish)), statements=(f"taxon:{fish}",))
    return answer._replace(blocks=(told, first._replace(kind="point"), *rest)), held


def _taxa(turn: Turn) -> tuple[str, ...]:
    kb, held = turn.kb, turn.held
    own = list(named(turn))
    if len(held.taxa) > 1 and takes_out(turn.reading.text):
        out, into = moved(turn, tuple(own))
        if out:
            return tuple(t for t in unique((*held.taxa, *into)) if t not in out and kb.find("taxon", t) is not None
                         and kb.taxon(t).is_species)
    before = tuple(t for t in held.taxa if (x := kb.find("taxon", t)) is not None and x.is_species)
    if (out := left_out(turn, before)) and len(before) - len(out) > 1:
        return tuple(t for t in before if t not in out)
    wider = (*groups(turn.reading), *unclear(turn), *loosely.not_named(turn))
    if len(own) == 1 and not wider:
        wider = tuple(m for m in turn.reading.of("likeness") if len(species_of(kb, m.ids)) > 1)
    explained = loosely.just_explained(turn, [*own, *species_of(kb, tuple(i for m in wider for i in m.ids))])
    if len(own) + len(wider) == 1 and held.taxa and (held.taxa[0] not in own or explained):
        adding = puts_in(turn.reading.text) or turn.reading.words[:1] in (("and",), ("plus",))
        adding = adding or (turn.reading.words[:2] in ALSO and 1 < len(held.taxa) <= SET)
        adding = adding or ("adding" in turn.cues and held.intent == "contrast")
        adding = adding and not turn.cues >= {"set-beside", "first"}
        new = tuple(i for m in wider for i in m.ids)
        last = explained or put_in_last(turn) or chief(kb, held.taxa, (*own, *new)) or held.taxa[:1]
        before = held.taxa if adding else last
        own = [*(t for t in before if kb.find("taxon", t) is not None and kb.taxon(t).is_species), *own]
    for mention in wider:
        pool = tuple(t for t in species_of(kb, mention.ids) if t not in own)
        own += (loosely.hybrid_of(turn, mention, own) or kin_called(turn, mention)
                or listed(kb, own, called(kb, mention.words, pool), len(wider)))
    own += [*loosely.hybrid_of(turn, None, own), *loosely.clipped_in_list(turn, own), *loosely.run_together(turn, own)]
    alone = len(own) == 1
    likened = [h for h in turn.reading.hints
               if h.kind == "like" or (alone and not h.seen and h.kind == "group")]
    own += [t for h in likened if len(h.taxa) == 1 for t in h.taxa]
    own = loosely.kin_of_held(turn, own)
    if likened and len(own) == 1 == len(held.taxa):
        own = [*(t for t in held.taxa if kb.find("taxon", t) is not None and kb.taxon(t).is_species), *own]
    own = own or _denied(turn)
    if turn.cues & {"hybrid", "midway"} and len(own) == 2:
        own += [c for c in kb.crosses_of(own[0]) if set(kb.taxon(c).parents) == set(own)]
    ids = tuple(dict.fromkeys(own)) or (held.taxa if len(held.taxa) > 1 else held.shown)
    if len(ids) == 1 and not own and (SEVERAL & set(turn.reading.words) or turn.cues >= WHICH_OF_THEM):
        ids = unique((*_spoken_of_before(turn, ids[0]), *ids))
    ids = tuple(i for i in ids if not any(i in kb.lineage(t)[1:] for t in ids if kb.find("taxon", t) is not None))
    return tuple(t for i in ids for t in (species_of(kb, (i,))[:1] if kb.find("taxon", i) is None else (i,)))


def _denied(turn: Turn) -> list[str]:
    """The one fish spoken of and the one that it is said not to be ("then how's it not a warmouth")."""
    kb, held = turn.kb, turn.held
    other = [t for h in turn.reading.hints if not h.seen and len(h.taxa) == 1 for t in h.taxa if t not in held.taxa]
    one = [t for t in held.taxa if (x := kb.find("taxon", t)) is not None and x.is_species]
    return [*one, *other] if len(one) == 1 and len(other) == 1 else []


def _spoken_of_before(turn: Turn, taxon: str) -> tuple[str, ...]:
    """The species spoken of by itself before this one, if any ("describe A", "and B?", "what tells them apart")."""
    kb, held = turn.kb, turn.held.before
    while held is not None:
        others = [t for t in held.taxa if t != taxon and kb.find("taxon", t) is not None and kb.taxon(t).is_species]
        if others:
            return tuple(others[:1]) if len(held.taxa) == 1 else ()
        held = held.before
    return ()


def _looks(turn: Turn, sides: frozenset[str]) -> frozenset[str]:
    if _dead(turn) or NUMERIC in sides:
        return LOOKS["lab"]
    by_eye = "in-hand" in turn.cues and "no-colour" not in turn.cues
    return LOOKS["picture"] if by_eye else LOOKS["hand"] | {"dead"}


def _kept(turn: Turn, sides: frozenset[str], rows: tuple[ContrastRow, ...]) -> tuple[ContrastRow, ...]:
    """The rows without colour or counts where the asker wants none, or without what both are told to lack; counts alone
    where only these are wanted."""
    if lacked := _lacked(turn):
        rows = tuple(r for r in rows if r.character not in lacked) or rows
    if "no-counts" in turn.cues:
        return tuple(r for r in rows if not turn.kb.character(r.character).is_number) or rows
    if NUMERIC in sides:
        return tuple(r for r in rows if turn.kb.character(r.character).kind == "count")
    if turn.cues & {"no-colour"}:
        return tuple(r for r in rows if not turn.kb.character(r.character).colouring) or rows
    return rows


def _lacked(turn: Turn) -> frozenset[str]:
    """The characters of marks that the line tells neither to have ("when neither has spots")."""
    seen = (s.observation.character for s in turn.reading.seen if not s.retract)
    return frozenset(seen) if "neither" in turn.reading.words else frozenset()


def _asked(turn: Turn) -> frozenset[str]:
    """The characters of which the line itself speaks ("which has the forked tail, ...", "by the spots")."""
    kb, reading = turn.kb, turn.reading
    parts = named_parts(kb, reading)
    words = {w for p in parts for w in p.split("-")} - GENERAL - {"tail"} | ({"tail"} if "tail-fin" in parts else set())
    of_parts = (c.id for c in kb.characters if c.part in parts or (
        c.part in ALL_FINS and words & {singular(w) for w in key(c.label).split()}))
    on_fish = [m for m in reading.of("character") if any(kb.character(i).use == "identify" for i in m.ids)]
    named_so = characters_asked(kb, reading) if on_fish else ()
    found = (*(s.observation.character for s in reading.seen), *of_parts, *named_so)
    return frozenset(c for c in found if kb.character(c).use == "identify")


def _sizes(turn: Turn, taxa: tuple[str, ...]) -> list[Block]:
    """A line on length where the fishes differ much in what they grow to."""
    kb = turn.kb
    sizes = [(t, own_sizes(kb, t)) for t in taxa]
    tops = [s.usual_high or s.largest for _, s in sizes]
    if turn.cues & SHORTER or any(t is None for t in tops):
        return []
    known = [float(t) for t in tops if t is not None]
    if max(known) < SIZE_RATIO * min(known):
        return []
    told = "; ".join(say.each(speak.fish(kb, t), speak.length_range(s, turn.held.units)) for t, s in sizes)
    ids = speak.short_ids(x for _, s in sizes for x in (*s.usual_statements, *s.largest_statements))
    return [Block("point", say.size_point(told), statements=ids)] if ids else []


def _one(turn: Turn, taxa: tuple[str, ...]) -> Answer:
    kb = turn.kb
    if not taxa:
        several = unclear(turn)
        if several:
            choices = tuple((i, speak.fish(kb, i)) for i in several[0].ids)
            text = say.which_of(several[0].words, say.both_names([c for _, c in choices]))
            asked = Asked("which", say.WHICH_FISH, choices=choices)
            return Answer(
                "contrast", (Block("lead", text, claim=False), Block("next", say.WHICH_FISH, claim=False)), asked=asked
            )
        return Answer(
            "contrast", (Block("lead", say.CONTRAST_NEEDS_TWO, claim=False),), asked=Asked("fish", say.WHICH_TWO)
        )
    if asks_sexes(turn):
        return Answer("contrast", sexes_told(turn, taxa[0]), taxa=taxa)
    if turn.reading.outside and turn.cues & AGAINST and (echo := safe_echo(turn.reading.outside[0])):
        return _beside_unheld(turn, taxa[0], echo)
    near = look_alikes(kb, taxa[0])
    if not near:
        return Answer("contrast", (Block("lead", say.CONTRAST_NEEDS_TWO, claim=False),), taxa=taxa)
    ids = tuple(f"alike:{x}" for _, x in near[:3])
    text = say.one_fish_contrast(speak.fish(kb, taxa[0]), speak.fishes(kb, [t for t, _ in near[:3]], "or"))
    blocks = [Block("lead", text, statements=ids)]
    if turn.reading.outside and (echo := safe_echo(turn.reading.outside[0])):
        blocks = [Block("lead", say.outside_fish(echo), claim=False), Block("point", text, statements=ids)]
    found = contrast(kb, (taxa[0], near[0][0]))
    rows = points(turn, found, found.separating[:4], _asked(turn))
    blocks += [b._replace(kind="point") if b.kind == "lead" else b for b in rows]
    return Answer("contrast", tuple(blocks), taxa=(taxa[0], near[0][0]))


def _beside_unheld(turn: Turn, taxon: str, other: str) -> Answer:
    """A fish against one that the base does not hold: that it does not, and what marks the one that it holds."""
    from assistant.dialogue.handlers import handler_of

    told, _ = handler_of("describe")(turn)
    lead = Block("lead", wording.not_held_beside(other, speak.fish(turn.kb, taxon)), claim=False)
    return Answer("contrast", (lead, *(b._replace(kind="point") if b.kind == "lead" else b for b in told.blocks)),
                  taxa=(taxon,))


def look_alikes(kb: KnowledgeBase, taxon: str) -> list[tuple[str, str]]:
    """The fishes that a taxon is mixed up with and the records that say so: near kin first, then by the places where
    both live, which count double for a pair that is hard to tell."""
    own = [(x.other, x) for x in kb.look_alikes(taxon)]
    back = [(t, x) for t in kb.species for x in kb.look_alikes(t) if x.other == taxon]
    out: dict[str, LookAlike] = {}
    for other, record in (*own, *back):
        if kb.find("taxon", other) is not None:
            out.setdefault(other, record)
    kin = kb.taxon(taxon).parent
    here = {r.place for r in kb.ranges(taxon) if r.status not in NOT_LIVING}

    def order(pair: tuple[str, LookAlike]) -> tuple[bool, bool, int, str]:
        other, record = pair
        found = kb.taxon(other)
        shared = len(here & {r.place for r in kb.ranges(other) if r.status not in NOT_LIVING})
        return (found.is_hybrid, found.parent != kin, -shared * (1 if record.separable == "yes" else 2), other)

    return [(other, record.id) for other, record in sorted(out.items(), key=order)]


def points(
    turn: Turn, found: Contrast, rows: tuple[ContrastRow, ...], asked: frozenset[str]
) -> list[Block]:
    """The rows as points, led by the first; how many more are held."""
    kb = turn.kb
    names = speak.fishes(kb, found.taxa)
    if not rows:
        return [Block("lead", say.inseparable(names), statements=_any_statement(kb, found))]
    short = bool(turn.cues & SHORTER)
    most = len(rows) if "more" in turn.cues else SHOWN_SHORT if short else SHOWN
    most = len(rows) if not short and len(rows) <= most + FEW_LEFT else most
    firm = [r for r in rows if r.character in asked or not wants.meets(kb, r)]
    if "more" not in turn.cues and len(firm) >= wants.ENOUGH:
        rows = (*firm, *(r for r in rows if r not in firm))
        most = most if len(rows) == len(firm) + 1 <= most else min(most, len(firm))
    out: list[Block] = []
    for row in rows[:most]:
        if not out and row.character not in asked:
            out.append(_lead(turn, found, row))
            continue
        text = say.entry(speak.heading(kb.character(row.character)), wants.row_text(turn, found.taxa, row)[1])
        out.append(Block("point" if out else "lead", text, statements=wants.row_ids(row)))
    if len(rows) > most:
        left = [] if short else [speak.heading(kb.character(row.character)) for row in rows[most:]]
        out.append(Block("help", say.more_left(len(rows) - most, left), claim=False))
    return out


def _lead(turn: Turn, found: Contrast, row: ContrastRow) -> Block:
    kb = turn.kb
    character = kb.character(row.character)
    heading = speak.heading(character)
    if len(found.taxa) > 2:
        text = say.contrast_lead_many(speak.fishes(kb, found.taxa), heading, wants.row_text(turn, found.taxa, row)[1])
        return Block("lead", text, statements=wants.row_ids(row))
    values = [
        speak.told_words(kb, t, character, turn.held.units, clause=True) if t else say.not_told() for t in row.told
    ]
    text = say.contrast_lead(speak.fish(kb, found.taxa[0]), speak.fish(kb, found.taxa[1]), heading, *values)
    return Block("lead", text, statements=wants.row_ids(row))


def _any_statement(kb: KnowledgeBase, found: Contrast) -> tuple[str, ...]:
    ids = [s for row in found.shared[:3] for s in wants.row_ids(row)]
    return speak.short_ids(ids or [s.id for t in found.taxa for s in kb.statements(t)[:1]])


def _caveats(turn: Turn, found: Contrast) -> list[Block]:
    kb = turn.kb
    out: list[Block] = []
    out += _hard(turn, found)
    out += _fools(turn, found)
    if found.crosses and not turn.cues & SHORTER:
        names = speak.fishes(kb, found.crosses)
        ids = [s.id for c in found.crosses for s in kb.statements(c)] or [f"taxon:{c}" for c in found.crosses]
        out.append(Block("doubt", say.crosses(names), statements=speak.short_ids(ids[:4])))
    return out + place_remarks(turn, found.taxa)


def _hard(turn: Turn, found: Contrast) -> list[Block]:
    """That two fishes are listed as hard to tell, and what settles them."""
    pair = _pair_listed(turn.kb, found.taxa)
    if pair is None or not pair.settles:
        return []
    return [Block("doubt", say.hard_pair(pair.settles), statements=(f"alike:{pair.id}",))]


def _fools(turn: Turn, found: Contrast) -> list[Block]:
    kb = turn.kb
    out: dict[tuple[str, str], Block] = {}
    for item in found.misleading:
        s = kb.record_at(f"st:{item.statement}")
        if s is None or (not s.states and s.low is None and s.high is None):
            continue
        who = speak.scope_words(s, turn.held.units)
        value = join([kb.state(x).clause or kb.state(x).label for x in s.states], "or")
        if not value:
            continue
        word = kb.find("frequency", s.frequency) if s.frequency else None
        text = say.misleading(who, speak.fish(kb, s.taxon), word.label if word else "", value)
        out.setdefault((s.taxon, who), Block("doubt", text, statements=(f"st:{s.id}",)))
    return list(out.values())[:3]


def place_remarks(turn: Turn, taxa: tuple[str, ...]) -> list[Block]:
    """What the place held says about fishes that are not expected there."""
    from assistant.reasoning.place_prior import expand_places

    kb, held = turn.kb, turn.held
    if not held.places:
        return []
    wanted = expand_places(kb, held.places)
    out = []
    for taxon in taxa:
        here = [r for key in kb.lineage(taxon)[:2] for r in kb.ranges(key) if r.place in wanted]
        status = {r.status for r in here}
        if status and status <= NOT_LIVING:
            text = say.place_helps(
                speak.fish(kb, taxon), place_names(kb, held.places), say.STATUS[sorted(status)[0]]
            )
            out.append(Block("point", text, statements=tuple(f"range:{r.id}" for r in here)))
    return out
