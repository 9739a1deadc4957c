"""Standard weights, categories and lengths against published check values.

Check values: three of the 102 worked rows that the fisheries package FSA 0.10.0 ships as test data (Ogle, Doll, Wheeler
and Dinno 2025), and values worked out from its table WSlit; inch edges as its table PSDlit prints them.
"""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.size import (
    category,
    condition,
    girth_weight,
    length_fit,
    length_for_weight,
    relative,
    standard_weight,
    stoutness,
    total_length,
)

WORKED = [
    ("lepomis-macrochirus", 82, 9.38008415),
    ("lepomis-macrochirus", 87, 11.41420956),
    ("lepomis-macrochirus", 88, 11.85508141),
]
"""FSA test data, grams."""
FROM_TABLE = [
    ("lepomis-gibbosus", 150, 73.3),
    ("lepomis-macrochirus", 200, 180.4),
    ("micropterus-nigricans", 380, 823.4),
    ("sander-vitreus", 510, 1435.7),
    ("perca-flavescens", 250, 228.7),
    ("esox-masquinongy", 1070, 10155.5),
    ("ictalurus-punctatus", 410, 640.5),
    ("salmo-trutta", 400, 774.4),
    ("lota-lota", 500, 898.7),
]
"""Worked from WSlit, grams."""


@pytest.mark.parametrize(("taxon", "length", "grams"), WORKED)
def test_worked_rows_of_the_published_test_data(kb: KnowledgeBase, taxon: str, length: float, grams: float) -> None:
    """Standard weights agree with the published worked rows to eight figures."""
    found = standard_weight(kb, taxon, length)
    assert found is not None and found.grams == pytest.approx(grams, rel=1e-8)


@pytest.mark.parametrize(("taxon", "length", "grams"), FROM_TABLE)
def test_values_of_the_published_table(kb: KnowledgeBase, taxon: str, length: float, grams: float) -> None:
    """Standard weights agree with the published coefficients."""
    found = standard_weight(kb, taxon, length)
    assert found is not None and found.grams == pytest.approx(grams, abs=0.06)


def test_a_quadratic_line(kb: KnowledgeBase) -> None:
    """The line for southern Appalachian brook trout has a squared term: 150 mm is 32.7 g (FSA table), not 36.8 g."""
    lines = [s for s in kb.sizes("salvelinus-fontinalis") if s.kind == "standard-weight" and s.c]
    assert len(lines) == 1
    found = standard_weight(kb, "salvelinus-fontinalis", 150, water="Appalachia")
    plain = standard_weight(kb, "salvelinus-fontinalis", 150)
    assert found is not None and found.grams == pytest.approx(32.7, abs=0.05)
    assert plain is not None and plain.grams == pytest.approx(36.8, abs=0.05)


@pytest.mark.parametrize("taxon", ["lepomis-macrochirus", "sander-vitreus", "esox-lucius"])
@pytest.mark.parametrize("grams", [50.0, 400.0, 1500.0])
def test_length_and_weight_are_inverse(kb: KnowledgeBase, taxon: str, grams: float) -> None:
    """The length for a weight has that standard weight."""
    length = length_for_weight(kb, taxon, grams)
    assert length is not None
    back = standard_weight(kb, taxon, length.grams)
    assert back is not None and back.grams == pytest.approx(grams, rel=1e-3)


def test_limits_are_told(kb: KnowledgeBase) -> None:
    """Below the minimum, beyond the largest, a doubtful line, another kind of length: each is named."""
    small = standard_weight(kb, "micropterus-nigricans", 60)
    huge = standard_weight(kb, "lepomis-macrochirus", 700)
    redear = standard_weight(kb, "lepomis-microlophus", 200)
    fork = standard_weight(kb, "sander-vitreus", 500, "fork")
    assert small is not None and "below-minimum" in small.limits
    assert huge is not None and "above-data" in huge.limits
    assert redear is not None and redear.limits == ("line-in-doubt",)
    assert fork is not None and fork.limits == ("other-length-given",)


def test_no_weight_of_nothing(kb: KnowledgeBase) -> None:
    """A length of nothing, or a fish without a line, has no standard weight."""
    assert standard_weight(kb, "lepomis-macrochirus", 0) is None
    assert standard_weight(kb, "umbra-limi", 80) is None
    assert length_for_weight(kb, "lepomis-macrochirus", -1) is None


