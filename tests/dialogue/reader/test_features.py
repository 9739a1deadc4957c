"""Features are read out of free text: parts and values in any order, denials with their scope, hedges, counts.

The lines and what they mean are our own judgement (common practice, no source). An umbrella state counts for the states
below it.
"""

from __future__ import annotations

from datetime import date

import pytest

from assistant.dialogue.conversation import Held
from assistant.dialogue.reader.read import read_line
from assistant.dialogue.reader.reading import Seen
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk

CLOCK = date(2026, 7, 4)


def _told(seen: Seen) -> str:
    o = seen.observation
    mark = "" if o.seen else "!"
    if o.value is not None:
        return f"{mark}{o.character}={o.value:g}" + (f"-{o.value_high:g}" if o.value_high is not None else "")
    return mark + ",".join(o.states)


def _read(kb: KnowledgeBase, text: str) -> list[str]:
    return [_told(s) for s in read_line(kb, text, Held(), CLOCK).seen]


@pytest.mark.parametrize(
    ("text", "state"),
    [
        ("a scarlet mark at the tip of the ear", "opercular-flap-edge.red-or-orange-spot"),
        ("the ear flap has a crimson dot", "opercular-flap-edge.red-or-orange-spot"),
        ("gill flap all black", "opercular-flap-edge.none-all-dark"),
        ("black ear rimmed pale", "opercular-flap-edge.pale-or-white-edge"),
        ("its tail is square", "caudal-fin-shape.truncate"),
        ("tail square", "caudal-fin-shape.truncate"),
        ("deeply forked tail", "caudal-fin-shape.forked"),
        ("mouth past the eye", "upper-jaw-reach.past-eye"),
        ("jaw goes way back past the eye", "upper-jaw-reach.past-eye"),
        ("lower corner of the tail is white", "tail-tip-mark.white"),
        ("side fins reach past the eye when bent forward", "pectoral-fin-reach.past-eye"),
        ("one whisker on the chin", "barbels.one-chin"),
        ("it has two pairs of whiskers", "barbels.four"),
        ("turquoise wavy lines on the cheek", "head-lines.wavy-blue"),
        ("smooth tongue", "tongue-teeth.none"),
        ("red iris", "eye-colour.red"),
        ("an ear longer than its head", "opercular-flap-length.long"),
        ("belly fins joined into a sucker", "pelvic-fin-position.fused-disc"),
        ("a dark smudge at the back of the soft dorsal", "soft-dorsal-blotch.present"),
        ("silver blue w/ orange freckles all over", "body-spots.orange-red-dots"),
        ("smooth skin and no scales at all", "body-covering.scaleless"),
        ("belly fin as big as the back fin", "anal-vs-dorsal-size.about-equal"),
        ("speckled every which way", "body-spots.dark-speckles"),
        ("way too much mouth for a gill", "upper-jaw-reach.large-mouth"),
        ("yella edges on its fins", "median-fin-edge.yellow-orange-white-edge"),
        ("ear black w a lil red dot on the end", "opercular-flap-edge.red-or-orange-spot"),
        ("rough spine leading the back fin", "serrated-dorsal-spine.present"),
        ("mouth points straight out front", "mouth-position.terminal"),
        ("stripes dont line up, shifted over by the belly", "stripe-pattern.broken"),
        ("dark lines unbroken clear to the tail", "stripe-pattern.continuous"),
        ("rows of pale blue dots", "body-spots.blue-silver-rows"),
        ("black specks in rows", "body-spots.dark-spot-rows"),
        ("the ear is huge and its rim is white", "opercular-flap-edge.pale-or-white-edge"),
        ("dorsals apart", "dorsal-fin-arrangement.two-separate"),
    ],
)
def test_states(kb: KnowledgeBase, text: str, state: str) -> None:
    """A part and a value in the same clause give the state, in whatever order and colour word."""
    assert state in _read(kb, text)


def test_several_in_one_sentence(kb: KnowledgeBase) -> None:
    """A part is carried on into the next clause, and each value goes to its own part."""
    told = _read(kb, "ear is long, edged in white, blue squiggles on the cheek, short rounded side fins")
    assert {
        "opercular-flap-length.long",
        "opercular-flap-edge.pale-or-white-edge",
        "head-lines.wavy-blue",
        "pectoral-fin-form.short-rounded",
    } <= set(told)


