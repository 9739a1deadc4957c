"""The base that ``--base`` or TELLFIN_BASE names, for commands that read it (layer 7)."""

from __future__ import annotations

import argparse
from pathlib import Path

from assistant.cli.streams import Streams


def folder_of(args: argparse.Namespace, streams: Streams) -> Path | None:
    """The folder to open, None for the shipped base; a server gives a snapshot of what it holds.

    Raises UsageError for a folder that is none. A half-done change in the folder is finished first.
    """
    if not args.base:
        return None
    from assistant.curation.bases import base_folder

    return base_folder(args.base, streams.err)
