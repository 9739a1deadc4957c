"""The whole check of a base: what it finds, where, and what it counts."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.curation.check import check_folder
from assistant.curation.findings import report
from assistant.errors import DataError
from assistant.graph.locate import shipped_ontology, shipped_shapes
from tests.helpers.bases import Tellfin

VENNIA = "taxa/vennidae/vennia.ttl"
FAULTS: list[tuple[str, str, str, str]] = [
    ("tf:low 8.0 ;", "tf:low 12.0 ;", "order of numbers", "tf:low 12"),
    ("tf:state state:side-marks.spots ;", "tf:state state:fin-colour.grey ;", "state of another character", "grey"),
    ("tf:taxon taxon:vennia-alta ;", "tf:taxon taxon:vennia-altissima ;", "dangling reference", "vennia-altissima"),
    ("dcterms:source src:memory ;", "dcterms:source src:nobody ;", "dangling reference", "src:nobody"),
    ("tf:nameKind tf:synonym ;", "tf:nameKind tf:nickname ;", "value outside its list", "tf:nickname"),
    ("tf:separable tf:yes ;", "tf:separabel tf:yes ;", "undeclared property", "tf:separabel"),
    ("qudt:hasUnit unit:MilliM ;", "qudt:hasUnit unit:GM ;", "unit", "unit:GM"),
    ("qudt:hasUnit unit:NUM ;", "qudt:hasUnit unit:IN ;", "unit", "unit:IN"),
    ("    a tf:LookAlike ;", "    a tf:LokkAlike ;", "shape:typed.type", "tf:LokkAlike"),
    ("tf:parent taxon:vennia ;", "tf:parent taxon:vennia-rubra ;", "cyclic parents", "taxon:vennia-rubra"),
    ('dcterms:created "2026-01-05"^^xsd:date ;', 'dcterms:created "2026-02-30"^^xsd:date ;', "literal form",
     "2026-02-30"),
    ("tf:nameKind tf:accepted ;", "tf:nameKind tf:vernacular ;", "names without an accepted one",
     "none of kind accepted"),
    ("tf:basis tf:memory ;", "tf:basis tf:read ;", "basis and source", "src:memory"),
]


def test_the_made_up_base_passes(tiny_base: Path) -> None:
    """A sound base gives no error and says how much was looked at."""
    outcome = check_folder(tiny_base, shipped_shapes())
    assert outcome.passed, outcome.findings
    assert outcome.counts["taxa"] == 6 and outcome.counts["statements"] == 18
    assert outcome.counts["focus nodes"] > 300


@pytest.mark.parametrize(("old", "new", "rule", "found"), FAULTS, ids=[f[2] + f[3] for f in FAULTS])
def test_a_planted_fault_is_found_where_it_stands(old: str, new: str, rule: str, found: str, tiny_base: Path) -> None:
    """Each fault gives an error of its rule that quotes the value and names file and line."""
    path = tiny_base / VENNIA
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))
    outcome = check_folder(tiny_base, shipped_shapes())
    hits = [f for f in outcome.findings if f.rule == rule and found in f.found]
    assert hits and not outcome.passed, outcome.findings
    name, _, line = hits[0].where.rpartition(":")
    assert name == VENNIA and path.read_text().splitlines()[int(line) - 1] == hits[0].thing
    assert hits[0].expected and hits[0].mend


def test_a_ratio_with_the_unit_of_a_count_is_found(tiny_base: Path) -> None:
    """Where a character is a ratio, the unit of counts on its statements is an error: a ratio has none."""
    for path in (tiny_base / "vocabulary").rglob("*.ttl"):
        path.write_text(path.read_text().replace("tf:kind tf:count ;", "tf:kind tf:ratio ;"))
    hits = [f for f in check_folder(tiny_base, shipped_shapes()).findings if f.rule == "unit"]
    assert hits and all(f.found == "qudt:hasUnit unit:NUM" and f.thing.startswith("st:") for f in hits)


def test_duplicate_statement_and_two_preferred(tiny_base: Path) -> None:
    """The same thing said twice, and two preferred statements of one scope, are errors."""
    path = tiny_base / VENNIA
    text = path.read_text()
    block = next(b for b in text.split("\n\n") if b.startswith("st:vennia-rubra.jaw-reach"))
    marked = block.replace("    tf:basis", "    tf:preferred true ;\n    tf:preferredBecause \"x\" ;\n    tf:basis")
    other = marked.replace("any.vell-2001", "any.vell-2001.2")
    path.write_text(text.replace(block, marked + "\n\n" + other))
    rules = {f.rule for f in check_folder(tiny_base, shipped_shapes()).findings}
    assert {"said twice", "two preferred"} <= rules


LENGTH = """st:vennia-alta.{name}.any.vell-2001
    a tf:NumberStatement ;
    tf:taxon taxon:vennia-alta ;
    tf:character char:{name} ;
    tf:high {value} ;
    qudt:hasUnit unit:MilliM ;
    dcterms:created "2026-01-05"^^xsd:date ;
    dcterms:source src:vell-2001 ;
    prov:wasAttributedTo agent:first-curator ;
    tf:basis tf:read ;
{more}    .
"""


@pytest.mark.parametrize(("usual", "largest_of", "found"), [
    ("250.0", "", True), ("200.0", "", False), ("250.0", "tf:scopeText \"dwarf form\"", False)])
def test_a_usual_length_above_the_largest_is_a_warning(usual: str, largest_of: str, found: bool,
                                                       tiny_base: Path) -> None:
    """A usual length over the largest is named with both; a largest length of other fish does not count."""
    path = tiny_base / VENNIA
    more = f"    {largest_of} ;\n" if largest_of else ""
    blocks = (LENGTH.format(name="max-total-length", value="200.0", more=more),
              LENGTH.format(name="usual-adult-length", value=usual, more=""))
    path.write_text("\n".join((path.read_text(), *blocks)))
    hits = [f for f in check_folder(tiny_base, shipped_shapes()).findings if f.rule == "usual above largest"]
    assert bool(hits) is found
    if found:
        assert hits[0].severity == "warning" and hits[0].thing == "st:vennia-alta.usual-adult-length.any.vell-2001"
        assert "250" in hits[0].found and "200" in hits[0].expected and hits[0].where.startswith(VENNIA)


def test_a_subject_in_two_files_is_an_error(tiny_base: Path) -> None:
    """Each subject stands in one place."""
    (tiny_base / "sources" / "twice.ttl").write_bytes((tiny_base / "sources" / "papers.ttl").read_bytes())
    found = [f for f in check_folder(tiny_base, shipped_shapes()).findings if f.rule == "one place"]
    assert [f.thing for f in found] == ["src:vell-2001"] and "sources/papers.ttl" in found[0].found


def test_a_file_that_does_not_parse_is_one_finding_with_its_line(tiny_base: Path) -> None:
    """A missing dot is told with file, line and a guess, and nothing else is claimed."""
    path = tiny_base / VENNIA
    path.write_text(path.read_text().replace("    tf:basis tf:read ;\n    .", "    tf:basis tf:read ;\n", 1))
    outcome = check_folder(tiny_base, shipped_shapes())
    assert [f.rule for f in outcome.findings] == ["readable Turtle"]
    where = outcome.findings[0].where
    assert where.startswith(VENNIA + ":")
    told = "\n".join(report(outcome.findings))
    assert told.count(VENNIA) == 1 and "expected" not in told.replace("is expected at", "") and "found" not in told


def test_an_unknown_prefix_is_named(tiny_base: Path, tellfin: Tellfin) -> None:
    """The prefix is said, with its line; in a patch the lines are those that were typed."""
    path = tiny_base / VENNIA
    patch = tellfin("--base", tiny_base, "add", "--patch", "-", "--by", "me", stdin="\nfoo:bar a tf:Name .")
    assert "-:2: is not readable Turtle: The prefix foo: has not been declared" in patch.err, patch
    path.write_text(path.read_text() + "\nfoo:bar a tf:Name .\n")
    assert "The prefix foo: has not been declared" in tellfin("--base", tiny_base, "check").out


def test_one_fault_is_told_once(tiny_base: Path) -> None:
    """Twins are told of one of the two; what a shape says is not said again as a record that does not load."""
    path = tiny_base / VENNIA
    text = path.read_text()
    block = next(b for b in text.split("\n\n") if b.startswith("st:vennia-rubra.jaw-reach"))
    twin = block.replace("any.vell-2001", "any.vell-2001.2")
    path.write_text(text.replace(block, block + "\n\n" + twin).replace('    skos:prefLabel "ember vennet"@en ;\n', ""))
    outcome = check_folder(tiny_base, shipped_shapes())
    assert [f.thing for f in outcome.findings if f.rule == "said twice"] == [
        "st:vennia-rubra.jaw-reach.any.vell-2001.2"]
    assert [f.rule for f in outcome.findings if f.thing == "taxon:vennia-rubra"] == ["shape:taxon.label"]


def test_a_file_out_of_form_is_named(tiny_base: Path) -> None:
    """Only the file whose bytes differ from the canonical form is named."""
    path = tiny_base / VENNIA
    path.write_text(path.read_text() + "\n")
    outcome = check_folder(tiny_base, shipped_shapes())
    assert [(f.rule, f.thing) for f in outcome.findings if f.severity == "error"] == [("canonical form", VENNIA)]


def test_nothing_checked_is_a_failure(tmp_path: Path, tiny_base: Path) -> None:
    """An empty folder, or one without statements, does not pass."""
    with pytest.raises(DataError):
        check_folder(tmp_path / "nowhere", shipped_shapes())
    for path in (*tiny_base.glob("taxa/**/*.ttl"), *tiny_base.glob("ranges/**/*.ttl")):
        path.unlink()
    outcome = check_folder(tiny_base, shipped_shapes())
    assert any(f.rule == "nothing checked" for f in outcome.findings) and not outcome.passed


def test_the_report_is_grouped_and_can_be_json(tiny_base: Path, tellfin: Tellfin) -> None:
    """Findings are grouped, worst first, with place, found, expected and mend; exit code 1; JSON holds the same."""
    path = tiny_base / VENNIA
    path.write_text(path.read_text().replace("tf:low 8.0 ;", "tf:low 12.0 ;"))
    shown = tellfin("--base", tiny_base, "check")
    assert shown.code == 1 and "error: order of numbers (1)" in shown.out
    assert f"{VENNIA}:" in shown.out and "swap or mend them" in shown.out and "failed: 1 error" in shown.out
    data = json.loads(tellfin("--base", tiny_base, "check", "--format", "json").out)
    assert data["passed"] is False and data["findings"][0]["rule"] == "order of numbers"


@pytest.mark.long
def test_the_shipped_base_passes_the_whole_check() -> None:
    """The whole check of the shipped base, shapes and all, finds nothing wrong."""
    outcome = check_folder(shipped_ontology(), shipped_shapes())
    assert outcome.passed, [f for f in outcome.findings if f.severity == "error"][:5]
