"""Phrases found in a line are not joined over words that belong elsewhere (readings: common practice, no source)."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.model.knowledge import KnowledgeBase

CLOCK = date(2026, 7, 4)


def _characters(kb: KnowledgeBase, line: str) -> set[str]:
    return {s.observation.character for s in read_line(kb, line, Held(), CLOCK).seen}


@pytest.mark.parametrize(
    ("line", "told", "untold"),
    [
        ("catfish with a forked tail and spots", {"caudal-fin-shape", "body-spots"}, {"caudal-spots"}),
        ("forked tail and dark spots", {"caudal-fin-shape", "body-spots"}, {"caudal-spots"}),
        ("black dot with an orange ring at the tail", {"caudal-base-spot"}, {"body-spots", "tail-fin-colour"}),
        ("any fish round here w teeth on the tongue", {"tongue-teeth"}, {"body-form"}),
        ("pale blue dots on the side", {"body-spots"}, {"nape-patch"}),
        ("fish with 7 spines in the back fin", {"dorsal-spines"}, {"fin-spines"}),
        ("no scales whiskers", {"body-covering", "barbels"}, set()),
        ("red eye, big mouth, mud bottom", {"upper-jaw-reach"}, {"mouth-position"}),
        ("peppered w tiny blue white dots", {"body-spots"}, {"body-bars"}),
        ("w shaped marks on the side", {"body-bars"}, {"body-spots"}),
        ("long fin on the back, red river at selkirk", {"dorsal-base-length"}, {"median-fin-marks"}),
        ("dark smudge at the back of the soft dorsal", {"soft-dorsal-blotch"}, {"dorsal-fin-arrangement"}),
    ],
)
def test_words_go_to_the_mark_they_tell_of(line: str, told: set[str], untold: set[str], kb: KnowledgeBase) -> None:
    """A part told of already lends itself to no further mark, and "round here" makes no fish round."""
    found = _characters(kb, line)
    assert told <= found and not untold & found


@pytest.mark.parametrize(
    ("line", "state"),
    [
        ("dark spots on the side", "body-spots.dark-on-light"),
        ("a read edge on the ear", "opercular-flap-edge.red-or-orange-band"),
        ("jaw goes passed the eye", "upper-jaw-reach.past-eye"),
        ("i read that the tail is forked", "caudal-fin-shape.forked"),
        ("the bottom jaw sticks out past the top one", "mouth-position.lower-jaw-projects"),
        ("black lines on the side, the low ones snap and shift over", "stripe-pattern.broken"),
        ("thin orange rim on the ear", "opercular-flap-edge.red-or-orange-band"),
        ("dark blotches on the side", "body-mottling.dark-blotches"),
    ],
)
def test_the_very_words_of_a_state_win(line: str, state: str, kb: KnowledgeBase) -> None:
    """Where two marks share their stems, the one whose label is typed is meant."""
    assert [x for s in read_line(kb, line, Held(), CLOCK).seen for x in s.observation.states] == [state]
