"""A quiz on paper: questions, and apart from them the answers with reasons (layer 5)."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Any

from assistant.dialogue.lessons.quiz_words import LETTERS, Question
from assistant.dialogue.wording import lesson as say

WIDTH = 88


def questions_text(title: str, questions: Sequence[Question], remark: str = "") -> str:
    """The questions for a terminal or a mail, without answers."""
    parts = [title, *([textwrap.fill(remark, WIDTH)] if remark else [])]
    for number, question in enumerate(questions, 1):
        head = f"{number}. "
        lines = textwrap.wrap(question.text, WIDTH, initial_indent=head, subsequent_indent=" " * len(head))
        for letter, choice in zip(LETTERS, question.choices, strict=False):
            lines += textwrap.wrap(choice, WIDTH, initial_indent=f"   {letter.upper()}  ", subsequent_indent="      ")
        parts.append("\n".join(lines))
    return "\n\n".join(parts) + "\n"


def answers_text(title: str, questions: Sequence[Question]) -> str:
    """The answers with the reason and the tempting mistake of each."""
    parts = [f"{say.QUIZ_ANSWERS}. {title}"]
    for number, question in enumerate(questions, 1):
        body = " ".join(x for x in (f"{question.letter} - {question.choices[question.answer]}.", question.reason,
                                    question.mistake) if x)
        parts.append(textwrap.fill(body, WIDTH, initial_indent=f"{number}. ", subsequent_indent="   "))
    return "\n\n".join(parts) + "\n"


def questions_markdown(title: str, questions: Sequence[Question], remark: str = "") -> str:
    """The questions as Markdown."""
    parts = [f"# {title}", *([remark] if remark else [])]
    for number, question in enumerate(questions, 1):
        choices = "\n".join(f"   - {letter.upper()}. {choice}" for letter, choice in zip(LETTERS, question.choices,
                                                                                         strict=False))
        parts.append(f"{number}. {question.text}\n{choices}")
    return "\n\n".join(parts) + "\n"


def answers_markdown(title: str, questions: Sequence[Question]) -> str:
    """The answers as Markdown."""
    lines = [f"{n}. **{q.letter}** {q.choices[q.answer]}. {q.reason} {q.mistake}".rstrip() for n,
             q in enumerate(questions, 1)]
    return f"# {say.QUIZ_ANSWERS}: {title}\n\n" + "\n".join(lines) + "\n"


def quiz_page(title: str, questions: Sequence[Question], remark: str, parts: Sequence[str]) -> str:
    """Questions and answers as a printable page, the answers on a page of their own."""
    from assistant.render.html import render_page

    return render_page("quiz.html", title, questions=questions, letters=LETTERS.upper(), remark=remark, parts=parts)


def quiz_json(title: str, questions: Sequence[Question], parts: Sequence[str]) -> dict[str, Any]:  # Any: a JSON object
    """A quiz as a JSON value; answers only where they are asked for."""
    items = []
    for number, question in enumerate(questions, 1):
        item: dict[str, Any] = {"number": number, "question": question.text, "choices": list(question.choices)}
        if "answers" in parts:
            item |= {"answer": question.letter, "reason": question.reason, "mistake": question.mistake or None,
                     "statements": list(question.statements)}
        items.append(item)
    return {"title": title, "items": items}
