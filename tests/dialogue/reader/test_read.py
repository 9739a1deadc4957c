"""A whole line is read in one pass: answers to what was asked, corrections, qualities; and nothing typed breaks it."""

from __future__ import annotations

import random
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import MOST_TOKENS, read_line
from assistant.dialogue.reader.reading import Reading, Seen
from assistant.model.knowledge import KnowledgeBase

CLOCK = date(2026, 7, 4)


def _say(kb: KnowledgeBase, *lines: str, held: Held | None = None) -> Reading:
    """The reading of the last line, with what the earlier ones told held."""
    now = held or Held()
    for line in lines[:-1]:
        reading = read_line(kb, line, now, CLOCK)
        gone = {s.observation for s in reading.seen if s.retract}
        kept = tuple(s for s in now.seen if s.observation not in gone)
        now = now._replace(seen=(*kept, *(s for s in reading.seen if not s.retract)))
    return read_line(kb, lines[-1], now, CLOCK)


def _made(reading: Reading) -> list[tuple[str, object]]:
    return [_pair(s) for s in reading.seen if not s.retract]


def _taken_back(reading: Reading) -> list[tuple[str, object]]:
    return [_pair(s) for s in reading.seen if s.retract]


def _pair(seen: Seen) -> tuple[str, object]:
    o = seen.observation
    return o.character, o.value if o.value is not None else o.states[0].partition(".")[2]


def _asked(character: str, *choices: str) -> Held:
    return Held(
        asked=Asked("character", "?", character, tuple((f"{character}.{c}", c.replace("-", " ")) for c in choices))
    )


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        ("yes", "yes"),
        ("yep", "yes"),
        ("nope", "no"),
        ("couldnt see", "unsure"),
        ("not sure", "unsure"),
        ("skip", "skip"),
        ("pass that one too, its gone already", "skip"),
        ("idk", "unsure"),
    ],
)
def test_bare_answers(kb: KnowledgeBase, text: str, answer: str) -> None:
    """Yes, no, not sure and skip are read with and without a question before them."""
    assert _say(kb, text).answer == answer
    assert _say(kb, text, held=_asked("caudal-fin-shape", "forked", "truncate")).answer == answer


def test_answer_by_value(kb: KnowledgeBase) -> None:
    """A value without its part answers the feature that was asked for."""
    assert _made(_say(kb, "square", held=_asked("caudal-fin-shape", "forked", "truncate"))) == [
        ("caudal-fin-shape", "truncate")
    ]
    assert _made(_say(kb, "past the eye", held=_asked("upper-jaw-reach", "mid-eye", "past-eye"))) == [
        ("upper-jaw-reach", "past-eye")
    ]


def test_answer_by_place_in_the_list(kb: KnowledgeBase) -> None:
    """The second of the choices is the second of the choices."""
    held = _asked("caudal-fin-shape", "forked", "truncate")
    assert _made(_say(kb, "the second", held=held)) == [("caudal-fin-shape", "truncate")]


def test_answer_by_number(kb: KnowledgeBase) -> None:
    """A number answers a count."""
    assert _made(_say(kb, "7", held=_asked("dorsal-spines"))) == [("dorsal-spines", 7.0)]
    assert _made(_say(kb, "seven i think", held=_asked("dorsal-spines"))) == [("dorsal-spines", 7.0)]


def test_answer_no(kb: KnowledgeBase) -> None:
    """No, to a feature that may be there or not, means that it is not there."""
    assert _made(_say(kb, "no", held=_asked("adipose-fin", "present", "absent"))) == [("adipose-fin", "absent")]
    assert _made(_say(kb, "yes", held=_asked("adipose-fin", "present", "absent"))) == [("adipose-fin", "present")]


def test_number_put_right(kb: KnowledgeBase) -> None:
    """A number in a correction replaces the number told before."""
    for line in ("I miscounted its 10", "im blind it was 10 sorry", "10 not 11"):
        reading = _say(kb, "11 dorsal spines", line)
        assert _made(reading) == [("dorsal-spines", 10.0)], line
        assert _taken_back(reading) == [("dorsal-spines", 11.0)], line


def test_other_part_meant(kb: KnowledgeBase) -> None:
    """A count is moved to the part that was meant."""
    reading = _say(kb, "dorsal fin has 7 spines", "i meant the anal fin")
    assert _made(reading) == [("anal-spines", 7.0)]
    assert _taken_back(reading) == [("dorsal-spines", 7.0)]


