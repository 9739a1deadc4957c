"""Quizzes on words of the body: each word once, one right choice, wrong choices that are apart."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.quiz_terms import body_words, build_words_quiz, most_spoken_of


def test_words_of_the_body_have_a_place(kb: KnowledgeBase) -> None:
    """Words of the body say where to look; those on fins are named or explained by the word."""
    assert len(body_words(kb)) > 30 and all(t.where for t in body_words(kb))
    fins = body_words(kb, ("fin",))
    assert all("fin" in f"{t.label} {' '.join(t.words)} {t.plain} {t.where}" for t in fins)
    assert not {t.id for t in fins} & {"black-spot", "nuptial-tubercle", "mottled", "body-depth", "standard-length"}
    assert set(most_spoken_of(kb, body_words(kb))) <= set(body_words(kb))


def test_items_are_sound(kb: KnowledgeBase) -> None:
    """Every item has four different choices with the word asked for among them, and no word is asked twice."""
    for seed in range(5):
        quiz = build_words_quiz(kb, body_words(kb), 12, seed)
        assert len(quiz.items) == 12 and len({i.facts[0].state for i in quiz.items}) == 12
        for item in quiz.items:
            assert len(set(item.choices)) == 4 and item.choices[item.answer] == item.facts[0].state
            wheres = {t.where for t in kb.all("term") if t.id in item.choices}
            assert item.kind != "term-where" or len(wheres) == 4


def test_few_words_come_first(kb: KnowledgeBase) -> None:
    """A quiz on one word asks it first and others after it."""
    quiz = build_words_quiz(kb, body_words(kb, ("whisker",)), 5, 1)
    assert quiz.items[0].facts[0].state == "barbel" and len(quiz.items) == 5


def test_a_part_is_asked_by_its_own_words(kb: KnowledgeBase) -> None:
    """Of a part its names and what sits on it, for a fin of its own not all fins; the part itself is no question."""
    tail = {t.id for t in body_words(kb, ("tail fin",))}
    assert {"caudal-fin", "forked", "lobe"} <= tail and not tail & {"anal-fin", "dorsal-fin"}
    fins = body_words(kb, ("fin",))
    for seed in range(5):
        quiz = build_words_quiz(kb, fins, 5, seed, about=("fin",))
        asked = [i.facts[0].state for i in quiz.items]
        assert len(asked) == 5 and "fin" not in asked and set(asked) <= {t.id for t in fins}
