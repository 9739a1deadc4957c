"""What was changed, by whom, when, why and from which source; taking a change back; replaying a version (layer 4).

A change is a prov:Activity of our own class, one file each under ``changes/`` in the base. It holds the triples that
it took away and added, so that it can be inverted exactly.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from assistant.curation.view import Draft, many, one, rests_on
from assistant.errors import DataError, UsageError
from assistant.graph.lines import Index
from assistant.graph.read import read_file
from assistant.graph.triples import node_triples, parse_triples
from assistant.graph.values import Literal, Node, Value
from assistant.text import slug

CHANGES, CHANGE = "changes", "change"
"""The folder of the changes, and the prefix of their identifiers."""


@dataclass(frozen=True, slots=True)
class Author:
    """Who makes a change, why, and from which sources (ids)."""

    name: str
    why: str
    sources: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """The agent's id."""
        key = slug(self.name)
        if not key:
            raise UsageError("--by needs a name of letters or digits", "for example --by 'Ansa Merrow'")
        return f"agent:{key}"


def newest(index: Index) -> tuple[int, datetime | None]:
    """The number of the newest change of a base, 0 without one, and when it was made.

    So a clock that is behind cannot put a later change before it. Identifiers of changes begin with their number.
    """
    last = index.last(CHANGE)
    node = index.node(last) if last else None
    if node is None:
        return 0, None
    return _number(node), datetime.fromisoformat(one(node, "prov:startedAtTime"))


def change_node(draft: Draft, author: Author, when: datetime, words: Iterable[str],
                extra: Mapping[str, list[Value]], version: str, number: int) -> Node:
    """The record of a change that lies over a base."""
    added, removed, files, touched = _differences(draft)
    touched = touched or [v for v in extra.get("tf:decided", []) if isinstance(v, str)]
    stamp = when.astimezone(UTC).strftime("%Y-%m-%dT%H:%M:%SZ")
    props: dict[str, list[Value]] = {
        "rdf:type": ["tf:Change"], "tf:changeNumber": [Literal(str(number), "xsd:integer")],
        "prov:startedAtTime": [Literal(stamp, "xsd:dateTime")], "prov:wasAssociatedWith": [author.key],
        "tf:why": [Literal(author.why)], "dcterms:description": [Literal(w) for w in words],
        "dcterms:source": list(author.sources), "tf:versionBefore": [Literal(version)],
        "tf:added": [Literal(t) for t in added], "tf:removed": [Literal(t) for t in removed],
        "tf:file": [Literal(f) for f in files], "tf:touched": list(touched), **extra}
    props = {p: v for p, v in props.items() if v}
    mark = hashlib.blake2b("\n".join([stamp, author.key, *added, *removed]).encode(), digest_size=3).hexdigest()
    return Node(f"change:{number:07d}-{mark}", props)


def _differences(draft: Draft) -> tuple[list[str], list[str], list[str], list[str]]:
    added: list[str] = []
    removed: list[str] = []
    files: set[str] = set()
    touched: list[str] = []
    for key, (old, new) in draft.changed().items():
        before, after = set(node_triples(old)) if old else set(), set(node_triples(new)) if new else set()
        added += sorted(after - before)
        removed += sorted(before - after)
        path = draft.base.name(draft.base.file_of(key) or draft.files[key])
        files.add(path if old is not None and new is not None else f"{path} {key}")
        if not key.startswith("agent:"):
            touched.append(key)
    return added, removed, sorted(files), touched


def read_changes(base: Path) -> list[Node]:
    """Every change of a base, oldest first."""
    folder = base / CHANGES
    nodes = [n for p in sorted(folder.glob("*.ttl")) for n in read_file(p).values()] if folder.is_dir() else []
    return sorted((n for n in nodes if "tf:Change" in n.types()), key=lambda n: (_number(n), n.id))


def _number(change: Node) -> int:
    text = one(change, "tf:changeNumber")
    return int(text) if text.isdigit() else 0


def find_change(changes: Iterable[Node], text: str) -> Node:
    """The change of a number or an id. UsageError when there is none, or several have the number."""
    wanted = text.removeprefix("change:")
    found = [c for c in changes
             if c.id == f"change:{wanted}" or (wanted.isdigit() and _number(c) == int(wanted))]
    if len(found) != 1:
        raise UsageError(f"there {'is no change' if not found else 'are several changes'} {text!r}",
                         "tellfin history lists them; give the id in full")
    return found[0]


