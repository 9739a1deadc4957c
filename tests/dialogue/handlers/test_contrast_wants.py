"""Wants inside a comparison are answered first: one mark, what misleads, colour or size, dead, young, breeding fish."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk


@pytest.mark.parametrize("line", [
    "what misleads people between largemouth and smallmouth", "what should i not trust to tell bluegill from redear",
    "which mark is unreliable for black and white crappie"])
def test_what_misleads_is_told_with_what_to_go_by(talk: Talk, line: str) -> None:
    """The first line names marks that overlap and one that does not."""
    text = talk(line)[0].blocks[0].text
    assert text.startswith("Do not rely on the ") and " Go by the " in text


@pytest.mark.parametrize(("line", "word"), [
    ("is the colour any good for telling a sauger from a walleye", "colour"),
    ("can you use color to tell a flathead from a blue catfish", "colour"),
    ("is length a reliable way to tell a green sunfish from a warmouth", "large fish")])
def test_whether_colour_or_size_will_do_is_answered_yes_or_no(talk: Talk, line: str, word: str) -> None:
    """The verdict comes first, then what is surer."""
    first, second, *_ = talk(line)[0].blocks
    assert first.text.startswith(("Not by itself", "No:")) and word in first.text
    assert second.text.startswith("Go by the ")


@pytest.mark.parametrize("last", ["only one mark please", "if i could check one thing?", "the single best feature"])
def test_one_mark_is_one_line(talk: Talk, last: str) -> None:
    """Who asks for one thing gets one, with a word on hard pairs at most."""
    blocks = talk("rock bass vs warmouth", last)[0].blocks
    assert [b.kind for b in blocks if b.kind in ("lead", "point")] == ["lead"]


def test_a_dead_fish_is_told_by_structure(talk: Talk, kb: KnowledgeBase) -> None:
    """No mark of colour leads for a fish that has faded, and it is said why."""
    answer, _ = talk("tell a bluegill from a redear, its been dead a day")
    first = answer.blocks[0]
    assert "fade" in first.text
    assert not any(kb.character(kb.record_at(s).character).colouring for s in first.statements)


def test_breeding_males_are_told_of_by_what_holds_for_them(talk: Talk) -> None:
    """What is told of breeding males comes first; what is told of all fish of a kind is marked."""
    answer, _ = talk("difference between breeding male longear and breeding male bluegill")
    assert answer.blocks[0].text.startswith("Breeding males, ")


def test_young_fish_are_told_of_by_what_the_young_show(talk: Talk) -> None:
    """Both young are told of in the first line; where nothing is told of the young, a mark that shows in small fish."""
    assert talk("juvenile smallmouth or juvenile largemouth, how to tell")[0].blocks[0].text.startswith("Young fish, ")
    assert talk("tiny blue cat vs tiny channel cat")[0].blocks[0].text.startswith("In small fish, too, look at the ")


@pytest.mark.parametrize(("line", "word"), [
    ("bluegill vs redear, teeth", "teeth"), ("sauger vs walleye dorsal fin", "dorsal"),
    ("white vs black crappie spots", "side"), ("blue vs channel cat anal fin ray count", "Anal soft rays")])
def test_a_part_or_count_named_leads(talk: Talk, line: str, word: str) -> None:
    """The first line is on the part that was named, and only a few others follow."""
    blocks = talk(line)[0].blocks
    assert word in blocks[0].text
    assert not blocks[0].text.startswith("Look first")


def test_a_third_fish_asked_about_is_added(talk: Talk) -> None:
    """"What about X" after a comparison sets X beside the two, and what is asked next is told of all three."""
    answer, _ = talk("northern pike vs muskellunge", "what about a tiger muskie")
    assert len(answer.taxa) == 3


def test_a_pair_that_the_eye_does_not_settle_says_so_first(talk: Talk) -> None:
    """Whether two fishes can be told by looking is answered before any feature."""
    assert talk("can florida bass and largemouth be told by sight")[0].blocks[0].text.startswith("Not surely by eye")


def test_a_group_is_told_apart_with_its_name_last(talk: Talk) -> None:
    """"Apart" is no word for a look: names before and behind it stay names."""
    assert set(talk("tell crappies apart")[0].taxa) == {"pomoxis-annularis", "pomoxis-nigromaculatus"}
    answer, _ = talk("please tell apart green sunfish, bluegill and redear")
    assert set(answer.taxa) == {"lepomis-cyanellus", "lepomis-macrochirus", "lepomis-microlophus"}


def test_what_was_seen_before_chooses_between_two(talk: Talk) -> None:
    """"So A or B" after marks were told is answered by them; a question of how is not."""
    seen = "sunfish with a big mouth, no teeth on the tongue"
    assert talk(seen, "so a green sunfish or a warmouth")[0].blocks[0].text.startswith("By what you saw")
    assert not talk(seen, "how do i tell green sunfish from warmouth")[0].blocks[0].text.startswith("By what you saw")


@pytest.mark.parametrize(("line", "start"), [
    ("is a blotch on the soft dorsal always a bluegill", "No: green sunfish"),
    ("does a forked tail always mean channel catfish", "No: "),
    ("is a white tail tip always a walleye", "No: ")])
def test_whether_a_mark_makes_a_fish_names_who_else_shows_it(talk: Talk, line: str, start: str) -> None:
    """The converse of "does it always have one" is answered by the other fishes."""
    assert talk(line)[0].blocks[0].text.startswith(start)


def test_whether_a_fish_always_shows_a_mark_is_another_question(talk: Talk) -> None:
    """With the fish in front nothing is said of others."""
    assert talk("do walleyes always have a white tail tip")[0].blocks[0].text.startswith("Yes")


def test_the_part_that_can_be_felt_leads(talk: Talk) -> None:
    """A "side spine" is no side: what is told of that spine comes first, before marks of the side."""
    answer, _ = talk("black bullhead or brown when all i can do is feel the side spine")
    assert "pectoral spine" in answer.blocks[0].text and "blotches" not in answer.blocks[0].text


def test_no_more_than_a_few_counts_before_what_is_seen(talk: Talk, kb: KnowledgeBase) -> None:
    """Of two basses that differ in many counts, marks and colours are told before the fourth count."""
    blocks = talk("how do I tell a smallmouth bass from a spotted bass?")[0].blocks
    told = [kb.character(kb.record_at(b.statements[0]).character).kind for b in blocks
            if b.kind in ("lead", "point") and b.statements and b.statements[0].startswith("st:")][:9]
    assert told.count("count") == 3