def test_taken_back(kb: KnowledgeBase) -> None:
    """What is scratched is taken back, the rest stays."""
    reading = _say(kb, "ear tab crimson at the tip, yellow belly", "scratch the red bit, that was blood")
    assert _made(reading) == []
    assert [c for c, _ in _taken_back(reading)] == ["opercular-flap-edge"]


def test_contradicted(kb: KnowledgeBase) -> None:
    """A "no" with a new state replaces the old state of the same feature."""
    reading = _say(kb, "it has a chin whisker", "no its got two pairs")
    assert _made(reading) == [("barbels", "four")]
    assert _taken_back(reading) == [("barbels", "one-chin")]


def test_put_right_at_once(kb: KnowledgeBase) -> None:
    """A correction in the same line counts."""
    assert _made(_say(kb, "8 spines crappie. no wait, 5")) == [("dorsal-spines", 5.0)]


@pytest.mark.parametrize(
    ("text", "field", "value"),
    [
        ("a breeding male", "sex", "male"),
        ("full of eggs", "sex", "female"),
        ("baby one", "stage", "juvenile"),
        ("it was on a bed", "breeding", "breeding"),
        ("a huge fish", "size_word", "large"),
        ("tiny, md swamp", "size_word", "small"),
        ("big mouth", "size_word", ""),
        ("big ol blotch in the dorsal", "size_word", ""),
    ],
)
def test_qualities(kb: KnowledgeBase, text: str, field: str, value: str) -> None:
    """Sex, age, breeding and size words are read of the fish, not of its parts."""
    assert getattr(_say(kb, text), field) == value


@pytest.mark.parametrize(
    "text",
    ["", "   ", "zzzz", "\x00\x1b[2J", "???", "'; DROP TABLE fish; --", "{{7*7}}", "\ud800", "½" * 50, "x" * 100_000],
)
def test_noise(kb: KnowledgeBase, text: str) -> None:
    """Empty, hostile and meaningless lines are read as such, without control characters in the text."""
    reading = _say(kb, text)
    assert reading.seen == () and reading.taxa() == ()
    assert "\x1b" not in reading.text


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(max_size=300))
def test_any_text(kb: KnowledgeBase, text: str) -> None:
    """Any text whatever is read, and offsets lie inside the cleaned line."""
    reading = _say(kb, text)
    assert all(
        0 <= m.start <= m.end <= len(reading.text) for m in (*reading.mentions, *reading.seen, *reading.measures)
    )


def test_mutations(kb: KnowledgeBase) -> None:
    """Real lines with letters dropped, doubled and swapped are read without fail; the seed is fixed."""
    rng = random.Random(7)
    lines = [
        "D XI, A V-VI,10; 8 rows dark spots",
        "8 spines crappie. no wait, 5",
        "an inch short of forty",
        "1#12oz redear, girth 9 and a half",
        "no bars, spots or stripes",
        "third saturday in may 2026 drennick reservoir",
        "i meant the anal fin",
    ]
    for _ in range(300):
        letters = list(rng.choice(lines))
        for _ in range(rng.randrange(1, 6)):
            at = rng.randrange(len(letters))
            letters[at] = rng.choice(["", letters[at] * 2, rng.choice("0123456789/'-., \"½"), letters[at - 1]])
        assert _say(kb, "".join(letters)).text is not None


def test_long_lines_are_cut(kb: KnowledgeBase) -> None:
    """Of a paste of any length only the beginning is looked at."""
    said = _say(kb, "bluegill with a red ear spot and no bars, " * 4000 + "gizzard shad")
    assert len(said.words) <= MOST_TOKENS
    assert {m.ids for m in said.mentions if m.kind == "taxon"} == {("lepomis-macrochirus",)}


def test_number_after_scratch(kb: KnowledgeBase) -> None:
    """A number after "scratch that" is the new number, not only the end of the old one."""
    reading = _say(kb, "8 dorsal spines", "scratch that, 7")
    assert (_made(reading), _taken_back(reading)) == ([("dorsal-spines", 7.0)], [("dorsal-spines", 8.0)])


def test_letter_of_a_choice(kb: KnowledgeBase) -> None:
    """A letter picks the choice that stands there."""
    assert _made(_say(kb, "b", held=_asked("caudal-fin-shape", "forked", "truncate"))) == [
        ("caudal-fin-shape", "truncate")
    ]


def test_feature_words_in_a_description(kb: KnowledgeBase) -> None:
    """Words that are a name and a feature are a feature while a fish is described, and a name after an article."""
    assert _made(_say(kb, "7 dorsal spines", "yellow belly")) == [("breast-colour", "yellow")]
    assert _say(kb, "7 dorsal spines", "could it be a red ear").taxa() == ("lepomis-microlophus",)
