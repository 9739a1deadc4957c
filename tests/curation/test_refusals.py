"""Two hundred faulty patches and sheets: each refused with the right finding, the base byte for byte as before."""

# ruff: noqa: E501
from __future__ import annotations

import io
import itertools
import json
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.helpers.bases import Tellfin, contents_of, copy_tiny_base

BY = ("--by", "Ansa Merrow", "--why", "trial")
GOOD = {"kind": "statement", "taxon": "vennia-alta", "character": "maximum-length", "value": "300-340",
        "source": "vell-2001", "basis": "read"}
Case = tuple[str, str, object, str]
"""Name, kind of input (json, turtle, csv, tsv, bytes), the input, what the refusal says."""


def statement(**fields: object) -> dict[str, object]:
    """A sound new statement with some fields made faulty."""
    return {"add": [{**GOOD, **fields}]}


def numbers_apart() -> list[Case]:
    """A new statement whose numbers are given one by one."""
    apart = {k: v for k, v in GOOD.items() if k != "value"} | {"low": "300", "high": "340"}
    return [("numbers-apart", "json", {"add": [apart]}, "value=6-9")]


def wrong_fields() -> list[Case]:
    """One field at fault at a time."""
    bad: dict[str, list[tuple[object, str]]] = {
        "taxon": [("", "taxon=…"), ("vennia-nigra", "no taxon"), ("redfin", "several taxa"), ("Vennia  rubra x", "no taxon"),
                  ("taxon:../../etc", "no taxon"), ("<script>", "no taxon"), ("'; DROP", "no taxon"), (["a", "b"], "no taxon"),
                  ("ember vennett", "did you mean"), ("char:fin-colour", "no taxon")],
        "character": [("", "character"), ("wing-colour", "no character"), ("fin colour x", "no character"),
                      ("state:fin-colour.red", "no character")],
        "value": [("", "value"), ("abc", "no number"), ("12-10", "order of numbers"), ("10-Dec", "is a date"),
                  ("2026-12-10", "is a date"), ("Oct-12", "is a date"), ("1e5", "no number"), ("--", "no number"),
                  ("9-11-13", "no number"), ("NaN", "no number"), ("inf", "no number"), ("-5", "no number"), ("0x10", "no number"),
                  ("5 kg", "unit"), ("12 furlongs", "no number"), ("300(280-290)340", "order of numbers"),
                  ("red", "no number"), ("3/4/2026", "is a date"), ("٣", "no number"), ("300 - 340 mm mm", "no number")],
        "source": [("", "source=…"), ("nobody-1999", "no source"), ("vel-2001", "did you mean"), ("../sources", "no source")],
        "basis": [("", "basis=…"), ("hearsay", "value outside its list"), ("READ", "value outside its list"),
                  ("tf:kinds", "value outside its list")],
        "frequency": [("hardly", "no word of frequency"), ("100%", "no word of frequency")],
        "sex": [("boy", "value outside its list"), ("male|female", "value outside its list")],
        "stage": [("teen", "value outside its list")], "view": [("tf:nowhere", "value outside its list")],
        "min-length": [("abc", "no number"), ("-3", "tf:fromLength")], "n": [("0", "tf:sampleSize"), ("many", "tf:sampleSize"), ("-1", "tf:sampleSize")],
        "preferred": [("maybe", "tf:preferred")], "entered-on": [("2026-13-01", "loads")] if False else [],
        "page": [("p.\u202e12", "literal form"), ("\x07", "literal form")], "note": [(" \u200b ", "literal form"), ("a\x00b", "literal form")],
        "regions": [("narnia", "no place")], "colour": [("red", "no field")], "id": [("st:x", "identifier"), ("st:Vennia Alta", "identifier"),
                    ("name:vennia-alta.x", "identifier"), ("st:../../../etc/passwd", "identifier"), ("http://evil.example/x", "no place in a base"),
                    ("st:vennia-alta.jaw-reach.any.vell-2001", "exists already")],
        "class": [("tf:StateStatement", "kind of value"), ("tf:Nonsense", "tf:Nonsense"), ("dwc:Taxon", "property")],
    }
    return [(f"{name}={value!r}"[:60], "json", statement(**{name: value}), said)
            for name, values in bad.items() for value, said in values]


