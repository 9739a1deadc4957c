"""``tellfin new-base``: a base of one's own, copied from the shipped one (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams

NAME = "new-base"
HELP = "make a base of your own: a copy of the shipped one that can be changed"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("folder", help="the folder to make; or the address of an empty server, to put the base there")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Copy and tell how to use it."""
    from assistant.curation.bases import base_folder, is_server, new_base

    if is_server(args.folder):
        from assistant.curation.served import found_on_server
        from assistant.graph.lines import Index

        nodes = Index(base_folder(args.base, streams.err)).all_nodes()
        found_on_server(args.folder, nodes.values())
        streams.out(f"{args.folder}: {len(nodes)} records. Use it with --base {args.folder}, or set TELLFIN_BASE.")
        return 0
    count = new_base(Path(args.folder))
    streams.out(f"{args.folder}: {count} files. Use it with --base {args.folder}, or set TELLFIN_BASE.")
    return 0
