"""What the bottom line tells."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.toolbar import empty_words, fitted, held_parts

FULL = Held(
    taxa=("lepomis-macrochirus", "lepomis-gibbosus", "lepomis-auritus"),
    places=("us-oh",),
    units="metric",
    date="2026-07-04",
    asked=Asked("character", "What is the ear flap like?", "opercular-flap-edge"),
)


def shown(kb: KnowledgeBase, held: Held, width: int) -> str:
    """The line as text."""
    return " | ".join(f"{name}: {value}" for name, value in fitted(held_parts(kb, held), width))


def test_everything_held_is_named(kb: KnowledgeBase) -> None:
    """Fish, place, units, day and the waiting question are shown, each with what it is."""
    text = shown(kb, FULL, 200)
    label = kb.character("opercular-flap-edge").label
    assert (
        text
        == f"asked: {label} | fish: bluegill, pumpkinseed +1 | place: Ohio | date: 2026-07-04 | units: metric first"
    )


@pytest.mark.parametrize("width", [0, 1, 5, 20, 39, 60, 79])
def test_line_never_runs_over(kb: KnowledgeBase, width: int) -> None:
    """However narrow the screen, the line fits."""
    assert len(shown(kb, FULL, width)) <= width and len(empty_words(width)) <= width


def test_narrow_screen_keeps_question_and_fish(kb: KnowledgeBase) -> None:
    """On a narrow screen the waiting question and the fish stay, the day and the units go."""
    text = shown(kb, FULL, 60)
    assert "asked" in text and "fish" in text and "date" not in text


def test_water_stands_for_its_place(kb: KnowledgeBase) -> None:
    """A water is shown by its name, an unknown one as it was called."""
    assert shown(kb, Held(water="vennimoor-lake"), 80) == "place: Vennimoor Lake"
    assert shown(kb, Held(water="the old pit\x1b[2J"), 80) == "place: the old pit"


def test_nothing_held(kb: KnowledgeBase) -> None:
    """An empty conversation has no parts."""
    assert held_parts(kb, Held()) == ()
