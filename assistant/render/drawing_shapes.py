"""Plain geometry for drawn fishes: smooth curves, paths, places spread evenly (layer 5).

A fish lies in units of its length without the tail: ``u`` from the snout (0) to the tail base (1), ``v`` upwards from
the middle line. ``Frame`` turns that into the units of the picture.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Frame:
    """Where the fish lies in the picture: the place of its snout, and how long a unit is."""

    left: float
    middle: float
    scale: float

    def at(self, u: float, v: float) -> Point:
        """A place of the fish in the picture."""
        return self.left + u * self.scale, self.middle - v * self.scale


@dataclass(frozen=True, slots=True)
class Curve:
    """A smooth line through points with rising ``u``; flat beyond its ends."""

    points: tuple[Point, ...]

    def __call__(self, u: float) -> float:
        """The height at ``u``."""
        points = self.points
        if u <= points[0][0]:
            return points[0][1]
        if u >= points[-1][0]:
            return points[-1][1]
        i = next(k for k in range(1, len(points)) if points[k][0] >= u)
        (a, p), (b, q) = points[i - 1], points[i]
        t, width = (u - a) / (b - a), b - a
        m, n = self._slope(i - 1) * width, self._slope(i) * width
        return ((2 * t**3 - 3 * t**2 + 1) * p + (t**3 - 2 * t**2 + t) * m
                + (-2 * t**3 + 3 * t**2) * q + (t**3 - t**2) * n)

    def _slope(self, i: int) -> float:
        points = self.points
        a, b = points[max(0, i - 1)], points[min(len(points) - 1, i + 1)]
        return (b[1] - a[1]) / (b[0] - a[0])


def number(value: float) -> str:
    """A coordinate, short."""
    text = f"{value:.1f}"
    return text.removesuffix(".0") if text != "-0.0" else "0"


def line(points: Sequence[Point], closed: bool = False) -> str:
    """The path data of straight pieces through points."""
    body = "L".join(f"{number(x)} {number(y)}" for x, y in points)
    return f"M{body}" + ("Z" if closed else "")


def smooth(points: Sequence[Point], closed: bool = False) -> str:
    """The path data of a smooth curve through points."""
    if len(points) < 3:
        return line(points, closed)
    ring = list(points)
    out = [f"M{number(ring[0][0])} {number(ring[0][1])}"]
    count = len(ring)
    for i in range(count if closed else count - 1):
        before, here = ring[i - 1] if closed or i else ring[0], ring[i]
        there = ring[(i + 1) % count]
        after = ring[(i + 2) % count] if closed or i + 2 < count else there
        c1 = (here[0] + (there[0] - before[0]) / 6, here[1] + (there[1] - before[1]) / 6)
        c2 = (there[0] - (after[0] - here[0]) / 6, there[1] - (after[1] - here[1]) / 6)
        out.append("C" + " ".join(number(c) for c in (*c1, *c2, *there)))
    return "".join(out) + ("Z" if closed else "")


def span(first: float, last: float, count: int) -> list[float]:
    """``count`` values from ``first`` to ``last``, both included."""
    if count < 2:
        return [(first + last) / 2]
    return [first + (last - first) * i / (count - 1) for i in range(count)]


def scattered(count: int, start: int = 1) -> Iterator[Point]:
    """Places in the unit square that fill it evenly without rows; always the same ones."""
    for i in range(start, start + count):
        yield _radical(i, 2), _radical(i, 3)


def _radical(i: int, base: int) -> float:
    out, part = 0.0, 1.0 / base
    while i:
        out += part * (i % base)
        i //= base
        part /= base
    return out


def turned(point: Point, centre: Point, degrees: float) -> Point:
    """A point turned round a centre (clockwise in the picture)."""
    angle = math.radians(degrees)
    x, y = point[0] - centre[0], point[1] - centre[1]
    return (centre[0] + x * math.cos(angle) - y * math.sin(angle),
            centre[1] + x * math.sin(angle) + y * math.cos(angle))
