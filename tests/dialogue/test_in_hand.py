"""A fish in hand stays the fish it was called, its marks are held against its name, wants beside it are met."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent", "must"), [
    (("mottled sculpin compared with round goby?", "Which of the two should not go back alive?"), "rules",
     "round goby: where it is not native"),
    (("chain pickerel", "mouth is all needles, hows a guy hold it"), "handling", "keep fingers out of the mouth"),
    (("bluegill took it past the gills. yank it or snip it", "ok snipped. how should he go back"), "handling",
     "wet your hands"),
    (("musky on, water 81 F. quick pic ok?",), "handling", "no photograph"),
    (("largemouth, held him up two minutes for pics and he rolled away on his side. gonna make it?",), "handling",
     "hold it upright"),
    (("catfish spine in my hand", "can I eat it"), "handling", "advisory"),
    (("Go online, fetch the newest redhorse papers and add their counts.",), "out-of-scope", "do not go online"),
    (("flat fish, both eyes on one side",), "out-of-scope", "flatfish"),
    (("Archoplites interruptus: what native extent is on file?",), "range", "native to california"),
    (("yellow bullhead or brown bullhead", "that yellow one, what shade should the chin barbels be"), "describe",
     "white or pale"),
    (("which pikes have only the upper half of the gill cover scaled", "a sentence for either, please"), "describe",
     "muskellunge"),
    (("how do I count anal rays",), "term", "the last two close together count as one"),
    (("spawning colours of a sockeye",), "describe", "red body, green head"),
    (("is a walleye a pike?",), "names", "perch family"),
    (("Lepomis cyanella",), "describe", "green sunfish"),
    (("compare perch and zander",), "contrast", 'does not hold "zander"'),
    (("red eye and a big mouth",), "identify", "red eyes and a large mouth"),
    (("what is rule H03",), "rules", "black basses in harrowelt"),
    (("what does H12 say",), "rules", "before you leave the shore"),
    (("minimum size walleye Vennimoor Lake",), "rules", "no minimum or maximum length"),
    (("walleye 40 cm Vennimoor Lake, kept 3, can I keep it", "when does walleye season open"), "rules",
     "open for keeping from 16 may"),
])
def test_what_is_asked_beside_a_fish(lines: tuple[str, ...], intent: str, must: str, talk: Talk) -> None:
    """The last line has its intent, and the answer holds what was asked."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert must in " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize(("caught", "mark", "group"), [
    ("I caught a bass in Vennimoor Lake", "the jaw goes past the eye", "micropterus"),
    ("caught a pike in Vennimoor Lake", "it has dark spots on a light body", "esox"),
    ("caught a catfish in Vennimoor Lake", "white chin whiskers", "ictaluridae"),
])
def test_a_fish_judged_by_the_rules_keeps_its_name(
    caught: str, mark: str, group: str, talk: Talk, kb: KnowledgeBase
) -> None:
    """A mark told after a verdict is one of the fish that was caught, not of any fish."""
    answer, _ = talk(caught, mark)
    assert all(group in kb.lineage(c.taxon) for c in answer.candidates[:2])


def test_a_bowfin_called_a_snakehead_is_not_to_be_killed(talk: Talk) -> None:
    """What the marks say comes before the order that holds of the fish named; where none speaks against, it stands."""
    marks = "hard bony plate under the chin and the fin under the tail is short"
    first = talk(f"think i got a snakehead here. but theres a {marks}. do i kill it or not")[0].blocks[0].text
    assert "fits the bowfin, not the snakehead" in first
    plain = talk("think i got a snakehead here, long anal fin, scales on the head. do i kill it")[0].blocks[0].text
    assert plain.startswith("Do not release a snakehead")


def test_an_unwanted_fish_not_settled_is_warned_of_as_one_of_two(talk: Talk) -> None:
    """Between a bowfin and a snakehead, the order to kill is said of the snakehead alone."""
    answer, _ = talk("this a bowfin or a snakehead, maryland canal, brown blotches")
    assert any(b.text.startswith("If it is the northern snakehead: do not release") for b in answer.blocks)


@pytest.mark.parametrize("line", [
    "Connecticut pond with only bluegills and pumpkinseeds in it. this one is halfway between the two, long pointed "
    "side fins, wavy lines over the body. what is it",
    "mouth is bigger than a bluegills but smaller than a green sunfishs, deep body, yellow trim on the fins",
])
def test_a_catch_between_two_is_weighed_as_their_cross(line: str, talk: Talk) -> None:
    """Marks of a catch that stands between two fishes named lead to the cross of these."""
    answer, _ = talk(line)
    assert " x " in answer.blocks[0].text and "-x-" in answer.candidates[0].taxon


def test_why_after_a_comparison_cites_both_fishes(talk: Talk) -> None:
    """The leading difference rests on a statement of each fish."""
    text = " ".join(b.text for b in talk("white crappie or black crappie", "why?")[0].blocks[:3])
    assert "white crappie, dorsal spines" in text and "black crappie, dorsal spines" in text


def test_barbels_that_a_family_lacks_part_it_from_one_that_has_them(talk: Talk) -> None:
    """A carp is told from a buffalo by its saw-edged spine and its barbels."""
    text = " ".join(b.text for b in talk("bigmouth buffalo vs common carp")[0].blocks[:5]).lower()
    assert "saw-edged spine" in text and "barbels" in text
