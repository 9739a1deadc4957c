"""Units: the ones typed last lead, but an express wish stands until another is uttered."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("lines", "units"),
    [
        (("is a sauger of 35 cm big",), "metric"),
        (("is a sauger of 35 cm big", "and one of 14 inches?"), "us"),
        (("in metric please", "is a sauger of 14 inches big"), "metric"),
        (("in metric please", "in inches please"), "us"),
    ],
)
def test_units_that_lead(lines: tuple[str, ...], units: str, talk: Talk) -> None:
    """A measure typed in inches does not undo "in metric please"."""
    assert talk(*lines)[1].units == units
