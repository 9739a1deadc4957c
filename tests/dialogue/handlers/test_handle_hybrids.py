"""Hybrids: yes or no first, what is held of a cross, and what looks cannot prove."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.hybrids import cross_of, handle
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
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
    assert sex.blocks[0].text.startswith("Mostly males")


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


@pytest.mark.parametrize(("lines", "mother", "father"), [
    (("tell me about the saugeye", "which parent is the mother, as a rule?"), "walleye", "sauger"),
    (("saugeye: mother walleye or sauger?",), "walleye", "sauger"),
    (("tell me about the splake", "who's the mom"), "lake trout", "brook trout"),
    (("which way round is the tiger trout cross made",), "brown trout", "brook trout"),
    (("what is a wiper", "which is the father"), "striped bass", "white bass"),
])
def test_which_parent_is_the_mother(lines: tuple[str, ...], mother: str, father: str, talk: Talk) -> None:
    """The mother of a cross, and its father, as a source tells them."""
    answer, _ = talk(*lines)
    lead = answer.blocks[0]
    assert answer.intent == "hybrids" and lead.statements[0].split(".")[1] == "maternal-parent"
    assert f"a {mother}" in lead.text and f"the father a {father}" in lead.text


def test_a_mother_that_is_not_held(talk: Talk) -> None:
    """Where no source tells the mother that is said, and who the parents are."""
    answer, _ = talk("what is a greengill", "which fish is the dam and which the sire")
    assert answer.intent == "hybrids" and "not held" in answer.blocks[0].text
    assert "green sunfish and bluegill" in answer.blocks[0].text


@pytest.mark.parametrize(("lines", "verdict"), [
    (("tell me about the saugeye", "and can they have young of their own?"), "Yes"),
    (("tell me about the tiger muskellunge", "and can it breed"), "No"),
    (("describe the splake", "do they lay eggs"), "Yes"),
])
def test_whether_the_cross_spoken_of_has_young(lines: tuple[str, ...], verdict: str, talk: Talk) -> None:
    """Whether a cross described before has young is no question on young fish or on spawning."""
    answer, _ = talk(*lines)
    assert answer.intent == "hybrids" and answer.blocks[0].text.startswith(f"{verdict}, as far as is held")


@pytest.mark.parametrize(("line", "parents"), [
    ("tell me about the saugeye", "sauger and walleye"), ("describe the splake", "brook trout and lake trout")])
def test_a_cross_described_names_its_parents(line: str, parents: str, talk: Talk) -> None:
    """The first sentence on a cross says of which two fishes it is one."""
    assert f"a cross of {parents}" in talk(line)[0].blocks[0].text


@pytest.mark.parametrize(("line", "cross", "plain"), [
    ("bluegill body but a big ol mouth n yellow on the fin edges, greengill?", "green sunfish x bluegill hybrid",
     "green sunfish"),
    ("brook trout colors but forked tail, splake?", "splake", "lake trout"),
])
def test_a_cross_guessed_from_marks_of_both_parents(line: str, cross: str, plain: str, talk: Talk) -> None:
    """The guess is named and tested: the look of one parent with marks of the other, and whom to rule out."""
    answer, _ = talk(line)
    text = answer.blocks[0].text
    assert answer.intent in ("identify", "hybrids") and text.startswith(f"It could be a {cross}")
    assert f"rule out a plain {plain} first" in text and any("by eye" in b.text for b in answer.blocks)


@pytest.mark.parametrize("line", ["long body, broken stripes, two tooth patches. wiper?",
                                  "looks like a walleye with saddles and streaks in the dorsal fin, saugeye maybe?"])
def test_a_cross_guessed_last(line: str, talk: Talk) -> None:
    """A guess at the end of what was seen is answered first."""
    answer, _ = talk(line)
    assert answer.intent == "identify" and answer.blocks[0].text.startswith(("It may be a", "Most likely yes, a"))


def test_a_mark_asked_of_a_cross(talk: Talk) -> None:
    """The mark that a line names comes first, of the cross beside its parents."""
    text = talk("L. gibbosus x L. macrochirus: gill rakers intermediate, or as one parent?")[0].blocks[0].text
    assert text.startswith("Form of the gill rakers: pumpkinseed x bluegill hybrid - ")
    assert "middling" in text and "pumpkinseed - short and knobby" in text and "bluegill - long and slender" in text


@pytest.mark.parametrize(("lines", "lead"), [
    (("walleye n sauger had a kid, whats it called",), "It is the saugeye"),
    (("can bluegill and green sunfish have kids",), "Yes, they cross"),
    (("bluegill crossed w a pumpkinseed, is that a thing", "so could a biologist be sure just eyeballing it?"),
     "Looks alone cannot prove a hybrid"),
])
def test_young_of_two_kinds_in_plain_words(lines: tuple[str, ...], lead: str, talk: Talk) -> None:
    """Two kinds that "had a kid" cross; a cross spoken of is not proved by eye."""
    assert talk(*lines)[0].blocks[0].text.startswith(lead)
