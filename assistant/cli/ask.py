"""``tellfin ask``: one question and its answer, or a stream of JSON lines in and out (layer 7)."""

from __future__ import annotations

import argparse
import json
from collections.abc import Iterator
from contextlib import closing
from datetime import date
from typing import TYPE_CHECKING, Any, NamedTuple

from assistant.cli.opened import add_units, folder_of, preparing
from assistant.cli.streams import Streams
from assistant.errors import AssistantError, UsageError

if TYPE_CHECKING:
    from assistant.dialogue.conversation import Held
    from assistant.dialogue.engine import Base
    from assistant.model.knowledge import KnowledgeBase

NAME = "ask"
HELP = "answer one question (or many, as JSON lines)"
MOST_READ = 1_000_000
"""Characters of standard input that are read as one question."""
MOST_CONVERSATIONS = 2000
"""Conversations kept apart in one run of ``--lines``; the oldest is dropped beyond."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of the command."""
    parser.add_argument("text", nargs="*", metavar="TEXT", help="the question (else it is read from standard input)")
    parser.add_argument("--json", action="store_true", help="print the answer as one JSON object")
    parser.add_argument(
        "--lines", action="store_true",
        help='read JSON objects, one a line, such as {"say": "what is a walleye", "conversation": "a", "place": '
        '"US-OH", "date": "2026-07-04"} (all but "say" may be left out; lines of one conversation follow up on each '
        'other) and print one answer a line, or {"error": {"message": ..., "hint": ...}}; exit 2 when there '
        'was such a line'
    )
    parser.add_argument("--place", metavar="PLACE", help="where: a state or province (US-OH, Ohio) or a water")
    parser.add_argument("--date", metavar="YYYY-MM-DD", help="the day to answer for (else today)")
    add_units(parser)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Answer and return 0 (``--lines``: 2 where a line could not be answered). Raises UsageError for a bad option."""
    from assistant.dialogue.conversation import Held
    from assistant.loading import open_base

    if args.lines and args.text:
        raise UsageError("--lines reads its questions from standard input, not from the command line",
                         "leave the text out, or leave --lines out")
    clock = day_of(args.date) if args.date else date.today()
    with closing(open_base(folder_of(args, streams), preparing(streams.wait))) as base:
        held = placed(base.kb, Held(units=args.units or ""), args.place, clock)
        if args.lines:
            return _lines(base, streams, Defaults(held, clock, {}))
        text = " ".join(args.text) if args.text else streams.stdin.read(MOST_READ)
        _once(base, text, held, clock, args.json, streams)
    return 0


class Defaults(NamedTuple):
    """What a conversation starts with, the day, and the conversations so far by their id."""

    held: Held
    clock: date
    conversations: dict[str, Held]


def day_of(text: str) -> date:
    """A date from its ISO form. Raises UsageError."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise UsageError(f"'{text}' is no date", "write it as 2026-07-04") from None


def placed(kb: KnowledgeBase, held: Held, place: str | None, clock: date) -> Held:
    """The conversation with the place of the command line or a JSON line. Raises UsageError for an unknown one."""
    if not place:
        return held
    from assistant.dialogue.absorb import absorb
    from assistant.dialogue.reader.read import read_line

    by_code = [key for key in kb.ids("place") if (p := kb.place(key)) is not None and p.code == place.strip()]
    if by_code:
        return held.after(places=(by_code[0],))
    read = read_line(kb, place, held, clock)
    if not read.places and not read.water:
        raise UsageError(
            f"the base holds no place called '{place}'", "give a state or province by name or code, such as US-OH"
        )
    return absorb(kb, held, read)


def _once(base: Base, text: str, held: Held, clock: date, as_json: bool, streams: Streams) -> None:
    from assistant.dialogue.engine import respond

    answer, after = respond(base, text, held, clock)
    if as_json:
        from assistant.render.json import render_json

        streams.out(json.dumps(render_json(base.kb, text, None, answer, after), ensure_ascii=False))
    else:
        from assistant.render.plain import render_plain

        streams.out(render_plain(answer))


def _lines(base: Base, streams: Streams, start: Defaults) -> int:
    code = 0
    for line in _read(streams):
        if not line.strip():
            continue
        try:
            out = _reply(base, line, start)
        except AssistantError as error:
            out = {"error": {"message": error.message, "hint": error.hint}}
            code = max(code, error.exit_code)
        streams.out(json.dumps(out, ensure_ascii=False))
        streams.stdout.flush()
    return code


def _read(streams: Streams) -> Iterator[str]:
    while line := streams.stdin.readline():
        yield line


def _reply(base: Base, line: str, start: Defaults) -> dict[str, Any]:
    from assistant.dialogue.engine import respond
    from assistant.render.json import render_json

    message = _message(line)
    name = message.get("conversation")
    key = "" if name is None else str(name)
    clock = day_of(message["date"]) if message.get("date") else start.clock
    held = start.conversations.pop(key, start.held)
    held = placed(base.kb, held, message.get("place"), clock)
    answer, after = respond(base, message["say"], held, clock)
    if name is not None:
        start.conversations[key] = after
        if len(start.conversations) > MOST_CONVERSATIONS:
            del start.conversations[next(iter(start.conversations))]
    return render_json(base.kb, message["say"], name, answer, after)


def _message(line: str) -> dict[str, Any]:
    try:
        found = json.loads(line)
    except (ValueError, RecursionError):
        raise UsageError("the line is no JSON object", 'write {"say": "your question"}') from None
    if not isinstance(found, dict) or not isinstance(found.get("say"), str):
        raise UsageError('the object has no text under "say"', 'write {"say": "your question"}')
    for name in ("place", "date"):
        if found.get(name) is not None and not isinstance(found[name], str):
            raise UsageError(f'"{name}" is no text', "leave it out, or write it in quotes")
    return found
