"""Named lists of (position, weight), kept as flat arrays: who occurs where, who stands below whom (layer 3)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

Positions = npt.NDArray[np.int32]
Weights = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Sparse:
    """For each name the positions it touches, each once and rising, with a weight."""

    names: tuple[str, ...]
    starts: Positions
    where: Positions
    weight: Weights

    @cached_property
    def _row(self) -> Mapping[str, int]:
        return {name: i for i, name in enumerate(self.names)}

    def get(self, name: str) -> tuple[Positions, Weights]:
        """Positions and weights under a name; both empty for an unknown one."""
        row = self._row.get(name)
        if row is None:
            return self.where[:0], self.weight[:0]
        a, b = self.starts[row], self.starts[row + 1]
        return self.where[a:b], self.weight[a:b]


def sparse(entries: Iterable[tuple[str, int, float]]) -> Sparse:
    """From (name, position, weight); of several entries for the same name and position the largest weight stays."""
    best: dict[str, dict[int, float]] = {}
    for name, position, value in entries:
        row = best.setdefault(name, {})
        row[position] = max(value, row.get(position, value))
    names = tuple(sorted(best))
    rows = [sorted(best[name].items()) for name in names]
    starts = np.cumsum([0, *(len(row) for row in rows)], dtype=np.int32)
    where = np.array([p for row in rows for p, _ in row], dtype=np.int32)
    weight = np.array([w for row in rows for _, w in row], dtype=np.float64)
    return Sparse(names, starts, where, weight)
