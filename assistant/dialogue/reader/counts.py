"""Counts in free text: "10 spines up top", "anal fin had 27", and formulas such as "D XI, A V-VI,10" (layer 4)."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from typing import NamedTuple

from assistant.dialogue.reader.as_meant import counts_nothing
from assistant.dialogue.reader.claims import Claim, Line
from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Seen
from assistant.dialogue.reader.spotting import Content, Hit
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import ORDERED, stem
from assistant.reasoning.observed import Observation
from assistant.text import key

MARGIN = 0.25
"""How far outside the stated range, as a share of it, a count is still taken for a count of that feature."""
_RANGE = re.compile(
    r"\s*(?:-|–|,?\s*(?:or|to)?(?:\s*(?:maybe|possibly|perhaps|even|could be|might be))?)\s*", re.IGNORECASE
)
FIN = "fin"
"""A word that tells no fin from another."""
REACH = 2
"""Content words between the two numbers of a range that is told with doubt ("5, maybe 6")."""
_ROMAN = {"i": 1, "v": 5, "x": 10}
_FORMULA = re.compile(
    r"(?<![\w.])(?P<fin>[DAP]|(?i:dorsal|anal|pectoral)(?: fin)?|(?i:top|back|bottom) fin)[.:]?\s*"
    r"(?P<a>[IVX]+|[ivx]{2,})"
    r"(?:\s?[-–+,]\s?(?P<second>I{1,2})(?![\w.])(?=\s?[,+\s]\s?\d)|\s?[-–]\s?(?P<b>[IVXivx]+))?"
    r"(?:(?:\s?[,+]\s?|\s)(?P<c>\d{1,3})(?:\s?[-–]\s?(?P<d>\d{1,3}))?(?!\w)"
    r"(?!\s?(?:mm|cm|in|inch|inches|g|kg|lb|lbs|oz)\b|\s?[\"”]))?(?!\w)"
)
MOST_ANAL = 3
"""A fin of more spines has them in front of one or two of a second dorsal fin ("IX-I,12"), not a range ("I-II")."""
_FORMULA_BEHIND = re.compile(r"(?<![\w.])(?P<a>[IVX]+|[ivx]{2,})\s+(?P<fin>(?i:dorsal|anal|pectoral))(?: spines)?\b")
"""The figure before its fin ("XII dorsal, VII anal")."""
_ROMAN_SPINES = re.compile(r"(?<![\w.])(?P<a>[IVX]+)(?:\s?(?:[-–]|or|to)\s?(?P<b>[IVX]+))?"
                           r"\s+spines\s+(?:in|on)\s+(?:the\s+)?(?P<fin>dorsal|anal)\b")
"""The figure before "spines" and its fin ("V or VI spines in the anal fin")."""
_FINS = {"D": "dorsal", "A": "anal", "P": "pectoral"}
_FIGURES = re.compile(r"(?<![\w.])(?P<what>LL|GR|P|(?i:pelvic|pectoral))[.:]?\s?(?:I\s?,\s?)?"
                      r"(?P<a>\d{1,3})(?:\s?[-–]\s?(?P<b>\d{1,3}))?(?![\w.%]|\s?(?:mm|cm|in|m|g|kg|lb|oz)\b)")
"""Counts written short beside a formula ("LL 56", "P 12", "pelvic I,3")."""
_RAY_FIGURES = re.compile(
    r"(?<![\w.])(?P<what>D|A)[.:]?\s?(?P<a>\d{1,2})(?:\s?[-–]\s?(?P<b>\d{1,2}))?(?=\s*(?:[,;.)]|$|(?:D|A|P|GR|LL)\b))")
"""Soft rays written short ("D 12, A 29")."""
_FIGURED = {"d": "dorsal soft rays", "a": "anal soft rays", "ll": "lateral line scales", "gr": "gill rakers",
            "p": "pectoral rays", "pelvic": "pelvic rays", "pectoral": "pectoral rays"}


class _Number(NamedTuple):
    """A number (or range) of the line at a content position."""

    low: int
    high: int
    at: int
    last: int


def read_formula(text: str, lexicon: Lexicon) -> tuple[tuple[Seen, ...], tuple[tuple[int, int], ...]]:
    """Counts written as a fin formula, spines in roman and soft rays in arabic figures, and where they stand."""
    seen: list[Seen] = []
    spans: list[tuple[int, int]] = []
    for m in _FORMULA.finditer(text):
        low = roman(m["a"])
        last = m["b"] or (m["second"] if low <= MOST_ANAL else "")
        high = roman(last) if last else low
        fin = lexicon.head(m["fin"].lower()) or _FINS[m["fin"][0].upper()]
        spines = _named_count(f"{fin} spines", lexicon)
        if not spines or not 0 < low <= high:
            continue
        seen.append(_made(spines, low, high, m.group(), m.start(), m.end()))
        rays = _named_count(f"{fin} soft rays", lexicon)
        if m["c"] and rays:
            seen.append(_made(rays, int(m["c"]), int(m["d"] or m["c"]), m.group(), m.start(), m.end()))
        spans.append(m.span())
    for m in _ROMAN_SPINES.finditer(text):
        spines = _named_count(f"{m['fin']} spines", lexicon)
        low = roman(m["a"])
        if spines and 0 < low <= (high := roman(m["b"]) if m["b"] else low):
            seen.append(_made(spines, low, high, m.group(), m.start(), m.end()))
            spans.append(m.span())
    for m in _FORMULA_BEHIND.finditer(text):
        spines = _named_count(f"{_FINS[m['fin'][0].upper()]} spines", lexicon)
        if spines and roman(m["a"]) and not any(a < m.end() and m.start() < b for a, b in spans):
            seen.append(_made(spines, roman(m["a"]), roman(m["a"]), m.group(), m.start(), m.end()))
            spans.append(m.span())
    short = [m for m in _RAY_FIGURES.finditer(text) if m["what"] == "D" or _RAY_FIGURES.search(text[: m.start()])]
    for m in (*_FIGURES.finditer(text), *short):
        counted = _named_count(_FIGURED[m["what"].lower()], lexicon)
        low, high = int(m["a"]), int(m["b"] or m["a"])
        apart = not any(a < m.end() and m.start() < b for a, b in spans)
        if counted and apart and plausible(counted, low, high, lexicon):
            seen.append(_made(counted, low, high, m.group(), m.start(), m.end()))
            spans.append(m.span())
    return tuple(seen), tuple(spans)


def roman(text: str) -> int:
    """A roman figure up to some dozens; 0 when it is none.

    >>> roman("XI"), roman("IV"), roman("IX")
    (11, 4, 9)
    """
    total = 0
    values = [_ROMAN.get(c, 0) for c in text.lower()]
    for i, value in enumerate(values):
        total += -value if i + 1 < len(values) and value < values[i + 1] else value
    return total


def _named_count(phrase: str, lexicon: Lexicon) -> str:
    for kind, thing, _ in lexicon.spoken(phrase):
        if kind == "character" and lexicon.kb.character(thing).kind == "count":
            return thing
    return ""


def _made(
    character: str, low: int, high: int, words: str, start: int, end: int, hedged: bool = False, seen: bool = True
) -> Seen:
    observation = Observation(
        character, value=float(low), value_high=float(high) if high != low else None, hedged=hedged, seen=seen
    )
    return Seen(observation, words, start, end)


STATED = 3.0
"""How strongly a number is read as the state that tells it, above the bare name of the thing counted."""


SINGLE = frozenset({stem("spine"), stem("ray")})
"""What a "one" right before it counts on the part named behind ("one spine in the anal fin")."""


def count_claims(line: Line, text: str) -> list[Claim]:
    """Numbers with what they count, as readings that compete with those of states."""
    parts = [h for h in line.hits if h.phrase.kind == "character" and _on_fish(h, line.lexicon)]
    counted = [h for h in parts if _countable(h, line.lexicon)]
    asked = sorted(c for c in line.talk.expected if line.lexicon.kb.character(c).kind == "count")
    out: list[Claim] = []
    for number in _numbers(line.tokens, line.content, text):
        if _of_fishes(number, line):
            continue
        single = line.tokens[line.content[number.at].first].word == "one"
        near = [h for h in counted if h.first == number.at + 1] if single else counted
        if any(h.phrase.kind == "state" and {number.at, number.last + 1} <= set(h.at) for h in line.hits):
            near = [h for h in near if line.content[h.first].clause == line.content[number.at].clause]
        after = line.content[number.last + 1].stem if number.last + 1 < len(line.content) else ""
        told = () if single and after not in SINGLE else parts
        best = _again(number, out, line) or _counted_by(number, near, told, line.content, line.lexicon)
        best = best or _rays_behind(number, out, line) or _noun_before(number, line)
        if not best and len(asked) == 1:
            best = _Counted(asked[0], (), 1.0)
        if best:
            at = tuple(range(number.at, number.last + 1))
            denied = number.at in line.scopes.denied
            out.append(
                Claim("", best.character, at, best.at, 1.0 + best.score, denied, False, (number.low, number.high))
            )
        elif stated := _number_stated(number, line):
            out.append(stated)
    return out


_FISH = frozenset({"fish-word", "fishy"})


def _of_fishes(number: _Number, line: Line) -> bool:
    """True for a number of fishes, not of parts ("name five fishes with whiskers", "three sunfishes with red ears")."""
    behind = line.content[number.last].last + 1
    if behind >= len(line.tokens) or line.tokens[behind].clause != line.tokens[behind - 1].clause:
        return False
    word = line.tokens[behind].word
    groups = word.endswith("s") and any(
        e[0] in ("taxon", "group") and e[2] != "ambiguous" for e in line.lexicon.spoken(word))
    return bool(_FISH & set(line.lexicon.cues(word))) or (groups and not line.lexicon.is_part(word))


def _number_stated(number: _Number, line: Line) -> Claim | None:
    """ "Whiskers, I count 8": a number that ends its clause, of a thing named before whose number is told by states."""
    content, kb = line.content, line.lexicon.kb
    clause = content[number.at].clause
    behind = content[number.last + 1 :]
    if number.low != number.high or (behind and behind[0].clause == clause):
        return None
    before = [h for h in line.hits if h.phrase.kind == "state" and h.last < number.at
              and clause - content[h.last].clause <= 1]
    for hit in sorted(before, key=lambda h: -h.last):
        told = str(number.low)
        finer = [s for s in kb.states(hit.phrase.character) if s.broader == hit.phrase.id and told in s.values]
        if len(finer) == 1:
            at = tuple(range(number.at, number.last + 1))
            return Claim(finer[0].id, hit.phrase.character, at, hit.at, STATED, number.at in line.scopes.denied, False)
    return None


def _again(number: _Number, before: Sequence[Claim], line: Line) -> _Counted | None:
    """ "Six spines on the bottom fin, eleven on top": the noun of the count before, at the place said with this one."""
    if not before:
        return None
    content, lexicon = line.content, line.lexicon
    clause = content[number.at].clause
    last = next((c for c in reversed(before) if content[c.at[-1]].clause < clause), None)
    here = {c.stem: at for at, c in enumerate(content) if c.clause == clause and not number.at <= at <= number.last}
    if last is None and content[before[-1].at[-1]].clause == clause:
        last = before[-1]
        behind = range(number.last + 1, min(number.last + 1 + REACH, len(content)))
        here = {content[at].stem: at for at in behind if content[at].clause == clause}
        if lexicon.counted(last.character) in here:
            return None
    if last is None or not here or len(here) > REACH:
        return None
    noun = lexicon.counted(last.character)
    if (lexicon.count_nouns - {noun, FIN}) & here.keys():
        return None
    found = [
        (len(set(p.stems) & here.keys()), p.id)
        for anchor in (*sorted(here), noun)
        for p in lexicon.phrases(anchor)
        if p.kind == "character" and noun in p.stems and {noun} < set(p.stems) <= {noun, *here}
    ]
    for _, character in sorted(found, reverse=True):
        kind = lexicon.kb.character(character)
        if kind.kind == "count" and kind.use == "identify" and plausible(character, number.low, number.high, lexicon):
            return _Counted(character, tuple(sorted(here.values())), 1.0)
    return None


def _noun_before(number: _Number, line: Line) -> _Counted | None:
    """ "Small scales, 48 in the line": the noun of the clause before, and the place said with the number."""
    content, lexicon = line.content, line.lexicon
    clause = content[number.at].clause
    here = {c.stem: at for at, c in enumerate(content) if c.clause == clause and not number.at <= at <= number.last}
    nouns = [c.stem for c in content if c.clause == clause - 1 and c.stem in lexicon.count_nouns]
    if not nouns or not 0 < len(here) <= REACH:
        return None
    found = [p.id for anchor in (*sorted(here), nouns[-1]) for p in lexicon.phrases(anchor)
             if p.kind == "character" and nouns[-1] in p.stems and {nouns[-1]} < set(p.stems) <= {nouns[-1], *here}]
    for character in sorted(set(found)):
        kind = lexicon.kb.character(character)
        if kind.kind == "count" and kind.use == "identify" and plausible(character, number.low, number.high, lexicon):
            return _Counted(character, tuple(sorted(here.values())), 0.6)
    return None


def _rays_behind(number: _Number, before: Sequence[Claim], line: Line) -> _Counted | None:
    """ "Ten spines, eleven rays": the soft rays of the fin whose spines were counted just before."""
    after, content = number.last + 1, line.content
    if not before or after >= len(content) or number.at - max(before[-1].at + before[-1].support) > REACH:
        return None
    fin = line.lexicon.kb.character(before[-1].character).trade.partition(" ")[0]
    rays = _named_count(f"{fin} soft rays", line.lexicon)
    if not rays or rays == before[-1].character or content[after].stem != line.lexicon.counted(rays):
        return None
    return _Counted(rays, (after,), 0.8) if plausible(rays, number.low, number.high, line.lexicon) else None


def _itself_counted(number: _Number, hit: Hit, content: Sequence[Content]) -> bool:
    """True for a part that is itself what is counted ("two heads", "three dorsal fins"): nothing is counted on it."""
    return hit.first == number.last + 1 and content[hit.last].plural


def _counts_marks(number: _Number, content: Sequence[Content]) -> bool:
    """True where marks stand behind a number, which are what is counted ("12 even blotches back to the tail")."""
    behind = content[number.last + 1 : number.last + 2 + REACH]
    return any(c.stem in _MARKS for c in behind if c.clause == content[number.at].clause)


_MARKS = frozenset(map(stem, ("spot", "blotch", "saddle", "mark", "streak", "speck", "patch", "strip")))


def _nouns_behind(
    number: _Number, parts: Sequence[Hit], content: Sequence[Content], lexicon: Lexicon
) -> frozenset[str]:
    """The nouns behind a number that name what is counted, words for its part between ("99 dorsal spines").

    A part that is named in several words ("the fin behind the vent") is where, not what is counted.
    """
    place = {p for h in parts if len(h.at) > 1 for p in h.at}
    after = range(number.last + 1, min(number.last + 2 + REACH, len(content)))
    own = content[number.at].clause
    return frozenset(content[p].stem for p in after
                     if p not in place and content[p].clause == own and content[p].stem in lexicon.count_nouns)


def _on_fish(hit: Hit, lexicon: Lexicon) -> bool:
    return lexicon.on_fish(hit.phrase.id) and not set(hit.phrase.stems) <= ORDERED


def _countable(hit: Hit, lexicon: Lexicon) -> bool:
    """True for words that name what is counted on a fish to tell it."""
    found = lexicon.kb.character(hit.phrase.id)
    return found.kind == "count" and found.use == "identify"


def _numbers(tokens: Sequence[Token], content: Sequence[Content], text: str) -> list[_Number]:
    out: list[_Number] = []
    at = 0
    while at < len(content):
        if content[at].stem.isdigit() and len(content[at].stem) < 4 and not counts_nothing(
                tokens, content[at].first, content[at].last, text):
            low = int(content[at].stem)
            if ones := _ones(tokens, content, at):
                out.append(_Number(low + ones, low + ones, at, at + 1))
                at += 2
                continue
            last = _end_of_range(tokens, content, text, at)
            if last:
                out.append(_Number(low, int(content[last].stem), at, last))
                at = last + 1
                continue
            out.append(_Number(low, low, at, at))
        at += 1
    return out


def _ones(tokens: Sequence[Token], content: Sequence[Content], at: int) -> int:
    """The ones of a number in two words ("thirty-three"); 0 where there are none."""
    if at + 1 >= len(content) or int(content[at].stem) not in range(20, 100, 10):
        return 0
    spelt = tokens[content[at].last].word.isalpha() and tokens[content[at + 1].first].word.isalpha()
    ones = content[at + 1].stem
    beside = content[at + 1].first == content[at].last + 1 and content[at + 1].clause == content[at].clause
    return int(ones) if spelt and beside and len(ones) == 1 and ones.isdigit() else 0


def _end_of_range(tokens: Sequence[Token], content: Sequence[Content], text: str, at: int) -> int:
    """Where the larger number of "10 or 11", "5 maybe 6" stands; 0 when the number stands alone."""
    for last in range(at + 1, min(at + 2 + REACH, len(content))):
        stem = content[last].stem
        if stem.isdigit() and len(stem) < 4 and int(stem) > int(content[at].stem):
            gap = text[tokens[content[at].last].end : tokens[content[last].first].start]
            if gap.strip(" ,") and _RANGE.fullmatch(gap):
                return last
    return 0


class _Counted(NamedTuple):
    """What a number may count: the character, the words for it, how good the reading is."""

    character: str
    at: tuple[int, ...]
    score: float


def _counted_by(
    number: _Number, counted: Sequence[Hit], parts: Sequence[Hit], content: Sequence[Content], lexicon: Lexicon
) -> _Counted | None:
    scored = []
    after = number.last + 1
    before = [h for h in counted if h.last == number.at - 1 and content[h.first].clause == content[number.at].clause]
    listed = before and any(h.first == after and _numbered(h, content) for h in counted)
    counted = before if listed else _of_noun(number, counted, content, lexicon)
    behind = [h for h in counted if after in h.at and content[after].clause == content[number.at].clause
              and h.last - h.first + 1 - len(set(h.at)) <= (h.first < number.at)]
    for hit in behind or counted:
        value = _nearness(number, hit, content)
        if value is not None and plausible(hit.phrase.id, number.low, number.high, lexicon):
            uses = 0.08 * math.log1p(lexicon.gist(hit.phrase.id)[0])
            scored.append((value + uses, hit.phrase.id, hit.at))
    named = None if behind or not parts else _by_shared_noun(number, content, lexicon)
    if named:
        return named
    if scored:
        score, character, at = max(scored)
        return _Counted(character, at, score)
    nouns = _nouns_behind(number, parts, content, lexicon)
    for hit in sorted(parts, key=lambda h: (-len(h.at), h.first, h.phrase.id)):
        if content[hit.first].clause != content[number.at].clause or _gap(number, hit) > 1:
            continue
        if not nouns and (_itself_counted(number, hit, content) or _counts_marks(number, content)):
            return None
        character = count_of_part(lexicon.kb.character(hit.phrase.id).part, number.low, number.high, lexicon)
        if character and (not nouns or lexicon.counted(character) in nouns):
            return _Counted(character, hit.at, 0.4)
    return _of_fin_before(number, parts, content, lexicon)


def _numbered(hit: Hit, content: Sequence[Content]) -> bool:
    """True for what is counted with its number right behind it ("rakers 15 caeca 60")."""
    at = hit.last + 1
    return at < len(content) and content[at].stem.isdigit() and content[at].clause == content[hit.first].clause


def _of_fin_before(
    number: _Number, parts: Sequence[Hit], content: Sequence[Content], lexicon: Lexicon
) -> _Counted | None:
    """ "Bottom fin cut straight, counted 33 rays": the noun behind the number, and the fin of the clause before."""
    own, after = content[number.at].clause, number.last + 1
    noun = content[after].stem if after < len(content) and content[after].clause == own else ""
    if noun not in lexicon.count_nouns:
        return None
    for hit in sorted(parts, key=lambda h: (-len(h.at), h.first, h.phrase.id)):
        if content[hit.first].clause != own - 1:
            continue
        character = count_of_part(lexicon.kb.character(hit.phrase.id).part, number.low, number.high, lexicon)
        if character and lexicon.counted(character) == noun:
            return _Counted(character, (after,), 0.4)
    return None


def _of_noun(
    number: _Number, counted: Sequence[Hit], content: Sequence[Content], lexicon: Lexicon
) -> Sequence[Hit]:
    """The words for what is counted that agree with the noun right behind the number ("ten spines" are no rays)."""
    after = number.last + 1
    if after >= len(content) or content[after].clause != content[number.at].clause:
        return counted
    noun = content[after].stem
    return [h for h in counted if lexicon.counted(h.phrase.id) == noun] if noun in lexicon.count_nouns else counted


def _by_shared_noun(number: _Number, content: Sequence[Content], lexicon: Lexicon) -> _Counted | None:
    """ "Anal fin with 3 spines and 10 rays", "14 rays in a round pectoral": the noun behind the number, and the fin
    named elsewhere in the clause, rather before it than behind.
    """
    if number.last + 1 >= len(content) or content[number.last + 1].clause != content[number.at].clause:
        return None
    noun = content[number.last + 1].stem
    own = content[number.at].clause
    earlier = {c.stem: at for at, c in enumerate(content[: number.at]) if c.clause == own}
    earlier = earlier or {c.stem: at for at, c in enumerate(content) if at > number.last + 1 and c.clause == own}
    found = []
    for character in lexicon.kb.characters:
        if character.kind != "count" or not plausible(character.id, number.low, number.high, lexicon):
            continue
        stems = [s.text for s in lexicon.stems(key(character.trade).split())]
        common = [earlier[s] for s in stems[:-1] if s in earlier and s != FIN]
        if stems[-1:] == [noun] and common:
            found.append((len(common), max(common), character.id))
    return _Counted(max(found)[2], (max(found)[1], number.last + 1), 0.8) if found else None


def _nearness(number: _Number, hit: Hit, content: Sequence[Content]) -> float | None:
    back = content[number.at].clause - content[hit.first].clause
    gap = _gap(number, hit)
    if back == 0 and gap <= 4:
        return 1.1 * len(hit.at) - 0.25 * gap - 0.2 * (hit.first < number.at)
    behind = content[min(hit.last + 1, number.at)]
    own_number = behind.stem.isdigit() and behind.clause == content[hit.first].clause
    if back == 1 and gap <= 2 and not own_number:
        return 1.1 * len(hit.at) - 0.8 - 0.25 * gap
    return None


def _gap(number: _Number, hit: Hit) -> int:
    """Words between a number and what it counts, and inside the words for it."""
    inside = hit.last - hit.first + 1 - len(set(hit.at)) - (hit.first < number.at < hit.last)
    return max(number.at - hit.last, hit.first - number.last, 1) - 1 + inside


def plausible(character: str, low: int, high: int, lexicon: Lexicon) -> bool:
    """True when fishes of the base have about that many."""
    _, least, most = lexicon.gist(character)
    if least is None or most is None:
        return False
    return least * (1 - MARGIN) - 1 <= low and high <= most * (1 + MARGIN) + 1


def count_of_part(part: str, low: int, high: int, lexicon: Lexicon) -> str:
    """The count made on a part of the body whose range is the narrowest that holds the number; empty when none does."""
    found = []
    for character in lexicon.kb.characters:
        if (
            character.kind == "count"
            and character.use == "identify"
            and character.part == part
            and plausible(character.id, low, high, lexicon)
        ):
            _, least, most = lexicon.gist(character.id)
            inside = least is not None and most is not None and least <= low and high <= most
            found.append((not inside, (most or 0) - (least or 0), character.id))
    return min(found)[2] if found else ""
