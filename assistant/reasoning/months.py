"""Seasons and months in words, as calendar seasons of the northern half of the world (layer 3)."""

from __future__ import annotations

from assistant.text import key

MONTHS = ("january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
          "december")
SEASONS = {"spring": (3, 5), "summer": (6, 8), "autumn": (9, 11), "winter": (12, 2)}
"""First and last month of each season (common practice, no source)."""
_SAME = {"fall": "autumn", "midsummer": "summer", "ice": "spring"}
_BRIDGES = frozenset(("to", "through", "until", "till"))


def seasons_of(text: str) -> frozenset[str]:
    """The seasons that a time of the year told in words falls into.

    >>> sorted(seasons_of("October to December")), sorted(seasons_of("late-spring-to-late-summer"))
    (['autumn', 'winter'], ['spring', 'summer'])
    """
    out: set[int] = set()
    start: int | None = None
    bridged = False
    for word in key(text).split():
        span = _span(word)
        if span is None:
            bridged = bridged or word in _BRIDGES
            continue
        first = start if bridged and start is not None else span[0]
        out |= {m % 12 for m in range(first, first + (span[1] - first) % 12 + 1)}
        start, bridged = span[0], False
    return frozenset(name for name, (first, last) in SEASONS.items()
                     if out & {m % 12 for m in range(first, first + (last - first) % 12 + 1)})


def _span(word: str) -> tuple[int, int] | None:
    word = _SAME.get(word, word)
    if word in SEASONS:
        return SEASONS[word]
    if word in MONTHS:
        return MONTHS.index(word) + 1, MONTHS.index(word) + 1
    return None
