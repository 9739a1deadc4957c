"""Where phrases of characters and states stand in a line, before anything is decided between them (layer 4)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Set
from itertools import pairwise
from typing import NamedTuple

from assistant.dialogue.reader.as_meant import heard, says_nothing
from assistant.dialogue.reader.lexicon import Lexicon, Phrase
from assistant.dialogue.reader.tokens import Token
from assistant.model.spelling import distance
from assistant.model.stems import DROPPED, NEGATORS, stem
from assistant.text import word_set


class Content(NamedTuple):
    """A word that carries meaning: its stem, the tokens it stands for, its clause."""

    stem: str
    first: int
    last: int
    clause: int
    plural: bool = False


class Hit(NamedTuple):
    """A phrase found at some positions of the content."""

    phrase: Phrase
    at: tuple[int, ...]

    @property
    def first(self) -> int:
        """Its first position."""
        return min(self.at)

    @property
    def last(self) -> int:
        """Its last position."""
        return max(self.at)


def content_of(tokens: Sequence[Token], masked: frozenset[int], lexicon: Lexicon) -> tuple[Content, ...]:
    """The meaningful words of a line outside the masked tokens, misspelt ones mended."""
    kept = [
        i
        for i, t in enumerate(tokens)
        if i not in masked
        and t.word not in DROPPED
        and t.word not in NEGATORS
        and not says_nothing(tokens, i, lexicon)
    ]
    words = [_mended(heard(tokens, i, lexicon), lexicon) for i in kept]
    out = []
    for run in _runs(kept, tokens):
        for s in lexicon.stems(words[a] for a in run):
            first, last = kept[run[s.first]], kept[run[s.last]]
            out.append(Content(s.text, first, last, tokens[first].clause, s.plural))
    return tuple(out)


def _mended(word: str, lexicon: Lexicon) -> str:
    if len(word) < 5 or lexicon.known(word) or lexicon.cues(word) or lexicon.count(stem(word)):
        return word
    choices = [
        w
        for w in lexicon.mend(word)
        if w[0] == word[0] and distance(w, word, 2) < 2 and lexicon.count(stem(lexicon.head(w) or w))
    ]
    return max(choices, key=lambda w: (lexicon.count(stem(w)), w)) if choices else word


def _runs(kept: Sequence[int], tokens: Sequence[Token]) -> Iterator[list[int]]:
    """Stretches of kept tokens (as places in ``kept``) within one clause."""
    run: list[int] = []
    for place, token in enumerate(kept):
        if run and tokens[token].clause != tokens[kept[run[-1]]].clause:
            yield run
            run = []
        run.append(place)
    if run:
        yield run


def spot(content: Sequence[Content], lexicon: Lexicon) -> tuple[Hit, ...]:
    """Every phrase whose stems stand close together in one clause."""
    places: dict[str, dict[int, list[int]]] = {}
    for at, word in enumerate(content):
        places.setdefault(word.stem, {}).setdefault(word.clause, []).append(at)
    hits: list[Hit] = []
    for anchor in sorted(places):
        for phrase in lexicon.phrases(anchor):
            if all(s in places for s in phrase.stems):
                hits.extend(_placed(phrase, anchor, places))
    parts = {h.at[0] for h in hits if h.phrase.kind == "character" and len(h.at) == 1}
    for phrase in {p for anchor in places for p in lexicon.phrases(anchor)}:
        if phrase.kind == "state" and len(phrase.stems) == PAIRED and set(phrase.stems) <= places.keys():
            hits.extend(_over_a_comma(phrase, content, parts))
    return tuple(hits)


PAIRED = 4
"""Words of a phrase that pairs two parts with two qualities ("red body green head"), which a comma may cut in two."""


def _over_a_comma(phrase: Phrase, content: Sequence[Content], parts: Set[int]) -> Iterator[Hit]:
    """The phrase where a part with its quality stands on both sides of a comma ("red body, green head")."""
    for ahead in sorted({c.clause for c in content}):
        halves = [[p for p, c in enumerate(content) if c.clause == n] for n in (ahead, ahead + 1)]
        own = tuple(p for half in halves for p in half)
        if (all(len(half) == PAIRED // 2 and parts & set(half) for half in halves)
                and {content[p].stem for p in own} == set(phrase.stems)):
            yield Hit(phrase, own)


def _placed(phrase: Phrase, anchor: str, places: dict[str, dict[int, list[int]]]) -> Iterator[Hit]:
    """The phrase where its stems stand close together in one clause, nearest to each place of the anchor."""
    seen: set[tuple[int, ...]] = set()
    for clause, anchors in places[anchor].items():
        if any(clause not in places[s] for s in phrase.stems):
            continue
        for start in anchors:
            at: list[int] = []
            for wanted in phrase.stems:
                near = places[wanted][clause]
                free = [p for p in near if p not in at]
                if not free:
                    break
                floor = at[-1] if phrase.ordered and at else -1
                at.append(min(free, key=lambda p: (p <= floor, abs(p - start), p)))
            if len(at) == len(phrase.stems) and _close(phrase, at) and tuple(at) not in seen:
                seen.add(tuple(at))
                yield Hit(phrase, tuple(at))


def undivided(
    hits: Sequence[Hit], content: Sequence[Content], tokens: Sequence[Token], lexicon: Lexicon
) -> tuple[Hit, ...]:
    """The hits without those cut in two: by "not a" ("a band, not a dot") or an opposite size ("small big-headed")."""
    kept = (h for h in hits if (not _rearward(h, content, tokens) if len(h.at) < 2
                                else not _divided(h, content, tokens, lexicon)))
    return tuple(h for h in kept if not _of_another_part(h, content, tokens, lexicon))


def _rearward(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for a lone "back" that tells where to or how far, not what part ("trails way back")."""
    at = content[hit.first].first
    before = tokens[at - 1].word if at else ""
    after = tokens[at + 1].word if at + 1 < len(tokens) else ""
    return tokens[at].word == "back" and (before in _FAR or after in _TOWARD)


