"""Adding, correcting and retracting records of a base of one's own."""

from __future__ import annotations

import io
import json
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.curation.check import check_folder
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from tests.helpers.bases import Tellfin, contents_of

NEW = ("add", "statement", "taxon=ember vennet", "character=jaw-reach", "value=past-eye", "source=vell-2001",
       "basis=read", "scope=adult; male", "frequency=sometimes")
KEY = "st:vennia-rubra.jaw-reach.male-adult.vell-2001"
BY = ("--by", "Ansa Merrow", "--why", "seen on plate 4")


def test_an_added_statement_is_one_block_in_its_genus_file(tiny_base: Path, tellfin: Tellfin) -> None:
    """Add touches the genus file and the history only, and the base still passes."""
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, *NEW, *BY)
    assert ran.code == 0 and "done as change 1" in ran.out, ran
    after = contents_of(tiny_base)
    changed = {k for k in after if before.get(k) != after[k]}
    assert changed == {"taxa/vennidae/vennia.ttl", "agents/agents.ttl",
                       *(k for k in after if k.startswith("changes/"))}
    old, new = (x["taxa/vennidae/vennia.ttl"].decode().splitlines() for x in (before, after))
    assert [line for line in old if line not in new] == []
    assert len(new) - len(old) == 14
    node = Index(tiny_base).node(KEY)
    assert node is not None and node.props["prov:wasAttributedTo"] == ["agent:ansa-merrow"]
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_a_dry_run_says_the_change_and_writes_nothing(tiny_base: Path, tellfin: Tellfin) -> None:
    """--dry-run shows words and findings; the bytes stay."""
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, *NEW, *BY, "--dry-run")
    assert ran.code == 0 and "ember vennet, reach of the jaw" in ran.out and "nothing was written" in ran.out
    assert contents_of(tiny_base) == before and not (tiny_base / "changes").exists()


def test_a_corrected_value_keeps_its_identifier(tiny_base: Path, tellfin: Tellfin) -> None:
    """A new value is told as old → new with its source, and is a two-line diff."""
    key = "st:vennia-rubra.gill-rakers.any.vell-2001"
    before = contents_of(tiny_base)["taxa/vennidae/vennia.ttl"].decode().splitlines()
    ran = tellfin("--base", tiny_base, "correct", key, "value=9-11", *BY)
    assert "gill rakers: 8–10 → 9–11, source vell-2001" in ran.out, ran
    after = contents_of(tiny_base)["taxa/vennidae/vennia.ttl"].decode().splitlines()
    assert [a for a, b in zip(before, after, strict=True) if a != b] == ["    tf:low 8.0 ;", "    tf:high 10.0 ;"]


def test_a_correction_that_says_something_else_replaces_the_statement(tiny_base: Path, tellfin: Tellfin) -> None:
    """Another scope is another statement: the old one is kept as retracted, the new one has its own identifier."""
    key = "st:vennia-rubra.fin-colour.any.vell-2001"
    ran = tellfin("--base", tiny_base, "correct", key, "scope=adult", *BY)
    assert ran.code == 0, ran
    index = Index(tiny_base)
    old, new = index.node(key), index.node("st:vennia-rubra.fin-colour.adult.vell-2001")
    assert old is not None and "prov:invalidatedAtTime" in old.props and new is not None
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_a_retracted_statement_stays_with_date_and_reason(tiny_base: Path, tellfin: Tellfin) -> None:
    """Retract keeps a statement but takes it out of the records; a range is taken out of its file."""
    key = "st:vennia-alta.jaw-reach.any.vell-2001"
    assert tellfin("--base", tiny_base, "retract", key, *BY).code == 0
    node = Index(tiny_base).node(key)
    assert node is not None and node.props["tf:retractedBecause"][0].value == "seen on plate 4"  # type: ignore[union-attr]
    assert tellfin("--base", tiny_base, "retract", "range:vennia-alta.vennimoor.vell-2001", *BY).code == 0
    assert "range:vennia-alta.vennimoor.vell-2001" not in Index(tiny_base)
    again = tellfin("--base", tiny_base, "retract", key, *BY)
    assert again.code == 1 and "retracted already" in again.err


def test_what_others_point_to_cannot_be_taken_out(tiny_base: Path, tellfin: Tellfin) -> None:
    """Retracting a source that statements rest on is refused and names them."""
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, "retract", "src:vell-2001", *BY)
    assert ran.code == 1 and "cannot go while other records name it (34" in ran.err and "lump" not in ran.err
    fish = tellfin("--base", tiny_base, "retract", "taxon:vennia-alta", *BY)
    assert fish.code == 1 and "tellfin lump" in fish.err and len(fish.err.splitlines()) == 2
    assert contents_of(tiny_base) == before


def test_the_last_accepted_name_cannot_go(tiny_base: Path, tellfin: Tellfin) -> None:
    """A change is also checked against what it belongs to: a species keeps its accepted name."""
    ran = tellfin("--base", tiny_base, "retract", "name:vennia-alta.tall-vennet", *BY)
    assert ran.code == 1 and "names without an accepted one" in ran.out


