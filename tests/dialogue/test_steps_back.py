"""Told colours and a bare "no" keep the story, undo steps back a turn at a time, and ways of asking found in talks."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk

STORY = ("sunfish with a black ear", "the ear has a red spot")


@pytest.mark.parametrize("line", ["it was green", "no", "nope", "it was 7 inches"])
def test_nothing_told_of_the_fish_takes_the_story_back(line: str, talk: Talk) -> None:
    """The observations of the turns before stay, whatever bare word or colour follows."""
    _, before = talk(*STORY)
    answer, held = talk(*STORY, line)
    assert answer.intent != "undo"
    assert {s.observation for s in before.seen} <= {s.observation for s in held.seen}


def test_undo_steps_back_one_turn_at_a_time(talk: Talk) -> None:
    """Three turns are taken back by three undos, each a turn further; then nothing is left."""
    lines = (*STORY, "7 inches")
    for steps in range(1, len(lines)):
        _, now = talk(*lines, *["undo"] * steps)
        _, then = talk(*lines[: len(lines) - steps])
        assert (now.seen, now.lengths) == (then.seen, then.lengths)
    _, emptied = talk(*lines, *["undo"] * len(lines))
    assert not emptied.seen
    assert not emptied.lengths


@pytest.mark.parametrize("line", ["wait 27 not 17", "27 not 17", "make it 27, not 17"])
def test_a_length_is_put_right_by_its_figure_alone(line: str, talk: Talk) -> None:
    """A bare number beside the denied figure of the length told replaces it, even while a feature is asked for."""
    answer, held = talk("broken stripes and a humped back, 17 inches", line)
    assert answer.intent == "undo" and [round(float(m.low) / 25.4) for m in held.lengths] == [27]
    assert held.seen


def test_a_turn_not_understood_is_no_step(talk: Talk) -> None:
    """Small talk between two observations does not use up an undo."""
    _, held = talk(*STORY, "thanks", "undo")
    _, then = talk(STORY[0])
    assert held.seen == then.seen


def test_a_place_put_right_is_said_as_in_a_sentence(talk: Talk) -> None:
    """A region or river that takes "the" has it wherever it is named."""
    answer, _ = talk("does the smallmouth bass live in Ohio", "no, i meant the ozarks")
    assert answer.blocks[0].text == "Corrected: the Ozarks."


@pytest.mark.parametrize(
    ("lines", "intent"),
    [
        (("I caught a fish",), "identify"),
        (("bass with a big mouth", "Oklahoma"), "identify"),
        (("which has the longer jaw, largemouth or smallmouth",), "contrast"),
        (("is there a trick for telling sauger from walleye",), "contrast"),
        (("are bowfin good to eat",), "handling"),
        (("got stung by a brown bullhead", "how long will it hurt"), "handling"),
        (("tell me about carp", "can I throw it on the bank"), "handling"),
        (("is the longear sunfish threatened",), "habitat"),
        (("redear, pumpkinseed and bluegill", "which of them eat snails"), "habitat"),
        (("I already have 30 bluegill in the freezer",), "rules"),
        (("name some fish that eat snails",), "list"),
        (("is a wiper a real species",), "hybrids"),
        (("units metric",), "small-talk"),
        ((*STORY, "make a key for bluegill, pumpkinseed and green sunfish", "leave out the bluegill"), "key"),
        (("can I eat a bluegill", "in metric please"), "small-talk"),
    ],
)
def test_what_is_asked_is_recognised(lines: tuple[str, ...], intent: str, talk: Talk) -> None:
    """The intent of the last line in its conversation."""
    assert talk(*lines)[0].intent == intent


def test_a_fish_between_two_is_taken_for_their_cross(talk: Talk) -> None:
    """The two fishes named as the parents are kept."""
    answer, _ = talk("something between a bluegill and a pumpkinseed, orange spot on the ear, faint bars")
    assert answer.intent == "hybrids"
    assert {"lepomis-macrochirus", "lepomis-gibbosus"} <= set(answer.taxa)


def test_other_units_are_no_medical_matter(talk: Talk) -> None:
    """ "in metric please" changes the units, says so, and gives no advice of its own."""
    answer, held = talk("can I eat a bluegill", "in metric please")
    assert held.units == "metric"
    assert not any(b.statements for b in answer.blocks)


def test_a_loose_name_settled_by_a_mark_put_right(talk: Talk) -> None:
    """After a loose name was asked about, a mark put right points to the fish that is named for it."""
    answer, held = talk("whats a brim exactly", "the one with the red ear", "no i meant red belly")
    assert answer.intent == "undo" and answer.taxa[0] == "lepomis-auritus"
    assert any('"redbelly" is a name of the redbreast sunfish' in b.text for b in answer.blocks)
    assert [s.observation.character for s in held.seen] == ["breast-colour"]


def test_whiskers_in_pairs(talk: Talk) -> None:
    """Four pairs around the mouth are eight barbels, and the family that they mean is told of."""
    answer, held = talk("Ask me one thing at a time and I will look at the fish.", "Yes, four pairs around the mouth.")
    assert [s.observation.states for s in held.seen] == [("barbels.eight",)]
    assert "catfish family" in answer.blocks[0].text and "taxon:ictaluridae" in answer.blocks[0].statements
