"""Whether two fishes cross, what a cross is, how common, how fertile, and how far looks can prove one (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import carried_on, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.beside import crossing
from assistant.dialogue.beside.crosses_in_general import general as general_of
from assistant.dialogue.beside.crosses_in_general import limits
from assistant.dialogue.conversation import Held
from assistant.dialogue.grounds import both
from assistant.dialogue.recogniser.named_how import own_evidence
from assistant.dialogue.subjects import MOST, species_of, subjects, unclear
from assistant.dialogue.telling import cut, ids, place_names, plain, shown_note, trusted
from assistant.dialogue.turn import Turn
from assistant.dialogue.wider import common_taxon
from assistant.dialogue.wording import care, core, speak
from assistant.dialogue.wording import crossing as crosswords
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement, Taxon
from assistant.reasoning.evidence import about
from assistant.reasoning.living import living_in
from assistant.text import join, key, singular, unique

FERTILITY, MALES, GROWTH = "fertility", "sex-ratio-male", "growth"
TELLING = (
    "hybrid-occurrence",
    FERTILITY,
    MALES,
    "identification-limit",
    "appearance",
    "growth",
    "hybrid-note",
    "backcrossing",
    "catchability",
    "legal-status",
)
"""Characters of crosses that are told, the most asked first."""
SHOWN_LOOKS = 4
EACH, EACH_SIDE = 2, 6
NOTE = "hybrid-note"
ORIGIN_TOLD, STOCKED = "hybrid-origin", "stocked"
"""The side of a line that asks for raised crosses, and the origin of those."""
LONGEST_NOTE = 200
_SHARE = re.compile(r"\d+(?:\.\d+)?")
HALF, WHOLE = 50, 100
"""Shares in a hundred between which most are males, but not all."""
FACTS = frozenset({"fertile", "sex", "how-common"})
LOOKS_ASKED = frozenset({"halfway", crossing.TELLING_ONE})
POND_TOLD = ("catchability", "hybrid-note", MALES, FERTILITY, "growth")
PERMIT = "stock-permit"
"""The advice on stocking a pond."""
WHY = frozenset({"why", "whys", "how come"})

SPECIES_ASKED, HYBRIDS_MEANT = "species-ask", frozenset({"hybrid-word", "pairs-with"})
"""The cue of a line that asks whether something is a species, and those of a line that speaks of hybrids."""


OWN_YOUNG = "own-young"
"""The cue of a line that asks whether crosses have young of their own."""
PAIRED, ITSELF = frozenset({"pairs-with", "hybrid"}), frozenset({"it", "they", "he", "she", "this", "that"})
"""Cues of a line that pairs a fish with the one spoken of, and the words for that one ("it breeds with bluegill?")."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The cross of the fishes named, the crosses of one fish, or what holds of hybrids in general."""
    answer, held = _of_a_catch(turn) or _answered(turn)
    return _no_species(turn, answer), held


def _of_a_catch(turn: Turn) -> tuple[Answer, Held] | None:
    """Which fish or cross it is, where the line tells marks of a catch and wonders whether it is a cross."""
    from assistant.dialogue.handlers import handler_of

    told = {s.observation.character for s in turn.reading.seen if not s.retract}
    if len(told) < MARKS_TOLD or not own_evidence(turn.reading) or aspects(turn.kb, turn.reading) & OF_CROSSES:
        return None
    answer, held = handler_of("identify")(turn)
    named = species_of(turn.kb, subjects(turn, carried=False))
    return answer._replace(intent="hybrids", taxa=unique((*answer.taxa, *named))), held


MARKS_TOLD = 2
"""Marks of a catch from which it is weighed which cross it is."""
OF_CROSSES = frozenset({"fertile", "sex", "how-common", crossing.GROWING, crossing.MOTHER_ASKED})
"""Sides of a line that asks of crosses at large, whatever it tells."""


