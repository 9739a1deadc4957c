"""The look of the prompt: few, quiet colours that hold on dark and light screens, never the only sign (layer 6)."""

from __future__ import annotations

STYLE: dict[str, str] = {
    "mark": "bold",
    "lead": "bold",
    "head": "bold",
    "caution": "bold ansiyellow",
    "rule": "italic",
    "doubt": "italic",
    "ask": "ansicyan",
    "digit": "bold ansicyan",
    "choice": "",
    "source": "",
    "example": "ansicyan",
    "quiet": "ansibrightblack",
    "seen-fish": "bold underline ansicyan",
    "seen-feature": "underline ansigreen",
    "seen-place": "italic underline ansimagenta",
    "seen-measure": "underline ansiyellow",
    "bottom-toolbar": "noreverse ansibrightblack",
    "bottom-toolbar.text": "noreverse ansibrightblack",
    "bar-value": "nobold ansidefault",
    "bar-asked": "bold ansicyan",
    "completion-menu": "bg:default default",
    "completion-menu.completion": "noreverse bg:default default",
    "completion-menu.completion.current": "reverse bold",
    "completion-menu.meta.completion": "noreverse bg:default ansibrightblack",
    "completion-menu.meta.completion.current": "reverse",
}
"""Style name to its rule; names of pieces of an answer are those of ``render.terminal``.

``quiet`` is grey, which some screens show as nothing; NO_COLOR leaves only bold, italic and underline.
"""
