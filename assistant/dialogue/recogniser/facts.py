"""Plain facts of a line and of the conversation it falls into, which the recogniser table speaks of (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from assistant.dialogue.called_so import LOCAL_KINDS, MOST_SLIPS
from assistant.dialogue.conversation import Held, Wanted
from assistant.dialogue.half_named import half_named, seen_between, two_crossed
from assistant.dialogue.kinship import clipped, overlapping
from assistant.dialogue.name_forms import old_genus
from assistant.dialogue.observing import other_state
from assistant.dialogue.preying import eaten_by, food_told, who_eats
from assistant.dialogue.reader.reading import LENGTH_DENIED, Mention, Reading
from assistant.dialogue.reader.terms_named import two_terms
from assistant.dialogue.recogniser.asked_how import asked_how
from assistant.dialogue.recogniser.cues import Cue
from assistant.dialogue.recogniser.named_how import named_how, nickname, own_evidence
from assistant.dialogue.rule_numbers import numbered
from assistant.dialogue.rules.context import spoken
from assistant.dialogue.rules.unlawful import unlawful_means
from assistant.dialogue.subjects import of_held_kind
from assistant.model.knowledge import KnowledgeBase
from assistant.model.spelling import distance
from assistant.model.stems import DROPPED
from assistant.text import key, singular, word_set

ANSWERS = ("yes", "no", "unsure", "skip")
ASKING = frozenset(
    {
        "asks-name",
        "alternatives",
        "contrast",
        "describe",
        "list",
        "hybrid",
        "range",
        "size",
        "weight",
        "weight-to-length",
        "rules",
        "keep",
        "handling",
        "hurt",
        "eat",
        "tackle",
        "habitat",
        "names",
        "term",
        "why",
        "how-sure",
        "why-not",
        "change-mind",
        "sources",
        "next",
        "skip",
        "cant-see",
        "undo",
        "start-over",
        "another-fish",
        "help",
        "key",
        "quiz",
        "abundance",
        "elsewhere",
        "medical",
        "meddling",
        "hostile",
    }
)
"""Cues that ask for something by themselves; the others only help to decide."""
QUESTIONING = frozenset(f"asks-{word}" for word in ("what", "how", "when", "where", "who", "can", "do", "many", "any"))
"""Question words; a line without one and without a question mark tells rather than asks."""
INFORMING = frozenset(
    {
        "contrast",
        "describe",
        "list",
        "hybrids",
        "range",
        "size",
        "weight",
        "rules",
        "handling",
        "tackle",
        "habitat",
        "names",
        "term",
    }
)
TELLING_APART = frozenset({"contrast", "vs", "sameness", "term-diff"})
"""Cues of a line that sets two things side by side."""
_WORDS = re.compile(r"[^\W_]+(?:['’][^\W_]+)*", re.UNICODE)
MOST_FOR_ONE = 8
"""Words of a line up to which "the banded one" points back to a fish."""
THE_ONE = re.compile(r"\bthe\s+(\w+(?:\s+\w+)?)\s+(one|ones|kind|sort|fish|1)\b")


class Facts(NamedTuple):
    """Everything that a row may need, as names; ``last`` is the intent answered last."""

    all: frozenset[str]
    last: str = ""


def gather(kb: KnowledgeBase, reading: Reading, cues: Sequence[Cue], held: Held) -> Facts:
    """The facts of a line in its conversation."""
    names = {c.id for c in cues}
    names |= _where(kb, reading)
    if unlawful_means(kb, reading, names) is not None:
        names.add("unlawful")
    how = named_how(kb, reading) | asked_how(kb, reading)
    out = names | _things(kb, reading) | how | _line(reading, cues) | _held(held)
    out |= {f"much-{name}" for name in names if sum(c.id == name for c in cues) > 1}
    if any((x := kb.find("taxon", t)) is not None and x.is_hybrid for t in held.taxa):
        out.add("held-cross")
    out |= {"of-held-kind"} if of_held_kind(kb, reading, held.taxa) else set()
    if held.intent == "list" and other_state(held, reading):
        out.add("other-state")
    if "telling" in out and names & QUESTIONING <= {"asks-do"}:
        out -= {"yes-no", "asks-do"}
        names -= {"asks-do"}
    if names & QUESTIONING or "?" in reading.text or "yes-no" in out:
        out.add("asking-form")
    if names & TELLING_APART and "fish" not in out and two_terms(kb, reading):
        out.add("two-terms")
    if "fish" not in out and old_genus(kb, reading.words)[1]:
        out.add("old-genus")
    if not names & ASKING:
        out.add("no-ask")
        if "seen" not in out:
            out |= _advised(kb, reading)
    return Facts(frozenset(out), held.intent)


LONGEST_ADVICE = 5
"""Words in the longest phrase of a caution or practice that is looked up."""
MOST_ADVISED = 24
"""A longer line is a story."""


def _advised(kb: KnowledgeBase, reading: Reading) -> set[str]:
    """Which kinds of advice the line asks for by a phrase of theirs that makes up half of what it says or more."""
    named = [(m.start, m.end) for m in reading.of("taxon", "hybrid", "group", "place", "water")]
    spans = [m.span() for m in _WORDS.finditer(reading.text)]
    words = [
        w
        for w, (a, b) in zip(reading.words, spans, strict=False)
        if w not in DROPPED and not any(x <= a and b <= y for x, y in named)
    ]
    told = list(reading.words)
    if not words or len(told) > MOST_ADVISED:
        return set()
    least = -(-len(words) // 2)
    for size in range(min(LONGEST_ADVICE, len(told)), least - 1, -1):
        phrases = (" ".join(line[i : i + size]) for line in (told, words) for i in range(len(line) - size + 1))
        if found := {f"{kind}-words" for phrase in phrases for kind in kb.store.get("advice", phrase) or ()}:
            return found
    return set()


def _things(kb: KnowledgeBase, reading: Reading) -> set[str]:
    out: set[str] = set()
    taxa = reading.taxa()
    named = reading.of("taxon", "hybrid")
    grouped = reading.of("group")
    if named or grouped:
        out.add("fish")
    if taxa:
        out.add("taxon")
    if len(taxa) >= 2:
        out.add("two-fish")
    if len({m.words for m in named}) >= 2 and frozenset.intersection(*(frozenset(m.ids) for m in named)):
        out.add("many-names")
    if len(named) + len(grouped) + len(reading.of("likeness")) >= 2:
        out.add("two-mentions")
    if overlapping(kb, reading):
        out.add("overlap")
        out |= {"clipped"} if clipped(kb, reading) else set()
    if len({m.ids for m in (*named, *grouped)}) >= 2:
        out.add("two-kinds")
    if len(taxa) == 1 and not grouped:
        out.add("one-fish")
    if any(kb.taxon(t).is_hybrid for t in taxa if kb.find("taxon", t)):
        out.add("cross")
    if grouped:
        out.add("group")
    if any(len(m.ids) > 1 for m in named):
        out.add("unclear")
    if any(local_name(kb, m) for m in named):
        out.add("local-name")
    if any("x" in key(m.words).split() or "cross" in m.words.lower() for m in reading.of("hybrid", "taxon")):
        out.add("cross-words")
    if any(e[0] == "term" for m in grouped for w in (key(m.words), singular(key(m.words))) for e in kb.spoken(w)):
        out.add("group-term")
    if any(nickname(kb, m) for m in grouped):
        out.add("group-nickname")
    uses = {kb.character(i).use for m in reading.of("character") for i in m.ids if kb.find("character", i)}
    out |= {f"{use}-part" for use in uses}
    for kind, fact in (
        ("likeness", "like"),
        ("term", "term-word"),
        ("character", "part"),
        ("state", "state-word"),
        ("tackle", "tackle-word"),
    ):
        if reading.of(kind):
            out.add(fact)
    for kind, fact in (("length", "len"), ("weight", "wt"), ("girth", "girth"), ("temperature", "temp")):
        if any(m.kind == kind for m in reading.measures):
            out.add(fact)
    return out


def local_name(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a name that is neither the accepted English name nor a scientific one."""
    words = set(key(mention.words).split())
    if any(words <= set(key(t.label).split()) for i in mention.ids if (t := kb.find("taxon", i)) is not None):
        return False
    written = (key(mention.words), singular(key(mention.words)))
    hows = {how for w in written for kind, thing, how in kb.spoken(w) if kind == "taxon" and thing in mention.ids}
    if not hows and not mention.exact:
        return _misspelt_local(kb, mention)
    return bool(hows & {"vernacular", "ambiguous", "synonym"}) and not hows & {"accepted", "scientific"}


