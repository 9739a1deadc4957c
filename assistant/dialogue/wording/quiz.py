"""The wording of quizzes in talk: what is said beside right and wrong, quizzes on paper, cards (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.text import sentence

NO_HINT = "With two to choose from, a hint would be the answer."
FIRST_ANSWER = "Choose first, then I tell you why; \"skip\" tells the answer at once."
GIVES_AWAY = "That word is one of the choices; to explain it would give the answer away."
NOT_A_CHOICE = "That is not one of the choices."
PAPER_COMMAND = ("\"tellfin quiz\" writes one to files for printing, the answers apart; "
                 "say \"quiz me\" to be asked one by one.")
PRINTED_NO_SKIP = ("That quiz is written out whole, its answers below it, so no question waits here to be skipped: "
                   "leave that one out and go on to the next, or say \"quiz me\" to be asked one by one, where "
                   "\"skip\" passes a question over.")
PRINTED_NO_ANSWER = ("That quiz is written out whole, so I keep no score of it; compare your answer with these, or say "
                     "\"quiz me\" to be asked one by one.")
CARDS_HOW = "Front: the name. Back: what to look for."
WORD_CARDS_HOW = "Front: the word. Back: what it means."
CARD_EMPTY = "nothing is recorded that is sure enough to tell it from the others"


def skipped(letter: str, choice: str, reason: str) -> str:
    """A question passed over."""
    return f"Skipped; the answer was {letter}, {choice}. {reason}"


def not_known(letter: str, choice: str, reason: str) -> str:
    """A question to which somebody knows no answer."""
    return f"No matter; the answer is {letter}, {choice}. {reason}"


def revealed(letter: str, choice: str, reason: str) -> str:
    """An answer asked for."""
    return f"The answer is {letter}, {choice}. {reason}"


def because(number: int, reason: str, mistake: str) -> str:
    """The reason of the answer to the question before."""
    return " ".join(x for x in (f"Question {number}: {reason}", mistake) if x)


def not_this(letter: str, choice: str) -> str:
    """A hint: a choice that is wrong."""
    return f"A hint: it is not ({letter}) {choice}."


def answer_key(answers: Sequence[str]) -> str:
    """The letters of all answers."""
    return f"Answer key: {', '.join(answers)}."


def answer_short(number: int, letter: str) -> str:
    """One answer of an answer key."""
    return f"{number} {letter}"


def paper(count: int, subject: str) -> str:
    """The head of a quiz on paper."""
    return f"{count} question{'' if count == 1 else 's'} on {subject}; the answers follow apart."


def cards(count: int, subject: str, words: bool) -> str:
    """The head of a set of cards, with fishes or with words on them."""
    return f"{count} card{'' if count == 1 else 's'} on {subject}. {WORD_CARDS_HOW if words else CARDS_HOW}"


def card(front: str, back: str) -> str:
    """One card."""
    return sentence(f"{front} | {back}")


def card_marks(told: str, usual: bool) -> str:
    """The marks on a card."""
    return f"usually {told}" if usual else told


PARTS = "the parts of a fish"


def words_for(part: str) -> str:
    """Words that a quiz is on."""
    return f"words for {part}"


NO_PICTURES = "I have no pictures in talk; \"tellfin sheet\" draws fishes on a page with the words under them."


def no_words(topic: str, count: int) -> str:
    """No words are held on a thing."""
    return f"No words on {topic} are held here; {count} words for the parts of a fish instead:"


FROM_LIST = "the list"


def fewer_words(made: int, wished: int) -> str:
    """Fewer questions on words than asked for."""
    return f"{made} instead of {wished}: no more words on that are held."


def not_so(fish: str, told: str) -> str:
    """Why a statement is false."""
    return sentence(f"the {fish} does not have {told}")


def lives_in(fish: str, place: str) -> str:
    """A statement on a place."""
    return f"True or false: the {fish} lives in {place}."


def listed(fish: str, place: str, status: str) -> str:
    """Why a statement on a place is true or false."""
    return sentence(f"the {fish} is {status} {'from' if status == 'absent' else 'in'} {place}")


def listed_elsewhere(fish: str, others: str, place: str) -> str:
    """Why a statement on a place is held false."""
    return sentence(f"the {fish} is listed for other places, among them {others}, not for {place}")
