"""Naming the fish: posterior, verdict words, place, size, crosses, what fits nothing."""

from __future__ import annotations

from typing import Any

import pytest

from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.evidence import Scope
from assistant.reasoning.identify import disputed, identify, posterior, weigh
from assistant.reasoning.next_question import next_question
from assistant.reasoning.observed import Evidence, Hint, Identification, Observation
from assistant.reasoning.tables import Table, compile_table


@pytest.fixture(scope="module")
def table(kb: KnowledgeBase) -> Table:
    """The score table of the shipped base."""
    return compile_table(kb)


def seen(text: str, **kw: bool) -> tuple[Observation, ...]:
    """Observations from "character=state; character=number" (a leading ! denies)."""
    out = []
    for part in text.split(";"):
        character, _, value = part.strip().lstrip("!").partition("=")
        denied = part.strip().startswith("!")
        if value.isdigit():
            out.append(Observation(character, value=float(value), seen=not denied, **kw))
        else:
            states = tuple(f"{character}.{v}" for v in value.split("|"))
            out.append(Observation(character, states, seen=not denied, **kw))
    return tuple(out)


def name(kb: KnowledgeBase, table: Table, text: str, **kw: object) -> Identification:
    """The identification of observations in the short form."""
    return identify(kb, table, Evidence(seen(text), **kw))  # type: ignore[arg-type]


PUMPKINSEED = ("opercular-flap-edge=red-or-orange-spot; head-lines=wavy-blue; opercular-flap-stiffness=stiff-to-edge; "
               "pectoral-fin-form=long-pointed")


def test_nothing_seen_is_not_enough(kb: KnowledgeBase, table: Table) -> None:
    """Without any evidence the verdict is not-enough, whatever the prior says."""
    assert identify(kb, table, Evidence()).verdict == "not-enough"


def test_deciding_evidence_names_the_fish(kb: KnowledgeBase, table: Table) -> None:
    """Four good marks of one species give it first, likely or sure, resting on statements."""
    found = name(kb, table, PUMPKINSEED)
    assert found.candidates[0].taxon == "lepomis-gibbosus"
    assert found.verdict in ("likely", "sure")
    assert found.candidates[0].supports


def test_a_single_odd_feature_never_throws_a_fish_out(kb: KnowledgeBase, table: Table) -> None:
    """One contrary count leaves the pumpkinseed among the first three."""
    found = name(kb, table, PUMPKINSEED + "; anal-soft-rays=14")
    assert "lepomis-gibbosus" in [c.taxon for c in found.candidates[:3]]


def test_marks_shared_by_a_family_do_not_name_a_species(kb: KnowledgeBase, table: Table) -> None:
    """Three anal spines and a spiny dorsal are of many sunfishes and basses: no name is given."""
    found = name(kb, table, "anal-spines=3; body-form=deep-compressed", length=(51.0, 51.0))
    assert found.verdict in ("between", "not-enough")


def test_a_cross_is_never_sure_by_looks(kb: KnowledgeBase, table: Table) -> None:
    """Features of both parents may lead to the cross, but looks alone do not make it sure."""
    found = name(kb, table, "vermiculation=maze-like; caudal-fin-shape=truncate; adipose-fin=present")
    for candidate in found.candidates[:1]:
        if kb.taxon(candidate.taxon).is_hybrid:
            assert found.verdict != "sure"


def test_a_cross_needs_features_of_both_parents(kb: KnowledgeBase, table: Table) -> None:
    """The marks of one parent alone do not lead to its cross."""
    found = name(kb, table, PUMPKINSEED)
    assert found.posterior["lepomis-gibbosus-x-lepomis-macrochirus"] < 0.1 * found.posterior["lepomis-gibbosus"]


def test_a_place_weighs_and_never_excludes(kb: KnowledgeBase, table: Table) -> None:
    """Where a fish is not known to live it is less likely, but not impossible."""
    marks = seen("tail-tip-mark=white; canine-teeth=present")
    home = identify(kb, table, Evidence(marks, places=("us-mn",))).posterior["sander-vitreus"]
    away = identify(kb, table, Evidence(marks, places=("us-hi",))).posterior["sander-vitreus"]
    assert 0 < away <= home


def test_a_tiny_sunfish_is_not_named(kb: KnowledgeBase, table: Table) -> None:
    """Under about an inch (25 mm) no name is given (common practice, no source)."""
    found = name(kb, table, PUMPKINSEED, length=(20.0, 20.0))
    assert found.too_small and found.verdict not in ("sure", "likely")


