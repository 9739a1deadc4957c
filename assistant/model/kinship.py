"""Who stands below whom: lists that answers need and that no single record holds, made with the rows (layer 2).

``list`` holds the kinds an identification may name under "species"; ``children`` the taxa directly below a taxon,
``crosses`` the crosses a taxon is a parent of, ``taken-for`` the taxa in whose records it is a look-alike.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from assistant.model.records import Taxon
from assistant.model.schema import BY_NAME, decode

Shared = Mapping[str, Mapping[str, list[Any]]]
Grouped = Mapping[str, Mapping[str, list[list[Any]]]]


def build_kinship(shared: Shared, grouped: Grouped) -> dict[str, dict[str, list[Any]]]:
    """The kinds of rows above, everything sorted."""
    taxa: list[Taxon] = [decode(BY_NAME["taxon"], row) for row in shared.get("taxon", {}).values()]
    children: dict[str, list[str]] = {}
    crosses: dict[str, list[str]] = {}
    for taxon in sorted(taxa, key=lambda t: t.id):
        if taxon.parent:
            children.setdefault(taxon.parent, []).append(taxon.id)
        for parent in taxon.parents:
            crosses.setdefault(parent, []).append(taxon.id)
    split = {t.parent for t in taxa if t.rank == "subspecies"}
    species = sorted(t.id for t in taxa if t.is_species and not t.deprecated and t.id not in split)
    return {"list": {"species": species}, "children": dict(sorted(children.items())),
            "crosses": dict(sorted(crosses.items())), "taken-for": _taken_for(grouped)}


def _taken_for(grouped: Grouped) -> dict[str, list[Any]]:
    where = 1 + next(i for i, f in enumerate(BY_NAME["look-alike"].fields) if f.name == "other")
    out: dict[str, set[str]] = {}
    for taxon, rows in grouped.get("look-alike", {}).items():
        for row in rows:
            out.setdefault(row[where], set()).add(taxon)
    return {other: sorted(out[other]) for other in sorted(out)}
