"""Bare answers to the question that was asked back (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.amounts import UNITS
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.reader.tokens import Token
from assistant.model.records import Character, Statement
from assistant.model.stems import DROPPED, NEGATORS, NUMBERS
from assistant.reasoning.observed import Observation
from assistant.text import key as folded
from assistant.text import word_set

MOST_WORDS = 9
"""A longer line is a story, not an answer."""
WORDS = ("unsure", "skip", "yes", "no", "either", "first", "second", "third", "fourth", "last")
PREFIX = "answer-"


class Answered(NamedTuple):
    """The answer: yes, no, unsure, skip, or the id of the choice taken; what it lets one observe; a count was told."""

    answer: str = ""
    seen: tuple[Seen, ...] = ()
    counted: bool = False
    whole: bool = False
    """The line is a choice as it was offered, or its number, and says nothing else."""


def read_answer(tokens: Sequence[Token], held: Held, seen: Sequence[Seen], lexicon: Lexicon) -> Answered:
    """What a line answers to the question asked back; a bare yes or no is read even when nothing was asked."""
    word = _word(tokens, lexicon)
    asked = held.asked
    if asked is None:
        counted = _of_contrast(tokens, held, seen, lexicon)
        if counted is not None:
            return counted
        return Answered(word if word in ("yes", "no", "unsure", "skip") or len(tokens) <= 3 else "")
    if asked.kind == "character":
        return _of_character(tokens, asked, word, seen, lexicon)
    choice = _choice(tokens, asked, word)
    return Answered(choice or word)


INFORMED = ("contrast", "describe")
_COUNTING = word_set(
    "i get got count counted see mine has had its it is that one this on have make them em um ok so a side per each "
    "both mines ours his hers my the fish here counts counting saw find found shows show with just only exactly all we "
    "there theres are was were came comes up out to well then and")


def _of_contrast(tokens: Sequence[Token], held: Held, seen: Sequence[Seen], lexicon: Lexicon) -> Answered | None:
    """A bare number after a comparison or description that leads with a count ("I get six"), as that count."""
    if held.intent not in INFORMED or held.last is None or seen or not held.last.blocks:
        return None
    number = _number(tokens)
    rest = [t.word for t in tokens if not NUMBERS.get(t.word, t.word).isdigit() and t.word not in _COUNTING]
    records = (lexicon.kb.record_at(s) for s in held.last.blocks[0].statements)
    led = next((c for r in records if isinstance(r, Statement)
                and (c := lexicon.kb.find("character", r.character)) is not None), None)
    if number is None or rest or led is None or led.kind != "count":
        return None
    return Answered(str(number), (_made(Observation(led.id, value=float(number)), tokens),), counted=True)


def _word(tokens: Sequence[Token], lexicon: Lexicon) -> str:
    """The kind of answer a short line, or the opening of a longer one, gives."""
    words = [t.word for t in tokens]
    if not words:
        return ""
    whole = lexicon.cues(" ".join(words[:8]))
    for name in WORDS:
        if PREFIX + name in whole:
            return name
    opening = [t.word for t in tokens if t.clause == tokens[0].clause]
    tries = [" ".join(opening[:n]) for n in range(min(6, len(opening)), 0, -1)]
    for name in ("unsure", "skip"):
        if any(PREFIX + name in lexicon.cues(p) for p in tries if len(p) > 3) and len(words) <= MOST_WORDS:
            return name
    short = len(words) <= MOST_WORDS
    for phrase in tries:
        for name in WORDS[2:]:
            if PREFIX + name in lexicon.cues(phrase) and (short or phrase == " ".join(opening)):
                return name
    return ""


def _choice(tokens: Sequence[Token], asked: Asked, word: str) -> str:
    order = {"first": 0, "second": 1, "third": 2, "fourth": 3, "last": len(asked.choices) - 1}
    if word in order and 0 <= order[word] < len(asked.choices):
        return asked.choices[order[word]][0]
    if len(tokens) == 1 and len(tokens[0].word) == 1 and asked.choices:
        at = (
            "abcdefgh".find(tokens[0].word)
            if tokens[0].word.isalpha()
            else int(tokens[0].word) - 1
            if tokens[0].word.isdigit()
            else -1
        )
        if 0 <= at < len(asked.choices):
            return asked.choices[at][0]
    typed = {t.word for t in tokens} - DROPPED
    denied = bool(NEGATORS & typed)
    scored = [
        (len(typed & set(words.lower().replace("-", " ").split())), -n, key)
        for n, (key, words) in enumerate(asked.choices)
        if denied or not NEGATORS & set(words.lower().split())
    ]
    best = max(scored, default=(0, 0, ""))
    ties = [s for s in scored if s[0] == best[0]]
    enough = 0 < len(typed) <= 2 * best[0]
    return best[2] if enough and len(ties) == 1 and len(tokens) <= MOST_WORDS else ""


def _as_offered(tokens: Sequence[Token], asked: Asked) -> str:
    """The choice whose very words, or whose number, make up the line."""
    line = " ".join(t.word for t in tokens)
    if line.isdigit() and 1 <= int(line) <= len(asked.choices):
        return asked.choices[int(line) - 1][0]
    return next((name for name, words in asked.choices if folded(words) == line), "")


def _of_character(tokens: Sequence[Token], asked: Asked, word: str, seen: Sequence[Seen], lexicon: Lexicon) -> Answered:
    offered = _as_offered(tokens, asked)
    if offered and lexicon.kb.find("character", asked.character) is not None:
        state = offered if "." in offered else f"{asked.character}.{offered}"
        if state in {s.id for s in lexicon.kb.states(asked.character)}:
            return Answered(state, (_made(Observation(asked.character, (state,)), tokens),), whole=True)
    told = [s for s in seen if s.observation.character == asked.character]
    if told:
        return Answered(word or told[0].words, counted=told[0].observation.value is not None)
    if word in ("unsure", "skip") or not tokens:
        return Answered(word)
    found = lexicon.kb.find("character", asked.character)
    if found is None:
        return Answered(word)
    if found.is_number:
        number = _number(tokens)
        if number is None or _of_other_things(tokens, found, lexicon):
            return Answered(word)
        return Answered(word or str(number), (_made(Observation(found.id, value=float(number)), tokens),), counted=True)
    state = "" if seen and _of_other_things(tokens, found, lexicon) else _state(tokens, asked, word, lexicon)
    if state:
        hedged = any("hedge" in lexicon.cues(t.word) for t in tokens)
        return Answered(word or state, (_made(Observation(found.id, (state,), hedged=hedged), tokens),))
    return Answered(word)


def _number(tokens: Sequence[Token]) -> int | None:
    if len(tokens) > MOST_WORDS:
        return None
    for token in tokens:
        figure = NUMBERS.get(token.word, token.word)
        if figure.isdigit() and len(figure) < 4:
            return int(figure)
    return None


def _of_other_things(tokens: Sequence[Token], asked: Character, lexicon: Lexicon) -> bool:
    """True for a number of something else than was asked for ("about 8 inches" or "7 bars" of dorsal spines)."""
    own = {s.text for s in lexicon.stems(folded(f"{asked.label} {asked.trade} {asked.question}").split())}
    nouns = (t.word for t in tokens if lexicon.is_part(t.word) or lexicon.names_part(t.word))
    return any(t.word in UNITS for t in tokens) or bool({s.text for w in nouns for s in lexicon.stems([w])} - own)


def _state(tokens: Sequence[Token], asked: Asked, word: str, lexicon: Lexicon) -> str:
    """The state that a bare answer picks: by its place in the list, by yes or no, or by the words of a choice."""
    choices = tuple((key if "." in key else f"{asked.character}.{key}", words) for key, words in asked.choices)
    valid = {s.id for s in lexicon.kb.states(asked.character)}
    if word in ("yes", "no"):
        bare = PREFIX + word in lexicon.cues(" ".join(t.word for t in tokens))
        return _yes_no(asked.character, word, choices if bare else (), lexicon)
    if len(tokens) > MOST_WORDS:
        return ""
    picked = _choice(tokens, Asked(asked.kind, asked.question, asked.character, choices), word)
    return picked if picked in valid else ""


def _yes_no(character: str, word: str, choices: Sequence[tuple[str, str]], lexicon: Lexicon) -> str:
    """The state that "no" stands for is the one that means nothing is there, else the one of ``choices`` that denies;
    "yes" is its only counterpart.
    """
    states = lexicon.kb.states(character)
    denying = [p.id for p in lexicon.phrases("-") if p.kind == "state" and p.character == character]
    nothing = sorted(set(denying)) or [c for c, words in choices if words.split()[0] in NEGATORS]
    if word == "no":
        return nothing[0] if len(nothing) == 1 else ""
    umbrella = [s.id for s in states if s.broader is None and s.id not in nothing]
    return umbrella[0] if len(umbrella) == 1 and nothing else ""


def _made(observation: Observation, tokens: Sequence[Token]) -> Seen:
    words = " ".join(t.word for t in tokens)
    return Seen(observation, words, tokens[0].start, tokens[-1].end)
