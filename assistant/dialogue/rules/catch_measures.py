"""Lengths, counts, days and hours in sentences about a catch (layer 4).

Each reader takes a text and gives what it found with the text that is left, so that nothing is read twice.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from datetime import date, time, timedelta
from decimal import Decimal

from assistant.dialogue.reader.number_words import in_figures
from assistant.dialogue.reader.when import in_some_year
from assistant.errors import DataError
from assistant.reasoning import catch as c
from assistant.reasoning.calendar import HOLIDAYS, MONTHS, nth_weekday

NUMBER_WORDS: dict[str, int] = {
    word: n for n, word in enumerate(
        ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
         "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen", "twenty"))
} | {"no": 0, "none": 0, "nothing": 0, "a": 1, "an": 1, "both": 2, "couple": 2, "dozen": 12, "thirty": 30,
     "forty": 40, "fifty": 50, "another": 1, "single": 1}
_FRACTIONS = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_FRACTION = r"\d+/0*[1-9]\d*"
"""Never over nothing: hook sizes ("1/0") are no lengths."""
_NUM = rf"(?<!\d/)(?<!\d)(?:(?:\d+(?:\.\d+)?|\.\d+)(?:[ -]{_FRACTION})?|{_FRACTION})"
_IN = r"in(?:ch(?:es)?|s)?\b\.?(?!\s+(?:the|my|our|his|her|a|an|possession|all|total|bag|stock|storage)\b)"
_UNIT = rf"(?:cm|centimet(?:er|re)s?|mm|millimet(?:er|re)s?|{_IN}|inchers?|\"|”|″|m\b|met(?:er|re)s?)"
_EXACT = r"exactly|on the (?:nose|dot|line|button)|dead on|to the line"
_LENGTH = re.compile(
    rf"(?P<word>(?:just|slightly|a hair|a touch|a bit|barely|well)?\s*"
    rf"(?:(?<!what )(?<!how )about|around|roughly|approximately|approx\.?|maybe|perhaps|some|circa|ca\.?|~|exactly|"
    rf"over|above|longer than|bigger than|more than|larger than|at least|or so|under|below|shorter than|"
    rf"smaller than|less than|nearly|almost|"
    rf"close to|short of|shy of|up to|at most|not over|between|from)\s+|~)?"
    rf"(?P<low>{_NUM})(?:\s*(?:{_UNIT})?\s*(?P<link>-|–|—|to|or|and)\s*(?P<high>{_NUM}))?"
    rf"(?:\s*|-)(?P<unit>{_UNIT})(?P<after>\s*"
    rf"(?:or so|ish|give or take|{_EXACT}|(?:to the |at the )?fork(?: length)?|fl\b))?",
    re.IGNORECASE)
_FEET = re.compile(
    rf"(?P<feet>\d+)\s*(?:ft|feet|foot|')\.?"
    rf"(?:\s*(?P<inches>{_NUM})(?:\s*(?:{_IN}|\"|”|″)|(?=\s*(?:$|[,.;?!]|keep|legal|ok)))(?!\s*(?:kept|fish|of)))?",
    re.IGNORECASE)
_ABOUT = ("about", "around", "roughly", "approx", "maybe", "perhaps", "some", "circa", "ca", "~", "close to", "or so",
          "ish", "give or take")
_OVER = ("over", "above", "longer than", "bigger than", "more than", "larger than")
_UNDER = ("under", "below", "shorter than", "smaller than", "less than", "nearly", "almost", "short of", "shy of")


_NOT_A_LENGTH = re.compile(
    r"\b(?:in |at )?\d+(?:\.\d+)?\s*(?:(?:ft|feet|foot|m|met(?:er|re)s?)\s*(?:of water|deep|down)|lbs?|pounds?|oz|"
    r"ounces?|kg|kilos?|grams?|g|°\s*[CF]|degrees)\b\.?|"
    r"\b(?:from|out of|down (?:in|at)|deep (?:in|at))\s+(?:about |around |some |maybe )?\d+(?:\.\d+)?\s*"
    r"(?:ft|feet|foot|m|met(?:er|re)s?)\b\.?|"
    r"\b(?:2[1-9]|[3-9]\d|\d{3,})\s*(?:ft|feet|foot)\b\.?", re.IGNORECASE)
"""Depths (what a fish came up from, or more feet than any fish has), weights and temperatures, which no rule of keeping
asks for."""


_PARTS = {"half": "1/2", "a half": "1/2", "one half": "1/2", "a quarter": "1/4", "one quarter": "1/4",
          "three quarters": "3/4", "three quarter": "3/4"}
_AND_PART = re.compile(rf"\b(\d+) and ({'|'.join(sorted(_PARTS, key=len, reverse=True))})\b", re.IGNORECASE)
"""A part of the unit told in words ("35 and a half")."""


def plain_numbers(text: str) -> str:
    """Fractions, dashes and typed quotes in one form; depths, weights and temperatures left out."""
    text = _AND_PART.sub(lambda m: f"{m[1]} {_PARTS[m[2].lower()]}", in_figures(text))
    for sign, words in _FRACTIONS.items():
        text = re.sub(rf"(?<=\d){sign}", f" {words}", text).replace(sign, words)
    text = re.sub(r"(?<=\d)-(?=\d+/\d+)", " ", _NOT_A_LENGTH.sub(" ", text))
    return re.sub(r"\s+", " ", text.replace("’", "'")).strip()


def number(text: str) -> Decimal:
    """The value of "13", "13.5", "13 3/4" or "3/4"."""
    total = Decimal(0)
    for part in re.split(r"[ -]", text.strip()):
        if "/" in part:
            top, bottom = part.split("/")
            total += Decimal(top) / Decimal(bottom)
        else:
            total += Decimal(part)
    return total


def count_of(word: str) -> int | None:
    """The whole number that a word or figure means, if any.

    >>> count_of("two"), count_of("12"), count_of("none"), count_of("bluegill")
    (2, 12, 0, None)
    """
    word = word.lower()
    return int(word) if word.isdigit() else NUMBER_WORDS.get(word)


def _unit(text: str) -> str:
    text = text.lower().strip(". ")
    if text.startswith(("cm", "cent")):
        return "cm"
    if text.startswith(("mm", "milli")):
        return "mm"
    return "m" if text.startswith("m") else "in"


def read_lengths(text: str) -> tuple[tuple[c.Length, ...], str]:
    """Every length in a text, in order, and the text without them; fork lengths and guesses keep that mark."""
    found: list[tuple[int, c.Length]] = []
    text = spelt_out(text)

    def feet(match: re.Match[str]) -> str:
        inches = Decimal(match["feet"]) * 12 + (number(match["inches"]) if match["inches"] else 0)
        found.append((match.start(), c.measured(inches, "in")))
        return " " * len(match[0])

    def plain(match: re.Match[str]) -> str:
        if match["link"] == "and" and not (match["word"] or "").strip().lower().endswith("between"):
            unit = _unit(match["unit"])
            found.extend((match.start(), c.measured(number(match[end]), unit)) for end in ("low", "high"))
        else:
            found.append((match.start(), _length(match)))
        return " " * len(match[0])

    rest = _LENGTH.sub(plain, _FEET.sub(feet, text))
    forked = re.search(r"\bfork(?:ed)?[ -]?length\b|\bto the fork\b|\bFL\b", rest)
    rest = re.sub(r"\b(?:fork(?:ed)?[ -]?length|to the fork|FL|total[ -]?length|TL|long|in length|exactly)\b", " ",
                  rest)
    lengths = tuple(length for _, length in sorted(found, key=lambda f: f[0]))
    if forked:
        lengths = tuple(_forked(length) for length in lengths)
    return lengths, re.sub(r"\s+", " ", rest).strip()


_LISTED = re.compile(
    rf"(?<!between )(?P<first>(?:\b{_NUM},\s*)*\b(?:{_NUM}))\s+and\s+(?P<last>{_NUM})\s*(?P<unit>{_UNIT})",
    re.IGNORECASE)


def spelt_out(text: str) -> str:
    """"44, 46 and 48 cm" with the unit after each, so that a list is not taken for a range."""
    def each(match: re.Match[str]) -> str:
        numbers = [*re.split(r",\s*", match["first"]), match["last"]]
        return ", ".join(f"{n} {match['unit']}" for n in numbers)

    return _LISTED.sub(each, text)


def _length(match: re.Match[str]) -> c.Length:
    word = re.sub(r"\s+", " ", (match["word"] or "").strip().lower())
    after = (match["after"] or "").strip().lower()
    low, unit = number(match["low"]), _unit(match["unit"])
    if match["high"]:
        high = number(match["high"])
        made = c.between(min(low, high), max(low, high), unit)
    elif any(word.endswith(w) for w in _OVER):
        made = c.over(low, unit)
    elif word.endswith("at least"):
        made = c.over(low, unit, True)
    elif any(word.endswith(w) for w in _UNDER):
        made = c.under(low, unit)
    elif word.endswith(("up to", "at most", "not over")):
        made = c.under(low, unit, True)
    elif (any(word.rstrip(".").endswith(w) for w in _ABOUT) or after in _ABOUT) and not re.fullmatch(_EXACT, after):
        made = c.about(low, unit)
    else:
        made = c.measured(low, unit)
    return _forked(made) if "fork" in after or after == "fl" else made


def _forked(length: c.Length) -> c.Length:
    return c.Length(length.low, length.high, length.low_included, length.high_included, c.FORK, length.about,
                    length.value, length.unit)


# days and hours ---------------------------------------------------------------------------------------------

_MONTH = r"(?P<{0}>jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?|" \
         r"oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\.?(?![a-z])"
_DAY = r"(?P<{0}>\d{{1,2}})(?:st|nd|rd|th)?"
_WEEKDAY = r"(?P<weekday>mon|tues?|wed(?:nes)?|thur?s?|fri|sat(?:ur)?|sun)(?:day)?s?"
_HOLIDAYS = {
    "memorial day": "Memorial-Day", "labor day": "Labor-Day", "labour day": "Labor-Day", "canada day": "Canada-Day",
    "victoria day": "Victoria-Day", "independence day": "Independence-Day", "thanksgiving": "Thanksgiving",
    "christmas": "Christmas-Day", "christmas day": "Christmas-Day", "xmas": "Christmas-Day",
    "new year": "New-Years-Day", "new years": "New-Years-Day", "new years day": "New-Years-Day",
}
"""Holidays as said, and their names in the calendar."""
_DATES = re.compile("|".join((
    r"(?P<iso>\d{4}-\d{2}-\d{2})",
    _DAY.format("d1") + r"\s+(?:of\s+)?" + _MONTH.format("m1") + r"(?:,?\s+(?P<y1>\d{4}))?",
    _MONTH.format("m2") + r"\s+" + _DAY.format("d2")
    + r"(?!\d|\s*(?:cm|mm)\b|(?<=may \d)\s*in\b|(?<=may \d\d)\s*in\b)(?:,?\s+(?P<y2>\d{4}))?",
    r"(?P<nth>first|second|third|fourth|last)\s+(?P<nthday>mon|tues|wednes|thurs|fri|satur|sun)day\s+(?:in|of)\s+"
    + _MONTH.format("m3") + r"(?:,?\s+(?P<y3>\d{4}))?",
    rf"(?P<holiday>{'|'.join(sorted(_HOLIDAYS, key=len, reverse=True))})\b"
    r"(?:,?\s+(?P<y4>\d{4}))?",
    r"(?P<relative>the day before yesterday|day after tomorrow|today|yesterday|tomorrow|tonight|last night|right now|"
    r"this (?:morning|afternoon|evening))",
    r"(?P<ago>\d+|one|two|three|four|five|six|a|an)\s+(?P<agounit>day|week)s?\s+ago",
    r"(?P<when>last|this|next|on)\s+" + _WEEKDAY + r"\b",
)), re.IGNORECASE)
_RELATIVE = {"the day before yesterday": -2, "day after tomorrow": 2, "yesterday": -1, "last night": -1, "tomorrow": 1}
_NTH = {"first": 1, "second": 2, "third": 3, "fourth": 4, "last": -1}


def read_days(text: str, today: date, past: bool = False) -> tuple[tuple[date, ...], str]:
    """Every day named in a text, in order, and the text without them. A day without a year is the coming one.

    ``past``: it is the last one gone by, as the line tells of what has been. Beside a date "today" or "this morning"
    is that day, unless the date is told of what was caught before.

    >>> read_days("at the lake, 4 July", date(2026, 7, 5))
    ((datetime.date(2027, 7, 4),), 'at the lake, ')
    """
    found: list[tuple[date, re.Match[str]]] = []

    def take(match: re.Match[str]) -> str:
        day = _day(match, today, past)
        if day is None:
            return match[0]
        found.append((day, match))
        return ""
    rest = _DATES.sub(take, text)
    dated = [m for _, m in found if not (m["relative"] or m["ago"] or m["weekday"])]
    return tuple(day for day, m in found if not (_loose(m) and any(_same_day(text, d, m) for d in dated))), rest


def _loose(match: re.Match[str]) -> bool:
    """True for "today" and the like."""
    return bool(match["relative"]) and match["relative"].lower() not in _RELATIVE


def _same_day(text: str, dated: re.Match[str], loose: re.Match[str]) -> bool:
    """True unless the date stands in another sentence, which tells of what was caught."""
    first, last = sorted((dated.start(), loose.start()))
    sentence = re.split(r"[.;!?]\s", text[: dated.start()])[-1]
    return not (re.search(r"[.;!?]\s", text[first:last]) and _CAUGHT.search(sentence))


_CAUGHT = re.compile(r"\b(?:kept|caught|took|taken|landed|bagged)\b", re.IGNORECASE)


def _day(match: re.Match[str], today: date, past: bool) -> date | None:
    if match["iso"]:
        with suppress(ValueError):
            return date.fromisoformat(match["iso"])
        return None
    if (yearly := _yearly(match)) is not None:
        year = next((match[f"y{n}"] for n in range(1, 5) if match[f"y{n}"]), None)
        if not year:
            return in_some_year(yearly, today, past)
        with suppress(ValueError, DataError):
            return yearly(int(year))
        return None
    if match["relative"]:
        return today + timedelta(days=_RELATIVE.get(match["relative"].lower(), 0))
    if match["ago"]:
        return today - timedelta(days=(count_of(match["ago"]) or 1) * (7 if match["agounit"].lower() == "week" else 1))
    return _weekday(match["when"].lower(), match["weekday"].lower(), today)


def _yearly(match: re.Match[str]) -> Callable[[int], date] | None:
    """The day told without its year, as what it is in each year."""
    for n in ("1", "2"):
        if match["m" + n]:
            return lambda year: date(year, _month(match["m" + n]), int(match["d" + n]))
    if match["nth"]:
        name = match["nthday"][:3].capitalize()
        return lambda year: nth_weekday(year, _month(match["m3"]), name, _NTH[match["nth"].lower()])
    if match["holiday"]:
        return HOLIDAYS[_HOLIDAYS[match["holiday"].lower()]]
    return None


def _month(text: str) -> int:
    return MONTHS[text[:3].capitalize()]


def _weekday(when: str, name: str, today: date) -> date:
    wanted = ("mon", "tue", "wed", "thu", "fri", "sat", "sun").index(name[:3])
    ahead = (wanted - today.weekday()) % 7
    if when == "last":
        return today - timedelta(days=(today.weekday() - wanted) % 7 or 7)
    if when == "next" and ahead == 0:
        ahead = 7
    return today + timedelta(days=ahead)


_TIMES = re.compile(
    r"(?:\b(?:at|around|about)\s+)?(?:(?P<h>[01]?\d|2[0-3]):(?P<m>[0-5]\d)(?:\s*(?P<half1>[ap])\.?m\.?)?"
    r"|(?P<h2>1[0-2]|[1-9])\s*(?P<half2>[ap])\.?m\b\.?|\b(?P<word>noon|midday|midnight))(?:\s+local time)?",
    re.IGNORECASE)


def read_times(text: str) -> tuple[tuple[time, ...], str]:
    """Every hour of the day named in a text, in order, and the text without them.

    >>> read_times("Fenwrithe Creek, 3:30 pm")
    ((datetime.time(15, 30),), 'Fenwrithe Creek, ')
    """
    return tuple(_time(match) for match in _TIMES.finditer(text)), _TIMES.sub("", text)


def _time(match: re.Match[str]) -> time:
    if match["word"]:
        return time(0) if match["word"].lower() == "midnight" else time(12)
    hour, minute = int(match["h"] or match["h2"]), int(match["m"] or 0)
    half = (match["half1"] or match["half2"] or "").lower()
    if half and hour <= 12:
        hour = hour % 12 + (12 if half == "p" else 0)
    return time(hour, minute)
