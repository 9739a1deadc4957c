"""A line about a catch in the form that is read: short forms and kept fish spelt out, bare answers whole (layer 4).

Names of places are not known here: a callable says which places a phrase means.
"""

from __future__ import annotations

import re

from assistant.dialogue.reader.catch_plain import said_plainly
from assistant.dialogue.reader.catch_text import ASKED_FIRST
from assistant.dialogue.reader.when import MONTHS
from assistant.dialogue.rules.catch_measures import NUMBER_WORDS, count_of
from assistant.dialogue.rules.names import Resolve
from assistant.dialogue.turn import Turn
from assistant.text import key

_SEVERAL = "|".join(word for word, n in NUMBER_WORDS.items() if n > 1)
_HAVE = re.compile(
    r"\b(?:(?:i|we)(?:'ve| have| ve)? )?(?:already )?(?:have|got|had|has)(?: already)? "
    rf"(?=\d+\b|a limit|(?:{_SEVERAL})\b)", re.IGNORECASE
)
_HAVE_ONE = re.compile(
    r"(?<=[,;.] )(?:and |but )?(?:i|we)(?:'ve| have)(?: got)?(?: already)? (?=(?:one|an?)\b)", re.IGNORECASE
)
"""Behind the question: one that is kept, not the one asked about."""
_CAUGHT = re.compile(
    r"\b(?:(?:i|we)(?:'ve| have)? )?(?:just |already )?(?:caught|landed|hooked|boated|reeled in|pulled in) "
    rf"(?=\d+\b|(?:{_SEVERAL})\b)", re.IGNORECASE
)
_COUNT_FIRST = re.compile(
    rf"(?:^|(?<=[,;.:] ))(?=(?:\d{{1,2}}|{_SEVERAL})\s+(?!in\b|inch|cm\b|mm\b|lbs?\b|oz\b|years?\b|yr)[a-z]{{3}})",
    re.IGNORECASE)
"""A count of fish that opens a clause ("8 bluegill, can I keep another")."""
_OF_THEM = re.compile(
    r"(?<=[a-z]) (?=(?:none|all|both|neither)(?: of (?:them|those|these|em))? "
    r"(?:over|under|above|below|longer|shorter)\b)", re.IGNORECASE)
"""Before what is said of all fish just counted ("7 bluegill none over 20 cm")."""
_FOR_ANOTHER = re.compile(r"\b(?:another|one more|any more|can (?:i|we) keep more)\b", re.IGNORECASE)
_LET_GO = re.compile(r"\b(?:releas\w+|let|threw|tossed|put|went back|kept|keeping)\b", re.IGNORECASE)
"""Fish caught count as kept where another one is asked about and none is told to have gone back."""
_ALL_ASKED = re.compile(
    r"[.,;:\s-]*\b(?:(?:so|and|then) )?"
    r"(?:(?:can|may|could|should|do) (?:i|we) |(?:are|can|is) (?:they|these|those|it) |ok(?:ay)? to )?"
    r"(?:(?:keep|take|have) (?:(?:them|em|'em|these|those) all|the (?:lot|bunch)|"
    rf"all(?: (?:of )?(?:them|em|'em|these|those|\d+|{_SEVERAL}))?)|"
    rf"all (?:of (?:them|em|these) |\d+ |(?:{_SEVERAL}) )?(?:mine|legal|keepers|come home|go home)(?: to keep)?)"
    r"(?: home)?\s*[?.!]*\s*$", re.IGNORECASE)
"""The end of a line that asks for all of the fish just told ("got four, keep all four?")."""
_STOWED = re.compile(
    r"\b(?:already|so far|kept|another|cooler|bucket|live ?well|stringer|boat|bag|limit|freezer|home)\b", re.IGNORECASE)
_COUNT_ONLY = re.compile(
    r"\W*(?:i |we )?(?:have |kept |got |just |only |about |a )*"
    rf"(\d+|{'|'.join(NUMBER_WORDS)})(?: (?:so far|kept|today|already|fish|of them))*\W*"
)
_NO_UNIT = re.compile(
    r"\b(over|under|above|below|longer than|shorter than) (\d+(?:\.\d+)?)(?!\s*(?:cm|mm|in\b|inch|\"|/|\.?\d|kg|lb))",
    re.IGNORECASE,
)
_PART_OF = re.compile(
    r"\s*(?:all|both|none|neither|one|two|three|\d+)\s+(?:of (?:them|those) )?"
    r"(?:over|under|above|below|longer|shorter)",
    re.IGNORECASE,
)
_KEPT_ONE = re.compile(
    r"\b(?:had |if |suppose |and )?(?:the|that) "
    r"(?:kept (?:one|fish)|(?:one|fish) (?:(?:i|we) )?(?:had |have |'ve )?kept)"
    r"(?: had)? (?:been|was|were|is|measured)(?: only| just| about)? (\d+(?:\.\d+)?)(?![\d/.])"
    r"(?!\s*(?:cm|mm|in\b|inch|\"|fish|of\b|walleye|bass))", re.IGNORECASE
)
"""The length of a fish kept already, told anew without its unit ("had the kept one been 45 instead")."""
_LIMIT_WITH = re.compile(r"\b(limit) with (?=\d)", re.IGNORECASE)
_DENIED = re.compile(
    r",?\s*\b(?:not|isn't|wasn't)\s+(?:an?\s+)?\d+(?:\.\d+)?(?: \d/\d)?\s*(?:(?:cm|mm|in(?:ch(?:es)?)?)\b|\")?"
    r"(?! (?:kept|fish|of))", re.IGNORECASE
)
"""A length that is taken back beside the right one ("66 cm, not 76")."""
_IN_PLACE = re.compile(r"\b(\d+(?:\.\d+)?(?: \d/\d)?) in (?=(?:the )?(\w+(?: \w+){0,2}))", re.IGNORECASE)
_SHORT_FORMS = (
    (re.compile(r"\bim\b", re.IGNORECASE), "i'm"),
    (re.compile(r"\bive\b", re.IGNORECASE), "i've"),
    (re.compile(r"\b(can|don|couldn|haven)t\b", re.IGNORECASE), r"\1't"),
    (re.compile(r"\b(?:and |but |so )?(?:what )?if (?:it|he|she|this one|that one|mine) (?:were|was|is|had been)\b",
                re.IGNORECASE), " "),
    (re.compile(r"\b(?:my|the) \w+ (?:says|said|thinks|reckons)(?: (?:it's|its|that it's|there are|there's))? ",
                re.IGNORECASE), " "),
    (re.compile(r"\banything else\b", re.IGNORECASE), "anything"),
)


