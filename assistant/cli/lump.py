"""``tellfin lump``: several taxa become one (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now
from assistant.cli.streams import Streams

NAME = "lump"
HELP = "join taxa under one; the names of the others lead to it, their records wait (tellfin split --queue)"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("kept", help="the taxon that stays, by id or name")
    parser.add_argument("others", nargs="+", help="the taxa that are joined to it")
    add_edit_options(parser, needs=("why", "from-source"))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Lump and tell; 1 when the change is refused."""
    from assistant.curation.lookup import Lookup
    from assistant.curation.names import lump, queue
    from assistant.curation.stores import open_store
    from assistant.curation.transact import Extra
    from assistant.curation.view import Draft
    from assistant.curation.wording import waiting_words

    store = open_store(args.base)
    author = author_of(args, streams, store)

    def work(draft: Draft) -> Extra:
        lookup = Lookup(draft, adding=False)
        return lump(draft, lookup.taxon(args.kept), [lookup.taxon(o) for o in args.others], author, now().date())

    code = change(args, streams, store, author, work)
    if not code and not args.dry_run and (left := len(queue(store.index(), store.changes()))):
        streams.out(waiting_words(left))
    return code
