"""Two bases compared in words, record by record (layer 4)."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from assistant.curation.wording import Pair, describe_changes
from assistant.graph.lines import Index
from assistant.graph.load import paused_collector
from assistant.graph.values import Node


def compare_bases(first: Path, second: Path) -> list[str]:
    """What is different in the second base, in words; the record of changes itself is passed over."""
    with paused_collector():
        old, new = Index(first), Index(second)
        before, after = old.all_nodes(), new.all_nodes()
        changed = dict(_different(before, after))
        return describe_changes(changed, old, new)


def _different(before: dict[str, Node], after: dict[str, Node]) -> Iterator[tuple[str, Pair]]:
    for key in sorted(set(before) | set(after)):
        if key.startswith("change:"):
            continue
        a, b = before.get(key), after.get(key)
        if a is None or b is None or {p: set(v) for p, v in a.props.items()} != {p: set(v) for p, v in b.props.items()}:
            yield key, (a, b)
