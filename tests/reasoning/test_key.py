"""Keys: every taxon reachable, every way true to identify, only characters that can be seen, clear leads."""

from __future__ import annotations

import random

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import below
from assistant.reasoning.identify import posterior
from assistant.reasoning.key import CLEAR, KEY_LOOKS, Key, Lead, build_key, standings
from assistant.reasoning.key_paths import evidence_of, expected_steps, paths
from assistant.reasoning.living import living_in
from assistant.reasoning.selection import species_below
from assistant.reasoning.splits import CHILD, READER, Reader, cells_of, folded, recorded, splits_of
from assistant.reasoning.tables import compile_table

STATES = ("us-oh", "us-tx", "us-or", "us-ga", "ca-on")
SUBSETS = 30
MOST = 400
"""More than any count of a fish."""


def random_subsets(kb: KnowledgeBase) -> list[tuple[str, ...]]:
    """Thirty seeded subsets of two to twelve species."""
    rng = random.Random(20260602)
    pool = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    return [tuple(rng.sample(pool, rng.randint(2, 12))) for _ in range(SUBSETS)]


def families(kb: KnowledgeBase) -> list[tuple[str, ...]]:
    """The species of every family that has two or more."""
    found = [species_below(kb, t.id) for t in kb.all("taxon") if t.rank == "family"]
    return [f for f in found if len(f) > 1]


def silent_in(kb: KnowledgeBase, key: Key) -> dict[str, frozenset[str]]:
    """By character, the fishes of a key of which nothing is recorded."""
    return {c: frozenset(t for t in key.taxa if recorded(kb, t, c) is None)
            for c in {couplet.character for couplet in key.couplets}}


def one_sided(key: Key, silent: dict[str, frozenset[str]]) -> list[tuple[int, str]]:
    """Couplets and the fishes that stand on one side of them only although nothing is recorded of them for it."""
    return [(c.number, t) for c in key.couplets for t in set(c.leads[0].taxa) ^ set(c.leads[1].taxa)
            if t in silent[c.character]]


def check_key(kb: KnowledgeBase, key: Key) -> None:
    """Every taxon ends somewhere, every way leads to one of the taxa at its end, numbering is sound.

    A way leads to a fish when identify names it; where nothing is recorded of the fish for a step, that step counts
    for it as for the fish that fits best. A fish of which all is recorded has to be named by identify as it stands.
    """
    ended: set[str] = set()
    table = compile_table(kb, key.taxa)
    silent = silent_in(kb, key)
    for path in paths(key):
        ended |= set(path.taxa)
        evidence = evidence_of(key, path)
        standing = standings(kb, table, evidence, silent)
        leader = max(path.taxa, key=lambda t: float(standing[table.index[t]]))
        assert standing[table.index[leader]] >= CLEAR, (path.taxa, table.taxa[int(standing.argmax())])
        if not any(leader in silent.get(o.character, ()) for o in evidence.observations):
            weights = posterior(kb, table, evidence)
            assert float(weights[table.index[leader]]) >= CLEAR * float(max(weights)), path.taxa
    assert ended == set(key.taxa)
    for couplet in key.couplets:
        assert kb.character(couplet.character).look in KEY_LOOKS[key.look]
        assert all(lead.goes_to == 0 or lead.goes_to > couplet.number for lead in couplet.leads)
        assert set(couplet.leads[0].taxa) != set(couplet.leads[1].taxa)
        assert not set(couplet.leads[0].states) & set(couplet.leads[1].states)
    assert not contradictions(kb, key)


