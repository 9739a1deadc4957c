"""Fish kept already, as told beside a catch: "8 sunfish kept today", "12 kept, 38 in the freezer" (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace

from assistant.dialogue.rules.catch_fish import read_fish
from assistant.dialogue.rules.catch_measures import NUMBER_WORDS, count_of, read_lengths, spelt_out
from assistant.dialogue.rules.catch_query import KeptSaid, Named
from assistant.reasoning import catch as c

Resolve = Callable[[str], tuple[str, ...]]
_BOX = r"(?:cooler|bucket|pail|tub|live[- ]?well|basket|stringer|bag|boat|creel|box|net|sack|keep[- ]?net)"
_STORE = (r"(?:freezer|fridge|refrigerator|at home|home|stored|storage|camp|cabin|cottage|"
          r"from (?:yesterday|earlier days|before today)|kept yesterday|of yesterday)")
_GONE = r"eaten|ate|given away|gave away|cooked|fried"
_TAKEN = r"kept|keeping|taken|took|bagged|in hand|in possession|on board"
_STORED = re.compile(rf"\b(?:in|at|from)?\s*(?:the|my|our|a)?\s*{_STORE}\b", re.IGNORECASE)
_EATEN = re.compile(rf"\b(?:{_GONE}|for lunch|for breakfast)\b", re.IGNORECASE)
_WORDS = "|".join(sorted(NUMBER_WORDS, key=len, reverse=True))
_ANY_COUNT = rf"(?:\d+|(?:{_WORDS}))\b"
_KEPT = re.compile(
    rf"\b(?:{_TAKEN}|keep already|possessed|already (?:have|has|got)|have already|{_GONE}|"
    rf"(?:in|on) (?:the|my|our|a) {_BOX}|on a stringer)\b"
    rf"|(?<![\d.])\b{_ANY_COUNT}(?: [a-z'-]+){{1,3}}? (?:already|so far)\b"
    rf"|\b{_STORE}\b|\b(?:nothing|none|no fish) (?:else )?(?:so far|yet|in)\b"
    rf"|\bfirst (?:fish|one|of the day|keeper)\b|\bhave(?:n't| not) kept\b", re.IGNORECASE)
_NOTHING = re.compile(
    r"(?<![\d.])\b(?:nothing|none|no fish|zero|0|no others?|not? any|nought|never)\b"
    r"(?: (?:is|was|were|has been|else|others?|fish))*\s*(?:kept|keeping|taken|bagged|so far|yet|in (?:the|my|our)\b)"
    r"|\bkept (?:nothing|none|no fish|zero|0)\b|\bfirst (?:fish|one|of the day|keeper)\b"
    r"|\bhave(?:n't| not) kept\b|\bno (?:\w+ ){1,2}?kept\b", re.IGNORECASE)
_COUNT = re.compile(rf"\b(?P<n>{_ANY_COUNT})(?:\s+(?:others?|more|of them))?(?!\s*[/.]\d)", re.IGNORECASE)
_COUNTED = re.compile(
    rf"^\s*(?:and\s+|plus\s+|with\s+|also\s+)*(?P<n>{_ANY_COUNT})(?!\s*[/.]\d)\s+[A-Za-z]", re.IGNORECASE)
_PART = re.compile(
    rf"^\s*(?:and\s+|but\s+|with\s+)?(?:(?P<n>only one|just one|all|both|neither|{_ANY_COUNT})\b)\s*"
    rf"(?:of (?:them|those|these|which|the \w+))?\s*(?:(?:is|are|was|were|being|measured|measuring|at)\s+)*"
    rf"(?P<rest>.*)$", re.IGNORECASE)
_SEAMS = re.compile(
    rf",|\s+(?:and|plus|with|but)\s+(?=(?:i |we )?(?:have |has |already )*{_ANY_COUNT}"
    r"(?!\s*(?:cm|in\b(?! (?:the|my|our)\b)|mm|\"|/)))"
    rf"|\s+(?:and|with|but)\s+(?=(?:nothing|none|no fish)\b)|\s+(?:and|but)\s+(?=(?:i |we )?(?:have )?kept\b)",
    re.IGNORECASE)
_OF_THEM = re.compile(
    r"\b(?:of (?:them|those|these|which)|over|under|longer|above|below|bigger|smaller|both|all|neither)\b",
    re.IGNORECASE)
_SOME = re.compile(rf"\b(?P<n>both|all|{_ANY_COUNT})\s+of (?:them|those|these|which)\b", re.IGNORECASE)
"""Part of the fish told before: "fried two of them"."""
_TODAY = re.compile(
    r"\b(?:today|so far|already|this morning|this afternoon|till now|until now|earlier|yet|now)\b", re.IGNORECASE)
_NOISE = re.compile(
    rf"\b(?:i|we|he|she|have|has|had|'ve|i've|we've|got|were|was|are|is|there|with|of|that|which|also|plus|and|the|"
    rf"my|our|fish|keep|{_TAKEN}|possession|both|them|each|more|other|others|at|from|measuring|long|about|only|just|not|"
    rf"nothing|none|{_GONE}|(?:in|on)(?: the| my| our| a)? {_BOX}|{_BOX}|{_STORE}|in|on|for|lunch|breakfast|dinner|"
    rf"total|altogether|all told|a limit of)\b", re.IGNORECASE)


_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
_ORDINAL = re.compile(
    r"\b(?:(?:(?:it|this|that)(?:'?s|'?d be|'?ll be| would be| will be| is| makes| was)?|"
    r"would be|will be|is|makes|was) )?(?<!\bon )(?<!\bby )(?<!\bsince )(?<!\buntil )"
    r"(?:my|our|the) "
    rf"(?:(?P<word>{'|'.join(_ORDINALS)})|(?P<figure>\d+)(?:st|nd|rd|th))\b"
    r"(?! (?:of|saturday|sunday|day|time|trip|cast|week|month|year))"
    rf"(?: (?:one|fish)\b)?(?: (?:of the day|today|so far))?", re.IGNORECASE)
_PARTY = re.compile(
    r"\b(?:we(?: a|')?re|we were|there(?: a|')?re|there were|with) (?:\d+|two|three|four|five|six)(?: of us)?"
    r"(?: (?:people|anglers|guys|friends|kids|adults))? (?:in|on) (?:the|a|my|our) (?:boat|canoe|kayak|dock|bank)\b"
    r"|\b(?:\d+|two|three|four|five|six) of us\b", re.IGNORECASE)
"""How many people fish together, who are no fish kept ("we are 4 in the boat")."""
_OTHERS = re.compile(
    r"\b(?:my|our|his|her) (?:partner|friend|buddy|mate|wife|husband|brother|sister|dad|father|mum|mom|mother|son|"
    r"daughter|kids?|cousin|uncle|guide)s?\b.*\b(?:kept|has|have|took|taken|bagged)\b", re.IGNORECASE)
"""Fish that somebody else kept do not count for this angler."""


def read_kept(text: str, resolve: Resolve) -> tuple[tuple[KeptSaid, ...] | None, str]:
    """The kept fish told in a text and the text without them; None when nothing is said of kept fish.

    "My fifth walleye" tells that four were kept before.
    """
    found: list[KeptSaid] | None = None
    left: list[str] = []
    text = _PARTY.sub(" ", text)
    ordinal = _ORDINAL.search(text)
    if ordinal:
        nth = int(ordinal["figure"] or _ORDINALS.index(ordinal["word"].lower()) + 1)
        found = [KeptSaid(nth - 1, None)] if nth > 1 else []
        text = text[:ordinal.start()] + " " + text[ordinal.end():]
    for clause in re.split(r";|(?<!\d)\.(?=\s|$)|\.(?=\s+[A-Z])", text):
        kept, rest = _clause(clause, resolve)
        left.append(rest)
        if kept is not None:
            found = (found or []) + kept
    return (None if found is None else tuple(found)), "; ".join(p for p in left if p.strip())


def _clause(clause: str, resolve: Resolve) -> tuple[list[KeptSaid] | None, str]:
    """Within one clause, the run of comma pieces that tells of kept fish is read, the others are left."""
    pieces = _cut(clause)
    if any(_OTHERS.search(p) for p in pieces):
        pieces = [p for p in pieces if not _OTHERS.search(p)]
        clause = ", ".join(p.strip() for p in pieces)
    marked = [n for n, p in enumerate(pieces) if _KEPT.search(p) or _NOTHING.search(p)]
    if not marked:
        return None, clause
    first, last = marked[0], marked[-1]
    while first > 0 and _COUNTED.match(pieces[first - 1]) and not read_lengths(pieces[first - 1])[0]:
        first -= 1
    while last + 1 < len(pieces) and _goes_on(pieces[last + 1]):
        last += 1
    items: list[KeptSaid] = []
    stored = False
    for piece in pieces[first:last + 1]:
        items = _read(piece, items, resolve)
        stored = stored or bool(_STORED.search(piece))
    rest = ", ".join(p.strip() for p in (*pieces[:first], *pieces[last + 1:]) if p.strip())
    return items if items or any(_NOTHING.search(p) for p in pieces) else None, rest


def _cut(clause: str) -> list[str]:
    """A clause at its commas, brackets, and at "and" or "with" before a count or a keeping word."""
    clause = re.sub(r"[()]", ",", clause)
    clause = re.sub(r"(?<=kept)\s*:\s*", " ", clause)
    pieces: list[str] = []
    for piece in (p for p in _SEAMS.split(spelt_out(clause)) if p.strip()):
        lengths, rest = read_lengths(piece)
        if pieces and lengths and not rest.strip(" ,") and _wants_more(pieces[-1]):
            pieces[-1] += f" and {piece.strip()}"
        else:
            pieces.append(piece)
    return pieces


def _wants_more(piece: str) -> bool:
    """True for a piece that counts more fish than it tells lengths of ("3 walleye of 40 cm")."""
    lengths, rest = read_lengths(piece)
    counted = _COUNT.search(rest)
    return bool(lengths) and counted is not None and (count_of(counted["n"]) or 0) > len(lengths)


_NEXT = re.compile(r"\s*(?:and\s+|but\s+)?(?:another|one more|any more|some more|more)\b", re.IGNORECASE)
"""The fish asked about, beside those kept."""


def _goes_on(piece: str) -> bool:
    """Does a piece go on telling of kept fish: a further count, or a part of those just named?"""
    part = _PART.match(piece)
    if _NEXT.match(piece):
        return False
    if _COUNTED.match(piece) or re.fullmatch(rf"\s*(?:and\s+)?(?:\d+|{_WORDS})\s*", piece, re.IGNORECASE):
        return True
    return part is not None and bool(read_lengths(part["rest"])[0])


def _read(piece: str, items: list[KeptSaid], resolve: Resolve) -> list[KeptSaid]:
    """The items with those of one more piece."""
    part = _PART.match(piece)
    if items and part and _OF_THEM.search(piece):
        lengths, rest = read_lengths(part["rest"])
        if lengths and not _name(rest, resolve):
            return _split_part(items, part["n"], lengths)
    some = _SOME.search(piece) if items and _EATEN.search(piece) else None
    if some and not read_lengths(piece)[0]:
        return _gone(items, count_of(some["n"]))
    if _NOTHING.search(piece) and not re.search(r"\b[1-9]\d*\b", _NOTHING.sub("", piece)):
        return items
    lengths, rest = read_lengths(piece)
    counted = _COUNT.search(rest)
    count = count_of(counted["n"]) if counted else None
    if counted:
        rest = rest[:counted.start()] + " " + rest[counted.end():]
    if count is None:
        count = len(lengths) or None
    if count is None:
        return items
    stored, eaten = bool(_STORED.search(piece)), bool(_EATEN.search(piece))
    name = _name(rest, resolve)
    if count == 0:
        return items
    plain = KeptSaid(count, name, today=not stored, held=not eaten)
    return items + _with_lengths(plain, lengths)


def _gone(items: list[KeptSaid], count: int | None) -> list[KeptSaid]:
    """The items with so many of those still held eaten (None: all); they count for the day all the same."""
    at = next((i for i in range(len(items) - 1, -1, -1) if items[i].held), None)
    if at is None or count == 0:
        return items
    last = items[at]
    gone = last.count if count is None else min(count, last.count)
    rest = [replace(last, count=last.count - gone)] if last.count > gone else []
    return [*items[:at], *rest, replace(last, count=gone, held=False), *items[at + 1 :]]


def _with_lengths(item: KeptSaid, lengths: tuple[c.Length, ...]) -> list[KeptSaid]:
    if not lengths:
        return [item]
    if len(lengths) == 1:
        return [replace(item, length=lengths[0])]
    each = [replace(item, count=1, length=length) for length in lengths[:item.count]]
    missing = item.count - len(each)
    return each + ([replace(item, count=missing)] if missing > 0 else [])


def _split_part(items: list[KeptSaid], word: str | None, lengths: tuple[c.Length, ...]) -> list[KeptSaid]:
    """"Two of them over 20 cm": the last item in two, the rest taken to be on the other side of the bound."""
    last = items[-1]
    word = (word or "").lower()
    if word == "neither":
        return [*items[:-1], replace(last, length=_other_side(lengths[0]))]
    count = last.count if word in ("all", "both") else min(count_of(word.split()[-1]) or 0, last.count)
    parts = _with_lengths(replace(last, count=count), lengths) if count else []
    rest = last.count - count
    others = [replace(last, count=rest, length=_other_side(lengths[0]))] if rest else []
    return [*items[:-1], *parts, *others]


def _other_side(length: c.Length) -> c.Length:
    """What is said of the others when some are "over 20 cm": they are not."""
    if length.high is None:
        return c.Length(length.low * 0, length.low, False, not length.low_included)
    if length.low == 0:
        return c.Length(length.high, None, not length.high_included)
    return c.UNSAID


def _name(text: str, resolve: Resolve) -> Named | None:
    """The fish named in a piece; None for "fish", "kept" and the like, which mean the same kind."""
    bare = _NOISE.sub(" ", _TODAY.sub(" ", text))
    bare = re.sub(r"[^\w\s'-]", " ", bare)
    bare = re.sub(r"\s+", " ", bare).strip(" -'")
    if not bare:
        return None
    said = read_fish(bare, resolve)
    known = [n for n in said.names if n.taxa]
    if not known:
        return Named(bare, ()) if re.search(r"[A-Za-z]{4}", bare) else None
    return Named(" and ".join(n.words for n in known), tuple(dict.fromkeys(t for n in known for t in n.taxa)))
