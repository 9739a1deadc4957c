"""What a line wants of a comparison beyond "how do I tell them apart": one mark, what misleads, whether colour, size or
a named mark will do, dead fish, young or breeding ones (layer 4).

Each function gives the blocks that answer the want, the answer itself in front, or none where there is no such want.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.mistaken import fits_better
from assistant.dialogue.recogniser.named_how import own_evidence
from assistant.dialogue.turn import Turn
from assistant.dialogue.whose import JUVENILE, NOTES, whose
from assistant.dialogue.wording import contrast as say
from assistant.dialogue.wording import core, speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.contrast import (
    ADULT,
    NEARLY,
    Contrast,
    ContrastRow,
    Told,
    contrast_row,
    firm_first,
    firmness,
    tell,
    tell_some,
    told_of,
)
from assistant.reasoning.evidence import ANY, Scope, below
from assistant.reasoning.observed import Observation
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.size import SizeRange, own_sizes
from assistant.text import key

MISLEADING, RELIED, ONE, COLOUR, SIZE = "misleading", "relied-on", "one-mark", "colour-itself", "size-itself"
MARKS = "marks-itself"
"""Sides of a matter that a line asks about."""
MOST = 5
ALIKE = 3
SMALLEST = 100.0
"""Young fish show a feature that shows from this length (mm) on."""
HOW = frozenset({"contrast", "vs", "asks-how"})
"""Cues of a line that wants to know how, not which."""
SETTLES, LEANS = 8.0, 3.0
"""So many times better must a mark of one's own fit a fish to speak for it, or to lean to it."""
CLEAR, LEAST = 4.0, 0.03
"""A fish that what was seen fits so many times better is the one; a share below the second counts as that much."""
SMALL, SAMENESS = frozenset({"small", "tiny"}), frozenset({"sameness", "just-a"})
"""Sizes of young fish, and cues of a line that asks whether two names are one fish ("just a small largemouth")."""
COUNTING = frozenset({"asks-many"})
"""Cues of a line that speaks of a number."""


def each_told(turn: Turn, character: Character, taxa: Sequence[str], told: Sequence[Told | None]) -> str:
    """What each fish shows of a character, in one string."""
    kb = turn.kb
    values = (speak.told_words(kb, t, character, turn.held.units) if t else core.not_told() for t in told)
    return "; ".join(core.each(speak.fish(kb, taxon), value) for taxon, value in zip(taxa, values, strict=True))


def row_ids(row: ContrastRow) -> tuple[str, ...]:
    """The statements behind a row."""
    return speak.short_ids(s for t in row.told if t for s in t.statements)


def row_text(turn: Turn, taxa: Sequence[str], row: ContrastRow) -> tuple[str, str]:
    """The heading of a row and what each fish shows."""
    character = turn.kb.character(row.character)
    return speak.heading(character), each_told(turn, character, taxa, row.told)


def of_some_only(turn: Turn, found: Contrast) -> list[Block]:
    """What each fish shows of the one mark that the line names by its label, where it is held of some of them only, or
    of none."""
    asked = {turn.kb.character(i): key(m.words) for m in turn.reading.of("character") for i in m.ids}
    named = [c for c, words in asked.items() if words in (key(c.label), key(c.trade))]
    if len(named) != 1 or named[0].use != "identify":
        return []
    kb, heading = turn.kb, speak.heading(named[0])
    if all(tell(kb, named[0], t) for t in found.taxa):
        return []
    kinds = [(t, *kb.children.get(t, ())) for t in found.taxa]
    taxa = [x for own in kinds for x in ([t for t in own if tell(kb, named[0], t)] or own[:1])]
    told = [tell(kb, named[0], t) for t in taxa]
    if any(told):
        ids = speak.short_ids(s for t in told if t for s in t.statements)
        return [Block("lead", core.entry(heading, each_told(turn, named[0], taxa, told)), statements=ids)]
    return [Block("lead", core.unheld_mark(heading, speak.fishes(turn.kb, found.taxa)), claim=False)]


def scope_of(turn: Turn) -> Scope:
    """The fish that the line speaks of: one sex, breeding or young ones; small ones are taken for young."""
    who = whose(turn)
    small = turn.reading.size_word in SMALL and not SAMENESS & turn.cues
    young = who.stage or (JUVENILE if small and not (who.sex or who.breeding) else "")
    return who._replace(stage=young)


