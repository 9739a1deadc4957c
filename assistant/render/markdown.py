"""Comparisons and keys as text and as Markdown (layer 5)."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from assistant.dialogue.beside.comparison import Comparison, Row
from assistant.dialogue.lessons.levels import lead_words
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key import Key, Lead
from assistant.render.tables import markdown_table, text_table
from assistant.text import join


def comparison_rows(found: Comparison, rows: Sequence[Row]) -> list[list[str]]:
    """A comparison as rows of text, the head first."""
    return [[say.FEATURE, *found.names], *([r.feature, *(c.marked for c in r.cells)] for r in rows)]


def comparison_text(found: Comparison, shared: bool = False, width: int = 100) -> str:
    """A comparison for a terminal or a mail."""
    parts = [textwrap.fill(found.title, width), text_table(comparison_rows(found, found.rows), width) if found.rows
             else say.NOTHING_SEPARATES]
    if shared and found.shared:
        parts += [say.ALIKE, text_table(comparison_rows(found, found.shared), width)]
    for group in (found.notes, found.legend(shared)):
        if group:
            parts.append("\n".join(textwrap.fill(n, width) for n in group))
    return "\n\n".join(parts) + "\n"


def comparison_markdown(found: Comparison, shared: bool = False) -> str:
    """A comparison as Markdown."""
    parts = [f"# {found.title}", markdown_table(comparison_rows(found, found.rows)) if found.rows
             else say.NOTHING_SEPARATES]
    if shared and found.shared:
        parts += [f"## {say.ALIKE}", markdown_table(comparison_rows(found, found.shared))]
    for group in (found.notes, found.legend(shared)):
        if group:
            parts.append("\n".join("- " + n.replace("*", r"\*", 1) if n.startswith("*") else "- " + n for n in group))
    return "\n\n".join(parts) + "\n"


def end_words(kb: KnowledgeBase, lead: Lead, scientific: bool = True) -> str:
    """Where a lead goes: a number, a fish, or several fishes that are not parted."""
    if lead.goes_to:
        return str(lead.goes_to)
    names = [speak.fish_both(kb, t) if scientific else speak.fish(kb, t) for t in lead.taxa]
    return names[0] if len(names) == 1 else say.together(join(names, "or"))


def key_lines(kb: KnowledgeBase, key: Key, level: str = "plain", width: int = 100) -> list[str]:
    """The couplets of a key, each lead on its own line with its end at the right."""
    lines: list[str] = []
    for couplet in key.couplets:
        for letter, lead in zip("ab", couplet.leads, strict=True):
            head = f"{couplet.number}{letter}".ljust(5)
            text = lead_words(kb, couplet.character, lead, level)
            lines += _lead_lines(head, text, end_words(kb, lead), width)
        lines.append("")
    return lines[:-1]


def _lead_lines(head: str, text: str, end: str, width: int) -> list[str]:
    wrapped = textwrap.wrap(text, width - len(head) - 8) or [""]
    lines = [head + wrapped[0], *(" " * len(head) + " " + w for w in wrapped[1:])]
    dots = width - len(lines[-1]) - len(end) - 2
    if dots >= 3:
        lines[-1] += " " + "." * dots + " " + end
        return lines
    tail = textwrap.wrap(end, width - len(head) - 6) or [""]
    return [*lines, *(" " * len(head) + ("  -> " if i == 0 else "     ") + t for i, t in enumerate(tail))]


def key_text(kb: KnowledgeBase, key: Key, title: str, notes: Sequence[str], level: str = "plain",
             width: int = 100) -> str:
    """A key for a terminal or a mail; where nothing parts the fishes, that alone is said."""
    if not key.couplets:
        return "\n\n".join(textwrap.fill(p, width) for p in (title, *notes)) + "\n"
    parts = [textwrap.fill(title, width), textwrap.fill(say.key_how(len(key.taxa), key.look), width),
             "\n".join(key_lines(kb, key, level, width))]
    if notes:
        parts.append("\n".join(textwrap.fill(n, width) for n in notes))
    return "\n\n".join(parts) + "\n"


def key_markdown(kb: KnowledgeBase, key: Key, title: str, notes: Sequence[str], level: str = "plain") -> str:
    """A key as Markdown: a table of leads."""
    parts = [f"# {title}", say.key_how(len(key.taxa), key.look), markdown_table(key_rows(kb, key, level))]
    if notes:
        parts.append("\n".join(f"- {n}" for n in notes))
    return "\n\n".join(parts) + "\n"


def key_rows(kb: KnowledgeBase, key: Key, level: str) -> list[list[str]]:
    """The leads of a key as rows: number, what it says, where it goes."""
    rows = [list(say.KEY_COLUMNS)]
    for couplet in key.couplets:
        rows += [[f"{couplet.number}{letter}", lead_words(kb, couplet.character, lead, level), end_words(kb, lead)]
                 for letter, lead in zip("ab", couplet.leads, strict=True)]
    return rows
