"""The base that ``--base`` or TELLFIN_BASE names, for commands that read it (layer 7)."""

from __future__ import annotations

import argparse
from collections.abc import Callable
from pathlib import Path

from assistant.cli.streams import Streams
from assistant.units import system_named


def add_units(parser: argparse.ArgumentParser) -> None:
    """The option that chooses the units put first."""
    parser.add_argument("--units", type=system_named, choices=("us", "metric", "cm", "mm"),
                        help="which units to put first (inches and pounds, or centimetres, will do as words)")


def folder_of(args: argparse.Namespace, streams: Streams) -> Path | None:
    """The folder to open, None for the shipped base; a server gives a snapshot of what it holds.

    Raises UsageError for a folder that is none. A half-done change in the folder is finished first.
    """
    if not args.base:
        return None
    from assistant.curation.bases import base_folder

    return base_folder(args.base, streams.err)


def preparing(tell: Callable[[str], None]) -> Callable[[str, int, int], None]:
    """A progress that tells once that the base is being prepared."""
    told: list[str] = []

    def progress(doing: str, _done: int, _of: int) -> None:
        if not told:
            told.append(doing)
            tell("Preparing the base for first use, a few seconds ...")

    return progress
