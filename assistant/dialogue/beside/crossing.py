"""Questions on crosses answered in the first line: whether two kinds cross, what the cross is called, whether it has
young, which are common, how they grow, how one is known, and which of them what was seen fits (layer 4).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.dialogue.answer import Block
from assistant.dialogue.reader.parts import characters_asked
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import MEMORY, place_names, shown_note, trusted
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core, speak
from assistant.dialogue.wording import crossing as say
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT, contrast_row, tell
from assistant.reasoning.evidence import below
from assistant.reasoning.observer import taxon_distribution
from assistant.text import join, key, singular, unique, word_set

FERTILE = frozenset({"fertile", "first-cross-fertile"})
STERILE = frozenset({"sterile", "males-sterile", "mostly-sterile-males"})
"""Ends of the ids of states by which a cross has young, or has none; the others lie between."""
DENYING = word_set("sterile infertile mule mules")
"""Words by which it is asked whether a cross has no young."""
CROSSING = word_set("cross crosses crossing hybridize hybridise hybridizes breed breeds interbreed mate mix crossbreed")
GRADES = (2, 1, 0)
NAMED_BY = frozenset({"vernacular", "accepted"})
OCCURRENCE = {"common": 0, "uncommon": 1, "rare": 2}
TELLING_ONE, GROWING, POND = "telling-a-hybrid", "growth-of-hybrids", "pond-use"
"""Sides of a line: how a cross is known, how crosses grow, whether one suits a pond."""
GROWTH, OCCURS = "growth", "common"
LOOKS_TOLD, MOST, SHOWN = 5, 3, 8
MOTHER, MOTHER_ASKED = "maternal-parent", "mother-of-a-hybrid"
"""The character that tells the mother, and the side of a line that asks for her."""
LONGEST_NOTE = 200
MOST_MARKS = 2
"""So many of the marks that a line names are told of a cross."""
LEAST = 0.02
"""A share below this counts as this: nothing seen rules a cross out."""


def sides_of(turn: Turn) -> list[tuple[str, tuple[str, ...]]]:
    """What the line names, in its order: the words for each fish or kind, and the species that they may mean."""
    kb = turn.kb
    out: list[tuple[str, tuple[str, ...]]] = []
    mentions = sorted(turn.reading.of("taxon", "group", "likeness", "hybrid"), key=lambda m: m.start)
    for mention in mentions:
        ids = _meant(kb, mention)
        if ids and all(not kb.taxon(t).is_hybrid for t in ids) and ids not in [known for _, known in out]:
            out.append((speak.fish(kb, ids[0]) if len(ids) == 1 else mention.words, ids))
    return out


def _meant(kb: KnowledgeBase, mention: Mention) -> tuple[str, ...]:
    """The species that a name may mean: of a loose name those whose English name holds it; so of a word for a group
    where only a few of it are called so ("pike").
    """
    pool = tuple(t for t in species_of(kb, mention.ids) if len(mention.ids) == 1 or not kb.taxon(t).is_hybrid)
    if len(pool) < 2:
        return pool
    pool = tuple(t for t in pool if not kb.taxon(t).is_hybrid) or pool
    wanted = {singular(w) for w in key(mention.words).split()}
    own = tuple(t for t in pool if wanted <= {singular(w) for w in key(kb.taxon(t).label).split()})
    return own if own and (mention.kind != "group" or 2 * len(own) < len(pool)) else pool


def crosses_between(kb: KnowledgeBase, one: Sequence[str], two: Sequence[str]) -> tuple[str, ...]:
    """The crosses held of any of some species with any of others, the common ones first."""
    from assistant.dialogue.handlers.hybrids import cross_of

    found = unique(c for a in one for b in two if a != b and (c := cross_of(kb, a, b)) is not None)
    return tuple(sorted(found, key=lambda t: (OCCURRENCE.get(kb.taxon(t).occurrence, 3), t)))


def of_pair(kb: KnowledgeBase, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """The crosses held of the first two of some fishes."""
    return crosses_between(kb, species_of(kb, kinds[:1]), species_of(kb, kinds[1:2])) if len(kinds) > 1 else ()


def with_loose_other(turn: Turn, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """The one kind named with that which a looser name beside it means, where the two cross ("pike and musky")."""
    kb = turn.kb
    if len(kinds) != 1 or (found := kb.find("taxon", kinds[0])) is None or not found.is_species:
        return kinds
    loose = [m for m in turn.reading.of("taxon", "group") if kinds[0] not in m.ids[:1] and m.words]
    others = [t for m in loose for t in species_of(kb, m.ids) if t != kinds[0] and of_pair(kb, (kinds[0], t))]
    words = {singular(key(m.words)) for m in loose}
    plainly = [t for t in others if singular(key(kb.taxon(t).label).split()[-1]) in words]
    return (*kinds, *(plainly or others)[:1])


def kinds_crossed(turn: Turn, crosses: Sequence[str], sides: Sequence[tuple[str, tuple[str, ...]]]) -> Block:
    """That two kinds cross, with the crosses held of them."""
    names = _list_of(turn.kb, crosses)
    return Block("point", say.kinds_cross(sides[0][0], sides[1][0], names), statements=_taxa(crosses))


def asks_whether(turn: Turn) -> bool:
    """True for "do bullheads cross", which wants a yes before the list."""
    return bool(turn.cues & {"asks-do", "asks-can"} and CROSSING & set(turn.reading.words) and "why" not in turn.cues)


def asks_of_parents(turn: Turn) -> bool:
    """True for "do warmouth cross with green sunfish", in which a cross is named by its parents alone."""
    return asks_whether(turn) and any(" x " in f" {key(m.words)} " for m in turn.reading.of("hybrid"))


def called(turn: Turn, cross: str) -> Block:
    """What a cross is called, its parents behind."""
    kb = turn.kb
    found = kb.taxon(cross)
    names = [n.text for n in kb.names(cross)
             if n.kind in NAMED_BY and n.language == "en" and key(n.text) != key(found.label)]
    return Block("point", say.called(found.label, names[:MOST], speak.fishes(kb, found.parents)),
                 statements=(f"taxon:{cross}", *(f"name:{n.id}" for n in kb.names(cross)[:MOST])))


def asks_name(turn: Turn) -> bool:
    """True for "what do you get when you cross X and Y", "what is a cross of X and Y called"."""
    words = set(turn.reading.words)
    return bool(turn.cues & {"asks-what", "what-is", "names"} and words & {"called", "get", "call", "name", "named"}
                and not turn.cues & {"asks-do", "asks-can"})


def grade(states: Sequence[str]) -> int:
    """2 where a cross is told to have young, 0 where it is told to have none, 1 between."""
    ends = {s.rpartition(".")[2] for s in states}
    return 2 if ends <= FERTILE else 0 if ends <= STERILE else 1


def verdict(turn: Turn, states: Sequence[str]) -> str:
    """Yes, no or in part: whether a cross has young, or, where that was asked, has none."""
    told, denied = grade(states), bool(DENYING & set(turn.reading.words))
    return say.PARTLY if told == 1 else say.NO if (told == 2) == denied else say.YES


def young_of(turn: Turn, cross: str, told: str, states: Sequence[str], ids: tuple[str, ...]) -> Block:
    """Whether a cross has young, with what is told of it."""
    return Block("point", say.young(verdict(turn, states), speak.fish(turn.kb, cross), told), statements=ids)


def young_of_several(turn: Turn, kinds: str, crosses: Sequence[str]) -> list[Block]:
    """Whether the crosses of a kind have young, by how many are told to be what."""
    kb = turn.kb
    told = {t: [x for s in kb.statements(t) if s.character == "fertility" for x in s.states] for t in crosses}
    told = {t: states for t, states in told.items() if states}
    if not told:
        return []
    sorts = [sum(grade(states) == g for states in told.values()) for g in GRADES]
    text = say.young_of_several(verdict(turn, [x for states in told.values() for x in states]), kinds, len(told), sorts)
    ids = [s.id for t in told for s in kb.statements(t) if s.character == "fertility"]
    return [Block("point", text, statements=tuple(f"st:{i}" for i in ids[:12]))]


def commonest(turn: Turn, kinds: str, crosses: Sequence[str]) -> Block:
    """Which of some crosses are common."""
    kb = turn.kb
    common = [t for t in crosses if kb.taxon(t).occurrence == OCCURS]
    text = say.commonest(kinds, _list_of(kb, common)) if common else say.none_common(kinds)
    return Block("point", text, statements=_taxa(common or crosses[:SHOWN]))


def growing(turn: Turn, crosses: Sequence[str]) -> list[Block]:
    """What is held of the growth of crosses."""
    kb = turn.kb
    rows = [(t, s) for t in crosses for s in kb.statements(t) if s.character == GROWTH and s.text]
    if not rows:
        return [Block("point", say.NO_GROWTH, claim=False)]
    told = "; ".join(f"{speak.fish(kb, t)} - {s.text}" for t, s in rows[:SHOWN])
    return [Block("point", say.grow(told), statements=tuple(f"st:{s.id}" for _, s in rows[:SHOWN]))]


def looks_of(turn: Turn, cross: str, beside: Sequence[str] = ()) -> Block | None:
    """What is told of the looks of a cross itself, that first which sets it apart from ``beside``, else its parents."""
    kb = turn.kb
    others = tuple(beside) or kb.taxon(cross).parents
    found = [(c, x) for name in kb.told_of(cross) if (c := kb.character(name)).use == "identify"
             and c.look in ("glance", "hand") and (x := tell(kb, c, cross)) is not None]
    apart = {c.id: sum(r.separation for o in others if (r := contrast_row(kb, c, (cross, o)))) for c, _ in found}
    found.sort(key=lambda x: (-apart[x[0].id], x[0].id))
    found = found[:LOOKS_TOLD]
    if not found:
        return None
    memory = all(x.basis == MEMORY for _, x in found)
    shown = [(c, x._replace(basis="") if memory else x) for c, x in found]
    told = "; ".join(f"{c.label}: {speak.told_words(kb, x, c, turn.held.units)}" for c, x in shown)
    text = trusted(say.looks(speak.fish(kb, cross), told), MEMORY if memory else "")
    return Block("point", text, statements=speak.short_ids(s for _, x in found for s in x.statements))


def marks_asked(turn: Turn, cross: str) -> list[Block]:
    """What is told of the marks that the line names: of the cross, beside its parents; that it is not held of it."""
    kb = turn.kb
    out: list[Block] = []
    for name in characters_asked(kb, turn.reading) if turn.reading.of("character") else ():
        character, parents = kb.character(name), kb.taxon(cross).parents
        told = [x for p in parents if (x := tell(kb, character, p)) is not None] if character.use == "identify" else []
        own = tell(kb, character, cross) if told else None
        if len(told) < len(parents) or (own is None and out):
            continue
        sides = [core.each(speak.fish(kb, x.taxon), speak.told_words(kb, x, character, turn.held.units)) for x in told]
        notes = unique(n for s in kb.statements(cross) if s.character == name and (n := shown_note(s.note)))
        if own is not None:
            value = speak.told_words(kb, own, character, turn.held.units)
            value = f"{value} ({notes[0]})" if notes and own.states else value
            sides = [core.each(speak.fish(kb, cross), value), *sides]
            text = core.entry(speak.heading(character), "; ".join(sides))
        else:
            text = say.mark_unheld(speak.fish(kb, cross), character.label, "; ".join(sides))
        ids = (*(own.statements if own is not None else ()), *(s for x in told for s in x.statements))
        out.append(Block("point", text, statements=speak.short_ids(ids)))
    return out[:MOST_MARKS]


def how_known(turn: Turn, crosses: Sequence[str], beside: Sequence[str] = ()) -> list[Block]:
    """How a cross is known: marks of both parents, and what the commonest of some crosses look like."""
    looks = [b for t in crosses[:MOST] if (b := looks_of(turn, t, beside)) is not None]
    if not looks:
        return [Block("point", say.LOOK_FOR, claim=False)]
    first, *rest = looks
    return [first._replace(text=f"{say.LOOK_FOR} {first.text}"), *rest]


def fitting(turn: Turn, parents: Sequence[str]) -> list[Block]:
    """Of the crosses of some fishes the one that what the line tells fits best, with its looks."""
    kb, seen = turn.kb, turn.reading.seen
    crosses = unique(c for p in parents for c in kb.crosses_of(p))
    if not crosses or not seen:
        return []
    best = max(crosses, key=lambda c: (_fit(turn, c), -crosses.index(c)))
    marks = [speak.seen_words(kb, s.observation) for s in seen if _share(turn, best, s.observation.character,
                                                                      s.observation.states) >= 2 * LEAST]
    if not marks:
        return []
    text = say.fits(speak.fish(kb, best), join(unique(marks)), speak.fish(kb, parents[0]))
    looks = looks_of(turn, best)
    return [Block("point", text, statements=(f"taxon:{best}", *(looks.statements if looks else ()))),
            *([looks] if looks else [])]


def _fit(turn: Turn, cross: str) -> float:
    shares = [_share(turn, cross, s.observation.character, s.observation.states) for s in turn.reading.seen
              if s.observation.seen and s.observation.states]
    return sum(math.log(max(share, LEAST)) for share in shares)


def _share(turn: Turn, cross: str, character: str, states: Sequence[str]) -> float:
    found = taxon_distribution(turn.kb, cross, character, ADULT) if states else None
    return found.share({leaf for s in states for leaf in below(turn.kb, s)}) if found is not None else 0.0


def mother_of(turn: Turn, cross: str) -> list[Block]:
    """Which parent of a cross is the mother, by each source; that it is not held where none says so."""
    kb = turn.kb
    parents = kb.taxon(cross).parents
    told: list[Block] = []
    for s in (s for s in kb.statements(cross) if s.character == MOTHER):
        mother = next((p for p in parents if kb.taxon(p).scientific == s.text), "")
        fathers = [speak.fish(kb, p) for p in parents if p != mother]
        if mother and fathers:
            where = (s.scope_text, *(place_names(kb, (r,)) for r in s.regions), shown_note(s.note, LONGEST_NOTE))
            about = "; ".join(unique(x for x in where if x))
            text = say.mother(speak.fish(kb, cross), speak.fish(kb, mother), fathers[0],
                              s.frequency.replace("-", " "), about)
            told.append(Block("point", trusted(text, s.basis), statements=(f"st:{s.id}",)))
    if told:
        return told
    text = say.mother_unheld(speak.fish(kb, cross), speak.fishes(kb, parents))
    return [Block("point", text, statements=(f"taxon:{cross}",))]


def _list_of(kb: KnowledgeBase, crosses: Sequence[str]) -> str:
    shown = [speak.fish(kb, t) for t in crosses[:SHOWN]]
    return join(shown) if len(crosses) <= SHOWN else f"{', '.join(shown)} and {len(crosses) - SHOWN} more"


def _taxa(crosses: Sequence[str]) -> tuple[str, ...]:
    return tuple(f"taxon:{t}" for t in crosses)
