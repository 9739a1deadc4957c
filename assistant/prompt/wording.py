"""What the prompt says by itself, beside the answers (layer 6)."""

from __future__ import annotations

MARK = "tell> "
"""What stands before the line that is typed."""
LEAVING = "Ctrl-D on an empty line leaves."
STOPPED = "Stopped; nothing was changed."
CUT = "The line was long; only its beginning is read."
NOTHING_HELD = "nothing held yet"
KEYS = "Tab completes, Ctrl-R searches, Ctrl-D leaves"
SPLASH = "Tellfin: tell one freshwater fish from another."
TRY = "Say what you saw, or ask. For example:"
WATER = "Vennimoor Lake"
CATCH = f"caught in {WATER}, 7 inches, black ear flap, long pointed side fins"
PAIR = "how do I tell a white crappie from a black crappie?"
MADE_UP = f"({WATER} and its rules are made up, to try things out.)"
WAYS = '"help" says more, "bye" leaves.'


FAREWELLS = ("bye", "goodbye", "quit", "exit")
"""Words that leave even where an answer is waited for."""
ASKING = {"which": "which one", "fish": "which fish", "place": "where", "length": "how long", "confirm": "is that so",
          "key": "a step of the key", "quiz": "a quiz question"}
"""What is asked back, in short, by kind of question."""


def splash(water: bool, pair: bool) -> list[tuple[str, str]]:
    """The greeting as (style, text) lines; which of the examples the base can answer."""
    lines = [("lead", SPLASH)]
    examples = [text for text, good in ((CATCH, water), (PAIR, pair)) if good]
    if examples:
        lines += [("", TRY), *(("example", f"  {e}") for e in examples)]
    if water:
        lines.append(("quiet", MADE_UP))
    return [*lines, ("quiet", WAYS)]


def left_over(count: int) -> str:
    """The rest of a long answer, kept back."""
    return f"({count} more lines: Enter shows them)"


def went_wrong(message: str, hint: str) -> list[tuple[str, str]]:
    """A fault in two lines."""
    lines = [("caution", f"That did not work: {message}")]
    return [*lines, ("quiet", hint)] if hint else lines


def history_lost(why: str) -> str:
    """The history cannot be kept."""
    return f"Earlier lines are not kept this time ({why})."


def no_console(why: str) -> str:
    """The terminal cannot be used fully."""
    return f"This terminal takes only plain lines ({why})."


def switched_off(what: str, message: str) -> str:
    """A comfort of the prompt failed and is off for this sitting."""
    return f"The {what} failed and is off for now ({message})."


def holding(text: str) -> str:
    """What is held, for the plain prompt."""
    return f"(Held: {text}.)"
