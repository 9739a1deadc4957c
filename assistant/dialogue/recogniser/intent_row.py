"""A row of the recogniser table (layer 4)."""

from __future__ import annotations

from typing import NamedTuple


class Row(NamedTuple):
    """When all of ``need`` holds, ``intent`` scores ``score``; ``examples`` are lines that must come out so."""

    intent: str
    score: int
    need: tuple[str, ...]
    examples: tuple[str, ...] = ()
