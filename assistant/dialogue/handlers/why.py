"""The grounds of what was said: evidence, how sure, why not another fish, what would change the verdict (layer 4)."""

from __future__ import annotations

from assistant.dialogue import naming, speak
from assistant.dialogue import phrases as say
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asking import ask_block, next_asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of
from assistant.dialogue.parts import characters_asked
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.turn import Turn
from assistant.model.records import Statement
from assistant.reasoning.contrast import LOOKS, ContrastRow, contrast, contrast_row
from assistant.reasoning.identify import identify
from assistant.reasoning.observed import Candidate, Identification
from assistant.text import join

MOST = 5
VERDICT_TERM = "verdict-"


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Answer from the evidence held where a fish is being named, else from the statements of the last answer."""
    held, cues = turn.held, turn.cues
    if held.seen or held.hints and held.intent != "contrast":
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
        from assistant.reasoning.identify import statements_for

        ids = [s for s in statements_for(kb, top.taxon, seen.observation) if s in top.supports]
        if not ids:
            continue
        rows = [r for i in ids[:2] if (r := kb.record_at(f"st:{i}")) is not None]
        of = "; ".join(_row_words(turn, r) for r in rows)
        points.append(Block("point", say.why_point(speak.seen_words(kb, seen.observation), of), statements=speak.short_ids(ids)))
    told = join(naming.grounds(kb, held, top)[:3])
    ids = speak.short_ids(top.supports) or speak.short_ids(naming._any(kb, top.taxon))
    lead = Block("lead", say.why_lead(speak.fish(kb, top.taxon), told) if told else say.lead_not_enough("", ""), statements=ids)
    best = strongest(turn, found)
    extra = [Block("point", say.strongest(best[0]), statements=best[1])] if best and len(points) > 1 else []
    return Answer("why", (lead, *extra, *points[:MOST], *naming.hybrid_doubts(kb, held, found)), _taxa(found), found.candidates, found.verdict)


def strongest(turn: Turn, found: Identification) -> tuple[str, tuple[str, ...]] | None:
    """The observation that counts most for the leading candidate against its rivals."""
    from assistant.reasoning.identify import observation_likelihood, statements_for

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
        ratio = float(chance[table.index[top]]) / max(1e-6, sum(float(chance[table.index[r]]) for r in rivals) / len(rivals))
        if best is None or ratio > best[0]:
            best = (ratio, speak.seen_words(kb, seen), speak.short_ids(statements_for(kb, top, seen)))
    return (best[1], best[2]) if best else None


def _row_words(turn: Turn, s: Statement) -> str:
    cited = join([speak.source_words(turn.kb, k, s.page) for k in s.source[:1]])
    return say.says(speak.fish(turn.kb, s.taxon), speak.statement_words(turn.kb, s, turn.held.units), cited, say.BASIS_WORDS.get(s.basis, s.basis))


def _taxa(found: Identification) -> tuple[str, ...]:
    return tuple(c.taxon for c in naming.shown(found))[:1 if found.verdict in ("sure", "likely") else 3]


def _sure(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    top = found.candidates[0]
    rest = [c for c in found.candidates[1:4] if c.probability >= 0.01]
    ids = speak.short_ids((*top.supports, *top.opposes)) or speak.short_ids(naming._any(kb, top.taxon))
    blocks = [Block("lead", say.sure_lead(say.SURE_WORDS[found.verdict], speak.fish(kb, top.taxon), say.percent(top.probability)), statements=ids)]
    if rest:
        names = join([say.with_share(speak.fish(kb, c.taxon), say.percent(c.probability)) for c in rest])
        blocks.append(Block("point", say.sure_rest(names), statements=ids))
    term = kb.find("term", VERDICT_TERM + found.verdict) or kb.find("term", found.verdict)
    if term is not None:
        blocks.append(Block("point", say.threshold(found.verdict, term.plain), statements=(f"term:{term.id}",)))
    blocks += naming.hybrid_doubts(kb, held, found)
    asked = next_asked(turn, held, found.posterior) if found.verdict != "sure" else None
    if asked is not None:
        blocks.append(ask_block(turn, asked))
    return Answer("why", tuple(blocks), _taxa(found), found.candidates, found.verdict, asked=asked)


def _alternatives(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    rest = [c for c in found.candidates[1:4]]
    names = join([say.with_share(speak.fish(kb, c.taxon), say.percent(c.probability)) for c in rest], "or")
    ids = speak.short_ids(s for c in rest for s in (*c.supports, *c.opposes)) or speak.short_ids(naming._any(kb, rest[0].taxon) if rest else [])
    blocks = [Block("lead", say.alternatives(names), statements=ids)]
    blocks += [b for c in rest[:2] for b in _against(turn, c)]
    return Answer("why", tuple(blocks), tuple(c.taxon for c in found.candidates[:4]), found.candidates, found.verdict)


def _against(turn: Turn, candidate: Candidate) -> list[Block]:
    kb = turn.kb
    against = naming.opposing(kb, turn.held, candidate)[:3]
    if not against:
        return []
    text = say.why_not_lead(speak.fish(kb, candidate.taxon), say.you_saw(join(against)))
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
            blocks.append(Block("point", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements)))
    share = say.percent(found.posterior.get(other, 0.0))
    ids = tuple(dict.fromkeys(s for b in blocks for s in b.statements))
    seen = join([speak.seen_words(kb, s.observation) for s in held.seen if any(s.observation.character == n for n in characters)][:3])
    if blocks:
        first = Block("lead", say.why_not_lead(speak.fish(kb, other), say.you_saw(seen)), statements=ids)
    else:
        first = Block("lead", say.why_not_open(speak.fish(kb, other), share), statements=speak.short_ids(naming._any(kb, other)))
    rows = [r for r in contrast(kb, (lead.taxon, other), LOOKS["hand"]).separating if r.character not in characters][:3]
    for row in rows:
        text = say.contrast_point(speak.heading(kb.character(row.character)), _both(turn, row))
        blocks.append(Block("point", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements)))
    taxa = (lead.taxon, other)
    return Answer("why", (first, *blocks), taxa, found.candidates, found.verdict)


def _both(turn: Turn, row: ContrastRow) -> str:
    kb = turn.kb
    character = kb.character(row.character)
    return "; ".join(say.each(speak.fish(kb, t.taxon), speak.told_words(kb, t, character, turn.held.units)) for t in row.told if t)


def _change(turn: Turn, found: Identification) -> Answer:
    """The features that would point to the runner-up instead."""
    kb = turn.kb
    lead = found.candidates[0]
    rivals = [c for c in found.candidates[1:4]]
    blocks = [Block("lead", say.change_lead(speak.fish(kb, lead.taxon)), statements=speak.short_ids(lead.supports) or speak.short_ids(naming._any(kb, lead.taxon)))]
    seen = {s.observation.character for s in turn.held.seen}
    used: set[str] = set()
    for rival in rivals:
        rows = contrast(kb, (lead.taxon, rival.taxon), LOOKS["hand"]).separating
        row = next((r for r in rows if r.told[1] and r.character not in seen | used), None)
        if row is None or row.told[1] is None:
            continue
        used.add(row.character)
        told = row.told[1]
        text = say.change_mind(kb.character(row.character).label, speak.told_words(kb, told, kb.character(row.character), turn.held.units), speak.fish(kb, rival.taxon))
        blocks.append(Block("point", text, statements=speak.short_ids(told.statements)))
    return Answer("why", tuple(blocks), _taxa(found), found.candidates, found.verdict)


def _general(turn: Turn) -> Answer:
    """No fish is being named: the feature asked about, else the statements behind the last answer."""
    kb = turn.kb
    fish = subjects(turn, carried=False) or turn.held.taxa
    asked = characters_asked(kb, turn.reading)
    kinds = tuple(sorted(species_of(kb, fish), key=lambda t: (-len(kb.ranges(t)), t)))[:6]
    if asked and kinds:
        for name in asked:
            row = contrast_row(kb, kb.character(name), kinds) if len(kinds) > 1 else None
            if row is not None:
                text = say.because_differs(kb.character(name).label, speak.fish(kb, fish[0]), _both(turn, row))
                return Answer("why", (Block("lead", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements)),), fish)
    terms = [t for m in turn.reading.of("term") for t in m.ids if kb.find("term", t) is not None]
    if terms:
        return Answer("why", tuple(_term(turn, t, i) for i, t in enumerate(terms[:2])), fish)
    if notes := _notes(turn, fish):
        return Answer("why", tuple(notes), fish)
    return _last(turn)


def _term(turn: Turn, term: str, position: int) -> Block:
    found = turn.kb.find("term", term)
    assert found is not None
    return Block("point" if position else "lead", say.capital(found.plain), statements=(f"term:{term}",))


def _notes(turn: Turn, fish: tuple[str, ...]) -> list[Block]:
    """Cautions, practices and notes of the base whose words the line uses most."""
    from assistant.dialogue.recall import recall

    return [Block("lead" if i == 0 else "point", text, statements=(short,)) for i, (text, short) in enumerate(recall(turn.kb, turn.reading, fish))]


def _last(turn: Turn) -> Answer:
    kb, last = turn.kb, turn.held.last
    if last is None:
        return Answer("why", (Block("lead", say.WHY_NOTHING, claim=False),))
    rows = []
    for block in last.blocks:
        for short in block.statements[:2]:
            record = kb.record_at(short)
            if isinstance(record, Statement):
                rows.append(Block("point", _row_words(turn, record), statements=(short,)))
    if not rows:
        return Answer("why", (Block("lead", say.WHY_UNKNOWN, claim=False),), last.taxa)
    first = Block("lead", say.RESTS_ON, claim=False)
    return Answer("why", (first, *list(dict.fromkeys(rows))[:MOST]), last.taxa)
