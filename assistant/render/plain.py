"""An answer as plain text: what a pipe, a screen reader or the plain prompt shows (layer 5)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.answer import Answer, Block
from assistant.text import strip_controls

BULLET = "- "
WIDEST_CELL = 40


def render_plain(answer: Answer, width: int = 0) -> str:
    """The whole answer; wrapped to ``width`` columns where that is given, one line a block where it is 0."""
    lines: list[str] = []
    for block in answer.blocks:
        lines += _block(block, width)
    return "\n".join(lines)


def _block(block: Block, width: int) -> list[str]:
    out = [line for part in block.text.split("\n") if part.strip() for line in _text(block, part, width)]
    return out + (table_lines(block.rows) if block.rows else [])


def _text(block: Block, part: str, width: int) -> list[str]:
    lead = BULLET if block.kind in ("point", "sources") else ""
    text = strip_controls(part).strip()
    if not width:
        return [lead + text]
    import textwrap

    return textwrap.wrap(
        text,
        width,
        initial_indent=lead,
        subsequent_indent=" " * len(lead),
        break_long_words=True,
        break_on_hyphens=False,
    ) or [lead.rstrip()]


def table_lines(rows: Sequence[Sequence[str]]) -> list[str]:
    """A table in aligned columns, the header underlined."""
    if not rows:
        return []
    cells = [[strip_controls(c)[:WIDEST_CELL] for c in row] for row in rows]
    count = max(len(r) for r in cells)
    cells = [r + [""] * (count - len(r)) for r in cells]
    widths = [max(len(r[i]) for r in cells) for i in range(count)]
    out = ["  ".join(c.ljust(w) for c, w in zip(row, widths, strict=True)).rstrip() for row in cells]
    return [out[0], "  ".join("-" * w for w in widths), *out[1:]]
