"""States, provinces, regions and waters in typed text (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.reader.tokens import Token
from assistant.text import key, unique, word_set

LONGEST = 5
_BEFORE = word_set(
    "in from of near at around across throughout for outside inside to within on off by outta down up "
    "north south east west northern southern eastern western central here"
)
_NEVER_PLACES = word_set("it him")
"""Codes that in small letters are pronouns ("would they live in it")."""
_LEAD = word_set("lake river creek pond reservoir bayou canal slough flowage marsh bay")
_AREAS = word_set("state province country region landscape territory district drainage")
_DIRECTIONS = word_set("north south east west northeast northwest southeast southwest")
_STATES = word_set("state province territory")
Span = tuple[int, int]


class Where(NamedTuple):
    """Places named, a water, a name beside a word for a water that is not known, and the mentions."""

    places: tuple[str, ...] = ()
    water: str | None = None
    unknown: str = ""
    mentions: tuple[Mention, ...] = ()


def read_where(tokens: Sequence[Token], lexicon: Lexicon, taken: Sequence[Span]) -> Where:
    """The places of a line; stretches in ``taken`` (token positions) belong to names of fishes."""
    mentions: list[Mention] = []
    covered = {i for a, b in taken for i in range(a, b)}
    shouting = _shouting(tokens)
    at = 0
    while at < len(tokens):
        step = 1
        for size in range(min(LONGEST, len(tokens) - at), 0, -1):
            if covered & set(range(at, at + size)) or tokens[at].clause != tokens[at + size - 1].clause:
                continue
            ids, exact = _place_ids(tokens, at, size, lexicon, shouting)
            if ids and not _cut_off(tokens, at, size, lexicon):
                mentions.append(_mention(tokens, at, size, ids, exact, lexicon))
                step = size
                break
        at += step
    mentions = _fitting([m for m in mentions if not _of_a_water(m, mentions, tokens, lexicon)], lexicon)
    beyond = [m for m in mentions if _lies_beyond(m, tokens)]
    mentions = [m for m in mentions if m not in beyond]
    unknown = _unknown(tokens, lexicon, covered | _positions(tokens, [*mentions, *beyond]))
    return _collected(mentions, lexicon, unknown or (_with_direction(beyond[0], tokens) if beyond else ""))


def _cut_off(tokens: Sequence[Token], at: int, size: int, lexicon: Lexicon) -> bool:
    """True for "the west" in "the west virginia side" and "in the missouri" in "in the missouri ozarks".

    The last word begins the name of another place, or stands before one, or before a part of a state, as its adjective.
    """
    last = at + size - 1
    if size < 2 or tokens[last - 1].word != "the" or last + 1 >= len(tokens):
        return False
    after = tokens[last + 1]
    if after.clause != tokens[at].clause:
        return False
    names = [f"{tokens[last].word} {after.word}", *([after.word] if size > 2 else [])]
    return (size > 2 and after.word in _PARTS) or any(e[0] == "place" for name in names for e in lexicon.spoken(name))


_PARTS = word_set(
    "side shore shoreline coast line border end half part portion corner hills mountains bootheel panhandle "
    "waters record limit law laws rules regs regulations license season"
)
"""Words after the name of a state used as an adjective ("on the ohio side")."""


def _of_a_water(mention: Mention, others: Sequence[Mention], tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a town in the name of a river beside a state of its own ("Santa Fe River, north Florida")."""
    after = next((t for t in tokens if t.start >= mention.end), None)
    town = all(e[2] == "hidden" for e in lexicon.spoken(mention.words) if e[0] == "place" and e[1] in mention.ids)
    return town and after is not None and after.word in _WATERS and any(
        o.kind == "place" and o.ids != mention.ids for o in others)


_WATERS = word_set("river creek brook fork bayou branch run")
"""Words that make a town's name that of a water."""


def _lies_beyond(mention: Mention, tokens: Sequence[Token]) -> bool:
    """True for "west of the Rockies": what lies on one side of a place is not that place."""
    at = next(i for i, t in enumerate(tokens) if t.start >= mention.start)
    return at > 1 and tokens[at - 1].word == "of" and tokens[at - 2].word in _DIRECTIONS


def _with_direction(mention: Mention, tokens: Sequence[Token]) -> str:
    at = next(i for i, t in enumerate(tokens) if t.start >= mention.start)
    return " ".join([*(t.typed for t in tokens[at - 2 : at]), mention.words])


def _fitting(mentions: Sequence[Mention], lexicon: Lexicon) -> list[Mention]:
    """The mentions without a direction before a place ("southeast Alaska") and without namesakes that lie elsewhere.

    A drainage of two states is not meant where a third state is named ("Green River, Kentucky").
    """
    ahead = {m.start - 1 for m in mentions}
    kept = [m for m in mentions if not (m.words in _DIRECTIONS and m.end in ahead)]
    places = {m.ids[0]: lexicon.kb.place(m.ids[0]) for m in kept}
    states = {i for i, p in places.items() if p is not None and p.kind in _STATES}

    def elsewhere(m: Mention) -> bool:
        place = places[m.ids[0]]
        return place is not None and place.kind == "drainage" and not states & {*place.within, *place.covers}

    return [m for m in kept if not (states and elsewhere(m))]


def _mention(
    tokens: Sequence[Token], at: int, size: int, ids: tuple[str, ...], exact: bool, lexicon: Lexicon
) -> Mention:
    place = lexicon.kb.place(ids[0])
    kind = (
        "place"
        if place is None or place.kind in _AREAS or place.kind in ("demo-jurisdiction", "demo-zone")
        else "water"
    )
    words = " ".join(t.word for t in tokens[at : at + size])
    return Mention(kind, ids, words, tokens[at].start, tokens[at + size - 1].end, exact, len(ids) > 1)


