"""A curator's desk: a warm editor does what a cold one does, notices others, and keeps no trace of what was refused."""

from __future__ import annotations

import random
import shutil
from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from assistant.curation.edit import add_record, correct_record, retract_record
from assistant.curation.history import Author
from assistant.curation.stores import FolderStore
from assistant.curation.transact import Outcome
from assistant.curation.view import Draft
from assistant.errors import DataError, UsageError
from assistant.graph import catalogue
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_shapes
from tests.graph.test_lines import everything
from tests.helpers.bases import contents_of

ON = date(2026, 7, 4)
AUTHOR = Author("Ansa Merrow", "count")
KEY = "st:vennia-rubra.gill-rakers.any.vell-2001"
Change = Callable[[Draft], None]


def correct(key: str, **fields: str) -> Change:
    """A change that corrects a record."""
    return lambda draft: (correct_record(draft, key, fields, AUTHOR.key, ON), None)[1]


def store_of(folder: Path) -> FolderStore:
    """The base of a folder, at a new desk."""
    return FolderStore(folder, shipped_shapes())


def make(store: FolderStore, change: Change, minute: int = 0) -> Outcome | str:
    """Make a change; gives what became of it, or why it could not be tried."""
    try:
        return store.transact(AUTHOR, datetime(2026, 7, 4, 12, minute, tzinfo=UTC), change)
    except (DataError, UsageError) as error:
        return str(error)


def changes(chance: random.Random, folder: Path) -> Change:
    """Some change, good or bad, of a base as it now stands."""
    index = Index(folder)
    key = chance.choice([k for p in ("st", "name", "taxon", "state", "src") for k in index.ids(p)])
    number = chance.randrange(100)
    return chance.choice([
        correct(key, basis=chance.choice(("memory", "read", "nonsense"))),
        correct(key, label=f"word {number}"), correct(KEY, value=f"9-{9 + number}"),
        lambda draft: retract_record(draft, key, "wrong", ON),
        lambda draft: (add_record(draft, "name", {"taxon": "vennia-rubra", "text": f"name {number}", "language": "en",
                                                  "kind": "vernacular", "source": "vell-2001", "basis": "read"},
                                  AUTHOR.key, ON), None)[1]])


def test_a_warm_editor_does_what_a_cold_one_does(tiny_base: Path, tmp_path: Path) -> None:
    """Sixty changes, good and bad: a held desk and a new one each time leave the same bytes and say the same."""
    twin = shutil.copytree(tiny_base, tmp_path / "twin" / "base")
    warm, chance, made = store_of(tiny_base), random.Random(9), 0
    for number in range(60):
        change = changes(chance, tiny_base)
        first, second = make(warm, change, number), make(store_of(twin), change, number)
        assert str(first) == str(second).replace(str(twin), str(tiny_base))
        made += isinstance(first, Outcome) and bool(first.change)
        assert contents_of(tiny_base) == contents_of(twin)
    assert 15 < made < 55
    assert everything(warm.index()) == everything(Index(tiny_base))


def test_another_editor_between_is_noticed(tiny_base: Path) -> None:
    """Changes by another process and by hand, before and after, all stand in the end."""
    mine, other = store_of(tiny_base), store_of(tiny_base)
    for number in range(6):
        outcome = make((mine, other)[number % 2], correct(KEY, n=str(number + 5)), number)
        assert isinstance(outcome, Outcome) and outcome.change.startswith(f"change:{number + 1:07d}")
    path = tiny_base / "taxa" / "vennidae" / "ommaria.ttl"
    path.write_text(path.read_text().replace("slow ommar", "slim ommar"))
    assert isinstance(make(mine, correct("taxon:ommaria-lenta", note="slim as seen")), Outcome)
    assert "slim ommar" in path.read_text() and "slim as seen" in path.read_text()


def test_a_refused_change_leaves_no_trace(tiny_base: Path) -> None:
    """What is refused changes neither the files nor what the desk knows, though it was laid over what it holds."""
    store, before = store_of(tiny_base), contents_of(tiny_base)
    known = everything(store.index())

    def spoil(draft: Draft) -> None:
        draft.edited("char:gill-rakers").props["tf:kind"] = ["tf:nonsense"]
        draft.drop("taxon:vennia-alta")

    outcome = make(store, spoil)
    assert isinstance(outcome, Outcome) and outcome.refused
    assert contents_of(tiny_base) == before and everything(store.index()) == known


def test_a_changed_vocabulary_is_read_again(tiny_base: Path) -> None:
    """A value that the vocabulary lists no longer is refused by a desk that knew it before."""
    store = store_of(tiny_base)
    assert isinstance(make(store, correct(KEY, frequency="often")), Outcome)
    path = tiny_base / "vocabulary" / "core.ttl"
    path.write_text(path.read_text().replace("tf:memory\n", "tf:hearsay\n", 1))
    outcome = make(store, correct(KEY, basis="memory", note="in part from memory"))
    assert isinstance(outcome, str) or outcome.refused


def test_an_edit_reads_only_what_it_needs(tiny_base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The second edit of a desk reads the files that the first has changed, and no other."""
    monkeypatch.setattr(catalogue, "RACY", 0)
    store = store_of(tiny_base)
    make(store, correct(KEY, n="5"))
    read: list[str] = []
    plain = catalogue.read_content
    monkeypatch.setattr(catalogue, "read_content", lambda path: (read.append(path.name), plain(path))[1])
    outcome = make(store, correct(KEY, n="6"))
    assert isinstance(outcome, Outcome) and outcome.change
    assert {"vennia.ttl", "agents.ttl"} == {n for n in read if not n.startswith("0")} and len(read) == 3
