"""A compiled base brought up to date after some changes is, byte for byte, the one that compiling all of it gives."""

from __future__ import annotations

import os
import random
import re
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from assistant.compiling import compile_folder
from assistant.graph.locate import shipped_ontology
from assistant.loading import quiet
from assistant.recompiling import bring_up_to_date

LEPOMIS = "taxa/centrarchidae/lepomis.ttl"
MORONE = "taxa/moronidae/morone.ttl"


@pytest.fixture(autouse=True)
def one_moment(monkeypatch: pytest.MonkeyPatch) -> None:
    """All are made at the same moment, which stands in the file."""
    monkeypatch.setattr("time.time_ns", lambda: 2 * 10**18)


def settle(folder: Path) -> None:
    """Make the files look as if they had been written long ago."""
    for number, path in enumerate(sorted(folder.rglob("*.ttl"))):
        os.utime(path, ns=(10**18 + number, 10**18 + number))


def sub(name: str, pattern: str, to: str, count: int = 1) -> Callable[[Path], None]:
    """A change of a file that must find what it changes."""
    def change(folder: Path) -> None:
        path = folder / name
        text, found = re.subn(pattern, to, path.read_text(), count=count)
        assert found
        path.write_text(text)

    return change


def without(name: str, key: str) -> Callable[[Path], None]:
    """A change that takes the first subject out whose id begins so."""
    return sub(name, rf"\n{re.escape(key)}[^\n]*\n(?:    [^\n]*\n)+", "")


MORE = """
taxon:morone-nova
    a dwc:Taxon ;
    dwc:scientificName "Morone nova" ;
    skos:prefLabel "new bass"@en ;
    dwc:taxonRank "species" ;
    tf:parent taxon:morone ;
    dcterms:source src:memory ;
    tf:basis tf:memory ;
    .
"""
CHANGES: dict[str, list[Callable[[Path], None]]] = {
    "a frequency": [sub(MORONE, "freq:usually", "freq:rarely")],
    "many frequencies of a genus with crosses": [sub(LEPOMIS, "freq:usually", "freq:often", 40)],
    "a statement less": [without(MORONE, "st:morone-"), without(LEPOMIS, "st:lepomis-cyanellus.")],
    "a count beyond all others": [sub(LEPOMIS, r"tf:high [0-9]+\.0", "tf:high 311.0", 3)],
    "a name more spoken of": [sub(MORONE, r'(skosxl:literalForm ")[a-z ]+"@en', r'\1wandering stripeling"@en')],
    "a name less": [without(LEPOMIS, "name:lepomis-")],
    "a label": [sub(MORONE, r'(skos:prefLabel ")[a-z ]+"@en', r'\1quite other bass"@en', 3)],
    "another rank": [sub(LEPOMIS, r'(dwc:taxonRank )"species"', r'\1"subspecies"', 1)],
    "a parent": [sub(LEPOMIS, r"tf:parent taxon:lepomis ", "tf:parent taxon:morone ", 2)],
    "a species less": [without("taxa/hiodontidae/hiodon.ttl", "taxon:hiodon-")],
    "a species more": [sub(MORONE, r"\Z", MORE)],
    "a range": [sub("ranges/moronidae/morone.ttl", "tf:rangeStatus tf:native", "tf:rangeStatus tf:introduced", 5)],
    "a file less": [lambda folder: (folder / "hybrids" / "lepomis.ttl").unlink()],
    "a file more": [lambda folder: (folder / "more.ttl").write_text("# nothing yet\n") and None],
    "words of advice": [sub("cautions/handling.ttl", r"(skos:altLabel \")[^\"]+", r"\1wobbly ways", 2)],
    "a frequency word": [sub("vocabulary/qualifiers.ttl", r"tf:point 0\.\d+", "tf:point 0.77", 1)],
    "a phrase of a state": [sub("vocabulary/characters/fins.ttl", r'(skos:altLabel ")[a-z ]+"', r'\1wobbly fins"', 2)],
    "a character": [sub("vocabulary/characters/head.ttl", r"tf:look tf:[a-z]+", "tf:look tf:count", 1)],
}


def second_home(folder: Path) -> None:
    """Move a statement into a file of its own, so that two files tell of a taxon."""
    path = folder / MORONE
    text = path.read_text()
    found = re.search(r"\nst:morone-[^\n]*\n(?:    [^\n]*\n)+", text)
    assert found
    (folder / "more.ttl").write_text(text[: text.index("\n\n") + 2] + found[0])
    path.write_text(text.replace(found[0], ""))


CHANGES["a taxon told of in two files"] = [second_home, sub("more.ttl", "tf:basis tf:[a-z]+", "tf:basis tf:memory"),
                                           sub(MORONE, "freq:usually", "freq:rarely")]


@pytest.fixture(scope="module")
def shipped(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped base with its compiled form beside it."""
    place = tmp_path_factory.mktemp("bases")
    shutil.copytree(shipped_ontology(), place / "base")
    settle(place / "base")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("time.time_ns", lambda: 2 * 10**18)
        compile_folder(place / "base", quiet).write(place / "form")
    return place


OFTEN = ("a taxon told of in two files",)
"""The change tried in every run; the others are marked long, since each compiles all of the shipped base."""
CASES = [pytest.param(steps, id=name, marks=() if name in OFTEN else pytest.mark.long)
         for name, steps in CHANGES.items()]


@pytest.mark.parametrize("steps", CASES)
def test_the_same_bytes_as_compiling_all(shipped: Path, tmp_path: Path, steps: list[Callable[[Path], None]]) -> None:
    """After each step of a change the form brought up to date is that of the whole."""
    folder = shutil.copytree(shipped / "base", tmp_path / "base")
    shutil.copy(shipped / "form", tmp_path / "form")
    for step in steps:
        step(folder)
        assert bring_up_to_date(folder, tmp_path / "form", quiet)
    compile_folder(folder, quiet).write(tmp_path / "whole")
    assert (tmp_path / "form").read_bytes() == (tmp_path / "whole").read_bytes()


@pytest.mark.long
def test_a_damaged_or_missing_form_is_not_built_upon(shipped: Path, tmp_path: Path) -> None:
    """Wherever a bit is turned over, the form is refused or comes out right; a missing one is refused."""
    folder, chance = shutil.copytree(shipped / "base", tmp_path / "base"), random.Random(4)
    CHANGES["a frequency"][0](folder)
    assert not bring_up_to_date(folder, tmp_path / "form", quiet)
    data, right, refused = (shipped / "form").read_bytes(), b"", 0
    for number in range(13):
        spoilt = bytearray(data)
        if number:
            spoilt[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        (tmp_path / "form").write_bytes(spoilt)
        if bring_up_to_date(folder, tmp_path / "form", quiet):
            right = right or (tmp_path / "form").read_bytes()
            assert (tmp_path / "form").read_bytes() == right
        else:
            refused += 1
    assert right and refused
