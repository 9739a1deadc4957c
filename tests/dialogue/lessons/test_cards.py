"""Cards for a class: what stands on the back sets the fish apart from the others of the set."""

from __future__ import annotations

from collections import Counter

import pytest

from assistant.dialogue.lessons.cards import MARKS, fish_cards
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.quiz import Pool, setting_apart
from assistant.reasoning.selection import species_below

GROUPS = ("lepomis", "esox", "ameiurus", "salmonidae", "micropterus")


@pytest.mark.parametrize("group", GROUPS)
def test_marks_of_a_card_are_not_those_of_most(kb: KnowledgeBase, group: str) -> None:
    """No mark stands on the cards of half the fishes, and each is shown wrong of some of the others."""
    taxa = species_below(kb, group)
    pool = Pool(kb, taxa, LOOKS["picture"], firm=False)
    told = {t: setting_apart(pool, t, MARKS) for t in taxa}
    often = Counter(f.state for marks in told.values() for f in marks)
    assert often and max(often.values()) < len(taxa) / 2
    for taxon, marks in told.items():
        assert all(any(pool.wrong(t, mark.state) for t in taxa if t != taxon) for mark in marks)


def test_cards_of_sunfishes_teach_their_difference(kb: KnowledgeBase) -> None:
    """Plain fin edges, shared by 8 of 13 sunfishes, stand on no card; the red edge of the redear's ear stands on its.

    What gave that fish its name counts although single sources tell of other edges.
    """
    cards = {b.text.partition(" | ")[0]: b.text for b in
             fish_cards(kb, species_below(kb, "lepomis"), LOOKS["picture"], "plain", 20)}
    assert len(cards) == 13 and not [c for c in cards.values() if "plain edges" in c]
    assert "red or orange on the edge" in cards["Redear sunfish"]


def test_what_a_picture_does_not_show_is_taken_from_the_hand(kb: KnowledgeBase) -> None:
    """The black bullhead, which no picture tells for sure, has a mark of the fish in the hand on its card."""
    cards = fish_cards(kb, species_below(kb, "ameiurus"), LOOKS["picture"], "plain", 20)
    assert all(b.statements for b in cards)
    assert any(b.text.startswith("Black bullhead | usually black webbing") for b in cards)
