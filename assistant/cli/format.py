"""``tellfin format``: bring Turtle files to canonical form (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "format"
HELP = "bring Turtle files to canonical form, one fact a line (--check only says which are not)"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("paths", nargs="*", metavar="PATH", help="files or folders (else the base and the shapes)")
    parser.add_argument("--check", action="store_true", help="change nothing; exit 1 when a file is not in form")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Format, or check the form; 1 when ``--check`` finds a file that is not in canonical form."""
    from assistant.curation.bases import base_folder
    from assistant.curation.format import format_files, unformatted
    from assistant.graph.locate import shipped_shapes
    from assistant.graph.read import turtle_files

    own = [] if args.base else [shipped_shapes()]
    for path in args.paths:
        if not Path(path).exists():
            raise UsageError("there is no such file or folder", "check the path", path)
    roots = [Path(p) for p in args.paths] or [base_folder(args.base, streams.err), *own]
    files = [f for root in roots for f in ([root] if root.is_file() else turtle_files(root))]
    if args.check:
        faults = list(unformatted(files))
        for path, fault in faults:
            streams.out(f"{path}: {fault}")
        streams.out(f"{len(files)} files looked at, {len(faults)} not in canonical form")
        return 1 if faults else 0
    changed = format_files(files)
    for path in changed:
        streams.out(f"formatted {path}")
    streams.out(f"{len(files)} files looked at, {len(changed)} rewritten")
    return 0
