"""Where sources differ and where nothing is told: what excludes what, and to whom a silence matters."""

from __future__ import annotations

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.disagreement import (
    disagreements,
    exclude,
    families_told,
    family_of,
    gaps_by_character,
    silence,
)
from assistant.reasoning.evidence import about, number_range


def kinds(kb: KnowledgeBase) -> list[str]:
    """Every kind held but the crosses."""
    return [t for t in kb.species if not kb.taxon(t).is_hybrid]


def test_disagreements_are_between_sources(kb: KnowledgeBase) -> None:
    """Each disagreement is on one character of one taxon, by two sources at least; the graver ones exclude."""
    found = list(disagreements(kb, kinds(kb)))
    assert found and any(d.excluding for d in found) and not all(d.excluding for d in found)
    for d in found:
        assert {s.character for s in d.statements} == {d.character} and {s.taxon for s in d.statements} == {d.taxon}
        assert len({s.source for s in d.statements}) > 1


def test_ranges_that_meet_do_not_exclude(kb: KnowledgeBase) -> None:
    """Two number statements exclude each other only where their ranges have no number in common."""
    for d in disagreements(kb, kinds(kb), ("dorsal-soft-rays", "anal-soft-rays")):
        ranges = [r for s in d.statements if (r := number_range(s))]
        apart = max(r[0] for r in ranges) > min(r[3] for r in ranges)
        assert d.excluding == apart


def test_an_umbrella_does_not_exclude_what_lies_under_it(kb: KnowledgeBase) -> None:
    """ "Bars" and "bold bars" can both hold."""
    told = (("body-bars.bars",), ("body-bars.bold-bars",))
    bars = [s for t in kinds(kb) for s in kb.statements(t) if s.states in told]
    assert len({s.states for s in bars}) == 2
    assert not any(exclude(kb, a, b) for a in bars[:20] for b in bars[:20])


def test_a_silence_counts_where_the_kin_are_told_of(kb: KnowledgeBase) -> None:
    """What lacks a value has kin of which it is told; the rest belongs to families of which it is told of none."""
    for character in ("eye-colour", "mandibular-pores"):
        found = silence(kb, kinds(kb), character)
        spoken = families_told(kb, character)
        assert all(family_of(kb, t) in spoken and not about(kb, t, character)[0] for t in found.lacking)
        assert all(family_of(kb, t) not in spoken for t in found.unspoken)
        assert found.among + len(found.unspoken) == len(kinds(kb))


def test_the_most_lacking_character_comes_first(kb: KnowledgeBase) -> None:
    """Characters are told by how many fishes lack them."""
    rows = gaps_by_character(kb, kinds(kb), [c for c in kb.characters if c.use == "identify"])
    assert rows == sorted(rows, key=lambda r: (-r[1], r[0])) and all(0 < n <= among for _, n, among in rows)
