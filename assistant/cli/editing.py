"""What the editing commands share: who, why, patches, and telling what became of a change (layer 7)."""

from __future__ import annotations

import argparse
import json
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.cli.streams import Streams
from assistant.errors import DataError, UsageError

if TYPE_CHECKING:
    from assistant.curation.history import Author
    from assistant.curation.stores import Store
    from assistant.curation.transact import Outcome, Work

LARGEST_PATCH = 8_000_000
"""Bytes; larger changes are sheets."""
SHOWN = 5
"""Findings on a change that are told of each rule."""
NOBODY = "nobody yet"
"""Who makes a change, and why, where it is only tried."""


def add_edit_options(parser: argparse.ArgumentParser, patch: bool = False, needs: tuple[str, ...] = ()) -> None:
    """The options of every command that changes a base; ``needs`` names those that a change is not made without."""
    why, source = ("; needed" if name in needs else "" for name in ("why", "from-source"))
    parser.add_argument("--by", metavar="NAME", help="who makes the change (asked once, then remembered with the base)")
    parser.add_argument("--why", metavar="TEXT", help=f"why the change is made{why}")
    parser.add_argument("--from-source", metavar="KEY", action="append", default=[],
                        help=f"a source of the base that the change rests on (may be given again{source})")
    parser.add_argument("--dry-run", action="store_true", help="show the change in words and findings, write nothing")
    if patch:
        parser.add_argument("--patch", metavar="FILE",
                            help='a small Turtle or JSON patch (- reads standard input), such as {"add": [{"kind": '
                            '"look-alike", "taxon": "walleye", "other": "sauger", "separable": "yes", "source": '
                            '"memory"}], "correct": [{"id": "st:ID", "low": 9}]}')


def now() -> datetime:
    """The time of a change."""
    return datetime.now(UTC).replace(microsecond=0)


def author_of(args: argparse.Namespace, streams: Streams, store: Store, why: str = "") -> Author:
    """Who makes the change: --by, else the remembered name, else asked for at a terminal."""
    from assistant.curation.history import Author

    name = args.by or store.curator() or (NOBODY if args.dry_run else "")
    if not name and streams.stdin.isatty() and getattr(args, "patch", None) != "-":
        streams.stdout.write("Who are you? (kept with this base) ")
        streams.stdout.flush()
        name = streams.stdin.readline().strip()
    reason = args.why or why or (NOBODY if args.dry_run else "")
    if not name:
        also = "" if reason else ", and --why TEXT for the reason"
        raise UsageError("who makes the change is not known",
                         f"give --by NAME once; it is remembered with the base{also}")
    if not reason:
        raise UsageError("a change needs its reason", "give --why TEXT")
    author = Author(name, reason, tuple(k if k.startswith("src:") else f"src:{k}" for k in args.from_source))
    if author.key and name != store.curator() and not args.dry_run:
        store.remember(name)
    return author


def change(args: argparse.Namespace, streams: Streams, store: Store, author: Author, work: Work) -> int:
    """Make the change and tell what became of it."""
    return tell(store.transact(author, now(), work, args.dry_run), args.dry_run, streams)


def tell(outcome: Outcome, dry_run: bool, streams: Streams) -> int:
    """The change in words, the findings, and whether it stands; 1 when it was refused."""
    from assistant.curation.findings import report, tally

    for line in outcome.words[:200]:
        streams.out(line)
    if len(outcome.words) > 200:
        streams.out(f"… and {len(outcome.words) - 200} more")
    for line in report(outcome.findings, SHOWN):
        streams.out(line)
    if outcome.refused:
        streams.out(f"refused, nothing was changed: {tally(outcome.findings)}")
        return 1
    if not outcome.words:
        streams.out("nothing to change: the base says so already")
    elif dry_run:
        streams.out("dry run: nothing was written")
    else:
        streams.out(f"done as change {int(outcome.change.partition(':')[2].partition('-')[0])} ({outcome.change})")
    return 0


def read_patch(name: str, streams: Streams) -> str:
    """The text of a patch. DataError when it is too large or no UTF-8 text."""
    if name == "-":
        source = getattr(streams.stdin, "buffer", None)
        data = source.read(LARGEST_PATCH + 1) if source is not None else streams.stdin.read().encode("utf-8", "replace")
    else:
        try:
            with Path(name).open("rb") as file:
                data = file.read(LARGEST_PATCH + 1)
        except OSError as error:
            raise UsageError(f"the patch cannot be read: {error.strerror}", "check its path", name) from error
    if len(data) > LARGEST_PATCH:
        raise DataError(f"the patch is larger than {LARGEST_PATCH // 1_000_000} MB", "use tellfin import", name)
    try:
        return str(data.decode("utf-8"))
    except UnicodeDecodeError as error:
        raise DataError("the patch is no UTF-8 text", "save it as UTF-8", name) from error


def parse_table(text: str, name: str) -> dict[str, object] | None:
    """A JSON patch as a table; None when the text is no JSON object (then it is Turtle)."""
    if not text.lstrip().startswith("{"):
        return None
    try:
        table = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise DataError(f"the patch is no JSON: {error}", "check brackets and quotes", name) from error
    return table if isinstance(table, dict) else None
