"""The compiled score table: what an ordinary observer would report of each taxon, character by character (layer 3).

One column per state (or per integer of a count), one line of taxa: ``report[column, taxon]`` is the chance that the
observer reports the column when the fish is of the taxon, the observer's own error included. Where nothing is known
of a taxon the cell holds the mean over the taxa of which something is, which neither helps nor hurts.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields, replace
from functools import cached_property
from typing import Any, NamedTuple, Protocol, TypeVar

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.evidence import ANY, LEAK, ORDINARY, Distribution, Scope, below, leaves
from assistant.reasoning.observer import (
    KIN_ERROR,
    MOST_ERROR,
    Kin,
    count_keys,
    error_weights,
    kin_of,
    numbers_seen,
    scored,
    taxon_distribution,
)
from assistant.reasoning.sparse import Sparse
from assistant.reasoning.standing import Standing, build_standing

Floats = npt.NDArray[np.float32]
Ints = npt.NDArray[np.int32]
UNTOLD, UNSEEN = -1, -2
"""Bounds of a character in a taxon of which nothing is told, and of a count that takes no number often enough."""
SILENT, SILENT_GENUS, SILENT_SPECIES = 0.1, 0.3, 0.8
"""Weight of a feature for taxa of a family (a genus, where the family has it) of which nothing is told about it. What
people mention is nearly always stated: 339 of 346 marks in lines on known fishes, and in a silent family or genus
less than a twentieth as often as elsewhere. A gap among stated congeners is the base's own and stays nearly neutral."""

UNTOLD_LACKS = 0.7
"""The part that a taxon of which nothing is told has in lacking a mark that is told of others only as a mark they
have (common practice, no source; 0.5 to 0.9 name the same fishes on four sets of descriptions)."""

EFFORT: Mapping[str, float] = {"glance": 1.0, "hand": 1.5, "count": 2.6, "dead": 6.0}
EFFORT_UNSAID = 2.0
"""What it takes to look at a feature, by how it is looked at; and where that is not said."""


Kept = TypeVar("Kept")
Columns = dict[int, Floats | None]
"""What an observer reports of a taxon, by its position; None where nothing is stated of it."""


class Recent:
    """What was worked out lately (columns of fish of a known sex or age, weights of what was told), oldest forgotten.

    A conversation asks for the same again at every turn. A race between threads costs a second working out.
    """

    def __init__(self, most: int = 128) -> None:
        self._most = most
        self._kept: dict[Hashable, Any] = {}

    def columns(self, character: str, scope: Scope) -> Columns:
        """The columns of a character kept under a scope, to be read and added to."""
        return self.recall((character, scope), dict[int, Floats | None])

    def recall(self, key: Hashable, make: Callable[[], Kept]) -> Kept:
        """What is kept under a key; made where nothing is."""
        found: Kept | None = self._kept.pop(key, None)
        if found is None:
            found = make()
            for old in list(self._kept)[: max(0, len(self._kept) - self._most + 1)]:
                self._kept.pop(old, None)
        self._kept[key] = found
        return found


@dataclass(frozen=True, repr=False)
class Table:
    """Columns are "character.state" ids or "character=integer"; ``spans`` gives the columns of each character."""

    taxa: tuple[str, ...]
    columns: tuple[str, ...]
    spans: Mapping[str, tuple[int, int]]
    report: Floats
    known: npt.NDArray[np.bool_]
    index: Mapping[str, int]
    standing: Standing
    effort: npt.NDArray[np.float64]
    recent: Recent = field(default_factory=lambda: Recent(), compare=False, repr=False)

    @cached_property
    def characters(self) -> tuple[str, ...]:
        """Characters in the order of their columns."""
        return tuple(self.spans)

    @cached_property
    def column(self) -> Mapping[str, int]:
        """Column id to its position."""
        return {c: i for i, c in enumerate(self.columns)}

    @cached_property
    def starts(self) -> npt.NDArray[np.int64]:
        """The first column of each character."""
        return np.array([a for a, _ in self.spans.values()], dtype=np.int64)

    @cached_property
    def noise(self) -> Floats:
        """Entropy (bits) of the report given the taxon, per character and taxon."""
        terms = -self.report * np.log2(np.maximum(self.report, 1e-12))
        return np.asarray(np.add.reduceat(terms, self.starts, axis=0), dtype=np.float32)

    def rows(self, character: str) -> Floats:
        """The columns of one character, shape (columns, taxa)."""
        a, b = self.spans[character]
        return self.report[a:b]


