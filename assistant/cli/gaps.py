"""``tellfin gaps``: what is worth curating next (layer 7)."""

from __future__ import annotations

import argparse
import json
from contextlib import closing
from datetime import date
from typing import TYPE_CHECKING

from assistant.cli.opened import folder_of
from assistant.cli.streams import Streams
from assistant.errors import UsageError

if TYPE_CHECKING:
    from assistant.curation.gaps import Gaps
    from assistant.model.knowledge import KnowledgeBase

NAME = "gaps"
HELP = "say what to curate next: pairs not told apart, missing cells by use, memory-only, conflicts, old rules"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("fishes", nargs="*", metavar="FISH", help="only what concerns these fishes or groups")
    parser.add_argument("--limit", type=int, default=10, metavar="N", help="lines in each part (default: 10)")
    parser.add_argument("--date", metavar="YYYY-MM-DD", help="the day to judge rules by (else today)")
    parser.add_argument("--format", choices=("text", "json"), default="text", help="how to print")


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Find and tell."""
    from assistant.curation.gaps import find_gaps
    from assistant.loading import open_base
    from assistant.reasoning.selection import select

    try:
        today = date.fromisoformat(args.date) if args.date else date.today()
    except ValueError as error:
        raise UsageError(f"{args.date!r} is no date", "write it as 2026-07-04") from error
    with closing(open_base(folder_of(args, streams))) as opened:
        found = find_gaps(opened.kb, today, select(opened.kb, args.fishes))
        if args.format == "json":
            streams.out(json.dumps(as_data(found, args.limit), ensure_ascii=False, indent=1))
        else:
            for line in lines(opened.kb, found, args.limit, whole=not args.fishes):
                streams.out(line)
    return 0


def lines(kb: KnowledgeBase, found: Gaps, limit: int, whole: bool = True) -> list[str]:
    """The gaps for people, a part each; those of sources and rules where the ``whole`` base is told of."""
    def name(taxon: str) -> str:
        return kb.taxon(taxon).label

    out = [f"pairs not told apart on a live fish ({len(found.unseparated)})"]
    for pair in found.unseparated[:limit]:
        best = f"{kb.character(pair.best.character).label}, {pair.best.separation:.0%}" if pair.best else "nothing"
        out.append(f"  {name(pair.first)} / {name(pair.second)}: {pair.places} places together; best: {best}")
    out.append(f"cells whose value would spare most mix-ups, one counted for each pair and place ({len(found.cells)})")
    for cell in found.cells[:limit]:
        out.append(f"  {name(cell.taxon)}: {kb.character(cell.character).label} "
                   f"(about {cell.gain:.1f} mix-ups, of {len(cell.pairs)} pair{'' if len(cell.pairs) == 1 else 's'})")
    out.append(f"pairs whose best feature rests on memory alone ({len(found.memory_only)})")
    for pair in found.memory_only[:limit]:
        feature = kb.character(pair.best.character).label if pair.best else ""
        out.append(f"  {name(pair.first)} / {name(pair.second)}: {feature}")
    out.append(f"statements that exclude one another, none preferred ({len(found.conflicts)})")
    out += [f"  st:{a.id}\n  st:{b.id}" for a, b in found.conflicts[:limit]]
    if not whole:
        return out
    out.append(f"sources with a single use ({len(found.used_once)})")
    out += [f"  src:{s}" for s in found.used_once[:limit]]
    out.append(f"rule years that are over ({len(found.expired)})")
    out += [f"  rule:{rule} (through {day})" for rule, day in found.expired[:limit]]
    return out


def as_data(found: Gaps, limit: int) -> dict[str, object]:
    """The gaps as JSON-able values."""
    def pair(p: object) -> dict[str, object]:
        return {"taxa": [getattr(p, "first", ""), getattr(p, "second", "")], "places": getattr(p, "places", 0),
                "confusion": round(float(getattr(p, "confusion", 0.0)), 3)}

    return {"unseparated": [pair(p) for p in found.unseparated[:limit]],
            "cells": [{"taxon": c.taxon, "character": c.character, "gain": c.gain, "pairs": [list(p) for p in c.pairs]}
                      for c in found.cells[:limit]],
            "memory_only": [pair(p) for p in found.memory_only[:limit]],
            "conflicts": [[a.id, b.id] for a, b in found.conflicts[:limit]],
            "used_once": list(found.used_once[:limit]), "expired": [list(e) for e in found.expired[:limit]]}
