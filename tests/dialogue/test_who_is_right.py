"""Two names for one fish: what settles it, told by somebody else, cut short, or held against a first guess."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk
from tests.dialogue.handlers.test_core import text


@pytest.mark.parametrize(("lines", "intent", "taxa"), [
    (("warden wrote up my smallie as a largemouth. whats the proof either way",), "contrast",
     ("micropterus-dolomieu", "micropterus-nigricans")),
    (("they logged my coho as a chinook, what settles it",), "contrast",
     ("oncorhynchus-kisutch", "oncorhynchus-tshawytscha")),
    (("game warden ticketed my white perch as a white bass. what proves which",), "contrast",
     ("morone-americana", "morone-chrysops")),
    (("my uncle says black crappie, i say white. what do we count?",), "contrast",
     ("pomoxis-nigromaculatus", "pomoxis-annularis")),
    (("i say white, he says black crappie. who is right",), "contrast",
     ("pomoxis-annularis", "pomoxis-nigromaculatus")),
    (("dad swears yellow bullhead, i think its a brown",), "contrast", ("ameiurus-natalis", "ameiurus-nebulosus")),
    (("grandma calls them sac a lait, whats the real name", "ok so black or white"), "contrast",
     ("pomoxis-nigromaculatus", "pomoxis-annularis")),
    (("red dots w blue rings, crisp white edge on the belly fins. brookie yeah?",
      "other guy in camp says dolly varden"), "why", ("salvelinus-fontinalis", "salvelinus-malma")),
    (("For a badge sheet: walleye and sauger. What can a ten-year-old see?",), "contrast",
     ("sander-vitreus", "sander-canadensis")),
])
def test_two_names_are_set_beside_each_other(
    lines: tuple[str, ...], intent: str, taxa: tuple[str, ...], talk: Talk
) -> None:
    """Both fishes are answered of, the second one too where only its first word is said."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert set(taxa) <= set(answer.taxa)


@pytest.mark.parametrize("line", ["black crappie, he says its green", "largemouth bass, he says its green"])
def test_what_it_is_said_to_look_like_is_no_name(line: str, talk: Talk) -> None:
    """A colour behind "says its" tells of the fish named before it."""
    answer, held = talk(line)
    assert answer.intent == "identify"
    assert [s.observation.character for s in held.seen] == ["body-colour"]


@pytest.mark.parametrize(("lines", "intent", "must"), [
    (("A pupil wonders why colour by itself is a poor way to name a sunfish. What do I say?",), "why",
     "changes with age"),
    (("pupils ask why colour is not enough to identify a trout",), "why", "changes with age"),
    (("what is a pupil",), "term", "middle of the eye"),
    (("92 cm jackfish out of manitoba, decent?", "whats a mount of it gonna run me"), "out-of-scope", "is not held"),
    (("how much does a taxidermist charge for a walleye",), "out-of-scope", "is not held"),
    (("what do i put on the hook for rock bass", "lol you ever catch one"), "small-talk", "never wet a line"),
    (("warden says walleye and sauger count together, true?",), "rules", "where was it"),
    (("officer says my saugeye counts as a walleye",), "rules", "where was it"),
    (("do you even fish",), "small-talk", "never wet a line"),
    (("how do you fish for crappie",), "tackle", "crappie"),
    (("where do rock bass hold in a finger lake", "come february?"), "habitat", "in winter is not held"),
    (("where do rock bass go in winter",), "habitat", "in winter is not held"),
    (("where do crappies sit in a reservoir", "what about january"), "habitat", "under ice in 20 to 50 ft"),
    (("where are bluegill in july", "come ice-up?"), "habitat", "under ice near the bottom"),
])
def test_the_first_thing_said(lines: tuple[str, ...], intent: str, must: str, talk: Talk) -> None:
    """What is asked is answered, or said not to be held, before anything else."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert must in text(answer).lower().split("\n")[0]


@pytest.mark.parametrize(("line", "must"), [
    ("golden shiner or rudd, fins are reddish", "ridge along the belly"),
    ("bluegill or pumpkinseed, orange belly", "edge of the ear flap"),
])
def test_what_would_settle_it_is_told_with_the_likelier(line: str, must: str, talk: Talk) -> None:
    """Who wavers between two fishes is told how each stands and what else tells them apart."""
    answer, _ = talk(line)
    assert "to settle it look at" in text(answer) and must in text(answer)


@pytest.mark.parametrize("line", ["8 on mine and 5 on his", "mine has 8 spines on top, his has 5",
                                  "mine has eight, his five"])
def test_each_of_two_fishes_counted_is_named(line: str, talk: Talk) -> None:
    """The count of the second fish names that one, and is not taken for the first."""
    answer, held = talk("my uncle says black crappie, i say white. what do we count?", line)
    assert answer.taxa[:2] == ("pomoxis-nigromaculatus", "pomoxis-annularis")
    assert "the other, with 5 dorsal spines" in text(answer)
    assert [s.observation.value for s in held.seen] == [8]


def test_what_was_eaten_is_no_place(talk: Talk) -> None:
    """A season after an answer on food asks for no place."""
    assert "keeps in winter" not in text(talk("what do rock bass eat", "and in winter?")[0])
