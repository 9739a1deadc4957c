"""The grounds of what was said: evidence, how sure, why not another fish, what would change the verdict (layer 4)."""

from __future__ import annotations

from assistant.dialogue import naming
from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asking import ask_block, next_asked
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.grounds import COLOUR, both, general, row_words, trust
from assistant.dialogue.lessons.hybrids_in_keys import spoils
from assistant.dialogue.living_beside import life_beside
from assistant.dialogue.observing import evidence_of
from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.parts import characters_asked
from assistant.dialogue.rules.grounds import rule_grounds
from assistant.dialogue.siding import SIDING, siding
from assistant.dialogue.subjects import named, species_of, subjects
from assistant.dialogue.telling import advice
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import naming as wording
from assistant.dialogue.wording import self as own
from assistant.dialogue.wording import speak
from assistant.reasoning.advice import ABOUT_KIN, weigh
from assistant.reasoning.contrast import LOOKS, contrast, contrast_row
from assistant.reasoning.identify import identify
from assistant.reasoning.observed import NAMING, Candidate, Identification, statements_for
from assistant.text import join

MOST = 5
PRACTICE = "practice"
REASONS = (("stunting", "pond", "stunted"), ("bright-season", "dress", "gaudy"), ("fades", "paling", "pale"),
           ("grunting", "grunting", "grunt"), ("lumped-in", "lumping", "lump"))
