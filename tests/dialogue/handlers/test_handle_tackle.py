"""Tackle: one set-up that works, the thing asked for first, sourced or marked as common practice."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.tackle import handle
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import fish, group, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("line", "taxon", "must"),
    [
        ("best bait for channel cats at night", "ictalurus-punctatus", ("bait",)),
        ("line for musky", "esox-masquinongy", ("line", "leader")),
        ("redears wont take crickets why", "lepomis-microlophus", ("bottom", "snails")),
        ("what hook for bluegill", "lepomis-macrochirus", ("no. 8",)),
        ("rig for burbot", "lota-lota", ("bottom", "night")),
        ("circle hook or j hook", "ictalurus-punctatus", ("circle",)),
        ("ice jig size for perch", "perca-flavescens", ("ice", "smallest")),
        ("do white bass hit spinners", "morone-chrysops", ("spinners",)),
        ("bowfin on a lure possible", "amia-calva", ("yes", "jigs")),
        ("bait for a flathead live or dead", "pylodictis-olivaris", ("live",)),
        ("minnow rig light line size", "pomoxis-annularis", ("lb",)),
        ("gear for a kids first sunny", "lepomis-gibbosus", ("float",)),
    ],
)
def test_what_is_asked_for_is_told(kb: KnowledgeBase, line: str, taxon: str, must: tuple[str, ...]) -> None:
    """Bait, hook, line, rig: the words of the question decide what is told."""
    answer, _ = handle(turn_of(kb, line, fish(taxon)))
    assert all(m in text(answer) for m in must)
    assert answer.taxa == (taxon,)


def test_depth_under_ice_is_not_depth_in_summer(kb: KnowledgeBase) -> None:
    """The season asked about is answered."""
    ice, _ = handle(turn_of(kb, "crappie under ice how deep", group("crappies", "crappie")))
    summer, _ = handle(turn_of(kb, "how deep are they in june", fish("pomoxis-annularis")))
    assert ice.blocks[0].statements == ("practice:depth-crappie-ice",)
    assert "practice:depth-crappie-summer" in summer.blocks[0].statements


def test_which_one_is_answered_by_name(kb: KnowledgeBase) -> None:
    """Of two fishes compared before, the one that bites at the surface leads."""
    held = Held(taxa=("lepomis-microlophus",), shown=("lepomis-microlophus", "lepomis-auritus"))
    answer, _ = handle(turn_of(kb, "which one bites topwater", held=held, cues=("which-of",)))
    assert answer.taxa[0] == "lepomis-auritus"
    assert answer.blocks[0].text.startswith("Redbreast")


def test_common_practice_is_said_to_be_that(kb: KnowledgeBase) -> None:
    """Where no published text stands behind the whole answer, that is said."""
    answer, _ = handle(turn_of(kb, "rig for burbot", fish("lota-lota")))
    records = [kb.find("practice", s.partition(":")[2]) for b in answer.blocks for s in b.statements]
    assert all(r is not None and r.basis == "common-practice" for r in records)
    assert "common practice" in text(answer)
    sourced, _ = handle(turn_of(kb, "hook size for bluegill", fish("lepomis-macrochirus")))
    assert "not taken from a published text" not in text(sourced)


def test_nesting_males_are_spoken_for(kb: KnowledgeBase) -> None:
    """Asked about fishing the beds, the guarding males come up."""
    answer, _ = handle(turn_of(kb, "should i fish the beds", fish("lepomis-macrochirus")))
    assert "guard" in text(answer)


def test_bait_is_not_the_fish(kb: KnowledgeBase) -> None:
    """ "Crappie with minnows" is about crappies."""
    answer, _ = handle(
        turn_of(kb, "hook for crappie with minnows", group("crappies", "crappie"), group("minnows", "minnows"))
    )
    assert "pomoxis-annularis" in answer.taxa and "notemigonus-crysoleucas" not in answer.taxa
