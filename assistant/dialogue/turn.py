"""One turn of a conversation as a handler sees it, and what a handler is (layer 4).

The engine has already carried over into ``held`` what the line says of place, water, date, season, lengths, weights,
sex, stage, breeding state and units. It has NOT carried over ``seen``, ``hints`` (identify and undo do that) or taxa.
After the handler the engine sets ``held.intent``, ``held.last``, ``held.asked``, ``held.before``, and ``held.taxa``
(from ``Answer.taxa`` where there are any); a handler changes nothing else than what is its own to change.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import TYPE_CHECKING, NamedTuple

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase

if TYPE_CHECKING:
    from assistant.reasoning.tables import Table


SHORTER = frozenset({"shorter", "length-of-answer"})
"""Cues of a line that wants less of the answer."""


class Turn(NamedTuple):
    """The base, the line as read, what the conversation holds, and the day; the table is compiled when asked for."""

    kb: KnowledgeBase
    reading: Reading
    held: Held
    clock: date
    compiled: Callable[[], Table]
    intent: str = ""

    @property
    def table(self) -> Table:
        """The score table of the base (only what scores a catch should ask for it: it costs time)."""
        return self.compiled()

    @property
    def cues(self) -> frozenset[str]:
        """The cue ids of the line, without their ``cue-`` prefix ("contrast", "how-sure", "more")."""
        return frozenset(c.removeprefix("cue-") for c in self.reading.cues)

    def with_reading(self, reading: Reading) -> Turn:
        """The same turn with another reading of the line."""
        return self._replace(reading=reading)


Handler = Callable[[Turn], tuple[Answer, Held]]
"""What a handler module's ``handle`` is. It never raises on any reading; what it cannot answer it says."""
