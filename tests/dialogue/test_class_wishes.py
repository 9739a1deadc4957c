"""What teachers and keepers of the base ask in passing: items of a list, paper, sets with fewer fishes, old names."""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond

CLOCK = date(2026, 7, 4)
KEY = "Make a key for rock bass, warmouth, black crappie and largemouth bass."


def talk(base: Base, lines: tuple[str, ...]) -> Answer:
    """The answer to the last of some lines."""
    held = Held()
    answer = None
    for line in lines:
        answer, held = respond(base, line, held, CLOCK)
    assert answer is not None
    return answer


def said(answer: Answer) -> str:
    """All that an answer says."""
    return " ".join(b.text for b in answer.blocks)


@pytest.mark.parametrize(("lines", "intent", "parts"), [
    (("what all bullheads n cats got white chin whiskers",), "list", ("bullheads and catfishes", "white catfish")),
    (("which sunfishes and catfishes have a forked tail",), "list", ("channel catfish",)),
    (("Five quiz questions on fish fins for third grade, one at a time",), "quiz", ("1 of 5", "?")),
    (("musky or tiger? bars all over it", "nah forget it, he's off the hook"), "undo",
     ("dropped: upright bars on the side", "another fish")),
    (("how big do rock bass get", "forget it"), "undo", ("dropped: rock bass",)),
    (("Why do hybrid sunfish spoil the keys my pupils make?",), "why", ("between its parents", "bluegill")),
    (("can a key handle hybrids?",), "why", ("between its parents",)),
    (("Is there a way to get these tables on paper for the class?",), "help", ("copy", "tellfin sheet")),
    (("compare bluegill and redear", "how do I print this?"), "help", ('tellfin compare "bluegill" "redear sunfish"',)),
    (("Which state science standard does a fin lesson satisfy, by number?",), "out-of-scope", ("can't", "standards")),
    (("sunfish, orange belly", "They can't agree on that one, go on."), "next-question", ("leave", "?")),
    (("upper-jaw-reach for L. gibbosus: which sources say what?", "and which one do you go with, on what grounds"),
     "why", ("None alone", "in 100", "Because both sides")),
    (("sources conflicting on brook trout lateral line scales", "which value do you use and why"), "why",
     ("is preferred, because",)),
    (("an old sheet has M. salmoides from Ohio; which concept is that now",), "names",
     ("largemouth bass, now Micropterus nigricans", "Florida bass")),
    (("historic record M. salmoides Texas: which species does it mean now",), "names", ("does not settle it",)),
    (("why would three anal spines favour warmouth over Ambloplites?",), "why", ("warmouth - 3", "rock bass - 5 to 7")),
    (("why do six anal spines point to rock bass and not warmouth",), "why", ("rock bass - 5 to 7", "warmouth - 3")),
    (("which Morone statements rest on memory alone", "tally by species"), "list", ("white bass", "in all")),
    (("which fishes have an adipose fin", "break that down by family"), "list", ("by family", "catfishes")),
    (("which fishes live in Ohio", "how many per genus"), "list", ("97 in all", "true sunfishes 8")),
])
def test_a_wish_is_met(open_base: Base, lines: tuple[str, ...], intent: str, parts: tuple[str, ...]) -> None:
    """The last line has its intent, and the answer says what was wished for."""
    answer = talk(open_base, lines)
    assert answer.intent == intent
    assert [p for p in parts if p not in said(answer)] == []


@pytest.mark.parametrize("line", [
    "Take out the warmouth and do it again.", "same key but minus the warmouth", "we don't need the warmouth, redo it",
    "all but the warmouth please", "Take warmouth out and start the key again.", "the warmouth has to go",
])
def test_a_key_is_made_again_without_a_fish(open_base: Base, line: str) -> None:
    """Whatever the words, the key of the fishes that remain comes, with all of them."""
    answer = talk(open_base, (KEY, line))
    lead = answer.blocks[0].text
    assert any(b.text.startswith("1a ") for b in answer.blocks)
    assert lead.startswith("A key to rock bass, black crappie and largemouth bass: 3 fishes")


def test_what_is_put_in_is_not_lost(open_base: Base) -> None:
    """A fish taken out and another put in make the set that was meant."""
    lead = talk(open_base, (KEY, "drop the warmouth and add the flier")).blocks[0].text
    assert "4 fishes" in lead and "flier" in lead and "warmouth" not in lead


def test_a_quiz_and_a_comparison_lose_a_fish(open_base: Base) -> None:
    """A quiz on paper and a comparison are made again for the fishes that remain."""
    quiz = ("make a quiz on rock bass, warmouth and black crappie for my class", "same again but no warmouth")
    assert talk(open_base, quiz).blocks[0].text.startswith("5 questions on rock bass and black crappie")
    swapped = ("quiz me on rock bass, warmouth and black crappie", "drop the warmouth and add the flier")
    assert talk(open_base, swapped).taxa[:3] == ("ambloplites-rupestris", "pomoxis-nigromaculatus",
                                                 "centrarchus-macropterus")
    compared = talk(open_base, ("compare rock bass, warmouth and black crappie", "minus the warmouth"))
    assert compared.taxa == ("ambloplites-rupestris", "pomoxis-nigromaculatus")


@pytest.mark.parametrize("first", ["which catfishes have a forked tail?", "which sunfishes live in Ohio"])
def test_a_list_becomes_true_or_false(open_base: Base, first: str) -> None:
    """So many items as asked for, true ones and false ones, with the answers apart and again on their own."""
    lines = (first, "Turn that into four true-or-false lines.")
    told = [b.text for b in talk(open_base, lines).blocks]
    assert sum("of 4. True or false:" in text for text in told) == 4
    answers = [b.text for b in talk(open_base, (*lines, "And the answers on their own, please.")).blocks]
    assert not any("of 4." in text for text in answers)
    assert any(". A, true." in text for text in answers) and any(". B, false." in text for text in answers)


def test_the_items_are_right(open_base: Base) -> None:
    """Each item says of its fish what the list says of it."""
    lines = ("which catfishes have a forked tail?",)
    inside = set(said(talk(open_base, lines)).partition(": ")[2].rstrip(".").replace(" and ", ", ").split(", "))
    told = talk(open_base, (*lines, "make 6 true or false statements from that")).blocks
    apart = next(i for i, b in enumerate(told) if b.text.startswith("Answers"))
    for question, answer in zip(told[1:apart], told[apart + 1:], strict=False):
        fish = question.text.partition("the ")[2].partition(" has ")[0].removesuffix(" usually")
        assert (fish in inside) == (". A, true." in answer.text)