_AS_ONE = re.compile(r"\b(?:same|identical|one (?:fish|species|and the)|(?:just|only|really) an?)\b")
"""Words that take two names for one fish."""


def two_kinds(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """That two fishes are kinds of their own, where the line asks whether they are the same."""
    if not SAMENESS & turn.cues or len(taxa) != 2 or not _AS_ONE.search(turn.reading.text.lower()):
        return []
    kb = turn.kb
    if any(kb.taxon(t).is_hybrid or set(kb.lineage(t)[1:]) & set(taxa) for t in taxa):
        return []
    text = say.two_kinds(*(speak.fish_both(kb, t) for t in taxa))
    return [Block("lead", text, statements=tuple(f"taxon:{t}" for t in taxa))]


def lasting(turn: Turn, rows: Sequence[ContrastRow]) -> tuple[ContrastRow, ...]:
    """The rows of structure and counts, which a dead fish keeps, before those of colour; the firmest in front."""
    kb = turn.kb
    kept = [r for r in rows if not kb.character(r.character).colouring]
    return (*firm_first(kb, kept), *(r for r in rows if r not in kept))


def misled(turn: Turn, found: Contrast) -> list[Block]:
    """Which marks of the two mislead, and what to go by instead."""
    kb, taxa = turn.kb, found.taxa
    rows = [r for c in kb.characters if (r := _overlapping(turn, c, taxa)) is not None]
    rows.sort(key=lambda r: (not _own(r), not _hue(kb.character(r.character)), -_shown(r), r.character))
    rows = rows[:ALIKE]
    best = _surest(turn, found)
    marks = [kb.character(r.character).label for r in rows]
    text = say.misled(marks) if marks else say.nothing_misleads(speak.fishes(kb, taxa))
    text = f"{text} {say.surer(*row_text(turn, taxa, best))}" if best else text
    ids = tuple(i for r in (*rows, *((best,) if best else ())) for i in row_ids(r))
    points = [Block("point", say.alike_in(*row_text(turn, taxa, r)), statements=row_ids(r)) for r in rows]
    return [Block("lead", text, statements=ids, claim=bool(ids)), *points]


def _overlapping(turn: Turn, character: Character, taxa: Sequence[str]) -> ContrastRow | None:
    """The row of a mark that people see at a glance and in which the fishes are alike or overlap; else None."""
    if not character.colouring or character.look != "glance":
        return None
    row = contrast_row(turn.kb, character, taxa)
    if row is None or not all(row.told) or any(not t.states or t.only for t in row.told if t):
        return None
    shown = [{s for s, _ in t.states} for t in row.told if t]
    lacking = all(s.partition(".")[2] in ("none", "absent") for x in shown for s in x)
    return row if set.intersection(*shown) and row.separation < say.MOSTLY and not lacking else None


def _own(row: ContrastRow) -> bool:
    return all(t is not None and not t.inherited_from for t in row.told)


def _hue(character: Character) -> bool:
    return say.COLOUR_WORD in character.label


def _shown(row: ContrastRow) -> int:
    return sum(len(t.statements) for t in row.told if t)


def _surest(turn: Turn, found: Contrast) -> ContrastRow | None:
    """What to go by where colour will not do: the firmest row that is no matter of colour, if it is nearly as firm as
    any and sets them apart in the books, or is the firmest, else the firmest mark.
    """
    kb = turn.kb
    rows = [r for r in found.separating if all(r.told) and not _hue(kb.character(r.character))] or found.separating
    marks = firm_first(kb, rows)
    structure = firm_first(kb, [r for r in rows if not kb.character(r.character).colouring])
    if structure and firmness(kb, structure[0]) >= (NEARLY if structure[0].decides else 1.0) * firmness(kb, marks[0]):
        return structure[0]
    return marks[0] if marks else None


def _surer(turn: Turn, found: Contrast) -> list[Block]:
    """What to go by instead, as a point."""
    best = _surest(turn, found)
    return [] if best is None else [
        Block("point", say.surer(*row_text(turn, found.taxa, best)), statements=row_ids(best))]


def relied_on(turn: Turn, found: Contrast, sides: frozenset[str], asked: frozenset[str]) -> list[Block]:
    """Whether colour, size or a named feature tells the fishes apart, and what does so more surely."""
    kb = turn.kb
    if COLOUR in sides:
        rows = [r for r in found.separating if _hue(kb.character(r.character)) and all(r.told)]
        best = max(rows, key=lambda r: firmness(kb, r), default=None)
        told = say.in_each(kb.character(best.character).label, row_text(turn, found.taxa, best)[1]) if best else ""
        lead = Block("lead", say.colour_verdict(told), statements=row_ids(best) if best else (),
                     claim=best is not None)
        return [lead, *_surer(turn, found)]
    if SIZE in sides:
        return [_by_size(turn, found.taxa), *_surer(turn, found)]
    rows = [r for c in sorted(asked) if (r := contrast_row(kb, kb.character(c), found.taxa)) is not None]
    if not rows and MARKS in sides:
        return _by_marks(turn, found)
    counted = [r for r in rows if kb.character(r.character).kind == "count"] if COUNTING & turn.cues else []
    best = max(counted or rows, key=lambda r: r.separation, default=None)
    if best is None:
        return []
    told = say.in_each(*row_text(turn, found.taxa, best))
    shared = _overlapped(best)
    lead = Block("lead", say.mark_verdict(told, best.separation, shared), statements=row_ids(best))
    surer = _surer(turn, found) if shared or best.separation < say.MOSTLY else []
    return [lead, *(b for b in surer if b.statements != lead.statements)]


def _overlapped(row: ContrastRow) -> str:
    """The numbers that all of the fishes of a row may show, where ranges are held of each and overlap; else empty."""
    spans = [t.numbers for t in row.told if t is not None and t.numbers is not None and not t.bound]
    if len(spans) < 2 or len(spans) < len(row.told):
        return ""
    low, high = max(float(s[0]) for s in spans), min(float(s[3]) for s in spans)
    return say.span(low, high) if low <= high else ""


def _by_marks(turn: Turn, found: Contrast) -> list[Block]:
    """Whether the marks in the skin tell fishes apart; not by themselves where structure does so more surely."""
    kb = turn.kb
    rows = [r for r in found.separating if kb.character(r.character).colouring and all(r.told)]
    best, surest = max(rows, key=lambda r: firmness(kb, r), default=None), _surest(turn, found)
    if best is None:
        return []
    alone = surest is None or kb.character(surest.character).colouring
    verdict = say.mark_verdict(say.in_each(*row_text(turn, found.taxa, best)),
                               best.separation if alone else min(best.separation, say.HELPS))
    return [Block("lead", verdict, statements=row_ids(best)), *([] if alone else _surer(turn, found))]


def _by_size(turn: Turn, taxa: Sequence[str]) -> Block:
    sizes = [(t, own_sizes(turn.kb, t)) for t in taxa]
    known = [(t, s) for t, s in sizes if s.usual_statements or s.largest_statements]
    told = "; ".join(core.each(speak.fish(turn.kb, t), speak.length_range(s, turn.held.units)) for t, s in known)
    ids = speak.short_ids(x for _, s in known for x in (*s.usual_statements, *s.largest_statements))
    apart = len(known) > 1 and not _overlap([s for _, s in known])
    return Block("lead", say.size_verdict(told, apart), statements=ids, claim=bool(ids))


def _overlap(sizes: Sequence[SizeRange]) -> bool:
    spans = [(s.usual_low, s.usual_high) for s in sizes]
    lows = [float(low) for low, high in spans if low is not None and high is not None]
    highs = [float(high) for low, high in spans if low is not None and high is not None]
    return len(lows) < len(sizes) or max(lows) <= min(highs)


def by_seen(turn: Turn, found: Contrast) -> list[Block]:
    """Which of the fishes what was told of a catch before fits clearly best; nothing where it does not choose."""
    kb = turn.kb
    seen = [s for s in turn.held.seen if s.observation.states and not s.observation.hedged]
    if not seen or turn.cues & HOW:
        return []
    fits = {t: [_share(turn, t, s.observation) for s in seen] for t in found.taxa}
    ranked = sorted(found.taxa, key=lambda t: (-_chance(fits[t]), found.taxa.index(t)))
    first, second = ranked[0], ranked[1]
    if _chance(fits[first]) < CLEAR * _chance(fits[second]):
        return []
    speaking = [s.observation for s, a, b in zip(seen, fits[first], fits[second], strict=True) if a > 2 * b]
    ids = [i for o in speaking for t in (first, second) if (x := tell(kb, kb.character(o.character), t))
           for i in x.statements]
    words = [speak.seen_words(kb, o) for o in speaking]
    return [Block("lead", say.by_seen(speak.fish(kb, first), speak.fish(kb, second), words),
                  statements=speak.short_ids(ids) or (f"taxon:{first}",))]


def by_own_mark(turn: Turn, found: Contrast) -> tuple[list[Block], frozenset[str]]:
    """What the marks that the line itself tells of a catch ("blue or channel cat, mine has no spots") say of the
    fishes set side by side, with what each of these shows, and the characters told; empty where none is told."""
    kb = turn.kb
    seen = [s.observation for s in turn.reading.seen if not s.retract and (s.observation.states
            or s.observation.value is not None)]
    if not seen or not own_evidence(turn.reading):
        return [], frozenset()
    rows = [r for o in seen if (r := contrast_row(kb, kb.character(o.character), found.taxa)) is not None]
    told = [say.mark_of_each(*row_text(turn, found.taxa, r)) for r in rows]
    words = [speak.seen_words(kb, o) for o in seen]
    ids = tuple(i for r in rows for i in row_ids(r))
    if not ids:
        return [Block("lead", say.mark_unheld(words, speak.fishes(kb, found.taxa)), claim=False)], frozenset()
    chances = {t: _chance([_share(turn, t, o) for o in seen]) for t in found.taxa}
    first, second = sorted(found.taxa, key=lambda t: (-chances[t], found.taxa.index(t)))[:2]
    ratio = chances[first] / chances[second]
    names = (speak.fish(kb, first), speak.fish(kb, second))
    lead = say.by_seen(*names, words) if ratio >= SETTLES else say.leans(*names, words) if ratio >= LEANS \
        else say.mark_open(words)
    text = " ".join((lead, *told))
    return [Block("lead", text, statements=ids)], frozenset(o.character for o in seen)


def third(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """The fish of another kind that the marks told in the line fit best of all, where they plainly fit one."""
    other = fits_better(turn, taxa)
    return [Block("doubt", say.third(speak.fish(turn.kb, other)), statements=(f"taxon:{other}",))] if other else []


def _share(turn: Turn, taxon: str, seen: Observation) -> float:
    told = taxon_distribution(turn.kb, taxon, seen.character, ADULT)
    if told is None:
        return 0.5
    share = told.share({leaf for s in seen.states for leaf in below(turn.kb, s)} or {str(int(seen.value or 0))})
    return min(max(share if seen.seen else 1.0 - share, LEAST), 1.0)


def _chance(shares: Sequence[float]) -> float:
    return math.prod(shares)


def of_some(turn: Turn, found: Contrast) -> list[Block]:
    """What the young, the breeding fish or one sex of the fishes show; for young ones what shows in small fish, too."""
    taxa, who = found.taxa, scope_of(turn)
    if who == ANY or (who.stage and who.stage != JUVENILE):
        return []
    told = _some_rows(turn, taxa, who)
    points = [_of_some(turn, taxa, who, c, values) for c, values in told]
    if who.stage != JUVENILE:
        named = say.who_are(who.sex, who.stage, who.breeding)
        return points[:MOST] or [Block("point", say.none_of_some(named), claim=False)]
    both = bool(told) and all(own for own, _ in told[0][1])
    steady, advice = _small_too(turn, found), _advice(turn, taxa)
    first = [Block("point", say.young_too(*row_text(turn, taxa, steady[0])), statements=row_ids(steady[0]))] \
        if steady else []
    return [*points[:MOST], *advice] if both else [*advice, *first, *points[: MOST - 1]]


def _of_some(turn: Turn, taxa: Sequence[str], who: Scope, character: Character,
             values: Sequence[tuple[bool, Told | None]]) -> Block:
    """What such fish show of a character; what is told of all fish of the kind only is marked so."""
    kb = turn.kb
    parts = []
    for taxon, (own, told) in zip(taxa, values, strict=True):
        text = speak.told_words(kb, told, character, turn.held.units) if told else core.not_told()
        parts.append(core.each(speak.fish(kb, taxon), text if own or not told else say.of_all(text)))
    named = say.who_are(who.sex, who.stage, who.breeding)
    return Block("point", say.of_some(named, speak.heading(character), "; ".join(parts)),
                 statements=speak.short_ids(s for _, t in values if t for s in t.statements))


def _some_rows(turn: Turn, taxa: Sequence[str],
               who: Scope) -> list[tuple[Character, list[tuple[bool, Told | None]]]]:
    """The characters of which something is told of such fish alone, with what all fish show where nothing is; those in
    which such fish differ first, then by how many are told of. The first of each pair is true where it is told of such.
    """
    kb = turn.kb
    out = []
    for character in (kb.character(c) for c in told_of(kb, taxa)):
        some = [tell_some(kb, character, t, who) for t in taxa]
        if character.use != "identify" or not any(some):
            continue
        values = [(a is not None, a or tell(kb, character, t)) for a, t in zip(some, taxa, strict=True)]
        tops = {t.states[0][0] if t.states else "" for _, t in values if t}
        alike = len(tops) < 2 and all(t for _, t in values)
        missing = sum(t is None for _, t in values)
        out.append((alike, not all(some), missing, -sum(map(bool, some)), character.id, character, values))
    return [(c, values) for *_, c, values in sorted(out, key=lambda x: x[:5])]


def _small_too(turn: Turn, found: Contrast) -> tuple[ContrastRow, ...]:
    """The rows of structure that show in small fish."""
    kb = turn.kb
    rows = [r for r in found.separating if not kb.character(r.character).colouring and all(r.told)
            and kb.character(r.character).min_length <= SMALLEST and kb.character(r.character).kind != "ordered"]
    return firm_first(kb, [r for r in rows if kb.character(r.character).look != "count"] or rows)


def _advice(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    kb = turn.kb
    return [Block("point", say.advice(speak.fish(kb, t), s.text), statements=(f"st:{s.id}",))
            for t in taxa for s in kb.statements(t) if s.character in NOTES and s.text]


MOST_OF_MORE = 4
"""Words of a line that asks for no more than the rest ("show me more please")."""


def further(turn: Turn, found: Contrast, rows: Sequence[ContrastRow]) -> list[ContrastRow]:
    """The rows that a comparison of the same fishes did not tell yet, for "more"."""
    last, words = turn.held.last, turn.reading.words
    again = "more" in turn.cues and len(words) <= MOST_OF_MORE and not turn.reading.of("character")
    left_out = last is not None and last.intent == "contrast" and any(b.kind == "help" for b in last.blocks)
    if not again or last is None or not left_out or set(last.taxa) != set(found.taxa):
        return []
    told = {s for b in last.blocks for s in b.statements}
    return [r for r in rows if not set(row_ids(r)) <= told]


def meets(kb: KnowledgeBase, row: ContrastRow) -> bool:
    """True for a count of which the fishes show mostly the same numbers ("16 to 19; usually 17 or 18")."""
    return kb.character(row.character).kind == "count" and row.separation < COUNTS_APART


ENOUGH, COUNTS_APART = 5, 0.5
"""So many better differences leave out counts that are less far apart than this."""


def told_first(kb: KnowledgeBase, rows: Sequence[ContrastRow]) -> tuple[ContrastRow, ...]:
    """The rows told of every fish, the one to look at first in front and counts beyond the best few behind what is
    seen without counting, then those that are not recorded of some."""
    full = [r for r in rows if None not in r.told]
    late = [r for r in full if kb.character(r.character).kind == "count"][COUNTS_FIRST:]
    gaps = sorted((r for r in rows if None in r.told), key=lambda r: r.told.count(None))
    full = [*(r for r in full if r not in late), *late]
    return (*firm_first(kb, full), *gaps) if full else firm_first(kb, gaps)


COUNTS_FIRST = 3
"""Counts told in their places."""
