"""One measure told as so many times another: "depth 2.9 times in SL", "beak 16 times its least width" (layer 4)."""

from __future__ import annotations

import re

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.reading import Seen
from assistant.model.records import Character
from assistant.model.stems import DROPPED, NUMBERS, stem
from assistant.reasoning.observed import Observation
from assistant.text import key, word_set

_FIGURE = rf"\d{{1,2}}(?:\.\d+)?|{'|'.join(NUMBERS)}"
_TIMES = re.compile(
    rf"(?P<one>[a-z' ]{{2,40}}?) (?:(?:is|was|goes|went|about|some) )*(?P<times>{_FIGURE}) times"
    r"(?: (?:in|into|the|its|that|as|of))+ (?P<other>[a-z' ]{2,40}?)(?= and |[^a-z' ]|$)|"
    rf"(?P<first>[a-z' ]{{2,40}}?) (?:goes|go|went) (?:in|into) (?P<last>[a-z' ]{{2,40}}?) "
    rf"(?:about )?(?P<often>{_FIGURE}) times",
    re.IGNORECASE)
_ALSO = word_set("sl body fish whole total own about times long wide deep caught measured")
"""Words beside those of a ratio that change nothing in it."""


def read_ratios(text: str, lexicon: Lexicon) -> tuple[tuple[Seen, ...], tuple[tuple[int, int], ...]]:
    """The ratios told in a line and where they stand."""
    seen, spans = [], []
    for found in _TIMES.finditer(text):
        figure = found["times"] or found["often"]
        value = float(NUMBERS.get(figure.lower(), figure))
        sides = {s for s in (found["one"], found["other"], found["first"], found["last"]) if s}
        character = next((c for c in lexicon.ratios if _tells(c, sides) and _within(c, value, lexicon)), None)
        if character is not None:
            seen.append(Seen(Observation(character.id, value=value), found.group().strip(), found.start(), found.end()))
            spans.append(found.span())
    return tuple(seen), tuple(spans)


def _tells(character: Character, sides: set[str]) -> bool:
    """True where one side has the measure above the line of a ratio, the other the one below, and nothing else."""
    above, _, below = key(character.trade).partition(" over ")
    known = {stem(w) for p in (character.label, character.trade, *character.words) for w in key(p).split()} | _ALSO
    told = [{stem(w) for w in key(s).split() if w not in DROPPED} for s in sides]
    ends = [stem(half.split()[-1]) for half in (above, below)]
    return all(t - known == set() for t in told) and any(ends[1] in t for t in told) and len(told) > 1


def _within(character: Character, value: float, lexicon: Lexicon) -> bool:
    """True for a figure that fishes of the base may show."""
    _, least, most = lexicon.gist(character.id)
    return least is not None and most is not None and least / 2 <= value <= most * 2
