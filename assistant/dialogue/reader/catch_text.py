"""Sentences about a catch, such as "Vennimoor Lake, 4 July 2026: bluegill 17 cm, 8 kept today" (layer 4).

``parse_catch`` cuts a sentence into where, when, fish, lengths, kept fish and circumstances. Names are not known
here: two callables say which taxa and places a phrase means. They should answer only to a whole phrase, with an
empty tuple for words that are no name; for a group word with its members as listed (genera and families are
unfolded later into the fish that the rules of the place name), for an ambiguous name with everything it may mean.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import date, time
from itertools import product

from assistant.dialogue.reader.when import tells_past
from assistant.dialogue.rules.catch_fish import FishSaid, count_alone, read_counted, read_fish
from assistant.dialogue.rules.catch_kept import read_kept
from assistant.dialogue.rules.catch_measures import NUMBER_WORDS, count_of, plain_numbers, read_days, read_lengths
from assistant.dialogue.rules.catch_notes import read_notes
from assistant.dialogue.rules.catch_query import CatchQuery, Circumstances, KeptSaid, Step
from assistant.reasoning import catch as c

Resolve = Callable[[str], tuple[str, ...]]
_QUESTION = re.compile(
    r"[.,;:\s-]*\b(?:so |and |then |well )?(?:(?:can|may|could|should|do|must|shall) (?:i|we|he|she|they)"
    r"(?: have to)?|am i allowed to|are we allowed to|is it (?:ok|okay|fine|legal|allowed|lawful) to|ok to|okay to)\s+"
    r"(?:keep|take|have|kill|eat|release|harvest)(?:\s+(?:it|this|that|them|this one|that one|this fish|the fish|"
    r"one|any|another|more|home|these|all|both))*(?:,? or which(?: one)?)?(?: home)?\s*[?.!]*\s*$"
    r"|[.,;:\s-]*\b(?:keep or release|keep it or not|mine to keep|is it a keeper|(?:a )?keeper|keep it|keep|legal)"
    r"\s*\?+\s*$"
    r"|[.,;:\s-]*\b(?:(?:are|can|is) (?:they|these|those|it) |so )?all (?:of them )?"
    r"(?:mine|legal|keepers|come home|go home)(?: to keep)?\s*\?+\s*$"
    r"|[.,;:\s-]*\b(?:is that |are they |is it |would that be )?(?:ok|okay|alright|all right|allowed)\s*\?+\s*$"
    r"|[.,;:\s-]*\b(?:and |so |what about |how about |is )?(?:one more|another(?: one)?|any more|some more)"
    r"(?: (?:ok|okay|allowed|alright|fine|legal))?\s*\?+\s*$"
    r"|[.,;:\s-]*\b(?:so |and )?what (?:now|(?:do|can|should|may|must) (?:i|we) do"
    r"(?: with (?:it|each|them|both|this|that))?)"
    r"(?: of (?:them|these))?\s*[?.!]*\s*$", re.IGNORECASE)
ASKED_FIRST = re.compile(
    r"^\s*(?:hi|hello|hey)?[,!\s]*(?:(?:can|may|could|should) (?:i|we|he|she)|am i allowed to|"
    r"is it (?:ok|okay|legal) to)\s+(?:keep|take|have|harvest)\s+(?:(?:the|my|this|that|another)\b)?\s*",
    re.IGNORECASE)
_MANY = re.compile(
    r"[.,;:\s-]*\b(?:so |and |then )?(?:can|may|could|should) (?:i|we|he|she|they) (?:keep|take|have|harvest) "
    rf"(?P<n>\d{{1,3}}|{'|'.join(NUMBER_WORDS)})(?: (?:of (?:them|these|those)|fish|today|a day|home))*\s*[?.!]*\s*$",
    re.IGNORECASE)
"""A question behind the fish told of on how many of them may be kept."""
_TOLD_AFTER = re.compile(r",\s*(?=(?:and |but |as )?(?:i|we|i've|we've)\b|kept\b)", re.IGNORECASE)
"""Where a line that begins with the question goes on to tell what was kept."""
_THEN = re.compile(r"[,;]?\s*\b(?:and\s+)?then\b[,:]?\s*", re.IGNORECASE)
_DASHES = re.compile(r"(?<!\d)\s+[-–—]+\s+|\s+[-–—]+\s+(?!\d)")
_PINCHED = re.compile(r"\b(?:pinched|pressed|squeezed|closed)\b", re.IGNORECASE)
_RELAXED = re.compile(
    r"[\d./ ]+(?:cm|mm|in(?:ches)?\b\.?|\")\s*(?:with (?:the |its )?tail )?"
    r"(?:relaxed|at rest|spread|open)\b,?\s*(?:but|and)?",
    re.IGNORECASE)
_SAME = re.compile(r"\b(?:the )?same (?:fish|one|again|catch|thing)\b|\bsame$|\bas before\b", re.IGNORECASE)
_LEAD = re.compile(r"^(?:at|on|in|from|by|near|the|dates?|caught|fishing|while|i am|i'm|we are|we're|day|of)\s+",
                   re.IGNORECASE)


def parse_catch(
    text: str, resolve_taxa: Resolve, resolve_place: Resolve, clock: date, previous: CatchQuery | None,
    depth: Callable[[str], int],
) -> CatchQuery | None:
    """What a sentence says of a catch, or None when it names no fish, length or kept fish.

    ``clock`` is the day on which it was said; ``previous`` is what "the same fish" refers to; ``depth`` tells how
    narrow a place is, so that a water counts and not the jurisdiction named after it.
    """
    said = _cross_again(plain_numbers(text))
    many = _MANY.search(said)
    many = many if many and said[: many.start()].strip() else None
    body = _QUESTION.sub("", said[: many.start()] if many else said)
    if asked := ASKED_FIRST.match(body):
        body = _TOLD_AFTER.sub("; ", body[asked.end():], count=1)
        body = of_them if count_alone(of_them := f"{body.strip(' ?.!')} of them") else body
    where, what = _parted(body, resolve_place, clock)
    about, where = _noted(where, resolve_place)
    past = tells_past(said)
    days, where = read_days(where, clock, past)
    places, unknown = _places(where, resolve_place, depth)
    if what is None:
        what = _without_places(where, resolve_place)
        unknown = ""
    else:
        more, what = _noted(what, resolve_place)
        about = _merged(about, more)
        later, what = read_days(what, clock, past)
        days = days or later
    built = _built(text, what, about, days, places, unknown, resolve_taxa, clock, previous)
    return _so_many(built, count_of(many["n"]) or 0) if many and built is not None else built


def _so_many(query: CatchQuery, count: int) -> CatchQuery:
    """The query with so many fish that are to be kept, where it tells of one fish without a number of its own."""
    if len(query.steps) != 1 or count < 1 or query.steps[0].count != 1 or not query.steps[0].fish:
        return query
    return replace(query, steps=(replace(query.steps[0], count=count),))


def _cross_again(text: str) -> str:
    """The text with "keep the hybrid" at its end as "keep it", where a hybrid was told of before."""
    again = re.search(r"\bthe (?:hybrid|cross)\s*\?*\s*$", text, re.IGNORECASE)
    if again and re.search(r"\b(?:hybrid|cross)\b", text[: again.start()], re.IGNORECASE):
        return text[: again.start()] + "it?"
    return text


def _noted(text: str, resolve_place: Resolve) -> tuple[Circumstances, str]:
    about, rest = read_notes(text, resolve_place)
    return about, re.sub(r"\s+", " ", rest)


def _merged(first: Circumstances, second: Circumstances) -> Circumstances:
    plain = Circumstances()
    changed = {f: getattr(second, f) for f in Circumstances.__slots__ if getattr(second, f) != getattr(plain, f)}
    return replace(first, **changed)


def _parted(body: str, resolve_place: Resolve, clock: date) -> tuple[str, str | None]:
    """Where and when before a colon, the catch after it; with no such colon all in one."""
    for match in re.finditer(r":\s+|\s[–—]\s", body):
        left, right = body[:match.start()], body[match.end():]
        if read_days(left, clock)[0] or any(_named_places(left, resolve_place)):
            return left, right
    return body, None


def _pieces(text: str) -> list[str]:
    cut = (p.strip(" .;:-") for p in re.split(r"[,;]|\s[–—]\s", text))
    return [p for p in cut if p]


def _bare(piece: str) -> str:
    before = ""
    while piece != before:
        before, piece = piece, _LEAD.sub("", piece).strip()
    return piece


def _named_places(text: str, resolve_place: Resolve) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Each stretch of words that names a place, longest first from the left, with the ids it means."""
    for part in _THEN.split(text):
        for piece in _pieces(re.sub(r"\([^()]*\)", " ", part)):
            words = piece.split()
            start = 0
            while start < len(words):
                for stop in range(min(len(words), start + 8), start, -1):
                    phrase = " ".join(words[start:stop]).strip(".,;:?!'\"")
                    found = resolve_place(phrase) if len(phrase) > 2 else ()
                    if found:
                        yield phrase, found
                        start = stop - 1
                        break
                start += 1


