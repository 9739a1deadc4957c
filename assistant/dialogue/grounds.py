"""Grounds without a catch: features, words, notes, and the records that the last answer rests on (layer 4)."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import kinds_name
from assistant.dialogue.aspects import aspects
from assistant.dialogue.living_beside import life_beside
from assistant.dialogue.mattering import matters
from assistant.dialogue.reader.glossed import CLASS_ASKING
from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.parts import characters_asked
from assistant.dialogue.subjects import species_of, subjects
from assistant.dialogue.telling import spread
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, info, speak
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.model.records import Caution, Character, Practice, Range, SizeRecord, Statement
from assistant.model.stems import DROPPED
from assistant.reasoning.contrast import ContrastRow, contrast_row, tell
from assistant.text import join, key, singular, word_set

MOST, SPOKEN = 5, 3
PURPOSE = "used to"
"""How a word of the glossary says what a thing is for."""
LONG = 5
"""Letters from which a word of a line is looked for among what is held of a fish."""


def general(turn: Turn) -> Answer:
    """No fish is being named: the feature asked about, a word, else what the last answer rests on."""
    kb = turn.kb
    fish = subjects(turn, carried=False) or turn.held.taxa
    if "hybrid" in turn.cues:
        from assistant.dialogue.handlers import handler_of

        return handler_of("hybrids")(turn)[0]._replace(intent="why")
    asked = characters_asked(kb, turn.reading) or _of_term(turn)
    if "live-one" in turn.cues and not fish and (told := _on_live(turn, asked)):
        return Answer("why", told)
    kinds = tuple(sorted(species_of(kb, fish), key=lambda t: (-len(kb.ranges(t)), t)))[:6]
    if (sides := _two_sides(turn)) and asked and (parted := _feature(turn, sides, sides, asked)) is not None:
        wider = spread(kb, tuple(i for m in turn.reading.of("group") for i in m.ids[:1]))
        lives = life_beside(turn, sides, asked)[: len(turn.reading.taxa())]
        return parted._replace(blocks=(*parted.blocks, *(b._replace(kind="point") for b in lives)),
                               taxa=tuple(dict.fromkeys((*turn.reading.taxa(), *wider, *sides))))
    purpose = {"why", "have-verb"} <= turn.cues
    if "why" in turn.cues and (some := [b for t in kinds for b in _of_some(turn, t, asked)]):
        return Answer("why", (Block("lead", wording.CHANGES, claim=False), *some[:MOST]), fish)
    if renamed := [b for t in kinds[:1] for b in _renamed(turn, t)]:
        return Answer("why", tuple(renamed), fish)
    if BY_COLOUR in turn.cues and (told := trust(turn, asked)):
        return Answer("why", told, fish)
    form = len(kinds) == 1 and bool(turn.reading.seen) and not _purposes(turn)
    if len(turn.reading.taxa()) < 2 and (beside := life_beside(turn, kinds, asked)):
        return Answer("why", (*beside, *(_term(turn, t, 1) for t in _purposes(turn)[:1])), fish)
    if asked and kinds and (not purpose or form) and (found := _feature(turn, fish, kinds, asked)) is not None:
        return found
    words = set(turn.reading.words)
    of_colour = COLOUR in aspects(kb, turn.reading) and not subjects(turn, carried=False)
    doubted = of_colour or words & DOUBTING or turn.cues & {"self-reliable", BY_COLOUR}
    if doubted and (told := trust(turn, asked)):
        return Answer("why", told, fish)
    if "why" in turn.cues and asked and not fish and (told_apart := matters(turn, asked)) is not None:
        return told_apart
    if notes := _notes(turn):
        return Answer("why", tuple(notes), fish)
    if terms := _terms(turn):
        said = _purposes(turn)
        if purpose and said:
            return Answer("why", tuple(_term(turn, t, i) for i, t in enumerate(said[:2])), fish)
        lead = Block("lead", wording.WHY_UNKNOWN, claim=False)
        told = _speaking_of(turn, fish) if purpose and fish else ()
        return Answer("why", (lead, *(_term(turn, t, 1) for t in terms[:2]), *told), fish)
    if subjects(turn, carried=False):
        return _held_of(turn, fish)
    return _last(turn)


def _on_live(turn: Turn, asked: tuple[str, ...]) -> tuple[Block, ...]:
    """That a mark asked about is looked for on dead fish only, with how; what may be done instead."""
    dead = [c for name in asked if (c := turn.kb.character(name)).look == DEAD]
    counting = bool({"count", "counts", "counting", "counted", "number"} & set(turn.reading.words))
    dead.sort(key=lambda c: (c.kind == "count") != counting)
    if not dead:
        seen = [c for name in asked[:1] if (c := turn.kb.character(name)).how]
        return tuple(Block("lead", care.live_too(c.label, c.how), statements=(f"char:{c.id}",)) for c in seen)
    first = dead[0]
    return (Block("lead", care.dead_only(first.label, first.how), statements=(f"char:{first.id}",)),
            Block("help", care.ON_LIVE_FISH, claim=False))


DEAD = "dead"
"""The look of a character that only a dead fish shows."""
REST, MOST_OF_GROUP = "other", 4
"""The word for the rest of a group, and the kinds of a group named beside a fish that are set beside it."""


def _two_sides(turn: Turn) -> tuple[str, ...]:
    """The fishes named and the most widespread kinds of each group named beside them; empty where only one is named.

    A group to which a fish named belongs is no side of its own.
    """
    kb, own = turn.kb, turn.reading.taxa()
    told = [species_of(kb, m.ids[:1]) for m in turn.reading.of("group", "likeness") if m.ids]
    if REST in turn.reading.words:
        told = [tuple(t for t in kinds if t not in own) for kinds in told]
    beside = [kinds for kinds in told if kinds and not set(own) & set(kinds)]
    if len(own) + len(beside) < 2 or not (own or len(beside) > 1):
        return ()
    first = [t for t in own if kb.find("taxon", t) is not None and kb.taxon(t).is_species]
    others = [sorted((t for t in kinds if not kb.taxon(t).is_hybrid), key=lambda t: (-len(kb.ranges(t)), t))
              for kinds in beside]
    return tuple(dict.fromkeys((*first, *(t for kinds in others for t in kinds[:MOST_OF_GROUP]))))


def _held_of(turn: Turn, fish: tuple[str, ...]) -> Answer:
    """No reason is held: say so, and tell what is held of the fish on the side asked about."""
    from assistant.dialogue.handlers import handler_of

    told = _speaking_of(turn, fish) or handler_of("describe")(turn)[0].blocks[:3]
    return Answer("why", (Block("lead", wording.WHY_UNKNOWN, claim=False), *told), fish)


def _renamed(turn: Turn, taxon: str) -> list[Block]:
    """What is noted of the name of a fish whose scientific name stands in the line ("why is M. salmoides ... now")."""
    kb = turn.kb
    epithet = key(kb.taxon(taxon).scientific).split()[-1]
    if epithet not in turn.reading.words:
        return []
    notes = {c.id for c in kb.characters if c.use == "note" and "name" in key(c.label).split()}
    rows = [s for s in kb.statements(taxon) if s.text and s.character in notes][:SPOKEN]
    out: list[Block] = []
    for s in rows:
        cited = speak.short_cite(kb, s.source[0], s.page) if s.source else ""
        told = wording.rests_on(f"{speak.fish(kb, taxon)}: {s.note or s.text}", cited, wording.BASIS_WORDS[s.basis])
        out.append(Block("point" if out else "lead", say.capital(told), statements=speak.short_ids((s.id,))))
    return out


def _of_some(turn: Turn, taxon: str, asked: tuple[str, ...]) -> tuple[Block, ...]:
    """What is said of a sex, an age or a season of a fish with a colour of the line, of the part asked about."""
    kb, lexicon = turn.kb, lexicon_of(turn.kb)
    colours = [w for w in turn.reading.words if lexicon.head(w) is not None and not lexicon.is_part(w)]
    meant = {thing for w in colours for kind, thing, _ in kb.spoken(w) if kind == "state"}
    rows = [s for s in kb.statements(taxon)
            if (s.sex or s.breeding or s.stage or s.season) and meant & set(s.states)]
    rows = [s for s in rows if s.character in asked] or [s for s in rows if kb.character(s.character).colouring]
    return tuple(Block("point", row_words(turn, s), statements=speak.short_ids((s.id,))) for s in rows[:SPOKEN])


_HOW_OFTEN = word_set("almost often usually always never sometimes there their these those about which would could")


def _speaking_of(turn: Turn, fish: tuple[str, ...]) -> tuple[Block, ...]:
    """The statements on the fish that share a word of some length with the line ("snails", "purple")."""
    kb, units = turn.kb, turn.held.units
    names = {w for m in turn.reading.mentions if m.kind in ("taxon", "hybrid", "group") for w in key(m.words).split()}
    empty = DROPPED | _HOW_OFTEN | names
    said = {singular(w) for w in turn.reading.words
            if len(w) >= LONG and w not in empty and all(e[0] != "cue" for e in kb.spoken(w))}
    found: list[tuple[int, Statement]] = []
    for s in (s for t in species_of(kb, fish)[:1] for line in kb.lineage(t)[:2] for s in kb.statements(line)):
        told = {singular(w) for w in key(f"{speak.statement_words(kb, s, units)} {s.note}").split()}
        if shared := len(said & told):
            found.append((-shared, s))
    found.sort(key=lambda pair: (pair[0], pair[1].id))
    return tuple(Block("point", row_words(turn, s), statements=speak.short_ids((s.id,))) for _, s in found[:SPOKEN])


def _terms(turn: Turn) -> list[str]:
    """The glossary terms of the line, mentioned or spoken of by another word."""
    kb = turn.kb
    told = [t for m in turn.reading.of("term") for t in m.ids]
    words = () if CLASS_ASKING in turn.cues else turn.reading.words[:60]
    told += [thing for w in words for kind, thing, _ in kb.spoken(singular(w)) if kind == "term"]
    return [t for t in dict.fromkeys(told) if kb.find("term", t) is not None]


def _purposes(turn: Turn) -> list[str]:
    """The glossary terms of the line that say what a thing is for."""
    return [t for t in _terms(turn) if (x := turn.kb.find("term", t)) is not None and PURPOSE in x.plain]


def _of_term(turn: Turn) -> tuple[str, ...]:
    """Characters whose name holds a term of the line ("spine": the spine counts)."""
    words = {singular(w) for m in turn.reading.of("term") for w in key(m.words).split()}
    return tuple(
        c.id for c in turn.kb.characters if c.use == "identify" and words & {singular(w) for w in key(c.label).split()}
    )


def _feature(turn: Turn, fish: tuple[str, ...], kinds: tuple[str, ...], asked: tuple[str, ...]) -> Answer | None:
    kb = turn.kb
    rows = (
        [r for name in asked[:12] if (r := contrast_row(kb, kb.character(name), kinds)) is not None]
        if len(kinds) > 1
        else []
    )
    best = max(rows, key=lambda r: (r.separation, r.character), default=None)
    terms = [t for m in turn.reading.of("term") for t in m.ids if kb.find("term", t) is not None]
    if best is not None and best.separation >= 0.3:
        text = wording.because_differs(kb.character(best.character).label, _told_apart(turn, fish), both(turn, best))
        return Answer(
            "why",
            (Block("lead", text, statements=speak.short_ids(s for t in best.told if t for s in t.statements)),),
            fish,
        )
    reasonless = "why" in turn.cues and bool(turn.reading.seen) and bool(subjects(turn, carried=False))
    unknown = [Block("lead", wording.WHY_UNKNOWN, claim=False)]
    blocks = unknown if reasonless else [_term(turn, t, 0) for t in terms[:1]]
    told = [(name, t) for name in asked[:6] if (t := tell(kb, kb.character(name), kinds[0])) is not None]
    for name, t in told[:2]:
        character = kb.character(name)
        text = wording.in_common(
            character.label, speak.fish(kb, fish[0]), speak.told_words(kb, t, character, turn.held.units)
        )
        blocks.append(Block("point" if blocks else "lead", text, statements=speak.short_ids(t.statements)))
    return Answer("why", tuple(blocks), fish) if blocks and (told or not reasonless) else None


def _told_apart(turn: Turn, fish: tuple[str, ...]) -> str:
    """The fishes and groups that a feature tells apart, as the line names them; else the first fish spoken of."""
    kb = turn.kb
    named = list(dict.fromkeys(i for m in turn.reading.of("taxon", "hybrid", "group", "likeness") for i in m.ids[:1]))
    return join([kinds_name(kb, i) for i in named]) if len(named) > 1 else speak.fish(kb, fish[0])


DOUBTING = frozenset({"trust", "reliable", "unreliable", "bad", "rely", "wrong", "mistake"})
COLOUR, BY_COLOUR = "colour", "by-colour"
"""The side of a matter that words for colour ask about, and the cue of a line on how far colour is to be trusted."""


def trust(turn: Turn, asked: tuple[str, ...]) -> tuple[Block, ...]:
    """How far a feature (or colour at large) can be trusted: observer error and what it changes with, from the base."""
    kb = turn.kb
    if COLOUR in aspects(kb, turn.reading):
        colour = [c for c in kb.characters if c.use == "identify" and "colour" in c.id]
        counts = [c for c in kb.characters if c.use == "identify" and c.kind == "count"]
        if colour and counts:
            text = wording.observers(_rate(colour), _rate(counts), _scopes(turn, [c.id for c in colour]))
            return (Block("lead", text, statements=tuple(f"char:{c.id}" for c in (*colour[:6], *counts[:6]))),)
    if not asked:
        return ()
    character = kb.character(asked[0])
    text = wording.observer(character.label, str(round(100 * character.error)), _scopes(turn, [character.id]))
    return (Block("lead", text, statements=(f"char:{character.id}",)),)


def _rate(characters: list[Character]) -> str:
    return str(round(100 * sum(c.error for c in characters) / len(characters)))


def _scopes(turn: Turn, characters: list[str]) -> str:
    """What statements of some characters depend on, in words."""
    kb, wanted = turn.kb, set(characters)
    rows = [s for t in kb.ids("statement") for s in kb.statements(t) if s.character in wanted]
    told = [
        ("age", any(s.stage for s in rows)),
        ("sex", any(s.sex for s in rows)),
        ("season", any(s.breeding or s.season for s in rows)),
        ("place", any(s.regions for s in rows)),
    ]
    return join([word for word, true in told if true])


def _term(turn: Turn, term: str, position: int) -> Block:
    found = turn.kb.find("term", term)
    assert found is not None
    return Block("point" if position else "lead", say.capital(found.plain), statements=(f"term:{term}",))


def _notes(turn: Turn) -> list[Block]:
    """Cautions, practices and notes of the base whose words the line uses most."""
    from assistant.dialogue.recall import recall

    fish = subjects(turn, carried=False)
    name = speak.fish(turn.kb, fish[0]) if len(fish) == 1 and turn.kb.find("taxon", fish[0]) else ""
    return [
        Block("point" if i else "lead", info.titled(name, text) if name and not i else text, statements=(short,))
        for i, (text, short) in enumerate(recall(turn.kb, turn.reading))
    ]


def _last(turn: Turn) -> Answer:
    kb, last = turn.kb, turn.held.last
    if last is None:
        about = subjects(turn) or tuple(i for m in turn.reading.of("likeness") for i in m.ids[:1])
        name = speak.fish(kb, about[0]) if len(about) == 1 and kb.find("taxon", about[0]) else ""
        return Answer("why", (Block("lead", wording.why_nothing(name), claim=False),), about)
    rows: dict[str, Block] = {}
    for block in last.blocks:
        for short in _of_each(turn, block):
            record = kb.record_at(short)
            if isinstance(record, Statement):
                rows.setdefault(short, Block("point", row_words(turn, record), statements=(short,)))
            elif text := _record_words(turn, record):
                rows.setdefault(short, Block("point", text, statements=(short,)))
    if not rows:
        return Answer("why", (Block("lead", wording.WHY_UNKNOWN, claim=False),), last.taxa)
    lead = wording.AS_SURE_AS_SOURCES if "how-sure" in turn.cues else wording.RESTS_ON
    crosses = [t for t in last.taxa if kb.find("taxon", t) is not None and kb.taxon(t).is_hybrid]
    proof = (
        [
            Block(
                "doubt", wording.hybrid_doubt(), statements=speak.short_ids(s.id for s in kb.statements(crosses[0])[:2])
            )
        ]
        if crosses
        else []
    )
    return Answer(
        "why",
        (Block("lead", lead, claim=False), *list(rows.values())[:MOST], *(p for p in proof if p.statements)),
        last.taxa,
    )


def _of_each(turn: Turn, block: Block) -> tuple[str, ...]:
    """The statements of a block that are cited: the first two, of a comparison the first on each of its fishes."""
    kb, last = turn.kb, turn.held.last
    if last is None or last.intent != "contrast" or len(last.taxa) < 2:
        return block.statements[:2]
    told = [(s, r.taxon) for s in block.statements if isinstance(r := kb.record_at(s), Statement)]
    fishes = species_of(kb, last.taxa)[:MOST_BESIDE]
    first = (next((s for s, whose in told if whose in kb.lineage(t)), "") for t in fishes)
    return tuple(s for s in first if s) or block.statements[:2]


MOST_BESIDE = 3
"""Fishes of a comparison of which a statement each is cited."""


def _record_words(turn: Turn, record: object) -> str:
    """A caution, practice, size line or range as a ground, with its source."""
    kb = turn.kb
    source = next(iter(getattr(record, "source", ())), "")
    cited, basis = (
        speak.short_cite(kb, source) if source else "",
        wording.BASIS_WORDS.get(getattr(record, "basis", ""), ""),
    )
    if isinstance(record, Caution | Practice):
        return wording.rests_on(record.text.rstrip("."), cited, basis)
    if isinstance(record, SizeRecord):
        told = wording.size_line(record.label or record.kind.replace("-", " "), record.a, record.b, record.c)
        return wording.rests_on(f"{speak.fish(kb, record.taxon)}, {told}", cited, basis)
    if isinstance(record, Range):
        place = kb.place(record.place)
        where = place.label if place is not None else record.place
        return wording.rests_on(f"{speak.fish(kb, record.taxon)}, {where}: {record.status}", cited, basis)
    return ""


def both(turn: Turn, row: ContrastRow) -> str:
    """What each fish of a row of a contrast shows."""
    kb = turn.kb
    character = kb.character(row.character)
    return "; ".join(
        say.each(speak.fish(kb, t.taxon), speak.told_words(kb, t, character, turn.held.units)) for t in row.told if t
    )


def row_words(turn: Turn, s: Statement) -> str:
    """A statement in words, with its first source and its basis."""
    cited = join([speak.short_cite(turn.kb, k, s.page) for k in s.source[:1]])
    return wording.says(
        speak.fish(turn.kb, s.taxon),
        speak.statement_words(turn.kb, s, turn.held.units),
        cited,
        wording.BASIS_WORDS.get(s.basis, s.basis),
    )
