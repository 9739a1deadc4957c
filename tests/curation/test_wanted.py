"""What a curator is told who types too little or the wrong thing: all of it at once, in the words of the options."""

from __future__ import annotations

from pathlib import Path

from assistant.graph.lines import Index
from tests.helpers.bases import Tellfin, contents_of, knowledge_of

BY = ("--by", "Ansa Merrow")
RAKERS = ("add", "statement", "taxon=tall vennet", "character=maximum-length", "value=300-340")


def test_every_missing_field_is_named_in_one_answer(tiny_base: Path, tellfin: Tellfin) -> None:
    """A look-alike without fields: each missing one on a line of its own with what to type, no term of the graph."""
    ran = tellfin("--base", tiny_base, "add", "look-alike")
    assert ran.code == 2 and "lacks 5 fields" in ran.err
    assert [line.split("=")[0].strip() for line in ran.err.splitlines()[1:]] == ["taxon", "other", "separable",
                                                                                "source", "basis"]
    assert "one of" in ran.err and not any(term in ran.err for term in ("tf:", "dcterms:", "bibo:", "shape"))


def test_wrong_and_missing_fields_are_told_together(tiny_base: Path, tellfin: Tellfin) -> None:
    """A kind of name that is none and a fish that is not there stand beside the fields that are missing."""
    ran = tellfin("--base", tiny_base, "add", "name", "taxon=tall venet", "text=x", "kind=nickname", *BY)
    assert ran.code == 1 and "did you mean tall vennet" in ran.err
    assert "outside its list; one of accepted" in ran.err and "source=…" in ran.err and "basis=…" in ran.err
    lone = tellfin("--base", tiny_base, "add", "name", "taxon=tall vennet", "text=x", "language=english", *BY)
    assert "language=english  is no language code" in lone.err


def test_a_name_is_an_english_one_in_use_where_nothing_else_is_said(tiny_base: Path, tellfin: Tellfin) -> None:
    """A new name needs neither language nor kind, as in a sheet."""
    ran = tellfin("--base", tiny_base, "add", "name", "taxon=tall vennet", "text=steepling", "source=memory", *BY)
    assert ran.code == 0 and '"steepling" (vernacular)' in ran.out, ran
    found = knowledge_of(tiny_base).names("vennia-alta")
    assert [(n.language, n.kind) for n in found if n.text == "steepling"] == [("en", "vernacular")]


def test_a_wrong_field_is_told_before_who_is_asked_for(tiny_base: Path, tellfin: Tellfin) -> None:
    """Somebody who is not known yet is told of a character that there is none of, not asked for a name first."""
    ran = tellfin("--base", tiny_base, "add", "statement", "taxon=tall vennet", "character=gil-rakers", "value=9",
                  "source=memory")
    assert "there is no character 'gil-rakers'" in ran.err and "--by" not in ran.err


def test_add_alone_says_the_kinds_and_their_fields(tiny_base: Path, tellfin: Tellfin) -> None:
    """Nobody is asked who they are before they know what can be added."""
    ran = tellfin("--base", tiny_base, "add")
    assert ran.code == 2 and "look-alike: taxon= other= separable=" in ran.err and "--by" not in ran.err
    assert "key of its own" in tellfin("--base", tiny_base, "add", "source").err


def test_memory_needs_no_source_of_its_own(tiny_base: Path, tellfin: Tellfin) -> None:
    """basis=memory fills the source in, source=src:memory and a source of practice fill the basis in."""
    for given, said in ((("basis=memory",), "source memory (memory)"), (("source=src:memory",), "(memory)"),
                        (("basis=common practice",), "source common-practice (common-practice)"),
                        (("source=memory",), "source memory (memory)")):
        ran = tellfin("--base", tiny_base, *RAKERS, *given, "--dry-run")
        assert ran.code == 0 and said in ran.out, (given, ran)
    assert "source=…" in tellfin("--base", tiny_base, *RAKERS, "basis=read", *BY).err