def _places(
    text: str, resolve_place: Resolve, depth: Callable[[str], int]
) -> tuple[tuple[tuple[str, ...], ...], str]:
    """The ids of each place named, in order, of the narrowest kind; and the words of a place that is not known."""
    pieces = [_bare(p) for part in _THEN.split(text) for p in _pieces(part) if _bare(p)]
    named = [n for part in _THEN.split(text) for n in _narrowest(list(_named_places(part, resolve_place)), depth)]
    if len(named) > 1 and not _THEN.search(text):
        named = [max(named, key=lambda n: len(n[0]))]
    found = list(dict.fromkeys(ids for _, ids in named))
    return tuple(found), "" if found or not pieces else pieces[0]


def _narrowest(
    named: list[tuple[str, tuple[str, ...]]], depth: Callable[[str], int]
) -> list[tuple[str, tuple[str, ...]]]:
    """Of places named together those of the narrowest kind ("Lake Skarrowin, Harrowelt" is the lake)."""
    narrow = max((max(map(depth, ids)) for _, ids in named), default=0)
    return [(words, ids) for words, ids in named if max(map(depth, ids)) == narrow]


def _without_places(text: str, resolve_place: Resolve) -> str:
    for phrase, _ in list(_named_places(text, resolve_place)):
        text = re.sub(rf"(?:\b(?:at|on|in|from|by)\s+(?:the\s+)?)?{re.escape(phrase)}", " , ", text, count=1)
    return text


