"""Quiz the reader item by item with score and a review of misses, or write a quiz for the class (layer 4)."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.dialogue import phrases_lesson as say
from assistant.dialogue import speak
from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.lesson_request import Request, request_of
from assistant.dialogue.quiz_words import LETTERS, Question, judge, worded
from assistant.dialogue.turn import Turn
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.key import KEY_LOOKS
from assistant.reasoning.quiz import build_quiz
from assistant.text import key

INTENT = "quiz"
ITEMS = 5
KNOWN = 24
"""Fishes drawn on where none are named: those that most is told of."""


@dataclass(frozen=True, slots=True)
class QuizRun:
    """The questions, the one asked now, how many were right, the places of the missed ones, and the fishes."""

    questions: tuple[Question, ...]
    taxa: tuple[str, ...]
    at: int = 0
    score: int = 0
    missed: tuple[int, ...] = ()


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Judge the answer to the item asked, else begin the quiz that the line asks for."""
    run = turn.held.walk if isinstance(turn.held.walk, QuizRun) else None
    asked = turn.held.asked is not None and turn.held.asked.kind == INTENT
    words = set(key(turn.reading.text).split())
    if run is not None and words & say.SCORE_WORDS:
        return _said(turn, run, say.quiz_score(run.score, run.at, len(run.questions)))
    if words & say.MISSED_WORDS and (run is not None or turn.held.intent == INTENT):
        return _missed_told(turn, run)
    if run is not None and words & say.STOP_WORDS:
        return _finish(turn, run, say.QUIZ_STOPPED)
    if run is not None and asked and INTENT not in turn.cues:
        return _judge(turn, run)
    return _begin(turn, request_of(turn, "picture"))


def _begin(turn: Turn, wanted: Request) -> tuple[Answer, Held]:
    kb = turn.kb
    taxa = wanted.taxa if len(wanted.taxa) > 1 else _beside(kb, wanted.taxa)
    count = wanted.items or ITEMS
    looks = KEY_LOOKS.get(wanted.look, LOOKS["hand"])
    plain = wanted.level == "young"
    quiz = build_quiz(kb, taxa, count, turn.clock.toordinal(), looks, plain=plain)
    if len(quiz.items) < count:
        quiz = build_quiz(kb, taxa, count, turn.clock.toordinal(), LOOKS["hand"], plain=plain)
    questions = tuple(worded(kb, item, wanted.level) for item in quiz.items)
    if not questions:
        return Answer(INTENT, (Block("lead", say.quiz_none(speak.fishes(kb, taxa)), claim=False),), taxa[:8]), turn.held
    if wanted.paper:
        return _paper(turn, questions, wanted.named or taxa)
    run = QuizRun(questions, wanted.named or taxa)
    return _ask(turn, run, [Block("lead", say.quiz_begin(len(questions)), claim=False)])


def _beside(kb: KnowledgeBase, taxa: tuple[str, ...]) -> tuple[str, ...]:
    """One fish with those it is taken for; none: the fishes that most is told of."""
    if taxa:
        near = [x.other for x in kb.look_alikes(taxa[0])] + [t for t in kb.species if any(x.other == taxa[0]
                                                                                          for x in kb.look_alikes(t))]
        return tuple(dict.fromkeys((*taxa, *(t for t in near if kb.find("taxon", t) is not None))))
    own = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    return tuple(sorted(sorted(own, key=lambda t: (-len(kb.statements(t)), t))[:KNOWN]))


def _ask(turn: Turn, run: QuizRun, before: list[Block]) -> tuple[Answer, Held]:
    question = run.questions[run.at]
    choices = tuple(zip(LETTERS, question.choices, strict=False))
    text = say.quiz_ask(run.at + 1, len(run.questions), question.text, [f"({a}) {c}" for a, c in choices])
    text = f"{text} {say.quiz_prompt([a for a, _ in choices])}"
    block = Block("next", text, statements=question.statements, claim=bool(question.statements))
    asked = Asked(INTENT, question.text, choices=choices)
    return Answer(INTENT, (*before, block), run.taxa[:8], asked=asked), turn.held.after(walk=run)


