"""How a statement is known goes with the source it names."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.curation.provenance import basis_of
from assistant.graph.lines import Index
from tests.helpers.bases import Tellfin, contents_of

LONGEST = ("add", "statement", "taxon=tall vennet", "character=maximum-length", "value=300-340", "--by", "Ansa Merrow")


@pytest.mark.parametrize(("source", "basis", "said"), [
    ("vell-2001", "memory", "basis memory from src:vell-2001"),
    ("common-practice", "memory", "basis memory from src:common-practice"),
    ("memory", "read", "basis read from src:memory"),
    ("vell-2001", "common-practice", "basis common-practice from src:vell-2001")])
def test_a_basis_needs_a_source_of_its_kind(source: str, basis: str, said: str, tiny_base: Path,
                                            tellfin: Tellfin) -> None:
    """A new statement, and a correction, that name another one are refused and say so in a line."""
    before = contents_of(tiny_base)
    ran = tellfin("--base", tiny_base, *LONGEST, f"source={source}", f"basis={basis}")
    assert ran.code == 1 and said in ran.err and len(ran.err.splitlines()) == 2, ran
    ran = tellfin("--base", tiny_base, "correct", "st:vennia-rubra.gill-rakers.any.vell-2001", f"source={source}",
                  f"basis={basis}", *LONGEST[-2:], "--why", "trial")
    assert ran.code == 1 and said in ran.out and contents_of(tiny_base) == before, ran


def test_a_note_tells_what_of_a_work_is_from_memory(tiny_base: Path, tellfin: Tellfin) -> None:
    """A statement of which the work gives a part stands with its note."""
    ran = tellfin("--base", tiny_base, *LONGEST, "source=vell-2001", "basis=memory", "note=the most is from memory")
    assert ran.code == 0, ran


def test_the_basis_of_a_rename_is_that_of_its_sources(tiny_base: Path) -> None:
    """Read where one of them is a work, else common practice, else memory."""
    index = Index(tiny_base)
    assert [basis_of(keys, index) for keys in (("src:memory", "src:vell-2001"), ("src:common-practice",),
                                               ("src:memory",))] == ["tf:read", "tf:common-practice", "tf:memory"]
