"""Lists: fishes of a group, with a feature, in a place; gaps of the base for those who keep it."""

from __future__ import annotations

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.handlers.list_fishes import handle
from assistant.dialogue.reader.reading import Mention
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import distribution
from assistant.reasoning.size import size_range
from tests.dialogue.conftest import Talk
from tests.helpers.turns import fish, group, length, seen, turn_of


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_catfishes_with_a_forked_tail(kb: KnowledgeBase) -> None:
    """Channel, blue and white catfish, and no bullhead."""
    answer, _ = handle(
        turn_of(
            kb,
            "which catfishes have a forked tail",
            group("catfishes", "catfishes"),
            observed=(seen("caudal-fin-shape", "forked"),),
        )
    )
    kinds = {"ictalurus-punctatus", "ictalurus-furcatus", "ameiurus-catus"}
    assert set(answer.taxa) == kinds | {"ictaluridae"} and answer.taxa[-1] == "ictaluridae"
    for taxon in kinds:
        found = distribution(kb, taxon, "caudal-fin-shape")
        assert found is not None and found.share(("caudal-fin-shape.forked",)) >= 0.5


def test_fishes_of_a_place_with_status(kb: KnowledgeBase) -> None:
    """Sunfishes of Ohio, with the introduced ones told apart."""
    answer, _ = handle(
        turn_of(kb, "which sunfishes live in ohio", group("true-sunfishes", "sunfishes"), places=("us-oh",))
    )
    assert "lepomis-macrochirus" in answer.taxa and "lepomis-symmetricus" not in answer.taxa
    assert "introduced" in text(answer) and all(s.startswith("range:") for s in answer.blocks[1].statements)


def test_counts_are_compared(kb: KnowledgeBase) -> None:
    """At least eleven dorsal spines and five anal spines: rock basses, no black bass."""
    wanted = (seen("dorsal-spines", value=11, at_least=True), seen("anal-spines", value=5, at_least=True))
    answer, _ = handle(turn_of(kb, "more than ten dorsal and four anal spines", observed=wanted))
    assert "ambloplites-rupestris" in answer.taxa and "micropterus-nigricans" not in answer.taxa


def test_narrowing_the_last_list(kb: KnowledgeBase) -> None:
    """ "Only the whiskered ones" filters what was listed before."""
    held = Held(shown=("ictalurus-punctatus", "oncorhynchus-mykiss"), intent="list")
    answer, _ = handle(turn_of(kb, "only the whiskered ones", held=held, observed=(seen("barbels", "eight"),)))
    assert answer.taxa == ("ictalurus-punctatus",)


def test_members_of_a_group(kb: KnowledgeBase) -> None:
    """Which of four trouts is a char."""
    names = ("salvelinus-fontinalis", "salmo-trutta", "oncorhynchus-mykiss", "salvelinus-namaycush")
    answer, _ = handle(turn_of(kb, "which of these is a char", group("chars", "char"), *(fish(n) for n in names)))
    assert answer.taxa == ("salvelinus-fontinalis", "salvelinus-namaycush")
    assert "rainbow trout" in answer.blocks[1].text


def test_nothing_fits_is_said(kb: KnowledgeBase) -> None:
    """An empty list is said to be empty."""
    answer, _ = handle(
        turn_of(
            kb,
            "catfishes with 20 dorsal spines",
            group("catfishes", "catfishes"),
            observed=(seen("dorsal-spines", value=20),),
        )
    )
    assert answer.blocks[0].text.startswith("None")


def test_gaps_for_curators(kb: KnowledgeBase) -> None:
    """Coverage of a genus, numbers only, taxa without a value, numbers without a unit."""
    coverage, held = handle(turn_of(kb, "show coverage for pomoxis", fish("pomoxis", words="Pomoxis")))
    assert "white crappie" in text(coverage) and "gaps" in text(coverage)
    numeric, _ = handle(
        turn_of(kb, "just the numeric ones", held=held.after(taxa=("pomoxis",), intent="list", last=coverage))
    )
    assert "counts, ratios and lengths" in text(numeric)
    without, _ = handle(
        turn_of(
            kb, "taxa with no value for gill rakers", Mention("character", ("gill-raker-form",), "gill rakers", 0, 1)
        )
    )
    assert "no value" in text(without)
    units, _ = handle(turn_of(kb, "statements lacking a unit where kind length"))
    assert "unit" in text(units)


