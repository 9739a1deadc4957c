"""Duties besides season, bag and length: bait, gear, licences, moving fish, measuring, culling and so on (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.rules import words
from assistant.dialogue.rules.context import Context
from assistant.dialogue.rules.elsewhere import how_there
from assistant.dialogue.rules.hours import hours_answer
from assistant.dialogue.rules.telling import standing, statements
from assistant.dialogue.subjects import MOST, subjects
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.dialogue.wording import rules as say
from assistant.dialogue.wording import surveys as tell
from assistant.dialogue.wording.speak import fish, short_ids
from assistant.reasoning.evidence import about
from assistant.reasoning.outlook import duties_at
from assistant.reasoning.precedence import closeness
from assistant.text import join, unique

TOPICS = (
    "rule-dumping",
    "rule-sharing",
    "rule-penalty",
    "rule-moving",
    "rule-selling",
    "rule-culling",
    "rule-measuring",
    "rule-packing",
    "rule-bait",
    "rule-gear",
    "rule-unsure",
    "rule-border",
    "rule-licence",
    "rule-hours",
    "rule-possession",
)
"""Topics in order of precedence."""
DUTY = {
    "rule-moving": ("transport",),
    "rule-bait": ("bait", "gear"),
    "rule-gear": ("gear",),
    "rule-licence": ("licence",),
    "rule-border": ("border", "licence"),
}
"""Which duties of the rule book speak of a topic."""
HOURS = "rule-hours"
BAITS = frozenset({"rule-bait", "rule-gear"})
"""Topics in which a fish that is named is bait, not the fish spoken of."""
BAIT = frozenset({"bait", "baits", "live", "livebait"})
PRICE = frozenset({"much", "cost", "costs", "price", "prices", "pay", "expensive", "cheap"})
LETTING_GO = frozenset({"release", "releasing", "released"})
LEGAL = "legal-caution"
MOST_BAITS = 2
CAUTIONS = {
    "rule-dumping": ("bait-disposal",),
    "rule-moving": ("never-move-live", "stock-permit"),
    "rule-bait": ("bait-disposal", "sunfish-as-bait"),
}
PRACTICE = {"rule-measuring": "measuring"}
PLAIN = {
    "rule-penalty": tell.PENALTY,
    "rule-sharing": tell.SHARED,
    "rule-selling": tell.SELL,
    "rule-packing": tell.PACK,
    "rule-possession": tell.POSSESSION,
    "rule-border": tell.BORDER,
    "rule-unsure": tell.UNSURE,
}


def topic_answer(turn: Turn, found: Context, topic: str) -> Answer:
    """The duties that hold at the place on the day, what is good practice, and how to check."""
    rules: list[str] = []
    blocks: list[Block] = []
    if topic == "rule-moving":
        blocks.append(Block("lead", tell.MOVE_NO, claim=False))
    if topic == "rule-dumping":
        blocks.append(Block("lead", tell.DUMP_NO, claim=False))
    if topic == HOURS:
        told, rules = hours_answer(turn, found)
        blocks += told
    if topic == "rule-licence" and PRICE & set(turn.reading.words):
        blocks.append(Block("lead", tell.LICENCE_PRICE, claim=False))
    if topic in DUTY:
        duty, rules = duties_told(turn, found, DUTY[topic])
        blocks += duty
    blocks += _advice(turn, found, topic)
    if topic == "rule-bait" or (topic in BAITS and BAIT & set(turn.reading.words)):
        blocks += _as_bait(turn)
    if rules or found.places:
        day = found.day or turn.clock
        sets = [
            s
            for p in found.places
            for x in found.book.positions(p)
            for s in found.book.rule_sets_of(x.jurisdiction)
            if s.valid_from <= day.isoformat() <= s.valid_through
        ]
        as_of, year = (sets[0].as_of, (sets[0].valid_from, sets[0].valid_through)) if sets else ("", ("", ""))
        blocks += standing(found.book, rules, as_of, year, "", turn.held.noted)
    else:
        blocks += [*_place_note(turn, found), Block("rule-note", tell.REAL_NOTE, claim=False)]
    head, *rest = blocks
    lead = Block("lead", head.text, statements=head.statements, claim=head.claim)
    return Answer(
        "rules", (lead, *rest), taxa=subjects(turn, topic not in BAITS)[:MOST], rules=statements(unique(rules))
    )


def _as_bait(turn: Turn) -> list[Block]:
    """The fishes named as bait, each with what the base holds of the law on it, to be asked after by name."""
    kb, out = turn.kb, []
    for taxon in subjects(turn, carried=False)[:MOST_BAITS]:
        held = about(kb, taxon, LEGAL)[0][:1] if kb.find("taxon", taxon) is not None else ()
        told = join([kb.state(x).clause or kb.state(x).label for s in held for x in s.states])
        out.append(Block("point", tell.as_bait(fish(kb, taxon), told), statements=short_ids(s.id for s in held),
                         claim=bool(held)))
    return out


def duties_told(turn: Turn, found: Context, topics: Sequence[str]) -> tuple[list[Block], list[str]]:
    """The duties at the place as one block, or that none is held."""
    name = topics[0]
    place = words.place_words(turn.kb, found.places[0]) if found.places else ""
    held = duties_at(found.places[0], found.day or turn.clock, found.book) if found.places else ()
    spoken = () if {"bait", "gear"} & set(topics) else subjects(turn)
    texts, rules = [], []
    for duty, rule in held:
        record = turn.kb.find("obligation", duty)
        if record is not None and record.topic in topics and _concerns(turn, found, rule, spoken):
            text = say.obligation(record.text, say.rule(words.rule_tag(found.book, rule)))
            own = () if spoken else found.book.rules[rule].taxa
            texts.append(care.on_fish(join([fish(turn.kb, t) for t in own], "or"), text) if own else text)
            rules.append(rule)
    if texts:
        return [Block("point", tell.duty_lead(name, list(unique(texts))), statements=statements(rules))], rules
    silent = name not in tell.NO_DUTY or (name == "transport" and not place)
    return ([] if silent else [Block("point", tell.no_duty(name, place), claim=False)]), []


def _concerns(turn: Turn, found: Context, rule: str, spoken: Sequence[str]) -> bool:
    """True where a rule is for every fish, where no fish is spoken of, and where one of those spoken of is its own."""
    record = found.book.rules[rule]
    if not spoken or not (record.taxa or record.groups):
        return True
    return any(closeness(record, k, found.book) for t in spoken for k in turn.kb.members(t) or (t,))


def _advice(turn: Turn, found: Context, topic: str) -> list[Block]:
    """Good practice on the topic: cautions and practices of the base, else a plain word."""
    kb = turn.kb
    out = []
    for key in CAUTIONS.get(topic, ()):
        if (record := kb.find("caution", key)) is not None:
            out.append(Block("caution", record.text, statements=(f"caution:{key}",)))
    if topic in PRACTICE and (practice := kb.find("practice", PRACTICE[topic])) is not None:
        out.append(Block("point", practice.text, statements=(f"practice:{practice.id}",)))
        out.append(Block("point", tell.MEASURE_EXACT, claim=False))
    if topic == "rule-culling":
        out += _culling(found, turn)
    said = set(turn.reading.words)
    if topic == "rule-licence" and (LETTING_GO & said or {"let", "go"} <= said):
        out.append(Block("point", tell.LICENCE_RELEASE, claim=False))
    if topic in PLAIN:
        out.append(Block("point", PLAIN[topic], claim=False))
    return out


def _culling(found: Context, turn: Turn) -> list[Block]:
    general = Block("point", tell.CULL, claim=False)
    if not found.places:
        return [general]
    from assistant.reasoning.precedence import in_force, stands_at

    day = found.day or turn.clock
    here = [
        r
        for p in found.book.positions(found.places[0])
        for r in found.book.rules.values()
        if in_force(r, day) and stands_at(r, p) and r.culling
    ]
    if here:
        return [Block("point", tell.CULL_ALLOWED, statements=statements(tuple(unique(r.id for r in here))))]
    return [Block("point", tell.CULL_HERE, claim=False), general]


def _place_note(turn: Turn, found: Context) -> list[Block]:
    return [Block("point", how_there(turn.kb, found.real), claim=False)]
