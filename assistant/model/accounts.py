"""What each file of a base accounts for, kept so that a changed file can be taken out of the rows again (layer 2).

``made-from`` holds the kind and key of every row that a file gives or adds to; ``gist-of`` how much it says with each
character and state, so that the gist of the base is the sum of those of its files.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import cache
from typing import Any

from assistant.model.schema import BY_NAME

Row = list[Any]
Told = tuple[str, str, Row]
"""The kind of a row, its key (the group of a grouped kind, else its id), and the row."""
MADE_FROM, GIST_OF = "made-from", "gist-of"


def account_of(told: Iterable[Told]) -> dict[str, list[Any]]:
    """The rows of ``made-from`` and ``gist-of`` for the rows of one file."""
    rows = list(told)
    pairs = sorted({(kind, key) for kind, key, _ in rows})
    said = gist(row for kind, _, row in rows if kind == "statement")
    return {MADE_FROM: [list(pair) for pair in pairs], GIST_OF: [[name, *entry] for name, entry in said.items()]}


def key_of(name: str) -> str:
    """The key under which the account of a file stands."""
    return name.replace("\\", "\\\\").replace("\t", "\\t").replace("\n", "\\n")


def name_of(key: str) -> str:
    """The path of the file whose account stands under a key.

    >>> name_of(key_of("a\\tb")) == "a\\tb"
    True
    """
    return re.sub(r"\\(.)", lambda m: {"t": "\t", "n": "\n"}.get(m[1], m[1]), key)


def place_in_group(row: Row) -> str:
    """What the rows of a group are ordered by."""
    return str(row[0])


def gist(statements: Iterable[Row]) -> dict[str, list[Any]]:
    """For each character and state: how many statements use it; for numbers the lowest and highest stated."""
    character, states, numbers = _places()
    out: dict[str, list[Any]] = {}
    for row in statements:
        entry = out.setdefault(row[character], [0, None, None])
        entry[0] += 1
        for state in row[states]:
            out.setdefault(state, [0, None, None])[0] += 1
        stated = [row[i] for i in numbers if row[i] is not None]
        if stated:
            _widen(entry, min(stated), max(stated))
    return dict(sorted(out.items()))


def sum_of(accounts: Iterable[list[Any]]) -> dict[str, list[Any]]:
    """The gist of a base from the ``gist-of`` rows of its files."""
    out: dict[str, list[Any]] = {}
    for account in accounts:
        for name, count, low, high in account:
            entry = out.get(name)
            if entry is None:
                out[name] = [count, low, high]
                continue
            entry[0] += count
            if low is not None:
                _widen(entry, low, high)
    return dict(sorted(out.items()))


def _widen(entry: list[Any], low: float, high: float) -> None:
    entry[1] = low if entry[1] is None else min(entry[1], low)
    entry[2] = high if entry[2] is None else max(entry[2], high)


@cache
def _places() -> tuple[int, int, tuple[int, ...]]:
    names = ("id", *(f.name for f in BY_NAME["statement"].fields))
    return (names.index("character"), names.index("states"),
            tuple(names.index(f) for f in ("low", "usual_low", "usual_high", "high")))
