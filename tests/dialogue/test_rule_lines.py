"""Sentences about a catch through the conversation: worked examples, what is always said, what is carried over."""

from __future__ import annotations

import csv
import json
from datetime import date
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.dialogue.answer import Answer
from assistant.dialogue.conversation import Held
from assistant.dialogue.engine import Base, respond
from assistant.model.knowledge import KnowledgeBase
from assistant.render.json import render_json
from assistant.render.plain import render_plain
from tests.dialogue.conftest import CLOCK, Talk

FILE = Path(__file__).parent.parent / "cases" / "rule_examples.tsv"
ROWS = list(csv.DictReader(FILE.read_text(encoding="utf-8").splitlines(), delimiter="\t", quoting=csv.QUOTE_NONE))
VERDICTS = {"keep", "release", "closed", "do-not-release", "unknown"}
NEVER = ("you're fine", "it is legal", "is legal to", "perfectly legal", "lawful to")


def line_of(row: dict[str, str]) -> str:
    """The sentence that is made from the columns of an example."""
    return f"{row['where_when']}: {row['catch']}. Can I keep it?"


def example(row_id: str) -> str:
    """The sentence of one example."""
    return line_of(next(r for r in ROWS if r["id"] == row_id))


def text_of(answer: Answer) -> str:
    """The answer as it is shown."""
    return render_plain(answer)


@pytest.mark.parametrize("row", ROWS, ids=[r["id"] for r in ROWS])
def test_worked_example_through_the_conversation(row: dict[str, str], open_base: Base) -> None:
    """Each worked example gives its verdict, names the binding rule, and says that the rules are invented."""
    answer, held = respond(open_base, line_of(row), Held(), CLOCK)
    words = row["verdict"].split(" > ")
    assert answer.intent == "rules"
    assert answer.verdict == (", then ".join(words) if len(set(words)) > 1 else words[0])
    for rule in filter(None, row["rule"].split(" > ")):
        assert f"rule:{rule}" in answer.rules
        record = open_base.kb.find("rule", rule)
        assert record is not None and record.notation in text_of(answer)
    assert answer.blocks[0].kind == "lead" and answer.blocks[0].text.lower().startswith(
        ("verdict: " + answer.verdict) if len(words) > 1 else ("which fish", "i know no", words[0].replace("-", " "))
    )
    notes = [b.text for b in answer.blocks if b.kind == "rule-note"]
    assert any("Demo rules only" in n for n in notes) and any("Not legal advice" in n for n in notes)
    assert not any(phrase in text_of(answer).lower() for phrase in NEVER)
    assert held.catch is not None


@pytest.mark.parametrize("row", [r for r in ROWS if r["verdict"] != "unknown"], ids=lambda r: r["id"])
def test_claims_name_rules_that_exist(row: dict[str, str], open_base: Base) -> None:
    """Every claim names records of the base: rules and cautions."""
    answer, _ = respond(open_base, line_of(row), Held(), CLOCK)
    for block in answer.blocks:
        assert block.statements or not block.claim, block.text
        assert all(open_base.kb.record_at(s) is not None for s in block.statements), block.statements


def test_json_form_holds_verdict_and_rules(open_base: Base) -> None:
    """The JSON form gives the verdict as one text, and the rules as full identifiers."""
    say = example("E16")
    answer, held = respond(open_base, say, Held(), CLOCK)
    out = json.loads(json.dumps(render_json(open_base.kb, say, "c", answer, held)))
    assert out["verdict"] == "keep, then release"
    assert "https://tellfin.example/rule/q10" in out["rules"] and out["taxa"] == ["Micropterus nigricans"]
    assert "keep, then release" in out["text"]
    notes = [b for b in out["blocks"] if b["kind"] == "rule-note"]
    assert len(notes) == 2


def test_any_order_of_the_examples_in_one_conversation(open_base: Base) -> None:
    """A sentence that tells place, day and fish owes nothing to the catch before it."""
    held = Held()
    for row in sorted(ROWS, key=lambda r: r["catch"]):
        if "same fish" in row["catch"] or row["catch"].startswith("any fish"):
            continue
        answer, held = respond(open_base, line_of(row), held, CLOCK)
        words = row["verdict"].split(" > ")
        assert answer.verdict == (", then ".join(words) if len(set(words)) > 1 else words[0]), row["id"]


