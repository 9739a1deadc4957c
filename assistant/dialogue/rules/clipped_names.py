"""A colour that is the short name of a fish, where the rules of the water named speak of that fish (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.dialogue.reader.lexicon import lexicon_of
from assistant.dialogue.reader.reading import Mention, Reading
from assistant.dialogue.rules.context import book_of
from assistant.model.knowledge import KnowledgeBase
from assistant.model.regulations import Rulebook
from assistant.reasoning.precedence import closeness, stands_at
from assistant.text import key, singular, word_set

_WORD = re.compile(r"[^\W\d_]+")
_BEFORE = word_set("a an one two three four five six my another keep kept caught some any")
"""Words before a colour that make it a fish ("keep a brown", "two browns")."""
_LOOKING = word_set("is was were are its it's looks looked kinda mostly all dark light and or very")
"""Words before a colour by which a look is told ("it was brown, 15 inches")."""
_LENGTH_NEXT = re.compile(r"\W*(?:(?:of|is|was|at|about|around|measures|measured|taped|goes|went)\W+)?\d")
"""A length right behind it ("brown 15 and 1/2", "brown of 17 inches")."""
_NOUN_NEXT = re.compile(r"\s+(?:fish|one|body|back|sides?|belly|fins?|tail|spots?|colou?r\w*|and|with|all)\b")
"""What a colour stands before where it tells of a look."""
SPECIES_OR_GROUP = 2


def with_ruled_name(kb: KnowledgeBase, reading: Reading) -> Reading:
    """The reading with such a fish named, where it names no other; what was read of its colour is dropped."""
    water = kb.place(reading.water) if reading.water else None
    if water is None or not water.invented or reading.of("taxon", "hybrid", "group", "likeness"):
        return reading
    found = next(_clipped(kb, reading, book_of(kb), water.id), None)
    if found is None:
        return reading
    seen = tuple(s for s in reading.seen if not (s.start < found.end and found.start < s.end))
    return reading._replace(mentions=(*reading.mentions, found), seen=seen)


def _clipped(kb: KnowledgeBase, reading: Reading, book: Rulebook, water: str) -> Iterator[Mention]:
    before = ""
    for word in _WORD.finditer(reading.text):
        said = key(word.group())
        rest = reading.text[word.end() :].lower()
        measured = before not in _LOOKING and _LENGTH_NEXT.match(rest) is not None
        told = measured or (before in _BEFORE and not _NOUN_NEXT.match(rest))
        taxa = {e[1] for e in lexicon_of(kb).spoken(singular(said)) if e[0] == "taxon"} if told else set()
        if len(taxa) == 1 and _spoken_of(next(iter(taxa)), water, book):
            yield Mention("taxon", tuple(taxa), said, word.start(), word.end())
        before = said


def _spoken_of(taxon: str, water: str, book: Rulebook) -> bool:
    """True where a rule that holds at the water names the fish or a group that it is in."""
    here = book.positions(water)
    return any(closeness(rule, taxon, book) >= SPECIES_OR_GROUP and any(stands_at(rule, p) for p in here)
               for rule in book.rules.values())
