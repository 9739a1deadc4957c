"""The full prompt: completion, history with search, recognised words marked, what is held shown below (layer 6)."""

from __future__ import annotations

import re
import threading
from collections.abc import Callable, Sequence
from itertools import islice
from typing import TextIO, TypeVar

from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.filters import is_searching
from prompt_toolkit.formatted_text import FormattedText
from prompt_toolkit.input import Input, create_input
from prompt_toolkit.key_binding import KeyBindings, KeyPressEvent
from prompt_toolkit.keys import Keys
from prompt_toolkit.output import Output, create_output
from prompt_toolkit.search import stop_search
from prompt_toolkit.shortcuts import CompleteStyle, PromptSession, print_formatted_text
from prompt_toolkit.styles import Style

from assistant.errors import ToolError
from assistant.prompt import wording
from assistant.prompt.complete import NameCompleter, NameList, names_of
from assistant.prompt.highlight import Span, WordLexer, spans_of
from assistant.prompt.history import LineHistory
from assistant.prompt.style import STYLE
from assistant.prompt.talk import LONGEST, Talk, greeting, one_line, wrapped
from assistant.prompt.toolbar import BETWEEN, empty_words, fitted, held_parts
from assistant.render.terminal import Line, encodable

T = TypeVar("T")
_CODES = re.compile(r"\x1b\[[0-9;?]*[ -/]*[@-~]")
"""Codes for colours and the cursor, as they come along with text copied from a screen."""
NO_SPANS: tuple[Span, ...] = ()
PATIENCE = 2.0
"""Seconds that leaving waits for what is still being made ready."""
MENU_ROWS = 7
"""Rows kept free for the menu of completions while it is open."""


def open_console(stdin: TextIO, stdout: TextIO) -> tuple[Input, Output]:
    """The terminal behind two streams. Raises ToolError where it cannot be driven (some Windows shells)."""
    try:
        return create_input(stdin), create_output(stdout)
    except Exception as error:  # the library raises its own types, which differ by platform
        raise ToolError(type(error).__name__) from error