def test_a_fish_longer_than_the_species_grows_is_doubted(kb: KnowledgeBase, table: Table) -> None:
    """A 60 cm fish is far less likely a dollar sunfish than a 10 cm one."""
    marks = seen("opercular-flap-length=long; opercular-flap-edge=pale-or-white-edge")
    small = identify(kb, table, Evidence(marks, length=(100.0, 100.0))).posterior["lepomis-marginatus"]
    large = identify(kb, table, Evidence(marks, length=(600.0, 600.0))).posterior["lepomis-marginatus"]
    assert large < 0.3 * small


def test_a_weight_counts_as_a_length_does(kb: KnowledgeBase, table: Table) -> None:
    """Whiskers on a fish of 20 lb (9 kg) are those of a large catfish and not of a chub or bullhead."""
    marks = seen("barbels=whiskers; body-colour=olive")
    heavy = identify(kb, table, Evidence(marks, grams=9072.0)).posterior
    light = identify(kb, table, Evidence(marks, grams=120.0)).posterior
    assert heavy["ictalurus-punctatus"] > 20 * heavy["semotilus-atromaculatus"]
    assert heavy["ameiurus-natalis"] < 0.1 * light["ameiurus-natalis"]


@pytest.mark.parametrize("size", [{"length": (431.8, 431.8)}, {"grams": 2268.0}])
def test_what_outgrows_its_kind_is_not_said_for_sure(kb: KnowledgeBase, table: Table, size: dict[str, Any]) -> None:
    """All marks of a bluegill on a fish of 17 in or 5 lb, past the largest known: likely at most."""
    marks = seen("opercular-flap-edge=none-all-dark; body-form=deep-compressed; soft-dorsal-blotch=present; "
                 "pectoral-fin-form=long-pointed")
    assert identify(kb, table, Evidence(marks, length=(190.0, 190.0), volunteered=True)).verdict == "sure"
    found = identify(kb, table, Evidence(marks, volunteered=True, **size))
    assert found.candidates[0].taxon == "lepomis-macrochirus" and found.verdict == "likely"


def test_a_stocked_cross_is_met_without_its_parents(kb: KnowledgeBase, table: Table) -> None:
    """The hybrid striped bass, raised and stocked, is among the first for broken stripes on a fish of 4 lb."""
    found = identify(kb, table, Evidence(seen("stripe-pattern=broken"), grams=1814.0))
    assert "morone-chrysops-x-morone-saxatilis" in [c.taxon for c in found.candidates[:3]]


def test_denials_count(kb: KnowledgeBase, table: Table) -> None:
    """Saying that there is no dark blotch speaks against the bluegill."""
    plain = name(kb, table, "body-form=deep-compressed; opercular-flap-edge=none-all-dark")
    marks = "body-form=deep-compressed; opercular-flap-edge=none-all-dark; !soft-dorsal-blotch=present"
    denied = name(kb, table, marks)
    assert denied.posterior["lepomis-macrochirus"] < plain.posterior["lepomis-macrochirus"]


def test_hedges_weaken(kb: KnowledgeBase, table: Table) -> None:
    """The same mark seen "maybe" moves the odds less than seen outright."""
    outright = posterior(kb, table, Evidence(seen("head-lines=wavy-blue")))
    maybe = posterior(kb, table, Evidence(seen("head-lines=wavy-blue", hedged=True)))
    none = posterior(kb, table, Evidence())
    at = table.index["lepomis-gibbosus"]
    assert none[at] < maybe[at] < outright[at]


def test_group_words_are_evidence_not_a_filter(kb: KnowledgeBase, table: Table) -> None:
    """"Some kind of bass" favours basses and leaves others possible."""
    basses = frozenset(kb.members("micropterus"))
    hinted = posterior(kb, table, Evidence(seen("upper-jaw-reach=past-eye"), (Hint("group", basses),)))
    plain = posterior(kb, table, Evidence(seen("upper-jaw-reach=past-eye")))
    at = table.index["micropterus-nigricans"]
    assert hinted[at] > plain[at] and hinted.min() > 0


def test_sex_known_changes_what_a_mark_is_worth(kb: KnowledgeBase, table: Table) -> None:
    """What is known of the fish picks the statements that speak of such fish, and probabilities still sum to 1."""
    for scope in (Scope(stage="juvenile"), Scope(sex="male", breeding="breeding")):
        found = posterior(kb, table, Evidence(seen("opercular-flap-edge=red-or-orange-spot"), scope=scope))
        assert found.sum() == pytest.approx(1.0)


