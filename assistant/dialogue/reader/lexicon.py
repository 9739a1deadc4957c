"""What the base calls things, looked up word by word while a line is read (layer 4).

Everything comes from the spoken index of the base; nothing is listed here. One lexicon belongs to one knowledge base.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import Any, NamedTuple, TypeVar

from assistant.model.knowledge import KnowledgeBase
from assistant.model.records import Character
from assistant.model.spelling import allowed, distance, near_keys, sound
from assistant.model.stems import Stem, stems_of
from assistant.text import key, singular

Entry = tuple[str, str, str]
T = TypeVar("T")
NOT_ON_FISH = frozenset(("hybrid", "life", "place"))
"""Parts under which the base files what is not seen on a fish."""
TOLD_BY = ("identify", "describe")
"""Uses of the characters by which a fish is told."""
SLIPPED = 5
"""Letters of a word, at least, that may be a word of the base mistyped."""
MOST_KEPT = 20_000
"""Entries that each look-up remembers."""
KIND = "kind-"
"""Cues of words that stand for a kind of fish begin so: kind-sunfish holds "sunny"."""
CUE = "cue-"
"""Ids of the word families that hold cues begin so."""


class Phrase(NamedTuple):
    """A phrase of a state or character as stems; ``alone`` when it needs no further noun."""

    stems: tuple[str, ...]
    plurals: tuple[bool, ...]
    ordered: bool
    denies: bool
    kind: str
    id: str
    alone: bool

    @property
    def character(self) -> str:
        """The character it speaks of."""
        return self.id.partition(".")[0]


class Lexicon:
    """Look-ups into the spoken index of one base, remembered up to a bound."""

    def __init__(self, kb: KnowledgeBase) -> None:
        self.kb = kb
        self._phrases: dict[str, tuple[Phrase, ...]] = {}
        self._spoken: dict[str, tuple[Entry, ...]] = {}
        self._cues: dict[str, tuple[str, ...]] = {}
        self._heads: dict[str, str | None] = {}
        self._near: dict[str, tuple[str, ...]] = {}
        self._counts: dict[str, int] = {}
        self._gists: dict[str, tuple[int, float | None, float | None]] = {}
        self._known: dict[str, bool] = {}

    def spoken(self, phrase: str) -> tuple[Entry, ...]:
        """What a folded phrase stands for; empty when unknown."""
        found = self._spoken.get(phrase)
        if found is None:
            found = _keep(self._spoken, phrase, self.kb.spoken(phrase))
        return found

    def cues(self, phrase: str) -> tuple[str, ...]:
        """The cue families a folded phrase belongs to, without their prefix."""
        found = self._cues.get(phrase)
        if found is None:
            made = tuple(e[1].removeprefix(CUE) for e in self.spoken(phrase) if e[0] == "cue")
            found = _keep(self._cues, phrase, made)
        return found

    def head(self, phrase: str) -> str | None:
        """The head of the synonym family of a folded phrase, None when it has none."""
        if phrase not in self._heads:
            families = sorted(e[1] for e in self.spoken(phrase) if e[0] == "synonyms")
            head = families[0].removeprefix("family-").replace("-", " ") if families else None
            return _keep(self._heads, phrase, head)
        return self._heads[phrase]

    def stems(self, words: Iterable[str]) -> tuple[Stem, ...]:
        """The stems of folded words."""
        return stems_of(tuple(words), self.head)

    def phrases(self, anchor: str) -> tuple[Phrase, ...]:
        """The phrases filed under a stem."""
        found = self._phrases.get(anchor)
        if found is None:
            found = _keep(self._phrases, anchor, tuple(map(_phrase, self.kb.store.get("pattern", anchor) or ())))
        return found

    def count(self, stem: str) -> int:
        """In how many phrases of states and characters a stem occurs."""
        found = self._counts.get(stem)
        if found is None:
            row = self.kb.store.get("stem", stem)
            found = _keep(self._counts, stem, int(row[0]) if row else 0)
        return found

    def gist(self, character: str) -> tuple[int, float | None, float | None]:
        """How many statements use a character, and the lowest and highest number stated."""
        found = self._gists.get(character)
        if found is None:
            row = self.kb.store.get("gist", character)
            found = _keep(self._gists, character, (int(row[0]), row[1], row[2]) if row else (0, None, None))
        return found

    def counted(self, character: str) -> str:
        """The stem of what a count counts ("spin" of "dorsal fin spines", "bar" of "bar count")."""
        words = [w for w in key(self.kb.character(character).trade).split() if singular(w) != "count"]
        stems = self.stems(words[-1:])
        return stems[0].text if stems else ""

    @cached_property
    def count_nouns(self) -> frozenset[str]:
        """The stems of all that is counted on a fish to tell it."""
        return frozenset(
            self.counted(c.id) for c in self.kb.characters if c.kind == "count" and c.use == "identify"
        )

    @cached_property
    def ratios(self) -> tuple[Character, ...]:
        """The characters that are one measure over another."""
        return tuple(c for c in self.kb.characters if c.kind == "ratio" and c.use == "identify")

    @cached_property
    def tints(self) -> frozenset[str | None]:
        """The heads of the families of words for colours: of single words said of what has a colour."""
        coloured = (c.id for c in self.kb.characters if "colour" in key(c.label).split())
        values = (v for c in coloured for s in self.kb.states(c) for v in s.values if " " not in v)
        return frozenset(h for v in values if (h := self.head(key(v))) is not None)

    def tells(self, taxon: str, character: str) -> bool:
        """True when something is stated of a character of a taxon or of its genus or family."""
        return any(self.kb.statements_on(t, character) for t in self.kb.lineage(taxon))

    def joined(self, word: str) -> tuple[str, ...]:
        """Names of several words that give this word when written as one."""
        return tuple(self.kb.store.get("near", "=" + word) or ())

    def known(self, word: str) -> bool:
        """True when a folded word occurs in the base as a word of its own, is a cue, or belongs to a family."""
        found = self._known.get(word)
        if found is None:
            made = bool(word.isdigit() or self.spoken(word) or word in (self.kb.store.get("near", word) or ()))
            found = _keep(self._known, word, made)
        return found

    def mend(self, word: str) -> tuple[str, ...]:
        """The nearest words of the base to a misspelt one, all at the same small distance; empty when none is near."""
        found = self._near.get(word)
        if found is None:
            found = _keep(self._near, word, self._mended(word))
        return found

    def slip(self, word: str) -> str:
        """The one word of the base of which an unknown word lacks, doubles or swaps a letter inside ("swalowed"), else
        the word itself; another letter, or one at an end, makes another word ("nesting" of "resting").
        """
        if len(word) < SLIPPED or not word.isalpha() or self.known(word):
            return word
        meant = self.mend(word)
        same = len(meant) == 1 and meant[0][:1] == word[0] and meant[0][-1:] == word[-1]
        return meant[0] if same and _slipped(word, meant[0]) else word

    def kind(self, words: str) -> str:
        """The plain word for a kind of fish that some words are a nickname of ("sunny": sunfish), else the words."""
        return next((c.removeprefix(KIND) for c in self.cues(words) if c.startswith(KIND)), words)

    def mend_other(self, word: str) -> tuple[str, ...]:
        """The words one slip away from a word that is itself known."""
        offered = {w for k in near_keys(word) for w in self.kb.store.get("near", k) or ()}
        return tuple(sorted(w for w in offered if w != word and w[0] == word[0] and distance(word, w, 2) == 1))

    def close_words(self, word: str) -> tuple[str, ...]:
        """Words of the base one slip away from a short misspelt one; only good inside a longer name."""
        heard = sound(word)
        keys = {word, "~" + heard, *(word[:i] + word[i + 1 :] for i in range(len(word)))}
        offered = {w for k in sorted(keys) for w in self.kb.store.get("near", k) or ()}
        return tuple(sorted(w for w in offered if w[0] == word[0] and (distance(word, w, 2) == 1 or sound(w) == heard)))

    def is_part(self, word: str) -> bool:
        """True for a word that by itself names a feature or a part of a fish."""
        return any(e[0] == "character" and e[2] == "words" and self.on_fish(e[1]) for e in self.spoken(word))

    def names_part(self, word: str) -> bool:
        """True for a word for a part or mark by which a fish is told, not for one on its life, age or numbers."""
        return any(e[0] == "character" and e[2] == "words" and self.kb.character(e[1]).use in TOLD_BY
                   for e in self.spoken(word))

    def on_fish(self, character: str) -> bool:
        """True for a character that is seen on the fish, not told of its life or its descent."""
        return self.kb.character(character).part not in NOT_ON_FISH

    def _mended(self, word: str) -> tuple[str, ...]:
        if len(word) < 4 or len(word) > 24 or not word.isalpha():
            return ()
        offered = {w for k in near_keys(word) for w in self.kb.store.get("near", k) or ()}
        limit = allowed(len(word))
        heard = sound(word)
        scored = []
        for other in sorted(offered):
            gap = distance(word, other, limit + 1)
            same_sound = sound(other) == heard
            if other[0] != word[0] and not same_sound and gap > 1:
                continue
            if gap <= (limit if same_sound else min(limit, 1 + (len(word) > 8))) or (
                same_sound and gap <= limit + 1 and len(word) > 4
            ):
                scored.append((gap - 0.5 * same_sound, other))
        if not scored:
            return ()
        best = min(scored)[0]
        return tuple(w for s, w in scored if s == best)


def _phrase(row: list[Any]) -> Phrase:
    return Phrase(
        tuple(row[0]), tuple(map(bool, row[1])), bool(row[2]), bool(row[3]), row[4], row[5], row[6] == "alone"
    )


def _slipped(word: str, meant: str) -> bool:
    """True for two words of which one has a letter more, or that differ by two neighbours in the other order."""
    if len(word) == len(meant):
        return any(word[:i] + word[i + 1] + word[i] + word[i + 2 :] == meant for i in range(len(word) - 1))
    longer, shorter = sorted((word, meant), key=len, reverse=True)
    return len(longer) - len(shorter) == 1 and any(longer[:i] + longer[i + 1 :] == shorter for i in range(len(longer)))


def _keep(cache: dict[str, T], key: str, value: T) -> T:
    """Remember a value; a cache that is full is emptied, so that endless odd words do not fill the memory."""
    if len(cache) >= MOST_KEPT:
        cache.clear()
    cache[key] = value
    return value


def lexicon_of(kb: KnowledgeBase) -> Lexicon:
    """The lexicon of a knowledge base, made on first use and kept with it."""
    return kb.derived("lexicon", Lexicon)
