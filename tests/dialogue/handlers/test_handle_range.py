"""Range: native, introduced, missing or unknown, said plainly for the place asked about."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.range import handle
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import remembered, rows
from assistant.reasoning.place_prior import narrowest
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, group, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(
    ("taxon", "place", "must"),
    [
        ("lepomis-cyanellus", "us-ct", "introduced"),
        ("lepomis-microlophus", "us-tx", "native"),
        ("lepomis-microlophus", "us-ca", "introduced"),
        ("channa-argus", "us-va", "introduced"),
        ("lepomis-gibbosus", "us-or", "introduced"),
    ],
)
def test_status_in_a_state(kb: KnowledgeBase, taxon: str, place: str, must: str) -> None:
    """The status held for a state leads the answer and rests on its range statements."""
    answer, _ = handle(turn_of(kb, "is it native here", fish(taxon), places=(place,)))
    assert must in answer.blocks[0].text.lower()
    assert answer.blocks[0].statements and all(s.startswith("range:") for s in answer.blocks[0].statements)


def test_a_place_held_is_carried_over(kb: KnowledgeBase) -> None:
    """ "Is it native here" uses the place told before."""
    held = Held(taxa=("lepomis-cyanellus",), places=("us-ct",))
    answer, _ = handle(turn_of(kb, "is it native here", held=held))
    assert "Connecticut" in answer.blocks[0].text


def test_unknown_is_not_absent(kb: KnowledgeBase) -> None:
    """A place without a statement is said to be unknown, with where the fish is held to be native."""
    answer, _ = handle(turn_of(kb, "is it there", fish("lepomis-symmetricus"), places=("us-ak",)))
    lead, native, *_ = [b.text for b in answer.blocks]
    assert lead.startswith("Unknown: the base does not list the bantam sunfish for Alaska")
    assert native.startswith("The bantam sunfish is native to ")


def test_without_a_place_the_native_range_leads(kb: KnowledgeBase) -> None:
    """Where a fish lives: native first; every state by name when states are asked for."""
    answer, _ = handle(turn_of(kb, "walleye range", fish("sander-vitreus")))
    assert answer.blocks[0].text.startswith("The walleye is native to")
    states, _ = handle(turn_of(kb, "what states hold it", fish("lepomis-symmetricus")))
    assert "Louisiana" in states.blocks[0].text


def test_a_region_is_told_state_by_state(kb: KnowledgeBase) -> None:
    """Of a region only its states are held: the commonest status leads, the others follow."""
    answer, _ = handle(turn_of(kb, "do they belong there", fish("ictalurus-furcatus"), places=("chesapeake",)))
    assert "introduced" in text(answer)


def test_invented_and_unknown_places(kb: KnowledgeBase) -> None:
    """No range is claimed for an invented water or for a place nobody knows."""
    answer, _ = handle(turn_of(kb, "is it there", fish("lepomis-macrochirus"), places=("threlwick-lake",)))
    assert "invented" in text(answer) and not any(b.claim for b in answer.blocks)


def test_a_cross_lives_where_its_parents_do(kb: KnowledgeBase) -> None:
    """The range of a hybrid is told by its parents."""
    answer, _ = handle(turn_of(kb, "where is it", fish("sander-canadensis-x-sander-vitreus"), places=("us-oh",)))
    assert "walleye" in text(answer) and "sauger" in text(answer)


def test_a_group_is_counted(kb: KnowledgeBase) -> None:
    """Many kinds are told by status, with how many of them live there."""
    answer, _ = handle(turn_of(kb, "which live there", group("true-sunfishes", "sunfishes"), places=("us-oh",)))
    assert "bluegill" in text(answer) and answer.blocks[0].statements


def test_waters_are_not_answered_from_few_states(talk: Talk) -> None:
    """The bull trout of one Nevada river is not called native to the Colorado River; the walleye of all states on a
    lake is, with a word on what that rests on."""
    few, _ = talk("are there bull trout in the Colorado River")
    assert few.blocks[0].text.startswith("I can't say") and not few.blocks[0].claim
    assert any("Nevada" in b.text and b.statements for b in few.blocks)
    most, _ = talk("are there walleye in Lake Erie")
    assert most.blocks[0].text.startswith("Yes") and "not of these waters" in most.blocks[-1].text


def test_a_state_beside_its_waters_is_what_counts(kb: KnowledgeBase, talk: Talk) -> None:
    """"Trout in the Colorado River, Utah" offers no fish that is not expected in Utah; a river is not a state."""
    assert narrowest(kb, ("colorado-basin", "us-ut")) == ("us-ut",)
    answer, _ = talk("trout in the Colorado River, Utah")
    assert "bull trout" not in answer.blocks[0].text
    river, _ = talk("are there paddlefish in the Mississippi River")
    assert "Mississippi River basin" in river.blocks[0].text


def test_the_name_of_a_lake_is_no_kind_of_water(talk: Talk) -> None:
    """"In the Great Lakes" asks for no fishes of lakes."""
    answer, _ = talk("what sunfish live in the Great Lakes")
    assert "kind of water" not in answer.blocks[0].text and "lepomis-gibbosus" in answer.taxa


def test_ranges_from_memory_say_so(kb: KnowledgeBase, talk: Talk) -> None:
    """A description, a range and a list of a place tell how much of where a fish lives rests on memory."""
    ranged, _ = talk("walleye range")
    held = set(ranged.blocks[0].statements)
    count, among = remembered(r for r in rows(kb, "sander-vitreus") if f"range:{r.id}" in held)
    assert 0 < count < among and f"({count} of {among} places from memory, unchecked)" in ranged.blocks[0].text
    described, _ = talk("describe the walleye")
    where = next(b.text for b in described.blocks if b.text.startswith("Where:"))
    assert where.endswith("places from memory, unchecked].")
    listed, _ = talk("which catfishes live in Ohio")
    assert any("from memory, unchecked" in b.text for b in listed.blocks[1:])


@pytest.mark.parametrize(
    "lines",
    [
        ("tell me about the mud sunfish", "is it in new jersey", "only in jersey?"),
        ("are alabama bass in georgia", "nowhere else?"),
        ("is the mud sunfish found only in new jersey?",),
    ],
)
def test_only_there_is_answered_by_the_other_places(talk: Talk, lines: tuple[str, ...]) -> None:
    """Whether a fish lives in one state alone is denied where others are held, which are named."""
    answer, _ = talk(*lines)
    assert answer.intent == "range"
    assert answer.blocks[0].text.startswith("No") and "other places" in answer.blocks[0].text
    assert "is native to" in answer.blocks[1].text


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("snakeheads made it to arkansas yet?", "yes: the northern snakehead lives in arkansas"),
        ("have round gobies reached new york", "yes: the round goby lives in new york"),
        ("has the snakehead spread to Georgia yet", "yes: the northern snakehead lives in georgia"),
        ("have snakeheads made it to oregon yet", "not as far as is held: no snakeheads are listed for oregon"),
    ],
)
def test_there_by_now(talk: Talk, line: str, first: str) -> None:
    """Whether a kind has come to a place is answered with yes or no before how it came there."""
    answer, _ = talk(line)
    assert answer.intent == "range" and answer.blocks[0].text.lower().startswith(first)


@pytest.mark.parametrize(
    "line",
    ["what do i do if i land one", "if i hook one what am i supposed to do", "say i catch one, what then",
     "what happens if i catch one, do i report it"],
)
def test_one_that_is_caught(talk: Talk, line: str) -> None:
    """What is to be done with an unwanted kind just told of is answered of that kind."""
    answer, _ = talk("have snakeheads made it to maryland yet", line)
    assert answer.intent == "handling" and "channa-argus" in answer.taxa
    assert "kill it" in answer.blocks[0].text and "report it" in answer.blocks[0].text


def test_a_landscape_is_no_sum_of_states(talk: Talk) -> None:
    """A fish of all the states that share the Driftless Area is said to live in the states, not in those hills."""
    answer, _ = talk("paddlefish range")
    assert "Iowa" in answer.blocks[0].text and not any("Driftless" in b.text for b in answer.blocks)
