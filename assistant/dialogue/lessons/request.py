"""What a line asks of a lesson: which fishes, which look, which words, how many items (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import dataclass

from assistant.dialogue.fitting import fitting
from assistant.dialogue.subjects import subjects
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import DROPPED, NUMBERS
from assistant.reasoning.living import living_in
from assistant.reasoning.place_prior import expand_places
from assistant.reasoning.selection import species_below
from assistant.text import key, singular, unique, word_set

_GRADE = re.compile(r"\b(?:grade\s*\d+|\d+(?:st|nd|rd|th)\s+grade\w*"
                    r"|(?:first|second|third|fourth|fifth|sixth)\s+grade\w*|grade\w*\s+\w+)")
_YOUNG = re.compile(r"\b(kids?|child(?:ren)?|pupils?|elementary|kindergarten|little ones|simple words"
                    r"|plain words|year olds?|scouts?|campers?|easy|easier|simpler|simple (?:key|quiz|questions?))\b")
_TRADE = re.compile(r"\b(biologists?|college|university|technical|latin|curators?|professionals?)\b")
_PICTURE = re.compile(r"\b(photos?|pictures?|pics?|images?|at a glance|without touching|from the outside|outside marks"
                      r"|(?:only|just) (?:the )?(?:things?|stuff|marks?|features?|what)\b.{0,24}\b(?:see|spot)"
                      r"|easy to (?:see|spot)|by eye|by looking)\b")
_UNCOUNTED = re.compile(r"\bno count\w*|\bwithout count\w*|\bnot? count\w*|\bdon'?t count")
_TOUCH = re.compile(r"\b(touch|by feel|feel only|blind)\b")
_LAB = re.compile(r"\b(lab|laboratory|bench|dissect\w*|dead)\b")
_TRUE_FALSE = re.compile(r"\b(?:true (?:or|and|/) false|true/false|t/f|t or f|yes (?:or|/) no|yes/no)\b")
_GENERA = re.compile(r"\b(genera|genuses|genus)\b")
_ITEMS = re.compile(r"\b(\d+|" + "|".join(w for w in NUMBERS if w != "zero") + r")[\s-]+"
                    r"(?:(?:quick|short|good|easy|hard|simple|fun|quiz|trivia|multiple choice|true or false|true/false"
                    r"|t/f|flash|yes or no)\s+)?(?:questions?|items?|q's|qs|problems?|rounds?|cards?|flashcards?)\b")
_LINES = re.compile(r"\b(\d+|" + "|".join(w for w in NUMBERS if w != "zero") + r")\s+"
                    r"(?:true(?:/| or | and | )false|t/f|t or f|of (?:them|those|each)"
                    r"|(?:lines|statements|sentences)\b)")
_SINGLY = re.compile(r"\bone (?:question )?(?:at a time|by one|after (?:the other|another))\b")
_STARTS = re.compile(r"\W*(?:(?:please|ok|okay|now|can you|could you|would you|lets|let's|let us)\W+)*"
                     r"(?:start|begin|kick off|run|launch)\b")
"""The beginning of a line that wants the questions now, one by one, whoever they are for."""
_HYPHENS = re.compile(r"(?<=[a-z])-(?=or\b|and\b|false\b)|(?<=\bor)-|(?<=\band)-")
"""The hyphens of "true-or-false"."""
_QUIZ_OF = re.compile(r"\bquiz(?:zes)? of (\d+|" + "|".join(w for w in NUMBERS if w != "zero") + r")\b")
_PAPER = re.compile(r"\b(answers? (?:key |sheet )?(?:separate|apart|at the end|on the back)|separate answers?"
                    r"|print\w*|hand ?outs?|worksheet|the class"
                    r"|answer key|for (?:my|the) (?:class|students|pupils))\b")
_OTHERS = re.compile(r"\b(?:for|to quiz|i quiz|to test|to give)\s+(?:(?:my|our|the|some|a|an|his|her|their|grade)\s+)?"
                     r"(?:\w+[\s-]+){0,2}?(?:kids?|children|class\w*|students?|pupils?|scouts?|campers?|graders?|grades?"
                     r"|sixes|year olds?|troop|group|club)\b"
                     r"|\b(?:questions?|quiz|something) to (?:ask|read|give|hand|copy|use)\b"
                     r"|\bread (?:it |them )?(?:out|aloud)\b")
_ME = re.compile(r"\b(?:quiz|test|ask|question|drill|grill) (?:me|us)\b")
_CARDS = re.compile(r"\b(?:flash ?-?cards?|cards?)\b")
_BODY = re.compile(r"\b(?:body parts?|(?:parts?|bits) of (?:a|the) fish(?:es)?|fish parts?|anatomy|vocabulary|vocab"
                   r"|terminology|glossary|(?:on|about|with|for) (?:(?:the|fish|new|key) )*(?:parts|words|terms))\b")
_BODY_WORDS = word_set("fins fin scales scale mouth mouths teeth gill gills")
_FISH = word_set("fish fishes")
_THOSE = word_set("those these them")
_POINTING = word_set("it that this against them")
MOST_ITEMS = 20


@dataclass(frozen=True, slots=True)
class Request:
    """Fishes, the look and level asked for, the number of items (0 where none is said), and whether it is for paper."""

    taxa: tuple[str, ...]
    look: str
    level: str
    items: int
    paper: bool
    named: tuple[str, ...] = ()
    """The taxa that the line names, as wide as it names them: a genus stays a genus."""
    cards: bool = False
    true_false: bool = False
    body: tuple[str, ...] | None = None
    """Words of the body that a quiz is about instead of fishes (empty: any of them); None for one on fishes."""


def request_of(turn: Turn, look: str, carried: bool = True) -> Request:
    """What the line asks for; ``look`` where it names none, the fishes held where it names none and ``carried``."""
    text = turn.reading.text.lower()
    level = level_of(text, turn.cues)
    taxa = fishes_of(turn, carried)
    if _GENERA.search(text):
        taxa = genera_of(turn.kb, taxa) or taxa
    others = bool(_OTHERS.search(text) and not _ME.search(text) and not _SINGLY.search(text))
    others = others and not _STARTS.match(text)
    paper = (bool(_PAPER.search(text)) or others) and not _SINGLY.search(text)
    return Request(taxa, look_of(text) or look, level, items_of(text), paper, named_in(turn, carried),
                   bool(_CARDS.search(text)), bool(_TRUE_FALSE.search(_HYPHENS.sub(" ", text))), body_of(turn))


def for_asker(text: str) -> bool:
    """True for a quiz that the asker wants to take ("quiz me")."""
    return _ME.search(text.lower()) is not None


def level_of(text: str, cues: Collection[str]) -> str:
    """The level of words that a line asks for: young where it speaks of children, grades or plain words."""
    if _GRADE.search(text) or _YOUNG.search(text) or "plainer" in cues:
        return "young"
    return "trade" if _TRADE.search(text) else "plain"


def body_of(turn: Turn) -> tuple[str, ...] | None:
    """The words of the body that a quiz is asked on ("fins", "parts of a fish", "those"), where no fish is named."""
    kb, words = turn.kb, set(turn.reading.words)
    if turn.reading.of("taxon", "hybrid", "group") or _marked(turn):
        return None
    parts = [m.words for m in turn.reading.of("character") if any(kb.character(c).use == "identify" for c in m.ids)]
    parts += [m.words for m in turn.reading.of("term") if any((t := kb.find("term", i)) and t.where for i in m.ids)]
    last = turn.held.last if turn.held.intent == "term" and words & (_POINTING | _THOSE) else None
    told = dict.fromkeys(s.removeprefix("term:") for b in last.blocks for s in b.statements) if last is not None else {}
    parts += [t.label for i in told if (t := kb.find("term", i)) is not None and t.where]
    named = {" ".join(singular(w) for w in key(p).split() if w not in _FISH | DROPPED) for p in parts} - {""}
    named |= {singular(w) for w in words & _BODY_WORDS}
    named -= {n for n in named for other in named if set(n.split()) < set(other.split())}
    return tuple(sorted(named)) if named or _BODY.search(turn.reading.text.lower()) else None


def look_of(text: str) -> str:
    """The look that a line limits itself to; empty where it names none."""
    for pattern, look in ((_TOUCH, "touch"), (_PICTURE, "picture"), (_UNCOUNTED, "uncounted"), (_LAB, "lab")):
        if pattern.search(text):
            return look
    return ""


def items_of(text: str) -> int:
    """The number of items asked for, 0 where none is said."""
    text = _HYPHENS.sub(" ", text)
    found = _ITEMS.search(_SINGLY.sub(" ", _GRADE.sub(" ", text))) or _QUIZ_OF.search(text)
    found = found or (_LINES.search(text) if _TRUE_FALSE.search(text) else None)
    if found is None:
        return 0
    return max(1, min(MOST_ITEMS, int(NUMBERS.get(found[1], found[1]))))


def fishes_of(turn: Turn, carried: bool = True) -> tuple[str, ...]:
    """The species named, those of the groups named, kept to the place named where any of them lives there."""
    kb = turn.kb
    if marked := _marked(turn):
        return _at(kb, marked, _places(turn)) or marked
    named = _meant(turn, carried)
    if not named and (carried or turn.reading.places) and _places(turn):
        everything = tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)
        return _at(kb, everything, _places(turn))
    taxa = tuple(dict.fromkeys(s for key in named for s in _spread(kb, key)))
    chosen_outright = all(kb.find("taxon", key) is not None and kb.taxon(key).is_species for key in named)
    return taxa if chosen_outright else _at(kb, taxa, _places(turn)) or taxa


def _marked(turn: Turn) -> tuple[str, ...]:
    """The fishes that show the mark by which a quiz names them ("on whiskered fish"); none where one is named."""
    seen = [s.observation for s in turn.reading.seen if not s.retract]
    if not seen or "quiz" not in turn.cues or turn.reading.of("taxon", "hybrid", "group"):
        return ()
    if not _OF_MARKED.search(_HYPHENS.sub(" ", turn.reading.text.lower())):
        return ()
    everything = tuple(t for t in turn.kb.species if not turn.kb.taxon(t).is_hybrid)
    return tuple(f.taxon for f in fitting(turn.kb, everything, seen).fits[:MOST_MARKED])


_OF_MARKED = re.compile(r"\b(?:on|about|for|of|over)\s+(?:[a-z']+ ){0,3}fish(?:es)?\b")
MOST_MARKED = 16
"""Fishes of one mark that a quiz draws on."""


def _meant(turn: Turn, carried: bool) -> tuple[str, ...]:
    """Every fish and group named, a name of several fishes as the likeliest of them; else those held."""
    mentions = turn.reading.of("taxon", "hybrid", "group")
    told = unique(m.ids[0] for m in mentions if m.ids)
    if len(told) == 1 and turn.held.taxa and _POINTING & set(turn.reading.words):
        told = unique((turn.held.taxa[0], *told))
    return told or subjects(turn, carried)


def named_in(turn: Turn, carried: bool) -> tuple[str, ...]:
    """The taxa named, groups as the taxa that they consist of."""
    kb = turn.kb
    out: dict[str, None] = {}
    for named in _meant(turn, carried):
        group = kb.find("group", named) if kb.find("taxon", named) is None else None
        for member in group.members if group is not None else (named,):
            out.setdefault(member)
    return tuple(out)


def genera_of(kb: KnowledgeBase, taxa: tuple[str, ...]) -> tuple[str, ...]:
    """The genera of some species, each once; empty where there is only one."""
    found = dict.fromkeys(k for t in taxa for k in kb.lineage(t) if kb.taxon(k).rank == "genus")
    return tuple(found) if len(found) > 1 else ()


def _spread(kb: KnowledgeBase, key: str) -> tuple[str, ...]:
    found = kb.find("taxon", key)
    return (key,) if found is not None and found.is_species else species_below(kb, key)


def _places(turn: Turn) -> tuple[str, ...]:
    places = turn.reading.places or turn.held.places
    return tuple(p for p in places if (found := turn.kb.place(p)) is not None and not found.invented
                 and expand_places(turn.kb, (p,)))


def _at(kb: KnowledgeBase, taxa: tuple[str, ...], places: tuple[str, ...]) -> tuple[str, ...]:
    found = {t for p in places for t in living_in(kb, taxa, (p,))}
    return tuple(t for t in taxa if t in found) if places else taxa
