"""Unit factors against their definitions.

Inch: US National Bureau of Standards Circular 572, addendum of 1960 (1 in = 25.4 mm exactly). Pound: international
yard and pound agreement of 1 July 1959 (1 lb = 0.45359237 kg exactly); ounce = lb / 16, as in QUDT 3.5.0.
"""

from __future__ import annotations

from decimal import Decimal

from assistant import units


def test_lengths_follow_the_definition_of_the_inch() -> None:
    """One inch is exactly 25.4 mm, one foot twelve of them."""
    assert units.to_mm(1, "in") == Decimal("25.4")
    assert units.to_mm(1, "ft") == Decimal("304.8")


def test_weights_follow_the_definition_of_the_pound() -> None:
    """One pound is exactly 453.59237 g, one ounce a sixteenth: 28.349523125 g."""
    assert units.GRAMS["lb"] == Decimal("453.59237")
    assert units.GRAMS["oz"] == Decimal("28.349523125")


def test_fahrenheit_follows_its_definition() -> None:
    """Water freezes at 32 and boils at 212 degrees Fahrenheit (definition of the scale; common knowledge)."""
    assert (units.celsius_to_fahrenheit(0), units.celsius_to_fahrenheit(100)) == (32.0, 212.0)
