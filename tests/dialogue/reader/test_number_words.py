"""Numbers written out are read as spoken and as misspelt."""

from __future__ import annotations

import pytest

from assistant.dialogue.reader.number_words import in_figures, spelt_at


@pytest.mark.parametrize(("typed", "value"), [
    ("fourty eight cm", 48), ("forty-eight cm", 48), ("fortyeight cm", 48), ("ninety cm", 90), ("fivety cm", 50),
    ("a hundred and ten cm", 110), ("one hundred twenty cm", 120), ("hundred pound sturgeon", 100),
    ("eigthteen in", 18),
    ("two pike", 2), ("two hundred", 200),
])
def test_the_value_of_a_number_written_out(typed: str, value: int) -> None:
    """Tens and units, hundreds, and common slips give one number."""
    found = spelt_at(typed.replace("-", " - ").split(), 0)
    assert found is not None and found[0] == value


@pytest.mark.parametrize("typed", ["tree stump", "tow line", "pike", "zero", "fortyish"])
def test_words_that_are_no_numbers(typed: str) -> None:
    """A slip that is a word of its own is no number by itself."""
    assert spelt_at(typed.split(), 0) is None


@pytest.mark.parametrize(("typed", "figures"), [
    ("a fifteen inch bass", "a 15 inch bass"),
    ("fifteen and a half inches", "15 and a half inches"),
    ("kept twenty five, two of them big", "kept 25, two of them big"),
    ("twenty, five", "twenty, five"),
])
def test_figures_for_numbers_of_a_catch(typed: str, figures: str) -> None:
    """Only lengths and numbers of several words are put in figures."""
    assert in_figures(typed) == figures