def _answered(turn: Turn) -> tuple[Answer, Held]:
    """The answer as it is without a word on what a species is."""
    turn = _without_the_word(turn)
    kb, held = turn.kb, turn.held
    sides = aspects(kb, turn.reading)
    general = general_of(turn, sides)
    asked = subjects(turn, carried=False) or (() if general else carried_on(turn))
    if turn.reading.places and held.intent == "hybrids" and not subjects(turn, carried=False):
        asked = (*(t for t in held.taxa if not turn.kb.taxon(t).is_species), *asked)[:1]
    crosses = tuple(t for t in asked if (x := kb.find("taxon", t)) is not None and x.is_hybrid)
    plain_kinds = crossing.with_loose_other(turn, tuple(t for t in asked if t not in crosses))
    of_held = tuple(t for t in held.taxa if (x := kb.find("taxon", t)) is not None and x.is_hybrid)[:1]
    if not crosses and of_held and ITSELF & set(turn.reading.words) and crossing.GROWING in sides:
        crosses = of_held
    if PAIRED & turn.cues and ITSELF & set(turn.reading.words) and len(plain_kinds) == 1 == len(held.taxa):
        plain_kinds = unique((*(t for t in held.taxa if kb.find("taxon", t) is not None), *plain_kinds))
    if unclear(turn) and (spoken_of := tuple(t for t in crosses if t in held.taxa)):
        crosses, plain_kinds = spoken_of, tuple(t for c in spoken_of for t in kb.taxon(c).parents)
    marked = any(crossing.marks_asked(turn, c) for c in crosses[:1])
    if crossing.MOTHER_ASKED in sides and not marked and (bred := crosses or crossing.of_pair(kb, plain_kinds)):
        mothers = [b for c in bred[:EACH] for b in crossing.mother_of(turn, c)]
        young = [b for c in bred[:EACH] for b in _facts(turn, kb.taxon(c), sides)[:1]] if "fertile" in sides else []
        return _answer(turn, [*mothers, *young], (*bred, *plain_kinds)), held
    own = _asked_whether_species(turn, sides)
    if own and not crosses:
        found = kb.taxon(own[0])
        lead = Block("point", care.own_species(found.label, found.scientific), statements=(f"taxon:{found.id}",))
        return _answer(turn, [lead, *general], own), held
    if not crosses and (first := _of_kinds(turn, plain_kinds, sides)):
        return first, held
    if general and (not asked or not sides & {"fertile", "sex", "how-common"}):
        return _answer(turn, [*_reasonless(turn), *general], asked), held
    if crosses:
        blocks = [*_reasonless(turn), *(b for c in crosses[:EACH] for b in _cross(turn, c, sides))]
        return _answer(turn, blocks, (*crosses, *plain_kinds)), held
    if len(plain_kinds) > 1 and "fertile" in sides and not subjects(turn, carried=False) and held.intent == "identify":
        group = common_taxon(kb, *plain_kinds) or plain_kinds[0]
        young = crossing.young_of_several(turn, crosswords.crosses_of(kinds_name(kb, group)), _crosses_of(kb, group))
        if young:
            return _answer(turn, [*young, Block("doubt", care.NOT_BY_EYE, claim=False)], plain_kinds), held
    if len(plain_kinds) > 1:
        return _pair(turn, plain_kinds, sides), held
    pair = species_of(kb, plain_kinds)
    if len(pair) == 2 and cross_of(kb, *pair):
        return _pair(turn, pair, sides), held
    if plain_kinds:
        told = _of_one(turn, plain_kinds[0], sides)
        other = OWN_YOUNG in turn.cues or sides & {"how-common", crossing.GROWING}
        if crossing.asks_whether(turn) and told[0].statements and not other:
            told[0] = told[0]._replace(text=crosswords.yes(told[0].text))
        return _answer(turn, [*_reasonless(turn), *told], plain_kinds), held
    return _needs(), held


def _no_species(turn: Turn, answer: Answer) -> Answer:
    """The answer with a word before it that a hybrid is no species, where that is asked of hybrids and not yet said."""
    said = any(b.text == care.NOT_SPECIES for b in answer.blocks)
    if SPECIES_ASKED not in turn.cues or not HYBRIDS_MEANT & turn.cues or said or not answer.blocks:
        return answer
    first, *rest = answer.blocks
    lead = Block("lead", care.NOT_SPECIES, statements=("term:hybrid",))
    return answer._replace(blocks=(lead, first._replace(kind="point"), *rest))


