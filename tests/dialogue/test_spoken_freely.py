"""What people say in passing: parts not looked at, crosses guessed, a set changed, words mistyped, a wound gone bad."""

from __future__ import annotations

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base
from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.read import read_line
from assistant.model.stems import typed_out
from tests.dialogue.conftest import CLOCK, Talk, last, text


@pytest.mark.parametrize(("talk", "intent", "must"), [
    # A part of a cross, and a cross of two fishes named.
    ("trout with orange slashes under the jaw, colorado / could it be part rainbow", "identify", "could be a cutbow"),
    ("bass with a big mouth past the eye / could it be part spotted bass", "identify", "largemouth bass x spotted"),
    ("shaped like a bluegill, mouth like a green sunfish. mix of the two?", "identify", "green sunfish x bluegill"),
    ("green sunfish and bluegill, how do you part them? / and if mine has some of each?", "hybrids", "they cross"),
    ("tell me about green sunfish / and it breeds with bluegill?", "hybrids", "green sunfish x bluegill"),
    ("mules cant breed, so is a hybrid bream the same way", "hybrids", "in part: of the"),
    ("half bluegill half green sunfish, how does it look / they make babies or not", "hybrids", "first cross fertile"),
    ("mouth like a bluegill, orange fin trim, missouri pond / do them crosses breed", "hybrids",
     "crosses of true sunfishes"),
    # A fish that somebody holds the catch to be.
    ("buddy swears its a pumpkinseed", "identify", "i cannot tell whether it is a pumpkinseed"),
    ("this a shellcracker? orange rim on the ear, long pointed side fins / buddy says punkin seed", "contrast",
     "the redear sunfish rather than the pumpkinseed"),
    # One of a list, a set put beside or changed.
    ("which black basses have a mouth past the eye / put smallmouth next to the first one", "contrast",
     "the largemouth bass rather than the smallmouth bass"),
    ("which trouts have pale spots on a dark body / the one with the deep fork in the tail?", "list", "lake trout"),
    ("make a two-way key to bluegill, warmouth and black crappie / swap the crappie for a rock bass", "key",
     "bluegill, warmouth and rock bass"),
    ("make a two-way key to bluegill, warmouth and black crappie / swap the crappie for a rock bass / "
     "best way to part it from the warmouth?", "contrast", "rock bass"),
    ("key to channel, blue, flathead and brown bullhead", "key", "blue catfish"),
    ("tell me about the black crappie / and its relative, the white one?", "describe", "the white crappie"),
    ("whats a chain pickerel look like / so not like a grass pickerel then", "contrast", "the chain pickerel"),
    # A mark that is held of one of them only.
    ("Esox niger and E. americanus: lateral line scales?", "contrast", "grass pickerel"),
    ("rock bass and warmouth for sixth grade, what could they count", "contrast", "anal spines"),
    # Bounds said in signs and in passing.
    ("all taxa, anal-spines > 4", "list", "at least 5 anal spines"),
    ("which of the sunfish family carry more n four spines in the anal fin", "list", "white crappie"),
    ("any sunfish that never gets past 4 inches", "list", "no longer than 4 in"),
    # What no base of fishes holds.
    ("how many bluegill live in the lake by my house", "out-of-scope", "not held here"),
    ("will crappie bite 2moro am", "out-of-scope", "bite"),
    ("whats a blue marlin weigh, not that we got any in tennessee", "out-of-scope", "does not hold"),
    # What is said and not asked.
    ("what does the flier look like? never mind where he lives", "describe", "the flier"),
    ("my 5 yr old asks do bluegills go to sleep", "habitat", "time of activity"),
    # Follow-ups in few words.
    ("tell me about green sunfish / how big of a mouth", "describe", "reach of the upper jaw"),
    ("tell me about pumpkinseed / when hes beddin what color", "describe", "breeding pumpkinseed"),
    ("where do fliers live / can you show me a photograph of one?", "describe", "no pictures"),
    ("chain pickerel, what am i looking for / bite?", "handling", "teeth"),
    ("montana creek, bull trout or brookie, dont wanna get fined", "contrast", "worm-track marks"),
    ("is walleye open in ohio yet", "rules", "no rules for ohio"),
    ("smallie vs bucketmouth / and if the mud bleached all the color out", "contrast", "reach of the upper jaw"),
    ("smallie vs bucketmouth / 2 inch babies?", "contrast", "young fish"),
    ("rock bass or warmouth, my creek / just three stiff ones on the bottom fin", "identify", "warmouth"),
    ("wiper or white bass, stripes broken / tongue has two rough strips, side by side", "identify", "hybrid striped"),
    ("sauger, walleye or the cross", "contrast", "saugeye"),
    ("suwannee bass, is that just a small largemouth", "contrast", "kinds of their own"),
    ("big mouth, orange fin trim, dark smudge at the rear of the dorsal / who wins", "why", "because of"),
    ("bowfin or snakehead / bottom fin's short / so back it goes", "handling", "bowfin"),
    ("yellow bullhead, white chin whiskers / v the brown?", "contrast", "the brown bullhead"),
    ("11 inch brook trout weight / same length in a brown / how do i know which", "contrast", "the brook trout"),
    ("them longears get up north any / ontario tho?", "range", "the fish called longear sunfish there"),
    ("redear or pumpkinseed / which eats better", "handling", "matter of taste"),
    ("round goby on the hook, let it go? / wrong fish, its a sculpin", "undo", "taken as a sculpin"),
    ("five quiz questions on black basses for my scouts / largemouth", "quiz", "keep no score"),
    ("wifes uncle calls em specks, he's in florida", "names", "black crappie"),
    ("that fried 'pickerel' they fed us in Kenora wasn't no pickerel", "names", "the walleye"),
    ("what would you chuck at a grinnel in the pads", "tackle", "bowfins"),
    ("wiper, striper, white bass. three way, one line each", "contrast", "to sort hybrid striped bass"),
    ("Name five fishes with whiskers for a felt board", "list", "channel catfish"),
    ("how long is a grown bantam sunfish, in centimetres", "size", "4 to 7 cm"),
    ("do redears have molars / whatre the molars for", "why", "snails"),
    ("9in sunny, plain cheek, throat teeth blunt like molars / whatre the molars for", "why", "snails"),
    ("sunny off a connecticut dock. buddy's bet ten bucks its a pumpkinseed, i aint sold", "identify",
     "cannot tell whether"),
    ("bass on the line, what do i look at first / jaw quits right under the middle of the eye", "identify",
     "smallmouth bass"),
    ("bass with dark stripes, the lower ones broken, silver", "identify", "white bass"),
    ("black n white crappie, some way other than counting spines pls", "contrast", "dorsal base"),
    ("northern sunfish in michigan, native? / aint that just a longear", "names", "longear"),
    ("gill w a big mouth n yella fin rims, half greenie u think / kin them breed", "hybrids", "first cross fertile"),
    ("kinda gill kinda green sunfish, big mouth and a blotch on the dorsal", "identify", "green sunfish x bluegill"),
    ("silver stripey fish below the dam", "identify", "white bass"),
    ("sunfishes that live on snails?", "list", "redear sunfish"),
    ("walk me thru a key / ferget it startin over", "undo", "put away"),
    # Harm.
    ("holdin a channel cat without gettin stuck / too late. thumb", "handling", "wash the wound"),
    ("catfish stick me with the needle in the hand, what i do", "handling", "wash the wound"),
    ("bullhead got me in the thumb good / two days later its red and hot", "handling", "get medical care now"),
    ("crappie swalowed hook way deep, cut line or dig", "handling", "cut the line"),
    ("livewell full of gills, can i stock my uncles pond with em", "rules", "not without a permit"),
    # Weights and units.
    ("11 inch redear, how much does it weigh / in kilo sorry", "weight", "0.46 kg"),
    # They and another, under rules.
    ("describe the sauger / do they n walleyes count together on lake skarrowin", "rules", "yes: sauger and walleyes"),
])
def test_spoken_freely(open_base: Base, talk: str, intent: str, must: str) -> None:
    """Each line is answered as it was meant, with what it asks for."""
    answer = last(open_base, talk)
    assert answer.intent == intent
    assert must in text(answer).lower()


