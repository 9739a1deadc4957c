"""The index of subjects: the same nodes as parsing, the right lines, the right referrers."""

from __future__ import annotations

from pathlib import Path

from assistant.graph.lines import Index
from tests.helpers.bases import files_of


def test_the_index_gives_what_parsing_gives(tiny_base: Path) -> None:
    """Every node read on demand from its block is the node that a whole parse makes, at the line where it stands."""
    index = Index(tiny_base)
    assert not index.odd
    for path, nodes in files_of(tiny_base):
        rows = path.read_text().splitlines()
        assert index.in_file(path) == sorted(nodes)
        for key, node in nodes.items():
            found = index.node(key)
            assert found is not None and found.props == node.props
            name, _, line = index.where(key).rpartition(":")
            assert name == path.relative_to(tiny_base).as_posix()
            assert rows[int(line) - 1] in (key, "<https://tellfin.example/vocab/>")


def test_a_hand_made_file_is_parsed_whole(tiny_base: Path) -> None:
    """A file with semicolons in its own way, comments and a literal over two lines is indexed all the same."""
    path = tiny_base / "sources" / "hand.ttl"
    path.write_text('@prefix src: <https://tellfin.example/source/> .\n@prefix dcterms: <http://purl.org/dc/terms/> .\n'
                    '# a note\nsrc:one dcterms:title """two\nlines ;""" ; dcterms:issued "1" .\n')
    index = Index(tiny_base)
    node = index.node("src:one")
    assert index.odd == {path} and node is not None and node.props["dcterms:title"][0].value == "two\nlines ;"  # type: ignore[union-attr]
    assert index.where("src:one") == "sources/hand.ttl:4"


def test_referrers_and_texts(tiny_base: Path) -> None:
    """Who points to a node, and who bears a text, are found in both kinds of files."""
    index = Index(tiny_base)
    assert index.referrers("state:jaw-reach.past-eye") == ["st:vennia-alta.jaw-reach.any.vell-2001"]
    assert index.referrers("taxon:vennia") == ["taxon:vennia-alta", "taxon:vennia-rubra"]
    assert index.with_text("skos:prefLabel", "EMBER vennet", "taxon") == ["taxon:vennia-rubra"]
    found = index.with_text("skosxl:literalForm", "redfin", "name")
    assert found == ["name:vennia-alta.redfin", "name:vennia-rubra.redfin"]
    assert index.node("taxon:nobody") is None and index.where("taxon:nobody") == ""


def test_a_subject_that_stands_twice_is_told(tiny_base: Path) -> None:
    """The second place of a subject is kept apart, within a file and across files."""
    path = tiny_base / "sources" / "papers.ttl"
    block = path.read_text().split("\n\n")[1]
    path.write_text(path.read_text() + "\n" + block.rstrip("\n") + "\n")
    assert [key for key, _ in Index(tiny_base).double] == ["src:vell-2001"]


def everything(index: Index) -> object:
    """All that an index says."""
    nodes = index.all_nodes()
    return (sorted(index.spots.items()), {k: (n.props, n.file) for k, n in nodes.items()}, index.double, index.odd,
            {p: index.ids(p) for p in {k.partition(":")[0] for k in nodes}}, index.contents, index.digests())
