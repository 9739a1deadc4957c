"""One answer to "does this fish live here", whoever asks."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.living import LIVING, living_in, rows, status_in
from assistant.reasoning.place_prior import expand_places
from assistant.reasoning.selection import select


def test_lessons_and_lists_take_the_same_fishes(kb: KnowledgeBase) -> None:
    """What a key or sheet of a state takes is what a list of that state names, for every state that any fish is of."""
    species = tuple(t for t in kb.species if not kb.taxon(t).is_hybrid)
    states = sorted({r.place for t in species for r in kb.ranges(t) if (p := kb.place(r.place)) and p.kind == "state"})
    assert len(states) > 40
    for state in states:
        living = living_in(kb, species, (state,))
        assert living and set(select(kb, (), "", state)) == set(living)


def test_the_most_telling_row_decides(kb: KnowledgeBase) -> None:
    """A fish lives in a place where the row that counts most says so, though another row may say otherwise."""
    species = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    mixed = [(t, p) for t in species for p in {r.place for r in rows(kb, t)}
             if len({r.status in LIVING for r in rows(kb, t) if r.place == p}) > 1]
    assert mixed
    for taxon, place in mixed:
        row = status_in(kb, taxon, expand_places(kb, (place,)))
        assert row is not None and (taxon in living_in(kb, (taxon,), (place,))) == (row.status in LIVING)


def test_what_is_said_of_a_water_counts_before_its_states(kb: KnowledgeBase) -> None:
    """The walleye is introduced and the sauger absent in the Potomac basin, though native in states on it."""
    for taxon, status in (("sander-vitreus", "introduced"), ("sander-canadensis", "absent")):
        places = expand_places(kb, ("potomac-basin",))
        row = status_in(kb, taxon, places)
        assert row is not None and (row.status, row.place) == (status, "potomac-basin")
        assert any(r.status == "native" and r.place in places for r in rows(kb, taxon))