def test_what_to_watch_for(kb: KnowledgeBase) -> None:
    """Unwanted newcomers: those with a warning of law, and to report first."""
    answer, _ = handle(turn_of(kb, "invasive fish i should watch for"))
    assert {"channa-argus", "neogobius-melanostomus", "hypophthalmichthys-molitrix"} <= set(answer.taxa)
    assert "report" in text(answer)


def test_how_many_are_held(kb: KnowledgeBase) -> None:
    """The base counts itself."""
    answer, _ = handle(turn_of(kb, "how many fish do you know"))
    crosses = sum(kb.taxon(t).is_hybrid for t in kb.species)
    assert f"{len(kb.species) - crosses} species and {crosses} hybrids" in answer.blocks[0].text


def test_kinds_that_grow_longer_than_a_length(kb: KnowledgeBase) -> None:
    """Sunfishes that get bigger than 10 inches: those whose largest known is longer, no other."""
    measure = length("10 inches", "10")
    turn = turn_of(
        kb, "what sunfish get bigger than 10 inches", group("true-sunfishes", "sunfish"), measures=(measure,)
    )
    answer, _ = handle(turn)
    kinds = [t for t in answer.taxa if kb.taxon(t).is_species]
    assert "lepomis-macrochirus" in kinds and "lepomis-symmetricus" not in kinds
    assert all((size_range(kb, t).largest or 0) > 254 for t in kinds)


def test_gaps_of_range_and_memory(kb: KnowledgeBase) -> None:
    """Which taxa have no range in a place, and how much rests on memory."""
    without, _ = handle(turn_of(kb, "which taxa have no range in ontario", places=("ca-on",)))
    assert "No range statement for Ontario" in without.blocks[0].text
    memory, _ = handle(turn_of(kb, "statements from memory", fish("pomoxis", words="Pomoxis")))
    counted = sum(s.basis == "memory" for s in kb.statements("pomoxis-annularis"))
    assert f"White crappie: {counted} of" in " ".join(b.text for b in memory.blocks)


def test_a_char_among_trouts_told_by_first_words(kb: KnowledgeBase) -> None:
    """ "Brook, brown, rainbow, lake" are the trouts of that family."""
    answer, _ = handle(
        turn_of(kb, "which of these is a char brook brown rainbow lake", group("chars", "char"), cues=("which-of",))
    )
    assert answer.taxa == ("salvelinus-fontinalis", "salvelinus-namaycush")


def test_a_list_is_told_again_without_a_fish(talk: Talk) -> None:
    """"Without the bluegill" is the list before less that fish."""
    before, _ = talk("which panfish live in New England")
    after, _ = talk("which panfish live in New England", "without the bluegill, please")
    assert "lepomis-macrochirus" in before.taxa and "lepomis-macrochirus" not in after.taxa
    assert len(after.taxa) >= 5


def test_families_listed_whole_in_a_place_are_named(talk: Talk) -> None:
    """Where every catfish of a place is in a list, its family is."""
    answer, _ = talk("which Indiana fishes have no scales")
    assert "ictaluridae" in answer.taxa and any("every kind held there" in b.text for b in answer.blocks)


def test_another_state_of_the_same_feature_is_asked_of_all(talk: Talk) -> None:
    """ "And with four?" after the fishes with one barbel looks through all fishes, not those of the list before."""
    answer, _ = talk("what fish have one chin barbel", "with four, then?")
    assert answer.intent == "list" and "cyprinus-carpio" in answer.taxa and "lota-lota" not in answer.taxa
    answer, _ = talk("which sunfish have a long ear flap", "and with a short one?")
    assert "lepomis-gibbosus" in answer.taxa and "lepomis-auritus" not in answer.taxa


def test_what_is_so_only_at_times_is_no_flat_no(talk: Talk) -> None:
    """Where a count is usual in no kind but occurs in some, those are told."""
    answer, _ = talk("which fish have 11 dorsal spines in ontario")
    assert "ambloplites-rupestris" in answer.taxa and "i hold no" not in text(answer)

