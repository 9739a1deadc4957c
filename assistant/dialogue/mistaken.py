"""Which other fish the marks told in a line plainly fit, where one is named for it (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.observing import evidence_of, observe
from assistant.dialogue.turn import Turn

FITS_BETTER = 0.5
"""Probability from which a fish not named is told of beside those that were."""


def fits_better(turn: Turn, taxa: Sequence[str]) -> str:
    """The fish of another kind than those named that the marks told in the line fit best of all; "" where none."""
    if not any(not s.retract for s in turn.reading.seen):
        return ""
    from assistant.reasoning.identify import identify

    found = identify(turn.kb, turn.table, evidence_of(observe(turn.kb, turn.held, turn.reading, afresh=True)))
    first = next(iter(found.candidates), None)
    return first.taxon if first is not None and first.taxon not in taxa and first.probability >= FITS_BETTER else ""
