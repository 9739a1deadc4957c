"""The conversation as both prompts hold it."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Asked
from assistant.errors import AssistantError, DataError
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.talk import greeting
from assistant.render.terminal import plain
from tests.helpers.pipe_terminal import COLOURS, Engine, said, talk_with

LONG = said("The lead.", *(f"Point number {n}." for n in range(30)))


def test_many_lines_become_one(tiny_kb: KnowledgeBase) -> None:
    """What was pasted over several lines reaches the engine as one line."""
    engine = Engine()
    talk_with(tiny_kb, engine).say("a red fin\n  and dark\tbars\r\n", 80)
    assert engine.heard == ["a red fin and dark bars"]


def test_digit_answers(tiny_kb: KnowledgeBase) -> None:
    """A bare digit goes to the engine, which counts the choices; the digit of "not sure" as those words."""
    engine = Engine({"look": said("Look again.", asked=COLOURS)})
    talk = talk_with(tiny_kb, engine)
    for typed in ("look", "2", "look", "3.", "look", "9", "7 2"):
        talk.say(typed, 80)
    assert engine.heard == ["look", "2", "look", "not sure", "look", "9", "7 2"]


def test_digit_among_numbers_is_sent_as_words(tiny_kb: KnowledgeBase) -> None:
    """Where the choices are numbers themselves their words are sent, lest "2" be taken for two of something."""
    fins = Asked("character", "How many fins on the back?", "fins", (("fins.two", "two fins"), ("fins.one", "one fin")))
    engine = Engine({"look": said("Look again.", asked=fins)})
    talk = talk_with(tiny_kb, engine)
    talk.say("look", 80)
    talk.say("2", 80)
    assert engine.heard == ["look", "one fin"]


def test_digit_is_a_number_when_nothing_is_asked(tiny_kb: KnowledgeBase) -> None:
    """Without a question a digit is passed on as typed."""
    engine = Engine()
    talk_with(tiny_kb, engine).say("2", 80)
    assert engine.heard == ["2"]


def test_question_shows_its_choices_with_digits(tiny_kb: KnowledgeBase) -> None:
    """The question comes last, its choices numbered as they are answered."""
    shown = talk_with(tiny_kb, Engine({"x": said("Lead.", "Point.", asked=COLOURS)})).say("x", 80)
    assert plain(shown.lines).splitlines() == [
        "Lead.",
        "- Point.",
        "",
        "What colour are the fins?",
        "  1  red",
        "  2  dark grey",
        "  3  not sure",
    ]


def test_a_question_with_lettered_choices_stands_apart(kb: KnowledgeBase) -> None:
    """A blank line stands between the word on an answer, however short, and the next question of a quiz."""
    again = Asked("quiz", "Which fish is it?", "", (("a", "bluegill"), ("b", "redear")))
    answer = said("Right.", asked=again)
    ask = answer.blocks[-1]._replace(text="2 of 5. Which fish is it? (a) bluegill; (b) redear.")
    answer = answer._replace(blocks=(*answer.blocks[:-1], ask))
    shown = plain(talk_with(kb, Engine({"x": answer})).say("x", 80).lines).splitlines()
    assert shown == ["Right.", "", "2 of 5. Which fish is it? (a) bluegill; (b) redear."]


def test_long_answer_is_kept_back_in_parts(kb: KnowledgeBase) -> None:
    """A long answer starts with its lead and fits the screen; Enter or "more" shows the rest, the engine unasked."""
    engine = Engine({"x": LONG})
    talk = talk_with(kb, engine)
    first = plain(talk.say("x", 80, 16).lines).splitlines()
    assert first[0] == "The lead." and len(first) <= 13 and "more lines" in first[-1]
    rest = plain(talk.say("", 80, 16).lines) + "\n" + plain(talk.say("more", 80, 16).lines)
    for n in range(30):
        assert f"Point number {n}." in "\n".join(first) + rest
    assert engine.heard == ["x"] and not talk.rest


def test_question_back_is_never_kept_back(tiny_kb: KnowledgeBase) -> None:
    """However long the answer, the question that waits for an answer is on the screen."""
    answer = said("The lead.", *(f"Point number {n}." for n in range(30)), asked=COLOURS)
    shown = plain(talk_with(tiny_kb, Engine({"x": answer})).say("x", 40, 20).lines)
    assert shown.endswith("3  not sure") and "more lines" in shown and len(shown.splitlines()) <= 17


def test_pipe_gets_everything(tiny_kb: KnowledgeBase) -> None:
    """Without a screen height nothing is kept back."""
    assert "Point number 29." in plain(talk_with(tiny_kb, Engine({"x": LONG})).say("x", 80).lines)


def test_new_question_drops_the_rest(kb: KnowledgeBase) -> None:
    """A new question is answered although a rest waits, and the rest is forgotten."""
    engine = Engine({"x": LONG})
    talk = talk_with(kb, engine)
    talk.say("x", 80, 20)
    assert "You said: y." in plain(talk.say("y", 80, 20).lines)
    assert not talk.say("", 80, 20).lines


@pytest.mark.parametrize("typed", ["bye", "Quit", "exit"])
def test_goodbye_leaves(kb: KnowledgeBase, typed: str) -> None:
    """A goodbye is answered, then the conversation ends."""
    shown = talk_with(kb, Engine()).say(typed, 80)
    assert shown.leave and shown.lines


def test_other_lines_stay(kb: KnowledgeBase) -> None:
    """A line that merely holds a goodbye does not end the conversation, nor does a doubtful one at an open question."""
    talk = talk_with(kb, Engine({"look": said("Look.", asked=COLOURS)}))
    assert not talk.say("he said bye to the bluegill", 80).leave
    talk.say("look", 80)
    assert not talk.say("done", 80).leave
    talk.say("look", 80)
    assert talk.say("quit", 80).leave


def test_known_fault_takes_two_lines(tiny_kb: KnowledgeBase) -> None:
    """A fault of ours is shown as what is wrong and what to do, and the conversation stands as before."""
    engine = Engine({"x": DataError("the file is broken", "mend it", "base.ttl:7")})
    talk = talk_with(tiny_kb, engine)
    before = talk.held
    lines = plain(talk.say("x", 80).lines).splitlines()
    assert lines == ["That did not work: base.ttl:7: the file is broken", "mend it"]
    assert talk.held is before and "You said: y." in plain(talk.say("y", 80).lines)


def test_unforeseen_fault_is_reported_and_the_talk_goes_on(tiny_kb: KnowledgeBase) -> None:
    """An unforeseen fault is handed to the report, told shortly, and the next line is answered."""
    talk = talk_with(tiny_kb, Engine({"x": ZeroDivisionError("inner words")}))
    text = plain(talk.say("x", 80).lines)
    assert "ZeroDivisionError" in text and "inner words" not in text and "Traceback" not in text
    assert "You said: y." in plain(talk.say("y", 80).lines)


@pytest.mark.parametrize("fault", [AssistantError("ours"), ZeroDivisionError()])
def test_debug_raises(tiny_kb: KnowledgeBase, fault: Exception) -> None:
    """With debug the fault itself comes out."""
    with pytest.raises(type(fault)):
        talk_with(tiny_kb, Engine({"x": fault}), debug=True).say("x", 80)


def test_interrupted_answer_changes_nothing(tiny_kb: KnowledgeBase) -> None:
    """Ctrl-C while an answer is made stops that answer only."""
    talk = talk_with(tiny_kb, Engine({"x": KeyboardInterrupt()}))
    before = talk.held
    assert "Stopped" in plain(talk.say("x", 80).lines) and talk.held is before


def test_very_long_line_is_cut_and_said(tiny_kb: KnowledgeBase) -> None:
    """Of 100,000 characters the beginning is read, and that is said."""
    engine = Engine()
    shown = plain(talk_with(tiny_kb, engine).say("red fin " * 12_500, 80).lines)
    assert len(engine.heard[0]) <= 4000 and "only its beginning" in shown


def test_blank_line_says_nothing(tiny_kb: KnowledgeBase) -> None:
    """An empty line is no question."""
    engine = Engine()
    assert not talk_with(tiny_kb, engine).say("  \n", 80).lines and not engine.heard


def test_greeting_offers_what_the_base_can_answer(kb: KnowledgeBase, tiny_kb: KnowledgeBase) -> None:
    """The greeting is short and names only waters and fishes that the base at hand knows."""
    full, bare = greeting(kb), greeting(tiny_kb)
    assert len(full) <= 6 and sum(style == "example" for style, _ in full) == 2
    assert not any(style == "example" for style, _ in bare)