@pytest.mark.parametrize(
    ("lines", "verdicts"),
    [
        (("can I keep a 17 cm bluegill on Vennimoor Lake today, 8 kept already?",), ["release"]),
        (("Vennimoor Lake bluegill 17 cm keep?", "7", "8 kept now"), ["keep", "keep", "release"]),
        (("pike 75cm threlwick lake july 4 2026", "what if it was 69", "n 91"), ["release", "keep", "keep"]),
        (("Threlwick Lake, 2026-07-04: walleye 40 cm. keep?", "and on 2027-03-20?"), ["keep", "closed"]),
        (("Drennick Reservoir, 2026-06-01: largemouth bass 12 in. keep?", "at Ollimarsh Lake?"), ["keep", "release"]),
        (
            ("ketterfoss river above the old weir september 20 2026 fishing for trout", "below the weir?"),
            ["closed", "release"],
        ),
        (
            ("Vennimoor Lake bluegill 17 cm, 3 kept. keep?", "what about a 21 cm one", "all under 20"),
            ["keep", "unknown", "keep"],
        ),
        (("Little Ommary Pond, pumpkinseed 14 cm, nothing kept. keep?", "34"), ["unknown", "closed"]),
        (("Fenwrithe Creek 2026-07-20: brown trout 12 in. keep?", "at 15:30"), ["unknown", "closed"]),
        (("little ommary pond, im 34, can i fish",), ["closed"]),
        (("Corrabloom Reservoir on October 5 2026, i have 12 redear",), ["release"]),
        (("vennimoor bluegill 9 inch have 2 over 8 already",), ["release"]),
        (
            (
                "Threlwick Lake, 15 Jan 2027, walleye of 52 cm through the ice. I already kept one of 48 cm today.",
                "had the kept one been 45 instead?",
            ),
            ["release", "keep"],
        ),
        (
            (
                "Tidderbrack Creek, 2026-10-05: 20 in fish, bowfin or northern snakehead, cannot tell",
                "Ollimarsh Lake (QUI), 2026-10-05: same fish, same doubt. Can I keep it?",
            ),
            ["do-not-release", "unknown"],
        ),
    ],
)
def test_what_was_told_carries_over(lines: tuple[str, ...], verdicts: list[str], open_base: Base) -> None:
    """Fish, place, day, length and count stay until something else is told."""
    held, found = Held(), []
    for line in lines:
        answer, held = respond(open_base, line, held, CLOCK)
        found.append(answer.verdict)
    assert found == verdicts


def test_a_fish_that_is_not_named_is_judged_as_all_it_may_be(open_base: Base) -> None:
    """After a doubtful identification every candidate that cannot be excluded goes to the verdict."""
    answer, held = respond(open_base, "7 in sunfish, no red on the ear, caught off the dock", Held(), CLOCK)
    assert answer.candidates
    likely = [c.taxon for c in answer.candidates if c.probability >= 0.05]
    verdict, after = respond(open_base, "can I keep it at Ollimarsh Lake on 2026-06-01?", held, CLOCK)
    assert verdict.intent == "rules"
    judged = {t for step in after.catch.query.steps for n in step.fish for t in n.taxa}
    assert set(likely) <= judged and judged


def test_count_not_told_is_put_as_a_condition(talk: Talk) -> None:
    """Without a count the verdict says below how many kept fish it holds, and asks."""
    answer, _ = talk("Ollimarsh Lake, 2026-06-01: black crappie 10 in. Can I keep it?")
    assert "fewer than 15 crappie and 30 panfish" in text_of(answer)
    assert answer.asked is not None and answer.asked.kind == "count"


def test_the_count_that_binds_is_told(talk: Talk) -> None:
    """A full umbrella is told beside the bag that is not full."""
    text = text_of(talk(example("E17"))[0])
    assert "30 of 30 panfish" in text and "10 of 15 crappie" in text


def test_lengths_in_the_unit_of_the_rule_first(talk: Talk) -> None:
    """Bounds are told in the rule's unit with the other in brackets."""
    assert "36 to 46 cm (14.2 to 18.1 in)" in text_of(talk(example("E06"))[0])
    assert "13 to 17 in (33 to 43.2 cm)" in text_of(talk(example("E15"))[0])


def test_a_fish_that_may_be_prohibited_is_never_to_be_put_back(talk: Talk) -> None:
    """Where one of the candidates must not go back, no sentence says that the fish may be let go."""
    for lines in (
        ("Tidderbrack Creek, 2026-10-05: bowfin or northern snakehead, 20 in. keep?",),
        ("Ollimarsh Lake, 2026-10-05: bowfin or northern snakehead, 20 in. keep?",),
    ):
        text = text_of(talk(*lines)[0]).lower()
        assert "let it go" not in text and "put the fish back" not in text and "put it back" not in text
        assert "never carry it alive" in text


