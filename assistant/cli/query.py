"""``tellfin query``: read-only SPARQL over the base (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "query"
HELP = "ask the base in SPARQL (SELECT, ASK, CONSTRUCT), our prefixes ready; nothing can be changed"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("query", nargs="?", default="-", metavar="FILE",
                        help="a file with the query, - for standard input (the default), or the query itself")
    parser.add_argument("--format", choices=("table", "csv", "json", "turtle"), help="form of the result "
                        "(default: table; turtle for CONSTRUCT)")
    parser.add_argument("--seconds", type=float, default=20.0, metavar="N", help="stop after N seconds (default: 20)")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Ask and print."""
    from assistant.curation.bases import base_folder
    from assistant.graph.sparql import ask_folder, query_form

    text = _read(args.query, streams)
    if not text.strip():
        raise UsageError("the query is empty", "for example: SELECT ?t WHERE { ?t a dwc:Taxon }")
    if not 0 < args.seconds <= 3600:
        raise UsageError("the time limit is out of bounds", "from a moment to 3600 seconds")
    constructs = query_form(text) == "CONSTRUCT"
    form = args.format or ("turtle" if constructs else "table")
    if constructs and form != "turtle":
        raise UsageError("the result of CONSTRUCT is Turtle", "leave --format out")
    streams.stdout.write(ask_folder(base_folder(args.base, streams.err), text, form, args.seconds))
    return 0


def _read(name: str, streams: Streams) -> str:
    if name == "-":
        return streams.stdin.read()
    if "{" in name or "\n" in name:
        return name
    try:
        return Path(name).read_text(encoding="utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise UsageError("the query cannot be read", "name a file of UTF-8 text, or type the query", name) from error
