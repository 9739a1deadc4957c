"""How a fish is caught: one set-up that works, then bait, hook, depth and time, as practices of the base (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.asked_about import asked_about, carried_on, kinds_name, told_taxa
from assistant.dialogue.aspects import aspects
from assistant.dialogue.conversation import Held
from assistant.dialogue.subjects import species_of
from assistant.dialogue.telling import advice, cut, plain
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Practice
from assistant.reasoning.advice import ABOUT_FISH, ABOUT_KIN, GENERAL, SOME_KIN, Found, line_stems, topics, weigh
from assistant.text import key, singular, word_set

PREFIX = "practice"
USUAL = ("setup", "bait", "hook", "line", "depth", "cover", "time")
"""What is told of a fish when nothing narrower is asked, in this order."""
BESIDE = ("setup", "bait")
"""What is added to a narrower answer."""
FEW = 3
"""Up to so many fishes are answered one by one."""
COMMON = "common-practice"
GEAR = word_set("hook hooks bait baits rig rigs lure lures line leader depth")
"""Words of a line that asks for tackle and not for restraint."""
ON_THE_HOOK = word_set("bait baits lure lures")
SETTING, ASKS_SETTING = frozenset({"depth", "time", "cover", "season"}), word_set("deep depth when where time month")
"""Topics on when and where to fish, and the words by which they are asked for where a bait is asked for, too."""
WHAT, WORKING = word_set("what whats"), word_set("best good works work working hot")
"""Words that open a question for what a fish takes."""
ASKS_OTHER = ASKS_SETTING | word_set("time way spot place weather water eating eat size")
"""Words that turn such a question to something else than what is offered on the hook."""
SET_LINES = word_set("jug trot limb set throw drop bush")
"""Words before "line" that name a way of fishing and not the line itself."""
ASKS_MORE = frozenset({"asks-how", "asks-what", "asks-when", "asks-where", "why", "which-of"})
"""Question words that a yes or a no does not answer."""
YES_NO = word_set("can could do does did will would")
THING = ("cue", "cue-bait-thing")


def handle(turn: Turn) -> tuple[Answer, Held]:
    """The practices that the line asks for, for the fish named or held; several fishes one by one."""
    asked, remarks = _asked(turn)
    taxa = species_of(turn.kb, asked)
    single = [t for t in asked if (x := turn.kb.find("taxon", t)) is not None and x.is_species]
    if 1 < len(asked) <= FEW and len(single) == len(asked):
        shown = _ranked(turn, asked)
        blocks = [b for one in shown for b in _for_one(turn, one)]
    else:
        blocks = _points(turn, taxa)
        shown = asked
    if "how-deep" in turn.cues and asked and not any(_of_depth(turn.kb, b) for b in blocks):
        from assistant.dialogue.handlers import handler_of

        answer, held = handler_of("habitat")(turn)
        return answer._replace(intent="tackle"), held
    if not blocks:
        return plain("tackle", care.NO_TACKLE, taxa=told_taxa(turn, asked)), turn.held
    blocks = cut(blocks, "more" in turn.cues, 4 if asked else 3)
    if len(asked) == 1 and (name := kinds_name(turn.kb, asked[0])).lower() not in blocks[0].text.lower():
        blocks[0] = Block(blocks[0].kind, say.titled(name, blocks[0].text), statements=blocks[0].statements)
    blocks = _yes_no(turn, blocks, asked, taxa)
    return Answer(
        "tackle", (*_fight(turn), *_headed(blocks), *_basis(turn, blocks), *remarks), taxa=told_taxa(turn, shown)
    ), turn.held


def _of_depth(kb: KnowledgeBase, block: Block) -> bool:
    """True for a practice on the depth to fish at."""
    found = (kb.record_at(s) for s in block.statements if s.startswith(PREFIX))
    return any(isinstance(p, Practice) and p.topic == "depth" for p in found)


def _asked(turn: Turn) -> tuple[tuple[str, ...], tuple[Block, ...]]:
    """The fishes asked about; the last two compared where the line says "which one"; a bait named is no fish."""
    turn = _without_bait(turn)
    own, remarks = asked_about(turn, carried=False)
    if own:
        return own, remarks
    held = turn.held
    if turn.cues & {"which-of", "both"} and len(held.shown) > 1:
        return held.shown, ()
    return carried_on(turn), ()


def _without_bait(turn: Turn) -> Turn:
    """The turn without the fishes that are named as bait ("crappie with minnows"), where another one is meant."""
    kb, reading = turn.kb, turn.reading
    phrases = {w for p in kb.all(PREFIX) for w in p.words}
    bait = [m for m in reading.of("taxon", "hybrid", "group") if {key(m.words), singular(key(m.words))} & phrases]
    others = [m for m in reading.of("taxon", "hybrid", "group") if m not in bait]
    if not bait or not (others or turn.held.taxa):
        return turn
    return turn.with_reading(reading._replace(mentions=tuple(m for m in reading.mentions if m not in bait)))


def _words(turn: Turn) -> tuple[str, ...]:
    season = (turn.reading.season,) if turn.reading.season else ()
    return (*turn.reading.words, *season)


def _points(turn: Turn, taxa: Sequence[str]) -> list[Block]:
    """Practices for some fishes as points, the ones asked for first."""
    found = [
        f
        for f in weigh(turn.kb, PREFIX, _words(turn), taxa)
        if f.fit > SOME_KIN or (f.fit == SOME_KIN and (f.met > 0 or not taxa))
    ]
    if GEAR & set(turn.reading.words):
        found = [f for f in found if f.record.topic != "ethics"]
    offered = "or" in turn.reading.words and len(_things(turn.kb, turn.reading.words)) > 1
    chosen = _asked_for(found, turn.reading.words, offered) or _usual(found, bool(taxa))
    return [advice(PREFIX, f.record, "point", _worded(turn, f)) for f in chosen]


def _asked_for(found: Sequence[Found], words: Sequence[str], offered: bool = False) -> list[Found]:
    """The practices that the words ask for; what goes on the hook first where baits are ``offered`` to choose from."""
    ranked = list(topics(found))
    if not ranked:
        return []
    if ON_THE_HOOK & set(words) and not ASKS_SETTING & set(words):
        ranked.sort(key=lambda ts: ts[0] in SETTING)
    first = ranked[0][0]
    best = ranked[0][1]
    wanted = [t for t, s in ranked if t == first or s >= 0.75 * best][:2]
    out = sorted(
        (f for f in found if f.record.topic in wanted and f.met > 0),
        key=lambda f: (_behind(f.record.topic, wanted), -round(f.met + 0.5 * f.fit, 2), f.record.id),
    )
    narrow = [f for f in out if f.fit >= ABOUT_KIN] or out
    if _what_works(words) or offered:
        narrow = [*_best(found, "bait", SOME_KIN), *(f for f in narrow if f.record.topic != "line")]
    rest = [f for t in BESIDE if t not in wanted for f in _best(found, t)]
    return narrow + ([f for f in rest if f not in narrow] if narrow and narrow[0].fit >= ABOUT_KIN else [])


def _what_works(words: Sequence[str]) -> bool:
    """True for "what's best for pike right after ice-out": what to offer is asked, of no piece of tackle by name."""
    named = {w for i, w in enumerate(words) if w in GEAR and not (w == "line" and words[max(0, i - 1)] in SET_LINES)}
    asks = bool(words) and words[0] in WHAT and bool(WORKING & set(words[1:4]))
    return asks and not named and not ASKS_OTHER & set(words)


def _behind(topic: str, wanted: Sequence[str]) -> bool:
    """True for when and where to fish behind a bait that is asked for."""
    return wanted[0] not in SETTING and topic in SETTING


def _yes_no(turn: Turn, blocks: list[Block], asked: Sequence[str], taxa: Sequence[str]) -> list[Block]:
    """The blocks begun with whether these fishes take the bait that the line asks about, as far as that is told."""
    kb, words = turn.kb, turn.reading.words
    asks = turn.cues & {"asks-do", "asks-can"} or (words and words[0] in YES_NO)
    if len(asked) != 1 or not asks or turn.cues & ASKS_MORE:
        return blocks
    things = _things(kb, words)
    if not things:
        return blocks
    wanted = line_stems(things[0].split())
    found = [f for f in weigh(kb, PREFIX, things[0].split(), taxa) if f.fit == SOME_KIN or f.fit >= ABOUT_KIN
             if any(line_stems(x.split()) == wanted for x in _things(kb, key(f.record.text).split()))]
    if not found:
        none = Block("point", care.bait_not_told(kinds_name(kb, asked[0], 2), things[0]), claim=False)
        return [none, *blocks]
    best = min(found, key=lambda f: (-f.fit, not _positive(f), f.record.topic != "bait", -f.met, f.record.id))
    told = _worded(turn, best)
    told = care.taken(kinds_name(kb, asked[0], 2), told) if _positive(best) else told
    first = advice(PREFIX, best.record, "point", told)
    return [first, *(b for b in blocks if b.statements != first.statements)]


def _things(kb: KnowledgeBase, words: Sequence[str]) -> list[str]:
    """The baits and lures named among some words; a pair of words ("plastic worms") counts as one."""
    out: list[str] = []
    at = 0
    while at < len(words):
        pair = " ".join(words[at : at + 2])
        named = next((p for p in (pair, words[at]) if any(e[:2] == THING for e in kb.spoken(p))), "")
        out += [named] if named else []
        at += max(1, len(named.split()))
    return out


def _usual(found: Sequence[Found], known: bool) -> list[Found]:
    return [f for t in USUAL for f in _best(found, t)] if known else _best(found, "setup")


def _best(found: Sequence[Found], topic: str, least: int = ABOUT_KIN) -> list[Found]:
    """The practice of a topic that fits the fish best, a general one only where there is no other set-up."""
    pool = sorted(
        (f for f in found if f.record.topic == topic),
        key=lambda f: (-f.fit, -f.met, len(f.record.about), f.record.id),
    )
    keep = [f for f in pool if f.fit >= least or (f.fit == GENERAL and topic == "setup")]
    return keep[:1]


def _worded(turn: Turn, found: Found) -> str:
    record = found.record
    text = record.text
    if isinstance(record, Practice) and record.season and record.season.split("-")[0].lower() not in text.lower():
        text = care.season_note(text, record.season)
    if found.fit == SOME_KIN and record.about:
        names = [label(turn.kb, a.partition(":")[2]) for a in record.about[:3]]
        return care.for_whom(say.names_with(names), text)
    return text


def _for_one(turn: Turn, taxon: str) -> list[Block]:
    name = label(turn.kb, taxon)
    points = _points(turn, species_of(turn.kb, (taxon,)))
    most = 1 if "which-of" in turn.cues else 2
    return [Block(b.kind, say.titled(name, b.text), statements=b.statements) for b in points[:most]]


def _ranked(turn: Turn, asked: tuple[str, ...]) -> tuple[str, ...]:
    """The fishes with one that has a practice of its own for what is asked first."""
    if "which-of" not in turn.cues:
        return asked
    scores = {}
    for taxon in asked:
        found = weigh(turn.kb, PREFIX, _words(turn), (taxon,))
        scores[taxon] = max((f.met for f in found if f.fit >= ABOUT_FISH and _positive(f)), default=0.0)
    return tuple(sorted(asked, key=lambda t: -scores[t]))


def _positive(found: Found) -> bool:
    return not any(w in found.record.text.lower().split() for w in ("seldom", "poor", "never", "ignores", "forbid"))


def _headed(blocks: Sequence[Block]) -> list[Block]:
    """The first point as the lead."""
    first, *rest = blocks
    return [Block("lead", first.text, statements=first.statements, claim=first.claim), *rest]


def _fight(turn: Turn) -> list[Block]:
    if "best-to-fish" in aspects(turn.kb, turn.reading):
        return [Block("lead", care.NO_FIGHT, claim=False)]
    return []


def _basis(turn: Turn, blocks: Sequence[Block]) -> list[Block]:
    """A remark where no published text stands behind any of it."""
    kb = turn.kb
    records = [kb.find(PREFIX, s.partition(":")[2]) for b in blocks for s in b.statements]
    kinds = {kb.source(s).kind for r in records if r is not None for s in r.source}
    return [Block("doubt", care.LIKE_COMMON, claim=False)] if kinds == {COMMON} else []
