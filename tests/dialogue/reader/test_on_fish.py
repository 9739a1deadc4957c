"""Words that could be names but tell of the fish spoken of, and colours of the whole fish.

The lines and what they mean are our own judgement (common practice, no source).
"""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk

CLOCK = date(2026, 7, 4)


def _named(kb: KnowledgeBase, line: str, held: Held = Held()) -> list[str]:  # noqa: B008 - Held is immutable
    return [m.words for m in read_line(kb, line, held, CLOCK).of("taxon", "group")]


def _states(kb: KnowledgeBase, line: str) -> set[str]:
    return {x for s in read_line(kb, line, Held(), CLOCK).seen for x in s.observation.states}


@pytest.mark.parametrize(("line", "names"), [
    ("what colour are its eyes", []), ("bluegill eyes", ["bluegill"]), ("walleye eyes", ["walleye"]),
    ("caught a green fish with a big mouth and red eye", []),
    ("catfish with white whiskers and square tail", ["catfish"]), ("trout, square tail", ["trout"]),
    ("caught a red eye with a big mouth", ["red eye"]), ("what bait for eyes", ["eyes"]),
    ("big scales, no whiskers, silver", []), ("perch with orange fins", ["perch"]),
    ("huge blue catfish", ["blue catfish"]), ("female white crappie", ["white crappie"]),
    ("olive green bass", ["bass"]), ("large yellow perch from the lake", ["yellow perch"]),
    ("how do I tell apart green sunfish, bluegill and warmouth", ["green sunfish", "bluegill", "warmouth"]),
])
def test_parts_and_colours_are_no_names(kb: KnowledgeBase, line: str, names: list[str]) -> None:
    """What "with", "its" or a fish stands before tells of a part; a word for sex, age or size is no shade."""
    assert _named(kb, line) == names


def test_a_bare_part_is_one_where_a_fish_is_spoken_of(kb: KnowledgeBase, talk: Talk) -> None:
    """ "Eye?" after a fish asks for its eye; by itself it may be the fish called so."""
    _, held = talk("describe the pumpkinseed")
    assert _named(kb, "eye?", held) == []


@pytest.mark.parametrize(("line", "state"), [
    ("greenish sunfish with a short ear", "body-colour.olive"), ("brown sunfish with red eyes", "body-colour.brown"),
    ("it was green", "body-colour.olive"), ("bass with red eyes and bronze color", "body-colour.brown"),
    ("worm marks", "vermiculation.present"), ("eye bar", "suborbital-bar.present"),
    ("dark lines running front to back", "stripe-pattern.stripes"),
    ("one long fin on the back", "dorsal-base-length.long"),
    ("black spot on the first dorsal", "spiny-dorsal-blotch.present"),
])
def test_words_of_the_whole_fish_and_of_marks(kb: KnowledgeBase, line: str, state: str) -> None:
    """A colour before the word for the fish is that of the whole fish, whatever else the line tells."""
    assert state in _states(kb, line)


def test_not_past_the_eye_denies_just_that(kb: KnowledgeBase) -> None:
    """A jaw that does not go past the eye may end anywhere before that."""
    seen = read_line(kb, "jaw doesn't go past the eye", Held(), CLOCK).seen
    assert [(s.observation.states, s.observation.seen) for s in seen] == [(("upper-jaw-reach.past-eye",), False)]


@pytest.mark.parametrize(("lines", "character"), [
    (("perch with orange fins", "7 bars"), "body-bar-count"),
    (("sunfish with an orange belly", "6 spines"), "dorsal-spines"),
])
def test_a_number_answers_for_its_own_noun(lines: tuple[str, ...], character: str, talk: Talk) -> None:
    """Seven bars are no answer to a question on spines."""
    _, held = talk(*lines)
    assert [s.observation.character for s in held.seen if s.observation.value is not None] == [character]


def test_a_catch_after_a_comparison_is_one_of_the_fishes_compared(talk: Talk) -> None:
    """ "Mine has" speaks of the fishes set side by side, also after one thing was told of both."""
    answer, _ = talk("warmouth vs rock bass", "how many spines", "mine has six anal spines")
    assert answer.candidates[0].taxon == "ambloplites-rupestris"


def test_a_question_compares_with_a_fish(kb: KnowledgeBase) -> None:
    """A fish that a question sets another against is asked about as well."""
    assert _named(kb, "is a redear bigger than a bluegill") == ["redear", "bluegill"]
    assert _named(kb, "it is bigger than a bluegill") == []


@pytest.mark.parametrize(("line", "names", "states"), [
    ("its got a big mouth and red eye", [], {"upper-jaw-reach.large-mouth", "eye-colour.red"}),
    ("ours have big mouths and red eyes", [], {"upper-jaw-reach.large-mouth", "eye-colour.red"}),
    ("big mouth, red eye", [], {"upper-jaw-reach.large-mouth", "eye-colour.red"}),
    ("red ear, whats it eat", ["red ear"], set()), ("caught a red eye in the creek", ["red eye"], set()),
])
def test_what_a_fish_has_got_is_no_name(kb: KnowledgeBase, line: str, names: list[str], states: set[str]) -> None:
    """After a word for the fish "got" tells of it, as do described parts that are clauses beside others."""
    assert _named(kb, line) == names and _states(kb, line) == states


@pytest.mark.parametrize(("line", "names"), [
    ("blotchy brown, bass kinda mouth, a red eye", []), ("it had a bass mouth and spots", []),
    ("blue or channel catfish tail", ["blue", "channel catfish"]),
])
def test_a_part_like_that_of_another_fish(kb: KnowledgeBase, line: str, names: list[str]) -> None:
    """A kind of fish before a part of the fish in hand tells of the part; kinds set side by side stay names."""
    assert _named(kb, line) == names


@pytest.mark.parametrize(("line", "names"), [
    ("pale spots, forked tail, northern ontario", []), ("caught a northern in ontario", ["northern"]),
    ("musky, northern or the cross between", ["musky", "northern"]),
])
def test_what_part_of_a_place_is_no_fish(kb: KnowledgeBase, line: str, names: list[str]) -> None:
    """Before the name of a place "northern" tells where."""
    assert _named(kb, line) == names
