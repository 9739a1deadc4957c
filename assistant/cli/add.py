"""``tellfin add``: add a record, or the records of a patch (layer 7)."""

from __future__ import annotations

import argparse

from assistant.cli.editing import add_edit_options, author_of, change, now, parse_table, read_patch
from assistant.cli.streams import Streams
from assistant.errors import UsageError

NAME = "add"
HELP = ("add a record: tellfin add statement taxon='green sunfish' character=gill-rakers value=11-14 "
        "source=KEY basis=read")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Options of the command."""
    parser.add_argument("kind", nargs="?", help="statement, taxon (its label becomes its accepted name), name, range, "
                        "look-alike, source, rule or another kind")
    parser.add_argument("fields", nargs="*", metavar="FIELD=VALUE", help="the fields (a wrong one lists all)")
    add_edit_options(parser, patch=True)


def execute(args: argparse.Namespace, streams: Streams) -> int:
    """Add and tell; 1 when the change is refused."""
    from assistant.curation.edit import add_record, apply_nodes, apply_table, name_new_species
    from assistant.curation.lookup import Lookup
    from assistant.curation.records import kind_named, pairs
    from assistant.curation.stores import open_store
    from assistant.curation.view import Draft
    from assistant.curation.wanted import filled, kinds_listed, refuse_unfit
    from assistant.graph.triples import parse_turtle

    if not args.kind and not args.patch:
        raise UsageError("nothing to add", "\n  ".join([
            "name a kind and its fields, or give --patch FILE (tellfin add KIND says what each field takes):",
            *kinds_listed()]))
    fields = pairs(args.fields)
    if args.kind:
        kind_named(args.kind)
    text = read_patch(args.patch, streams) if args.patch else ""
    store = open_store(args.base)
    table = parse_table(text, args.patch) if text else None
    if args.kind:
        index, kind = store.index(), kind_named(args.kind)
        signed = bool(args.by or store.curator())
        refuse_unfit(kind, filled(kind, fields, index), Lookup(index), early=signed)
    author = author_of(args, streams, store, str((table or {}).get("why") or "new record"))

    def work(draft: Draft) -> None:
        if args.kind:
            add_record(draft, args.kind, fields, author.key, now().date())
        elif table is not None:
            apply_table(draft, table, author.key, now().date(), author.why)
        else:
            apply_nodes(draft, parse_turtle(text, args.patch), author.key, now().date(), correct=False)
        name_new_species(draft, author.key, now().date())

    return change(args, streams, store, author, work)
