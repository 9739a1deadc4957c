"""What was seen of a fish, chosen among the readings of a line: states, counts, denials, hedges (layer 4).

Phrases that stand alone and values that stand beside a word for their part compete for the words of the line; the
reading that explains most words, nearest to the part it is said of, wins them.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence

from assistant.dialogue.reader.claims import LACKING, SIDE, WHOLE, Claim, Line, claims_of
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.reader.said_of import likewise
from assistant.model.stems import ORDERED
from assistant.reasoning.evidence import below
from assistant.reasoning.observed import Observation
from assistant.text import word_set

BARE = 0.8
"""What it costs a reading when all its words are nouns and no describing word is among them."""
FEW = 2
"""A clause of so few words that names a thing says that it is there."""
LISTED = 7
"""Words over which a "with" or "has" reaches to a thing that "and" adds ("with a forked tail and spots")."""
NEEDED = 0.6
"""What it is worth that a feature needs another that the line tells ("a sucking disc full of big sharp teeth")."""
LEAST = 1.0
"""A reading worth less is none."""
_HAS = word_set("has had have with w got showing shows saw there no")
_JOINING = word_set("and n plus")
_ALSO = word_set(
    "just only rather more but and n or then above below to plus front behind rear inside outside top bottom"
)


def read_features(line: Line, counts: Sequence[Claim] = ()) -> tuple[Seen, ...]:
    """The observations of a line, in its order."""
    chosen = choose([*claims_of(line), *counts], line)
    return tuple(sorted((_seen(c, line) for c in chosen), key=lambda s: (s.start, s.observation.character)))


def choose(claims: Sequence[Claim], line: Line) -> list[Claim]:
    """The best readings such that no describing word is used twice."""
    nouns = line.nouns
    denied = [c for c in claims if _denied_in_full(c, claims, line)]
    claims = [c for c in claims if not any(c.state == d.state and set(c.at) <= set(d.at) for d in denied)]
    taken: dict[int, str] = {}
    whole: dict[int, list[frozenset[int]]] = {}
    chosen: dict[str, list[Claim]] = {}
    states = {c.state for c in claims if not c.denied and c.score >= LEAST}
    worths = ((_worth(c, line) + NEEDED * _needs(c, states, line), c) for c in claims)
    for worth, claim in sorted(worths, key=lambda p: (-p[0], p[1].state, p[1].at)):
        own = set() if frozenset(claim.at) in line.spans and claim.number is None else set(claim.at) - nouns
        if worth < LEAST or any(not _shared(claim, taken[p], chosen, line) for p in own & taken.keys()):
            continue
        if not own and any(set(claim.at) <= w for w in whole.get(claim.at[0], ())):
            continue
        if any(_only_placed(claim, c, line) for found in chosen.values() for c in found):
            continue
        if claim.number is None and any(_within_count(claim, c, nouns) for found in chosen.values() for c in found):
            continue
        if any(_names_part(claim, c, line) for found in chosen.values() for c in found):
            continue
        if any(_rarer(c, claim, states, line) for found in chosen.values() for c in found):
            continue
        if any(_lent(claim, c, line) for found in chosen.values() for c in found):
            continue
        if any(_reads_through(claim, c, line) or _told_of_part(claim, c, line) for x in chosen.values() for c in x):
            continue
        if any(_one_place(c, claim, line) for c in chosen.get(claim.character, ())):
            taken |= dict.fromkeys(own, claim.character)
            continue
        chosen.setdefault(claim.character, []).append(claim)
        taken |= dict.fromkeys(own, claim.character)
        everything = frozenset(claim.at) | frozenset(claim.support)
        for position in everything:
            whole.setdefault(position, []).append(everything)
    told = [c for found in chosen.values() for c in found if not _outdone(c, found)]
    numbered = [c for c in told if c.number is not None and c.number[0] > 0 and not c.denied]
    counted = {line.lexicon.counted(c.character) for c in numbered}
    return [c for c in told if not _means_none_of(c, counted, line) and not _wide_only(c, told, line)]


def _only_placed(claim: Claim, other: Claim, line: Line) -> bool:
    """True for a thing and its place, where another reading tells more of the thing ("red spots along the side")."""
    words = set(claim.at) - line.nouns
    things = set(claim.at) & line.nouns & set(other.at)
    placed = bool(words) and all(line.content[p].stem in _PLACED for p in words)
    return placed and claim.character != other.character and bool(things) and bool(set(other.at) - line.nouns)


_PLACED = ORDERED | word_set("along down across all in near")
"""Words that only tell where something is."""


def _needs(claim: Claim, told: Collection[str], line: Line) -> bool:
    """True for a feature that only fishes have of which the line tells another one."""
    return any(s in told for s in line.lexicon.kb.character(claim.character).needs)


def _denied_in_full(claim: Claim, claims: Sequence[Claim], line: Line) -> bool:
    """True for a state denied by words that are, as they stand, a phrase for another state of the same feature ("no
    spot on the shoulder", "two fins not joined").
    """
    own = set(claim.at) & line.scopes.denied
    return claim.denied and bool(claim.state) and any(
        c.explicit and c.character == claim.character and own <= set(c.at) and c.support and c.score >= LEAST
        for c in claims)


def _shared(claim: Claim, taker: str, chosen: Mapping[str, Sequence[Claim]], line: Line) -> bool:
    """True for words that tell two features: of which one needs the other ("deeply forked"), of two parts ("cheek and
    gill cover scaled", "cheek scaled all over and the gill cover too"), or of the fish and its marks ("mottled brown").
    """
    kb = line.lexicon.kb
    needed = {s.partition(".")[0] for c in (taker, claim.character) for s in kb.character(c).needs}
    if needed & {taker, claim.character}:
        return True
    if claim.character in chosen or not claim.support:
        marks = [c for c in chosen.get(taker, ()) if set(c.at) & set(claim.at)]
        parts = [kb.character(c).part for c in (claim.character, taker)]
        return claim.character not in chosen and parts == [WHOLE, SIDE] and all(
            min(claim.at) == max(c.at) and len(set(c.at)) > 1 for c in marks)
    return _both(claim, line) or likewise(claim.support, line.content, line.tokens)


def _both(claim: Claim, line: Line) -> bool:
    """True for what is said of two parts joined by "and" ("cheek and gill cover fully scaled")."""
    last = max(claim.support)
    first = min((p for p in claim.at if p > last), default=last)
    between = range(last + 1, first)
    parts = line.nouns.union(*(s for s in line.spans))
    behind = line.content[last].last + 1
    joined = behind < len(line.tokens) and line.tokens[behind].word in _JOINING
    return joined and bool(between) and all(p in parts for p in between)


def _wide_only(claim: Claim, others: Sequence[Claim], line: Line) -> bool:
    """True for a state of which the line tells the kind as well ("black lines, the low ones broken")."""
    if not claim.state or claim.denied:
        return False
    finer = below(line.lexicon.kb, claim.state)
    return any(o.state in finer and o.state != claim.state and not o.denied for o in others)


def _means_none_of(claim: Claim, counted: set[str], line: Line) -> bool:
    """True for a state that says there are none of what the line counts ("10 spines, then soft rays")."""
    if claim.number is not None or claim.explicit or claim.denied:
        return False
    phrases = ((noun, p) for noun in counted for p in line.lexicon.phrases(noun) if p.id == claim.state)
    return any(p.denies and set(p.stems) == {noun} for noun, p in phrases)


def _outdone(claim: Claim, others: Sequence[Claim]) -> bool:
    """True for a denial beside a plain statement of the same feature ("not forked, just dented"), and for what says
    that the thing is lacking beside a word for it ("dark ear, thin light rim": not dark all over).
    """
    lacking = claim.number is None and claim.state.partition(".")[2].startswith(LACKING)
    plain = [o for o in others if not o.explicit and not o.denied and o is not claim]
    return (claim.explicit and bool(plain)) or (lacking and any(
        o.number is None and not o.state.partition(".")[2].startswith(LACKING) for o in plain))


def _names_part(claim: Claim, other: Claim, line: Line) -> bool:
    """True for words that are only the name of the part another reading is said of ("a smudge on the soft dorsal"), or
    of it and its place ("a spot at the back of the soft dorsal").
    """
    words = {p for p in (*claim.at, *claim.support) if line.content[p].stem not in _PLACED}
    inside = words <= set(other.support) or (bool(other.support) and words < {*other.at, *other.support})
    return claim.character != other.character and len(words) > 1 and inside


def _rarer(other: Claim, claim: Claim, told: Collection[str], line: Line) -> bool:
    """True for a feature of words that tell one which only fishes with another feature have ("a sucking disc full of
    big sharp teeth" tells of no fangs).
    """
    kb = line.lexicon.kb
    needed = kb.character(other.character).needs
    same = claim.character != other.character and bool(set(claim.at) & set(other.at)) and claim.state not in needed
    parts = {kb.character(c).part for c in (claim.character, other.character)}
    return same and _needs(other, told, line) and not _needs(claim, told, line) and len(parts) == 1


def _lent(claim: Claim, other: Claim, line: Line) -> bool:
    """True for a mark read of a part of another clause where its noun is told of a part of its own ("red eyes, dark
    bars up and down").
    """
    if claim.number is not None or other.number is not None or claim.character == other.character:
        return False
    clauses = [{line.content[p].clause for p in c.support} - {line.content[p].clause for p in c.at}
               for c in (claim, other)]
    nouns = set(claim.at) & set(other.at) & line.nouns
    return bool(nouns) and bool(clauses[0]) and not clauses[1] and len(set(claim.at) - set(other.at)) < FEW


def _reads_through(claim: Claim, other: Claim, line: Line) -> bool:
    """True for a reading that leaves out a word which makes its noun another thing ("black vertical stripes")."""
    if claim.character == other.character or frozenset(other.at) not in line.spans:
        return False
    left_out = any(min(claim.at) < p < max(claim.at) for p in set(other.at) - set(claim.at))
    return left_out and bool(set(claim.at) & set(other.at))


def _told_of_part(claim: Claim, other: Claim, line: Line) -> bool:
    """True for a mark of the side by default told of another part ("dark lines fan out behind the eye")."""
    if claim.number is not None or other.number is not None or not set(claim.support) <= set(claim.at):
        return False
    part = {c.character: line.lexicon.kb.character(c.character).part for c in (claim, other)}
    nouns = set(claim.at) & line.nouns
    return (part[claim.character] == SIDE and part[other.character] not in (SIDE, WHOLE, "back")
            and bool(nouns) and nouns <= set(other.at) and len(set(other.at)) > len(set(claim.at)))


def _within_count(claim: Claim, counted: Claim, nouns: Collection[int]) -> bool:
    """True for a phrase of the words of a count and nouns ("six spines in front of the anal fin" places no fin)."""
    if counted.number is None or not counted.support:
        return False
    low, high = min(*counted.at, *counted.support), max(*counted.at, *counted.support)
    own = set(claim.support) <= set(claim.at)
    inside = len(claim.at) > 1 and own and all(low <= p <= high or p in nouns for p in claim.at)
    return inside and bool(set(claim.at) & set(counted.support))


def _worth(claim: Claim, line: Line) -> float:
    bare = claim.number is None and not claim.explicit and all(p in line.nouns for p in claim.at)
    return claim.score - BARE * (bare and not _stated(claim, line))


def _stated(claim: Claim, line: Line) -> bool:
    """True when the line says that a fish has the thing ("with an adipose fin"), or hardly says anything else."""
    if sum(c.clause == line.content[min(claim.at)].clause for c in line.content) <= FEW:
        return True
    first = line.content[min(claim.at)].first
    joined = first > 0 and line.tokens[first - 1].word in _JOINING
    reach = LISTED if joined else 3
    before = [t.word for t in line.tokens[max(0, first - reach) : first] if t.clause == line.tokens[first].clause]
    return bool(_HAS & set(before))


def _one_place(a: Claim, b: Claim, line: Line) -> bool:
    """True when two readings of one character cannot both stand: on the same words, on a word that names the part of
    the other ("bottom jaw"), or on one noun with no "and".
    """
    if set(a.at) & set(b.at) or a.number is not None or a.state == b.state or set(b.at) <= set(a.support):
        return True
    if not (set(a.at) | set(a.support)) & (set(b.at) | set(b.support)):
        return False
    first, second = (a, b) if min(a.at) < min(b.at) else (b, a)
    low, high = line.content[min(first.at)].first, line.content[max(second.at)].last
    joined = any(line.tokens[i].word in _ALSO for i in range(low, high + 1))
    return not joined and line.tokens[low].clause == line.tokens[high].clause


def _seen(claim: Claim, line: Line) -> Seen:
    at = sorted({*claim.at, *claim.support})
    first, last = line.content[at[0]].first, line.content[at[-1]].last
    ordered = line.lexicon.kb.character(claim.character).kind == "ordered"
    low, high = claim.number or (None, None)
    step, least, most = _bound(claim, line) if low is not None and low == high else (0, False, False)
    observation = Observation(
        claim.character,
        (claim.state,) if claim.state else (),
        value=None if low is None else float(low) + step,
        value_high=None if high is None or high == low else float(high),
        seen=not claim.denied,
        hedged=any(p in line.scopes.hedged for p in claim.at),
        at_least=least or (ordered and any(p in line.scopes.at_least for p in claim.at)),
        at_most=most or (ordered and (claim.explicit or any(p in line.scopes.at_most for p in claim.at))),
    )
    words = " ".join(t.word for t in line.tokens[first : last + 1])
    return Seen(observation, words, line.tokens[first].start, line.tokens[last].end)


BOUNDS = {
    "aspect-count-over": (1, True, False),
    "aspect-count-from": (0, True, False),
    "aspect-count-under": (-1, False, True),
    "aspect-count-to": (0, False, True),
}
"""What is to be added to a count for the bound that it is, and whether that is a lower or an upper one."""
LONGEST_BOUND = 3


def _bound(claim: Claim, line: Line) -> tuple[int, bool, bool]:
    """The bound that words right before or behind a count make of it ("more than 3", "5 or more")."""
    words = [t.word for t in line.tokens]
    first, last = line.content[claim.at[0]].first, line.content[claim.at[-1]].last
    sizes = range(1, LONGEST_BOUND + 1)
    start = next(i for i, t in enumerate(line.tokens) if t.clause == line.tokens[first].clause)
    before = [" ".join(words[max(start, first - n) : first]) for n in sizes]
    behind = [" ".join(words[last + 1 : last + 1 + n]) for n in sizes if n > 1 and last + n < len(words)]
    for phrase in (*before, *behind):
        for kind, thing, _ in line.lexicon.spoken(phrase):
            if kind == "aspect" and thing in BOUNDS:
                return BOUNDS[thing]
    return 0, False, False