def _of_kinds(turn: Turn, asked: tuple[str, ...], sides: frozenset[str]) -> Answer | None:
    """The answer where kinds, not crosses, are named: whether two cross, what it is called, which cross a catch may be,
    how one is known; None where the line wants something else.
    """
    kb, named = turn.kb, crossing.sides_of(turn)
    own = tuple(t for _, ids in named if len(ids) == 1 for t in ids)
    if len(named) > 1:
        found = crossing.crosses_between(kb, named[0][1], named[1][1])
        if found and crossing.asks_name(turn):
            points = [crossing.called(turn, found[0]), *_features(turn, kb.taxon(found[0]))[:2]]
            return _answer(turn, [*points, Block("doubt", care.NOT_BY_EYE, claim=False)], (found[0], *own))
        if len(own) < 2 and not turn.reading.seen:
            return _two_kinds(turn, named, found, own, sides)
    kinds = tuple(c for t in asked for c in _crosses_of(kb, t))
    if turn.reading.seen and len(own) == 1 and (fit := crossing.fitting(turn, own)):
        return _answer(turn, [*fit, Block("doubt", care.NOT_BY_EYE, claim=False)], own)
    if crossing.TELLING_ONE in sides and len(asked) == 1 and kinds:
        return _answer(turn, [*crossing.how_known(turn, kinds, own[:1]), *_of_one(turn, asked[0], frozenset())], asked)
    return None


def _two_kinds(turn: Turn, named: Sequence[tuple[str, tuple[str, ...]]], found: tuple[str, ...], own: tuple[str, ...],
               sides: frozenset[str]) -> Answer:
    """Whether two kinds cross of which one at least is told by a word for several fishes."""
    doubt = Block("doubt", care.NOT_BY_EYE, claim=False)
    if len(found) == 1:
        return _answer(turn, _crossed(turn, found[0], sides), (found[0], *own))
    if found:
        return _answer(turn, [crossing.kinds_crossed(turn, found, named), doubt], own or found[:MOST])
    families = [{f for t in ids for f in _families(turn.kb, t)} for _, ids in named[:2]]
    why = care.SAME_FAMILY if families[0] & families[1] else care.OTHER_FAMILY
    lead = Block("point", care.cross_unknown(named[0][0], named[1][0], why),
                 statements=tuple(f"taxon:{f}" for f in sorted(families[0] | families[1])[:4]))
    known = [b for t in own[:1] for b in _of_one(turn, t, frozenset())[:1]]
    return _answer(turn, [lead, *known], own)


def _reasonless(turn: Turn) -> list[Block]:
    """A word that the reason asked for is not held."""
    return [Block("point", crosswords.WHY_NOT_HELD, claim=False)] if WHY & set(turn.reading.words) else []


def _asked_whether_species(turn: Turn, sides: frozenset[str]) -> tuple[str, ...]:
    """The fish of "is the dollar sunfish a species of its own", where it is no cross."""
    if "new-species" not in sides or {"hybrid", "hybrids", "cross", "crosses"} & set(turn.reading.words):
        return ()
    asked = subjects(turn, carried=False) or (carried_on(turn)[:1] if {"it", "its", "that"} & set(turn.reading.words)
                                              else ())
    return tuple(t for t in asked if (x := turn.kb.find("taxon", t)) is not None and x.is_species and not x.is_hybrid)


def _without_the_word(turn: Turn) -> Turn:
    """The turn with "hybrid" read as the word it is, not as a loose name of some crosses."""
    kb, reading = turn.kb, turn.reading
    words = [
        m
        for m in reading.of("taxon", "hybrid")
        if any(
            kind == "term" and thing == "hybrid"
            for w in (key(m.words), singular(key(m.words)))
            for kind, thing, _ in kb.spoken(w)
        )
    ]
    return (
        turn.with_reading(reading._replace(mentions=tuple(m for m in reading.mentions if m not in words)))
        if words
        else turn
    )


def _needs() -> Answer:
    return plain("hybrids", care.HYBRID_NEEDS, asked=Asked("fish", say.WHICH_FISH))


def _answer(turn: Turn, blocks: Sequence[Block], taxa: tuple[str, ...]) -> Answer:
    first, *rest = blocks
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("hybrids", (head, *cut(list(rest), "more" in turn.cues)), taxa=told_taxa(turn, taxa))


# --- one cross --------------------------------------------------------------------------------------------------