def contradictions(kb: KnowledgeBase, key: Key) -> list[tuple[int, str]]:
    """Leads that tell of a character what an earlier lead on their way has excluded, by couplet and character."""
    out = []
    for path in paths(key):
        left: dict[str, frozenset[str | int]] = {}
        for step in path.steps:
            couplet = key.couplet(step.couplet)
            lead = couplet.leads[step.lead]
            open_ = frozenset(x for s in lead.states for x in below(kb, s)) if lead.states else frozenset(
                range(lead.low or 0, (MOST if lead.high is None else lead.high) + 1))
            before = left.get(couplet.character, open_)
            if not (open_ <= before if lead.states else open_ & before):
                out.append((couplet.number, couplet.character))
            left[couplet.character] = open_ & before
    return out


@pytest.mark.parametrize("number", range(SUBSETS))
def test_random_subsets_are_keyed(kb: KnowledgeBase, number: int) -> None:
    """A key of any set of fishes reaches each of them, and identify agrees on every way."""
    check_key(kb, build_key(kb, random_subsets(kb)[number], ("picture", "hand", "lab")[number % 3]))


@pytest.fixture(scope="module")
def family_keys(kb: KnowledgeBase) -> list[Key]:
    """The key of every family."""
    return [build_key(kb, taxa, "lab") for taxa in families(kb)]


def test_every_family_is_keyed(kb: KnowledgeBase, family_keys: list[Key]) -> None:
    """The key of every family reaches all its species, and identify agrees on every way."""
    assert len(family_keys) > 15
    for key in family_keys:
        check_key(kb, key)


def test_no_fish_is_put_aside_unseen(kb: KnowledgeBase, family_keys: list[Key]) -> None:
    """A fish of which nothing is recorded for a couplet stands on both its sides: families, a state, random sets."""
    species = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    state = build_key(kb, living_in(kb, species, ("us-oh",)))
    made = [(key, silent_in(kb, key)) for key in
            (*family_keys, state, *(build_key(kb, taxa, "lab") for taxa in random_subsets(kb)[::3]))]
    both = [(c.number, t) for key, silent in made for c in key.couplets for t in silent[c.character]
            if t in c.leads[0].taxa and t in c.leads[1].taxa]
    assert both and not [found for key, silent in made for found in one_sided(key, silent)]


def test_fishes_with_spines_are_not_called_soft(kb: KnowledgeBase) -> None:
    """Gobies and sculpins (spines in the first dorsal; value from memory) are on no way of soft fins."""
    ohio = build_key(kb, living_in(kb, [t for t in kb.species if not kb.taxon(t).is_hybrid], ("us-oh",)))
    soft = [lead for c in ohio.couplets for lead in c.leads if lead.states == ("fin-spines.soft",)]
    assert soft and not [t for lead in soft for t in lead.taxa if kb.lineage(t)[-1] in ("gobiidae", "cottidae")]


def test_no_way_contradicts_itself(kb: KnowledgeBase) -> None:
    """By a picture the fishes of Ontario and the sunfishes are told by no state that an earlier choice excluded."""
    ontario = build_key(kb, living_in(kb, [t for t in kb.species if not kb.taxon(t).is_hybrid], ("ca-on",)), "picture")
    for key in (ontario, build_key(kb, species_below(kb, "lepomis")), build_key(kb, species_below(kb, "lepomis"),
                                                                                "picture")):
        assert not contradictions(kb, key)
    asked = [[ontario.couplet(s.couplet).character for s in p.steps] for p in paths(ontario)]
    assert any(len(set(way)) < len(way) for way in asked), "a character may be asked again for what is left of it"


def test_a_lead_taken_before_binds(kb: KnowledgeBase) -> None:
    """A key made after a lead was taken asks the character only for the states that the lead left open."""
    taxa = species_below(kb, "ictaluridae")
    mouth = Lead(("mouth-position.lower-jaw-projects", "mouth-position.subterminal"), None, None, taxa, 0)
    key = build_key(kb, taxa, "picture", told={"mouth-position": mouth})
    asked = [s for c in key.couplets if c.character == "mouth-position" for lead in c.leads for s in lead.states]
    assert asked and set(asked) <= set(mouth.states)


