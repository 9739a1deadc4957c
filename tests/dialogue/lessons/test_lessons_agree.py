"""Lessons agree with themselves: table, key, quiz and sheet say the same of the same fishes."""

from __future__ import annotations

import re

import pytest

from assistant.dialogue.beside.comparison import compare
from assistant.dialogue.lessons.key import lesson_key
from assistant.dialogue.lessons.levels import everyday, lead_words, value_words, young
from assistant.dialogue.lessons.quiz_words import Question, judge, worded
from assistant.dialogue.lessons.sheet import lesson_sheet, safety_of
from assistant.dialogue.wording import lesson as say
from assistant.errors import UsageError
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import LOOKS, tell
from assistant.reasoning.evidence import below
from assistant.reasoning.key_paths import paths
from assistant.reasoning.quiz import build_quiz
from assistant.reasoning.selection import species_below
from assistant.reasoning.size import size_range
from assistant.render.html import sheet_page
from assistant.text import key
from assistant.units import show_rough_span

LESSONS = (("lepomis-macrochirus", "lepomis-microlophus", "lepomis-gibbosus"),
           ("sander-vitreus", "sander-canadensis", "perca-flavescens"),
           ("salvelinus-fontinalis", "salmo-trutta", "oncorhynchus-mykiss", "salvelinus-namaycush"))


@pytest.mark.parametrize("taxa", LESSONS)
@pytest.mark.parametrize("level", ["young", "plain", "trade"])
def test_table_key_quiz_and_sheet_agree(kb: KnowledgeBase, taxa: tuple[str, ...], level: str) -> None:
    """What the key leads by and the quiz calls right stands so in the table, and the sheet holds both."""
    table = compare(kb, taxa, "picture", level)
    made = lesson_key(kb, taxa, "picture", level)
    for path in paths(made.key):
        for step in path.steps:
            couplet = made.key.couplet(step.couplet)
            lead = couplet.leads[step.lead]
            for taxon in path.taxa:
                told = tell(kb, kb.character(couplet.character), taxon)
                if told is not None and lead.states:
                    shown = {leaf for s, _ in told.states for leaf in below(kb, s)}
                    assert shown & {leaf for s in lead.states for leaf in below(kb, s)}, (taxon, couplet.character)
    for item in build_quiz(kb, taxa, 8, 1, LOOKS["picture"]).items:
        if item.kind in ("which-fish", "which-feature", "catch"):
            for fact in item.facts:
                told = tell(kb, kb.character(fact.character), item.taxon)
                assert told is not None and told.states[0][0] == fact.state
    page = sheet_page(kb, lesson_sheet(kb, taxa, "picture", level))
    flat = re.sub(r"\s+", " ", page.replace("&#39;", "'").replace("&#x27;", "'"))
    for row in table.rows[:6]:
        for taxon, cell in zip(taxa, row.cells, strict=True):
            assert cell.text in flat
            assert cell.text == value_words(kb, tell(kb, kb.character(row.character), taxon), level)


def test_levels_change_words_not_facts(kb: KnowledgeBase) -> None:
    """The three levels rest on the same statements, row by row."""
    made = [compare(kb, LESSONS[0], "hand", level) for level in ("young", "plain", "trade")]
    keys = [[(r.character, [c.statements for c in r.cells]) for r in m.rows] for m in made]
    assert keys[0] == keys[1] == keys[2]
    assert made[0].rows[0].feature != made[2].rows[0].feature


def test_a_feature_has_one_name(kb: KnowledgeBase) -> None:
    """No row of a table bears the trade's name beside the plain one; at the level of the trade it bears that alone."""
    for level in ("young", "plain"):
        assert not [r.feature for r in compare(kb, LESSONS[1], "hand", level).rows if "(" in r.feature]
    assert "lower caudal lobe mark" in {r.feature for r in compare(kb, LESSONS[1], "hand", "trade").rows}


def test_marks_go_before_counts(kb: KnowledgeBase) -> None:
    """The white tail tip of the walleye stands first, rays and rows of scales last."""
    rows = [r.character for r in compare(kb, LESSONS[1], "hand", most=30).rows]
    assert rows[0] == "tail-tip-mark"
    looks = [kb.character(c).look == "count" for c in rows]
    assert looks == sorted(looks) and any(looks)


def test_a_denial_of_part_is_left_out_beside_a_mark(kb: KnowledgeBase) -> None:
    """The lake trout has pale spots, and its cell does not add that it has no red ones."""
    told = tell(kb, kb.character("body-spots"), "salvelinus-namaycush")
    assert value_words(kb, told, "plain") == "often pale spots"


def test_leads_say_what_a_fish_has(kb: KnowledgeBase) -> None:
    """A lead whose state only repeats its feature is told as what the fish has; others keep the feature before them."""
    made = lesson_key(kb, LESSONS[2], "picture", "young")
    told = {lead_words(kb, c.character, lead, "young") for c in made.key.couplets for lead in c.leads}
    assert {"Pale worm-track marks on the back", "No worm-track marks", "Shape of the tail fin: forked"} <= told


def test_a_caution_names_its_fish(kb: KnowledgeBase) -> None:
    """Teeth are spoken of with the names of the trouts that have them, wet hands of every fish."""
    said = {line: who for who, line in lesson_sheet(kb, LESSONS[2], "picture", "young").safety}
    teeth = next(who for line, who in said.items() if "teeth" in line)
    assert "ake trout" in teeth and "rainbow" not in teeth
    assert next(who for line, who in said.items() if line.startswith("Wet hands")) == ""
    spines = lesson_sheet(kb, LESSONS[0], "picture", "young").safety
    assert any(who == say.ALL_OF_THESE and "spines" in line for who, line in spines)


