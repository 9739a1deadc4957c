"""Fishes set against each other: what is asked for comes first, words for several fishes are owned up to."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk


def test_the_feature_asked_about_leads(talk: Talk) -> None:
    """"Which has the forked tail" is answered by the tail, not by what tells the two apart best."""
    answer, _ = talk("which has the forked tail, the flathead or the blue catfish?")
    assert answer.blocks[0].text.startswith("Shape of the tail fin")


def test_counts_alone(talk: Talk, kb: KnowledgeBase) -> None:
    """With "counts only" every feature told is a count."""
    answer, _ = talk("white crappie against black crappie, counts only")
    told = {kb.record_at(s).character for b in answer.blocks if b.kind in ("lead", "point") for s in b.statements}
    assert told and {kb.character(c).kind for c in told} == {"count"}


def test_the_cross_of_two_is_set_beside_them(talk: Talk) -> None:
    """Who asks for the cross between two fishes sees it in the comparison."""
    assert "esox-lucius-x-esox-masquinongy" in talk("musky, northern or the cross between, how do I sort them")[0].taxa


def test_a_further_fish_is_added(talk: Talk) -> None:
    """"And a blue cat?" after two catfishes compares all three; without the "and" it takes the place of the second."""
    three, _ = talk("flathead or channel catfish, how to tell", "and a blue catfish?")
    assert set(three.taxa) == {"pylodictis-olivaris", "ictalurus-punctatus", "ictalurus-furcatus"}


def test_a_word_for_several_says_what_it_was_taken_for(talk: Talk) -> None:
    """"Buffalo" beside a drum is one of three buffaloes: which one is told, and which others it may be."""
    last = talk("drum or buffalo?")[0].blocks[-1].text
    assert last.startswith('"buffalo" is taken for') and last.count("buffalo") == 4


def test_a_fish_and_the_word_for_its_group_are_not_the_same(talk: Talk) -> None:
    """A bluegill is one of the sunfishes; a crappie of the same family is no bass."""
    text = talk("are bluegill and sunfish the same thing")[0].blocks[0].text
    assert text.startswith("Not quite: the bluegill is one of")
    assert not talk("are walleye and bass the same")[0].blocks[0].text.startswith("Not quite")


def test_a_size_word_is_no_part_of_the_fish(talk: Talk) -> None:
    """"The biggest difference" asks for the firmest one, not for a body part."""
    answer, _ = talk("whats the biggest difference between a bluegill and a redear")
    assert answer.blocks[0].text.startswith("Look first")


def test_fishes_told_by_a_part_of_their_names(talk: Talk) -> None:
    """A list that clips the names of kin takes in all of them."""
    answer, _ = talk("largemouth, smallmouth, spot: one thing to check on each")
    assert set(answer.taxa) >= {"micropterus-nigricans", "micropterus-dolomieu", "micropterus-punctulatus"}
    answer, _ = talk("channel, blue, flathead: give me one tell for each")
    assert set(answer.taxa) >= {"ictalurus-punctatus", "ictalurus-furcatus", "pylodictis-olivaris"}


def test_two_scientific_names_are_two_fishes(talk: Talk) -> None:
    """The genus of a scientific name brings no kin into the comparison; names run together still do."""
    answer, _ = talk("how do I tell Moxostoma anisurum from Moxostoma erythrurum?")
    assert answer.taxa == ("moxostoma-anisurum", "moxostoma-erythrurum")
    assert "esox-lucius" in talk("pike muskie or tiger muskie, how do I tell")[0].taxa
    assert talk("cahaba bass vs redeye bass")[0].taxa == ("micropterus-cahabae", "micropterus-coosae")


def test_what_a_genus_lacks_is_told_against_a_mark_of_another(talk: Talk) -> None:
    """The pale spot behind a stonecat's dorsal is told beside a bullhead, whose genus lacks it."""
    text = " ".join(b.text for b in talk("stonecat or yellow bullhead, how do I tell")[0].blocks)
    assert "Pale spot at the end of the dorsal base: stonecat - usually present; yellow bullhead - absent" in text


def test_a_single_difference_is_not_held_back(talk: Talk) -> None:
    """Where one row would be left for "more", it is told."""
    text = " ".join(b.text for b in talk("banded sunfish vs blackbanded sunfish")[0].blocks)
    assert "Number of dark bars on the side" in text and "more difference" not in text


def test_a_loose_name_just_explained(talk: Talk) -> None:
    """All that a loose name means is set beside the fish named next, even where that one bears the name, too."""
    answer, _ = talk("what in the world is a stumpknocker", "how do i split that from a warmouth")
    assert set(answer.taxa) >= {"lepomis-gulosus", "lepomis-punctatus", "lepomis-miniatus", "lepomis-microlophus"}


def test_a_feature_asked_with_where_has_no_article(talk: Talk) -> None:
    """"Look first at where the dorsal fin begins", not "at the where"."""
    assert talk("lake whitefish vs mooneye")[0].blocks[0].text.startswith("Look first at where the dorsal fin begins")
