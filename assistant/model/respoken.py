"""The spoken index after a change of some names and words, from the index before it (layer 2)."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Protocol

from assistant.model.spoken import (
    SHORT,
    SPOKEN,
    Entry,
    Grouped,
    Shared,
    add_short_names,
    entries,
    keys_near,
    patterns,
    spoken_row,
    words_of,
)

TALKED_OF = ("taxon", "name", "group", "place", "term", "character", "state", "word")
"""Kinds of rows that phrases come from."""
Tables = tuple[Shared, Grouped]
Rows = dict[str, dict[str, list[Any] | None]]
"""What is new or different by kind and key; None for what is gone."""


class Store(Protocol):
    """The rows after the change, except those of the spoken index."""

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row under a key."""

    def all(self, kind: str) -> dict[str, list[Any]]:
        """Every row of a kind."""


def respoken(store: Store, before: Tables, after: Tables) -> Rows:
    """The rows of the spoken index that differ, after the rows of ``before`` have become those of ``after``."""
    gone, new = set(entries(*before)), set(entries(*after))
    gone, new = gone - new, new - gone
    if not gone and not new and _named(before) == _named(after):
        return {}
    index = {phrase: {(kind, thing, how) for kind, thing, how in row} for phrase, row in store.all(SPOKEN).items()}
    former = {phrase: set(found) for phrase, found in index.items()}
    _apply(index, gone, new)
    add_short_names(index, {"taxon": store.all("taxon")})
    out: Rows = {SPOKEN: {p: spoken_row(index[p]) if p in index else None
                          for p in former.keys() | index.keys() if former.get(p) != index.get(p)}}
    if any(entry[0] in ("state", "character", "synonyms") for _, entry in gone | new):
        for kind, rows in patterns(index).items():
            out[kind] = {k: rows.get(k) for k in store.all(kind).keys() | rows.keys()}
    out["near"] = dict(_near(store, words_of(former), words_of(index)))
    return out


def _apply(index: dict[str, set[Entry]], gone: set[tuple[str, Entry]], new: set[tuple[str, Entry]]) -> None:
    """Take out what is gone and all names less their last word, and put in what is new."""
    for phrase in [p for p, found in index.items() if all(how == SHORT for _, _, how in found)]:
        del index[phrase]
    for phrase, entry in gone:
        index[phrase].discard(entry)
        if not index[phrase]:
            del index[phrase]
    for phrase, entry in new:
        index.setdefault(phrase, set()).add(entry)


def _named(tables: Tables) -> dict[str, list[Any]]:
    """What the names less their last word follow from."""
    return dict(tables[0].get("taxon", {}))


def _near(store: Store, before: Mapping[str, set[str]],
          after: Mapping[str, set[str]]) -> Iterator[tuple[str, list[Any] | None]]:
    rows: dict[str, set[str]] = {}
    for word in before.keys() ^ after.keys():
        for near in keys_near(word):
            if near not in rows:
                rows[near] = set(store.get("near", near) or ())
            (rows[near].add if word in after else rows[near].discard)(word)
    for word in before.keys() | after.keys():
        joined = after.get(word, set())
        if before.get(word, set()) != joined:
            rows["=" + word] = joined
    for key, words in rows.items():
        yield key, sorted(words) or None
