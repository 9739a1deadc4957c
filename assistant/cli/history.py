"""``tellfin history`` and the replay of a version (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "history"
HELP = "list the changes, all or of a taxon or record; --at VERSION --into DIR brings an earlier version back beside it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("thing", nargs="?", help="a taxon (id or name), the id of a record, or the number of a change")
    parser.add_argument("--limit", type=int, default=0, metavar="N", help="only the newest N changes")
    parser.add_argument("--at", dest="wanted", metavar="VERSION", help="a version, as answers and changes name it")
    parser.add_argument("--into", metavar="DIR", help="the new folder for that version")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """List, or write an earlier version into a folder."""
    from assistant.curation.history import concerns, find_change, listing
    from assistant.curation.lookup import Lookup
    from assistant.curation.replay import replay
    from assistant.curation.stores import open_store
    from assistant.iris import compact

    if bool(args.wanted) != bool(args.into):
        raise UsageError("a replay needs both a version and a folder", "give --at VERSION --into DIR")
    store = open_store(args.base, reading=True)
    if args.wanted:
        steps = replay(store.index(), store.changes(), args.wanted, Path(args.into))
        streams.out(f"{args.into}: version {args.wanted}, {steps} changes before today's; use it with --base")
        return 0
    changes = store.changes()
    if args.thing and (args.thing.isdigit() or args.thing.startswith("change:")):
        changes = [find_change(changes, args.thing)]
    elif args.thing:
        key = compact(args.thing) if ":" in args.thing else Lookup(store.index(), adding=False).taxon(args.thing)
        changes = [c for c in changes if concerns(c, key)]
    for line in listing(changes[-args.limit:] if args.limit else changes):
        streams.out(line)
    streams.out(f"{len(changes)} change{'' if len(changes) == 1 else 's'}")
    return 0
