"""Quizzes: right answers that are right, wrong ones that are wrong, and the same seed the same quiz."""

from __future__ import annotations

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import ADULT, LOOKS
from assistant.reasoning.evidence import about, below
from assistant.reasoning.observer import taxon_distribution
from assistant.reasoning.quiz import KINDS, Item, build_quiz, right
from assistant.reasoning.selection import species_below

GROUPS = ("lepomis", "esox", "ictaluridae", "salmonidae", "percidae", "panfish", "micropterus", "catostomidae")


def share(kb: KnowledgeBase, taxon: str, state: str) -> float:
    """The share of grown fish of a taxon with a state, from the statements."""
    found = taxon_distribution(kb, taxon, state.partition(".")[0], ADULT)
    return found.share(below(kb, state)) if found is not None else 0.0


def named_anywhere(kb: KnowledgeBase, taxon: str, state: str) -> bool:
    """True when some statement of a taxon, for any age, sex or season, names a state."""
    wanted = set(below(kb, state))
    statements, _ = about(kb, taxon, state.partition(".")[0])
    return any(wanted & set(below(kb, s)) for st in statements for s in st.states)


def check_item(kb: KnowledgeBase, item: Item) -> None:
    """The right choice holds by the statements, every other is excluded by them."""
    assert len(set(item.choices)) == len(item.choices) and 2 <= len(item.choices) <= 4
    for fact in item.facts if item.kind not in ("term", "true-false") else ():
        assert share(kb, item.taxon, fact.state) >= 0.8
    wrong = [c for i, c in enumerate(item.choices) if i != item.answer]
    if item.kind == "which-fish":
        assert all(not named_anywhere(kb, t, item.facts[0].state) and share(kb, t, item.facts[0].state) <= 0.15
                   for t in wrong)
    elif item.kind == "catch":
        assert all(any(not named_anywhere(kb, t, f.state) and share(kb, t, f.state) <= 0.15 for f in item.facts)
                   for t in wrong)
    elif item.kind == "which-feature":
        assert all(not named_anywhere(kb, item.taxon, s) and share(kb, item.taxon, s) <= 0.15 for s in wrong)
    elif item.kind == "true-false":
        holds = share(kb, item.taxon, item.facts[0].state) >= 0.8
        assert holds == (item.choices[item.answer] == "true")
        assert holds or not named_anywhere(kb, item.taxon, item.facts[0].state)


@pytest.mark.parametrize("group", GROUPS)
@pytest.mark.parametrize("look", ["picture", "hand"])
def test_distractors_are_really_wrong(kb: KnowledgeBase, group: str, look: str) -> None:
    """No wrong choice could be defended from any statement of the base, for any age, sex or season."""
    for seed in (1, 2, 3):
        quiz = build_quiz(kb, species_below(kb, group), 10, seed, LOOKS[look])
        assert len(quiz.items) >= 6
        for item in quiz.items:
            check_item(kb, item)


@pytest.mark.parametrize("group", GROUPS)
def test_items_tell_the_fishes_apart(kb: KnowledgeBase, group: str) -> None:
    """No question is asked whose answer holds for every fish of the set; all but true or false have three choices.

    Wrong features are those of fishes of the set or of their families.
    """
    taxa = species_below(kb, group)
    kin = {t for f in {kb.lineage(t)[-1] for t in taxa} for t in species_below(kb, f)}
    for item in build_quiz(kb, taxa, 12, 4, LOOKS["picture"]).items:
        assert item.kind == "true-false" or len(item.choices) >= 3
        for fact in item.facts if item.kind != "term" else ():
            assert any(not named_anywhere(kb, t, fact.state) and share(kb, t, fact.state) <= 0.15 for t in taxa)
        for state in item.choices if item.kind == "which-feature" else ():
            assert any(share(kb, t, state) >= 0.8 for t in kin), state


def test_children_are_asked_no_measures(kb: KnowledgeBase) -> None:
    """A plain quiz asks of marks and shapes, never how long or how big something is beside another."""
    quiz = build_quiz(kb, species_below(kb, "lepomis"), 20, 1, LOOKS["picture"], plain=True)
    assert len(quiz.items) > 10
    assert all(kb.character(f.character).kind == "states" for i in quiz.items if i.kind != "term" for f in i.facts)