def test_names_ranges_look_alikes_sources_and_rules_can_be_added(tiny_base: Path, tellfin: Tellfin) -> None:
    """Every kind of record is added by its fields."""
    for words in (("source", "id=merrow-2019", "kind=paper", "title=Notes on vennets", "year=2019"),
                  ("name", "taxon=vennia-rubra", "text=emberling", "language=en", "kind=vernacular",
                   "source=merrow-2019", "basis=read"),
                  ("range", "taxon=ommaria-lenta", "place=little-ommary", "status=stocked", "source=merrow-2019",
                   "basis=read"),
                  ("look-alike", "taxon=vennia-alta", "other=ommaria-lenta", "separable=hard", "source=merrow-2019",
                   "basis=read"),
                  ("rule-set", "id=vnm-2026", "label=Vennimoor 2026", "jurisdiction=vennimoor", "unit=CentiM",
                   "valid-from=2026-01-01", "valid-through=2026-12-31", "as-of=2026-01-02", "invented=yes",
                   "source=common-practice", "basis=common-practice")):
        ran = tellfin("--base", tiny_base, "add", *words, *BY)
        assert ran.code == 0, (words, ran)
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_patches_in_json_and_turtle(tiny_base: Path, tellfin: Tellfin) -> None:
    """A patch on standard input may add, correct and retract at once; Turtle needs no prefix lines."""
    patch = {"add": [{"kind": "statement", "taxon": "vennia-alta", "character": "maximum-length", "value": "300-340 mm",
                      "source": "vell-2001", "basis": "read"}],
             "correct": [{"id": "st:vennia-alta.gill-rakers.any.vell-2001", "value": "12-14", "page": 12}],
             "retract": [{"id": "st:vennia-rubra.gill-rakers.any.memory", "because": "read since"}],
             "why": "second reading"}
    ran = tellfin("--base", tiny_base, "add", "--patch", "-", "--by", "Ansa Merrow", stdin=json.dumps(patch))
    assert ran.code == 0 and "11–14 → 12–14" in ran.out, ran
    turtle = ('st:vennia-alta.jaw-reach.juvenile.vell-2001 a tf:StateStatement ; tf:taxon taxon:vennia-alta ; '
              'tf:character char:jaw-reach ; tf:state state:jaw-reach.to-eye ; dwc:lifeStage "juvenile" ; '
              'dcterms:source src:vell-2001 ; tf:basis tf:read .')
    assert tellfin("--base", tiny_base, "add", "--patch", "-", *BY, stdin=turtle).code == 0
    fix = 'st:vennia-alta.jaw-reach.juvenile.vell-2001 bibo:locator "p. 9" .'
    ran = tellfin("--base", tiny_base, "correct", "--patch", "-", *BY, stdin=fix)
    assert ran.code == 0 and "page (none) → p. 9" in ran.out, ran
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_a_new_species_takes_its_label_as_its_accepted_name(tiny_base: Path, tellfin: Tellfin) -> None:
    """One line adds a fish that can then be asked about; a name given in the same patch is not doubled."""
    ran = tellfin("--base", tiny_base, "add", "taxon", "scientific=Vennia nova", "rank=species", "label=moon vennet",
                  "parent=Vennia", "source=memory", *BY)
    assert ran.code == 0 and "new taxon: taxon:vennia-nova (moon vennet)" in ran.out and "accepted" in ran.out, ran
    turtle = """taxon:vennia-serena a dwc:Taxon ; dwc:scientificName "Vennia serena" ; skos:prefLabel "sun vennet"@en ;
        dwc:taxonRank "species" ; tf:parent taxon:vennia ; dcterms:source src:memory ; tf:basis tf:memory .
        name:vennia-serena.sun-vennet a tf:Name ; tf:nameOf taxon:vennia-serena ; dcterms:language "en" ;
        skosxl:literalForm "sun vennet"@en ; tf:nameKind tf:accepted ; dcterms:source src:memory ;
        tf:basis tf:memory ."""
    assert tellfin("--base", tiny_base, "add", "--patch", "-", *BY, stdin=turtle).code == 0
    index = Index(tiny_base)
    assert [*index.ids("name", "vennia-nova"), *index.ids("name", "vennia-serena")] == [
        "name:vennia-nova.moon-vennet", "name:vennia-serena.sun-vennet"]
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_who_is_asked_once(tiny_base: Path, tellfin: Tellfin) -> None:
    """Without a name nothing is changed; a name given once is remembered with the base."""
    first = tellfin("--base", tiny_base, *NEW, "--why", "x")
    assert first.code == 2 and "--by" in first.err
    assert tellfin("--base", tiny_base, *NEW, *BY).code == 0
    assert tellfin("--base", tiny_base, "retract", KEY, "--why", "again").code == 0


