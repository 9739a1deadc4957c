"""The fish named in a catch: one name, several that it may be, or a cross of them (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from assistant.dialogue.rules.catch_measures import NUMBER_WORDS, count_of, read_lengths
from assistant.dialogue.rules.catch_query import Named
from assistant.reasoning import catch as c

Resolve = Callable[[str], tuple[str, ...]]
_ANY = re.compile(r"\b(?:any|every|all|whatever)(?: kind of)? fish(?:es)?\b|\banything\b|^\s*any(?: at all)?\s*$",
                  re.IGNORECASE)
_LIST = re.compile(
    r"\s*(?:,|;|/|\bor\b|\beither\b|\bmaybe\b|\bpossibly\b|\bperhaps\b|\bcould be\b|\bmight be\b|\bversus\b|\bvs\b)\s*",
    re.IGNORECASE)
_CROSS_ONLY = re.compile(
    r"^(?:(?:a|an|the|some|some sort of|some kind of|their|one of their|its)\s+)*(?:hybrids?|cross(?:es)?|mix)"
    r"(?: (?:of|between|among) (?:the two|them|both|these|those|the three))?$", re.IGNORECASE)
_ITS_CROSS = re.compile(
    r"^(?:its|the)\s+(?:hybrid|cross) with (?:the )?(?P<other>.+)$|^its\s+(?P<other2>.+?)[ -](?:hybrid|cross)$",
    re.IGNORECASE)
_BETWEEN = re.compile(
    r"^(?:a |an |the )?(?:hybrid|cross)(?: of| between)? (?:a |an )?(?P<a>.+?)(?: and | with | x | × )"
    r"(?:a |an )?(?P<b>.+)$"
    r"|^(?:a |an |the )?(?P<c>.+?)\s*(?: x |×|-x-)\s*(?P<d>.+?)(?: hybrid| cross)?$"
    r"|^(?:a |an |the )?(?P<e>[\w ]+?)[-–](?P<f>[\w ]+?) (?:hybrid|cross)$", re.IGNORECASE)
_FILLER = re.compile(
    r"\b(?:i|we|want|wanna|plan|planning|going|go|trip|have|has|got|had|caught|landed|hooked|just|now|here|there|please|it|it's|its|is|was|a|an|the|this|that|my|"
    r"our|one|more|with|of|at|on|in|from|by|to|and|but|about|fish|fishes|measured|measuring|measures|long|nice|big|small|decent|"
    r"fat|some|kind|sort|looks|like|think|probably|keep|today|me|said|says|caught|catch|single|another|already|so|good)\b",
    re.IGNORECASE)

_ADDED = re.compile(r"\s*(?:[,;&.?!]|\band\b|\bplus\b)\s*", re.IGNORECASE)
_AMOUNT = re.compile(
    rf"(?P<before>.*?)\b(?P<n>\d{{1,3}}|{'|'.join(NUMBER_WORDS)})\s+(?:of\s+|more\s+|other\s+|my\s+)*"
    r"(?P<name>[a-z].*)", re.IGNORECASE)
_EACH = re.compile(r"\W*(?:(?:each|apiece|all|both|of|them|about|around|are|is|at|long)\b\W*)*", re.IGNORECASE)
"""Words beside one length that is told of all the fish counted before it ("four walleye, 46 cm each")."""
_WANTING = re.compile(r"\b(?:want|would|like|to|take|home|can|could|may|all|them|if|going|am|will|wanna|i'd|i'm)\b",
                      re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class FishSaid:
    """The names of what the fish may be; ``crosses``: a cross of them is possible too; ``unnamed``: just "fish"."""

    names: tuple[Named, ...]
    any_fish: bool = False
    crosses: bool = False
    unnamed: bool = False


def read_fish(text: str, resolve: Resolve) -> FishSaid:
    """The fish named in a text from which lengths, kept fish and circumstances have been taken."""
    if _ANY.search(text):
        return FishSaid((), any_fish=True)
    unnamed = bool(re.search(r"\bfish\b|\bone\b", text, re.IGNORECASE))
    inner = re.search(r"\(([^()]*)\)", text)
    if inner:
        names, crosses = _names(inner[1], resolve)
        if any(n.taxa for n in names):
            return FishSaid(names, crosses=crosses, unnamed=unnamed)
    head, colon, tail = text.partition(":")
    names, crosses = _names(tail if colon and tail.strip() else head, resolve)
    if not names and colon:
        names, crosses = _names(head, resolve)
    return FishSaid(names, crosses=crosses, unnamed=unnamed)


def _names(text: str, resolve: Resolve) -> tuple[tuple[Named, ...], bool]:
    found: list[Named] = []
    crosses = False
    pieces = [p for p in (p.strip(" .?!\"'()") for p in _LIST.split(text)) if p]
    for piece in _completed(pieces, resolve):
        if _CROSS_ONLY.match(piece):
            crosses = True
            continue
        found.extend(_piece(piece, found[-1] if found else None, resolve))
    known = [n for n in found if n.taxa]
    return tuple(dict.fromkeys(known or found)), crosses


def _completed(pieces: list[str], resolve: Resolve) -> list[str]:
    """Alternatives that share their last word, as in "black or white crappie", each with it."""
    found: list[str] = []
    for n, piece in enumerate(pieces):
        after = pieces[n + 1].split() if n + 1 < len(pieces) else []
        if len(after) > 1 and not resolve(_clean(piece)):
            whole = f"{_clean(piece)} {after[-1]}"
            piece = whole if resolve(whole) else piece
        found.append(piece)
    return found


def _piece(piece: str, last: Named | None, resolve: Resolve) -> tuple[Named, ...]:
    """One alternative: a cross with the one before, a cross of two, or a plain name."""
    its = _ITS_CROSS.match(piece)
    if its and last is not None and len(last.taxa) == 1:
        other = resolve(_clean(its["other"] or its["other2"]))
        if len(other) == 1 and other != last.taxa:
            return (Named(piece, (cross_id(last.taxa[0], other[0]),)),)
    whole = resolve(_clean(piece))
    if whole:
        return (Named(_clean(piece), whole),)
    pair = _BETWEEN.match(piece)
    if pair:
        first, second = (pair["a"] or pair["c"] or pair["e"]), (pair["b"] or pair["d"] or pair["f"])
        one, two = resolve(_clean(first)), resolve(_clean(second))
        if len(one) == 1 and len(two) == 1 and one != two:
            return (Named(piece, (cross_id(one[0], two[0]),)),)
    scanned = _scan(_clean(piece), resolve)
    if scanned:
        return scanned
    bare = _FILLER.sub(" ", piece)
    bare = re.sub(r"\s+", " ", bare).strip(" -.,")
    return (Named(bare, ()),) if re.search(r"[A-Za-z]{3}", bare) else ()


def read_counted(text: str, resolve: Resolve) -> tuple[tuple[int, Named, c.Length], ...]:
    """Fishes told with how many of each are meant, and how long ("5 perch and 3 sunfish of 15 cm").

    Nothing where one of them has no count, or more than one length.
    """
    found: list[tuple[int, Named, c.Length]] = []
    for piece in (p for p in _ADDED.split(text) if p.strip()):
        lengths, rest = read_lengths(piece)
        if found and len(lengths) == 1 and found[-1][2] == c.UNSAID and _EACH.fullmatch(rest):
            found[-1] = (*found[-1][:2], lengths[0])
            continue
        match = _AMOUNT.match(rest)
        count = count_of(match["n"]) if match else None
        words = _clean(match["name"]).split() if match else []
        named = next((n for n in range(len(words), 0, -1) if resolve(" ".join(words[:n]))), 0)
        if match is None and found and not lengths and not _rest(re.sub(r"\b(?:ok|okay|alright|legal)\b", " ", rest)):
            continue
        if match is None or not count or not named or _rest(" ".join((match["before"], *words[named:]))):
            return ()
        if len(lengths) > 1:
            return ()
        name = " ".join(words[:named])
        found.append((count, Named(name, resolve(name)), lengths[0] if lengths else c.UNSAID))
    return tuple(found) if len(found) > 1 or any(n > 1 for n, _, _ in found) else ()


def _rest(text: str) -> str:
    """What is left of words that say nothing of the fish."""
    return re.sub(r"\W", "", _FILLER.sub(" ", _WANTING.sub(" ", text)))


def count_alone(text: str) -> int:
    """How many of the fish spoken of a text tells by a number and a word for them ("three like it", "4 of them"); 0 for
    no such."""
    match = _ALONE.fullmatch(text)
    return (count_of(match["n"]) or 0) if match else 0


_ALONE = re.compile(
    rf"\W*(?P<n>\d{{1,3}}|{'|'.join(NUMBER_WORDS)})(?: (?:more|others?))?"
    r" (?:of|like) (?:them|these|those|it|this|that|this one|that one|em)\W*", re.IGNORECASE)


def cross_id(first: str, second: str) -> str:
    """The id of the cross of two taxa, parents in alphabetical order."""
    return "-x-".join(sorted((first, second)))


def _clean(text: str) -> str:
    text = re.sub(r"^(?:(?:a|an|the|its|some|either|one|my|this|that|of|nice|big|small|it's|it is|is)\s+)+", "",
                  text.strip(), flags=re.IGNORECASE)
    return re.sub(r"\s+", " ", text).strip(" .,;:?!")


def _scan(text: str, resolve: Resolve) -> tuple[Named, ...]:
    """Names inside other words: the longest from the left, plain words passed over."""
    words = text.split()
    found: list[Named] = []
    start = 0
    while start < len(words):
        for stop in range(min(len(words), start + 5), start, -1):
            phrase = " ".join(words[start:stop]).strip(".,;:?!'\"()")
            if len(phrase) < 3 or not re.sub(r"\W", "", _FILLER.sub("", phrase)):
                continue
            taxa = resolve(phrase)
            if taxa:
                found.append(Named(phrase, taxa))
                start = stop - 1
                break
        start += 1
    return tuple(found)
