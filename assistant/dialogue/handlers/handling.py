"""How to hold, unhook, release, keep, clean or eat a fish, and first aid: cautions, safety first (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from decimal import Decimal

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import asked_about, kinds_name, told_taxa
from assistant.dialogue.conversation import Held
from assistant.dialogue.eating import comes_first
from assistant.dialogue.subjects import species_of, subjects
from assistant.dialogue.survival import survival
from assistant.dialogue.telling import SHOWN, advice, cut, ids, plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.dialogue.wording.speak import fish as label
from assistant.dialogue.wounded import only_asked, pierced, sting_words
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Caution
from assistant.reasoning.advice import GENERAL, SOME_KIN, Found, Record, topics, weigh
from assistant.reasoning.evidence import about
from assistant.reasoning.verdict import Word
from assistant.text import join, word_set
from assistant.units import MM_PER_INCH

BASICS = ("holding", "unhooking", "release", "wet-hands")
"""Topics told of a fish when nothing narrower is asked."""
FIRST = 10.0
NEAR = 0.6
"""A second topic is answered as well when it is asked for at least so much as the first."""
BY_LAW = frozenset({"kill", "eat", "move-live", "bait", "keep-alive"})
BY_HAND = frozenset({"hold", "unhook", "touch", "clean", "move-live"})
LAW_CHARACTERS = ("legal-caution", "eating-caution")
PREFIX = "caution"
INCHES, _FIRST = "in", re.compile(r"\d+(?:\.\d+)?")
"""The unit of the caution on ice, and its first figure: the least that it gives."""
PRESSURE, DEEP_WATER, DEEP = "barotrauma", "deep-water", 7600
"""The word under which cautions on pressure are found, their topic, and the depth (mm, 25 ft) that calls for them."""
PRESSED = "pressure-eating"
"""The topic of eating a fish that the change of pressure has hurt."""
HEAT, WARM = ("heat", "wave", "warm", "water"), 18
"""The words under which cautions on warm water are found, and the temperature (degrees C) from which it is meant."""
URGENT, URGENT_HURT = "first-aid", 0.5
"""The topic of harm to people, and the share of the best score from which it is told alone to one who is hurt."""
ACTS = 2
"""So many things to do for a wound are told before what needs a doctor whatever was asked."""
HURT = frozenset({"hurt", "unwell", "ate-it"})
"""Cues of a line by which somebody may have come to harm."""
IN_THE_FISH = frozenset({"hook-deep", "hook-pulled", "flesh-marks"})
"""Cues of a hook or marks in the fish, for which no first aid is told unless somebody is hurt as well."""
SINGLE_WORD = 2.0
"""A topic asked for by less (no phrase of two words) does not lead away from what somebody who is hurt was told."""
ASKS = frozenset({"asks-how", "asks-can", "handling", "letting-go", "eat"})
"""Cues of a line that asks for a thing of its own after first aid."""
DECIDING = ("heat", "invasive", "unwanted")
"""Topics that say whether a fish should be fished for or released at all: they come before how it is done."""
RELEASE = "release"
DEEP_HOOK = "deep-hook"
"""The topic of a hook deep in a fish, beside which nobody is hurt unless it is told."""
RULE = "rule:"
MARKS = "parasites"
"""The topic of marks in skin and flesh, which a question about eating such a fish goes on with."""
UNWANTED = ("invasive", "unwanted")
"""Those of them that hold of some kinds whenever such a fish is handled."""
DISCLAIMER = "aid-disclaimer"
ADVISORY = "eat-advisory"
BETTER = word_set("better best tastier tastiest")
"""Words of a line that asks which of some fishes is the better meal."""
TODAY = word_set("tonight today tomorrow now yet weekend")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The cautions that the line asks for and that fit the fish, those that must come first at the head."""
    kb = turn.kb
    asked, remarks = asked_about(turn)
    taxa = species_of(kb, asked)
    if "will-live" in turn.cues and (lives := survival(turn, taxa)):
        return Answer("handling", tuple(lives), taxa=told_taxa(turn, asked)), turn.held
    deep = _from_the_deep(turn) or "pressure" in turn.cues
    told = (*((PRESSURE,) if deep else ()), *(HEAT if _in_warm_water(turn) else ()))
    words = (*_of_the_harm(turn), *told)
    found = weigh(kb, PREFIX, words, taxa)
    if stung := sting_words(turn, found):
        found = weigh(kb, PREFIX, (*words, *stung), taxa)
    found = _marks_told(turn, found)
    if IN_THE_FISH & turn.cues and not HURT & turn.cues and not pierced(turn):
        found = tuple(f for f in found if f.record.topic != URGENT)
    if only_asked(turn):
        found = tuple(f for f in found if f.record.topic != URGENT)
    wanted = _deciding(found, _wanted(turn, found, bool(taxa)), _from_the_deep(turn))
    chosen = _hurt_by(turn, found) or _chosen(found, wanted, bool(taxa))
    if not chosen:
        return plain("handling", care.NO_ADVICE), turn.held
    leading = _named_first(turn, _blocks(turn, chosen, taxa), chosen[0], asked)
    blocks = [*leading, *remarks, *_closing(turn, chosen, taxa)]
    if _too_thin(turn, chosen[0].record):
        blocks = [Block("lead", care.THIN_ICE, claim=False), *(b._replace(kind="caution") for b in blocks)]
    if "ice-safety" in turn.cues and _of_one_ice(turn):
        blocks = [Block("lead", care.NO_ICE_REPORT, claim=False), *(b._replace(kind="caution") for b in blocks)]
        return Answer("out-of-scope", tuple(blocks)), turn.held
    if chosen[0].record.topic != URGENT and (ruled := _goes_back_here(turn, taxa)):
        blocks = [*ruled, *(b._replace(kind="point") if b.kind == "lead" else b for b in blocks)]
    return Answer("handling", tuple(blocks), taxa=told_taxa(turn, asked)), turn.held


