"""Yes or no on how fishes live, what nests measure, where they are in winter, and what is nowhere held."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("line", "start"),
    [
        ("can green sunfish live in muddy ponds", "Yes. Water of the green sunfish"),
        ("do warmouth like logs", "Yes. Water of the warmouth"),
        ("do white crappie like clear or cloudy water", "Cloudy water. Water"),
        ("do largemouth bass eat bluegill", "Yes. Food of the largemouth bass"),
        ("do walleye eat yellow perch", "Yes. Food of the walleye"),
        ("do crappies eat minnows", "Yes: "),
        ("do bullheads live in muddy water", "Yes, some of them"),
        ("is the dollar sunfish found in ponds", "Not that the base tells. Water"),
        ("what time of day do bluegill feed", "Time of activity of the bluegill"),
        ("when do walleye feed", "Time of activity of the walleye"),
        ("what kind of water do bluegills like", "Water of the bluegill"),
        ("where do mud sunfish hide", "Water of the mud sunfish"),
        ("how wide is a redbreast nest", "Nests of the redbreast sunfish"),
        ("how big is a longear nest", "The size of the nest of the longear sunfish is not held"),
        ("how long do bluegill eggs take to hatch", "The hatching time of the eggs of the bluegill is not held"),
        ("at what age do dollar sunfish mature", "Age at first breeding of the dollar sunfish: matures at 2"),
        ("where do smallmouth bass go in winter", "Smallmouth bass: 2 to 10 ft"),
        ("where are crappies in winter", "Under ice in"),
        ("how deep do bluegill nest", "Nests of the bluegill: nests in large groups, 0.3"),
        ("how hot can the water get for a bluegill", "Warm-water limit of the bluegill"),
        ("what do baby bass eat", "What is held speaks of grown fish"),
    ],
)
def test_life_answered(talk: Talk, line: str, start: str) -> None:
    """The first line answers what was asked."""
    answer, _ = talk(line)
    assert answer.intent == "habitat" and answer.blocks[0].text.startswith(start)


@pytest.mark.parametrize(
    "line", ["which sunfishes like muddy water", "which catfish live in lakes", "what fish eat snails",
             "which fishes nest in holes", "fish spawning in may in ohio"])
def test_kinds_by_how_they_live(talk: Talk, line: str) -> None:
    """Kinds asked for by water, food, nest or season are listed, and not all of a group."""
    answer, _ = talk(line)
    assert answer.intent == "list" and answer.blocks[0].statements and len(answer.taxa) > 1


def test_a_word_for_spawning_again_in_degrees(talk: Talk) -> None:
    """"How warm" after the spawning season asks for the water they spawn in."""
    answer, _ = talk("when do bluegill spawn", "how warm")
    assert answer.blocks[0].text.startswith("Spawning temperature of the bluegill")


@pytest.mark.parametrize("line", ["why are the bluegill in my pond so small", "my bluegills never get big, why"])
def test_a_crowded_pond(talk: Talk, line: str) -> None:
    """Fish that stay small: what is known of crowded ponds."""
    answer, _ = talk(line)
    assert answer.intent == "why" and "stunted" in answer.blocks[0].text
