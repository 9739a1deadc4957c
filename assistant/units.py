"""Lengths, weights and temperatures: exact factors and one rounding rule (leaf module: imports nothing of ours)."""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

MM_PER_INCH = Decimal("25.4")
"""Exact: 1 in = 25.4 mm (US National Bureau of Standards Circular 572, addendum of 1960)."""
G_PER_POUND = Decimal("453.59237")
"""Exact: 1 lb = 0.45359237 kg (international agreement of 1 July 1959)."""
SMALL = 100
"""Millimetres from which a length is shown in centimetres."""
MM: dict[str, Decimal] = {
    "mm": Decimal(1), "cm": Decimal(10), "m": Decimal(1000), "in": MM_PER_INCH, "ft": MM_PER_INCH * 12,
}
GRAMS: dict[str, Decimal] = {
    "g": Decimal(1), "kg": Decimal(1000), "lb": G_PER_POUND, "oz": G_PER_POUND / 16,
}


def to_mm(value: Decimal | float | int | str, unit: str) -> Decimal:
    """Millimetres of a length in ``unit`` (mm, cm, m, in, ft); KeyError for another unit."""
    return Decimal(str(value)) * MM[unit]


def _round(value: Decimal, places: int) -> str:
    text = str(value.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP))
    return text.rstrip("0").rstrip(".") if "." in text else text


METRIC_UNITS = frozenset({"mm", "cm", "m", "g", "kg"})
"""The units of lengths and weights that are metric."""
METRIC = ("metric", "cm", "mm")
"""The systems whose units come first in metric: centimetres, or millimetres throughout."""

_SYSTEMS = {
    "us": "us imperial in inch inches ft foot feet lb lbs pounds oz ounces",
    "metric": "metric kg g grams kilograms",
    "cm": "cm centimetre centimetres centimeter centimeters",
    "mm": "mm millimetre millimetres millimeter millimeters",
}


def system_named(text: str) -> str:
    """The system of units that a word asks for; the word itself where it asks for none.

    >>> system_named("Inches"), system_named("centimetres"), system_named("us"), system_named("cubits")
    ('us', 'cm', 'us', 'cubits')
    """
    word = text.strip().lower()
    return next((system for system, words in _SYSTEMS.items() if word in words.split()), text)


def show_length(mm: float | Decimal, system: str = "us") -> str:
    """A length in both systems, the reader's own first; centimetres from ``SMALL`` up, always ("cm") or never ("mm").

    >>> show_length(152.4), show_length(152.4, "metric"), show_length(50.8), show_length(1524), show_length(210, "mm")
    ('6 in (15.2 cm)', '15.2 cm (6 in)', '2 in (51 mm)', '60 in (152 cm)', '210 mm (8.3 in)')
    >>> show_length(40, "cm")
    '4 cm (1.6 in)'
    """
    exact = Decimal(str(mm))
    inches = f"{_round(exact / MM_PER_INCH, 1)} in"
    metric = f"{_round(exact, 0)} mm" if system == "mm" or (exact < SMALL and system != "cm") else _centimetres(exact)
    return f"{metric} ({inches})" if system in METRIC else f"{inches} ({metric})"


def show_span(low: float, high: float, system: str = "us") -> str:
    """A range of lengths in both systems, each unit said once.

    >>> show_span(50.8, 254), show_span(900, 1500, "metric"), show_span(254, 254)
    ('2 to 10 in (5.1 to 25.4 cm)', '90 to 150 cm (35.4 to 59.1 in)', '10 in (25.4 cm)')
    """
    if low == high:
        return show_length(high, system)
    shortest, longest = show_length(low, system), show_length(high, system)
    if low < SMALL <= high and system != "mm":
        exact = Decimal(str(low))
        shortest = shortest.replace(f"{_round(exact, 0)} mm", _centimetres(exact))
    return joined(shortest, longest)


def show_rough_span(low: float, high: float) -> str:
    """A range of lengths told in round numbers, inches first: whole ones, halves below three inches and ten cm.

    >>> show_rough_span(150, 320), show_rough_span(60, 76), show_rough_span(900, 900)
    ('6 to 13 in (15 to 32 cm)', '2.5 to 3 in (6 to 7.5 cm)', '35 in (90 cm)')
    """
    inches = [_roundly(Decimal(str(x)) / MM_PER_INCH, 3) for x in (low, high)]
    metric = [_roundly(Decimal(str(x)) / 10, 10) for x in (low, high)]
    return f"{_range(inches)} in ({_range(metric)} cm)"


def _roundly(value: Decimal, whole: int) -> str:
    """A number without its fraction from ``whole`` on, to the nearest half below."""
    return _round(value, 0) if value >= whole else _round((value * 2).quantize(Decimal(1), ROUND_HALF_UP) / 2, 1)


def _range(ends: list[str]) -> str:
    return " to ".join(dict.fromkeys(ends))


def _centimetres(mm: Decimal) -> str:
    return f"{_round(mm / 10, 1 if mm < 1000 else 0)} cm"


def joined(low: str, high: str) -> str:
    """Two shown amounts as one range, the unit said once where it is the same."""
    (a, b), (c, d) = _sides(low), _sides(high)
    return f"{_pair(a, c)} ({_pair(b, d)})"


def _sides(text: str) -> tuple[str, str]:
    first, _, second = text.partition(" (")
    return first, second.rstrip(")")


def _pair(low: str, high: str) -> str:
    number, _, unit = low.rpartition(" ")
    return f"{number} to {high}" if high.endswith(f" {unit}") else f"{low} to {high}"


def show_weight(
    grams: float | Decimal, system: str = "us", pounds: bool = False, kilos: bool = False, ounces: bool = False
) -> str:
    """A weight in both systems, the reader's own first; ``pounds``: no ounces, ``kilos``: no grams, ``ounces``: no
    pounds, as was asked.

    >>> show_weight(180.4), show_weight(1435.7, "metric"), show_weight(411, pounds=True)
    ('6.4 oz (180 g)', '1.44 kg (3.2 lb)', '0.91 lb (411 g)')
    >>> show_weight(459, "metric", kilos=True)
    '0.46 kg (1 lb)'
    >>> show_weight(464, ounces=True)
    '16.4 oz (464 g)'
    """
    exact = Decimal(str(grams))
    whole = exact >= G_PER_POUND
    us = f"{_round(exact / GRAMS['oz'], 1)} oz"
    if (whole or pounds) and not ounces:
        us = f"{_round(exact / G_PER_POUND, 1 if whole else 2)} lb"
    metric = f"{_round(exact / 1000, 2)} kg" if exact >= 1000 or kilos else f"{_round(exact, 0)} g"
    return f"{metric} ({us})" if system in METRIC else f"{us} ({metric})"


def celsius_to_fahrenheit(c: float) -> float:
    """Degrees Fahrenheit of degrees Celsius.

    >>> celsius_to_fahrenheit(20.0)
    68.0
    """
    return c * 9 / 5 + 32
