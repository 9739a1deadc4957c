"""A key walked one couplet at a time: where the walker stands, and what an answer means there (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from assistant.dialogue.fitting import fitting
from assistant.dialogue.lessons.levels import choice_words, reader_of
from assistant.dialogue.lessons.quiz_words import by_words
from assistant.dialogue.lessons.reply import SKIP, UNSURE, reply
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.wording import lesson as say
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import DROPPED, NEGATORS
from assistant.reasoning.evidence import below
from assistant.reasoning.key import NONE_TOLD, Couplet, Key, Lead, build_key
from assistant.reasoning.observed import Observation
from assistant.reasoning.selection import species_below
from assistant.text import key as folded
from assistant.text import singular

FIRST = frozenset(["a", "1", "first", "former", "one", "1a", "upper", "top"])
SECOND = frozenset(["b", "2", "second", "latter", "two", "1b", "lower", "bottom"])
_PAUSE = re.compile(r"[,;.]|\b(?:but|or|and)\b")
PLACE_WORDS = frozenset(["upper", "top", "lower", "bottom"])
"""Words that choose a lead only where no part is named with them ("lower jaw: even" chooses none)."""
BESIDE_PLACE = frozenset(["one", "choice", "lead", "line"])
NUMBER_WORDS = frozenset(["one", "two"])
"""Words that choose a lead by themselves alone ("that one" chooses none)."""
BACK, NOT_SURE, STOP, WHICH = "back", "not-sure", "stop", "which"
WAYS = frozenset(["to", "past", "behind", "beyond", "under"])
"""Words before which "back" is a way, no part."""
_OFFERS = " or "
"""What a question holds that offers several things, so that yes and no answer nothing."""


@dataclass(frozen=True, slots=True)
class KeyWalk:
    """A key, the couplet the walker stands at, the characters passed over, and the walk one step earlier."""

    key: Key
    at: int
    level: str = "plain"
    passed: frozenset[str] = frozenset()
    before: KeyWalk | None = None
    printed: bool = False
    """True where the whole key was shown, so that its own numbers are those that the walker reads."""
    told: Mapping[str, Lead] = field(default_factory=dict)
    """The leads taken so far, by character, also in keys walked before this one."""

    @property
    def couplet(self) -> Couplet:
        """The couplet that is asked now."""
        return self.key.couplet(self.at)

    @property
    def step(self) -> int:
        """The number of the step: that of the couplet in a key that was shown, else how many were asked so far."""
        if self.printed:
            return self.at
        count, before = 1, self.before
        while before is not None:
            count, before = count + 1, before.before
        return count

    @property
    def left(self) -> tuple[str, ...]:
        """The taxa still in play, in the order of the key."""
        inside = {t for lead in self.couplet.leads for t in lead.taxa}
        return tuple(t for t in self.key.taxa if t in inside)


def start(kb: KnowledgeBase, taxa: tuple[str, ...], look: str, level: str,
          told: Mapping[str, Lead] = NONE_TOLD) -> KeyWalk | None:
    """A walk from the first couplet, after some leads taken; None where nothing parts the taxa."""
    made = build_key(kb, taxa, look, reader=reader_of(level), told=told)
    return KeyWalk(made, 1, level, told=told) if made.couplets else None


def take(walk: KeyWalk, lead: int) -> KeyWalk | tuple[str, ...]:
    """The walk after a lead is taken, or the taxa that the key ends in."""
    chosen = walk.couplet.leads[lead]
    return replace(walk, at=chosen.goes_to, before=walk, told=told_after(walk, lead)) if chosen.goes_to else chosen.taxa


def told_after(walk: KeyWalk, lead: int | None) -> Mapping[str, Lead]:
    """The leads taken, by character, with one of the open couplet where one is taken."""
    return walk.told if lead is None else {**walk.told, walk.couplet.character: walk.couplet.leads[lead]}


def _on_without(kb: KnowledgeBase, walk: KeyWalk, taxa: tuple[str, ...],
                character: str) -> KeyWalk | tuple[str, ...]:
    """A walk on with a fresh key of some taxa without a character, within the leads taken; the taxa where none is."""
    passed = walk.passed | {character}
    made = build_key(kb, taxa, walk.key.look, without=passed, reader=reader_of(walk.level), told=walk.told)
    return KeyWalk(made, 1, walk.level, passed, walk, told=walk.told) if made.couplets else taxa


def pass_over(kb: KnowledgeBase, walk: KeyWalk) -> KeyWalk | tuple[str, ...]:
    """A walk on with a fresh key of the taxa left, without the character asked, or the taxa that cannot be parted."""
    return _on_without(kb, walk, walk.left, walk.couplet.character)


def meaning(kb: KnowledgeBase, walk: KeyWalk, reading: Reading) -> int | str | None:
    """The lead (0 or 1) that a line chooses, ``back``, ``not-sure`` or ``stop``; None when it says none of these.

    ``which`` for a yes or no to a question that it does not answer.
    """
    words = [w for w in folded(reading.text).split() if w not in say.ANSWER_FILLERS or w in FIRST]
    told = [s for s in reading.seen if s.observation.seen and not s.retract]
    if set(words) & say.BACK_WORDS and not told:
        return BACK
    if set(words) & say.STOP_WORDS:
        return STOP
    if reply(reading) in (SKIP, UNSURE):
        return NOT_SURE
    if set(words) & say.START_WORDS and not reading.seen:
        return None
    if len(words) <= 3 and (found := _ordinal(words, {walk.at, walk.step})) is not None:
        return found
    seen = _seen(kb, walk.couplet, reading)
    if seen is not None or elsewhere(kb, walk, reading):
        return seen
    return _worded(kb, walk, reading, words)


def _ordinal(words: list[str], numbers: set[int]) -> int | None:
    denied = bool(set(words) & NEGATORS)
    of_part = bool(set(words) - PLACE_WORDS - BESIDE_PLACE - NEGATORS)
    for word in words:
        if word in PLACE_WORDS and of_part:
            continue
        if word in NUMBER_WORDS and len(words) > 1:
            continue
        if word in FIRST or word in {f"{n}a" for n in numbers}:
            return int(denied)
        if word in SECOND or word in {f"{n}b" for n in numbers}:
            return 1 - int(denied)
    return None


def elsewhere(kb: KnowledgeBase, walk: KeyWalk, reading: Reading) -> str:
    """The other character that an answer tells of, by words that the step does not speak of; empty where of none."""
    asked = kb.character(walk.couplet.character)
    here = " ".join([asked.label, asked.question, *(choice_words(kb, lead, walk.level) for lead in walk.couplet.leads)])
    known, said = _folded(here), _folded(" ".join(reading.words))
    if any(s.observation.character == asked.id for s in reading.seen):
        return ""
    return next((c for s in reading.seen if (c := s.observation.character) and (
        (_folded(kb.character(c).label) & said) | _folded(s.words)) - known), "")


def narrowed(kb: KnowledgeBase, walk: KeyWalk, reading: Reading) -> KeyWalk | tuple[str, ...] | None:
    """The walk on with the fishes that show what was told of another feature, or those where none is to be parted.

    None where what was told leaves all of them, one fish or none, or where another part is named, too. A fish of which
    nothing is stated on it stays; a family that is silent itself goes by its kinds.
    """
    told = [s.observation for s in reading.seen if not s.retract and s.observation.character]
    parts = [m.ids for m in reading.of("character") if not _of_the_mark(reading, m)]
    coarse = {s.partition(".")[0] for o in told for s in kb.character(o.character).needs}
    told = [o for o in told if o.character not in coarse]
    if len({o.character for o in told}) != 1 or not all(
            {told[0].character, *coarse} & set(ids) for ids in parts):
        return None
    needs = kb.character(told[0].character).needs
    implied = [Observation(c, tuple(s for s in needs if s.startswith(f"{c}."))) for c in sorted(coarse)]
    kept = tuple(t for t in walk.left if all(_may_show(kb, t, [o]) for o in (*told, *implied)))
    if len(kept) == 1 and len(walk.left) > 1 and not kb.taxon(kept[0]).is_species:
        return kept
    if len(kept) in (0, 1, len(walk.left)):
        return None
    return _on_without(kb, walk, kept, told[0].character)


def _may_show(kb: KnowledgeBase, taxon: str, told: Sequence[Observation]) -> bool:
    """True for a fish or group that shows what was told, or of which nothing is stated on it."""
    found = fitting(kb, (taxon,), told)
    if found.silent and not kb.taxon(taxon).is_species:
        found = fitting(kb, species_below(kb, taxon) or (taxon,), told)
    return bool(found.fits or found.maybe or found.silent)


def _of_the_mark(reading: Reading, part: Mention) -> bool:
    """True for a part by which another is measured ("to the middle of the eye"), or "back" before a way ("back to")."""
    told = [s for s in reading.seen if not s.retract]
    led = reading.text[part.end :].lower().split()[:1]
    way = part.words == "back" and bool(led) and led[0] in WAYS
    return way or any(s.start <= part.start and part.end <= s.end for s in told)


def _folded(text: str) -> set[str]:
    return {singular(w) for w in folded(text).split()} - DROPPED


def _seen(kb: KnowledgeBase, couplet: Couplet, reading: Reading) -> int | None:
    """The lead that an observation read out of the line speaks for."""
    for seen in reading.seen:
        o = seen.observation
        if o.character != couplet.character:
            continue
        if o.value is not None:
            return _number(couplet, o.value)
        told = {leaf for s in o.states for leaf in below(kb, s)}
        hits = [bool(told & {leaf for s in lead.states for leaf in below(kb, s)}) for lead in couplet.leads]
        if hits[0] != hits[1]:
            return hits.index(True) if o.seen else hits.index(False)
    if reading.counts and couplet.leads[0].states == ():
        return _number(couplet, float(reading.counts[0]))
    return None


def _number(couplet: Couplet, value: float) -> int:
    return 0 if _holds(couplet.leads[0], value) else 1


def _holds(lead: Lead, value: float) -> bool:
    return (lead.low is None or value >= lead.low) and (lead.high is None or value <= lead.high)


def _worded(kb: KnowledgeBase, walk: KeyWalk, reading: Reading, words: list[str]) -> int | str | None:
    texts = [choice_words(kb, lead, walk.level) for lead in walk.couplet.leads]
    told = [w for w in words if w not in say.YES_NO_WORDS]
    if told and (found := _by_denial(texts, reading.words)) is not None:
        return found
    if told and (found := by_words(texts, told)) is not None:
        return found
    if reading.answer not in ("yes", "no") or len(told) > 1:
        return None
    affirms = _affirmed(kb.character(walk.couplet.character).question, texts)
    if affirms is None:
        return WHICH
    return affirms if reading.answer == "yes" else 1 - affirms


def _by_denial(texts: list[str], words: Sequence[str]) -> int | None:
    """The choice that says what the line says and denies what it denies ("it has spines", not "no spines")."""
    says, denies = _said_and_denied(" ".join(words))
    scores = []
    for text in texts:
        there, lacking = _said_and_denied(text)
        scores.append(len(says & there) + len(denies & lacking) - len(says & lacking) - len(denies & there))
    mixed = any(_said_and_denied(text)[1] for text in texts) or denies
    return scores.index(max(scores)) if mixed and max(scores) > 0 and scores[0] != scores[1] else None


def _said_and_denied(text: str) -> tuple[set[str], set[str]]:
    """The words that a text says, and those that it denies: after a word of denial, up to a pause or a joining word."""
    says: set[str] = set()
    denies: set[str] = set()
    for part in _PAUSE.split(text.lower()):
        into = says
        for word in folded(part).split():
            if word in say.DENYING_WORDS or word in NEGATORS:
                into = denies
            elif word not in DROPPED:
                into.add(singular(word))
    return says, denies


def _affirmed(question: str, texts: list[str]) -> int | None:
    """The choice that "yes" takes: the one beside a denial, else the one that says again what the question asks.

    None where the question offers several things, so that neither yes nor no chooses one of them.
    """
    denies = [bool(set(folded(t).split()[:1]) & say.DENYING_WORDS) for t in texts]
    if denies[0] != denies[1]:
        return denies.index(False)
    if _OFFERS in question.lower() or not set(folded(question).split()[:1]) & say.WHETHER_WORDS:
        return None
    asked = {singular(w) for w in folded(question).split()}
    again = [len({singular(w) for w in folded(t).split()} & asked) for t in texts]
    return again.index(max(again)) if again[0] != again[1] else None
