"""Words that point back ("the first", "the other", "both", "the whiskered kind") to fishes shown before (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.recogniser.facts import THE_ONE, Facts
from assistant.model.knowledge import KnowledgeBase
from assistant.model.spelling import distance
from assistant.reasoning.evidence import about, below
from assistant.reasoning.living import LIVING, status_in
from assistant.reasoning.observed import Observation
from assistant.reasoning.place_prior import expand_places
from assistant.text import key, singular

_DIGIT = re.compile(r"^\W*(\d)\W*$")
LONG_NAME, MOST_SLIPS = 8, 2
"""Letters from which words written as one may be a name that somebody takes apart, and the letters that may differ."""
_EACH_SIDE = re.compile(
    r"\b(?:each|both|either) (?:sides?|jaws?|cheeks?|eyes?|ears?|lobes?|flaps?)\b|\bper side\b|"
    r"\b(?:we|us|you|yall) both\b|\bboth of us\b|\bboth (?:felt|looked|checked|agreed?|counted)\b")
"""Words for the two sides of one fish or for two who look at it, which point to no two fishes."""
OF_MARKS = ("character", "state", "term")
"""Kinds of mentions that the words of "the red ear one" only seem to be."""
OF_CROSSES = ("hybrids", "sources")
"""Intents after which "the bluegill one" may be a cross with the fish spoken of."""
_BOTH = re.compile(
    r"\b(?:both(?! sides?\b)|either(?! sides?\b)(?!\W*$)|neither(?! sides?\b)|the two|"
    r"which (?:ones? )?of (?:them|those|these|em|'em|the two)|(?:know|tell|say) which|which (?:one )?is which|"
    r"(?:tell|set|keep) (?:em|'em|them|those|these) apart|(?:do|did) (?:their|they)\b.*\bdiffer)\b")
"""Words for two fishes of which each was spoken of by itself."""
MOST_POINTED = 3
"""A look that more of the fishes offered share points to none."""
WEAK = frozenset(
    {"the", "one", "ones", "kind", "sort", "fish", "a", "an", "is", "it", "of", "with", "i", "mean", "think", "thing",
     "what", "whats", "does", "do", "look", "like", "how", "about", "and"}
)


def pointed(kb: KnowledgeBase, reading: Reading, facts: Facts, held: Held) -> tuple[str, ...]:
    """The fishes that a line without a fish's name points to; empty when it points to none."""
    if crossed := _cross_meant(kb, reading, held):
        return crossed
    offered = _offered(held)
    if not reading.taxa() and _FIRST_TWO.search(reading.text) and (pair := _first_pair(held)):
        return pair
    if another := _by_own_name(kb, reading, facts, held):
        return another
    if not offered and "fish" not in facts.all and _BOTH.search(reading.text.lower()):
        return one_by_one(kb, held)
    if not reading.taxa() and facts.all & {"what-about", "asks-what"} and (kin := _kin_of_colour(kb, reading, held)):
        return kin
    if not reading.taxa() and len(offered) == PAIR and _ONE_WITH.match(reading.text):
        return _by_look(kb, [s.observation for s in reading.seen], offered)
    if reading.taxa() or not offered:
        return ()
    if "both" in facts.all and len(offered) > 1 and not _EACH_SIDE.search(reading.text.lower()):
        return offered
    if (picked := _by_place(reading, facts, held, offered)) is not None:
        return (picked,)
    if (held.asked is not None and held.asked.kind == "which") or "the-one" in facts.all:
        if reading.places and not reading.seen and (native := _native_of(kb, offered, reading.places)):
            return native
        if named := _by_label(kb, reading, offered):
            return named
        return _by_look(kb, [s.observation for s in reading.seen], offered) or _by_words(kb, reading, offered)
    return ()


def one_by_one(kb: KnowledgeBase, held: Held) -> tuple[str, ...]:
    """The last two species spoken of one after the other ("what do fliers eat", "and redears?"); empty for none."""
    last, before = held.taxa, held.before
    while before is not None and (not before.taxa or before.taxa == last):
        before = before.before
    pair = (*(before.taxa if before is not None else ()), *last)
    single = len(last) == 1 and len(pair) == len(set(pair)) == PAIR
    return pair if single and all((x := kb.find("taxon", t)) is not None and x.is_species for t in pair) else ()


