"""What the words and facts of a line lean to, fitted to many ways of asking, beside what the table says (layer 4).

The table of ``intent_rows`` says what is meant where it is sure; people ask in more ways than rows foresee. Every sign
of a line (a fact, a word, its beginning and stem, two words side by side, a word of a question, a word after the intent
of the turn before) leans to some intents by a weight of the base (``tf:Leaning``), the logarithm of how much likelier
it makes them. The table's choice counts a little, in short lines much; from ``SURE`` on it stands.
The weights are a multinomial logistic regression with an L2 penalty: ``python -m tests.bench.leanings`` fits them.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping

from assistant.dialogue.reader.reading import Reading
from assistant.dialogue.recogniser.facts import Facts
from assistant.dialogue.recogniser.intents import Recognised
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import spelt_out, stem

OWN = 0.4
"""What the table's choice adds to the weight of its intent in any line; little, as the leanings know its facts."""
FEW_WORDS, SHORT = 4, 2.0
"""What a row adds besides in so short a line that begins a conversation, where bare phrases are to be reached."""
SURE = 93
"""From this score on the table's choice stands: emergencies, orders, answers to what was asked back."""
MOST_WORDS = 60
ALWAYS, FIRST = "always", "last.nothing"
UNDO = "undo"
TAKING_BACK = frozenset(("fact.undo", "fact.undo-weak", "fact.retract", "fact.correct", "fact.correction"))
"""Without one of these nothing is ever taken back by a leaning alone."""
BEGINNING = 4
"""Letters of a longer word that are a sign by themselves: a slip or another ending leaves most of them."""
_QUESTION = re.compile(r"([^.;!?,]*)\?")
_STOP = re.compile(r"(?<=[.!?])\s+")
_WORD = re.compile(r"[a-z]+|\d+|<[a-z-]+>|\?")


def signs(reading: Reading, facts: Facts) -> frozenset[str]:
    """The signs of a line as names of leanings: its facts, words, their beginnings and stems, pairs of words, named
    things by their kind, the words of what a question mark closes and of the last of several sentences, and its words
    after the intent of the turn before.
    """
    words = _words(reading)
    pairs = zip(["-", *words], [*words, "-"], strict=True)
    long = (w for w in words if len(w) > BEGINNING and not w.startswith("a-"))
    return frozenset((
        ALWAYS, f"last.{facts.last}" if facts.last else FIRST, *(f"fact.{name}" for name in facts.all),
        *(f"word.{word}" for word in words), *(f"pair.{a}.{b}" for a, b in pairs),
        *(f"start.{word[:BEGINNING]}" for word in long),
        *(f"stem.{stem(word)}" for word in words if len(word) >= BEGINNING and word.isalpha()),
        *(f"asked.{word}" for word in _asked(reading)),
        *(f"end.{word}" for word in _ending(reading)),
        *(f"after.{facts.last}.{word}" for word in words if facts.last)))


def leanings(kb: KnowledgeBase, found: Iterable[str]) -> dict[str, float]:
    """The summed weight of each intent under these signs; empty for a base without leanings."""
    sums: dict[str, float] = {}
    weights: dict[str, tuple[tuple[str, float], ...]] = kb.derived("leanings", lambda _: {})
    for sign in sorted(found):
        if (leaning := kb.find("leaning", sign)) is not None:
            if sign not in weights:
                weights[sign] = tuple(map(_weight, leaning.toward))
            for intent, weight in weights[sign]:
                sums[intent] = sums.get(intent, 0.0) + weight
    return sums


def _weight(entry: str) -> tuple[str, float]:
    intent, _, weight = entry.rpartition(" ")
    return intent, float(weight)


def lean(found: Recognised, sums: Mapping[str, float], told: Collection[str], own: float = OWN) -> Recognised:
    """The table's choice, or the intent that the signs ``told`` of a line speak for more strongly.

    ``own`` is what the table's choice counts in lines of any length.
    """
    if found.score >= SURE or found.intent not in sums:
        return found
    words = words_among(told)
    if words <= FEW_WORDS and found.score:
        own += SHORT if FIRST in told or words < 2 else 0.0
    if not TAKING_BACK & set(told):
        sums = {intent: weight for intent, weight in sums.items() if intent != UNDO or found.intent == UNDO}
    best = max(sums, key=lambda intent: (sums[intent] + own * (intent == found.intent), intent))
    return found if best == found.intent else Recognised(best, found.score)


def words_among(found: Iterable[str]) -> int:
    """How many different words are among the signs of a line."""
    return sum(sign.startswith("word.") for sign in found)


def _asked(reading: Reading) -> list[str]:
    """The words of the clauses that end in a question mark."""
    return [word for clause in _QUESTION.findall(_by_kind(reading)) for word in _cut(clause)]


def _ending(reading: Reading) -> list[str]:
    """The words of the last sentence of a line that has several."""
    sentences = [s for s in _STOP.split(_by_kind(reading)) if _WORD.search(s)]
    return _cut(sentences[-1]) if len(sentences) > 1 else []


def _words(reading: Reading) -> list[str]:
    """The words of a line; for named things, numbers and the question mark "a-" and their kind."""
    return _cut(_by_kind(reading))


def _by_kind(reading: Reading) -> str:
    """The line in small letters, named things by their kind in angle brackets."""
    text, out, at = reading.text, [], 0
    for mention in sorted(reading.mentions, key=lambda m: (m.start, -m.end)):
        if mention.start >= at and mention.end:
            out.append(f"{text[at:mention.start].lower()} <{mention.kind}> ")
            at = mention.end
    return "".join([*out, text[at:].lower()]).replace("'", "").replace("’", "")


def _cut(text: str) -> list[str]:
    words = _WORD.findall(text)[:MOST_WORDS]
    return ["a-number" if w.isdigit() else "a-question" if w == "?" else spelt_out(w.strip(">").replace("<", "a-"))
            for w in words]
