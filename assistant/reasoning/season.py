"""Where a day stands in the seasons of a row: harvest, release-only or closed, and what opens next (layer 3)."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from itertools import groupby

from assistant.reasoning.calendar import Span, next_opening, window_holding
from assistant.reasoning.precedence import Opening, Row
from assistant.reasoning.verdict import Season

MODES: tuple[str, ...] = ("closed", "catch-and-release", "harvest")
"""Weakest first: inside a layer the strongest window that holds wins."""
_Held = tuple[Opening, Span]


def season_on(row: Row, day: date, on_ice: bool | None = None) -> Season:
    """The season of a row on a day; where no rule states a season, it is open ("harvest")."""
    if not row.season:
        return Season("harvest", row.daily.rule if row.daily else "")
    held = _held(row.season, day)
    wet = [h for h in held if not h[0].window.open_water or on_ice is not True]
    best = _standing(wet, row)
    next_day, next_rule = _next_harvest(row.season, day)
    ice = any(h[0].window.open_water for h in held) and on_ice is not False
    if best is None:
        return Season("closed", row.season[0].rule, None, None, next_day, next_rule, ice)
    opening, span = best
    mode = opening.window.mode
    if mode == "harvest":
        return Season(mode, opening.rule, span.first, span.last, ice_matters=ice)
    return Season(mode, opening.rule, span.first, span.last, next_day, next_rule, ice)


def _held(season: Sequence[Opening], day: date) -> list[_Held]:
    found = []
    for opening in season:
        span = window_holding(opening.window.opens, opening.window.closes, day)
        if span is not None:
            found.append((opening, span))
    return found


def _standing(held: list[_Held], row: Row) -> _Held | None:
    """The window that decides, layer by layer: an added closed window shuts, an open one takes nothing away."""
    tied = {rule for c in row.conflicts if c.field == "season" for rule in (c.first, c.second)}
    if tied:
        return _stricter(held, tied)
    standing: _Held | None = None
    for _, layer in groupby(sorted(held, key=lambda h: h[0].rank), key=lambda h: h[0].rank):
        best = max(layer, key=_strength)
        if standing is None or best[0].window.mode == "closed" or _strength(best) > _strength(standing):
            standing = best
    return standing


def _stricter(held: list[_Held], tied: set[str]) -> _Held | None:
    """Between rules in conflict the less open one counts; one with no window that day is closed."""
    best: list[_Held] = []
    for rule in sorted(tied):
        mine = [h for h in held if h[0].rule == rule]
        if not mine:
            return None
        best.append(max(mine, key=_strength))
    return min(best, key=_strength)


def _strength(held: _Held) -> int:
    return MODES.index(held[0].window.mode)


def _next_harvest(season: Sequence[Opening], day: date) -> tuple[date | None, str]:
    """The next day on which a harvest window opens, and its rule."""
    found = []
    for opening in season:
        if opening.window.mode == "harvest":
            span = next_opening(opening.window.opens, opening.window.closes, day)
            if span is not None:
                found.append((span.first, opening.rule))
    return min(found) if found else (None, "")
