"""Words as people say them: articles by sound, fins with their noun, frequency words before the verb."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.lessons.levels import state_words, value_words, young
from assistant.dialogue.wording import core as say
from assistant.dialogue.wording import lesson as lessons
from assistant.dialogue.wording import speak
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.contrast import tell

Talk = Callable[..., tuple[Answer, Held]]


def test_articles_follow_the_everyday_word(kb: KnowledgeBase) -> None:
    """"an adipose fin" becomes "a fatty fin"; no young wording of a state has an article of the wrong sound."""
    assert young(kb, "an adipose fin") == "a fatty fin" and young(kb, "An anal fin") == "A bottom fin"
    wrong = re.compile(r"\b(?:a (?=[aeio])(?!one\b|eu)|an (?=[bcdfgjklmnpqrstvwxyz])(?!l\b))", re.I)
    assert not [s.id for c in kb.characters for s in kb.states(c.id) if wrong.search(state_words(kb, s.id, "young"))]


def test_a_lead_does_not_repeat_its_character() -> None:
    """A choice that names the feature itself stands alone; any other has the feature before it."""
    assert lessons.lead("adipose fin", "no adipose fin") == "No adipose fin"
    assert lessons.lead("shape of the tail fin", "forked") == "Shape of the tail fin: forked"


def test_frequency_words_go_before_the_verb() -> None:
    """"usually has", not "has usually"."""
    assert say.has("usually a dark blotch") == "usually has a dark blotch" and say.has("a notch") == "has a notch"


def test_what_settles_a_pair_is_said_once() -> None:
    """The words of a look-alike that end in "settles it" do not meet another "settles it"."""
    assert say.look_alike("sauger", "Throat teeth settle it") == (
        "Most easily taken for the sauger; to tell them apart: throat teeth.")
    assert "settle" not in say.hard_pair("Bolder bars") and "bolder bars" in say.hard_pair("Bolder bars")


@pytest.mark.parametrize(("line", "said"), [
    ("what does the anal fin of a yellow bullhead look like", "Yellow bullhead - outline of the anal fin"),
    ("lower fins of the paddlefish", "on the lower fins of the"),
    ("how much does a 12 inch bluegill weigh", "A bluegill of 12 in ("),
])
def test_parts_and_lengths_have_their_nouns(talk: Talk, line: str, said: str) -> None:
    """A fin is called a fin, and a length does not read "of 12 inch"."""
    assert said in "\n".join(b.text for b in talk(line)[0].blocks)


def test_a_special_mark_is_not_denied_by_a_general_one(kb: KnowledgeBase) -> None:
    """Where a fish has a blotch in a fin, "no marks" reads "no other marks"; where it has none, it stays."""
    fins = kb.character("median-fin-marks")
    words = {t: value_words(kb, tell(kb, fins, t), "plain") for t in ("lepomis-macrochirus", "lepomis-microlophus")}
    assert words == {"lepomis-macrochirus": "usually no other marks", "lepomis-microlophus": "usually no marks"}


def test_a_term_of_the_trade_brings_a_word_of_its_own(kb: KnowledgeBase) -> None:
    """A feature is named twice only where the trade's term says more than the plain words do."""
    named = {c.id: speak.heading(c) for c in kb.characters}
    assert named["dorsal-spines"] == kb.character("dorsal-spines").label
    assert named["opercular-flap-edge"].endswith(f"({kb.character('opercular-flap-edge').trade})")