def cross_of(kb: KnowledgeBase, a: str, b: str) -> str | None:
    """The cross of two species (or of their subspecies and species) that the base holds."""
    wide = [set(kb.lineage(x)) | {x} | set(kb.children.get(x, ())) for x in (a, b)]
    for t in kb.species:
        parents = kb.taxon(t).parents
        if parents and any(p in wide[0] and q in wide[1] for p, q in (parents, parents[::-1])):
            return t
    return None


def _cross(turn: Turn, cross: str, sides: frozenset[str]) -> list[Block]:
    """What a cross is, and what is told of it, the side asked about first."""
    kb = turn.kb
    found = kb.taxon(cross)
    a, b = (label(kb, p) for p in found.parents)
    lead = Block(
        "point",
        trusted(care.cross_is(found.label, a, b, _origin(kb, found)), found.basis),
        statements=(f"taxon:{cross}",),
    )
    points = _facts(turn, found, sides)
    wanted = sides & (FACTS | LOOKS_ASKED | {"by-eye", "new-species", crossing.GROWING})
    if crossing.POND in sides and "makes-cross" not in turn.cues:
        return _for_pond(turn, found, lead)
    if crossing.asks_of_parents(turn) and not wanted - FACTS:
        return _crossed(turn, cross, sides - {"fertile"})
    if not wanted:
        points = [*_features(turn, found)[:1], *points]
    marks = crossing.marks_asked(turn, cross)
    if not marks and sides & LOOKS_ASKED and (looks := crossing.looks_of(turn, cross)):
        points = [looks, *points]
    points = [*marks, *points]
    if "by-eye" in sides:
        points = [Block("point", care.NOT_BY_EYE, statements=limits(kb)), *points[:-1]]
    if sides & {"new-species"}:
        points = [Block("point", care.NOT_SPECIES, claim=False), *points]
    return [*points[:1], lead, *points[1:]] if (wanted or marks) and points else [lead, *points]


def _for_pond(turn: Turn, found: Taxon, lead: Block) -> list[Block]:
    """What is told of a cross that matters in a pond, the permit first."""
    kb = turn.kb
    advice = kb.find("caution", PERMIT)
    told = [_fact(kb, c, rows) for c in POND_TOLD if (rows := [s for s in kb.statements(found.id) if s.character == c])]
    permit = [Block("point", advice.text, statements=(f"caution:{advice.id}",))] if advice is not None else []
    return [*permit, *told, lead]


def _facts(turn: Turn, found: Taxon, sides: frozenset[str]) -> list[Block]:
    kb = turn.kb
    first = {
        FERTILITY: bool(sides & {"fertile"}),
        MALES: bool(sides & {"sex"}),
        "hybrid-occurrence": bool(sides & {"how-common"}),
    }
    out: list[Block] = []
    first[GROWTH] = crossing.GROWING in sides
    order = sorted(TELLING, key=lambda c: not first.get(c, False))
    for character in order:
        statements = [s for s in kb.statements(found.id) if s.character == character]
        if statements and character == FERTILITY and first[FERTILITY] and not WHY & set(turn.reading.words):
            states = [x for s in statements for x in s.states]
            told = join(list(dict.fromkeys(_words(kb, s) for s in statements))[:3])
            out.append(crossing.young_of(turn, found.id, told, states, ids(statements)))
        elif statements:
            out.append(_fact(kb, character, statements))
    for side, character, name in (("fertile", FERTILITY, "the fertility"), ("sex", MALES, "the share of males"),
                                  (crossing.GROWING, GROWTH, "the growth")):
        if side in sides and not any(s.character == character for s in kb.statements(found.id)):
            out.insert(0, Block("point", say.ids_or_none(found.label, name), claim=False))
    if sides & {"halfway", "by-eye"}:
        out = _features(turn, found) + out
    return [*out, Block("doubt", care.NOT_BY_EYE, claim=False)]


def _fact(kb: KnowledgeBase, character: str, statements: Sequence[Statement]) -> Block:
    texts = list(dict.fromkeys(_words(kb, s) for s in statements))
    told = join(texts[:3], "and")
    if character == FERTILITY:
        text = care.fertile(told)
    elif character == MALES:
        shares = [float(n) for t in texts for n in _SHARE.findall(t)]
        most = bool(shares) and all("%" in t for t in texts) and min(shares) > HALF and max(shares) < WHOLE
        text = care.males_mostly(min(shares), max(shares), len(texts)) if most else care.males(told)
    else:
        text = core.entry(kb.character(character).label, told)
    return Block(
        "point",
        trusted(text, "memory" if all(s.basis == "memory" for s in statements) else ""),
        statements=ids(statements),
    )


