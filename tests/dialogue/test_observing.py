"""What the conversation holds of the fish in hand, as evidence."""

from __future__ import annotations

from assistant.dialogue.answer import Asked
from assistant.dialogue.conversation import Held
from assistant.dialogue.observing import evidence_of, observe, ruled_out
from assistant.dialogue.reader.reading import Reading, Seen
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.observed import Hint, Observation

ONE, TWO = frozenset({"lepomis-macrochirus"}), frozenset({"lepomis-macrochirus", "lepomis-gibbosus"})


def test_a_fish_denied_outright_is_ruled_out_until_it_is_offered_again() -> None:
    """Only a plain denial of one fish rules it out; a hedge or a whole group does not; a new offer takes it back."""
    denied = Hint("group", ONE, seen=False)
    assert ruled_out((denied,)) == ONE
    assert ruled_out((denied._replace(hedged=True),)) == ruled_out((Hint("group", TWO, seen=False),)) == frozenset()
    assert ruled_out((denied, Hint("like", ONE))) == frozenset()
    assert ruled_out((Hint("like", ONE), denied)) == ONE
    assert evidence_of(Held(hints=(denied,))).excluded == ONE


def test_what_answers_the_question_asked_is_marked_as_an_answer(kb: KnowledgeBase) -> None:
    """Told of the character asked for it is an answer, told of another it is of one's own accord."""
    held = Held(asked=Asked("character", "?", "tongue-teeth"))
    told = [Observation("tongue-teeth", ("tongue-teeth.none",)), Observation("adipose-fin", ("adipose-fin.present",))]
    reading = Reading("", (), seen=tuple(Seen(o, "", 0, 1) for o in told))
    assert [s.observation.asked for s in observe(kb, held, reading).seen] == [True, False]