class App:
    """The conversation on a terminal that can place a cursor."""

    def __init__(self, talk: Talk, history: LineHistory, terminal: tuple[Input, Output], warm: bool = True) -> None:
        """``warm`` lets names and tables be made ready beside the first typing; tests switch it off."""
        self._talk = talk
        self._history = history
        self._output = terminal[1]
        self._style = Style.from_dict(STYLE)
        self._names: NameList | None = None if warm else names_of(talk.kb)
        self._warm = warm
        self._ready = not warm
        self._off: set[str] = set()
        self._notices: list[str] = []
        self._hinting = False
        self._left = False
        self._session: PromptSession[str] = PromptSession(
            message=[("class:mark", wording.MARK)], input=terminal[0], output=terminal[1], style=self._style,
            history=history, completer=NameCompleter(lambda: self._names, lambda: talk.held.asked),
            complete_while_typing=False, complete_style=CompleteStyle.COLUMN, reserve_space_for_menu=MENU_ROWS,
            lexer=WordLexer(self._recognised), bottom_toolbar=self._toolbar, key_bindings=bindings(self._hint),
            enable_history_search=True, search_ignore_case=True, enable_suspend=True,
            include_default_pygments_style=False)

    def run(self, notices: Sequence[str] = ()) -> int:
        """Hold the conversation until it is left; 0."""
        self._show(wrapped([("quiet", n) for n in notices], self._columns()))
        self._show((*wrapped(greeting(self._talk.kb), self._columns()), (("", ""),)))
        ready = threading.Thread(target=self.make_ready, name="tellfin-ready", daemon=True)
        if self._warm:
            ready.start()
        try:
            return self._converse()
        finally:
            self._left = True
            if self._warm:
                ready.join(PATIENCE)

    def _converse(self) -> int:
        while True:
            self._tell()
            try:
                typed = self._session.prompt()
            except KeyboardInterrupt:
                continue
            except EOFError:
                return 0
            self._hinting = False
            if self._answer(typed):
                return 0

    def _answer(self, typed: str) -> bool:
        size = self._output.get_size()
        shown = self._talk.say(typed, size.columns, size.rows)
        if shown.lines:
            self._show((*shown.lines, (("", ""),)))
        return shown.leave

    def _tell(self) -> None:
        """Notices that came up since the last line, each once."""
        if self._history.fault:
            self._notices.append(wording.history_lost(self._history.fault))
            self._history.fault = ""
        self._show(wrapped([("quiet", n) for n in self._notices], self._columns()))
        self._notices.clear()

    def _show(self, lines: Sequence[Line]) -> None:
        encoding = self._output.encoding()
        for line in lines:
            pieces = [(f"class:{style}" if style else "", encodable(text, encoding)) for style, text in line]
            print_formatted_text(FormattedText(pieces), output=self._output, style=self._style,
                                 include_default_pygments_style=False)

    def _columns(self) -> int:
        return self._output.get_size().columns

    # comforts: each may fail without taking the prompt with it ----------------------------------------------------

    @property
    def ready(self) -> bool:
        """True once names can be completed and words marked, or have been given up."""
        return self._ready

    def make_ready(self) -> None:
        """Make the list of names, and read one line so that the lexicon is there, while the first line is typed."""
        self._names = self._comfort("completion", self._listed, None)
        self._comfort("marking of words", lambda: self._read(wording.PAIR), NO_SPANS)
        self._ready = True

    def _listed(self) -> NameList | None:
        return names_of(self._talk.kb)

    def _recognised(self, text: str) -> tuple[Span, ...]:
        return self._comfort("marking of words", lambda: self._read(text), NO_SPANS) if self._ready else NO_SPANS

    def _read(self, text: str) -> tuple[Span, ...]:
        from assistant.dialogue.reader.read import read_line

        reading = read_line(self._talk.kb, text, self._talk.held, self._talk.today())
        return spans_of(reading, text, self._observable)

    def _observable(self, character: str) -> bool:
        found = self._talk.kb.find("character", character)
        return found is not None and found.use in ("identify", "hybrid")

    def _toolbar(self) -> FormattedText:
        return self._comfort("bottom line", self._bar, FormattedText([]))

    def _hint(self, empty: bool) -> None:
        """Say how to leave after Ctrl-C on an empty line, until something is typed."""
        self._hinting = empty

    def _bar(self) -> FormattedText:
        width = self._columns() - 1
        if self._hinting and not self._session.default_buffer.text:
            return FormattedText([("", wording.LEAVING[:width])])
        parts = fitted(held_parts(self._talk.kb, self._talk.held), width)
        if not parts:
            return FormattedText([("", empty_words(width))])
        out: list[tuple[str, str]] = []
        for name, value in parts:
            look = "class:bar-asked" if name == "asked" else "class:bar-value"
            out += [("", (BETWEEN if out else "") + f"{name}: "), (look, value)]
        return FormattedText(out)

    def _comfort(self, what: str, work: Callable[[], T], otherwise: T) -> T:
        """The result of a comfort; one that fails is logged, told once and left out from then on."""
        if what in self._off or self._left:
            return otherwise
        try:
            return work()
        except Exception as error:
            if self._left:
                return otherwise
            self._off.add(what)
            if self._talk.debug:
                raise
            self._notices.append(wording.switched_off(what, self._talk.report(error).hint))
            return otherwise


def bindings(cleared: Callable[[bool], None]) -> KeyBindings:
    """Keys of our own: Ctrl-C clears the line (``cleared`` hears whether it was empty), a paste becomes one line, Tab
    takes a completion at once where there is only one."""
    keys = KeyBindings()

    @keys.add("c-c")
    def _clear(event: KeyPressEvent) -> None:
        """Empty the line, leaving a search in the history; the prompt stays where it is."""
        if event.app.layout.is_searching:
            stop_search()
        cleared(not event.current_buffer.text)
        event.current_buffer.reset()

    @keys.add("c-d", filter=is_searching)
    def _leave(event: KeyPressEvent) -> None:
        """Leave from a search as from the line, where neither holds anything."""
        line = event.app.layout.search_target_buffer_control
        if not event.current_buffer.text and (line is None or not line.buffer.text):
            event.app.exit(exception=EOFError)

    @keys.add("tab")
    def _complete(event: KeyPressEvent) -> None:
        """Take the only completion, else open the menu or go down in it."""
        buffer = event.current_buffer
        if buffer.complete_state:
            buffer.complete_next()
            return
        found = list(islice(buffer.completer.get_completions(buffer.document, CompleteEvent(False, True)), 2))
        if len(found) == 1:
            buffer.apply_completion(found[0])
        elif found:
            buffer.start_completion(insert_common_part=True)

    @keys.add(Keys.BracketedPaste)
    def _paste(event: KeyPressEvent) -> None:
        """Insert the pasted text as one line, cut to what is read."""
        event.current_buffer.insert_text(pasted(event.data))

    return keys


def pasted(text: str) -> str:
    """Pasted text as one line: no control characters, blanks kept at its ends."""
    from assistant.text import strip_controls

    flat = strip_controls(_CODES.sub("", text[: 4 * LONGEST]))
    lead, tail = " " * (flat[:1] == " "), " " * (flat[-1:] == " ")
    return f"{lead}{one_line(flat)}{tail}"[:LONGEST] if flat.strip() else ""