def test_a_safety_strip_speaks_of_no_fish_that_is_not_there(kb: KnowledgeBase) -> None:
    """What is said to hold for any fish names no kind of fish: no word on bluegill stands on a sheet of pikes."""
    kinds = {key(kb.taxon(t).label) for t in kb.species}
    for family in (t.id for t in kb.all("taxon") if t.rank == "family"):
        for caution in safety_of(kb, species_below(kb, family)):
            told = f" {key(caution.text)} "
            assert caution.about or not [k for k in kinds if f" {k} " in told], caution.id


def test_young_words_come_from_the_glossary(kb: KnowledgeBase) -> None:
    """Everyday words of the glossary take the place of terms of the body."""
    assert everyday(kb)["dorsal fin"] == "back fin"
    assert young(kb, "a dark blotch in the dorsal fin") == "a dark blotch in the back fin"
    assert young(kb, "marks in the dorsal, anal and tail fins") == "marks in the back, bottom and tail fins"


def test_doubt_is_marked(kb: KnowledgeBase) -> None:
    """A cell that rests on memory alone bears its mark, and the legend explains it."""
    made = compare(kb, LESSONS[0], "hand")
    assert any(c.basis == "memory" and c.marked.endswith("*") for r in made.rows for c in r.cells)
    assert made.legend()[0].startswith("*")


@pytest.mark.parametrize("taxa", [(), ("esox-lucius",), ("esox-lucius", "esox-lucius"), ("x",) * 2])
def test_too_few_fishes_are_refused(kb: KnowledgeBase, taxa: tuple[str, ...]) -> None:
    """One fish, or one named twice, is no comparison."""
    with pytest.raises(UsageError):
        compare(kb, taxa)


def test_too_many_fishes_are_refused(kb: KnowledgeBase) -> None:
    """Nine fishes are told to be too many."""
    with pytest.raises(UsageError, match="8 fishes at most"):
        compare(kb, species_below(kb, "lepomis")[:9])


def test_a_cross_can_be_compared(kb: KnowledgeBase) -> None:
    """A cross stands beside its parents."""
    cross = next(t for t in kb.species if kb.taxon(t).is_hybrid and all(len(kb.statements(p)) > 20
                                                                        for p in kb.taxon(t).parents))
    assert compare(kb, (cross, *kb.taxon(cross).parents)).rows


QUESTION = Question("Which?", ("northern pike", "chain pickerel", "redfin pickerel", "no bars on the side"), 0, "", "",
                    ())


@pytest.mark.parametrize(("typed", "choice"), [
    ("a", 0), ("B", 1), ("3", 2), ("the second", 1), ("Northern Pike", 0), ("I think it's the chain pickeral", 1),
    ("pike", 0),
    ("redfin", 2), ("d)", 3), ("pickerel", None), ("", None), ("dunno", None)])
def test_answers_are_judged_kindly(typed: str, choice: int | None) -> None:
    """Letters, numbers, names, parts of names and small slips count; what fits two choices does not."""
    assert judge(QUESTION, typed) == choice


@pytest.mark.parametrize(("typed", "choice"), [("true", 0), ("T", 0), ("yes", 0), ("nope", 1), ("false!", 1), ("a", 0),
                                               ("b", 1)])
def test_true_and_false_are_judged(typed: str, choice: int) -> None:
    """True and false have many names."""
    assert judge(Question("True?", ("true", "false"), 0, "", "", ()), typed) == choice


def test_questions_name_reason_and_mistake(kb: KnowledgeBase) -> None:
    """Every worded item gives a reason, and the tempting mistake where there is one; claims rest on statements."""
    for item in build_quiz(kb, species_below(kb, "lepomis"), 12, 4, LOOKS["picture"]).items:
        made = worded(kb, item, "young")
        assert made.reason and made.text.strip() and len(set(made.choices)) == len(made.choices)
        assert made.statements or item.kind == "term"
        assert made.mistake or item.kind in ("term", "true-false")


def test_the_sheet_gives_the_size_that_the_talk_gives(kb: KnowledgeBase) -> None:
    """A usual length that is preferred to others stands alone on the sheet too."""
    for fish in lesson_sheet(kb, ("micropterus-nigricans", "micropterus-dolomieu")).fishes:
        found = size_range(kb, fish.taxon)
        assert found.usual_low is not None
        assert found.usual_high is not None
        assert show_rough_span(found.usual_low, found.usual_high) in fish.size


def test_a_plural_word_is_explained_only_where_it_stands(kb: KnowledgeBase) -> None:
    """ "Shallows" are no part of a sheet that tells of a shallow notch."""
    words = [w for w, _, _ in lesson_sheet(kb, ("micropterus-nigricans", "micropterus-dolomieu")).terms]
    assert any("notch" in w for w in words)
    assert not any("shallows" in w for w in words)


@pytest.mark.parametrize("level", ("young", "plain", "trade"))
def test_words_stand_in_the_order_in_which_they_are_shown(kb: KnowledgeBase, level: str) -> None:
    """The words of a sheet are sorted as printed; the trade is not told what a fin is beside the anal fin."""
    for taxa in LESSONS:
        words = [key(term) for term, _, _ in lesson_sheet(kb, taxa, "picture", level).terms]
        assert words == sorted(words), taxa
        assert level != "trade" or not ("fin" in words and any(w.endswith(" fin") for w in words)), taxa
