"""The core handlers: contrast, describe, identify, next question, why, sources, undo, and the way out."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.render.plain import render_plain
from tests.dialogue.conftest import Talk

EVIDENCE = "sunfish, black ear, dark smudge at the back of the top fin, side fins reach past the eye"


def text(answer: Answer) -> str:
    """The answer in small letters."""
    return render_plain(answer).lower()


def test_a_contrast_leads_with_the_deciding_feature_and_tells_of_hybrids(talk: Talk) -> None:
    """Pumpkinseed and redear: ear flap and head lines first, hybrids told, no colour of the belly in the lead."""
    answer, _ = talk("How do I tell a pumpkinseed from a redear sunfish?")
    first = [b.text.lower() for b in answer.blocks[:3]]
    assert answer.taxa == ("lepomis-gibbosus", "lepomis-microlophus")
    assert any("lines on the head" in t for t in first)
    assert any("ear flap" in t for t in first)
    assert "belly" not in first[0]
    assert "hybrid" in text(answer)
    assert "pectoral" in text(answer)


def test_a_contrast_asked_quickly_is_short(talk: Talk) -> None:
    """ "quick" gives the lead and little more."""
    long, _ = talk("largemouth vs smallmouth")
    short, _ = talk("largemouth vs smallmouth, quick")
    assert len(short.blocks) < len(long.blocks)


def test_more_gives_the_differences_left_out(talk: Talk) -> None:
    """ "more" shows what the first answer held back, and nothing of what it told."""
    first, held = talk("pumpkinseed vs redear")
    more, _ = talk("more", held=held)
    told = {s for b in first.blocks for s in b.statements}
    assert more.blocks and all(not set(b.statements) <= told for b in more.blocks)
    assert more.taxa == first.taxa


def test_a_contrast_of_one_fish_offers_its_look_alikes(talk: Talk) -> None:
    """With one fish named, the usual confusion is told."""
    answer, _ = talk("how do I tell a flier apart")
    assert answer.taxa[0] == "centrarchus-macropterus"
    assert len(answer.taxa) == 2


def test_colour_can_be_left_out(talk: Talk) -> None:
    """ "drop the colour ones" keeps the fish and drops colour."""
    answer, _ = talk("pomoxis annularis vs pomoxis nigromaculatus", "drop the colour ones")
    assert answer.intent == "contrast"
    assert "colour of" not in text(answer)


def test_a_description_names_size_range_and_look_alike(talk: Talk) -> None:
    """Shape, features, length in both systems, range in short, the fish to watch."""
    answer, _ = talk("tell me about the flier")
    assert "centrarchus macropterus" in text(answer)
    assert "5 to 7 in (12.7 to 17.8 cm)" in text(answer)
    assert "native to" in text(answer)
    assert "most easily taken for" in text(answer)


def test_a_part_is_told_of_the_fish_spoken_of(talk: Talk) -> None:
    """ "its mouth?" speaks of the fish before."""
    answer, _ = talk("Describe the redbreast", "its mouth?")
    assert answer.taxa == ("lepomis-auritus",)
    assert "jaw" in text(answer)


def test_a_yes_or_no_question_gets_yes_or_no_first(talk: Talk) -> None:
    """The first word answers."""
    assert text(talk("does a bluegill have teeth on its tongue")[0]).startswith("no")


def test_nothing_held_asks_which_fish(talk: Talk) -> None:
    """A part without a fish is asked back."""
    answer, _ = talk("what about its fins")
    assert answer.asked is not None
    assert "which" in text(answer)


def test_an_identification_gives_grounds_and_the_next_question(talk: Talk) -> None:
    """Candidates rest on statements; the question is about something not yet seen."""
    answer, held = talk(EVIDENCE)
    assert answer.candidates[0].taxon == "lepomis-macrochirus"
    assert answer.candidates[0].supports
    answer, held = talk("sunfish with a black ear")
    seen = {s.observation.character for s in held.seen}
    assert answer.asked is not None and answer.asked.character and answer.asked.character not in seen


def test_a_skipped_question_never_comes_back(talk: Talk) -> None:
    """Whatever is passed over is not asked again in the conversation."""
    answer, held = talk("sunfish with an orange belly")
    asked = []
    for _ in range(6):
        if answer.asked is None:
            break
        asked.append(answer.asked.character)
        answer, held = talk("skip", held=held)
    assert len(asked) == len(set(asked)) > 1


def test_questions_asked_back_can_be_seen_on_a_live_fish(talk: Talk, kb: object) -> None:
    """No gill rakers or throat teeth while the fish lives."""
    answer, held = talk("what fish is it")
    for _ in range(8):
        if answer.asked is None:
            break
        assert held.asked is not None
        answer, held = talk("not sure", held=held)
        character = answer.asked.character if answer.asked else ""
        assert character not in ("gill-rakers", "pharyngeal-teeth", "pyloric-caeca")


def test_why_not_names_what_speaks_against(talk: Talk) -> None:
    """ "why not a pumpkinseed" tells the difference in what was seen."""
    answer, _ = talk(EVIDENCE, "why not a pumpkinseed")
    assert answer.intent == "why"
    assert "lepomis-gibbosus" in answer.taxa
    assert "ear flap" in text(answer)


@pytest.mark.parametrize("line", ["how sure are you", "percent?"])
def test_how_sure_gives_a_share(line: str, talk: Talk) -> None:
    """A percentage for the leading fish and for what else it could be."""
    assert "%" in text(talk(EVIDENCE, line)[0])


def test_sources_name_work_basis_and_use(talk: Talk) -> None:
    """Each source says whether it was read, and what it was used for."""
    answer, _ = talk("bluegill vs redear", "says who")
    lines = [b for b in answer.blocks if b.kind == "sources"]
    assert lines
    assert all(b.statements for b in lines)
    assert all("[" in b.text for b in lines)


def test_sources_of_one_feature(talk: Talk) -> None:
    """A fish and a feature give the sources of that feature."""
    answer, _ = talk("which source backs the warmouth tongue-teeth state, page?")
    assert any("tongue" in b.text for b in answer.blocks)


def test_nothing_said_has_the_sources_of_the_base(talk: Talk) -> None:
    """Asked at the start, the answer counts the sources of the base."""
    assert "sources" in text(talk("what books do you use")[0])


def test_undo_leads_back_and_start_over_clears(talk: Talk) -> None:
    """Undo restores the turn before; start over forgets fish and marks, and keeps the place."""
    _, one = talk("sunfish, black ear, ohio")
    _, two = talk("side fins reach past the eye", held=one)
    assert len(two.seen) > len(one.seen)
    _, back = talk("undo", held=two)
    assert back.seen == one.seen
    _, fresh = talk("start over", held=two)
    assert not fresh.seen
    assert not fresh.taxa
    assert fresh.places == two.places


def test_nothing_to_take_back_is_said(talk: Talk) -> None:
    """Undo at the start is no error."""
    assert "nothing to take back" in text(talk("undo")[0])


def test_outside_says_what_it_can_do(talk: Talk) -> None:
    """Off-topic lines get a way on and no invented fact."""
    for line in ("when is high tide at ocean city", "zzzz", "write my essay on napoleon"):
        answer, _ = talk(line)
        assert answer.intent == "out-of-scope"
        assert "fish" in text(answer)


def test_a_strange_word_asked_about_is_said_to_be_strange(talk: Talk) -> None:
    """A word that the base does not hold is named; a mash of letters is not said again."""
    assert '"sunpike"' in talk("what is a sunpike")[0].blocks[0].text
    assert "zzzz" not in talk("what is a " + "z" * 60)[0].blocks[0].text


def test_a_doctor_is_left_to_doctors(talk: Talk) -> None:
    """Medical questions are not answered."""
    assert "doctor" in text(talk("my doctor says i cant eat fish on blood thinners, is perch ok")[0])


def test_small_talk_is_one_line(talk: Talk) -> None:
    """Thanks and greetings get one friendly line and forget nothing."""
    _, held = talk("tell me about the flier")
    answer, after = talk("thanks", held=held)
    assert len(answer.blocks) == 1
    assert after.taxa == held.taxa


def test_what_is_held_can_be_asked(talk: Talk) -> None:
    """ "which fish did we talk about" names it; at the start there is none."""
    assert "flier" in text(talk("tell me about the flier", "which fish did we talk about")[0])
    assert "nothing" in text(talk("which fish did we talk about")[0])


def test_a_fish_where_it_is_not_expected_is_doubted(talk: Talk) -> None:
    """A guess out of range is told as such, with what to check instead."""
    answer, _ = talk("is this a longear? long ear, white edge. caught in maine")
    assert "not expected in maine" in text(answer)


def test_a_fish_longer_than_its_kind_grows_is_doubted(talk: Talk) -> None:
    """A two-foot bluegill is told to be measured again."""
    answer, _ = talk("bluegill, black ear, 24 inches. which fish is it")
    assert "longer than the largest" in text(answer)


def test_empty_text_is_helped(talk: Talk) -> None:
    """Nothing typed gets an example."""
    answer, _ = talk("   ", held=Held())
    assert answer.intent == "help"
