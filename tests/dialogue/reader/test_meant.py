"""What a line does not say is not taken from it: doubts, choices that share only small words, counts taken back.

The lines and what they mean are our own judgement (common practice, no source).
"""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk

CLOCK = date(2026, 7, 4)


def _read(kb: KnowledgeBase, text: str) -> Reading:
    return read_line(kb, text, Held(), CLOCK)


def test_doubt_tells_nothing(kb: KnowledgeBase) -> None:
    """"Not sure if" leaves open what follows it, up to the end of the clause."""
    assert not _read(kb, "not sure if it had spots").seen


def test_not_forked_is_only_a_denial(kb: KnowledgeBase) -> None:
    """A tail that is not forked may be rounded, notched or cut straight."""
    told = [(s.observation.states, s.observation.seen) for s in _read(kb, "tail not forked").seen]
    assert told == [(("caudal-fin-shape.forked",), False)]


@pytest.mark.parametrize("text", ["anal fin has 10 or 11 rays", "10 maybe 11 anal rays"])
def test_two_numbers_are_one_range(kb: KnowledgeBase, text: str) -> None:
    """A range told with doubt is a range."""
    ranges = [(s.observation.value, s.observation.value_high) for s in _read(kb, text).seen]
    assert (10, 11) in ranges


def test_a_count_taken_back(talk: Talk) -> None:
    """The new count stands after "no wait"."""
    _, held = talk("sunfish with 3 anal spines", "no wait 6")
    assert [s.observation.value for s in held.seen if s.observation.character == "anal-spines"] == [6]


def test_a_choice_needs_its_own_words(kb: KnowledgeBase) -> None:
    """Sharing only a small word ("a") with an offered choice does not choose it."""
    tail = "caudal-fin-shape"
    choices = ((f"{tail}.rounded", "like a fan"), (f"{tail}.forked", "deep fork"))
    held = Held(asked=Asked("character", "What shape is the tail?", tail, choices))
    assert not read_line(kb, "a largemouth", held, CLOCK).seen
    chosen = read_line(kb, "like a fan", held, CLOCK).seen
    assert [s.observation.states for s in chosen] == [(f"{tail}.rounded",)]


def test_bare_marks_are_some_marks(kb: KnowledgeBase) -> None:
    """"With spots" says that there are spots and not of which kind; a single patch, or blotches, are no spots."""
    for text in ("it has spots on its side", "spots all over"):
        told = [(s.observation.states, s.observation.seen) for s in _read(kb, text).seen]
        assert told == [(("body-spots.none",), False)], text
    assert not any(s.observation.character == "body-spots" for s in _read(kb, "little blotches").seen)


def test_undo_goes_back_a_turn_each_time(talk: Talk) -> None:
    """Said again, undo takes back the turn before, down to nothing; a colour told is no taking back."""
    lines = ("sunfish with a black ear", "it has faint bars")
    _, first = talk(*lines[:1])
    _, once = talk(*lines, "undo")
    _, twice = talk(*lines, "undo", "undo")
    assert once.seen == first.seen and first.seen and not twice.seen
    _, told = talk(*lines, "it was green")
    assert {s.observation.character for s in told.seen} >= {s.observation.character for s in first.seen}


def test_a_question_after_marks_adds_no_evidence(talk: Talk) -> None:
    """Asking "could it be" leaves the odds of what was told; two names offered keep a third fish behind both."""
    story = "big head, spot on first dorsal, pelvic fins joined in a sucker"
    before, _ = talk(story)
    after, _ = talk(story, "could it be a sculpin?")
    assert after.candidates[0].taxon == before.candidates[0].taxon == "neogobius-melanostomus"
    judged, _ = talk("green sunfish or warmouth? tongue is smooth")
    assert judged.candidates[0].taxon == "lepomis-cyanellus" and judged.candidates[0].probability > 0.5


