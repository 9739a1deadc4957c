"""Lists in an order: the most comes first (or the least), and what has no more and less is said to have none.

Which fish comes first is checked against the statements of the base themselves; no fact stands here.
"""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT, tell
from assistant.reasoning.living import living_in
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.size import size_range
from tests.dialogue.conftest import Talk


def _species(kb: KnowledgeBase, taxa: tuple[str, ...]) -> list[str]:
    return [t for t in taxa if kb.taxon(t).is_species]


@pytest.mark.parametrize(
    ("line", "places", "least_first"),
    [
        ("which catfish gets the biggest", (), False),
        ("what's the biggest catfish in Ohio", ("us-oh",), False),
        ("what's the smallest fish in Ohio", ("us-oh",), True),
    ],
)
def test_by_size(line: str, places: tuple[str, ...], least_first: bool, talk: Talk, kb: KnowledgeBase) -> None:
    """Fishes of a group or place come by the largest held of each, and none that does not live there."""
    answer, _ = talk(line)
    shown = _species(kb, answer.taxa)
    tops = [size_range(kb, t).largest or 0.0 for t in shown]
    assert answer.intent == "list" and len(shown) > 3
    assert tops == sorted(tops, reverse=not least_first)
    assert living_in(kb, shown, places) == tuple(shown)


@pytest.mark.parametrize(
    ("line", "character", "least_first"),
    [
        ("which bass has the most lateral line scales", "lateral-line-scales", False),
        ("which sunfish has the fewest gill rakers", "gill-rakers", True),
        ("which crappie has more dorsal spines", "dorsal-spines", False),
    ],
)
def test_by_count(line: str, character: str, least_first: bool, talk: Talk, kb: KnowledgeBase) -> None:
    """A count puts fishes in order by the middle of what is usual, and every line of it is stated."""
    answer, _ = talk(line)
    told = [tell(kb, kb.character(character), t) for t in _species(kb, answer.taxa)]
    middles = [(x.numbers[1] + x.numbers[2]) / 2 for x in told if x is not None and x.numbers is not None]
    assert len(middles) == len(told) > 1
    assert middles == sorted(middles, reverse=not least_first)


@pytest.mark.parametrize(
    ("line", "character"),
    [
        ("which sunfish has the biggest mouth", "upper-jaw-reach"),
        ("which sunfish has the longest ear flap?", "opercular-flap-length"),
        ("fish with the biggest eyes", "eye-size"),
    ],
)
def test_by_ordered_feature(line: str, character: str, talk: Talk, kb: KnowledgeBase) -> None:
    """Of a feature whose states have an order the first fish shows a later state than the last."""
    answer, _ = talk(line)
    shown = _species(kb, answer.taxa)
    order = {s.id: s.order for s in kb.states(character) if s.order is not None}
    ends = [taxon_distribution(kb, t, character, ADULT) for t in (shown[0], shown[-1])]
    heights = [sum(order[s] * p for s, p in x.shares.items() if s in order) for x in ends if x is not None]
    assert len(heights) == 2 and heights[0] >= heights[1]
    assert "the most of" in answer.blocks[0].text and "the greatest first" in answer.blocks[1].text


@pytest.mark.parametrize("line", ["which catfish has the longest whiskers", "which trout has the biggest spots"])
def test_no_order(line: str, talk: Talk) -> None:
    """A part of which no more and less is held gives no list that looks like an answer."""
    answer, _ = talk(line)
    assert "order" in answer.blocks[0].text and not answer.blocks[0].claim and len(answer.blocks) == 1


def test_an_order_is_kept(talk: Talk) -> None:
    """"More" tells the same order on, and "and the fewest?" turns it round for the same fishes."""
    def told(*lines: str) -> list[str]:
        return [b.text for b in talk(*lines)[0].blocks if b.kind == "point"]

    asked = "which sunfish has the most anal rays"
    assert told(asked, "more") == told(asked)
    assert told(asked, "and the fewest?")[0] == told(asked)[-1]


def test_the_rest_of_a_family_is_told(talk: Talk, kb: KnowledgeBase) -> None:
    """"Sunfishes" of a place are the true ones first; the others of the family that live there are told apart."""
    answer, _ = talk("which sunfishes live in Ontario?")
    apart = next(b.text for b in answer.blocks if b.text.startswith("Outside that genus"))
    assert "rock bass" in apart and "ambloplites-rupestris" in answer.taxa