def _judge(turn: Turn, run: QuizRun) -> tuple[Answer, Held]:
    question = run.questions[run.at]
    given_up = turn.reading.answer in ("unsure", "skip") or bool(turn.cues & {"skip", "cant-see"})
    choice = None if given_up else judge(question, turn.reading.text)
    if choice is None and not given_up and turn.reading.answer:
        choice = judge(question, turn.reading.answer)
    right = choice == question.answer
    told = question.choices[question.answer]
    asks = bool(set(key(turn.reading.text).split()) & say.ASKING_WORDS)
    if choice is None and not given_up and (asks or _one_of(question, turn.reading.text)):
        return _ask(turn, run, [Block("lead", say.QUIZ_UNREAD, claim=False)])
    lead = say.quiz_right(question.reason) if right else say.quiz_wrong(question.letter, told, question.reason,
                                                                        question.mistake)
    block = Block("lead", lead, statements=question.statements, claim=bool(question.statements))
    after = replace(run, at=run.at + 1, score=run.score + right, missed=run.missed if right else (*run.missed, run.at))
    if after.at < len(run.questions):
        return _ask(turn, after, [block])
    return _finish(turn, after, "", [block])


def _one_of(question: Question, text: str) -> bool:
    """True for a line that mixes words of several choices, so that it is no answer yet."""
    words = set(key(text).split())
    return sum(bool(words & set(key(c).split())) for c in question.choices) > 1


def _finish(turn: Turn, run: QuizRun, lead: str, before: list[Block] | None = None) -> tuple[Answer, Held]:
    blocks = before or []
    if lead:
        blocks.append(Block("lead", lead, claim=False))
    blocks.append(Block("point", say.quiz_final(run.score, run.at, len(run.questions)), claim=False))
    return Answer(INTENT, (*blocks, *_review(run)), run.taxa[:8]), turn.held.after(walk=None)


def _review(run: QuizRun) -> list[Block]:
    """The items missed, each with its answer."""
    asked = [run.questions[place] for place in run.missed]
    return [Block("point", say.quiz_review(q.text, q.choices[q.answer], q.reason), statements=q.statements,
                  claim=bool(q.statements)) for q in asked]


def _missed_told(turn: Turn, run: QuizRun | None) -> tuple[Answer, Held]:
    """What was missed so far, then the item asked again; after the end the review once more."""
    last = turn.held.last
    over = [b for b in last.blocks if b.text.startswith(say.REVIEW)] if last is not None else []
    first, *rest = (_review(run) if run is not None else over) or [Block("point", say.NONE_MISSED, claim=False)]
    told = [first._replace(kind="lead"), *rest]
    return _ask(turn, run, told) if run is not None else (Answer(INTENT, tuple(told), turn.held.taxa[:8]), turn.held)


def _paper(turn: Turn, questions: tuple[Question, ...], taxa: tuple[str, ...]) -> tuple[Answer, Held]:
    """All questions, and apart from them the answers."""
    blocks = [Block("lead", say.quiz_paper(len(questions)), claim=False)]
    for number, q in enumerate(questions, 1):
        text = say.quiz_ask(number, len(questions), q.text, [f"({a}) {c}" for a,
                                                             c in zip(LETTERS, q.choices, strict=False)])
        blocks.append(Block("point", text, statements=q.statements, claim=bool(q.statements)))
    blocks.append(Block("lead", say.QUIZ_ANSWERS_APART, claim=False))
    for number, q in enumerate(questions, 1):
        text = say.quiz_answer_line(number, q.letter, q.choices[q.answer], q.reason, q.mistake)
        blocks.append(Block("point", text, statements=q.statements, claim=bool(q.statements)))
    return Answer(INTENT, tuple(blocks), taxa[:8]), turn.held.after(walk=None)


def _said(turn: Turn, run: QuizRun, text: str) -> tuple[Answer, Held]:
    return _ask(turn, run, [Block("lead", text, claim=False)]) if run.at < len(run.questions) else _finish(turn, run,
                                                                                                           text)
