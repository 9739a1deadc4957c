"""``tellfin ask``: text, JSON, JSON lines, and what happens to bad ones."""

from __future__ import annotations

import io
import json
from typing import Any

import pytest

from assistant.cli.main import main

KEYS = {
    "say",
    "conversation",
    "intent",
    "taxa",
    "candidates",
    "confidence",
    "observed",
    "place",
    "water",
    "date",
    "length_mm",
    "weight_g",
    "life_stage",
    "sex",
    "verdict",
    "rules",
    "blocks",
    "text",
    "next",
    "base",
}


def run(*argv: str, stdin: str = "") -> tuple[int, str, str]:
    """Exit code, standard output and standard error of one call."""
    out, err = io.StringIO(), io.StringIO()
    code = main(["ask", *argv], io.StringIO(stdin), out, err)
    return code, out.getvalue(), err.getvalue()


def lines(*messages: Any) -> list[dict[str, Any]]:
    """The answers to JSON lines (a text is sent as it is); the exit code says whether each line had one."""
    text = "".join((m if isinstance(m, str) else json.dumps(m)) + "\n" for m in messages)
    code, out, _ = run("--lines", stdin=text)
    answers = [json.loads(line) for line in out.splitlines()]
    assert code == (2 if any("error" in a for a in answers) else 0)
    return answers


def test_a_question_gets_its_answer_as_text() -> None:
    """The question of the README names both fishes and leads with a feature."""
    code, out, err = run("How", "do", "I", "tell", "a", "white", "crappie", "from", "a", "black", "crappie?")
    assert (code, err) == (0, "")
    assert "white crappie" in out
    assert "black crappie" in out
    assert "spines" in out


def test_without_text_the_question_is_read_from_standard_input() -> None:
    """A pipe may bring the question."""
    assert "burbot" in run(stdin="tell me about the burbot\n")[1].lower()


def test_json_has_every_key_and_statement_iris() -> None:
    """No key is ever left out; claims name full IRIs."""
    _, out, _ = run("--json", "bluegill or redear?")
    found = json.loads(out)
    assert set(found) == KEYS
    assert found["intent"] == "contrast"
    assert found["taxa"] == ["Lepomis macrochirus", "Lepomis microlophus"]
    assert all(s.startswith("https://") for b in found["blocks"] for s in b["statements"])
    assert found["base"]["statements"] > 1000


def test_an_identification_lists_candidates_with_grounds() -> None:
    """Candidates come best first with probability and statements; probabilities never exceed 1 together."""
    _, out, _ = run("--json", "black ear, dark smudge at the back of the top fin, side fins reach past the eye")
    found = json.loads(out)
    shares = [c["probability"] for c in found["candidates"]]
    assert shares == sorted(shares, reverse=True)
    assert sum(shares) <= 1.0 + 1e-6
    assert found["candidates"][0]["taxon"] == "Lepomis macrochirus"
    assert found["candidates"][0]["for"]
    assert {o["character"] for o in found["observed"]} >= {"opercular-flap-edge", "soft-dorsal-blotch"}


def test_conversations_are_kept_apart() -> None:
    """What one conversation holds is nothing to another; a line without an id starts afresh."""
    answers = lines(
        {"say": "tell me about the flier", "conversation": "a"},
        {"say": "tell me about the burbot", "conversation": "b"},
        {"say": "its tail?", "conversation": "a"},
        {"say": "its tail?"},
    )
    assert answers[2]["taxa"] == ["Centrarchus macropterus"]
    assert answers[3]["taxa"] == []


def test_bad_lines_get_an_error_and_the_next_is_read() -> None:
    """No object, no text, a bad date and an unknown place are each answered with message and hint."""
    answers = lines(
        "not json",
        "[1]",
        {"say": 7},
        {"say": "hi", "date": "tomorrowish"},
        {"say": "hi", "place": "Nowhereland"},
        {"say": "hi", "place": 3},
        "[" * 100_000,
        {"say": "hi"},
    )
    assert [("error" in a) for a in answers] == [True] * 7 + [False]
    assert all(a["error"]["message"] and a["error"]["hint"] for a in answers[:7])


def test_the_form_of_a_line_is_told() -> None:
    """Whoever asks for help learns the fields of a line in and of an error out."""
    told = " ".join(run("--help")[1].split())
    assert all(word in told for word in ('{"say":', '"conversation":', '"place":', '"date":', '{"error":'))


def test_place_and_date_of_a_line_are_held() -> None:
    """Place by code; both come back in the answer."""
    found = lines({"say": "tell me about the flier", "place": "US-OH"})[0]
    assert found["place"] == "US-OH"


@pytest.mark.parametrize("say", ["", "   ", "\x00\x1b[2J", "<b>bluegill</b>", "x" * 100_000, "\ud800"])
def test_odd_text_is_answered(say: str) -> None:
    """Empty, controls, markup, a very long paste, a lone surrogate."""
    found = lines({"say": say})[0]
    assert set(found) == KEYS
    assert found["text"]
    assert "\x1b" not in found["text"]


def test_wrong_options_are_wrong_use() -> None:
    """A bad date or an unknown place is exit code 2 with a hint."""
    for argv in (("--date", "July", "hi"), ("--place", "Nowhereland", "hi"), ("--units", "cubits", "hi"),
                 ("--json", "--lines", "hi")):
        code, _, err = run(*argv)
        assert code == 2
        assert "tellfin:" in err


def test_a_missing_base_is_one_clear_line(tmp_path: Any) -> None:
    """A folder that is none ends with an error of ours, not with a trace."""
    code, _, err = run("--base", str(tmp_path / "none"), "hi")
    assert code in (1, 2, 3)
    assert "Traceback" not in err


def test_units_put_the_asked_system_first() -> None:
    """``--units metric`` leads with centimetres; plain words for units do as well."""
    for word, said in (("metric", "12.7 to 17.8 cm (5 to 7 in)"), ("centimetres", "12.7 to 17.8 cm (5 to 7 in)"),
                       ("us", "5 to 7 in (12.7 to 17.8 cm)"), ("inches", "5 to 7 in (12.7 to 17.8 cm)")):
        assert said in run("--units", word, "tell me about the flier")[1], word