STATEFUL = [("jaw-reach", "spots", "no state"), ("jaw-reach", "past-eye|to-moon", "no state"), ("side-marks", "10-12", "no state"),
            ("fin-colour", "state:jaw-reach.to-eye", "no state"), ("gill-rakers", "9.5-11.25.3", "no number"),
            ("gill-rakers", "19 inches", "a count takes no unit"), ("gill-rakers", "12-14 kg", "a count takes no unit"),
            ("maximum-length", "30 kg", "a length takes mm, cm or in")]

PATCHES: list[Case] = [
    ("not json", "json-text", '{"add": [', "no JSON"), ("a list", "turtle", "[1, 2]", "Turtle"),
    ("unknown part", "json", {"remove": []}, "no part"), ("part is text", "json", {"add": "x"}, "no list of records"),
    ("deep value", "json", {"add": [{**GOOD, "note": {"a": 1}}]}, "simple values"), ("unknown kind", "json", {"add": [{"kind": "fish"}]}, "no kind"),
    ("correct without id", "json", {"correct": [{"value": "9"}]}, "needs the id"), ("correct nothing", "json", {"correct": [{"id": "st:nope", "value": "9"}]}, "no record"),
    ("retract nothing", "json", {"retract": [{"id": "st:nope"}]}, "no record"),
    ("correct no field", "json", {"correct": [{"id": "st:vennia-alta.gill-rakers.any.vell-2001"}]}, "nothing to correct"),
    ("good and bad", "json", {"add": [GOOD, {**GOOD, "value": "9-7", "sex": "male"}]}, "order of numbers"),
    ("same twice", "json", {"add": [GOOD, GOOD]}, "said twice"),
    ("duplicate", "json", {"add": [{**GOOD, "character": "jaw-reach", "value": "past-eye", "frequency": "usually"}]}, "said twice"),
    ("no source at all", "json", {"add": [{k: v for k, v in GOOD.items() if k != "source"}]}, "source=…"),
    ("no value at all", "json", {"add": [{k: v for k, v in GOOD.items() if k != "value"}]}, "value=…"),
    ("range in two statuses", "json", {"add": [{"kind": "range", "taxon": "vennia-alta", "place": "vennimoor", "status": "lost", "source": "vell-2001", "basis": "read"}]}, "value outside its list"),
    ("look-alike of itself", "json", {"add": [{"kind": "look-alike", "taxon": "vennia-alta", "other": "vennia-alta", "separable": "yes", "source": "vell-2001", "basis": "read"}]}, "beside itself"),
    ("look-alike mirrored", "json", {"add": [{"kind": "look-alike", "taxon": "vennia-alta", "other": "vennia-rubra", "separable": "yes", "source": "vell-2001", "basis": "read"}]}, "same pair"),
    ("second accepted name", "json", {"add": [{"kind": "name", "taxon": "vennia-alta", "text": "high vennet", "language": "en", "kind ": "x"}]}, "no field"),
    ("genus under itself", "json", {"correct": [{"id": "taxon:vennia", "parent": "vennia"}]}, "cyclic parents"),
    ("cyclic genus", "json", {"correct": [{"id": "taxon:vennidae", "parent": "vennia"}]}, "cyclic parents"),
    ("species under species", "json", {"correct": [{"id": "taxon:vennia-alta", "parent": "vennia-rubra"}]}, "under a species"),
    ("orphan species", "json", {"correct": [{"id": "taxon:vennia-alta", "parent": ""}]}, "without tf:parent"),
    ("cross of one", "json", {"add": [{"kind": "taxon", "scientific": "Vennia alta x Vennia rubra", "rank": "hybrid", "label": "cross", "parents": "vennia-alta", "source": "vell-2001", "basis": "read"}]}, "1 parents"),
    ("bad scientific name", "json", {"add": [{"kind": "taxon", "scientific": "vennia 7!", "rank": "species", "label": "x", "parent": "vennia", "source": "vell-2001", "basis": "read"}]}, "scientific name"),
    ("rank unknown", "json", {"correct": [{"id": "taxon:vennia-alta", "rank": "tribe"}]}, "value outside its list"),
    ("source taken out", "json", {"retract": [{"id": "src:vell-2001", "because": "x"}]}, "dangling reference"),
    ("character taken out", "json", {"retract": [{"id": "char:jaw-reach", "because": "x"}]}, "dangling reference"),
    ("state taken out", "json", {"retract": [{"id": "state:jaw-reach.past-eye", "because": "x"}]}, "dangling reference"),
    ("kind of character changed", "json", {"correct": [{"id": "char:jaw-reach", "kind": "count"}]}, "kind of value"),
    ("state moved away", "json", {"correct": [{"id": "state:jaw-reach.past-eye", "character": "side-marks"}]}, "another character"),
    ("error above one half", "json", {"correct": [{"id": "char:jaw-reach", "error": "0.9"}]}, "tf:observerError"),
    ("frequency bounds crossed", "json", {"correct": [{"id": "freq:often", "low": "0.9"}]}, "order of numbers"),
    ("preferred twice", "json", {"correct": [{"id": "st:vennia-rubra.gill-rakers.any.vell-2001", "preferred": "yes"}, {"id": "st:vennia-rubra.gill-rakers.any.memory", "preferred": "yes"}]}, "two preferred"),
    ("read from memory", "json", {"correct": [{"id": "st:vennia-rubra.gill-rakers.any.memory", "basis": "read"}]}, "basis and source"),
    ("vocabulary", "json", {"correct": [{"id": "tf:read", "label": "seen"}]}, "no record that can be corrected"),
    ("rule year backwards", "json", {"add": [{"kind": "rule-set", "id": "x-1", "label": "x", "jurisdiction": "vennimoor", "unit": "CentiM", "valid-from": "2026-12-31", "valid-through": "2026-01-01", "as-of": "2026-01-01", "invented": "yes", "source": "common-practice", "basis": "common-practice"}]}, "validity"),
    ("rule year of a bad date", "json", {"add": [{"kind": "rule-set", "id": "x-1", "label": "x", "jurisdiction": "vennimoor", "unit": "CentiM", "valid-from": "2026-02-30", "valid-through": "2026-12-31", "as-of": "2026-01-01", "source": "common-practice", "basis": "common-practice"}]}, "2026-02-30"),
]

