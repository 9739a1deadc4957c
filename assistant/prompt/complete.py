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
FISH, SCIENTIFIC, CROSS, GROUP, PLACE, MADE_UP, FEATURE, TERM, WISH = (
    "fish", "scientific name", "cross", "group of fishes", "place", "place (made up)", "feature", "word", "wish")
ORDER = (FISH, CROSS, GROUP, PLACE, MADE_UP, FEATURE, SCIENTIFIC, TERM)
WISHES = ("start over", "undo", "units metric", "units inches", "help", "why", "sources", "more", "next", "skip",
          "not sure", "bye")
"""Plain words that steer the conversation; offered at the beginning of a line."""
RANKS = {"genus": "genus", "family": "family", "subspecies": "subspecies"}


@dataclass(frozen=True, slots=True)
class Entry:
    """A name that can be completed: as written, its kind, what it is short for, how it ranks among equals."""

    text: str
    kind: str
    rank: int = 0

    @property
    def folded(self) -> str:
        """The form in which it is compared."""
        return key(self.text)


class NameList:
    """Every name of a base under each of its word beginnings, sorted."""

    def __init__(self, entries: Iterable[Entry]) -> None:
        """Make the list; entries that read alike are kept once, the first in rank."""
        best: dict[tuple[str, str], Entry] = {}
        for entry in entries:
            slot = (entry.folded, entry.kind.partition(":")[0])
            if slot[0] and (slot not in best or (entry.rank, entry.text) < (best[slot].rank, best[slot].text)):
                best[slot] = entry
        rows = []
        for (folded, _), entry in best.items():
            words = folded.split()
            for at in range(len(words)):
                rows.append((" ".join(words[at:]), at > 0, entry.rank, len(folded), entry.text, entry))
        self._rows = sorted(rows, key=lambda r: r[:5])
        self._keys = [r[0] for r in self._rows]

    def __len__(self) -> int:
        return len({id(r[5]) for r in self._rows})

    def starting(self, typed: str, most: int = MOST) -> list[Entry]:
        """The names that begin with a folded text, then those with a later word that does; best ranked first."""
        at = bisect_left(self._keys, typed)
        found = []
        while at < len(self._keys) and self._keys[at].startswith(typed):
            found.append(self._rows[at][1:])
            at += 1
        found.sort(key=lambda r: r[:4])
        return list(dict.fromkeys(r[4] for r in found))[:most]


def names_of(kb: KnowledgeBase) -> NameList:
    """The list of a base, made on first use and kept with it."""
    return kb.derived("prompt names", lambda base: NameList(_entries(base)))


def _entries(kb: KnowledgeBase) -> Iterator[Entry]:
    yield from _fishes(kb)
    for group in kb.all("group"):
        for text in {group.label, group.plural} - {""}:
            yield Entry(text, GROUP, 2)
    for place in kb.all("place"):
        for text in (place.label, *place.nicknames):
            yield Entry(text, MADE_UP if place.invented else PLACE, 3)
    for character in kb.characters:
        for text in {character.label, character.trade, *character.words} - {""}:
            yield Entry(text, FEATURE, 4 + (text != character.label))
    for term in kb.all("term"):
        yield Entry(term.label, TERM, 7)


def _fishes(kb: KnowledgeBase) -> Iterator[Entry]:
    for taxon in kb.all("taxon"):
        if taxon.deprecated:
            continue
        kind = CROSS if taxon.is_hybrid else RANKS.get(taxon.rank, FISH)
        yield Entry(taxon.label, kind, 0)
        if not taxon.is_hybrid:
            yield Entry(taxon.scientific, f"{SCIENTIFIC}: {taxon.label}", 6)
        for name in kb.names(taxon.id):
            if name.kind == "vernacular" and key(name.text) != key(taxon.label):
                yield Entry(name.text, f"{FISH}: {taxon.label}", 1)
            elif name.kind == "ambiguous":
                yield Entry(name.text, f"{FISH}: several", 1)
            elif name.kind == "synonym":
                yield Entry(name.text, f"{SCIENTIFIC}: {taxon.label}", 7)


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