def _misspelt_local(kb: KnowledgeBase, mention: Mention) -> bool:
    """True for a slip that is nearer to a local name of the fishes meant than to the accepted name of any."""
    written = singular(key(mention.words))
    taxa = [t for i in mention.ids if (t := kb.find("taxon", i)) is not None]
    near = [(distance(written, key(t.label), MOST_SLIPS), False) for t in taxa]
    near += [(distance(written, singular(key(n.text)), MOST_SLIPS), n.kind in LOCAL_KINDS)
             for t in taxa for n in kb.names(t.id)]
    slips, local = min(near, default=(MOST_SLIPS + 1, False))
    return slips <= MOST_SLIPS and local


def _where(kb: KnowledgeBase, reading: Reading) -> set[str]:
    """ "water" for an invented water or jurisdiction of the demonstration rules, "place" for a real one, a rule."""
    found = [
        p for key in (*reading.places, *([reading.water] if reading.water else ())) if (p := kb.place(key)) is not None
    ]
    out = {"water"} if any(p.invented for p in found) else set()
    out |= {"place-side"} if any(_SIDE.match(reading.text[m.end :].lower()) for m in reading.of("place")) else set()
    out |= {"rule-number"} if numbered(kb, reading) else set()
    return out | ({"place"} if any(not p.invented for p in found) else set())


