"""What an answer is about besides the fishes it names stays with a talk about the same fishes."""

from __future__ import annotations

from tests.dialogue.conftest import Talk


def test_a_group_stays_through_follow_ups(talk: Talk) -> None:
    """A talk on bullheads is still on the genus when a follow-up names nothing; on another fish it is not."""
    assert "ameiurus" in talk("how do I hold a bullhead")[0].wider
    assert "ameiurus" in talk("how do I hold a bullhead", "will it sting me")[0].wider
    assert "ameiurus" not in talk("how do I hold a bullhead", "how do I hold a bluegill")[0].wider
