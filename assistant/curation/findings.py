"""Findings: what a check has to say about one thing, for a person who can mend it (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict, dataclass
from typing import Any

SEVERITIES = ("error", "warning", "hint")
"""Worst first; only errors keep a change out."""
LOADS = "loads"
"""The rule that a record can be read as the program reads it."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding: how bad, which rule, which thing and where, what was found and expected, how to mend it.

    One on a whole file has it for its thing; what was found of it says by itself what is expected.
    """

    severity: str
    rule: str
    thing: str
    where: str
    found: str
    expected: str
    mend: str

    def told(self) -> str:
        """What was found and expected."""
        return f"found {self.found}; expected {self.expected}" if self.expected else self.found


def ordered(findings: Iterable[Finding]) -> list[Finding]:
    """Each finding once: worst first, then by rule, place and thing.

    That a record does not load is told only where nothing else is wrong with it.
    """
    rank = {name: i for i, name in enumerate(SEVERITIES)}
    found = set(findings)
    at_fault = {f.thing for f in found if f.severity == "error" and f.rule != LOADS}
    found = {f for f in found if f.rule != LOADS or f.thing not in at_fault}
    return sorted(found, key=lambda f: (rank[f.severity], f.rule, _place(f.where), f.thing, f.found))


def errors(findings: Iterable[Finding]) -> list[Finding]:
    """Those that keep a change out."""
    return [f for f in ordered(findings) if f.severity == "error"]


def tally(findings: Iterable[Finding]) -> str:
    """How many of each severity, in words."""
    counts = dict.fromkeys(SEVERITIES, 0)
    for finding in set(findings):
        counts[finding.severity] += 1
    return ", ".join(f"{n} {name}{'' if n == 1 else 's'}" for name, n in counts.items())


def report(findings: Iterable[Finding], limit: int = 0, way_to_all: str = "") -> list[str]:
    """Lines for people: grouped by severity and rule, worst first.

    ``limit`` findings are shown of each group; ``way_to_all`` tells how the others are seen, where there is a way.
    """
    groups: dict[tuple[str, str], list[Finding]] = {}
    for finding in ordered(findings):
        groups.setdefault((finding.severity, finding.rule), []).append(finding)
    lines: list[str] = []
    for (severity, rule), members in groups.items():
        lines.append(f"{severity}: {rule} ({len(members)})")
        shown = members[:limit] if limit else members
        for finding in shown:
            lines.append(f"  {finding.where or '-'}" + (f"  {finding.thing}" if finding.thing != finding.where else ""))
            lines.append(f"      {finding.told()}")
            lines.append(f"      {finding.mend}")
        if len(shown) < len(members):
            lines.append(f"  … and {len(members) - len(shown)} more like this"
                         + (f" ({way_to_all})" if way_to_all else ""))
    return lines


def as_data(findings: Iterable[Finding]) -> list[dict[str, Any]]:
    """The findings as JSON-able values, worst first."""
    return [asdict(f) for f in ordered(findings)]


def _place(where: str) -> tuple[str, int]:
    name, _, line = where.rpartition(":")
    return (name, int(line)) if line.isdigit() else (where, 0)
