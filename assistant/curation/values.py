"""Values as curators write them, in cells and options: numbers with ranges and units, states, scopes (layer 4)."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass, field
from decimal import Decimal

from assistant.errors import DataError
from assistant.graph.values import Literal, Value

_N = r"([0-9]+(?:\.[0-9]+)?)"
_DASH = re.compile(r"\s*[–—−-]\s*")
_DATE_LIKE = re.compile(r"(\d{1,2}[-/ ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b.*|"
                        r"(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-/ ]\d{1,4}|"
                        r"\d{4}-\d\d-\d\d(t.*| .*)?|\d{1,2}/\d{1,2}/\d{2,4})", re.I)
_UNIT = re.compile(r"\s*(mm|cm|in|inches|g|kg|c|%)$", re.I)
_FACTOR = {"mm": ("unit:MilliM", "1"), "cm": ("unit:MilliM", "10"), "in": ("unit:MilliM", "25.4"),
           "inches": ("unit:MilliM", "25.4"), "g": ("unit:GM", "1"), "kg": ("unit:GM", "1000"),
           "c": ("unit:DEG_C", "1"), "%": ("unit:PERCENT", "1")}
UNSEEN = ("Cc", "Cf", "Cs", "Co")
"""Unicode categories of characters that stand in no text: controls, and what is not seen."""
NAMING = ("skos:prefLabel", "skosxl:literalForm", "dwc:scientificName")
"""Properties whose text is a name."""
DEFAULT_UNIT = {"length": "unit:MilliM", "mass": "unit:GM", "temperature": "unit:DEG_C", "count": "unit:NUM"}
OF_RATIOS = ("", "unit:PERCENT")
_TYPED_UNITS = {"length": "mm, cm or in", "mass": "g or kg", "temperature": "C", "ratio": "%"}
"""Kinds of characters whose numbers may be typed with a unit, and with which."""
_FORMS: tuple[tuple[re.Pattern[str], tuple[str, ...]], ...] = tuple((re.compile(p), names) for p, names in (
    (rf"{_N}\({_N}-{_N}\){_N}", ("low", "usualLow", "usualHigh", "high")),
    (rf"\({_N}\)-?{_N}-{_N}-?\({_N}\)", ("low", "usualLow", "usualHigh", "high")),
    (rf"{_N}\({_N}-{_N}\)", ("low", "usualLow", "usualHigh")),
    (rf"{_N}-{_N}\({_N}\)", ("usualLow", "usualHigh", "high")),
    (rf"\({_N}-{_N}\){_N}", ("usualLow", "usualHigh", "high")),
    (rf"\({_N}-{_N}\)", ("usualLow", "usualHigh")),
    (rf"{_N}-{_N}", ("low", "high")),
    (rf"(?:>=|>|atleast){_N}", ("low",)),
    (rf"(?:<=|<|upto|atmost){_N}", ("high",)),
    (rf"{_N}\+", ("low",)),
    (rf"(?:about|c\.|~)?{_N}", ("low", "high")),
))
_TAIL = re.compile(rf"(?:;?mean{_N})?(?:;?sd{_N})?(?:;?n([0-9]+))?$")


def decimal_literal(number: Decimal) -> Literal:
    """A number as a decimal in its shortest form.

    >>> decimal_literal(Decimal("8.50")).value, decimal_literal(Decimal(8)).value
    ('8.5', '8.0')
    """
    text = f"{number:f}"
    text = text.rstrip("0") if "." in text else text + "."
    return Literal(text + "0" if text.endswith(".") else text, "xsd:decimal")


def name_fault(text: str) -> str:
    """Why a text can be the name of no fish; empty where it can be one.

    >>> name_fault("doré jaune"), name_fault("<b>doré</b>"), name_fault("do\\x1bré")
    ('', 'an angle bracket stands in it', 'a control character stands in it')
    """
    if any(unicodedata.category(c) in UNSEEN for c in text):
        return "a control character stands in it"
    if "<" in text or ">" in text:
        return "an angle bracket stands in it"
    return "no letter stands in it" if text.strip() and not any(c.isalpha() for c in text) else ""


def number_props(text: str, kind: str) -> dict[str, list[Value]]:
    """The properties of a number as written: "9-11", "8(9-10)11", "12", ">=5", with mean, sd, n and unit.

    Raises DataError for what is no number; a cell that a table program has turned into a date is named as such.
    """
    flat = _plain_number(text)
    tail = _TAIL.search(flat)
    head = flat[: tail.start()] if tail else flat
    unit_match = _UNIT.search(head)
    unit, factor = _FACTOR[unit_match.group(1).lower()] if unit_match else (DEFAULT_UNIT.get(kind, ""), "1")
    head = head[: unit_match.start()] if unit_match else head
    props: dict[str, list[Value]] = {}
    if head:
        for pattern, names in _FORMS:
            if match := pattern.fullmatch(head):
                found = match.groups() * (2 if names == ("low", "high") and len(match.groups()) == 1 else 1)
                props = {f"tf:{n}": [_scaled(g, factor)] for n, g in zip(names, found, strict=True)}
                break
        else:
            raise DataError(f"the value {text!r} is no number", 'write 9-11, 8(9-10)11, 12 or >=5, with a unit if any')
    if tail:
        props |= _tail_props(tail, factor)
    if not props:
        raise DataError(f"the value {text!r} is no number", "write 9-11, 8(9-10)11, 12 or >=5")
    if unit_match and unit != DEFAULT_UNIT.get(kind, "unit:PERCENT"):
        raise DataError(f"the value {text!r} has a unit that does not fit",
                        f"a {kind} takes {_TYPED_UNITS.get(kind, 'no unit')}")
    if unit:
        props["qudt:hasUnit"] = [unit]
    return props


def _plain_number(text: str) -> str:
    if looks_like_date(text):
        raise DataError(f"the value {text!r} is a date",
                        "a table program may have changed 10-12; keep the column as text")
    return _DASH.sub("-", text.strip()).replace(" ", "").lower().replace("mean=", "mean") \
        .replace("sd=", "sd").replace("n=", "n")


def looks_like_date(text: str) -> bool:
    """True for text that a table program makes of a range ("10-Dec", "2026-12-10")."""
    return _DATE_LIKE.fullmatch(text.strip()) is not None


def _tail_props(tail: re.Match[str], factor: str) -> dict[str, list[Value]]:
    mean, sd, n = tail.groups()
    props: dict[str, list[Value]] = {}
    if mean:
        props["tf:mean"] = [_scaled(mean, factor)]
    if sd:
        props["tf:spread"] = [_scaled(sd, factor)]
    if n:
        props["tf:sampleSize"] = [Literal(str(int(n)), "xsd:integer")]
    return props


def _scaled(text: str, factor: str) -> Literal:
    return decimal_literal(Decimal(text) * Decimal(factor))


@dataclass(slots=True)
class Scope:
    """The properties of a scope as written, and what was left over in words."""

    props: dict[str, list[Value]] = field(default_factory=dict)
    places: list[str] = field(default_factory=list)


_WORDS: dict[str, tuple[str, Value]] = {
    "male": ("dwc:sex", Literal("male")), "males": ("dwc:sex", Literal("male")),
    "female": ("dwc:sex", Literal("female")), "females": ("dwc:sex", Literal("female")),
    "adult": ("dwc:lifeStage", Literal("adult")), "adults": ("dwc:lifeStage", Literal("adult")),
    "juvenile": ("dwc:lifeStage", Literal("juvenile")), "juveniles": ("dwc:lifeStage", Literal("juvenile")),
    "young": ("dwc:lifeStage", Literal("juvenile")), "larva": ("dwc:lifeStage", Literal("larva")),
    "breeding": ("dwc:reproductiveCondition", Literal("breeding")),
    "non-breeding": ("dwc:reproductiveCondition", Literal("non-breeding")),
    "in-hand": ("tf:view", "tf:in-hand"), "in hand": ("tf:view", "tf:in-hand"),
    "underwater": ("tf:view", "tf:underwater"), "under water": ("tf:view", "tf:underwater"),
    "dead-fish": ("tf:view", "tf:dead-fish"), "dead fish": ("tf:view", "tf:dead-fish"),
}
_FROM = re.compile(rf"(?:>=|>|over|above|from)\s*{_N}\s*mm", re.I)
_TO = re.compile(rf"(?:<=|<|under|below|to)\s*{_N}\s*mm", re.I)


def parse_scope(text: str) -> Scope:
    """A scope such as "breeding; male", "juvenile; <80 mm", "region=US-OH|US-MI", "season=spring".

    Parts that have no property of their own are kept in words (tf:scopeText).
    """
    scope = Scope()
    rest: list[str] = []
    for part in (p.strip() for p in text.split(";")):
        low = part.lower()
        if not part:
            continue
        if low in _WORDS:
            predicate, value = _WORDS[low]
            scope.props.setdefault(predicate, []).append(value)
        elif match := _FROM.fullmatch(part):
            scope.props["tf:fromLength"] = [decimal_literal(Decimal(match.group(1)))]
        elif match := _TO.fullmatch(part):
            scope.props["tf:toLength"] = [decimal_literal(Decimal(match.group(1)))]
        elif low.startswith("region="):
            scope.places += [p.strip() for p in part[7:].split("|") if p.strip()]
        elif low.startswith("season="):
            scope.props["tf:season"] = [Literal(part[7:].strip())]
        else:
            rest.append(part)
    if rest:
        scope.props["tf:scopeText"] = [Literal("; ".join(rest))]
    return scope