class Told(NamedTuple):
    """What is told of a character: its columns, the shares of each taxon, and the bounds of what is seen of it.

    ``truth`` has the shape (columns, taxa) and holds zeros where nothing is told. ``low`` and ``high`` are the
    smallest and largest number of a count (0 for states), ``UNTOLD`` where nothing is told, ``UNSEEN`` for no number.
    """

    character: Character
    keys: list[str]
    truth: Floats
    low: Ints
    high: Ints


class Workings(NamedTuple):
    """What a table was made from, by which it can be made again when little has changed (see ``Told``)."""

    truth: Floats
    low: Ints
    high: Ints
    lines: list[tuple[str, str]]


def compile_table(kb: KnowledgeBase, taxa: Sequence[str] | None = None,
                  characters: Iterable[Character] | None = None,
                  progress: Callable[[int, int], None] | None = None) -> Table:
    """The score table of a base for all (or some) taxa and characters that can be observed."""
    return work_out(kb, taxa, characters, progress)[0]


def work_out(kb: KnowledgeBase, taxa: Sequence[str] | None = None, characters: Iterable[Character] | None = None,
             progress: Callable[[int, int], None] | None = None) -> tuple[Table, Workings]:
    """A score table with what it was made from."""
    names = tuple(kb.species if taxa is None else taxa)
    told = {c for t in names for p in (t, *kb.taxon(t).parents) for key in kb.lineage(p) for c in kb.told_of(key)}
    chosen = [c for c in (kb.characters if characters is None else characters) if scored(c) and c.id in told]

    def each() -> Iterator[Told]:
        for number, character in enumerate(chosen):
            yield tell(kb, character, names)
            if progress:
                progress(number + 1, len(chosen))

    return assemble(kb, names, each(), [line_of(kb, t) for t in names], build_standing(kb, names))


def tell(kb: KnowledgeBase, character: Character, names: Sequence[str]) -> Told:
    """What is told of a character in some taxa."""
    cells = [taxon_distribution(kb, t, character.id, ANY) for t in names]
    bounds = [bounds_of(character, cell) for cell in cells]
    low, high = (np.array([b[side] for b in bounds], np.int32) for side in (0, 1))
    keys = keys_of(kb, character, low, high)
    return Told(character, keys, shares_in(keys, cells), low, high)


def bounds_of(character: Character, cell: Distribution | None) -> tuple[int, int]:
    """The bounds of what is seen of a character in a taxon (see ``Told``)."""
    if cell is None:
        return UNTOLD, UNTOLD
    return (0, 0) if character.is_stated else numbers_seen(cell) or (UNSEEN, UNSEEN)


def keys_of(kb: KnowledgeBase, character: Character, low: Ints, high: Ints) -> list[str]:
    """The columns of a character whose bounds are these: its leaf states, or the integers that occur with a margin."""
    if character.is_stated:
        return list(leaves(kb, character.id))
    seen = low >= 0
    return count_keys(int(low[seen].min()), int(high[seen].max())) if seen.any() else []


def shares_in(keys: Sequence[str], cells: Sequence[Distribution | None]) -> Floats:
    """The shares of some taxa by column, zeros where nothing is told."""
    truth = np.zeros((len(keys), len(cells)), np.float32)
    where = {k: i for i, k in enumerate(keys)}
    for t, cell in enumerate(cells):
        if cell is not None:
            for key, share in cell.shares.items():
                if key in where:
                    truth[where[key], t] = share
    return truth


def assemble(kb: KnowledgeBase, names: tuple[str, ...], told: Iterable[Told], lines: Sequence[tuple[str, str]],
             standing: Standing) -> tuple[Table, Workings]:
    """The table of what is told of each character, with the genus and family of each taxon."""
    columns: list[str] = []
    spans: dict[str, tuple[int, int]] = {}
    blocks: list[Floats] = []
    kept: list[Told] = []
    genera, families = (_numbered(line[side] for line in lines) for side in (0, 1))
    for found in told:
        character, keys, known = found.character, found.keys, found.low != UNTOLD
        if len(keys) < 2 or not known.any():
            continue
        block = report_block(kb, character, keys, found.truth, known) * silence(genera, families, known)
        spans[character.id] = (len(columns), len(columns) + len(keys))
        columns += keys if character.is_stated else [f"{character.id}={k}" for k in keys]
        blocks.append(block)
        kept.append(found)
    report, truth = (np.concatenate(parts) if parts else np.zeros((0, len(names)), np.float32)
                     for parts in (blocks, [f.truth for f in kept]))
    low, high = (np.array(rows, np.int32).reshape(len(kept), len(names))
                 for rows in ([f.low for f in kept], [f.high for f in kept]))
    table = Table(names, tuple(columns), spans, report, low != UNTOLD, {t: i for i, t in enumerate(names)},
                  standing, efforts(kb, spans))
    return apply_needs(kb, table), Workings(truth, low, high, list(lines))


