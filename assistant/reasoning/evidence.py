"""What the statements about a taxon say of a character: a distribution over states or numbers (layer 3).

A frequency word is a share of fish with bounds; counts and measures are distributions fitted to the extreme and the
usual range. Statements speak for classes of fish (age, sex, breeding); what is not known of the fish is averaged
over. Conflicting statements are combined by basis and preference. A missing statement is inherited from genus or
family; where there is none, the answer is None, which neither helps nor hurts.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement

BASIS_WEIGHT: Mapping[str, float] = {"read": 1.0, "common-practice": 0.6, "memory": 0.5}
PREFERRED_WEIGHT = 3.0
STAGES: Mapping[str, float] = {"adult": 0.8, "juvenile": 0.2}
SEXES: Mapping[str, float] = {"male": 0.5, "female": 0.5}
SEASONS: Mapping[str, float] = {"breeding": 0.25, "non-breeding": 0.75}
DEFAULT_SHARE = 0.9
"""Share of fish assumed to show a state or to fall in a range when the statement gives no frequency word."""
OF_GROWN_FISH = 0.3
"""Weight for the young of a statement that names no age: accounts speak of grown fish."""
LEAK = 0.015
"""Share always left to states nobody mentioned, so that one odd feature never throws a taxon out."""
LACKING = frozenset({"none", "absent"})
"""Local ids of states that mean the mark is lacking: what is not told of a mark mostly lacks it."""
ORDINARY = LACKING | {"normal", "plain", "ordinary", "not-enlarged"}
"""Those that mean that there is nothing to tell: what is not told of a mark mostly is so, too."""
LACKS = 0.7
CENTRAL_FROM, CENTRAL_REACH = 20, 0.1
"""A single large count ("40 scales") is a central value: it stands for a range of a tenth to either side."""
MOST_BINS = 400


class Scope(NamedTuple):
    """What is known of the fish in hand; empty means unknown. ``place`` is a place id, ``length`` millimetres."""

    sex: str = ""
    stage: str = ""
    breeding: str = ""
    place: str = ""
    length: float | None = None


ANY = Scope()
"""Nothing known of the fish."""


class Distribution(NamedTuple):
    """Shares of fish by state id or by number (they sum to 1), the statements it rests on, and from whom inherited."""

    character: str
    shares: Mapping[str, float]
    statements: tuple[str, ...]
    inherited_from: str | None
    basis: str

    def share(self, states: Iterable[str]) -> float:
        """The share of fish that show any of these states."""
        return sum(self.shares.get(s, 0.0) for s in states)


def about(kb: KnowledgeBase, taxon: str, character: str) -> tuple[tuple[Statement, ...], str | None]:
    """The statements that speak of a character of a taxon, its own or the nearest inherited, and whose they are."""
    for key in kb.lineage(taxon):
        own = kb.statements_on(key, character)
        if own:
            return own, None if key == taxon else key
    return (), None


def leaves(kb: KnowledgeBase, character: str) -> tuple[str, ...]:
    """The states that shares are told over, in their order: those with no finer state, and those with just one.

    A state with a single finer one ("a blotch" over "a faint blotch") is a state of its own beside it; a state over
    several is an umbrella for them.
    """
    return kb.derived(f"leaves {character}", lambda _: _leaves(kb, character))


def _leaves(kb: KnowledgeBase, character: str) -> tuple[str, ...]:
    states = kb.states(character)
    finer = Counter(s.broader for s in states if s.broader)
    return tuple(s.id for s in states if finer[s.id] < 2)


def below(kb: KnowledgeBase, state: str) -> tuple[str, ...]:
    """The leaf states that a state stands for: itself, or what lies under an umbrella."""
    return kb.derived(f"below {state}", lambda _: _below(kb, state))


def _below(kb: KnowledgeBase, state: str) -> tuple[str, ...]:
    children: dict[str, list[str]] = {}
    for s in kb.states(state.partition(".")[0]):
        if s.broader:
            children.setdefault(s.broader, []).append(s.id)
    out: list[str] = []
    stack = [state]
    while stack:
        current = stack.pop()
        finer = children.get(current, [])
        if len(finer) < 2 and current not in out:
            out.append(current)
        stack += reversed(finer)
    return tuple(out)


def distribution(kb: KnowledgeBase, taxon: str, character: str, scope: Scope = ANY) -> Distribution | None:
    """The distribution of a character in a taxon under what is known of the fish; None when nothing is stated.

    Counts give shares by integer (as text); lengths, ratios and masses give None here (see ``number_range``).
    """
    found = kb.character(character)
    statements, source = about(kb, taxon, character)
    if not statements:
        return None
    if found.is_stated:
        order = leaves(kb, character)
        spread = {s: (s,) if s in order else below(kb, s) for st in statements for s in st.states}
        shares = mix(statements, scope, lambda group: _state_shares(kb, group, order, spread))
    elif found.kind == "count":
        shares = mix(statements, scope, lambda group: count_shares(kb, group))
    else:
        return None
    if not shares:
        return None
    bases = {s.basis for s in statements}
    basis = "read" if "read" in bases else "common-practice" if "common-practice" in bases else "memory"
    return Distribution(character, shares, tuple(s.id for s in statements), source, basis)


def classes(statements: Sequence[Statement], scope: Scope) -> list[tuple[float, str, str, str]]:
    """The classes of fish (weight, stage, sex, breeding) that the statements tell apart, limited to what is known."""
    def axis(known: str, weights: Mapping[str, float], used: bool) -> list[tuple[float, str]]:
        if known:
            return [(1.0, known)]
        return [(w, name) for name, w in weights.items()] if used else [(1.0, "")]

    stages = axis(scope.stage, STAGES, any(s.stage or s.max_length or s.min_length for s in statements))
    sexes = axis(scope.sex, SEXES, any(s.sex for s in statements))
    seasons = axis(scope.breeding, SEASONS, any(s.breeding for s in statements))
    return [(a * b * c, stage, sex, season) for a, stage in stages for b, sex in sexes for c, season in seasons]


Group = Sequence[tuple[Statement, float]]


def mix(statements: Sequence[Statement], scope: Scope,
        shares_of: Callable[[Group], dict[str, float]]) -> dict[str, float]:
    """Shares averaged over the classes of fish that are not known; a class nobody speaks of takes the plain reading."""
    if not any(s.scoped for s in statements):
        return shares_of([(s, weight(s, scope)) for s in statements])
    total: dict[str, float] = {}
    covered = 0.0
    for share, stage, sex, season in classes(statements, scope):
        group = [(s, w) for s in statements if (w := fit(s, stage, sex, season, scope)) > 0]
        if not group:
            continue
        covered += share
        for key, value in shares_of(group).items():
            total[key] = total.get(key, 0.0) + share * value
    if covered == 0.0:
        return shares_of([(s, 0.3 * weight(s, scope)) for s in statements])
    return {key: value / covered for key, value in total.items()}


def fit(s: Statement, stage: str, sex: str, season: str, scope: Scope) -> float:
    """The weight of a statement for a class of fish; 0 where it speaks of other fish."""
    if (s.stage and stage and s.stage != stage) or (s.sex and sex and s.sex != sex):
        return 0.0
    if s.breeding and season and s.breeding != season:
        return 0.0
    too_long = scope.length and s.max_length and scope.length > s.max_length
    too_short = scope.length and s.min_length and scope.length < s.min_length
    if too_long or too_short:
        return 0.0
    if not scope.length and s.max_length and stage == "adult":
        return 0.0
    narrow = sum(bool(x) for x in (s.stage, s.sex, s.breeding))
    plain = OF_GROWN_FISH if stage == "juvenile" and not s.stage else 1.0
    return weight(s, scope) * plain * (1.0 + narrow)


def weight(s: Statement, scope: Scope) -> float:
    """The weight of a statement by basis, preference, region and named population."""
    w = BASIS_WEIGHT.get(s.basis, 0.5) * (PREFERRED_WEIGHT if s.preferred else 1.0)
    if s.regions:
        w *= 1.3 if scope.place in s.regions else 0.7
    if s.scope_text:
        w *= 0.6
    return w


def share_of(kb: KnowledgeBase, s: Statement) -> float:
    """The share of fish that a statement's frequency word stands for."""
    found = kb.find("frequency", s.frequency) if s.frequency else None
    return found.point if found else DEFAULT_SHARE