def test_no_limit_only_where_a_rule_states_it(open_base: Base) -> None:
    """The words "no limit" stand only under the emergency order that lifts the limit, or in their denial."""
    for row in ROWS:
        text = text_of(respond(open_base, line_of(row), Held(), CLOCK)[0]).replace("not the same as no limit", "")
        assert ("no limit" in text) == (row["rule"] == "q14"), row["id"]


def test_turns_of_an_order_are_told(talk: Talk) -> None:
    """An emergency order is named with its number and last day."""
    assert "EO-26-05 is in force here through 31 October 2026" in text_of(talk(example("E35"))[0])


PIECES = (
    "Vennimoor Lake",
    "Drennick",
    "2026-07-04",
    "2027-02-30",
    "bluegill",
    "walleye or sauger",
    "17 cm",
    "about 15 in",
    "8 kept",
    "in the freezer",
    "can I keep it?",
    "what's open",
    "limit",
    "minnows",
    "my pond",
    "kentucky",
    "34",
    ":",
    ", then",
    "same fish",
    "x",
    "½",
    "at 25:00",
    "QUI side",
    "hybrid",
    "none",
    "the board says ten",
    "\x1b[31m",
    "<b>",
    "0",
    "-5 cm",
)


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.lists(st.sampled_from(PIECES), min_size=1, max_size=7), min_size=1, max_size=4))
def test_nothing_typed_breaks_a_rules_conversation(open_base: Base, lines: list[list[str]]) -> None:
    """Any mix of pieces is answered, turn after turn, with known verdict words and text."""
    from assistant.dialogue.absorb import absorb
    from assistant.dialogue.handlers.rules import handle
    from assistant.dialogue.reader.read import read_line
    from assistant.dialogue.turn import Turn

    held = Held()
    for pieces in lines:
        line = " ".join(pieces)
        reading = read_line(open_base.kb, line, held, CLOCK)
        turn = Turn(open_base.kb, reading, absorb(open_base.kb, held, reading), CLOCK, lambda: open_base.table, "rules")
        answer, after = handle(turn)
        assert set((answer.verdict or "unknown").split(", then ")) <= VERDICTS
        assert all(b.text.strip() for b in answer.blocks)
        held = after.after(intent="rules", last=answer, asked=answer.asked, taxa=answer.taxa or after.taxa)


def test_the_rule_book_is_made_once(kb: KnowledgeBase) -> None:
    """One rule book belongs to a base."""
    from assistant.dialogue.rules.context import book_of

    assert book_of(kb) is book_of(kb)


def test_the_day_of_the_clock_is_the_day_of_today(open_base: Base) -> None:
    """ "Today" and no day at all mean the day that is passed in, never another."""
    for clock, word in ((date(2026, 6, 10), "release"), (date(2026, 7, 1), "keep"), (date(2027, 5, 1), "unknown")):
        for line in (
            "Threlwick Lake: smallmouth bass 35 cm. keep?",
            "can I keep a 35 cm smallmouth bass on Threlwick Lake today?",
        ):
            assert respond(open_base, line, Held(), clock)[0].verdict == word


def test_the_candidate_that_forces_a_verdict_is_named(talk: Talk) -> None:
    """Of several fishes that it may be, the one that forbids keeping is named; a loose name means the ruled fishes."""
    answer, _ = talk("Ollimarsh Lake 2026-06-01: bass 15 in, keep?")
    assert answer.verdict == "release" and "it may be striped bass" in text_of(answer).lower()
    assert answer.asked is not None and answer.asked.kind == "fish"
    answer, _ = talk("i got a snakehead in harrowelt, throw it back?")
    assert answer.verdict == "do-not-release" and "kill it" in text_of(answer).lower()


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("am i over my limit with 26 bluegill at Threlwick?", "1 too many"),
        ("walleye 15 in ollimarsh keep?", "at 15 in (38.1 cm)"),
        ("how many more can I keep, I have 6 bluegill at Vennimoor", "6 of 8 sunfish"),
        ("Threlwick Lake, 2026-08-01: northern pike 91 cm. keep?", "at most 1 over 90 cm"),
    ],
)
def test_ways_of_telling_counts_and_lengths(line: str, said: str, talk: Talk) -> None:
    """Counts and lengths are understood in the loose forms in which they are typed."""
    assert said in text_of(talk(line)[0])


