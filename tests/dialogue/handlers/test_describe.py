"""A mark asked about by words that fit several parts is looked for on all of them before the answer is no.

What each fish shows is checked against the statements of the base.
"""

from __future__ import annotations

import pytest

from assistant.dialogue.wording import speak
from assistant.dialogue.wording.core import UNCHECKED
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import tell
from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("does a round goby have a black spot", "black spot"),
        ("does a bluegill have a black spot", "black spot"),
        ("does a walleye have a white tip", "white tip"),
        ("does a sauger have a white tip", "white tip"),
        ("does the longear have a red edge", "red edge"),
    ],
)
def test_where_a_mark_may_be(line: str, words: str, talk: Talk, kb: KnowledgeBase) -> None:
    """The first part told of (the only one at once) has states of those very words, and what is said of it stands."""
    answer, _ = talk(line)
    first = answer.blocks[1] if len(answer.blocks) > 1 else answer.blocks[0]
    told = [s for s in kb.statements(answer.taxa[0]) if f"st:{s.id}" in first.statements]
    told = told or [s for t in kb.lineage(answer.taxa[0]) for s in kb.statements(t) if f"st:{s.id}" in first.statements]
    assert answer.intent == "describe" and told
    assert len(answer.blocks) == 1 or words in answer.blocks[0].text
    assert all(any(words in state.values for state in kb.states(s.character)) for s in told)


@pytest.mark.parametrize("line", ["does a channel cat have black spots", "does a pumpkinseed have a red spot"])
def test_a_plain_yes(line: str, talk: Talk) -> None:
    """Where the part that is read bears the mark, the answer is a yes and not a list of parts."""
    answer, _ = talk(line)
    assert answer.blocks[0].text.lower().startswith("yes")


def test_a_number_that_is_not_counted(talk: Talk) -> None:
    """"How many bones" is told to be not held, not answered by a portrait."""
    answer, _ = talk("how many bones does a bluegill have?")
    assert [b.kind for b in answer.blocks] == ["lead"] and "number of bones" in answer.blocks[0].text


@pytest.mark.parametrize("line", ["what is a spotted sunfish", "what is a striped bass"])
def test_a_mark_in_a_name_is_no_question_about_it(line: str, talk: Talk) -> None:
    """A fish whose name holds a mark is described as any other, its colour first."""
    blocks = talk(line)[0].blocks
    assert len(blocks) > 5 and blocks[1].text.startswith("Colour of the whole fish")


def test_every_kind_of_teeth(talk: Talk) -> None:
    """"Teeth" asks for all that are told of, those in the throat too."""
    assert "hroat teeth" in "\n".join(b.text for b in talk("redear teeth?")[0].blocks)


@pytest.mark.parametrize(("line", "begins"), [
    ("can a round goby lack the black spot", "hardly ever"),
    ("is the red spot always there on a pumpkinseed", "not always"),
    ("can a bluegill have a red ear", "hardly ever"),
    ("does a pumpkinseed have a red spot on the ear", "yes"),
])
def test_whether_a_mark_is_there(line: str, begins: str, talk: Talk) -> None:
    """A mark that most fish show is not said to be on all, nor one that few lack to be lacking in none."""
    answer, _ = talk(line)
    assert answer.intent == "describe" and answer.blocks[0].text.lower().startswith(begins)


def test_a_count_from_memory_says_so(kb: KnowledgeBase) -> None:
    """Every count told in a sentence carries the mark where memory alone stands behind it, and no other does."""
    marked = 0
    for character in (c for c in kb.characters if c.kind == "count"):
        for taxon in kb.all("taxon"):
            if (told := tell(kb, character, taxon.id)) and told.numbers is not None:
                said = speak.told_clause(kb, told, character)
                assert (UNCHECKED in said) == (told.basis == "memory"), (taxon.id, character.id)
                marked += UNCHECKED in said
    assert marked


@pytest.mark.parametrize("size", ["little", "lil", "big"])
def test_a_w_is_with(size: str, talk: Talk) -> None:
    """The size of the fish is not that of the part it has, however "with" is typed."""
    (short, _), (full, _) = talk(f"a {size} sunfish w a black ear"), talk(f"a {size} sunfish with a black ear")
    assert short.intent == full.intent == "identify" and short.taxa == full.taxa


def test_a_place_is_told_once(talk: Talk, kb: KnowledgeBase) -> None:
    """A state where the fish is native is not also told among those where it was introduced."""
    answer, _ = talk("tell me about largemouth bass")
    where = next(b.text for b in answer.blocks if b.text.startswith("Where"))
    home = {p.label for r in kb.ranges("micropterus-nigricans") if r.status == "native" and (p := kb.place(r.place))}
    _, _, brought = where.partition("introduced in")
    assert brought and not any(label in brought for label in home)


def test_a_bare_how_many_asks_of_the_term_before(talk: Talk) -> None:
    """ "How many does a cisco have" after a gill raker was explained is about gill rakers."""
    answer, _ = talk("what is a gill raker", "how many does a cisco have")
    assert answer.intent == "describe" and "gill raker" in answer.blocks[0].text.lower()
    assert "does" not in talk("how many does a cisco have")[0].blocks[0].text.lower().split()