_FIRST_TWO = re.compile(r"\b(?:the |those |your )?first (?:two|pair)\b", re.IGNORECASE)


def _first_pair(held: Held) -> tuple[str, ...]:
    """The two fishes that were first set side by side in the conversation; empty where none were."""
    found: tuple[str, ...] = ()
    step: Held | None = held
    while step is not None:
        found = step.taxa if len(step.taxa) == PAIR and step.intent == "contrast" else found
        step = step.before
    return found


PAIR = 2
_ONE_WITH = re.compile(r"^\W*(?:(?:and|so|ok|then|but)\W+)*(?:the|that) one with(?:out)?\b", re.IGNORECASE)
_A_COLOUR = re.compile(r"^\W*(?:and|n|what about|how about|hows?) (?:for |on )?(?:an?|the|my) (\w+)"
                       r"(?=\W*$| (?:that|then|too|as|of|like|this)\b)")
_A_KIND = re.compile(r"\ban? (\w+) one\b")
"""A fish told by a word of its name alone ("n a blue that long", "what is a tiger one")."""


def _cross_meant(kb: KnowledgeBase, reading: Reading, held: Held) -> tuple[str, ...]:
    """The cross that "the pumpkinseed one" is after the crosses of a fish were told; empty where it is none of them."""
    named = reading.taxa()
    if held.intent not in OF_CROSSES or not held.taxa or len(named) != 1 or not THE_ONE.search(reading.text.lower()):
        return ()
    cross = "-x-".join(sorted((held.taxa[0], named[0])))
    return (cross,) if kb.find("taxon", cross) is not None else ()


def _by_own_name(kb: KnowledgeBase, reading: Reading, facts: Facts, held: Held) -> tuple[str, ...]:
    """The other fish that "and the red ear one" names by words read as a mark; empty where they name no single one."""
    found = THE_ONE.search(reading.text.lower())
    words = key(found[1]) if found is not None else ""
    if " " not in words or "what-about" not in facts.all or reading.taxa() or len(held.taxa) != 1:
        return ()
    cut = words.removesuffix("ed")
    spoken = [e for w in (words, words.replace(" ", ""), cut, cut.replace(" ", "")) for e in kb.spoken(w)
              if e[0] == "taxon"]
    named = {thing for _, thing, how in spoken if how != "ambiguous"} or {thing for _, thing, _ in spoken}
    return tuple(named) if len(named) == 1 and not named & set(held.taxa) else ()


def _kin_of_colour(kb: KnowledgeBase, reading: Reading, held: Held) -> tuple[str, ...]:
    """The look-alikes, crosses or nearest kin whose name begins with the word of "and the red one" ("redear")."""
    said = reading.text.lower()
    found = THE_ONE.search(said) or _A_COLOUR.search(said) or _A_KIND.search(said)
    fish = tuple(t for t in held.taxa if kb.find("taxon", t) is not None and kb.taxon(t).is_species)
    if found is None or " " in found[1] or not fish:
        return ()
    near = {x.other for t in fish for x in kb.look_alikes(t)} | {c for t in fish for c in kb.crosses_of(t)}
    genus, family = ({t for t in kb.species if set(kb.lineage(t)[n:]) & {x for f in fish for x in kb.lineage(f)[n:]}}
                     for n in (1, 2))
    for pool in (set(fish), near, genus, family):
        named = sorted(t for t in pool if (name := key(kb.taxon(t).label)).startswith(found[1]) and " x " not in name)
        if named:
            return tuple(named) if len(named) <= PAIR else ()
    return ()


def with_fish(reading: Reading, taxa: Sequence[str], wide: Collection[str] = ()) -> Reading:
    """The reading with the fishes pointed to as if they had been named; ``wide`` are those that are groups."""
    found = THE_ONE.search(reading.text.lower()) or _ONE_WITH.match(reading.text)
    at = found.start() if found else 0
    added = tuple(Mention("group" if t in wide else "taxon", (t,), "", at, at) for t in taxa)
    end = found.end() if found else 0
    mentions = tuple(m for m in reading.mentions if m.kind not in ("taxon", "hybrid")
                     and (m.kind not in OF_MARKS or not at <= m.start < end))
    aside = _ONE_WITH.match(reading.text) is not None
    seen = () if aside else tuple(s for s in reading.seen if not at <= s.start < end)
    return reading._replace(mentions=mentions + added, seen=seen)


