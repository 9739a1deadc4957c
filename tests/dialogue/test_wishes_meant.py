"""What a line wishes for, whatever words it wears: a name, a rule, a range, a life, a contrast, one question."""

from __future__ import annotations

import pytest

from tests.dialogue.conftest import Talk


@pytest.mark.parametrize(("lines", "intent", "must"), [
    (("my dad calls em stumpknockers, meaning what",), "names", "redear sunfish, redspotted sunfish"),
    (("what is a stumpknocker in georgia",), "names", "the redear sunfish: alabama and oklahoma"),
    (("gramps only fishes for specks in florida, whats that",), "names", "usually means the black crappie"),
    (("whats a speck in florida", "and a speckled trout in ontario"), "names", "usually means the brook trout"),
    (("what do they mean by pickerel in new hampshire", "and up in ontario"), "names", "means the walleye"),
    (("what fish is a chinkapin",), "names", "means the redear sunfish"),
    (("we call them bream here, which fish is that",), "names", '"bream" is used for several fishes'),
    (("clerk wrote white bass on my form, I say yellow bass. who's right",), "contrast", "look first at"),
    (("walleye or zander",), "contrast", 'the base does not hold "zander"'),
    (("crappie or bluegill",), "contrast", "bluegill, white crappie and black crappie"),
    (("describe the mud sunfish", "then hows it not a warmouth"), "contrast", "the warmouth has"),
    (("golden shiners from the shop, ok to use in ontario?",), "rules", "bait rules differ"),
    (("why are all my pond bluegills runts", "so dump in a few bass from the river"), "rules", "not without a permit"),
    (("walleye 18 3/4 in, lake skarrowin", "can he stay in the livewell"), "rules", "release"),
    (("quiet way to pull crappie off brush from a yak",), "tackle", "jig"),
    (("pike took the treble way down and the gills are bleeding", "so will it live"), "handling", "cuts its chances"),
    (("bluegill swallowed the hook", "is it gonna make it"), "handling", "of 100 died when the line was cut"),
    (("what are bullheads", "will it poke him"), "handling", "three stiff spines"),
    (("3 inch of ice enough for me n the sled",), "handling", "no, stay off"),
    (("whats a horned pout", "do the whiskers sting", "how big they run"), "size", "usually reaches"),
    (("how far west do fliers go",), "range", "oklahoma"),
    (("how far west do fliers go",), "range", "texas"),
    (("what is a stumpknocker in georgia", "been here all along or brought in"), "range", "native to georgia"),
    (("Micropterus with tongue-teeth = one-patch",), "list", "one patch of teeth on the tongue: spotted bass"),
    (("what is a lateral line", "does any sunfish have an incomplete one?"), "list", "bantam sunfish"),
    (("when do shellcrackers bed, full moon in may or before that",), "habitat", "spawning season of the redear"),
    (("where do crappie head after they spawn",), "habitat", "brush"),
    (("where do walleye go after they spawn",), "habitat", "goes after spawning is not held"),
    (("describe the longear sunfish", "creek fish or lake"), "habitat", "water of the longear sunfish"),
    (("crosses recorded for Lepomis gibbosus", "where's the bluegill one from, page?"), "sources",
     "pumpkinseed x bluegill hybrid"),
    (("One of our specimen cards says 'fimbriate'. In plain words?",), "term", "fringed"),
    (("a card says 'frobnicate', meaning what",), "term", '"frobnicate" is not in my glossary'),
    (("Current name for Micropterus floridanus, and what became of M. salmoides?",), "names",
     "the scientific name of the largemouth bass is micropterus nigricans"),
    (("lil bream from a pond by ocala, stumpknocker, meaning what",), "names", "in florida"),
    (("heres the pic i just sent, which one is it",), "help", "cannot look at a picture"),
    (("cutthroat in a high lake, which fly",), "tackle", "dry fly"),
    (("which fish look like a walleye",), "contrast", "most often mixed up with sauger"),
    (("what in the hudson could be confused with a striped bass",), "contrast", "most often mixed up with white bass"),
    (("my kid would like a wild pumpkinseed for his tank, ok?",), "rules", "not without a permit"),
    (("snakehead caught, what now",), "handling", "do not release a snakehead"),
    (("caught a gar on a worm, what do i do",), "handling", "gar: it has teeth that cut"),
    (("is a perch with worms ok to eat",), "handling", "cooking kills worms"),
    (("how do i tell a redear from a pumpkinseed", "what should i look at"), "next-question",
     "lines on the head: redear"),
    (("fish with a black spot on the back fin and a small mouth",), "identify",
     "dark blotch at the rear of the soft dorsal"),
    (("walleye 40 cm, lake skarrowin, 10 june 2026 - mine to keep? " * 20,), "rules", "only the first 12 catches"),
    (("which fish has chin whiskers",), "list", "fishes with barbels round the mouth"),
    (("whats in the mississippi",), "list", "in the mississippi river basin"),
    (("gars in the mississippi delta",), "list", "in the delta"),
])
def test_what_is_wished(talk: Talk, lines: tuple[str, ...], intent: str, must: str) -> None:
    """The intent, and what its answer says."""
    answer, _ = talk(*lines)
    assert answer.intent == intent
    assert must in " ".join(b.text for b in answer.blocks).lower()


@pytest.mark.parametrize("line", [
    "Four questions on the black basses for my class, one at a time please",
    "quiz my class on pikes, one by one: one question at a time",
])
def test_a_quiz_one_at_a_time(talk: Talk, line: str) -> None:
    """A class that wants its questions singly gets the first one, not a sheet."""
    answer, held = talk(line)
    assert answer.intent == "quiz" and answer.asked is not None and held.walk is not None


def test_thick_ice_is_never_called_safe(talk: Talk) -> None:
    """Ice above the least figure gets the guideline alone, neither yes nor no."""
    answer, _ = talk("is 6 inches of ice safe")
    assert answer.blocks[0].text.startswith("No ice is ever sure")


@pytest.mark.parametrize(("line", "intent"), [
    ("how many channel cats did they dump in my lake last fall", "out-of-scope"),
    ("how long does a bluegill live", "habitat"),
    ("our docent says goggle-eye, the sign says rock bass. Who's right?", "names"),
    ("what is a bluegill", "describe"),
])
def test_near_them(talk: Talk, line: str, intent: str) -> None:
    """Lines that share words with these wishes and want something else."""
    answer, _ = talk(line)
    assert answer.intent == intent
