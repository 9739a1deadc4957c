"""``tellfin check``: the whole check of a base, with findings worst first (layer 7)."""

from __future__ import annotations

import argparse
import json

from assistant.cli.streams import Streams

NAME = "check"
HELP = "check the whole base: readable, in canonical form, shapes, references, numbers, names"
WIDE = 120
"""Columns in which the table of groups stands unwrapped; it needs about 75."""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("--format", choices=("text", "json"), default="text", help="how to print the findings")
    parser.add_argument("--all", action="store_true", help="show every finding, not the first few of each group")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Check and report; 0 when nothing keeps the base from being used, else 1."""
    from assistant.curation.bases import base_folder
    from assistant.curation.census import table
    from assistant.curation.check import check_folder
    from assistant.curation.findings import as_data, report, tally
    from assistant.graph.locate import shipped_shapes
    from assistant.render.tables import text_table

    folder = base_folder(args.base, streams.err)
    streams.wait(f"checking {folder}, which may take half a minute ...")
    outcome = check_folder(folder, shipped_shapes())
    if args.format == "json":
        found = outcome.census
        groups = [g._asdict() for g in (*found.groups, found.total)] if found else []
        streams.out(json.dumps({"passed": outcome.passed, "checked": outcome.counts, "groups": groups,
                                "findings": as_data(outcome.findings)}, ensure_ascii=False, indent=1))
    else:
        for line in report(outcome.findings, 0 if args.all else 5, "--all shows them"):
            streams.out(line)
        if outcome.census is not None:
            streams.out(text_table(table(outcome.census), WIDE))
            streams.out("shares: read / from memory / common practice, per cent")
            streams.out(f"{outcome.census.names:,} names, {outcome.census.look_alikes:,} look-alike pairs")
        streams.out(f"checked {outcome.summary()}")
        streams.out(f"{'passed' if outcome.passed else 'failed'}: {tally(outcome.findings)}")
    return 0 if outcome.passed else 1
