"""``tellfin new-base``: a base of one's own, copied from the shipped one (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams

NAME = "new-base"
HELP = "make a base of your own: a copy of the shipped one that can be changed"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("folder", help="the folder to make")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Copy and tell how to use it."""
    from assistant.curation.bases import new_base

    count = new_base(Path(args.folder))
    streams.out(f"{args.folder}: {count} files. Use it with --base {args.folder}, or set TELLFIN_BASE.")
    return 0
