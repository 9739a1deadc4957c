"""How the words of a reading are typed: literally, in the plural, as a shade, pointing at one of several (layer 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.dialogue.reader.spotting import Hit
from assistant.dialogue.reader.whole_colour import ONE
from assistant.text import word_set

if TYPE_CHECKING:
    from assistant.dialogue.reader.claims import Line


def literal(hit: Hit, line: Line) -> int:
    """1 where the very words typed are a phrase of the state, 2 with a word before or among them that is else passed
    over ("very small scales", "tail a bit forked").
    """
    first, last = line.content[hit.first].first, line.content[hit.last].last
    own = {i for p in hit.at for i in range(line.content[p].first, line.content[p].last + 1)}
    span, words = [t.word for t in line.tokens[first : last + 1]], [line.tokens[i].word for i in sorted(own)]
    before = [t.word for t in line.tokens[max(0, first - 1) : first] if t.word in _VERY]

    def told(said: list[str]) -> bool:
        return any(e[1] == hit.phrase.id for e in line.lexicon.spoken(" ".join(said)))

    if (len(span) > len(words) and told(span)) or (before and (told(before + span) or told(before + words))):
        return 2
    return int(told(span) or told(words))


_VERY = word_set("very super really extremely")
"""Words that make a quality a finer one."""


def points(hit: Hit, line: Line) -> bool:
    """True for a single word by which one of several fishes is pointed at ("the yellow one")."""
    after = line.content[hit.last].last + 1
    return len(set(hit.at)) == 1 and after < len(line.tokens) and line.tokens[after].word in ONE


def shades(hit: Hit, line: Line) -> bool:
    """True for a shade alone right before the colour that it makes lighter or darker ("pale orange")."""
    at = line.content[hit.last].last
    behind = line.tokens[at + 1 : at + 2]
    return (len(set(hit.at)) == 1 and line.tokens[at].word in _SHADES and bool(behind)
            and behind[0].clause == line.tokens[at].clause and line.lexicon.head(behind[0].word) in line.lexicon.tints)


_SHADES = word_set("pale dark light bright dull deep dusky faint plain")


def unlike(hit: Hit, line: Line) -> int:
    """How many words differ in number from the phrase ("a red spot" against "red spots")."""
    return sum(line.content[p].plural != plural for p, plural in zip(hit.at, hit.phrase.plurals, strict=True))