def _offered(held: Held) -> tuple[str, ...]:
    if held.asked is not None and held.asked.kind == "which" and held.asked.choices:
        return tuple(c for c, _ in held.asked.choices)
    return held.shown if len(held.shown) > 1 else held.taxa if len(held.taxa) > 1 else ()


def _by_place(reading: Reading, facts: Facts, held: Held, offered: tuple[str, ...]) -> str | None:
    digit = _DIGIT.match(reading.text)
    asked = held.asked is not None and held.asked.kind == "which"
    if asked and digit and 1 <= int(digit.group(1)) <= len(offered):
        return offered[int(digit.group(1)) - 1]
    if "first" in facts.all:
        return offered[0]
    if "second" in facts.all:
        return offered[1] if len(offered) > 1 else None
    rest = [t for t in offered if t not in held.taxa]
    return rest[0] if "other" in facts.all and len(rest) == 1 else None


def _native_of(kb: KnowledgeBase, offered: Sequence[str], places: Sequence[str]) -> tuple[str, ...]:
    """The one fish of those offered that is native to a place ("the California one"); empty where it is not one."""
    wanted = expand_places(kb, places)
    rows = ((t, status_in(kb, t, wanted)) for t in offered if kb.find("taxon", t) and kb.taxon(t).is_species)
    living = [(t, row.status) for t, row in rows if row is not None and row.status in LIVING]
    native = [t for t, status in living if status == LIVING[0]] or [t for t, _ in living]
    return tuple(native) if len(native) == 1 else ()


def _by_label(kb: KnowledgeBase, reading: Reading, offered: Iterable[str]) -> tuple[str, ...]:
    """The one fish of those offered whose very name holds the words of "the yellow one"; empty where it is not one."""
    found = None if reading.of("group") else THE_ONE.search(reading.text.lower())
    wanted = {singular(w) for w in key(found[1]).split()} - WEAK if found else set()
    hits = [t for t in offered if wanted and (x := kb.find("taxon", t)) is not None
            and wanted <= {singular(w) for w in key(x.label).split()}]
    return tuple(hits) if len(hits) == 1 else ()


def _by_words(kb: KnowledgeBase, reading: Reading, offered: Iterable[str]) -> tuple[str, ...]:
    wanted = {singular(w) for w in reading.words if w not in WEAK}
    if not wanted:
        return ()
    hits = []
    for taxon in offered:
        found = kb.find("taxon", taxon)
        names = [n.text for n in kb.names(taxon)] if found else []
        words = {singular(w) for text in (*names, found.label if found else "") for w in key(text).split()}
        if wanted <= words:
            hits.append(taxon)
    return tuple(hits[:1]) if len(hits) == 1 else _by_joined(kb, reading, offered)


def _by_joined(kb: KnowledgeBase, reading: Reading, offered: Iterable[str]) -> tuple[str, ...]:
    """The one fish whose name the words make when they are written as one ("the coppery nosed sort": coppernose)."""
    typed = "".join(w for w in reading.words if w not in WEAK)
    if len(typed) < LONG_NAME:
        return ()
    hits = [t for t in offered if kb.find("taxon", t) and any(
        " " not in (name := key(n.text)) and distance(typed, name, MOST_SLIPS) <= MOST_SLIPS for n in kb.names(t))]
    return tuple(hits) if len(hits) == 1 else ()


def _by_look(kb: KnowledgeBase, seen: Sequence[Observation], offered: Iterable[str]) -> tuple[str, ...]:
    scored = [(_fit(kb, t, seen), t) for t in offered]
    best = max((s for s, _ in scored), default=0)
    hits = tuple(t for s, t in scored if s == best)
    return hits if seen and best > 0 and len(hits) <= MOST_POINTED and len(hits) < len(scored) else ()


def _fit(kb: KnowledgeBase, taxon: str, seen: Sequence[Observation]) -> int:
    score = 0
    for o in seen:
        told = {leaf for s in o.states for leaf in below(kb, s)}
        stated = {leaf for s in about(kb, taxon, o.character)[0] for x in s.states for leaf in below(kb, x)}
        if stated:
            score += 1 if bool(told & stated) == o.seen else -1
    return score
