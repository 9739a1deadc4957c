"""``tellfin sheet``: a printable lesson sheet with drawn fishes (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.lesson_options import add_fishes, add_words, chosen, open_kb, write_out
from assistant.cli.streams import Streams

NAME = "sheet"
HELP = "make a printable sheet: drawn fishes, table, key, words, safety, sources"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of the command."""
    add_fishes(parser)
    add_words(parser, look="picture")
    parser.add_argument("--title", default="", metavar="TEXT", help="the title of the sheet")
    parser.add_argument("-o", "--output", metavar="FILE", help="the HTML file to write (else standard output)")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Write the sheet and return 0. Raises UsageError for unknown fishes or a wrong number of them."""
    from assistant.dialogue.lessons.key import title_of
    from assistant.dialogue.lessons.sheet import lesson_sheet
    from assistant.dialogue.wording import lesson as say
    from assistant.render.html import sheet_page

    with open_kb(args, streams) as kb:
        taxa = chosen(kb, args, streams)
        title = args.title
        if not title and (args.group or args.place):
            title = say.sheet_of(title_of(kb, taxa, args.group, args.place).removeprefix(say.KEY_TO))
        write_out(sheet_page(kb, lesson_sheet(kb, taxa, args.look, args.level, title)), args.output, streams)
    return 0