def test_clause_in_a_story(kb: KnowledgeBase) -> None:
    """What surrounds the useful clause gives no observations."""
    told = _read(
        kb,
        "Was out with gramps, wind was howling, motor quit twice, and he got this fish with six spines in front of"
        " the anal fin, then we ate lunch. Any idea?",
    )
    assert told == ["anal-spines=6"]


@pytest.mark.parametrize(
    ("text", "told", "not_told"),
    [
        ("no bars, spots or stripes", {"body-bars.none", "body-spots.none", "stripe-pattern.none"}, set()),
        ("no whiskers, adipose fin present", {"barbels.none", "adipose-fin.present"}, {"adipose-fin.absent"}),
        ("no whiskers at all serrated spine", {"barbels.none"}, {"serrated-dorsal-spine.absent"}),
        ("tail not forked whiskers yes", set(), {"barbels.none", "caudal-fin-shape.forked"}),
        ("spots none", {"body-spots.none"}, set()),
        (
            "no red on the ear but a black flap",
            {"opercular-flap-edge.none-all-dark"},
            {"opercular-flap-edge.red-or-orange"},
        ),
        ("no its got two pairs of whiskers", {"barbels.four"}, {"!barbels.four"}),
        ("pale spots on a dark side", {"body-spots.light-on-dark"}, {"body-spots.dark-on-light"}),
    ],
)
def test_denials(kb: KnowledgeBase, text: str, told: set[str], not_told: set[str]) -> None:
    """A denial reaches the noun it denies, on over "or", and no further."""
    found = set(_read(kb, text))
    assert told <= found
    assert not not_told & found


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("10 spines up top", "dorsal-spines=10"),
        ("dorsal spines 7 i think", "dorsal-spines=7"),
        ("seven or eight anal spines", "anal-spines=7-8"),
        ("18 rays in the anal fin", "anal-soft-rays=18"),
        ("anal fin had 27", "anal-soft-rays=27"),
        ("counted 38 scales on the lateral line", "lateral-line-scales=38"),
        ("stiff ones on the back: seven", "dorsal-spines=7"),
        ("8 pores under the jaw", "mandibular-pores=8"),
        ("12 pectoral rays", "pectoral-rays=12"),
        ("7 dark bars", "body-bar-count=7"),
    ],
)
def test_counts(kb: KnowledgeBase, text: str, count: str) -> None:
    """A number goes to what it counts, by the noun beside it and by what fishes have."""
    assert count in _read(kb, text)


def test_two_counts_of_one_fin(kb: KnowledgeBase) -> None:
    """The noun behind each number decides what is counted on the fin named before."""
    assert {"anal-spines=3", "anal-soft-rays=10"} == set(_read(kb, "anal fin has 3 spines and 10 rays"))


def test_marks_elsewhere(kb: KnowledgeBase) -> None:
    """Spots on the tail are no spots of the body; a blotch of one fin is not given to another."""
    assert _read(kb, "black spots on the tail") == ["caudal-spots.spotted"]
    assert "opercular-flap-edge.none-all-dark" in _read(kb, "black flap and a big blotch in the dorsal")


def test_formula(kb: KnowledgeBase) -> None:
    """A fin formula gives spines in roman and rays in arabic figures."""
    told = _read(kb, "D XI, A V-VI,10")
    assert {"dorsal-spines=11", "anal-spines=5-6", "anal-soft-rays=10"} == set(told)
    assert {"anal-spines=3", "anal-soft-rays=9"} == set(_read(kb, "anal III 9"))


def test_hedge(kb: KnowledgeBase) -> None:
    """A hedge weakens what stands in its clause and nothing else."""
    seen = read_line(kb, "maybe a black ear, no whiskers", Held(), CLOCK).seen
    assert {s.observation.character: s.observation.hedged for s in seen} == {
        "opercular-flap-edge": True,
        "barbels": False,
    }


def test_bounds(kb: KnowledgeBase) -> None:
    """A bound on an ordered feature is kept as a bound."""
    seen = read_line(kb, "jaw reaches at least the middle of the eye", Held(), CLOCK).seen
    assert [(s.observation.character, s.observation.at_least) for s in seen] == [("upper-jaw-reach", True)]


def test_misspelt(kb: KnowledgeBase) -> None:
    """Words for parts and values are mended when they are misspelt."""
    assert "tongue-teeth.none" in _read(kb, "smoothe toungue")
    assert "barbels.none" in _read(kb, "no wiskers")


