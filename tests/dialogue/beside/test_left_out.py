"""Fishes that a question asks beyond, and those taken out of a list made before (our own judgement)."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("line", "gone", "held"), [
    ("besides trout who else has an adipose fin", "oncorhynchus-mykiss", "ameiurus-nebulosus"),
    ("which fish other than the striped bass have stripes along the side", "morone-saxatilis", "morone-chrysops"),
    ("which catfishes other than the flathead have a forked tail", "pylodictis-olivaris", "ictalurus-punctatus"),
])
def test_fishes_asked_beyond_are_not_listed(line: str, gone: str, held: str, talk: Talk) -> None:
    """Who asks for others besides some fish gets these and not that one."""
    answer, _ = talk(line)
    assert answer.intent == "list" and gone not in answer.taxa and held in answer.taxa


def test_a_list_by_water_tells_of_the_family(talk: Talk) -> None:
    """A word that the whole family bears reaches beyond its genus for a kind of water, too."""
    answer, _ = talk("what sunfish kinds put up with tea colored acid bog water")
    assert {"lepomis-gulosus", "enneacanthus-obesus"} <= set(answer.taxa)


def test_a_list_asked_between_forgets_the_fishes_wavered_over(talk: Talk) -> None:
    """With the marks of a catch that a list leaves behind go the names offered for it."""
    _, held = talk("goldfish or carp, brassy pond fish, no whiskers")
    _, held = talk("what sunfish live in tea colored bog water", held=held)
    answer, _ = talk("its got a big mouth and red eye", held=held)
    assert answer.intent == "identify" and "carassius-auratus" not in answer.taxa
