"""What the base lacks, told at the prompt: gaps of a taxon, taxa without a value or with few statements, numbers
without a unit, sources that disagree (layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.aspects import characters
from assistant.dialogue.conflicts_told import conflicts_among, conflicts_of_one
from assistant.dialogue.conversation import Order
from assistant.dialogue.ranking import placed
from assistant.dialogue.reader.parts import called, characters_asked, name_words
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.telling import MEMORY, place_names, plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core, lists
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character, Statement
from assistant.model.stems import DROPPED
from assistant.reasoning.disagreement import family_of, gaps_by_character, silence
from assistant.reasoning.evidence import about
from assistant.reasoning.living import living_in
from assistant.reasoning.place_prior import expand_places
from assistant.reasoning.size import LENGTHS
from assistant.text import unique

NUMBERS = ("count", "ratio", "length", "mass", "temperature")
WITH_UNIT = ("length", "mass", "temperature")
SHOWN, MOST_TAXA = 15, 8
FEW = 3
UNSTATED, CONFLICT, BY_CHARACTER = "lacking", "conflict", "by-character"
MANY = frozenset({"list", "list-weak", "kinds-held"})
"""Cues of a line that asks of many kinds, whatever fish was spoken of before."""
COUNTING = frozenset({"count", "number", "value"})
"""Words that any count is named with."""
STATEMENTS = frozenset({"statement", "statements", "records", "facts"})
NO_CONFLICTS = (lists.NO_CONFLICT, lists.ONE_SPEAKS, lists.NONE_SPEAKS)
COUNTS = frozenset({"count", "counts", "number", "numbers"})
"""Words of a line that asks of what is counted."""
OF_LENGTH = frozenset({"length", "lengths", "size", "sizes", "long"})
RANKED = frozenset({"held-most", "held-least"})
"""Cues of a line that asks of which fishes the most or the least is stated."""
COLOUR_ONLY = "colour-only"
"""The side of a line that narrows what is missing to colour and marks."""
SHORT = 8
"""Words in the longest line that only names another fish."""


def asks_gaps(turn: Turn, sides: frozenset[str]) -> bool:
    """True when a line asks what is missing, or narrows such an answer."""
    if sides & {"coverage", "unit", "from-memory", "one-source", CONFLICT, BY_CHARACTER} or _least_told(turn, sides):
        return True
    if turn.cues & RANKED or _unsourced_asked(turn, sides):
        return True
    if (UNSTATED in sides and turn.reading.places) or _of_another(turn):
        return True
    if _unheld(turn, sides) and (_named(turn) or "unit" in sides or ("unheld" in turn.cues and named(turn))):
        return True
    return bool(sides & {"numeric", COLOUR_ONLY}) and turn.held.intent == "list"


def _of_another(turn: Turn) -> str:
    """What is asked anew of another fish by "same for the dollar sunfish", "and for bluegill?": the side told last."""
    last = turn.held.last
    if last is None or turn.held.intent != "list" or not turn.cues & {"same-again", "what-about"}:
        return ""
    if not subjects(turn, carried=False) or len(turn.reading.words) > SHORT:
        return ""
    told = [b.text for b in last.blocks]
    if any(text.startswith(lists.GAPS) for text in told):
        return "coverage"
    if told and (lists.NONE_DROPPED in told[0] or told[0].endswith(NO_CONFLICTS)):
        return CONFLICT
    return "from-memory" if told and told[0].endswith(lists.MEMORY_TAIL) else ""


def _unsourced_asked(turn: Turn, sides: frozenset[str]) -> bool:
    """True for "which statements have no source"."""
    return UNSTATED in sides and bool({"source", "sources", "unsourced"} & set(turn.reading.words))


def _without_statement(turn: Turn) -> bool:
    """True for "without a ... statement", whatever stands between."""
    return "without" in turn.reading.words and bool((STATEMENTS | {"value", "values"}) & set(turn.reading.words))


def gaps(turn: Turn, sides: frozenset[str]) -> Answer:
    """The gaps asked for."""
    if (narrowed := _counted_among(turn)) is not None:
        return narrowed
    if again := _of_another(turn):
        sides = sides | {again}
    if turn.cues & RANKED:
        return _most_told(turn)
    if _unsourced_asked(turn, sides):
        return _unsourced(turn.kb)
    if "unit" in sides:
        return _units(turn)
    if "from-memory" in sides:
        return _resting(turn, lambda s, _: s.basis == MEMORY, lists.from_memory)
    if "one-source" in sides:
        return _resting(turn, lambda s, same: len({x for other in same for x in other.source}) == 1, lists.one_source)
    if CONFLICT in sides:
        return _conflicts(turn)
    if least := _least_told(turn, sides):
        return _thin(turn, least)
    if UNSTATED in sides and turn.reading.places and not _named(turn):
        return _no_range(turn)
    of_some = "coverage" in sides and bool(named(turn) or subjects(turn, carried=not turn.cues & MANY))
    lacking = (_unheld(turn, sides) and not (of_some and named(turn))) or ("coverage" in sides and not of_some)
    if lacking and (found := _named(turn)):
        return _without(turn, found[:FEW])
    if BY_CHARACTER in sides and not named(turn):
        return _by_character(turn)
    return _coverage(turn, "numeric" if "numeric" in sides else COLOUR_ONLY if COLOUR_ONLY in sides else "")


def _unheld(turn: Turn, sides: frozenset[str]) -> bool:
    """True for a line that asks of what no value is held ("no value", "still blank", "nothing entered")."""
    seen, lacking = bool(turn.reading.seen), turn.cues & {"lacking", "without"}
    denied = (lacking or "denying" in turn.cues) and "held-word" in turn.cues
    of_kinds = lacking and "kinds-held" in turn.cues and not seen
    return UNSTATED in sides or "unheld" in turn.cues or bool(denied or of_kinds) or _without_statement(turn)


def _named(turn: Turn) -> tuple[str, ...]:
    """The characters that the line names: those called by their label or their id, else those that it may mean."""
    return called(turn.kb, turn.reading) or _spoken_of(turn)


def _spoken_of(turn: Turn) -> tuple[str, ...]:
    """The characters that the words of the line may mean: those whose names share most words with it."""
    kb = turn.kb
    own = tuple(dict.fromkeys(i.partition(".")[0] for m in turn.reading.of("character") for i in m.ids))
    crossed = ("hybrid",) if "hybrid-word" in turn.cues else ()
    own = own or characters(kb, turn.reading, ("identify", "describe", "life", "size", *crossed))
    said = set(name_words(turn.reading.text)) - DROPPED - COUNTING
    shared = {c: len(said & {*name_words(c), *name_words(kb.character(c).label)})
              for c in unique((*own, *characters_asked(kb, turn.reading)))}
    most = max(shared.values(), default=0)
    return tuple(c for c, n in shared.items() if n == most)


def _relevant(kb: KnowledgeBase, taxon: str, wanted: Sequence[Character]) -> tuple[Character, ...]:
    """The characters that are stated of some fish of the same family: the others mostly do not apply."""
    family = next(
        (k for k in kb.lineage((kb.taxon(taxon).parents or (taxon,))[0]) if kb.taxon(k).rank == "family"), ""
    )
    kin = species_of(kb, (family,)) if family else (taxon,)
    stated = {s.character for t in kin for k in kb.lineage(t) for s in kb.statements(k)}
    return tuple(c for c in wanted if c.id in stated)


def _observable(kb: KnowledgeBase, only: str = "") -> tuple[Character, ...]:
    """The characters that can be seen on a fish, of some kind of them only where one is asked for."""
    if only == "numeric":
        return tuple(c for c in kb.characters if c.use in ("identify", "size") and c.kind in NUMBERS)
    return tuple(c for c in kb.characters if c.use == "identify" and (c.colouring or not only))


def _coverage(turn: Turn, only: str) -> Answer:
    """For each taxon how many of the characters are stated, and which are not."""
    kb = turn.kb
    asked = subjects(turn)
    taxa = species_of(kb, asked)[:MOST_TAXA]
    if not taxa:
        return plain("list", lists.LIST_NEEDS)
    every, what = _observable(kb, only), lists.KINDS_OF_CHARACTERS[only]
    blocks: list[Block] = []
    for t in taxa:
        wanted = _relevant(kb, t, every)
        told = [c for c in wanted if about(kb, t, c.id)[0]]
        missing = [c.label for c in wanted if c not in told]
        ids = tuple(f"st:{s.id}" for c in told[:6] for s in about(kb, t, c.id)[0][:1])
        lead = lists.coverage_lead(label(kb, t), len(told), len(wanted), what)
        blocks.append(Block("point" if blocks else "lead", lead, statements=ids))
        if missing:
            blocks.append(Block("point", lists.gaps(_cut(missing, "more" in turn.cues)), claim=False))
    return Answer("list", tuple(blocks), taxa=asked or taxa)


def _cut(names: Sequence[str], full: bool) -> str:
    most = len(names) if full else SHOWN
    return (
        say.names_with(list(names))
        if len(names) <= most + 2
        else say.counted(", ".join(names[:most]), len(names) - most)
    )


def _kinds(turn: Turn) -> tuple[tuple[str, ...], str]:
    """The kinds named (all where none is) that live in the place named, and what limits them, in words."""
    kb, places = turn.kb, turn.reading.places
    if "hybrid-word" in turn.cues:
        own = set(species_of(kb, (*named(turn), *(m.ids[0] for m in turn.reading.of("group") if m.ids))))
        crosses = [t for t in kb.species if kb.taxon(t).is_hybrid]
        return tuple(t for t in crosses if not own or own & {t, *kb.taxon(t).parents}), lists.AMONG_CROSSES
    asked = named(turn) or subjects(turn, carried=False)
    pool = tuple(t for t in species_of(kb, asked) or kb.species if not kb.taxon(t).is_hybrid)
    kinds = say.names_with([label(kb, t) for t in asked[:MOST_TAXA] if kb.find("taxon", t) is not None])
    return living_in(kb, pool, places), lists.among(kinds, place_names(kb, places) if places else "")


def _without(turn: Turn, wanted: Sequence[str]) -> Answer:
    """The taxa for which the characters named have no value, character by character.

    Families in which nothing is told of a character are told apart: it may not apply to them.
    """
    kb = turn.kb
    pool, where = _kinds(turn)
    texts: list[str] = []
    for character in wanted:
        name, found = kb.character(character).label, silence(kb, pool, character)
        shown = _cut([label(kb, t) for t in found.lacking], "more" in turn.cues)
        if found.lacking:
            texts.append(lists.lacking(name, len(found.lacking), found.among, shown, where))
        elif found.among:
            texts.append(lists.lacking_none(name, found.among, where))
        else:
            texts.append(lists.unstated_everywhere(name, where))
        families = [label(kb, f) for f in dict.fromkeys(family_of(kb, t) for t in found.unspoken) if f]
        if families and found.among:
            few = families if "more" in turn.cues or len(families) <= MOST_TAXA else families[:MOST_TAXA - 2]
            left = len(families) - len(few)
            told = say.counted(", ".join(few), left) if left else say.names_with(few, "or")
            texts.append(lists.lacking_elsewhere(len(found.unspoken), told))
    first, *rest = texts
    return plain("list", first, rest=[Block("point", text, claim=False) for text in rest],
                 taxa=named(turn) or (() if "hybrid-word" in turn.cues else subjects(turn, carried=False)))


def _by_character(turn: Turn) -> Answer:
    """The characters with the most gaps among some kinds or all."""
    kb = turn.kb
    pool, where = _kinds(turn)
    rows = gaps_by_character(kb, pool, _observable(kb))
    if not rows:
        return plain("list", lists.by_character_none(where))
    shown = rows if "more" in turn.cues else rows[:SHOWN]
    told = [(kb.character(c).label, lacking, among) for c, lacking, among in shown]
    return plain("list", lists.by_character(where, len(rows), told))


def _no_range(turn: Turn) -> Answer:
    """The taxa of which nothing is said for the places named."""
    kb = turn.kb
    wanted = expand_places(kb, turn.reading.places)
    pool = [t for t in species_of(kb, subjects(turn, carried=False)) or kb.species if not kb.taxon(t).is_hybrid]
    missing = [label(kb, t) for t in pool if not any(r.place in wanted for k in kb.lineage(t) for r in kb.ranges(k))]
    place = place_names(kb, turn.reading.places)
    return plain("list", lists.no_range(place, len(missing), _cut(missing, "more" in turn.cues)))


def _resting(turn: Turn, weak: Callable[[Statement, Sequence[Statement]], bool],
             told: Callable[[str, int, int], str]) -> Answer:
    """How much of what is said of some taxa rests on little, most first; of a few taxa on which characters, too.

    ``weak`` judges a statement beside those of its character and taxon.
    """
    kb = turn.kb
    asked = subjects(turn)
    taxa = species_of(kb, asked) or tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)
    wanted = set(_named(turn))
    held = {t: [s for s in kb.statements(t) if not wanted or s.character in wanted] for t in taxa}
    found = {t: [s for s in held[t] if weak(s, kb.statements_on(t, s.character))] for t in taxa}
    ranked = sorted((t for t in taxa if found[t]), key=lambda t: (-len(found[t]), t))[:MOST_TAXA]
    if not ranked:
        return plain("list", lists.NONE_SO if asked else lists.LIST_NEEDS)
    blocks: list[Block] = []
    if not asked:
        whole = told(lists.IN_ALL, sum(map(len, found.values())), sum(map(len, held.values())))
        blocks.append(Block("lead", whole, claim=False))
    for t in ranked:
        ids = tuple(f"st:{s.id}" for s in found[t])[:6]
        text = told(label(kb, t), len(found[t]), len(held[t]))
        blocks.append(Block("point" if blocks else "lead", text, statements=ids))
        if len(ranked) <= FEW and not wanted:
            names = list(dict.fromkeys(kb.character(s.character).label for s in found[t]))
            blocks.append(Block("point", lists.namely(_cut(names, "more" in turn.cues)), claim=False))
    return Answer("list", tuple(blocks), taxa=asked[:MOST_TAXA] or tuple(ranked))


def _units(turn: Turn) -> Answer:
    """Number statements without a unit, of the kind named or of all kinds that need one."""
    kb = turn.kb
    kinds = [k for k in WITH_UNIT if k in turn.reading.words] or list(WITH_UNIT)
    wanted = {c.id for c in kb.characters if c.kind in kinds}
    found = [s for t in kb.ids("statement") for s in kb.statements(t) if s.character in wanted]
    lacking = [s.id for s in found if not s.unit]
    name = say.names_with(kinds, "or")
    if not lacking:
        return plain("list", lists.unit_none(name, len(found)))
    return plain("list", lists.unit_some(name, len(lacking), len(found), _cut(lacking, "more" in turn.cues)))


def _least_told(turn: Turn, sides: frozenset[str]) -> int:
    """The number of "taxa with fewer than 10 statements"; 0 where none is asked for."""
    asked = "count-under" in sides and STATEMENTS & set(turn.reading.words)
    return turn.reading.counts[0] if asked and turn.reading.counts else 0


def _thin(turn: Turn, least: int) -> Answer:
    """The taxa of which fewer statements than a number are held, the fewest first."""
    kb = turn.kb
    asked = subjects(turn, carried=False)
    counts = {t: len(kb.statements(t)) for t in species_of(kb, asked) or kb.species if not kb.taxon(t).is_hybrid}
    few = sorted((t for t in counts if counts[t] < least), key=lambda t: (counts[t], t))
    shown = _cut([core.with_bracket(label(kb, t), str(counts[t])) for t in few], "more" in turn.cues)
    ids = tuple(f"taxon:{t}" for t in few[:SHOWN])
    lead = Block("lead", lists.thin(least, len(few), shown), statements=ids, claim=bool(few))
    return Answer("list", (lead,), taxa=asked or tuple(few[:MOST_TAXA]))


def _unsourced(kb: KnowledgeBase) -> Answer:
    """The statements without a source; where there are none, how many rest on memory alone."""
    every = [s for t in kb.ids("statement") for s in kb.statements(t)]
    lacking = [s.id for s in every if not s.source]
    if lacking:
        return plain("list", lists.unsourced(len(lacking), len(every), _cut(lacking, full=False)))
    return plain("list", lists.unsourced_none(len(every), sum(s.basis == MEMORY for s in every)))


def _most_told(turn: Turn) -> Answer:
    """Of which kinds the most or the least is stated, with the numbers of their own statements."""
    kb = turn.kb
    pool = species_of(kb, subjects(turn, carried=False)) or kb.species
    counts = {t: len(kb.statements(t)) for t in pool if not kb.taxon(t).is_hybrid}
    least = "held-least" in turn.cues
    ranked = sorted(counts, key=lambda t: (counts[t] if least else -counts[t], t))[:MOST_TAXA]
    text = lists.most_told([(label(kb, t), counts[t]) for t in ranked], least)
    lead = Block("lead", text, statements=tuple(f"taxon:{t}" for t in ranked))
    return Answer("list", (lead,), taxa=tuple(ranked))


def _last_wanted(turn: Turn) -> set[str]:
    """The characters that the answer before told of, for "and for bluegill?" and for what follows their sources."""
    last = turn.held.last
    sourced = turn.held.intent == "sources" and not named(turn)
    if last is None or not (sourced or _of_another(turn)):
        return set()
    found = {s.split(".")[1] for b in last.blocks for s in b.statements if s.startswith("st:") and s.count(".") > 1}
    return found if len(found) <= (MOST_LAST if sourced else 1) else set()


MOST_LAST = 4
"""Features up to which a line after sources ("do any conflict") asks of those told, not of all held of the fish."""


def _counts_meant(turn: Turn, pool: Sequence[str]) -> tuple[str, ...]:
    """The counts told of some fishes that the line names ("pore counts"): those that share most words with it."""
    kb = turn.kb
    if not COUNTS & set(turn.reading.words):
        return ()
    told = (kb.character(c) for c in unique(s.character for t in pool for s in kb.statements(t)))
    said = set(name_words(turn.reading.text)) - DROPPED - COUNTING
    shared = {c.id: len(said & set(name_words(c.label))) for c in told if c.kind == "count" and c.use == "identify"}
    most = max(shared.values(), default=0)
    return tuple(c for c, n in shared.items() if most and n == most)


def _counted_among(turn: Turn) -> Answer | None:
    """Of which fishes of the last list a count is held, each with it, and of which none is ("of these, which have
    anal spine counts"); None where that is not asked."""
    kb = turn.kb
    asks = turn.held.intent == "list" and WITH in turn.cues and not turn.cues & {"lacking", "without", "unheld"}
    pool = tuple(t for t in turn.held.shown if (x := kb.find("taxon", t)) is not None and x.is_species)
    wanted = _counts_meant(turn, pool) if asks and pool and not (subjects(turn, carried=False)) else ()
    if not wanted:
        return None
    blocks: list[Block] = []
    for character in wanted[:FEW]:
        name = kb.character(character).label
        rows = {p.taxon: p for p in placed(turn, pool, Order(character, True))}
        told = [rows[t] for t in pool if t in rows]
        lead = lists.counted_among(name, [(label(kb, p.taxon), p.words) for p in told], len(pool))
        ids = tuple(s for p in told for s in p.statements)
        blocks.append(Block("point" if blocks else "lead", lead, statements=ids, claim=bool(told)))
        if told and (rest := [label(kb, t) for t in pool if t not in rows]):
            blocks.append(Block("point", lists.not_counted(name, _cut(rest, "more" in turn.cues)), claim=False))
    return Answer("list", tuple(blocks), taxa=turn.held.taxa)


WITH = "have-verb"
"""The cue of a line that asks what has something."""


def _conflicts(turn: Turn) -> Answer:
    """The statements on which sources differ: of a fish named or spoken of, else of many or of all kinds held."""
    kb = turn.kb
    asked = subjects(turn, carried=not turn.cues & MANY)
    pool = species_of(kb, asked) or tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)
    wanted = (_counts_meant(turn, pool) or _named(turn))[:FEW] or tuple(sorted(_last_wanted(turn)))
    wanted = wanted or (LENGTHS if OF_LENGTH & set(turn.reading.words) else ())
    if len(pool) == 1:
        return conflicts_of_one(turn, pool[0], wanted)
    places = turn.reading.places
    place = place_names(kb, places) if places else ""
    return conflicts_among(turn, living_in(kb, pool, places), asked, wanted, place)
