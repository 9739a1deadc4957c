"""Marks that a line does not tell are not read of it (lines and readings are our own, common practice)."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.reader.test_ways_of_telling import told


@pytest.mark.parametrize(("line", "never"), [
    ("red peepers, dark bars up n down", "suborbital-bar"),
    ("mouth underneath, lips all wee bumps", "upper-jaw-reach"),
    ("short based fin on the back, big scales and every one outlined dark like a net", "median-fin-marks"),
    ("flecks start on the gill cover and carry on down the side. Half one thing, half the other?", "opercle-scaling"),
    ("tip of the back fin black. Little catfish but which?", "dorsal-base-length"),
    ("black blotch at the foot of the top fin and mottled sides", "soft-dorsal-blotch"),
    ("belly fins forward, a dark bar straight down from the eye, scales over the whole gill lid as well", "throat"),
])
def test_a_word_stays_with_its_own_noun(kb: KnowledgeBase, line: str, never: str) -> None:
    """A word that stands at a noun of its own tells nothing of a part some clauses before or behind."""
    assert not any(x.lstrip("!").startswith(never) for x in told(kb, line))


@pytest.mark.parametrize(("line", "never"), [
    ("no spots on pecs or pelvics", "pelvic-fin-position"),
    ("no line of pores to the tail", "caudal-spots"),
    ("belly ridge runs from the belly fins to the vent and no further forward", "pelvic-fin-position"),
    ("notch between the dorsals shallow and for sure not deep", "body-form"),
    ("upright bars, not as deep as the other kind", "body-form"),
])
def test_a_denial_reaches_no_further_than_it_says(kb: KnowledgeBase, line: str, never: str) -> None:
    """Where a thing is missing, or how deep a notch is not, denies nothing of the place or of the whole fish."""
    assert not any(x.lstrip("!").startswith(never) for x in told(kb, line))


@pytest.mark.parametrize(("line", "read"), [
    ("black spot at the back of the first top fin", {"spiny-dorsal-blotch.present"}),
    ("black spot at the back of the soft dorsal", {"soft-dorsal-blotch.present"}),
    ("a dark bar across the base of the tail", {"caudal-base-dark-bar.present"}),
    ("light bean spots in rows", {"body-spots.light-on-dark"}),
    ("dark upright bands on the flank", {"body-bars.bars"}),
    ("two side by side strips of teeth on the tongue", {"tongue-teeth.two-patches"}),
])
def test_one_noun_phrase_tells_one_mark(kb: KnowledgeBase, line: str, read: set[str]) -> None:
    """A mark told with its place is that mark alone."""
    assert told(kb, line) == read


def test_the_line_along_the_side_is_no_stripe(kb: KnowledgeBase) -> None:
    """One line that dips or comes in two pieces is the lateral line; eight dark ones are stripes."""
    assert not any(x.startswith("stripe") for x in told(kb, "the line down its side dips way low"))
    assert told(kb, "the line on the side broken in two pieces") == {"lateral-line-division.broken-in-two"}
    assert not any("lateral" in x for x in told(kb, "eight dark lines down the side, whole, not broken anywhere"))


@pytest.mark.parametrize(("line", "never"), [
    ("half as tall as it is long", "body-depth"),
    ("big gill plate spot", "gill-cover-length"),
    ("bright red on the back half of the dorsal", "dorsal-base-length"),
    ("no black smudge in the back of that sail", "nape-patch"),
    ("between the spines of the first fin there are upright dark bars", "pectoral-spine-serration"),
    ("front fin on its back is dark at the bottom", "spiny-dorsal-leading-edge"),
    ("long dorsal with 16 spines", "dorsal-spine-height"),
    ("the fin on top begins behind the belly fins; belly sharp", "belly-keel"),
    ("five loose spines ahead of the dorsal", "dorsal-vs-anal-origin"),
    ("nose sticks out over the mouth", "mouth-position"),
    ("the spine of the side fin with big hooked teeth", "canine-teeth"),
    ("back marked with big brown saddles over it", "body-colour"),
    ("dark spots thrown all over the sides with no order", "body-mottling"),
    ("chin and floor of the mouth are peppered black", "body-spots"),
    ("two flaps between the holes of a nostril", "nostril-tubes"),
    ("nose does not stick out past the lip", "nostril-tubes"),
    ("no plates on the sides", "gular-plate"),
    ("black spot on the back part of the dorsal, tiny", "dorsal-base-length"),
    ("vent up under the throat, purple brown", "throat-colour"),
    ("speckles with no pattern", "body-mottling"),
    ("patches of big scales", "body-spots"),
    ("head spotless", "body-spots"),
    ("a sucking disc full of big sharp teeth", "canine-teeth"),
    ("breeding bumps on the head", "forehead-hump"),
    ("light lips, two spots", "lips"),
])
def test_words_for_something_else(kb: KnowledgeBase, line: str, never: str) -> None:
    """A likeness, a place or a word within another name is no mark."""
    assert not any(x.lstrip("!").startswith(never) for x in told(kb, line))
