"""Three ways of saying the same: plainest words for the young, plain words, the trade's terms (layer 4).

The facts are the same at every level; only labels change. For the young, a term of the glossary gives way to its
everyday word where that keeps the noun ("dorsal fin" to "back fin").
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.dialogue.wording.core import no_other
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import Told
from assistant.reasoning.splits import CHILD, READER, Reader, loose_denials
from assistant.text import article, key

if TYPE_CHECKING:
    from assistant.reasoning.key import Lead

_LIST = re.compile(r"(?:, \w+)* and \w+ fins?\b")
LEVELS = ("young", "plain", "trade")


def reader_of(level: str) -> Reader:
    """What the choices of a key cost those for whom a level is meant."""
    return CHILD if level == "young" else READER


def everyday(kb: KnowledgeBase) -> Mapping[str, str]:
    """Terms of the body and the everyday words for them, from the glossary; the word of the part alone as well."""
    return kb.derived("everyday", _everyday)


def _everyday(kb: KnowledgeBase) -> dict[str, str]:
    out: dict[str, str] = {}
    for term in kb.all("term"):
        noun = term.label.rpartition(" ")[2]
        same = [w for w in term.words if w.rpartition(" ")[2] == noun and " " in w]
        if not term.where or " " not in term.label or not same:
            continue
        word = min(same, key=lambda w: (len(w.split()), same.index(w)))
        out[term.label] = word
        if noun == "fin":
            out[term.label.removesuffix(" fin")] = word.replace(" ", "-")
    return {label: word for label, word in out.items() if label.rpartition(" ")[2] not in out or " " not in label}


def young(kb: KnowledgeBase, text: str) -> str:
    """A text with everyday words in place of terms of the body."""
    words = everyday(kb)
    if not words:
        return text
    pattern = "|".join(re.escape(w) for w in sorted(words, key=lambda w: (-len(w), w)))
    return re.sub(rf"\b(?:([Aa]n?) )?({pattern})(s?)\b",
                  lambda m: _in_place(m[1], _listed(m, words[m[2]]) + m[3]), text)


def _listed(found: re.Match[str], word: str) -> str:
    """The word without its noun where the noun follows at the end of a list ("back, bottom and tail fins")."""
    return word.removesuffix("-fin") if _LIST.match(found.string, found.end()) else word


def _in_place(before: str | None, word: str) -> str:
    """An everyday word where a term stood, with the article that it asks for."""
    if before is None:
        return word
    fitting = article(word)
    return f"{fitting.capitalize() if before[0].isupper() else fitting} {word}"


def character_words(kb: KnowledgeBase, character: str, level: str) -> str:
    """The one name of a character at a level."""
    found = kb.character(character)
    if level == "trade":
        return found.trade or found.label
    return young(kb, found.label) if level == "young" else found.label


def state_words(kb: KnowledgeBase, state: str, level: str) -> str:
    """The name of a state at a level."""
    found = kb.state(state)
    if level == "trade" and found.trade:
        return found.trade.partition("|")[0]
    return young(kb, found.label) if level == "young" else found.label


def clause_words(kb: KnowledgeBase, state: str, level: str) -> str:
    """What a fish "has" by a state."""
    found = kb.state(state)
    text = (found.clause or found.label).partition("|")[0]
    return young(kb, text) if level == "young" else text


def question_words(kb: KnowledgeBase, character: str, level: str) -> str:
    """The question about a character at a level."""
    text = kb.character(character).question
    return young(kb, text) if level == "young" else text


def value_words(kb: KnowledgeBase, told: Told | None, level: str) -> str:
    """What is told of a character in a fish at a level, with how often; no marks of doubt."""
    if told is None:
        return say.NOTHING_HELD
    if told.numbers is not None:
        number = speak.bounded(told, speak.number_words(kb.character(_character_of(kb, told)), told.numbers))
        return speak.narrowed(kb, told, number)
    parts = []
    loose = loose_denials(kb, told.states[0][0].partition(".")[0]) if told.states else frozenset()
    for state, share in [s for s in told.states if s[0] not in loose] or told.states:
        word = speak.word_of(kb, share, len(told.states))
        text = state_words(kb, state, level)
        text = no_other(text) if speak.denies_the_others(kb, kb.state(state), told.taxon) else text
        parts.append((say.YOUNG_OFTEN.get(word, word) if level == "young" else word, text))
    return speak.narrowed(kb, told, speak.with_words(parts, say.either))


def _character_of(kb: KnowledgeBase, told: Told) -> str:
    record = kb.record_at(f"st:{told.statements[0]}")
    return str(record.character) if record is not None else ""


def lead_words(kb: KnowledgeBase, character: str, lead: Lead, level: str) -> str:
    """What a lead of a key says: the feature and the state or count that takes the reader on.

    A state whose name only repeats the feature, or says that it is there or lacking, is told as what the fish has.
    """
    if lead.states and level != "trade":
        feature = set(key(kb.character(character).label).split()) | say.BARE_WORDS
        if all(set(key(kb.state(s).label).split()) <= feature for s in lead.states):
            return say.lead("", say.either([clause_words(kb, s, level) for s in lead.states]))
    return say.lead(character_words(kb, character, level), choice_words(kb, lead, level))


def choice_words(kb: KnowledgeBase, lead: Lead, level: str) -> str:
    """The state or count of a lead alone."""
    if lead.states:
        return say.either([state_words(kb, s, level) for s in lead.states])
    return say.at_most(lead.high) if lead.high is not None else say.at_least(lead.low or 0)
