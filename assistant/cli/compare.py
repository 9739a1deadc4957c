"""``tellfin compare``: two to eight fishes side by side (layer 7)."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from assistant.cli.lesson_options import (
    TABLE_FORMS,
    add_fishes,
    add_output,
    add_words,
    chosen,
    open_kb,
    text_width,
    write_out,
)
from assistant.cli.streams import Streams

if TYPE_CHECKING:
    from assistant.dialogue.beside.comparison import Comparison

NAME = "compare"
HELP = "set two to eight fishes side by side in a table"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of the command."""
    add_fishes(parser)
    add_words(parser)
    parser.add_argument("--shared", action="store_true", help="show what they have in common as well")
    parser.add_argument("--rows", type=int, default=12, metavar="N", help="most rows shown (default: 12)")
    add_output(parser, TABLE_FORMS)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Write the comparison and return 0. Raises UsageError for unknown fishes or a wrong number of them."""
    from assistant.dialogue.beside.comparison import compare
    from assistant.errors import UsageError

    if args.rows < 1:
        raise UsageError("--rows takes a number from 1 on", "leave it out for 12")
    with open_kb(args, streams) as kb:
        found = compare(kb, chosen(kb, args, streams), args.look, args.level, args.rows)
        write_out(_rendered(found, args.format, args.shared, text_width(args.output)), args.output, streams)
    return 0


def _rendered(found: Comparison, form: str, shared: bool, width: int = 100) -> str:
    """A comparison in one of the forms."""
    from assistant.render.markdown import comparison_markdown, comparison_rows, comparison_text
    from assistant.render.tables import csv_table

    if form == "text":
        return comparison_text(found, shared, width)
    if form == "markdown":
        return comparison_markdown(found, shared)
    if form == "csv":
        rows = (*found.rows, *(found.shared if shared else ()))
        return csv_table([*comparison_rows(found, rows)])
    if form == "html":
        from assistant.render.html import comparison_page

        return comparison_page(found, shared)
    from assistant.render.lesson_json import comparison_json

    return json.dumps(comparison_json(found), ensure_ascii=False, indent=2) + "\n"
