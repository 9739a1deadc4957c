"""Readings of the words of a line as states of characters, each with a score, before one is chosen (layer 4)."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from typing import NamedTuple

from assistant.dialogue.reader.as_typed import literal, points, shades, unlike
from assistant.dialogue.reader.borne_out import (
    FADING,
    another_sentence,
    borne_out,
    describes_next,
    describes_other,
    done_by_other,
    holds_another,
    lacks_elsewhere,
    of_front_fin,
    of_lateral_line,
    reaches_too_far,
    told_elsewhere,
)
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.said_of import (
    LISTED_ON,
    end_of_span,
    likewise,
    listed_on,
    measured_by,
    on_it,
    over_denial,
)
from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.dialogue.reader.whole_colour import BUILD, of_whole_fish
from assistant.dialogue.scope import Scopes
from assistant.model.stems import NEGATORS, ORDERED
from assistant.text import key, word_set

ALONE = 0.6
"""What a phrase that needs no noun is worth more than its words."""
DENIES = 0.5
"""What a phrase that itself denies is worth more, where the line denies."""
PLAIN_DENIAL = 0.7
"""What a denied noun is worth as the state that nothing is there."""
PLAIN_PRESENCE = 0.3
"""What a bare noun in the plural is worth as the thing being there."""
EXPECTED = 0.9
"""What a value without its part is worth when the feature was asked for."""
ELSEWHERE = 3.0
"""What it costs marks of the side that they are said to be on another part."""
OFFERED = 0.5
"""What it is worth that a state was offered as an answer."""
FAR = 0.18
"""What each word between a value and its part costs."""
CARRIED = 0.5
"""What a part word is worth when it stands in the clause before."""
AHEAD = 0.35
"""What a part word is worth when it stands in the clause after."""
ON_IT = 1.0
"""What a part word is worth of which the next clause tells what is "on it"."""
LIKEWISE = 0.6
"""What a part word is worth of whose clause, behind, it is said that it is the same."""
REACH = 12
"""Words of one clause over which a part supports a value; it keeps a paste without punctuation quick."""
REACH_BEHIND = 2
"""Words between "on" and the part that a value is said to be on ("on the very first dorsal")."""
ANEW = 0.3
"""What a part word of the sentence before is worth as a share of one of the same sentence."""
BACK = 2
"""Clauses over which a part is carried on."""
UNLIKE = 0.3
"""What a singular for a plural costs, or the other way round."""
ACROSS = 1.0
"""What it costs a reading to join words over a preposition."""
SPECIFIC = -0.5
"""What a value of three words or more that places a thing is worth with no part word by it."""
INSIDE = 0.4
"""What it costs a value that its part word is inside the name of another part ("dorsal" in "spiny dorsal")."""
BEYOND = 0.5
"""What it costs a value that "under" or "behind" stands between it and its part."""
AND = 0.6
"""What it costs a value with a noun of its own that "and" stands between it and its part."""
OTHER = 2.0
"""What it costs a describing word that another noun follows it."""
DENIED_ANEW = 1.0
"""What it costs a value that a denial of its own stands before the part behind it ("no teeth no spines")."""
_SINGLE = word_set("was is")
_BEYOND = word_set("under behind below above before past from beneath near against across")
_AND = word_set("and n plus")
LACKING = ("none", "absent")
"""How the ids of states begin that mean that nothing is there."""
SPREAD = 0.15
"""What each word inside a reading that it does not explain costs."""
STOLEN = 1.2
"""What it costs a reading to take a describing word from the noun behind it."""
OVER = 1.2
"""What it costs a reading to skip over a word for another part."""
TINT = 0.8
"""What it costs a reading to skip over each word for a colour ("rows of brick red dots" are no dark ones)."""
WALL = 1.2
"""What it costs a value that a name or "fish" stands between it and its part ("short sunfish with a long ear")."""
CONTEXT = 0.25
"""What it is worth that the fishes spoken of are told by the character."""
LOOSE = 1.2
"""What it costs a word for the whole fish to stand beside a word for a part."""
TALKED_OF = 0.3
"""What it is worth that a feature has to do with what was last seen."""
LITERAL = 0.12
"""What it is worth that a value stands in the base just as it is typed ("dark spots", not "dark blotches")."""
USES = ("identify", "describe", "hybrid", "reserved")
WHOLE = "whole-fish"
SIDE = "side"
_AT = word_set("on in at under below behind through near across beneath over")


class Claim(NamedTuple):
    """A state, or a number, read at some content positions, with the part words that support it."""

    state: str
    character: str
    at: tuple[int, ...]
    support: tuple[int, ...]
    score: float
    denied: bool
    explicit: bool
    number: tuple[int, int] | None = None


class Talk(NamedTuple):
    """What a line is read against: characters asked for or being put right, the stems of what was last seen, the
    positions of names, the fishes spoken of, and the states that were offered as answers.
    """

    expected: frozenset[str] = frozenset()
    words: frozenset[str] = frozenset()
    walls: frozenset[int] = frozenset()
    taxa: tuple[str, ...] = ()
    offered: frozenset[str] = frozenset()

    def share(self, character: str, lexicon: Lexicon) -> float:
        """The share of the fishes spoken of about which the character is stated."""
        told = sum(lexicon.tells(t, character) for t in self.taxa)
        return told / len(self.taxa) if self.taxa else 0.0


class Line(NamedTuple):
    """A line made ready: its words, its content, the phrases found, what is denied, and the part words by clause."""

    tokens: Sequence[Token]
    content: Sequence[Content]
    hits: Sequence[Hit]
    scopes: Scopes
    lexicon: Lexicon
    talk: Talk
    parts: Mapping[str, Mapping[int, Sequence[Hit]]]
    part_clauses: frozenset[int]
    nouns: frozenset[int]
    spans: frozenset[frozenset[int]]

    def clause(self, hit: Hit) -> int:
        """The clause a hit stands in."""
        return self.content[hit.first].clause


def ready(
    tokens: Sequence[Token],
    content: Sequence[Content],
    hits: Sequence[Hit],
    scopes: Scopes,
    lexicon: Lexicon,
    talk: Talk,
) -> Line:
    """A line with its part words sorted by character and clause."""
    parts: dict[str, dict[int, list[Hit]]] = {}
    clauses: set[int] = set()
    for hit in hits:
        of_it = hit.phrase.kind == "character" and lexicon.on_fish(hit.phrase.id)
        if of_it and not measured_by(hit, content, tokens) and not end_of_span(hit, content, tokens) and not (
                of_lateral_line(hit, content, tokens) or holds_another(hit, content, tokens, lexicon)
                or of_front_fin(hit, content, tokens, lexicon)):
            clause = content[hit.first].clause
            parts.setdefault(hit.phrase.id, {}).setdefault(clause, []).append(hit)
            if lexicon.kb.character(hit.phrase.id).part != WHOLE:
                clauses.add(clause)
    spans = frozenset(frozenset(h.at) for h in hits if h.phrase.kind == "character" and len(h.at) > 1)
    return Line(tokens, content, hits, scopes, lexicon, talk, parts, frozenset(clauses), nouns_of(hits, lexicon), spans)


def nouns_of(hits: Sequence[Hit], lexicon: Lexicon) -> frozenset[int]:
    """Positions of single words that name a part: several features may be said of one of them."""
    single = (h for h in hits if h.phrase.kind == "character" and len(h.at) == 1)
    return frozenset(h.at[0] for h in single if lexicon.on_fish(h.phrase.id))


def claims_of(line: Line) -> list[Claim]:
    """All readings that the phrases found in a line allow."""
    made = [
        _claim(hit, line)
        for hit in line.hits
        if hit.phrase.kind == "state" and usable(hit.phrase.character, line.lexicon)
    ]
    return [*(c for c in made if c is not None), *_plain_denials(line), *_plain_presence(line)]


def usable(character: str, lexicon: Lexicon) -> bool:
    """True for a character whose states can be seen and told of."""
    found = lexicon.kb.find("character", character)
    return found is not None and found.use in USES and found.is_stated


def _claim(hit: Hit, line: Line) -> Claim | None:
    phrase = hit.phrase
    denied = any(p in line.scopes.denied for p in hit.at)
    if phrase.denies != denied and (not denied or over_denial(hit, line.content, line.tokens, line.scopes.denied)):
        return None
    if shades(hit, line) or not borne_out(hit, line):
        return None
    best = _support(hit, line)
    if points(hit, line) and (not best or _pointed(hit, best[1], line)) and phrase.character not in line.talk.expected:
        return None
    if best:
        worth = max(best[0], ALONE if phrase.alone else 0.0)
    elif of_whole_fish(hit, line):
        worth = ALONE
    elif phrase.alone:
        if describes_next(hit, line) or (phrase.denies and _stray(hit, line)):
            return None
        worth = ALONE - LOOSE * _stray(hit, line)
    elif phrase.character in line.talk.expected and not (len(hit.at) < 2 and line.clause(hit) in line.part_clauses):
        worth = EXPECTED
    elif phrase.ordered and len(set(hit.at)) > 2:
        worth = SPECIFIC
    else:
        return None
    score = (
        len(set(hit.at)) + worth + DENIES * phrase.denies + CONTEXT * line.talk.share(phrase.character, line.lexicon)
    )
    score += (
        _usual(phrase.character, phrase.id, line.lexicon)
        - ELSEWHERE * (told_elsewhere(hit, line) or _joined_over(hit, line))
        + OFFERED * (phrase.id in line.talk.offered)
        + LITERAL * literal(hit, line)
        - UNLIKE * unlike(hit, line)
        - ACROSS * _across(hit, line)
        - _skips(hit, line)
    )
    return Claim(
        phrase.id, phrase.character, hit.at, best[1] if best else (), score, denied and not phrase.denies, phrase.denies
    )


def _pointed(hit: Hit, part: Sequence[int], line: Line) -> bool:
    """True where "of the", or a row, parts a word for one of several from a part ("under the eye of the small one")."""
    low = line.content[max(part)].last if part and max(part) < hit.first else len(line.tokens)
    return bool({"of", "row", "rows"} & {t.word for t in line.tokens[low + 1 : line.content[hit.first].first]})


def _usual(character: str, state: str, lexicon: Lexicon) -> float:
    """A little for characters and states of which much is said."""
    return 0.05 * math.log1p(lexicon.gist(character)[0]) + (0.02 * math.log1p(lexicon.gist(state)[0]) if state else 0.0)


def _stray(hit: Hit, line: Line) -> bool:
    """True for a single word said of the whole fish in a clause that speaks of a part."""
    found = line.lexicon.kb.character(hit.phrase.character)
    told = not hit.phrase.denies or key(found.label) == BUILD
    return found.part == WHOLE and len(set(hit.at)) == 1 and told and line.clause(hit) in line.part_clauses


def _across(hit: Hit, line: Line) -> bool:
    """True when words said of different things are joined ("pale spots on a dark side" are no dark spots)."""
    if hit.phrase.ordered or len(hit.at) < 2:
        return False
    content, tokens = line.content, line.tokens
    return any(
        tokens[i].word in ORDERED
        for a, b in pairwise(sorted(hit.at))
        for i in range(content[a].last + 1, content[b].first)
    )


def _skips(hit: Hit, line: Line) -> float:
    """What it costs a reading to skip a word for another part, or to take a describing word from the noun behind it."""
    if len(hit.at) < 2:
        return 0.0
    spread = SPREAD * (hit.last - hit.first + 1 - len(set(hit.at)))
    own = set(hit.at) | {p for h in _parts_in_clause(hit, line) for p in h.at}
    skipped = [p for p in range(hit.first + 1, hit.last) if p not in own]
    joined = any(line.tokens[i].word in _AND for i in range(line.content[hit.first].last, line.content[hit.last].first))
    if any(p in line.nouns or _belongs(p, own, line) for p in skipped):
        return OVER + OVER * joined
    tints = sum(line.lexicon.head(line.tokens[line.content[p].first].word) in line.lexicon.tints for p in skipped)
    stolen = (STOLEN + OVER * joined) * _steals(hit, own, line)
    return spread + TINT * tints + OVER * (bool(skipped) and joined) + stolen


def _belongs(position: int, own: set[int], line: Line) -> bool:
    """True for a word that makes a word of the reading part of another name ("spiny" in "spiny dorsal")."""
    return any(position in span and span & own for span in line.spans)


def _steals(hit: Hit, own: set[int], line: Line) -> bool:
    """True when a describing word behind its noun stands right before another noun ("white gums dark mouth")."""
    last = hit.last
    if last in line.nouns or last + 1 >= len(line.content) or last + 1 not in line.nouns or last + 1 in own:
        return False
    return line.content[last + 1].clause == line.clause(hit) and any(p in line.nouns for p in hit.at)


def _parts_in_clause(hit: Hit, line: Line) -> Sequence[Hit]:
    return line.parts.get(hit.phrase.character, {}).get(line.clause(hit), ())


def _joined_over(hit: Hit, line: Line) -> bool:
    """True where words of a value are joined over "and" to marks that are said to be on another part."""
    nouns = {p for p in hit.at if p in line.nouns and p < max(hit.at)}
    return len(set(hit.at)) > 1 and _said_of_behind(hit, nouns, line)


def _support(hit: Hit, line: Line) -> tuple[float, tuple[int, ...]] | None:
    """How well the nearest part word supports a value, and where it stands."""
    best: tuple[float, tuple[int, ...]] | None = None
    for part, back in _near_parts(hit, line):
        value = _worth(hit, part, back, line)
        if value > 0 and (best is None or value > best[0]):
            best = (value, part.at)
    return best


def _near_parts(hit: Hit, line: Line) -> Iterator[tuple[Hit, int]]:
    """Words for the part a value is said of, with how many clauses back they stand (-1 for the clause after)."""
    by_clause = line.parts.get(hit.phrase.character)
    if not by_clause:
        return
    clause, bare = line.clause(hit), 0
    for back in range(-1, BACK + LISTED_ON + 1):
        if back > 1 and clause - back + 1 not in line.part_clauses:
            bare += 1
        if back - bare > BACK:
            break
        for part in by_clause.get(clause - back, ()):
            if back or -REACH <= part.first - hit.last <= REACH or -REACH <= hit.first - part.last <= REACH:
                yield part, back - bare if back > 1 else back


def _worth(hit: Hit, part: Hit, back: int, line: Line) -> float:
    own = set(part.at) - set(hit.at)
    if not own:
        return 0.5 if len(part.at) < len(set(hit.at)) else 0.1
    if all(line.content[p].stem.isdigit() for p in hit.at):
        return len(own) if back == 0 and _gap(hit, part) == 0 else 0.0
    if back == 0:
        return len(own) - FAR * min(_gap(hit, part), 8) - _parted(hit, part, line) - _foreign(hit, part, line)
    if back > 0:
        if back == 1 and on_it(line.clause(hit), line.tokens, line.part_clauses):
            return ON_IT
        listed = listed_on(line.clause(hit), line.tokens, line.part_clauses)
        carried = CARRIED * (1 + listed) / back - FAR * 0.5 * min(hit.first - part.last - 1, 8)
        carried *= ANEW if another_sentence(hit, part, line) else 1.0
        lacking = bool(line.scopes.denied & own)
        apart = lacking or _of_another_part(hit, line) or reaches_too_far(hit, part, line)
        return 0.0 if apart else carried
    if likewise(part.at, line.content, line.tokens) and _hardly_else(part, line):
        return LIKEWISE
    if another_sentence(hit, part, line):
        return 0.0
    fragment = len(hit.at) > 1 and line.clause(hit) not in line.part_clauses
    return AHEAD if fragment or (len(hit.at) > 1 and _only_within(hit, line)) else 0.0


def _hardly_else(part: Hit, line: Line) -> bool:
    """True for a part word in a clause that tells hardly anything else ("so is the cheek")."""
    clause = line.clause(part)
    return sum(c.clause == clause and p not in part.at for p, c in enumerate(line.content)) <= 1


def _foreign(hit: Hit, part: Hit, line: Line) -> float:
    """What it costs that a part word stands inside the name of another part, or is one where several are told of."""
    mine = {frozenset(h.at) for h in _parts_in_clause(hit, line)}
    inside = any(set(part.at) < span for span in line.spans if span not in mine)
    gaps = part.last - part.first + 1 - len(set(part.at))
    apart = inside + gaps + 2 * _spills(part, line)
    return INSIDE * apart + UNLIKE * (len(part.at) > 1 and unlike(part, line) > 0)


def _spills(part: Hit, line: Line) -> bool:
    """True where the last word of a part word describes a noun behind ("back fin and a small mouth")."""
    behind = part.last + 1
    if len(part.at) < 2 or part.last in line.nouns or behind >= len(line.content):
        return False
    together = line.content[behind].clause == line.content[part.last].clause
    return together and behind in line.nouns and behind not in part.at


def _gap(hit: Hit, part: Hit) -> int:
    return max(hit.first - part.last, part.first - hit.last, 1) - 1


def _parted(hit: Hit, part: Hit, line: Line) -> float:
    """What stands between a value and its part: a fish's name, a preposition, "and" before a noun, another noun."""
    between = _between(hit, part)
    cost = WALL * bool(line.talk.walls & between)
    low, high = min(hit.last, part.last), max(hit.first, part.first)
    words = {line.tokens[i].word for i in range(line.content[low].last + 1, line.content[high].first)}
    cost += BEYOND * bool(words & _BEYOND) + OTHER * (done_by_other(hit, part, line) or bool(words & FADING))
    named = hit.phrase.denies or any(p in line.nouns for p in hit.at)
    cost += AND * bool(named and words & _AND)
    cost += ELSEWHERE * _said_of_behind(hit, set(part.at), line)
    anew = hit.last < part.first and words >= {"and", "the"} and _is_next(hit, line)
    cost += OTHER * (anew and not likewise(part.at, line.content, line.tokens))
    being = {"and", "the"} <= words and bool(words & _SINGLE) and part.last < hit.first
    cost += OTHER * (being and bool(between & line.nouns - set(part.at)))
    cost += DENIED_ANEW * bool(hit.last < part.first and words & NEGATORS)
    return cost + OTHER * (len(hit.at) == 1 and describes_other(hit, part, line))


