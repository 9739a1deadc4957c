"""Distributions from statements: shares, counts, scopes, inheritance."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import Scope, about, below, distribution, fitted, leaves, number_range


def test_shares_sum_to_one_for_every_cell_of_the_base(kb: KnowledgeBase) -> None:
    """Whatever is stated of a scored character, the shares of fish sum to 1."""
    checked = 0
    for taxon in kb.ids("taxon"):
        for character in {s.character for s in kb.statements(taxon)}:
            found = distribution(kb, taxon, character)
            if found is not None:
                assert sum(found.shares.values()) == pytest.approx(1.0, abs=1e-6), (taxon, character)
                checked += 1
    assert checked > 1500


def test_a_missing_statement_is_inherited_from_genus_or_family(kb: KnowledgeBase) -> None:
    """A sunfish without a word on its own adipose fin takes the family's, and says from whom."""
    found = distribution(kb, "lepomis-marginatus", "adipose-fin")
    assert found is not None and found.inherited_from in ("lepomis", "centrarchidae")
    assert found.share(["adipose-fin.absent"]) > 0.9


def test_nothing_stated_gives_nothing(kb: KnowledgeBase) -> None:
    """Where neither the taxon nor its genus or family is told of, there is no distribution: neutral, not a guess."""
    assert distribution(kb, "esox-lucius", "opercular-flap-stiffness") is None


def test_age_known_changes_what_is_expected(kb: KnowledgeBase) -> None:
    """The red ear spot of a pumpkinseed is nearly always there in adults and often missing in the young."""
    adult = distribution(kb, "lepomis-gibbosus", "opercular-flap-edge", Scope(stage="adult"))
    young = distribution(kb, "lepomis-gibbosus", "opercular-flap-edge", Scope(stage="juvenile"))
    assert adult is not None and young is not None
    spot = "opercular-flap-edge.red-or-orange-spot"
    assert adult.share([spot]) > young.share([spot]) + 0.2


def test_a_count_is_likeliest_in_its_usual_range_and_never_impossible_beside_it(kb: KnowledgeBase) -> None:
    """A fitted count peaks inside the usual range and leaves a little for counts just outside the extremes."""
    for s in about(kb, "lepomis-macrochirus", "anal-soft-rays")[0]:
        shares = fitted(s, 0.9)
        assert sum(shares.values()) == pytest.approx(1.0)
        bounds = number_range(s)
        assert bounds is not None
        peak = max(shares, key=lambda k: shares[k])
        assert bounds[0] <= peak <= bounds[3]
        assert 0 < shares[int(bounds[3]) + 1] < shares[peak]


def test_umbrella_states_stand_for_what_lies_below_them(kb: KnowledgeBase) -> None:
    """Blue lines on the head stand for wavy, broken and faint ones; a leaf stands for itself."""
    assert len(below(kb, "head-lines.blue-lines")) >= 2
    assert set(below(kb, "head-lines.blue-lines")) <= set(leaves(kb, "head-lines"))
    assert below(kb, "head-lines.wavy-blue") == ("head-lines.wavy-blue",)


def test_a_rare_form_has_little_of_what_only_its_umbrella_is_told_by(kb: KnowledgeBase) -> None:
    """A bluegill told of "bars" shows plain ones far oftener than W-marks; a fish with scales hardly wears plates."""
    bars = distribution(kb, "lepomis-macrochirus", "body-bars")
    skin = distribution(kb, "lepomis-macrochirus", "body-covering")
    assert bars is not None and skin is not None
    assert bars.share(["body-bars.bold-bars"]) > 5 * bars.share(["body-bars.w-marks"])
    assert skin.share(["body-covering.ordinary-scales"]) > 0.8
    assert skin.share(["body-covering.ganoid-diamond-scales"]) < 0.05
