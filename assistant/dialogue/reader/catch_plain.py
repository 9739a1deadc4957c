"""A line about a catch put plainly before it is read: lengths in figures, fish of other days (layer 4).

Anglers tell a foot and a half, "12 and 3/4", "kept that one too" and "5 yesterday, 4 today" beside numbers of degrees,
hours and friends; what is left after this are lengths and counts of fish alone.
"""

from __future__ import annotations

import re

from assistant.model.stems import NUMBERS

_WORD = "one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve"
_N = rf"(?:\d+|{_WORD}|an?)"
_PARTS = {"half": "1/2", "quarter": "1/4", "third": "1/3", "eighth": "1/8", "three quarters": "3/4"}
_PART = "|".join(sorted(_PARTS, key=len, reverse=True))
_COMMA = re.compile(r"(?<![\d,.])(\d+),(\d{1,2})(?=\s*(?:cm|mm|m|in|inch|inches|kg|lbs?|g)\b)", re.IGNORECASE)
_HOURS = re.compile(rf"\b(?:{_N} )?hours? and a half\b", re.IGNORECASE)
_FOOT_AND_HALF = re.compile(rf"\b({_N}) (?:foot|feet|ft) and a half\b|\b(\d+|{_WORD}) and a half (?:foot|feet|ft)\b",
                            re.IGNORECASE)
_FOOT_AND = re.compile(rf"\b({_N}) (?:foot|feet|ft) and (\d+|{_WORD})(?: ?(?:in|inch|inches))?\b", re.IGNORECASE)
_AND_PART = re.compile(rf"\b(\d+) and (?:(?:an? |one )?({_PART})|(\d/\d{{1,2}}))\b", re.IGNORECASE)
_NTH = re.compile(
    r"(?<!my )(?<!our )(?<!the )(?<!his )(?<!her )"
    r"\b(second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|\d+(?:nd|rd|th)) "
    r"((?!day|time|trip|cast|week|of\b)[a-z]+(?: [a-z]+)?) (today|of the day|so far)\b", re.IGNORECASE)
_COUPLE = re.compile(
    r"\b(?:a )?couple(?: of)?(?= (?!days?|weeks?|hours?|minutes?|times?|trips?|casts?)[a-z]|\s*(?:[,.;?!]|$))",
    re.IGNORECASE)
_DOZENS = re.compile(
    rf"\b(?:(half|(?:a )?half a|a half) dozen|(?:({_N}) )?dozen( and a half)?)\b(?: of)?", re.IGNORECASE)
_FEW = re.compile(r"\b(?:quite )?a (?:few|bunch|handful|mess)\b(?: of)?|\bdozens\b(?: of)?", re.IGNORECASE)
_ALL_BUT = re.compile(rf"\bcaught ({_N})\b[\w ,]*?\bkept all but ({_N})\b", re.IGNORECASE)
_LIMIT = r"(?:my|our) (?:daily |bag |full )*(?:limit|bag)\b(?! (?:of|is|was)\b)"
_HOLD = r"(?:have|had|got|hit|reached|filled|caught|kept|took)"
_FULL = re.compile(
    rf"\b(?:(?:i|we)(?:'ve|'m|'re| have| am| are)? )?(?:already )?(?:{_HOLD} {_LIMIT}|limited out)"
    r"(?: already| today| so far)*", re.IGNORECASE)
_SHORT = re.compile(
    rf"\b(?:(?:i|we)(?:'m|'re| am| are) )?({_N}) (?:fish )?(?:short of|shy of|away from|off|under) {_LIMIT}",
    re.IGNORECASE)
_LIMIT_OF = re.compile(rf"\b{_HOLD} (?:my|our|the|a) (?:daily |full )?limit of ({_N})\b", re.IGNORECASE)
_KEPT_IT = re.compile(
    r"\b(?:i |we |and )*kept (?:it|that too|(?:that|this|the last|the first)(?: one)?|him|her)(?: too)?\b"
    r"|\bwhich (?:i|we) kept\b"
    r"|\b(?:it|that one)(?:'s| is| went) in(?:to)? the (?:cooler|bucket|live ?well|box|bag|basket)\b",
    re.IGNORECASE)
_OTHER = re.compile(
    rf"\b(?:\d+(?:\.\d+)?(?:/\d+)?|{_WORD})[ -]?(?:degrees?|hours?|hrs?|minutes?|rods?|friends?|buddies|casts?|"
    r"anglers?|people|guys|kids|spines?|rays?|(?:lb|pound)s?[ -](?:test|line|mono|braid|leader)|oz|ounces?)\b"
    r"(?: (?:water|jig|jigs|in (?:the )?boat|along))*", re.IGNORECASE)
_DAY = (r"(?:yesterday|last night|last week|the day before|(?:on |last )?(?:mon|tues|wednes|thurs|fri|satur|sun)day)")
_GONE = re.compile(r",?\s*(?:and |but )?(?:we |i |all |have been |were |was )*(?:ate|eaten|gave|given)\b"
                   r"(?: (?:it|them|all|away|up))*", re.IGNORECASE)