@pytest.mark.parametrize(
    "text",
    [
        "how do I tell them apart",
        "what bait",
        "thanks",
        "the dog jumped in",
        "who won the game last night",
        "my cousin swears",
        "can i keep it",
        "5 question quiz for grade 3",
    ],
)
def test_nothing_seen(kb: KnowledgeBase, text: str) -> None:
    """A line that describes no fish gives no observations."""
    assert _read(kb, text) == []


@pytest.mark.parametrize(
    ("text", "told", "not_told"),
    [
        ("ten spines on the back then soft rays", {"dorsal-spines=10"}, {"fin-spines.soft"}),
        ("six spines then soft rays on the top fin", {"dorsal-spines=6"}, {"dorsal-fin-arrangement.single-soft"}),
        ("No teeth no spines", {"teeth-form.none-on-jaws", "fin-spines.soft"},
         {"pectoral-spine-serration.none-or-weak"}),
        ("slash under chin, spots few", {"throat-slash.present"}, {"barbel-colour.dark", "chin-mottling.present"}),
        ("neither spots nor bars and the tail isnt forked", {"body-bars.none"}, {"tail-bands.none"}),
        ("six spines on bottom fin, eleven on top", {"anal-spines=6", "dorsal-spines=11"}, {"anal-spines=11"}),
        ("threadlike last ray on top fin, belly like a saw", {"last-dorsal-ray.long-filament",
                                                              "belly-keel.saw-edged-scutes"}, set()),
        ("dark bars and a red eye", {"eye-colour.red"}, set()),
        ("rock bass, red eye", {"eye-colour.red"}, set()),
    ],
)  # fmt: skip
def test_each_thing_told_goes_to_its_own_part(kb: KnowledgeBase, text: str, told: set[str], not_told: set[str]) -> None:
    """Counts rule out "no spines"; a second denial, "and the" and a noun left out part what is said of two things."""
    found = set(_read(kb, text))
    assert told <= found
    assert not not_told & found


def test_a_pronoun_speaks_of_the_part_told_last(kb: KnowledgeBase, talk: Talk) -> None:
    """ "They were black" is said of the whiskers spoken of before, and of nothing where nothing was."""
    _, held = talk("bullhead with white chin whiskers")
    seen = read_line(kb, "and if they were black?", held, CLOCK).seen
    assert "barbel-colour.dark" in [x for s in seen for x in s.observation.states]
    assert _read(kb, "and if they were black?") == []


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("11 D spines, 7 A spines", ["dorsal-spines=11", "anal-spines=7"]),
        ("12 dorsal spines n 8 anal", ["dorsal-spines=12", "anal-spines=8"]),
        ("10 spikes on top 3 on the bottom fin", ["dorsal-spines=10", "anal-spines=3"]),
        ("the anal fin is long, counted 33 rays", ["anal-soft-rays=33"]),
        ("this one has 8 stickers", ["dorsal-spines=8"]),
    ],
)
def test_counts_of_fins(kb: KnowledgeBase, text: str, told: list[str]) -> None:
    """A count goes to the fin told by its letter, by its name alone after another count, or in the clause before."""
    assert [x for x in _read(kb, text) if "=" in x] == told


def test_a_spine_is_no_anal_spine(kb: KnowledgeBase) -> None:
    """The article at the head of a line is no letter for a fin."""
    assert not any("anal" in x for x in _read(kb, "A spine broke off in my hand"))


@pytest.mark.parametrize("text", ["a fish with two heads", "fish with 3 dorsal fins", "99 dorsal spines"])
def test_what_no_fish_has_is_no_other_count(kb: KnowledgeBase, text: str) -> None:
    """Parts that are themselves counted, and spines that no fish has so many of, are no scale rows and no rays."""
    assert not [s for s in _read(kb, text) if "=" in s]


@pytest.mark.parametrize(
    ("text", "told", "never"),
    [
        ("fish with adipose fin and black spots on both tail lobes", "caudal-spots.both-lobes", "adipose-fin-marks"),
        ("white tip on tail and spots on the first dorsal fin", "tail-tip-mark.white", "caudal-spots"),
        ("forked tail and black spots on the adipose fin", "adipose-fin-marks.spots", "caudal-spots"),
    ],
)
def test_marks_behind_and_stay_on_their_part(kb: KnowledgeBase, text: str, told: str, never: str) -> None:
    """What is said to be on a part behind "and" is not told of the part before it."""
    found = _read(kb, text)
    assert told in found and not any(s.startswith(never) for s in found)