_FAR = word_set(
    "way halfway half far further farther midway partway trails trailing trail fanning fans runs running run stretches "
    "sweeping sweeps swept reaches reaching reach goes going go well slanting pointing pointed bent folded laid sits "
    "set put throw threw toss tossed came come straight clear clean all")
_TOWARD = word_set("from toward towards past to into")


def _of_another_part(
    hit: Hit, content: Sequence[Content], tokens: Sequence[Token], lexicon: Lexicon
) -> bool:
    """True for the build of a whole fish right behind "the ear is a" ("the ear is long and skinny")."""
    found = lexicon.kb.find("character", hit.phrase.id.partition(".")[0])
    if hit.phrase.kind != "state" or found is None or found.part != WHOLE:
        return False
    first = content[hit.first].first
    at = first - 1
    while at > 0 and tokens[at].word in _LEADING:
        at -= 1
    return (0 < at < first and tokens[at].word in _IS and tokens[at].clause == tokens[first].clause
            and lexicon.names_part(tokens[at - 1].word) and tokens[at - 1].word not in _BODY)


WHOLE = "whole-fish"
_LEADING = word_set("a an the very so really kinda pretty quite all real super just")
_IS = word_set("is was are were looks looked")
_BODY = word_set("body fish shape build sides back")


def _said_anew(
    a: int, b: int, tokens: Sequence[Token], content: Sequence[Content], lexicon: Lexicon
) -> bool:
    """True for a part, or a colour, that "and the" holds apart from a part ("no bars and the tail is forked" tells of
    no bars on the tail, "chin blue and the breast ..." of no blue breast).
    """
    gap = [t.word for t in tokens[content[a].last + 1 : content[b].first]]
    first, second = tokens[content[a].last].word, tokens[content[b].first].word
    anew = gap[:1] == ["and"] and bool({"the", "its"} & set(gap[1:])) and lexicon.is_part(second)
    return anew and (lexicon.is_part(first) or lexicon.head(first) in lexicon.tints)