_THEN = re.compile(rf"\b{_DAY}\b", re.IGNORECASE)
_KEPT_THEN = re.compile(
    rf"\b(?:i |we )?(?:kept|had|put) ({_N})\b(?: (?!yesterday|today|last|on )[\w'-]+){{0,3}} {_DAY}\b", re.IGNORECASE)
_THEN_KEPT = re.compile(rf"\b{_DAY},? (?:i |we )?(?:kept|had|put) ({_N})\b", re.IGNORECASE)
_COUNT_THEN = re.compile(rf"\b({_N})(?: kept)? {_DAY}\b", re.IGNORECASE)
_COUNT_NOW = re.compile(rf"(?<!kept )(?<![\d.])\b(\d+|{_WORD}) today\b", re.IGNORECASE)
_ASKED_NOW = re.compile(r"\bkeep\b|\btoday\b|\bthis (?:one|is)\b|\d ?(?:cm|mm|in|inch|inches)\b", re.IGNORECASE)
_THEIRS = re.compile(
    rf"\b{_N} in the (?:freezer|fridge)\b[^.;,]*\b(?:my|his|her) \w+'?s\b"
    rf"|\b{_N} (?:\w+ )?(?:kept|taken|caught) by (?:my|his|her|our|a|another) \w+\b", re.IGNORECASE)


def said_plainly(text: str, kept: int, judged: bool) -> str:
    """The line with figures for lengths told in words, and with nothing counted that is no fish of the asker's today.

    ``kept`` fish were told of before a verdict (``judged``), so that "kept that one too" makes one more.
    """
    text = _LIMIT_OF.sub(r"kept \1", text)
    text = _in_figures(_SHORT.sub(" ", _FULL.sub(" ", text)))
    text = _NTH.sub(r"my \1 \2 \3", text)
    text = _DOZENS.sub(_dozens, _FEW.sub("several", _COUPLE.sub("2", text)))
    text = _ALL_BUT.sub(lambda m: f"kept {max(0, _number(m[1]) - _number(m[2]))}", text)
    text = _KEPT_IT.sub(f"kept {kept + 1}", text) if judged else text
    text = _OTHER.sub(" ", text) if re.search(r"\bkept\b", text, re.IGNORECASE) else text
    text = _THEIRS.sub(" ", text)
    return _of_other_days(text) if tells_other_days(text) else text


def short_of_limit(text: str) -> int | None:
    """How many fish are lacking to the bag limit that the line tells of: 0 for a full one, None where none is told."""
    short = _SHORT.search(text)
    return _number(short[1]) if short else 0 if _FULL.search(text) else None


def _dozens(found: re.Match[str]) -> str:
    """Twelves in figures: half a dozen is 6, a dozen and a half 18."""
    half, several, more = found[1], found[2], found[3]
    return "6" if half else str(12 * (_number(several) if several else 1) + (6 if more else 0))


def tells_other_days(text: str) -> bool:
    """True where fish kept on an earlier day are told of beside the one asked about."""
    told = _KEPT_THEN.search(text) or _THEN_KEPT.search(text) or (
        _COUNT_THEN.search(text) and re.search(r"\bkept\b", text, re.IGNORECASE))
    rest = _THEN.sub(" ", _THEN_KEPT.sub(" ", _KEPT_THEN.sub(" ", text)))
    return bool(told) and _ASKED_NOW.search(rest) is not None


def _of_other_days(text: str) -> str:
    """Fish of earlier days as stored ones, and none where they are eaten or given away."""
    gone = _GONE.search(text) is not None
    stored = "" if gone else "kept {} from earlier days"
    for pattern in (_THEN_KEPT, _KEPT_THEN):
        text = pattern.sub(lambda m: stored.format(_number(m[1])), text)
    text = _COUNT_THEN.sub(lambda m: "" if gone else f"{_number(m[1])} from earlier days", text)
    return _COUNT_NOW.sub(r"kept \1", _GONE.sub(" ", text))


def _in_figures(text: str) -> str:
    """A foot and a half, "12 and 3/4", "71,5" as figures with one unit."""
    text = _HOURS.sub(" ", _COMMA.sub(r"\1.\2", text))
    text = _FOOT_AND_HALF.sub(lambda m: f"{12 * _number(m[1] or m[2]) + 6} inches", text)
    text = _FOOT_AND.sub(lambda m: f"{12 * _number(m[1]) + _number(m[2])} inches", text)
    return _AND_PART.sub(lambda m: f"{m[1]} {_PARTS[m[2].lower()] if m[2] else m[3]}", text)


def _number(word: str) -> int:
    """The number that a figure, a word or an article tells."""
    figure = NUMBERS.get(word.lower(), word)
    return int(figure) if figure.isdigit() else 1
