"""Keys, quizzes and comparisons for lessons in talk: made, walked, taken back, judged, scored."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.quiz import QuizRun
from assistant.dialogue.lessons.key_walk import KeyWalk
from assistant.dialogue.lessons.request import items_of, look_of
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.key_paths import paths

Talk = Callable[..., tuple[Answer, Held]]


def text_of(answer: Answer) -> str:
    """All words of an answer."""
    return "\n".join(b.text for b in answer.blocks)


def test_a_key_is_made_in_words(talk: Talk) -> None:
    """A key of the sunfishes in Ohio names the fishes of that state, with two leads a step, and offers the walk."""
    answer, held = talk("make a key of the sunfishes in Ohio")
    assert answer.intent == "key" and answer.asked is not None and answer.asked.kind == "key"
    said = text_of(answer)
    assert "bluegill" in said and "redspotted" not in said and "Ohio" in said
    assert isinstance(held.walk, KeyWalk)
    assert sum(b.kind == "point" for b in answer.blocks) == 2 * len(held.walk.key.couplets)


def test_claims_of_a_key_rest_on_statements(talk: Talk) -> None:
    """Every lead of a key names the statements it rests on."""
    answer, _ = talk("make me a key for bluegill, pumpkinseed and redear sunfish")
    assert all(b.statements for b in answer.blocks if b.claim)


def test_every_way_of_a_walk_ends_where_the_key_does(talk: Talk) -> None:
    """Whoever answers a and b along a way of the key hears the fish at its end."""
    _, held = talk("walk me through a key of pikes")
    assert isinstance(held.walk, KeyWalk)
    for path in paths(held.walk.key):
        answer, after = talk("walk me through a key of pikes", *("ab"[step.lead] for step in path.steps))
        assert set(answer.taxa) == set(path.taxa) and after.walk is None


@pytest.mark.parametrize(("first", "second"), [("a", "first one"), ("b", "2"), ("b", "the second")])
def test_a_lead_may_be_chosen_in_several_ways(talk: Talk, first: str, second: str) -> None:
    """A letter, a number and an ordinal choose the same lead."""
    assert talk("walk me through a key of pikes", first)[0].blocks[-1] == talk("walk me through a key of pikes",
                                                                               second)[0].blocks[-1]


def test_a_word_is_explained_on_the_way(talk: Talk) -> None:
    """A question about a word is answered, and the same step asked again."""
    start, _ = talk("walk me through a key of pikes")
    answer, _ = talk("walk me through a key of pikes", "what is the opercle")
    assert answer.asked == start.asked and "gill cover" in answer.blocks[0].text


def test_a_question_is_no_wrong_answer(talk: Talk) -> None:
    """Asking back in a quiz costs nothing: the same item is asked again."""
    first, _ = talk("quiz me on pikes")
    again, held = talk("quiz me on pikes", "why")
    assert isinstance(held.walk, QuizRun) and held.walk.at == 0 and again.asked == first.asked


def test_back_goes_back(talk: Talk) -> None:
    """After "back" the step before is asked again, and at the first step there is nothing before it."""
    start, _ = talk("walk me through a key of pikes")
    again, _ = talk("walk me through a key of pikes", "b", "back")
    assert again.asked == start.asked
    assert talk("walk me through a key of pikes", "back")[0].asked == start.asked


@pytest.mark.parametrize("words", ["not sure", "cant tell", "skip", "dont know"])
def test_not_sure_asks_something_else(talk: Talk, words: str) -> None:
    """A step that cannot be answered gives way to another feature, with the same fishes in play."""
    start, before = talk("walk me through a key of pikes")
    answer, held = talk("walk me through a key of pikes", words)
    assert start.asked is not None and answer.asked is not None
    assert isinstance(held.walk, KeyWalk) and isinstance(before.walk, KeyWalk)
    assert answer.asked.character != start.asked.character and set(held.walk.left) == set(before.walk.left)


def test_always_unsure_ends_with_what_is_left(talk: Talk) -> None:
    """Somebody who can answer nothing is told between which fishes it stays, and the walk ends."""
    answer, held = talk("walk me through a key of crappies")
    for _ in range(60):
        if held.walk is None:
            break
        answer, held = talk("not sure", held=held)
    assert held.walk is None and "cannot part" in text_of(answer) and len(answer.taxa) == 2


def test_a_key_without_fishes_begins_with_the_families(talk: Talk) -> None:
    """Without a fish named the walk starts from the families, and goes on inside the one it leads to."""
    answer, held = talk("walk me through a key")
    assert answer.asked is not None and isinstance(held.walk, KeyWalk)
    ends = [p for p in paths(held.walk.key) if p.taxa == ("ictaluridae",)]
    answer, held = talk("walk me through a key", *("ab"[s.lead] for s in ends[0].steps))
    assert isinstance(held.walk, KeyWalk) and all("ictalur" in t or t.split("-")[0] in ("ameiurus", "noturus",
                                                                                        "pylodictis")
                                                  for t in held.walk.key.taxa)


def test_the_look_can_be_changed(talk: Talk) -> None:
    """"Only what a photo shows" makes the key of the same fishes anew."""
    _, held = talk("make me a key for bluegill pumpkinseed redear green sunfish", "only stuff you can see in a photo")
    assert isinstance(held.walk, KeyWalk) and held.walk.key.look == "picture" and len(held.walk.key.taxa) == 4


def test_a_fish_can_be_dropped_or_added(talk: Talk) -> None:
    """The key is made anew without the fish dropped, or with the one added."""
    _, held = talk("make me a key for bluegill pumpkinseed redear green sunfish", "drop the redear")
    assert isinstance(held.walk,
                      KeyWalk) and "lepomis-microlophus" not in held.walk.key.taxa and len(held.walk.key.taxa) == 3
    _, held = talk("make me a key for bluegill, pumpkinseed and redear sunfish", "add the warmouth")
    assert isinstance(held.walk, KeyWalk) and "lepomis-gulosus" in held.walk.key.taxa and len(held.walk.key.taxa) == 4


def test_a_quiz_counts_right_answers(talk: Talk) -> None:
    """Whoever gives every right letter has a full score, whoever gives every wrong one none, with a review of each."""
    _, held = talk("quiz me on pikes, 4 questions")
    assert isinstance(held.walk, QuizRun) and len(held.walk.questions) == 4
    right = [q.letter for q in held.walk.questions]
    answer, after = talk("quiz me on pikes, 4 questions", *right)
    assert "4 of 4" in text_of(answer) and after.walk is None
    wrong = ["b" if q.letter == "A" else "a" for q in held.walk.questions]
    answer, _ = talk("quiz me on pikes, 4 questions", *wrong)
    assert "0 of 4" in text_of(answer) and text_of(answer).count("To look at again") == 4


def test_a_quiz_can_be_ended_and_its_score_asked(talk: Talk) -> None:
    """The score is told on the way, and "stop" ends the quiz."""
    answer, held = talk("test me on bass", "a", "my score")
    assert "of 1 answered" in text_of(answer) and answer.asked is not None and held.walk is not None
    assert talk("test me on bass", "a", "stop")[1].walk is None


def test_a_quiz_for_the_class_holds_its_answers_apart(talk: Talk) -> None:
    """A quiz for a class is written out, the answers after all questions."""
    answer, held = talk("give the class a quiz on pikes with the answers separate")
    said = text_of(answer)
    assert held.walk is None and said.index("5 of 5") < said.index("kept apart") < said.index("1. ",
                                                                                              said.index("kept apart"))


def test_a_comparison_for_a_class_is_a_table_in_plain_words(talk: Talk) -> None:
    """For a fifth grade the fishes stand side by side in everyday words, with what is from memory marked."""
    answer, _ = talk("compare bluegill, redear and pumpkinseed for 5th grade")
    assert answer.intent == "contrast" and len(answer.taxa) == 3
    rows = [b for b in answer.blocks if b.kind == "point"]
    assert len(rows) >= 5 and all(b.statements for b in rows)
    assert "back-fin" in text_of(answer) or "back fin" in text_of(answer)


@pytest.mark.parametrize(("text", "count"), [
    ("6 question quiz", 6), ("a six-question quiz", 6), ("ten items please", 10), ("quiz for grade 3", 0),
    ("5 question quiz for grade 3", 5)])
def test_number_of_items_is_read(text: str, count: int) -> None:
    """Numbers of questions count, school grades do not."""
    assert items_of(text) == count


@pytest.mark.parametrize(("text", "look"), [
    ("only what a photo shows", "picture"), ("no counting please", "uncounted"), ("use touch only", "touch"),
    ("key of pikes", "")])
def test_limits_of_looking_are_read(text: str, look: str) -> None:
    """Photo, touch and no counting limit the look."""
    assert look_of(text) == look


def test_a_key_offers_letters_from_the_first_step(talk: Talk) -> None:
    """The first step under a printed key has the letters of all later ones."""
    answer, _ = talk("make a key of the pikes")
    assert "(a) " in answer.blocks[-1].text and "(b) " in answer.blocks[-1].text


@pytest.mark.parametrize("line", ["start the key", "walk me through it", "begin"])
def test_a_key_is_begun_when_asked(talk: Talk, line: str) -> None:
    """Whoever asks to start is asked the first step, and neither told a word's meaning nor corrected."""
    answer, held = talk("make a key of the pikes", line)
    assert isinstance(held.walk, KeyWalk) and held.walk.at == 1
    assert len(answer.blocks) == 1 and answer.blocks[0].text.startswith("Step 1.")


