"""One curator's months in an hour: every step from the first look at a taxon to a published version."""

# ruff: noqa: E501
from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.helpers.bases import Tellfin, contents_of, knowledge_of

BY = ("--by", "Ansa Merrow")


def good(tellfin: Tellfin, *words: object, stdin: str = "") -> str:
    """Run a command that must succeed and give what it printed."""
    ran = tellfin(*words, stdin=stdin)
    assert ran.code == 0, (words, ran)
    return ran.out


@pytest.fixture()
def base(tiny_base: Path) -> Path:
    """The base that the curator takes over."""
    return tiny_base


def test_from_first_look_to_published_version(base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """The whole journey: look, add, disagree, import, check, rename, split, cross, rule, replay, publish."""
    at = ("--base", base)
    first_version = knowledge_of(base).version

    # opens a taxon: each value with source, who entered it, when, on which basis
    table = good(tellfin, *at, "query", "--format", "csv", """
        SELECT ?character ?source ?by ?on ?basis WHERE {
          ?st tf:taxon taxon:vennia-rubra ; tf:character ?character ; dcterms:source ?source ; tf:basis ?basis ;
              prov:wasAttributedTo ?by ; dcterms:created ?on } ORDER BY ?character ?source""")
    assert len(table.splitlines()) == 9 and "source/vell-2001" in table and "2026-01-05" in table

    # adds a value from a key: range, unit, stage, sex, region; two sources disagree, both stay, one is preferred
    good(tellfin, *at, "add", "source", "id=merrow-2019", "kind=paper", "title=A key to vennets", "year=2019", *BY)
    good(tellfin, *at, "add", "statement", "taxon=ember vennet", "character=maximum-length", "value=7-9 in",
         "scope=adult; female; region=little-ommary", "source=merrow-2019", "basis=read", "page=12", *BY)
    good(tellfin, *at, "add", "statement", "taxon=ember vennet", "character=gill-rakers", "value=12-13",
         "source=merrow-2019", "basis=read", "page=14", *BY)
    assert "statements that exclude one another, none preferred (2)" in good(tellfin, *at, "gaps")
    good(tellfin, *at, "correct", "st:vennia-rubra.gill-rakers.any.merrow-2019", "preferred=yes",
         "because=forty fish against six", "--why", "larger sample", *BY)
    assert "none preferred (0)" in good(tellfin, *at, "gaps")
    inches = knowledge_of(base).record_at("st:vennia-rubra.maximum-length.female-adult-little-ommary.merrow-2019")
    assert (inches.low, inches.high, inches.unit) == (177.8, 228.6, "MilliM")

    # imports a sheet: a report before anything changes, nothing applied by halves
    sheet = tmp_path / "key.csv"
    sheet.write_text("taxon,character,value,frequency,scope,source_key,basis,note\n"
                     "Vennia alta,gill-rakers,11-14,usually,,vell-2001,read,\n"
                     "Vennia alta,depth-ratio,1.9-2.3,usually,,vell-2001,read,\n"
                     "Vennia alta,maximum-length,10-12 in,,,merrow-2019,read,\n"
                     "Vennia alta,gill-rakers,12-Dec,usually,,merrow-2019,read,\n")
    before = contents_of(base)
    report = tellfin(*at, "import", sheet, *BY)
    assert report.code == 1 and "1 new, 1 changed, 1 same, 1 rejected" in report.out
    assert "row 5, column value: '12-Dec'" in report.out and contents_of(base) == before
    sheet.write_text(sheet.read_text().replace("12-Dec", "12"))
    assert "2 new, 1 changed, 1 same, 0 rejected" in good(tellfin, *at, "import", sheet, *BY)

    # runs validation: shapes and arithmetic fail with thing, value, expectation and place
    assert good(tellfin, *at, "check").splitlines()[-1].startswith("passed: 0 errors")
    refused = tellfin(*at, "correct", "st:vennia-alta.gill-rakers.any.vell-2001", "low=19", "--why", "x", *BY)
    assert refused.code == 1 and "found tf:low 19 above tf:high 14; expected tf:low at most tf:high" in refused.out

    # names: a rename keeps the identifier, a split leaves records waiting, a person decides, near names are offered
    paper = ("--why", "revision of the genus", "--from-source", "merrow-2019", *BY)
    good(tellfin, *at, "rename", "tall vennet", "--scientific", "Vennia procera", *paper)
    good(tellfin, *at, "split", "ember vennet", "--into", "Vennia rubra=true ember vennet",
         "--into", "Vennia aurea=gilt vennet", *paper)
    assert "may belong to taxon:vennia-aurea, taxon:vennia-rubra-narrow" in good(tellfin, *at, "split", "--queue")
    good(tellfin, *at, "split", "--decide", "st:vennia-rubra.side-marks.any.vell-2001", "--to", "gilt vennet",
         "--to", "true ember vennet", *paper)
    near = tellfin(*at, "add", "name", "taxon=gilt venet", "text=x", "language=en", "kind=vernacular",
                   "source=merrow-2019", "basis=read", *BY)
    assert near.code == 1 and "did you mean" in near.err

    # a cross by its parents, a rule with its year
    good(tellfin, *at, "add", "taxon", "scientific=Vennia aurea x Vennia procera", "rank=hybrid", "label=gilt-tall cross",
         "parents=vennia-aurea|vennia-alta", "source=merrow-2019", "basis=read", "occurrence=rare", "origin=natural", *BY)
    good(tellfin, *at, "add", "rule-set", "id=vnm-2026", "label=Vennimoor 2026", "jurisdiction=vennimoor", "unit=CentiM",
         "valid-from=2026-01-01", "valid-through=2026-12-31", "as-of=2026-01-02", "invented=yes", "source=common-practice",
         "basis=common-practice", *BY)
    assert "rule:vnm-2026 (through 2026-12-31)" in good(tellfin, *at, "gaps", "--date", "2027-01-01")

    # "why did it say so yesterday": the version of an answer is brought back
    good(tellfin, *at, "history", "--at", first_version, "--into", tmp_path / "then")
    assert knowledge_of(tmp_path / "then").version == first_version
    assert knowledge_of(tmp_path / "then").taxon("vennia-rubra").label == "ember vennet"

    # a slip is undone; a version is published with its changes in words and a check that passed
    good(tellfin, *at, "retract", "st:ommaria-lenta.fin-colour.any.vell-2001", "--why", "slip", *BY)
    last = good(tellfin, *at, "history").split(maxsplit=1)[0]
    good(tellfin, *at, "undo", last, "--why", "not a slip after all")
    words = good(tellfin, "compare-bases", tmp_path / "then", base)
    assert "Vennia alta → Vennia procera" in words and "retracted: ember vennet, marks on the side" in words
    done = json.loads(good(tellfin, *at, "check", "--format", "json"))
    assert done["passed"] and done["checked"]["taxa"] == 9
    good(tellfin, *at, "export", tmp_path / "facts.csv")
    once = (tmp_path / "facts.csv").read_bytes()
    good(tellfin, *at, "export", tmp_path / "facts.csv")
    assert (tmp_path / "facts.csv").read_bytes() == once
