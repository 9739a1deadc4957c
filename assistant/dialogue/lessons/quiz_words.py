"""Quiz items put into words, and typed answers judged kindly (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.dialogue.lessons.levels import clause_words as clause
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.model.spelling import allowed, distance
from assistant.reasoning.quiz import Fact, Item
from assistant.text import join, key, singular

LETTERS = "abcdefgh"
LONGEST_NAME, MOST_NAMES = 2, 3
"""Words of another name of a thing that is told with the answer, and how many such names."""


@dataclass(frozen=True, slots=True)
class Question:
    """An item in words: the question, the choices, the right one, the reason, and the tempting mistake."""

    text: str
    choices: tuple[str, ...]
    answer: int
    reason: str
    mistake: str
    statements: tuple[str, ...]

    @property
    def letter(self) -> str:
        """The letter of the right choice."""
        return LETTERS[self.answer].upper()


def worded(kb: KnowledgeBase, item: Item, level: str = "plain") -> Question:
    """An item in the words of a level (young, plain, trade)."""
    choices = tuple(_choice(kb, item, c, level) for c in item.choices)
    statements = speak.short_ids(s for f in (*item.facts, *item.because) for s in f.statements)
    return Question(_question(kb, item, level), choices, item.answer, _reason(kb, item, level), _mistake(kb, item,
        choices, level),
                    statements)


def _term(kb: KnowledgeBase, key: str) -> Term:
    found = kb.find("term", key)
    assert found is not None, key
    return found


def _choice(kb: KnowledgeBase, item: Item, choice: str, level: str) -> str:
    if item.kind == "true-false":
        return say.TRUE if choice == "true" else say.FALSE
    if item.kind == "which-feature":
        return clause(kb, choice, level)
    if item.kind == "term":
        return _term(kb, choice).label
    if item.kind == "term-where":
        return _term(kb, choice).where
    return speak.fish(kb, choice)


def _question(kb: KnowledgeBase, item: Item, level: str) -> str:
    if item.kind == "term":
        return say.quiz_term(_term(kb, item.facts[0].state).plain)
    if item.kind == "term-where":
        return say.quiz_term_where(_term(kb, item.facts[0].state).label)
    told = say.either([clause(kb, f.state, level) for f in item.facts], "and")
    usual = any(f.usual for f in item.facts)
    if item.kind == "which-fish":
        return say.quiz_which_fish(told, usual)
    if item.kind == "which-feature":
        return say.quiz_which_feature(speak.fish(kb, item.taxon), usual)
    if item.kind == "true-false":
        return say.quiz_true_false(speak.fish(kb, item.taxon), told, usual)
    return say.quiz_catch(told)


def _reason(kb: KnowledgeBase, item: Item, level: str) -> str:
    if item.kind == "term":
        term = _term(kb, item.facts[0].state)
        others = [w for w in term.words if len(w.split()) <= LONGEST_NAME][:MOST_NAMES]
        return say.quiz_term_reason(term.label, join(others, "or"))
    if item.kind == "term-where":
        return _term(kb, item.facts[0].state).plain
    if item.kind == "true-false" and item.answer == 1:
        return join([_has(kb, f, level) for f in item.because]) or say.quiz_not_so(speak.fish(kb, item.taxon))
    first = item.facts[0]
    told = say.either([clause(kb, f.state, level) for f in item.facts], "and")
    memory = any(f.basis == "memory" for f in item.facts)
    return say.quiz_has(speak.fish(kb, first.taxon), told, memory, any(f.usual for f in item.facts))


def _has(kb: KnowledgeBase, fact: Fact, level: str) -> str:
    return say.quiz_has(speak.fish(kb, fact.taxon), clause(kb, fact.state, level), fact.basis == "memory", fact.usual)


def _mistake(kb: KnowledgeBase, item: Item, choices: Sequence[str], level: str) -> str:
    if item.tempting is None or item.kind in ("term", "term-where"):
        return ""
    if item.kind == "true-false":
        return say.quiz_mixed_up(speak.fish(kb, item.facts[0].taxon)) if item.answer == 1 else ""
    because = " ".join(_has(kb, f, level) for f in item.because)
    return say.quiz_tempting(choices[item.tempting], because)


YES_WORDS, NO_WORDS = frozenset(["true", "t", "yes", "y", "right", "correct", "yep", "yeah"]), frozenset(["false", "f",
    "no", "n", "wrong", "nope", "nah"])


def judge(question: Question, typed: str) -> int | None:
    """The choice that a typed answer means (a letter, a number, a name, enough of its words); None when unclear."""
    said = key(typed).split()
    words = [w for w in said if w not in say.ANSWER_FILLERS] or said[-1:]
    if not words:
        return None
    if question.choices == (say.TRUE, say.FALSE):
        if set(words) & YES_WORDS and not set(words) & NO_WORDS:
            return 0
        return 1 if set(words) & NO_WORDS else _by_letter(words, 2)
    found = _by_letter(words, len(question.choices))
    return found if found is not None else by_words(question.choices, words)


_TAKEN_BACK = re.compile(
    r"(?:^|[\s,.;:?!-]+)(?:(?:or|oh|ah|uh|um|hm+|ok|well|but)\W+)*"
    r"(?:(?:no|nope|nah)(?=\s*[,.;!?-]|\s+(?:wait|actually|i mean|make)\b)|wait|hold on|actually|i mean|i meant|"
    r"or rather|scratch that|make (?:it|that)|change (?:it|that) to|sorry)\b\W*"
    r"(?:(?:no|wait|actually|i mean|it's|its|make (?:it|that)|go with|say|i'?ll say)\b\W*)*")
"""Words by which an answer is taken back for another."""
_DENIED = re.compile(r"\bnot\s+(?:the\s+)?[\w ]+?(?:[,;.]|\bbut\b)\s*")


def settled(question: Question, typed: str) -> str:
    """What a typed answer comes to where it names one choice and takes it back ("a, no wait, b"); else all of it."""
    text = typed.lower()
    if judge(question, text) is not None and not _TAKEN_BACK.search(text):
        return typed
    kept = _DENIED.sub(" ", text)
    parts = [p for p in _TAKEN_BACK.split(kept) if p.strip()]
    if (len(parts) > 1 or kept != text) and parts and judge(question, parts[-1]) is not None:
        return parts[-1]
    return typed


def _by_letter(words: Sequence[str], count: int) -> int | None:
    if len(words) != 1:
        return None
    word = words[0]
    if word in LETTERS[:count]:
        return LETTERS.index(word)
    ordinals = ("first", "second", "third", "fourth")
    if word in ordinals[:count]:
        return ordinals.index(word)
    return int(word) - 1 if word.isdigit() and 1 <= int(word) <= count else None


def by_words(choices: Sequence[str], words: Sequence[str]) -> int | None:
    """The one choice with the most typed words in it; small slips of spelling are let pass."""
    scores = []
    for choice in choices:
        named = [singular(w) for w in key(choice).split()]
        hits = sum(any(distance(singular(w), n, 2) <= allowed(len(n)) for n in named) for w in words)
        scores.append(hits / (len(named) ** .25))
    best = max(scores)
    return scores.index(best) if best > 0 and scores.count(best) == 1 else None
