"""Terms: a word in plain words and where to look; words for a lesson; unknown words said to be unknown."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.dialogue.handlers.term import handle
from assistant.dialogue.reader.reading import Mention
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("line", "must"),
    [
        ("define truncate", "straight"),
        ("whats an operculum", "gill"),
        ("nuptial tubercles huh", "bump"),
        ("what are gill rakers", "gill"),
        ("gular plate", "chin"),
        ("what is standard length", "tail"),
    ],
)
def test_a_word_is_explained(kb: KnowledgeBase, line: str, must: str) -> None:
    """The definition of the base leads, resting on its term."""
    answer, _ = handle(turn_of(kb, line))
    assert must in text(answer) and answer.blocks[0].statements[0].startswith("term:")


def test_every_term_of_the_glossary_is_reached(kb: KnowledgeBase) -> None:
    """Each term named by its label is explained."""
    for term in kb.all("term"):
        answer, _ = handle(turn_of(kb, f"what is {term.label}", Mention("term", (term.id,), term.label, 0, 1)))
        assert answer.blocks[0].statements == (f"term:{term.id}",), term.id


def test_two_words_are_set_side_by_side(kb: KnowledgeBase) -> None:
    """Both words of "possession limit or bag limit" are told."""
    answer, _ = handle(turn_of(kb, "possession limit vs bag limit"))
    ids = {s for b in answer.blocks for s in b.statements}
    assert {"term:possession-limit", "term:bag-limit"} <= ids


def test_again_for_young_children(kb: KnowledgeBase) -> None:
    """A follow-up without a word comes back to the last one."""
    first, held = handle(turn_of(kb, "whats an operculum"))
    again, _ = handle(turn_of(kb, "say it", held=held.after(intent="term", last=first)))
    assert again.blocks[0].statements == first.blocks[0].statements


def test_words_for_a_lesson(kb: KnowledgeBase) -> None:
    """A vocabulary list has words about the matter."""
    answer, _ = handle(turn_of(kb, "i need a vocabulary list for a fins lesson"))
    assert len(answer.blocks) == 9 and text(answer).count("fin") >= 6


def test_an_unknown_word_is_said_to_be_unknown(kb: KnowledgeBase) -> None:
    """No meaning is made up; words that are held are offered."""
    answer, _ = handle(turn_of(kb, "define flumbriation"))
    assert "not in my glossary" in text(answer) and not any(b.claim for b in answer.blocks)


@pytest.mark.parametrize(
    ("line", "labels"),
    [
        ("difference between fork length and total length", ("Fork length", "Total length")),
        ("pectoral vs pelvic fins", ("Pectoral fin", "Pelvic fin")),
        ("difference between dorsal and anal fin", ("Dorsal fin", "Anal fin")),
        ("what does panfish mean", ("Panfish",)),
        ("what is the lower jaw called", ("Mandible",)),
        ("what does spawning mean", ("Spawn",)),
        ("what do you call a baby bass", ("Fry", "Fingerling")),
    ],
)
def test_each_word_asked_about_is_explained_in_its_order(
    open_base: Base, line: str, labels: tuple[str, ...]
) -> None:
    """A difference explains both words, and a word of another ending or by its meaning is found."""
    told, _ = respond(open_base, line, Held(), date(2026, 7, 4))
    titles = [b.text.partition(":")[0] for b in told.blocks if b.text.partition(":")[0] in labels]
    assert told.intent == "term" and tuple(titles) == labels
