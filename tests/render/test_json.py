"""Answers for programs."""

from __future__ import annotations

from decimal import Decimal

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.reading import Measure, Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Observation
from assistant.render.json import render_json


def test_what_is_held_comes_out_in_plain_values(kb: KnowledgeBase) -> None:
    """Places as codes, lengths as lists, observations with state or value, hybrids by their parents in order."""
    seen = (
        Seen(Observation("dorsal-spines", value=10.0), "ten spines", 0, 10),
        Seen(
            Observation("opercular-flap-edge", ("opercular-flap-edge.none-all-dark",), seen=False, hedged=True),
            "",
            0,
            0,
        ),
    )
    length = Measure("length", Decimal(200), Decimal(210), "mm", "20 cm", 0, 5)
    held = Held(seen=seen, lengths=(length,), places=("us-oh",), sex="male")
    out = render_json(kb, "hi", "c1", Answer("describe", (), ("lepomis-cyanellus-x-lepomis-gibbosus",)), held)
    assert out["taxa"] == ["Lepomis cyanellus x Lepomis gibbosus"]
    assert out["length_mm"] == [200, 210]
    assert out["place"] == "US-OH"
    assert out["sex"] == "male"
    assert out["observed"][0]["value"] == 10
    assert out["observed"][1] == {
        "character": "opercular-flap-edge",
        "seen": False,
        "hedged": True,
        "state": "none-all-dark",
    }


def test_the_question_back_lists_its_choices(kb: KnowledgeBase) -> None:
    """``next`` holds character, question and choices in words; null when nothing is asked."""
    asked = Asked("character", "How many?", "barbels", (("barbels.four", "four"), ("barbels.none", "none")))
    out = render_json(kb, "", None, Answer("identify", (Block("next", "How many?", claim=False),), asked=asked), Held())
    assert out["next"] == {"character": "barbels", "question": "How many?", "choices": ["four", "none"]}
    assert render_json(kb, "", None, Answer("help", ()), Held())["next"] is None
