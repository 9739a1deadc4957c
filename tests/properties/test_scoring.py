"""What must hold of every posterior and every question, against the obvious slow way of saying the same."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence

import numpy as np
import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.identify import identify, posterior, prior
from assistant.reasoning.next_question import information, next_question
from assistant.reasoning.observed import Evidence, Hint, Observation
from assistant.reasoning.observer import apart, kin_of, taxon_distribution, told_shares
from assistant.reasoning.place_prior import (
    ABSENT,
    FAR,
    around,
    breadth,
    cross_weight,
    expand_places,
    is_real,
    listed_ranges,
    unlisted,
)
from assistant.reasoning.size import size_range, word_fit
from assistant.reasoning.tables import Table, character_block, compile_table, read_table, table_parts


@pytest.fixture(scope="module")
def table(kb: KnowledgeBase) -> Table:
    """The score table of the shipped base."""
    return compile_table(kb)


def anything(table: Table, rng: random.Random) -> Observation:
    """Some observation that the table has columns for."""
    character = rng.choice(table.characters)
    a, b = table.spans[character]
    column = table.columns[rng.randrange(a, b)]
    seen, hedged = rng.random() < 0.85, rng.random() < 0.2
    if "=" in column:
        return Observation(character, value=float(column.partition("=")[2]), seen=seen, hedged=hedged)
    return Observation(character, (column,), seen=seen, hedged=hedged)


def some_evidence(kb: KnowledgeBase, table: Table, seed: int) -> Evidence:
    """Evidence of any kind, up to six observations."""
    rng = random.Random(seed)
    hints = (Hint(rng.choice(("group", "like")), frozenset(rng.sample(table.taxa, 3)), rng.random() < 0.8),)
    return Evidence(
        tuple(anything(table, rng) for _ in range(rng.randrange(7))),
        hints[: rng.randrange(2)],
        tuple(rng.sample(list(kb.ids("place")), rng.randrange(3))),
        rng.choice((None, (rng.uniform(20, 900),) * 2)),
        rng.choice(("", "small", "large")),
        excluded=frozenset(rng.sample(table.taxa, rng.randrange(2))),
    )


@pytest.mark.parametrize("seed", range(60))
def test_a_posterior_is_one(kb: KnowledgeBase, table: Table, seed: int) -> None:
    """Probabilities are finite, above nothing, and sum to one, whatever was seen."""
    weights = posterior(kb, table, some_evidence(kb, table, seed))
    assert np.isfinite(weights).all() and (weights > 0).all()
    assert weights.sum() == pytest.approx(1.0, abs=1e-9)


@pytest.mark.parametrize("seed", range(40))
def test_the_order_of_what_was_seen_does_not_matter(kb: KnowledgeBase, table: Table, seed: int) -> None:
    """The same observations in another order give the same probabilities."""
    evidence = some_evidence(kb, table, seed)
    turned = Evidence(
        tuple(reversed(evidence.observations)),
        tuple(reversed(evidence.hints)),
        tuple(reversed(evidence.places)),
        evidence.length,
        evidence.size_word,
        excluded=evidence.excluded,
    )
    assert np.allclose(posterior(kb, table, evidence), posterior(kb, table, turned), atol=1e-12)


@pytest.mark.parametrize("seed", range(30))
def test_no_information_changes_nothing(kb: KnowledgeBase, table: Table, seed: int) -> None:
    """An observation of a character without columns, or of no state, leaves the probabilities as they were."""
    rng = random.Random(seed)
    seen = tuple(o for o in (anything(table, rng) for _ in range(3)))
    silent = (Observation("no-such-character", ("no-such-character.x",)), Observation(rng.choice(table.characters)))
    before = posterior(kb, table, Evidence(seen))
    crosses = table.standing.crosses
    after = posterior(kb, table, Evidence((*seen, *silent)))
    rest = np.setdiff1d(np.arange(len(before)), crosses)
    assert np.allclose(before[rest] / before[rest].sum(), after[rest] / after[rest].sum(), atol=1e-9)


@pytest.mark.parametrize("seed", range(20))
def test_a_taxon_held_twice_shares_its_odds(kb: KnowledgeBase, table: Table, seed: int) -> None:
    """Of two copies of a taxon each is as likely as the other, and the odds of the rest stay as they were."""
    rng = random.Random(seed)
    plain = [t for t in table.taxa if not kb.taxon(t).is_hybrid]
    taxa = rng.sample(plain, 8)
    once, twice = compile_table(kb, taxa), compile_table(kb, [*taxa, taxa[0]])
    held = [i for i, c in enumerate(once.characters) if once.known[i].all() and twice.spans.get(c)]
    if not held:
        return
    name = once.characters[rng.choice(held)]
    column = once.columns[once.spans[name][0]]
    seen = Observation(name, value=float(column.partition("=")[2])) if "=" in column else Observation(name, (column,))
    one, two = posterior(kb, once, Evidence((seen,))), posterior(kb, twice, Evidence((seen,)))
    assert two[0] == pytest.approx(two[8], rel=1e-5)
    assert np.allclose(two[:8] / two[:8].sum(), one, atol=1e-4)


def plain_information(table: Table, weights: Sequence[float], character: str) -> float:
    """Expected loss of entropy about the taxon, report by report, in plain sums."""
    a, b = table.spans[character]
    bits = 0.0
    for column in range(a, b):
        joint = [w * float(p) for w, p in zip(weights, table.report[column], strict=True)]
        total = sum(joint)
        bits += sum(
            j * math.log2(float(p) / total)
            for j, p in zip(joint, table.report[column], strict=True)
            if j > 0 and total > 0
        )
    return max(bits, 0.0)


def test_information_is_what_plain_sums_say(kb: KnowledgeBase, table: Table) -> None:
    """The expected information of each of some questions equals the sum over all reports and taxa."""
    rng = random.Random(5)
    for _ in range(4):
        weights = posterior(kb, table, Evidence((anything(table, rng), anything(table, rng))))
        found = information(table, weights)
        for character in rng.sample(table.characters, 6):
            at = table.characters.index(character)
            assert found[at] == pytest.approx(plain_information(table, weights.tolist(), character), abs=0.02)


def test_the_question_is_the_best_of_those_allowed(kb: KnowledgeBase, table: Table) -> None:
    """No question that may be asked has more information per effort, so far as something is held of the likely fishes,
    than the one chosen; none is asked twice.
    """
    rng = random.Random(9)
    for _ in range(10):
        weights = posterior(kb, table, Evidence((anything(table, rng),)))
        done: set[str] = set()
        worths = []
        bits = information(table, weights)
        for _ in range(5):
            found = next_question(kb, table, weights, done)
            if found is None:
                break
            assert found.character not in done
            done.add(found.character)
            at = table.characters.index(found.character)
            worths.append(float(table.known[at] @ weights) * bits[at] / table.effort[at])
        assert worths == sorted(worths, reverse=True)


def plain_unlisted(kb: KnowledgeBase, taxon: str, places: frozenset[str]) -> float:
    """The weight of a taxon at places not listed for it: next to nothing where it is listed for none around them."""
    near = around(kb, places)
    far = near and kb.ranges(taxon) and not any(p in near and w > ABSENT for p, w in listed_ranges(kb, taxon))
    return min(FAR, unlisted(kb, taxon)) if far else unlisted(kb, taxon)


def plain_prior(kb: KnowledgeBase, taxon: str, places: frozenset[str]) -> float:
    """The weight of one taxon at some places, as the rules of ``place_prior`` put it."""
    here = [w for place, w in listed_ranges(kb, taxon) if place in places]
    listed = max(here) if here else plain_unlisted(kb, taxon, places) if is_real(kb, places) else 1.0
    if parents := kb.taxon(taxon).parents:
        low = min(plain_prior(kb, p, places) for p in parents)
        low = max(low, listed) if places and kb.ranges(taxon) else low
        return low * cross_weight(kb.taxon(taxon))
    return listed * breadth(kb, taxon) ** 0.5 if places else breadth(kb, taxon)


@pytest.mark.parametrize("places", [(), ("us-oh",), ("us-mn", "ca-on"), ("us-hi",), ("great-lakes",)])
def test_place_weighs_as_the_plain_rule_says(kb: KnowledgeBase, table: Table, places: tuple[str, ...]) -> None:
    """The prior of all taxa at once equals the rule applied to one after the other."""
    wanted = expand_places(kb, places)
    expected = [plain_prior(kb, t, wanted) for t in table.taxa]
    assert np.allclose(prior(kb, table, Evidence(places=places)), np.maximum(expected, 1e-9), rtol=1e-9)


def size_fit(kb: KnowledgeBase, taxon: str, length: float) -> float:
    """How well a length (mm) fits a taxon, 0 to 1: full within the usual, falling to near nothing past the largest."""
    sizes = size_range(kb, taxon)
    top = sizes.largest or (sizes.usual_high * 1.6 if sizes.usual_high else None)
    if top is None:
        return 0.6
    usual = min(sizes.usual_high or 0.6 * top, top)
    if length <= usual:
        low = sizes.usual_low or 0.3 * usual
        return 1.0 if length >= low else 0.55 + 0.45 * length / low
    if length <= top:
        return 1.0 - 0.8 * (length - usual) / max(top - usual, 1.0)
    return max(0.003, 0.2 * math.exp(-12.0 * (length / top - 1.0)))


def test_size_weighs_as_the_plain_rule_says(kb: KnowledgeBase, table: Table) -> None:
    """The fit of a length or a size word to all taxa equals the fit to one after the other."""
    for length in (15.0, 60.0, 150.0, 400.0, 900.0, 2500.0):
        assert np.allclose(table.standing.size_weights(length), [size_fit(kb, t, length) for t in table.taxa])
    for word in ("small", "large"):
        assert np.allclose(table.standing.word_weights(word), [word_fit(kb, t, word) for t in table.taxa])


def test_one_pair_and_the_whole_table_see_the_same_observer(kb: KnowledgeBase, table: Table) -> None:
    """Plain numbers for two taxa and the arrays for all give the same distance between reports."""
    rng = random.Random(2)
    checked = 0
    for name in table.characters:
        a, b = table.spans[name]
        character = kb.character(name)
        keys = [c if character.is_stated else c.partition("=")[2] for c in table.columns[a:b]]
        told = [(t, d) for t in rng.sample(table.taxa, 12) if (d := taxon_distribution(kb, t, name, Evidence().scope))]
        if len(told) >= 2 and len(keys) > 1:
            cells = [d for _, d in told[:2]]
            block, _ = character_block(kb, character, keys, cells)
            first, second = (told_shares(keys, d) for d in cells)
            plain = apart(character, first, second, kin_of(kb, character, keys))
            assert plain == pytest.approx(0.5 * float(np.abs(block[:, 0] - block[:, 1]).sum()), abs=1e-4)
            checked += 1
    assert checked > 20


def test_a_table_taken_apart_is_put_together_again(kb: KnowledgeBase, table: Table) -> None:
    """Rows and flat arrays give back the table, and the same identification."""
    rows, arrays = table_parts(table)

    class Kept:
        def get(self, kind: str, key: str) -> list[object] | None:
            return rows[kind].get(key)

        def array(self, name: str) -> tuple[str, tuple[int, ...], bytes] | None:
            found = arrays.get(name)
            return None if found is None else (found[0], tuple(found[1]), found[2])

    again = read_table(Kept())
    rng = random.Random(1)
    for _ in range(5):
        evidence = Evidence(tuple(anything(table, rng) for _ in range(4)), places=("us-oh",), length=(200.0, 220.0))
        assert identify(kb, again, evidence) == identify(kb, table, evidence)