_SIDE = re.compile(r"\s+(?:side|shore|bank|half|portion|part|end|waters?)\b")
"""Words right behind a place by which one side of a border is meant ("the Indiana side of the Ohio")."""


def _line(reading: Reading, cues: Sequence[Cue]) -> set[str]:
    out: set[str] = set()
    count = len(reading.words)
    seen = sum(not s.retract for s in reading.seen)
    features = len({s.observation.character for s in reading.seen if not s.retract})
    flags = {
        "seen": any(not s.retract for s in reading.seen),
        "counted": any(s.observation.value is not None and not s.retract for s in reading.seen),
        "guess": _guess(reading),
        "guess-last": guess_last(reading),
        "fish-eats": bool(food_told(reading)),
        "eaten-by": eaten_by(reading),
        "who-eats": bool(who_eats(reading)),
        "neither-one": _NEITHER.search(reading.text.lower()) is not None,
        "own-evidence": own_evidence(reading),
        "seen-many": seen > 1,
        "seen-3": features > 2,
        "seen-4": features > 3,
        "retract": any(s.retract for s in reading.seen),
        "correction": bool(reading.corrections) or LENGTH_DENIED in reading.cues,
        "hint": any(h.kind == "group" for h in reading.hints),
        "like": any(h.kind == "like" for h in reading.hints),
        "question-mark": "?" in reading.text,
        "equals-sign": "=" in reading.text,
        "unknown-place": bool(reading.unknown_place),
        "date": bool(reading.date or reading.season),
        "sex": bool(reading.sex),
        "stage": bool(reading.stage),
        "outside": bool(reading.outside),
        "question": reading.question,
        "noise": reading.noise,
        "empty": not count,
        "one-word": count == 1,
        "short": 0 < count <= 3,
        "short6": 0 < count <= 6,
        "short10": 0 < count <= 10,
        "answer": bool(reading.answer),
        f"answer-{reading.answer}": reading.answer in ANSWERS,
        "count": bool(reading.counts),
        "the-one": count <= MOST_FOR_ONE and bool(THE_ONE.search(reading.text.lower())),
        "which-group": _which_group(reading),
        "ends-letter": count > 1 and reading.words[-1] in _LETTERS,
        "about-it": _ABOUT.search(reading.text.lower()) is not None,
        "group-ones": _group_ones(reading),
        "name-last": _name_last(reading),
        "off-name": _off_name(reading),
        "quoted-term": any(_quoted(reading, m) for m in reading.of("term")),
        "of-fish": _of_fish(reading),
        "plural-group": _plural(reading),
        "ends-go": bool(reading.words) and reading.words[-1] == "go",
        "yes-no": _yes_no(cues),
        "either-or": bool(_EITHER.search(reading.text.lower())),
        "size-word": bool(reading.size_word),
        "telling": _telling(reading),
        "half-named": len(set(half_named(reading))) == 1,
        "two-crossed": bool(two_crossed(reading)) and not seen_between(reading),
        "order": any(c.id == "self-order" and _leads(reading, c) for c in cues),
    }
    out.update(name for name, true in flags.items() if true)
    return out


