"""Which fish an information answer is about."""

from __future__ import annotations

from assistant.dialogue.asked_about import asked_about, kinds_name, likeliest
from assistant.dialogue.conversation import Held
from assistant.model.knowledge import KnowledgeBase
from tests.helpers.turns import fish, turn_of

PERCHES = ("lepomis-macrochirus", "perca-flavescens", "morone-americana")


def test_a_loose_name_is_taken_for_its_likeliest_fish(kb: KnowledgeBase) -> None:
    """ "Perch" alone is the fish whose accepted name holds the word, and the answer says so."""
    asked, remarks = asked_about(turn_of(kb, "how heavy is a perch", fish(*PERCHES, words="perch")))
    assert asked == ("perca-flavescens",)
    assert "yellow perch" in remarks[0].text and not remarks[0].claim


def test_the_place_held_comes_before_the_name(kb: KnowledgeBase) -> None:
    """In a place without yellow perch a loose name is taken for a fish that lives there."""
    here = next(
        p.id
        for p in kb.all("place")
        if p.kind == "state"
        and not [
            r
            for r in kb.ranges("perca-flavescens")
            if r.place == p.id and r.status in ("native", "introduced", "stocked")
        ]
    )
    mention = fish(*PERCHES, words="perch")
    best = likeliest(kb, mention, (here,))
    lives = any(r.place == here and r.status in ("native", "introduced") for r in kb.ranges(best))
    assert lives or not any(r.place == here for t in PERCHES for r in kb.ranges(t) if r.status == "native")


def test_named_and_held_fishes_stand_as_they_are(kb: KnowledgeBase) -> None:
    """A fish named outright, or one held, needs no remark."""
    assert asked_about(turn_of(kb, "weight", fish("sander-vitreus"))) == (("sander-vitreus",), ())
    assert asked_about(turn_of(kb, "weight", held=Held(taxa=("esox-lucius",)))) == (("esox-lucius",), ())
    assert asked_about(turn_of(kb, "weight")) == ((), ())


def test_groups_are_called_as_anglers_do(kb: KnowledgeBase) -> None:
    """A family is called by its anglers' word, singular for one."""
    assert kinds_name(kb, "ictaluridae") == "catfishes" and kinds_name(kb, "ictaluridae", 1) == "catfish"
    assert kinds_name(kb, "centrarchidae") == "fishes of the sunfish family"
    assert kinds_name(kb, "lepomis-gibbosus") == "pumpkinseed"
