"""Dates and seasons in typed text; the day of the clock is an argument (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import date, timedelta
from functools import cache
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import NUMBERS

MONTHS: dict[str, int] = {
    word: number
    for number, words in enumerate(
        (
            "january jan",
            "february feb febuary",
            "march",
            "april apr",
            "may",
            "june jun",
            "july jul",
            "august aug",
            "september sept sep",
            "october oct",
            "november nov",
            "december dec",
        ),
        1,
    )
    for word in words.split()
}
DAYS: dict[str, int] = {
    word: number
    for number, words in enumerate(
        (
            "monday mondays",
            "tuesday tues",
            "wednesday wednesdays",
            "thursday thurs",
            "friday fri",
            "saturday sat saterday",
            "sunday",
        )
    )
    for word in words.split()
}
ORDINALS = {
    "first": 1,
    "1st": 1,
    "second": 2,
    "2nd": 2,
    "third": 3,
    "3rd": 3,
    "fourth": 4,
    "4th": 4,
    "last": -1,
    "opening": 1,
}
SEASON = "season-"
"""Cue families of seasons begin so in the base: season-winter, season-spawning, ..."""
_MONTH = "|".join(sorted(MONTHS, key=len, reverse=True))
_DAY = "|".join(sorted(DAYS, key=len, reverse=True))
_PAST = rf"\b(?:caught|landed|hooked|pulled|took|went|fished|was|were|did|had)\b|\blast\s+(?:{_MONTH})\b"
"""Words by which a line tells of days gone by."""
_NUMBER = r"(?:\d{1,3}|" + "|".join(w for w in NUMBERS if w not in ("zero",)) + r"|an?)"


class When(NamedTuple):
    """A date ("2026-06-02", "--06-02", "--06", "2026-06"), a season word, and the stretches they were read from."""

    date: str | None = None
    season: str = ""
    spans: tuple[tuple[int, int], ...] = ()


def read_when(text: str, tokens: Sequence[Token], lexicon: Lexicon, clock: date) -> When:
    """The date and the season told in a line; the first of each that makes sense."""
    lower = text.lower()
    found: str | None = None
    spans: list[tuple[int, int]] = []
    for pattern, make in _forms() if _may_tell(lower) else ():
        for match in pattern.finditer(lower):
            value = make(match, clock)
            if value is None:
                continue
            if value:
                found = value
                spans.append(match.span())
            return When(found, _season(tokens, lexicon), tuple(spans))
    return When(None, _season(tokens, lexicon), ())


def _season(tokens: Sequence[Token], lexicon: Lexicon) -> str:
    for size in (3, 2, 1):
        for at in range(len(tokens) - size + 1):
            phrase = " ".join(t.word for t in tokens[at : at + size])
            for cue in lexicon.cues(phrase):
                if cue.startswith(SEASON) and not _place_word(tokens, at + size):
                    return cue.removeprefix(SEASON)
    return ""


def _place_word(tokens: Sequence[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].word in ("creek", "lake", "river", "fed", "water", "off", "apart", "run")


def dated(text: str, since: date) -> str:
    """The text with days counted from the one spoken of ("a week later", "the next day", "on the 20th") as ISO dates.

    Such words count only where they end a clause or stand before a place ("a week later at the weir").
    """
    def told(match: re.Match[str]) -> str:
        if match["day"]:
            return _iso(since.year, since.month, int(match["day"])) or match[0]
        word = (match["n"] or "a").lower()
        count = 1 if word in ("a", "an") else int(NUMBERS.get(word, word))
        unit = (match["unit"] or match["next"] or match["beside"]).lower()
        back = (match["way"] or match["side"] or "").lower() in ("earlier", "before that", "before")
        with suppress(OverflowError):
            return (since + timedelta(days=count * (7 if unit == "week" else 1) * (-1 if back else 1))).isoformat()
        return match[0]

    return _since().sub(told, text)


@cache
def _since() -> re.Pattern[str]:
    return re.compile(
        rf"(?<![\w.-])(?<!half )(?:(?P<n>{_NUMBER})\s+(?P<unit>day|week)s?\s+"
        r"(?P<way>later|earlier|after that|before that)"
        r"|(?:the )?(?:next|following) (?P<next>day|week)|the (?P<beside>day|week) (?P<side>after|before)"
        r"|on the (?P<day>\d{1,2})(?:st|nd|rd|th))(?=\s*(?:[,.;?!]|$|at\b|in\b|up\b))", re.IGNORECASE)


def tells_past(text: str) -> bool:
    """True for a line that tells of what has been ("I caught one on april 5", "last april")."""
    return bool(re.search(_PAST, text.lower()))


def in_some_year(make: Callable[[int], date], clock: date, past: bool) -> date | None:
    """A day that comes every year, in the year in which it is the coming one (or the last gone by); today is both."""
    found = []
    for year in range(clock.year - LEAP, clock.year + LEAP + 1):
        with suppress(ValueError):
            found.append(make(year))
    return max((d for d in found if d <= clock), default=None) if past else min(
        (d for d in found if d >= clock), default=None)


LEAP = 8
"""Years between two leap days at most."""


def _iso(year: int, month: int, day: int) -> str:
    """An ISO date, or an empty text when there is no such day."""
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return ""


def _month_day(month: int, day: int, year: str | None) -> str | None:
    if year:
        return _iso(int(year), month, day)
    return f"--{month:02d}-{day:02d}" if _iso(2028, month, day) else ""


def _day_first(m: re.Match[str], _: date) -> str | None:
    return _month_day(MONTHS[m["month"]], int(m["day"]), m["year"])


def _plain_iso(m: re.Match[str], _: date) -> str | None:
    return _iso(int(m["year"]), int(m["month"]), int(m["day"]))


def _slashed(m: re.Match[str], _: date) -> str | None:
    return _iso(int(m["year"]), int(m["month"]), int(m["day"]))


def _apart(m: re.Match[str]) -> bool:
    """True for a word that commas or the ends of the line set off ("15 in, copperlathe tailwater, may.")."""
    before, behind = m.string[: m.start()].rstrip(), m.string[m.end() :].lstrip()
    return (not before or before[-1] in ",;.(") and (not behind or behind[0] in ",;.!)")


def _month_only(m: re.Match[str], _: date) -> str | None:
    if m["year"]:
        return f"{m['year']}-{MONTHS[m['month']]:02d}"
    if m["month"] == "may" and not m["lead"] and not _apart(m):
        return None
    if m["month"] == "march" and re.match(r"\s+(?:in|on|up|to)\b", m.string[m.end() :]):
        return None
    return f"--{MONTHS[m['month']]:02d}"


def _relative(m: re.Match[str], clock: date) -> str | None:
    word = m["word"]
    step = {"today": 0, "tonight": 0, "this morning": 0, "this afternoon": 0, "this evening": 0, "right now": 0}.get(
        word
    )
    if step is None:
        step = (
            2
            if word.startswith("day after")
            else -2
            if word.startswith("day before")
            else 1
            if word.startswith("tom")
            else -1
        )
    return (clock + timedelta(days=step)).isoformat()


SATURDAY = 5


def _stretch(m: re.Match[str], clock: date) -> str | None:
    """The first day of a week or weekend to come (today within this one), the month, the last day of one gone by."""
    lead, unit = m["lead"].split()[-1], m["unit"]
    ahead = lead in ("next", "following")
    if unit == "month":
        months = clock.year * 12 + clock.month - 1 + {"last": -1, "past": -1}.get(lead, int(ahead))
        return f"{months // 12}-{months % 12 + 1:02d}"
    if unit == "week":
        return (clock + timedelta(days=7 if ahead else -7 if lead in ("last", "past") else 0)).isoformat()
    saturday = clock + timedelta(days=SATURDAY - clock.weekday())
    if lead in ("last", "past"):
        return (saturday - timedelta(days=7)).isoformat()
    return (saturday + timedelta(days=7) if ahead else max(saturday, clock)).isoformat()


def _weekday(m: re.Match[str], clock: date) -> str | None:
    ahead = (DAYS[m["day"]] - clock.weekday()) % 7
    if m["lead"] == "last":
        return (clock - timedelta(days=(7 - ahead) if ahead else 7)).isoformat()
    if m["lead"] == "next" and ahead == 0:
        ahead = 7
    return (clock + timedelta(days=ahead)).isoformat()


def _floating(m: re.Match[str], clock: date) -> str | None:
    def make(year: int) -> date:
        return nth_weekday(year, MONTHS[m["month"]], DAYS[m["day"]], ORDINALS[m["nth"]])

    return make(int(m["year"])).isoformat() if m["year"] else _undated(make, m, clock)


def _undated(make: Callable[[int], date], m: re.Match[str], clock: date) -> str | None:
    found = in_some_year(make, clock, tells_past(m.string))
    return None if found is None else found.isoformat()


def nth_weekday(year: int, month: int, weekday: int, nth: int) -> date:
    """The nth weekday (Monday 0) of a month; -1 for the last."""
    if nth > 0:
        first = date(year, month, 1)
        return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (nth - 1))
    following = date(year + (month == 12), month % 12 + 1, 1) - timedelta(days=1)
    return following - timedelta(days=(following.weekday() - weekday) % 7)


def _span_away(m: re.Match[str], clock: date) -> str | None:
    word = m["n"]
    n = 1 if word in ("a", "an") else int(NUMBERS.get(word, word))
    days = n * {"d": 1, "w": 7, "m": 30}[m["unit"][0]]
    return (clock + timedelta(days=-days if m["way"] == "ago" else days)).isoformat()


_HOLIDAYS: dict[str, tuple[int, int] | tuple[int, int, int]] = {
    "christmas": (12, 25),
    "xmas": (12, 25),
    "new years": (1, 1),
    "new year": (1, 1),
    "canada day": (7, 1),
    "halloween": (10, 31),
    "independence day": (7, 4),
    "memorial day": (5, 0, -1),
    "labor day": (9, 0, 1),
    "labour day": (9, 0, 1),
    "thanksgiving": (11, 3, 4),
}
"""Fixed days (month, day) and floating ones (month, weekday, nth)."""


def _holiday(m: re.Match[str], clock: date) -> str | None:
    rule = _HOLIDAYS[m["name"]]
    if len(rule) == 2:
        return f"--{rule[0]:02d}-{rule[1]:02d}"
    month, weekday, nth = rule
    return _undated(lambda year: nth_weekday(year, month, weekday, nth), m, clock)


_Make = Callable[[re.Match[str], date], str | None]
_FORMS: tuple[tuple[str, _Make], ...] = (
    (r"\b(?P<year>20\d\d)-(?P<month>\d\d?)-(?P<day>\d\d?)\b", _plain_iso),
    (r"\b(?P<month>\d\d?)/(?P<day>\d\d?)/(?P<year>20\d\d)\b", _slashed),
    (
        rf"\b(?P<nth>{'|'.join(ORDINALS)})\s+(?P<day>{_DAY})\s+(?:in|of)\s+(?P<month>{_MONTH})\b(?:,?\s+(?P<year>20\d\d))?",
        _floating,
    ),
    (
        rf"\b(?P<month>{_MONTH})\.?\s+(?P<day>[0-3]?\d)(?:st|nd|rd|th)?\b(?!\s*(?:inch|inches|cm|lb|lbs|/|\"|in\b(?!\s[a-z])))"
        r"(?<!may \d(?=\s*in\b))(?<!may \d\d(?=\s*in\b))(?:,?\s*(?P<year>20\d\d))?",
        _day_first,
    ),
    (
        rf"\b(?P<day>[0-3]?\d)(?:st|nd|rd|th)?\s+(?:of\s+)?(?P<month>{_MONTH})\b\.?(?:,?\s+(?P<year>20\d\d))?",
        _day_first,
    ),
    (
        r"\b(?P<word>day after tom\w+|day before yest\w+|to?mm?orr?ow|tomorow|tommorow|yesterday|yesterdy|today"
        r"|tonight|this morning|this afternoon|this evening)\b",
        _relative,
    ),
    (rf"\b(?:(?P<lead>this|next|last|on|this coming)\s+)(?P<day>{_DAY})\b", _weekday),
    (
        r"(?<!\bthe )(?<!\btill )(?<!\buntil )\b(?P<lead>this coming|this|next|last|past|coming)\s+"
        r"(?P<unit>week|weekend|wknd|month)\b(?!\s+s\b|['’]s)",
        _stretch,
    ),
    (rf"\b(?P<n>{_NUMBER})\s+(?P<unit>days?|weeks?|wks?|months?)\s+(?P<way>ago)\b", _span_away),
    (rf"\b(?P<way>in)\s+(?P<n>{_NUMBER})\s+(?P<unit>days?|weeks?|wks?|months?)\b", _span_away),
    (rf"\b(?P<name>{'|'.join(_HOLIDAYS)})\b", _holiday),
    (
        rf"\b(?P<lead>(?:in|on|early|mid|late|of|this|next|last|by|until|during|since|through|around|every|for)[\s-]+)?"
        rf"(?P<month>{_MONTH})\b(?:,?\s+(?:of\s+)?(?P<year>20\d\d)\b)?",
        _month_only,
    ),
)


def _may_tell(lower: str) -> bool:
    """False for a line with no word or number of a date in it: its patterns are then not even made."""
    words = _WORD.findall(lower)
    return any(w in _HINTS or w.startswith(_RELATIVE) or w.startswith("20") for w in words)


_WORD = re.compile(r"[a-z]+|\d+")
_RELATIVE = ("tom", "tmo", "tmm", "yest", "today", "tonight")
_LEADS = ("ago", "coming", "in", "last", "next", "past", "this")
_HINTS = frozenset((*(w.split()[0] for w in (*MONTHS, *DAYS, *_HOLIDAYS)), *_LEADS))


@cache
def _forms() -> tuple[tuple[re.Pattern[str], _Make], ...]:
    """The ways to tell a date with what makes one of a match, in the order in which they are tried."""
    return tuple((re.compile(pattern), make) for pattern, make in _FORMS)
