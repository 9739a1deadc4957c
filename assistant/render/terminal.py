"""An answer as lines for a terminal: wrapped, in plain characters, each piece with the name of a style (layer 5).

The layout alone carries the meaning; styles only add to it. Choices of a question back get digits to answer with.
"""

from __future__ import annotations

import re
import textwrap
import unicodedata
from collections.abc import Iterator, Sequence

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.text import strip_controls

Piece = tuple[str, str]
"""Style name and text."""
Line = tuple[Piece, ...]

WIDEST = 88
"""Columns beyond which text is no longer widened; longer lines are hard to read."""
NARROWEST = 16
TIGHTEST_CELL = 12
GAP = "  "
BULLET = "- "
STYLES = {"lead": "lead", "caution": "caution", "rule-note": "rule", "doubt": "doubt", "next": "ask",
          "sources": "source", "help": "quiet"}
UNSURE = "not sure"
KEPT = "\u00a0"
_GLUED = re.compile(r" (?=[-–] )|(?<=\d) (?=(?:in|ft|mm|cm|m|oz|lb|g|kg|%)\b)")
"""Blanks at which no line is broken: before a dash, between a number and its unit."""
_ASCII = str.maketrans({
    "‘": "'", "’": "'", "‚": ",", "“": '"', "”": '"', "„": '"', "–": "-", "—": "-", "−": "-", "×": "x", "…": "...",
    "±": "+/-", "≤": "<=", "≥": ">=", "→": "->", "½": "1/2", "¼": "1/4", "¾": "3/4", "•": "-", "\u00a0": " ",
    "♂": "male", "♀": "female", "°": " deg", "œ": "oe", "æ": "ae", "ß": "ss", "ø": "o", "ł": "l",
})


def terminal_lines(answer: Answer, width: int) -> tuple[Line, ...]:
    """The answer without its question back; see ``question_lines``."""
    width = fitting(width)
    out: list[Line] = []
    for block in answer.blocks:
        if not _asks(block, answer.asked):
            out += _block(block, width)
    return tuple(out)


def question_lines(answer: Answer, width: int) -> tuple[Line, ...]:
    """The question back with its choices numbered; empty when nothing is asked."""
    width = fitting(width)
    asked = answer.asked
    own = [b.text for b in answer.blocks if _asks(b, asked)]
    if asked is None or not own:
        return ()
    text = " ".join(own)
    if not asked.choices or lettered(text):
        return tuple(_wrapped("ask", text, width))
    spelt = all(words in text for _, words in asked.choices)
    return (*_wrapped("ask", asked.question if spelt else text, width), *_choices(asked, width))


def offered(asked: Asked | None) -> tuple[str, ...]:
    """The choices of a question in the order of their digits; for a feature "not sure" is the last."""
    if asked is None or not asked.choices:
        return ()
    words = tuple(strip_controls(w) for _, w in asked.choices)
    return (*words, UNSURE) if asked.kind == "character" and UNSURE not in words else words


def fitting(width: int) -> int:
    """The columns to write in; the last one of the terminal stays free, as some terminals wrap in it."""
    return max(NARROWEST, min(width - 1, WIDEST))


def plain(lines: Sequence[Line]) -> str:
    """Lines without their styles."""
    return "\n".join("".join(text for _, text in line) for line in lines)


def encodable(text: str, encoding: str | None) -> str:
    """The text in characters that an encoding has: near ones for those it lacks, a question mark for the rest.

    >>> encodable("½ lb – crapet à oreilles", "ascii")
    '1/2 lb - crapet a oreilles'
    """
    name = encoding or "utf-8"
    try:
        text.encode(name)
        return text
    except LookupError:
        return encodable(text, "ascii")
    except UnicodeEncodeError:
        near = "".join(c if _has(c, name) else c.translate(_ASCII) for c in text)
    bare = "".join(c if _has(c, name) else unicodedata.normalize("NFKD", c) for c in near)
    kept = "".join(c for c in bare if not unicodedata.combining(c))
    return kept.encode(name, "replace").decode(name)


def _has(char: str, encoding: str) -> bool:
    try:
        char.encode(encoding)
    except UnicodeEncodeError:
        return False
    return True


def _asks(block: Block, asked: Asked | None) -> bool:
    return asked is not None and block.kind == "next" and asked.question.rstrip("?.! ") in block.text


def lettered(text: str) -> bool:
    """True where a question brings its choices along with letters, as those of a quiz do."""
    return "(a)" in text and "(b)" in text


def _block(block: Block, width: int) -> Iterator[Line]:
    style = STYLES.get(block.kind, "")
    bullet = BULLET if block.kind in ("point", "sources") else ""
    for part in block.text.split("\n"):
        if part.strip():
            yield from _wrapped(style, part, width, bullet)
    if block.rows:
        yield from table(block.rows, width)


def _wrapped(style: str, text: str, width: int, bullet: str = "", hang: int | None = None) -> Iterator[Line]:
    indent = " " * (len(bullet) if hang is None else hang)
    whole = _GLUED.sub(KEPT, " ".join(strip_controls(text).split()))
    for line in textwrap.wrap(whole, width, initial_indent=bullet, subsequent_indent=indent, break_on_hyphens=False):
        yield ((style, line.replace(KEPT, " ")),)


def _choices(asked: Asked, width: int) -> Iterator[Line]:
    for number, words in enumerate(offered(asked), start=1):
        lead = f"  {number}  "
        for at, line in enumerate(textwrap.wrap(words, width - len(lead)) or [""]):
            yield (("digit", lead), ("choice", line)) if at == 0 else (("choice", " " * len(lead) + line),)


def table(rows: Sequence[Sequence[str]], width: int) -> Iterator[Line]:
    """A table in columns where they fit, cells wrapped where they nearly fit, else one row under the other."""
    if not rows:
        return
    count = max(len(r) for r in rows)
    cells = [[strip_controls(c) for c in r] + [""] * (count - len(r)) for r in rows]
    widths = _column_widths([max(len(r[i]) for r in cells) for i in range(count)], width - len(GAP) * (count - 1))
    if widths is None:
        yield from _stacked(cells, width)
        return
    for at, row in enumerate(cells):
        for line in _row(row, widths):
            yield (("head" if at == 0 else "", line),)
        if at == 0:
            yield (("quiet", GAP.join("-" * w for w in widths)),)


def _column_widths(natural: list[int], room: int) -> list[int] | None:
    """Column widths that fit: the natural ones, or the widest cut down; None when a column would become too tight."""
    widths = list(natural)
    while sum(widths) > room:
        widest = max(range(len(widths)), key=lambda i: widths[i])
        if widths[widest] <= TIGHTEST_CELL:
            return None
        widths[widest] -= 1
    return widths


def _row(row: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    parts = [textwrap.wrap(c, w) or [""] for c, w in zip(row, widths, strict=True)]
    for i in range(max(len(p) for p in parts)):
        yield GAP.join((p[i] if i < len(p) else "").ljust(w) for p, w in zip(parts, widths, strict=True)).rstrip()


def _stacked(cells: Sequence[Sequence[str]], width: int) -> Iterator[Line]:
    header, *rest = cells
    for row in rest or [header]:
        yield from _wrapped("head", row[0], width)
        for name, value in zip(header[1:], row[1:], strict=True):
            if value:
                yield from _wrapped("", f"{name}: {value}" if rest and name else value, width, "  ", 4)