@pytest.mark.parametrize("line", [
    "never got to look at the spines",
    "didnt count the spines",
    "couldnt see the spots on the side",
    "forgot to check the ear flap for red",
    "i never looked at the belly for spots",
    "wasnt able to count the whiskers",
    "too dark to see the bars",
])
def test_what_was_not_looked_at_tells_nothing(open_base: Base, line: str) -> None:
    """A part that nobody looked at is neither there nor missing."""
    assert not read_line(open_base.kb, line, Held(), CLOCK).seen


@pytest.mark.parametrize(("line", "state"), [
    ("couldnt see any spots", "body-spots.none"),
    ("forked tail cat, not a spot on it", "body-spots.none"),
    ("base of the back fin is shorter than the gap from fin to eye", "dorsal-base-vs-eye-distance.shorter"),
    ("the two back fins are grown together", "dorsal-fin-arrangement.two-joined"),
    ("trout with white edge on the bottom fins", "lower-fin-leading-edge.pale-edge"),
])
def test_what_was_seen_is_read(open_base: Base, line: str, state: str) -> None:
    """Marks told in words near those above are still read."""
    assert state in [x for s in read_line(open_base.kb, line, Held(), CLOCK).seen for x in s.observation.states]


def test_a_word_of_a_name_is_no_mark(open_base: Base) -> None:
    """Scales in the name of a count, and a fin on which spines stand, tell of nothing by themselves."""
    assert not read_line(open_base.kb, "same for lateral line scales", Held(), CLOCK).seen
    told = read_line(open_base.kb, "more than three spines on the bottom fin near the tail", Held(), CLOCK).seen
    assert [s.observation.character for s in told] == ["anal-spines"]


