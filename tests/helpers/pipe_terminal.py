"""A terminal made of a pipe and a list, and a conversation with a made-up engine, for tests of the prompt."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path

from prompt_toolkit.data_structures import Size
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.conversation import Held
from assistant.errors import AssistantError
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.app import App
from assistant.prompt.history import LineHistory
from assistant.prompt.talk import Talk

DAY = date(2026, 7, 4)
CTRL_C, CTRL_D, ENTER, TAB, UP = "\x03", "\x04", "\r", "\t", "\x1b[A"
COLOURS = Asked(
    "character",
    "What colour are the fins?",
    "fin-colour",
    (("fin-colour.red", "red"), ("fin-colour.dark", "dark grey")),
)


class Screen(DummyOutput):
    """An output that remembers what was written."""

    def __init__(self, columns: int = 80, rows: int = 24) -> None:
        self._size = Size(rows=rows, columns=columns)
        self.written: list[str] = []

    def get_size(self) -> Size:
        """The size it was made with."""
        return self._size

    def write(self, data: str) -> None:
        """Remember."""
        self.written.append(data)

    @property
    def text(self) -> str:
        """Everything written."""
        return "".join(self.written)


@dataclass
class Engine:
    """Answers with what it was told to; keeps the lines it heard."""

    answers: dict[str, Answer | BaseException] = field(default_factory=dict)
    heard: list[str] = field(default_factory=list)

    def respond(self, text: str, held: Held, clock: date) -> tuple[Answer, Held]:
        """The answer laid down for a line, else an echo of it."""
        self.heard.append(text)
        found = self.answers.get(text, said(f"You said: {text}."))
        if isinstance(found, BaseException):
            raise found
        return found, held.after(last=found, asked=found.asked, before=held)


def said(*texts: str, asked: Asked | None = None) -> Answer:
    """An answer with a lead and points, and a question back."""
    blocks = [Block("lead" if at == 0 else "point", text) for at, text in enumerate(texts)]
    if asked is not None:
        blocks.append(Block("next", asked.question, claim=False))
    return Answer("describe", tuple(blocks), asked=asked)


def reported(error: Exception) -> AssistantError:
    """An unforeseen fault as the command line reports it."""
    return AssistantError(f"something went wrong inside ({type(error).__name__})", "the details are in a file")


def talk_with(kb: KnowledgeBase, engine: Engine, held: Held | None = None, debug: bool = False) -> Talk:
    """A conversation with an engine."""
    return Talk(kb, engine.respond, lambda: DAY, reported, held or Held(), debug)


def type_into(
    talk: Talk,
    keys: str,
    screen: Screen,
    history: Path | None = None,
    leave: bool = True,
    before: Callable[[App], None] | None = None,
) -> int:
    """Run the full prompt over typed keys; ``leave`` ends them with Ctrl-D. Gives the exit code."""
    with create_pipe_input() as keyboard:
        keyboard.send_text(keys + (CTRL_D if leave else ""))
        app = App(talk, LineHistory(history), (keyboard, screen), warm=False)
        if before is not None:
            before(app)
        return app.run()
