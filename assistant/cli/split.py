"""``tellfin split``: one taxon becomes several; the queue of records that wait for a decision (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now
from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "split"
HELP = "divide a taxon; its records wait on the wide concept until someone decides (--queue, --decide)"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("taxon", nargs="?", help="the taxon to divide, by id or name")
    parser.add_argument("--into", action="append", default=[], metavar="PART",
                        help="a part: 'Scientific name=English name' or taxon:ID (twice or more)")
    parser.add_argument("--queue", action="store_true", help="list the records that wait for a decision")
    parser.add_argument("--decide", nargs="+", default=[], metavar="ID", help="records to decide about")
    parser.add_argument("--to", action="append", default=[], metavar="TAXON",
                        help="the taxon they belong to (may be given again; without it they stay where they are)")
    add_edit_options(parser, needs=("why", "from-source"))


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Split, list what waits, or decide; 1 when the change is refused."""
    from assistant.curation.lookup import Lookup
    from assistant.curation.names import decide, parse_part, queue, split
    from assistant.curation.stores import open_store
    from assistant.curation.transact import Extra
    from assistant.curation.view import Draft
    from assistant.curation.wording import say, waiting_words

    store = open_store(args.base, reading=args.queue)
    if args.queue:
        index = store.index()
        waiting = queue(index, store.changes())
        for item in waiting:
            node = index.node(item.record)
            streams.out(f"{item.record}  {say(node, index) if node else ''}")
            streams.out(f"    may belong to {', '.join(item.candidates)}")
        streams.out(f"{len(waiting)} record{'' if len(waiting) == 1 else 's'} waiting")
        return 0
    if not args.taxon and not args.decide:
        raise UsageError("nothing to split", "name a taxon and its parts, or give --queue or --decide")
    author = author_of(args, streams, store)

    def work(draft: Draft) -> Extra:
        lookup = Lookup(draft, adding=False)
        if args.decide:
            targets = [lookup.taxon(t) for t in args.to]
            return decide(draft, args.decide, targets, store.changes(), author, now().date())
        parts = [parse_part(p, lookup) for p in args.into]
        return split(draft, lookup.taxon(args.taxon), parts, author, now().date())

    code = change(args, streams, store, author, work)
    if not code and not args.dry_run and (left := len(queue(store.index(), store.changes()))):
        streams.out(waiting_words(left))
    return code
