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
