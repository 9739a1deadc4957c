"""The demonstration rule book for tests, variations on it, and the table of worked examples."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, time
from decimal import Decimal
from functools import lru_cache
from pathlib import Path
from typing import Any

from assistant.graph.locate import shipped_ontology
from assistant.model.build import Rows, add_told, finish, read_told
from assistant.model.knowledge import KnowledgeBase, MemoryStore
from assistant.model.regulations import LengthLimit, Placement, Rule, Rulebook, SeasonWindow
from assistant.model.rulebook import rulebook
from assistant.reasoning import catch as c

FILE = Path(__file__).parent.parent / "cases" / "rule_examples.tsv"


@dataclass(frozen=True, slots=True)
class Case:
    """One row: the steps of a sequence (mostly one), and the verdict, reason and rule of each."""

    id: str
    catches: tuple[c.Catch, ...]
    verdicts: tuple[str, ...]
    whys: tuple[str, ...]
    rules: tuple[str, ...]
    where_when: str
    catch: str


def length_of(text: str) -> c.Length:
    """"17 cm", ">20 cm", "14-15 in", "about 15 in", "fork 15 in" or nothing."""
    if not text:
        return c.UNSAID
    found = re.fullmatch(r"(about |fork |>)?([\d.]+)(?:-([\d.]+))? (cm|in)", text)
    assert found, text
    word, low, high, unit = found.groups()
    if high:
        return c.between(low, high, unit)
    if word == "about ":
        return c.about(low, unit)
    if word == ">":
        return c.over(low, unit)
    return c.measured(Decimal(low), unit, c.FORK if word else c.TOTAL)


def kept_of(text: str, book: Rulebook) -> tuple[c.Kept, ...] | None:
    """"8 hrw-sunfish-group; 1 sander-vitreus 50 cm; 38 perca-flavescens stored"; "none"; or nothing said."""
    if not text:
        return None
    if text == "none":
        return ()
    found = []
    for part in text.split("; "):
        count, name, *rest = part.split(" ", 2)
        taxa = tuple(sorted(book.members[name])) if name in book.groups else (name,)
        stored = rest == ["stored"]
        found.append(c.Kept(int(count), taxa, length_of("" if stored or not rest else rest[0]), not stored))
    return tuple(found)


def read_cases(book: Rulebook) -> tuple[Case, ...]:
    """Every row of the table."""
    with FILE.open(encoding="utf-8") as handle:
        return tuple(_case(row, book) for row in csv.DictReader(handle, delimiter="\t", quoting=csv.QUOTE_NONE))


def case_ids() -> list[str]:
    """The ids of the rows, for parametrised tests."""
    lines = FILE.read_text(encoding="utf-8").splitlines()[1:]
    return [line.split("\t", 1)[0] for line in lines]


def _case(row: dict[str, str], book: Rulebook) -> Case:
    flags = dict([*flag.split(" ", 1), ""][:2] for flag in row["flags"].split("; ") if flag)
    catches = tuple(
        c.Catch(tuple(row["candidates"].split("; ")), (place,), date.fromisoformat(day),
                time.fromisoformat(row["time"]) if row["time"] else None, length_of(length),
                kept_of(row["kept"], book), age=int(flags["age"]) if "age" in flags else None,
                on_ice=True if "ice" in flags else None)
        for place in row["place"].split(" > ") for day in row["day"].split(" > ")
        for length in row["length"].split(" > "))
    return Case(row["id"], catches, tuple(row["verdict"].split(" > ")), tuple(row["why"].split(" > ")),
                tuple(row["rule"].split(" > ")), row["where_when"], row["catch"])


@lru_cache(maxsize=4)
def demo_book(*more: Path) -> Rulebook:
    """The shipped demonstration rules with the shipped family tree, and more files of rules."""
    rows = Rows()
    ontology = shipped_ontology()
    for pattern in ("taxa/**/*.ttl", "hybrids/*.ttl", "regulations/*.ttl", "vocabulary/regulations.ttl"):
        for path in sorted(ontology.glob(pattern)):
            add_told(rows, read_told(path.read_bytes(), path))
    for path in more:
        add_told(rows, read_told(path.read_bytes(), path))
    finish(rows, "test")
    return rulebook(KnowledgeBase(MemoryStore(rows.shared, rows.grouped, rows.version)))


def extended(
    book: Rulebook, *rules: Rule, seasons: Iterable[SeasonWindow] = (), lengths: Iterable[LengthLimit] = (),
    placements: Iterable[Placement] = (), without: Iterable[str] = (),
) -> Rulebook:
    """The book with more (or other) rules and parts, and without some."""
    kept = {r.id: r for r in book.rules.values() if r.id not in set(without)} | {r.id: r for r in rules}
    return replace(
        book, rules=kept, seasons={**book.seasons, **{s.id: s for s in seasons}},
        lengths={**book.lengths, **{x.id: x for x in lengths}},
        placements={**book.placements, **{p.id: p for p in placements}})


def at(place: str, day: str, *candidates: str, length: str = "", **more: Any) -> c.Catch:
    """A catch in few words; ``more`` are fields of the catch."""
    return c.Catch(candidates, (place,), date.fromisoformat(day), length=length_of(length), **more)
