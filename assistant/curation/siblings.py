"""Numbers that stand far from those of near relatives, or outside what any fish shows (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.curation.view import View, number, one
from assistant.graph.values import Node

LOW, HIGH = ("tf:low", "tf:usualLow", "tf:mean"), ("tf:high", "tf:usualHigh", "tf:mean")
FAR = 4.0
"""How many widths of its relatives' span a value may lie outside it."""
BEYOND, LEAST_TAXA = 3.0, 5
"""So many times the highest number of all other taxa is no fish's, nor is so small a part of the lowest, where so
many have one."""


def far_values(node: Node, view: View) -> Iterator[tuple[str, str]]:
    """What was found and expected where a number statement lies far outside what its congeners show.

    Far is outside the span of at least two congeners by more than ``FAR`` times that span, and by more than a factor
    of two: a slip of a digit or of a unit, not a difference between species.
    """
    if not _asks(node):
        return
    taxon = view.node(one(node, "tf:taxon"))
    character = one(node, "tf:character")
    if taxon is None or one(taxon, "dwc:taxonRank") not in ("species", "subspecies"):
        return
    mine = _span(node)
    spans = list(_relatives(taxon, character, view))
    if mine is None or len(spans) < 2:
        return
    low, high = min(s[0] for s in spans), max(s[1] for s in spans)
    reach = FAR * max(high - low, 1e-9)
    above = mine[0] > high + reach and mine[0] > 2 * high
    below = mine[1] < low - reach and mine[1] * 2 < low
    if above or below:
        yield (f"{mine[0]:g} to {mine[1]:g}", f"near {low:g} to {high:g}, as in {len(spans)} statements of its genus")


def beyond_all(nodes: Iterable[Node], view: View) -> Iterator[tuple[Node, str, str]]:
    """Of number statements those that reach far above what all other taxa of the base show or stay far below it, with
    found and expected.

    A note settles it, as it does for ``far_values``.
    """
    asked: dict[str, list[Node]] = {}
    for node in filter(_asks, nodes):
        asked.setdefault(one(node, "tf:character"), []).append(node)
    held: dict[str, list[str]] = {c.partition(":")[2]: [] for c in asked}
    for key in view.ids("st") if asked else ():
        if (mine := held.get(key.partition(".")[2].partition(".")[0])) is not None:
            mine.append(key)
    for character, statements in asked.items():
        keys = held[character.partition(":")[2]]
        view.fetch(keys)
        others = [n for n in map(view.node, keys) if n is not None and one(n, "tf:character") == character]
        spans = [(one(n, "tf:taxon"), span) for n in others
                 if not one(n, "prov:invalidatedAtTime") and (span := _span(n)) is not None]
        for node in statements:
            yield from ((node, *told) for told in _beyond(node, spans))


def _beyond(node: Node, spans: list[tuple[str, tuple[float, float]]]) -> Iterator[tuple[str, str]]:
    rest = {taxon: span for taxon, span in spans if taxon != one(node, "tf:taxon")}
    mine = _span(node)
    if mine is None or len(rest) < LEAST_TAXA:
        return
    ends = [span for taxon, span in spans if taxon in rest]
    low, high = min(s[0] for s in ends), max(s[1] for s in ends)
    if mine[1] > BEYOND * high or mine[1] * BEYOND < low:
        yield f"{mine[0]:g} to {mine[1]:g}", f"{low:g} to {high:g} or near it, as in the {len(rest)} other taxa told of"


def _asks(node: Node) -> bool:
    """True for a number that no note settles and that stands."""
    return "tf:NumberStatement" in node.types() and not one(node, "skos:editorialNote") \
        and not one(node, "prov:invalidatedAtTime")


def _relatives(taxon: Node, character: str, view: View) -> Iterator[tuple[float, float]]:
    genus = taxon.id.partition(":")[2].partition("-")[0]
    mark = "." + character.partition(":")[2] + "."
    others = [t for t in view.ids("taxon") if t.startswith(f"taxon:{genus}-") and "-x-" not in t and t != taxon.id]
    keys = [k for t in others for k in view.ids("st", t.partition(":")[2]) if mark in k]
    view.fetch(keys)
    for other in (n for n in map(view.node, keys) if n is not None):
        span = _span(other)
        if span is not None and one(other, "tf:character") == character and not one(other, "prov:invalidatedAtTime"):
            yield span


def _span(node: Node) -> tuple[float, float] | None:
    lows = [v for p in LOW if (v := number(node, p)) is not None]
    highs = [v for p in HIGH if (v := number(node, p)) is not None]
    values = lows + highs
    return (min(values), max(values)) if values else None