def test_a_quiz_that_is_stopped_tells_what_was_answered(talk: Talk) -> None:
    """The last words neither count on nor speak of a score where nothing was answered."""
    assert "to go" not in text_of(talk("quiz me on pikes", "a", "stop")[0])
    assert "4 of the 5 questions were left" in text_of(talk("quiz me on pikes", "a", "stop")[0])
    assert "before answering any" in text_of(talk("quiz me on pikes", "stop")[0])


def test_a_feature_is_left_out(talk: Talk) -> None:
    """"Leave out the bars" makes the key anew for the same fishes without that feature."""
    asked = "make a key to pike, muskellunge, chain pickerel and grass pickerel"
    _, before = talk(asked)
    _, after = talk(asked, "leave out the bar")
    assert isinstance(before.walk, KeyWalk) and isinstance(after.walk, KeyWalk)
    used = [{c.character for c in h.walk.key.couplets} for h in (before, after)]
    assert after.walk.key.taxa == before.walk.key.taxa
    assert after.walk.passed and after.walk.passed <= used[0] and not after.walk.passed & used[1]
    assert all("bar" in c for c in after.walk.passed)


def test_only_the_feature_named_is_left_out(talk: Talk, kb: KnowledgeBase) -> None:
    """Naming a feature in full leaves out that one alone, though others share a word with it."""
    asked = "make a key for bluegill, pumpkinseed, redear sunfish, green sunfish, warmouth and longear sunfish"
    _, before = talk(asked)
    assert isinstance(before.walk, KeyWalk)
    labels = {c.character: kb.character(c.character).label for c in before.walk.key.couplets}
    shared = {c for c in labels if any(d != c and set(labels[c].split()) & set(labels[d].split()) for d in labels)}
    assert shared
    for character in shared:
        _, after = talk(asked, f"leave out the {labels[character]}")
        assert isinstance(after.walk, KeyWalk) and after.walk.passed == {character}


