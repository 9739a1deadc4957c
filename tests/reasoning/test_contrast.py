"""Contrasts: what leads, what is shared, what misleads."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import CLEARLY, LOOKS, WITHIN, contrast, decides, firm_first, settled_by, tell
from assistant.reasoning.evidence import below


def test_a_contrast_does_not_depend_on_the_order_of_the_taxa(kb: KnowledgeBase) -> None:
    """contrast(X, Y) and contrast(Y, X) rank the same characters with the same separation."""
    one = contrast(kb, ["lepomis-gibbosus", "lepomis-microlophus"])
    two = contrast(kb, ["lepomis-microlophus", "lepomis-gibbosus"])
    assert [(r.character, round(r.separation, 9)) for r in one.separating] == [
        (r.character, round(r.separation, 9)) for r in two.separating]


def test_pumpkinseed_and_redear_lead_with_ear_and_head_lines_not_the_belly(kb: KnowledgeBase) -> None:
    """The first rows are of the ear flap and the head lines; the colour of the belly is not among the first six."""
    rows = [r.character for r in contrast(kb, ["lepomis-gibbosus", "lepomis-microlophus"], LOOKS["hand"]).separating]
    assert "head-lines" in rows[:3]
    assert any(r.startswith("opercular-flap") for r in rows[:3])
    assert "breast-colour" not in rows[:6]


def test_young_fish_are_told_as_misleading(kb: KnowledgeBase) -> None:
    """Pumpkinseed and bluegill: the statements on young fish are named beside what separates the grown ones."""
    found = contrast(kb, ["lepomis-gibbosus", "lepomis-macrochirus"])
    stages = {kb.record_at("st:" + m.statement).stage for m in found.misleading}
    assert "juvenile" in stages
    assert found.crosses == ("lepomis-gibbosus-x-lepomis-macrochirus",)


def test_a_taxon_against_itself_separates_in_nothing(kb: KnowledgeBase) -> None:
    """No character separates a fish from itself."""
    assert contrast(kb, ["esox-lucius", "esox-lucius"]).separating == ()


def test_only_what_can_be_seen_is_used(kb: KnowledgeBase) -> None:
    """At a glance no character needs a count, and none needs a dead fish in the hand."""
    for look, allowed in LOOKS.items():
        rows = contrast(kb, ["sander-vitreus", "sander-canadensis"], allowed).separating
        assert {kb.character(r.character).look for r in rows} <= allowed, look


def test_what_the_pair_itself_names_goes_first(kb: KnowledgeBase) -> None:
    """Green sunfish and warmouth are listed as settled by the tongue's teeth, so these are told first."""
    first = contrast(kb, ("lepomis-cyanellus", "lepomis-gulosus"), LOOKS["hand"]).separating[0]
    assert first.character == "tongue-teeth"


def test_memory_does_not_lead_where_something_read_separates(kb: KnowledgeBase) -> None:
    """No character from memory stands before one that is read, easily seen and clearly separating, unless it is named
    by the pair's own list; looked at for all listed look-alikes."""
    looked = 0
    for pair in {tuple(sorted((t, x.other))) for t in kb.species for x in kb.look_alikes(t) if x.other in kb.species}:
        named = settled_by(kb, pair)
        rows = contrast(kb, pair, LOOKS["hand"]).separating
        read = [i for i, r in enumerate(rows) if r.separation >= CLEARLY
                and kb.character(r.character).look in ("glance", "hand")
                and all(t and t.basis != "memory" for t in r.told)]
        for i, row in enumerate(rows):
            memory = any(t is not None and t.basis == "memory" for t in row.told)
            if memory and not decides(kb, row.character, named):
                assert all(j < i for j in read), (pair, row.character)
                looked += 1
    assert looked > 100


def test_what_fish_out_of_season_show_is_told_of_any_grown_fish(kb: KnowledgeBase) -> None:
    """A white belly of fish that do not breed is not told as that of breeding males; a belly told of them alone is."""
    belly = kb.character("breast-colour")
    out_of_season, bred = tell(kb, belly, "salvelinus-fontinalis"), tell(kb, belly, "lepomis-macrochirus")
    assert out_of_season is not None and out_of_season.states[0][0] == "breast-colour.pale"
    assert not out_of_season.only
    assert bred is not None and not bred.only
    dark = tell(kb, kb.character("pelvic-fin-colour"), "lepomis-macrochirus")
    assert dark is not None and dark.only


def test_the_finer_word_is_told_where_most_is_of_it(kb: KnowledgeBase) -> None:
    """Blue lines that most sources call wavy are told as wavy."""
    told = tell(kb, kb.character("head-lines"), "lepomis-gibbosus")
    assert told is not None and told.states[0][0] == "head-lines.wavy-blue"


def test_bounds_and_means_are_told_as_such(kb: KnowledgeBase) -> None:
    """A lower bound, an upper bound, a mean and a usual number are not told as exact."""
    depth = kb.character("standard-length-over-depth")
    bounds = [tell(kb, depth, t) for t in ("ictiobus-niger", "ictiobus-bubalus", "pomoxis-annularis")]
    assert [t.bound for t in bounds if t is not None] == ["least", "most", "about"]
    spines = tell(kb, kb.character("dorsal-spines"), "lepomis-macrochirus")
    assert spines is not None and spines.bound == "usual"


def test_a_word_that_covers_the_other_separates_little(kb: KnowledgeBase) -> None:
    """A feature told of one fish by an umbrella and of the other by a part of it is worth little."""
    for row in contrast(kb, ["micropterus-dolomieu", "micropterus-cataractae"]).separating:
        told = [t for t in row.told if t is not None and len(t.states) == 1]
        if len(told) == 2:
            first, second = (set(below(kb, t.states[0][0])) for t in told)
            if first < second or second < first:
                assert row.worth <= WITHIN


@pytest.mark.parametrize(("pair", "lead"), [
    (("esox-lucius", "esox-masquinongy"), "mandibular-pores"),
    (("micropterus-nigricans", "micropterus-dolomieu"), "upper-jaw-reach"),
    (("lepomis-macrochirus", "lepomis-cyanellus"), "upper-jaw-reach"),
    (("pomoxis-annularis", "pomoxis-nigromaculatus"), "dorsal-spines"),
    (("lepomis-megalotis", "lepomis-marginatus"), "pectoral-rays"),
    (("lepomis-macrochirus", "lepomis-microlophus"), "opercular-flap-edge")])
def test_a_firm_feature_leads_before_a_mark_that_only_some_fish_show(
        kb: KnowledgeBase, pair: tuple[str, str], lead: str) -> None:
    """A count or structure that nearly always holds goes before a colour mark that often does."""
    rows = firm_first(kb, contrast(kb, pair, LOOKS["hand"]).separating)
    assert rows[0].character == lead


def test_what_a_whole_family_lacks_tells_no_two_of_it_apart(kb: KnowledgeBase) -> None:
    """No sunfish has a ringed tail spot; that is no difference from one told to have no tail spot."""
    rows = contrast(kb, ("micropterus-nigricans", "micropterus-dolomieu"), LOOKS["hand"]).separating
    assert "caudal-base-spot" not in [r.character for r in rows[:6]]


def test_of_three_fishes_a_feature_that_parts_every_pair_leads(kb: KnowledgeBase) -> None:
    """The anal rays part all three catfishes, the outline of the anal fin only one from two."""
    three = ("ictalurus-punctatus", "ictalurus-furcatus", "pylodictis-olivaris")
    assert firm_first(kb, contrast(kb, three, LOOKS["hand"]).separating)[0].character == "anal-soft-rays"