def test_plain_words_in_haste() -> None:
    """Plain words mistyped and signs before numbers are spelt out; a word that is another word is left alone."""
    assert typed_out("wich sunfish hv spots") == "which sunfish have spots"
    assert typed_out("spines >= 10").split() == ["spines", "at", "least", "10"]
    assert typed_out("bigger n a redear") == "bigger than a redear"
    assert typed_out("no more then it swam off") == "no more then it swam off"


def test_a_letter_too_few(open_base: Base) -> None:
    """An unknown word that lacks, doubles or swaps a letter of one known is that word; another letter makes another."""
    slip = lexicon_of(open_base.kb).slip
    assert [slip(w) for w in ("swalowed", "diffrent", "resting", "hallway")] == [
        "swallowed", "different", "resting", "hallway"]


@pytest.mark.parametrize(
    "lines",
    [
        ("we keep two boxes, flathead and channel", "dark ones get mixed", "what would you check on the head"),
        ("so a longear can be mixed with pumpkinseed", "fair enough", "what's the female like on that first one"),
    ],
)
def test_a_cross_that_is_not_held_breaks_no_later_turn(talk: Talk, lines: tuple[str, ...]) -> None:
    """After a cross asked about that the base does not hold, the next lines are of the two fishes."""
    _, held = talk(*lines[:2])
    assert any(" x " in t for t in held.wider), "the formula of the cross stands in what is held"
    answer, _ = talk(*lines)
    assert answer.taxa[:1] == held.taxa[:1]


