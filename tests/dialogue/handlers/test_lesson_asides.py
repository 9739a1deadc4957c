"""What is said inside a quiz or a walked key beside answering, quizzes on paper, cards and lists of words."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.quiz import QuizRun
from assistant.dialogue.lessons.key_walk import KeyWalk
from assistant.dialogue.lessons.request import items_of

Talk = Callable[..., tuple[Answer, Held]]


def text_of(answer: Answer) -> str:
    """All words of an answer."""
    return "\n".join(b.text for b in answer.blocks)


@pytest.mark.parametrize(("line", "begins"), [
    ("skip", "Skipped; the answer was"), ("next one", "Skipped; the answer"), ("no idea", "No matter; the answer is"),
    ("i dont know", "No matter; the answer is"), ("whats the answer", "The answer is"), ("i give up", "The answer is")])
def test_who_does_not_answer_is_not_wrong(talk: Talk, line: str, begins: str) -> None:
    """A question passed over or given up tells its answer, goes on, and is not counted as wrong."""
    answer, held = talk("quiz me on pikes", line)
    assert answer.blocks[0].text.startswith(begins) and "Not quite" not in text_of(answer)
    assert isinstance(held.walk, QuizRun) and held.walk.passed == (0,) and held.walk.at == 1 and not held.walk.missed
    assert "1 passed over" in text_of(talk("stop", held=held)[0])


def test_a_hedged_letter_is_an_answer(talk: Talk) -> None:
    """"Not sure, b" answers b."""
    _, held = talk("quiz me on pikes", "not sure, b")
    assert isinstance(held.walk, QuizRun) and held.walk.at == 1 and not held.walk.passed


def test_why_tells_of_the_question_before(talk: Talk) -> None:
    """"Why" after an answer gives its reason and asks the open question again."""
    first, held = talk("quiz me on walleye and sauger", "a")
    assert isinstance(held.walk, QuizRun)
    answer, after = talk("why", held=held)
    assert answer.blocks[0].text.startswith("Question 1: ") and held.walk.questions[0].reason in answer.blocks[0].text
    assert answer.asked == first.asked and isinstance(after.walk, QuizRun) and after.walk.at == 1


def test_a_hint_names_a_wrong_choice(talk: Talk) -> None:
    """A hint takes one wrong choice away and costs nothing."""
    answer, held = talk("quiz me on pikes", "give me a hint")
    assert isinstance(held.walk, QuizRun) and held.walk.at == 0
    assert f"({'abcd'[held.walk.questions[0].answer]})" not in answer.blocks[0].text


@pytest.mark.parametrize("line", ["what was the question", "repeat the question", "can you read me the question again"])
def test_a_question_is_repeated(talk: Talk, line: str) -> None:
    """Asking for the question again begins no other quiz."""
    first, _ = talk("quiz me on pikes")
    again, held = talk("quiz me on pikes", line)
    assert again.asked == first.asked and len(again.blocks) == 1 and isinstance(held.walk, QuizRun)


def test_all_answers_are_told(talk: Talk) -> None:
    """"Answers please" gives the letters of the whole quiz and ends it; after a quiz on paper they are told again."""
    _, held = talk("give me five questions about bass")
    assert isinstance(held.walk, QuizRun)
    letters = [q.letter for q in held.walk.questions]
    answer, after = talk("answers please", held=held)
    assert answer.blocks[0].text.startswith(f"Answer key: 1 {letters[0]}, 2 {letters[1]}") and after.walk is None
    answer, _ = talk("quiz for my 4th graders on trout, 6 questions", "answers please")
    assert "kept apart" in answer.blocks[0].text and len(answer.blocks) > 6


@pytest.mark.parametrize("line", [
    "i want to quiz my kids on bluegill and crappie", "make a ten question quiz on fish parts for fifth grade",
    "write 8 quiz questions about catfish for my class", "Can you make a worksheet about pumpkinseeds?"])
def test_a_quiz_for_others_is_written_out(talk: Talk, line: str) -> None:
    """Who asks for others is not asked: the questions come at once, the answers after them."""
    answer, held = talk(line)
    assert answer.intent == "quiz" and held.walk is None and "kept apart" in text_of(answer)
    assert "tellfin" not in answer.blocks[0].text


def test_a_quiz_on_one_fish_asks_of_it(talk: Talk) -> None:
    """Each question on features of one fish asks of that fish."""
    _, held = talk("quiz me on the pumpkinseed")
    assert isinstance(held.walk, QuizRun)
    for q in held.walk.questions:
        assert "word" in q.text or "pumpkinseed" in f"{q.text} {q.choices[q.answer]}"


def test_a_quiz_on_parts_asks_for_words(talk: Talk) -> None:
    """A quiz on parts of a fish asks what words mean and where to look; on fins each right word has to do with fins."""
    _, held = talk("quiz me on the parts of a fish")
    assert isinstance(held.walk, QuizRun) and len(held.walk.questions) == 5
    assert all(q.text.startswith(("Which word", "Where on a fish")) for q in held.walk.questions)


def test_another_quiz_asks_other_questions(talk: Talk) -> None:
    """A second quiz on the same fishes does not ask all the same questions."""
    _, first = talk("quiz me on sunfish")
    _, second = talk("stop", "another quiz", held=first)
    assert isinstance(first.walk, QuizRun) and isinstance(second.walk, QuizRun)
    assert {q.text for q in first.walk.questions} != {q.text for q in second.walk.questions}


def test_cards_have_a_name_and_marks(talk: Talk) -> None:
    """A card for each fish: its name, a bar, what to look for, resting on statements."""
    answer, held = talk("flash cards for sunfish")
    cards = [b for b in answer.blocks if b.kind == "point"]
    assert held.walk is None and len(cards) == 13 and all(" | " in b.text and b.statements for b in cards)
    assert len([b for b in talk("10 cards on the parts of a fish")[0].blocks if b.kind == "point"]) == 10


def test_true_or_false_alone(talk: Talk) -> None:
    """A true or false quiz asks nothing else."""
    _, held = talk("true or false quiz on perch, 4 questions")
    assert isinstance(held.walk, QuizRun) and all(q.choices == ("true", "false") for q in held.walk.questions)


def test_one_at_a_time_is_no_number() -> None:
    """"One question at a time" asks for no quiz of one question."""
    assert items_of("quiz me, one question at a time") == 0 and items_of("one question on trout") == 1


def test_why_a_step_is_asked(talk: Talk) -> None:
    """"Why" inside a key tells what the step parts, and it is asked again."""
    start, _ = talk("walk me through a key of pikes")
    answer, _ = talk("walk me through a key of pikes", "why")
    assert "parts what is left" in answer.blocks[0].text and answer.asked == start.asked


@pytest.mark.parametrize("line", ["yes", "no"])
def test_no_chooses_nothing_between_two(talk: Talk, line: str) -> None:
    """A bare yes or no to "jaws or a sucking mouth" is no answer."""
    start, before = talk("start a key")
    answer, held = talk("start a key", line)
    assert "does not choose" in answer.blocks[0].text and answer.asked == start.asked and held.walk == before.walk


@pytest.mark.parametrize(("line", "lead"), [
    ("it has spines", 0), ("no spines", 1), ("soft fins", 1), ("yes", 0), ("nope", 1)])
def test_what_is_denied_is_not_taken_for_said(talk: Talk, line: str, lead: int) -> None:
    """Beside a choice that denies, a line that says the thing takes the other one."""
    before, held = talk("start a key", "it has jaws")
    assert before.asked is not None and before.asked.choices[1][1].startswith("no spines")
    _, after = talk(line, held=held)
    assert isinstance(held.walk, KeyWalk) and isinstance(after.walk, KeyWalk)
    assert after.walk.at == held.walk.couplet.leads[lead].goes_to


def test_another_feature_answers_nothing(talk: Talk) -> None:
    """What tells of another feature is not booked for the one asked; fishes that it does not fit drop out."""
    _, before = talk("walk me through the sunfish key")
    answer, held = talk("walk me through the sunfish key", "i see a long ear flap")
    assert isinstance(before.walk, KeyWalk) and isinstance(held.walk, KeyWalk)
    assert answer.blocks[0].text.startswith("Noted: a long ear flap; that leaves")
    assert set(held.walk.left) < set(before.walk.left) and "lepomis-megalotis" in held.walk.left


@pytest.mark.parametrize(("line", "noted"), [
    ("tail? no fork", "not a forked tail fin"), ("lower jaw? even", "a mouth at the front with even jaws"),
    ("chin whiskers? white", "white or pale chin barbels")])
def test_a_part_asked_and_answered_by_the_walker(talk: Talk, line: str, noted: str) -> None:
    """ "Lower jaw? even" tells of the jaw, and takes no lead of another feature by its bare words."""
    answer, held = talk("walk me thru figuring out a catfish", line)
    assert isinstance(held.walk, KeyWalk) and held.walk.before is not None
    assert answer.blocks[0].text.startswith(f"Noted: {noted}; that leaves")
    assert len(held.walk.left) < len(held.walk.before.left)


@pytest.mark.parametrize(("line", "left"), [
    ("leave out the brown one", ("ictalurus-punctatus", "pylodictis-olivaris", "ameiurus-natalis")),
    ("take the yellow one out", ("ictalurus-punctatus", "pylodictis-olivaris", "ameiurus-nebulosus")),
    ("drop the flathead", ("ictalurus-punctatus", "ameiurus-natalis", "ameiurus-nebulosus"))])
def test_one_fish_left_out_by_its_name(talk: Talk, line: str, left: tuple[str, ...]) -> None:
    """ "The brown one" is the fish that is called so, and no other goes; "those three" are then the rest."""
    first = "key for channel cat, flathead, yellow bullhead and brown bullhead"
    _, held = talk(first, line)
    assert isinstance(held.walk, KeyWalk) and set(held.walk.key.taxa) == set(left)
    answer, _ = talk(first, line, "now five questions on those three, answers apart")
    assert answer.intent == "quiz" and set(left) <= set(answer.taxa) and text_of(answer).count("?") >= 3


@pytest.mark.parametrize("line", [
    "walk me thru figuring out a catfish", "step me through working out which catfish I have",
    "i want to be walked through naming a catfish", "can you lead me thru a catfish id"])
def test_a_walk_asked_for(talk: Talk, line: str) -> None:
    """Who wants to be led to the name of a fish gets the first step of a key."""
    answer, held = talk(line)
    assert answer.intent == "key" and isinstance(held.walk, KeyWalk) and "Step 1." in text_of(answer)


@pytest.mark.parametrize(("line", "intent"), [
    ("walk me through unhooking a catfish", "handling"), ("walk me thru how to cook a bass", "handling"),
    ("take me through the walleye rules", "rules")])
def test_a_walk_of_another_kind(talk: Talk, line: str, intent: str) -> None:
    """To be led through something else makes no key."""
    assert talk(line)[0].intent == intent


def test_steps_are_counted(talk: Talk) -> None:
    """A walk counts its steps on, whatever was passed over; "back" counts back."""
    ways = (("not sure",), ("not sure", "not sure"), ("not sure", "back"))
    said = [talk("start a key", *lines)[0].blocks[-1].text for lines in ways]
    assert [s[:7] for s in said] == ["Step 2.", "Step 3.", "Step 1."]


def test_the_key_is_printed_when_asked(talk: Talk) -> None:
    """"Print it" shows the whole key with the way to a page, during the walk and after its end."""
    for lines in (("print it",), ("a", "print it please")):
        answer, _ = talk("make me a simple key for perch, walleye and sauger", *lines)
        assert answer.intent == "key" and "To print it" in text_of(answer) and "1a " in text_of(answer)


def test_overlapping_counts_are_told(talk: Talk) -> None:
    """Where a count does not part for sure, the key says so, and so does the end of the walk."""
    answer, held = talk("make a key to the crappies")
    assert isinstance(held.walk, KeyWalk) and "The counts overlap at step 1" in text_of(answer)
    end = text_of(talk("a", held=held)[0])
    assert "But the counts overlap" in end and "Check as well" in end


def test_genera_beside_a_fish_are_keyed_as_kinds(talk: Talk) -> None:
    """A key to bass, crappie and bluegill has three ends, of which two lead on; kids get what they can see."""
    first, held = talk("can you make an easy key for my class with bass, crappie and bluegill")
    assert isinstance(held.walk, KeyWalk) and len(held.walk.key.taxa) == 3 and held.walk.level == "young"
    assert "You also asked" not in text_of(first)
    _, after = talk("only things kids can see", held=held)
    assert isinstance(after.walk, KeyWalk) and after.walk.key.look == "picture" and len(after.walk.key.taxa) == 3


def test_a_word_unknown_is_no_answer(talk: Talk) -> None:
    """"I dont know what a soft dorsal is" asks for the word and passes nothing over."""
    start, _ = talk("key: bluegill redear")
    answer, _ = talk("key: bluegill redear", "i dont know what a soft dorsal is")
    assert answer.asked == start.asked and answer.blocks[0].text.startswith("Soft dorsal: ")


def test_fishes_left_are_named(talk: Talk) -> None:
    """Who asks which fishes are left is told, and the step asked again."""
    answer, _ = talk("make a key of the pikes", "which fish are left")
    assert answer.intent == "key" and "muskellunge" in answer.blocks[0].text


def test_lists_of_words_keep_to_their_things(talk: Talk) -> None:
    """A list on fins and scales has words for both; one on parts of a fish has parts alone."""
    both = text_of(talk("vocabulary sheet for fish fins and scales")[0])
    assert "Dorsal fin" in both and "Ctenoid" in both
    parts = text_of(talk("word list with pictures of fish parts")[0])
    assert "Bag limit" not in parts and "Caudal fin" in parts and "no pictures" in parts


def test_a_sheet_for_children_has_no_trade_terms(talk: Talk) -> None:
    """For a third grade a fish is told in everyday words, without the trade's terms in brackets."""
    told = text_of(talk("make a one page fact sheet on the bluegill for third grade")[0])
    assert "margin" not in told and "opercular" not in told and "belly fins" in told


