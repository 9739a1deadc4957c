"""Names: what a word means and where, what a fish is called, old and new scientific names."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.names import handle
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_a_local_name_means_one_fish(kb: KnowledgeBase) -> None:
    """Gaspergou is the freshwater drum, with where it is called so."""
    answer, _ = handle(turn_of(kb, "gaspergou", fish("aplodinotus-grunniens", words="gaspergou")))
    assert "freshwater drum" in answer.blocks[0].text and "Louisiana" in answer.blocks[0].text
    assert answer.blocks[0].statements[0].startswith("name:")


def test_a_name_of_several_fishes_asks_where(kb: KnowledgeBase) -> None:
    """Stumpknocker is several fishes: all are named with their regions, and the place is asked for."""
    ids = ("lepomis-punctatus", "lepomis-gulosus", "lepomis-miniatus")
    answer, _ = handle(turn_of(kb, "stumpknocker", fish(*ids, words="stumpknocker")))
    assert "spotted sunfish" in text(answer) and "warmouth" in text(answer)
    assert answer.asked is not None and answer.asked.kind == "place"


def test_the_place_decides(kb: KnowledgeBase) -> None:
    """White perch in Louisiana is a crappie."""
    ids = ("morone-americana", "pomoxis-annularis", "pomoxis-nigromaculatus")
    turn = turn_of(kb, "white perch in louisiana is what", fish(*ids, words="white perch"), places=("us-la",))
    answer, _ = handle(turn)
    assert "crappie" in answer.blocks[0].text and "Louisiana" in answer.blocks[0].text
    assert answer.taxa[0].startswith("pomoxis-")


def test_old_scientific_names_lead_to_the_current_one(kb: KnowledgeBase) -> None:
    """Stizostedion vitreum is told to be Sander vitreus now."""
    answer, _ = handle(turn_of(kb, "old name now what", fish("sander-vitreus", words="Stizostedion vitreum")))
    assert "Sander vitreus" in answer.blocks[0].text and "older name" in answer.blocks[0].text


def test_salmoides_is_told_for_both_usages(kb: KnowledgeBase) -> None:
    """Micropterus salmoides: the largemouth bass is nigricans now, the Florida bass keeps the name."""
    both = fish("micropterus-nigricans", "micropterus-salmoides", words="Micropterus salmoides")
    answer, _ = handle(turn_of(kb, "which name is current", both))
    assert "micropterus nigricans" in text(answer) and "florida bass" in text(answer)


@pytest.mark.parametrize(
    ("line", "taxon", "must"),
    [
        ("latin name for redbreast", "lepomis-auritus", "lepomis auritus"),
        ("french for yellow perch", "perca-flavescens", "perchaude"),
        ("what do folks call it", "aplodinotus-grunniens", "also called"),
        ("why is it called pumpkinseed", "lepomis-gibbosus", "not held"),
    ],
)
def test_what_a_fish_is_called(kb: KnowledgeBase, line: str, taxon: str, must: str) -> None:
    """Scientific, French and local names; the origin of a name is not made up."""
    answer, _ = handle(turn_of(kb, line, held=Held(taxa=(taxon,))))
    assert must in text(answer)


def test_names_of_the_place_held(kb: KnowledgeBase) -> None:
    """What folks call it there: the names of that place alone, where there are some."""
    held = Held(taxa=("pomoxis-annularis",), places=("us-la",))
    answer, _ = handle(turn_of(kb, "what do folks call it there", held=held))
    assert "in Louisiana" in " ".join(b.text for b in answer.blocks) or "In Louisiana" in answer.blocks[0].text


def test_a_word_of_a_name_asks_which(kb: KnowledgeBase) -> None:
    """ "The yellow one" names no fish: those with the word in their names are offered."""
    answer, _ = handle(turn_of(kb, "the yellow one", held=Held(taxa=("lepomis-auritus",))))
    assert answer.asked is not None and answer.asked.kind == "which"
    assert "yellow perch" in text(answer)


def test_a_name_that_a_source_read_tells_of_comes_first(talk: Talk) -> None:
    """ "Pickerel" in Ontario is first of all the walleye, as a published source says."""
    answer, _ = talk("pickerel in ontario = walleye, or the skinny toothy one?")
    assert answer.blocks[0].text.startswith('In Ontario "pickerel" usually means the walleye')


@pytest.mark.parametrize(("line", "start"), [
    ("everbody down the bayou calls it white perch but its a crappie, am i wrong",
     'Nobody is wrong: "white perch" is a local name of the black crappie and white crappie; it is also the own name'),
    ("my granddad calls it a bream but its a bluegill, is he wrong", 'Nobody is wrong: "bream" is a local name'),
    ("Largemouth now M. nigricans or M. salmoides?", "The largemouth bass is Micropterus nigricans; Micropterus salmo"),
    ("Spotted sunfish: L. punctatus or L. miniatus?", "The spotted sunfish is Lepomis punctatus; Lepomis miniatus is"),
])
def test_settled_in_the_first_line(line: str, start: str, talk: Talk) -> None:
    """Whether a local name is wrong, and which of two scientific names a fish bears, is told first."""
    answer, _ = talk(line)
    assert answer.intent == "names" and answer.blocks[0].text.startswith(start)


@pytest.mark.parametrize(
    ("line", "fish"),
    [
        ("is a mud fish the same as a bowfin", "amia-calva"),
        ("is a mud cat the same as a flathead", "pylodictis-olivaris"),
        ("is a bowfin the same as a dog fish", "amia-calva"),
    ],
)
def test_a_loose_name_beside_its_fish(talk: Talk, line: str, fish: str) -> None:
    """A loose name, written apart or not, is sometimes that fish, and others bear it too."""
    answer, _ = talk(line)
    assert answer.intent == "names" and fish in answer.taxa
    assert answer.blocks[0].text.startswith("Sometimes")


def test_both_fishes_of_a_moved_scientific_name(talk: Talk) -> None:
    """Where an old scientific name is borne by another fish now, the answer is about both."""
    answer, _ = talk("Has the scientific name of the largemouth bass been changed? My textbook says salmoides.")
    assert {"micropterus-nigricans", "micropterus-salmoides"} <= set(answer.taxa)
    assert "nigricans" in answer.blocks[0].text
