"""``tellfin export``: records as a sheet, in the form that ``tellfin import`` reads (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "export"
HELP = "write records as a sheet (csv, tsv, xlsx), the same bytes for the same base; --form whole writes all of it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("output", help="the file to write (- for standard output); for --form whole a new folder")
    parser.add_argument("--form", choices=("facts", "names", "ranges", "sources", "darwin-core", "whole"),
                        default="facts", help="what to write (default: facts)")
    parser.add_argument("--taxon", "--group", metavar="TAXON",
                        help="only of this taxon and those below it, or of a group (sunfishes)")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Write the sheet and tell how much it holds."""
    from assistant.curation.bases import base_folder
    from assistant.curation.export import sheet_rows, write_whole
    from assistant.curation.sheet_rows import COLUMNS
    from assistant.curation.tables import table_bytes, write_table
    from assistant.graph.lines import Index

    index = Index(base_folder(args.base, streams.err))
    if args.form == "whole":
        if args.taxon or args.output == "-":
            raise UsageError("a whole base is written into a folder", "tellfin export DIR --form whole")
        streams.wait(f"writing {args.output}, which may take half a minute ...")
        count = write_whole(index, Path(args.output))
        streams.out(f"{args.output}: {count} sheets")
        return 0
    rows = sheet_rows(index, args.form, args.taxon)
    if args.output == "-":
        streams.stdout.write(table_bytes(".csv", COLUMNS[args.form], rows).decode("utf-8"))
        return 0
    write_table(Path(args.output), COLUMNS[args.form], rows)
    streams.out(f"{args.output}: {len(rows)} rows")
    return 0
