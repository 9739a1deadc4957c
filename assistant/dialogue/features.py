"""What was seen of a fish, read out of free text: states of characters, denied and hedged ones included (layer 4).

Phrases that stand alone and values that stand beside a word for their part compete for the words of the line; the
reading that explains most words, nearest to the part it is said of, wins them.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from assistant.dialogue.lexicon import Lexicon, Phrase
from assistant.dialogue.reading import Seen
from assistant.dialogue.scope import Scopes
from assistant.dialogue.spotting import Content, Hit
from assistant.dialogue.tokens import Token
from assistant.model.stems import ORDERED
from assistant.reasoning.observed import Observation
from assistant.text import key

ALONE = 0.6
"""What a phrase that needs no noun is worth more than its words."""
ACROSS = 0.5
"""What it costs a reading to join words over a preposition."""
LEAST = 1.0
"""A reading worth less is none."""
CARRIED = 0.5
"""What a part word is worth when it stands in the clause before."""
UNLIKE = 0.3
"""What a singular for a plural costs, or the other way round."""
BARE = 0.6
"""What it costs a reading when all its words are nouns and no describing word is among them."""
FAR = 0.12
"""What each word between a value and its part costs."""
BACK = 2
"""Clauses over which a part is carried on."""
USES = ("identify", "describe", "hybrid", "reserved")


@dataclass(frozen=True, slots=True)
class Claim:
    """A state read at some content positions, with the part words that support it."""

    state: str
    character: str
    at: tuple[int, ...]
    support: tuple[int, ...]
    score: float
    denied: bool
    explicit: bool
    number: tuple[int, int] | None = None


def read_features(tokens: Sequence[Token], content: Sequence[Content], hits: Sequence[Hit], scopes: Scopes,
                  lexicon: Lexicon, expected: str = "", counts: Sequence[Claim] = (), talk: str = "") -> tuple[Seen, ...]:
    """The observations of a line.

    ``expected`` is a character that was asked for and needs no part word; ``talk`` the words of what was last seen.
    """
    before = frozenset(s.text for s in lexicon.stems(key(talk).split()))
    claims = [*claims_of(tokens, content, hits, scopes, lexicon, expected, before), *counts]
    chosen = choose(claims, nouns_of(hits))
    seen = [_seen(c, tokens, content, scopes, lexicon) for c in chosen]
    return tuple(sorted(seen, key=lambda s: (s.start, s.observation.character)))


def claims_of(tokens: Sequence[Token], content: Sequence[Content], hits: Sequence[Hit], scopes: Scopes, lexicon: Lexicon,
              expected: str, talk: frozenset[str]) -> list[Claim]:
    """All readings that the hits allow."""
    parts: dict[str, list[Hit]] = {}
    for hit in hits:
        if hit.phrase.kind == "character":
            parts.setdefault(hit.phrase.id, []).append(hit)
    out: list[Claim] = []
    for hit in hits:
        if hit.phrase.kind == "state":
            claim = _claim(hit, parts, tokens, content, scopes, lexicon, expected)
            if claim:
                out.append(claim)
    out.extend(_plain_denials(parts, scopes, lexicon, talk))
    return out


def _claim(hit: Hit, parts: dict[str, list[Hit]], tokens: Sequence[Token], content: Sequence[Content], scopes: Scopes,
           lexicon: Lexicon, expected: str) -> Claim | None:
    phrase = hit.phrase
    character = phrase.character
    if not _usable(character, lexicon):
        return None
    denied = any(p in scopes.denied for p in hit.at)
    if phrase.denies and not denied:
        return None
    explicit = phrase.denies
    score = float(len(set(hit.at))) + 0.5 * phrase.denies - UNLIKE * _unlike(hit, content) - ACROSS * _across(hit, content, tokens)
    best = _support(hit, parts.get(character, ()), content)
    support: tuple[int, ...] = ()
    if best:
        support = best[1]
        score += max(best[0], ALONE if phrase.alone else 0.0)
    elif phrase.alone:
        score += ALONE
    elif character == expected:
        score += 0.5
    else:
        return None
    gist = lexicon.gist
    score += 0.05 * math.log1p(gist(character)[0]) + 0.02 * math.log1p(gist(phrase.id)[0])
    return Claim(phrase.id, character, hit.at, support, score, denied and not explicit, explicit)


def _across(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True when words said of different things are joined ("pale spots on a dark side" are no dark spots)."""
    if hit.phrase.ordered:
        return False
    places = sorted(hit.at)
    return any(tokens[i].word in ORDERED for a, b in zip(places, places[1:], strict=False)
               for i in range(content[a].last + 1, content[b].first))