def _is_next(hit: Hit, line: Line) -> bool:
    """True where "and" stands right behind a value ("webs black and the belly fins ...")."""
    after = line.content[hit.last].last + 1
    return after < len(line.tokens) and line.tokens[after].word in _AND


def _said_of_behind(hit: Hit, own: set[int], line: Line) -> bool:
    """True where "and" parts a part from a value said to be on another one behind ("tail and spots on side")."""
    content, last = line.content, max(hit.at)
    value = [p for p in hit.at if p > max((q for q in own if q < last), default=-1)]
    part = [q for q in own if value and q < min(value)]
    after = content[last].last + 1
    if not part or after >= len(line.tokens) or line.tokens[after].word not in _AT:
        return False
    words = {t.word for t in line.tokens[content[max(part)].last + 1 : content[min(value)].first]}
    behind = range(last + 1, min(last + 2 + REACH_BEHIND, len(content)))
    place = next((p for p in behind if content[p].clause == line.clause(hit) and p in line.nouns), None)
    return bool(words & _AND) and place is not None and place not in own


def _of_another_part(hit: Hit, line: Line) -> bool:
    """True when the clause of a value has a word for a part of its own, so that no earlier part is meant."""
    clause, own = line.clause(hit), set(hit.at)
    mine = line.lexicon.kb.character(hit.phrase.character).part
    return any(
        not set(h.at) <= own and line.lexicon.kb.character(c).part not in (mine, WHOLE)
        for c, by_clause in line.parts.items()
        for h in by_clause.get(clause, ())
    )