_BEFORE_AN_ORDER = word_set(
    "please pls plz can could would will you u now ok okay just go ahead and then i want need to so also"
)


def _leads(reading: Reading, cue: Cue) -> bool:
    """True for a cue before which stand but polite words ("can you please delete ...")."""
    return all(w in _BEFORE_AN_ORDER for w in key(reading.text[: cue.start]).split())


_BESIDE = word_set("a an the or and vs versus is it this that maybe its either other one some kind of")


def _guess(reading: Reading) -> bool:
    """True for a line that opens with one or two names and a question mark and then goes on ("drum? it grunted")."""
    head, mark, rest = reading.text.partition("?")
    names = [m for m in reading.of("taxon", "hybrid", "group") if m.end <= len(head)]
    if not mark or not rest.strip() or not names:
        return False
    for m in reversed(names):
        head = head[: m.start] + " " * (m.end - m.start) + head[m.end :]
    return all(w in _BESIDE for w in key(head).split())


_MAYBE = re.compile(r"\W*(?:(?:right|maybe|perhaps|possibly|huh|or what|i think|i guess|you think|yeah|then)\W*)*")


def guess_last(reading: Reading) -> bool:
    """True for a line that tells what was seen and ends with a name to be confirmed ("..., saugeye maybe?")."""
    if "?" not in reading.text[-3:]:
        return False
    last = max((m.end for m in reading.of("taxon", "hybrid")), default=0)
    told = [s for s in reading.seen if not s.retract and s.end <= last]
    return bool(told) and _MAYBE.fullmatch(reading.text[last:].lower()) is not None


_NEITHER = re.compile(r"\bneither(?:'?s| of (?:them|em|the two|these)| ones?(?:'?s)?| fish| kind| has| had| have| got"
                      r"| shows?)\b")


_TELLING = word_set("is are was were has had have looks looked isnt wasnt")


def _telling(reading: Reading) -> bool:
    """True for a sentence that states a feature ("tail is forked"), which a bare "forked tail" does not."""
    spans = [s for s in reading.seen if not s.retract]
    return "?" not in reading.text and any(_TELLING & set(s.words.split()) for s in spans)


_KINDS = re.compile(
    r"\b(?:which|what|any|every|all|list|show me|give me|(?<!to )name)\b(?:\s+(?:of|the|your|these|those|other|kinds?|"
    r"sorts?|types?|all|every|else|me|different|a|list|are|do|you|have|know))*\s*$"
)
_PLURAL = re.compile(
    r"\b(?:which|what|list|name|show me|give me)\b[\w\s]{0,20}\b(?:fishes|species|taxa|kinds)\b(?! (?:has|is|was)\b)|"
    r"\b(?:which|what)(?: other)? fish (?:have|live|are|do|in|grow|come|lack|get|were|can)\b|"
    r"\b(?:what|which) (?:lives|live|else|ones)\b|^fishes\b|^(?:fish|species) (?:of|that|which)\b|^species with\b"
)


def _which_group(reading: Reading) -> bool:
    """True for "which sunfishes have ...": a question word right before a group's name, or a plural asked for."""
    text = reading.text.lower()
    found = _PLURAL.search(text)
    if "alternatives" in reading.cues and not (found and reading.seen and "other fish" in found.group()):
        return False
    if found:
        return True
    for m in reading.of("group", "taxon"):
        wide = m.kind == "group" or len(m.ids) > 1
        if wide and _KINDS.search(text[: m.start]) and len(text[m.end :].split()) >= 2:
            return True
    return False


