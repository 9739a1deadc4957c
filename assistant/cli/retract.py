"""``tellfin retract``: withdraw records; statements are kept with date and reason (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now
from assistant.cli.streams import Streams

NAME = "retract"
HELP = "withdraw records: tellfin retract st:… --why 'counted on a hybrid'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("ids", nargs="+", metavar="ID", help="ids of the records")
    add_edit_options(parser, needs=("why",))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Retract and tell; 1 when the change is refused."""
    from assistant.curation.edit import refuse_needed, retract_record
    from assistant.curation.stores import open_store
    from assistant.curation.view import Draft
    from assistant.iris import compact

    store = open_store(args.base)
    author = author_of(args, streams, store)

    def work(draft: Draft) -> None:
        for key in args.ids:
            retract_record(draft, compact(key), author.why, now().date())
        refuse_needed(draft, [compact(key) for key in args.ids])

    return change(args, streams, store, author, work)