def completed(turn: Turn, places_of: Resolve, kept: int) -> str:
    """The line in the form that is read: short forms spelt out, a bare answer to our question made a whole phrase.

    ``kept`` is how many kept fish were told of before.
    """
    text = said_plainly(turn.reading.text.replace("’", "'"), kept, turn.held.intent == "rules")
    for pattern, full in _SHORT_FORMS:
        text = pattern.sub(full, text)
    if turn.reading.measures:
        text = _DENIED.sub(" ", text)
    text = _all_asked(text)
    if not _others(text):
        text = _HAVE.sub(lambda m: ", kept " if m.start() else "kept ", text)
        text = _HAVE_ONE.sub("kept ", text) if ASKED_FIRST.match(text) else text
        text = _CAUGHT.sub("kept ", text) if caught_is_kept(text) else text
        text = _COUNT_FIRST.sub("kept ", text, count=1) if counts_first(text) else text
    text = _OF_THEM.sub(", ", text)
    lengths = [m for m in turn.reading.measures if m.kind == "length"] or list(turn.held.lengths)
    text = _IN_PLACE.sub(lambda m: _inches(m, places_of), _LIMIT_WITH.sub(r"\1, kept ", text))
    if lengths:
        unit = "cm" if lengths[-1].unit in ("cm", "mm", "m") else "in"
        text = _KEPT_ONE.sub(rf"kept one of \1 {unit}", _NO_UNIT.sub(rf"\1 \2 {unit}", text))
    return _answered(turn, text, places_of, kept) or text


def _all_asked(text: str) -> str:
    """The line as a question after the fish that it tells, where it asks for all of them: they are not kept yet."""
    asked = _ALL_ASKED.search(text)
    told = text[: asked.start()] if asked is not None else ""
    bare = _HAVE.sub(" ", _CAUGHT.sub(" ", told))
    return f"can i keep {bare.strip()}" if bare != told and not _STOWED.search(told) else text


def caught_is_kept(text: str) -> bool:
    """True for a line that asks for another beside fish that were caught, and tells of none let go."""
    return bool(_CAUGHT.search(text) and _FOR_ANOTHER.search(text)) and not _LET_GO.search(text)


def counts_first(text: str) -> bool:
    """True for a line that asks for another beside a count of fish that it only names."""
    return bool(_FOR_ANOTHER.search(text) and _COUNT_FIRST.search(text)) and not _LET_GO.search(text)


def _inches(match: re.Match[str], places_of: Resolve) -> str:
    """ "15 in Ollimarsh" as 15 inches before the name of a place."""
    ahead = match[2].split()
    if (before := match.string[: match.start()].lower().split()) and before[-1] in MONTHS:
        return match[0]
    place = any(places_of(" ".join(ahead[:n])) for n in range(len(ahead), 0, -1))
    return f"{match[1]} in, " if place else match[0]


def _others(text: str) -> bool:
    """True when somebody else has the fish."""
    return bool(re.search(r"\b(?:my|our|his|her) \w+ (?:has|have|got|had|kept)\b", text, re.IGNORECASE))


def _answered(turn: Turn, text: str, places_of: Resolve, kept: int) -> str:
    """A bare answer to what was asked back as a phrase, or nothing."""
    asked, reading = turn.held.asked, turn.reading
    if turn.held.intent != "rules" or asked is None or len(reading.words) > 6:
        return ""
    length = any(m.bare and m.kind == "length" for m in reading.measures)
    bare = None if length else _COUNT_ONLY.fullmatch(text.lower())
    if asked.kind == "count":
        if bare:
            return f"{count_of(bare[1])} kept"
        nothing = reading.answer == "no" and not any(ch.isdigit() for ch in text)
        return "nothing kept" if nothing or key(text) in ("none", "nothing", "zero") else ""
    if kept and _PART_OF.match(text) and asked.kind in ("kept-lengths", "length"):
        return f"{kept} kept, {text}"
    if asked.kind == "kept-lengths" and any(ch.isdigit() for ch in text):
        return f"kept {text}"
    if asked.kind == "age" and bare:
        return f"angler aged {count_of(bare[1])}"
    if asked.kind == "ice" and reading.answer in ("yes", "no"):
        return "through the ice" if reading.answer == "yes" else "open water"
    found = places_of(text) if asked.kind == "side" else ()
    return f"{found[0]} side" if found else ""