def _of_the_harm(turn: Turn) -> tuple[str, ...]:
    """The words that tell what is to be done: without bait, teeth like needles, and a hook that has been cut off."""
    words = _without_bait(turn.reading.words)
    if _TEETH & set(words):
        words = tuple(w for w in words if w not in _NEEDLES)
    return (RELEASE, *(w for w in words if w not in _CUT)) if SNIPPED in turn.cues else words


SNIPPED = "snipped"
"""The cue of a line that tells that the hook has been cut off."""
_TEETH, _NEEDLES = word_set("mouth teeth jaws"), word_set("needle needles")
_CUT = word_set("snipped cut clipped hook line snip")


def _without_bait(words: Sequence[str]) -> tuple[str, ...]:
    """The words without the worms that a fish was caught on, which are none in its flesh ("a gar on a worm")."""
    return tuple(
        w
        for i, w in enumerate(words)
        if w not in _WORMS or not _CAUGHT_ON & set(words[max(0, i - 2) : i]) or words[i - 1] in _WORMS
    )


_WORMS, _CAUGHT_ON = word_set("worm worms"), word_set("on bit ate took hit plastic rubber")


def _goes_back_here(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """The rule by which the one fish asked about goes back at the water that the line names, and how it does."""
    if not turn.reading.water or len(taxa) != 1:
        return []
    from assistant.dialogue.handlers import handler_of

    told, _ = handler_of("rules")(turn)
    if told.verdict != Word.RELEASE.value:
        return []
    return [b for b in told.blocks if any(s.startswith(RULE) for s in b.statements)]


def _named_first(turn: Turn, blocks: list[Block], first: Found, asked: Sequence[str]) -> list[Block]:
    """The blocks with the one fish asked about named in the first; first aid is told without a preface."""
    eaten = isinstance(first.record, Caution) and "eat" in first.record.acts
    if len(asked) > 1 and eaten and BETTER & set(turn.reading.words):
        return [blocks[0]._replace(text=f"{care.NONE_EATS_BETTER} {blocks[0].text}"), *blocks[1:]]
    if len(asked) != 1 or first.record.topic == URGENT:
        return blocks
    name = kinds_name(turn.kb, asked[0], 1)
    text = blocks[0].text
    if name.lower() in text.lower():
        return blocks
    return [blocks[0]._replace(text=care.on_fish(name, text)), *blocks[1:]]


def _from_the_deep(turn: Turn) -> bool:
    """True where a depth is told from which fish come up hurt."""
    return any(m.kind == "length" and not m.own and m.low >= DEEP for m in turn.reading.measures)


def _in_warm_water(turn: Turn) -> bool:
    """True where a water temperature is told at which released fish suffer."""
    return any(m.kind == "temperature" and m.low >= WARM for m in turn.reading.measures)


def _names_fish(turn: Turn) -> bool:
    return bool(subjects(turn, carried=False))


def _wanted(turn: Turn, found: Sequence[Found], known: bool) -> tuple[str, ...]:
    """The topics to tell of: those asked for, those of the last answer where the line only goes on, else the basics."""
    carried = _carried(turn)
    names = _names_fish(turn)
    hurt = bool(HURT & turn.cues)
    if pierced(turn) or ("wound-later" in turn.cues and (hurt or URGENT in carried)):
        return (URGENT,)
    if carried[:1] == (URGENT,) and not hurt and "what-about" in turn.cues and "fish" in turn.reading.words:
        return BASICS
    eaten = "eat" in turn.cues and not hurt and not {"animal", "medical"} & turn.cues
    if carried[:1] == (URGENT,) and not (names or eaten) and not any(s >= SINGLE_WORD for _, s in topics(found)):
        return (URGENT,)
    asked = _topics([f for f in found if f.record.topic != URGENT] if eaten else found, hurt)
    if eaten and ("pressure" in turn.cues or (DEEP_WATER in carried and not names)):
        return (PRESSED, *(t for t in asked if t not in (URGENT, DEEP_WATER)))
    if eaten and not names and MARKS in carried:
        return (*carried, *(t for t in asked if t not in carried))
    if "marks-worry" in turn.cues and MARKS in asked:
        return (MARKS, *(t for t in asked if t != MARKS))
    if asked or not names or (carried and "what-about" in turn.cues):
        return asked or carried or BASICS
    return BASICS if known else carried or BASICS


def _hurt_by(turn: Turn, found: Sequence[Found]) -> list[Found]:
    """The first aid told last, as far as it holds for the fish that the line only names, and what this fish can do.

    Nothing where no first aid was told, no fish is named or the line asks for a topic of its own.
    """
    told = _told(turn)
    asks = bool(ASKS & turn.cues) or any(score >= SINGLE_WORD for _, score in topics(found))
    if _carried(turn)[:1] != (URGENT,) or asks or not _names_fish(turn):
        return []
    holds = {f.record.id: f for f in found if f.record.topic == URGENT and f.fit > SOME_KIN}
    again = [holds[k] for k in told if k in holds and k != DISCLAIMER][: SHOWN - ACTS]
    own = [f for f in found if f.fit > GENERAL and isinstance(f.record, Caution) and set(f.record.acts) & BY_HAND]
    own.sort(key=lambda f: (not _leads(f), -_weight(f), f.record.id))
    return [*again, *own[:ACTS]] if again else []


def _deciding(found: Sequence[Found], wanted: tuple[str, ...], deep: bool) -> tuple[str, ...]:
    """The topics behind those that say whether a fish of these kinds should be caught or let go at all.

    Warm water must be told of, and that it came from the ``deep``; that a kind is unwanted always counts where it is
    handled or let go, and how a fish is let go is not told of such a kind.
    """
    if not set(wanted) & {*BASICS, *DECIDING}:
        return wanted
    wide = (*DECIDING, DEEP_WATER) if deep else DECIDING
    leading = [f for f in found if _leads(f) and f.fit > GENERAL and f.record.topic in wide]
    before = dict.fromkeys(f.record.topic for f in leading if f.met > 0 or f.record.topic in UNWANTED)
    barred = {RELEASE} if not before.keys().isdisjoint(UNWANTED) else set()
    return (*before, *(t for t in wanted if t not in before and t not in barred))


def _topics(found: Sequence[Found], hurt: bool) -> tuple[str, ...]:
    """The topics asked for: the best, and the next where it is asked for nearly as much; harm to people alone.

    ``hurt``: somebody is; else first aid comes only where nothing is asked for as much.
    """
    ranked = sorted(topics(found), key=lambda told: (-told[1], told[0] == URGENT))
    if not ranked:
        return ()
    first, score = ranked[0]
    if first == URGENT or (hurt and any(t == URGENT and s >= URGENT_HURT * score for t, s in ranked)):
        return (URGENT,)
    kept = [(t, s) for t, s in ranked[1:3] if not (t == URGENT and first == DEEP_HOOK)]
    return (first, *(t for t, s in kept if s >= NEAR * score))


def _told(turn: Turn) -> list[str]:
    """The cautions told in the last answer, if it was on handling."""
    if turn.held.intent != "handling" or turn.held.last is None:
        return []
    return [s.partition(":")[2] for b in turn.held.last.blocks for s in b.statements if s.startswith(f"{PREFIX}:")]


def _carried(turn: Turn) -> tuple[str, ...]:
    """The topics of the last answer, for a follow-up that names none."""
    records = [c for k in _told(turn) if (c := turn.kb.find(PREFIX, k)) is not None]
    return tuple(dict.fromkeys(c.topic for c in records))


def _marks_told(turn: Turn, found: Sequence[Found]) -> tuple[Found, ...]:
    """The cautions without those on other marks than the last answer told of, where the line tells of none itself."""
    told = set(_told(turn))
    if MARKS not in _carried(turn) or any(f.record.topic == MARKS and f.met > 0 for f in found):
        return tuple(found)
    return tuple(f for f in found if f.record.topic != MARKS or f.record.id in told)


def _chosen(found: Sequence[Found], wanted: Sequence[str], known: bool) -> list[Found]:
    """The cautions of the topics, in order: comes first and met, met, then the rest that fits the fish."""
    by_topic = {t: i for i, t in enumerate(wanted)}
    lowest = GENERAL if known else SOME_KIN
    pool = [
        f
        for f in found
        if f.record.topic in by_topic and f.record.words and (f.fit >= lowest or (f.fit == SOME_KIN and f.met > 0))
    ]
    if any(f.met > 0 and by_topic[f.record.topic] == 0 for f in pool):
        acts = _shared_acts([f for f in pool if f.met > 0])
        pool = [f for f in pool if f.met > 0 or (_leads(f) and (_of_these(f) or _urgent(f, acts)))]
    if PRESSED in by_topic:
        pool = [f for f in pool if f.met > 0 or f.record.topic == PRESSED]
    pool.sort(key=lambda f: (f.fit <= SOME_KIN, by_topic[f.record.topic], -_weight(f), f.record.id))
    return _act_first(pool)


def _act_first(pool: list[Found]) -> list[Found]:
    """The cautions with what a wound calls for first, and behind it when a doctor must see any such wound."""
    first = pool[0] if pool else None
    if first is None or first.record.topic != URGENT or first.met > 0:
        return pool
    acts = [f for f in pool if f.met > 0 and f.record.topic == URGENT][:ACTS]
    return [*acts, *(f for f in pool if f not in acts)]


def _shared_acts(found: Sequence[Found]) -> set[str]:
    """The acts that all the cautions met have in common."""
    acts = [set(f.record.acts) for f in found if isinstance(f.record, Caution)]
    return set.intersection(*acts) if acts else set()


def _of_these(found: Found) -> bool:
    """True for advice on these very fishes; what to do for harm of another kind is none."""
    return found.fit > GENERAL and found.record.topic != URGENT


def _urgent(found: Found, acts: set[str]) -> bool:
    """True for what must be said first of any wound of the kind met."""
    record = found.record
    return record.topic == URGENT and isinstance(record, Caution) and bool(acts & set(record.acts) - {URGENT})


def _weight(found: Found) -> float:
    """How early a caution is said: by how well it is met and fits; what must come first before all."""
    urgent = found.record.topic == URGENT or comes_first(found)
    first = (FIRST if urgent else 1.0) if _leads(found) else 0.0
    return found.met + 0.5 * found.fit + first


def _leads(found: Found) -> bool:
    return isinstance(found.record, Caution) and found.record.lead


def _blocks(turn: Turn, chosen: Sequence[Found], taxa: Sequence[str]) -> list[Block]:
    out: list[Block] = []
    for f in chosen:
        kind = "lead" if not out else "point"
        out.append(advice(PREFIX, f.record, kind, _worded(turn.kb, f, set(taxa))))
    return cut(out, "more" in turn.cues, SHOWN)


def _worded(kb: KnowledgeBase, found: Found, taxa: set[str]) -> str:
    """The text of a caution; one for some fishes only says for which, of those asked about where there are any."""
    if found.fit > SOME_KIN or not found.record.about:
        return found.record.text
    kinds = [a.partition(":")[2] for a in found.record.about]
    names = [label(kb, k) for k in [k for k in kinds if taxa & set(species_of(kb, (k,)))] or kinds][:4]
    return care.for_whom(join(names), found.record.text)


def _closing(turn: Turn, chosen: Sequence[Found], taxa: Sequence[str]) -> list[Block]:
    """Safety of hands that the act calls for, laws held of the fish, and to whom to turn."""
    kb = turn.kb
    shown = {f.record.id for f in chosen}
    first = chosen[0].record
    acts = set(first.acts) if isinstance(first, Caution) else set()
    out = [] if first.topic == BASICS[0] else _safety(turn, shown, first, acts, taxa)
    out += _law(kb, acts, taxa)
    if first.topic == URGENT and (note := kb.find(PREFIX, DISCLAIMER)) is not None:
        out.append(advice(PREFIX, note, "caution"))
    if acts & {"eat"} and ADVISORY not in shown:
        out.append(Block("caution", care.ADVISORY, claim=False))
    if acts & BY_LAW:
        out.append(Block("caution", care.CHECK_RULES, claim=False))
    return out


def _too_thin(turn: Turn, record: Record) -> bool:
    """True where the ice told of is thinner than the least that the caution on it gives."""
    least = _FIRST.match(record.number) if isinstance(record, Caution) and record.unit == INCHES else None
    told = [m.high for m in turn.reading.measures if m.kind == "length"]
    if not turn.cues & {"ice-safety", "ice-load"} or least is None or len(told) != 1:
        return False
    return told[0] < Decimal(least[0]) * MM_PER_INCH


def _of_one_ice(turn: Turn) -> bool:
    """True where the ice of one water or one day is asked about, of which nothing is held."""
    reading = turn.reading
    named = reading.water or reading.unknown_place or reading.places or reading.date
    return bool(named) or bool(TODAY & set(reading.words))


def _safety(turn: Turn, shown: set[str], first: Record, acts: set[str], taxa: Sequence[str]) -> list[Block]:
    """Leading cautions of other topics about this very fish that the act calls for."""
    wanted = acts & BY_HAND
    if not taxa or not wanted:
        return []
    found = [
        f for f in weigh(turn.kb, PREFIX, (), taxa) if f.fit > GENERAL and _leads(f) and f.record.id not in shown
    ]
    fitting = [
        f
        for f in found
        if f.record.topic != first.topic and isinstance(f.record, Caution) and wanted & set(f.record.acts)
    ]
    return [advice(PREFIX, f.record, "caution") for f in fitting[:2]]


def _law(kb: KnowledgeBase, acts: set[str], taxa: Sequence[str]) -> list[Block]:
    if not acts & (BY_LAW | {"release"}) or not 0 < len(taxa) <= 3:
        return []
    out = []
    for taxon in taxa:
        for character in LAW_CHARACTERS:
            if kb.find("character", character) is None:
                continue
            for s in about(kb, taxon, character)[0][:1]:
                clause = join([kb.state(x).clause or kb.state(x).label for x in s.states])
                out.append(Block("caution", care.law_note(label(kb, taxon), clause), statements=ids((s,))))
    return out
