"""Handling: the act to do now, safety of hands and health first, local rules named."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.handling import handle
from assistant.model.knowledge import KnowledgeBase
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, group, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_a_swallowed_hook_is_left_in(kb: KnowledgeBase) -> None:
    """Cut the line, do not pull, is the first thing said."""
    answer, _ = handle(turn_of(kb, "he swallowed the hook what now"))
    assert "cut the line" in answer.blocks[0].text.lower()
    assert answer.blocks[0].statements == ("caution:deep-hook-cut",)


def test_a_follow_up_changes_the_topic(kb: KnowledgeBase) -> None:
    """After a swallowed hook, bleeding is answered as such; a bare "and then" stays with the topic."""
    answer, held = handle(turn_of(kb, "he swallowed the hook"))
    after = held.after(intent="handling", last=answer)
    bleeding, _ = handle(turn_of(kb, "bleeding a lot", held=after))
    assert bleeding.blocks[0].statements == ("caution:bleeding-fish",)
    again, _ = handle(turn_of(kb, "and then", held=after))
    assert again.blocks[0].statements == answer.blocks[0].statements


def test_medical_care_comes_first(kb: KnowledgeBase) -> None:
    """A sting is answered with what needs a doctor, washing, and that a doctor decides."""
    answer, _ = handle(turn_of(kb, "stuck by a catfish spine hurts like hell", group("catfishes", "catfish")))
    ids = [s for b in answer.blocks for s in b.statements]
    assert ids[0] == "caution:aid-serious"
    assert {"caution:aid-wash", "caution:aid-hot-water", "caution:aid-disclaimer"} <= set(ids)
    assert "caution:hook-in-person" not in ids


def test_a_hook_near_the_eye_is_an_emergency(kb: KnowledgeBase) -> None:
    """A hook in a person is not pulled out by advice from a chat."""
    answer, _ = handle(turn_of(kb, "hook in his eye help"))
    assert "emergency" in text(answer) and "never pull" in text(answer)


@pytest.mark.parametrize(
    ("taxon", "must"),
    [
        ("ameiurus-nebulosus", "spines"),
        ("esox-lucius", "teeth"),
        ("lepomis-macrochirus", "spines"),
        ("amia-calva", "teeth"),
        ("sander-vitreus", "lip"),
        ("noturus-gyrinus", "venom"),
    ],
)
def test_holding_names_what_hurts(kb: KnowledgeBase, taxon: str, must: str) -> None:
    """How to hold a fish leads with what on it can hurt a hand."""
    answer, _ = handle(turn_of(kb, "how do i hold it", fish(taxon)))
    assert must in text(answer)


def test_advice_for_other_fishes_stays_out(kb: KnowledgeBase) -> None:
    """A bluegill is not answered with the teeth of pike, nor a pike with the lip grip of bass."""
    bluegill, _ = handle(turn_of(kb, "how do i hold it", fish("lepomis-macrochirus"), cues=("more",)))
    pike, _ = handle(turn_of(kb, "how do i hold it", fish("esox-lucius"), cues=("more",)))
    assert "caution:pike-mouth" not in [s for b in bluegill.blocks for s in b.statements]
    assert "caution:lip-hold-bass" not in [s for b in pike.blocks for s in b.statements]


@pytest.mark.parametrize(
    "line", ["can i eat it", "how do i kill it humanely", "can i put it in my pond", "is it safe to eat"]
)
def test_eating_killing_and_moving_defer_to_local_rules(kb: KnowledgeBase, line: str) -> None:
    """Whatever is eaten, killed or moved, the local rules or advisory are named."""
    answer, _ = handle(turn_of(kb, line, fish("perca-flavescens")))
    assert "local" in text(answer)
    assert any(b.kind == "caution" for b in answer.blocks)


def test_roe_of_gars_is_warned_of(kb: KnowledgeBase) -> None:
    """The eggs of gars are said to be poisonous, the source at hand."""
    answer, _ = handle(turn_of(kb, "are the eggs poison", fish("lepisosteus-osseus")))
    assert "poison" in answer.blocks[0].text.lower()
    record = kb.find("caution", "gar-roe")
    assert record is not None and record.basis == "read"


def test_a_snakehead_is_not_let_go(kb: KnowledgeBase) -> None:
    """What to do with a snakehead: do not release, report, and be sure it is one."""
    answer, _ = handle(turn_of(kb, "then what do i do with it", held=Held(taxa=("channa-argus",))))
    assert "do not release" in text(answer) and "report" in text(answer)


def test_a_fish_not_named_gets_general_advice(kb: KnowledgeBase) -> None:
    """Without a fish, advice for all fishes comes before advice for some, which says for whom it is."""
    answer, _ = handle(turn_of(kb, "how do i hold a fish", cues=("more",)))
    first = kb.find("caution", answer.blocks[0].statements[0].partition(":")[2])
    assert first is not None and not first.about
    for block in answer.blocks:
        record = kb.find("caution", (block.statements or ("",))[0].partition(":")[2])
        if record is not None and record.about:
            assert block.text.startswith("For ")


def test_the_hold_asked_about_leads(kb: KnowledgeBase) -> None:
    """Asked about the lip hold of a bass, that is answered before the spines."""
    answer, _ = handle(turn_of(kb, "is it ok to hold a bass by the lip", group("black-basses", "bass")))
    assert answer.blocks[0].statements == ("caution:lip-hold-bass",)


def test_a_group_of_few_biters(talk: Talk) -> None:
    """Of trout the general grip comes first, and teeth are told of for those trouts that cut, no other family."""
    told = [b.text for b in talk("how do I handle a trout")[0].blocks]
    teeth = next(t for t in told if "teeth that cut" in t)
    assert teeth.startswith("For brown trout and lake trout") and told.index(teeth) > 0
    assert any("Wet hands" in t for t in told)


@pytest.mark.parametrize("line", [
    "can I eat the eggs of a longnose gar from Vennimoor Lake",
    "is a gar caught in vennimoor lake safe to eat",
    "are gar ok to eat in Texas",
    "can I eat a gar",
    "is gar good eating",
    "recipe for gar",
    "I want to keep a gar to eat from Vennimoor Lake",
    "may I keep a longnose gar from Vennimoor Lake for dinner",
    "is it legal to eat gar eggs in Texas",
])
def test_eating_gar_begins_with_the_roe_warning(line: str, talk: Talk) -> None:
    """Whoever speaks of eating gar hears first that the eggs are poisonous, whatever water or rule is named."""
    answer, _ = talk(line)
    assert "gar eggs are poisonous" in answer.blocks[0].text.lower()


def test_eating_a_fish_of_an_invented_water_is_no_question_of_keeping(talk: Talk) -> None:
    """Whether a fish may be eaten is answered as such; the rules are told only as what to check besides."""
    answer, _ = talk("is it safe to eat a bluegill from vennimoor lake")
    assert answer.intent == "handling" and answer.verdict is None
    assert "advisory" in answer.blocks[0].text and "check the current local rules" in answer.blocks[-1].text


@pytest.mark.parametrize("line", ["catfish fin stuck in my thumb help", "stepped on a bullhead, fin stuck in my foot"])
def test_a_fin_in_a_person_is_no_hook(line: str, talk: Talk) -> None:
    """What to do about a fin that sticks in a hand or foot begins with medical care, not with hooks."""
    answer, _ = talk(line)
    assert answer.intent == "handling" and answer.blocks[0].text.startswith("Get medical care now for a spine")


@pytest.mark.parametrize(("line", "first"), [
    ("green sunfish swallowed my hook", "deep-hook-cut"),
    ("a pike swallowed my lure", "deep-hook-cut"),
    ("I hooked my hand", "hook-in-person"),
    ("treble through my thumb", "hook-in-person"),
    ("my dog swallowed a hook", "hook-in-pet"),
    ("my son swallowed a hook", "hook-swallowed"),
    ("do I need a tetanus shot after a fish hook", "aid-tetanus"),
    ("can i get sick from a fish poke", "aid-infection"),
    ("got poked by a crappie", "aid-wash"),
    ("I cut my hand on a walleye gill cover", "aid-wash"),
    ("pike teeth cut my hand", "aid-wash"),
    ("bullhead poked my finger what do i do", "aid-wash"),
    ("madtom stung me, burns like crazy", "aid-hot-water"),
    ("catfish stuck me and the spine broke off in my hand", "aid-serious"),
])
def test_the_act_that_helps_comes_first(line: str, first: str, talk: Talk) -> None:
    """A wound is answered with what to do for it; a fish that swallowed a hook is no person with one in the hand."""
    answer, _ = talk(line)
    assert answer.intent == "handling" and answer.blocks[0].statements == (f"caution:{first}",)


def test_what_needs_a_doctor_follows_every_wound(talk: Talk) -> None:
    """Behind what to do it is said when to see a doctor, and that a doctor decides."""
    for line in ("got poked by a crappie", "madtom stung me, burns like crazy", "bullhead poked my finger"):
        told = [s for b in talk(line)[0].blocks for s in b.statements]
        assert {"caution:aid-serious", "caution:aid-disclaimer"} <= set(told)


def test_a_wound_stays_the_topic(talk: Talk) -> None:
    """ "Its deep" after a hook in a finger speaks of the wound, not of deep water."""
    answer, _ = talk("fish hook in my finger", "its deep")
    assert answer.blocks[0].statements[0] in ("caution:aid-serious", "caution:hook-in-person")
    figures, _ = talk("green sunfish swallowed my hook", "will it die")
    assert figures.blocks[0].statements == ("caution:deep-hook-figures",)


@pytest.mark.parametrize(("line", "first"), [
    ("Which fish can hurt me?", "which-hurt"),
    ("are sunfish spines poisonous", "spines-no-venom"),
    ("is a bluegill sting dangerous", "spines-no-venom"),
    ("is a madtom sting dangerous", "madtom-venom"),
    ("is a bullhead venomous", "bullhead-venom"),
    ("are channel catfish venomous", "bullhead-venom"),
    ("is a flathead catfish venomous", "flathead-venom"),
    ("do bass bite people", "bites-little"),
    ("do pike bite people", "touch-toothy"),
])
def test_whether_a_fish_can_hurt_is_no_wound(line: str, first: str, talk: Talk) -> None:
    """Asked what a fish can do to people, the answer says it, with no first aid for a wound that nobody has."""
    answer, _ = talk(line)
    assert answer.intent == "handling" and answer.blocks[0].statements == (f"caution:{first}",)


@pytest.mark.parametrize(("line", "first"), [
    ("Can I eat crappie raw?", "eat-raw"),
    ("how often can i eat walleye", "eat-advisory"),
    ("is bluegill safe for kids to eat", "eat-sensitive"),
    ("Is mercury bad in walleye?", "eat-mercury-ranking"),
    ("how thick ice for a truck", "ice-drive"),
    ("how thick should ice be to walk on", "ice-thickness"),
    ("Caught a bass and its belly is bloated", "deep-water-decide"),
    ("why is my perch's stomach coming out of its mouth", "deep-water-decide"),
    ("should i poke the swim bladder of a perch", "fizzing"),
    ("Is it too hot to catch and release trout?", "heat-trout-watch"),
    ("what water temp should I stop trout fishing", "heat-trout-watch"),
    ("can I catch and release muskie in summer", "heat-muskie"),
    ("what do i do with a round goby i caught", "invasive-report"),
    ("how do i release a snakehead", "snakehead-do-not-release"),
    ("How do I release a fish so it lives?", "release-basic"),
    ("is it ok to drop a fish back in the water", "release-basic"),
    ("how do you take a hook out of a sunfish without hurting it", "unhook-basic"),
    ("how do i keep a hook from going too deep", "strike-early"),
    ("how do you prevent gut hooking", "strike-early"),
    ("can i let go a sauger caught in 50 feet", "deep-water-decide"),
    ("is it ok to release trout when it is hot", "heat-trout-watch"),
    ("will a bluegill live if i leave the hook in", "deep-hook-figures"),
    ("do rubber nets hurt fish less", "net-choice"),
    ("do circle hooks work better for release", "release-hooks"),
])
def test_what_is_asked_leads(line: str, first: str, talk: Talk) -> None:
    """The caution that answers the question is told first; whether to fish or release at all comes before how."""
    answer, _ = talk(line)
    assert answer.intent == "handling" and answer.blocks[0].statements == (f"caution:{first}",)


def test_warm_water_stays_the_topic_for_the_next_fish(talk: Talk) -> None:
    """ "What about bass" after a water temperature speaks of warm water, not of how a bass is held."""
    answer, _ = talk("water is 72 degrees can i fish for trout", "what about bass")
    assert answer.blocks[0].statements == ("caution:heat-any",)


@pytest.mark.parametrize("line", [
    "hook is deep in the fishes throat",
    "can I release fish caught in deep water",
    "how deep should I fish for crappie",
])
def test_the_depth_of_a_hook_or_of_water_is_no_shape_of_a_fish(line: str, talk: Talk) -> None:
    """ "Deep" told of a hook or of water is not read as a deep body, and no fish is named from it."""
    assert not set(talk(line)[0].taxa) & {"lepomis-macrochirus"}


def test_pets_are_for_a_vet(talk: Talk) -> None:
    """A fish kept at home that ails is out of scope, and it is said who can help."""
    answer, _ = talk("my goldfish is sick")
    assert answer.intent == "out-of-scope" and "vet" in answer.blocks[0].text


def test_a_piece_left_in_a_wound_is_for_a_doctor(talk: Talk) -> None:
    """What goes on after a sting is care for the hurt one, whatever else the words may mean."""
    for line in ("piece of the spine is still in there i think", "its getting red and puffy"):
        answer, _ = talk("got finned by a bullhead, thumbs throbbing", line)
        assert answer.intent == "handling"
        assert "medical care" in answer.blocks[0].text or "doctor" in answer.blocks[0].text


def test_specks_in_the_flesh(talk: Talk) -> None:
    """White specks in a fillet: grubs, cut out, cooked through; the cat is no catfish."""
    answer, _ = talk("perch fillet full of little white specks, fry em or feed the cat")
    assert answer.intent == "handling" and answer.taxa[0] == "perca-flavescens"
    assert "grubs" in answer.blocks[0].text and "cook" in answer.blocks[0].text


@pytest.mark.parametrize(
    ("line", "first"),
    [
        ("I ate gar eggs and I am vomiting", "ate-gar-eggs"),
        ("my child ate gar eggs", "ate-gar-eggs"),
        ("my dog ate gar eggs", "ate-gar-eggs"),
        ("i feel sick after eating trout", "ill-after-eating"),
        ("my dog ate raw salmon", "pet-raw-salmon"),
        ("my cat ate some fish guts", "pet-ate-fish"),
        ("fish bone stuck in throat", "hook-swallowed"),
        ("a catfish spine went into my foot and I feel dizzy", "aid-shock"),
    ],
)
def test_who_is_unwell_hears_whom_to_call(talk: Talk, line: str, first: str) -> None:
    """Harm to a person or a pet is answered first of all with whom to call, and with nothing about fishing."""
    answer, _ = talk(line)
    assert answer.blocks[0].statements == (f"caution:{first}",)
    assert any(w in answer.blocks[0].text for w in ("poison control", "vet", "doctor", "emergency"))
    assert all("hook in" not in b.text.lower() for b in answer.blocks)


def test_pain_is_answered_after_marks_were_told(talk: Talk) -> None:
    """First aid stands before a name where marks come with the wound, and answers who is still in pain."""
    lines = ("yellow fish with whiskers, slimy, spine stung my hand", "yellowish with white chin barbels")
    answer, _ = talk(lines[0])
    assert answer.intent == "identify" and answer.blocks[0].statements[0].startswith("caution:aid-")
    pain, _ = talk(*lines, "my hand hurts badly")
    assert pain.blocks[0].statements[0].startswith("caution:aid-")
    assert "lock upright" not in text(pain)


def test_a_hook_in_the_throat_is_never_backed_out(talk: Talk) -> None:
    """The cut line leads wherever a hook sits in the throat."""
    for line in ("how do I get a hook out of a pike's throat", "hook in the throat of a walleye, how to remove it"):
        assert talk(line)[0].blocks[0].statements == ("caution:deep-hook-cut",)


@pytest.mark.parametrize("kind", ["snakehead", "bighead carp"])
def test_how_to_let_go_is_not_told_of_unwanted_fish(talk: Talk, kind: str) -> None:
    """What must not be let go is not followed by the steps of letting go."""
    answer, _ = talk(kind, "how do I release it")
    assert "caution:release-basic" not in [s for b in answer.blocks for s in b.statements]
    assert answer.blocks[0].statements[0] in ("caution:snakehead-do-not-release", "caution:invasive-report")


def test_a_pet_fish_is_not_let_loose(talk: Talk) -> None:
    """Letting a goldfish go is answered with no."""
    answer, _ = talk("can I release my goldfish in the lake")
    assert answer.blocks[0].text.startswith("No") and "caution:release-pet" in answer.blocks[0].statements


@pytest.mark.parametrize(
    "line",
    [
        "bullhead spike went in my thumb. what do i do",
        "got a catfish barb thru my finger",
        "i got spiked by a bullhead",
        "pout sting on my thumb how do i treat it",
        "the horn of the bullhead is stuck in my hand",
        "mudcat stinger got me in the thumb",
        "channel cat horned me, what now",
        "stepped on a catfish and its sticker went in my foot",
        "what happens if a bullhead sticks me in the hand",
    ],
)
def test_a_spine_in_somebody_is_met_with_first_aid(talk: Talk, line: str) -> None:
    """However a spine and what it did are called: washing, hot water and when to see a doctor, nothing on teeth."""
    answer, _ = talk(line)
    ids = [s for b in answer.blocks for s in b.statements]
    assert answer.intent == "handling"
    assert {"caution:aid-wash", "caution:aid-hot-water", "caution:aid-disclaimer"} <= set(ids)
    assert "caution:bites-catfish" not in ids


def test_what_a_fish_could_do_is_no_wound(talk: Talk) -> None:
    """Whether a thumb may be put in its mouth, and whether its spines hurt, asks of the fish first."""
    for line in ("can i stick my thumb in a catfish's mouth", "do bullhead spines hurt"):
        answer, _ = talk(line)
        assert answer.intent == "handling"
        assert not answer.blocks[0].statements[0].startswith("caution:aid-")