def _state_shares(kb: KnowledgeBase, group: Group, order: Sequence[str],
                  spread: Mapping[str, tuple[str, ...]]) -> dict[str, float]:
    mass = dict.fromkeys(order, 0.0)
    seen = dict.fromkeys(order, 0.0)
    for s, w in group:
        told = [(leaf, _of_umbrella(kb, leaf, state)) for state in s.states for leaf in spread[state]]
        if not told:
            continue
        part = share_of(kb, s) / sum(common for _, common in told)
        for leaf, common in told:
            mass[leaf] = mass.get(leaf, 0.0) + w * part * common
            seen[leaf] = seen.get(leaf, 0.0) + w
    voters = max(seen.values(), default=0.0)
    shares = {leaf: mass[leaf] / voters if voters else 0.0 for leaf in mass}
    silent = [leaf for leaf in shares if not seen[leaf]]
    total = sum(shares.values())
    if total > 1 - LEAK or not silent:
        room = 1 - LEAK if silent else 1.0
        shares = {leaf: value * room / total for leaf, value in shares.items()} if total else shares
        total = room
    return {**shares, **_rest(1.0 - total, silent)}


def _of_umbrella(kb: KnowledgeBase, leaf: str, told: str) -> float:
    """How common a leaf state is among fishes of which a state is told: 1, or its share where that is an umbrella."""
    share = None if leaf == told else kb.state(leaf).share
    return 1.0 if share is None else share


