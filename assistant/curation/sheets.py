"""Sheets of records: what each row would do to a base, told before anything is done (layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import date
from itertools import chain

from assistant.curation.edit import put_corrected
from assistant.curation.findings import errors
from assistant.curation.lookup import Lookup
from assistant.curation.mint import mint, place_file, stem
from assistant.curation.sheet_rows import RowFault, row_node, sheet_kind, silent_terms
from assistant.curation.tables import Cell, Table
from assistant.curation.validate import Validator
from assistant.curation.view import Draft, one, triples
from assistant.errors import AssistantError
from assistant.graph.values import Literal, Node, Value

Progress = Callable[[int, int], None]
_OURS = frozenset({"prov:wasAttributedTo", "dcterms:created"})
"""Properties that the tool sets itself."""

_COLUMN_OF = {"order of numbers": "value", "beyond every fish": "value", "unit": "value", "number missing": "value",
              "basis and source": "basis", "two accepted names": "kind"}
"""The column at fault by the rule that finds it, where it is one."""


@dataclass(frozen=True, slots=True)
class RowResult:
    """What a row comes to: status new, changed, same or rejected; for a rejected one the column, value and reason."""

    number: int
    status: str
    key: str = ""
    column: str = ""
    value: str = ""
    reason: str = ""


@dataclass(slots=True)
class Plan:
    """The results of a sheet, row by row."""

    kind: str
    results: list[RowResult]

    def count(self, status: str) -> int:
        """How many rows have a status."""
        return sum(1 for r in self.results if r.status == status)

    def summary(self) -> str:
        """The counts in one line."""
        return ", ".join(f"{self.count(s)} {s}" for s in ("new", "changed", "same", "rejected"))

    def rejected(self) -> Iterator[str]:
        """One line for each rejected row."""
        for r in self.results:
            if r.status == "rejected":
                where = f"row {r.number}, column {r.column}" if r.column else f"row {r.number}"
                yield f"{where}: {r.value!r}: {r.reason}"


def plan_sheet(table: Table, draft: Draft, validator: Validator, by: str, on: date,
               progress: Progress | None = None) -> Plan:
    """Lay all rows that can be laid over a base; what the base does not bear is rejected row by row."""
    kind = sheet_kind(table.header)
    lookup = Lookup(draft)
    owners: dict[str, int] = {}
    results: list[RowResult] = []
    stems = _Stems(draft, _OURS | silent_terms(table.header))
    for place, (number, row) in enumerate(table.rows):
        result = _lay(kind, number, row, lookup, stems, by, on)
        if result.status in ("new", "changed"):
            owners[result.key] = place
        results.append(result)
        if progress is not None and place % 50 == 49:
            progress(place + 1, len(table.rows))
    for _ in range(8):
        if not _reject_faulty(draft, validator, owners, results):
            break
    return Plan(kind, results)


def _lay(kind: str, number: int, row: dict[str, Cell], lookup: Lookup, stems: _Stems, by: str,
         on: date) -> RowResult:
    try:
        node = row_node(kind, row, lookup)
        return replace(stems.lay(node, by, on), number=number)
    except RowFault as fault:
        return RowResult(number, "rejected", "", fault.column, fault.value[:80], fault.reason)
    except AssistantError as error:
        reason = error.message + (f" ({error.hint})" if error.hint else "")
        return RowResult(number, "rejected", "", "", "", reason)


class _Stems:
    """Which records of a base a row may speak of: those with the same taxon, character, scope and source."""

    def __init__(self, draft: Draft, quiet: frozenset[str]) -> None:
        self.draft = draft
        self.quiet = quiet
        self.taken: set[str] = set()

    def lay(self, node: Node, by: str, on: date) -> RowResult:
        """Lay the record of a row over the base: new, changed, or the same as what stands there."""
        start = node.id or stem(node)
        known = [n for n in map(self.draft.node, self._candidates(start)) if n is not None]
        for old in chain(known, self._elsewhere(node)):
            if self._says(old) == self._says(node) and "prov:invalidatedAtTime" not in old.props:
                self.taken.add(old.id)
                return RowResult(0, "same", old.id)
        open_ = [n for n in known if n.id not in self.taken and "prov:invalidatedAtTime" not in n.props]
        if len(open_) == 1 and len(known) == 1 and start not in self.draft.nodes:
            old = open_[0]
            kept: dict[str, list[Value]] = {p: v for p, v in old.props.items() if p in self.quiet}
            key = put_corrected(self.draft, old, Node(old.id, {**kept, **node.props}, old.file), by, on)
            self.taken.add(key)
            return RowResult(0, "changed", key)
        fresh = Node(node.id or mint(node, self.draft), node.props)
        if fresh.id.startswith("st:"):
            fresh.props.setdefault("prov:wasAttributedTo", [by])
            fresh.props.setdefault("dcterms:created", [Literal(on.isoformat(), "xsd:date")])
        self.draft.put(fresh, place_file(fresh, self.draft))
        self.taken.add(fresh.id)
        return RowResult(0, "new", fresh.id)

    def _candidates(self, start: str) -> list[str]:
        keys = [start] if start in self.draft else []
        number = 2
        while f"{start}.{number}" in self.draft:
            keys.append(f"{start}.{number}")
            number += 1
        return keys

    def _elsewhere(self, node: Node) -> Iterator[Node]:
        """Statements of the same taxon and character whose identifier tells another scope or source than they do."""
        if "tf:character" not in node.props:
            return
        mark = "." + one(node, "tf:character").partition(":")[2] + "."
        for key in self.draft.ids("st", one(node, "tf:taxon").partition(":")[2]):
            if mark in key and (found := self.draft.node(key)) is not None:
                yield found

    def _says(self, node: Node) -> frozenset[tuple[str, Value]]:
        return frozenset((p, v) for p, v in triples(node) if p not in self.quiet)


def _reject_faulty(draft: Draft, validator: Validator, owners: dict[str, int], results: list[RowResult]) -> bool:
    """Take the rows back that the base does not bear; True when there were any."""
    again = False
    for finding in errors(validator.findings(draft)):
        place = owners.pop(finding.thing, None)
        if place is None:
            continue
        again = True
        old = results[place]
        results[place] = RowResult(old.number, "rejected", old.key, _COLUMN_OF.get(finding.rule, ""),
                                   finding.found[:80],
                                   f"{finding.rule}: expected {finding.expected}; {finding.mend}")
        draft.nodes.pop(finding.thing, None)
        draft.files.pop(finding.thing, None)
    return again
