"""Tackle: one set-up that works, the thing asked for first, sourced or marked as common practice."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.tackle import handle
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
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
        ("bowfin on a lure possible", "amia-calva", ("jigs", "spinnerbaits")),
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


@pytest.mark.parametrize(("line", "first"), [
    ("is a number 8 hook bigger than a number 4", "hook-numbers"),
    ("How do hook sizes work?", "hook-numbers"),
    ("Why do I keep missing bites from bluegill?", "hook-bluegill"),
    ("When do walleye bite best?", "time-walleye"),
    ("What time of day is best for bluegill?", "time-sunfish"),
    ("best time of year to catch bluegill", "season-sunfish"),
    ("best month for white bass", "season-white-bass"),
    ("How do I catch bigger bluegill instead of little ones?", "big-bluegill-hook"),
    ("where do i find big bluegills", "depth-bluegill-summer"),
    ("ice fishing bluegill depth", "depth-bluegill-ice"),
    ("how do I catch crappie through the ice", "jig-perch-ice"),
    ("whats the right line for bass", "line-bass"),
    ("line for walleye", "line-walleye"),
    ("catfish bait at night", "bait-catfishes"),
    ("best lure for largemouth in summer", "bait-bass"),
    ("how do you set a circle hook", "circle-catfish"),
    ("Can I catch bluegill without a bobber?", "float-none"),
    ("why wont the bass bite", "time-any"),
    ("how do i start fishing", "setup-any"),
    ("minnows or worms for crappie", "bait-crappie"),
])
def test_the_practice_asked_for_leads(line: str, first: str, talk: Talk) -> None:
    """Numbers of hooks, times, seasons, lines, baits, ice: what is held of the thing asked for is told first."""
    answer, _ = talk(line)
    assert answer.intent == "tackle" and answer.blocks[0].statements == (f"practice:{first}",)
    assert "You also asked" not in text(answer)


def test_a_season_alone_goes_on_with_what_was_asked(talk: Talk) -> None:
    """ "And in summer" after a depth in spring tells the depth in summer."""
    answer, _ = talk("How deep should I fish for crappie in spring?", "and in summer")
    assert answer.intent == "tackle" and answer.blocks[0].statements == ("practice:depth-crappie-summer",)


def test_where_a_fish_is_in_a_season_begins_with_its_depth_then(talk: Talk) -> None:
    """ "Where are crappie in summer" begins with the depth held for that season."""
    answer, _ = talk("where are crappie in summer")
    assert answer.intent == "habitat" and answer.blocks[0].statements == ("practice:depth-crappie-summer",)


@pytest.mark.parametrize(("line", "begins"), [
    ("do bluegill like corn", "Nothing on corn is told"),
    ("can you catch sunfish on bread", "Nothing on bread is told"),
    ("can I use worms for bass", "Nothing on worms is told"),
    ("will a crappie bite on a worm", "Yes, for crappies: live minnows beat worms"),
    ("do carp like corn", "Yes, for carps: "),
    ("do redears take crickets", "Fish the bottom"),
])
def test_whether_a_fish_takes_a_bait_is_answered(line: str, begins: str, talk: Talk) -> None:
    """Yes where the bait stands in what is held for these fishes, that nothing is told where it does not."""
    answer, _ = talk(line)
    assert answer.intent == "tackle" and answer.blocks[0].text.startswith(begins)


def test_how_is_not_answered_with_yes(talk: Talk) -> None:
    """A question that begins with how gets no yes."""
    assert not talk("how do you fish for bowfin")[0].blocks[0].text.lower().startswith(("yes", "bowfin: yes"))


def test_depth_after_tackle(talk: Talk) -> None:
    """ "How deep" after bait and hooks asks for the depth to fish at; where none is held, where the fish live."""
    answer, _ = talk("hook size for red ears, crickets ok?", "how deep")
    assert answer.intent == "tackle" and "On the bottom in 6 to 20 ft" in answer.blocks[0].text
    answer, _ = talk("best bait for crappie", "how far down")
    assert answer.intent == "tackle" and "shot" not in answer.blocks[0].text