def test_the_next_question_is_of_a_live_fish_and_never_repeated(kb: KnowledgeBase, table: Table) -> None:
    """Asked again and again, it names a new live-fish character each time and comes to an end."""
    weights = posterior(kb, table, Evidence(seen("body-form=deep-compressed")))
    done = {"body-form"}
    for _ in range(60):
        question = next_question(kb, table, weights, done)
        if question is None:
            break
        assert question.character not in done
        assert kb.character(question.character).look != "dead"
        done.add(question.character)
    assert len(done) > 5


def test_who_wavers_between_two_fishes_wants_a_feature_that_parts_them(kb: KnowledgeBase, table: Table) -> None:
    """A colour that both may have names neither; a feature by which they differ does."""
    both = frozenset({"notemigonus-crysoleucas", "scardinius-erythrophthalmus"})
    hints = (Hint("either", both), Hint("group", frozenset(kb.members("leuciscidae")), hedged=True))
    silvery = name(kb, table, "body-colour=silvery", hints=hints, places=("us-me",), volunteered=True)
    assert {c.taxon for c in silvery.candidates[:2]} == both
    assert silvery.verdict == "between"
    told = "body-colour=silvery; belly-keel=unscaled"
    parted = name(kb, table, told, hints=hints, places=("us-me",), volunteered=True)
    assert parted.candidates[0].taxon == "notemigonus-crysoleucas"
    assert parted.verdict in ("likely", "sure")


def test_a_question_offers_at_least_two_answers(kb: KnowledgeBase, table: Table) -> None:
    """However sure the states of the fishes in play are, there is something to choose."""
    weights = posterior(kb, table, Evidence(seen(PUMPKINSEED)))
    asked: set[str] = set()
    while (question := next_question(kb, table, weights, asked, least=0.0)) is not None and len(asked) < 30:
        asked.add(question.character)
        assert len(question.choices) >= 2 or not kb.character(question.character).is_stated


def test_a_count_within_the_stated_range_fits(kb: KnowledgeBase, table: Table) -> None:
    """Seven anal spines are rare in a flier that has seven to nine, but they do not speak against it."""
    found = name(kb, table, "anal-spines=7; dorsal-spines=12; suborbital-bar=present")
    flier = next(c for c in found.candidates if c.taxon == "centrarchus-macropterus")
    assert any(".anal-spines." in s for s in flier.supports)
    assert not any(".anal-spines." in s for s in flier.opposes)


def test_nothing_disputes_the_only_fish_of_a_base(kb: KnowledgeBase, table: Table) -> None:
    """Where there is no next fish the first stands undisputed."""
    weighed = weigh(kb, table, Evidence())
    assert not disputed(weighed, (0,))


def test_a_likeness_with_a_but_is_mostly_of_another_fish(kb: KnowledgeBase, table: Table) -> None:
    """ "Like a walleye but ..." speaks for the fishes it is taken for more than for the walleye itself."""
    plain, but = (
        identify(kb, table, Evidence(hints=(Hint("like", frozenset({"sander-vitreus"}), loose=loose),))).posterior
        for loose in (False, True))
    assert plain["sander-vitreus"] > plain["sander-canadensis"]
    assert but["sander-vitreus"] < but["sander-canadensis"]


def test_plates_like_armour_are_those_of_gars(kb: KnowledgeBase, table: Table) -> None:
    """A mark that a single family has outweighs every fish that is only told to be scaled."""
    found = identify(kb, table, Evidence(seen("body-covering=ganoid-diamond-scales"), volunteered=True))
    assert all(c.taxon.startswith(("lepisosteus", "atractosteus")) for c in found.candidates[:4])
    assert sum(p for t, p in found.posterior.items() if kb.lineage(t)[-1] == "lepisosteidae") > 0.5


def test_what_goes_together_in_no_fish_is_not_said_as_likely(kb: KnowledgeBase, table: Table) -> None:
    """A square tail on a pumpkinseed's ear and cheek leaves the name open, however far it leads."""
    told = seen("opercular-flap-edge=red-or-orange-spot; head-lines=wavy-blue; breast-colour=orange; "
                "caudal-fin-shape=truncate")
    found = identify(kb, table, Evidence(told, places=("us-oh",), volunteered=True))
    assert found.candidates[0].taxon == "lepomis-gibbosus" and not found.together and found.verdict == "between"
