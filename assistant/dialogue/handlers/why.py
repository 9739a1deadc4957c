"""The grounds of what was said: evidence, how sure, why not another fish, what would change the verdict (layer 4)."""

from __future__ import annotations

from assistant.dialogue import naming, speak
from assistant.dialogue import phrases as say
from assistant.dialogue import phrases_naming as wording
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asking import ask_block, next_asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of
from assistant.dialogue.parts import characters_asked
from assistant.dialogue.rule_grounds import rule_grounds
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.turn import Turn
from assistant.model.records import Caution, Character, Practice, Range, SizeRecord, Statement
from assistant.reasoning.contrast import LOOKS, ContrastRow, contrast, contrast_row, tell
from assistant.reasoning.identify import identify
from assistant.reasoning.observed import Candidate, Identification, statements_for
from assistant.text import join, key, singular

MOST = 5
VERDICT_TERM = "verdict-"


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Answer from the evidence held where a fish is being named, else from the statements of the last answer."""
    held, cues = turn.held, turn.cues
    if held.last is not None and held.last.intent == "rules" and (rules := rule_grounds(turn.kb, held.last)):
        return Answer("why", rules, held.last.taxa), held
    if held.seen or (held.hints and held.intent != "contrast"):
        found = identify(turn.kb, turn.table, evidence_of(held))
        other = _other(turn, found)
        if other:
            return _why_not(turn, found, other), held
        if "alternatives" in cues:
            return _alternatives(turn, found), held
        if "change-mind" in cues:
            return _change(turn, found), held
        if cues & {"how-sure"} and "why" not in cues:
            return _sure(turn, found), held
        if not named(turn) or set(named(turn)) & {c.taxon for c in found.candidates}:
            return _grounds(turn, found), held
    return _general(turn), held


def _other(turn: Turn, found: Identification) -> str:
    """The fish that the line asks about instead of the leading one."""
    lead = found.candidates[0].taxon
    told = named(turn) or subjects(turn, carried=False)
    told = told or tuple(t for h in turn.reading.hints for t in sorted(h.taxa))
    kinds = [t for t in species_of(turn.kb, told) if t != lead]
    if not kinds or len(named(turn)) > 1:
        return ""
    return max(kinds, key=lambda t: (found.posterior.get(t, 0.0), t))


def _grounds(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    top = found.candidates[0]
    points = []
    for seen in held.seen:
        grounds = [s for s in statements_for(kb, top.taxon, seen.observation) if s in top.supports]
        if not grounds:
            continue
        rows = [r for i in grounds[:2] if (r := kb.record_at(f"st:{i}")) is not None]
        of = "; ".join(_row_words(turn, r) for r in rows)
        points.append(
            Block(
                "point",
                wording.why_point(speak.seen_words(kb, seen.observation), of),
                statements=speak.short_ids(grounds),
            )
        )
    told = join(naming.grounds(kb, held, top)[:3])
    ids = speak.short_ids(top.supports) or speak.short_ids(naming._any(kb, top.taxon))
    lead = Block(
        "lead",
        wording.why_lead(speak.fish(kb, top.taxon), told) if told else wording.lead_not_enough("", ""),
        statements=ids,
    )
    best = strongest(turn, found)
    extra = [Block("point", wording.strongest(best[0]), statements=best[1])] if best and len(points) > 1 else []
    return Answer(
        "why",
        (lead, *extra, *points[:MOST], *naming.hybrid_doubts(kb, held, found)),
        _taxa(found),
        found.candidates,
        found.verdict,
    )


def strongest(turn: Turn, found: Identification) -> tuple[str, tuple[str, ...]] | None:
    """The observation that counts most for the leading candidate against its rivals."""
    from assistant.reasoning.identify import observation_likelihood

    kb, table, held = turn.kb, turn.table, turn.held
    evidence = evidence_of(held)
    top, rivals = found.candidates[0].taxon, [c.taxon for c in found.candidates[1:4]]
    if top not in table.index or not rivals:
        return None
    best: tuple[float, str, tuple[str, ...]] | None = None
    for seen in evidence.observations:
        if seen.character not in table.spans:
            continue
        chance = observation_likelihood(kb, table, seen, evidence)
        ratio = float(chance[table.index[top]]) / max(
            1e-6, sum(float(chance[table.index[r]]) for r in rivals) / len(rivals)
        )
        if best is None or ratio > best[0]:
            best = (ratio, speak.seen_words(kb, seen), speak.short_ids(statements_for(kb, top, seen)))
    return (best[1], best[2]) if best else None


def _row_words(turn: Turn, s: Statement) -> str:
    cited = join([speak.short_cite(turn.kb, k, s.page) for k in s.source[:1]])
    return wording.says(
        speak.fish(turn.kb, s.taxon),
        speak.statement_words(turn.kb, s, turn.held.units),
        cited,
        wording.BASIS_WORDS.get(s.basis, s.basis),
    )


def _taxa(found: Identification) -> tuple[str, ...]:
    return tuple(c.taxon for c in naming.shown(found))[: 1 if found.verdict in ("sure", "likely") else 3]


def _sure(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    top = found.candidates[0]
    rest = [c for c in found.candidates[1:4] if c.probability >= 0.01]
    ids = speak.short_ids((*top.supports, *top.opposes)) or speak.short_ids(naming._any(kb, top.taxon))
    blocks = [
        Block(
            "lead",
            wording.sure_lead(
                wording.SURE_WORDS[found.verdict], speak.fish(kb, top.taxon), wording.percent(top.probability)
            ),
            statements=ids,
        )
    ]
    if rest:
        names = join([wording.with_share(speak.fish(kb, c.taxon), wording.percent(c.probability)) for c in rest])
        blocks.append(Block("point", wording.sure_rest(names), statements=ids))
    term = kb.find("term", VERDICT_TERM + found.verdict) or kb.find("term", found.verdict)
    if term is not None:
        blocks.append(Block("point", wording.threshold(found.verdict, term.plain), statements=(f"term:{term.id}",)))
    blocks += naming.hybrid_doubts(kb, held, found)
    asked = next_asked(turn, held, found.posterior) if found.verdict != "sure" else None
    if asked is not None:
        blocks.append(ask_block(turn, asked))
    return Answer("why", tuple(blocks), _taxa(found), found.candidates, found.verdict, asked=asked)


def _alternatives(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    rest = [c for c in found.candidates[1:4]]
    names = join([wording.with_share(speak.fish(kb, c.taxon), wording.percent(c.probability)) for c in rest], "or")
    ids = speak.short_ids(s for c in rest for s in (*c.supports, *c.opposes)) or speak.short_ids(
        naming._any(kb, rest[0].taxon) if rest else []
    )
    blocks = [Block("lead", wording.alternatives(names), statements=ids)]
    blocks += [b for c in rest[:2] for b in _against(turn, c)]
    return Answer("why", tuple(blocks), tuple(c.taxon for c in found.candidates[:4]), found.candidates, found.verdict)


def _against(turn: Turn, candidate: Candidate) -> list[Block]:
    kb = turn.kb
    against = naming.opposing(kb, turn.held, candidate)[:3]
    if not against:
        return []
    text = wording.why_not_lead(speak.fish(kb, candidate.taxon), wording.you_saw(join(against)))
    return [Block("point", text, statements=speak.short_ids(candidate.opposes))]


def _why_not(turn: Turn, found: Identification, other: str) -> Answer:
    """The marks that speak against another fish, and how it differs from the leading one."""
    kb, held = turn.kb, turn.held
    lead = found.candidates[0]
    blocks: list[Block] = []
    characters = [s.observation.character for s in held.seen]
    for name in characters:
        row = contrast_row(kb, kb.character(name), (lead.taxon, other))
        if row is not None and row.separation >= 0.25:
            text = say.contrast_point(speak.heading(kb.character(name)), _both(turn, row))
            blocks.append(
                Block("point", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements))
            )
    share = wording.percent(found.posterior.get(other, 0.0))
    ids = tuple(dict.fromkeys(s for b in blocks for s in b.statements))
    seen = join(
        [
            speak.seen_words(kb, s.observation)
            for s in held.seen
            if any(s.observation.character == n for n in characters)
        ][:3]
    )
    if blocks:
        first = Block("lead", wording.why_not_lead(speak.fish(kb, other), wording.you_saw(seen)), statements=ids)
    else:
        first = Block(
            "lead",
            wording.why_not_open(speak.fish(kb, other), share),
            statements=speak.short_ids(naming._any(kb, other)),
        )
    rows = [r for r in contrast(kb, (lead.taxon, other), LOOKS["hand"]).separating if r.character not in characters][:3]
    for row in rows:
        text = say.contrast_point(speak.heading(kb.character(row.character)), _both(turn, row))
        blocks.append(Block("point", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements)))
    taxa = (lead.taxon, other)
    return Answer("why", (first, *blocks), taxa, found.candidates, found.verdict)


def _both(turn: Turn, row: ContrastRow) -> str:
    kb = turn.kb
    character = kb.character(row.character)
    return "; ".join(
        say.each(speak.fish(kb, t.taxon), speak.told_words(kb, t, character, turn.held.units)) for t in row.told if t
    )


def _change(turn: Turn, found: Identification) -> Answer:
    """The features that would point to the runner-up instead."""
    kb = turn.kb
    lead = found.candidates[0]
    rivals = [t for h in turn.held.hints if h.kind == "like" and h.seen for t in sorted(h.taxa) if t != lead.taxon]
    rivals = list(dict.fromkeys([*rivals, *(c.taxon for c in found.candidates[1:4])]))[:3]
    blocks = [
        Block(
            "lead",
            wording.change_lead(speak.fish(kb, lead.taxon)),
            statements=speak.short_ids(lead.supports) or speak.short_ids(naming._any(kb, lead.taxon)),
        )
    ]
    seen = {s.observation.character for s in turn.held.seen}
    used: set[str] = set()
    for rival in rivals:
        rows = contrast(kb, (lead.taxon, rival), LOOKS["hand"]).separating
        row = next((r for r in rows if r.told[1] and r.character not in seen | used), None)
        if row is None or row.told[1] is None:
            continue
        used.add(row.character)
        told = row.told[1]
        text = wording.change_mind(
            kb.character(row.character).label,
            speak.told_words(kb, told, kb.character(row.character), turn.held.units),
            speak.fish(kb, rival),
        )
        blocks.append(Block("point", text, statements=speak.short_ids(told.statements)))
    taxa = (lead.taxon, *rivals)
    return Answer("why", tuple(blocks), taxa, found.candidates, found.verdict)


def _general(turn: Turn) -> Answer:
    """No fish is being named: the feature asked about, a word, another handler's matter, else what the last answer rests on."""
    kb = turn.kb
    fish = subjects(turn, carried=False) or turn.held.taxa
    if "hybrid" in turn.cues:
        from dataclasses import replace

        from assistant.dialogue.handlers import handler_of

        return replace(handler_of("hybrids")(turn)[0], intent="why")
    asked = characters_asked(kb, turn.reading) or _of_term(turn)
    kinds = tuple(sorted(species_of(kb, fish), key=lambda t: (-len(kb.ranges(t)), t)))[:6]
    if asked and kinds and (found := _feature(turn, fish, kinds, asked)) is not None:
        return found
    if set(turn.reading.words) & (COLOURS | DOUBTING) and (trust := _trust(turn, asked)):
        return Answer("why", trust, fish)
    if terms := _terms(turn):
        return Answer("why", tuple(_term(turn, t, i) for i, t in enumerate(terms[:2])), fish)
    if notes := _notes(turn, fish):
        return Answer("why", tuple(notes), fish)
    return _last(turn)