def _numbered(words: Iterable[str]) -> Ints:
    numbers: dict[str, int] = {}
    return np.array([numbers.setdefault(word, len(numbers)) for word in words], np.int32)


def efforts(kb: KnowledgeBase, characters: Iterable[str]) -> npt.NDArray[np.float64]:
    """What it takes to look at each character, in the order given."""
    return np.array([EFFORT.get(kb.character(c).look, EFFORT_UNSAID) for c in characters], np.float64)


def confusion(character: Character, size: int, kin: Sequence[Kin] = ()) -> Floats:
    """``confusion[report, truth]``: the observer's error, likelier between neighbours of an order and between kin."""
    error = min(MOST_ERROR, character.error)
    places = np.arange(size)
    off = np.array(error_weights(character, size))[np.abs(np.subtract.outer(places, places))]
    out = error * off / off.sum(axis=0)
    right = np.diag(np.full(size, 1.0 - error))
    if kin:
        tops = np.array([k.top for k in kin])
        near = (np.equal.outer(tops, tops) & ~np.eye(size, dtype=bool)) * np.array([[k.share] for k in kin])
        total = near.sum(axis=0)
        right = right * (1.0 - KIN_ERROR * np.minimum(total, 1.0))
        right = right + (1.0 - error) * KIN_ERROR * near / np.maximum(total, 1.0)
    out = out + right
    return np.asarray(out, dtype=np.float32)


def character_block(kb: KnowledgeBase, character: Character, keys: Sequence[str],
                    cells: Sequence[Distribution | None]) -> tuple[Floats, npt.NDArray[np.bool_]]:
    """The report chances of one character, shape (columns, taxa), and where something is known."""
    known = np.array([d is not None for d in cells])
    return report_block(kb, character, keys, shares_in(keys, cells), known), known


def report_block(kb: KnowledgeBase, character: Character, keys: Sequence[str], truth: Floats,
                 known: npt.NDArray[np.bool_]) -> Floats:
    """The report chances of one character from the shares of each taxon.

    A taxon of which nothing is stated stands for the mean of the known; where these are all told to have a mark, for
    the most part it stands for lacking it: who describes a fish tells its marks and seldom what it lacks.
    """
    total = truth.sum(axis=0)
    safe = np.where(total > 0, total, 1.0)
    truth = np.asarray((1 - LEAK) * truth / safe + LEAK / len(keys), dtype=np.float32)
    reads = confusion(character, len(keys), kin_of(kb, character, keys))
    report: Floats = np.asarray(reads @ truth, dtype=np.float32)
    untold = report[:, known].mean(axis=1)
    lacking = [i for i, key in enumerate(keys) if key.rpartition(".")[2] in ORDINARY]
    if lacking and float(truth[lacking][:, known].max(initial=0.0)) < 0.5:
        untold = (1 - UNTOLD_LACKS) * untold + UNTOLD_LACKS * reads[:, lacking].mean(axis=1)
    report[:, ~known] = untold[:, None]
    return report


def silence(genera: Ints, families: Ints, known: npt.NDArray[np.bool_]) -> Floats:
    """A factor per taxon (of these genera and families): below 1 where all of its family or genus is silent.

    Nobody speaks of an ear flap in a bullhead: the silence of a family about a feature that others are told by is mild
    evidence that it is not reported there, the silence of a genus less so. One species without a statement among
    congeners that have one stays nearly neutral.
    """
    if known.sum() < 3:
        return np.ones(len(known), dtype=np.float32)
    spoken = [np.isin(numbers, numbers[known]) for numbers in (genera, families)]
    quiet = np.where(spoken[0], SILENT_SPECIES, np.where(spoken[1], SILENT_GENUS, SILENT))
    return np.where(known, 1.0, quiet).astype(np.float32)


def line_of(kb: KnowledgeBase, taxon: str) -> tuple[str, str]:
    """The genus and family of a taxon, of the first parent for a cross."""
    first = kb.taxon(taxon).parents or (taxon,)
    above = kb.lineage(first[0])
    return above[-2] if len(above) > 1 else above[-1], above[-1]


