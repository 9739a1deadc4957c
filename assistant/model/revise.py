"""The rows of a base of which some files have changed, from its former rows and those of these files (layer 2).

What comes out is what reading all files would give, row for row: only rows that the changed files gave before or give
now are made again, with what other files add to them, and then the lists and the spoken index that follow from them.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol

from assistant.model.accounts import GIST_OF, MADE_FROM, Row, Told, account_of, key_of, name_of, place_in_group, sum_of
from assistant.model.kinship import build_kinship
from assistant.model.respoken import TALKED_OF, Tables, respoken
from assistant.model.schema import BY_NAME
from assistant.model.spoken import advice

Pair = tuple[str, str]
"""Kind and key of a row."""


class Former(Protocol):
    """The rows before the change."""

    version: str

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none."""

    def items(self, kind: str) -> Iterator[tuple[str, bytes]]:
        """Every key of a kind with its encoded row."""


@dataclass(slots=True)
class Revised:
    """The rows after a change, read through to the former ones: serves as the store of a knowledge base.

    ``rows`` holds by kind what is new or different; None for what is gone.
    """

    former: Former
    version: str
    rows: dict[str, dict[str, Row | None]] = field(default_factory=dict)
    _keys: dict[str, Sequence[str]] = field(default_factory=dict)

    def keys(self, kind: str) -> Sequence[str]:
        """The sorted keys of a kind."""
        if kind not in self._keys:
            found = self.rows.get(kind, {})
            kept = [k for k in self.former.keys(kind) if k not in found]
            self._keys[kind] = tuple(sorted([*kept, *(k for k, row in found.items() if row is not None)]))
        return self._keys[kind]

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row (or rows) under a key, None when there is none."""
        found = self.rows.get(kind)
        return found[key] if found is not None and key in found else self.former.get(kind, key)

    def all(self, kind: str) -> dict[str, Row]:
        """Every row of a kind by its key, sorted."""
        former = dict(self.former.items(kind))
        former = {k: v for k, v in former.items() if k not in self.rows.get(kind, {})}
        rows = dict(zip(former, json.loads(b"[" + b",".join(former.values()) + b"]"), strict=True))
        rows.update({k: row for k, row in self.rows.get(kind, {}).items() if row is not None})
        return dict(sorted(rows.items()))

    def lay(self, kind: str, key: str, row: Row | None) -> None:
        """Lay a row over the former one where it differs; None takes it away."""
        if row != self.former.get(kind, key):
            self.rows.setdefault(kind, {})[key] = row

    def lay_all(self, kind: str, rows: Mapping[str, Row]) -> None:
        """Lay all rows of a kind over the former ones."""
        former = self.all(kind)
        for key in former.keys() | rows.keys():
            if former.get(key) != rows.get(key):
                self.rows.setdefault(kind, {})[key] = rows.get(key)


def revise(former: Former, changed: Mapping[str, Sequence[Told] | None], version: str,
           read: Callable[[str], Sequence[Told]], order: Callable[[str], Any]) -> Revised:
    """The rows after these files have changed (None: gone).

    ``read`` gives the rows of a file that has not changed, ``order`` what files are ordered by.
    """
    out = Revised(former, version)
    accounts = {key_of(name): account_of(told) if told is not None else {} for name, told in changed.items()}
    touched = {(kind, key) for name in accounts for kind, key in former.get(MADE_FROM, name) or ()}
    for name, account in accounts.items():
        touched.update((kind, key) for kind, key in account.get(MADE_FROM, ()))
        for kind in (MADE_FROM, GIST_OF):
            out.lay(kind, name, account.get(kind))
    files = _files_of(out.all(MADE_FROM), touched)
    told_in = {key_of(name): told for name, told in changed.items()}
    rows_in: dict[str, dict[Pair, list[Row]]] = {}

    def told(key: str) -> dict[Pair, list[Row]]:
        if key not in rows_in:
            found = rows_in[key] = {}
            for kind, at, row in (told_in[key] if key in told_in else read(name_of(key))) or ():
                found.setdefault((kind, at), []).append(row)
        return rows_in[key]

    for pair in sorted(touched):
        rows = [row for name in sorted(files.get(pair, ()), key=order) for row in told(name).get(pair, ())]
        out.lay(*pair, _joined(pair[0], rows))
    _follow(out)
    return out


def _files_of(made_from: Mapping[str, Row], touched: set[Pair]) -> dict[Pair, list[str]]:
    out: dict[Pair, list[str]] = {}
    for name, pairs in made_from.items():
        for kind, key in pairs:
            if (kind, key) in touched:
                out.setdefault((kind, key), []).append(name)
    return out


def _joined(kind: str, rows: list[Row]) -> Row | None:
    if not rows:
        return None
    return sorted(rows, key=place_in_group) if BY_NAME[kind].by else rows[-1]


def _follow(out: Revised) -> None:
    """Make again what follows from the rows of several files."""
    if GIST_OF in out.rows:
        out.lay_all("gist", sum_of(out.all(GIST_OF).values()))
    if "taxon" in out.rows or "look-alike" in out.rows:
        for kind, rows in build_kinship({"taxon": out.all("taxon")}, {"look-alike": out.all("look-alike")}).items():
            out.lay_all(kind, rows)
    if "caution" in out.rows or "practice" in out.rows:
        out.lay_all("advice", advice({kind: out.all(kind) for kind in ("caution", "practice")}))
    owners = {(kind, key) for kind in TALKED_OF for key in out.rows.get(kind, {})}
    if owners:
        before, after = _tables(owners, out.former.get), _tables(owners, out.get)
        for kind, found in respoken(out, before, after).items():
            for key, row in found.items():
                out.lay(kind, key, row)


def _tables(owners: Iterable[Pair], get: Callable[[str, str], Row | None]) -> Tables:
    """The rows of some things that people talk of; a taxon comes with its names."""
    shared: dict[str, dict[str, Row]] = {}
    grouped: dict[str, dict[str, Row]] = {}
    pairs = set(owners)
    pairs |= {(kind, key) for k, key in pairs if k in ("taxon", "name") for kind in ("taxon", "name")}
    for kind, key in pairs:
        row = get(kind, key)
        if row is not None:
            (grouped if BY_NAME[kind].by else shared).setdefault(kind, {})[key] = row
    return shared, grouped
