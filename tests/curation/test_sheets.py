"""Sheets: the report first, all or nothing, values kept as they were written, the same bytes back."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import openpyxl
import pytest

from assistant.curation.check import check_folder
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from tests.helpers.bases import Tellfin, contents_of

HEADER = "taxon,character,value,frequency,scope,source_key,basis,note\n"
BY = ("--by", "Ansa Merrow", "--why", "plate counts")


def sheet(tmp_path: Path, *rows: str, name: str = "facts.csv") -> Path:
    """A sheet of facts."""
    path = tmp_path / name
    path.write_text(HEADER + "".join(r + "\n" for r in rows))
    return path


def test_rows_are_new_changed_same_or_rejected(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """The report names each rejected row with column, value and reason; nothing is applied."""
    path = sheet(tmp_path, "Vennia alta,maximum-length,30-34 cm,,adult,vell-2001,read,",
                 "Vennia rubra,gill-rakers,9-11,usually,,vell-2001,read,",
                 "Vennia rubra,depth-ratio,2.5-3,usually,,vell-2001,read,",
                 "Vennia rubra,gill-rakers,10-Dec,usually,,vell-2001,read,",
                 "Vennia nigra,gill-rakers,9,usually,,vell-2001,read,",
                 "Vennia alta,side-marks,dots,usually,,vell-2001,read,",
                 "Vennia alta,jaw-reach,past-eye,nearly,adult,vell-2001,read,")
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, "import", path, *BY)
    assert ran.code == 1 and "facts: 1 new, 1 changed, 1 same, 4 rejected" in ran.out, ran
    assert "row 5, column value: '10-Dec': the value '10-Dec' is a date" in ran.out
    assert "row 6, column taxon: 'Vennia nigra'" in ran.out and "row 7, column value: 'dots'" in ran.out
    assert "row 8, column frequency: 'nearly'" in ran.out and contents_of(tiny_base) == before
    tried = tellfin("--base", tiny_base, "import", path, "--dry-run", *BY)
    assert tried.code == 1 and "nothing would be applied" in tried.out and contents_of(tiny_base) == before
    assert tellfin("--base", tiny_base, "import", path, "--dry-run", "--skip-rejected", *BY).code == 0
    ran = tellfin("--base", tiny_base, "import", path, "--skip-rejected", *BY)
    assert ran.code == 0 and "done as change 1" in ran.out
    node = Index(tiny_base).node("st:vennia-alta.maximum-length.adult.vell-2001")
    assert node is not None and [v.value for v in node.props["tf:low"]] == ["300.0"]  # type: ignore[union-attr]
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_a_row_that_the_base_does_not_bear_is_rejected(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """Arithmetic and doubling are found row by row as well."""
    path = sheet(tmp_path, "Vennia alta,maximum-length,340-300,,,vell-2001,read,",
                 "Vennia alta,depth-ratio,3.1,,female,vell-2001,read,",
                 "Vennia alta,depth-ratio,3.1,,female,vell-2001,read,")
    ran = tellfin("--base", tiny_base, "import", path, *BY)
    assert "row 2, column value: " in ran.out and "order of numbers" in ran.out and ran.code == 1, ran


def test_a_sheet_takes_the_words_of_the_commands(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """Columns named place and source are read as region and source_key."""
    path = tmp_path / "ranges.csv"
    path.write_text("taxon,place,status,source,basis\nOmmaria lenta,vennimoor,introduced,memory,memory\n")
    ran = tellfin("--base", tiny_base, "import", path, *BY)
    assert ran.code == 0 and "ranges: 1 new" in ran.out, ran
    assert "range:ommaria-lenta.vennimoor.memory" in Index(tiny_base)


@pytest.mark.parametrize("form", ["names", "ranges", "sources"])
def test_the_shipped_sheets_come_back_the_same(form: str, tmp_path: Path, tellfin: Tellfin) -> None:
    """What the shipped base gives as names, ranges or sources changes nothing when it is read again."""
    tellfin("new-base", tmp_path / "base")
    tellfin("--base", tmp_path / "base", "export", tmp_path / "rows.csv", "--form", form)
    ran = tellfin("--base", tmp_path / "base", "import", tmp_path / "rows.csv", "--dry-run")
    assert ran.code == 0 and ran.out.startswith(f"{form}: 0 new, 0 changed, "), ran


@pytest.mark.parametrize(("rows", "said"), [
    ("taxon,name,language,source,basis\nVennia alta,<i>x</i>,en,memory,memory", "column name: '<i>x</i>': is no name"),
    ("taxon,name,language,source,basis\nVennia alta,x,english,memory,memory", "column language: 'english': is no lang"),
    ("taxon,name,kind,source,basis\nVennia alta,x,nickname,memory,memory", "column kind: 'nickname': is a value out"),
    ("taxon,name,source,basis\nVennia alta,x,vell-2001,memory", "column basis: 'basis memory from src:vell-2001'"),
    ("taxon,region,status,source,basis\nVennia alta,vennimoor,natve,memory,memory", "column status: 'natve': is a val"),
    ("source_key,kind,title\nvell-2003,bok,Vennets", "column kind: 'bok': is a value outside its list"),
    (HEADER + "Vennia alta,maximum-length,9-8,,,memory,memory,", "column value: 'tf:low 9 above tf:high 8'")])
def test_a_fault_is_told_by_its_column(rows: str, said: str, tiny_base: Path, tmp_path: Path,
                                       tellfin: Tellfin) -> None:
    """A row at fault names the column of the sheet and says what may stand there."""
    path = tmp_path / "rows.csv"
    path.write_text(rows + "\n")
    ran = tellfin("--base", tiny_base, "import", path, *BY)
    assert ran.code == 1 and f"row 2, {said}" in ran.out, ran


def test_a_group_is_exported_by_its_name(tellfin: Tellfin) -> None:
    """--taxon and --group take a group in singular or plural: the rows of its members and nobody else's."""
    ran = tellfin("export", "-", "--form", "names", "--taxon", "crappies")
    assert ran.code == 0 and {row.split(",")[0].split()[0] for row in ran.out.splitlines()[1:]} == {"Pomoxis"}, ran
    assert tellfin("export", "-", "--form", "names", "--group", "crappie").out == ran.out
    assert tellfin("export", "-", "--group", "nonsuches").code == 1


