"""Where a fish lives, what it eats, when and how it breeds: statements on its life (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue import phrases as core
from assistant.dialogue import phrases_care as care
from assistant.dialogue import phrases_info as say
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects, characters, states
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import list_fishes
from assistant.dialogue.life_asked import asks_spawning, living, seasons
from assistant.dialogue.speak import fish as label
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import advice, cut, ids, shown_note, trusted, which_fish
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Practice, Statement
from assistant.reasoning.advice import ABOUT_KIN, GENERAL, Found, weigh
from assistant.reasoning.evidence import about, below, number_range
from assistant.reasoning.place_prior import expand_places
from assistant.text import join
from assistant.units import celsius_to_fahrenheit

USES = ("life",)
USUAL = ("habitat", "diet", "spawning-season", "spawning-temperature", "activity")
"""What is told when nothing narrower is asked."""
TOGETHER = (
    ("spawning-season", "spawning-temperature"),
    ("nest-form", "nest-habit"),
    ("life-history", "spawning-season"),
)
"""Sides of life that are told together."""
SEASON, GROUND, ACTIVITY = "spawning-season", "spawning-ground", "activity"
BREEDING = frozenset({SEASON, GROUND, "spawning-temperature", "nest-form", "nest-habit"})
BY_SIDE = (("when", "spawning-season"), ("where", "habitat"), ("waters", "habitat"))
PRACTICE, CAUTION = "practice", "caution"
TOPICS = ("pond", "predators", "depth", "cover")
"""Practices that answer questions on life: stunted ponds, what eats it, how deep it stays."""
ALL_YEAR, AUTUMN, FALL = "all year", "autumn", "fall"
TEMPERATURE, RISK, AGE = "temperature", "conservation-status", "max-age"
ALSO_TOLD = 2
EXPLICIT = ("salinity-tolerance", "air-breathing", "max-age", "spawning-temperature")
"""Sides so plainly asked for that their lack is said even where another one answers."""
RUNNING = frozenset({"run", "runs", "running"})
ASKS_MORE = frozenset({"asks-how", "asks-what", "asks-when", "asks-where", "why"})
"""Question words that a yes or a no does not answer."""
WITHOUT = ("none", "absent")
ASKS_WHICH = frozenset({"list", "which-of", "asks-what", "asks-who", "asks-any", "fish-word"})
"""Cues of a line that asks for fishes rather than about one."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """What the base says of the side of life asked about, else of the main ones."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    asked = _eater(turn) or asked
    taxa = species_of(kb, asked)
    if not taxa and turn.cues & ASKS_WHICH and (living(turn) or (asks_spawning(turn) and seasons(turn))):
        return list_fishes.handle(turn)
    if not taxa:
        return which_fish("habitat", say.WHICH_FISH), held
    wanted = _wanted(turn)
    practices = weigh(kb, PRACTICE, turn.reading.words, taxa)
    blocks = _practice(turn, practices, taxa) + [
        b for i, t in enumerate(_few(kb, taxa)) for b in _one(turn, t, wanted, len(taxa) > 1, answers=not i)
    ]
    blocks = _heat(turn, taxa, wanted) + _merged(kb, blocks, taxa, asked) + _nests(practices)
    if "depth-of" in aspects(kb, turn.reading) and not any(
        s.startswith("practice:") for b in blocks for s in b.statements
    ):
        name, season = label(kb, taxa[0]), turn.reading.season
        said = care.depth_not_held(name, season) if season else care.nowhere_said(name, care.DEPTH)
        blocks.insert(0, Block("point", said, claim=False))
    if "egg-number" in aspects(kb, turn.reading):
        blocks.insert(0, Block("point", care.nowhere_said(label(kb, taxa[0]), care.EGGS), claim=False))
    blocks = cut(blocks, "more" in turn.cues, 6)
    asked_back = _north(turn)
    if asked_back:
        blocks.append(Block("next", asked_back.question, claim=False))
    first, *rest = [*blocks, *remarks]
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("habitat", (head, *rest), taxa=told_taxa(turn, asked), asked=asked_back), held


def _eater(turn: Turn) -> tuple[str, ...]:
    """The fish spoken of before, in "do they eat the redbreast?", where the one named is the prey."""
    text = turn.reading.text.lower()
    eats = _EATS.search(text)
    named = turn.reading.of("taxon", "hybrid", "group")
    prey = eats is not None and any(m.start >= eats.end() and not text[eats.end() : m.start].strip() for m in named)
    return turn.held.taxa if prey else ()


_EATS = re.compile(
    r"\b(?:they|it|he|she|these|those)\b[\w\s']{0,16}?\b(?:eat|eats|eating|prey on|feed on|hunt)"
    r"(?: (?:up|the|any|all|my|our|small|young|baby))*\b")


