"""``tellfin undo``: take a change back, as a change of its own (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change
from assistant.cli.streams import Streams

NAME = "undo"
HELP = "take a change back: tellfin undo 12 --why 'wrong page'"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("change", help="the number or id of the change (tellfin history lists them)")
    add_edit_options(parser)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Undo and tell; 1 when something later stands in the way."""
    from assistant.curation.history import find_change, take_back
    from assistant.curation.stores import open_store
    from assistant.curation.transact import Extra
    from assistant.curation.view import Draft

    store = open_store(args.base)
    find_change(store.changes(), args.change)
    author = author_of(args, streams, store, f"undo of {args.change}")

    def work(draft: Draft) -> Extra:
        changes = store.changes()
        return take_back(find_change(changes, args.change), changes, draft)

    return change(args, streams, store, author, work)
