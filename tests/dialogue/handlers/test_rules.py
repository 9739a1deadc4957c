"""Questions about rules beside a catch: what is open, duties, places without rules, quoted limits, exceptions."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from assistant.curation.check import check_folder
from assistant.curation.findings import Finding
from assistant.curation.rules import rulebook_findings
from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_ontology, shipped_shapes
from assistant.loading import open_base as open_folder
from assistant.render.plain import render_plain
from tests.dialogue.conftest import CLOCK, Talk


def text_of(answer: Answer) -> str:
    """The answer as it is shown, in lower case."""
    return render_plain(answer).lower()


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (("what's open on Vennimoor Lake",), ("sunfish: open all year; 8 a day", "lake sturgeon: protected", "h14")),
        (("how many crappie at Ollimarsh Lake?",), ("15 a day", "at least 9 in (22.9 cm)", "30 panfish")),
        (("when does walleye open?", "Threlwick Lake"), ("walleye on threlwick lake", "open through 15 march 2027")),
        (("whats the sunfish limit at vennimoor lake",), ("8 a day", "at most 2 over 20 cm (7.9 in)")),
        (("fenwrithe creek trout open in march?",), ("closed until 4 april 2026",)),
        (("at drennick on october 10 2026, any limit on bass",), ("no limit, as the rule states", "eo-26-05")),
        (("bowfin in tidderbrack creek limit",), ("no rules are held for tidderbrack creek on 4 july", "5 a day")),
        (("Wexmallow canal, whats open jan 3 2027",), ("closed to all fishing", "16 march 2027")),
        (("what's open on Fenwrithe Creek on july 20 2026",), ("eo-26-03", "no fishing from 14:00 to 24:00")),
        (("what's open on Twinmarrow Lake",), ("harrowelt side", "quillander side", "at least 15 in")),
        (("longnose gar limit at ollimarsh lake",), ("not the same as no limit",)),
    ],
)
def test_rules_of_a_place(lines: tuple[str, ...], said: tuple[str, ...], talk: Talk) -> None:
    """Seasons, bags and lengths of a place are told with their rules, for all fish or the one asked about."""
    answer, _ = talk(*lines)
    assert answer.intent == "rules"
    for words in (*said, "demo rules only"):
        assert words in text_of(answer)


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("may I use minnows on Lake Skarrowin", ("no fish, alive or dead", "h11")),
        ("may I use minnows on Ollimarsh Lake", ("say nothing of bait", "not the same as allowed")),
        ("can I move it to my pond", ("permit", "agency", "never move live fish")),
        ("can i give my neighbor live rock bass for his quarry", ("permit", "disease", "agency")),
        ("can i move this perch from Threlwick Lake to my pond", ("kill or release every fish", "h12", "permit")),
        ("do i need a license at 15", ("age differs", "check")),
        ("Do I need a licence in Harrowelt?", ("16 and over", "h13")),
        ("how do I measure a fish for the length limit", ("pinch", "13.9 is not 14")),
        ("can I cull bass at Drennick?", ("do not allow culling", "livewell")),
        ("selling my extra perch legal?", ("forbidden nearly everywhere", "check")),
        ("do we each get a limit on Twinmarrow with both licences?", ("never add two bags", "b02")),
    ],
)
def test_duties(line: str, said: tuple[str, ...], talk: Talk) -> None:
    """Bait, gear, licences, moving fish and the like are answered from rules where there are any, else with care."""
    answer, _ = talk(line)
    assert answer.intent == "rules" and answer.verdict is None
    for words in said:
        assert words in text_of(answer)


@pytest.mark.parametrize(
    ("lines", "place"),
    [
        (("what may i keep of rock bass", "kentucky"), "kentucky"),
        (("mussky an inch short of forty", "is that legal in vermont"), "vermont"),
        (("what's the bluegill limit in ohio",), "ohio"),
        (("limit on walleye lake erie",), "lake erie"),
        (("can u keep bull trout in alberta",), "alberta"),
        (("how many crappie in tennessee per day",), "tennessee"),
    ],
)
def test_real_places_have_no_rules_here(lines: tuple[str, ...], place: str, talk: Talk) -> None:
    """For a real place no limit is stated: the place is named, the way to its rules told, and help offered."""
    answer, _ = talk(*lines)
    text = text_of(answer)
    assert answer.intent == "rules" and answer.verdict == "unknown" and not answer.rules
    assert place in text and "agency" in text and "current official" in text and "help to name" in text
    assert " a day" not in text and "at least" not in text and "minimum" not in text


@pytest.mark.parametrize(
    "line", ["and bluegill in ohio", "what about in ohio", "same fish in ohio", "a 17 cm one in ohio?"]
)
def test_rules_of_an_invented_water_are_never_told_for_a_real_place(line: str, talk: Talk) -> None:
    """After an invented water, a real place gets no verdict of that water."""
    answer, _ = talk("Vennimoor Lake: bluegill 17 cm, 3 kept. Can I keep it?", line)
    assert answer.verdict in ("unknown", None) and not answer.rules
    assert "demo rules only" not in text_of(answer) and "vennimoor" not in text_of(answer)


def test_length_of_the_conversation_is_told_for_comparison(talk: Talk) -> None:
    """A length told before is repeated for comparing it with the official line."""
    assert "39 in (99.1 cm)" in text_of(talk("mussky an inch short of forty", "is that legal in vermont")[0])


@pytest.mark.parametrize(
    ("line", "verdict", "said"),
    [
        (
            "Kept a crappie 9 and 7/8 where the board says ten. Fine?",
            "release",
            "9 7/8 in (25.1 cm) is short of the 10 in",
        ),
        ("crappie 9 7/8 and limit is 10, wet tail pinched.", "release", "by 1/8 in"),
        ("my bass is 14 inches, sign says 14 minimum, keeper?", "unknown", "is not under the 14 in"),
        ("perch 19 cm and the rule is 20 cm, ok to keep?", "release", "short of the 20 cm"),
        ("sign says no pike 24-34 inch. mines 34 on the dot, tail pinched", "unknown", "in the span of 24 to 34"),
    ],
)
def test_a_limit_that_the_angler_quotes(line: str, verdict: str, said: str, talk: Talk) -> None:
    """A quoted limit is compared exactly, without rounding up, and the local rule stays the judge."""
    answer, _ = talk(line)
    assert (answer.intent, answer.verdict) == ("rules", verdict)
    assert said in text_of(answer) and "check the local rule" in text_of(answer)


def test_without_a_place_it_asks_where(talk: Talk) -> None:
    """With no place the question back is where, for the fish that was named, and no number is given."""
    answer, _ = talk("what may i keep of rock bass")
    assert answer.asked is not None and answer.asked.kind == "place"
    lead = answer.blocks[0].text
    assert lead.startswith("Where was it") and "rock bass" in lead and not any(c.isdigit() for c in lead)


@pytest.mark.parametrize("line", ["actually 55", "measured wrong, 55", "i meant 55 in"])
def test_a_length_put_right_is_judged_again(line: str, talk: Talk) -> None:
    """A corrected length brings the verdict anew, not a remark on sizes."""
    answer, _ = talk("can i keep a musky", "harrowelt, july 20, 52 in", line)
    assert answer.verdict == "keep" and "55 in" in text_of(answer)


def test_no_limit_is_quoted_by_asking_for_it(talk: Talk) -> None:
    """A length beside "what's the min" is that of the fish, which is compared with nothing."""
    assert "minimum you name" not in text_of(talk("i got a striped bass in texas, 17 1/2, what's the min")[0])


def test_private_water_is_not_ruled(talk: Talk) -> None:
    """A private pond has no rules here, whatever is asked of it."""
    answer, _ = talk("private pond, bass 14 in, keep?")
    assert answer.verdict == "unknown" and "owner" in text_of(answer)


def test_why_after_a_verdict_tells_the_rules(talk: Talk) -> None:
    """Asked why, the rules behind a verdict are told in their own terms."""
    answer, _ = talk("Threlwick Lake, 2026-08-01: northern pike 70.0 cm. Can I keep it?", "why")
    assert answer.intent == "why" and "from 16 may 2026 through 31 march 2027" in text_of(answer)
    assert "rule:h02" in {s for b in answer.blocks for s in b.statements}


EXCEPTION = """\
@prefix tf: <https://tellfin.example/vocab/> .
@prefix place: <https://tellfin.example/place/> .
@prefix rule: <https://tellfin.example/rule/> .
@prefix src: <https://tellfin.example/source/> .
@prefix xsd: <http://www.w3.org/2001/XMLSchema#> .
@prefix skos: <http://www.w3.org/2004/02/skos/core#> .
@prefix dcterms: <http://purl.org/dc/terms/> .
@prefix qudt: <http://qudt.org/schema/qudt/> .
@prefix unit: <http://qudt.org/vocab/unit/> .
@prefix schema: <https://schema.org/> .

