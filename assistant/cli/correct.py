"""``tellfin correct``: change fields of a record (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now, parse_table, read_patch
from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "correct"
HELP = "correct fields of a record: tellfin correct st:… value=9-11 --why 'misread before'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("id", nargs="?", help="the id of the record, such as st:TAXON.CHARACTER.SCOPE.SOURCE")
    parser.add_argument("fields", nargs="*", metavar="FIELD=VALUE", help="the fields that change (FIELD= empties one)")
    add_edit_options(parser, patch=True, needs=("why",))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Correct and tell; 1 when the change is refused."""
    from assistant.curation.edit import apply_nodes, apply_table, correct_record
    from assistant.curation.records import pairs
    from assistant.curation.stores import open_store
    from assistant.curation.view import Draft
    from assistant.graph.triples import parse_turtle
    from assistant.iris import compact

    if not args.id and not args.patch:
        raise UsageError("nothing to correct", "give the id of a record and its fields, or --patch FILE")
    fields = pairs(args.fields)
    text = read_patch(args.patch, streams) if args.patch else ""
    table = parse_table(text, args.patch) if text else None
    store = open_store(args.base)
    author = author_of(args, streams, store, str((table or {}).get("why") or ""))

    def work(draft: Draft) -> None:
        if args.id:
            correct_record(draft, compact(args.id), fields, author.key, now().date())
        elif table is not None:
            apply_table(draft, table, author.key, now().date(), author.why)
        else:
            apply_nodes(draft, parse_turtle(text, args.patch), author.key, now().date(), correct=True)

    return change(args, streams, store, author, work)
