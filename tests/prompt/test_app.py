"""The full prompt, driven through a pipe; asserted on what was heard and shown, not on codes."""

from __future__ import annotations

from pathlib import Path

import pytest
from prompt_toolkit.input import create_pipe_input

from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.app import App, pasted
from assistant.prompt.history import LineHistory
from tests.helpers.pipe_terminal import (
    COLOURS,
    CTRL_C,
    CTRL_D,
    ENTER,
    TAB,
    UP,
    Engine,
    Screen,
    said,
    talk_with,
    type_into,
)

PASTE, PASTED = "\x1b[200~", "\x1b[201~"


def heard(kb: KnowledgeBase, keys: str, history: Path | None = None, engine: Engine | None = None) -> list[str]:
    """The lines that reach the engine for some keys."""
    engine = engine or Engine()
    assert type_into(talk_with(kb, engine), keys, Screen(), history) == 0
    return engine.heard


def test_line_in_answer_out(tiny_kb: KnowledgeBase) -> None:
    """A typed line is answered below it; Ctrl-D on an empty line leaves with 0."""
    screen = Screen()
    assert type_into(talk_with(tiny_kb, Engine()), "hello" + ENTER, screen) == 0
    assert "You said: hello." in screen.text and screen.text.index("Tellfin") < screen.text.index("You said")


def test_ctrl_c_clears_the_line(tiny_kb: KnowledgeBase) -> None:
    """Ctrl-C empties what was typed; the next line starts fresh; on an empty line it tells the way out."""
    assert heard(tiny_kb, "wrong words" + CTRL_C + "right" + ENTER) == ["right"]
    screen = Screen()
    type_into(talk_with(tiny_kb, Engine()), CTRL_C, screen)
    assert "leaves." in screen.text


def test_ctrl_d_in_a_line_does_not_leave(tiny_kb: KnowledgeBase) -> None:
    """Ctrl-D while something is typed stays in the conversation."""
    assert heard(tiny_kb, "one\x04" + ENTER + "two" + ENTER) == ["one", "two"]


def test_pasted_lines_become_one(tiny_kb: KnowledgeBase) -> None:
    """Lines pasted at once make one line to be sent by Enter, without codes copied along."""
    keys = f"{PASTE}red fins\r\n\x1b[1mdark\x1b[0m bars\n{PASTED} here{ENTER}"
    assert heard(tiny_kb, keys) == ["red fins dark bars here"]


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("a\nb", "a b"),
        (" a ", " a "),
        ("\n\n", ""),
        ("a\x07\x1b[2Jb", "ab"),
        ("x" * 9000, "x" * 4000),
        ("a\tb\r\n\r\nc", "a b c"),
    ],
)
def test_pasted(text: str, line: str) -> None:
    """Pasted text loses line ends, controls and what is too much."""
    assert pasted(text) == line


def test_tab_completes_a_name(tiny_kb: KnowledgeBase) -> None:
    """Tab completes the only name that fits."""
    assert heard(tiny_kb, "is it an ember v" + TAB + ENTER) == ["is it an ember vennet"]


def test_tab_completes_a_choice(tiny_kb: KnowledgeBase) -> None:
    """While a question waits, Tab completes its choices, and a digit answers."""
    engine = Engine({"look": said("Look.", asked=COLOURS)})
    assert heard(tiny_kb, f"look{ENTER}dark{TAB}{ENTER}look{ENTER}1{ENTER}", engine=engine) == [
        "look",
        "dark grey",
        "look",
        "1",
    ]


def test_history_over_sittings(tiny_kb: KnowledgeBase, tmp_path: Path) -> None:
    """Up brings back lines of an earlier sitting, those that begin as typed first."""
    path = tmp_path / "lines.txt"
    heard(tiny_kb, f"first line{ENTER}second line{ENTER}", path)
    assert heard(tiny_kb, UP + ENTER, path) == ["second line"]
    assert heard(tiny_kb, "fi" + UP + ENTER, path) == ["first line"]


def test_history_search(tiny_kb: KnowledgeBase, tmp_path: Path) -> None:
    """Ctrl-R finds an earlier line by a part of it, capital letters apart."""
    path = tmp_path / "lines.txt"
    heard(tiny_kb, f"the Ember vennet{ENTER}another{ENTER}", path)
    assert heard(tiny_kb, "\x12ember" + ENTER + ENTER, path)[:1] == ["the Ember vennet"]


