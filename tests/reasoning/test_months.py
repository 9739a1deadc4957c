"""Times of the year in words fall into the right seasons (calendar; common practice, no source)."""

from __future__ import annotations

import pytest

from assistant.reasoning.months import seasons_of


@pytest.mark.parametrize(
    ("text", "seasons"),
    [
        ("spring", {"spring"}),
        ("April to June", {"spring", "summer"}),
        ("October to December", {"autumn", "winter"}),
        ("late-spring-to-late-summer", {"spring", "summer"}),
        ("summer to early winter", {"summer", "autumn", "winter"}),
        ("February to November", {"winter", "spring", "summer", "autumn"}),
        ("fall", {"autumn"}),
        ("just after ice-out", {"spring"}),
        ("late April or May", {"spring"}),
        ("several weeks after pike", set()),
        ("", set()),
    ],
)
def test_seasons_of_times_in_words(text: str, seasons: set[str]) -> None:
    """Months, seasons and spans of either, across New Year too."""
    assert seasons_of(text) == seasons
