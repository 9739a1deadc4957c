"""Answers as plain text."""

from __future__ import annotations

from assistant.dialogue.answer import Answer, Block
from assistant.render.plain import render_plain, table_lines


def answer(*blocks: Block) -> Answer:
    """An answer of some blocks."""
    return Answer("describe", blocks)


def test_points_are_listed_and_leads_are_not() -> None:
    """A lead stands alone, points and sources carry a dash."""
    text = render_plain(answer(Block("lead", "First."), Block("point", "Second."), Block("sources", "Third.")))
    assert text.splitlines() == ["First.", "- Second.", "- Third."]


def test_wrapped_text_keeps_within_the_width_and_loses_no_word() -> None:
    """Wrapping moves words, never drops them, and indents what follows a dash."""
    words = "a fairly long point about a fish that goes on for quite a while"
    text = render_plain(answer(Block("point", words)), width=20)
    assert all(len(line) <= 20 for line in text.splitlines())
    assert " ".join(text.replace("- ", "", 1).split()) == words
    assert text.splitlines()[1].startswith("  ")


def test_control_characters_never_reach_the_terminal() -> None:
    """Escape sequences lose their escape."""
    assert "\x1b" not in render_plain(answer(Block("lead", "a\x1b[31mb")))


def test_tables_are_aligned_and_forgive_short_rows() -> None:
    """Columns line up under an underlined header; a missing cell is empty."""
    assert table_lines((("fish", "spines"), ("flier", "11"), ("crappie",))) == [
        "fish     spines",
        "-------  ------",
        "flier    11",
        "crappie",
    ]
    assert table_lines(()) == []
