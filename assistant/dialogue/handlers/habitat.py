"""Where a fish lives, what it eats, when and how it breeds: statements on its life (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.asked_about import asked_about, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects, characters, states, without_fish
from assistant.dialogue.beside.compared import set_against
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers import list_fishes
from assistant.dialogue.handlers.range import overall
from assistant.dialogue.in_season import asks_of_season, marks_told, season_unheld, sides_last, words_of
from assistant.dialogue.life_answered import all_cold, states_by_words, warm_asked, whether
from assistant.dialogue.life_asked import asks_food, asks_spawning, living, seasons
from assistant.dialogue.life_order import by_age, by_spawning, shared_waters
from assistant.dialogue.preying import eaten_by, eaters, food_told
from assistant.dialogue.sea_life import LIFE_HISTORY, asks_sea, sea_answer, with_life
from assistant.dialogue.subjects import groups, named, species_of
from assistant.dialogue.telling import advice, cut, ids, shown_note, trusted, which_fish
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care, core
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import self as own
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Practice, Statement
from assistant.reasoning.advice import ABOUT_KIN, GENERAL, Found, weigh
from assistant.reasoning.evidence import about, number_range
from assistant.reasoning.living import living_in
from assistant.reasoning.place_prior import expand_places
from assistant.text import join, word_set
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
SAME_WATER, FED, WATER = "same-water", "diet", "habitat"
SEASON, GROUND, ACTIVITY = "spawning-season", "spawning-ground", "activity"
BREEDING = frozenset({SEASON, GROUND, "spawning-temperature", "nest-form", "nest-habit"})
BY_SIDE = (("when", "spawning-season"), ("where", "habitat"), ("waters", "habitat"))
PRACTICE, CAUTION = "practice", "caution"
TOPICS = ("pond", "predators", "depth", "cover")
"""Practices that answer questions on life: stunted ponds, what eats it, how deep it stays."""
ALL_YEAR, AUTUMN, FALL = "all year", "autumn", "fall"
AT_RISK = "at-risk"
TEMPERATURE, RISK, AGE = "temperature", "conservation-status", "max-age"
ALSO_TOLD = 2
BREATHING, AIR = "breathing", "air-breathing"
EXPLICIT = ("salinity-tolerance", AIR, "max-age", "spawning-temperature")
"""Sides so plainly asked for that their lack is said even where another one answers."""
RUNNING = frozenset({"run", "runs", "running"})
WINTER, SEASONAL = "winter", ("depth", "cover")
_GROUND_ASKED = re.compile(
    r"\b(?:on|in|over) (?:what|which)\b(?! (?:month|season|time|week|year|part|state|day|date|temp))|"
    r"\bwhat (?:on|over)\b|\bwh(?:at|ich)\b.* bottom\b|"
    r"\b(?:near|by|along|close to) (?:the )?(?:shore|bank|edge)|\bin (?:the )?shallows?\b|\bhow shallow\b")
_GROUND_ALONE = re.compile(
    r"\W*(?:(?:and|so|ok|but|then)\W+)*(?:on |in |over )?(?:what|which)"
    r"(?: (?:kind|sort|type)s? of)?(?: (?:bottom|ground|substrate|surface|stuff)s?| on| over)?\W*")
_CONDITION = re.compile(r"\w\W+when (?:it|its|it's|the (?:water|weather|ice|sun|temp)|ice|water)\b")
"""A "when" that tells of a condition rather than asks for a time ("do catfish go deep when it gets cold")."""
SEXES = frozenset({"male", "males", "female", "females", "sex", "sexes", "hens", "bulls"})
MOST_KINDS = 8
FEW_KINDS = 2
HOW_HOT, LIMIT = "how-hot", "warm-limit"
OF_WATERS = "waters"
"""The cue of a line that names a kind of water ("creek fish or lake"): its "fish" is no food."""
MEASURING = word_set("big wide large deep size across diameter width depth small")
NESTING = ("nest-habit", "nest-form", GROUND)
MATURES = "matur"
"""How a note on age begins to tell when a fish first breeds."""
CARE, YOUNG = "parental-care", "juvenile"
UNHELD = (("egg-number", care.EGGS), ("hatching", care.HATCHING), ("maturity", care.MATURE))
"""Sides of life that the base holds nowhere."""
LANDS = word_set("found live lives living occur range from")
WHICH_KINDS = frozenset({"which-of", "which-group", "list", "asks-who", "asks-any"})
ASKS_WHICH = frozenset({"list", "which-of", "asks-what", "asks-who", "asks-any", "fish-word"})
"""Cues of a line that asks for fishes rather than about one."""


def handle(turn: Turn) -> tuple[Answer, Held]:
    """What the base says of the side of life asked about, else of the main ones."""
    kb, held = turn.kb, turn.held
    asked, remarks = asked_about(turn)
    asked = _eating(turn) or asked
    taxa = species_of(kb, asked)
    taxa = living_in(kb, taxa, turn.reading.places) or taxa if len(taxa) > FEW_KINDS else taxa
    if not taxa and turn.cues & ASKS_WHICH and (living(turn) or (asks_spawning(turn) and seasons(turn))):
        return list_fishes.handle(turn)
    if _asks_which_kinds(turn):
        return list_fishes.handle(turn)
    if not taxa:
        return which_fish("habitat", say.WHICH_FISH), held
    wanted = _wanted(turn)
    if (ordered := _ordered(turn, taxa, asked, wanted)) is not None:
        return ordered, held
    practices = weigh(kb, PRACTICE, turn.reading.words, taxa)
    if eaten_by(turn.reading):
        return Answer("habitat", _eaters(turn, practices, taxa, asked), taxa=told_taxa(turn, asked)), held
    practices_told = _practice(turn, practices, taxa)
    blocks = practices_told + [
        b for t in _few(kb, with_life(turn, taxa)) for b in _one(turn, t, wanted, len(taxa) > 1, answers=len(taxa) == 1)
    ]
    blocks = _of_kinds(turn, taxa, wanted) + shared_waters(turn, taxa) + blocks
    blocks = _heat(turn, taxa, wanted) + _merged(kb, blocks, taxa, asked) + _nests(practices)
    measured = _nest_measure(turn, taxa)
    blocks = measured + blocks
    if not measured and "depth-of" in aspects(kb, turn.reading) and not any(
        s.startswith("practice:") for b in blocks for s in b.statements
    ):
        name, season = label(kb, taxa[0]) if len(taxa) == 1 else kinds_name(kb, asked[0]), turn.reading.season
        said = care.depth_not_held(name, season) if season else care.nowhere_said(name, care.DEPTH)
        blocks.insert(0, Block("point", said, claim=False))
    blocks = _unheld(turn, taxa) or blocks
    if not practices_told and "asks-where" in turn.cues and _AFTER_SPAWNING.search(" ".join(turn.reading.words)):
        blocks = [Block("point", care.where_after(kinds_name(kb, asked[0], 1)), claim=False), *blocks]
    name = label(kb, taxa[0]) if len(taxa) == 1 else kinds_name(kb, asked[0])
    unheld = season_unheld(turn, practices_told, name, len(taxa) > 1)
    blocks = unheld + blocks
    moon = _of_moon(turn)
    blocks = _of_young(turn) + blocks + _lands(turn, taxa, wanted)
    blocks = [*blocks[:1], *moon, *blocks[1:]] if "when-ask" in turn.cues else moon + blocks
    blocks = cut(blocks, "more" in turn.cues, 6)
    asked_back = _north(turn)
    if asked_back:
        blocks.append(Block("next", asked_back.question, claim=False))
    first, *rest = [*blocks, *remarks]
    head = Block("lead", first.text, statements=first.statements, claim=first.claim)
    return Answer("habitat", (head, *rest), taxa=told_taxa(turn, asked), asked=asked_back), held


def _eating(turn: Turn) -> tuple[str, ...]:
    """The fish asked about where others are its food: the one before the verb, or the one spoken of before."""
    if not food_told(turn.reading):
        return ()
    before = eaters(turn.reading)
    return tuple(dict.fromkeys(m.ids[0] for m in before if len(m.ids) == 1)) if before else turn.held.taxa


def _asks_which_kinds(turn: Turn) -> bool:
    """True for "which sunfishes like muddy water": the kinds of a group are asked for by how they live."""
    text = turn.reading.text.lower()
    which = any(text[: m.start].split()[-1:] in (["which"], ["what"]) for m in groups(turn.reading))
    if not groups(turn.reading) or named(turn) or not (which or turn.cues & WHICH_KINDS):
        return False
    return any(states_by_words(turn, c.id) for c in turn.kb.characters if c.use in USES and c.is_stated)


def _ordered(turn: Turn, taxa: Sequence[str], asked: tuple[str, ...], wanted: Sequence[str]) -> Answer | None:
    """Which of several kinds lives longest or spawns first, where that is asked."""
    against = set_against(turn) if turn.cues & {"lives-longer", "which-of", "asks-do", "versus"} else ()
    pool = against if len(against) > len(taxa) else taxa
    where = "asks-where" in turn.cues and not turn.cues & {"lives-longer", "which-of", "versus"}
    if len(pool) < 2 or where:
        return None
    blocks = by_age(turn, pool, asked) if AGE in wanted[:1] else []
    if not blocks and set(wanted) & BREEDING:
        blocks = by_spawning(turn, pool)
    if not blocks:
        return None
    head = blocks[0]._replace(kind="lead")
    return Answer("habitat", (head, *blocks[1:]), taxa=tuple(pool)[:MOST_KINDS] if against else told_taxa(turn, asked))


def _nest_measure(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """How wide or deep a nest is: what holds a figure among what is told of the nests, or that it is not held."""
    words, kb = set(turn.reading.words), turn.kb
    if not {"nest", "nests"} & words or not MEASURING & words or len(taxa) > FEW_KINDS:
        return []
    out = []
    for t in taxa:
        told = [s for c in NESTING if kb.find("character", c) for s in about(kb, t, c)[0]
                if any(x.isdigit() for x in shown_note(s.note) + s.text)]
        if told:
            text = "; ".join(dict.fromkeys(x for s in told for x in (s.text, shown_note(s.note)) if x))
            out.append(Block("point", care.life_lead(label(kb, t), care.NESTS, text), statements=ids(told)))
        else:
            out.append(Block("point", care.nowhere_said(label(kb, t), care.NEST_SIZE), claim=False))
    return [] if any(b.claim for b in out) is False and "deep" in words else out


def _unheld(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """What the base holds nowhere (eggs laid, days to hatch, age at maturity) with the care of the young beside it."""
    kb, sides = turn.kb, aspects(turn.kb, turn.reading)
    asked = next((what for side, what in UNHELD if side in sides), "")
    if HOW_HOT in turn.cues and "cold" in turn.reading.words:
        asked = care.COLD
    if not asked:
        return []
    told = [s for s in about(kb, taxa[0], AGE)[0] if asked == care.MATURE and MATURES in s.note.lower()]
    if told:
        note = "; ".join(dict.fromkeys(shown_note(s.note) for s in told))
        return [Block("point", care.life_lead(label(kb, taxa[0]), care.MATURE, note), statements=ids(told))]
    cared = asked in (care.EGGS, care.HATCHING) and kb.find("character", CARE) is not None
    kept = about(kb, taxa[0], CARE)[0] if cared else ()
    out = [Block("point", care.nowhere_said(label(kb, taxa[0]), asked), claim=False)]
    return out + ([_told(turn, taxa[0], CARE, first=True, answers=False)] if kept else [])


def _of_moon(turn: Turn) -> list[Block]:
    """That nothing is held on the moon, where the line goes on to it."""
    return [Block("point", own.MOON, claim=False)] if "moon" in turn.cues else []


def _of_young(turn: Turn) -> list[Block]:
    """That what follows speaks of grown fish, where the line asks of young ones."""
    return [Block("doubt", care.OF_GROWN, claim=False)] if turn.reading.stage == YOUNG else []


def _lands(turn: Turn, taxa: Sequence[str], wanted: Sequence[str]) -> list[Block]:
    """Where a fish is native and introduced, beside the kinds of water, in "where are bluegill found"."""
    if tuple(wanted) != (BY_SIDE[1][1],) or "asks-where" not in turn.cues or len(taxa) != 1 or marks_told(turn):
        return []
    if turn.reading.stage == YOUNG or not LANDS & set(turn.reading.words):
        return []
    return overall(turn.kb, taxa[0], full=False)[:2]


def _of_kinds(turn: Turn, taxa: Sequence[str], wanted: Sequence[str]) -> list[Block]:
    """Of which kinds of a group a thing asked about is told ("do bullheads live in muddy water")."""
    if len(taxa) < 2 or SAME_WATER in turn.cues:
        return []
    kb = turn.kb
    met: list[str] = []
    statements: list[Statement] = []
    for c in wanted[:2]:
        for t in taxa:
            found, _ = about(kb, t, c)
            if _yes_or_no(turn, c, found, _text(kb, c, found) if found else "") == core.YES:
                met.append(t)
                statements += found
    kinds = list(dict.fromkeys(met))
    if not kinds:
        cold = [(t, about(kb, t, WATER)[0]) for t in taxa] if WATER in wanted[:1] and warm_asked(turn) else []
        told = [(t, found) for t, found in cold if found]
        if told and all(all_cold(turn, found) for _, found in told):
            text = care.hardly(say.names_with([label(kb, t) for t, _ in told[:MOST_KINDS]]))
            return [Block("point", text, statements=ids([s for _, found in told for s in found][:MOST_KINDS]))]
        return []
    text = care.yes_of_some(say.names_with([label(kb, t) for t in kinds[:MOST_KINDS]]), len(taxa) - len(kinds))
    return [Block("point", text, statements=ids(statements[:MOST_KINDS]))]


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
            of_kinds = re.sub(rf"\bthe {re.escape(name)}\b", kinds_name(kb, asked[0]), known.text)
            text = of_kinds if name else known.text
            out[b.statements or b.text] = Block(
                known.kind, text, statements=known.statements, claim=known.claim
            )
    return list(out.values())


def _few(kb: KnowledgeBase, taxa: Sequence[str]) -> tuple[str, ...]:
    return tuple(taxa) if len(taxa) <= 4 else tuple(sorted(taxa, key=lambda t: (-len(kb.ranges(t)), t))[:4])


def _wanted(turn: Turn) -> tuple[str, ...]:
    """The characters asked about: by their words, by their states, by cue, or carried from the last answer."""
    kb, reading = turn.kb, turn.reading
    named = [c for c in characters(kb, reading, USES) if c != RISK]
    if not named:
        again = turn.held.intent == "habitat" and not reading.sex and not SEXES & set(reading.words)
        told = reading._replace(words=tuple(w for w in without_fish(reading) if not (again and w == "same")))
        named = [c.id for c in kb.characters if c.use in USES and states(kb, told, c.id)]
        named = [c for c in named if c != FED or asks_food(turn)] or ([] if OF_WATERS in turn.cues else named)
    if not named:
        conditional = _CONDITION.search(reading.text.lower()) is not None
        asking = (aspects(kb, reading) | turn.cues) - ({"when"} if conditional else set())
        named = [c for side, c in BY_SIDE if side in asking]
    if not named and turn.held.intent == "habitat" and turn.held.last is not None:
        named = sides_last(turn)
    sides = aspects(kb, reading)
    if BREATHING in sides:
        return (AIR,)
    if AT_RISK in turn.cues and kb.find("character", RISK) is not None:
        return (RISK,)
    if asks_sea(turn):
        return (LIFE_HISTORY,)
    if SAME_WATER in turn.cues:
        named = [BY_SIDE[1][1]]
    if "age" in sides or ("live" in turn.cues and "how long" in reading.text.lower()):
        named = [AGE]
    if HOW_HOT in turn.cues and "cold" not in reading.words and not set(named) & BREEDING:
        named = [LIMIT]
    before = sides_last(turn) if turn.held.intent == "habitat" and turn.held.last is not None else []
    if "temperature" in sides and (set(named) & BREEDING or (set(before) & BREEDING and not turn.reading.taxa())):
        named = [TOGETHER[0][1], *(c for c in named if c in BREEDING)]
    if set(named) & BREEDING and _GROUND_ASKED.search(turn.reading.text.lower()):
        named = [GROUND] if _GROUND_ALONE.fullmatch(turn.reading.text.lower()) else [*named, GROUND]
    said = sides | turn.cues
    if "asks-where" in said and set(named) & BREEDING:
        named = [GROUND, *(c for c in named if c != SEASON)]
    elif said & {"when", "asks-when"} and set(named) & BREEDING:
        named = [SEASON, *named]
    elif said & {"when", "asks-when"} and named == [FED]:
        named = [ACTIVITY, FED]
    elif "asks-where" in said and named == [ACTIVITY]:
        named = [BY_SIDE[1][1], ACTIVITY]
    if states(kb, reading, ACTIVITY):
        named = [ACTIVITY, *named]
    if warm_asked(turn) and named == [WATER]:
        named = [WATER, LIMIT]
    if said & {"when", "asks-when"} and RUNNING & set(reading.words):
        named = [SEASON, *named]
    out = dict.fromkeys(named)
    for a, b in TOGETHER:
        if a in out:
            out.setdefault(b)
    return tuple(out)


_AFTER_SPAWNING = re.compile(r"\b(?:after|done)\b.{0,12}\bspawn|\bpost ?spawn|\bspawn\w* (?:is |are )?(?:over|done)\b")


def _practice(turn: Turn, practices: Sequence[Found], taxa: Sequence[str]) -> list[Block]:
    text = " ".join(turn.reading.words)
    met = [f for f in practices if f.met > 0 and f.fit >= ABOUT_KIN and f.record.topic in TOPICS]
    found = [f for f in met if any(w in text for w in f.record.words)]
    later = [f for f in met if any(_AFTER_SPAWNING.search(w) for w in f.record.words)]
    season = marks_told(turn)
    if later and "asks-where" in turn.cues and _AFTER_SPAWNING.search(text):
        found = later
    elif season and asks_of_season(turn):
        found = [f for f in met if f.record.topic in SEASONAL and season & words_of(f.record)] or found
    elif "depth-of" in aspects(turn.kb, turn.reading):
        found = [f for f in found if season & words_of(f.record)] if season else found
        found = [f for f in found if season or getattr(f.record, "season", "") != WINTER] or found
    else:
        found = [f for f in found if f.record.topic in ("pond", "predators") and f.met >= 2]
    if (told := turn.reading.season) and found != later:
        found = [f for f in found if f.record.topic != "depth" or _fits_season(f, told)]
    name = label(turn.kb, taxa[0]) if len(taxa) == 1 else ""
    return [advice(PRACTICE, f.record, "point", say.titled(name, f.record.text) if name else "") for f in found[:2]]


def _eaters(turn: Turn, practices: Sequence[Found], taxa: Sequence[str], asked: Sequence[str]) -> tuple[Block, ...]:
    """What feeds on the fishes named, where it is told of their kind; else that it is not held."""
    name = label(turn.kb, taxa[0]) if len(taxa) == 1 else kinds_name(turn.kb, asked[0], 1)
    told = next((f for f in practices if f.record.topic == EATERS and f.fit >= ABOUT_KIN), None)
    if told is None:
        return (Block("lead", care.eaters_unheld(name), claim=False),)
    return (advice(PRACTICE, told.record, "lead", say.titled(name, told.record.text)),)


EATERS = "predators"


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
        if c not in held and (not held or c in EXPLICIT or asks_sea(turn)) and kb.find("character", c) is not None
    ]
    if not missing or (many and out):
        return out or [Block("point", care.nowhere_said(name, care.HABITAT_ASK), claim=False)]
    gap = Block("point", care.nowhere_said(name, _heading(kb, missing[0])), claim=False)
    if missing[0] == RISK:
        return [gap, *out, Block("point", kb.character(RISK).how, claim=False)]
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
    answer = _yes_or_no(turn, character, chosen, told) if answers else ""
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


def _yes_or_no(turn: Turn, character: str, found: Sequence[Statement], told: str) -> str:
    """What answers a line that asks for yes or no of a side of life; of the sea by the life stated."""
    return (sea_answer(turn, found) if character == LIFE_HISTORY else "") or whether(turn, character, found, told)


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


def _north(turn: Turn) -> Asked | None:
    """ "Up north" alone does not say where."""
    if {"north", "south"} & set(turn.reading.words) and not turn.reading.places and not turn.held.places:
        return Asked("place", say.WHERE)
    return None
