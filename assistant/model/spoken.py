"""The spoken index: every word or phrase of the base that a person may type, and what it stands for (layer 2).

It is made from the rows when a base is compiled, so that a line of text is read without walking the whole base, and a
curator adds a phrasing by adding a label. Beside the phrases themselves (``spoken``) it holds the phrases of states and
characters as stems, under the rarest stem of each (``pattern``), how often each stem occurs (``stem``), how much is
said with each character (``gist``), words by their near spellings (``near``), and the phrases of cautions and practices
with the kind of advice they ask for (``advice``).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any

from assistant.model.accounts import gist
from assistant.model.schema import BY_NAME
from assistant.model.spelling import near_keys
from assistant.model.stems import HeadOf, Pattern, pattern_of
from assistant.text import key

Entry = tuple[str, str, str]
"""Kind of thing, its id, and how it is called so (accepted, vernacular, ambiguous, synonym, scientific, word, ...)."""
SPOKEN = "spoken"
Shared = Mapping[str, Mapping[str, list[Any]]]
Grouped = Mapping[str, Mapping[str, list[list[Any]]]]
SHORT = "short"
"""How a fish is called by its name less the last word; only good beside other names or in a short line."""
LEAST_SHORT = 5
SHORT_EPITHET = 5
"""A species epithet is a name by itself when it is longer."""
WORDS_OF_NAMES = ("taxon", "group", "place", "character", "state", "term")
"""Kinds of things whose words are mended when they are misspelt."""


def build_spoken(shared: Shared, grouped: Grouped) -> dict[str, dict[str, list[Any]]]:
    """The kinds of rows that reading needs, by name of the kind; everything sorted."""
    index: dict[str, set[Entry]] = {}
    for folded, entry in entries(shared, grouped):
        index.setdefault(folded, set()).add(entry)
    add_short_names(index, shared)
    return {
        SPOKEN: {phrase: spoken_row(index[phrase]) for phrase in sorted(index)},
        **patterns(index),
        "gist": gist(row for rows in grouped.get("statement", {}).values() for row in rows),
        "advice": advice(shared),
        "near": _near(index),
    }


def spoken_row(found: set[Entry]) -> list[Any]:
    """What a phrase stands for, as a row."""
    return [list(e) for e in sorted(found)]


def patterns(index: Mapping[str, set[Entry]]) -> dict[str, dict[str, list[Any]]]:
    """The kinds of rows for phrases of states and characters as stems."""
    rows, counts = _patterns(index, _heads(index))
    return {"pattern": rows, "stem": counts}


def add_short_names(index: dict[str, set[Entry]], shared: Shared) -> None:
    """Add the names of fish less their last word where they are nothing else."""
    for phrase, taxon in _short_names(shared, index):
        index[phrase] = {("taxon", taxon, SHORT)}


def entries(shared: Shared, grouped: Grouped) -> Iterator[tuple[str, Entry]]:
    """Every folded phrase with what it stands for, names less their last word left out."""
    for phrase, entry in _entries(shared, grouped):
        folded = key(phrase)
        if folded:
            yield folded, entry


def _short_names(shared: Shared, index: Mapping[str, set[Entry]]) -> list[tuple[str, str]]:
    """English names less their last word ("redspotted"), where that is nothing else and of one fish only."""
    found: dict[str, set[str]] = {}
    for row in shared.get("taxon", {}).values():
        taxon = _fields("taxon", row)
        words = key(taxon["label"]).split()
        if taxon["rank"] == "species" and not taxon["deprecated"] and len(words) > 1:
            found.setdefault(" ".join(words[:-1]), set()).add(taxon["id"])
    return [
        (phrase, min(taxa))
        for phrase, taxa in sorted(found.items())
        if len(taxa) == 1 and len(phrase) >= LEAST_SHORT and phrase not in index
    ]


def _heads(index: Mapping[str, set[Entry]]) -> HeadOf:
    """The head of the synonym family of a phrase; a phrase of two families keeps the first by id."""
    heads: dict[str, str] = {}
    for phrase, entries in index.items():
        families = sorted(e[1] for e in entries if e[0] == "synonyms")
        if families:
            heads[phrase] = families[0].removeprefix("family-").replace("-", " ")
    return heads.get


def _patterns(index: Mapping[str, set[Entry]], head_of: HeadOf) -> tuple[dict[str, list[Any]], dict[str, list[Any]]]:
    """Rows ``[stems, plurals, ordered, denies, kind, id, how]`` under the rarest stem of a phrase; stem counts."""
    made: set[tuple[Pattern, str, str, str]] = set()
    for phrase, entries in index.items():
        wanted = [e for e in entries if e[0] in ("state", "character")]
        if wanted:
            pattern = pattern_of(phrase, head_of)
            if pattern.stems or pattern.denies:
                made.update((pattern, kind, thing, _standing(how)) for kind, thing, how in wanted)
    counts = Counter(s for pattern, *_ in made for s in set(pattern.stems))
    rows: dict[str, list[Any]] = {}
    for pattern, kind, thing, how in sorted(
        made, key=lambda m: (m[0].stems, m[0].plurals, m[0].denies, m[1:], m[0].ordered)
    ):
        anchor = min(pattern.stems, key=lambda s: (counts[s], s)) if pattern.stems else "-"
        rows.setdefault(anchor, []).append(
            [
                list(pattern.stems),
                [int(p) for p in pattern.plurals],
                int(pattern.ordered),
                int(pattern.denies),
                kind,
                thing,
                how,
            ]
        )
    return dict(sorted(rows.items())), {s: [n] for s, n in sorted(counts.items())}


def advice(shared: Shared) -> dict[str, list[Any]]:
    """The kinds of advice ("caution", "practice") that each phrase asks for."""
    out: dict[str, set[str]] = {}
    for kind in ("caution", "practice"):
        for row in shared.get(kind, {}).values():
            for phrase in _fields(kind, row)["words"]:
                out.setdefault(key(phrase), set()).add(kind)
    return {phrase: sorted(out[phrase]) for phrase in sorted(out)}


def _standing(how: str) -> str:
    """``alone`` for phrases that need no further noun, ``value`` for those that need the part they are said of."""
    return "alone" if how in ("clause", "phrases", "hidden") else "value"


def words_of(index: Mapping[str, set[Entry]]) -> dict[str, set[str]]:
    """Words of names, and names written as one word with the phrases that they come from."""
    words: dict[str, set[str]] = {}
    for phrase, entries in index.items():
        if not any(e[0] in WORDS_OF_NAMES for e in entries):
            continue
        for word in phrase.split():
            words.setdefault(word, set())
        if " " in phrase and any(e[0] in ("taxon", "group", "place") for e in entries):
            words.setdefault(phrase.replace(" ", ""), set()).add(phrase)
    return words


def keys_near(word: str) -> tuple[str, ...]:
    """The keys of the near spellings of a word; none for one that is too short or a number."""
    return near_keys(word) if len(word) > 2 and not word.isdigit() else ()


def _near(index: Mapping[str, set[Entry]]) -> dict[str, list[Any]]:
    """Words, and names written as one word, under the keys of their near spellings (``spelling.near_keys``)."""
    words = words_of(index)
    out: dict[str, list[Any]] = {}
    for word in sorted(words):
        for near in keys_near(word):
            out.setdefault(near, []).append(word)
        for phrase in sorted(words[word]):
            out.setdefault("=" + word, []).append(phrase)
    return dict(sorted(out.items()))


def _entries(shared: Shared, grouped: Grouped) -> Iterator[tuple[str, Entry]]:
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
    if taxon["rank"] == "species" and len(epithet := taxon["scientific"].split()[-1]) > SHORT_EPITHET:
        yield epithet, ("taxon", taxon["id"], "scientific")


def _abbreviated(scientific: str) -> str:
    words = scientific.split()
    return " ".join([words[0][0], *words[1:]]) if len(words) > 1 else scientific


def _labelled(kind: str, shared: Shared, names: tuple[str, ...]) -> Iterator[tuple[str, Entry]]:
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