def _rest(share: float, silent: Sequence[str]) -> dict[str, float]:
    """Spread what no statement speaks of: most of it to lacking the mark, where nobody speaks of that."""
    lacking = [leaf for leaf in silent if leaf.rpartition(".")[2] in LACKING]
    others = [leaf for leaf in silent if leaf not in lacking]
    to_lacking = share * (1.0 if not others else LACKS) if lacking else 0.0
    out = {leaf: to_lacking / len(lacking) for leaf in lacking}
    out.update({leaf: (share - to_lacking) / len(others) for leaf in others})
    return out


def count_shares(kb: KnowledgeBase, group: Group) -> dict[str, float]:
    """Shares by integer of the statements of a count, a weighted mixture of one fitted distribution each."""
    total: dict[int, float] = {}
    norm = sum(w for _, w in group) or 1.0
    for s, w in group:
        for k, p in fitted(s, share_of(kb, s)).items():
            total[k] = total.get(k, 0.0) + p * w / norm
    return {str(k): total[k] for k in sorted(total)}


def fitted(s: Statement, share: float) -> dict[int, float]:
    """A discrete distribution fitted to the extreme and usual range of a count statement.

    ``share`` of the fish fall into the range given; the rest falls off geometrically on both sides. Where a mean and
    a spread are stated, a normal distribution is taken instead.
    """
    if s.mean is not None and s.sd:
        return dict(_normal(s.mean, s.sd))
    bounds = number_range(s)
    return dict(_fitted(bounds, share)) if bounds else {}


@lru_cache(maxsize=4096)
def _normal(mean: float, sd: float) -> Mapping[int, float]:
    reach = 5.0 * sd
    if reach > MOST_BINS:
        return {}
    whole = range(max(0, math.floor(mean - reach)), math.ceil(mean + reach) + 1)
    shares = {k: math.exp(-0.5 * ((k - mean) / sd) ** 2) for k in whole}
    total = sum(shares.values())
    return {k: share / total for k, share in shares.items()}


@lru_cache(maxsize=4096)
def _fitted(bounds: tuple[float, float, float, float], share: float) -> Mapping[int, float]:
    low, usual_low, usual_high, high = bounds
    if low == high >= CENTRAL_FROM:
        low, high = low - CENTRAL_REACH * low, high + CENTRAL_REACH * high
        usual_low, usual_high = usual_low - CENTRAL_REACH / 2 * usual_low, usual_high + CENTRAL_REACH / 2 * usual_high
    inner = 0.88 if (low, high) != (usual_low, usual_high) else share
    lo, ulo, uhi, hi = math.floor(low), math.floor(usual_low), math.ceil(usual_high), math.ceil(high)
    if hi - lo > MOST_BINS:
        return {}
    width = max(1, uhi - ulo)
    shares: dict[int, float] = {}
    for k in range(ulo, uhi + 1):
        shares[k] = math.exp(-0.5 * ((k - (ulo + uhi) / 2) / (0.6 * width)) ** 2)
    scale = inner / sum(shares.values())
    shares = {k: v * scale for k, v in shares.items()}
    tail = [*range(lo, ulo), *range(uhi + 1, hi + 1)]
    rest = 1.0 - inner
    if tail:
        for k in tail:
            shares[k] = 0.85 * rest / len(tail)
        rest *= 0.15
    reach = max(2, (hi - lo) // 3)
    step = 0.5 ** (1.0 / max(1.0, reach / 2))
    outer = [(k, step**d) for d in range(1, 2 * reach + 1) for k in (lo - d, hi + d) if k >= 0]
    norm = sum(v for _, v in outer)
    for k, v in outer:
        shares[k] = rest * v / norm
    norm = sum(shares.values())
    return {k: v / norm for k, v in shares.items()}


def number_range(s: Statement) -> tuple[float, float, float, float] | None:
    """Extreme low, usual low, usual high, extreme high of a number statement; None when it holds no number."""
    known = [x for x in (s.low, s.usual_low, s.mean, s.usual_high, s.high) if x is not None]
    if not known:
        return None
    low = s.low if s.low is not None else min(known)
    high = s.high if s.high is not None else max(known)
    usual_low = s.usual_low if s.usual_low is not None else low
    usual_high = s.usual_high if s.usual_high is not None else high
    return low, usual_low, usual_high, high


def numbers(kb: KnowledgeBase, taxon: str, character: str) -> tuple[float, float, tuple[str, ...]] | None:
    """The lowest and highest value stated of a number character (a length, ratio, mass), with the statements."""
    statements, _ = about(kb, taxon, character)
    ranges = [(r[0], r[3]) for s in statements if (r := number_range(s)) is not None]
    if not ranges:
        return None
    return min(lo for lo, _ in ranges), max(hi for _, hi in ranges), tuple(s.id for s in statements)
