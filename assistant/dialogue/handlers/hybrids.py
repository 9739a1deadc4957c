"""Whether two fishes cross, what a cross is, how common, how fertile, and how far looks can prove one (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue import phrases as core
from assistant.dialogue import phrases_care as care
from assistant.dialogue import phrases_info as say
from assistant.dialogue import speak
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import carried_on, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.grounds import both
from assistant.dialogue.speak import fish as label
from assistant.dialogue.subjects import MOST, species_of, subjects
from assistant.dialogue.telling import cut, ids, plain, shown_note, trusted
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement, Taxon
from assistant.reasoning.evidence import about
from assistant.text import join, key, singular

FERTILITY, MALES = "fertility", "sex-ratio-male"
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
OCCURRENCE = {"common": 0, "uncommon": 1, "rare": 2}
BETWEEN = ("intermediate",)
EACH, EACH_SIDE = 2, 6
NOTE = "hybrid-note"
ORIGIN_TOLD, STOCKED = "hybrid-origin", "stocked"
"""The side of a line that asks for raised crosses, and the origin of those."""
LONGEST_NOTE = 200


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The cross of the fishes named, the crosses of one fish, or what holds of hybrids in general."""
    turn = _without_the_word(turn)
    kb, held = turn.kb, turn.held
    sides = aspects(kb, turn.reading)
    general = _general(turn, sides)
    asked = subjects(turn, carried=False) or (() if general else carried_on(turn))
    crosses = tuple(t for t in asked if (x := kb.find("taxon", t)) is not None and x.is_hybrid)
    plain_kinds = tuple(t for t in asked if t not in crosses)
    own = _asked_whether_species(turn, sides)
    if own and not crosses:
        found = kb.taxon(own[0])
        lead = Block("point", care.own_species(found.label, found.scientific), statements=(f"taxon:{found.id}",))
        return _answer(turn, [lead, *general], own), held
    if general and (not asked or not sides & {"fertile", "sex", "how-common"}):
        return _answer(turn, general, asked), held
    if crosses:
        blocks = [b for c in crosses[:EACH] for b in _cross(turn, c, sides)]
        return _answer(turn, blocks, (*crosses, *plain_kinds)), held
    if len(plain_kinds) > 1:
        return _pair(turn, plain_kinds, sides), held
    pair = species_of(kb, plain_kinds)
    if len(pair) == 2 and cross_of(kb, *pair):
        return _pair(turn, pair, sides), held
    if plain_kinds:
        return _answer(turn, _of_one(turn, plain_kinds[0], sides), plain_kinds), held
    return _needs(), held


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
    if not sides & {"fertile", "sex", "how-common", "halfway", "by-eye", "new-species"}:
        points = [*_features(turn, found)[:1], *points]
    if "by-eye" in sides:
        points = [Block("point", care.NOT_BY_EYE, statements=_limits(kb)), *points[:-1]]
    if sides & {"new-species"}:
        points = [Block("point", care.NOT_SPECIES, claim=False), *points]
    asked_first = sides & {"fertile", "sex", "how-common", "halfway", "by-eye"} and not turn.reading.taxa()
    return [*points[:1], lead, *points[1:]] if asked_first and points else [lead, *points]


def _facts(turn: Turn, found: Taxon, sides: frozenset[str]) -> list[Block]:
    kb = turn.kb
    first = {
        FERTILITY: bool(sides & {"fertile"}),
        MALES: bool(sides & {"sex"}),
        "hybrid-occurrence": bool(sides & {"how-common"}),
    }
    out: list[Block] = []
    order = sorted(TELLING, key=lambda c: not first.get(c, False))
    for character in order:
        statements = [s for s in kb.statements(found.id) if s.character == character]
        if statements:
            out.append(_fact(kb, character, statements))
    for side, character, name in (("fertile", FERTILITY, "the fertility"), ("sex", MALES, "the share of males")):
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
        text = care.males(told)
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
    return [lead, *(_features(turn, found)[:2] if "halfway" not in sides else []), *_facts(turn, found, sides)]


def _of_one(turn: Turn, taxon: str, sides: frozenset[str]) -> list[Block]:
    """The crosses known of a fish (or of the fishes of a group), the common ones first."""
    kb = turn.kb
    members = set(species_of(kb, (taxon,)))
    found = [
        t
        for t in kb.species
        if set(kb.taxon(t).parents)
        & (members | {x for m in members for x in kb.lineage(m)[:2]} & set(kb.species))
        or set(kb.taxon(t).parents) & members
    ]
    crosses_alone = bool(members) and all(kb.taxon(m).is_hybrid for m in members)
    found = sorted(members) if crosses_alone else found
    if not found:
        return [
            Block("point", care.cross_none(label(kb, taxon)), claim=False),
            Block("doubt", care.NOT_BY_EYE, claim=False),
        ]
    if STOCKED in sides:
        found = [t for t in found if _stocked(kb, t)] or found
    found.sort(key=lambda t: (OCCURRENCE.get(kb.taxon(t).occurrence, 3), t))
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
    if sides & {"fertile", "sex"}:
        out += [b for t in found for b in _fertility_of(kb, t)][:EACH_SIDE] or _cross(turn, found[0], sides)[:2]
    return [*out, Block("doubt", care.NOT_BY_EYE, claim=False)]


