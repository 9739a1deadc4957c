"""Which side of a matter a line asks about: aspects are word families of the base and the words of its characters.

Layer 4. ``aspects`` finds families of the kind "aspect" ("record", "french", "numbers only"); ``characters`` finds the
characters whose words or states stand in the line. Both look phrases up, so a new way to ask is a label in the base.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.dialogue.reader.reading import Reading
from assistant.model.knowledge import KnowledgeBase
from assistant.text import key, singular, unique, without_run

LONGEST = 5
"""Words in the longest phrase that is looked up."""
MOST_WORDS = 200


def phrases_of(words: Sequence[str]) -> Iterator[str]:
    """Every run of words up to the longest, as it stands and with the last word in the singular."""
    kept = words[:MOST_WORDS]
    for i in range(len(kept)):
        for size in range(1, min(LONGEST, len(kept) - i) + 1):
            run = kept[i : i + size]
            yield " ".join(run)
            if (single := singular(run[-1])) != run[-1]:
                yield " ".join([*run[:-1], single])


def aspects(kb: KnowledgeBase, reading: Reading) -> frozenset[str]:
    """The aspects a line asks about, without their ``aspect-`` prefix."""
    found = {p for words in (reading.words, without_fish(reading)) for p in phrases_of(words)}
    return frozenset(
        thing.removeprefix("aspect-") for p in found for kind, thing, _ in kb.spoken(p) if kind == "aspect"
    )


def without_fish(reading: Reading) -> tuple[str, ...]:
    """The words without those of fishes, so that "how long do bowfin live" reads like "how long do they live"; and
    without the "fish" of "is it a river fish", which says nothing of food."""
    out = reading.words
    for m in reading.of("taxon", "hybrid", "group"):
        out = without_run(out, key(m.words).split())
    return out[:-1] if out[-1:] == ("fish",) and {"a", "an"} & set(out[-4:-1]) else out


def characters(kb: KnowledgeBase, reading: Reading, uses: Sequence[str]) -> tuple[str, ...]:
    """Ids of the characters of some uses whose words stand in the line, in the order of the text."""
    out: dict[str, None] = {}
    for phrase in unique(p for words in (reading.words, without_fish(reading)) for p in phrases_of(words)):
        for kind, thing, _ in kb.spoken(phrase):
            if kind == "character" and (found := kb.find("character", thing)) is not None and found.use in uses:
                out.setdefault(thing)
    return tuple(out)


def states(kb: KnowledgeBase, reading: Reading, character: str) -> tuple[str, ...]:
    """Ids of the states of one character whose words stand in the line."""
    out: dict[str, None] = {}
    for phrase in phrases_of(reading.words):
        for kind, thing, _ in kb.spoken(phrase):
            if kind == "state" and thing.startswith(f"{character}."):
                out.setdefault(thing)
    return tuple(out)
