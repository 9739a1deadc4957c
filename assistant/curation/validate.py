"""What a change may break: the records it touched, what they belong to, and what points to them (layer 4)."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from functools import cached_property
from pathlib import Path

from assistant.curation.findings import LOADS, Finding, errors, ordered
from assistant.curation.lint import Context, beyond_findings, node_findings
from assistant.curation.shapes import ShapeSet, read_shapes
from assistant.curation.taxonomy import same_names
from assistant.curation.view import Draft, View, many
from assistant.curation.vocabulary import RECORD_PREFIXES, Vocabulary, read_vocabulary
from assistant.errors import DataError
from assistant.graph.lines import Index
from assistant.graph.values import Node
from assistant.model.build import kind_of, row_of


class Validator:
    """Shapes, lint and loading for single records of one base."""

    def __init__(self, shapes_folder: Path) -> None:
        self._folder = shapes_folder
        self._words: tuple[object, Vocabulary] | None = None

    @cached_property
    def shapes(self) -> ShapeSet:
        """The shapes, read when first needed."""
        return read_shapes(Index(self._folder).all_nodes().values())

    def findings(self, draft: Draft) -> list[Finding]:
        """What stands against a change, worst first; faults that stood there before the change are left out."""
        changed = draft.changed()
        before = self.vocabulary(draft.base)
        laid = [k for k in changed if k.partition(":")[0] not in RECORD_PREFIXES]
        vocabulary = read_vocabulary(draft, {*draft.base.outside(RECORD_PREFIXES), *laid}) if laid else before
        touched = [key for key, (_, new) in changed.items() if new is not None]
        found = [f for key in touched for f in self._of(key, draft, vocabulary, touched)]
        found += beyond_findings([n for _, n in changed.values() if n is not None], Context(draft, vocabulary))
        found += _placement(draft)
        found += (Finding(severity, rule, key, draft.where(key), *rest) for key, (old, new) in changed.items()
                  if new is not None for severity, rule, *rest in same_names(old, new, draft))
        beside = sorted(_beside(draft, changed) - set(changed))
        if beside:
            known = {_mark(f) for key in beside for f in self._of(key, draft.base, before)}
            found += [f for key in beside for f in self._of(key, draft, vocabulary) if _mark(f) not in known]
        return ordered(found)

    def vocabulary(self, base: Index) -> Vocabulary:
        """The vocabulary of a base, read again only when one of its files has changed."""
        mark = base.holders(RECORD_PREFIXES)
        if self._words is None or self._words[0] != mark:
            self._words = (mark, read_vocabulary(base, base.outside(RECORD_PREFIXES)))
        return self._words[1]

    def _of(self, key: str, view: View, vocabulary: Vocabulary, touched: Collection[str] = ()) -> Iterator[Finding]:
        node = view.node(key)
        if node is None:
            return
        yield from self.shapes.check(node, view, vocabulary)
        yield from node_findings(node, Context(view, vocabulary, touched))
        yield from load_findings(node, view)


def load_findings(node: Node, view: View) -> Iterator[Finding]:
    """A record must also load as the program reads it."""
    try:
        kind = kind_of(node)
        if kind is not None:
            row_of(kind, node)
    except DataError as error:
        yield Finding("error", LOADS, node.id, view.where(node.id), error.message, "a record that loads", error.hint)


def _placement(draft: Draft) -> Iterator[Finding]:
    root = draft.base.folder.resolve()
    for key, path in draft.files.items():
        if ".." in path.parts or not path.resolve().is_relative_to(root) or path.suffix != ".ttl":
            yield Finding("error", "place in the base", key, str(path), "a file outside the base", "a file inside it",
                          "mend the identifier")


def _beside(draft: Draft, changed: Iterable[str]) -> set[str]:
    """Records that a change may break though it does not touch them: owners of names, and whatever points to it."""
    out: set[str] = set()
    for key in changed:
        before, after = draft.base.node(key), draft.node(key)
        for node in (before, after):
            if node is not None:
                out.update(many(node, "tf:nameOf"))
        lonely = key.startswith(("st:", "range:", "name:", "alike:", "agent:"))
        if before is not None and (after is None or not lonely):
            out.update(draft.base.referrers(key))
    return {key for key in out if not key.startswith("change:")}


def _mark(finding: Finding) -> tuple[str, str, str]:
    return (finding.rule, finding.thing, finding.found)


def refused(findings: Iterable[Finding]) -> bool:
    """True when a change must not be made."""
    return bool(errors(findings))