def test_commands_take_the_words_of_sheets(tiny_base: Path, tellfin: Tellfin) -> None:
    """region and source_key say what place and source say; given twice is refused."""
    for words in (("range", "taxon=slow ommar", "region=vennimoor", "status=introduced"),
                  ("name", "taxon=slow ommar", "name=mudder", "region=vennimoor", "kind=vernacular", "language=en"),
                  ("statement", "taxon=tall vennet", "character=maximum-length", "value=300-340")):
        ran = tellfin("--base", tiny_base, "add", *words, "source_key=memory", *BY)
        assert ran.code == 0, ran
    assert "range:ommaria-lenta.vennimoor.memory" in Index(tiny_base)
    ran = tellfin("--base", tiny_base, "correct", "name:ommaria-lenta.mudder", "region=", *BY, "--why", "everywhere")
    assert ran.code == 0 and "Vennimoor → (none)" in ran.out, ran
    ran = tellfin("--base", tiny_base, *RAKERS, "source=memory", "source_key=memory", "--dry-run")
    assert ran.code == 2 and "'source' is given twice" in ran.err


def test_a_trial_needs_no_name(tiny_base: Path, tellfin: Tellfin) -> None:
    """--dry-run asks nobody who they are and remembers nobody."""
    before = contents_of(tiny_base)
    assert tellfin("--base", tiny_base, *RAKERS, "basis=memory", "--dry-run").code == 0
    assert contents_of(tiny_base) == before
    assert "who makes the change" in tellfin("--base", tiny_base, *RAKERS, "basis=memory").err
    both = tellfin("--base", tiny_base, "correct", "st:vennia-rubra.gill-rakers.any.vell-2001", "value=9").err
    assert "--by NAME" in both and "--why TEXT" in both


def test_options_may_stand_before_the_fields(tiny_base: Path, tellfin: Tellfin) -> None:
    """--by between the kind and its fields is read as well as at the end."""
    ran = tellfin("--base", tiny_base, "add", "statement", *BY, *RAKERS[2:], "basis=memory")
    assert ran.code == 0, ran


def test_reading_commands_offer_the_nearest_names(tiny_base: Path, tellfin: Tellfin) -> None:
    """A fish that is not there cannot be meant as new by history, export or rename."""
    for words in (("history", "zander"), ("export", "-", "--taxon", "zander"),
                  ("rename", "zander", "--label", "x", "--from-source", "vell-2001", *BY)):
        ran = tellfin("--base", tiny_base, *words)
        assert ran.code == 1 and "nearest names are" in ran.err and "add the taxon" not in ran.err, ran


def test_a_retraction_taken_back_is_told_in_plain_words(tiny_base: Path, tellfin: Tellfin) -> None:
    """Undo says that the statement stands again and when it had been retracted."""
    key = "st:vennia-rubra.gill-rakers.any.memory"
    assert tellfin("--base", tiny_base, "retract", key, "--why", "slip", *BY).code == 0
    ran = tellfin("--base", tiny_base, "undo", "1")
    assert "stands again" in ran.out and "was retracted on" in ran.out and "invalidated" not in ran.out, ran


def test_after_a_split_the_old_name_leads_to_the_new_fishes(tiny_base: Path, tellfin: Tellfin) -> None:
    """The old English name kept by one part stands once: a command takes that part, and chat names no fish twice."""
    assert tellfin("--base", tiny_base, "split", "ember vennet", "--into", "Vennia rubra=ember vennet", "--into",
                   "Vennia aurea=gilt vennet", "--why", "Vell", "--from-source", "vell-2001", *BY).code == 0
    ran = tellfin("--base", tiny_base, "history", "ember vennet")
    assert ran.code == 0 and "may be" not in ran.err, ran
    said = tellfin("--base", tiny_base, "ask", "what is an ember vennet called").out
    assert said.count("True ember vennet") <= 1 and "ember vennet and ember vennet" not in said, said


def test_plurals_are_no_misspellings() -> None:
    """No name of the shipped base that is another one with an ending is called a misspelling."""
    index = Index(Path(__file__).parents[2] / "ontology")
    names: dict[str, dict[str, str]] = {}
    for key in index.ids("name"):
        node = index.node(key)
        assert node is not None
        text, kind = (str(getattr(node.props[p][0], "value", node.props[p][0])) for p in (
            "skosxl:literalForm", "tf:nameKind"))
        names.setdefault(str(node.props["tf:nameOf"][0]), {})[text] = kind
    wrong = [t for known in names.values() for t, kind in known.items()
             if kind == "tf:misspelling" and t.endswith("s") and t[:-1] in known]
    assert not wrong and sum(k == "tf:plural-name" for known in names.values() for k in known.values()) > 100
