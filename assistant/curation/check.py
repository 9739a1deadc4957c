"""The whole check of a base: parse, canonical form, shapes, lint, with counts of what was looked at (layer 4)."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from assistant.curation.census import Census, census
from assistant.curation.findings import Finding, errors, ordered
from assistant.curation.format import first_difference, unformatted
from assistant.curation.lint import base_findings
from assistant.curation.names import queue
from assistant.curation.rules import rulebook_findings
from assistant.curation.shapes import SEVERITY_OF
from assistant.curation.validate import load_findings
from assistant.curation.vocabulary import read_vocabulary
from assistant.curation.wording import waiting_words
from assistant.errors import DataError
from assistant.graph.lines import Index
from assistant.graph.load import paused_collector
from assistant.graph.read import read_file, turtle_files
from assistant.graph.shacl import Report, count_focus_nodes, validate
from assistant.graph.values import Node
from assistant.graph.write import split_header, write_nodes


@dataclass(frozen=True, slots=True)
class Outcome:
    """Findings, worst first, and counts of what was checked."""

    findings: tuple[Finding, ...]
    counts: dict[str, int] = field(default_factory=dict)
    census: Census | None = None

    @property
    def passed(self) -> bool:
        """True when nothing keeps the base from being used."""
        return not errors(self.findings)

    def summary(self) -> str:
        """What was looked at, in one line."""
        return ", ".join(f"{number:,} {name}" for name, number in self.counts.items())


def check_folder(folder: Path, shapes_folder: Path, with_shapes: bool = True) -> Outcome:
    """Check a whole base folder. DataError when it holds nothing to check; ``with_shapes=False`` leaves SHACL out."""
    files = turtle_files(folder)
    with paused_collector():
        try:
            index = Index(folder)
            nodes = index.all_nodes()
        except DataError:
            return Outcome(tuple(ordered(_unreadable(folder, files))), {"files": len(files)})
        shapes = Index(shapes_folder).all_nodes()
        vocabulary = read_vocabulary(index, nodes)
        findings = [*_format_findings(index, nodes), *base_findings(index, vocabulary)]
        findings += (f for node in nodes.values() for f in load_findings(node, index))
        findings += rulebook_findings(nodes, index)
        findings += _waiting(nodes, index)
        if with_shapes:
            findings += shape_findings(validate(nodes.values(), shapes.values()), index)
    counts = _counts(files, nodes, shapes)
    findings += _nothing_checked(counts, folder)
    return Outcome(tuple(ordered(findings)), counts, census(nodes))


def _waiting(nodes: dict[str, Node], index: Index) -> Iterator[Finding]:
    """Records that a split or a lump left for a person to decide, told by the change that did."""
    changes = sorted((n for n in nodes.values() if "tf:Change" in n.types()), key=lambda n: n.id)
    left = Counter(item.change for item in queue(index, changes)) if changes else Counter[str]()
    for change, number in left.items():
        yield Finding("hint", "records wait", change, index.where(change), waiting_words(number),
                      "each given to a taxon, or left where it is", "settle them with tellfin split --decide")


def shape_findings(report: Report, index: Index) -> Iterator[Finding]:
    """The validator's results as findings."""
    for result in report.results:
        found = f"{result.path} {result.value}".strip() or "a fault of the whole node"
        if result.component == "MinCountConstraintComponent":
            found = f"too few {result.path}"
        elif result.component == "MaxCountConstraintComponent":
            found = f"more than one {result.path}"
        mend = f"mend {result.path}" if result.path else "mend the node"
        yield Finding(SEVERITY_OF[result.severity], result.shape, result.focus, index.where(result.focus), found,
                      result.message, mend)


def _unreadable(folder: Path, files: list[Path]) -> Iterator[Finding]:
    for path in files:
        try:
            read_file(path)
        except DataError as error:
            where = error.where.replace(f"{folder}/", "")
            yield Finding("error", "readable Turtle", where, where, error.message, "", error.hint)


def _format_findings(index: Index, nodes: dict[str, Node]) -> Iterator[Finding]:
    doubtful = {spot.file for _, spot in index.double} | index.odd
    for path, data in index.contents.items():
        text = data.decode("utf-8", "replace")
        if path not in doubtful:
            wanted = write_nodes((nodes[k] for k in index.in_file(path)), split_header(text)[0])
            faults = [] if text == wanted else [(path, first_difference(text, wanted))]
        else:
            faults = list(unformatted([path]))
        for _, fault in faults:
            yield Finding("error", "canonical form", index.name(path), index.name(path), fault, "",
                          "run: tellfin format")


def _counts(files: list[Path], nodes: dict[str, Node], shapes: dict[str, Node]) -> dict[str, int]:
    focus = count_focus_nodes(nodes.values(), shapes.values())
    return {
        "files": len(files), "nodes": len(nodes),
        "triples": sum(len(v) for n in nodes.values() for v in n.props.values()),
        "statements": sum(1 for key in nodes if key.startswith("st:")),
        "taxa": sum(1 for key in nodes if key.startswith("taxon:")),
        "node shapes": len(focus), "node shapes with targets": sum(1 for n in focus.values() if n),
        "focus nodes": sum(focus.values()),
    }


def _nothing_checked(counts: dict[str, int], folder: Path) -> Iterator[Finding]:
    for name in ("nodes", "statements", "taxa", "focus nodes"):
        if counts[name] == 0:
            yield Finding("error", "nothing checked", str(folder), "", f"no {name}", "something to check",
                          "is this the right folder?")