def test_a_search_is_left_as_the_line_is(tiny_kb: KnowledgeBase, tmp_path: Path) -> None:
    """Ctrl-C in a search goes back to an empty line; Ctrl-D leaves from a search in which nothing is typed."""
    path = tmp_path / "lines.txt"
    heard(tiny_kb, f"the Ember vennet{ENTER}", path)
    assert heard(tiny_kb, "\x12ember" + CTRL_C + "right" + ENTER, path) == ["right"]
    assert heard(tiny_kb, "\x12\x04" + "late" + ENTER, path) == []


def test_lost_history_is_told_once(tiny_kb: KnowledgeBase, tmp_path: Path) -> None:
    """A history that cannot be kept is told once, and the prompt works."""
    (tmp_path / "file").write_text("")
    screen = Screen()
    type_into(talk_with(tiny_kb, Engine()), f"one{ENTER}two{ENTER}", screen, tmp_path / "file" / "lines.txt")
    assert screen.text.count("not kept") == 1 and "You said: two." in screen.text


def test_fault_in_a_turn_does_not_end_the_talk(tiny_kb: KnowledgeBase) -> None:
    """A fault is told in two lines, the next line is answered, no trace is shown."""
    screen = Screen()
    type_into(talk_with(tiny_kb, Engine({"x": KeyError("deep")})), f"x{ENTER}y{ENTER}", screen)
    assert "KeyError" in screen.text and "Traceback" not in screen.text and "You said: y." in screen.text


def test_debug_raises(tiny_kb: KnowledgeBase) -> None:
    """With debug the fault comes out."""
    with pytest.raises(KeyError):
        type_into(talk_with(tiny_kb, Engine({"x": KeyError("deep")}), debug=True), f"x{ENTER}", Screen())


def test_failing_comfort_is_switched_off(tiny_kb: KnowledgeBase, monkeypatch: pytest.MonkeyPatch) -> None:
    """Marking of words that fails is told once and left out; typing and answering go on."""
    calls: list[str] = []

    def broken(text: str) -> tuple[()]:
        calls.append(text)
        raise ValueError

    def spoil(app: App) -> None:
        monkeypatch.setattr(app, "_read", broken)

    screen, engine = Screen(), Engine()
    type_into(talk_with(tiny_kb, engine), f"one{ENTER}two{ENTER}", screen, before=spoil)
    assert engine.heard == ["one", "two"] and len(calls) == 1 and screen.text.count("is off for now") == 1


def test_bottom_line_shows_what_is_held(kb: KnowledgeBase) -> None:
    """The place held is shown below the line."""
    from assistant.dialogue.conversation import Held

    screen = Screen()
    type_into(talk_with(kb, Engine(), Held(places=("us-oh",))), "", screen)
    assert "place: " in screen.text and "Ohio" in screen.text


def test_made_ready_beside_the_typing(tiny_kb: KnowledgeBase, monkeypatch: pytest.MonkeyPatch) -> None:
    """Names become ready by themselves after the start; a fault in that is told once and the talk goes on."""
    with create_pipe_input() as keyboard:
        app = App(talk_with(tiny_kb, Engine()), LineHistory(None), (keyboard, Screen()))
        assert not app.ready
        app.make_ready()
        assert app.ready

    def broken(kb: KnowledgeBase) -> None:
        raise ValueError

    monkeypatch.setattr("assistant.prompt.app.names_of", broken)
    screen, engine = Screen(), Engine()
    with create_pipe_input() as keyboard:
        keyboard.send_text(f"one{ENTER}{CTRL_D}")
        app = App(talk_with(tiny_kb, engine), LineHistory(None), (keyboard, screen))
        app.make_ready()
        assert app.run() == 0 and app.ready
    assert engine.heard == ["one"] and screen.text.count("The completion failed") == 1


@pytest.mark.parametrize("columns", [20, 40, 80, 200])
def test_nothing_is_wider_than_the_screen(kb: KnowledgeBase, columns: int) -> None:
    """Greeting and answers keep within the columns of the terminal."""
    from assistant.prompt.talk import greeting, wrapped
    from assistant.render.terminal import plain

    talk = talk_with(kb, Engine({"x": said("word " * 40, "longer words " * 30, asked=COLOURS)}))
    lines = (*wrapped(greeting(kb), columns), *talk.say("x", columns).lines)
    assert max(len(line) for line in plain(lines).splitlines()) < columns