def apply_needs(kb: KnowledgeBase, table: Table) -> Table:
    """Make a character nearly unreportable in taxa that lack what it needs (no barbels, no barbel colour)."""
    report = table.report.copy()
    known = table.known.copy()
    for row, (character, (a, b)) in enumerate(table.spans.items()):
        needs = kb.character(character).needs
        columns = [table.column[leaf] for need in needs for leaf in _columns_below(kb, table, need)]
        if not columns:
            continue
        has = table.report[columns].sum(axis=0)
        needed = needs[0].partition(".")[0]
        told = table.known[table.characters.index(needed)] if needed in table.spans else np.zeros(len(table.taxa), bool)
        has = np.where(told, np.minimum(has, 1.0), 1.0)
        report[a:b] = report[a:b] * has + (1 - has) * 0.01 / (b - a)
        known[row] |= told & (has < 0.3)
    return replace(table, report=report.astype(np.float32), known=known)


def _columns_below(kb: KnowledgeBase, table: Table, state: str) -> list[str]:
    return [leaf for leaf in below(kb, state) if leaf in table.column]


class Parts(Protocol):
    """Where the parts of a table are kept: rows by kind and key, and flat arrays by name."""

    def get(self, kind: str, key: str) -> list[Any] | None:
        """The row under a key."""

    def array(self, name: str) -> tuple[str, tuple[int, ...], bytes] | None:
        """A flat array as (dtype, shape, bytes)."""


Arrays = dict[str, tuple[str, Sequence[int], bytes]]


def table_parts(table: Table, workings: Workings | None = None) -> tuple[dict[str, dict[str, list[Any]]], Arrays]:
    """A table as rows by kind and key and as flat arrays, for keeping; perhaps with what it was made from."""
    rows: dict[str, list[Any]] = {
        "taxa": list(table.taxa), "columns": list(table.columns), "standing": [list(table.standing.taxa)],
        "spans": [[key, a, b] for key, (a, b) in table.spans.items()]}
    arrays: dict[str, npt.NDArray[Any]] = {"report": table.report, "known": table.known, "noise": table.noise,
                                              "effort": table.effort}
    if workings is not None:
        rows["lines"] = [list(line) for line in workings.lines]
        arrays |= {f"told.{name}": getattr(workings, name) for name in ("truth", "low", "high")}
    for part in fields(Standing):
        value = getattr(table.standing, part.name)
        if isinstance(value, Sparse):
            rows[part.name] = list(value.names)
            arrays |= {f"{part.name}.{name}": getattr(value, name) for name in LISTS}
        elif isinstance(value, np.ndarray):
            arrays[part.name] = value
    return {"score-table": rows}, {name: (str(a.dtype), a.shape, np.ascontiguousarray(a).tobytes())
                                   for name, a in arrays.items()}


LISTS = ("starts", "where", "weight")
"""The arrays of a ``Sparse``."""


def read_table(parts: Parts) -> Table:
    """The table that ``table_parts`` took apart. Raises KeyError when a part is missing."""
    taxa, columns, spans, standing = read_places(parts)
    table = Table(taxa, columns, spans, _flat(parts, "report"), _flat(parts, "known"),
                  {t: i for i, t in enumerate(taxa)}, standing, _flat(parts, "effort"))
    table.__dict__["noise"] = _flat(parts, "noise")
    return table


def read_workings(parts: Parts) -> Workings:
    """What a kept table was made from. Raises KeyError when it was kept without."""
    return Workings(_flat(parts, "told.truth"), _flat(parts, "told.low"), _flat(parts, "told.high"),
                    [(genus, family) for genus, family in _row(parts, "lines")])


def read_places(parts: Parts) -> tuple[tuple[str, ...], tuple[str, ...], dict[str, tuple[int, int]], Standing]:
    """The taxa, columns and spans of a kept table, and the standing of its taxa, without its figures."""
    taxa, columns = tuple(_row(parts, "taxa")), tuple(_row(parts, "columns"))
    return taxa, columns, {key: (a, b) for key, a, b in _row(parts, "spans")}, _read_standing(parts, len(taxa))


def _read_standing(parts: Parts, count: int) -> Standing:
    values: dict[str, Any] = {"taxa": tuple(_row(parts, "standing")[0]), "count": count}
    for part in fields(Standing):
        if part.name in values:
            continue
        if parts.array(f"{part.name}.starts") is None:
            values[part.name] = _flat(parts, part.name)
        else:
            lists = (_flat(parts, f"{part.name}.{name}") for name in LISTS)
            values[part.name] = Sparse(tuple(_row(parts, part.name)), *lists)
    return Standing(**values)


def _row(parts: Parts, key: str) -> list[Any]:
    found = parts.get("score-table", key)
    if found is None:
        raise KeyError(key)
    return found


def _flat(parts: Parts, name: str) -> npt.NDArray[Any]:
    found = parts.array(name)
    if found is None:
        raise KeyError(name)
    dtype, shape, data = found
    return np.frombuffer(data, dtype=dtype).reshape(shape)
