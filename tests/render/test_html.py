"""Printed pages: self-contained, no script, nothing fetched, text escaped, alternative text in place."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest

from assistant.dialogue.beside.comparison import compare
from assistant.dialogue.lessons.key import lesson_key
from assistant.dialogue.lessons.sheet import lesson_sheet
from assistant.model.knowledge import KnowledgeBase
from assistant.reasoning.selection import species_below
from assistant.render.html import NO_BREAK, comparison_page, key_page, sheet_page

THREE = ("lepomis-macrochirus", "lepomis-microlophus", "lepomis-gibbosus")


class Tags(HTMLParser):
    """Collects tags with their attributes."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str | None]]] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Note a tag."""
        self.found.append((tag, dict(attrs)))


def tags_of(page: str) -> list[tuple[str, dict[str, str | None]]]:
    """The tags of a page."""
    parser = Tags()
    parser.feed(page)
    return parser.found


@pytest.fixture(scope="module")
def page(kb: KnowledgeBase) -> str:
    """A sheet for three sunfishes."""
    return sheet_page(kb, lesson_sheet(kb, THREE, "picture", "young"))


def test_sheet_is_self_contained(page: str) -> None:
    """No script, no style sheet, image or font from elsewhere; links go nowhere but into the page."""
    tags = tags_of(page)
    assert not {"script", "link", "img", "iframe", "object", "form"} & {t for t, _ in tags}
    assert all((a.get("href") or "#").startswith("#") for _, a in tags)
    assert not re.search(r"url\(\s*['\"]?(?!#)", page) and "@import" not in page
    assert "://" not in page.replace("http://www.w3.org/2000/svg", "")


def test_drawings_have_words(page: str) -> None:
    """Every drawing is an image with a title and a description of its own."""
    drawings = [a for t, a in tags_of(page) if t == "svg"]
    assert len(drawings) == 3
    ids = {a.get("id") for _, a in tags_of(page)}
    assert all(a.get("role") == "img" and set((a["aria-labelledby"] or "").split()) <= ids for a in drawings)
    assert len(re.findall(r"<desc[^>]*>[^<]{30,}</desc>", page)) == 3


def test_ids_are_unique(page: str) -> None:
    """No two elements share an id."""
    ids = [a["id"] for _, a in tags_of(page) if "id" in a]
    assert len(ids) == len(set(ids))


def test_sheet_says_what_it_is(page: str) -> None:
    """The sheet holds its table, key, words, safety strip and sources, and says that it is not to scale."""
    for text in ("not to scale", "Side by side", "Key", "Words", "Safe hands", "Sources", "check your own local rules"):
        assert text in page
    assert '<html lang="en">' in page and '<th scope="col">' in page and '<th scope="row">' in page


def test_a_fish_bears_the_numbers_of_what_is_recorded_of_it(kb: KnowledgeBase) -> None:
    """Where the table says "not recorded" of a fish, its drawing has no ring with that number."""
    page = sheet_page(kb, lesson_sheet(kb, species_below(kb, "esocidae")))
    rows = re.findall(r'<tr><th scope="row"><span class="ring">(\d+)</span>(.*?)</tr>', page, re.DOTALL)
    cells = {number: re.findall(r"<td.*?</td>", row, re.DOTALL) for number, row in rows}
    drawings = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
    assert len(drawings) == 5 and any("not recorded" in c for found in cells.values() for c in found)
    for i, drawing in enumerate(drawings):
        told = {number for number, found in cells.items() if "not recorded" not in found[i]}
        assert set(re.findall(r">(\d+)</text>", drawing)) == told


def test_numbers_run_through(page: str) -> None:
    """The rows of the table are numbered from one on without a gap, numbered rows first, and every fish bears them."""
    rows = re.findall(r'<tr><th scope="row">(?:<span class="ring">(\d+)</span>)?', page)
    numbers = [int(n) for n in rows if n]
    assert numbers == list(range(1, len(numbers) + 1)) and len(numbers) > 3 and all(rows[: len(numbers)])
    for drawing in re.findall(r"<svg.*?</svg>", page, re.DOTALL):
        assert sorted(int(n) for n in re.findall(r">(\d+)</text>", drawing)) == numbers


def test_many_fishes_stand_in_tables_that_fit(kb: KnowledgeBase) -> None:
    """Eight fishes are set in two tables of four columns, every fish in one of them."""
    made = lesson_sheet(kb, species_below(kb, "lepomis")[:8], "picture")
    page = sheet_page(kb, made)
    assert made.table.columns() == ((0, 4), (4, 8))
    assert page.count("<table") == 2 and all(page.count(f'<th scope="col">{n}</th>') == 1 for n in made.table.names)


def test_titles_are_escaped(kb: KnowledgeBase) -> None:
    """Markup in a title stays text."""
    made = sheet_page(kb, lesson_sheet(kb, THREE[:2], title="<script>alert(1)</script>"))
    assert "<script" not in made and "&lt;script&gt;" in made


def test_other_pages(kb: KnowledgeBase) -> None:
    """Comparisons and keys make pages without script as well."""
    made = [comparison_page(compare(kb, THREE), True), key_page(kb, lesson_key(kb, THREE))]
    assert all("<script" not in m and m.startswith("<!DOCTYPE html>") for m in made)


def test_ink_stands_out_from_paper(page: str) -> None:
    """Text colours of the page have a contrast of 7 to 1 or more with white (WCAG 2.2, relative luminance)."""
    colours = set(re.findall(r"[;{\s]color: ?(#[0-9a-f]{6}|#[0-9a-f]{3})", page))
    assert colours and all(contrast_with_white(c) >= 7 for c in colours)


def contrast_with_white(colour: str) -> float:
    """The contrast ratio of a colour with white."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * c for c in colour[1:])
    parts = [int(digits[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    r, g, b = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return 1.05 / (0.2126 * r + 0.7152 * g + 0.0722 * b + 0.05)


def test_numbers_stay_with_their_units(kb: KnowledgeBase) -> None:
    """No length on a sheet can break between its number and its unit."""
    page = sheet_page(kb, lesson_sheet(kb, THREE, "picture", "young"))
    captions = re.findall(r"<small>(usually.*?)</small>", page)
    assert len(captions) == 3 and not any(re.search(r"\d (?:in|mm|cm)\b", text) for text in captions)
    assert all(text.count(NO_BREAK) == 2 for text in captions)
