"""Quiz the reader item by item with score and a review of misses, or write a quiz for the class (layer 4)."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from assistant.dialogue.answer import Answer, Asked, Block
from assistant.dialogue.beside.left_out import left_out
from assistant.dialogue.beside.set_changed import changes_set, moved
from assistant.dialogue.conversation import Held
from assistant.dialogue.lessons.cards import fish_cards, word_cards
from assistant.dialogue.lessons.list_items import list_items
from assistant.dialogue.lessons.quiz_words import LETTERS, Question, judge, settled, worded
from assistant.dialogue.lessons.reply import AGAIN, ANSWERS, HINT, LOST, PRINT, REVEAL, SKIP, UNSURE, WHY, WORD, reply
from assistant.dialogue.lessons.request import MOST_ITEMS, Request, for_asker, items_of, request_of
from assistant.dialogue.lessons.sheet import terms_in
from assistant.dialogue.subjects import species_of
from assistant.dialogue.turn import Turn
from assistant.dialogue.wording import lesson as say
from assistant.dialogue.wording import quiz as wording
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.model.stems import NUMBERS
from assistant.reasoning.contrast import LOOKS
from assistant.reasoning.key import KEY_LOOKS
from assistant.reasoning.quiz import KINDS, build_quiz
from assistant.reasoning.quiz_terms import body_words, build_words_quiz
from assistant.text import join, key, unique

_CHOICE = re.compile(r"\([a-h]\) ([^;()]+?)(?=[;.]|$)")
"""The choices of a printed question."""
MOST_SKIPPING = 6
"""Words of a line that answers a printed question or passes it over."""
INTENT, TURNED = "quiz", "turn-into"
ITEMS = 5
NAMED = ("taxon", "hybrid", "group")
SEEDS, REMEMBERED, NAMED_IN_HEAD, MOST_CARDS, MOST_WORDS = 4, 8, 4, 24, 3
"""Quizzes tried for one with new questions, turns looked back for these, fishes named in a head, cards of a set, words
of a question explained."""
KNOWN = 24
"""Fishes drawn on where none are named: those that most is told of."""


@dataclass(frozen=True, slots=True)
class QuizRun:
    """The questions, the one asked now, how many were right, the places of those missed and passed over, the fishes."""

    questions: tuple[Question, ...]
    taxa: tuple[str, ...]
    at: int = 0
    score: int = 0
    missed: tuple[int, ...] = ()
    passed: tuple[int, ...] = ()


def handle(turn: Turn) -> tuple[Answer, Held]:
    """Judge the answer to the item asked, else begin the quiz that the line asks for."""
    run = turn.held.walk if isinstance(turn.held.walk, QuizRun) else None
    asked = turn.held.asked is not None and turn.held.asked.kind == INTENT
    words = set(key(turn.reading.text).split())
    asks = reply(turn.reading)
    over = "start-over" in turn.cues or (asked and _other_number(turn, run, asks))
    if over and (again := _anew(turn, run)) is not None:
        return again
    if run is not None and "resume-quiz" in turn.cues:
        return _ask(turn, run, [])
    if (fewer := _with_fewer(turn, run)) is not None:
        return fewer
    if run is None and (told := _on_printed(turn, asks)) is not None:
        return told
    if run is not None and words & say.SCORE_WORDS:
        return _said(turn, run, say.quiz_score(run.score, run.at, len(run.questions), len(run.passed)))
    if words & say.MISSED_WORDS and (run is not None or turn.held.intent == INTENT):
        return _missed_told(turn, run)
    if run is not None and (words & say.STOP_WORDS or "self-stop" in turn.cues):
        return _finish(turn, run, say.QUIZ_STOPPED)
    if run is not None and asks in (ANSWERS, PRINT) and (INTENT not in turn.cues or not turn.reading.of(*NAMED)):
        return _answers(turn, run) if asks == ANSWERS else _paper(turn, run.questions, run.taxa)
    if asks == ANSWERS and (told := _answers_before(turn)) is not None:
        return told
    if (run is None or not asked) and (made := _of_last_list(turn)) is not None:
        return made
    if run is not None and asked and (left := _changed(turn, run)):
        wanted = request_of(turn, "picture")
        return _begin(turn, replace(wanted, taxa=left, named=left, items=wanted.items or len(run.questions)))
    if run is not None and asked and not asks and _other_fishes(turn, run):
        wanted, before = request_of(turn, "picture", carried=False), species_of(turn.kb, run.taxa)
        taxa, named = (tuple(t for t in told if t not in (*run.taxa, *before)) for told in (wanted.taxa, wanted.named))
        return _begin(turn, replace(wanted, taxa=taxa, named=named, items=wanted.items or len(run.questions)))
    if run is not None and asked and (INTENT not in turn.cues or (asks and not turn.reading.of(*NAMED))):
        return _aside(turn, run, asks) or _judge(turn, run, asks)
    return _begin(turn, request_of(turn, "picture"))


def _anew(turn: Turn, run: QuizRun | None) -> tuple[Answer, Held] | None:
    """The quiz that is being taken (or was printed) made again from its first question, with the number of questions
    that the line names or as many as before; None where none was given."""
    if run is None and turn.held.intent != INTENT:
        return None
    wanted = request_of(turn, "picture")
    taxa = wanted.taxa if turn.reading.of(*NAMED) else species_of(turn.kb, run.taxa if run is not None else
                                                                  turn.held.taxa)
    if not taxa:
        return None
    before = len(run.questions) if run is not None else _asked_on_paper(turn)
    items = wanted.items or _number_told(turn) or before
    paper = wanted.paper or (run is None and bool(before))
    return _begin(turn, replace(wanted, taxa=taxa, named=taxa, items=items, paper=paper, body=None))


def _other_number(turn: Turn, run: QuizRun | None, asks: str) -> bool:
    """True for a line amid a quiz that wants it with another number of questions ("again but with 6 questions")."""
    count = items_of(turn.reading.text.lower())
    return (run is not None and asks in ("", AGAIN) and count not in (0, len(run.questions))
            and not turn.reading.question and not turn.reading.of(*NAMED))


def _number_told(turn: Turn) -> int:
    """The bare number of a line that begins a quiz again ("start over with six"); 0 where none is told."""
    told = [int(NUMBERS.get(w, w)) for w in turn.reading.words if w in NUMBERS or w.isdigit()]
    return min(told[0], MOST_ITEMS) if len(told) == 1 else 0


def _on_printed(turn: Turn, asks: str) -> tuple[Answer, Held] | None:
    """What is said to "skip" or to an answer after a quiz that was printed, where no question waits for one."""
    last = turn.held.last
    if last is None or INTENT in turn.cues or len(turn.reading.words) > MOST_SKIPPING or not _asked_on_paper(turn):
        return None
    printed = {key(c) for b in last.blocks if b.kind == "point" for c in _CHOICE.findall(b.text)}
    chosen = key(turn.reading.text)
    if asks == SKIP and "next" not in turn.cues:
        return Answer(INTENT, (Block("lead", wording.PRINTED_NO_SKIP, claim=False),), turn.held.taxa[:8]), turn.held
    named = {key(speak.fish(turn.kb, t)) for t in turn.reading.taxa()}
    if printed & {chosen, *named, *(chosen.removeprefix(f"{a} ") for a in ("the", "a", "an"))}:
        told = _answers_before(turn)
        rest = told[0].blocks[1:] if told is not None else ()
        return Answer(INTENT, (Block("lead", wording.PRINTED_NO_ANSWER, claim=False), *rest), turn.held.taxa[:8]), \
            turn.held
    return None


def _of_last_list(turn: Turn) -> tuple[Answer, Held] | None:
    """The list just given as true-or-false items on paper, or one by one for the asker; None where it is not wanted."""
    if "true-false" not in turn.cues or turn.reading.of(*NAMED):
        return None
    wanted = request_of(turn, "picture")
    count = wanted.items or ITEMS
    questions = list_items(turn, min(count, MOST_ITEMS), turn.clock.toordinal())
    if not questions:
        return None
    taxa = turn.held.taxa
    if for_asker(turn.reading.text):
        run = QuizRun(questions, taxa)
        return _ask(turn, run, [Block("lead", say.quiz_begin(len(questions)), claim=False)])
    return _paper(turn, questions, taxa, subject=wording.FROM_LIST)


def _with_fewer(turn: Turn, run: QuizRun | None) -> tuple[Answer, Held] | None:
    """The last quiz made again on the fishes that remain when the line takes some out; else None."""
    before = species_of(turn.kb, run.taxa if run is not None else turn.held.taxa if turn.held.intent == INTENT else ())
    out = left_out(turn, before)
    if not out:
        return None
    rest = tuple(t for t in before if t not in out)
    wanted = request_of(turn, "picture")
    count = wanted.items or (len(run.questions) if run is not None else _asked_on_paper(turn))
    paper = wanted.paper or (run is None and bool(count))
    return _begin(turn, replace(wanted, taxa=rest, named=rest, items=count, paper=paper, body=None))


def _asked_on_paper(turn: Turn) -> int:
    """How many questions the last quiz on paper had; 0 where the last answer was none."""
    blocks = turn.held.last.blocks if turn.held.last is not None else ()
    return max(0, next((i for i, b in enumerate(blocks) if b.text == say.QUIZ_ANSWERS_APART), 0) - 1)


def _changed(turn: Turn, run: QuizRun) -> tuple[str, ...]:
    """The fishes of the quiz without those that the line takes out ("leave out the flier"); empty where it does not."""
    named = turn.reading.taxa()
    if not named or not changes_set(turn):
        return ()
    out, into = moved(turn, named)
    before = species_of(turn.kb, run.taxa)
    return unique((*(t for t in before if t not in out), *into)) if out & set(before) else ()


def _other_fishes(turn: Turn, run: QuizRun) -> bool:
    """True for a line that says more than the name of a group of which the quiz holds nothing ("now do catfish")."""
    named = turn.reading.of(*NAMED)
    if len(turn.reading.words) <= sum(len(m.words.split()) for m in named):
        return False
    kinds = set(species_of(turn.kb, tuple(t for m in named for t in m.ids)))
    return len(kinds) > 1 and not kinds & set(species_of(turn.kb, run.taxa)) \
        and judge(run.questions[run.at], turn.reading.text) is None


def _begin(turn: Turn, wanted: Request) -> tuple[Answer, Held]:
    kb = turn.kb
    taxa = wanted.taxa if len(wanted.taxa) > 1 else _beside(kb, wanted.taxa)
    if TURNED in turn.cues and wanted.taxa:
        wanted = replace(wanted, body=None)
    taxa = () if wanted.body is not None else taxa
    wanted = _as_before(turn, wanted)
    if TURNED in turn.cues and wanted.true_false and not for_asker(turn.reading.text):
        wanted = replace(wanted, paper=True)
    if wanted.cards:
        return _cards(turn, wanted, taxa)
    questions = _unasked(turn, wanted, taxa)
    if not questions:
        return Answer(INTENT, (Block("lead", say.quiz_none(speak.fishes(kb, taxa)), claim=False),), taxa[:8]), turn.held
    if wanted.paper:
        return _paper(turn, questions, taxa and (wanted.named or taxa), wanted.body)
    run = QuizRun(questions, wanted.named or taxa)
    fewer = [say.quiz_fewer(len(questions), wanted.items)] if len(questions) < wanted.items else []
    return _ask(turn, run, [Block("lead", text, claim=False) for text in (*fewer, say.quiz_begin(len(questions)))])


def _as_before(turn: Turn, wanted: Request) -> Request:
    """The request on paper and with as many items as the quiz that it only puts otherwise ("easier words please")."""
    last = turn.held.last
    if last is None or turn.held.intent != INTENT or turn.reading.of(*NAMED) or INTENT in turn.cues:
        return wanted
    count = _asked_on_paper(turn)
    return replace(wanted, paper=True, items=wanted.items or count) if count else wanted


def _questions(turn: Turn, wanted: Request, taxa: tuple[str, ...], seed: int) -> tuple[Question, ...]:
    """The questions in words: on parts of the body, or on fishes, with features further off where too few are plain."""
    kb, count, plain = turn.kb, wanted.items or ITEMS, wanted.level == "young"
    if wanted.body is not None:
        looks = LOOKS["picture"] if plain else LOOKS["hand"]
        made = build_words_quiz(kb, body_words(kb, wanted.body, looks), count, seed, looks, wanted.body)
        return tuple(worded(kb, i, wanted.level) for i in made.items)
    kinds = ("true-false",) if wanted.true_false else KINDS
    about = wanted.taxa[0] if len(wanted.taxa) == 1 else ""
    for looks in (KEY_LOOKS.get(wanted.look, LOOKS["hand"]), LOOKS["hand"]):
        quiz = build_quiz(kb, taxa, count, seed, looks, kinds, plain=plain, about=about)
        if len(quiz.items) >= count:
            break
    return tuple(worded(kb, item, wanted.level) for item in quiz.items)


def _unasked(turn: Turn, wanted: Request, taxa: tuple[str, ...]) -> tuple[Question, ...]:
    """A quiz with as few questions of the turns before as some tries give."""
    best = _questions(turn, wanted, taxa, turn.clock.toordinal())
    told = _told_before(turn, best)
    for n in range(1, SEEDS if told else 0):
        made = _questions(turn, wanted, taxa, turn.clock.toordinal() + n)
        if len(made) >= len(best) and _told_before(turn, made) < told:
            best, told = made, _told_before(turn, made)
    return best


def _told_before(turn: Turn, questions: tuple[Question, ...]) -> int:
    """How many of the questions were asked in the turns before."""
    told, held = "", turn.held
    for _ in range(REMEMBERED):
        told += "".join(b.text for b in held.last.blocks) if held.last is not None else ""
        if held.before is None:
            break
        held = held.before
    return sum(q.text in told for q in questions)


def _beside(kb: KnowledgeBase, taxa: tuple[str, ...]) -> tuple[str, ...]:
    """One fish with those it is taken for; none: the fishes that most is told of."""
    if taxa:
        near = [x.other for x in kb.look_alikes(taxa[0])] + [t for t in kb.species if any(x.other == taxa[0]
                                                                                          for x in kb.look_alikes(t))]
        return tuple(dict.fromkeys((*taxa, *(t for t in near if kb.find("taxon", t) is not None))))
    own = [t for t in kb.species if not kb.taxon(t).is_hybrid]
    return tuple(sorted(sorted(own, key=lambda t: (-len(kb.statements(t)), t))[:KNOWN]))


def _ask(turn: Turn, run: QuizRun, before: list[Block]) -> tuple[Answer, Held]:
    question = run.questions[run.at]
    choices = tuple(zip(LETTERS, question.choices, strict=False))
    text = say.quiz_ask(run.at + 1, len(run.questions), question.text, [f"({a}) {c}" for a, c in choices])
    text = f"{text} {say.quiz_prompt([a for a, _ in choices])}"
    block = Block("next", text, statements=question.statements, claim=bool(question.statements))
    asked = Asked(INTENT, question.text, choices=choices)
    return Answer(INTENT, (*before, block), run.taxa[:8], asked=asked), turn.held.after(walk=run)


def _aside(turn: Turn, run: QuizRun, asks: str) -> tuple[Answer, Held] | None:
    """What the line asks beside answering: the reason of the last answer, a word, a hint, the question again."""
    question = run.questions[run.at]
    if asks == WHY:
        if not run.at:
            return _ask(turn, run, [Block("lead", wording.FIRST_ANSWER, claim=False)])
        last = run.questions[run.at - 1]
        text = wording.because(run.at, last.reason, last.mistake)
        return _ask(turn, run, [Block("lead", text, statements=last.statements, claim=bool(last.statements))])
    if asks == HINT:
        wrong = [i for i in range(len(question.choices)) if i != question.answer]
        text = wording.not_this(LETTERS[wrong[-1]], question.choices[wrong[-1]]) if len(wrong) > 1 else wording.NO_HINT
        return _ask(turn, run, [Block("lead", text, claim=False)])
    if asks == LOST:
        told = terms_in(turn.kb, [question.text, *question.choices], "plain", MOST_WORDS)
        shown = [say.word_means(term, plain) for term, plain, _ in told if key(term) not in map(key, question.choices)]
        return _ask(turn, run, [Block("lead", " ".join(shown) or say.QUIZ_UNREAD, claim=False)])
    if asks == WORD:
        terms = [t for m in turn.reading.of("term") for i in m.ids if (t := turn.kb.find("term", i)) is not None]
        if {key(t.label) for t in terms} & {key(c) for c in question.choices}:
            return _ask(turn, run, [Block("lead", wording.GIVES_AWAY, claim=False)])
        means = [Block("lead", say.word_means(t.label, t.plain), statements=(f"term:{t.id}",)) for t in terms]
        answer, held = _ask(turn, run, means)
        return answer._replace(intent="term"), held
    return _ask(turn, run, []) if asks == AGAIN else None


GIVEN_UP = {SKIP: wording.skipped, UNSURE: wording.not_known, REVEAL: wording.revealed}
"""What is said to those who do not answer, by what they said."""


def _judge(turn: Turn, run: QuizRun, asks: str) -> tuple[Answer, Held]:
    question = run.questions[run.at]
    typed = turn.reading.words[-1:] if len(turn.reading.words) > 1 else ()
    if asks in GIVEN_UP and not set(typed) & set(LETTERS[1: len(question.choices)]):
        text = GIVEN_UP[asks](question.letter, question.choices[question.answer], question.reason)
        return _on(turn, replace(run, passed=(*run.passed, run.at)), text)
    choice = judge(question, typed[0] if asks in GIVEN_UP else settled(question, turn.reading.text))
    if choice is None and turn.reading.answer:
        choice = judge(question, turn.reading.answer)
    if choice is None and (not turn.reading.of(*NAMED) or _one_of(question, turn.reading.text)):
        return _ask(turn, run, [Block("lead", say.QUIZ_UNREAD, claim=False)])
    if choice is None:
        return _ask(turn, run, [Block("lead", wording.NOT_A_CHOICE, claim=False)])
    right = choice == question.answer
    told = question.choices[question.answer]
    lead = say.quiz_right(question.reason) if right else say.quiz_wrong(question.letter, told, question.reason,
                                                                        question.mistake)
    answer, held = _on(turn, replace(run, score=run.score + right,
                                     missed=run.missed if right else (*run.missed, run.at)), lead)
    chosen = (e[1] for e in turn.kb.spoken(key(question.choices[choice])) if e[0] == "taxon" and e[2] == "accepted")
    return answer._replace(taxa=tuple(dict.fromkeys((*answer.taxa, *chosen)))), held


def _on(turn: Turn, run: QuizRun, lead: str) -> tuple[Answer, Held]:
    """The next item after what is said of this one, or the end."""
    question, after = run.questions[run.at], replace(run, at=run.at + 1)
    block = Block("lead", lead, statements=question.statements, claim=bool(question.statements))
    return _ask(turn, after, [block]) if after.at < len(run.questions) else _finish(turn, after, "", [block])


def _one_of(question: Question, text: str) -> bool:
    """True for a line that mixes words of several choices, so that it is no answer yet."""
    words = set(key(text).split())
    return sum(bool(words & set(key(c).split())) for c in question.choices) > 1


def _finish(turn: Turn, run: QuizRun, lead: str, before: list[Block] | None = None) -> tuple[Answer, Held]:
    blocks = before or []
    if lead:
        blocks.append(Block("lead", lead, claim=False))
    blocks.append(Block("point", say.quiz_final(run.score, run.at, len(run.questions), len(run.passed)),
                        claim=False))
    return Answer(INTENT, (*blocks, *_review(run)), run.taxa[:8]), turn.held.after(walk=None)


def _review(run: QuizRun) -> list[Block]:
    """The items missed or passed over, each with its answer."""
    asked = [run.questions[place] for place in sorted((*run.missed, *run.passed))]
    return [Block("point", say.quiz_review(q.text, q.choices[q.answer], q.reason), statements=q.statements,
                  claim=bool(q.statements)) for q in asked]


def _missed_told(turn: Turn, run: QuizRun | None) -> tuple[Answer, Held]:
    """What was missed so far, then the item asked again; after the end the review once more."""
    last = turn.held.last
    over = [b for b in last.blocks if b.text.startswith(say.REVIEW)] if last is not None else []
    first, *rest = (_review(run) if run is not None else over) or [Block("point", say.NONE_MISSED, claim=False)]
    told = [first._replace(kind="lead"), *rest]
    return _ask(turn, run, told) if run is not None else (Answer(INTENT, tuple(told), turn.held.taxa[:8]), turn.held)


def _answer_lines(questions: tuple[Question, ...]) -> list[Block]:
    return [Block("point", say.quiz_answer_line(number, q.letter, q.choices[q.answer], q.reason, q.mistake),
                  statements=q.statements, claim=bool(q.statements)) for number, q in enumerate(questions, 1)]


def _answers(turn: Turn, run: QuizRun) -> tuple[Answer, Held]:
    """The answers of the whole quiz, which ends with them."""
    letters = [wording.answer_short(number, q.letter) for number, q in enumerate(run.questions, 1)]
    blocks = (Block("lead", wording.answer_key(letters), claim=False), *_answer_lines(run.questions))
    return Answer(INTENT, blocks, run.taxa[:8]), turn.held.after(walk=None)


def _answers_before(turn: Turn) -> tuple[Answer, Held] | None:
    """The answers told under the last quiz on paper once more; None where there was none."""
    last = turn.held.last
    if last is None or turn.held.intent != INTENT:
        return None
    at = next((i for i, b in enumerate(last.blocks) if b.text == say.QUIZ_ANSWERS_APART), None)
    return (Answer(INTENT, last.blocks[at:], last.taxa), turn.held) if at is not None else None


def _paper(turn: Turn, questions: tuple[Question, ...], taxa: tuple[str, ...],
           body: tuple[str, ...] | None = None, subject: str = "") -> tuple[Answer, Held]:
    """All questions, and apart from them the answers."""
    head = wording.paper(len(questions), subject or _subject(turn, taxa, body))
    blocks = [Block("lead", head, claim=False)]
    for number, q in enumerate(questions, 1):
        choices = [f"({a}) {c}" for a, c in zip(LETTERS, q.choices, strict=False)]
        blocks.append(Block("point", say.quiz_ask(number, len(questions), q.text, choices), statements=q.statements,
                            claim=bool(q.statements)))
    blocks += [Block("lead", say.QUIZ_ANSWERS_APART, claim=False), *_answer_lines(questions)]
    if body is not None and (wished := request_of(turn, "picture").items) > len(questions):
        blocks.append(Block("doubt", wording.fewer_words(len(questions), wished), claim=False))
    blocks.append(Block("help", wording.PAPER_COMMAND, claim=False))
    return Answer(INTENT, tuple(blocks), taxa[:8]), turn.held.after(walk=None)


def _subject(turn: Turn, taxa: tuple[str, ...], body: tuple[str, ...] | None) -> str:
    """What a quiz is on, in words."""
    if not taxa:
        many = {key(t.label): t.plural for t in turn.kb.all("term") if t.plural}
        return wording.words_for(join([many.get(part, part) for part in body])) if body else wording.PARTS
    groups = [m for m in turn.reading.of("group") if m.ids]
    if len(taxa) > NAMED_IN_HEAD:
        return speak.fish(turn.kb, groups[0].ids[0]) if groups else say.so_many(len(taxa))
    return speak.fishes(turn.kb, taxa)


def _cards(turn: Turn, wanted: Request, taxa: tuple[str, ...]) -> tuple[Answer, Held]:
    """Cards with a name in front and what to look for behind."""
    kb, most = turn.kb, wanted.items or MOST_CARDS
    looks = KEY_LOOKS.get(wanted.look, LOOKS["hand"])
    named = wanted.taxa or taxa
    cards = word_cards(kb, wanted.body, looks, most) if wanted.body is not None else fish_cards(
        kb, taxa, looks, wanted.level, min(most, len(named)) if len(named) == 1 else most)
    head = wording.cards(len(cards), _subject(turn, (wanted.named or named) if taxa else (), wanted.body), not taxa)
    blocks = (Block("lead", head, claim=False), *cards)
    return Answer(INTENT, blocks, named[:8] if taxa else ()), turn.held.after(walk=None)


def _said(turn: Turn, run: QuizRun, text: str) -> tuple[Answer, Held]:
    return _ask(turn, run, [Block("lead", text, claim=False)]) if run.at < len(run.questions) else _finish(turn, run,
                                                                                                           text)
