"""``tellfin key``: a dichotomous key to some fishes (layer 7)."""

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
from assistant.errors import UsageError

if TYPE_CHECKING:
    from assistant.dialogue.lessons.key import LessonKey
    from assistant.model.knowledge import KnowledgeBase

NAME = "key"
HELP = "make a two-way key to some fishes, a group, or the fishes of a place"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """The arguments of the command."""
    add_fishes(parser)
    add_words(parser)
    add_output(parser, TABLE_FORMS)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Write the key and return 0. Raises UsageError for unknown fishes or fewer than two."""
    from assistant.dialogue.lessons.key import lesson_key

    with open_kb(args, streams) as kb:
        taxa = chosen(kb, args, streams)
        if len(taxa) < 2:
            raise UsageError(f"a key takes two fishes or more, not {len(taxa)}",
                             "name another fish, a group or a place")
        found = lesson_key(kb, taxa, args.look, args.level, args.group, args.place)
        write_out(_rendered(kb, found, args), args.output, streams)
    return 0


def _rendered(kb: KnowledgeBase, found: LessonKey, args: argparse.Namespace) -> str:
    from assistant.render.markdown import key_markdown, key_rows, key_text
    from assistant.render.tables import csv_table

    if args.format == "text":
        return key_text(kb, found.key, found.title, found.notes, args.level, text_width(args.output))
    if args.format == "markdown":
        return key_markdown(kb, found.key, found.title, found.notes, args.level)
    if args.format == "csv":
        return csv_table(key_rows(kb, found.key, args.level))
    if args.format == "html":
        from assistant.render.html import key_page

        return key_page(kb, found)
    from assistant.render.lesson_json import key_json

    return json.dumps(key_json(kb, found), ensure_ascii=False, indent=2) + "\n"
