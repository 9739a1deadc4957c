"""The wording of limits, lengths, counts and seasons of fishing rules, in pieces of sentences (layer 4)."""

from __future__ import annotations

from assistant.text import join

ANY_FISH = "any fish"


def about(text: str) -> str:
    """A guessed length."""
    return f"about {text}"


def over(text: str) -> str:
    """A length beyond another."""
    return f"over {text}"


def under(text: str) -> str:
    """A length short of another."""
    return f"under {text}"


def from_to(low: str, high: str) -> str:
    """A length somewhere between two."""
    return f"{low} to {high}"


def span(low: int, high: int) -> str:
    """A count between two."""
    return f"{low} to {high}"


def span_both(low: str, high: str, unit: str, other_low: str, other_high: str) -> str:
    """Two lengths in both units."""
    return f"{low} to {high} {unit} ({other_low} to {other_high})"


def ends(low: bool, high: bool) -> str:
    """Which ends of a span belong to it."""
    if low and high:
        return "both ends included"
    if not low and not high:
        return "ends not included"
    return "the lower end included" if low else "the upper end included"


def keep_span(text: str, ends_told: str) -> str:
    """A harvest slot."""
    return f"only fish of {text} may be kept, {ends_told}"


def release_span(text: str, ends_told: str) -> str:
    """A protected slot."""
    return f"fish of {text} go back, {ends_told}"


def minimum(text: str, included: bool) -> str:
    """A minimum length."""
    return f"at least {text}" if included else f"longer than {text}"


def maximum(text: str, included: bool) -> str:
    """A maximum length."""
    return f"at most {text}" if included else f"shorter than {text}"


def release_above(text: str, included: bool) -> str:
    """Everything from a length up goes back."""
    return f"fish of {text} and longer go back" if included else f"fish over {text} go back"


def release_below(text: str, included: bool) -> str:
    """Everything up to a length goes back."""
    return f"fish of {text} and shorter go back" if included else f"fish under {text} go back"


def at_most_over(count: int, text: str, included: bool) -> str:
    """A number of large fish."""
    return f"at most {count} of {text} or longer" if included else f"at most {count} over {text}"


def no_limit(name: str) -> str:
    """A count without a limit, as the rule states it."""
    return f"no limit on {name}, as the rule states"


def of_limit(have: str, limit: int, name: str, kind: str) -> str:
    """A count of a limit."""
    where = " in possession" if kind == "possession" else " over the length" if kind == "one-over" else ""
    return f"{have} of {limit} {name}{where}"


def in_area(place: str) -> str:
    """In a state, province or zone."""
    return f"in {place}"


def on_water(place: str) -> str:
    """On a water."""
    return f"on {place}"


def cross(first: str, second: str) -> str:
    """A cross by its parents."""
    return f"{first} x {second} hybrid"


def words_of(key: str) -> str:
    """An id nobody gave a name."""
    return key.replace("-", " ")


def open_until(last: str) -> str:
    """Open for keeping."""
    return f"open through {last}" if last else "open all year"


def release_only_until(last: str, opens: str) -> str:
    """Open for fishing, not for keeping."""
    until = f" through {last}" if last else ""
    return f"release only{until}" + (f", keeping opens on {opens}" if opens else "")


def closed_until(opens: str) -> str:
    """Not open."""
    return f"closed until {opens}" if opens else "closed"


def fewer_than(limits: list[str]) -> str:
    """Kept count not told."""
    return f"keep if you have fewer than {join(limits)} so far today"


def with_big(text: str, sure: list[str], perhaps: list[str], measured: bool) -> str:
    """The room left, with the limits on large fish that this one counts in, and those that it may count in."""
    if sure:
        text = f"{text}, and of such large fish {join(sure)}"
    if not perhaps:
        return text
    why = ": it may lie on either side of that mark, so measure it" if measured else ", so measure first"
    return f"{text}; of large fish {join(perhaps)}{why}"


def room(counts: list[str]) -> str:
    """Kept count told: what is left."""
    return f"the day is not full: {join(counts)} before this one"


def filled(counts: list[str], told: bool) -> str:
    """The counts with these fish among them."""
    return join(counts) + ("" if told else ", if none were kept before")


def many(count: int, fish: str) -> str:
    """Several fish of a kind."""
    return f"{count} {fish}"
