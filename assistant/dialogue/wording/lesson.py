"""The wording of lessons: comparisons, keys, sheets and quizzes (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.text import join, key, lower_first, sentence

BARE_WORDS = frozenset(["no", "none", "present", "absent"])
NOTHING_HELD = "not recorded"
YOUNG_OFTEN = {"usually": "mostly", "often": "often", "sometimes": "now and then"}
MEMORY_MARK, SHARED_MARK = "*", "+"
MEMORY_NOTE = "* from memory: nobody has checked it against a book yet"
SHARED_NOTE = "+ told of the whole group that the fish belongs to"
FREQUENCY_NOTE = "Usually: about 8 in 10 fish; often: about half; sometimes: about 1 in 5; no such word: nearly all."
YOUNG_FREQUENCY_NOTE = ("Mostly: about 8 in 10 fish. Often: about half. Now and then: about 1 in 5. "
                        "No such word: nearly all.")
CROSSES_NAMED = 3
FEATURE = "Feature"
ALIKE = "Alike in all of them"
NOTHING_SEPARATES = "Nothing that can be seen this way separates these fishes."
KEY_TO = "A key to "
KEY_COLUMNS = ("Step", "If your fish has", "Go to")
LOOK = {"picture": "what a picture shows", "hand": "a fish in the hand", "lab": "a dead fish on the bench"}
NOT_PARTED = "not told apart by these features"


def compare_title(names: Sequence[str]) -> str:
    """The title of a comparison."""
    return f"{sentence(join(names)).rstrip('.')} side by side"


def lead(feature: str, choice: str) -> str:
    """A lead of a key."""
    if set(key(feature).split()) <= set(key(choice).split()):
        return f"{choice[:1].upper()}{choice[1:]}"
    return f"{feature[:1].upper()}{feature[1:]}: {choice}"


def either(choices: Sequence[str], last: str = "or") -> str:
    """Alternatives, or things said together, those with a comma inside kept apart by semicolons.

    >>> either(["white tips", "plain"]), either(["faint", "plain, no white"])
    ('white tips or plain', 'faint; or plain, no white')
    """
    if len(choices) > 1 and any("," in c for c in choices):
        return "; ".join([*choices[:-1], f"{last} {choices[-1]}"])
    return join(choices, last)


def at_most(number: int) -> str:
    """A count up to a number."""
    return f"{number} or fewer" if number else "none"


def at_least(number: int) -> str:
    """A count from a number on."""
    return f"{number} or more"


def fools(who: str, fish: str, feature: str, value: str) -> str:
    """A feature that fools people in some fish."""
    return sentence(f"careful with the {feature}: {who} of the {fish} may show {value}")


def crossing(names: Sequence[str]) -> str:
    """Crosses between the fishes compared, a few of them named."""
    more = len(names) - CROSSES_NAMED
    shown = f"{', '.join(names[:CROSSES_NAMED])} and {more} more" if more > 0 else join(names)
    return sentence(f"these cross ({shown}), and a cross may show marks of both parents")


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
    if mean < 1.05:
        return "One choice names the fish."
    return f"A fish is named after {mean:.1f} choices on average."


def twice(names: str) -> str:
    """Fishes that stand at several ends."""
    return sentence(f"listed at more than one place because they vary: {names}")


def so_many(count: int) -> str:
    """Fishes too many to name in a title."""
    return f"{count} fishes"


def not_parted(names: str) -> str:
    """Fishes that no feature parts."""
    return sentence(f"no key can be made: nothing held that can be seen this way tells {names} apart")


# --- sheet ------------------------------------------------------------------------------------------------------

SHEET_SUB = "Drawn from the base, not to scale. Firm lines are recorded; dashed lines are not."
TITLE_NAMES = 5
SHEET_NAME, SHEET_DATE, SHEET_CLASS = "Name", "Date", "Class"
SHEET_TABLE, SHEET_KEY, SHEET_WORDS = "Side by side", "Key", "Words"
SHEET_SAFETY, SHEET_SOURCES = "Safe hands, safe fish", "Sources"
SHEET_SOURCES_NOTE = "One source at least for each line; the base holds more."
SHEET_RULES = "Before anyone fishes: check your own local rules."
SHEET_RINGS = "Numbers on the fish are the numbers of the table."
ALL_OF_THESE = "All of these fishes."


def sheet_of(names: str) -> str:
    """The title of a sheet on a group or the fishes of a place."""
    return f"Tell them apart: {names}"


def sheet_title(names: Sequence[str]) -> str:
    """The title of a sheet."""
    return f"Tell them apart: {join(names) if len(names) <= TITLE_NAMES else so_many(len(names))}"


def grows(lengths: str, single: bool) -> str:
    """The usual length of a fish."""
    return f"usually {'about ' if single else ''}{lengths} long"


def grows_to(high: str) -> str:
    """The greatest length of a fish."""
    return f"up to {high} long"


def source_line(author: str, titles: Sequence[str]) -> str:
    """What was read of one author and year."""
    return sentence(": ".join(x for x in (author, "; ".join(titles)) if x))


def also_called(used: str, term: str) -> str:
    """A term under the word that stands in the text."""
    return f"{used} ({term})"


# --- quiz -------------------------------------------------------------------------------------------------------

TRUE, FALSE = "true", "false"
ANSWER_FILLERS = frozenset(["the", "a", "an", "it", "is", "its", "i", "think", "say", "guess", "answer", "my", "would",
                            "be", "choose", "pick", "number", "letter", "option", "um", "uh", "maybe"])
QUIZ_ANSWERS = "Answers"


def quiz_title(names: str) -> str:
    """The title of a quiz."""
    return f"Quiz: {names}"


def quiz_which_fish(told: str, usual: bool) -> str:
    """Which fish has a feature."""
    return f"Which of these fishes {_has(usual)} {told}?"


def _has(usual: bool) -> str:
    return "usually has" if usual else "has"


def quiz_which_feature(fish: str, usual: bool) -> str:
    """Which feature a fish has."""
    return f"Which of these does a grown {fish} {'usually ' if usual else ''}have?"


def quiz_true_false(fish: str, told: str, usual: bool) -> str:
    """True or false."""
    return f"True or false: the {fish} {_has(usual)} {told}."


def quiz_catch(told: str) -> str:
    """A described catch to name."""
    return f"You catch a fish with {told}. Which of these is it?"


_FIRST_SAID = re.compile(r"(?<=[a-z])\.\s|;\s")
"""What parts the meaning of a word from what else is said of it."""


def quiz_term(plain: str) -> str:
    """A word and its meaning: the first sentence of it, as a question."""
    said = _FIRST_SAID.split(plain)[0].rstrip(".")
    return f'Which word means "{said if said[1:2].isupper() else said[:1].lower() + said[1:]}"?'


def quiz_term_where(label: str) -> str:
    """Where a part of the body is."""
    return f"Where on a fish do you look for the {label}?"


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


# --- keys and quizzes in talk -----------------------------------------------------------------------------------

BACK_WORDS = frozenset(["back", "previous", "undo", "backup", "oops"])
AWAY_WORDS = frozenset(["out", "off", "away"])
"""Words behind a fish that is to be taken out ("take the white one out")."""
TAKE_WORDS = frozenset(["take", "leave", "throw", "cut", "kick", "get"])
DROP_WORDS = frozenset(["drop", "remove", "without", "minus", "omit", "leave", "skip", "except", "lose", "toss"])
WITHOUT = "without "
WITHOUT_WORDS = DROP_WORDS | {"not"}
ADD_WORDS = frozenset(["add", "include", "plus", "put"])
IN_WORDS = frozenset(["in", "into"])
"""Words behind a fish that is to be put in ("throw a flier in there too")."""
THROW_WORDS = frozenset(["throw", "toss", "stick", "mix", "bring", "work", "pop", "slip", "chuck", "get", "drop"])
SWAP_WORDS = frozenset(["swap", "replace", "trade", "switch", "exchange"])
START_WORDS = frozenset(["start", "begin", "go", "ready", "walk", "through", "guide"])
YES_NO_WORDS = frozenset(["yes", "no", "yeah", "yep", "nope", "nah", "yup", "y", "n", "right", "it", "does", "doesnt"])
DENYING_WORDS = frozenset(["no", "none", "absent", "not", "without", "never"])
WHETHER_WORDS = frozenset(["is", "are", "does", "do", "has", "have", "did", "can"])
STOP_WORDS = frozenset(["stop", "quit", "end", "exit", "enough", "cancel"])
KEY_WHICH = "Name some fishes or a group, for instance: a key of the sunfishes in Ohio."
KEY_FROM_FAMILIES = "Let us find the family first. Say a or b; \"back\" and \"not sure\" work too."
KEY_HOW = ("A key asks one choice after another: look at the fish, take the line that fits it, and go to the step "
           "at its end until it names the fish. Say a or b; \"back\" and \"not sure\" work too.")
USE_WORDS = frozenset(["use", "work", "works", "read", "follow", "using", "do"])
KEY_STOPPED = "The key is put away. Ready for another fish, or any question."
KEY_BACK = "One step back."
KEY_AT_START = "That was the first step already."


def key_title_line(title: str, count: int, look: str, kinds: bool = False) -> str:
    """The head of a key in talk; ``kinds`` where genera or families are keyed."""
    seen = LOOK_SEEN.get(look) or f"features for {LOOK.get(look, LOOK_MORE.get(look, look))}"
    number = f"{count} {'kinds' if kinds else 'fishes'}"
    return f"{title}{'' if title.endswith(number) else f': {number}'}, {seen}."


def key_answers(title: str) -> str:
    """Lead of the answers of a key, apart from it."""
    return f"Answers, for a sheet of their own. {title}:"


def key_way(fish: str, ways: list[str]) -> str:
    """The choices that lead to a fish."""
    return f"{fish}: {' or '.join(ways)}"


def key_line(number: str, says: str, goes: str) -> str:
    """A lead of a key in talk."""
    return f"{number} {says} -> {goes}"


LOOK_SEEN = {"picture": "by what a picture shows"}
LOOK_MORE = {"uncounted": "a fish in the hand, nothing counted", "touch": "touch alone"}


def key_one(names: str) -> str:
    """A key asked for one fish."""
    return f"A key needs two fishes or more; you named {names or 'none'}. Name others to set beside it."


def key_long(taxa: int, couplets: int) -> str:
    """A key too long to show."""
    return (f"That key has {couplets} steps for {taxa} fishes, too long to show here; let us walk through it. "
            "Say a or b, \"back\" or \"not sure\".")


def key_offer(first: str) -> str:
    """The walk offered under a key."""
    return f"To walk through it, {lower_first(first)}"


def key_ask(number: int, question: str, choices: Sequence[str]) -> str:
    """A couplet asked."""
    return f"Step {number}. {question} (a) {choices[0]}; (b) {choices[1]}. Which one (a or b)?"


def key_taken(taken: str) -> str:
    """The lead that was taken."""
    return f"Noted: {taken[:1].lower()}{taken[1:]}."


def key_passed(label: str) -> str:
    """A couplet passed over."""
    return f"Left out: {label}."


def key_which(answer: str) -> str:
    """A yes or no to a question that offers two things."""
    return f"\"{sentence(answer).rstrip('.')}\" does not choose between these two."


def key_why(feature: str, ways: Sequence[str]) -> str:
    """What a couplet is asked for: the fishes left on its two ways."""
    return f"{sentence(feature)[:-1]}: this step parts what is left. After (a): {ways[0]}; after (b): {ways[1]}."


def key_left(names: str) -> str:
    """The fishes still in play."""
    return sentence(f"still possible: {names}")


def so_many_kinds(count: int) -> str:
    """Fishes or groups too many to name."""
    return f"{count} kinds"


def key_print(command: str) -> str:
    """How a key is put on paper."""
    return f"To print it, copy these lines{f', or write them to a page: {command}' if command else '.'}"


def key_unread(how: str) -> str:
    """An answer that chose no lead."""
    return "I could not tell which of the two you mean." + (f" {how}" if how else "")


def key_elsewhere(feature: str) -> str:
    """An answer that tells of another feature than the one asked."""
    return sentence(f"that tells of the {feature}; this step asks of another feature")


def key_narrowed(told: str, left: int, before: int, names: str = "") -> str:
    """Another feature than the one asked, by which fishes of the key drop out; the few that are left by name."""
    return f"Noted: {told}; that leaves {left} of the {before}{f': {names}' if names else ''}."


def word_means(word: str, plain: str) -> str:
    """A word explained on the way."""
    return f"{word[:1].upper()}{word[1:]}: {plain}"


def key_family(family: str, count: int) -> str:
    """From a family on into its species."""
    return f"That leads to the {family}, {count} kinds. On we go."


def key_over(names: str) -> str:
    """A letter after the end of a walk."""
    return f"The key ended at {names}; say \"back\" to go a step back, or ask for a new key."


def key_end(name: str) -> str:
    """The end of a walk."""
    return f"The key ends at the {name}."


def key_end_several(names: str) -> str:
    """The end of a walk with several fishes."""
    return f"The key cannot part these any further: it is {names}."


def key_check(names: str) -> str:
    """Look-alikes to rule out at the end."""
    return f"A key knows only the fishes in it; look at the {names} too before you settle."


SCORE_WORDS = frozenset(["score", "points"])
MISSED_WORDS = frozenset(["miss", "missed", "misses", "wrong"])
REVIEW = "To look at again"
NONE_MISSED = "None missed so far."
QUIZ_STOPPED = "The quiz is over."
QUIZ_UNREAD = "I could not tell which choice you mean; a letter will do."
QUIZ_ANSWERS_APART = "Answers, to be kept apart:"
TABLE_NEEDS_TWO = "Name two fishes or more, and I will set them side by side."
TABLE_OFFER = "Ask for a key or a quiz on the same fishes; \"tellfin sheet\" prints them with drawings."


def quiz_begin(count: int) -> str:
    """The start of a quiz."""
    number = f"{count} question{'' if count == 1 else 's'}"
    return f"{number}. A letter, a name or a word will do; \"skip\" passes one over, \"stop\" ends the quiz."


def quiz_none(names: str) -> str:
    """No quiz can be made."""
    return f"Not enough is recorded that is sure to ask about {names}."


def quiz_ask(number: int, count: int, question: str, choices: Sequence[str]) -> str:
    """An item asked."""
    return f"{number} of {count}. {question} {'; '.join(choices)}."


def quiz_prompt(letters: Sequence[str]) -> str:
    """What is to be answered."""
    return f"Which one ({join(letters, 'or')})?"


def quiz_right(reason: str) -> str:
    """A right answer."""
    return f"Right. {reason}"


def quiz_wrong(letter: str, choice: str, reason: str, mistake: str) -> str:
    """A wrong answer, the right one and why."""
    return " ".join(x for x in (f"Not quite; the answer is {letter}, {choice}.", reason, mistake) if x)


def quiz_score(score: int, done: int, count: int, passed: int = 0) -> str:
    """How the quiz stands."""
    return (f"Score: {score} of {done - passed} answered" + (f", {passed} passed over" if passed else "")
            + (f", {count - done} to go." if done < count else "."))


def quiz_final(score: int, done: int, count: int, passed: int = 0) -> str:
    """How a quiz ended that was stopped early or done; ``passed`` of those done were passed over."""
    answered = done - passed
    if not done:
        return "You stopped before answering any question."
    rest = [f"{passed} passed over"] if passed else []
    left = count - done
    rest += [f"{left} of the {count} questions {'was' if left == 1 else 'were'} left"] if left > 0 else []
    right = f"You had {score} of {answered} right" if answered else "No question was answered"
    return f"{'; '.join([right, *rest])}."


def quiz_review(question: str, answer: str, reason: str) -> str:
    """A missed item again."""
    return f"{REVIEW}: {question} - {answer}. {reason}"


def quiz_answer_line(number: int, letter: str, choice: str, reason: str, mistake: str) -> str:
    """An answer in the key of a quiz."""
    return " ".join(x for x in (f"{number}. {letter}, {choice}.", reason, mistake) if x)


def table_lead(title: str, level: str) -> str:
    """The head of a comparison in talk."""
    return f"{title}{', in plain words for the young' if level == 'young' else ''}:"


def table_cells(names: Sequence[str], cells: Sequence[str]) -> str:
    """One row of a comparison in talk."""
    return "; ".join(f"{name} - {cell}" for name, cell in zip(names, cells, strict=True))


def unrecorded(names: str) -> str:
    """Fishes that stand on both sides of a couplet because nothing is recorded of them for it."""
    return sentence(f"listed on both sides of a choice for which nothing is recorded of them: {names}")


def key_command(names: str, level: str, look: str) -> str:
    """The command that writes a key to a page."""
    looks = f" --look {look}" if look in LOOK and look != "hand" else ""
    levels = "" if level == "plain" else f" --level {level}"
    return f"tellfin key {names}{levels}{looks} --format html -o key.html"
