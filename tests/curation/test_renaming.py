"""Rename, split and lump: identifiers stay, old names lead on, records wait for a person."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.curation.check import check_folder
from assistant.curation.view import many, one
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from tests.helpers.bases import Tellfin, contents_of, knowledge_of

BY = ("--by", "Ansa Merrow", "--why", "Vell revised the genus", "--from-source", "vell-2001")
SPLIT = ("split", "ember vennet", "--into", "Vennia rubra=true ember vennet", "--into", "Vennia aurea=gilt vennet", *BY)


def test_a_renamed_taxon_keeps_its_identifier(tiny_base: Path, tellfin: Tellfin) -> None:
    """The label and the scientific name change, both old ones stay as names, the paper is named."""
    ran = tellfin("--base", tiny_base, "rename", "tall vennet", "--scientific", "Altavennia alta", "--label",
                  "steep vennet", *BY)
    assert ran.code == 0, ran
    kb = knowledge_of(tiny_base)
    taxon = kb.taxon("vennia-alta")
    assert (taxon.scientific, taxon.label, taxon.according_to) == ("Altavennia alta", "steep vennet", "O. Vell 2001")
    kinds = {n.text: n.kind for n in kb.names("vennia-alta")}
    assert kinds["Vennia alta"] == "synonym" and kinds["tall vennet"] == "former"
    assert kinds["steep vennet"] == "accepted" and check_folder(tiny_base, shipped_shapes()).passed
    assert tellfin("--base", tiny_base, "history", "Vennia alta").out.splitlines()[-1] == "1 change"


def test_a_new_english_name_leaves_the_source_of_the_scientific_one(tiny_base: Path, tellfin: Tellfin) -> None:
    """Where only the label changes, whose concept the scientific name stands for is told as before."""
    tellfin("--base", tiny_base, "rename", "tall vennet", "--scientific", "Altavennia alta", *BY)
    ran = tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "steep vennet", *BY[:5], "memory")
    assert ran.code == 0 and "according to" not in ran.out, ran
    taxon = knowledge_of(tiny_base).taxon("vennia-alta")
    assert (taxon.label, taxon.according_to) == ("steep vennet", "O. Vell 2001")


def test_a_rename_names_a_source_that_is_there(tiny_base: Path, tellfin: Tellfin) -> None:
    """A source that the base lacks is refused though only the label changes; a rename without a name says so first."""
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "redfin", *BY[:5], "nobody-1999")
    assert ran.code == 1 and "there is no source 'src:nobody-1999'" in ran.err, ran
    ran = tellfin("--base", tiny_base, "rename", "tall vennet", *BY[:2])
    assert "a rename needs a new name" in ran.err and contents_of(tiny_base) == before


def test_a_former_label_keeps_where_it_is_used(tiny_base: Path, tellfin: Tellfin) -> None:
    """The name record of the old label changes its kind and nothing else."""
    index = Index(tiny_base)
    key = next(k for k in index.ids("name", "vennia-alta") if (n := index.node(k)) and one(n, "tf:nameKind") ==
               "tf:accepted")
    tellfin("--base", tiny_base, "correct", key, "regions=vennimoor", *BY)
    tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "steep vennet", *BY)
    node = Index(tiny_base).node(key)
    assert node is not None and (one(node, "tf:nameKind"), one(node, "dcterms:spatial")) == (
        "tf:former", "place:vennimoor")


def test_a_former_label_leads_plainly_to_its_fish(tiny_base: Path, tellfin: Tellfin) -> None:
    """Though another fish is loosely called so, the old label means the renamed one, in questions and in commands,
    until a fish is named so by right; a name taken back is the accepted one again."""
    tellfin("--base", tiny_base, "add", "name", "taxon=ember vennet", "text=tall vennet", "kind=ambiguous",
            "language=en", "source=vell-2001", "basis=read", "--by", "Ansa Merrow")
    tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "steep vennet", *BY)
    told = tellfin("--base", tiny_base, "ask", "what is a tall vennet").out
    assert told.startswith("The steep vennet"), told
    assert tellfin("--base", tiny_base, "history", "tall vennet").out.splitlines()[-1] == "1 change"
    assert knowledge_of(tiny_base).spoken("tall vennet") == (
        ("taxon", "vennia-alta", "accepted"), ("taxon", "vennia-rubra", "ambiguous"))
    tellfin("--base", tiny_base, "rename", "ember vennet", "--label", "tall vennet", *BY)
    hows = {(thing, how) for _, thing, how in knowledge_of(tiny_base).spoken("tall vennet")}
    assert hows == {("vennia-alta", "vernacular"), ("vennia-rubra", "accepted")}
    tellfin("--base", tiny_base, "rename", "taxon:vennia-alta", "--label", "high vennet", *BY)
    tellfin("--base", tiny_base, "rename", "taxon:vennia-alta", "--label", "steep vennet", *BY)
    kinds = {n.text: n.kind for n in knowledge_of(tiny_base).names("vennia-alta")}
    assert kinds["steep vennet"] == "accepted" and kinds["high vennet"] == "former"
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_the_name_of_a_fish_joined_to_another_leads_to_it(tiny_base: Path, tellfin: Tellfin) -> None:
    """After a lump the old label means the kept fish, though a third one is loosely called so."""
    tellfin("--base", tiny_base, "add", "name", "taxon=slow ommar", "text=tall vennet", "kind=ambiguous",
            "language=en", "source=vell-2001", "basis=read", "--by", "Ansa Merrow")
    tellfin("--base", tiny_base, "lump", "ember vennet", "tall vennet", *BY)
    told = tellfin("--base", tiny_base, "ask", "what is a tall vennet").out
    assert told.startswith("The ember vennet"), told


def test_nothing_new_is_told_of_a_retired_fish(tiny_base: Path, tellfin: Tellfin) -> None:
    """A new record of a fish that was joined to another is refused and names what it became."""
    tellfin("--base", tiny_base, "lump", "ember vennet", "tall vennet", *BY)
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, "add", "range", "taxon=tall vennet", "place=vennimoor", "status=native",
                  "source=memory")
    assert ran.code == 1 and "is retired; it became taxon:vennia-rubra" in ran.err, ran
    assert contents_of(tiny_base) == before


@pytest.mark.parametrize(("label", "said"), [
    ("<b>vennet</b>", "an angle bracket stands in it"), ("ven\x1b[31mnet", "a control character stands in it"),
    ("ven\nnet", "a control character stands in it"), ("12", "no letter stands in it")])
def test_what_can_be_no_name_is_refused_in_one_line(label: str, said: str, tiny_base: Path, tellfin: Tellfin) -> None:
    """A rename, a part of a split and a new name are refused before anything is laid over the base; check finds it."""
    before = contents_of(tiny_base)
    for words in (("rename", "tall vennet", "--label", label, *BY),
                  ("split", "tall vennet", "--into", f"Vennia x={label}", "--into", "Vennia y=z", *BY)):
        ran = tellfin("--base", tiny_base, *words)
        assert ran.code == 2 and ran.err.splitlines()[0] == f"tellfin: {label!r} is no name: {said}", ran
    ran = tellfin("--base", tiny_base, "add", "name", "taxon=tall vennet", f"text={label}", "kind=vernacular",
                  "language=en", "source=vell-2001", "basis=read", "--by", "Ansa Merrow")
    assert ran.code == 1 and said in ran.err and contents_of(tiny_base) == before
    if label.isprintable():
        file = next(p for p in tiny_base.rglob("*.ttl") if b'"tall vennet"' in p.read_bytes())
        file.write_text(file.read_text("utf-8").replace('"tall vennet"', f'"{label}"'), "utf-8")
        assert any(said in f.expected for f in check_folder(tiny_base, shipped_shapes()).findings)


def test_a_change_of_names_needs_its_paper(tiny_base: Path, tellfin: Tellfin) -> None:
    """Without a source, or with a name that is none, nothing is renamed."""
    before = contents_of(tiny_base)
    assert tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "x", *BY[:4]).code == 2
    assert tellfin("--base", tiny_base, "rename", "tall vennet", "--scientific", "vennia 7", *BY).code == 2
    assert tellfin("--base", tiny_base, "rename", "tall vennet", "--label", "x", *BY[:5], "nobody-1999").code == 1
    assert contents_of(tiny_base) == before


def test_no_two_taxa_in_use_share_a_name(tiny_base: Path, tellfin: Tellfin) -> None:
    """A label or scientific name of another taxon is refused; a check finds it where files were written by hand."""
    before = contents_of(tiny_base)
    for option, name in (("--scientific", "Vennia rubra"), ("--label", "Ember Vennet")):
        ran = tellfin("--base", tiny_base, "rename", "tall vennet", option, name, *BY)
        assert ran.code == 1 and "which is that of taxon:vennia-rubra" in ran.out, ran
    assert contents_of(tiny_base) == before
    file = next(p for p in tiny_base.rglob("*.ttl") if b'"Vennia rubra"' in p.read_bytes())
    file.write_bytes(file.read_bytes().replace(b'scientificName "Vennia rubra"', b'scientificName "Vennia alta"'))
    faults = [f for f in check_folder(tiny_base, shipped_shapes()).findings if f.rule == "name of another taxon"]
    assert len(faults) == 1 and faults[0].severity == "error"


def test_what_waits_after_a_split_is_told(tiny_base: Path, tellfin: Tellfin) -> None:
    """The command and the check say how many records say nothing of the parts yet."""
    assert "12 records wait on retired taxa" in tellfin("--base", tiny_base, *SPLIT).out
    found = [f for f in check_folder(tiny_base, shipped_shapes()).findings if f.rule == "records wait"]
    assert [f.severity for f in found] == ["hint"] and "12 records wait" in found[0].found
    assert "\nhint: records wait (1)" in "\n" + tellfin("--base", tiny_base, "check", "--all").out


def test_a_split_is_not_undone_under_later_decisions(tiny_base: Path, tellfin: Tellfin) -> None:
    """What was given to a part rests on it: the change to undo first is named."""
    tellfin("--base", tiny_base, *SPLIT)
    key = "st:vennia-rubra.gill-rakers.any.vell-2001"
    assert tellfin("--base", tiny_base, "split", "--decide", key, "--to", "gilt vennet", *BY).code == 0
    ran = tellfin("--base", tiny_base, "undo", "1", "--why", "too early")
    assert ran.code == 1 and "undo change 2 first" in ran.err and ran.out == ""
    assert tellfin("--base", tiny_base, "undo", "2", "--why", "too early").code == 0
    assert tellfin("--base", tiny_base, "undo", "1", "--why", "too early").code == 0


def test_a_split_leaves_records_on_the_wide_concept(tiny_base: Path, tellfin: Tellfin) -> None:
    """Parts are new taxa, the wide one is retired and leads to them, its records wait, its names lead to both."""
    ran = tellfin("--base", tiny_base, *SPLIT)
    assert ran.code == 0, ran
    kb = knowledge_of(tiny_base)
    wide = kb.taxon("vennia-rubra")
    assert wide.deprecated and wide.replaced_by == ("vennia-aurea", "vennia-rubra-narrow")
    assert "vennia-rubra" not in kb.species and {"vennia-aurea", "vennia-rubra-narrow"} <= set(kb.species)
    assert len(kb.statements("vennia-rubra")) == 8
    for part in wide.replaced_by:
        assert ("ember vennet", "ambiguous") in {(n.text, n.kind) for n in kb.names(part)}
    queue = tellfin("--base", tiny_base, "split", "--queue").out
    assert "st:vennia-rubra.gill-rakers.any.vell-2001" in queue and "may belong to taxon:vennia-aurea" in queue
    assert queue.splitlines()[-1] == "12 records waiting"
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_undecided_records_are_given_to_a_part_by_a_person(tiny_base: Path, tellfin: Tellfin) -> None:
    """A decision makes the statement of the part, keeps the old one as retracted, and shortens the queue."""
    tellfin("--base", tiny_base, *SPLIT)
    key = "st:vennia-rubra.gill-rakers.any.vell-2001"
    ran = tellfin("--base", tiny_base, "split", "--decide", key, "--to", "gilt vennet", *BY)
    assert ran.code == 0, ran
    index = Index(tiny_base)
    new, old = index.node("st:vennia-aurea.gill-rakers.any.vell-2001"), index.node(key)
    assert new is not None and many(new, "tf:low") == ["8.0"] and old is not None
    assert "taxon:vennia-aurea" in one(old, "tf:retractedBecause")
    assert tellfin("--base", tiny_base, "split", "--queue").out.splitlines()[-1] == "11 records waiting"
    again = tellfin("--base", tiny_base, "split", "--decide", key, "--to", "gilt vennet", *BY)
    assert again.code == 1 and "not waiting" in again.err
    stay = "alike:vennia-rubra.vennia-alta"
    assert tellfin("--base", tiny_base, "split", "--decide", stay, *BY).code == 0
    assert tellfin("--base", tiny_base, "split", "--queue").out.splitlines()[-1] == "10 records waiting"
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_undoing_a_split_empties_the_queue(tiny_base: Path, tellfin: Tellfin) -> None:
    """A split taken back leaves the files as they were and nobody waiting."""
    before = contents_of(tiny_base)
    tellfin("--base", tiny_base, *SPLIT)
    assert tellfin("--base", tiny_base, "undo", "1", "--why", "too early").code == 0
    kept = {k: v for k, v in contents_of(tiny_base).items() if not k.startswith(("changes/", "agents/"))}
    assert kept == {k: v for k, v in before.items() if not k.startswith("agents/")}
    assert tellfin("--base", tiny_base, "split", "--queue").out.strip() == "0 records waiting"


def test_a_lump_keeps_both_names(tiny_base: Path, tellfin: Tellfin) -> None:
    """The joined taxon is retired, its scientific and English names lead to the kept one, its records wait."""
    ran = tellfin("--base", tiny_base, "lump", "ember vennet", "tall vennet", *BY)
    assert ran.code == 0, ran
    kb = knowledge_of(tiny_base)
    assert kb.taxon("vennia-alta").replaced_by == ("vennia-rubra",)
    kinds = {n.text: n.kind for n in kb.names("vennia-rubra")}
    assert kinds["Vennia alta"] == kinds["Vennia celsa"] == "synonym" and kinds["tall vennet"] == "former"
    told = tellfin("--base", tiny_base, "ask", "what is a tall vennet").out
    assert "several fishes" not in told and "ember vennet" in told
    assert tellfin("--base", tiny_base, "split", "--queue").out.splitlines()[-1] == "8 records waiting"
    assert check_folder(tiny_base, shipped_shapes()).passed