def test_a_line_on_each_kind_of_a_place(talk: Talk) -> None:
    """A line each tells of every kind of the group in the place named."""
    answer, _ = talk("sheet with the sunfishes of minnesota one line each")
    points = [b for b in answer.blocks if b.kind == "point"]
    assert answer.intent == "describe" and len(points) == 6 and "Minnesota" in answer.blocks[0].text


@pytest.mark.parametrize("line", ["leave out the green one", "take the green sunfish out"])
def test_a_fish_taken_out_of_a_quiz(talk: Talk, line: str) -> None:
    """A fish taken out while a question waits is no wrong answer; the quiz is made again without it."""
    answer, held = talk("quiz on bluegill, redear and green sunfish, 3 questions", line)
    assert isinstance(held.walk, QuizRun) and "Not quite" not in text_of(answer) and held.walk.at == 0
    assert set(held.walk.taxa) == {"lepomis-macrochirus", "lepomis-microlophus"} and len(held.walk.questions) == 3


@pytest.mark.parametrize("line", ["Answers on their own sheet", "put the answers on a separate page", "answers apart"])
def test_answers_of_a_key(line: str, talk: Talk) -> None:
    """The answers of a key are the choices that lead to each fish, told apart from it."""
    answer, held = talk("Make a key for walleye, sauger, yellow perch", line)
    told = [b.text for b in answer.blocks if b.kind == "point"]
    assert answer.intent == "key" and len(told) == 3 and all("1" in t for t in told)
    assert isinstance(held.walk, KeyWalk)