def _words(kb: KnowledgeBase, s: Statement) -> str:
    """The value of a statement with its note where that is short; a free note is told by its note alone."""
    note = shown_note(s.note, LONGEST_NOTE)
    if s.character == NOTE and note:
        return note
    plain_text = re.sub(r"(?<=[a-z])-|-(?=[a-z])", " ", s.text)
    value = join([kb.state(x).label for x in s.states], "or") if s.states else plain_text
    return f"{value} ({note})" if note and s.character != MALES else value


def _features(turn: Turn, found: Taxon) -> list[Block]:
    """The features that set the cross apart from its parents, each beside theirs."""
    from assistant.reasoning.contrast import LOOKS, contrast

    kb = turn.kb
    rows = [r for r in contrast(kb, (found.id, *found.parents), LOOKS["hand"]).separating if all(r.told)]
    return [
        Block(
            "point",
            core.entry(speak.heading(kb.character(r.character)), both(turn, r)),
            statements=speak.short_ids(s for t in r.told if t for s in t.statements) or (f"taxon:{found.id}",),
        )
        for r in rows[:SHOWN_LOOKS]
    ]


# --- two fishes, one fish ---------------------------------------------------------------------------------------


def _pair(turn: Turn, asked: tuple[str, ...], sides: frozenset[str]) -> Answer:
    kb = turn.kb
    for i, a in enumerate(asked):
        for b in asked[i + 1 :]:
            for one in species_of(kb, (a,)):
                for two in species_of(kb, (b,)):
                    cross = cross_of(kb, one, two) if one != two else None
                    if cross is not None:
                        return _answer(turn, _crossed(turn, cross, sides), (cross, *asked[: MOST - 1]))
    a, b = asked[0], asked[1]
    families = [_families(kb, x) for x in (a, b)]
    why = care.OTHER_FAMILY if not families[0] & families[1] else care.SAME_FAMILY
    statements = tuple(f"taxon:{f}" for f in sorted(families[0] | families[1])[:4])
    lead = Block("point", care.cross_unknown(label(kb, a), label(kb, b), why), statements=statements)
    known = [b for one in asked[:2] for b in _of_one(turn, one, sides)[:1] if species_of(kb, (one,))]
    return _answer(turn, [lead, *known], asked)


def _families(kb: KnowledgeBase, taxon: str) -> set[str]:
    return {
        f
        for t in species_of(kb, (taxon,))
        for p in (kb.taxon(t).parents or (t,))
        for f in kb.lineage(p)
        if kb.taxon(f).rank == "family"
    }


def _crossed(turn: Turn, cross: str, sides: frozenset[str]) -> list[Block]:
    kb = turn.kb
    found = kb.taxon(cross)
    a, b = (label(kb, p) for p in found.parents)
    own = found.label if " x " not in found.label else ""
    text = care.cross_lead(a, b, found.occurrence, own)
    lead = Block(
        "point",
        trusted(text, found.basis),
        statements=(f"taxon:{cross}", *ids(about(kb, cross, "hybrid-occurrence")[0])),
    )
    looked = sides & LOOKS_ASKED and not crossing.asks_whether(turn)
    if looked and (looks := crossing.looks_of(turn, cross)):
        return [looks, lead, *_facts(turn, found, sides)]
    return [lead, *(_features(turn, found)[:2] if "halfway" not in sides else []), *_facts(turn, found, sides)]