def _origin(kb: KnowledgeBase, found: Taxon) -> str:
    """Where a cross comes from, in words."""
    both = found.origin != STOCKED and _stocked(kb, found.id)
    return care.ORIGIN_BOTH if both else care.ORIGIN.get(found.origin, "")


def _stocked(kb: KnowledgeBase, cross: str) -> bool:
    """True for a cross that is raised and stocked, whether or not it arises in nature too."""
    told = (x for s in kb.statements(cross) if s.character == ORIGIN_TOLD for x in s.states)
    return kb.taxon(cross).origin == STOCKED or any(x.endswith(STOCKED) for x in told)


def _fertility_of(kb: KnowledgeBase, cross: str) -> list[Block]:
    """What is stated of the fertility of a cross, by its name."""
    told = [s for s in kb.statements(cross) if s.character == FERTILITY]
    if not told:
        return []
    fact = _fact(kb, FERTILITY, told)
    return [fact._replace(text=care.on_fish(label(kb, cross), fact.text))]


# --- hybrids in general -----------------------------------------------------------------------------------------


def _general(turn: Turn, sides: frozenset[str]) -> list[Block]:
    """What holds of hybrids in general, where no fish is named."""
    kb = turn.kb
    if turn.reading.taxa() or turn.reading.of("group"):
        return []
    out: list[Block] = []
    if "index" in sides:
        out += _term(kb, "hybrid-index") + _between(kb)
    if "new-species" in sides:
        out += [Block("point", care.NOT_SPECIES, statements=("term:hybrid",)), *_term(kb, "hybrid")]
    if "by-eye" in sides and not turn.held.taxa:
        out.append(Block("point", care.NOT_BY_EYE, statements=_limits(kb)))
    if "halfway" in sides and not turn.held.taxa:
        out += [Block("point", care.HALFWAY, statements=_halfway(kb)), *_between(kb)]
    if "fertile" in sides and not turn.held.taxa:
        out += _fertility_of_all(kb)
    if "how-common" in sides and not turn.held.taxa:
        out += _how_common(kb)
    if not out and not turn.held.taxa:
        out = [*_term(kb, "hybrid"), Block("help", care.HYBRID_NEEDS, claim=False)]
    return out


def _term(kb: KnowledgeBase, key: str) -> list[Block]:
    term = kb.find("term", key)
    return (
        [Block("point", say.titled(term.label, term.plain), statements=(f"term:{key}",))]
        if term is not None
        else []
    )


def _described(kb: KnowledgeBase) -> list[tuple[str, Statement]]:
    """Statements that call something of a cross intermediate."""
    return [
        (t, s)
        for t in kb.species
        if kb.taxon(t).is_hybrid
        for s in kb.statements(t)
        if any(x.rpartition(".")[2] in BETWEEN for x in s.states)
    ]


def _halfway(kb: KnowledgeBase) -> tuple[str, ...]:
    return ids(s for _, s in _described(kb))[:12]


def _between(kb: KnowledgeBase) -> list[Block]:
    found = _described(kb)
    total = sum(kb.taxon(t).is_hybrid for t in kb.species)
    if not found:
        return []
    return [
        Block(
            "point",
            care.halfway_count(len({t for t, _ in found}), total),
            statements=ids(s for _, s in found)[:12],
        )
    ]


def _fertility_of_all(kb: KnowledgeBase) -> list[Block]:
    """What is stated of the fertility of all crosses together."""
    crosses = [t for t in kb.species if kb.taxon(t).is_hybrid]
    told = [(t, s) for t in crosses for s in kb.statements(t) if s.character == FERTILITY]
    counts: dict[str, set[str]] = {}
    for t, s in told:
        for state in s.states:
            counts.setdefault(kb.state(state).label, set()).add(t)
    if not counts:
        return []
    ranked = sorted(counts.items(), key=lambda kv: (-len(kv[1]), kv[0]))[:6]
    text = care.fertility_of_all(
        len({t for t, _ in told}), ", ".join(f"{name} {len(ids)}" for name, ids in ranked)
    )
    return [Block("point", text, statements=tuple(f"st:{s.id}" for _, s in told[:12]))]


def _how_common(kb: KnowledgeBase) -> list[Block]:
    """How many of the crosses held are common, uncommon and rare."""
    crosses = [kb.taxon(t) for t in kb.species if kb.taxon(t).is_hybrid]
    counts = {word: sum(t.occurrence == word for t in crosses) for word in OCCURRENCE}
    told = ", ".join(f"{n} {word}" for word, n in counts.items() if n)
    return [
        Block(
            "point", care.how_common(len(crosses), told), statements=tuple(f"taxon:{t.id}" for t in crosses[:12])
        )
    ]


def _limits(kb: KnowledgeBase) -> tuple[str, ...]:
    return ids(
        s
        for t in kb.species
        if kb.taxon(t).is_hybrid
        for s in kb.statements(t)
        if s.character == "identification-limit"
    )[:12]
