"""``tellfin rename``: a taxon under a new name, with the work that renames it (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now
from assistant.cli.streams import Streams

NAME = "rename"
HELP = "give a taxon a new name; its identifier stays and the old name still leads to it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("taxon", help="the taxon, by id or name")
    parser.add_argument("--scientific", default="", metavar="NAME", help="the new scientific name")
    parser.add_argument("--label", default="", metavar="NAME", help="the new English name")
    add_edit_options(parser, needs=("from-source",))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Rename and tell; 1 when the change is refused."""
    from assistant.curation.lookup import Lookup
    from assistant.curation.names import rename
    from assistant.curation.stores import open_store
    from assistant.curation.view import Draft

    store = open_store(args.base)
    author = author_of(args, streams, store, "renamed")

    def work(draft: Draft) -> None:
        rename(draft, Lookup(draft, adding=False).taxon(args.taxon), args.scientific, args.label, author, now().date())

    return change(args, streams, store, author, work)
