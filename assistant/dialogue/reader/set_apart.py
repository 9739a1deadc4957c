"""A loose name set against the very fish that it would mean: it is another of those called so (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.mentions import Decided
from assistant.dialogue.reader.reading import Mention
from assistant.dialogue.reader.tokens import Token
from assistant.reasoning.names import meaning_of
from assistant.text import key, unique, word_set

OFFERING = word_set("or r vs versus v from against")


def set_apart(decided: Decided, tokens: Sequence[Token], lexicon: Lexicon) -> Decided:
    """The names decided; "dollar sunfish or a longear" speaks of two fishes though a place calls the one so, too."""
    named = [m for m in decided.mentions if m.kind == "taxon"]
    proper: dict[tuple[str, ...], Mention] = {m.ids: m for m in named if len(m.ids) == 1 and _own_name(m, lexicon)}
    loose = {m: other for m in named if not _own_name(m, lexicon) and (other := proper.get(m.ids)) is not None
             and _offered(other, m, tokens) and "x" not in m.words.split()}
    if not loose:
        return decided
    return decided._replace(mentions=tuple(_another(m, lexicon) if m in loose else m for m in decided.mentions))


def _own_name(mention: Mention, lexicon: Lexicon) -> bool:
    """True for the accepted English name of the one fish meant."""
    found = lexicon.kb.find("taxon", mention.ids[0])
    return found is not None and key(found.label) == key(mention.words)


def _offered(a: Mention, b: Mention, tokens: Sequence[Token]) -> bool:
    """True where a word that sets two things against each other stands between two names."""
    first, second = sorted((a, b), key=lambda m: m.start)
    return any(t.word in OFFERING for t in tokens if first.end <= t.start < second.start)


def _another(mention: Mention, lexicon: Lexicon) -> Mention:
    """The name as one of the other fishes called so, that first which bears the word in its own name."""
    kb, words = lexicon.kb, key(mention.words)
    every = meaning_of(kb, lexicon.spoken(words), words, ()).ids
    rest = tuple(t for t in every if t not in mention.ids and kb.find("taxon", t) is not None)
    own = tuple(t for t in rest if key(kb.taxon(t).label).split()[:1] == words.split()[:1])
    ids = own if len(own) == 1 else unique((*own, *rest))
    return mention._replace(ids=ids, ambiguous=len(ids) > 1) if ids else mention
