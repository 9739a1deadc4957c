"""The commands for lessons: forms, files, and one clear line with the right exit code where the input is bad."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterator
from contextlib import nullcontext
from pathlib import Path

import pytest

from assistant.cli import lesson_options
from assistant.cli.main import main
from assistant.model.knowledge import KnowledgeBase

THREE = ("bluegill", "redear sunfish", "pumpkinseed")


@pytest.fixture(autouse=True)
def shared_base(kb: KnowledgeBase, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """The commands read the base that the tests share, instead of opening it anew."""
    from assistant.cli import compare, key, quiz, sheet

    for module in (lesson_options, compare, key, quiz, sheet):
        monkeypatch.setattr(module, "open_kb", lambda args, streams: nullcontext(kb))
    yield


def run(*argv: str) -> tuple[int, str, str]:
    """Exit code, standard output and standard error of a command."""
    out, err = io.StringIO(), io.StringIO()
    return main(list(argv), io.StringIO(), out, err), out.getvalue(), err.getvalue()


@pytest.mark.parametrize("form", ["text", "markdown", "csv", "html", "json"])
@pytest.mark.parametrize("command", ["compare", "key"])
def test_every_form_is_deterministic(command: str, form: str) -> None:
    """The same command gives the same bytes, and the fishes are in them."""
    first, second = run(command, *THREE, "--format", form), run(command, *THREE, "--format", form)
    assert first == second and first[0] == 0
    assert all(name in first[1] for name in THREE)


def test_look_limits_what_is_shown() -> None:
    """A comparison by picture holds only what a picture shows."""
    code, out, _ = run("compare", "--group", "pikes", "--look", "picture", "--format", "json")
    assert code == 0
    pictured = {r["character"] for r in json.loads(out)["separating"]}
    _, out, _ = run("compare", "--group", "pikes", "--look", "lab", "--format", "json", "--rows", "40")
    benched = {r["character"] for r in json.loads(out)["separating"]}
    assert pictured and not any("rays" in c or "scales" in c for c in pictured) and any("rays" in c for c in benched)


@pytest.mark.parametrize("command", ["compare", "key", "quiz", "sheet"])
def test_a_fish_that_the_place_does_not_hold_is_told_of(command: str) -> None:
    """The alligator gar, named by hand, is left out for Ohio with a word on standard error; a whole group is not."""
    code, out, err = run(command, "bluegill", "walleye", "alligator gar", "--place", "Ohio")
    assert code == 0 and "alligator gar" not in out
    assert err.startswith("left out: the alligator gar") and "died out" in err and "unchecked" in err
    assert run("key", "--group", "pikes", "--place", "Ohio")[2] == ""
    assert "none of the cichlids is recorded in Ohio" in run(command, "bluegill", "walleye", "cichlids", "--place",
                                                             "Ohio")[2]


@pytest.mark.parametrize("command", ["compare", "key", "quiz", "sheet"])
def test_too_few_in_a_place_says_who_is_missing(command: str) -> None:
    """Where the place leaves one or none of the fishes named, the error says which are not there, not to name more."""
    code, out, err = run(command, "bluegill", "walleye", "--place", "Hawaii")
    assert code == 2 and not out and "walleye is not expected in Hawaii" in err and "leaves the bluegill alone" in err
    code, out, err = run(command, "alligator gar", "walleye", "--place", "Hawaii")
    assert code == 2 and "alligator gar is not listed for Hawaii" in err and "none of those named" in err
    assert "name another fish" not in err


def test_csv_has_one_row_a_feature() -> None:
    """The CSV reads back with as many columns as fishes and one for the feature, and no cell starts a formula."""
    _, out, _ = run("compare", *THREE, "--format", "csv", "--shared")
    rows = list(csv.reader(io.StringIO(out)))
    assert {len(r) for r in rows} == {4} and len(rows) > 6
    assert not any(c.startswith(("=", "+", "-", "@")) for r in rows for c in r)


def test_json_names_statements() -> None:
    """Every cell that tells something names the statements it rests on."""
    _, out, _ = run("compare", *THREE, "--format", "json")
    cells = [c for r in json.loads(out)["separating"] for c in r["cells"]]
    assert all(c["statements"] for c in cells if c["basis"])


def test_quiz_answers_stand_apart(tmp_path: Path) -> None:
    """With --answers the questions hold no answer key, and the file does."""
    code, out, _ = run("quiz", "--group", "sunfishes", "--items", "6", "--answers", str(tmp_path / "key.txt"))
    assert code == 0 and "Answers" not in out and out.count("\n   A  ") == 6
    assert "Answers" in (tmp_path / "key.txt").read_text()


def test_quiz_seed_is_kept() -> None:
    """The same seed gives the same quiz, another one another."""
    assert run("quiz", *THREE, "--seed", "4")[1] == run("quiz", *THREE, "--seed", "4")[1] != run("quiz", *THREE,
                                                                                                 "--seed", "5")[1]


def test_sheet_is_written(tmp_path: Path) -> None:
    """The sheet goes to the file named, and the command says where."""
    target = tmp_path / "sheet.html"
    code, _, err = run("sheet", *THREE, "-o", str(target))
    assert code == 0 and str(target) in err and target.read_text().count("<svg") == 3


@pytest.mark.parametrize(("argv", "code", "says"), [
    (("compare", "bluegill"), 2, "2 fishes or more"),
    (("compare",), 2, "no fish is named"),
    (("compare", "bluegill", "clown fish"), 2, "clown fish"),
    (("compare", "--group", "panfish"), 2, "8 fishes at most"),
    (("compare", "bluegill", "walleye", "--rows", "0"), 2, "--rows"),
    (("key", "bluegill"), 2, "two fishes or more"),
    (("key", "--place", "Atlantis"), 2, "Atlantis"),
    (("key", "--group", "wugs"), 2, "wugs"),
    (("sheet", "bluegill", "walleye", "-o", "/nowhere/at/all.html"), 3, "cannot write"),
    (("quiz", "--group", "pikes", "--items", "0"), 2, "1 to 50"),
    (("compare", "bluegill", "walleye", "--format", "pdf"), 2, "pdf"),
    (("quiz", "bluegill", "walleye", "--answers", "/nowhere/a.txt", "-o", "/nowhere/./a.txt"), 2, "both be written"),
])
def test_bad_input_gets_one_clear_line(argv: tuple[str, ...], code: int, says: str) -> None:
    """Wrong use ends with its exit code, one line that says what is wrong and one that says what to do."""
    got, out, err = run(*argv)
    assert got == code and out == ""
    lines = err.strip().splitlines()
    assert lines[0].startswith("tellfin: ") and says in lines[0] and len(lines) <= 2


@pytest.mark.parametrize(("command", "look"), (("quiz", "picture"), ("sheet", "picture"), ("key", "hand")))
def test_help_tells_the_look_that_is_taken(command: str, look: str) -> None:
    """The default in the help is the one that the command uses."""
    assert f"(default: {look})" in " ".join(run(command, "--help")[1].split())


@pytest.mark.parametrize("columns", (50, 60, 80))
@pytest.mark.parametrize(("words", "names"), (
    (["compare", "walleye", "sauger", "yellow perch"], {"walleye", "sauger"}),
    (["key", "--group", "pikes"], {"muskellunge", "pickerel"})))
def test_text_fits_the_terminal(words: list[str], names: set[str], columns: int,
                                monkeypatch: pytest.MonkeyPatch) -> None:
    """No line of a comparison or a key is wider than the terminal, and no fish's name is broken within a word."""
    monkeypatch.setenv("COLUMNS", str(columns))
    code, out, _ = run(*words)
    assert code == 0
    assert max(map(len, out.splitlines())) <= columns
    assert names <= set(re.findall(r"\w+", out))


def test_an_unknown_fish_gets_the_nearest_names() -> None:
    """A short slip of a name is answered with names that have a word like it."""
    code, _, err = run("compare", "bluegill", "bas")
    assert code != 0
    assert "did you mean" in err and "bass" in err


def test_a_key_of_fishes_that_nothing_parts_is_one_sentence(kb: KnowledgeBase) -> None:
    """Where no feature parts the fishes, the text is the title and a sentence that says so, without instructions."""
    from assistant.dialogue.lessons.key import notes_of
    from assistant.reasoning.key import build_key
    from assistant.render.markdown import key_text

    taxa = ("lepomis-macrochirus", "lepomis-cyanellus")
    key = build_key(kb, taxa, without={c.id for c in kb.characters})
    parts = key_text(kb, key, "Title", notes_of(kb, key)).strip().split("\n\n")
    assert parts[0] == "Title" and len(parts) == 2
    assert "No key can be made" in parts[1] and "bluegill" in parts[1]
