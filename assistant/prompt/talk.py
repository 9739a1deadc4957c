"""One sitting at a prompt: a typed line in, lines to show out; the one error boundary of the prompt (layer 6).

Both prompts, full and plain, speak through it, so that they say the same.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from itertools import pairwise

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.errors import AssistantError
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import NUMBERS
from assistant.prompt import wording
from assistant.render.terminal import Line, fitting, lettered, offered, plain, question_lines, terminal_lines
from assistant.text import key

LONGEST = 4000
"""Characters of a line that are read."""
NUMBER_WORDS = frozenset(NUMBERS) | frozenset("123456789")
FEWEST = 3
"""Lines worth keeping back, and lines of an answer that are shown in any case."""
SPARE = 4
"""Rows of the screen that an answer leaves free: a blank one, the next line to type, what is held, the hint at more."""
Respond = Callable[[str, Held, date], tuple[Answer, Held]]


@dataclass(frozen=True, slots=True)
class Shown:
    """What to show after a line; ``leave`` when the line was a goodbye."""

    lines: tuple[Line, ...] = ()
    leave: bool = False


@dataclass(slots=True)
class Talk:
    """A conversation as its prompt holds it.

    ``respond`` answers a line, ``today`` tells the day, ``report`` logs an unforeseen fault and says it in two lines;
    with ``debug`` faults are raised instead.
    """

    kb: KnowledgeBase
    respond: Respond
    today: Callable[[], date]
    report: Callable[[Exception], AssistantError]
    held: Held = field(default_factory=Held)
    debug: bool = False
    rest: tuple[Line, ...] = ()

    def say(self, typed: str, width: int, height: int = 0) -> Shown:
        """The lines for a typed line; never raises unless ``debug``. With a ``height`` a long answer comes in parts."""
        text = one_line(typed)
        height -= 1 + (len(wording.MARK) + len(text)) // max(1, width) if height else 0
        if self.rest and (not text or self.is_cue(text, "more")):
            return Shown(self._next_part(height))
        if not text:
            return Shown()
        self.rest = ()
        notes = () if len(text) <= LONGEST else styled([("quiet", wording.CUT)])
        try:
            leave = self._leaves(text)
            held = self.held.after(asked=None, walk=None) if leave else self.held
            answer, self.held = self.respond(self._chosen(text[:LONGEST]), held, self.today())
            body, question = terminal_lines(answer, width), question_lines(answer, width)
        except KeyboardInterrupt:
            return Shown(styled([("quiet", wording.STOPPED)]))
        except AssistantError as error:
            return Shown(self._fault(error, error))
        except Exception as error:
            return Shown(self._fault(self.report(error), error))
        return Shown(notes + self._first_part(body, question, height), leave)

    def is_cue(self, text: str, name: str) -> bool:
        """True when the whole line is one of the phrases that the base files under a cue."""
        return any(kind == "cue" and thing.removeprefix("cue-") == name for kind, thing, _ in self.kb.spoken(key(text)))

    def _leaves(self, text: str) -> bool:
        """True for a goodbye; where an answer is waited for, only for a plain one."""
        return self.is_cue(text, "bye") and (self.held.asked is None or key(text) in wording.FAREWELLS)

    def _chosen(self, text: str) -> str:
        """A bare digit as the engine counts choices, or the words of that choice where a digit could mislead.

        That is where only the prompt offers the choice ("not sure"), and where a feature or its choices are numbers
        themselves ("one dorsal fin or two?").
        """
        asked, digit = self.held.asked, text.rstrip(".) ")
        choices = offered(asked)
        if asked is None or not digit.isascii() or not digit.isdigit() or not 1 <= int(digit[:3]) <= len(choices):
            return text
        own = int(digit) > len(asked.choices)
        counting = asked.kind == "character" and not NUMBER_WORDS.isdisjoint(key(f"{asked.question} {choices}").split())
        return choices[int(digit) - 1] if own or counting else digit

    def _fault(self, told: AssistantError, cause: Exception) -> tuple[Line, ...]:
        if self.debug:
            raise cause
        where = f"{told.where}: " if told.where else ""
        return styled(wording.went_wrong(where + told.message, told.hint))

    def _first_part(self, body: tuple[Line, ...], question: tuple[Line, ...], height: int) -> tuple[Line, ...]:
        """As much of the body as the screen holds beside the question, which is always shown.

        A blank line stands between them where either is long: a body of several lines, a question with its choices.
        """
        long = len(body) > 1 or (len(body) == 1 and lettered(plain(question)))
        gap: tuple[Line, ...] = ((("", ""),),) if question and long else ()
        room = max(FEWEST, height - len(question) - len(gap) - SPARE) if height else len(body)
        if len(body) - room < FEWEST:
            return (*body, *gap, *question)
        self.rest = body[room:]
        return (*body[:room], *styled([("quiet", wording.left_over(len(self.rest)))]), *gap, *question)

    def _next_part(self, height: int) -> tuple[Line, ...]:
        body, self.rest = self.rest, ()
        return self._first_part(body, (), height)


def styled(lines: list[tuple[str, str]]) -> tuple[Line, ...]:
    """Lines of one piece each."""
    return tuple((piece,) for piece in lines)


def wrapped(lines: list[tuple[str, str]], width: int) -> tuple[Line, ...]:
    """Lines of one piece each, wrapped to a terminal; the indent of a line is kept."""
    import textwrap

    out: list[Line] = []
    for style, text in lines:
        indent = " " * (len(text) - len(text.lstrip()))
        parts = textwrap.wrap(text.strip(), fitting(width), initial_indent=indent, subsequent_indent=indent + "  ")
        out += [((style, part),) for part in parts]
    return tuple(out)


def one_line(text: str) -> str:
    """Typed or pasted text as one line: line ends and runs of blanks become single blanks."""
    return " ".join(text.split())


def greeting(kb: KnowledgeBase) -> list[tuple[str, str]]:
    """The greeting, with the things to try that this very base can answer."""
    return wording.splash(_named(kb, wording.CATCH, "place") > 0, _named(kb, wording.PAIR, "taxon") > 1)


def _named(kb: KnowledgeBase, text: str, kind: str) -> int:
    """How many names of two words, of some kind of thing, stand in a text."""
    return sum(any(entry[0] == kind for entry in kb.spoken(" ".join(pair))) for pair in pairwise(key(text).split()))
