"""A score table made again from its workings after a few taxa have changed (layer 3).

Only the cells of these taxa, and of those that inherit from them, are read from statements again; the figures are
then put together as they are for a whole table, so that the result is the same to the last bit.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import fields
from typing import Any

import numpy as np
import numpy.typing as npt

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.reasoning.evidence import ANY
from assistant.reasoning.observer import scored, taxon_distribution
from assistant.reasoning.sparse import Positions, Sparse
from assistant.reasoning.standing import Standing, build_standing, left_out
from assistant.reasoning.tables import (
    UNTOLD,
    Parts,
    Table,
    Told,
    Workings,
    assemble,
    bounds_of,
    keys_of,
    line_of,
    read_places,
    read_workings,
    shares_in,
    tell,
)

Changed = Mapping[str, frozenset[str] | None]
"""Taxa of which something has changed, with the characters concerned; None where all may be."""


def rework(kb: KnowledgeBase, former: Parts, changed: Changed, moved: bool) -> tuple[Table, Workings]:
    """The table and its workings after a change; ``moved`` says that taxa came, went or took other places.

    Raises KeyError when the former table was kept without its workings.
    """
    workings = read_workings(former)
    taxa, columns, spans, standing = read_places(former)
    names = tuple(kb.species)
    old = {t: i for i, t in enumerate(taxa)}
    source = np.array([old.get(t, -1) for t in names], np.int64)
    wanted = _cells(kb, names, changed, source)
    lines = [workings.lines[i] if i >= 0 and not moved else line_of(kb, t) for t, i in zip(names, source, strict=True)]
    frame = _Former(workings, columns, spans, source)
    told = _told(kb, names, frame, wanted)
    return assemble(kb, names, told, lines, _standing(kb, names, standing, dependents(kb, changed), moved))


def dependents(kb: KnowledgeBase, taxa: Iterable[str]) -> set[str]:
    """These taxa, those below them, and crosses of any of them."""
    out: set[str] = set()
    ahead = list(taxa)
    while ahead:
        taxon = ahead.pop()
        if taxon not in out:
            out.add(taxon)
            ahead += [*kb.children_of(taxon), *kb.crosses_of(taxon)]
    return out


class _Former:
    """The shares told before, moved to where each taxon now stands."""

    def __init__(self, workings: Workings, columns: Sequence[str], spans: Mapping[str, tuple[int, int]],
                 source: npt.NDArray[np.int64]) -> None:
        self.workings = workings
        self.columns = columns
        self.spans = spans
        self.rows = {character: row for row, character in enumerate(spans)}
        self.source = source
        self.same = bool((source == np.arange(len(source))).all()) and len(source) == workings.low.shape[1]

    def told(self, character: Character) -> Told:
        """What was told of a character, in the order of the taxa as it is now."""
        a, b = self.spans[character.id]
        row = self.rows[character.id]
        keys = [c if character.is_stated else c.partition("=")[2] for c in self.columns[a:b]]
        return Told(character, keys, self._moved(self.workings.truth[a:b], 0.0),
                    self._moved(self.workings.low[row], UNTOLD), self._moved(self.workings.high[row], UNTOLD))

    def _moved(self, figures: npt.NDArray[Any], blank: float) -> npt.NDArray[Any]:
        if self.same:
            return figures.copy()
        out = figures[..., self.source]
        out[..., self.source < 0] = blank
        return np.ascontiguousarray(out)


def _cells(kb: KnowledgeBase, names: Sequence[str], changed: Changed,
           source: npt.NDArray[np.int64]) -> dict[str | None, set[int]]:
    """The positions to be read again by character; under None those of which all characters are."""
    place = {t: i for i, t in enumerate(names)}
    out: dict[str | None, set[int]] = {None: set(np.flatnonzero(source < 0).tolist())}
    for taxon, characters in changed.items():
        here = {place[t] for t in dependents(kb, [taxon]) if t in place}
        for character in (None,) if characters is None else characters:
            out.setdefault(character, set()).update(here)
    return out


def _told(kb: KnowledgeBase, names: Sequence[str], former: _Former,
          wanted: Mapping[str | None, set[int]]) -> Iterator[Told]:
    for character in filter(scored, kb.characters):
        here = sorted(wanted.get(character.id, set()) | wanted.get(None, set()))
        cells = [taxon_distribution(kb, names[i], character.id, ANY) for i in here]
        if character.id not in former.spans:
            if any(cell is not None for cell in cells):
                yield tell(kb, character, names)
            continue
        found = former.told(character)
        for i, cell in zip(here, cells, strict=True):
            found.low[i], found.high[i] = bounds_of(character, cell)
        keys = keys_of(kb, character, found.low, found.high)
        if not set(keys) <= set(found.keys):
            yield tell(kb, character, names)
            continue
        if keys != found.keys:
            kept = [found.keys.index(key) for key in keys]
            found = found._replace(keys=keys, truth=np.ascontiguousarray(found.truth[kept]))
        if here:
            found.truth[:, here] = shares_in(keys, cells)
        yield found


def _standing(kb: KnowledgeBase, names: tuple[str, ...], old: Standing, touched: set[str], moved: bool) -> Standing:
    everyone = (*names, *left_out(kb, names)) if moved else old.taxa
    place = {t: i for i, t in enumerate(everyone)}
    again = [t for t in everyone if t in touched or t not in old.index]
    part = build_standing(kb, again)
    kept = np.array([-1 if t in touched else place.get(t, -1) for t in old.taxa], np.int64)
    came = np.array([place[t] if i < len(again) else -1 for i, t in enumerate(part.taxa)], np.int64)
    remap = np.array([*(place.get(t, -1) for t in old.taxa), -1], np.int64)
    remap_part = np.array([*(place[t] for t in part.taxa), -1], np.int64)
    values: dict[str, Any] = {"taxa": everyone, "count": len(names)}
    for spec in fields(Standing):
        first, second = getattr(old, spec.name), getattr(part, spec.name)
        if isinstance(first, Sparse):
            most = len(everyone) if spec.name == "places" else len(names)
            values[spec.name] = _joined(first, np.where(kept < most, kept, -1), second, np.where(came < most, came, -1))
        elif isinstance(first, np.ndarray):
            if spec.name in ("first", "second"):
                first = remap[first].astype(first.dtype)
                second = remap_part[second].astype(first.dtype)
            out = np.zeros(len(everyone), first.dtype)
            out[kept[kept >= 0]] = first[kept >= 0]
            out[came[came >= 0]] = second[came >= 0]
            values[spec.name] = out
    return Standing(**values)


def _joined(old: Sparse, kept: npt.NDArray[np.int64], new: Sparse, came: npt.NDArray[np.int64]) -> Sparse:
    """The entries of two lists at their new positions; those at position -1 fall away."""
    names = sorted({*old.names, *new.names})
    number = {name: i for i, name in enumerate(names)}
    row, where, weight = (np.concatenate(pair) for pair in zip(
        _flat(old, kept, number), _flat(new, came, number), strict=True))
    order = np.lexsort((where, row))
    row, where, weight = row[order], where[order], weight[order]
    counts = np.bincount(row, minlength=len(names))
    left = np.flatnonzero(counts)
    starts: Positions = np.cumsum([0, *counts[left].tolist()], dtype=np.int32)
    return Sparse(tuple(names[i] for i in left), starts, where.astype(np.int32), weight.astype(np.float64))


def _flat(found: Sparse, places: npt.NDArray[np.int64],
          number: Mapping[str, int]) -> tuple[npt.NDArray[np.int64], npt.NDArray[np.int64], npt.NDArray[np.float64]]:
    numbers = np.array([number[name] for name in found.names], np.int64)
    row = np.repeat(numbers, np.diff(found.starts))
    where = places[found.where] if len(places) else found.where.astype(np.int64)
    stay = where >= 0
    return row[stay], where[stay], found.weight[stay]