def _merged(
    kb: KnowledgeBase, blocks: Sequence[Block], taxa: Sequence[str], asked: Sequence[str]
) -> list[Block]:
    """What is told of several kinds by the same statements is told once, of their group."""
    out: dict[tuple[str, ...] | str, Block] = {}
    for b in blocks:
        known = out.get(b.statements or b.text)
        if known is None:
            out[b.statements or b.text] = b
        elif len(taxa) > 1:
            name = next((label(kb, t) for t in taxa if f" {label(kb, t)}" in known.text), "")
            text = known.text.replace(f"the {name}", kinds_name(kb, asked[0])) if name else known.text
            out[b.statements or b.text] = Block(
                known.kind, text, statements=known.statements, claim=known.claim
            )
    return list(out.values())


def _few(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    return tuple(taxa) if len(taxa) <= 4 else tuple(sorted(taxa, key=lambda t: (-len(kb.ranges(t)), t))[:4])


def _wanted(turn: Turn) -> tuple[str, ...]:
    """The characters asked about: by their words, by their states, by cue, or carried from the last answer."""
    kb, reading = turn.kb, turn.reading
    named = [c for c in characters(kb, reading, USES) if c != RISK or RISK in reading.words]
    if not named:
        named = [c.id for c in kb.characters if c.use in USES and states(kb, reading, c.id)]
    if not named:
        named = [c for side, c in BY_SIDE if side in aspects(kb, reading) | turn.cues]
    if not named and turn.held.intent == "habitat" and turn.held.last is not None:
        named = _last(turn)
    sides = aspects(kb, reading)
    if "age" in sides:
        named = [AGE]
    if "temperature" in sides and set(named) & BREEDING:
        named = [TOGETHER[0][1], *named]
    said = sides | turn.cues
    if "asks-where" in said and set(named) & BREEDING:
        named = [GROUND, *(c for c in named if c != SEASON)]
    elif said & {"when", "asks-when"} and set(named) & BREEDING:
        named = [SEASON, *named]
    elif "asks-where" in said and named == [ACTIVITY]:
        named = [BY_SIDE[1][1], ACTIVITY]
    if states(kb, reading, ACTIVITY):
        named = [ACTIVITY, *named]
    if said & {"when", "asks-when"} and RUNNING & set(reading.words):
        named = [SEASON, *named]
    out = dict.fromkeys(named)
    for a, b in TOGETHER:
        if a in out:
            out.setdefault(b)
    return tuple(out)


def _last(turn: Turn) -> list[str]:
    """The sides of life that the last answer told of, where it was about one."""
    assert turn.held.last is not None
    found = [
        s.split(".")[1]
        for b in turn.held.last.blocks[:1]
        for s in b.statements
        if s.startswith("st:") and s.count(".") > 1
    ]
    return list(dict.fromkeys(c for c in found if turn.kb.find("character", c) is not None))


def _practice(turn: Turn, practices: Sequence[Found], taxa: Sequence[str]) -> list[Block]:
    text = " ".join(turn.reading.words)
    found = [
        f
        for f in practices
        if f.met > 0
        and f.fit >= ABOUT_KIN
        and f.record.topic in TOPICS
        and any(w in text for w in f.record.words)
    ]
    if "depth-of" not in aspects(turn.kb, turn.reading):
        season = turn.reading.season if "asks-where" in turn.cues else ""
        found = [f for f in found if (f.record.topic in ("pond", "predators") and f.met >= 2)
                 or (f.record.topic == "depth" and season and _fits_season(f, season))]
    elif turn.reading.season:
        found = [f for f in found if f.record.topic != "depth" or _fits_season(f, turn.reading.season)]
    name = label(turn.kb, taxa[0]) if len(taxa) == 1 else ""
    return [advice(PRACTICE, f.record, "point", say.titled(name, f.record.text) if name else "") for f in found[:2]]


def _fits_season(found: Found, season: str) -> bool:
    """True for a depth of the season told, or of no season in particular."""
    record = found.record
    told = record.season if isinstance(record, Practice) else ""
    names = {season, FALL} if season == AUTUMN else {season}
    return not names.isdisjoint(record.words) or told in ("", ALL_YEAR)


def _heat(turn: Turn, taxa: Sequence[str], wanted: Sequence[str]) -> list[Block]:
    """A water temperature told with a fish, and no question on spawning: what warm water does to released fish."""
    if not any(m.kind == TEMPERATURE for m in turn.reading.measures) or "spawning-temperature" in wanted:
        return []
    found = [f for f in weigh(turn.kb, CAUTION, turn.reading.words, taxa) if f.record.topic == "heat"]
    fitting = sorted((f for f in found if f.fit >= GENERAL), key=lambda f: -f.fit)
    return [advice(CAUTION, f.record, "point") for f in fitting[:1]]


def _nests(practices: Sequence[Found]) -> list[Block]:
    """Beds and nests spoken of: the word for the males that guard them."""
    ethics = [f for f in practices if f.record.topic == "ethics" and f.met > 0 and f.fit >= ABOUT_KIN]
    return [advice(PRACTICE, f.record, "caution") for f in ethics[:1]]


def _one(turn: Turn, taxon: str, wanted: Sequence[str], many: bool, answers: bool = True) -> list[Block]:
    """What is told of one fish: the sides asked for, what is missing said and something held told in its place.

    ``answers``: a yes or no comes first where one is asked for.
    """
    kb = turn.kb
    name = label(kb, taxon)
    held = [c for c in wanted or USUAL if kb.find("character", c) is not None and about(kb, taxon, c)[0]]
    if not held and (parents := kb.taxon(taxon).parents):
        own = Block("point", care.of_parents(name), statements=(f"taxon:{taxon}",))
        return [own, *(b for p in parents for b in _one(turn, p, wanted, True)[:ALSO_TOLD])]
    out = [_told(turn, taxon, c, first=not i or many, answers=answers) for i, c in enumerate(held)]
    missing = [
        c
        for c in wanted[:1]
        if c not in held and (not held or c in EXPLICIT) and kb.find("character", c) is not None
    ]
    if not missing or (many and out):
        return out or [Block("point", care.nowhere_said(name, care.HABITAT_ASK), claim=False)]
    gap = Block("point", care.nowhere_said(name, _heading(kb, missing[0])), claim=False)
    rest = (
        [c for c in USUAL if c not in wanted and about(kb, taxon, c)[0]][:ALSO_TOLD]
        if not (out or many)
        else []
    )
    return [gap, *out, *(_told(turn, taxon, c, first=not i) for i, c in enumerate(rest))]


def _heading(kb: KnowledgeBase, character: str) -> str:
    return care.ASPECT.get(character, kb.character(character).label).lower()


def _told(turn: Turn, taxon: str, character: str, first: bool, answers: bool = True) -> Block:
    kb = turn.kb
    found, whose = about(kb, taxon, character)
    chosen = _here(turn, found)
    told = _text(kb, character, chosen)
    if whose:
        told = care.inherited(told, kinds_name(kb, whose))
    heading = care.ASPECT.get(character, kb.character(character).label)
    answer = _yes_no(turn, character, chosen) if answers else ""
    name = label(kb, taxon)
    if answer and first:
        text = care.life_yes(answer, name, heading.lower(), told)
    else:
        text = care.life_lead(name, heading.lower(), told) if first else core.entry(heading, told)
    return Block(
        "point",
        trusted(text, "memory" if all(s.basis == "memory" for s in chosen) else ""),
        statements=ids(chosen),
    )


def _here(turn: Turn, found: tuple[Statement, ...]) -> tuple[Statement, ...]:
    """Of statements on a side, those of the place held, else all; the read ones where there are some."""
    wanted = expand_places(turn.kb, turn.held.places)
    near = tuple(s for s in found if s.regions and wanted & set(s.regions))
    pool = near or found
    read = tuple(s for s in pool if s.basis != "memory")
    return read or pool


def _text(kb: KnowledgeBase, character: str, found: Sequence[Statement]) -> str:
    kind = kb.character(character).kind
    if kind == TEMPERATURE or kind in ("length", "count", "ratio"):
        ranges = [r for s in found if (r := number_range(s)) is not None]
        low, high = min(r[0] for r in ranges), max(r[3] for r in ranges)
        if kind == TEMPERATURE:
            return care.degrees(
                *(f"{x:.0f}" for x in (low, high, celsius_to_fahrenheit(low), celsius_to_fahrenheit(high)))
            )
        number = f"{low:g}" if low == high else f"{low:g} to {high:g}"
        return care.years(number) if character == AGE else number
    told: dict[str, None] = {}
    for s in found:
        value = join([kb.state(x).label for x in s.states], "and") if s.states else s.text
        where = join([p.label for r in s.regions if (p := kb.place(r)) is not None])
        note = shown_note(s.note)
        inside = "; ".join(x for x in (note, where) if x)
        told.setdefault(f"{value} ({inside})" if inside else value)
    return "; ".join(list(told)[:4])


def _yes_no(turn: Turn, character: str, found: Sequence[Statement]) -> str:
    """Yes or no where a state of the character is asked about."""
    kb = turn.kb
    if not turn.cues & {"asks-do", "asks-can"} or turn.cues & ASKS_MORE:
        return ""
    if found and all(s.text.startswith(WITHOUT) for s in found):
        return core.NO
    stated = {leaf for s in found for x in s.states for leaf in below(kb, x)}
    if not stated:
        return ""
    without = {s.id for s in kb.states(character) if s.id.endswith(WITHOUT)}
    if without:
        return core.NO if stated <= without else core.YES
    named = states(kb, turn.reading, character)
    asked = {leaf for s in named for leaf in below(kb, s)}
    if not asked or len(named) > 1:
        return ""
    return core.YES if asked & stated else core.MOSTLY_NOT


def _north(turn: Turn) -> Asked | None:
    """ "Up north" alone does not say where."""
    if {"north", "south"} & set(turn.reading.words) and not turn.reading.places and not turn.held.places:
        return Asked("place", say.WHERE)
    return None
