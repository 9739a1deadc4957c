"""One change of a base: lock, apply, validate what was touched, commit as one, or refuse and leave all as it was
(layer 4)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from assistant.curation.desk import Desk
from assistant.curation.findings import Finding
from assistant.curation.history import Author, change_node, newest
from assistant.curation.journal import commit, locked
from assistant.curation.validate import Validator, refused
from assistant.curation.view import Draft
from assistant.curation.wording import describe_changes
from assistant.errors import DataError
from assistant.graph.lines import Index
from assistant.graph.load import paused_collector
from assistant.graph.splice import spliced
from assistant.graph.values import Literal, Node, Value
from assistant.graph.write import write_nodes
from assistant.model.build import version_of

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


def transact(desk: Desk, author: Author, when: datetime, work: Work, dry_run: bool = False) -> Outcome:
    """Make one change. Nothing is written when it is refused, changes nothing, or is a dry run."""
    base = desk.folder

    def attempt() -> Prepared:
        index = desk.index()
        number, moment = newest(index)
        return prepare(index, desk.validator, author, max(when, moment or when), work, number + 1)

    if dry_run:
        with paused_collector():
            return attempt().outcome
    with locked(base), paused_collector():
        ready = attempt()
        if ready.node is not None:
            commit(base, new_contents(ready.draft, ready.node))
        return ready.outcome


def prepare(index: Index, validator: Validator, author: Author, when: datetime, work: Work, number: int) -> Prepared:
    """Lay a change over a base and validate it; there is no node where it is refused or changes nothing."""
    draft = Draft(index)
    ensure_agent(draft, author)
    extra = work(draft) or {}
    if unknown := [key for key in author.sources if key not in draft]:
        raise DataError(f"there is no source {unknown[0]!r}", "add the source first, or name another")
    changed = {k: pair for k, pair in draft.changed().items() if k != author.key}
    if not changed and not extra:
        return Prepared(Outcome("", (), (), False), draft)
    words = tuple(describe_changes(changed, index, draft)) or ("settled, nothing moves",)
    findings = validator.findings(draft)
    if refused(findings):
        return Prepared(Outcome("", words, tuple(findings), True), draft)
    node = change_node(draft, author, when, words, extra, version_of(index.digests()), number)
    return Prepared(Outcome(node.id, words, tuple(findings), False), draft, node)


def ensure_agent(draft: Draft, author: Author) -> None:
    """Add who makes the change when the base does not know them yet."""
    if author.key not in draft:
        node = Node(author.key, {"rdf:type": ["prov:Agent"],
                                 "skos:prefLabel": [Literal(author.name, "rdf:langString", "en")]})
        draft.put(node, draft.base.folder / "agents" / "agents.ttl")


def new_contents(draft: Draft, change: Node | None) -> dict[str, bytes | None]:
    """The files that a change rewrites, by path relative to the base; None for one that loses its last record."""
    index = draft.base
    out = {index.name(path): rendered(path, draft) for path in touched_files(draft)}
    if change is not None:
        out[f"changes/{change.id.partition(':')[2]}.ttl"] = write_nodes([change]).encode("utf-8")
    return out


def touched_files(draft: Draft) -> list[Path]:
    """The files that hold a changed record, before or after."""
    return sorted({draft.base.file_of(k) or draft.files[k] for k in draft.changed()})


def rendered(path: Path, draft: Draft) -> bytes | None:
    """The new content of a file. DataError when rewriting it would lose a comment, an order or a second block."""
    blocks = draft.base.blocks(path)
    mine = {k: new for k, (_, new) in draft.changed().items() if (draft.base.file_of(k) or draft.files[k]) == path}
    if blocks is None:
        nodes = [n for n in mine.values() if n is not None]
        return write_nodes(nodes).encode("utf-8") if nodes else None
    if blocks.odd:
        raise DataError("is not in canonical form, so an edit would rewrite all of it", "run: tellfin format first",
                        str(path))
    if blocks.double:
        raise DataError(f"holds two blocks of {blocks.double[0][0]}", "join the two blocks first", str(path))
    return spliced(blocks, mine)
