"""Numbers that no fish comes near."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from assistant.curation.siblings import beyond_all
from assistant.graph.lines import Index
from assistant.graph.locate import shipped_ontology
from assistant.graph.values import Literal, Node
from tests.helpers.bases import Tellfin

SPINES = ("add", "statement", "taxon=black crappie", "character=dorsal-spines", "source=memory", "--by", "Ansa Merrow")


@pytest.fixture(scope="module")
def whole_base(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped base."""
    return Path(shutil.copytree(shipped_ontology(), tmp_path_factory.mktemp("whole") / "base"))


def test_a_number_that_no_fish_shows_is_refused(whole_base: Path, tellfin: Tellfin) -> None:
    """9000 dorsal spines, or 6 to 90, are an error that names what the others show; a note settles it."""
    for value in ("9000", "6-90"):
        ran = tellfin("--base", whole_base, *SPINES, f"value={value}")
        assert ran.code == 1 and "error: beyond every fish" in ran.out and "expected 0 to 18" in ran.out, ran
    assert tellfin("--base", whole_base, *SPINES, "value=9000", "note=counted twice", "--dry-run").code == 0
    assert tellfin("--base", whole_base, *SPINES, "value=9", "--dry-run").code == 0


def test_beyond_is_three_times_the_most_or_a_third_of_the_least() -> None:
    """Of a length all other fishes of the base give the span; retracted statements and notes are left alone."""
    def longest(value: str, **more: list[str | Literal]) -> Node:
        props = {"rdf:type": ["tf:NumberStatement"], "tf:taxon": ["taxon:lepomis-gibbosus"],
                 "tf:character": ["char:max-total-length"], "tf:low": [Literal(value, "xsd:decimal")]}
        return Node(f"st:new-{value}", {**props, **{k.replace("_", ":"): v for k, v in more.items()}})

    nodes = [longest(v) for v in ("9.0", "11.0", "9000.0", "9200.0")]
    nodes += [longest("9300.0", prov_invalidatedAtTime=[Literal("2026-07-04")]),
              longest("9400.0", skos_editorialNote=[Literal("x")])]
    found = [node.id for node, _, _ in beyond_all(nodes, Index(shipped_ontology()))]
    assert found == ["st:new-9.0", "st:new-9200.0"]