@pytest.mark.parametrize(
    ("taxon", "length", "word"),
    [
        ("lepomis-macrochirus", 79, "below stock"),
        ("lepomis-macrochirus", 80, "stock"),
        ("lepomis-macrochirus", 150, "quality"),
        ("sander-vitreus", 510, "preferred"),
        ("sander-vitreus", 760, "trophy"),
        ("esox-lucius", 860, "memorable"),
    ],
)
def test_size_categories_begin_at_their_published_edge(
    kb: KnowledgeBase, taxon: str, length: float, word: str
) -> None:
    """A fish of exactly an edge is in the category above it (PSDlit of FSA)."""
    found = category(kb, taxon, length)
    assert found is not None and found[0] == word


@pytest.mark.parametrize(
    ("taxon", "inches"),
    [
        ("lepomis-macrochirus", (3, 6, 8, 10, 12)),
        ("pomoxis-annularis", (5, 8, 10, 12, 15)),
        ("esox-masquinongy", (20, 30, 38, 42, 50)),
        ("sander-vitreus", (10, 15, 20, 25, 30)),
        ("ictalurus-punctatus", (11, 16, 24, 28, 36)),
        ("esox-lucius", (14, 21, 28, 34, 44)),
        ("salvelinus-namaycush", (12, 20, 26, 31, 39)),
        ("ameiurus-melas", (6, 9, 12, 15, 18)),
    ],
)
def test_inch_edges_are_those_printed(kb: KnowledgeBase, taxon: str, inches: tuple[int, ...]) -> None:
    """Rounding the metric edges to whole inches gives the inch edges that the table prints beside them (PSDlit)."""
    table = next(s for s in kb.sizes(taxon) if s.kind == "size-categories")
    edges = (table.stock, table.quality, table.preferred, table.memorable, table.trophy)
    assert tuple(round((e or 0) / 25.4) for e in edges) == inches


def test_girth_formula() -> None:
    """An 18 inch fish of 13 inch girth weighs 3.8 lb by the divisor 800 (common practice, no source)."""
    found = girth_weight(18 * 25.4, 13 * 25.4)
    assert found.grams / 453.59237 == pytest.approx(18 * 13 * 13 / 800)
    assert found.low < found.grams < found.high


@pytest.mark.parametrize(
    ("share", "word"), [(0.2, "odd"), (0.7, "thin"), (0.9, "lean"), (1.0, "good"), (1.3, "fat"), (2.4, "odd")]
)
def test_condition_words(share: float, word: str) -> None:
    """Shares of the standard weight have a word each (common practice, no source)."""
    assert condition(share) == word


def test_a_relative_lends_its_line(kb: KnowledgeBase) -> None:
    """A fish without a line of its own borrows one of its genus; one of another family does not."""
    assert relative(kb, "lepomis-macrochirus") == "lepomis-macrochirus"
    assert (relative(kb, "ambloplites-ariommus") or "").startswith("ambloplites-")
    assert relative(kb, "umbra-limi") is None


def test_stoutness_is_that_of_the_nearest_line(kb: KnowledgeBase) -> None:
    """A pike is slimmer than a bass, a bass than a sunfish; a fish without a line takes that of its kin, a cross the
    mean of its parents' unless it has its own."""
    assert stoutness(kb, "esox-lucius") < stoutness(kb, "micropterus-nigricans") < stoutness(kb, "lepomis-macrochirus")
    kin = [stoutness(kb, t) for t in kb.members("lepomis")]
    assert min(kin) <= stoutness(kb, "lepomis-symmetricus") <= max(kin)
    parents = sorted(stoutness(kb, t) for t in ("lepomis-cyanellus", "lepomis-gulosus"))
    assert parents[0] <= stoutness(kb, "lepomis-cyanellus-x-lepomis-gulosus") <= parents[1]


def test_fork_length_turns_into_total_length(kb: KnowledgeBase) -> None:
    """Lake trout: TL = 1.09 FL + 9.05 (Hansen and others, abstract)."""
    found = total_length(kb, "salvelinus-namaycush", 500, "fork")
    assert found is not None and found[0] == pytest.approx(1.09 * 500 + 9.05, rel=0.02)
    assert total_length(kb, "umbra-limi", 50, "fork") is None


@pytest.mark.parametrize(("length", "word"), [(30, "small"), (160, "ordinary"), (600, "beyond")])
def test_length_words(kb: KnowledgeBase, length: float, word: str) -> None:
    """A bluegill of 3 cm is small, of 16 cm ordinary, of 60 cm longer than any held."""
    assert length_fit(kb, "lepomis-macrochirus", length) == word
