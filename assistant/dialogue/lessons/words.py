"""A list of words and meanings for a lesson: on some things ("fins and scales") or the whole fish (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain, zip_longest

from assistant.dialogue.answer import Answer, Block
from assistant.dialogue.lessons.request import level_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import care
from assistant.dialogue.wording import info as say
from assistant.dialogue.wording import quiz as lesson
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Term
from assistant.model.stems import DROPPED, NUMBERS
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.quiz_terms import body_words, most_spoken_of
from assistant.text import join, key, singular, unique, word_set

CUE = "lesson-words"
LISTED, MOST_LISTED = 8, 20
_FRAME = word_set(
    "vocabulary vocab glossary word term list sheet wall bank spelling key lesson class grade grader kid child student "
    "pupil third fourth fifth second first sixth make give need want please teach me my with and for about on picture "
    "drawing page simple easy plain short important basic common meaning definition define explain mean called say "
    "write print printable handout something there each line one fish fishes use good old year someone help learn "
    "identification id anatomy part body bodies outside whole different name lot describe "
    "scout camper field trip to of the a an what which should")
"""Words that frame the wish for a list and name nothing that it is on."""
_PICTURES = word_set("picture pictures photo photos drawing drawings illustrated diagram diagrams image images pics")


def words_for_lesson(turn: Turn) -> Answer:
    """So many words about the things that the line names, each thing alike; else words for the parts of a fish."""
    kb, reading = turn.kb, turn.reading
    count = max(1, min(reading.counts[0] if reading.counts else LISTED, MOST_LISTED))
    wanted = unique(singular(w) for w in reading.words
                    if w not in DROPPED and singular(w) not in _FRAME and w not in NUMBERS and not w.isdigit())
    piles = {w: _about(kb, w) for w in wanted}
    missing = [w for w, pile in piles.items() if not pile]
    in_turn = chain.from_iterable(zip_longest(*piles.values()))
    found = tuple({t.id: t for t in (*_by_name(kb, reading.words), *in_turn) if t is not None}.values())
    looks = LOOKS["picture"] if level_of(reading.text.lower(), turn.cues) == "young" else LOOKS["hand"]
    shown = (found or most_spoken_of(kb, body_words(kb, (), looks)))[:count]
    head = care.term_list(len(shown)) if found or not missing else lesson.no_words(join(missing), len(shown))
    blocks = [Block("lead", head, claim=False)]
    blocks += [Block("point", say.titled(t.label, t.plain), statements=(f"term:{t.id}",)) for t in shown]
    if set(reading.words) & _PICTURES:
        blocks.append(Block("help", lesson.NO_PICTURES, claim=False))
    return Answer("term", tuple(blocks))


def _by_name(kb: KnowledgeBase, words: Sequence[str]) -> list[Term]:
    """The terms of several words that stand in the line whole ("gill raker")."""
    line = f" {' '.join(singular(w) for w in words)} "
    names = {t: " ".join(singular(w) for w in key(t.label).split()) for t in kb.all("term")}
    return [t for t, name in names.items() if " " in name and f" {name} " in line]


def _about(kb: KnowledgeBase, word: str) -> list[Term]:
    """The terms on a thing: those named by it, then those explained by it; parts of a fish before other words."""
    scored = []
    for t in kb.all("term"):
        named = word in _words(t.label, *t.words)
        if named or word in _words(t.plain, t.where):
            scored.append((not named, not t.where, t.id, t))
    return [t for *_, t in sorted(scored, key=lambda s: s[:3])]


def _words(*texts: str) -> set[str]:
    return {singular(w) for text in texts for w in key(text).split()}