rule:h90
    a tf:FishingRule ;
    skos:prefLabel "Yellow perch of Threlwick Lake"@en ;
    dcterms:source src:invented-demo ;
    schema:validFrom "2026-04-01"^^xsd:date ;
    schema:validThrough "2027-03-31"^^xsd:date ;
    skos:notation "H90" ;
    tf:appliesAt place:threlwick-lake ;
    tf:basis tf:common-practice ;
    tf:dailyBag 3 ;
    tf:invented true ;
    tf:layer tf:water ;
    tf:lengthLimit rule:h90-minimum ;
    tf:ofGroup rule:hrw-perch-group ;
    tf:overrideMode tf:replace-fields ;
    tf:possessionLimit 6 ;
    tf:ruleSet rule:harrowelt-2026 ;
    .

rule:h90-minimum
    a tf:LengthLimit ;
    qudt:hasUnit unit:CentiM ;
    tf:lengthEffect tf:keep-within ;
    tf:lowerBound 18.0 ;
    tf:lowerBoundIncluded true ;
    .
"""


@pytest.fixture(scope="module")
def own_base(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped base with an exception for one water, written in Turtle."""
    folder = tmp_path_factory.mktemp("own") / "ontology"
    shutil.copytree(shipped_ontology(), folder)
    (folder / "regulations" / "own-exception.ttl").write_text(EXCEPTION, encoding="utf-8")
    return folder


