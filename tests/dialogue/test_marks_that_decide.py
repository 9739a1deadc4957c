"""Marks that published accounts give as deciding lead to the fish they are told of."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("line", "taxon"), [
    ("bullhead with white chin whiskers, tail hardly notched", "ameiurus-natalis"),
    ("Missouri: bullhead, pale bar at the tail base, dark chin whiskers, no saw on the spine", "ameiurus-melas"),
    ("Iowa: sunfish, mouth reaches the front of the eye, long black ear with a whitish margin, pectoral fin short and "
     "rounded, anal fin fringed in black", "lepomis-humilis"),
    ("perch-like fish, spiny and soft dorsal run into one another without a notch, dark spots between the spines, "
     "small downturned mouth", "gymnocephalus-cernua"),
    ("pike with bars on light ground, cheek mostly scaled, gill cover scaled on the upper half, 6 pores per side, tail "
     "lobes rounded", "esox-lucius-x-esox-masquinongy"),
    ("looks like a walleye with dark saddles, streaks between the dorsal spines, a black spot at the back of the spiny "
     "dorsal and scaly cheeks", "sander-canadensis-x-sander-vitreus"),
    ("Montana: trout, no black on the dorsal fin, yellow spots, slightly forked tail", "salvelinus-confluentus"),
    ("Florida: bass with turquoise cheeks and a turquoise belly, jaw not past the eye", "micropterus-notius"),
    ("Missouri: redhorse with bright red tail, straight dorsal edge, molar throat teeth", "moxostoma-carinatum"),
    ("big catfish, no spots, deeply forked tail, 27 anal rays, rounded anal fin edge", "ictalurus-punctatus"),
])
def test_a_deciding_mark_leads(line: str, taxon: str, talk: Talk) -> None:
    """The fish whose published marks are told stands first."""
    answer, _ = talk(line)
    assert answer.taxa[0] == taxon


def test_no_chin_whiskers_on_a_carp(talk: Talk) -> None:
    """A carp has its whiskers at the upper lip and the mouth corners: white chin whiskers are no carp's."""
    answer, _ = talk("white chin whiskers")
    assert answer.taxa[0] == "ameiurus-natalis" and "cyprinus-carpio" not in answer.taxa


def test_darter_is_a_name_of_the_darters(talk: Talk) -> None:
    """The word stands for all darters of the base, not for one of them."""
    answer, _ = talk("darter")
    assert {"percina-caprodes", "etheostoma-nigrum"} <= set(answer.taxa)
