"""Rows that stand whatever the words lean to give way to a wish told beside their words."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent"), [
    ("tell me about bluegill / never mind, how big do they get", "size"),
    ("tell me about bluegill / forget it, what do they eat", "habitat"),
    ("tell me about bluegill / no wait, difference between it and redear", "contrast"),
    ("How do they cook up, black crappie / oh forget the stove, just say what one looks like", "describe"),
    ("tell me about bluegill / nvm, can i keep one in Harrowelt", "rules"),
    ("spiny fish / not that / how am i meant to ask", "help"),
    ("tell me about bluegill / never mind", "undo"),
    ("bass swallowed the hook / never mind", "undo"),
])
def test_a_word_of_taking_back_gives_way_to_what_is_asked(lines: str, intent: str, talk: Talk) -> None:
    """A question behind "never mind" is answered; alone it takes back."""
    answer, _ = talk(*lines.split(" / "))
    assert answer.intent == intent


@pytest.mark.parametrize(("line", "intents"), [
    ("is a redear a different fish from a shellcracker", {"names", "contrast"}),
    ("can i keep another fish in Harrowelt if i let this one go", {"rules"}),
    ("my boy caught a new fish never seen before in the pond, what is it", {"identify"}),
    ("ok different fish now", {"undo"}),
    ("next fish: whiskers and a forked tail", {"undo"}),
])
def test_another_fish_spoken_of_is_not_gone_on_to(line: str, intents: set[str], talk: Talk) -> None:
    """What was seen is dropped for another fish only where nothing is asked of it."""
    answer, _ = talk("sunfish with an orange belly", line)
    assert answer.intent in intents


@pytest.mark.parametrize(("lines", "intent"), [
    ("quiz about walleye / real question, sauger closed when", "rules"),
    ("quiz on basses / skip it, just describe shoal bass", "describe"),
    ("quiz me on crappies / which crappies exist, first", "list"),
    ("quiz on fins / ouch, real one pricked me", "handling"),
    ("white crappie / 16 inches. stud or average", "size"),
    ("remind me what a redear looks like", "describe"),
    ("remind me to buy worms", "out-of-scope"),
    ("am i gonna get fined for a 70 cm pike", "rules"),
    ("Is there a printed book behind that flap claim? Parents will want it.", "sources"),
    ("How do I revive a bass? / For how long, roughly?", "handling"),
    ("tell me what bit my worm: hand sized, pale tips on the fins, eye red as a brake light", "identify"),
])
def test_a_line_that_asks_something_else_is_not_caught(lines: str, intent: str, talk: Talk) -> None:
    """Single words of a wish do not decide where the line asks for another."""
    answer, _ = talk(*lines.split(" / "))
    assert answer.intent == intent


@pytest.mark.parametrize(("lines", "said"), [
    ("hes bleeding from gills leave it??", "do not lift it again"),
    ("hooks way down in his gullet. dig for it or leave it be", "do not pull"),
    ("hook is way down her throat, dig it out?", "do not pull"),
    ("what size hook for gills / size 8 got swallowed / leave it in there or dig", "do not pull"),
    ("bass swallowed the hook / leave it", "do not pull"),
    ("hook in my thumb, dig it out or leave it", "a hook in a person"),
    ("red ear, got it / eyes popped out when it came up / should it go back down somehow", "sent back to depth"),
    ("my cat ate the fish flakes", "call a vet"),
    ("black spots on my bluegill", "black-spot parasite"),
    ("black spots on my bluegill / will it hurt the grandkids if they eat it", "do not infect people"),
    ("yellow worms in my perch fillets / will it hurt the kids if they eat it", "grubs in the flesh"),
    ("sores on my walleye can i eat it", "do not eat such a fish"),
    ("what happens if my kid eats gar eggs", "poisonous to people"),
])
def test_what_is_urgent_is_said_first(lines: str, said: str, talk: Talk) -> None:
    """The first thing said is what to do for the fish, or for the one that is hurt or would eat it."""
    answer, _ = talk(*lines.split(" / "))
    assert answer.intent == "handling"
    assert said in answer.blocks[0].text.lower()
