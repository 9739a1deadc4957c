"""How near to the best a key is: our trees against every tree, up to nine taxa (marker bench; prints a table).

The best tree is found by brute force: every split of every set, no pruning, no look-ahead, the same price of a couplet.
The look-ahead that serves above nine taxa is measured on the same sets as if they were larger.
"""

from __future__ import annotations

import random
from functools import cache

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.key import build_key
from assistant.reasoning.key_paths import expected_steps
from assistant.reasoning.key_tree import Search, share_left
from assistant.reasoning.selection import species_below
from assistant.reasoning.splits import cells_of, splits_of

WITHIN = 1.15
"""Our expected cost may be this much above the least."""


def sets_of(kb: KnowledgeBase) -> list[tuple[str, ...]]:
    """Random sets of four to nine species, mixed and within genera."""
    rng = random.Random(7)
    pool = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    out = [tuple(rng.sample(pool, rng.randint(4, 9))) for _ in range(12)]
    for group in ("lepomis", "ictaluridae", "micropterus", "salmonidae", "catostomidae", "esocidae", "percidae"):
        species = species_below(kb, group)
        out.append(tuple(rng.sample(species, min(len(species), rng.randint(5, 8)))))
    return out


def search_for(kb: KnowledgeBase, taxa: tuple[str, ...], exact: int) -> Search:
    """A search over some taxa; the price of a couplet does not depend on how many states its leads name."""
    cells = cells_of(kb, taxa, LOOKS["hand"])
    return _Plain(splits_of(kb, cells, len(taxa)), {c.character.id: c for c in cells}, exact)


class _Plain(Search):
    def length(self, split: object, taxa: int) -> float:
        return 0.0


def least_cost(search: Search, size: int) -> float:
    """The least expected cost over all trees, by brute force."""
    splits = [(s.a, s.b, s.cost) for s in search.splits]

    @cache
    def best(taxa: int) -> float:
        if taxa.bit_count() < 2:
            return 0.0
        least = 4.0 * taxa.bit_count()
        for a, b, cost in splits:
            left, right = a & taxa, b & taxa
            if left != taxa and right != taxa:
                p = share_left(left, right)
                least = min(least, cost + p * best(left) + (1 - p) * best(right))
        return least

    return best((1 << size) - 1)


@pytest.mark.bench
def test_expected_cost_against_brute_force(kb: KnowledgeBase, capsys: pytest.CaptureFixture[str]) -> None:
    """Up to nine taxa the tree is the best one; the look-ahead stays within 15 in 100 of it."""
    rows = []
    for taxa in sets_of(kb):
        exact, ahead = search_for(kb, taxa, 9), search_for(kb, taxa, 2)
        whole = (1 << len(taxa)) - 1
        least = least_cost(exact, len(taxa))
        rows.append((len(taxa), least, exact.solve(whole)[0], ahead.solve(whole)[0], expected_steps(kb,
            build_key(kb, taxa))))
    with capsys.disabled():
        print("\n taxa  least   ours  look-ahead  steps")
        for n, least, ours, ahead_cost, steps in rows:
            print(f"{n:5d} {least:6.3f} {ours:6.3f} {ahead_cost:8.3f}  {steps:7.2f}")
        print(f"worst: ours {max(o / b for _, b, o, _, _ in rows):.3f}, look-ahead "
                  f"{max(a / b for _, b, _, a, _ in rows):.3f}, "
              f"mean look-ahead {sum(a / b for _, b, _, a, _ in rows) / len(rows):.3f}")
    assert all(ours <= WITHIN * least + 1e-9 for _, least, ours, _, _ in rows)
    assert sum(ahead_cost / least for _, least, _, ahead_cost, _ in rows) / len(rows) <= WITHIN
