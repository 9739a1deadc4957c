"""The sheet opened in a real browser without a window: no complaint, nothing fetched, two pages, drawn fishes seen.

Marked long; skips, and says so, only where no Chromium can be had.
"""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import zlib
from pathlib import Path

import pytest

from assistant.dialogue.lessons.sheet import lesson_sheet
from assistant.model.knowledge import KnowledgeBase
from assistant.render.html import sheet_page

pytestmark = pytest.mark.long
FLAGS = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
         "--disable-background-networking",
         "--disable-component-update", "--disable-sync", "--disable-extensions", "--mute-audio")
LESSONS = {
    "sunfishes": ("lepomis-macrochirus", "lepomis-microlophus", "lepomis-gibbosus"),
    "perches": ("sander-vitreus", "sander-canadensis", "perca-flavescens"),
    "trouts": ("salvelinus-fontinalis", "salmo-trutta", "oncorhynchus-mykiss"),
    "catfishes": ("ictalurus-punctatus", "ictalurus-furcatus", "pylodictis-olivaris"),
    "long fishes": ("lota-lota", "amia-calva", "channa-argus"),
    "four trouts": ("salmo-trutta", "salvelinus-fontinalis", "oncorhynchus-mykiss", "salvelinus-namaycush"),
    "eight": ("lepomis-macrochirus", "lepomis-gibbosus", "lepomis-microlophus", "lepomis-cyanellus", "lepomis-gulosus",
              "ambloplites-rupestris", "pomoxis-nigromaculatus", "pomoxis-annularis"),
    "six": ("esox-lucius", "esox-masquinongy", "esox-niger", "lepisosteus-osseus", "amia-calva", "ictalurus-punctatus"),
}


@pytest.fixture(scope="module")
def browser() -> str:
    """The path of a Chromium."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        pytest.skip("no Chromium on this machine: install Debian's package chromium to run the browser tests")
    return found


def opened(browser: str, page: Path, folder: Path, *flags: str) -> str:
    """Open a page with more flags and return what the browser wrote to standard error."""
    command = [browser, *FLAGS, f"--user-data-dir={folder / 'profile'}", "--enable-logging=stderr", *flags,
               page.as_uri()]
    return subprocess.run(command, capture_output=True, text=True, timeout=120, check=True).stderr


def written(kb: KnowledgeBase, name: str, folder: Path) -> Path:
    """The sheet of a lesson as a file."""
    page = folder / "sheet.html"
    page.write_text(sheet_page(kb, lesson_sheet(kb, LESSONS[name], "picture", "young")), encoding="utf-8")
    return page


@pytest.mark.parametrize("name", LESSONS)
def test_sheets_print_on_few_pages(kb: KnowledgeBase, browser: str, tmp_path: Path, name: str) -> None:
    """A sheet for three to six fishes prints to two pages or fewer, for eight to three, and the console is silent."""
    pdf = tmp_path / "sheet.pdf"
    said = opened(browser, written(kb, name, tmp_path), tmp_path, f"--print-to-pdf={pdf}", "--no-pdf-header-footer")
    assert "CONSOLE" not in said
    counts = [int(n) for n in re.findall(rb"/Count (\d+)", pdf.read_bytes())]
    assert counts and 1 <= max(counts) <= (2 if len(LESSONS[name]) <= 6 else 3)


def asked_by(browser: str, page: Path, folder: Path) -> set[str]:
    """The addresses that a page made the browser ask for; what the browser asks of itself has no page behind it."""
    log = folder / "net.json"
    opened(browser, page, folder, f"--log-net-log={log}", f"--screenshot={folder / 'x.png'}")
    text = log.read_text(encoding="utf-8").rstrip().rstrip(",")
    events = json.loads(text if text.endswith("}") else text + "]}")["events"]
    told = [e["params"] for e in events if isinstance(e.get("params"), dict) and "url" in e["params"]]
    return {p["url"] for p in told if p.get("initiator", "not an origin") != "not an origin"}


def test_nothing_is_fetched(kb: KnowledgeBase, browser: str, tmp_path: Path) -> None:
    """The network log names no address that the sheet asked for; a page with a picture elsewhere is caught."""
    assert not asked_by(browser, written(kb, "sunfishes", tmp_path), tmp_path)
    control = tmp_path / "control.html"
    control.write_text('<img src="http://nowhere.invalid/x.png" alt="">', encoding="utf-8")
    assert "http://nowhere.invalid/x.png" in asked_by(browser, control, tmp_path)


def test_screen_is_drawn(kb: KnowledgeBase, browser: str, tmp_path: Path) -> None:
    """The page is not blank: the upper part of a screenshot, where the fishes are, holds many shades."""
    shot = tmp_path / "sheet.png"
    opened(browser, written(kb, "sunfishes", tmp_path), tmp_path, f"--screenshot={shot}", "--window-size=900,500")
    assert len(set(pixels(shot.read_bytes()))) > 40


def pixels(png: bytes) -> bytes:
    """The filtered bytes of a PNG's picture data (enough to tell a blank page)."""
    data, at = b"", 8
    while at < len(png):
        size = int.from_bytes(png[at : at + 4], "big")
        if png[at + 4 : at + 8] == b"IDAT":
            data += png[at + 8 : at + 8 + size]
        at += 12 + size
    return zlib.decompress(data)