"""What is asked the reason of, by its cue, with the topic and a word of the advice that tells it."""
SPREAD = 0.015
"""Probability from which what is left for all other fishes is told of."""
OF_ADVICE = ("handling", "tackle")
"""Intents whose answers have grounds of their own, whatever was seen of the fish before."""
WHAT_FOR = "what-for"
"""The cue of a line that asks what a part of the fish is for."""
VERDICT_TERM = "verdict-"


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Answer from the evidence held where a fish is being named, else from the statements of the last answer."""
    held, cues = turn.held, turn.cues
    for cue, topic, word in REASONS:
        if cue in cues and (told := _told_by_advice(turn, topic, word)) is not None:
            return told, held
    if "hybrid-word" in cues and cues & {"key", "key-word"}:
        return spoils(turn), held
    naming_one = bool(cues & {"disputed", "who-wins"}) and (held.seen or held.intent == "identify")
    if cues >= SIDING and not naming_one and (sided := siding(turn)) is not None:
        return sided, held
    if held.last is not None and held.last.intent == "rules" and (rules := rule_grounds(turn.kb, held.last)):
        return Answer("why", rules, held.last.taxa), held
    if "self-asked" in cues:
        return Answer("why", (Block("lead", own.ASKED, claim=False),), held.taxa, asked=held.asked), held
    if "self-trust" in cues and not held.seen and (held.last is None or "how-sure" not in cues):
        sources = turn.kb.all("source")
        read = sum(bool(s.what_read) or s.basis == "read" for s in sources)
        return Answer("why", (Block("lead", own.trust(read, len(sources)), claim=False),)), held
    asked = characters_asked(turn.kb, turn.reading) if WHAT_FOR in cues else ()
    if asked and held.taxa and (beside := life_beside(turn, held.taxa[:1], asked)):
        return Answer("why", tuple(beside), held.taxa), held
    if (held.seen or (held.hints and held.intent != "contrast")) and held.intent not in OF_ADVICE:
        found = identify(turn.kb, turn.table, evidence_of(held))
        other = _other(turn, found)
        if other:
            return _why_not(turn, found, other), held
        if COLOUR in aspects(turn.kb, turn.reading) and not turn.reading.seen:
            return Answer("why", trust(turn, ()), _taxa(found), found.candidates, found.verdict), held
        if "alternatives" in cues:
            return _alternatives(turn, found), held
        if "change-mind" in cues:
            return _change(turn, found), held
        if cues & {"how-sure"} and "why" not in cues:
            return _sure(turn, found), held
        if not named(turn) or set(named(turn)) & {c.taxon for c in found.candidates}:
            return _grounds(turn, found), held
    return general(turn), held


def _told_by_advice(turn: Turn, topic: str, word: str) -> Answer | None:
    """The reason as the advice of a topic tells it ("why are they all so small"), where it speaks of these kinds.

    Where none is named it is told of any.
    """
    asked = subjects(turn)
    taxa = species_of(turn.kb, asked)
    found = [f for f in weigh(turn.kb, PRACTICE, turn.reading.words, taxa) if f.record.topic == topic
             and (f.fit >= ABOUT_KIN or not taxa) and word in f.record.words]
    if not found:
        return None
    return Answer("why", (advice(PRACTICE, found[0].record, "lead"),), taxa=asked)


def _other(turn: Turn, found: Identification) -> str:
    """The fish that the line asks about instead of the leading one."""
    lead = found.candidates[0].taxon
    told = named(turn) or subjects(turn, carried=False)
    told = told or tuple(t for h in turn.reading.hints for t in sorted(h.taxa))
    kinds = [t for t in species_of(turn.kb, told) if t != lead] or _called_elsewhere(turn, lead)
    if not kinds or len(named(turn)) > 1:
        return ""
    return max(kinds, key=lambda t: (found.posterior.get(t, 0.0), t))


def _called_elsewhere(turn: Turn, lead: str) -> list[str]:
    """The fishes that go by a name by which the leading fish goes where it was caught ("why not a longear")."""
    if "why-not" not in turn.cues:
        return []
    words = (m.words for m in turn.reading.of("taxon", "likeness") if m.ids == (lead,))
    entries = (e for w in words for e in lexicon_of(turn.kb).spoken(w))
    return [e[1] for e in entries if e[0] == "taxon" and e[1] != lead and turn.kb.taxon(e[1]).is_species]


def _grounds(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    top = found.candidates[0]
    points = []
    for seen in held.seen:
        grounds = [s for s in statements_for(kb, top.taxon, seen.observation) if s in top.supports]
        if not grounds:
            continue
        rows = [r for i in grounds[:2] if (r := kb.record_at(f"st:{i}")) is not None]
        of = "; ".join(row_words(turn, r) for r in rows)
        points.append(
            Block(
                "point",
                wording.why_point(speak.seen_words(kb, seen.observation), of),
                statements=speak.short_ids(grounds),
            )
        )
    told = join(naming.grounds(kb, held, top)[:3])
    ids = speak.short_ids(top.supports) or speak.short_ids(naming.any_statement(kb, top.taxon))
    lead = Block(
        "lead",
        wording.why_lead(speak.fish(kb, top.taxon), told) if told else wording.lead_not_enough("", ""),
        statements=ids,
    )
    best = strongest(turn, found)
    extra = [Block("point", wording.strongest(best[0]), statements=best[1])] if best and len(points) > 1 else []
    return Answer(
        "why",
        (lead, *extra, *points[:MOST], *naming.hybrid_doubts(kb, found)),
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


def _taxa(found: Identification) -> tuple[str, ...]:
    return tuple(c.taxon for c in naming.shown(found))[: 1 if found.verdict in ("sure", "likely") else 3]


def _sure(turn: Turn, found: Identification) -> Answer:
    kb, held = turn.kb, turn.held
    top = found.candidates[0]
    rest = [c for c in found.candidates[1:4] if c.probability >= 0.01]
    ids = speak.short_ids((*top.supports, *top.opposes)) or speak.short_ids(naming.any_statement(kb, top.taxon))
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
        names = join([say.with_bracket(speak.fish(kb, c.taxon), wording.percent(c.probability)) for c in rest])
        left = 1.0 - sum(round(c.probability, 2) for c in (top, *rest))
        spread = wording.percent(left) if left >= SPREAD else ""
        blocks.append(Block("point", wording.sure_rest(names, spread), statements=ids))
    term = kb.find("term", VERDICT_TERM + found.verdict) or kb.find("term", found.verdict)
    if term is not None:
        blocks.append(Block("point", wording.threshold(found.verdict, term.plain), statements=(f"term:{term.id}",)))
    blocks += naming.hybrid_doubts(kb, found)
    asked = next_asked(turn, held, found.posterior) if found.verdict != "sure" else None
    if asked is not None:
        blocks.append(ask_block(turn, asked))
    return Answer("why", tuple(blocks), _taxa(found), found.candidates, found.verdict, asked=asked)


def _alternatives(turn: Turn, found: Identification) -> Answer:
    kb = turn.kb
    rest = list(found.candidates[1:4])
    names = join([say.with_bracket(speak.fish(kb, c.taxon), wording.percent(c.probability)) for c in rest], "or")
    ids = speak.short_ids(s for c in rest for s in (*c.supports, *c.opposes)) or speak.short_ids(
        naming.any_statement(kb, rest[0].taxon) if rest else []
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
            text = say.entry(speak.heading(kb.character(name)), both(turn, row))
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
            statements=speak.short_ids(naming.any_statement(kb, other)),
        )
    rows = [r for r in contrast(kb, (lead.taxon, other), LOOKS["hand"]).separating if r.character not in characters][:3]
    for row in rows:
        text = say.entry(speak.heading(kb.character(row.character)), both(turn, row))
        blocks.append(Block("point", text, statements=speak.short_ids(s for t in row.told if t for s in t.statements)))
    taxa = (lead.taxon, other)
    return Answer("why", (first, *blocks), taxa, found.candidates, found.verdict)


def _change(turn: Turn, found: Identification) -> Answer:
    """The features that would point to the runner-up instead."""
    kb = turn.kb
    lead = found.candidates[0]
    rivals = [t for h in turn.held.hints if h.kind in NAMING and h.seen for t in sorted(h.taxa) if t != lead.taxon]
    rivals = list(dict.fromkeys([*rivals, *(c.taxon for c in found.candidates[1:4])]))[:3]
    blocks = [
        Block(
            "lead",
            wording.change_lead(speak.fish(kb, lead.taxon)),
            statements=speak.short_ids(lead.supports) or speak.short_ids(naming.any_statement(kb, lead.taxon)),
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
    blocks += naming.hybrid_doubts(kb, found)
    return Answer("why", tuple(blocks), taxa, found.candidates, found.verdict)
