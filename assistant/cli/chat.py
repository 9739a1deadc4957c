"""``tellfin chat``: the conversation at a prompt; what ``tellfin`` does when nothing else is asked for (layer 7)."""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Callable
from contextlib import closing
from datetime import date
from typing import TYPE_CHECKING

from assistant.cli.opened import add_units, folder_of, preparing
from assistant.cli.streams import Streams
from assistant.errors import ToolError
from assistant.prompt.choose import Choice, choose

if TYPE_CHECKING:
    from assistant.dialogue.answer import Answer
    from assistant.dialogue.conversation import Held
    from assistant.loading import OpenBase
    from assistant.prompt.history import LineHistory
    from assistant.prompt.talk import Talk

NAME = "chat"
HELP = "talk at a prompt (the default)"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("--plain", action="store_true", help="plain lines: no colours, no menus, no cursor movement")
    parser.add_argument("--no-history", action="store_true", help="neither keep the lines typed nor read earlier ones")
    parser.add_argument("--place", metavar="PLACE", help="where: a state or province (US-OH, Ohio) or a water")
    parser.add_argument("--date", metavar="YYYY-MM-DD", help="the day to answer for (else today)")
    add_units(parser)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Talk until the conversation is left; 0."""
    from assistant.loading import open_base

    way = choose(streams.stdin, streams.stdout, os.environ, args.plain, sys.platform == "win32")
    base = open_base(folder_of(args, streams), preparing(streams.err))
    with closing(base):
        return _hold(talk_over(base, args), way, args, streams)


def _hold(talk: Talk, way: Choice, args: argparse.Namespace, streams: Streams) -> int:
    """The conversation at the full prompt, or in plain lines where that is not to be had."""
    notices: list[str] = []
    if way.full:
        from assistant.prompt import app, wording

        try:
            terminal = app.open_console(streams.stdin, streams.stdout)
        except ToolError as error:
            notices.append(wording.no_console(error.message))
        else:
            return app.App(talk, _history(args, notices), terminal).run(notices)
    from assistant.prompt.plain_loop import PlainLoop

    return PlainLoop(talk, streams.stdin, streams.stdout, way.talking).run(notices)


def talk_over(base: OpenBase, args: argparse.Namespace) -> Talk:
    """A conversation over an open base, as the options begin it. Raises UsageError for a bad place or date."""
    from assistant.cli.ask import day_of, placed
    from assistant.cli.main import unforeseen
    from assistant.dialogue.conversation import Held
    from assistant.prompt.talk import Talk

    today: Callable[[], date] = date.today
    if args.date:
        fixed = day_of(args.date)
        today = lambda: fixed  # noqa: E731

    def respond(text: str, held: Held, clock: date) -> tuple[Answer, Held]:
        from assistant.dialogue import engine

        return engine.respond(base, text, held, clock)

    held = placed(base.kb, Held(units=args.units or ""), args.place, today())
    return Talk(base.kb, respond, today, unforeseen, held, debug=args.debug)


def _history(args: argparse.Namespace, notices: list[str]) -> LineHistory:
    from assistant.prompt import wording
    from assistant.prompt.history import LineHistory, history_path

    path = None if args.no_history else history_path()
    if path is None and not args.no_history:
        notices.append(wording.history_lost("there is no folder for them"))
    return LineHistory(path)