@pytest.mark.parametrize("line", ["cant see it", "i cant see that"])
def test_what_cannot_be_seen_is_passed_over(line: str, talk: Talk) -> None:
    """In a walked key either way of saying so keeps the walk and passes the feature over."""
    answer, held = talk("make me a key to sunfishes of ohio", "one at a time", line)
    assert answer.intent == "key" and isinstance(held.walk, KeyWalk) and held.walk.passed


def test_what_was_missed_is_told(talk: Talk) -> None:
    """"What did I miss" tells the missed items with their answers and asks the open one again."""
    _, begun = talk("make me a two question sunfish quiz")
    assert isinstance(begun.walk, QuizRun)
    wrong = "abcd"[(begun.walk.questions[0].answer + 1) % len(begun.walk.questions[0].choices)]
    answer, held = talk(wrong, "what did I miss?", held=begun)
    assert answer.blocks[0].text.startswith("To look at again") and answer.asked is not None
    assert isinstance(held.walk, QuizRun) and held.walk.at == 1


def test_one_question_left_is_told_as_one(talk: Talk) -> None:
    """A quiz stopped before its last question says that one was left."""
    assert "1 of the 2 questions was left" in text_of(talk("make me a two question sunfish quiz", "a", "stop")[0])


def test_a_description_ends_a_walk(talk: Talk) -> None:
    """Who tells several marks in the middle of a key has the fish named from them."""
    answer, held = talk("make me a key to sunfishes of ohio", "one at a time",
                        "black smudge at the back of the soft dorsal, ear solid black")
    assert answer.intent == "identify" and "lepomis-macrochirus" in answer.taxa and held.walk is None