def test_names_by_first_words_and_crosses(open_base: Base, talk: Talk) -> None:
    """A fish may be called by the first word of its name where it is one of those spoken of, or crossed with one."""
    answer, _ = talk("black crappie or white crappie", "are whites bigger")
    assert answer.taxa == ("pomoxis-annularis",)
    told = read_line(open_base.kb, "crossin a bluegill with a green", Held(), CLOCK)
    assert told.taxa() == ("lepomis-macrochirus", "lepomis-cyanellus")


def test_either_of_a_loose_name_and_another(talk: Talk) -> None:
    """Who wavers between a plain name and one of several fishes leaves the deciding to the marks."""
    answer, _ = talk("smallie or just a fat spot? its got bars on the sides, tongue slick")
    assert answer.taxa[0] == "micropterus-dolomieu"


def test_one_in_the_bucket_is_no_inch(open_base: Base) -> None:
    """ "The one in" is a fish and its place; "one in long" is a length."""
    assert not read_line(open_base.kb, "the one in muddier water", Held(), CLOCK).measures
    assert read_line(open_base.kb, "it is one in long", Held(), CLOCK).measures


def test_a_count_supposed(talk: Talk) -> None:
    """Another number supposed takes the place of the one told."""
    answer, held = talk("red eye, mottled, 3 anal spines", "and if id counted six")
    assert [s.observation.value for s in held.seen if s.observation.value is not None] == [6]
    assert answer.taxa[0] == "ambloplites-rupestris"


def test_the_reason_of_bright_colours(talk: Talk) -> None:
    """Why fishes brighten with the season is told by the advice held on it, and cautions against naming by colour."""
    answer, _ = talk("why do sunnies get so gaudy come june")
    assert answer.intent == "why" and "breeding males" in answer.blocks[0].text


def test_carp_beside_a_fish_with_carp_in_its_names(open_base: Base) -> None:
    """A quillback is called a carp, too; set against the carps both are named."""
    told = read_line(open_base.kb, "carp or quillback", Held(), CLOCK)
    assert [m.ids for m in told.mentions] == [("carps",), ("carpiodes-cyprinus",)]


def test_the_fish_after_the_wound(talk: Talk) -> None:
    """Asked of the fish after first aid was told, the answer is of the fish, not of the wound again."""
    answer, _ = talk("pike raked my thumb, its bleedin", "and the fish? still in the net")
    assert answer.intent == "handling" and "pliers" in answer.blocks[0].text


def test_the_other_of_two_starts_afresh(talk: Talk) -> None:
    """ "The other, ..." opens a second catch: nothing told of the first is held against it."""
    _, held = talk("2 fish in the basket. first one long pointy side fins, solid black ear",
                   "the other, mouth to the middle of the eye, short round side fins")
    assert {s.observation.character for s in held.seen} == {"upper-jaw-reach", "pectoral-fin-form"}


@pytest.mark.parametrize("kind", ["weed", "schooling", "river"])
def test_a_kind_of_fish_is_no_food(talk: Talk, kind: str) -> None:
    """ "Is it a weed fish" asks of its waters; that it eats fish is no answer."""
    answer, _ = talk("white crappie", f"is it a {kind} fish")
    assert answer.intent == "habitat" and not any("Food" in b.text for b in answer.blocks[:1])


def test_a_list_meant_of_others(talk: Talk) -> None:
    """ "I meant bass" asks the same of the basses."""
    answer, _ = talk("which sunfish have teeth on the tongue", "i meant bass")
    assert answer.intent == "list" and answer.taxa[0] == "micropterus-punctulatus"
    assert "micropterus-nigricans" not in answer.taxa


def test_the_last_of_a_key_is_dropped(talk: Talk) -> None:
    """A fish of a key is taken out by its place in it."""
    answer, _ = talk("Write a two-way key to bluegill, pumpkinseed, redear and warmouth", "Drop the last one")
    assert answer.intent == "key" and "3 fishes" in answer.blocks[0].text and "gulosus" not in " ".join(answer.taxa)


