"""One file an intent: the table of handlers, each imported when first asked for (layer 4).

A handler module holds ``handle(turn: Turn) -> tuple[Answer, Held]`` and no sentence: its wording lives in a
module. To add an intent: a line here, a row in ``recogniser/intent_rows.py`` with examples, the file, its test.
"""

from __future__ import annotations

import importlib
from collections.abc import Mapping
from typing import cast

from assistant.dialogue.turn import Handler

HANDLERS: Mapping[str, str] = {
    "identify": "identify",
    "contrast": "contrast",
    "describe": "describe",
    "list": "list_fishes",
    "hybrids": "hybrids",
    "range": "range",
    "size": "size",
    "weight": "weight",
    "rules": "rules",
    "handling": "handling",
    "tackle": "tackle",
    "habitat": "habitat",
    "names": "names",
    "term": "term",
    "why": "why",
    "sources": "sources",
    "next-question": "next_question",
    "undo": "undo",
    "help": "help",
    "key": "key",
    "quiz": "quiz",
    "out-of-scope": "out_of_scope",
    "small-talk": "small_talk",
}
"""Intent to the module below this package that answers it."""


def handler_of(intent: str) -> Handler:
    """The handler of an intent of the table."""
    return cast(Handler, importlib.import_module(f"{__name__}.{HANDLERS[intent]}").handle)
