"""Sex, age, breeding, size words and other cue families in typed text (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.mentions import Decided
from assistant.dialogue.reader.tokens import Token

LONGEST = 5


class Qualities(NamedTuple):
    """What is told of the whole fish, and every cue family of the line."""

    sex: str = ""
    stage: str = ""
    breeding: str = ""
    size_word: str = ""
    cues: frozenset[str] = frozenset()


def read_qualities(tokens: Sequence[Token], decided: Decided, lexicon: Lexicon) -> Qualities:
    """The qualities of a line; words inside names do not count."""
    found: dict[str, list[tuple[int, int]]] = {}
    for size in range(1, LONGEST + 1):
        for i in range(len(tokens) - size + 1):
            if any(j in decided.strong for j in range(i, i + size)):
                continue
            for cue in lexicon.cues(" ".join(t.word for t in tokens[i : i + size])):
                found.setdefault(cue, []).append((i, i + size))
    sex = [s for s in ("male", "female") if f"sex-{s}" in found]
    stage = [s for s in ("juvenile", "adult") if f"stage-{s}" in found]
    breeding = "breeding" if "breeding" in found else ""
    return Qualities(
        sex[0] if len(sex) == 1 else "",
        stage[0] if len(stage) == 1 else "",
        breeding,
        _size(tokens, found, decided, lexicon),
        frozenset(found),
    )


def _size(tokens: Sequence[Token], found: dict[str, list[tuple[int, int]]], decided: Decided, lexicon: Lexicon) -> str:
    """A size word counts when it is said of the fish: before a word for it, or alone in its clause."""
    for word in ("small", "large"):
        for first, after in found.get(f"size-{word}", ()):
            if _of_fish(tokens, first, after, decided, lexicon):
                return word
    return ""


def _of_fish(tokens: Sequence[Token], first: int, after: int, decided: Decided, lexicon: Lexicon) -> bool:
    clause = tokens[first].clause
    following = [i for i in range(after, min(after + 3, len(tokens))) if tokens[i].clause == clause]
    if not following:
        return (
            first == 0
            or tokens[first - 1].clause != clause
            or tokens[first - 1].word
            in ("a", "an", "real", "very", "it", "its", "is", "was", "pretty", "kinda", "super", "so")
        )
    for i in following:
        if i in decided.strong or "fish-word" in lexicon.cues(tokens[i].word):
            return True
        if lexicon.is_part(tokens[i].word):
            return False
    return False