def test_a_question_of_all_fishes_forgets_the_group(talk: Talk) -> None:
    """"Which fishes have barbels in Ohio" is answered from all kinds after a list of sunfishes, and so is the next."""
    fresh, _ = talk("which fishes have barbels in Ohio")
    after, _ = talk("list the sunfishes", "which fishes have barbels in Ohio")
    assert after.blocks[0].text == fresh.blocks[0].text
    alone, _ = talk("what fishes live in Ohio")
    last, _ = talk("list the sunfishes", "which fishes have barbels in Ohio", "what fishes live in Ohio")
    assert last.blocks[0].text == alone.blocks[0].text


def test_a_carried_list_is_named_and_whole(talk: Talk) -> None:
    """What narrows the list before says so, and finds those of it that were too many to show."""
    narrowed, _ = talk("list the catfishes", "which have a forked tail")
    assert "of the last list" in narrowed.blocks[0].text
    whole, _ = talk("what fishes live in Ohio", "which of those have barbels")
    fresh, _ = talk("which fishes have barbels in Ohio")
    assert set(fresh.taxa) <= set(whole.taxa)



def test_fishes_at_risk_of_a_place_are_those_told_of_it(talk: Talk) -> None:
    """A standing told of another state does not count, and no fish without one is listed."""
    answer, _ = talk("which fishes are endangered in ontario")
    assert answer.taxa[:1] == ("lepomis-gulosus",) and "only 1 fish" in text(answer)
    answer, _ = talk("which fishes are endangered in ohio")
    assert "none that the base tells of" in text(answer) and "current list" in text(answer)


def test_the_same_of_other_fishes(talk: Talk) -> None:
    """ "And pike?" after the fishes with a feature asks whether pike have it, and lists no pike as if they did."""
    first = "Which Ontario fish have an adipose fin?"
    for other, taxon in (("and walleye?", "sander-vitreus"), ("and pike?", "esox-lucius"), ("what about bowfin", "")):
        answer, _ = talk(first, other)
        assert answer.intent == "list" and answer.blocks[0].text.startswith("No: ")
        assert not taxon or answer.taxa[0] == taxon
    answer, _ = talk(first, "and catfish?")
    assert "catfishes with an adipose fin in Ontario" in answer.blocks[0].text


def test_the_same_of_a_place(talk: Talk) -> None:
    """ "And bluegill?" after the fishes of a place asks whether it lives there."""
    answer, _ = talk("Which sunfishes live in Ohio", "and bluegill?")
    assert answer.blocks[0].text.startswith("Yes: the bluegill is native to Ohio")


def test_food_beside_a_place(talk: Talk) -> None:
    """Fishes asked for by what they eat in a place are not all fishes of the place."""
    answer, _ = talk("which fish eat snails in ohio")
    assert "lepomis-microlophus" in answer.taxa and "esox-lucius" not in answer.taxa


def test_the_same_feature_in_another_place(talk: Talk) -> None:
    """ "And in Michigan?" asks for all fishes with the feature there, not for one family of those listed before."""
    answer, _ = talk("Which fish have barbels in Ohio?", "and in Michigan?")
    assert "with barbels round the mouth in Michigan" in answer.blocks[0].text and "lota-lota" in answer.taxa


def test_fishes_of_a_state_without_a_word_on_the_water_are_named(talk: Talk) -> None:
    """A list by kind of water says who else of the group lives in the state, of whom no such water is told."""
    answer, _ = talk("Which sunfishes could my class expect in Massachusetts ponds?")
    told = next(b for b in answer.blocks if "says nothing on such water" in b.text)
    assert "redbreast sunfish" in told.text and "banded sunfish" in told.text and told.statements
    assert {"lepomis-auritus", "enneacanthus-obesus"} <= set(answer.taxa)
    minnows, _ = talk("which minnows are in vermont ponds")
    assert any("creek chub" in b.text for b in minnows.blocks[1:])
    every, _ = talk("what lives in ohio ponds")
    assert not any("says nothing on such water" in b.text for b in every.blocks)
