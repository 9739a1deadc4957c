"""The wording of what a class may want beside its lessons: paper, standards of schools, hybrids in keys (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.wording.core import UNCHECKED
from assistant.dialogue.wording.info import STATUS_SAID
from assistant.text import sentence

ON_PAPER = (
    "Talk has no printer: mark what stands in the terminal, copy it and paste it into a document. These commands write "
    "pages to print:"
)
SHEET = "a page with drawn fishes, table, key and words"
TABLE = "the table alone (--format csv opens in a spreadsheet)"
KEY = "a two-way key"
QUIZ = "a quiz, its answers on a page of their own"
SOME_FISHES = '"FISH" "FISH"'
OPEN_PAGE = "Open the page in a browser and print it from there."
NO_STANDARDS = (
    "I can't say: no school standards or curricula are held here, and I make up no numbers. The education agency of "
    "the state or province publishes its standards; set the lesson beside them there."
)
NO_GRADING = (
    "I can't: papers and tests of a class are not read or marked here. A quiz that I make comes with its answers, and "
    "one taken here is marked as it goes."
)
FOR_A_LESSON = (
    "What I can make for a lesson: a key, a quiz with its answers, cards, a list of words, a table of fishes side by "
    "side."
)
SPOILT = (
    "A hybrid fits neither side of a choice: in some marks it lies between its parents, others it has from one of them "
    "alone, so it answers one step like the one parent and the next like the other."
)
IN_A_CLASS = (
    "For a class: give the key only fishes of one kind, and let one that fits neither side of a step end as \"maybe a "
    "hybrid\", to be set beside both parents; by looks alone it stays a guess."
)

WITHOUT_PLACE = "leave the place out, or name fishes that live there"


def not_there(fish: str, place: str, status: str, basis: str) -> str:
    """What is listed of a fish that a place does not hold."""
    said = STATUS_SAID[status].format(name=fish, place=place) if status else f"the {fish} is not listed for {place}"
    return f"{said} ({UNCHECKED})" if basis == "memory" else said


def none_there(group: str, place: str) -> str:
    """That a place holds no fish of a group."""
    return f"none of the {group} is recorded in {place}"


def left_out(reasons: Sequence[str]) -> str:
    """Fishes named for a lesson that the place does not hold."""
    return f"left out: {'; '.join(reasons)}"


def too_few_there(reasons: Sequence[str], left: str) -> str:
    """Fishes named for a lesson of which the place holds none, or one alone."""
    return "; ".join([*reasons, f"that leaves the {left} alone" if left else "that leaves none of those named"])


def sheet_command(names: str) -> str:
    """The command for a page."""
    return f"tellfin sheet {names} -o sheet.html"


def table_command(names: str) -> str:
    """The command for a table."""
    return f"tellfin compare {names} --format html -o table.html"


def key_command(names: str) -> str:
    """The command for a key."""
    return f"tellfin key {names} --format html -o key.html"


def quiz_command(names: str) -> str:
    """The command for a quiz."""
    return f"tellfin quiz {names} --format html -o quiz.html --answers answers.html"


def by_command(command: str, what: str) -> str:
    """A command and what it gives."""
    return f"{command}: {what}"


def crosses_held(count: int, names: str) -> str:
    """How many crosses are held of some fishes."""
    return sentence(f"{count} such crosses of the {names} are held here" if names else f"{count} crosses are held here")


def for_instance(feature: str, told: str) -> str:
    """A mark of a cross beside its parents'."""
    return sentence(f"for instance the {feature}: {told}")