def test_an_exception_for_one_water_is_used(own_base: Path, open_base: Base, tmp_path: Path) -> None:
    """A curator's exception in Turtle decides at its water, and nowhere else."""
    own = open_folder(own_base, cache=tmp_path)

    def verdict(base: Base, place: str, rest: str) -> str | None:
        return respond(base, f"{place}, 2026-07-04: yellow perch {rest}. Can I keep it?", Held(), CLOCK)[0].verdict

    assert verdict(open_base, "Threlwick Lake", "20 cm, 3 yellow perch kept") == "keep"
    assert verdict(own, "Threlwick Lake", "20 cm, 3 yellow perch kept") == "release"
    assert verdict(own, "Threlwick Lake", "20 cm, 2 yellow perch kept") == "keep"
    assert verdict(own, "Threlwick Lake", "17.9 cm, nothing kept") == "release"
    assert verdict(own, "Vennimoor Lake", "17.9 cm, 3 yellow perch kept") == "keep"
    answer, _ = respond(own, "yellow perch limit at Threlwick Lake", Held(), CLOCK)
    assert "3 a day" in text_of(answer) and "h90" in text_of(answer)
    own.close()


def found_in_rules(folder: Path) -> list[Finding]:
    """What the check says of the rules of a base."""
    index = Index(folder)
    return list(rulebook_findings(index.all_nodes(), index))


@pytest.mark.long
def test_an_exception_for_one_water_raises_no_finding(own_base: Path) -> None:
    """The exception neither ties with another rule nor leads nowhere."""
    assert found_in_rules(own_base) == []


@pytest.mark.long
def test_an_exception_for_one_water_passes_the_check(own_base: Path) -> None:
    """The whole check, shapes and canonical form included, passes with the exception."""
    outcome = check_folder(own_base, shipped_shapes())
    assert outcome.passed, [f for f in outcome.findings if f.severity == "error"]


@pytest.mark.long
def test_a_second_rule_of_equal_rank_is_found_by_the_check(own_base: Path) -> None:
    """Two rules of one layer that disagree are a finding for the curator, and the stricter is used."""
    path = own_base / "regulations" / "own-exception.ttl"
    again = EXCEPTION[EXCEPTION.index("rule:h90\n") : EXCEPTION.index("rule:h90-minimum\n")]
    path.write_text(
        EXCEPTION
        + "\n"
        + again.replace("h90\n", "h91\n").replace('"H90"', '"H91"').replace("dailyBag 3", "dailyBag 5"),
        encoding="utf-8",
    )
    findings = found_in_rules(own_base)
    assert [f for f in findings if f.rule == "fishing rules: tie" and "h90" in f.found + f.thing]
    path.write_text(EXCEPTION, encoding="utf-8")


