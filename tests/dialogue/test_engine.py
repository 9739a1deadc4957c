"""A turn from end to end: claims rest on records, the conversation carries over, nothing typed breaks it."""

from __future__ import annotations

import random
from itertools import combinations

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import REMEMBERED, Base, respond
from tests.dialogue.conftest import CLOCK, Talk

QUESTIONS = (
    "How do I tell a white crappie from a black crappie?",
    "tell me about the flier",
    "what about its fins?",
    "panfish, side fins reach past the eye, ear totally black",
    "why",
    "says who",
    "skip",
    "undo",
    "start over",
    "help",
    "hi",
    "redear vs bluegill",
    "why not a bluegill",
    "what would change your mind",
    "how sure are you",
    "what else could it be",
)


def unsupported(answer: Answer) -> list[str]:
    """The claims of an answer that name no record of the base."""
    return [b.text for b in answer.blocks if b.claim and not b.statements]


@pytest.mark.parametrize("line", QUESTIONS)
def test_every_claim_rests_on_a_record(line: str, talk: Talk) -> None:
    """Whatever is said of fishes names the statements behind it."""
    answer, _ = talk("bluegill with a black ear", line)
    assert not unsupported(answer)


def test_every_record_that_is_named_exists(open_base: Base, talk: Talk) -> None:
    """A short form in an answer leads to a record of the base."""
    for line in QUESTIONS[:8]:
        answer, _ = talk(line)
        for block in answer.blocks:
            for short in block.statements:
                assert open_base.kb.record_at(short) is not None, short


@pytest.mark.parametrize("step", [pytest.param(7, id="seventh"), pytest.param(1, id="all", marks=pytest.mark.long)])
def test_every_pair_of_the_sunfish_family_is_answered_with_statements(open_base: Base, step: int) -> None:
    """All contrasts of the family (400 and more) name both fishes and rest on statements."""
    from assistant.dialogue.handlers.contrast import handle
    from assistant.dialogue.pointing import with_fish
    from assistant.dialogue.reader.reading import Reading
    from assistant.dialogue.turn import Turn

    kb = open_base.kb
    family = list(kb.members("centrarchidae"))
    pairs = list(combinations(family, 2))
    assert len(pairs) > 400
    for pair in pairs[::step]:
        turn = Turn(kb, with_fish(Reading("", ()), pair), Held(), CLOCK, lambda: open_base.table)
        answer, _ = handle(turn)
        assert set(answer.taxa) == set(pair)
        assert not unsupported(answer), pair
        assert answer.blocks[0].kind == "lead"


def test_turns_can_be_taken_back_but_not_without_end(talk: Talk) -> None:
    """Undo leads back turn by turn; what is remembered is bounded."""
    lines = ["bluegill with a black ear"] + ["tell me about the flier"] * (REMEMBERED + 3)
    _, held = talk(*lines)
    depth = 0
    while held.before is not None:
        held, depth = held.before, depth + 1
    assert depth == REMEMBERED


def test_the_same_line_gives_the_same_answer(open_base: Base) -> None:
    """An answer depends on line, conversation and day alone."""
    line = "8 whiskers no scales, forked tail, dark specks, ohio"
    assert respond(open_base, line, Held(), CLOCK) == respond(open_base, line, Held(), CLOCK)


def test_place_and_length_carry_over(talk: Talk) -> None:
    """What was said of place and size holds in the next turn."""
    _, held = talk("bluegill in ohio, 8 inches", "how do i tell it from a redear")
    assert held.places
    assert float(held.lengths[0].low) == pytest.approx(203.2)


def test_nothing_typed_comes_back_as_markup_or_control(talk: Talk) -> None:
    """Markup and control characters of the line never reach the answer."""
    answer, _ = talk("\x1b[31m<script>alert(1)</script> zorkfish")
    text = " ".join(b.text for b in answer.blocks)
    assert "<" not in text
    assert "\x1b" not in text


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.text(max_size=120))
def test_no_text_breaks_a_turn(open_base: Base, text: str) -> None:
    """Any Unicode is answered with at least one block."""
    answer, held = respond(open_base, text, Held(), CLOCK)
    assert answer.blocks
    again, _ = respond(open_base, text, held, CLOCK)
    assert again.blocks


def test_no_mangled_question_breaks_a_conversation(open_base: Base) -> None:
    """Questions cut, doubled and shuffled, one after another in one conversation, are all answered (seed 11)."""
    rng = random.Random(11)
    held = Held()
    for _ in range(150):
        words = " ".join(rng.choice(QUESTIONS) for _ in range(rng.randint(1, 2))).split()
        rng.shuffle(words)
        answer, held = respond(open_base, " ".join(words[: rng.randint(1, 14)]), held, CLOCK)
        assert answer.blocks
        assert all(isinstance(b.text, str) for b in answer.blocks)


@pytest.mark.parametrize("line", ["x" * 100_000, "bluegill " * 10_000, "\u202e" * 5_000, "7 1/2 in " * 3_000])
def test_a_very_long_paste_is_answered(open_base: Base, line: str) -> None:
    """A hundred thousand characters give an answer."""
    answer, _ = respond(open_base, line, Held(), CLOCK)
    assert answer.blocks


@pytest.mark.parametrize(("line", "intent"), [
    ("green sunfish or warmouth? tongue is smooth", "identify"),
    ("warmouth vs green sunfish, mine has a smooth tongue", "contrast"),
])
def test_two_names_with_evidence_are_judged_by_it(talk: Talk, line: str, intent: str) -> None:
    """Both names count and so does what is told beside them: the fish is named, or what the mark says of the two told
    before what tells them apart; which it is may be asked next."""
    answer, held = talk(line)
    assert answer.intent == intent
    assert "green sunfish" in answer.blocks[0].text
    assert [x for s in held.seen for x in s.observation.states] == ["tongue-teeth.none"]
    assert {"lepomis-cyanellus", "lepomis-gulosus"} <= {t for h in held.hints if h.kind == "either" for t in h.taxa}


def test_what_both_show_asks_to_tell_them_apart(talk: Talk) -> None:
    """Marks told of both kinds are no evidence of a catch: the two are told apart."""
    answer, _ = talk("calico vs flier, both round n spiny")
    assert answer.intent == "contrast"


def test_a_name_offered_after_a_description_is_a_name(talk: Talk) -> None:
    """ "Could be a spot tho" offers the spotted bass; a spot somewhere on the fish does not."""
    answer, _ = talk("smallmouth bass, red eye", "could be a spot tho")
    assert "micropterus-punctulatus" in answer.taxa
    _, held = talk("smallmouth bass, red eye", "could be a spot on the tail")
    assert "micropterus-punctulatus" not in {t for h in held.hints if h.kind == "like" for t in h.taxa}


def test_a_count_told_again_with_its_place_stands(talk: Talk) -> None:
    """A bare count is evidence, and the place given afterwards confirms it."""
    first, held = talk("six spines")
    assert first.intent == "identify"
    again, held = talk("on the back i mean", held=held)
    assert again.intent in ("identify", "undo")
    assert [(s.observation.character, s.observation.value) for s in held.seen] == [("dorsal-spines", 6.0)]


def test_a_group_pointed_to_is_no_fish(open_base: Base) -> None:
    """What was shown may be a group; pointing to it names the group and breaks nothing."""
    held = Held(taxa=("whitefishes",), shown=("whitefishes", "lota-lota"), intent="identify")
    answer, _ = respond(open_base, "the first one, black back", held, CLOCK)
    assert answer.blocks
