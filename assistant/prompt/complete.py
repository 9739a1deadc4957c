"""Completion of names at the prompt, from a list made once: no look-up waits on anything (layer 6)."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document

from assistant.dialogue.answer import Asked
from assistant.model.knowledge import KnowledgeBase
from assistant.render.terminal import offered
from assistant.text import key

LONGEST = 5
"""Words before the cursor that are tried as the beginning of a name."""
MOST = 40
SHORTEST = 2
"""Letters that a word needs before names are offered for it."""
FISH, LATIN, CROSS, GROUP, PLACE, MADE_UP, FEATURE, TERM, WISH = (
    "fish", "scientific name", "cross", "group of fishes", "place", "place (made up)", "feature", "word", "wish")
WISHES = ("start over", "undo", "units metric", "units us", "help", "why", "sources", "more", "next", "skip",
          "not sure", "bye")
"""Plain words that steer the conversation; offered at the beginning of a line."""
MAIN, LOCAL, FOREIGN = range(3)
"""Names as the base prefers them come before local ones, those before other languages, Latin among them."""


@dataclass(frozen=True, slots=True)
class Entry:
    """A name that can be completed: as written, its kind (with what it stands for), how it ranks among equals."""

    text: str
    kind: str
    rank: int = MAIN


class NameList:
    """Every name of a base under each of its word beginnings, sorted."""

    def __init__(self, entries: Iterable[Entry]) -> None:
        """Make the list; entries that read alike are kept once, the first in rank."""
        best: dict[str, Entry] = {}
        for entry in entries:
            folded = key(entry.text)
            if folded and (folded not in best or entry.rank < best[folded].rank):
                best[folded] = entry
        self._rows = sorted(row for folded, entry in best.items() for row in _rows(folded, entry))
        self._entries = {entry.text: entry for entry in best.values()}

    def __len__(self) -> int:
        return len(self._entries)

    def starting(self, typed: str, most: int = MOST) -> list[Entry]:
        """The longer names that begin with a folded text, then those with a later word that does; best ranked first."""
        at = bisect_left(self._rows, (typed,))
        found = []
        while at < len(self._rows) and self._rows[at][0].startswith(typed):
            if self._rows[at][0] != typed or self._rows[at][2]:
                found.append(self._rows[at][1:])
            at += 1
        return [self._entries[text] for text in dict.fromkeys(r[3] for r in sorted(found))][:most]


def _rows(folded: str, entry: Entry) -> Iterator[tuple[str, int, bool, int, str]]:
    """(Rest of the name from a word on, rank, not from its first word, length, name) for each word of a name."""
    at = 0
    while at >= 0:
        yield folded[at:].lstrip(), entry.rank, at > 0, len(folded), entry.text
        at = folded.find(" ", at + 1)


def names_of(kb: KnowledgeBase) -> NameList:
    """The list of a base, made on first use and kept with it."""
    return kb.derived("prompt names", lambda base: NameList(_entries(base)))


def _entries(kb: KnowledgeBase) -> Iterator[Entry]:
    yield from _fishes(kb)
    yield from (Entry(text, GROUP) for group in kb.all("group") for text in (group.label, group.plural))
    for place in kb.all("place"):
        kind = MADE_UP if place.invented else PLACE
        yield Entry(place.label, kind)
        yield from (Entry(text, f"{kind}: {place.label}", LOCAL) for text in place.nicknames)
    for part in sorted({c.part for c in kb.characters if c.use == "identify"}):
        yield Entry(part.replace("-", " "), FEATURE)
    for character in kb.characters:
        yield Entry(character.label, FEATURE)
        yield Entry(character.trade, f"{FEATURE}: {character.label}", LOCAL)
    for term in kb.all("term"):
        yield Entry(term.label, TERM, LOCAL)


def _fishes(kb: KnowledgeBase) -> Iterator[Entry]:
    for taxon in kb.all("taxon"):
        if taxon.deprecated:
            continue
        yield Entry(taxon.label, CROSS if taxon.is_hybrid else FISH if taxon.is_species else taxon.rank)
        if not taxon.is_hybrid:
            yield Entry(taxon.scientific, f"{LATIN}: {taxon.label}", FOREIGN)
        for name in kb.names(taxon.id):
            if name.kind in ("vernacular", "former", "ambiguous"):
                told = "several" if name.kind == "ambiguous" else taxon.label
                yield Entry(name.text, f"{FISH}: {told}", LOCAL if name.language.startswith("en") else FOREIGN)
            elif name.kind == "synonym":
                yield Entry(name.text, f"{LATIN}: {taxon.label}", FOREIGN)


class NameCompleter(Completer):
    """Choices of the question asked back first, then wishes at the beginning of a line, then names."""

    def __init__(self, names: Callable[[], NameList | None], asked: Callable[[], Asked | None]) -> None:
        """``names`` gives the list, None while it is not ready; ``asked`` what is being asked."""
        self._names = names
        self._asked = asked

    def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterator[Completion]:
        """What may stand in the place of the words before the cursor."""
        before = document.text_before_cursor
        whole = key(before)
        for number, words in enumerate(offered(self._asked()), start=1):
            if not whole or f" {key(words)}".find(f" {whole}") >= 0:
                yield Completion(words, -len(before.lstrip()), display_meta=f"answer {number}")
        if whole:
            for wish in WISHES:
                if wish.startswith(whole):
                    yield Completion(wish, -len(before.lstrip()), display_meta=WISH)
        yield from self._named(before)

    def _named(self, before: str) -> Iterator[Completion]:
        names = self._names()
        for start in beginnings(before) if names is not None else ():
            typed = before[start:]
            folded = key(typed) + (" " if typed[-1:].isspace() else "")
            if len(folded.replace(" ", "")) < SHORTEST:
                continue
            found = names.starting(folded) if names is not None else []
            for entry in found:
                yield Completion(entry.text, start - len(before), display_meta=entry.kind)
            if found:
                return


def beginnings(before: str) -> list[int]:
    """Where the last words before the cursor begin, the longest stretch first.

    >>> beginnings("is it a white cra")
    [0, 3, 6, 8, 14]
    """
    starts = [at for at, char in enumerate(before) if not char.isspace() and (at == 0 or before[at - 1].isspace())]
    return starts[-LONGEST:]