@pytest.mark.long
@pytest.mark.parametrize("place", STATES)
def test_fishes_of_a_place_are_keyed(kb: KnowledgeBase, place: str) -> None:
    """The key of all fishes of a state or province reaches each of them, and identify agrees on every way."""
    taxa = living_in(kb, [t for t in kb.species if not kb.taxon(t).is_hybrid], (place,))
    assert len(taxa) > 30
    check_key(kb, build_key(kb, taxa))


def test_fishes_of_a_group_in_a_place_are_keyed(kb: KnowledgeBase) -> None:
    """The key of the panfish of a province reaches each of them, and identify agrees on every way."""
    check_key(kb, build_key(kb, living_in(kb, species_below(kb, "panfish"), ("ca-on",))))


def test_counts_part_at_a_gap(family_keys: list[Key]) -> None:
    """Leads on counts are "n or fewer" and "n + 1 or more", so that no number fits both or neither."""
    seen = 0
    for key in family_keys:
        for couplet in key.couplets:
            first, second = couplet.leads
            if not first.states:
                seen += 1
                low = next(x for x in (first.low, second.low) if x is not None)
                high = next(x for x in (first.high, second.high) if x is not None)
                assert low == high + 1
    assert seen > 5


def test_variable_taxa_stand_twice(family_keys: list[Key]) -> None:
    """Somewhere among the families a variable fish is keyed out at more than one end, and is told of."""
    ends = [t for key in family_keys for p in paths(key) for t in p.taxa]
    assert len(ends) > len(set(ends))


def test_same_input_same_key(kb: KnowledgeBase) -> None:
    """The same fishes give the same key, whatever was built before."""
    taxa = species_below(kb, "lepomis")
    assert build_key(kb, taxa) == build_key(kb, taxa)


def test_expected_steps_are_near_the_least(kb: KnowledgeBase) -> None:
    """Thirteen sunfishes take little more than the four choices that thirteen names need at the very least."""
    key = build_key(kb, species_below(kb, "lepomis"))
    assert 3.6 <= expected_steps(kb, key) <= 5.2


def test_left_out_characters_are_not_asked(kb: KnowledgeBase) -> None:
    """A key made without some characters asks none of them."""
    taxa = species_below(kb, "esox")
    first = build_key(kb, taxa).couplets[0].character
    again = build_key(kb, taxa, without={first})
    assert again.couplets and first not in {c.character for c in again.couplets}


SIX = ("esox-lucius", "esox-masquinongy", "esox-niger", "lepisosteus-osseus", "amia-calva", "ictalurus-punctatus")
TROUTS = ("salmo-trutta", "salvelinus-fontinalis", "oncorhynchus-mykiss", "salvelinus-namaycush")
SUNFISHES = ("lepomis-macrochirus", "lepomis-gibbosus", "lepomis-microlophus", "lepomis-cyanellus")


@pytest.mark.parametrize("look", ["picture", "hand"])
@pytest.mark.parametrize("reader", [READER, CHILD], ids=["anybody", "child"])
def test_choices_can_be_made_for_every_fish(kb: KnowledgeBase, look: str, reader: Reader) -> None:
    """Where features recorded of all fishes part them, no choice is asked that says nothing of one still in play."""
    for taxa in (SIX, TROUTS, SUNFISHES):
        key = build_key(kb, taxa, look, reader=reader)
        silent = silent_in(kb, key)
        assert key.couplets
        assert not [(c.number, t) for c in key.couplets for lead in c.leads for t in lead.taxa
                    if t in silent[c.character]]


def test_a_fish_told_of_an_umbrella_has_a_line_that_fits(kb: KnowledgeBase) -> None:
    """The muskellunge, told of dark spots of no special kind, is led by dark spots and not by dark specks."""
    key = build_key(kb, ("esox-lucius", "esox-masquinongy"), "picture",
                    without={c.id for c in kb.characters if c.id != "body-spots"})
    lead = next(x for x in key.couplets[0].leads if x.taxa == ("esox-masquinongy",))
    assert lead.states == ("body-spots.dark-on-light",)