ST = "st:vennia-alta.maximum-length.any.vell-2001 a tf:NumberStatement ; tf:taxon taxon:vennia-alta ; tf:character char:maximum-length ; "
END = " ; qudt:hasUnit unit:MilliM ; dcterms:source src:vell-2001 ; tf:basis tf:read ."
TURTLES: list[Case] = [
    (name, "turtle", text, said) for name, text, said in (
        ("missing dot", ST + "tf:low 3.0", "readable Turtle"), ("unknown prefix", "foo:x a foo:Y .", "readable Turtle"),
        ("blank node", "[] a dwc:Taxon .", "without a name"), ("blank object", ST + "tf:low [ ]" + END, "without a name"),
        ("a list", ST + "tf:low (1 2)" + END, "without a name"), ("text as number", ST + 'tf:low "3"' + END, "tf:low"),
        ("integer as decimal", ST + "tf:low 3" + END, "tf:low"), ("double", ST + "tf:low 3e2" + END, "tf:low"),
        ("padded number", ST + "tf:low 03.0" + END, "literal form"), ("long tail", ST + "tf:low 3.00" + END, "literal form"),
        ("two lows", ST + "tf:low 3.0 ; tf:low 4.0" + END, "tf:low"), ("unknown property", ST + "tf:lowe 3.0" + END, "tf:lowe"),
        ("foreign property", ST + "tf:low 3.0 ; <http://example.org/p> 1" + END, "property"), ("no type", "st:vennia-alta.x.any.y tf:low 3.0 .", "type"),
        ("unknown type", "st:vennia-alta.x.any.y a tf:Guess ; tf:low 3.0 .", "tf:Guess"), ("two types", ST.replace("a tf:NumberStatement", "a tf:NumberStatement, tf:StateStatement") + "tf:low 3.0" + END, "statement"),
        ("history forged", 'change:0000001-ffffff a tf:Change ; tf:why "x" .', "cannot write history"),
        ("iri as text", ST + 'tf:low 3.0 ; skos:editorialNote tf:read' + END, "skos:editorialNote"), ("number missing", ST + 'bibo:locator "p. 3"' + END, "number missing"),
        ("bad language tag", 'name:vennia-alta.x a tf:Name ; skosxl:literalForm "x"@toolonglanguagetag .', "readable Turtle"),
        ("no language", 'name:vennia-alta.x a tf:Name ; tf:nameOf taxon:vennia-alta ; skosxl:literalForm "x" ; dcterms:language "en" ; tf:nameKind tf:vernacular ; dcterms:source src:vell-2001 ; tf:basis tf:read .', "skosxl:literalForm"),
        ("path in identifier", '<https://tellfin.example/taxon/../../x> a dwc:Taxon ; dwc:scientificName "Xus" ; skos:prefLabel "x"@en ; dwc:taxonRank "genus" ; tf:parent taxon:vennidae ; dcterms:source src:vell-2001 ; tf:basis tf:read .', ""),
        ("upper case identifier", 'taxon:Xus a dwc:Taxon ; dwc:scientificName "Xus" ; skos:prefLabel "x"@en ; dwc:taxonRank "genus" ; tf:parent taxon:vennidae ; dcterms:source src:vell-2001 ; tf:basis tf:read .', "identifier"),
        ("nothing", "# only a comment", "holds no record"), ("javascript iri", "<javascript:alert(1)> a dwc:Taxon .", ""))]

