"""Completion of names."""

from __future__ import annotations

import time

import pytest
from prompt_toolkit.completion import CompleteEvent
from prompt_toolkit.document import Document
from prompt_toolkit.formatted_text import to_plain_text

from assistant.dialogue.answer import Asked
from assistant.model.knowledge import KnowledgeBase
from assistant.prompt.complete import WISHES, NameCompleter, NameList, names_of
from tests.helpers.pipe_terminal import COLOURS


def offers(names: NameList | None, before: str, asked: Asked | None = None) -> list[tuple[str, str]]:
    """(The whole line after completion, kind) of each offer."""
    found = NameCompleter(lambda: names, lambda: asked).get_completions(Document(before), CompleteEvent())
    return [(before[: len(before) + c.start_position] + c.text, to_plain_text(c.display_meta)) for c in found]


@pytest.mark.parametrize(
    ("before", "after", "kind"),
    [
        ("is it a white cra", "is it a white crappie", "fish"),
        ("crap", "black crappie", "fish"),
        ("tell me about Lepomis gib", "tell me about Lepomis gibbosus", "Latin"),
        ("what is a kive", "what is a kiver", "fish: pumpkinseed"),
        ("un dore ja", "un doré jaune", "fish: walleye"),
        ("caught at Venni", "caught at Vennimoor Lake", "place (made up)"),
        ("in Ohi", "in Ohio", "place"),
        ("marks on the ea", "marks on the ear flap", "feature"),
        ("the anal sp", "the anal spines", "feature"),
    ],
)
def test_names_with_their_kind(kb: KnowledgeBase, before: str, after: str, kind: str) -> None:
    """Fishes, places and features are completed from any of their words on, accents apart, with their kind."""
    kind = kind.replace("Latin", "scientific name: pumpkinseed")
    assert (after, kind) in offers(names_of(kb), before)[:8]


def test_accepted_names_come_before_local_ones(kb: KnowledgeBase) -> None:
    """What the base prefers comes first: fishes by their accepted names before local, foreign and scientific names."""
    kinds = [kind for _, kind in offers(names_of(kb), "crap")]
    assert kinds.index("fish") < next(i for i, kind in enumerate(kinds) if kind.startswith("fish:"))


def test_finished_name_is_not_offered_again(kb: KnowledgeBase) -> None:
    """A name that stands there in full is not offered, only longer ones."""
    assert all(line != "bluegill" for line, _ in offers(names_of(kb), "bluegill"))


def test_choices_of_the_question_come_first(tiny_kb: KnowledgeBase) -> None:
    """While a question waits, its choices are offered on an empty line and when begun, with their digits."""
    names = names_of(tiny_kb)
    assert offers(names, "", COLOURS) == [("red", "answer 1"), ("dark grey", "answer 2"), ("not sure", "answer 3")]
    assert ("dark grey", "answer 2") in offers(names, "gre", COLOURS)
    assert offers(names, "redf", COLOURS) == [] or all(
        kind != "answer 1" for _, kind in offers(names, "redf", COLOURS)
    )


def test_nothing_is_offered_on_an_empty_line(tiny_kb: KnowledgeBase) -> None:
    """Without a question an empty line stays quiet, as does one letter within a line."""
    assert offers(names_of(tiny_kb), "") == [] and offers(names_of(tiny_kb), "is a v") == []


def test_wishes_only_at_the_beginning(tiny_kb: KnowledgeBase) -> None:
    """Words that steer the conversation are offered at the beginning of a line."""
    assert ("start over", "wish") in offers(names_of(tiny_kb), "start")
    assert not offers(names_of(tiny_kb), "I did start")


@pytest.mark.parametrize("wish", WISHES)
def test_wishes_are_words_the_base_understands(kb: KnowledgeBase, wish: str) -> None:
    """Every wish that is offered is a cue of the base, so that the engine knows it."""
    assert any(kind == "cue" for kind, _, _ in kb.spoken(wish)), wish


def test_names_not_ready_yet(tiny_kb: KnowledgeBase) -> None:
    """Before the list is ready nothing is offered, and nothing waits."""
    assert offers(None, "tall") == []


@pytest.mark.bench
def test_completion_is_quick(kb: KnowledgeBase) -> None:
    """A look-up takes well under the time between two keys (budget: 10 ms, common practice, no source)."""
    names = names_of(kb)
    start = time.perf_counter()
    for word in ("bl", "re", "sp", "the white c", "is it a red"):
        offers(names, word)
    assert (time.perf_counter() - start) / 5 < 0.01