def test_what_belongs_to_one_water_does_not_move_to_another(talk: Talk) -> None:
    """A side, a private pond or an inlet told of one water is forgotten at the next."""
    answer, _ = talk("private pond, largemouth bass 15 in, keep?", "and at Ollimarsh Lake on 2026-06-01?")
    assert answer.verdict == "keep"
    answer, _ = talk("Vennimoor Lake bluegill 17 cm keep?", "can I move it to my pond", "what about in ohio")
    assert answer.verdict == "unknown" and "Ohio" in text_of(answer)


NOVEMBER = date(2026, 11, 26)


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("can I keep a walleye on Vennimoor Lake next April", "1 april 2027 yet"),
        ("can I keep a walleye on Vennimoor Lake on 5 april", "5 april 2027 yet"),
        ("when do trout open on Vennimoor Lake in april", "1 april 2027 yet"),
        ("I caught a walleye on april 20 on Vennimoor Lake, may I keep it", "the day 20 april 2026"),
    ],
)
def test_a_day_without_its_year_is_the_coming_one(line: str, day: str, open_base: Base) -> None:
    """For a coming day of which no rules are held yet it says so; only a line that tells of the past looks back."""
    answer, _ = respond(open_base, line, Held(), NOVEMBER)
    assert answer.intent == "rules" and day in text_of(answer).lower()


def test_the_rule_year_held_is_told_beside(open_base: Base) -> None:
    """Where none is held yet for a coming day, what the same day of the rule year held would bring is told as such."""
    answer, _ = respond(open_base, "may I keep a bluegill on Threlwick Lake on 1 aug", Held(), NOVEMBER)
    assert answer.verdict == "unknown" and "on 1 august 2027 yet" in text_of(answer).lower()
    assert answer.blocks[1].text.startswith("By the rules of the year held, on 1 August 2026: keep")


@pytest.mark.parametrize(("clock", "line", "verdict", "day"), [
    (NOVEMBER, "pike 78 cm on Threlwick Lake 1 aug, keep?", "release", "1 august 2026"),
    (date(2026, 7, 4), "caught a 12 in brown trout at 9 am on july 20 in Fenwrithe Creek, one kept, ok?", "keep",
     "20 july 2026"),
])
def test_a_measured_fish_was_caught_in_a_year_of_which_rules_are_held(
        clock: date, line: str, verdict: str, day: str, open_base: Base) -> None:
    """Where only the day gone by (or only the coming one) has rules, a fish told with its length is of that one."""
    answer, _ = respond(open_base, line, Held(), clock)
    assert answer.verdict == verdict and f"the day {day}" in text_of(answer).lower()


@pytest.mark.parametrize(
    ("length", "said"),
    [
        ("of about 8 in ", "at most 2 over 20 cm (7.9 in): it may lie on either side of that mark"),
        ("of around 20 cm ", "at most 2 over 20 cm (7.9 in): it may lie on either side of that mark"),
        ("of 8 in ", "of such large fish at most 2 over 20 cm"),
        ("", "of large fish at most 2 over 20 cm (7.9 in), so measure first"),
        ("of about 6 in ", ""),
    ],
)
def test_a_mark_that_a_length_may_be_over_is_named(length: str, said: str, talk: Talk) -> None:
    """A guessed length, or none, that may lie on either side of a mark for large fish names that mark."""
    answer, _ = talk(f"can I keep a green sunfish {length}on Vennimoor Lake?")
    assert answer.verdict == "keep"
    assert said in text_of(answer) if said else "over 20 cm" not in text_of(answer)


@pytest.mark.parametrize("count", ["i have 3 already", "3", "I've got 3", "three", "kept 3 so far", "only 3"])
def test_a_number_in_answer_to_how_many_is_a_count(count: str, talk: Talk) -> None:
    """Asked how many were kept, a number is a count and leaves the length as it was measured."""
    answer, held = talk("a green sunfish from Vennimoor Lake, 6 inches, can I keep it", count)
    assert "3 of 8 sunfish" in text_of(answer) and "6 in (15.2 cm)" in text_of(answer)
    assert [m.words for m in held.lengths] == ["6 inches"]


