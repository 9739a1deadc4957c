"""README.md and DEVELOPERS.md against the program: every command, option, path and exit code named exists, and back."""

from __future__ import annotations

import io
import re
from pathlib import Path

import pytest

from assistant.cli.main import COMMANDS, main
from assistant.model.knowledge import KnowledgeBase

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
TESTS = ROOT / "tests"
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")


def help_of(*argv: str) -> str:
    """The help text of the program or of a command."""
    out = io.StringIO()
    assert main([*argv, "--help"], io.StringIO(), out, io.StringIO()) == 0
    return out.getvalue()


@pytest.mark.parametrize("command", sorted(COMMANDS))
def test_every_command_is_documented_and_explains_itself(command: str) -> None:
    """Each command stands in README.md and has help of its own."""
    assert re.search(rf"\b{re.escape(command)}\b", README)
    assert command in help_of(command)


def test_no_unknown_command_is_documented() -> None:
    """Each `tellfin X` in the documents is a command."""
    for word in re.findall(r"`tellfin ([a-z][a-z-]+)", README + DEVELOPERS):
        assert word in COMMANDS, word


def test_every_option_named_exists() -> None:
    """Each --option of the documents is known to some command, to pytest or to pip."""
    runnable = "".join(p.read_text(encoding="utf-8") for f in ("bench", "dialogues") for p in (TESTS / f).glob("*.py"))
    known = set(re.findall(r"--[a-z][a-z-]+", help_of() + "".join(help_of(c) for c in COMMANDS) + runnable))
    for option in set(re.findall(r"(?<![\w-])--[a-z][a-z-]+", README + DEVELOPERS)):
        assert option in known, option


def test_every_path_named_exists() -> None:
    """Each path in the documents exists in the tree."""
    for path in set(re.findall(r"`((?:ontology|shapes|assistant|tests)/[\w./-]+)`", README + DEVELOPERS)):
        assert list(ROOT.glob(path)) or (ROOT / path).exists(), path


def test_every_folder_has_a_row_in_the_tree() -> None:
    """Each folder of the base and of the package, and each module beside the folders, stands in DEVELOPERS.md."""
    tree = DEVELOPERS.partition("## 1. ")[2].partition("## 2. ")[0]
    for root in ("ontology", "assistant"):
        for path in (ROOT / root).iterdir():
            inside = path.is_dir() and not path.name.startswith(("_", "."))
            if inside or (path.suffix == ".py" and not path.name.startswith("__")):
                assert re.search(rf"`(?:{root}/)?{path.name}[`/]", tree), path


def test_the_numbers_of_the_base_are_its_own(kb: KnowledgeBase) -> None:
    """What README.md counts is what the base holds, within two in a hundred."""
    told = README.partition("## Where the data come from")[2]
    crosses = sum(kb.taxon(t).is_hybrid for t in kb.species)
    for words, held in ((r"([\d,]+) species", len(kb.species) - crosses), (r"([\d,]+) crosses", crosses),
                        (r"([\d,]+) statements of traits", sum(len(kb.statements(t)) for t in kb.ids("statement"))),
                        (r"([\d,]+) of range", sum(len(kb.ranges(t)) for t in kb.ids("range"))),
                        (r"([\d,]+) names", sum(len(kb.names(t)) for t in kb.ids("name")))):
        match = re.search(words, told)
        assert match and abs(int(match.group(1).replace(",", "")) - held) <= 0.02 * held, (words, held)


def test_exit_codes_are_documented_as_help_states_them() -> None:
    """The exit codes of README.md are those of the help."""
    for line in ("0 fine", "1 the data are at fault", "2 wrong use", "130 stopped by Ctrl-C"):
        assert line in README and line in " ".join(help_of().split())


def test_the_evening_comes_out_as_shown() -> None:
    """The prompt says every word of the conversation in README.md, in that order; dots stand for what is left out."""
    shown = next(block for block in re.findall(r"```\n(.*?)\n```", README, re.S) if block.startswith("> "))
    turns = [turn.partition("\n") for turn in shown.removeprefix("> ").split("\n> ")]
    out = io.StringIO()
    typed = io.StringIO("".join(f"{said}\n" for said, _, _ in turns))
    assert main(["chat", "--plain", "--no-history", "--date", "2026-07-04"], typed, out, io.StringIO()) == 0
    told, at = " ".join(out.getvalue().split()), 0
    for _, _, answer in turns:
        for piece in re.split(r" ?\.\.\.(?: |$)", " ".join(answer.split())):
            assert piece in told[at:], piece
            at = told.index(piece, at) + len(piece)


def test_the_two_readme_commands_set_themselves_up() -> None:
    """Both commands make their own environment; the first ends in the crappie question, the second runs pytest."""
    commands = [c for c in re.findall(r"```\n(.*?)\n```", README, re.S) if c.startswith("python3 -m venv")]
    assert len(commands) == 2
    assert "How do I tell a white crappie from a black crappie?" in commands[0]
    assert commands[1].endswith("-m pytest")