_OF_FISH = re.compile(r"\b(?:of|on|for|in)(?:\s+(?:the|a|an|any|my))?\s*$")


def _plural(reading: Reading) -> bool:
    """True where a group is named in the plural ("sunfishes", "bullheads")."""
    wide = [m for m in reading.of("group", "taxon") if m.kind == "group" or len(m.ids) > 1]
    return any(singular(key(m.words)) != key(m.words) for m in wide)


_ABOUT = re.compile(r"\b(?:what|how) about\b")
"""Words by which the next thing is asked for ("and what about white tips")."""
_LETTERS = frozenset("abcdefgh")
"""What the choices of a quiz are called."""
_ONES_THAT = re.compile(r"\s+(?:ones\b(?! (?:is|was|has)\b)|(?:kinds?|species|types?|sorts?) (?:w|wi|with|having)\b)")


def _group_ones(reading: Reading) -> bool:
    """True for "sunfish family ones with ...": the kinds of a group, of which something more is told."""
    return any(_ONES_THAT.match(reading.text.lower()[m.end :]) for m in reading.of("group"))


def _name_last(reading: Reading) -> bool:
    """True where the line ends with the name of a fish."""
    last = max((m.end for m in reading.of("taxon", "hybrid", "group")), default=0)
    return bool(last) and not key(reading.text[last:])


_OFF = re.compile(r"\s+(?:off(?:\s+of)?|from)(?:\s+(?:a|an|the))?\s+")


def _off_name(reading: Reading) -> bool:
    """True for one fish told off another ("a blue cat off a channel cat")."""
    names = sorted(reading.of("taxon", "hybrid", "group"), key=lambda m: m.start)
    return any(_OFF.fullmatch(reading.text[a.end : b.start].lower()) for a, b in pairwise(names))


def _quoted(reading: Reading, word: Mention) -> bool:
    """True for a word of the glossary that stands between quotation marks."""
    before, after = reading.text[: word.start].rstrip()[-1:], reading.text[word.end :].lstrip()[:1]
    return before in _QUOTES and after in _QUOTES and bool(before and after)


_QUOTES = "'\"\u2018\u2019\u201c\u201d"


def _of_fish(reading: Reading) -> bool:
    """True for "eye colour of the rock bass": a fish named right after "of", "on", "for" or "in"."""
    text = reading.text.lower()
    return any(_OF_FISH.search(text[: m.start]) for m in reading.of("taxon", "hybrid", "group"))


_EITHER = re.compile(r"\b[a-z]+ or [a-z]+\s*[?.!]*$|\by/n\b|\bt/f\b")
"""The end of a line that offers two words to choose from ("small or big")."""


def _yes_no(cues: Sequence[Cue]) -> bool:
    """True for a line that opens with "does", "is", "can", "has": it wants yes or no."""
    return any(
        (c.id in ("asks-do", "asks-can") and c.start <= 5) or (c.id == "have-verb" and c.start == 0) for c in cues
    )


def _told_of_spawning(held: Held) -> bool:
    """True where the last answer told first of all when, where or in what water a fish spawns."""
    lead = held.last.blocks[:1] if held.last is not None else ()
    return any(".spawning-" in s or ".nest-" in s for b in lead for s in b.statements)


def _held(held: Held) -> set[str]:
    out: set[str] = set()
    flags = {
        "held-fish": bool(held.taxa),
        "held-two": len(held.taxa) >= 2 or len(held.shown) >= 2,
        "held-seen": bool(held.seen or held.hints),
        "held-place": bool(held.places or held.water),
        "held-length": bool(held.lengths),
        "held-catch": spoken(held).query is not None,
        "asked": held.asked is not None,
        "walk": held.walk is not None,
        f"after-{held.intent}": bool(held.intent),
        "after-info": held.intent in INFORMING,
        "after-spawning": held.intent == "habitat" and _told_of_spawning(held),
        "held-last": held.last is not None,
        "wanted": held.intent == "describe" and held.wanted != Wanted(),
    }
    out.update(name for name, true in flags.items() if true)
    if held.intent == "undo" and held.last is not None and held.last.rules:
        out.add("after-rules")
    if held.asked is not None:
        out.add(f"asked-{held.asked.kind}")
    return out