@pytest.mark.parametrize(("line", "told"), [
    ("cheek scaled all over and the gill cover too", {"cheek-scaling.fully-scaled", "opercle-scaling.fully-scaled"}),
    ("gill cover scaled all over and so is the cheek", {"cheek-scaling.fully-scaled", "opercle-scaling.fully-scaled"}),
    ("cheek scaled on the top half only, gill cover the same",
     {"cheek-scaling.partly-scaled", "opercle-scaling.upper-half"}),
    ("black blotch back of the soft dorsal n another on the anal",
     {"soft-dorsal-blotch.present", "anal-fin-blotch.present"}),
    ("dark spot at the front of the dorsal base, nother at the tail base",
     {"dorsal-base-front-spot.present", "caudal-base-spot.present"}),
    ("tail deeply forked", {"caudal-fin-shape.forked", "tail-fork-depth.deep"}),
    ("bright red body, green head", {"spawning-colour.red-body-green-head"}),
    ("green with pale bean shaped spots", {"body-colour.olive", "body-spots.light-on-dark"}),
    ("catfish from tennessee, slate blue, no spots", {"body-colour.blue-grey", "body-spots.none"}),
    ("pale spots on a dark body, worm marks? forgot to look", {"body-spots.light-on-dark"}),
    ("no teeth on the tongue, gums not looked at", {"tongue-teeth.none"}),
    ("skin bare as a catfish, not one scale", {"body-covering.scaleless"}),
    ("red spots, hit a spinner. hooked it deep", {"body-spots.red-spots"}),
])
def test_what_is_told_in_passing(kb: KnowledgeBase, line: str, told: set[str]) -> None:
    """A part that is so, too; another of the same marks; a colour of the whole fish; a part nobody looked at."""
    seen = read_line(kb, line, Held(), CLOCK).seen
    assert {s for o in seen if o.observation.seen for s in o.observation.states} == told


@pytest.mark.parametrize(("line", "told"), [
    ("Thirty-three rays in the anal fin", {"anal-soft-rays": 33}),
    ("twenty one rays in the anal fin, eleven dorsal spines", {"anal-soft-rays": 21, "dorsal-spines": 11}),
    ("D X,11, A III,9, P 12", {"dorsal-spines": 10, "dorsal-soft-rays": 11, "anal-spines": 3, "anal-soft-rays": 9,
                               "pectoral-rays": 12}),
    ("Cottus. pelvic I,3", {"pelvic-rays": 3}),
    ("Lepisosteus sp., LL 56", {"lateral-line-scales": 56}),
])
def test_counts_in_words_and_short(kb: KnowledgeBase, line: str, told: dict[str, int]) -> None:
    """Numbers in two words, and the short forms of field sheets (common practice)."""
    seen = read_line(kb, line, Held(), CLOCK).seen
    assert {o.observation.character: o.observation.value for o in seen} == told


@pytest.mark.parametrize(("line", "told"), [
    ("whiskers, white ones, on the chin", {"barbels.whiskers", "barbel-colour.white-or-pale"}),
    ("four whiskers, smooth ones", {"barbels.four", "barbel-fringe.smooth"}),
    ("round tail, black upright bar right at the base of it",
     {"caudal-fin-shape.rounded", "caudal-base-dark-bar.present"}),
    ("cheek AND gill cover scaled all over", {"cheek-scaling.fully-scaled", "opercle-scaling.fully-scaled"}),
    ("huge sail for a dorsel, addipose fin, small mouth",
     {"dorsal-fin-form.sail-like", "adipose-fin.present", "upper-jaw-reach.small-mouth"}),
    ("tounge ruff, scales ruff", {"tongue-teeth.present", "scale-type.ctenoid"}),
])
def test_what_stands_for_something_told_before(kb: KnowledgeBase, line: str, told: set[str]) -> None:
    """ "Ones", "it" and two parts with one quality; parts of fishes mistyped."""
    seen = read_line(kb, line, Held(), CLOCK).seen
    assert {s for o in seen for s in o.observation.states} == told


def test_no_less_than_is_a_bound(kb: KnowledgeBase) -> None:
    """ "No less than five anal spines" denies nothing."""
    seen = read_line(kb, "no less than five anal spines", Held(), CLOCK).seen
    assert [(o.observation.value, o.observation.at_least, o.observation.seen) for o in seen] == [(5, True, True)]
