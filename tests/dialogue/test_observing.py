"""What the conversation holds of the fish in hand, as evidence."""

from __future__ import annotations

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of, observe, ruled_out
from assistant.dialogue.reader.reading import Reading, Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Hint, Observation
from tests.dialogue.conftest import Talk

ONE, TWO = frozenset({"lepomis-macrochirus"}), frozenset({"lepomis-macrochirus", "lepomis-gibbosus"})


def test_a_fish_denied_outright_is_ruled_out_until_it_is_offered_again() -> None:
    """Only a plain denial of one fish rules it out; a hedge or a whole group does not; a new offer takes it back."""
    denied = Hint("group", ONE, seen=False)
    assert ruled_out((denied,)) == ONE
    assert ruled_out((denied._replace(hedged=True),)) == ruled_out((Hint("group", TWO, seen=False),)) == frozenset()
    assert ruled_out((denied, Hint("like", ONE))) == frozenset()
    assert ruled_out((Hint("like", ONE), denied)) == ONE
    assert evidence_of(Held(hints=(denied,))).excluded == ONE


def test_what_answers_the_question_asked_is_marked_as_an_answer(kb: KnowledgeBase) -> None:
    """Told of the character asked for it is an answer, told of another it is of one's own accord."""
    held = Held(asked=Asked("character", "?", "tongue-teeth"))
    told = [Observation("tongue-teeth", ("tongue-teeth.none",)), Observation("adipose-fin", ("adipose-fin.present",))]
    reading = Reading("", (), seen=tuple(Seen(o, "", 0, 1) for o in told))
    assert [s.observation.asked for s in observe(kb, held, reading).seen] == [True, False]


def test_what_is_seen_is_weighed_among_the_fishes_called_so(talk: Talk) -> None:
    """After a name that means several fishes, marks of "this one" choose among these."""
    answer, _ = talk("what is a redeye", "this one got 6 spines by the vent")
    assert answer.candidates[0].taxon == "ambloplites-rupestris"


def test_a_correction_names_the_fish_that_is_asked_of_next(talk: Talk) -> None:
    """After counts put right, "that" is the fish which they now lead to."""
    answer, _ = talk("slab with 8 dorsal spines and speckled sides", "recounted. 6, and bars instead of specks",
                     "what would 12 inches of that weigh")
    assert answer.taxa[0] == "pomoxis-annularis"


def test_a_fish_put_right_is_answered_for(talk: Talk) -> None:
    """"Wrong fish, I meant ..." asks the same of the other fish and forgets nothing."""
    answer, _ = talk("how long does a yellow perch get", "wrong fish, white perch i meant")
    assert answer.taxa[0] == "morone-americana" and "usually reaches" in " ".join(b.text for b in answer.blocks)


def test_a_denial_is_no_correction(talk: Talk) -> None:
    """"No spots" opens with "no" and puts nothing right: the forked tail told before stands."""
    _, held = talk("cat with a deep fork in the tail", "no spots. edge of the bottom fin straight as can be")
    assert {s for o in held.seen for s in o.observation.states} == {
        "caudal-fin-shape.forked", "tail-fork-depth.deep", "body-spots.none", "anal-fin-margin.straight"}


def test_a_bare_number_counts_what_the_comparison_leads_with(talk: Talk) -> None:
    """After a comparison that begins with dorsal spines "I get six" counts these; elsewhere it counts nothing."""
    _, held = talk("white crappie from black crappie", "i get six")
    assert [(o.observation.character, o.observation.value) for o in held.seen] == [("dorsal-spines", 6)]
    _, other = talk("bluegill vs redear by the ear", "six")
    assert not other.seen


def test_a_group_named_in_a_place_stays_open(talk: Talk) -> None:
    """"Trout" means few kinds in Maine, and the lake trout is weighed all the same."""
    answer, _ = talk("trout in maine, deeply forked tail, pale spots all over")
    assert "salvelinus-namaycush" in [c.taxon for c in answer.candidates]
