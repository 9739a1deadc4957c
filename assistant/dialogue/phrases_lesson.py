"""The wording of lessons: comparisons, keys, sheets and quizzes (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import join, sentence

NOTHING_HELD = "not recorded"
YOUNG_OFTEN = {"usually": "mostly", "often": "often", "sometimes": "now and then"}
MEMORY_MARK, SHARED_MARK = "*", "+"
MEMORY_NOTE = "* from memory: nobody has checked it against a book yet"
SHARED_NOTE = "+ told of the whole group that the fish belongs to"
FREQUENCY_NOTE = ("Usually means 60 to 95 in 100 fish, often 35 to 75, sometimes 5 to 40; no such word means nearly all.")
YOUNG_FREQUENCY_NOTE = "Mostly: more than half of the fish. Now and then: a few of them. No such word: nearly all."
FEATURE = "Feature"
ALIKE = "Alike in all of them"
NOTHING_SEPARATES = "Nothing that can be seen this way separates these fishes."
KEY_TO = "A key to "
LOOK = {"picture": "what a picture shows", "hand": "a fish in the hand", "lab": "a dead fish on the bench"}
NOT_PARTED = "not told apart by these features"


def compare_title(names: Sequence[str]) -> str:
    """The title of a comparison."""
    return f"{sentence(join(names)).rstrip('.')} side by side"


def lead(feature: str, choice: str) -> str:
    """A lead of a key."""
    return f"{feature[:1].upper()}{feature[1:]}: {choice}"


def at_most(number: int) -> str:
    """A count up to a number."""
    return f"{number} or fewer" if number else "none"


def at_least(number: int) -> str:
    """A count from a number on."""
    return f"{number} or more"


def fools(who: str, fish: str, feature: str, value: str) -> str:
    """A feature that fools people in some fish."""
    return sentence(f"careful with the {feature}: {who} of the {fish} may show {value}")


def crossing(names: str) -> str:
    """Crosses between the fishes compared."""
    return sentence(f"these cross ({names}), and a cross may show marks of both parents")


def key_title(names: str, place: str) -> str:
    """The title of a key."""
    return f"{KEY_TO}{names}" + (f" of {place}" if place else "")


def key_how(count: int, look: str) -> str:
    """How a key is read."""
    return (f"Start at 1, choose the line that fits your fish, and go to the number at its end. {count} fishes; "
            f"features for {LOOK[look]}.")


def together(names: str) -> str:
    """An end of a key with several fishes."""
    return f"{names} ({NOT_PARTED})"


def steps(mean: float) -> str:
    """How long a key takes."""
    return f"A fish is named after {mean:.1f} choices on average."


def twice(names: str) -> str:
    """Fishes that stand at several ends."""
    return sentence(f"listed at more than one place because they vary or because too little is recorded: {names}")


def so_many(count: int) -> str:
    """Fishes too many to name in a title."""
    return f"{count} fishes"


def not_parted(names: str) -> str:
    """Fishes that no feature parts."""
    return sentence(f"nothing that can be seen this way parts {names}")


# --- sheet ------------------------------------------------------------------------------------------------------

SHEET_SUB = "Drawn from the base, not to scale. Firm lines are recorded; dashed lines are not."
SHEET_NAME, SHEET_DATE, SHEET_CLASS = "Name", "Date", "Class"
SHEET_TABLE, SHEET_KEY, SHEET_WORDS = "Side by side", "Key", "Words"
SHEET_SAFETY, SHEET_SOURCES = "Safe hands, safe fish", "Sources"
SHEET_SOURCES_NOTE = "One source at least for each line; the base holds more."
SHEET_RULES = "Before anyone fishes: check your own local rules."
SHEET_RINGS = "Numbers on the fish are the numbers of the table."


def sheet_title(names: Sequence[str]) -> str:
    """The title of a sheet."""
    return f"Tell them apart: {join(names)}"


def grows(low: str, high: str) -> str:
    """The usual length of a fish."""
    return f"usually {low} to {high} long" if low != high else f"usually about {high} long"


def grows_to(high: str) -> str:
    """The greatest length of a fish."""
    return f"up to {high} long"


def also_called(used: str, term: str) -> str:
    """A term under the word that stands in the text."""
    return f"{used} ({term})"


# --- quiz -------------------------------------------------------------------------------------------------------

TRUE, FALSE = "true", "false"
ANSWER_FILLERS = frozenset("the a an it is its i think say guess answer my would be choose pick number letter option um uh maybe".split())
QUIZ_ANSWERS = "Answers"


def quiz_title(names: str) -> str:
    """The title of a quiz."""
    return f"Quiz: {names}"


def quiz_which_fish(told: str, usual: bool) -> str:
    """Which fish has a feature."""
    return f"Which of these fishes {_has(usual)} {told}?"


def _has(usual: bool) -> str:
    return "usually has" if usual else "has"


def quiz_which_feature(fish: str, question: str) -> str:
    """Which feature a fish has."""
    return f"Think of a grown {fish}. {question}"


def quiz_true_false(fish: str, told: str, usual: bool) -> str:
    """True or false."""
    return f"True or false: the {fish} {_has(usual)} {told}."


def quiz_catch(told: str) -> str:
    """A described catch to name."""
    return f"You catch a fish with {told}. Which of these is it?"


def quiz_term(plain: str) -> str:
    """A word and its meaning."""
    return f"Which word means this: {plain}"


def quiz_term_reason(label: str, others: str) -> str:
    """The word asked for."""
    return f"The word is {label}" + (f", also called {others}." if others else ".")


def quiz_has(fish: str, told: str, memory: bool, usual: bool) -> str:
    """A fact that makes an answer right or wrong."""
    return f"The {fish} {_has(usual)} {told}{' (from memory, unchecked)' if memory else ''}."


def quiz_not_so(fish: str) -> str:
    """A fact that is not so."""
    return f"That is not so of the {fish}."


def quiz_tempting(choice: str, because: str) -> str:
    """The tempting mistake."""
    return f"Easily mistaken: {choice}." + (f" {because}" if because else "")


def quiz_mixed_up(fish: str) -> str:
    """A feature taken from another fish."""
    return f"Easily mistaken: that is a feature of the {fish}."


def quiz_fewer(made: int, wanted: int) -> str:
    """Fewer items than asked for."""
    return f"Only {made} of {wanted} questions could be made: not enough is recorded that is sure for these fishes."
