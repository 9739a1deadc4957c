"""Names cut short are completed by the fishes they stand beside (English names of the base)."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("lines", "fish"),
    [
        (("two pickerels, chain and redfin, I keep mixing them up",), ("esox-niger", "esox-americanus-americanus")),
        (("brook or brown troat",), ("salvelinus-fontinalis", "salmo-trutta")),
        (("sockeye, chum, pink: how do I tell them",),
         ("oncorhynchus-nerka", "oncorhynchus-keta", "oncorhynchus-gorbuscha")),
        (("would a spotted gar's snout be shorter than a longnose's",), ("lepisosteus-oculatus", "lepisosteus-osseus")),
        (("bighead vs silver",), ("hypophthalmichthys-nobilis", "hypophthalmichthys-molitrix")),
        (("yellow vs brown vs black bullhead",), ("ameiurus-natalis", "ameiurus-nebulosus", "ameiurus-melas")),
        (("white vs yellow vs striped bass",), ("morone-chrysops", "morone-mississippiensis", "morone-saxatilis")),
        (("green vs bluegill",), ("lepomis-cyanellus", "lepomis-macrochirus")),
        (("tell me about the black crappie", "and the white?"), ("pomoxis-annularis",)),
        (("black bullhead from brown when all i can do is feel",), ("ameiurus-melas", "ameiurus-nebulosus")),
        (("specks, black or white, how do you know",), ("pomoxis-nigromaculatus", "pomoxis-annularis")),
        (("crappie, six spines in the back fin", "the ranger called it black"),
         ("pomoxis-annularis", "pomoxis-nigromaculatus")),
        (("what is a sacalait", "black kind or the white"), ("pomoxis-nigromaculatus", "pomoxis-annularis")),
        (("kentucky or a largemouth, how to tell",), ("micropterus-punctulatus", "micropterus-nigricans")),
        (("blue gill not red ear, prove it without color",), ("lepomis-macrochirus", "lepomis-microlophus")),
        (("crapies: is going by the markings good enough to split black from white",),
         ("pomoxis-nigromaculatus", "pomoxis-annularis")),
        (("trout: do i tell brook from brown by spots",), ("salvelinus-fontinalis", "salmo-trutta")),
        (("bullheads: yellow vs brown, whiskers enough?",), ("ameiurus-natalis", "ameiurus-nebulosus")),
        (("yellow bullhead", "or brown"), ("ameiurus-natalis", "ameiurus-nebulosus")),
    ],
)
def test_neighbours_complete_a_name(lines: tuple[str, ...], fish: tuple[str, ...], talk: Talk) -> None:
    """The last word of the neighbour's name, or the kind of its family, completes the name."""
    assert talk(*lines)[0].taxa[: len(fish)] == fish


@pytest.mark.parametrize(
    ("line", "wrong"),
    [
        ("ear is long, edged in white, blue squiggles on the cheek", "ameiurus-catus"),
        ("largemouth bass, white belly, green back", "morone-chrysops"),
        ("caught a crappie, black spots all over", "ictiobus-niger"),
        ("crappie with a tail that is black or white", "ictiobus-niger"),
    ],
)
def test_colours_of_a_fish_are_no_names(line: str, wrong: str, talk: Talk) -> None:
    """A colour that describes what is named stays a colour."""
    answer, held = talk(line)
    assert wrong not in answer.taxa[:1]
    assert held.seen


def test_a_colour_between_two_names_is_still_read(talk: Talk) -> None:
    """Words that could be the names of two basses do not make a name of the colour that stands between them."""
    _, held = talk("large mouth, brown lines on cheek, red eye")
    assert {"head-lines", "eye-colour", "upper-jaw-reach"} <= {s.observation.character for s in held.seen}
