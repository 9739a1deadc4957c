"""Options that the commands for lessons share: which fishes, which look, where the result goes (layer 7)."""

from __future__ import annotations

import argparse
import shutil
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.cli.opened import folder_of, preparing
from assistant.cli.streams import Streams
from assistant.errors import ToolError, UsageError

if TYPE_CHECKING:
    from assistant.model.knowledge import KnowledgeBase

LEAST = 2
"""Fishes that a lesson takes at the least."""
TABLE_FORMS = ("text", "markdown", "csv", "html", "json")
"""The forms of what can be a table."""


def add_fishes(parser: argparse.ArgumentParser) -> None:
    """The arguments that choose fishes."""
    parser.add_argument("fishes", nargs="*", metavar="FISH",
                        help="fishes by English or scientific name (quote names of two words)")
    parser.add_argument("--group", default="", metavar="GROUP",
                        help="all fishes of a group, genus or family (sunfishes, pikes)")
    parser.add_argument("--place", default="", metavar="PLACE",
                        help="only fishes met in a state or province (Ohio, US-OH)")


def add_words(parser: argparse.ArgumentParser, look: str = "hand") -> None:
    """The arguments that choose features and words; ``look`` is what is taken where none is given."""
    from assistant.dialogue.lessons.levels import LEVELS
    from assistant.reasoning.contrast import LOOKS

    parser.add_argument("--look", choices=tuple(LOOKS), default=look,
                        help=f"features seen in a picture, on a fish in the hand, or on the bench (default: {look})")
    parser.add_argument("--level", choices=LEVELS, default="plain",
                        help="words for children, for everybody, or for the trade (default: plain)")


def add_output(parser: argparse.ArgumentParser, formats: tuple[str, ...]) -> None:
    """The arguments that choose the form and the file."""
    parser.add_argument("--format", choices=formats, default=formats[0],
                        help=f"form of the output (default: {formats[0]})")
    parser.add_argument("-o", "--output", metavar="FILE", help="write to a file (else to standard output)")


@contextmanager
def open_kb(args: argparse.Namespace, streams: Streams) -> Iterator[KnowledgeBase]:
    """The knowledge base that ``--base`` names (a folder or a server) or the shipped one, while it is used."""
    from assistant.loading import open_base

    with closing(open_base(folder_of(args, streams), preparing(streams.wait))) as base:
        yield base.kb


def chosen(kb: KnowledgeBase, args: argparse.Namespace, streams: Streams) -> tuple[str, ...]:
    """The fishes that the arguments choose; a note says which of those named the place does not hold, and why.

    Raises UsageError where there are none, for an unknown name, or where the place leaves fewer than two.
    """
    from assistant.reasoning.selection import select

    if not args.fishes and not args.group and not args.place:
        raise UsageError("no fish is named", "name fishes, or give --group or --place")
    if not args.fishes or not args.place:
        return select(kb, args.fishes, args.group, args.place)
    from assistant.dialogue.lessons.not_there import not_there
    from assistant.dialogue.wording import classroom as say
    from assistant.dialogue.wording import speak
    from assistant.reasoning.living import living_in
    from assistant.reasoning.selection import find_place

    reasons = not_there(kb, args.fishes, args.place)
    found = living_in(kb, select(kb, args.fishes, args.group), (find_place(kb, args.place),))
    if reasons and len(found) < LEAST:
        raise UsageError(say.too_few_there(reasons, speak.fishes(kb, found)), say.WITHOUT_PLACE)
    if reasons:
        streams.err(say.left_out(reasons))
    return found


NARROWEST, WIDEST = 50, 100
"""Columns that a text is fitted to at least and at most."""


def text_width(output: str | None) -> int:
    """The columns of the terminal (80 where there is none), or the widest form for a file."""
    return WIDEST if output else max(NARROWEST, min(WIDEST, shutil.get_terminal_size((80, 24)).columns))


def write_out(text: str, output: str | None, streams: Streams) -> None:
    """Write to a file, or to standard output. Raises ToolError where the file cannot be written."""
    if output is None:
        streams.stdout.write(text)
        return
    try:
        Path(output).write_text(text, encoding="utf-8", newline="")
    except OSError as error:
        raise ToolError(f"cannot write {output}: {(error.strerror or 'no reason given').lower()}",
                        "name a file in a folder that exists and that you may write to") from None
    streams.err(f"written: {output}")
