"""``tellfin quiz``: questions with wrong answers that are wrong, and a separate answer key (layer 7)."""

from __future__ import annotations

import argparse
import json
import os
from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.cli.lesson_options import add_fishes, add_output, add_words, chosen, open_kb, write_out
from assistant.cli.streams import Streams
from assistant.errors import UsageError

if TYPE_CHECKING:
    from assistant.dialogue.lessons.quiz_words import Question

NAME = "quiz"
HELP = "make a quiz on some fishes, with a separate answer key"
MOST = 50


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of the command."""
    add_fishes(parser)
    add_words(parser, look="picture")
    parser.add_argument("--items", type=int, default=8, metavar="N", help="number of questions (default: 8)")
    parser.add_argument("--seed", type=int, default=1, metavar="N",
                        help="another number gives another quiz (default: 1)")
    parser.add_argument("--answers", metavar="FILE",
                        help="write the answer key to a file of its own (else it follows the questions)")
    add_output(parser, ("text", "markdown", "html", "json"))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Write the quiz and return 0. Raises UsageError for unknown fishes, fewer than two, or a wrong number of items."""
    from assistant.dialogue.lessons.key import title_of
    from assistant.dialogue.lessons.quiz_words import worded
    from assistant.dialogue.wording import lesson as say
    from assistant.reasoning.contrast import LOOKS
    from assistant.reasoning.quiz import build_quiz

    if not 1 <= args.items <= MOST:
        raise UsageError(f"a quiz has 1 to {MOST} questions, not {args.items}", "give another number after --items")
    if args.answers and args.output and os.path.realpath(args.answers) == os.path.realpath(args.output):
        raise UsageError(f"questions and answers would both be written to {args.output}",
                         "give two files, or leave --answers out to have the answers follow the questions")
    with open_kb(args, streams) as kb:
        taxa = chosen(kb, args, streams)
        if len(taxa) < 2:
            raise UsageError(f"a quiz takes two fishes or more, not {len(taxa)}",
                             "name another fish, a group or a place")
        quiz = build_quiz(kb, taxa, args.items, args.seed, LOOKS[args.look], plain=args.level == "young")
        questions = [worded(kb, item, args.level) for item in quiz.items]
        title = say.quiz_title(title_of(kb, taxa, args.group, args.place).removeprefix(say.KEY_TO))
        remark = say.quiz_fewer(len(questions), args.items) if len(questions) < args.items else ""
        if args.answers:
            write_out(_rendered(title, questions, "", args.format, ("answers",)), args.answers, streams)
        parts = ("questions",) if args.answers else ("questions", "answers")
        write_out(_rendered(title, questions, remark, args.format, parts), args.output, streams)
    return 0


def _rendered(title: str, questions: Sequence[Question], remark: str, form: str, parts: Sequence[str]) -> str:
    from assistant.render import quiz_sheet as sheet

    if form == "html":
        return sheet.quiz_page(title, questions, remark, parts)
    if form == "json":
        return json.dumps(sheet.quiz_json(title, questions, parts), ensure_ascii=False, indent=2) + "\n"
    asked, told = ((sheet.questions_markdown, sheet.answers_markdown) if form == "markdown"
                   else (sheet.questions_text, sheet.answers_text))
    out = [asked(title, questions, remark)] if "questions" in parts else []
    out += [told(title, questions)] if "answers" in parts else []
    return "\n\n".join(out)
