"""What a "no", a "maybe" or an "at least" in a line reaches (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.spotting import Content
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import NEGATORS, ORDERED
from assistant.text import word_set

_AFTER = word_set("missing absent none lacking zero nope no nada")
"""Denials that may stand behind what they deny ("spots none")."""
_STOPS = word_set(
    "but just only though although except with w has had have instead rather yes then is are was its it theres there "
    "got")
_ALSO = word_set("or nor neither and n")
REACH = 2
"""Content words between a denial and what it still denies, when no "or" carries it on."""


class Scopes(NamedTuple):
    """Content positions that are denied and those that are hedged, and clauses with a bound."""

    denied: frozenset[int]
    hedged: frozenset[int]
    at_least: frozenset[int]
    at_most: frozenset[int]


def scopes_of(tokens: Sequence[Token], content: Sequence[Content], nouns: frozenset[int], lexicon: Lexicon) -> Scopes:
    """The scopes over the content of a line; ``nouns`` are the positions of words for parts and marks."""
    by_token = {i: at for at, c in enumerate(content) for i in range(c.first, c.last + 1)}
    denied: set[int] = set()
    for i, token in enumerate(tokens):
        if token.word in NEGATORS and not _says_no(tokens, i):
            if _told_absent(i, tokens):
                denied.update(_denied_before(i, tokens, by_token, nouns))
                continue
            denied.update(_denied_after(i, tokens, by_token, nouns))
            if (token.word in _AFTER or _not_there(i, tokens)) and _ends_clause(i + _not_there(i, tokens), tokens):
                denied.update(_denied_before(i, tokens, by_token, nouns))
            elif token.word in _AFTER and i and _alone(i, tokens):
                denied.update(_denied_before(i, tokens, by_token, nouns, tokens[i - 1].clause))
    hedged = _clauses_with(tokens, "hedge", lexicon)
    least = _phrase_clauses(tokens, ("at least", "or more", "or better", "minimum", "or past"))
    most = _phrase_clauses(
        tokens,
        ("at most", "no more than", "not more than", "or less", "or fewer", "no farther than", "no further than"),
    )
    return Scopes(
        frozenset(denied),
        frozenset(a for a, c in enumerate(content) if c.clause in hedged),
        frozenset(a for a, c in enumerate(content) if c.clause in least),
        frozenset(a for a, c in enumerate(content) if c.clause in most),
    )


_DOUBTS = tuple(
    f"{doubt} {word}".split()
    for doubt in (
        "not sure",
        "unsure",
        "dont know",
        "dunno",
        "cant remember",
        "dont remember",
        "cant tell",
        "couldnt tell",
        "no idea",
        "didnt see",
        "didnt notice",
        "didnt check",
    )
    for word in ("if", "whether")
)


def left_open(tokens: Sequence[Token]) -> frozenset[int]:
    """The tokens of what is said not to be known ("not sure if it had spots"), up to the end of the clause, and of what
    another thing stands for ("spots rather than bars on the side").
    """
    out: set[int] = set()
    for i, token in enumerate(tokens):
        if tuple(t.word for t in tokens[i : i + 2]) in _IN_PLACE_OF:
            out.update(_replaced(tokens, i + 2, token.clause))
        for doubt in _DOUBTS:
            if [t.word for t in tokens[i : i + len(doubt)]] == doubt:
                out.update(j for j in range(i, len(tokens)) if tokens[j].clause == token.clause)
    for clause in sorted({t.clause for t in tokens}):
        at = [j for j, t in enumerate(tokens) if t.clause == clause]
        if _UNKNOWN.fullmatch(" ".join(tokens[j].word for j in at)):
            before = [j for j, t in enumerate(tokens) if t.clause == clause - 1]
            out.update(before if len(before) <= MOST_ASKED else ())
        if _LEFT.search(" ".join(tokens[j].word for j in at)):
            out.update(at)
        if (found := _NOT_LOOKED.search(" ".join(tokens[j].word for j in at))) is not None:
            out.update(at[found.string[: found.start()].count(" ") :])
    out.update(_disputed(tokens))
    return frozenset(out)


def _disputed(tokens: Sequence[Token]) -> Iterator[int]:
    """The tokens of what one of those who saw the fish says and another denies."""
    for sentence in sorted({t.sentence for t in tokens}):
        at = [i for i, t in enumerate(tokens) if t.sentence == sentence]
        said, ends = "", []
        for i in at:
            parted = said and tokens[i].clause != tokens[i - 1].clause
            said += ("," if parted else "") + (" " if said else "") + tokens[i].word
            ends.append(len(said))
        if (found := _DISAGREED.search(said)) is not None:
            yield from (i for i, end in zip(at, ends, strict=True) if found.start() < end <= found.end())


MOST_ASKED = 4
"""Words of a part with a question mark that is answered with not having looked ("worm marks? forgot to look")."""
_UNKNOWN = re.compile(
    r"(?:sorry |i |honestly |well )*(?:forgot to (?:look|check|count)|(?:didnt|never|couldnt|wouldnt|cant|dont) "
    r"(?:look|looked|check|checked|count|tell|say|see|know|remember|notice)|"
    r"(?:did|could) not (?:look|check|count|see)|no idea|dunno|not sure|no clue|who knows)"
    r"(?: (?:at (?:it|that|them|those)|it|that|them|there|really|sorry|for sure|honestly|(?:the|its) \w+))*")
_LEFT = re.compile(
    r"\b(?:(?:didnt|never|forgot to) (?:look|looked|check|checked|count)|(?:not|never) (?:looked at|checked|counted|"
    r"noted|recorded|measured|examined|scored|noticed|taken|visible on the \w+)(?: by (?:the )?\w+)?(?: \w+)?)$|"
    r"^(?:whether|if) .*\b(?:(?:could|can|did|do)(?:nt| not)|cannot) (?:agree|say|tell|decide)\b|"
    r"\b(?:not agreed|disagreed?|undecided|in dispute|in doubt|undetermined) ?(?:up)?(?:on|about)?$|"
    r"^(?:(?:they|we|kids|crew|others|children) )?(?:(?:could|did)(?:nt| not)|cannot) agree (?:on|about|if|whether)\b|"
    r"\b(?:not|nt) (?:as|so) \w+(?: \w+){0,5} as (?:the|those of the|that of the) (?:one|other|others|first|second)\b")
"""A clause whose part was not looked at ("tongue didnt look", "barbels not noted"), on which those who saw it do not
agree, or that only compares with another fish ("not as deep as the other")."""
_SAYS = r"(?:says|said|saw|sees|thinks|thought|swears|claims|counted|counts|noted|found)"
_DISAGREED = re.compile(
    rf"\b(?:one|1)(?: \w+){{0,3}}? {_SAYS} [^.;!?]{{2,50}}?(?:,| and| but|;)+ (?:and |but )?(?:the |an|a )?"
    rf"other(?: \w+)? (?:{_SAYS} |did |does |had |has )?(?:none|no|not|nothing|didnt|different|otherwise|\d+)\b"
    rf"[^,.;!?]*|\b(?:my|the|his|her) \w+ {_SAYS} [^.;!?]{{2,60}}?(?:,| and| but)+ (?:and |but )?"
    r"i (?:say|said|saw|count|counted) (?:none|no|not|one|two|three|four|\d+)\b[^,.;!?]*", re.IGNORECASE)
"""Words by which two people have seen different things ("one child says whiskers, the other none")."""
_UNABLE = (
    r"never|did ?nt|did not|could ?nt|could not|cant|cannot|wasnt able to|not able to|unable to|"
    r"too (?:dark|far|fast|quick|small|muddy|murky|slippery) to")
_NOT_LOOKED = re.compile(
    rf"\b(?:{_UNABLE}|forgot to|no time to|failed to)"
    r"(?: (?:really|even|properly|think to|thought to|bother to|stop to|"
    r"(?:get|got|have|had) (?:to|a chance to|time to)))*"
    r" (?:look(?:ed)? (?:at|for)|count|counted|check|checked|inspect|measure|examine|make out|"
    r"(?:get|got) a (?:good |close |proper )?look)\b|"
    rf"(?:{_UNABLE}) see (?:the|its|his|her|how|what|which)\b")
"""Words by which a part was not looked at, so that nothing is told of it ("never got to look at the spines")."""


def _replaced(tokens: Sequence[Token], start: int, clause: int) -> Iterator[int]:
    """The tokens from a place on, up to where the thing is or what is said next."""
    for j in range(start, len(tokens)):
        if tokens[j].clause != clause or tokens[j].word in _PLACING:
            return
        yield j


_IN_PLACE_OF = {("rather", "than"), ("instead", "of"), ("stead", "of")}
_PLACING = word_set("on in at along with and near down across over under behind above below")


_PRONOUNS = word_set(
    "it its they the that thats there theres i im he she his her wait sorry actually this these we my just not"
)


_KNOWING = word_set("know think tell remember care want believe mind trust understand ask recall matter worry")


def _says_no(tokens: Sequence[Token], i: int) -> bool:
    """True for a "no" that answers at the head of a line, or denies only knowing ("dont know which side")."""
    if i + 1 < len(tokens) and tokens[i + 1].word in _KNOWING:
        return True
    if [t.word for t in tokens[i + 1 : i + 2]] in (["further"], ["farther"]) and tokens[i + 2 : i + 3] and (
            tokens[i + 2].word not in ("than", "then")):
        return True
    if i or tokens[0].word not in ("no", "nope", "nah", "naw"):
        return False
    return (
        len(tokens) == 1
        or tokens[1].clause != tokens[0].clause
        or tokens[1].word in _PRONOUNS
        or tokens[0].word != "no"
    )


def _denied_after(i: int, tokens: Sequence[Token], by_token: dict[int, int], nouns: frozenset[int]) -> set[int]:
    """What a denial reaches forward: up to the noun it denies, on over "or", not into what is said next."""
    out: set[int] = set()
    between = 0
    carried = passed = False
    predicate = _of_predicate(tokens, i, by_token)
    clause = tokens[i].clause
    j = i + 1
    while j < len(tokens):
        token = tokens[j]
        if token.clause != clause:
            if token.sentence != tokens[i].sentence or not _listed(tokens, j):
                break
            clause, between = token.clause, 0
        if token.word in _STOPS and between and token.word not in ("it", "its"):
            break
        if token.word in NEGATORS and between:
            break
        if between and token.word in ("and", "n") and (_begins_thing(tokens, j + 1) or _told_behind(tokens, j + 1)):
            break
        if token.word in _ALSO:
            carried = carried or token.word in ("or", "nor", "neither")
            between = 0 if token.word in ("or", "nor", "neither") or carried else between
            passed = passed and not carried
        elif token.word in ORDERED:
            passed = False
            if j in by_token:
                out.add(by_token[j])
        elif j in by_token and by_token[j] not in out:
            noun = by_token[j] in nouns or _many(tokens, j)
            if (passed and (not noun or predicate)) or (between > REACH and not carried) or between > REACH + 2:
                break
            if passed and _many(tokens, j - 1) and not _or_follows(tokens, j):
                break
            out.add(by_token[j])
            between += 1
            passed = passed or noun or predicate
        j += 1
    return out


def _many(tokens: Sequence[Token], j: int) -> bool:
    """True for a plural, which is no part of a longer name of a part ("no scales whiskers", not "no ear flap")."""
    word = tokens[j].word
    return word.endswith("s") and not word.endswith("ss")


def _or_follows(tokens: Sequence[Token], j: int) -> bool:
    """True where an "or" in the clause makes a list of what is denied ("no spots bars or lines")."""
    return any(t.word in ("or", "nor") for t in tokens[j:] if t.clause == tokens[j].clause)


def _begins_thing(tokens: Sequence[Token], j: int) -> bool:
    """True where a word that opens a new statement stands ("no spines and a thread on the back fin")."""
    return j < len(tokens) and tokens[j].word in ("a", "an", "the", "its", "it", "one", "two", "three")


def _told_behind(tokens: Sequence[Token], j: int) -> bool:
    """True where a statement of its own stands behind an "and" ("no spots and the fin runs far back")."""
    words = [t.word for t in tokens[j + 1 : j + 1 + REACH_OF_VERB] if t.clause == tokens[j - 1].clause]
    cut = next((n for n, w in enumerate(words) if w in ("or", "nor", "and")), len(words))
    return bool(_VERBS & set(words[:cut]))


REACH_OF_VERB = 4
"""Words behind the first one after an "and" among which a verb makes a statement of its own."""
_VERBS = word_set("is are was were has have had runs run goes go comes come reaches reach stops ends starts sits looks "
                  "extends extend stands bends")


def _of_predicate(tokens: Sequence[Token], i: int, by_token: dict[int, int]) -> bool:
    """True for a "not" that denies what is said of the noun before it ("tail not forked")."""
    if tokens[i].word not in _NOT or " ".join(t.word for t in tokens[i + 1 : i + 3]).startswith(("one ", "a single")):
        return False
    before = [j for j in range(max(0, i - 2), i) if tokens[j].clause == tokens[i].clause]
    return any(j in by_token for j in before)


_NOT = word_set("not isnt arent wasnt werent aint")


def _listed(tokens: Sequence[Token], j: int) -> bool:
    """True when the clause that begins at a token goes on with a list that an "or" closes ("bars, spots or lines")."""
    sentence = tokens[j].sentence
    words: list[str] = []
    for token in tokens[j:]:
        if token.sentence != sentence or len(words) > 6:
            break
        if token.word in NEGATORS or token.word in _STOPS:
            return False
        words.append(token.word)
        if token.word in ("or", "nor"):
            return True
    return False


def _told_absent(i: int, tokens: Sequence[Token]) -> bool:
    """True for "is absent", which reaches back alone ("palatine teeth are absent and the cheek is scaled")."""
    return tokens[i].word == "absent" and bool(i) and tokens[i - 1].word in _IS and (
        tokens[i - 1].clause == tokens[i].clause)


_IS = word_set("is are was were be")


def _not_there(i: int, tokens: Sequence[Token]) -> bool:
    """True for "not there", "not present" behind what is denied."""
    after = tokens[i + 1] if i + 1 < len(tokens) else None
    return bool(i) and tokens[i].word in _NOT and after is not None and after.word in _THERE and (
        after.clause == tokens[i].clause)


_THERE = word_set("there present seen visible")


def _alone(i: int, tokens: Sequence[Token]) -> bool:
    """True for a denial that is all of its clause, right behind a short one in its sentence ("adipose: none")."""
    own = [t for t in tokens if t.clause == tokens[i].clause]
    before = [t for t in tokens if t.clause == tokens[i - 1].clause]
    return len(own) == 1 and tokens[i - 1].sentence == tokens[i].sentence and len(before) <= REACH + 1 and not any(
        t.word in NEGATORS for t in before)


_AND = word_set("and n but while")


def _denied_before(
    i: int, tokens: Sequence[Token], by_token: dict[int, int], nouns: frozenset[int], clause: int | None = None
) -> set[int]:
    """What a denial reaches back to; not what is told in full before an "and" ("tail forked and adipose absent")."""
    out: set[int] = set()
    clause = tokens[i].clause if clause is None else clause
    for j in range(i - 1, -1, -1):
        if tokens[j].clause != clause or len(out) > REACH or tokens[j].word in NEGATORS:
            break
        if tokens[j].word in _AND and j and j - 1 in by_token and by_token[j - 1] not in nouns:
            break
        if j in by_token:
            out.add(by_token[j])
    return out


def _ends_clause(i: int, tokens: Sequence[Token]) -> bool:
    return (
        i > 0
        and tokens[i - 1].clause == tokens[i].clause
        and (i + 1 == len(tokens) or tokens[i + 1].clause != tokens[i].clause)
    )


def _clauses_with(tokens: Sequence[Token], cue: str, lexicon: Lexicon) -> set[int]:
    found: set[int] = set()
    for size in (5, 4, 3, 2, 1):
        for i in range(len(tokens) - size + 1):
            if cue in lexicon.cues(" ".join(t.word for t in tokens[i : i + size])):
                found.add(tokens[i].clause)
    return found


def _phrase_clauses(tokens: Sequence[Token], phrases: Sequence[str]) -> set[int]:
    wanted = [p.split() for p in phrases]
    return {
        tokens[i].clause for i in range(len(tokens)) for p in wanted if [t.word for t in tokens[i : i + len(p)]] == p
    }
