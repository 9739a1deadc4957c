"""``tellfin import``: a sheet of records, told row by row before anything is done (layer 7)."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path

from assistant.cli.editing import add_edit_options, author_of, now, tell
from assistant.cli.streams import Streams

NAME = "import"
HELP = "import a sheet (csv, tsv, xlsx): first a report, then all rows or none"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("sheet", help="the file; or a folder from 'tellfin export --form whole', for an empty base")
    parser.add_argument("--skip-rejected", action="store_true", help="apply the rows that can be, leave the others out")
    add_edit_options(parser)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Report and apply; 1 when rows were rejected and nothing was (or, tried, would be) applied."""
    path = Path(args.sheet)
    return _whole(args, path, streams) if path.is_dir() else _rows(args, path, streams)


def _rows(args: argparse.Namespace, path: Path, streams: Streams) -> int:
    from assistant.curation.sheets import Plan, plan_sheet
    from assistant.curation.stores import open_store
    from assistant.curation.tables import read_table
    from assistant.curation.validate import Validator
    from assistant.curation.view import Draft
    from assistant.errors import DataError
    from assistant.graph.locate import shipped_shapes

    table = read_table(path)
    store = open_store(args.base)
    author = author_of(args, streams, store, f"sheet {path.name}")
    validator = Validator(shipped_shapes())
    plans: list[Plan] = []

    def work(draft: Draft) -> None:
        plan = plan_sheet(table, draft, validator, author.key, now().date(), bar(streams, len(table.rows)))
        plans[:] = [plan]
        if plan.count("rejected") and not args.skip_rejected and not args.dry_run:
            raise DataError("nothing was applied", "mend the rows, or give --skip-rejected")

    try:
        outcome = store.transact(author, now(), work, args.dry_run)
    finally:
        for plan in plans:
            for line in list(plan.rejected())[:500]:
                streams.out(line)
            streams.out(f"{plan.kind}: {plan.summary()}")
    code = tell(outcome, args.dry_run, streams)
    if args.dry_run and not args.skip_rejected and any(plan.count("rejected") for plan in plans):
        streams.out("nothing would be applied: mend the rows, or give --skip-rejected")
        return max(code, DataError.exit_code)
    return code


def _whole(args: argparse.Namespace, path: Path, streams: Streams) -> int:
    from assistant.curation.whole_base import found_base

    count = found_base(path, args.base)
    streams.out(f"{args.base}: {count} files written and checked")
    return 0


def bar(streams: Streams, total: int) -> Callable[[int, int], None] | None:
    """A progress bar on the error stream for long sheets at a terminal."""
    if total < 300 or not streams.stderr.isatty():
        return None

    def show(done: int, of: int) -> None:
        filled = 30 * done // of
        end = "\n" if done >= of - 49 else ""
        streams.stderr.write(f"\r[{'#' * filled}{'.' * (30 - filled)}] {done}/{of} rows{end}")
        streams.stderr.flush()

    return show