def _unlike(hit: Hit, content: Sequence[Content]) -> int:
    """How many words differ in number from the phrase ("a red spot" against "red spots")."""
    return sum(content[p].plural != plural for p, plural in zip(hit.at, hit.phrase.plurals, strict=True))


def _usable(character: str, lexicon: Lexicon) -> bool:
    found = lexicon.kb.find("character", character)
    return found is not None and found.use in USES and found.is_stated


def _support(hit: Hit, parts: Iterable[Hit], content: Sequence[Content]) -> tuple[float, tuple[int, ...]] | None:
    """How well the nearest part word supports a value, and where it stands."""
    best: tuple[float, tuple[int, ...]] | None = None
    clause = content[hit.first].clause
    for part in parts:
        own = set(part.at) - set(hit.at)
        back = clause - content[part.first].clause
        if not own:
            value = 0.5 if len(part.at) < len(set(hit.at)) else 0.1
        elif back == 0:
            gap = max(hit.first - part.last, part.first - hit.last, 1) - 1
            value = len(own) - FAR * min(gap, 8)
        elif 0 < back <= BACK:
            gap = hit.first - part.last - 1
            value = CARRIED / back - FAR * 0.5 * min(gap, 8)
        elif back == -1:
            value = 0.35
        else:
            continue
        if value > 0 and (best is None or value > best[0]):
            best = (value, part.at)
    return best


def _plain_denials(parts: dict[str, list[Hit]], scopes: Scopes, lexicon: Lexicon, talk: frozenset[str]) -> list[Claim]:
    """ "No whiskers": the state of a character that means nothing is there; what was talked of before comes first."""
    states = {p.character: p for p in _pure(lexicon)}
    out = []
    for character in sorted(states.keys() & parts.keys()):
        for hit in parts[character]:
            if all(p in scopes.denied for p in hit.at) and _usable(character, lexicon):
                score = len(hit.at) + 0.7 + 0.05 * math.log1p(lexicon.gist(character)[0])
                score += 0.3 * bool(talk and talk & {s.text for s in lexicon.stems(key(lexicon.kb.character(character).label).split())})
                out.append(Claim(states[character].id, character, hit.at, (), score, False, True))
    return out


def _pure(lexicon: Lexicon) -> tuple[Phrase, ...]:
    return tuple(p for p in lexicon.phrases("-") if p.kind == "state")


def nouns_of(hits: Sequence[Hit]) -> frozenset[int]:
    """Positions of single words that name a part: several features may be said of one of them."""
    return frozenset(h.at[0] for h in hits if h.phrase.kind == "character" and len(h.at) == 1)


def choose(claims: Sequence[Claim], nouns: frozenset[int]) -> list[Claim]:
    """The best readings such that no describing word is used twice."""
    taken: set[int] = set()
    whole: list[frozenset[int]] = []
    chosen: list[Claim] = []
    def worth(claim: Claim) -> float:
        return claim.score - BARE * (set(claim.at) <= nouns and not claim.explicit and claim.number is None)

    for claim in sorted(claims, key=lambda c: (-worth(c), c.state)):
        own = set(claim.at) - nouns
        if own & taken or worth(claim) < LEAST:
            continue
        everything = frozenset(claim.at) | frozenset(claim.support)
        if not own and any(frozenset(claim.at) <= w for w in whole):
            continue
        if any(c.character == claim.character and _same_place(c, claim) for c in chosen):
            continue
        chosen.append(claim)
        taken |= own
        whole.append(everything)
    return chosen


def _same_place(a: Claim, b: Claim) -> bool:
    """True when two readings of one character rest on overlapping words, so that only the better may stand."""
    return bool(set(a.at) & set(b.at)) or a.state == b.state


def _seen(claim: Claim, tokens: Sequence[Token], content: Sequence[Content], scopes: Scopes, lexicon: Lexicon) -> Seen:
    at = sorted({*claim.at, *claim.support})
    first, last = content[at[0]].first, content[at[-1]].last
    found = lexicon.kb.character(claim.character)
    ordered = found.kind == "ordered"
    low, high = claim.number or (None, None)
    observation = Observation(
        claim.character, (claim.state,) if claim.state else (), value=None if low is None else float(low),
        value_high=None if high is None or high == low else float(high), seen=not claim.denied, hedged=any(p in scopes.hedged for p in claim.at),
        at_least=ordered and any(p in scopes.at_least for p in claim.at),
        at_most=ordered and any(p in scopes.at_most for p in claim.at))
    words = " ".join(t.word for t in tokens[first : last + 1])
    return Seen(observation, words, tokens[first].start, tokens[last].end)
