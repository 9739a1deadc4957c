"""Marking of recognised words."""

from __future__ import annotations

from itertools import pairwise

import pytest
from prompt_toolkit.document import Document

from assistant.dialogue.conversation import Held
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.highlight import Span, WordLexer, spans_of
from assistant.prompt.style import STYLE
from tests.helpers.pipe_terminal import DAY


def marked(kb: KnowledgeBase, typed: str) -> dict[str, str]:
    """The marked stretches of a line and their styles."""
    from assistant.dialogue.reader.read import read_line

    def observable(character: str) -> bool:
        return bool(kb.character(character).use == "identify")

    spans = spans_of(read_line(kb, typed, Held(), DAY), typed, observable)
    assert all(a.end <= b.start for a, b in pairwise(spans))
    return {typed[s.start : s.end]: s.style for s in spans}


def test_fish_feature_place_measure(kb: KnowledgeBase) -> None:
    """A fish, a feature, a place and a measure are each marked where they stand, whatever the blanks between."""
    found = marked(kb, "  a   bluegill with a black ear flap,  7 inches, in Ohio ")
    assert (
        found["bluegill"] == "seen-fish" and found["Ohio"] == "seen-place" and found["7 inches"] == "seen-measure"
    )
    assert any("ear flap" in words and style == "seen-feature" for words, style in found.items())


def test_way_of_life_is_not_marked(kb: KnowledgeBase) -> None:
    """Words of what nobody sees on a fish ("caught in") are left alone."""
    assert "caught in" not in marked(kb, "caught in Vennimoor Lake")


def test_half_typed_guess_is_not_marked(kb: KnowledgeBase) -> None:
    """A misspelt name is marked once the next word has begun, not while it is typed."""
    assert not marked(kb, "pumkinsed") and marked(kb, "pumkinsed or").get("pumkinsed") == "seen-fish"


@pytest.mark.parametrize(
    "typed", ["", " ", "\x1b[31m red fin", "é" * 50, "7 in " * 60, "bluegill\u00a0\u00a0 bluegill", "🐟 bass"]
)
def test_odd_lines(kb: KnowledgeBase, typed: str) -> None:
    """Odd lines are marked or not, but never wrongly cut: their pieces give the line back."""
    from assistant.dialogue.reader.read import read_line

    lexer = WordLexer(lambda text: spans_of(read_line(kb, text, Held(), DAY), text, lambda _: True))
    assert "".join(piece[1] for piece in lexer.lex_document(Document(typed))(0)) == typed


def test_pieces_give_the_line_back() -> None:
    """The pieces of a line, put together, are the line."""
    lexer = WordLexer(lambda text: (Span(2, 5, "seen-fish"), Span(5, 6, "seen-place")))
    pieces = lexer.lex_document(Document("a perch"))(0)
    assert "".join(p[1] for p in pieces) == "a perch" and pieces[1][:2] == ("class:seen-fish", "per")


def test_one_reading_for_each_change() -> None:
    """Drawing the same text again reads nothing."""
    read: list[str] = []

    def recognise(text: str) -> tuple[Span, ...]:
        read.append(text)
        return ()

    lexer = WordLexer(recognise)
    for text in ("perch", "perch", "perch ", "perch "):
        lexer.lex_document(Document(text))
    assert read == ["perch", "perch "]


def test_colour_is_never_the_only_sign() -> None:
    """Every mark of a recognised word is underlined, bold or italic besides its colour."""
    for name, rule in STYLE.items():
        if name.startswith("seen-"):
            assert {"underline", "bold", "italic"} & set(rule.split()), name
