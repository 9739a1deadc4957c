"""The record of changes: listing, taking back, replaying a version, comparing bases."""

from __future__ import annotations

from pathlib import Path

from assistant.curation.check import check_folder
from assistant.curation.history import read_changes
from assistant.curation.view import many, one
from assistant.graph.locate import shipped_shapes
from tests.helpers.bases import Tellfin, contents_of, knowledge_of

RAKERS = "st:vennia-rubra.gill-rakers.any.vell-2001"
BY = ("--by", "Ansa Merrow", "--why", "counted again", "--from-source", "vell-2001")


def edit_thrice(base: Path, tellfin: Tellfin) -> None:
    """A correction, a retraction and an addition."""
    for words in (("correct", RAKERS, "value=9-11"), ("retract", "st:vennia-rubra.gill-rakers.any.memory"),
                  ("add", "range", "taxon=vennia-rubra", "place=vennimoor", "status=introduced", "source=vell-2001",
                   "basis=read")):
        assert tellfin("--base", base, *words, *BY).code == 0


def test_a_change_says_who_when_why_and_whence(tiny_base: Path, tellfin: Tellfin) -> None:
    """Each change is a node with agent, time, reason, source, the triples it took and gave, and the version before."""
    version = knowledge_of(tiny_base).version
    edit_thrice(tiny_base, tellfin)
    changes = read_changes(tiny_base)
    assert [one(c, "tf:changeNumber") for c in changes] == ["1", "2", "3"]
    first = changes[0]
    assert one(first, "prov:wasAssociatedWith") == "agent:ansa-merrow" and one(first, "tf:why") == "counted again"
    assert many(first, "dcterms:source") == ["src:vell-2001"] and one(first, "tf:versionBefore") == version
    assert f"{RAKERS} tf:low 9.0" in many(first, "tf:added") and f"{RAKERS} tf:low 8.0" in many(first, "tf:removed")
    assert check_folder(tiny_base, shipped_shapes()).passed


def test_history_is_listed_newest_first_and_by_thing(tiny_base: Path, tellfin: Tellfin) -> None:
    """history names changes in words; a taxon or a statement narrows it."""
    edit_thrice(tiny_base, tellfin)
    lines = tellfin("--base", tiny_base, "history").out.splitlines()
    assert lines[0].startswith("3  ") and lines[-1] == "3 changes"
    assert "8–10 → 9–11" in tellfin("--base", tiny_base, "history", RAKERS).out
    second = tellfin("--base", tiny_base, "history", "2").out.splitlines()
    assert second[0].startswith("2  ") and second[-1] == "1 change"
    assert "no change '9'" in tellfin("--base", tiny_base, "history", "9").err
    assert tellfin("--base", tiny_base, "history", "tall vennet").out.splitlines()[-1] == "0 changes"
    assert tellfin("--base", tiny_base, "history", "ember vennet").out.splitlines()[-1] == "3 changes"


def test_undo_restores_the_bytes(tiny_base: Path, tellfin: Tellfin) -> None:
    """Taking changes back gives every file but the history the bytes it had, also for a record that was taken out."""
    tellfin("--base", tiny_base, "retract", "range:vennia-alta.vennimoor.vell-2001", *BY)
    before = contents_of(tiny_base)
    edit_thrice(tiny_base, tellfin)
    for number in ("4", "3", "2", "1"):
        assert tellfin("--base", tiny_base, "undo", number, "--why", "slip").code == 0
    after = contents_of(tiny_base)
    kept = {k: v for k, v in after.items() if not k.startswith("changes/")}
    assert kept["ranges/vennidae/vennia.ttl"] != before["ranges/vennidae/vennia.ttl"]
    assert kept["taxa/vennidae/vennia.ttl"] == before["taxa/vennidae/vennia.ttl"]
    again = tellfin("--base", tiny_base, "undo", "1", "--why", "slip")
    assert again.code == 1 and "already undone by change 8" in again.err


def test_undo_refuses_when_something_later_stands_on_it(tiny_base: Path, tellfin: Tellfin) -> None:
    """A change that was overwritten cannot be taken back before the later one is."""
    tellfin("--base", tiny_base, "correct", RAKERS, "value=9-11", *BY)
    tellfin("--base", tiny_base, "correct", RAKERS, "value=9-12", *BY)
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, "undo", "1", "--why", "slip")
    assert ran.code == 1 and "undo change 2 first" in ran.err and contents_of(tiny_base) == before


def test_any_version_comes_back_exactly(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """Each version that a change names is rebuilt byte for byte into a folder of its own."""
    kept = []
    for number in range(3):
        kept.append((knowledge_of(tiny_base).version, contents_of(tiny_base)))
        tellfin("--base", tiny_base, "correct", RAKERS, f"high={12 + number}", *BY)
    for place, (version, contents) in enumerate(kept):
        into = tmp_path / f"old{place}"
        assert tellfin("--base", tiny_base, "history", "--at", version, "--into", into).code == 0
        assert contents_of(into) == contents and knowledge_of(into).version == version


def test_a_version_touched_by_hand_is_not_claimed(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """When files were edited in other ways the replay says so and leaves nothing behind."""
    version = knowledge_of(tiny_base).version
    tellfin("--base", tiny_base, "correct", RAKERS, "value=9-11", *BY)
    path = tiny_base / "sources/papers.ttl"
    path.write_text(path.read_text().replace("2001\" ;", "2002\" ;"))
    ran = tellfin("--base", tiny_base, "history", "--at", version, "--into", tmp_path / "old")
    assert ran.code == 1 and "cannot be brought back exactly" in ran.err and not (tmp_path / "old").exists()
    assert tellfin("--base", tiny_base, "history", "--at", "0" * 16, "--into", tmp_path / "old").code == 2


def test_bases_are_compared_in_words(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """compare-bases says what differs as a person would, with the source."""
    version = knowledge_of(tiny_base).version
    edit_thrice(tiny_base, tellfin)
    tellfin("--base", tiny_base, "history", "--at", version, "--into", tmp_path / "old")
    ran = tellfin("compare-bases", tmp_path / "old", tiny_base)
    assert ran.code == 0
    assert "ember vennet, gill rakers: 8–10 → 9–11, source vell-2001" in ran.out
    assert "new range: ember vennet in Vennimoor: introduced, source vell-2001" in ran.out
    assert "statement retracted: ember vennet, gill rakers" in ran.out
    assert tellfin("compare-bases", tiny_base, tiny_base).out.strip() == "0 differences"


def test_a_base_that_cannot_be_changed_still_shows_its_history(tellfin: Tellfin) -> None:
    """The shipped base has no change and nothing waiting, and says so."""
    assert tellfin("history").out.strip() == "0 changes"
    assert tellfin("split", "--queue").out.strip() == "0 records waiting"


def test_what_was_added_and_taken_back_is_told_as_retracted(tiny_base: Path, tmp_path: Path, tellfin: Tellfin) -> None:
    """A statement that only the newer base holds, retracted, is not told as one that stands."""
    before = knowledge_of(tiny_base).version
    added = ("add", "statement", "taxon=tall vennet", "character=maximum-length", "value=300-340", "source=vell-2001",
             "basis=read")
    assert tellfin("--base", tiny_base, *added, *BY).code == 0
    assert tellfin("--base", tiny_base, "retract", "st:vennia-alta.maximum-length.any.vell-2001", *BY).code == 0
    assert tellfin("--base", tiny_base, "history", "--at", before, "--into", tmp_path / "old").code == 0
    out = tellfin("compare-bases", tmp_path / "old", tiny_base).out
    assert "new statement, already retracted: tall vennet" in out and "new statement:" not in out
