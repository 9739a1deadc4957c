"""One measure told as so many times another is read as a ratio (our own wording and judgement, no source)."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.reader.test_ways_of_telling import told


@pytest.mark.parametrize(("line", "ratio"), [
    ("depth 2.9 times in SL", "standard-length-over-depth=2.9"),
    ("depth goes into length 3.5 times", "standard-length-over-depth=3.5"),
    ("standard length is four times the body depth", "standard-length-over-depth=4.0"),
    ("beak length 16 times its least width, scales hard", "beak-length-over-width=16.0"),
])
def test_a_ratio_told_either_way(kb: KnowledgeBase, line: str, ratio: str) -> None:
    """The smaller measure goes into the greater, or the greater is so many times the smaller."""
    assert ratio in told(kb, line)


@pytest.mark.parametrize("line", [
    "head depth 3 times in head length", "I went 3 times into the lake", "depth 40 times in SL", "eye 4 times in head",
])
def test_no_ratio_of_the_base(kb: KnowledgeBase, line: str) -> None:
    """Other measures, outings and figures that no fish shows are none."""
    assert not any("over" in mark for mark in told(kb, line))