def test_10_12_stays_a_range_in_every_form(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """CSV, TSV and XLSX keep 10-12; a cell that a table program turned into a date is rejected as such."""
    row = ["Vennia alta", "gill-rakers", "10-12", "usually", "juvenile", "vell-2001", "read", ""]
    (tmp_path / "a.tsv").write_text("\t".join(HEADER.strip().split(",")) + "\n" + "\t".join(row) + "\n")
    book = openpyxl.Workbook()
    book.active.append(HEADER.strip().split(","))  # type: ignore[union-attr]
    book.active.append([c if c != "juvenile" else "adult" for c in row])  # type: ignore[union-attr]
    book.active.append([*row[:2], dt.date(2026, 12, 10), *row[3:]])  # type: ignore[union-attr]
    book.active.append([*row[:2], "=1+1", *row[3:]])  # type: ignore[union-attr]
    book.save(tmp_path / "b.xlsx")
    assert tellfin("--base", tiny_base, "import", tmp_path / "a.tsv", *BY).code == 0
    ran = tellfin("--base", tiny_base, "import", tmp_path / "b.xlsx", "--skip-rejected", *BY)
    assert ran.code == 0 and "the cell is a date" in ran.out and "a formula" in ran.out, ran
    for key in ("juvenile", "adult"):
        node = Index(tiny_base).node(f"st:vennia-alta.gill-rakers.{key}.vell-2001")
        assert node is not None and [v.value for v in node.props["tf:high"]] == ["12.0"]  # type: ignore[union-attr]


@pytest.mark.parametrize("form", ["facts", "darwin-core", "names", "ranges", "sources"])
@pytest.mark.parametrize("suffix", [".csv", ".tsv", ".xlsx"])
def test_what_is_exported_is_the_same_when_imported(form: str, suffix: str, tiny_base: Path, tmp_path: Path,
                                                    tellfin: Tellfin) -> None:
    """Exported rows are all found to stand in the base already, and a second export has the same bytes."""
    first, second = tmp_path / f"one{suffix}", tmp_path / f"two{suffix}"
    assert tellfin("--base", tiny_base, "export", first, "--form", form).code == 0
    ran = tellfin("--base", tiny_base, "import", first, *BY)
    assert ran.code == 0 and "0 new, 0 changed" in ran.out and "0 rejected" in ran.out, ran
    tellfin("--base", tiny_base, "export", second, "--form", form)
    assert first.read_bytes() == second.read_bytes()


def test_facts_taken_out_come_back_the_same(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """A sheet brings statements back under the same identifiers with the same content."""
    tellfin("--base", tiny_base, "export", tmp_path / "facts.csv", "--taxon", "vennia")
    before = {k: Index(tiny_base).node(k) for k in Index(tiny_base).ids("st") if "vennia" in k}
    path = tiny_base / "taxa/vennidae/vennia.ttl"
    blocks = [b for b in path.read_text().split("\n\n") if not b.startswith("st:")]
    path.write_text("\n\n".join(blocks).rstrip("\n") + "\n")
    assert tellfin("--base", tiny_base, "format", tiny_base).code == 0
    assert tellfin("--base", tiny_base, "import", tmp_path / "facts.csv", *BY).code == 0
    quiet = ("prov:wasAttributedTo", "dcterms:created")
    for key, old in before.items():
        new = Index(tiny_base).node(key)
        assert new is not None and old is not None, key
        assert {p: v for p, v in new.props.items() if p not in quiet} == {
            p: v for p, v in old.props.items() if p not in quiet}


def test_a_scope_added_by_hand_keeps_the_statement(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """A statement narrowed in the file keeps its identifier; the sheet of it is still the same, not said twice."""
    path = tiny_base / "taxa/vennidae/vennia.ttl"
    head, found, rest = path.read_text().partition("st:vennia-rubra.gill-rakers.any.vell-2001\n")
    path.write_text(head + found + rest.replace("    .\n", '    tf:scopeText "brood pond" ;\n    .\n', 1))
    assert tellfin("--base", tiny_base, "format", tiny_base).code == 0
    assert tellfin("--base", tiny_base, "export", tmp_path / "facts.csv").code == 0
    assert "brood pond" in (tmp_path / "facts.csv").read_text()
    ran = tellfin("--base", tiny_base, "import", tmp_path / "facts.csv", *BY)
    assert ran.code == 0 and "0 new, 0 changed" in ran.out and "0 rejected" in ran.out, ran


def test_a_whole_base_goes_out_and_comes_back_byte_for_byte(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """Export and import into an empty base give the same graph and the same bytes, history included."""
    tellfin("--base", tiny_base, "correct", "st:vennia-rubra.gill-rakers.any.vell-2001", "value=9-11", *BY)
    assert tellfin("--base", tiny_base, "export", tmp_path / "sheets", "--form", "whole").code == 0
    ran = tellfin("--base", tmp_path / "copy", "import", tmp_path / "sheets")
    assert ran.code == 0, ran
    assert contents_of(tmp_path / "copy") == contents_of(tiny_base)


@pytest.mark.long
def test_a_sheet_of_thousands_of_rows_is_all_the_same(tmp_path: Path, tellfin: Tellfin) -> None:
    """The shipped facts, exported and imported into a copy, are all the same: nothing is new, changed or rejected."""
    base = tmp_path / "base"
    assert tellfin("new-base", base).code == 0
    tellfin("--base", base, "export", tmp_path / "facts.csv")
    ran = tellfin("--base", base, "import", tmp_path / "facts.csv", *BY)
    assert "0 new, 0 changed" in ran.out and "0 rejected" in ran.out, ran.out[-2000:]
