"""Which of some fishes show the features asked for, and which are long or heavy enough (layer 4)."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from assistant.dialogue.amount_words import middle, typed
from assistant.dialogue.life_asked import LIFE
from assistant.dialogue.telling import place_names
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lists
from assistant.dialogue.wording.speak import fish as label
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import about, below, distribution, number_range
from assistant.reasoning.living import living_in
from assistant.reasoning.observed import Observation
from assistant.reasoning.size import size_range
from assistant.text import unique, word_set

FITS, DOUBTFUL = 0.5, 0.15
"""Share of fish of a kind from which it fits a feature asked for, and from which it does so at times."""
WEIGHT = "max-weight"
FEW_KINDS = 3
"""A family of fewer kinds is no news beside its kinds."""


@dataclass(frozen=True, slots=True)
class Fitting:
    """A kind of fish that fits, the least share over the features asked for, and the statements that say so."""

    taxon: str
    share: float
    statements: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """Kinds that fit all that is asked for, those that do so at times, and of how many nothing is stated."""

    fits: tuple[Fitting, ...]
    maybe: tuple[Fitting, ...]
    silent: int


def fitting(kb: KnowledgeBase, pool: Sequence[str], seen: Sequence[Observation]) -> Found:
    """The fishes of a pool that show all that was seen, the surest and widest spread first."""
    fits, maybe, silent = [], [], 0
    for taxon in pool:
        found = [_share(kb, taxon, o) for o in seen]
        told = [x for x in found if x is not None]
        if len(told) < len(found):
            silent += 1
            continue
        share = min((s for s, _ in told), default=1.0)
        statements = tuple(dict.fromkeys(i for _, ids in told for i in ids))
        one = Fitting(taxon, share, statements or (f"taxon:{taxon}",))
        if share >= FITS:
            fits.append(one)
        elif share >= DOUBTFUL:
            maybe.append(one)
    fits.sort(key=lambda f: (-round(f.share, 1), -len(kb.ranges(f.taxon)), f.taxon))
    maybe.sort(key=lambda f: (-f.share, f.taxon))
    return Found(tuple(fits), tuple(maybe), silent)


def _share(kb: KnowledgeBase, taxon: str, o: Observation) -> tuple[float, tuple[str, ...]] | None:
    """The share of a kind that shows what is asked, with the statements; None where nothing is stated."""
    character = kb.character(o.character)
    if o.value is not None and not character.is_stated:
        return _number_share(kb, taxon, o)
    if character.use in LIFE:
        return _life_share(kb, taxon, o)
    found = distribution(kb, taxon, o.character)
    if found is None:
        return None
    share = found.share({leaf for s in o.states for leaf in below(kb, s)})
    return (share if o.seen else 1.0 - share), tuple(f"st:{s}" for s in found.statements)


def _life_share(kb: KnowledgeBase, taxon: str, o: Observation) -> tuple[float, tuple[str, ...]] | None:
    """All or none of a kind: a fish eats several things and lives in several waters, and none denies another."""
    statements, _ = about(kb, taxon, o.character)
    wanted = {leaf for s in o.states for leaf in below(kb, s)}
    told = [s for s in statements if wanted & {leaf for x in s.states for leaf in below(kb, x)}]
    if not statements:
        return None
    return (1.0 if bool(told) == o.seen else 0.0), tuple(f"st:{s.id}" for s in told or statements)


def _number_share(kb: KnowledgeBase, taxon: str, o: Observation) -> tuple[float, tuple[str, ...]] | None:
    assert o.value is not None
    found = distribution(kb, taxon, o.character)
    top = o.value if o.value_high is None else o.value_high
    if found is not None:

        def wanted(n: float) -> bool:
            assert o.value is not None
            return (n >= o.value) if o.at_least else (n <= top) if o.at_most else (o.value <= n <= top)

        share = sum(p for n, p in found.shares.items() if wanted(float(n)))
        return (share if o.seen else 1.0 - share), tuple(f"st:{s}" for s in found.statements)
    statements, _ = about(kb, taxon, o.character)
    ranges = [r for s in statements if (r := number_range(s)) is not None]
    if not ranges:
        return None
    low, high = min(r[0] for r in ranges), max(r[3] for r in ranges)
    inside = (high >= o.value) if o.at_least else (low <= top) if o.at_most else (low <= top and high >= o.value)
    return (1.0 if inside == o.seen else 0.0), tuple(f"st:{s.id}" for s in statements)


def by_size(turn: Turn, pool: tuple[str, ...], sides: frozenset[str]) -> tuple[tuple[str, ...], str]:
    """Of some fishes those whose largest held is longer (or heavier) than told, or less so, and that in words.

    "Never get past 5 in" asks for those that may just reach it; with "much" or "usually" the usual size counts.
    """
    told = [m for m in turn.reading.measures if m.kind in ("length", "weight")]
    never = _NEVER.search(turn.reading.text.lower())
    if not told or not (never or sides & {"bigger-than", "smaller-than"}):
        return pool, ""
    most = never is not None or _AT_MOST.search(turn.reading.text.lower()) is not None
    edge, more = middle(told[0]), "bigger-than" in sides and not most
    within = not more and (most or told[0].about)
    usual = told[0].kind == "length" and bool(_LOOSELY & set(turn.reading.words))
    if told[0].kind == "weight":
        tops = {t: top for t in pool if (top := _heaviest(turn.kb, t)) is not None}
    else:
        sizes = {t: size_range(turn.kb, t) for t in pool}
        tops = {t: top for t, r in sizes.items() if (top := r.usual_high if usual else r.largest) is not None}
    reaching = usual or within
    kept = tuple(t for t, top in tops.items() if (top > edge if more else top <= edge if reaching else top < edge))
    bound = typed(told[0], turn.held)
    if usual:
        return kept, lists.of_usual(bound, more)
    worded = lists.of_weight if told[0].kind == "weight" else lists.of_length
    return kept, worded(bound, more, within)


_NEVER = re.compile(
    r"\b(?:never|not|don'?t|doesn'?t|won'?t|can'?t|rarely|seldom|hardly)(?: (?:really|quite|ever|usually|tend to|do))*"
    r" (?:(?:(?:gets?|grows?|go(?:es)?|reach(?:es)?|runs?|comes?|makes? it|is|are|be)(?: (?:much|very|far|way|any))* )?"
    r"(?:over|past|above|beyond|bigger|larger|longer|heavier|more)|exceeds?|tops?|pass(?:es)?|reach(?:es)?|breaks?|"
    r"cracks?)\b")
"""A bound denied ("never get much past five inches")."""
_AT_MOST = re.compile(r"\b(?:no (?:bigger|larger|longer|heavier|more) than|at most|(?:top|max)(?:e?s)? out|up to)\b")
"""A bound that may be reached ("no bigger than 5 in", "top out at 5 in")."""
_LOOSELY = word_set("much usually mostly rarely seldom typically commonly normally generally adult adults grown")


def _heaviest(kb: KnowledgeBase, taxon: str) -> float | None:
    """The greatest weight held of a kind, in grams; None where none is."""
    ranges = [number_range(s) for s in about(kb, taxon, WEIGHT)[0]]
    return max((r[3] for r in ranges if r is not None), default=None)


def with_places(kb: KnowledgeBase, fitting: Fitting) -> str:
    """The name of a fish with the places of which what fits is said."""
    found = [s for i in fitting.statements if (s := kb.record_at(i)) is not None]
    places = unique(r for s in found for r in getattr(s, "regions", ()))
    name = label(kb, fitting.taxon)
    return lists.only_in(name, place_names(kb, places)) if places else name


def whole_families(
    kb: KnowledgeBase, fits: Sequence[Fitting], name: str, places: Sequence[str] = ()
) -> tuple[str, ...]:
    """The families of some size of which every kind (that lives in the places) fits, but for a list within the one
    group named."""
    found = {f.taxon for f in fits}
    families = Counter(kb.lineage(t)[-1] for t in found)
    if name and len(families) < 2:
        return ()
    whole = [f for f, n in families.items()
             if n >= FEW_KINDS and set(living_in(kb, kb.members(f), places) if places else kb.members(f)) <= found]
    return tuple(sorted(whole, key=lambda f: (-families[f], f)))