def _built(
    text: str, what: str, about: Circumstances, days: tuple[date, ...], places: tuple[tuple[str, ...], ...],
    unknown: str, resolve_taxa: Resolve, clock: date, previous: CatchQuery | None,
) -> CatchQuery | None:
    """The query of the parts: steps multiply over fish, places and days; with "then" as many go side by side."""
    kept, what = read_kept(_DASHES.sub("; ", what), resolve_taxa)
    fish = _fish_steps(what, resolve_taxa, previous)
    if not fish and kept is None:
        return None
    before = previous.steps[-1] if previous and previous.steps else None
    if not places and before is not None and before.places and not unknown and not about.private:
        places = (before.places,)
    spots = _spots(places, days or (clock,), about.moments)
    beside = len(spots) == len(fish) and bool(_THEN.search(text))
    pairs = zip(spots, fish, strict=True) if beside else product(spots, fish or (Step(),))
    steps = tuple(
        replace(said, places=where, day=day, moment=moment, kept=_kept_by(day, spots[0][1], kept, said))
        for (where, day, moment), said in pairs)
    unknown_names = tuple(n.words for step in fish for n in step.fish if not n.taxa)
    return CatchQuery(text, steps, about, len(fish) > 1, unknown, tuple(dict.fromkeys(unknown_names)), bool(days))


def _kept_by(
    day: date, first: date, kept: tuple[KeptSaid, ...] | None, said: Step,
) -> tuple[KeptSaid, ...] | None:
    """The kept fish as of a day: on a later day of a sequence they are still held, but no longer of that day."""
    if kept is None:
        return said.kept if said.day == day else None
    return kept if day <= first else tuple(replace(k, today=False) for k in kept)


def _spots(
    places: tuple[tuple[str, ...], ...], days: tuple[date, ...], moments: tuple[time, ...],
) -> tuple[tuple[tuple[str, ...], date, time | None], ...]:
    """Places with days and hours: side by side when there are as many of each, else each with each."""
    where = places or ((),)
    if len(where) == len(days):
        spots = list(zip(where, days, strict=True))
    else:
        spots = list(product(where, days))
    if len(moments) < 2:
        return tuple((place, day, moments[0] if moments else None) for place, day in spots)
    if len(moments) == len(spots):
        return tuple((place, day, m) for (place, day), m in zip(spots, moments, strict=True))
    return tuple((place, day, m) for (place, day), m in product(spots, moments))


def _fish_steps(what: str, resolve_taxa: Resolve, previous: CatchQuery | None) -> tuple[Step, ...]:
    """One step for each fish of a sequence; what a later one leaves out is taken from the one before."""
    steps: list[Step] = []
    for part in _THEN.split(_RELAXED.sub(" ", what) if _PINCHED.search(what) else what):
        same = bool(_SAME.search(part))
        lengths, rest = read_lengths(_SAME.sub(" ", part))
        if not same and (counted := read_counted(part, resolve_taxa)):
            steps.extend(Step((name,), length=length, count=n) for n, name, length in counted)
            continue
        if not lengths and (several := count_alone(rest)) > 1:
            steps.append(Step(count=several))
            continue
        said = read_fish(rest, resolve_taxa)
        if not (lengths or said.names or said.any_fish or same or said.unnamed):
            continue
        step = _step(said, lengths[0] if lengths else c.UNSAID, steps[-1] if steps else None)
        if same and not said.names:
            step = _again(step, previous)
        steps.append(step)
        steps.extend(replace(step, length=length) for length in lengths[1:])
    return tuple(steps)


def _step(said: FishSaid, length: c.Length, last: Step | None) -> Step:
    if not said.names and not said.any_fish and last is not None:
        return replace(last, length=length)
    return Step(said.names, said.any_fish, said.crosses, length)


def _again(step: Step, previous: CatchQuery | None) -> Step:
    """The fish of the sentence before, with what was newly said of it."""
    if previous is None or not previous.steps:
        return step
    before = previous.steps[-1]
    length = before.length if step.length == c.UNSAID else step.length
    return replace(before, length=length)


__all__ = ["CatchQuery", "KeptSaid", "parse_catch"]