def concerns(change: Node, key: str) -> bool:
    """True when a change is about a record, or about a record of a taxon."""
    local = key.partition(":")[2]
    return any(t == key or (key.startswith("taxon:") and t.partition(":")[2].startswith(local + "."))
               for t in many(change, "tf:touched"))


def listing(changes: Iterable[Node]) -> list[str]:
    """Changes in lines for people, newest first."""
    nodes = list(changes)
    undone = {u: _number(c) for c in nodes for u in many(c, "tf:undoes")}
    lines: list[str] = []
    for change in reversed(nodes):
        mark = f" (undone by change {undone[change.id]})" if change.id in undone else ""
        who = one(change, "prov:wasAssociatedWith").partition(":")[2]
        lines.append(f"{_number(change)}  {one(change, 'prov:startedAtTime')}  {who}{mark}")
        lines += [f"    {words}" for words in many(change, "dcterms:description")]
        sources = ", ".join(s.partition(":")[2] for s in many(change, "dcterms:source"))
        lines.append(f"    why: {one(change, 'tf:why')}" + (f"; source {sources}" if sources else ""))
        lines.append(f"    id {change.id}, version before {one(change, 'tf:versionBefore')}")
    return lines


def take_back(change: Node, changes: Iterable[Node], draft: Draft) -> dict[str, list[Value]]:
    """Lay the inverse of a change over a base. DataError when a later change touched the same, or it is undone."""
    for other in changes:
        if change.id in many(other, "tf:undoes"):
            raise DataError(f"change {_number(change)} was already undone by change {_number(other)}",
                            f"to bring it back, undo change {_number(other)}")
    clash = sorted(_clashes(change, draft))
    if clash:
        later = [str(_number(c)) for c in changes
                 if _number(c) > _number(change) and set(many(c, "tf:touched")) & set(clash)]
        first = f"undo change {', '.join(reversed(later))} first" if later else "it was edited by hand: mend that first"
        raise DataError(f"{clash[0]} was changed since", first)
    invert(change, draft, keep_agents=True)
    _refuse_undermining(change, changes, draft)
    return {"tf:undoes": [change.id]}


def _refuse_undermining(change: Node, changes: Iterable[Node], draft: Draft) -> None:
    """DataError where records that later changes made rest on what is taken away."""
    for key in [k for k, n in draft.nodes.items() if n is None]:
        left = set(rests_on(draft, key))
        if not left:
            continue
        later = [str(_number(c)) for c in changes if _number(c) > _number(change) and left & set(many(c, "tf:touched"))]
        raise DataError(f"{min(left)} rests on {key}, which change {_number(change)} made",
                        f"undo change {', '.join(reversed(later))} first" if later else "retract it first")


def _clashes(change: Node, draft: Draft) -> Iterable[str]:
    for key, node in parse_triples(many(change, "tf:added")).items():
        now = draft.node(key)
        if not key.startswith("agent:") and any(
                v not in (now.props.get(p, []) if now else []) for p, values in node.props.items() for v in values):
            yield key
    for key, node in parse_triples(many(change, "tf:removed")).items():
        now = draft.node(key)
        if now is not None and any(v in now.props.get(p, []) for p, values in node.props.items() for v in values):
            yield key


def invert(change: Node, draft: Draft, keep_agents: bool = False) -> None:
    """Take away what a change added and put back what it took away."""
    places = {key: path for path, _, key in (f.partition(" ") for f in many(change, "tf:file")) if key}
    for key, node in parse_triples(many(change, "tf:added")).items():
        if (keep_agents and key.startswith("agent:")) or key not in draft:
            continue
        target = draft.edited(key)
        for predicate, values in node.props.items():
            target.props[predicate] = [v for v in target.props.get(predicate, []) if v not in values]
    for key, node in parse_triples(many(change, "tf:removed")).items():
        if key not in draft:
            draft.put(Node(key, {}), draft.base.folder / places[key] if key in places else None)
        target = draft.edited(key)
        for predicate, values in node.props.items():
            target.props.setdefault(predicate, []).extend(values)
    for key, current in list(draft.nodes.items()):
        if current is not None:
            current.props = {p: v for p, v in current.props.items() if v}
            if not current.props:
                draft.drop(key)