@pytest.mark.parametrize(("taxa", "wanted"), [
    (TROUTS, {"caudal-fin-shape", "vermiculation", "caudal-spots"}),
    (SUNFISHES, {"soft-dorsal-blotch", "opercular-flap-edge", "head-lines"})])
def test_children_are_asked_plain_marks(kb: KnowledgeBase, taxa: tuple[str, ...], wanted: set[str]) -> None:
    """A key for children asks marks of tail, ear, cheek and fins, no measure that is more or less, nothing counted."""
    for look in ("picture", "hand"):
        key = build_key(kb, taxa, look, reader=CHILD)
        asked = [kb.character(c.character) for c in key.couplets]
        assert {c.id for c in asked} == wanted
        assert all(c.kind == "states" and c.look == "glance" for c in asked)
        assert all(min(len(lead.states) for lead in c.leads) == 1 for c in key.couplets)


def test_what_settles_a_listed_pair_is_asked(kb: KnowledgeBase) -> None:
    """Walleye and sauger are parted by the white tail tip that their list of look-alikes names, not by rays."""
    key = build_key(kb, ("sander-vitreus", "sander-canadensis", "perca-flavescens"))
    assert key.couplets[-1].character == "tail-tip-mark"


def test_inseparable_taxa_end_together(tiny_kb: KnowledgeBase) -> None:
    """Taxa that nothing parts end at one place, all of them named."""
    taxa = tuple(t for t in tiny_kb.species if not tiny_kb.taxon(t).is_hybrid)[:2]
    key = build_key(tiny_kb, taxa, without={c.id for c in tiny_kb.characters})
    assert not key.couplets
    assert paths(key)[0].taxa == taxa


def test_leads_fold_states_into_their_umbrella(kb: KnowledgeBase) -> None:
    """Several blue lines are called blue lines, unless one of them stands in the other lead."""
    blue = ("head-lines.wavy-blue", "head-lines.faint-wavy-blue")
    assert folded(kb, blue, ("head-lines.none",)) == ("head-lines.blue-lines",)
    assert folded(kb, blue, ("head-lines.broken-blue",)) == blue


def test_leads_do_not_fold_into_an_umbrella_of_the_other_lead(kb: KnowledgeBase) -> None:
    """Two flat heads beside a broad head are called flat, not broad, though broad stands over flat."""
    flat = ("head-form.long-broad-flat", "head-form.very-flat-broad")
    assert folded(kb, flat, ("head-form.broad",)) == ("head-form.flat",)
    assert folded(kb, flat, ("head-form.narrow",)) == ("head-form.broad",)


def test_no_split_parts_a_state_from_what_lies_under_it(kb: KnowledgeBase) -> None:
    """However many umbrellas lie between, a state and its finer one stay on the same side."""
    looked = 0
    for taxa in families(kb):
        cells = cells_of(kb, taxa, KEY_LOOKS["lab"])
        for split in splits_of(kb, cells, len(taxa)):
            if split.at is not None or kb.character(split.character).kind == "ordered":
                continue
            for one, other in ((split.left, split.right), (split.right, split.left)):
                for state in one:
                    wider = kb.state(state).broader
                    while wider:
                        assert wider not in other, (split.character, state, wider)
                        wider = kb.state(wider).broader
                        looked += 1
    assert looked > 100


def test_genera_can_be_keyed(kb: KnowledgeBase) -> None:
    """A key of genera reaches each of them by what their species show."""
    genera = tuple(t.id for t in kb.all("taxon") if t.rank == "genus" and t.parent == "centrarchidae")
    key = build_key(kb, genera)
    assert {t for p in paths(key) for t in p.taxa} == set(genera)
    assert len(key.couplets) >= len(genera) - 2
