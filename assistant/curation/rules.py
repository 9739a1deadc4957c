"""What joins and arithmetic say about the fishing rules of a base: ties, gaps, parts that lead nowhere (layer 4).

The findings themselves are made in ``reasoning.rule_findings``; here they get their place in the files.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from assistant.curation.findings import Finding
from assistant.curation.view import View
from assistant.errors import DataError
from assistant.graph.values import Node
from assistant.model.build import Rows, kind_of, row_of
from assistant.model.knowledge import KnowledgeBase, MemoryStore
from assistant.model.rulebook import rulebook
from assistant.reasoning.rule_findings import rule_findings

KINDS = frozenset(
    {
        "rule-set",
        "placement",
        "fish-group",
        "season-window",
        "length-limit",
        "over-count",
        "sub-limit",
        "closed-hours",
        "rule",
        "taxon",
    }
)
"""Kinds of records that a rule book is made from."""
SEVERITY = {"tie": "warning", "gap": "warning"}
"""Faults are errors; a tie is answered with the stricter rule and a gap with "unknown", so they are doubts."""


def rulebook_findings(nodes: Mapping[str, Node], view: View) -> Iterator[Finding]:
    """Everything found in the rules; nothing where a record does not load, which is told elsewhere."""
    rows = Rows()
    try:
        for node in nodes.values():
            kind = kind_of(node)
            if kind is not None and kind.name in KINDS:
                row = row_of(kind, node)
                rows.shared[kind.name][row[0]] = row
    except DataError:
        return
    if not rows.shared["rule"]:
        return
    book = rulebook(KnowledgeBase(MemoryStore(rows.shared, {}, "check")))
    for found in rule_findings(book):
        thing = f"rule:{found.rule}"
        where = view.where(thing) if thing in nodes else ""
        yield Finding(
            SEVERITY.get(found.kind, "error"),
            f"fishing rules: {found.kind}",
            thing,
            where,
            found.about,
            "rules that agree and lead somewhere",
            found.fix,
        )