def _terms(turn: Turn) -> list[str]:
    """The glossary terms of the line, mentioned or spoken of by another word."""
    kb = turn.kb
    told = [t for m in turn.reading.of("term") for t in m.ids]
    told += [thing for w in turn.reading.words[:60] for kind, thing, _ in kb.spoken(singular(w)) if kind == "term"]
    return [t for t in dict.fromkeys(told) if kb.find("term", t) is not None]


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
        text = wording.because_differs(kb.character(best.character).label, speak.fish(kb, fish[0]), _both(turn, best))
        return Answer(
            "why",
            (Block("lead", text, statements=speak.short_ids(s for t in best.told if t for s in t.statements)),),
            fish,
        )
    blocks = [_term(turn, t, 0) for t in terms[:1]]
    told = [(name, t) for name in asked[:6] if (t := tell(kb, kb.character(name), kinds[0])) is not None]
    for name, t in told[:2]:
        character = kb.character(name)
        text = wording.in_common(
            character.label, speak.fish(kb, fish[0]), speak.told_words(kb, t, character, turn.held.units)
        )
        blocks.append(Block("point" if blocks else "lead", text, statements=speak.short_ids(t.statements)))
    return Answer("why", tuple(blocks), fish) if blocks else None


DOUBTING = frozenset({"trust", "reliable", "unreliable", "bad", "rely", "wrong", "mistake"})
COLOURS = frozenset({"colour", "color", "coloring", "colouring", "colors", "colours"})


def _trust(turn: Turn, asked: tuple[str, ...]) -> tuple[Block, ...]:
    """How far a feature (or colour at large) can be trusted: observer error and what it changes with, from the base."""
    kb = turn.kb
    if set(turn.reading.words) & COLOURS:
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


def _notes(turn: Turn, fish: tuple[str, ...]) -> list[Block]:
    """Cautions, practices and notes of the base whose words the line uses most."""
    from assistant.dialogue.recall import recall

    return [
        Block("lead" if i == 0 else "point", text, statements=(short,))
        for i, (text, short) in enumerate(recall(turn.kb, turn.reading, fish))
    ]


def _last(turn: Turn) -> Answer:
    kb, last = turn.kb, turn.held.last
    if last is None:
        return Answer("why", (Block("lead", wording.WHY_NOTHING, claim=False),))
    rows: dict[str, Block] = {}
    for block in last.blocks:
        for short in block.statements[:2]:
            record = kb.record_at(short)
            if isinstance(record, Statement):
                rows.setdefault(short, Block("point", _row_words(turn, record), statements=(short,)))
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
