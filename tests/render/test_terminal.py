"""Answers on a terminal."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.render.terminal import encodable, offered, plain, question_lines, table, terminal_lines

ROWS = (
    ("feature", "tall vennet", "slow ommar"),
    ("fins", "red, often with a dark edge", "dark grey"),
    ("bars", "none", "six"),
)


def shown(block: Block, width: int) -> list[str]:
    """The lines of one block."""
    return plain(terminal_lines(Answer("describe", (block,)), width)).splitlines()


def test_points_hang_under_their_bullet() -> None:
    """A point starts with a dash, its further lines stand under its text."""
    assert shown(Block("point", "fins: red, often with a dark edge"), 26) == [
        "- fins: red, often with a",
        "  dark edge",
    ]


def test_numbers_keep_their_units() -> None:
    """No line breaks between a number and its unit, nor begins with a dash."""
    text = "usually reaches a length of 120 mm in clear water, the tall vennet - rather less"
    for width in range(21, 80):
        lines = shown(Block("lead", text), width)
        assert " ".join(lines) == text
        assert not any(line.startswith(("mm", "-")) for line in lines)


def test_codes_are_dropped() -> None:
    """Control characters that came in with a name never reach the terminal."""
    assert "\x1b" not in plain(terminal_lines(Answer("x", (Block("lead", "a\x1b[2Jb"),)), 80))


def test_table_in_columns_where_it_fits() -> None:
    """A table that fits stands in columns under an underlined header."""
    lines = plain(tuple(table(ROWS, 80))).splitlines()
    assert (
        lines[0] == "feature  tall vennet                  slow ommar"
        and set(lines[1]) == {"-", " "}
        and len(lines) == 4
    )


def test_table_wraps_its_cells() -> None:
    """A table that nearly fits has its widest cells wrapped; nothing is lost."""
    lines = plain(tuple(table(ROWS, 46))).splitlines()
    assert max(map(len, lines)) <= 46 and len(lines) == 5


def test_table_is_stacked_on_a_narrow_screen() -> None:
    """A table that does not fit becomes one row under the other, each value with its heading."""
    lines = plain(tuple(table(ROWS, 30))).splitlines()
    assert (
        lines[:3] == ["fins", "  tall vennet: red, often with", "    a dark edge"] and "  slow ommar: six" in lines
    )


@pytest.mark.parametrize("width", [24, 40, 80])
def test_table_loses_nothing(width: int) -> None:
    """Every word of every cell is shown at any width."""
    text = plain(tuple(table(ROWS, width)))
    for row in ROWS[1:]:
        for word in " ".join(row).replace(",", " ").split():
            assert word in text


def test_question_without_choices() -> None:
    """An open question is shown as it is, with how to look."""
    asked = Asked("character", "How many?", "gill-rakers")
    answer = Answer("identify", (Block("next", "How many? Count the long ones.", claim=False),), asked=asked)
    assert (
        plain(question_lines(answer, 80)) == "How many? Count the long ones." and terminal_lines(answer, 80) == ()
    )


@pytest.mark.parametrize("text", ["Fins (red; dark grey; or not sure)?", "Fins?"])
def test_choices_are_listed_once(text: str) -> None:
    """Whether or not the question spells its choices out, they are shown once, each with its digit."""
    asked = Asked("character", "Fins?", "fin-colour", (("x.a", "red"), ("x.b", "dark grey")))
    answer = Answer("identify", (Block("next", text, claim=False),), asked=asked)
    assert plain(question_lines(answer, 80)).splitlines() == ["Fins?", "  1  red", "  2  dark grey", "  3  not sure"]


def test_lettered_choices_stay() -> None:
    """A quiz question keeps the letters it came with."""
    asked = Asked("quiz", "Which?", choices=(("x", "tall vennet"), ("y", "slow ommar")))
    text = "1 of 5. Which? (a) tall vennet (b) slow ommar"
    assert plain(question_lines(Answer("quiz", (Block("next", text, claim=False),), asked=asked), 80)) == text


def test_not_sure_is_a_choice_of_features_only() -> None:
    """A question for a feature can be answered "not sure"; a question which fish was meant cannot."""
    assert offered(Asked("character", "?", "x", (("x.a", "a"),))) == ("a", "not sure")
    assert offered(Asked("which", "?", choices=(("t", "perch"),))) == ("perch",)
    assert offered(None) == () and offered(Asked("length", "?")) == ()


def test_other_next_blocks_stay_in_their_place() -> None:
    """A hint at a second wish is no question and stays where it is."""
    answer = Answer("x", (Block("lead", "Yes."), Block("next", "You also asked for more.", claim=False)))
    assert plain(terminal_lines(answer, 80)).splitlines() == ["Yes.", "You also asked for more."]


@pytest.mark.parametrize(
    ("encoding", "text"),
    [
        ("ascii", "1/2 x dore -> ?"),
        ("cp1252", "½ × doré -> ?"),
        ("utf-8", "½ × doré → 魚"),
        (None, "½ × doré → 魚"),
        ("no-such", "1/2 x dore -> ?"),
    ],
)
def test_encodable(encoding: str | None, text: str) -> None:
    """What an encoding lacks is written with near characters, the rest as a question mark."""
    assert encodable("½ × doré → 魚", encoding) == text
