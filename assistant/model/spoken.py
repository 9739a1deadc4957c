"""The spoken index: every word or phrase of the base that a person may type, and what it stands for (layer 2).

It is made from the rows when a base is compiled, so that a line of text is read without walking the whole base, and a
curator adds a phrasing by adding a label.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from assistant.model.schema import BY_NAME
from assistant.text import key

Entry = tuple[str, str, str]
"""Kind of thing, its id, and how it is called so (accepted, vernacular, ambiguous, synonym, scientific, word, ...)."""
SPOKEN = "spoken"


def build_spoken(shared: Mapping[str, Mapping[str, list[Any]]],
                 grouped: Mapping[str, Mapping[str, list[list[Any]]]]) -> dict[str, list[list[str]]]:
    """Folded phrase to its entries, both sorted."""
    index: dict[str, set[Entry]] = {}
    for phrase, entry in _entries(shared, grouped):
        folded = key(phrase)
        if folded:
            index.setdefault(folded, set()).add(entry)
    return {phrase: [list(e) for e in sorted(index[phrase])] for phrase in sorted(index)}


def _entries(shared: Mapping[str, Mapping[str, list[Any]]],
             grouped: Mapping[str, Mapping[str, list[list[Any]]]]) -> Iterator[tuple[str, Entry]]:
    for row in shared.get("taxon", {}).values():
        yield from _taxon(_fields("taxon", row))
    for rows in grouped.get("name", {}).values():
        for row in rows:
            name = _fields("name", row)
            yield name["text"], ("taxon", name["taxon"], name["kind"])
            if name["kind"] == "synonym":
                yield _abbreviated(name["text"]), ("taxon", name["taxon"], "synonym")
    yield from _labelled("group", shared, ("label", "plural", "words", "hidden"))
    yield from _labelled("place", shared, ("label", "code", "nicknames", "hidden"))
    yield from _labelled("term", shared, ("label", "plural", "words", "hidden"))
    yield from _labelled("character", shared, ("label", "trade", "words", "hidden"))
    for rows in grouped.get("state", {}).values():
        for row in rows:
            state = _fields("state", row)
            yield from _texts("state", state, ("label", "clause", "trade", "values", "phrases", "hidden"))
    for row in shared.get("word", {}).values():
        word = _fields("word", row)
        yield from ((text, (word["kind"], word["id"], "word")) for text in (word["head"], *word["words"]))


def _taxon(taxon: Mapping[str, Any]) -> Iterator[tuple[str, Entry]]:
    if taxon["deprecated"]:
        return
    yield taxon["scientific"], ("taxon", taxon["id"], "scientific")
    yield taxon["label"], ("taxon", taxon["id"], "accepted")
    if taxon["rank"] in ("species", "subspecies"):
        yield _abbreviated(taxon["scientific"]), ("taxon", taxon["id"], "scientific")


def _abbreviated(scientific: str) -> str:
    words = scientific.split()
    return " ".join([words[0][0], *words[1:]]) if len(words) > 1 else scientific


def _labelled(kind: str, shared: Mapping[str, Mapping[str, list[Any]]],
              names: tuple[str, ...]) -> Iterator[tuple[str, Entry]]:
    for row in shared.get(kind, {}).values():
        yield from _texts(kind, _fields(kind, row), names)


def _texts(kind: str, record: Mapping[str, Any], names: tuple[str, ...]) -> Iterator[tuple[str, Entry]]:
    for name in names:
        value = record[name]
        for text in value if isinstance(value, list) else [value]:
            if text:
                yield text, (kind, record["id"], name)


def _fields(kind: str, row: list[Any]) -> dict[str, Any]:
    names = ("id", *(f.name for f in BY_NAME[kind].fields))
    return dict(zip(names, row, strict=True))