def test_marks_after_a_comparison_are_of_its_fishes(talk: Talk) -> None:
    """What is told of a catch after two fishes were set side by side is weighed between them, whatever is asked."""
    answer, _ = talk("goldfish gone wild vs a little carp", "no wiskers on it. toss it back?")
    assert answer.taxa[0] == "carassius-auratus"


def test_bigger_than_a_fish_named_in_passing(talk: Talk) -> None:
    """ "Bigger than a gill?" sets the fish spoken of beside the bluegill."""
    answer, _ = talk("how big do redears get", "bigger than a gill?")
    assert set(answer.taxa) == {"lepomis-microlophus", "lepomis-macrochirus"}


@pytest.mark.parametrize(("line", "states"), [
    ("ear is long, narrow, all black, no white edge",
     {"opercular-flap-length.long", "opercular-flap-width.narrower-than-eye", "opercular-flap-edge.none-all-dark"}),
    ("ear is short, stiff, all black", {"opercular-flap-length.short", "opercular-flap-stiffness.stiff-to-edge",
                                        "opercular-flap-edge.none-all-dark"}),
    ("tail is forked, all silver", {"caudal-fin-shape.forked", "body-colour.silvery"}),
])
def test_what_a_part_is_goes_on_over_commas(open_base: Base, line: str, states: set[str]) -> None:
    """A list of qualities behind "the ear is" is all said of the ear, as far as an ear can be so."""
    told = read_line(open_base.kb, line, Held(), CLOCK)
    assert {x for s in told.seen for x in s.observation.states} == states


def test_gill_before_a_part_is_no_bluegill(open_base: Base) -> None:
    """ "Gill arch" and "gill raker" are words of the glossary, not a fish and something it has."""
    told = read_line(open_base.kb, "difference between a gill raker and a gill arch", Held(), CLOCK)
    assert {m.ids[0] for m in told.mentions if m.kind == "term"} == {"gill-raker", "gill-arch"} and not told.taxa()


def test_why_not_a_fish_of_which_nothing_was_said(talk: Talk) -> None:
    """Asked out of the blue, the fish is named and the way on told."""
    answer, _ = talk("why not a redear")
    assert answer.taxa == ("lepomis-microlophus",) and "redear" in answer.blocks[0].text


def test_a_spot_wanted_to_the_yard_is_not_held(talk: Talk) -> None:
    """Where exactly somebody fished is no question of the base; that is said, and what can be told."""
    answer, _ = talk("where exactly is the secret brookie hole on my creek")
    assert answer.intent == "out-of-scope"
    assert "spot" in answer.blocks[0].text and "brook trout" in answer.blocks[1].text


@pytest.mark.parametrize(("lines", "part"), [
    (("flier: how many spines on top n how many below",), "10 to 13 dorsal spines and 7 to 9 anal spines"),
    (("Tiger trout: who is the mother, and is the offspring fertile?",), "sterile"),
    (('yellow perch 12 1/4" ounces',), "16.4 oz"),
    (("what does a 15 inch fish weigh",), "which fish"),
    (("lake sturgeon in skarrowin can i lift it for a pic",), "do not lift it for a photograph"),
    (("driving live perch home from threlwick in a bucket ok?",), "Kill or release every fish"),
    (("fly for brookies",), "dry fly"),
    (("Sort the sunfish in the base by maximum length",), "Redear sunfish: largest known"),
    (("how does a bowfin breathe when the water is stale",), "can breathe air"),
    (("when do walleyes spawn", "same for yellow perch"), "Spawning season of the yellow perch"),
    (("what do bluegill eat in winter", "and summer", "for pumpkinseed?"), "Food of the pumpkinseed"),
    (("stream reads 71 f. ok to catch n release browns?",), "68 F (20 C)"),
    (("mudfish vs snakehead",), "bony plate"),
])
def test_what_is_asked_is_answered(talk: Talk, lines: tuple[str, ...], part: str) -> None:
    """Both of two questions, in the unit asked for, of the season's food, by the rule of the water."""
    answer, _ = talk(*lines)
    assert part in " ".join(b.text for b in answer.blocks)


