"""A bag told of by its limit becomes the count that the rules make of it."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from assistant.dialogue.reader.catch_plain import short_of_limit
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("said", "short"), [
    ("already have my limit", 0), ("limited out", 0), ("I'm two short of my limit", 2), ("one away from our limit", 1),
    ("what is my limit of walleye", None), ("have my limit of 5", None), ("a walleye of 16 in", None),
])
def test_what_lacks_to_a_limit_is_heard(said: str, short: int | None) -> None:
    """A full bag lacks nothing; a limit only asked about, or told with its count, tells of no fish by itself."""
    assert short_of_limit(said) == short


@pytest.mark.parametrize(("talk", "verdict", "must"), [
    ("walleye 16 in Ollimarsh, already have my limit, keep?", "release", "5 of 5"),
    ("bluegill 7 in Ollimarsh, limited out already, keep?", "release", "20 of 20"),
    ("walleye 16 in Ollimarsh, I'm one short of my limit, keep?", "keep", "4 of 5"),
    ("I've got my limit of 5 walleye at Ollimarsh, this one is 16 in, keep?", "release", "5 of 5"),
    ("bowfin 20 in Ollimarsh, got my limit already, keep?", "unknown", "say nothing of bowfin"),
    ("walleye 16 in Ollimarsh keep? / I already have my limit", "release", "5 of 5"),
    ("walleye 16 in Ollimarsh, kept 2, keep? / what if I had my limit", "release", "5 of 5"),
])
def test_a_limit_told_of_is_counted(open_base: Base, talk: str, verdict: str, must: str) -> None:
    """The verdict counts as many fish as the rules allow less those lacking; without a rule there is no count."""
    answer = last(open_base, talk)
    assert answer.verdict == verdict and must in text(answer)