def _of_one(turn: Turn, taxon: str, sides: frozenset[str]) -> list[Block]:
    """The crosses known of a fish (or of the fishes of a group), the common ones first."""
    kb = turn.kb
    members = set(species_of(kb, (taxon,)))
    crosses_alone = bool(members) and all(kb.taxon(m).is_hybrid for m in members)
    found = list(_crosses_of(kb, taxon))
    if not found:
        return [
            Block("point", care.cross_none(label(kb, taxon)), claim=False),
            Block("doubt", care.NOT_BY_EYE, claim=False),
        ]
    if STOCKED in sides:
        found = [t for t in found if _stocked(kb, t)] or found
    there, remark = _there(turn, found)
    found = there or found
    names = []
    for t in found:
        partner = [p for p in kb.taxon(t).parents if p not in members]
        own = kb.taxon(t).label
        name = label(kb, partner[0]) if len(members) == 1 and partner else own
        names.append(f"{name} ({own})" if name != own and " x " not in own else name)
    most = len(names) if "more" in turn.cues else 8
    stocked = STOCKED in sides and all(_stocked(kb, t) for t in found)
    worded = care.cross_kinds if crosses_alone else care.cross_list_stocked if stocked else care.cross_list
    text = worded(
        kinds_name(kb, taxon),
        say.names_with(names[:most])
        if len(names) <= most
        else say.counted(", ".join(names[:most]), len(names) - most),
    )
    out = [Block("point", text, statements=tuple(f"taxon:{t}" for t in found))]
    kinds = kinds_name(kb, taxon) if crosses_alone else crosswords.crosses_of(kinds_name(kb, taxon))
    if "how-common" in sides:
        out.insert(0, crossing.commonest(turn, kinds, found))
    elif crossing.GROWING in sides:
        out = [*crossing.growing(turn, found), *out]
    elif "fertile" in sides and (OWN_YOUNG in turn.cues or not crossing.asks_whether(turn)):
        return [*crossing.young_of_several(turn, kinds, found), *out, Block("doubt", care.NOT_BY_EYE, claim=False)]
    if sides & {"fertile", "sex"}:
        character = MALES if "sex" in sides else FERTILITY
        told = [b for t in found for b in _told_of_cross(kb, t, character)][:EACH_SIDE]
        out = [*told, *out] if told and "sex" in sides else [*out, *(told or _cross(turn, found[0], sides)[:2])]
    out = [*out, *remark] if there else [*remark, *out]
    return [*out, Block("doubt", care.NOT_BY_EYE, claim=False)]


def _there(turn: Turn, crosses: Sequence[str]) -> tuple[list[str], list[Block]]:
    """The crosses both of whose parents live in the place named, and a remark that only the parents tell so."""
    kb, places = turn.kb, turn.reading.places
    if not places:
        return [], []
    found = [t for t in crosses if len(living_in(kb, kb.taxon(t).parents, places)) == len(kb.taxon(t).parents)]
    where = place_names(kb, places)
    return found, [Block("point", crosswords.parents_there(where) if found else crosswords.no_parents_there(where),
                         claim=False)]


def _crosses_of(kb: KnowledgeBase, taxon: str) -> tuple[str, ...]:
    """The crosses of a fish, of its species or of the fishes of a group (those of a group of crosses), common ones
    first."""
    members = set(species_of(kb, (taxon,)))
    wider = {x for m in members for x in kb.lineage(m)[:2]} & set(kb.species)
    own = bool(members) and all(kb.taxon(m).is_hybrid for m in members)
    found = members if own else {t for t in kb.species if set(kb.taxon(t).parents) & (members | wider)}
    return tuple(sorted(found, key=lambda t: (crossing.OCCURRENCE.get(kb.taxon(t).occurrence, 3), t)))


def _origin(kb: KnowledgeBase, found: Taxon) -> str:
    """Where a cross comes from, in words."""
    both = found.origin != STOCKED and _stocked(kb, found.id)
    return care.ORIGIN_BOTH if both else care.ORIGIN.get(found.origin, "")


def _stocked(kb: KnowledgeBase, cross: str) -> bool:
    """True for a cross that is raised and stocked, whether or not it arises in nature too."""
    told = (x for s in kb.statements(cross) if s.character == ORIGIN_TOLD for x in s.states)
    return kb.taxon(cross).origin == STOCKED or any(x.endswith(STOCKED) for x in told)


def _told_of_cross(kb: KnowledgeBase, cross: str, character: str) -> list[Block]:
    """What is stated of the fertility, or of the share of males, of a cross, by its name."""
    told = [s for s in kb.statements(cross) if s.character == character]
    if not told:
        return []
    fact = _fact(kb, character, told)
    return [fact._replace(text=care.on_fish(label(kb, cross), fact.text))]