@pytest.mark.parametrize(("line", "taxa"), [
    ("crapppie black n white how do i kno", {"pomoxis-nigromaculatus", "pomoxis-annularis"}),
    ("catfish blue or channel?", {"ictalurus-furcatus", "ictalurus-punctatus"}),
    ("please tell apart green sunfish, bluegill and redear",
     {"lepomis-cyanellus", "lepomis-macrochirus", "lepomis-microlophus"}),
])
def test_kinds_told_behind_the_word_for_them(talk: Talk, line: str, taxa: set[str]) -> None:
    """ "Crappie black n white" names two fishes; "green sunfish, bluegill" is left as it is."""
    answer, _ = talk(line)
    assert answer.intent == "contrast" and set(answer.taxa) == taxa


def test_more_than_is_of_its_clause(open_base: Base) -> None:
    """ "Rocks all over: twelve spines" counts twelve, not more."""
    told = read_line(open_base.kb, "rocks all over: twelve stiff spines up top", Held(), CLOCK)
    assert [s.observation.value for s in told.seen] == [12]


def test_id_go_with_another_count(talk: Talk) -> None:
    """A count settled on replaces the one that was doubted."""
    _, held = talk("pretty sure 10 spines up top but maybe 11, ear short", "i'd go with 11")
    assert [s.observation.value for s in held.seen if s.observation.value is not None] == [11]


@pytest.mark.parametrize(("lines", "intent", "part"), [
    (("laker or splake thru the ice",), "contrast", "tail fork"),
    (("lake whitefish from cisco, thru the ice",), "contrast", "position of the mouth"),
    (("show what is held on anal-spines for Ambloplites cavifrons",), "describe", "5 to 7 anal spines"),
    (("List the crosses that hold no fertility value.",), "list", "No value for fertility of the hybrid"),
    (("any sunfish w a rounded tail stead of a notched one",), "list", "mud sunfish"),
    (("rig for crappie round bridge pilings after dark",), "tackle", "Crappies"),
    (("gills are on the beds, what hook", "does it hurt anything pulling em off the nest"), "handling", "eggs"),
    (("can i keep bass on Sallowgum Lake april 10", "meant july"), "rules", "over 18 in"),
    (("how many redbreast can i keep in north carolina", "ok but how do you even measure one right"), "rules",
     "Total length"),
    (("great lakes coho or chinook, how do i tell", "and pinks, how do they differ"), "contrast", "pink salmon"),
    (("44 inch. Eight pores under each jaw, tail tips pointed. pike or muskie",), "contrast", "muskellunge rather"),
])
def test_further_ordinary_wishes(talk: Talk, lines: tuple[str, ...], intent: str, part: str) -> None:
    """What is wanted is plain from a few words, whatever stands beside them."""
    answer, _ = talk(*lines)
    assert answer.intent == intent and part in " ".join(b.text for b in answer.blocks)


def test_a_key_narrowed_by_a_finer_mark(talk: Talk) -> None:
    """A deeply forked tail leaves no catfish with a square one, though its depth is told of few."""
    answer, _ = talk("Could we walk through a key for our mystery fish? We already know it is some catfish.",
                     "Yes, it is deeply forked.")
    assert answer.intent == "key" and not {"noturus-flavus", "noturus-gyrinus"} & set(answer.taxa)


def test_a_third_fish_fits_better(talk: Talk) -> None:
    """Between two fishes named, a third that the marks plainly fit is told of."""
    answer, _ = talk("striper vs white bass, mine is golden, tongue smooth with no teeth, lower stripes broken and "
                     "shifted")
    assert "yellow bass" in " ".join(b.text for b in answer.blocks)
