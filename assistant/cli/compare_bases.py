"""``tellfin compare-bases``: what is different between two bases, in words (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.streams import Streams

NAME = "compare-bases"
HELP = "say in words what is different in the second of two bases"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("first", help="the folder of the older base ('shipped' for the shipped one)")
    parser.add_argument("second", nargs="?", help="the folder of the newer base (else --base)")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Compare and tell."""
    from assistant.curation.bases import base_folder
    from assistant.curation.compare import compare_bases

    first = base_folder(None if args.first == "shipped" else args.first, streams.err)
    second = base_folder(None if args.second == "shipped" else args.second or args.base, streams.err)
    lines = compare_bases(first, second)
    for line in lines:
        streams.out(line)
    streams.out(f"{len(lines)} difference{'' if len(lines) == 1 else 's'}")
    return 0
