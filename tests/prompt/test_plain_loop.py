"""The prompt of plain lines."""

from __future__ import annotations

import io

import pytest

from assistant.dialogue.conversation import Held
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.plain_loop import PlainLoop
from tests.helpers.pipe_terminal import COLOURS, Engine, said, talk_with


class Narrow(io.TextIOWrapper):
    """A stream that can write only some characters and minds the others."""

    def __init__(self, encoding: str) -> None:
        self.raw_bytes = io.BytesIO()
        super().__init__(self.raw_bytes, encoding=encoding, errors="strict", newline="\n")


class Interrupted(io.StringIO):
    """An input at which Ctrl-C is pressed a number of times before each line."""

    def __init__(self, text: str, times: int) -> None:
        super().__init__(text)
        self.times = times

    def readline(self, size: int = -1, /) -> str:
        """A line, or an interruption."""
        if self.times:
            self.times -= 1
            raise KeyboardInterrupt
        return super().readline(size)


def run(kb: KnowledgeBase, typed: str, engine: Engine | None = None, talking: bool = False, width: int = 60) -> str:
    """What the loop writes for some typed lines."""
    out = io.StringIO()
    assert PlainLoop(talk_with(kb, engine or Engine()), io.StringIO(typed), out, talking, width).run() == 0
    return out.getvalue()


def test_pipe_gets_answers_only(tiny_kb: KnowledgeBase) -> None:
    """Piped lines bring answers, parted by a blank line, without greeting, mark, carriage return or code."""
    text = run(tiny_kb, "one\r\ntwo\nthree")
    assert text == "You said: one.\n\nYou said: two.\n\nYou said: three.\n\n"


def test_person_gets_greeting_and_mark(tiny_kb: KnowledgeBase) -> None:
    """A person at a plain terminal gets the greeting, a mark to type after, and no codes."""
    text = run(tiny_kb, "one\n", talking=True)
    assert text.startswith("Tellfin") and text.count("tell> ") == 2 and "\x1b" not in text and "\r" not in text


def test_same_content_as_the_full_prompt(tiny_kb: KnowledgeBase) -> None:
    """The question back, its digits and their effect are the same in plain lines."""
    engine = Engine({"look": said("Look.", asked=COLOURS)})
    assert "  2  dark grey" in run(tiny_kb, "look\n2\n", engine)
    assert engine.heard == ["look", "2"]


def test_what_is_held_is_said_when_it_changes(kb: KnowledgeBase) -> None:
    """Where the full prompt has its bottom line, the plain one says the place and units once when they change."""
    engine = Engine()
    talk = talk_with(kb, engine, Held(places=("us-oh",), units="metric"))
    out = io.StringIO()
    PlainLoop(talk, io.StringIO("one\ntwo\n"), out, True, 70).run()
    assert out.getvalue().count("(Held: Ohio; metric first.)") == 1


@pytest.mark.parametrize(
    ("encoding", "wanted"), [("cp1252", "½ lb – doré"), ("ascii", "1/2 lb - dore"), ("utf-8", "½ lb – doré")]
)
def test_narrow_encodings(tiny_kb: KnowledgeBase, encoding: str, wanted: str) -> None:
    """Whatever the output cannot encode is written with near characters; nothing fails."""
    out = Narrow(encoding)
    PlainLoop(talk_with(tiny_kb, Engine({"x": said("½ lb – doré → 魚")})), io.StringIO("x\n"), out, False, 60).run()
    assert wanted in out.raw_bytes.getvalue().decode(encoding)


def test_ctrl_c_gives_a_new_line(tiny_kb: KnowledgeBase) -> None:
    """Ctrl-C drops the line; the second time the way out is told; the conversation goes on."""
    out = io.StringIO()
    PlainLoop(talk_with(tiny_kb, Engine()), Interrupted("one\n", 2), out, True, 60).run()
    assert "Ctrl-D" in out.getvalue() and "You said: one." in out.getvalue()


def test_ctrl_c_again_and_again_leaves(tiny_kb: KnowledgeBase) -> None:
    """Who keeps pressing Ctrl-C gets out."""
    out = io.StringIO()
    assert PlainLoop(talk_with(tiny_kb, Engine()), Interrupted("one\n", 99), out, True, 60).run() == 0
    assert "You said" not in out.getvalue()


def test_closed_pipe_is_left_to_the_command(tiny_kb: KnowledgeBase) -> None:
    """A reader that went away ends the loop with BrokenPipeError, which the command line takes as a normal end."""

    class Gone(io.StringIO):
        def write(self, text: str, /) -> int:
            raise BrokenPipeError

    with pytest.raises(BrokenPipeError):
        PlainLoop(talk_with(tiny_kb, Engine()), io.StringIO("one\n"), Gone(), False).run()


def test_goodbye_ends_before_the_input_does(kb: KnowledgeBase) -> None:
    """Lines after a goodbye are not read."""
    engine = Engine()
    run(kb, "one\nbye\ntwo\n", engine)
    assert engine.heard == ["one", "bye"]
