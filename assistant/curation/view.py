"""What the checks read: a base, or a base with a change laid over it (layer 4)."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from assistant.graph.lines import Index
from assistant.graph.values import Literal, Node, Value


class View(Protocol):
    """Nodes by id; an ``Index`` is one, a ``Draft`` another."""

    def __contains__(self, key: str) -> bool:
        """True when a node with this id stands in the base."""

    def node(self, key: str) -> Node | None:
        """The node with this id, or None."""

    def fetch(self, keys: Iterable[str]) -> None:
        """Make these nodes ready to be read."""

    def ids(self, prefix: str, group: str = "") -> list[str]:
        """Sorted ids under a prefix; with ``group`` those that start with "prefix:group."."""

    def with_text(self, predicate: str, text: str, prefix: str) -> list[str]:
        """Sorted ids under a prefix of nodes that have this text (case aside, in any language) as a value."""

    def where(self, key: str) -> str:
        """file:line of a node, or empty."""


@dataclass(slots=True)
class Draft:
    """A base with a change laid over it: ``nodes`` holds new and changed nodes, None for those taken away."""

    base: Index
    nodes: dict[str, Node | None] = field(default_factory=dict)
    files: dict[str, Path] = field(default_factory=dict)

    def __contains__(self, key: str) -> bool:
        return self.nodes[key] is not None if key in self.nodes else key in self.base

    def node(self, key: str) -> Node | None:
        """The node as it would be after the change."""
        return self.nodes[key] if key in self.nodes else self.base.node(key)

    def fetch(self, keys: Iterable[str]) -> None:
        """Make these nodes ready to be read."""
        self.base.fetch(keys)

    def ids(self, prefix: str, group: str = "") -> list[str]:
        """Sorted ids as they would be after the change."""
        start = f"{prefix}:{group}." if group else f"{prefix}:"
        held, laid = self.base.ids(prefix, group), {k for k in self.nodes if k.startswith(start)}
        if not laid:
            return held
        return sorted({k for k in held if k not in laid} | {k for k in laid if self.nodes[k] is not None})

    def with_text(self, predicate: str, text: str, prefix: str) -> list[str]:
        """Sorted ids under a prefix of nodes that have this text as a value of the predicate after the change."""
        kept = {k for k in self.base.with_text(predicate, text, prefix) if k not in self.nodes}
        laid = {k for k, n in self.nodes.items() if n is not None and k.startswith(f"{prefix}:") and text.lower() in
                (v.lower() for v in many(n, predicate))}
        return sorted(kept | laid)

    def where(self, key: str) -> str:
        """file:line of a node that was there before, or the file that a new one goes to."""
        known = self.base.where(key)
        return known or (self.base.name(self.files[key]) if key in self.files else "")

    def put(self, node: Node, file: Path | None = None) -> None:
        """Lay a new or changed node over the base; ``file`` says where a new one goes."""
        self.nodes[node.id] = node
        if file is not None and node.id not in self.base:
            self.files[node.id] = file

    def drop(self, key: str) -> None:
        """Take a node away."""
        self.nodes[key] = None

    def edited(self, key: str) -> Node:
        """A copy of a node that may be changed; it is laid over the base at once. KeyError when there is none."""
        found = self.node(key)
        if found is None:
            raise KeyError(key)
        copy = Node(found.id, {p: list(v) for p, v in found.props.items()}, found.file, found.line)
        self.nodes[key] = copy
        return copy

    def changed(self) -> dict[str, tuple[Node | None, Node | None]]:
        """Before and after of every node that differs, by id."""
        out: dict[str, tuple[Node | None, Node | None]] = {}
        for key in sorted(self.nodes):
            before, after = self.base.node(key), self.nodes[key]
            if triples(before) != triples(after):
                out[key] = (before, after)
        return out


def rests_on(draft: Draft, key: str) -> list[str]:
    """Records that stay after a change and name this one; the record of the changes does not count."""
    def names_it(other: str) -> bool:
        node = draft.node(other)
        return node is not None and any(key in values for values in node.props.values())

    around = {*draft.base.referrers(key), *(k for k, n in draft.nodes.items() if n is not None)}
    return sorted(k for k in around if not k.startswith("change:") and names_it(k))


def triples(node: Node | None) -> frozenset[tuple[str, Value]]:
    """The predicate and object pairs of a node."""
    return frozenset((p, v) for p, values in node.props.items() for v in values) if node else frozenset()


def one(node: Node, predicate: str) -> str:
    """The only value of a property as text, or empty; of several the first in order."""
    values = node.props.get(predicate)
    if not values:
        return ""
    if len(values) == 1:
        value = values[0]
        return value if isinstance(value, str) else value.value
    return min(v.value if isinstance(v, Literal) else v for v in values)


def many(node: Node, predicate: str) -> list[str]:
    """The values of a property as sorted text."""
    return sorted(v.value if isinstance(v, Literal) else v for v in node.props.get(predicate, []))


def number(node: Node, predicate: str) -> float | None:
    """A number of a node, None when it is missing or no number."""
    if predicate not in node.props:
        return None
    try:
        return float(one(node, predicate))
    except ValueError:
        return None


def same_props(first: Mapping[str, list[Value]], second: Mapping[str, list[Value]]) -> bool:
    """True when two property tables say the same."""
    return {p: set(v) for p, v in first.items() if v} == {p: set(v) for p, v in second.items() if v}
