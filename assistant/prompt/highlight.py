"""Which words of the line being typed are recognised, and how they look (layer 6)."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from prompt_toolkit.document import Document
from prompt_toolkit.formatted_text import StyleAndTextTuples
from prompt_toolkit.lexers import Lexer

if TYPE_CHECKING:
    from assistant.dialogue.reader.reading import Reading

LONGEST = 400
"""Characters of a line that are looked at while it is typed."""
FISH, FEATURE, PLACE, MEASURE = "seen-fish", "seen-feature", "seen-place", "seen-measure"
KINDS = {"taxon": FISH, "hybrid": FISH, "group": FISH, "likeness": FISH, "place": PLACE, "water": PLACE,
         "character": FEATURE, "state": FEATURE}


@dataclass(frozen=True, slots=True)
class Span:
    """A recognised stretch of the line and the name of its style."""

    start: int
    end: int
    style: str


def spans_of(reading: Reading, typed: str, observable: Callable[[str], bool]) -> tuple[Span, ...]:
    """The recognised stretches of a typed line, left to right, none inside another.

    A name that is only near to one of the base is marked once the next word has begun; a feature that nobody can see on
    a fish (how it lives, say), as ``observable`` tells of a character, is not marked.
    """
    places = _positions(reading.text, typed)
    if places is None:
        return ()
    found = [(m.start, m.end, KINDS[m.kind]) for m in reading.mentions
             if m.kind in KINDS and (m.exact or m.end < len(typed))
             and (KINDS[m.kind] != FEATURE or any(observable(i.partition(".")[0]) for i in m.ids))]
    found += [(s.start, s.end, FEATURE) for s in reading.seen]
    found += [(m.start, m.end, MEASURE) for m in reading.measures]
    rank = {FISH: 0, PLACE: 1, MEASURE: 2, FEATURE: 3}
    free = [True] * (len(reading.text) + 1)
    out: list[Span] = []
    for start, end, style in sorted(found, key=lambda f: (rank[f[2]], f[0], -f[1])):
        for a, b in _free_runs(free, start, min(end, len(reading.text))):
            out.append(Span(places[a], places[b - 1] + 1, style))
            free[a:b] = [False] * (b - a)
    return tuple(sorted(out, key=lambda s: s.start))


def _free_runs(free: list[bool], start: int, end: int) -> list[tuple[int, int]]:
    """The stretches of a span that no better span has taken."""
    runs: list[tuple[int, int]] = []
    for at in range(max(0, start), end):
        if free[at]:
            if runs and runs[-1][1] == at:
                runs[-1] = (runs[-1][0], at + 1)
            else:
                runs.append((at, at + 1))
    return runs


def _positions(read: str, typed: str) -> list[int] | None:
    """Where each character of the cleaned line stands in the typed one; None when they do not correspond."""
    out: list[int] = []
    at = 0
    for char in read:
        while at < len(typed) and typed[at] != char:
            at += 1
        if at == len(typed):
            return None
        out.append(at)
        at += 1
    return out


class WordLexer(Lexer):
    """Marks the recognised words of a line; one reading for each change of the text."""

    def __init__(self, recognise: Callable[[str], tuple[Span, ...]]) -> None:
        """``recognise`` gives the spans of a line; it must not raise."""
        self._recognise = recognise
        self._text = ""
        self._spans: tuple[Span, ...] = ()

    def lex_document(self, document: Document) -> Callable[[int], StyleAndTextTuples]:
        """The line in pieces with their styles."""
        text = document.text
        if text != self._text:
            self._text, self._spans = text, self._recognise(text[:LONGEST]) if text.strip() else ()
        spans = self._spans
        return lambda number: pieces(document.lines[number], spans) if number == 0 else [("", document.lines[number])]


def pieces(text: str, spans: tuple[Span, ...]) -> StyleAndTextTuples:
    """A line cut at its spans."""
    out: StyleAndTextTuples = []
    at = 0
    for span in spans:
        if span.start > at:
            out.append(("", text[at : span.start]))
        out.append((f"class:{span.style}", text[span.start : span.end]))
        at = span.end
    out.append(("", text[at:]))
    return out
