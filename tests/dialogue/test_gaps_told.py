"""Gaps of the base are told at the prompt: what is missing, what rests on memory, where sources differ."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Statement
from tests.dialogue.conftest import Talk


def text(answer: Answer) -> str:
    """The answer as one lower-case string."""
    return " ".join(b.text for b in answer.blocks).lower()


def test_few_statements(talk: Talk, kb: KnowledgeBase) -> None:
    """Taxa with fewer statements than a number are told with their counts, fewest first."""
    answer, _ = talk("taxa with fewer than 12 statements")
    species = [t for t in kb.species if not kb.taxon(t).is_hybrid and len(kb.statements(t)) < 12]
    assert answer.intent == "list" and species and f"{len(species)} taxa" in text(answer)
    assert set(answer.taxa) <= set(species)


def test_sources_that_differ(talk: Talk, kb: KnowledgeBase) -> None:
    """Every value of a feature on which sources differ is told; none is dropped."""
    answer, _ = talk("where do the sources disagree on warmouth")
    assert answer.intent == "list" and answer.taxa == ("lepomis-gulosus",)
    for block in answer.blocks[1:]:
        assert len(block.statements) > 1
        assert len({kb.record_at(s).character for s in block.statements}) == 1  # type: ignore[union-attr]


@pytest.mark.parametrize("line", ["characters with no statement yet for Acantharchus", "empty cells for mud sunfish"])
def test_what_is_missing(line: str, talk: Talk) -> None:
    """The features that are not stated of a fish are named."""
    answer, _ = talk(line)
    assert answer.intent == "list" and "gaps:" in text(answer) and "acantharchus-pomotis" in answer.taxa


def test_the_same_of_another_fish(talk: Talk) -> None:
    """ "Same for marginatus" asks for the gaps of that fish."""
    answer, _ = talk("what is missing for Lepomis symmetricus", "same for marginatus")
    assert "gaps:" in text(answer) and "lepomis-marginatus" in answer.taxa


def test_without_a_statement(talk: Talk, kb: KnowledgeBase) -> None:
    """The taxa without a value of a character are counted, inherited values aside."""
    answer, _ = talk("taxa without a max-total-length statement")
    assert answer.intent == "list" and "greatest total length" in text(answer)


@pytest.mark.parametrize(("lines", "taxon", "weak"), [
    (("show everything held on Lepomis peltastes", "only those on memory"), "lepomis-peltastes", "memory"),
    (("statements on the burbot with only one source",), "lota-lota", "single source"),
])
def test_what_rests_on_little(lines: tuple[str, ...], taxon: str, weak: str, talk: Talk, kb: KnowledgeBase) -> None:
    """How many statements of a fish rest on memory or on one source, and on which characters they are."""
    answer, _ = talk(*lines)
    own = kb.statements(taxon)
    alone = {c: {x for s in own if s.character == c for x in s.source} for c in {s.character for s in own}}
    few = [s for s in own if (s.basis == "memory" if weak == "memory" else len(alone[s.character]) == 1)]
    assert answer.taxa == (taxon,)
    assert f"{len(few)} of {len(own)} statements" in text(answer) and weak in text(answer)
    assert kb.character(sorted(few)[0].character).label.lower() in text(answer)


def test_who_is_cited_for_one_feature(talk: Talk, kb: KnowledgeBase) -> None:
    """After other talk of a fish the sources of one of its features are those of that feature alone."""
    answer, _ = talk("tell me about the northern sunfish", "and who is cited for the flap angle?")
    cited = {kb.record_at(s).character for b in answer.blocks for s in b.statements}  # type: ignore[union-attr]
    assert cited == {"opercular-flap-angle"}


@pytest.mark.parametrize(("lines", "start"), [
    (("what don't you have on the flier",), "Flier: "),
    (("what's not held for the rock bass",), "Rock bass: "),
    (("how complete is Lepomis", "and Pomoxis?"), "White crappie: "),
    (("show conflicts for the green sunfish",), "8 features on which"),
    (("which sources disagree about pumpkinseed max length",), "None on greatest total length of the pumpkinseed: "),
    (("which sources disagree about pumpkinseed max length", "and for bluegill?"), "1 feature on which"),
    (("how many statements are from memory",), "All kinds together"),
    (("which statements on the bluegill are from memory",), "Bluegill: "),
    (("how many sources back the bluegill", "how many are from memory"), "Bluegill: "),
    (("what statements have no source",), "None: each of the"),
    (("which species has the most statements",), "The bluegill has the most statements"),
    (("which fish do you know the least about",), "The "),
    (("how many species do you cover",), "The base holds"),
])
def test_asked_by_a_curator(lines: tuple[str, ...], start: str, talk: Talk) -> None:
    """What is missing, what conflicts, what rests on memory, of which kinds most is told: in many wordings."""
    answer, _ = talk(*lines)
    assert answer.intent == "list" and answer.blocks[0].text.startswith(start)


def test_no_conflict_where_the_values_are_the_same(talk: Talk, kb: KnowledgeBase) -> None:
    """Statements that differ only in whom they speak of, or how often it holds, are no conflict."""
    answer, _ = talk("where do the sources conflict for the green sunfish")
    for block in answer.blocks[1:]:
        found = [s for i in block.statements if isinstance(s := kb.record_at(i), Statement)]
        assert len({(s.states, s.low, s.high, s.usual_low, s.usual_high, s.mean, s.text) for s in found}) > 1


@pytest.mark.parametrize(("lines", "count", "first"), [
    (("how many sources back the bluegill",), 27, ""),
    (("what page says bluegill reach 16 inches",), 2, "Greatest total length: 16.1 in"),
    (("show the statement for flier anal spines with its source",), 2, "Anal spines: 7 to 9"),
])
def test_sources_of_what_is_asked(lines: tuple[str, ...], count: int, first: str, talk: Talk) -> None:
    """The sources of a fish, of one figure, of one feature, with what each says."""
    answer, _ = talk(*lines)
    assert answer.intent == "sources" and answer.blocks[0].text.startswith(f"{count} sources")
    assert answer.blocks[1].text.startswith(first)


@pytest.mark.parametrize("line", [
    "list taxa where two sources disagree on dorsal spine counts", "any species with conflicting dorsal spine counts",
    "dorsal spines: which taxa have more than one value by different authors",
])
def test_of_which_kinds_sources_disagree(line: str, talk: Talk, kb: KnowledgeBase) -> None:
    """Without a fish the whole base is looked through, each value told with its source."""
    answer, _ = talk("tell me about the flier", line)
    assert answer.intent == "list" and "dorsal spines" in answer.blocks[0].text and len(answer.blocks) > 2
    for block in answer.blocks[1:3]:
        assert len({kb.record_at(s).source for s in block.statements}) > 1  # type: ignore[union-attr]


@pytest.mark.parametrize(("line", "label", "place"), [
    ("taxa where eye-colour is still blank", "colour of the eye", ""),
    ("which Ohio fishes have no eye colour recorded", "colour of the eye", "ohio"),
    ("taxa with no mandibular-pores value", "pores under one lower jaw", ""),
    ("list the catfishes with an empty barbel colour cell", "colour of the chin barbels", "catfish"),
    ("unscored taxa for cheek scaling", "scales on the cheek", ""),
    ("taxa of Minnesota with no scale type", "feel of the scales", "minnesota"),
])
def test_the_kinds_without_a_value(line: str, label: str, place: str, talk: Talk) -> None:
    """The taxa of a group or place without a value of the character named are told, by its own name or its id."""
    answer, _ = talk("tell me about the warmouth", line)
    assert answer.intent == "list" and label in answer.blocks[0].text and place in text(answer)
    assert "no value" in text(answer)


@pytest.mark.parametrize(("line", "where"), [("which characters have the most gaps", ""),
                                             ("gaps by character for the pikes", "among pikes")])
def test_the_gaps_by_character(line: str, where: str, talk: Talk) -> None:
    """Which characters lack most values, of all kinds or of a group."""
    answer, _ = talk(line)
    assert answer.intent == "list" and "characters have gaps" in text(answer) and where in text(answer)


@pytest.mark.parametrize("lines", [
    ("where is the dorsal spine count for Pomoxis annularis taken from?",),
    ("where was the dorsal spine count of the white crappie drawn from",),
    ("describe the white crappie", "dorsal spines, whose record?"),
    ("describe the white crappie", "dorsal spines, per whom?"),
])
def test_from_where_a_value_was_taken(lines: tuple[str, ...], talk: Talk, kb: KnowledgeBase) -> None:
    """The sources of the one feature named are told, and of no other."""
    answer, _ = talk(*lines)
    cited = {kb.record_at(s).character for b in answer.blocks for s in b.statements}  # type: ignore[union-attr]
    assert answer.intent == "sources" and cited == {"dorsal-spines"}


def test_no_source_for_what_is_not_held(talk: Talk) -> None:
    """Of a feature that is not held of a fish no source is named, not even that of something else."""
    answer, _ = talk("who says the mud sunfish has pyloric caeca")
    assert answer.intent == "sources" and answer.blocks[0].text.startswith("Nothing is held on")


@pytest.mark.parametrize("line", ["conflicting pore counts, Esox lucius", "do sources differ on pike pore counts"])
def test_a_count_named_by_one_word(line: str, talk: Talk, kb: KnowledgeBase) -> None:
    """Where sources differ on "pore counts" the counts of pores are meant, not another feature of the pores."""
    answer, _ = talk(line)
    told = {kb.record_at(s).character for b in answer.blocks for s in b.statements}  # type: ignore[union-attr]
    assert told == {"mandibular-pores"}


def test_where_sources_agree_the_fish_is_named(talk: Talk) -> None:
    """That no sources differ is said of the fish and the feature asked for."""
    answer, _ = talk("sources that differ on dorsal spines of the bluegill?")
    assert answer.blocks[0].text.startswith("None on dorsal spines of the bluegill:")


@pytest.mark.parametrize(("lines", "given"), [
    (("conflicting pore counts, Esox lucius", "who gives six?"), True),
    (("conflicting dorsal ray counts, Esox masquinongy", "who says 31?"), False),
    (("which reference gives 310 mm as max TL for L. cyanellus?", "and the 250?"), True),
])
def test_who_gives_a_figure(lines: tuple[str, ...], given: bool, talk: Talk) -> None:
    """A figure asked for after conflicts or sources is told with what gives it, or that nothing held does."""
    answer, _ = talk(*lines)
    lead = answer.blocks[0].text
    assert answer.intent == "sources" and lead.startswith("What gives" if given else "No source held gives")
    assert len(answer.blocks) > 1


def test_a_gap_asked_for_by_group_and_count(talk: Talk) -> None:
    """"No ... count yet" asks for gaps, whether the count is read as a part or as a word of the glossary."""
    for line in ("List Esox taxa with no mandibular pore count yet", "list catfishes without anal ray counts so far",
                 "show minnows missing a gill raker count"):
        answer, _ = talk(line)
        assert answer.intent == "list"
        assert "value" in answer.blocks[0].text


def test_counts_of_the_fishes_listed(talk: Talk) -> None:
    """ "Of these, which have anal spine counts" after a list tells of that count alone, fish by fish."""
    answer, _ = talk("Which Ambloplites does the base hold?", "and of these, which have anal spine counts")
    assert answer.intent == "list" and len(answer.blocks) == 1
    assert answer.blocks[0].text.startswith("All 4 have a value for anal spines: rock bass - 5 to 7")