def _told_already(
    a: int, b: int, hit: Hit, tokens: Sequence[Token], content: Sequence[Content], lexicon: Lexicon
) -> bool:
    """True for a part that has a quality of its own before the "and" ("a forked tail and spots": none on the tail)."""
    before = a - 1
    if before < 0 or before in hit.at or content[before].clause != content[a].clause:
        return False
    gap = [t.word for t in tokens[content[a].last + 1 : content[b].first]]
    own = content[before].last + 1 == content[a].first and not lexicon.is_part(tokens[content[before].last].word)
    return own and bool(gap) and gap[0] in _AND and lexicon.is_part(tokens[content[a].last].word)


_AND = word_set("and n plus")
_WITH = word_set("with w")


def _of_the_fish(
    a: int, b: int, tokens: Sequence[Token], content: Sequence[Content], lexicon: Lexicon
) -> bool:
    """True for a quality before "with a" and a part after it ("a little scrapper with a mouth": the fish is little)."""
    gap = [t.word for t in tokens[content[a].last + 1 : content[b].first]]
    if _WITH & set(gap) and any("fish-word" in lexicon.cues(w) for w in gap):
        return True
    word = tokens[content[a].last].word
    mark = any(map(lexicon.is_part, (word, f"{word}s", f"{word}es")))
    return any(x in _WITH and y in ("a", "an") for x, y in pairwise(gap)) and not mark


def _of_what_it_has(
    a: int, b: int, tokens: Sequence[Token], content: Sequence[Content], lexicon: Lexicon
) -> bool:
    """True for a part before "with a" and a size after it ("black ear with a tiny red dot": the dot is tiny)."""
    gap = [t.word for t in tokens[content[a].last + 1 : content[b].first]]
    held = any(x in _WITH and y in ("a", "an") for x, y in pairwise(gap))
    return held and lexicon.is_part(tokens[content[a].last].word) and bool(_sizes(content[b], tokens, lexicon))


_SIZES = ("size-small", "size-large")


def _divided(hit: Hit, content: Sequence[Content], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    words = [t.word for t in tokens[content[hit.first].first : content[hit.last].last + 1]]
    if hit.phrase.kind == "character" and NEGATORS & set(words):
        return True
    if any(a in ("not", "isnt", "wasnt") and b in ("a", "an", "the") for a, b in pairwise(words)):
        return True
    if any(_of_the_fish(a, b, tokens, content, lexicon) or _of_what_it_has(a, b, tokens, content, lexicon)
           for a, b in pairwise(sorted(hit.at))):
        return True
    if any(_said_anew(a, b, tokens, content, lexicon) for a, b in pairwise(sorted(hit.at))):
        return True
    if hit.phrase.id.split("-")[0] in _ON_BACK and _back_of(hit, content, tokens):
        return True
    if any(_told_already(a, b, hit, tokens, content, lexicon) for a, b in pairwise(sorted(hit.at))):
        return True
    own = {size for p in hit.at for size in _sizes(content[p], tokens, lexicon)}
    between = (p for p in range(hit.first + 1, hit.last) if p not in hit.at)
    other = {size for p in between for size in _sizes(content[p], tokens, lexicon)}
    return bool(own and other and not own & other)


_ON_BACK = word_set("back nape")


def _back_of(hit: Hit, content: Sequence[Content], tokens: Sequence[Token]) -> bool:
    """True for the "back" of something, or its back half, which is not the back of the fish."""
    for p in hit.at:
        at = content[p].first
        after = tokens[at + 1].word if at + 1 < len(tokens) and tokens[at + 1].clause == tokens[at].clause else ""
        if tokens[at].word == "back" and after in _OF_IT:
            return True
    return False


_OF_IT = word_set("of half part end edge third corner to from toward towards")


def _sizes(word: Content, tokens: Sequence[Token], lexicon: Lexicon) -> set[str]:
    said = {c for t in tokens[word.first : word.last + 1] for c in lexicon.cues(t.word)}
    return said & set(_SIZES)


def _close(phrase: Phrase, at: Sequence[int]) -> bool:
    if phrase.ordered and list(at) != sorted(at):
        return False
    slack = 0 if len(phrase.stems) == 1 else 1 if len(phrase.stems) == 2 else 2
    return max(at) - min(at) < len(set(phrase.stems)) + slack