HEAD = "taxon,character,value,frequency,scope,source_key,basis,note\n"
ROW = "Vennia alta,maximum-length,300-340,usually,,vell-2001,read,"
CELLS: list[Case] = [
    (f"{column}={text!r}"[:50], "csv", HEAD + ",".join([*ROW.split(",")[:place], text, *ROW.split(",")[place + 1:]]) + "\n", said)
    for place, column, texts in (
        (0, "taxon", (("", "empty"), ("Vennia nigra", "no taxon"), ("redfin", "several taxa"), ("=HYPERLINK(A1)", "formula"), ("@SUM(A1)", "formula"), ("+1+1", "formula"), ("-cmd", "formula"))),
        (1, "character", (("", "empty"), ("beak", "no character"), ("=A1", "formula"))),
        (2, "value", (("", "empty"), ("10-Dec", "is a date"), ("12-Oct", "is a date"), ("Dec-10", "is a date"), ("2026-10-12", "is a date"), ("400-300", "order of numbers"), ("many", "no number"), ("=2+3", "formula"), ("3 kg", "unit"), ("1e9", "no number"))),
        (3, "frequency", (("nearly", "not known"), ("50%", "not known"))),
        (4, "scope", (("region=Narnia", "no place"), ("male; female", "tf:sex") if False else ("male; female", "sex"), (">=90 mm; <=20 mm", "order of numbers"))),
        (5, "source_key", (("", "empty"), ("nobody1999", "no source"), ("vell2001", "did you mean"), ("vell-2001;nobody", "no source"))),
        (6, "basis", (("", "empty"), ("guess", "not known"), ("read!", "not known"))),
        (7, "note", (("=cmd|' /C calc'!A0", "formula"), ("a\u202eb", "control characters"), ("x" * 20_001, "longer than"), ("\x1b[31m", "control characters"))))
    for text, said in texts]
