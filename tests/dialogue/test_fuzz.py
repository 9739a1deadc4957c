"""Ten thousand fuzzed turns in one process: nothing raises, no turn hangs, memory stays flat (marker long)."""

from __future__ import annotations

import random
import resource
import sys
import time
from collections.abc import Iterator
from statistics import median

import pytest
from hypothesis import HealthCheck, given, seed, settings
from hypothesis import strategies as st

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.render.plain import render_plain
from tests.bench.score_utterances import CASES, cases
from tests.dialogue.conftest import CLOCK

TURNS = 10_000
HANGS = 10.0
"""Seconds of the processor after which a turn is held to hang: forty times the 0.25 s meant for a quiet machine."""
WARM = 600
"""Turns after which caches are filled and memory is held to be flat."""
GROWTH = 60
"""Megabytes by which the process may grow after that (its look-up caches are bounded)."""
ODD = "\u202e\u0000\x1b[31m\ud7ff🐟ñßİ½⅞″’–—#<>&{}$\\|~`^\t\n"


def mutated(rng: random.Random, line: str) -> str:
    """A line as nobody would type it: letters dropped, swapped and doubled, words shuffled, odd signs let in."""
    letters = list(line)
    for _ in range(rng.randint(0, 6)):
        at = rng.randrange(len(letters) + 1)
        kind = rng.randrange(5)
        if kind == 0 and letters:
            letters.pop(at - 1)
        elif kind == 1:
            letters.insert(at, rng.choice(ODD))
        elif kind == 2 and letters:
            letters[at - 1] = letters[at - 1] * rng.randint(2, 9)
        elif kind == 3:
            letters[at:at] = rng.choice((" no ", " not ", " 7 ", ", ", "? ", " or ", " 3 lb ", " x "))
        elif len(letters) > 1:
            letters[at - 1], letters[at - 2] = letters[at - 2], letters[at - 1]
    words = "".join(letters).split(" ")
    if rng.random() < 0.2:
        rng.shuffle(words)
    return " ".join(words)


def fuzzed(rng: random.Random, lines: list[str]) -> Iterator[str]:
    """Mutations of real questions without end; every hundredth is two joined, every five-hundredth a huge paste."""
    number = 0
    while True:
        number += 1
        line = mutated(rng, rng.choice(lines))
        if number % 500 == 0:
            line = (line + rng.choice((" ", "\n", ",", "")) + rng.choice(lines)) * 2000
            line = line[:100_000]
        elif number % 100 == 0:
            line += " " + mutated(rng, rng.choice(lines))
        yield line


def megabytes() -> float:
    """The most memory the process has held."""
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / (1 << 20) if sys.platform == "darwin" else most / 1024


@pytest.mark.long
def test_ten_thousand_mutated_turns(open_base: Base) -> None:
    """Mangled questions in conversations of up to twelve turns: each is answered, none hangs, memory stays flat."""
    lines = [c.say for c in cases(CASES / "utterances_open.tsv")]
    rng = random.Random(4)
    held = Held()
    times: list[float] = []
    level = 0.0
    for number, line in enumerate(fuzzed(rng, lines)):
        if number == TURNS:
            break
        if number == WARM:
            level = megabytes()
        if rng.random() < 1 / 12:
            held = Held()
        start = time.process_time()
        answer, held = respond(open_base, line, held, CLOCK)
        took = time.process_time() - start
        times.append(took)
        assert answer.blocks, line[:200]
        assert render_plain(answer).strip(), line[:200]
        assert took < HANGS, (took, line[:200])
    assert megabytes() - level < GROWTH
    times.sort()
    print(f"a turn takes {median(times) * 1000:.0f} ms in the middle, "
          f"{times[int(len(times) * .99)] * 1000:.0f} ms at the 99th percentile, {times[-1]:.1f} s at most")


@pytest.mark.long
@seed(5)
@settings(max_examples=2_000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.text(max_size=200), min_size=1, max_size=4))
def test_any_unicode_in_a_conversation(open_base: Base, lines: list[str]) -> None:
    """Any Unicode, several lines one after another, is answered with at least one block."""
    held = Held()
    for line in lines:
        answer, held = respond(open_base, line, held, CLOCK)
        assert answer.blocks
