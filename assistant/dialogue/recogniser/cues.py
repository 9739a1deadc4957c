"""Which asking phrases ("how do I tell", "says who") stand in a line; they are word families of the base (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import Entry, lexicon_of
from assistant.dialogue.reader.reading import Mention, Reading, Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import spelt_out
from assistant.text import key, unique

_WORD = re.compile(r"[^\W_]+(?:['’][^\W_]+)*", re.UNICODE)
LONGEST = 7
"""Words in the longest phrase that is looked up."""
MOST_WORDS = 300
SHORT_ANSWER = 2
"""Words of a line that is one observation from beginning to end and may yet be a question ("line?", "fins touch")."""
NAMED = ("taxon", "hybrid", "place", "water", "likeness")


TAPE_ENDS = frozenset({"fork-told", "tip-told"})
"""Cues of the two ends of a tape: where both are named the line asks how a fish is measured, and tells of no tail."""
UNNAMED = frozenset({"hybrid", "hybrid-word", "key-word", "versus"})
"""Cues that count even where the word is also a name ."""
ASIDE = frozenset(
    {
        "accepted-names",
        "against-usual",
        "air-gear",
        "air-time",
        "all-mine",
        "all-taxa",
        "all-told",
        "asks-kin",
        "asks-me",
        "at-risk",
        "at-sea",
        "ate-it",
        "back-alive",
        "back-in",
        "bad-for",
        "bait-use",
        "beside-it",
        "book-name",
        "book-says",
        "both-eyes",
        "bright-season",
        "by-colour",
        "by-sight",
        "call-it",
        "cant-name",
        "catch-way",
        "caught-before",
        "check-order",
        "circle-hook",
        "cited-for",
        "class-asking",
        "clean-ask",
        "colour-asked",
        "colour-change",
        "cooking",
        "counts-of",
        "counts-too",
        "covers-kind",
        "creature",
        "crosses-too",
        "denying",
        "describe-it",
        "diagnostic-of",
        "dies-anyway",
        "disputed",
        "dog-or-cat",
        "doubted",
        "ear-stones",
        "eats-what",
        "enough-alone",
        "fades",
        "far-off",
        "first-here",
        "fish-ill",
        "flesh-marks",
        "folks-say",
        "fools",
        "forecast",
        "fork-told",
        "fry-eggs",
        "full-record",
        "gear-weight",
        "get-rows",
        "go-online",
        "going-by",
        "good-name",
        "good-or-not",
        "grade-work",
        "grip-way",
        "grunting",
        "harms-fish",
        "hearsay",
        "heat-limit",
        "held-word",
        "hesitates",
        "hook-deep",
        "hook-pulled",
        "how-are-you",
        "how-far",
        "how-look",
        "hows-that",
        "hung-up",
        "identify-a",
        "in-bucket",
        "in-fight",
        "in-print",
        "in-tongue",
        "in-which",
        "is-bad",
        "is-biting",
        "just-a",
        "just-that",
        "keeps-calling",
        "kinds-held",
        "kitchen",
        "know-one",
        "lab-test",
        "leave-it",
        "leave-walk",
        "length-left",
        "length-of-weight",
        "line-for",
        "live-carried",
        "live-one",
        "live-there",
        "long-enough",
        "loose-elsewhere",
        "lumped-in",
        "lure-weight",
        "make-sure",
        "makes-cross",
        "mature-length",
        "may-catch",
        "may-keep",
        "means-what",
        "meant-there",
        "measure-how",
        "met-again",
        "might-do",
        "mistaken-with",
        "moon",
        "more-figures",
        "more-proof",
        "motor",
        "must-kill",
        "my-answer",
        "name-author",
        "name-older",
        "name-origin",
        "name-plural",
        "name-saying",
        "name-spelling",
        "names-of",
        "names-young",
        "native-extent",
        "native-or-not",
        "native-record",
        "no-counts",
        "no-scale",
        "now-bite",
        "now-report",
        "now-water",
        "now-what",
        "odds",
        "of-old",
        "officer-looks",
        "on-my-count",
        "on-my-fish",
        "on-what",
        "one-kind-or-more",
        "one-look",
        "one-of-them",
        "one-sex",
        "one-with",
        "order-hard",
        "order-set",
        "other-game",
        "overlaps",
        "own-young",
        "pageless",
        "pairs-with",
        "parent-sex",
        "peer-review",
        "photo-how",
        "photo-wish",
        "pinned",
        "plausible",
        "pond-put",
        "price",
        "private-water",
        "quits-for-heat",
        "range-else",
        "range-only",
        "ranges-cross",
        "rates-as",
        "resume-quiz",
        "right-one",
        "risky-food",
        "same-kind",
        "same-one",
        "sameness",
        "sat-warm",
        "scale-doubted",
        "sea-run-word",
        "secret-spot",
        "self-angler",
        "self-order",
        "self-record",
        "self-sent",
        "set-beside",
        "set-in",
        "set-out",
        "settle-ask",
        "shell-crush",
        "snipped",
        "somebody",
        "sort-me",
        "species-ask",
        "stay-in",
        "steals",
        "step-by-step",
        "stock-act",
        "stocked-there",
        "stocking-when",
        "taken-from",
        "tell-tale",
        "thanks-close",
        "they-move",
        "this-moment",
        "throw-ask",
        "till-better",
        "till-known",
        "time-of-day",
        "time-told",
        "tip-told",
        "to-sea",
        "unheld",
        "unlike-values",
        "unwell",
        "up-from",
        "values-of",
        "walk-me",
        "weight-go",
        "weight-guess",
        "weight-unit",
        "what-colour",
        "what-if",
        "what-it-is",
        "what-to-note",
        "what-was-it",
        "what-water",
        "whats-in",
        "whats-what",
        "when-ask",
        "where-abouts",
        "which-lure",
        "who-gives",
        "who-wins",
        "whos-word",
        "wild-animal",
        "will-live",
        "word-unknown",
        "work-out",
        "world-act",
        "wound-later",
        "write-for-me",
        "written-work",
        "young-see",
    }
)
"""Cues that narrow what others ask for: they neither hide a shorter cue nor are hidden by a longer one."""
BURIED = frozenset(
    {
        "tackle",
        "habitat",
        "size",
        "weight",
        "range",
        "handling",
        "rules",
        "list",
        "list-weak",
        "waters",
        "story",
        "contrast",
        "dead",
        "sources",
    }
)
"""Cues whose single words do not count inside the words of an observation."""
BETWEEN = frozenset({"side by side", "next to each other", "one beside the other"})
"""Phrases that set fishes beside each other, or the marks of one fish."""
WISHES = frozenset(
    {
        "by-look",
        "cant-agree",
        "concept-now",
        "concept-only",
        "fish-gone",
        "hybrid-word",
        "key-word",
        "lesson-standard",
        "noted-nothing",
        "of-sources",
        "old-sheet",
        "on-paper",
        "put-plainly",
        "self-drop",
        "self-units",
        "side-with",
        "spoil",
        "tally",
        "these-tables",
        "true-false",
        "turn-into",
    }
)
"""Cues of ``intent_rows_lessons`` that only count together."""
APART = ASIDE | WISHES


class Cue(NamedTuple):
    """An asking phrase with where it stands in the text."""

    id: str
    start: int
    end: int


def find_cues(kb: KnowledgeBase, reading: Reading) -> tuple[Cue, ...]:
    """The cues of a line in their order; one strictly inside a longer cue or inside a named thing does not count.

    Nor does a single word inside the words of an observation ("line" in "a dark line along the side").
    """
    lexicon = lexicon_of(kb)
    spoken = lexicon.spoken
    words = [(key(m.group()), m.start(), m.end()) for m in _WORD.finditer(reading.text)][:MOST_WORDS]
    named = [(m.start, m.end) for m in reading.mentions if m.kind in NAMED and m.end]
    longer = [(m.start, m.end) for m in reading.mentions if m.kind in ("term", "group") or _on_the_fish(kb, m)]
    told = [(s.start, s.end) for s in reading.seen if not whole_line(reading, s) or len(words) > SHORT_ANSWER]
    found: list[Cue] = []
    for i in range(len(words)):
        phrase = full = ""
        for word, _, end in words[i : i + LONGEST]:
            phrase, full = (_with_g(spoken, f"{said} {w}" if said else w)
                            for said, w in ((phrase, word), (full, lexicon.slip(spelt_out(word)))))
            entries = dict.fromkeys(e for said in unique((phrase, full)) for e in spoken(said))
            ids = [e[1].removeprefix("cue-") for e in entries if e[0] == "cue"]
            at = (words[i][1], end)
            ids = ids if not _strictly(*at, longer) else [name for name in ids if name in UNNAMED]
            buried = (" " not in phrase or phrase in BETWEEN) and _strictly(*at, told)
            free = not _inside(*at, named)
            found += [Cue(name, *at) for name in ids if (free or name in UNNAMED) and not (buried and name in BURIED)]
    spans = sorted({(c.start, c.end) for c in found if c.id not in APART})
    return tuple(c for c in found if c.id in APART or not _nested(c, spans))


def _with_g(spoken: Callable[[str], tuple[Entry, ...]], phrase: str) -> str:
    """A phrase whose last word has lost its g ("eatin", "fishin"), with it."""
    if not phrase.endswith("in") or len(phrase.rpartition(" ")[2]) < 5 or spoken(phrase):
        return phrase
    return f"{phrase}g" if spoken(f"{phrase}g") else phrase


def whole_line(reading: Reading, seen: Seen) -> bool:
    """True for an observation read from all the words of a line (an answer to the question asked back)."""
    return seen.start <= 1 and seen.end >= len(reading.text.rstrip(" ?!.")) - 1


def _on_the_fish(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a character that is looked at on the fish, or one of its states."""
    if mention.kind not in ("character", "state"):
        return False
    found = [kb.find("character", i.partition(".")[0]) for i in mention.ids]
    return any(c is not None and c.use == "identify" for c in found)


def _inside(start: int, end: int, named: list[tuple[int, int]]) -> bool:
    return any(a <= start and end <= b for a, b in named)


def _strictly(start: int, end: int, named: list[tuple[int, int]]) -> bool:
    return any(a <= start and end <= b and (a, b) != (start, end) for a, b in named)


def _nested(cue: Cue, spans: list[tuple[int, int]]) -> bool:
    return _strictly(cue.start, cue.end, spans)