@pytest.mark.parametrize(
    ("line", "verdict", "length"),
    [
        ("sorry, 66 not 76", "keep", "66 cm"),
        ("sorry, its 68 cm, not 66 cm", "keep", "68 cm"),
        ("its 76 cm not 30 in", "release", "76 cm"),
        ("its 66 cm not 76 cm", "keep", "66 cm"),
    ],
)
def test_a_length_put_right_is_judged_again(line: str, verdict: str, length: str, talk: Talk) -> None:
    """Of "66, not 76" the first is the length; the verdict is given again, after a correction of a correction too."""
    start = ("northern pike 76 cm on Vennimoor Lake, may I keep it",)
    for lines in (start, (*start, "sorry, 66 not 76")):
        answer, held = talk(*lines, line)
        assert answer.verdict == verdict and length in text_of(answer)
        (measure,) = held.lengths
        assert measure.low == int(length.split()[0]) * 10


@pytest.mark.parametrize(
    ("line", "verdicts", "said"),
    [
        ("I kept a 50 cm walleye today, may I keep another on Vennimoor Lake", "unknown", "at most 1 over 46 cm"),
        ("may I keep a 55 cm walleye on Vennimoor Lake, I have one of 40 cm", "keep", "1 of 4 walleye"),
        ("may I keep a 55 cm walleye on Vennimoor Lake, I have one of 50 cm", "release", "1 kept already"),
        ("I kept two walleye, may I keep another on Vennimoor Lake", "unknown", "2 of 4 walleye"),
        ("I have a 40 cm walleye on Vennimoor Lake, can I keep it", "keep", "walleye at 40 cm"),
        ("I kept 3 walleye of 40, 42 and 44 cm, can I keep a 48 cm one on Vennimoor Lake", "keep", "3 of 4 walleye"),
    ],
)
def test_fish_kept_earlier_are_counted_with_their_lengths(line: str, verdicts: str, said: str, talk: Talk) -> None:
    """A fish that was kept is none to be judged: its length counts for large fish, the new one's is asked for."""
    answer, held = talk(line)
    assert answer.verdict == verdicts and said in text_of(answer).lower()
    if verdicts == "unknown":
        assert answer.asked is not None and answer.asked.kind == "length" and not held.lengths


@pytest.mark.parametrize(
    ("line", "verdict", "said"),
    [
        ("i want to keep 5 perch and 3 sunfish from Vennimoor Lake", "keep", ("5 of 25 yellow perch", "3 of 8")),
        ("can I keep 10 yellow perch on Vennimoor Lake", "keep", ("10 of 25 yellow perch, if none were kept before",)),
        ("can I keep 30 yellow perch on Vennimoor Lake", "keep, then release", ("25 of 25", "2. 5 yellow perch")),
        ("can I keep 500 yellow perch on Vennimoor Lake", "keep, then release", ("2. 475 yellow perch. release",)),
        ("I caught 6 walleye on Vennimoor Lake, can I keep them all", "keep, then release", ("1. 4 wall", "2. 2 wall")),
        ("can I keep 2 walleye of 50 cm on Vennimoor Lake", "keep, then release", ("1 kept already",)),
        ("can I keep 3 more perch on Vennimoor Lake, I have 6 kept", "keep", ("9 of 25 yellow perch (",)),
        ("can I keep a dozen perch on Vennimoor Lake", "keep", ("12 of 25 yellow perch",)),
        ("can I take 2 bluegill and a pike of 60 cm on Vennimoor Lake", "keep", ("2. pike 60 cm",)),
        ("can I keep a bluegill and a perch on Vennimoor Lake", "keep", ("1. bluegill", "2. perch")),
        ("bluegill or perch, can I keep it on Vennimoor Lake", "keep", ("bluegill or perch on",)),
    ],
)
def test_several_fish_at_once_are_counted(line: str, verdict: str, said: tuple[str, ...], talk: Talk) -> None:
    """Of several fish to be kept it is told how many fit in each bag; those beyond go back."""
    answer, _ = talk(line)
    assert answer.verdict == verdict
    for words in said:
        assert words in text_of(answer).lower()


def test_the_length_of_one_fish_is_not_that_of_the_next(talk: Talk) -> None:
    """A length stays with its fish: neither a verdict nor an answer for a real place takes it for another one."""
    start = "can I keep a blue catfish of 30 inches on Vennimoor Lake"
    answer, held = talk(start, "what must I do if I catch a snakehead in Pennsylvania")
    assert answer.intent == "rules" and "30 in" not in text_of(answer) and not held.lengths
    answer, _ = talk("Vennimoor Lake: walleye 50 cm, none kept, keep?", "and a bluegill?")
    assert answer.verdict == "keep" and "50 cm" not in text_of(answer)
    answer, _ = talk("Vennimoor Lake: walleye 50 cm, none kept, keep?", "and if it is a sauger?")
    assert "sauger at 50 cm" in text_of(answer).lower()


