"""One change of a base: lock, apply, validate what was touched, commit as one, or refuse and leave all as it was
(layer 4)."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from assistant.curation.findings import Finding
from assistant.curation.history import Author, change_node, last_moment, next_number
from assistant.curation.journal import commit, locked
from assistant.curation.validate import Validator, refused
from assistant.curation.view import Draft
from assistant.curation.wording import describe_changes
from assistant.errors import DataError
from assistant.graph.lines import Index
from assistant.graph.load import paused_collector
from assistant.graph.values import Literal, Node, Value
from assistant.graph.write import split_header, write_nodes
from assistant.model.build import version_of as digests_version

Extra = Mapping[str, list[Value]]
"""Further properties of the change node (which change it undoes, which records are undecided)."""
Work = Callable[[Draft], Extra | None]
"""Lays a change over a base; raises DataError or UsageError where it cannot."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What became of a change: its id (empty when nothing was changed), the change in words, the findings."""

    change: str
    words: tuple[str, ...]
    findings: tuple[Finding, ...]
    refused: bool


@dataclass(frozen=True, slots=True)
class Prepared:
    """A change that is ready: what it comes to, and where it stands the draft and the record of the change."""

    outcome: Outcome
    draft: Draft
    node: Node | None = None


def transact(base: Path, shapes: Path, author: Author, when: datetime, work: Work, dry_run: bool = False) -> Outcome:
    """Make one change. Nothing is written when it is refused, changes nothing, or is a dry run."""
    def attempt() -> Prepared:
        return prepare(Index(base), shapes, author, max(when, last_moment(base) or when), work, next_number(base))

    if dry_run:
        with paused_collector():
            return attempt().outcome
    with locked(base), paused_collector():
        ready = attempt()
        if ready.node is not None:
            commit(base, new_contents(ready.draft, ready.node))
        return ready.outcome


def prepare(index: Index, shapes: Path, author: Author, when: datetime, work: Work, number: int) -> Prepared:
    """Lay a change over a base and validate it; there is no node where it is refused or changes nothing."""
    draft = Draft(index)
    ensure_agent(draft, author)
    extra = work(draft) or {}
    changed = {k: pair for k, pair in draft.changed().items() if k != author.key}
    if not changed and not extra:
        return Prepared(Outcome("", (), (), False), draft)
    words = tuple(describe_changes(changed, index, draft)) or ("settled, nothing moves",)
    findings = Validator(shapes).findings(draft)
    if refused(findings):
        return Prepared(Outcome("", words, tuple(findings), True), draft)
    node = change_node(draft, author, when, words, extra, version_of(index.contents, index.folder), number)
    return Prepared(Outcome(node.id, words, tuple(findings), False), draft, node)


def ensure_agent(draft: Draft, author: Author) -> None:
    """Add who makes the change when the base does not know them yet."""
    if author.key not in draft:
        node = Node(author.key, {"rdf:type": ["prov:Agent"],
                                 "skos:prefLabel": [Literal(author.name, "rdf:langString", "en")]})
        draft.put(node, draft.base.folder / "agents" / "agents.ttl")


def version_of(contents: Mapping[Path, bytes], folder: Path) -> str:
    """The version of a base: the same digest that loading computes."""
    return digests_version({path.relative_to(folder).as_posix(): hashlib.blake2b(data, digest_size=16).hexdigest()
                            for path, data in contents.items()})


def new_contents(draft: Draft, change: Node | None) -> dict[str, bytes | None]:
    """The files that a change rewrites, by path relative to the base; None for one that loses its last record."""
    index = draft.base
    out = {index.name(path): rendered(path, draft) for path in touched_files(draft)}
    if change is not None:
        out[f"changes/{change.id.partition(':')[2]}.ttl"] = write_nodes([change]).encode("utf-8")
    return out


def touched_files(draft: Draft) -> list[Path]:
    """The files that hold a changed record, before or after."""
    found = {draft.base.spots[k].file if k in draft.base.spots else draft.files[k] for k in draft.changed()}
    return sorted(found)


def rendered(path: Path, draft: Draft) -> bytes | None:
    """The new content of a file. DataError when rewriting it would lose a comment or an order."""
    index = draft.base
    if path in index.odd:
        raise DataError("is not in canonical form, so an edit would rewrite all of it", "run: tellfin format first",
                        str(path))
    mine = {k for k, p in draft.files.items() if p == path} | set(index.in_file(path))
    index.fetch(mine)
    nodes = [n for n in map(draft.node, sorted(mine)) if n is not None]
    header = split_header(index.contents[path].decode("utf-8"))[0] if path in index.contents else ""
    return write_nodes(nodes, header).encode("utf-8") if nodes else None
