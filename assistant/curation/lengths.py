"""Usual lengths that stand above the largest length of the same fish (layer 4)."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.curation.view import View, many, number, one
from assistant.graph.values import Node
from assistant.reasoning.size import MAXIMUM, USUAL

TOPS = ("tf:high", "tf:usualHigh", "tf:mean", "tf:usualLow", "tf:low")


def above_the_largest(node: Node, view: View, scope: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """What was found and expected where a usual length reaches above the largest length of its taxon.

    A largest length counts for a usual one when it speaks of the same fish or of more of them: each part of its
    ``scope`` is empty or the same.
    """
    if one(node, "tf:character") != f"char:{USUAL}" or one(node, "prov:invalidatedAtTime"):
        return
    tops = [(top, n.id) for n in _largest(node, view) if _covers(n, node, scope) and (top := _top(n)) is not None]
    mine = _top(node)
    if mine is not None and tops and mine > max(tops)[0]:
        yield f"a usual length up to {mine:g} mm", f"at most {max(tops)[0]:g} mm, the largest ({max(tops)[1]})"


def _largest(node: Node, view: View) -> list[Node]:
    mark = f".{MAXIMUM}."
    keys = [k for k in view.ids("st", one(node, "tf:taxon").partition(":")[2]) if mark in k]
    view.fetch(keys)
    found = [n for n in map(view.node, keys) if n is not None]
    return [n for n in found if one(n, "tf:character") == f"char:{MAXIMUM}" and not one(n, "prov:invalidatedAtTime")]


def _covers(wide: Node, narrow: Node, scope: tuple[str, ...]) -> bool:
    return all(not many(wide, part) or many(wide, part) == many(narrow, part) for part in scope)


def _top(node: Node) -> float | None:
    return max((v for p in TOPS if (v := number(node, p)) is not None), default=None)
