"""Habitat: the side of life asked about first, both temperature scales, nothing guessed."""

from __future__ import annotations

from decimal import Decimal

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.habitat import handle
from assistant.dialogue.reader.reading import Measure
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, group, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("line", "taxon", "must"),
    [
        ("what do they eat", "lepomis-microlophus", "snails"),
        ("when do they spawn", "lepomis-macrochirus", "spawning season"),
        ("moving water or still", "ambloplites-rupestris", "rocky"),
        ("what temp does it spawn at", "lepomis-cyanellus", "°"),
        ("is it able to breathe air", "amia-calva", "yes"),
        ("does it spawn in winter", "lota-lota", "winter"),
        ("what eats a bluegill", "lepomis-macrochirus", "bass"),
        ("why are my pond ones all 4 inches", "lepomis-macrochirus", "crowded"),
    ],
)
def test_the_side_asked_about_leads(kb: KnowledgeBase, line: str, taxon: str, must: str) -> None:
    """Food, season, water, temperature, air: the first block answers."""
    answer, _ = handle(
        turn_of(kb, line, fish(taxon), cues=("asks-do",) if line.startswith(("is", "does")) else ())
    )
    assert must in " ".join(b.text for b in answer.blocks[:2]).lower()
    assert answer.blocks[0].statements


def test_memory_is_said(kb: KnowledgeBase) -> None:
    """What nobody looked up is marked; what was read is not."""
    told = 0
    for taxon in kb.species:
        answer, _ = handle(turn_of(kb, "what do they eat", fish(taxon)))
        for block in answer.blocks:
            records = [kb.record_at(s) for s in block.statements if s.startswith("st:")]
            if records and all(r is not None and r.basis == "memory" for r in records):
                assert "from memory" in block.text
                told += 1
    assert told


def test_a_follow_up_keeps_the_side(kb: KnowledgeBase) -> None:
    """ "And the other?" is answered with the same side of life."""
    first, held = handle(turn_of(kb, "what does it eat", fish("lepomis-microlophus")))
    after = held.after(intent="habitat", last=first, taxa=("lepomis-microlophus",))
    second, _ = handle(turn_of(kb, "the other", fish("lepomis-macrochirus"), held=after))
    assert second.blocks[0].text.startswith("Food")


def test_up_north_asks_where(kb: KnowledgeBase) -> None:
    """A vague direction asks for a state."""
    held = Held(taxa=("lepomis-macrochirus",), intent="habitat")
    answer, _ = handle(turn_of(kb, "up north i mean when do they spawn", held=held))
    assert answer.asked is not None and answer.asked.kind == "place"


def test_what_is_not_held_is_said(kb: KnowledgeBase) -> None:
    """A side with no statement is said to be missing, and something held is told instead."""
    missing = next(
        t
        for t in kb.species
        if not kb.taxon(t).is_hybrid
        and not [s for k in kb.lineage(t) for s in kb.statements(k) if s.character == "spawning-temperature"]
    )
    answer, _ = handle(turn_of(kb, "spawning temperature", fish(missing)))
    lead, *rest = answer.blocks
    assert lead.text == f"The spawning temperature of the {kb.taxon(missing).label} is not held in this base."
    assert rest and all(b.statements for b in rest)


def test_what_holds_of_a_group_is_told_once(kb: KnowledgeBase) -> None:
    """The same statements inherited by several kinds make one line, of the group."""
    answer, _ = handle(
        turn_of(kb, "do they guard their young", group("gars", "gars"), cues=("asks-do",))
    )
    assert any("of gars" in b.text for b in answer.blocks)
    keys = [b.statements for b in answer.blocks if b.statements]
    assert len(keys) == len(set(keys))


def test_remarks_on_what_was_opened_stay_with_curators(kb: KnowledgeBase) -> None:
    """No answer tells readers which book was not opened."""
    for taxon in kb.species:
        answer, _ = handle(turn_of(kb, "tell me its life", fish(taxon)))
        assert "not opened" not in text(answer), taxon


def test_beds_come_with_a_word_for_the_males(kb: KnowledgeBase) -> None:
    """Beds spoken of: the guarding males are spoken for."""
    answer, _ = handle(turn_of(kb, "should i fish the beds", fish("lepomis-macrochirus")))
    assert any(b.kind == "caution" and "guard" in b.text for b in answer.blocks)


def test_warm_water_told_is_warned_of(kb: KnowledgeBase) -> None:
    """Water of 72 F and trout: stop releasing, before anything on where trout live."""
    warm = Measure("temperature", Decimal("22.2"), Decimal("22.2"), "F", "72 degrees", 0, 1)
    answer, _ = handle(
        turn_of(kb, "water is 72 degrees can i fish trout", fish("oncorhynchus-mykiss"), measures=(warm,))
    )
    assert answer.blocks[0].statements == ("caution:heat-trout-watch",)


def test_a_depth_of_another_season_is_not_told(talk: Talk) -> None:
    """Where a bluegill stays in fall is not answered with the depth of its beds or under ice."""
    answer, _ = talk("how deep are bluegill in fall")
    told = " ".join(b.text for b in answer.blocks)
    assert "stays in autumn is not held" in told and "Under ice" not in told and "beds" not in told.lower()


@pytest.mark.parametrize("lines", [("what is a bluegill", "is it endangered"),
                                   ("is the spotted gar threatened in ontario",)])
def test_a_standing_that_is_not_held_is_all_that_is_said(talk: Talk, lines: tuple[str, ...]) -> None:
    """Asked how a fish stands, the base says that it does not know and where to look, and tells of no food."""
    answer, _ = talk(*lines)
    assert answer.intent == "habitat" and "status" in text(answer) and "not held" in text(answer)
    assert "current list" in text(answer) and "food" not in text(answer) and "native" not in text(answer)


def test_a_standing_that_is_held_is_told(talk: Talk) -> None:
    """The lake sturgeon is listed as threatened, in other words of asking, too."""
    for line in ("is the lake sturgeon endangered", "conservation status of the lake sturgeon"):
        assert "threatened" in text(talk(line)[0]), line