def test_a_named_catch_is_taken_on_its_word(talk: Talk) -> None:
    """A catch named without marks is that fish for the rules, and the answer says on whose word."""
    named, _ = talk("I caught a bluegill")
    assert named.taxa == ("lepomis-macrochirus",) and "on your word" in named.blocks[0].text
    ruled, _ = talk("I caught a bluegill", "can I keep it at Vennimoor Lake")
    assert ruled.verdict == "keep"


def test_an_eye_that_is_not_red_may_have_any_other_colour(kb: KnowledgeBase) -> None:
    """A denied colour is a denial of that colour, not the plain one."""
    for text in ("the eye was not red", "no red in the eye"):
        told = [(s.observation.states, s.observation.seen) for s in _read(kb, text).seen]
        assert told == [(("eye-colour.red",), False)], text


def test_a_word_of_a_feature_is_no_count(talk: Talk) -> None:
    """"No wait, two dorsal fins" puts the fins right and leaves the anal spines told before alone."""
    _, held = talk("three anal spines, large mouth", "one dorsal fin", "no wait, two dorsal fins")
    assert {s.observation.value for s in held.seen if s.observation.character == "anal-spines"} == {3.0}


def test_what_stands_behind_a_mark_taken_back(talk: Talk) -> None:
    """"Scratch the red, the ear is plain black" takes the red back and holds the black."""
    _, held = talk("sunny, red spot on the ear", "scratch the red, buddy says the ear is plain black")
    assert [x for s in held.seen for x in s.observation.states] == ["opercular-flap-edge.none-all-dark"]
    _, held = talk("red ear, black spot in the back fin", "forget the black spot")
    assert {s.observation.character for s in held.seen} == {"opercular-flap-edge"}


def test_a_count_put_right_by_its_place(talk: Talk) -> None:
    """ "It is ten on the back" puts the dorsal spines right, not the count told last."""
    _, held = talk("panfish, 12 spines on the back and 3 in the anal fin", "I recounted. It is ten on the back")
    told = {s.observation.character: s.observation.value for s in held.seen}
    assert told == {"dorsal-spines": 10, "anal-spines": 3}


def test_that_fin_is_the_one_spoken_of(talk: Talk) -> None:
    """A mark on "that fin" is one of the fin last told of."""
    _, held = talk("sunfish, 10 spines in the dorsal fin", "there is a dark patch at the hind end of that fin")
    assert "soft-dorsal-blotch.present" in {x for s in held.seen for x in s.observation.states}


@pytest.mark.parametrize(
    ("text", "states"),
    [
        ("sunfish, long ear, black right to its tip, narrower than the eye",
         {"opercular-flap-length.long", "opercular-flap-edge.none-all-dark", "opercular-flap-width.narrower-than-eye"}),
        ("red rim instead of a spot on the ear flap", {"opercular-flap-edge.red-or-orange-band"}),
        ("worm tracks instead of spots", {"vermiculation.present"}),
        ("round tail instead of a forked one", {"caudal-fin-shape.rounded"}),
        ("red dots with blue rings round them", {"body-spots.red-spots", "spot-halos.blue"}),
    ],
)
def test_what_is_only_compared_with(kb: KnowledgeBase, text: str, states: set[str]) -> None:
    """A part that another is measured by, and a mark that another stands for, are not what was seen."""
    assert {x for s in _read(kb, text).seen for x in s.observation.states} == states


def test_a_name_cut_short_is_that_of_a_fish_in_question(talk: Talk) -> None:
    """ "Called it a speckled" is the speckled trout where trouts are being told apart; "a big one" is no name."""
    answer, _ = talk("trout, worm tracks on the back, red dots with blue rings", "he called it a speckled, same fish?")
    assert answer.intent == "names" and "salvelinus-fontinalis" in answer.taxa
    answer, _ = talk("trout, worm tracks on the back, red dots with blue rings", "he said it was a big one")
    assert answer.intent == "size"
