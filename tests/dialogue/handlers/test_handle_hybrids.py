"""Hybrids: yes or no first, what is held of a cross, and what looks cannot prove."""

from __future__ import annotations

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.hybrids import cross_of, handle
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import fish, turn_of

CROSS = "lepomis-cyanellus-x-lepomis-macrochirus"


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_two_fishes_that_cross(kb: KnowledgeBase) -> None:
    """Yes comes first, whichever way round they are named."""
    for pair in (("lepomis-macrochirus", "lepomis-cyanellus"), ("lepomis-cyanellus", "lepomis-macrochirus")):
        answer, _ = handle(turn_of(kb, "can they cross", *(fish(p) for p in pair)))
        assert answer.blocks[0].text.startswith("Yes") and answer.taxa[0] == CROSS
        assert f"taxon:{CROSS}" in answer.blocks[0].statements


def test_two_fishes_that_do_not(kb: KnowledgeBase) -> None:
    """No hybrid known: of one family it is not ruled out, of two it is said not to happen."""
    near, _ = handle(turn_of(kb, "can they cross", fish("sander-vitreus"), fish("perca-flavescens")))
    far, _ = handle(turn_of(kb, "can they cross", fish("sander-vitreus"), fish("lepomis-gibbosus")))
    assert near.blocks[0].text.startswith("No") and "one family" in near.blocks[0].text
    assert "different families" in far.blocks[0].text


def test_what_a_cross_is(kb: KnowledgeBase) -> None:
    """A saugeye is told by its parents, with fertility and the limits of looks."""
    answer, _ = handle(turn_of(kb, "what is that a cross of", fish("sander-canadensis-x-sander-vitreus")))
    assert "walleye" in answer.blocks[0].text and "sauger" in answer.blocks[0].text
    assert "fertility" in text(answer) and "genetic" in text(answer)


def test_follow_ups_lead_with_what_is_asked(kb: KnowledgeBase) -> None:
    """Are they sterile, which sex mostly: the fact asked for comes first."""
    held = Held(taxa=(CROSS,), intent="hybrids")
    sterile, _ = handle(turn_of(kb, "are the babies sterile", held=held))
    sex, _ = handle(turn_of(kb, "which sex mostly", held=held))
    assert sterile.blocks[0].text.startswith("In part") and "fertile" in sterile.blocks[0].text
    assert sex.blocks[0].text.startswith("Males")


def test_one_fish_lists_its_crosses(kb: KnowledgeBase) -> None:
    """The known crosses of a fish, the common ones first."""
    answer, _ = handle(turn_of(kb, "hybrids?", held=Held(taxa=("lepomis-megalotis",))))
    assert "Known crosses" in answer.blocks[0].text and "green sunfish" in answer.blocks[0].text


def test_hybrids_in_general(kb: KnowledgeBase) -> None:
    """A hybrid is no new species, it cannot be proved by eye, and it lies between its parents."""
    species, _ = handle(turn_of(kb, "is a hybrid fish a new species"))
    eye, _ = handle(turn_of(kb, "can you be certain its a hybrid by eye"))
    between, _ = handle(turn_of(kb, "do hybrids have both kinds of marks or halfway"))
    assert species.blocks[0].text.startswith("No")
    assert "genetic" in eye.blocks[0].text
    assert "between" in between.blocks[0].text and between.blocks[0].statements


def test_every_cross_is_found_by_its_parents(kb: KnowledgeBase) -> None:
    """Asking for the two parents of any cross held finds a cross."""
    for taxon in kb.species:
        parents = kb.taxon(taxon).parents
        if parents:
            assert cross_of(kb, *parents) is not None and cross_of(kb, *parents[::-1]) is not None


def test_fertility_over_all_crosses(kb: KnowledgeBase) -> None:
    """Can hybrids breed: it depends, with the counts of what is stated."""
    answer, _ = handle(turn_of(kb, "can hybrids breed with their parents"))
    assert "depends on the cross" in answer.blocks[0].text and answer.blocks[0].statements


def test_whether_a_cross_has_young_is_answered_yes_or_no(kb: KnowledgeBase) -> None:
    """The verdict is first and turns with the question: a fertile cross is not sterile."""
    saugeye = fish("sander-canadensis-x-sander-vitreus")
    fertile, _ = handle(turn_of(kb, "can they reproduce", saugeye))
    sterile, _ = handle(turn_of(kb, "are they sterile", saugeye))
    assert fertile.blocks[0].text.startswith("Yes") and sterile.blocks[0].text.startswith("No")
