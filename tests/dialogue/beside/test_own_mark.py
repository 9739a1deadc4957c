"""Fishes set against each other with a mark of one's own told beside them, and what follows on from it."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("line", "first"), [
    ("sauger vs walleye, mine has no white tip on the tail", "the sauger rather than the walleye"),
    ("rock bass vs warmouth - mine counted 6 anal spines", "the rock bass rather than the warmouth"),
    ("channel cat vs blue cat, mine has zero spots", "leans to the blue catfish"),
    ("bluegill vs redear, mine has long pointed side fins", "does not decide between them"),
])
def test_a_mark_of_ones_own_is_weighed_first(open_base: Base, line: str, first: str) -> None:
    """The first block says how far the mark speaks for one of the two, and what each of them shows."""
    answer = last(open_base, line)
    assert answer.intent == "contrast"
    assert first in answer.blocks[0].text
    assert len(answer.blocks) > 3


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("channel cat vs blue cat, mine has zero spots / so which is it", "identify", "blue catfish"),
    ("pike muskie or tiger musky, whats the order of things to look at", "contrast", "northern pike"),
    ("lil flathead or a bullhead? neither ones tail is forked", "contrast", "anal soft rays"),
    ("lawyer fish through the ice on huron?", "names", "burbot"),
    ("mouth like a green sunfish but side fins long n pointy, fins edged orange. half bluegill?", "identify",
     "be a green sunfish x bluegill hybrid"),
    ("guy at the ramp claims a foot long longear. buy it?", "size", "no, by all that is held"),
    ("can a bluegill be 20 inches long", "size", "no, by all that is held"),
    ("describe the redear sunfish / half that length", "describe", "redear"),
    ("snakehead vs bowfin / it has a round dark spot at the tail base / toss it back or not", "rules",
     "make sure first that it is not the northern snakehead"),
    ("quiz me on catfishes, four questions / flathead / stop there, start over with six", "quiz", "1 of 6"),
    ("quiz me on catfishes, four questions / again but with 6 questions", "quiz", "1 of 6"),
    ("quiz me on catfishes, four questions / how many questions left?", "quiz", "1 of 4"),
    ("round goby or sculpin? one fused belly fin / back in the water or no", "rules", "do not move it"),
    ("snakehead vs bowfin / long anal fin / back in the lake with him?", "rules", "do not release a snakehead"),
    ("make me a printable quiz on catfishes / skip this one", "quiz", "no question waits here to be skipped"),
    ("quiz for grade 5 on fins and mouths, four items, please / the adipose fin", "quiz", "i keep no score of it"),
])
def test_what_is_asked_beside_a_mark_or_a_quiz(open_base: Base, talk: str, intent: str, must: str) -> None:
    """Each is taken for what it asks, and answered plainly."""
    answer = last(open_base, talk)
    assert answer.intent == intent
    assert must in text(answer).lower()
