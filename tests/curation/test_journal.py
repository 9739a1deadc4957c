"""Several files changed as one: at whatever step it stops, the old or the new state stands."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.curation import journal
from assistant.curation.journal import commit, locked, recover
from assistant.errors import DataError, ToolError

OLD, NEW = {"a.ttl": b"old a\n", "b/c.ttl": b"old c\n"}, {"a.ttl": b"new a\n", "b/c.ttl": None, "d/e.ttl": b"new e\n"}


class Killed(BaseException):
    """Stands for a kill: nothing catches it."""


@pytest.fixture()
def base(tmp_path: Path) -> Path:
    """A folder in its old state."""
    for name, data in OLD.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_bytes(data)
    return tmp_path


def state(base: Path) -> dict[str, bytes]:
    """The Turtle files that stand."""
    return {p.relative_to(base).as_posix(): p.read_bytes() for p in sorted(base.rglob("*.ttl"))}


@pytest.mark.parametrize("step", range(12))
def test_a_stop_at_any_step_leaves_old_or_new(step: int, base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Each system call that the commit makes is the last one once; after recovery one of the two states stands."""
    calls = 0

    def stopping(real):  # type: ignore[no-untyped-def]
        def call(*args: object) -> object:
            nonlocal calls
            if calls == step:
                raise Killed
            calls += 1
            return real(*args)
        return call

    with monkeypatch.context() as patch:
        for name in ("write_synced", "move", "sync_folder"):
            patch.setattr(journal, name, stopping(getattr(journal, name)))
        try:
            with locked(base):
                commit(base, NEW)
        except Killed:
            pass
    recover(base)
    new = {k: v for k, v in NEW.items() if v is not None}
    assert state(base) in (OLD, new)
    assert state(base) == new if step >= 9 else True
    with locked(base):
        commit(base, {"z.ttl": b"z\n"})
    assert state(base)["z.ttl"] == b"z\n" and not (base / ".tellfin" / "stage").exists()


def test_a_disk_that_is_full_changes_nothing(base: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A write that fails while staging is told as such; the old state stands and the next change works."""
    def full(path: Path, data: bytes) -> None:
        raise ToolError("cannot be written: No space left on device", "", str(path))

    with monkeypatch.context() as patch:
        patch.setattr(journal, "write_synced", full)
        with pytest.raises(ToolError) as caught, locked(base):
            commit(base, NEW)
    assert "No space left" in caught.value.message and "nothing was changed" in caught.value.hint
    assert state(base) == OLD
    with locked(base):
        commit(base, NEW)
    assert "d/e.ttl" in state(base)


def test_a_second_writer_waits_and_says_so(base: Path) -> None:
    """While one holds the base another is told, after its patience, that it is held."""
    with locked(base), pytest.raises(ToolError) as caught, locked(base, wait=0.05):
        raise AssertionError
    assert "another change has held the base" in caught.value.message


def test_a_damaged_journal_is_not_guessed_at(base: Path) -> None:
    """A journal that cannot be read stops every change and says what to do."""
    with locked(base):
        (base / ".tellfin" / "journal.json").write_bytes(b"{half")
    with pytest.raises(DataError) as caught:
        recover(base)
    assert "tellfin check" in caught.value.hint and state(base) == OLD
