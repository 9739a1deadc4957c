"""What was seen of a fish, read out of free text: states of characters, denied and hedged ones included (layer 4).

Phrases that stand alone and values that stand beside a word for their part compete for the words of the line; the
reading that explains most words, nearest to the part it is said of, wins them.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
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
ACROSS = 1.0
"""What it costs a reading to join words over a preposition."""
LEAST = 1.0
"""A reading worth less is none."""
CARRIED = 0.5
"""What a part word is worth when it stands in the clause before."""
UNLIKE = 0.3
"""What a singular for a plural costs, or the other way round."""
BARE = 0.6
"""What it costs a reading when all its words are nouns and no describing word is among them."""
WALL = 0.7
"""What it costs a value when the name of a fish stands between it and its part ("short sunfish with a long ear")."""
CONTEXT = 0.25
"""What it is worth that the fishes spoken of are told by the character."""
LOOSE = 0.8
"""What it costs a word for the whole fish to stand beside a word for a part."""
FAR = 0.18
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


@dataclass(frozen=True, slots=True)
class Talk:
    """What the line is read against: characters asked for or being put right, the stems of what was last seen, the
    positions of names, and the fishes spoken of.
    """

    expected: frozenset[str] = frozenset()
    words: frozenset[str] = frozenset()
    walls: frozenset[int] = frozenset()
    taxa: tuple[str, ...] = ()

    def share(self, character: str, lexicon: Lexicon) -> float:
        """The share of the fishes spoken of about which the character is stated."""
        told = sum(lexicon.tells(t, character) for t in self.taxa)
        return told / len(self.taxa) if self.taxa else 0.0


def read_features(tokens: Sequence[Token], content: Sequence[Content], hits: Sequence[Hit], scopes: Scopes,
                  lexicon: Lexicon, setting: Talk = Talk(), counts: Sequence[Claim] = ()) -> tuple[Seen, ...]:
    """The observations of a line."""
    claims = [*claims_of(tokens, content, hits, scopes, lexicon, setting), *counts]
    chosen = choose(claims, nouns_of(hits), tokens, content)
    seen = [_seen(c, tokens, content, scopes, lexicon) for c in chosen]
    return tuple(sorted(seen, key=lambda s: (s.start, s.observation.character)))


def claims_of(tokens: Sequence[Token], content: Sequence[Content], hits: Sequence[Hit], scopes: Scopes, lexicon: Lexicon,
              setting: Talk) -> list[Claim]:
    """All readings that the hits allow."""
    parts: dict[str, list[Hit]] = {}
    for hit in hits:
        if hit.phrase.kind == "character":
            parts.setdefault(hit.phrase.id, []).append(hit)
    out: list[Claim] = []
    for hit in hits:
        if hit.phrase.kind == "state":
            claim = _claim(hit, parts, tokens, content, scopes, lexicon, setting)
            if claim:
                out.append(claim)
    out.extend(_plain_denials(parts, scopes, lexicon, setting.words))
    return out


def _claim(hit: Hit, parts: dict[str, list[Hit]], tokens: Sequence[Token], content: Sequence[Content], scopes: Scopes,
           lexicon: Lexicon, setting: Talk) -> Claim | None:
    phrase = hit.phrase
    character = phrase.character
    if not _usable(character, lexicon):
        return None
    denied = any(p in scopes.denied for p in hit.at)
    if phrase.denies and not denied:
        return None
    explicit = phrase.denies
    score = float(len(set(hit.at))) + 0.5 * phrase.denies - UNLIKE * _unlike(hit, content) - ACROSS * _across(hit, content, tokens)
    best = _support(hit, parts, content, setting.walls)
    support: tuple[int, ...] = ()
    if best:
        support = best[1]
        score += max(best[0], ALONE if phrase.alone else 0.0)
    elif phrase.alone:
        score += ALONE
    elif character in setting.expected:
        score += 0.5
    else:
        return None
    if not support and len(set(hit.at)) == 1 and not explicit and _whole(character, lexicon):
        score -= LOOSE * _part_in_clause(content[hit.first].clause, parts, content, lexicon)
    score += CONTEXT * setting.share(character, lexicon)
    gist = lexicon.gist
    score += 0.05 * math.log1p(gist(character)[0]) + 0.02 * math.log1p(gist(phrase.id)[0])
    return Claim(phrase.id, character, hit.at, support, score, denied and not explicit, explicit)


def _whole(character: str, lexicon: Lexicon) -> bool:
    return lexicon.kb.character(character).part == "whole-fish"


def _part_in_clause(clause: int, parts: dict[str, list[Hit]], content: Sequence[Content], lexicon: Lexicon) -> bool:
    return any(content[h.first].clause == clause and not _whole(c, lexicon) for c in sorted(parts) for h in parts[c])


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


def _support(hit: Hit, parts: dict[str, list[Hit]], content: Sequence[Content],
             walls: frozenset[int]) -> tuple[float, tuple[int, ...]] | None:
    """How well the nearest part word supports a value, and where it stands."""
    best: tuple[float, tuple[int, ...]] | None = None
    clause = content[hit.first].clause
    for part in parts.get(hit.phrase.character, ()):
        own = set(part.at) - set(hit.at)
        back = clause - content[part.first].clause
        if not own:
            value = 0.5 if len(part.at) < len(set(hit.at)) else 0.1
        elif back == 0:
            gap = max(hit.first - part.last, part.first - hit.last, 1) - 1
            value = len(own) - FAR * min(gap, 8) - WALL * bool(walls & _between(hit, part))
        elif 0 < back <= BACK:
            gap = hit.first - part.last - 1
            value = CARRIED / back - FAR * 0.5 * min(gap, 8)
        elif back == -1 and len(hit.at) > 1 and not any(content[h.first].clause == clause for hs in parts.values() for h in hs
                                                       if not set(h.at) <= set(hit.at)):
            value = 0.35
        else:
            continue
        if value > 0 and (best is None or value > best[0]):
            best = (value, part.at)
    return best


def _between(a: Hit, b: Hit) -> set[int]:
    first, second = (a, b) if a.last < b.first else (b, a)
    return set(range(first.last + 1, second.first))


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


def choose(claims: Sequence[Claim], nouns: frozenset[int], tokens: Sequence[Token], content: Sequence[Content]) -> list[Claim]:
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
        if any(c.character == claim.character and _same_place(c, claim, tokens, content) for c in chosen):
            continue
        chosen.append(claim)
        taken |= own
        whole.append(everything)
    return chosen


_ALSO = frozenset("and n or then with w above below to plus front behind rear inside outside top bottom".split())


def _same_place(a: Claim, b: Claim, tokens: Sequence[Token], content: Sequence[Content]) -> bool:
    """True when two readings of one character cannot both stand: on the same words, or on one noun with no "and" between."""
    if set(a.at) & set(b.at) or (a.state == b.state and a.number == b.number):
        return True
    if not (set(a.at) | set(a.support)) & (set(b.at) | set(b.support)):
        return False
    first, second = (a, b) if min(a.at) < min(b.at) else (b, a)
    low, high = content[min(first.at)].first, content[max(second.at)].last
    return not any(tokens[i].word in _ALSO for i in range(low, high + 1)) and tokens[low].clause == tokens[high].clause


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