def test_a_new_catch_is_no_question_of_rules(talk: Talk) -> None:
    """After a question of rules, telling of another catch with its marks names that fish."""
    answer, _ = talk("can I keep a walleye on Vennimoor Lake", "i got a trout with a pink stripe down the side in ohio")
    assert answer.intent == "identify"


def test_the_number_to_be_kept_goes_on(talk: Talk) -> None:
    """Told afterwards how many were kept before, the same number of fish is judged with them."""
    answer, _ = talk("can I keep 10 yellow perch on Vennimoor Lake", "20")
    assert answer.verdict == "keep, then release" and "25 of 25 yellow perch (" in text_of(answer)


def test_a_part_of_the_kept_fish_is_told_when_the_length_was_asked(talk: Talk) -> None:
    """ "1 of them over 20 cm" speaks of kept fish even where the length of the one in hand was asked for."""
    lines = ("can I keep a green sunfish of about 8 in on Vennimoor Lake", "2 kept", "1 of them over 20 cm")
    answer, _ = talk(*lines)
    assert answer.verdict == "keep" and "2 of 8 sunfish" in text_of(answer) and "about 8 in" in text_of(answer)


@pytest.mark.parametrize(("lines", "verdict"), [
    (("Threlwick Lake, 2026-08-22: 8 cm, round goby or sculpin, cannot tell. Can I keep it?",), "unknown"),
    (("Vennimoor Lake, 2026-06-14: pumpkinseed of 20 cm, kept 3 sunfish, two of them over 20 cm, keep?",
      "and if it were 20.5 cm?"), "release"),
    (("pike at Threlwick Lake on 2026-08-20, 35 and a half inches, havent kept anything else. can i take it",), "keep"),
    (("Lake Skarrowin, 2026-07-18: sauger 41 cm taken on a leech; one walleye of 38 cm in the livewell. ok?",), "keep"),
    (("Threlwick Lake, 2027-01-09: yellow perch 22 cm, 10 in the pail and 30 in the freezer, keep?",
      "my wife says its 40 in the freezer"), "release"),
])
def test_what_else_is_said_of_a_catch(lines: tuple[str, ...], verdict: str, talk: Talk) -> None:
    """A loose name without the fish named beside it, a supposed length, parts in words, bait, stores put right.

    The verdicts are worked out from the demonstration rules.
    """
    assert talk(*lines)[0].verdict == verdict


@pytest.mark.parametrize(("lines", "verdict", "told"), [
    (("got four walleye, 46 cm each, harrowelt, can i keep all four?",), "keep", "4 of 4 walleye and sauger"),
    (("caught 6 perch on vennimoor lake, can we keep them all",), "keep", "6 of 25 yellow perch"),
    (("pumpkinseed on vennimoor lake, 21 cm", "got three of them, all legal?"), "keep, then release",
     "at most 2 over 20 cm"),
    (("pumpkinseed on vennimoor lake, 21 cm", "can i keep three like it"), "keep, then release", "2 kept already"),
    (("i have 4 walleye in the livewell, harrowelt, keep another?",), "release", "4 of 4 walleye and sauger"),
])
def test_all_of_the_fish_just_told(lines: tuple[str, ...], verdict: str, told: str, talk: Talk) -> None:
    """Fish told of in a line that asks for all of them are judged together; they are not kept yet."""
    answer, _ = talk(*lines)
    assert answer.verdict == verdict and told in text_of(answer)


@pytest.mark.parametrize("line", ["does it go on my walleye count in harrowelt",
                                  "do they count toward my walleye limit in harrowelt"])
def test_the_fish_spoken_of_in_the_bag_of_another(line: str, talk: Talk) -> None:
    """Whether the fish of the line before counts with the one named."""
    answer, _ = talk("saugeye", line)
    assert "Yes: saugeye and walleye count together" in text_of(answer)


@pytest.mark.parametrize(("line", "told", "not_told"), [
    ("how many walleye on winnebago this spring", "agency of Wisconsin", "Chinook"),
    ("walleye limit on lake erie", "agency of the state or province", "agency of Lake Erie"),
    ("daily on sand bass, oklahoma side of the red", "agency of Oklahoma", "usually means"),
])
def test_whose_rules_hold_on_a_real_water(line: str, told: str, not_told: str, talk: Talk) -> None:
    """The agency is that of the state, not of the lake; a season is no fish."""
    found = text_of(talk(line)[0])
    assert told in found and not_told not in found