def test_a_terminal_is_asked_for_the_name(tiny_base: Path) -> None:
    """At a terminal the name is asked for and kept."""
    from assistant.cli.main import main

    class Terminal(io.StringIO):
        def isatty(self) -> bool:
            return True

    out = io.StringIO()
    code = main(["--base", str(tiny_base), *NEW], Terminal("Orrin Vell\n"), out, out)
    assert code == 0 and "Who are you?" in out.getvalue()
    assert (tiny_base / ".tellfin" / "curator").read_text() == "Orrin Vell\n"


def test_the_shipped_base_is_read_only(tellfin: Tellfin) -> None:
    """Edits need a base of one's own and say how to make one."""
    ran = tellfin(*NEW, *BY)
    assert ran.code == 2 and "new-base" in ran.err


def test_an_id_may_be_written_with_blanks(tiny_base: Path, tellfin: Tellfin) -> None:
    """Character and state are found by their id however its words are joined."""
    ran = tellfin("--base", tiny_base, "add", "statement", "taxon=ember vennet", "character=Jaw reach",
                  "value=past eye", "source=memory", "--dry-run")
    assert ran.code == 0 and "past" in ran.out, ran


def test_near_names_are_offered_not_taken(tiny_base: Path, tellfin: Tellfin) -> None:
    """A misspelt taxon, an ambiguous name and an unknown state are refused with candidates."""
    for word, said in (("taxon=ember venet", "vennia-rubra"), ("taxon=redfin", "several taxa"),
                       ("taxon=Vennia rubro", "vennia-rubra")):
        ran = tellfin("--base", tiny_base, NEW[0], NEW[1], word, *NEW[3:], *BY)
        assert ran.code == 1 and said in ran.err, ran
    ran = tellfin("--base", tiny_base, *NEW[:4], "value=past-eyes", *NEW[5:], *BY)
    assert ran.code == 1 and "past-eye" in ran.err


def test_old_names_lead_to_the_taxon(tiny_base: Path, tellfin: Tellfin) -> None:
    """A synonym is as good as the accepted name."""
    ran = tellfin("--base", tiny_base, NEW[0], NEW[1], "taxon=Vennia celsa", *NEW[3:], *BY)
    assert ran.code == 0 and "tall vennet" in ran.out


def test_a_file_out_of_form_is_not_rewritten(tiny_base: Path, tellfin: Tellfin) -> None:
    """An edit would lose the layout of a hand-made file: it is refused and format is named."""
    path = tiny_base / "taxa/vennidae/vennia.ttl"
    path.write_text(path.read_text().replace("taxon:vennia\n", "# a note\ntaxon:vennia\n", 1))
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, *NEW, *BY)
    assert ran.code == 1 and "tellfin format" in ran.err and contents_of(tiny_base) == before


def test_an_edit_loads_no_heavy_library(tiny_base: Path) -> None:
    """An edit answers at once: the heavy libraries stay out of its process."""
    words = ["--base", str(tiny_base), *NEW, *BY, "--dry-run"]
    program = (f"import io, sys; from assistant.cli.main import main; text = io.StringIO(); "
               f"code = main({words!r}, text, text, text); "
               "heavy = {'rdflib', 'pyshacl', 'openpyxl', 'numpy', 'prompt_toolkit'}; "
               "print(code, sorted(heavy & set(sys.modules)))")
    done = subprocess.run([sys.executable, "-c", program], cwd=Path(__file__).parents[2], capture_output=True,
                          text=True, check=False)
    assert done.stdout.strip() == "0 []", done


@pytest.mark.parametrize(("taxon", "other"), [("vennia-rubra", "vennia-alta"), ("vennia-alta", "vennia-rubra")])
def test_a_pair_that_is_held_is_not_added_again(tiny_base: Path, tellfin: Tellfin, taxon: str, other: str) -> None:
    """The record that holds the pair is named, whichever of the two comes first."""
    ran = tellfin("--base", tiny_base, "add", "look-alike", f"taxon={taxon}", f"other={other}", "separable=hard",
                  "source=vell-2001", "basis=read", *BY)
    assert ran.code == 1 and "held already: alike:vennia-rubra.vennia-alta" in ran.err and ran.out == ""


@pytest.mark.parametrize("patch", ["", "{}", '{"add": []}', "# a comment"])
def test_a_patch_without_a_record_is_told(tiny_base: Path, tellfin: Tellfin, patch: str) -> None:
    """An empty patch is no change that stands already."""
    ran = tellfin("--base", tiny_base, "add", "--patch", "-", *BY, stdin=patch)
    assert ran.code == 1 and "holds no record" in ran.err


def test_help_names_what_a_change_is_not_made_without(tellfin: Tellfin) -> None:
    """What a command refuses to go without is marked in its help."""
    for command, needed in (("rename", 1), ("split", 2), ("lump", 2), ("retract", 1), ("correct", 1), ("add", 0)):
        assert tellfin(command, "--help").out.count("; needed") == needed, command