FILES: list[Case] = [
    ("empty sheet", "csv", "", "empty"), ("header only is nothing", "csv", HEAD, "nothing to change"), ("unknown columns", "csv", "a,b\n1,2\n", "no sheet that is known"),
    ("extra column", "csv", HEAD.replace("note", "colour") + ROW + "\n", "no column 'colour'"), ("column twice", "csv", HEAD.replace("note", "basis") + ROW + "\n", "column twice"),
    ("column without a name", "csv", HEAD.replace("frequency", "") + ROW + "\n", "without a name"), ("too many cells", "csv", HEAD + ROW + ",,more\n", "more cells than columns"),
    ("broken quotes", "csv", HEAD + '"Vennia alta,x\n', "no CSV"), ("latin-1", "bytes.csv", (HEAD + ROW + "caf\xe9\n").encode("latin-1"), "not UTF-8"), ("utf-16", "bytes.csv", (HEAD + ROW).encode("utf-16"), "not UTF-8"),
    ("binary", "bytes.csv", b"taxon\0,\n", "binary"), ("no zip", "bytes.xlsx", b"PK not a zip", "no readable XLSX"), ("an empty zip", "bytes.xlsx", b"PK\x05\x06" + b"\0" * 18, "no readable XLSX"),
    ("a stray quote", "csv", HEAD + ROW + '"x"y\n', "no CSV"), ("one good one bad", "csv", HEAD + ROW + "\n" + ROW.replace("vell-2001", "x") + "\n", "1 rejected"),
    ("names of a bad kind", "csv", "taxon,name,language,region,kind,source_key,basis\nVennia alta,x,en,,nickname,vell-2001,read\n", "value outside its list"),
    ("names of a bad language", "csv", "taxon,name,language,region,kind,source_key,basis\nVennia alta,x,English!,,vernacular,vell-2001,read\n", "language"),
    ("ranges of a bad status", "csv", "taxon,region,status,source_key,basis\nVennia alta,vennimoor,everywhere,vell-2001,read\n", "value outside its list"),
    ("ranges of a bad place", "csv", "taxon,region,status,source_key,basis\nVennia alta,US-XX,native,vell-2001,read\n", "no place"),
    ("darwin core without value", "csv", "scientificName,measurementType,measurementValue,source,basis\nVennia alta,maximum-length,,vell-2001,read\n", "empty"),
]


def bomb(kind: str) -> bytes:
    """An XLSX file that unpacks to far more than it should, or whose entries lead out of it."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        if kind == "bomb":
            archive.writestr("xl/worksheets/sheet1.xml", b"0" * 40_000_000)
        else:
            archive.writestr("../../etc/x.xml", b"x")
    return out.getvalue()


FILES += [("zip bomb", "bytes.xlsx", bomb("bomb"), "unpacks to far more"), ("path escape", "bytes.xlsx", bomb("path"), "leads out of it")]
MORE: list[Case] = [("stated " + c + v, "json", {"add": [{**GOOD, "character": c, "value": v}]}, said) for c, v, said in STATEFUL]
MORE += [(f"crossed {a}", "json", {"correct": [{"id": f"st:{t}.gill-rakers.any.vell-2001", "low": str(a), "high": str(a - b)}]}, "order of numbers")
         for t, a, b in itertools.product(("vennia-rubra", "vennia-alta", "ommaria-lenta"), (9, 14, 30), (1, 4))]
CASES: list[Case] = [*numbers_apart(), *wrong_fields(), *PATCHES, *TURTLES, *CELLS, *FILES, *MORE]


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    """Where the base that all refusals share stands."""
    return {"base": copy_tiny_base(tmp_path_factory.mktemp("refusals") / "base")}


@pytest.fixture()
def shared_base(shared: dict[str, Path], tmp_path: Path) -> Iterator[tuple[Path, dict[str, bytes]]]:
    """The shared base and its bytes; a fresh one takes its place after a fault that was let in."""
    before = contents_of(shared["base"])
    yield shared["base"], before
    if contents_of(shared["base"]) != before:
        shared["base"] = copy_tiny_base(tmp_path / "fresh")


def test_there_are_two_hundred_cases() -> None:
    """The promise is two hundred; names are told apart."""
    assert len(CASES) >= 200


@pytest.mark.parametrize(("name", "kind", "given", "said"), CASES, ids=[f"{i}-{c[0]}"[:40] for i, c in enumerate(CASES)])
def test_a_faulty_input_is_refused(name: str, kind: str, given: object, said: str, shared_base: tuple[Path, dict[str, bytes]], tellfin: Tellfin,
                                   tmp_path: Path) -> None:
    """The refusal names the fault, takes no trace, and the base is byte for byte what it was."""
    base, before = shared_base
    if kind in ("json", "json-text", "turtle"):
        text = json.dumps(given) if kind == "json" else str(given)
        ran = tellfin("--base", base, "add", "--patch", "-", *BY, stdin=text)
    else:
        path = tmp_path / f"sheet.{kind.rpartition('.')[2]}"
        path.write_bytes(given if isinstance(given, bytes) else str(given).encode("utf-8"))
        ran = tellfin("--base", base, "import", path, *BY)
    assert contents_of(base) == before, name
    assert "Traceback" not in ran.err and "something went wrong" not in ran.err, ran
    assert said in ran.out + ran.err, ran
    assert ran.code in (1, 2) or said == "nothing to change", ran