def test_two_fishes_are_asked_about_each_other(kb: KnowledgeBase) -> None:
    """A quiz on walleye and sauger names no third fish, and asks which of three features one of them has."""
    items = build_quiz(kb, ("sander-vitreus", "sander-canadensis"), 40, 1, LOOKS["picture"]).items
    assert 8 <= len(items) < 40
    assert {c for i in items if i.kind == "which-fish" for c in i.choices} == {"sander-vitreus", "sander-canadensis"}
    assert all(len(i.choices) >= 3 for i in items if i.kind == "which-feature")


def test_words_are_of_the_body(kb: KnowledgeBase) -> None:
    """Choices of a word are words that name marks and parts of fishes, no waters and no ways of hooking."""
    names = " ".join(f" {c.label} {c.trade} " for c in kb.characters if c.use == "identify").lower()
    items = build_quiz(kb, species_below(kb, "ictaluridae"), 12, 1, LOOKS["picture"]).items
    terms = [kb.find("term", c) for i in items if i.kind == "term" for c in i.choices]
    assert terms and all(t and any(f" {w.lower()} " in names for w in (t.label, *t.words)) for t in terms)


def test_same_seed_same_quiz(kb: KnowledgeBase) -> None:
    """The same seed gives the same quiz, another seed another."""
    taxa = species_below(kb, "lepomis")
    one, two, other = (build_quiz(kb, taxa, 8, seed, LOOKS["picture"]) for seed in (5, 5, 6))
    assert one == two != other


def test_kinds_take_turns(kb: KnowledgeBase) -> None:
    """A quiz mixes its kinds of questions, and no question comes twice."""
    quiz = build_quiz(kb, species_below(kb, "panfish"), 10, 1, LOOKS["picture"])
    assert {i.kind for i in quiz.items} == set(KINDS)
    assert len({(i.kind, i.taxon, i.facts) for i in quiz.items}) == len(quiz.items)


@pytest.mark.parametrize("taxa", [("lepomis-macrochirus", "lepomis-gibbosus"), ("lepomis-cyanellus", "lepomis-gulosus"),
                                  ("salmo-trutta", "salvelinus-fontinalis")])
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_nothing_is_asked_again_before_the_rest(kb: KnowledgeBase, taxa: tuple[str, ...], seed: int) -> None:
    """No feature of a fish comes a second time before every one that the quiz asks has come once."""
    items = build_quiz(kb, taxa, 20, seed, LOOKS["picture"], kinds=("which-fish", "which-feature", "true-false")).items
    asked = [(i.taxon, f.character) for i in items for f in i.facts]
    assert len(asked) > len(set(asked)) > 3
    assert len(set(asked[: len(set(asked))])) == len(set(asked))


def test_what_was_read_is_asked_before_what_is_from_memory(kb: KnowledgeBase) -> None:
    """A short quiz on the sunfishes and one on the catfishes ask features that were read, none from memory."""
    for group in ("lepomis", "ictaluridae"):
        for seed in (1, 2, 3):
            items = build_quiz(kb, species_below(kb, group), 4, seed, LOOKS["picture"],
                               kinds=("which-fish", "which-feature")).items
            assert len(items) == 4 and {f.basis for i in items for f in i.facts} == {"read"}


def test_no_word_is_asked_that_only_stands_in_another(kb: KnowledgeBase) -> None:
    """Beside the anal fin nobody is asked what a fin is."""
    items = build_quiz(kb, ("lepomis-macrochirus", "lepomis-gibbosus"), 20, 1, LOOKS["picture"]).items
    words = {i.choices[i.answer] for i in items if i.kind == "term"}
    assert "anal-fin" in words and "fin" not in words


def test_only_what_the_look_shows_is_asked(kb: KnowledgeBase) -> None:
    """A quiz for a picture asks nothing that a picture cannot show."""
    quiz = build_quiz(kb, species_below(kb, "catostomidae"), 10, 1, LOOKS["picture"])
    assert all(kb.character(f.character).look == "glance" for i in quiz.items if i.kind != "term" for f in i.facts)


def test_what_holds_for_one_sex_or_season_is_never_asked(kb: KnowledgeBase) -> None:
    """The blue-black pelvic fins of breeding male bluegills are no fact about the bluegill."""
    for taxon in species_below(kb, "lepomis"):
        for character in kb.characters:
            fact = right(kb, taxon, character)
            told = about(kb, taxon, character.id)[0]
            assert fact is None or not told or any(not (s.sex or s.breeding or s.stage == "juvenile") for s in told)
