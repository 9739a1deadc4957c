"""What a line wants where its words alone do not say so: a mark after two fishes, a value, a thing not held."""

from __future__ import annotations

import pytest

from assistant.dialogue.engine import Base
from assistant.dialogue.lessons.quiz_words import Question, settled
from tests.dialogue.conftest import last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    ("pike vs musky / 8 pores each side under the jaw", "identify", "muskellunge"),
    ("chain pickerel or pike / the cheek and the whole gill cover have scales", "identify", "chain pickerel"),
    ("walleye vs sauger / and what about white tail tips", "contrast", "sauger"),
    ("walleye vs sauger / which one has the white tip", "contrast", "sauger"),
    ("blue cat off a channel cat when neither ones got spots", "contrast", "look first at the outline of the anal fin"),
    ("spikes at the front of the bottom back fin, how many on a rock bass an how many on a warmouth", "contrast",
     "anal spines: rock bass - 5 to 7; warmouth - 3"),
    ("bullhead question: brown or black", "contrast", "black bullhead"),
    ("is it a dollar sunfish or just a baby long ear, how would i know", "contrast", "longear"),
    ("spot or green trout. by green trout i mean largemouth", "contrast", "spotted bass"),
    ("flier / big as they come, inches", "size", "9.6 in"),
    ("a docent wrote 'pharyngeal teeth' on our redear panel. plain words for that?", "term", "redear sunfish: "),
    ("what makes a saugeye", "hybrids", "walleye"),
    ("which crosses of Lepomis cyanellus are in the base?", "hybrids", "bluegill"),
    ("which crosses of Lepomis cyanellus are in the base? / source and page for the gibbosus one", "sources",
     "green sunfish x pumpkinseed hybrid"),
    ("anal-spines, all values, Ambloplites only", "describe", "rock bass - 5 to 7"),
    ("where does 90 mm for bantam sunfish come from? / any other figure on file?", "sources", "no other figure"),
    ("which catfishes have a forked tail? / leave out the blue cat", "list", "2 fishes with a forked tail fin"),
    ("which fishes have chin barbels in ohio / leave out the catfishes", "list", "burbot"),
    ("sunfish family ones with a big mouth", "list", "warmouth"),
    ("which sunfishes stay under five inches as adults?", "list", "dollar sunfish"),
    ("what sunfish has a long ear flap, blue lines on the cheek and a red belly", "identify", "redbreast"),
    ("take my class through a key, one step at a time", "key", "?"),
    ("i do not know what i caught. could you ask me things one by one?", "next-question", "?"),
    ("robins in a tennessee creek, sposed to be there? redbreast i guess is the right word", "range", "introduced"),
    ("granddad said redeye for half the creek, which ones", "names", "rock bass"),
    ("can i keep a walleye on vennimoor lake / ;;;///asd", "out-of-scope", "did not understand"),
    ("when's dove season open in arkansas", "out-of-scope", "hunting seasons"),
    ("yellowstone flows today? too high to wade or no", "out-of-scope", "can't see how a water stands"),
    ("hatchery truck comin saturday?", "out-of-scope", "no stocking dates"),
    ("copperlathe tailwater, brown 15 and 1/2, july 3. keep?", "rules", "release"),
    ("copperlathe tailwater, brown 15 and 1/2, july 3. keep? / n if it taped sixteen? / says who", "sources",
     "it rests on this demo rule"),
    ("copperlathe tailwater, it was brown, 15 inches, keep?", "rules", "unknown"),
    ("quiz me on pikes / a. no wait b", "quiz", "2 of 5"),
])
def test_the_wish_behind_the_words_is_met(talk: str, intent: str, must: str, open_base: Base) -> None:
    """Each kind of asking gets its own answer, in the conversation before it."""
    answer = last(open_base, talk)
    assert answer.intent == intent
    assert must in text(answer).lower()


@pytest.mark.parametrize(("line", "taxon"), [
    ("lil black specks in the meat of my blue gills, still ok to eat?", "lepomis-macrochirus"),
    ("for the legal length on bass do you pinch the tail or leave it", "micropterus"),
    ("a docent wrote 'pharyngeal teeth' on our redear panel. plain words for that?", "lepomis-microlophus"),
])
def test_a_fish_named_in_passing_is_among_those_answered_of(line: str, taxon: str, open_base: Base) -> None:
    """Advice, rules and words tell which fish they were asked of."""
    answer = last(open_base, line)
    assert taxon in (*answer.taxa, *answer.wider)


@pytest.mark.parametrize(("typed", "meant"), [
    ("a. no wait b", "b"), ("a... actually c", "c"), ("not a, b", "b"),
    ("the redfin, i mean the grass one", "the grass one"),
    ("no", "no"), ("grass pickerel", "grass pickerel"), ("one with no bars", "one with no bars"),
])
def test_an_answer_taken_back_for_another_is_the_other(typed: str, meant: str) -> None:
    """The last choice named counts; a line that takes nothing back stays as it was typed."""
    question = Question("", ("grass pickerel", "redfin pickerel", "chain pickerel"), 1, "", "", ())
    assert settled(question, typed).strip() == meant
