"""Weight: from a length, from a girth, back to a length; fat or thin; honest limits."""

from __future__ import annotations

from decimal import Decimal

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.weight import handle
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import fish, group, length, pounds, turn_of, weight


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_weight_of_a_length(kb: KnowledgeBase) -> None:
    """A 20 inch walleye weighs about 3.1 lb by its standard weight (FSA table: 508 mm is 1418 g)."""
    answer, _ = handle(turn_of(kb, "weight", fish("sander-vitreus"), measures=(length("20 in", "20"),)))
    assert "3.1 lb" in answer.blocks[0].text and "kg" in answer.blocks[0].text
    assert answer.blocks[0].statements == ("size:sander-vitreus.standard-weight",)


def test_length_of_a_weight(kb: KnowledgeBase) -> None:
    """A walleye of 3 lb 11 oz is about 21 inches long."""
    measure = weight("3 lb 11 oz", Decimal("1672.6"))
    answer, _ = handle(turn_of(kb, "ballpark the length", fish("sander-vitreus"), measures=(measure,)))
    assert "21.1 in" in answer.blocks[0].text


def test_girth_is_used(kb: KnowledgeBase) -> None:
    """With a girth the tape formula leads, and is said to be rough."""
    girth = length("13 inch girth", "13", kind="girth")
    answer, _ = handle(turn_of(kb, "pounds", fish("micropterus-nigricans"), measures=(length("18 in", "18"), girth)))
    assert "3.8 lb" in answer.blocks[0].text and "rough" in answer.blocks[0].text
    assert answer.blocks[0].statements == ("practice:girth-formula",)


def test_fat_or_thin(kb: KnowledgeBase) -> None:
    """Length and weight together give the share of the standard weight."""
    answer, _ = handle(
        turn_of(kb, "fat or thin", fish("ictalurus-punctatus"), measures=(length("26 in", "26"), pounds("7.5")))
    )
    assert "110 %" in answer.blocks[0].text and "good shape" in answer.blocks[0].text


def test_the_same_length_for_another_fish(kb: KnowledgeBase) -> None:
    """ "And a redear the same length" uses the length told before."""
    held = Held(taxa=("lepomis-macrochirus",), lengths=(length("11 in", "11"),), intent="weight")
    answer, _ = handle(turn_of(kb, "and a redear same length", fish("lepomis-microlophus"), held=held))
    assert "redear sunfish of 11 in" in answer.blocks[0].text
    assert "in doubt" in text(answer)


def test_limits_are_said(kb: KnowledgeBase) -> None:
    """Too short, too long, a fork length, a borrowed line: each is said."""
    short, _ = handle(turn_of(kb, "weight", fish("micropterus-nigricans"), measures=(length("3 in", "3"),)))
    assert "shorter than the fish the line was made for" in text(short)
    fork = length("20 in fork", "20", method="fork")
    turned, _ = handle(turn_of(kb, "weight", fish("salvelinus-namaycush"), measures=(fork,)))
    assert "turned into total length" in text(turned)
    kin, _ = handle(turn_of(kb, "weight", fish("ambloplites-ariommus"), measures=(length("8 in", "8"),)))
    assert "near relative" in text(kin)


def test_no_line_is_no_weight(kb: KnowledgeBase) -> None:
    """Where no line is held, no weight is made up."""
    answer, _ = handle(turn_of(kb, "weight", fish("umbra-limi"), measures=(length("3 in", "3"),)))
    assert "can't work out" in text(answer)
    assert not any(b.claim for b in answer.blocks)


def test_a_record_is_for_others_to_decide(kb: KnowledgeBase) -> None:
    """Near a record: the largest known, and who decides."""
    answer, _ = handle(turn_of(kb, "is it a record", fish("lepomis-macrochirus"), measures=(pounds("4.5"),)))
    assert "agency" in text(answer) and "%" in text(answer)


def test_a_bare_question_asks_for_a_length(kb: KnowledgeBase) -> None:
    """Without a measure one is asked for."""
    answer, _ = handle(turn_of(kb, "what do they weigh", group("crappies", "crappies")))
    assert answer.asked is not None and answer.asked.kind == "length"