@pytest.mark.parametrize(
    ("line", "land"),
    [("what fish live in Vennimoor Lake", "harrowelt"), ("what species are in Little Ommary Pond", "harrowelt"),
     ("where is Sallowgum Lake", "mossavane")],
)
def test_no_fishes_are_listed_for_an_invented_water(line: str, land: str, talk: Talk) -> None:
    """An invented water is said to be one and where it lies; that no list is held of it is not "none live there"."""
    answer, _ = talk(line)
    text = text_of(answer)
    assert f"is an invented water in {land}" in text and "no species list is held" in text and "none:" not in text


@pytest.mark.parametrize("line", ["what waters do you know", "which lakes do you have rules for", "demo waters"])
def test_the_waters_with_rules_are_listed(line: str, talk: Talk) -> None:
    """Asked which waters there are, the invented ones are told by the land they lie in."""
    text = text_of(talk(line)[0])
    assert "harrowelt: ketterfoss river" in text and "vennimoor lake" in text and "invented" in text


def test_an_invented_land_is_explained(talk: Talk) -> None:
    """A land of the demonstration is said to be invented, with its waters."""
    text = text_of(talk("what is Harrowelt")[0])
    assert "invented province" in text and "threlwick lake" in text


@pytest.mark.parametrize(
    ("lines", "said", "unsaid"),
    [
        (("can I fish at night in Vennimoor Lake",), "set no hours", "a day"),
        (("what's open on Vennimoor Lake", "can I fish at night"), "set no hours", "a day"),
        (("can I fish at night on Fenwrithe Creek on july 20 2026",), "no fishing from 14:00 to 24:00", "a day"),
        (("can I fish at night on Wexmallow Canal on december 20 2026",), "closed to all fishing", "set no hours"),
        (("is it forbidden to eat what we catch on Wexmallow Canal in december",), "1 december 2026", "no fish"),
        (("is Vennimoor Lake open on christmas",), "closed: largemouth and smallmouth bass (until", "a day"),
        (("Vennimoor Lake rules", "is it open on christmas"), "25 december 2026", "christmas on"),
        (("is it open on christmas",), "where was it", "christmas"),
    ],
)
def test_hours_and_open_days(lines: tuple[str, ...], said: str, unsaid: str, talk: Talk) -> None:
    """Whether it is open, or at night, is answered as such and not with the whole table."""
    answer, _ = talk(*lines)
    assert answer.intent == "rules" and said in text_of(answer) and unsaid not in text_of(answer)


def test_a_word_of_the_rules_is_explained_in_their_midst(talk: Talk) -> None:
    """ "What is a daily bag" asks for the word even where a water is spoken of; "what's the bag" for the number."""
    start = "bluegill 6 in at Vennimoor Lake, can I keep it"
    assert talk(start, "what is a daily bag")[0].intent == "term"
    assert "8 a day" in text_of(talk(start, "what's the daily bag")[0])


def test_what_goes_with_every_verdict_is_said_once(talk: Talk) -> None:
    """Duties of all anglers and how to let a fish go are told with the first verdict; provisos shrink to a line."""
    lines = ["northern pike 76 cm on Vennimoor Lake, may I keep it", "and at 80 cm"]
    first, second = text_of(talk(lines[0])[0]), text_of(talk(*lines)[0])
    assert "drain wells" in first and "wet your hands" in first
    assert "release: put it back" in second and "drain wells" not in second and "wet your hands" not in second
    third = text_of(talk(*lines, "and a round goby")[0])
    assert "report it to the agency" in third


def test_provisos_speak_only_of_what_was_told(talk: Talk) -> None:
    """A verdict rests on a length only where one was given."""
    assert "name you gave: if in doubt, put the fish back" in text_of(talk("may I keep a perch on Vennimoor Lake")[0])
    assert "name and length you gave" in text_of(talk("may I keep a 20 cm perch on Vennimoor Lake")[0])


def test_an_age_is_no_number_of_fish(talk: Talk) -> None:
    """"Im 12" tells who fishes, not how many are kept."""
    answer, _ = talk("how many sunnies can i take home", "im in maryland", "k what about Little Ommary Pond, im 12")
    told = " ".join(b.text for b in answer.blocks)
    assert "too many" not in told and "under 16" in told and "5 a day" in told