def _only_within(hit: Hit, line: Line) -> bool:
    """True when all part words of the clause belong to the value itself ("longer than its head")."""
    clause, own = line.clause(hit), set(hit.at)
    return all(set(h.at) <= own for by_clause in line.parts.values() for h in by_clause.get(clause, ()))


def _between(a: Hit, b: Hit) -> set[int]:
    first, second = (a, b) if a.last < b.first else (b, a)
    return set(range(first.last + 1, second.first))


def _plain_denials(line: Line) -> Iterator[Claim]:
    """ "No whiskers": the state of a character that means nothing is there; what was talked of before comes first."""
    lexicon = line.lexicon
    states = {p.character: p for p in lexicon.phrases("-") if p.kind == "state"}
    for character in sorted(states.keys() & line.parts.keys()):
        if not usable(character, lexicon):
            continue
        own = {s.text for s in lexicon.stems(key(lexicon.kb.character(character).label).split())}
        label = own if line.talk.words else frozenset()
        about = bool(label & line.talk.words)
        part = {s.text for s in lexicon.stems(lexicon.kb.character(character).part.split("-"))}
        worth = PLAIN_DENIAL + _usual(character, "", lexicon) + TALKED_OF * about
        for hits in line.parts[character].values():
            for hit in hits:
                if not about and set(hit.phrase.stems) <= part and not own <= set(hit.phrase.stems):
                    continue
                if all(p in line.scopes.denied for p in hit.at) and not lacks_elsewhere(hit, line):
                    yield Claim(states[character].id, character, hit.at, (), len(hit.at) + worth, False, True)


def _plain_presence(line: Line) -> Iterator[Claim]:
    """ "With spots": bare marks whose kind is not told are only not the state that means nothing is there."""
    states = [h for h in line.hits if h.phrase.kind == "state" and usable(h.phrase.character, line.lexicon)]
    told = {(h.phrase.character, h.at) for h in states if not h.phrase.denies}
    for hit in states:
        phrase, content = hit.phrase, line.content[hit.first]
        if not phrase.denies or len(hit.at) > 1 or not (phrase.plurals[0] and content.plural):
            continue
        own = line.tokens[content.first].word in line.lexicon.kb.character(phrase.character).words
        lacking = phrase.id.partition(".")[2].startswith(LACKING)
        if own and lacking and (phrase.character, hit.at) not in told and hit.first not in line.scopes.denied:
            best = _support(hit, line) or (0.0, ())
            worth = PLAIN_PRESENCE + best[0] + _usual(phrase.character, "", line.lexicon)
            yield Claim(phrase.id, phrase.character, hit.at, best[1], 1 + worth, True, False)