def _positions(tokens: Sequence[Token], mentions: Sequence[Mention]) -> set[int]:
    return {i for i, t in enumerate(tokens) for m in mentions if m.start <= t.start < m.end}


def _place_ids(
    tokens: Sequence[Token], at: int, size: int, lexicon: Lexicon, shouting: bool
) -> tuple[tuple[str, ...], bool]:
    phrase = " ".join(t.word for t in tokens[at : at + size])
    ids = unique(e[1] for e in lexicon.spoken(phrase) if e[0] == "place")
    if ids and size == 1 and len(phrase) <= 3:
        ids = _states_first(ids, lexicon) if _is_code(tokens, at, lexicon, shouting) else ()
    elif ids and size == 1 and lexicon.cues(phrase) and "common-word" in lexicon.cues(phrase):
        ids = ids if _placed(tokens, at) else ()
    if ids:
        return ids, True
    if size <= 2 and len(tokens[at].word) > 4 and not lexicon.known(tokens[at].word):
        for mended in lexicon.mend(tokens[at].word):
            fixed = " ".join([mended, *(t.word for t in tokens[at + 1 : at + size])])
            ids = unique(e[1] for e in lexicon.spoken(fixed) if e[0] == "place" and not _town(e, fixed, lexicon))
            if ids:
                return ids, False
    return (), True


def _town(entry: tuple[str, str, str], words: str, lexicon: Lexicon) -> bool:
    """True for a town, or another word that only leads to a place: no slip in writing is taken for it."""
    place = lexicon.kb.place(entry[1])
    return entry[2] == "hidden" and place is not None and key(place.label)[:3] != words[:3]


def _states_first(ids: Sequence[str], lexicon: Lexicon) -> tuple[str, ...]:
    """Of the places of one code the states and provinces, where there are some ("CA" is California before Canada)."""
    found = [(i, p.kind) for i in ids if (p := lexicon.kb.place(i)) is not None]
    return tuple(i for i, kind in found if kind in ("state", "province")) or tuple(ids)


def _is_code(tokens: Sequence[Token], at: int, lexicon: Lexicon, shouting: bool) -> bool:
    """A code of two or three letters counts when it is no common word, or when it is written as a code."""
    token = tokens[at]
    if not token.typed.isascii():
        return False
    if "common-word" not in lexicon.cues(token.word):
        return True
    last = at + 1 == len(tokens) or tokens[at + 1].clause != token.clause
    if token.typed.isupper() and not shouting and len(token.typed) > 1:
        return True
    if token.word in _NEVER_PLACES:
        return False
    return (
        at > 0
        and last
        and (
            tokens[at - 1].word == "in"
            or (
                tokens[at - 1].clause != token.clause
                and len(tokens[at - 1].word) > 2
                and at + 1 == len(tokens)
                and token.word not in ("or", "in", "ok", "oh", "hi", "me")
            )
        )
    )


def _placed(tokens: Sequence[Token], at: int) -> bool:
    return (
        (at > 0 and (tokens[at - 1].word in _BEFORE or tokens[at - 1].clause != tokens[at].clause))
        or len(tokens) <= 2
        or tokens[at].typed[:1].isupper()
    )


def _shouting(tokens: Sequence[Token]) -> bool:
    letters = [t.typed for t in tokens if t.typed.isalpha() and len(t.typed) > 3]
    return bool(letters) and sum(w.isupper() for w in letters) * 2 > len(letters)


def _collected(mentions: Sequence[Mention], lexicon: Lexicon, unknown: str) -> Where:
    places: list[str] = []
    water: str | None = None
    for m in mentions:
        place = lexicon.kb.place(m.ids[0])
        if place is None:
            continue
        if (m.kind == "water" and water is None) or (m.kind == "water" and water is not None and water in place.within):
            water = m.ids[0]
        if m.kind == "place":
            places.extend(m.ids)
    if water is not None and not places:
        found = lexicon.kb.place(water)
        if found is not None:
            places.extend(_areas_of(water, lexicon) if len(_areas_of(water, lexicon)) == 1 else [water])
    return Where(unique(places), water, "" if water else unknown, tuple(mentions))


def _areas_of(water: str, lexicon: Lexicon) -> tuple[str, ...]:
    """The states, provinces or jurisdictions that a water lies in."""
    out: list[str] = []
    found = lexicon.kb.place(water)
    for wider in found.within if found else ():
        place = lexicon.kb.place(wider)
        if place is not None and place.kind in ("state", "province", "territory", "district", "demo-jurisdiction"):
            out.append(wider)
    return unique(out)


def _unknown(tokens: Sequence[Token], lexicon: Lexicon, covered: set[int]) -> str:
    """A name the base lacks, next to a word for a water or after "in" or "at"."""
    for i, token in enumerate(tokens):
        if i in covered or not _strange(token, lexicon):
            continue
        before = tokens[i - 1] if i and tokens[i - 1].clause == token.clause else None
        after = tokens[i + 1] if i + 1 < len(tokens) and tokens[i + 1].clause == token.clause else None
        if before is not None and before.word in _LEAD and i - 1 not in covered:
            return f"{before.typed} {token.typed}"
        if after is not None and after.word in _LEAD and i + 1 not in covered:
            return f"{token.typed} {after.typed}"
        if before is not None and before.word in ("in", "at", "from", "near") and token.typed[:1].isupper():
            return token.typed
    return ""


def _strange(token: Token, lexicon: Lexicon) -> bool:
    word = token.word
    return len(word) > 3 and word.isalpha() and not lexicon.known(word) and not lexicon.cues(word)
