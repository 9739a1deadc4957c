"""Words that could be a name but tell of the fish spoken of: "its eye", "with a big mouth and red eye" (layer 4)."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.names_found import Named
from assistant.dialogue.reader.tokens import Token
from assistant.text import singular, word_set

ITS = word_set("its it's their his her")
"""Words before a part of the fish in hand."""
_REACHING = word_set("with has have having had w")
_CALLING = word_set("is was are were called named caught catch got or vs versus than like say says call calls for")
"""Words by which a fish is named, over which "with" does not reach."""
_OWNERS = word_set("its it's it hes he's he ours mine this that these those they theyve one ones fish who which")
"""Words for a fish, after which "got" tells what it has ("its got a big mouth")."""


_MARKS = word_set("spot speck bar stripe spots specks bars stripes")
_ON_IT = frozenset({"on it", "on him", "on her", "on them", "on em", "on this", "on that", "to be"})
"""Marks that are names, too, and what stands behind them where they are marks ("not a spot on it")."""


def of_the_fish(named: Named, tokens: Sequence[Token], lexicon: Lexicon, told: bool, described: bool) -> bool:
    """True for a part of a fish that stands after a word for that fish or for having ("its eye", "bluegill eyes"),
    for a described part that "with" reaches or that follows a fish told before (``told``: "trout, square tail"), and
    for a colour by itself in a line that tells of more marks (``described``: "big scales, hump back, silver").
    """
    if described and named.after - named.first == 1 and _lone_colour(named, tokens, lexicon):
        return True
    last = tokens[named.after - 1].word
    behind = " ".join(t.word for t in tokens[named.after : named.after + 2])
    if named.after - named.first == 1 and last in _MARKS and (behind in _ON_IT or behind.startswith("anywhere")):
        return True
    part = lexicon.is_part(last) or lexicon.is_part(singular(last))
    if _inside_it(named, tokens, lexicon):
        return True
    if part and described and _whole_clause(named, tokens) and lexicon.head(tokens[named.first].word) is not None:
        return True
    if not named.first or not part or any(e[2] == "accepted" for e in named.entries):
        return False
    if named.after - named.first > 1:
        tint = lexicon.head(tokens[named.first].word) is not None
        alone = tokens[named.first].clause != tokens[named.first - 1].clause
        return tint and (_reached(named, tokens) or (told and alone))
    before = tokens[named.first - 1]
    if before.clause != tokens[named.first].clause:
        return False
    fish = (e for e in lexicon.spoken(before.word) if e[0] in ("taxon", "group"))
    return before.word in ITS or any(e[2] != "ambiguous" for e in fish) or _reached(named, tokens)


def _lone_colour(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word for a colour that is a clause by itself."""
    token = tokens[named.first]
    return lexicon.head(token.word) is not None and sum(t.clause == token.clause for t in tokens) == 1 < len(tokens)


def _whole_clause(named: Named, tokens: Sequence[Token]) -> bool:
    """True for some words that are a clause by themselves beside other clauses ("big mouth, red eye, barred")."""
    clause = tokens[named.first].clause
    own = sum(t.clause == clause for t in tokens)
    return 1 < own == named.after - named.first < len(tokens)


def _reached(named: Named, tokens: Sequence[Token]) -> bool:
    """True for words that "with" or "has" reaches, before any word by which a fish is named ("with a big mouth")."""
    for at in range(named.first - 1, -1, -1):
        token = tokens[at]
        if token.clause != tokens[named.first].clause:
            return False
        if token.word == "got" and at and tokens[at - 1].word in _OWNERS:
            return True
        if token.word in _CALLING:
            return False
        if token.word in _REACHING:
            return True
    return False


_IN = word_set("from in on out through by behind under outta inside at to before past above below near")
_PLACED = word_set("out inside back front end edge rear side top bottom corner rim tip base middle half part")
_THE = word_set("the its it's his her their one a")


def _inside_it(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for a word of the body, though some call a fish so, where something is in or comes from it
    ("bleeding from the gill", "hook in its gill")."""
    at = named.first
    if named.after - at != 1 or at < 2 or tokens[at - 1].word not in _THE:
        return False
    before = tokens[at - 2]
    inside = before.word in _IN or (before.word == "of" and at > 2 and tokens[at - 3].word in _PLACED)
    if not inside or before.clause != tokens[at].clause:
        return False
    body = any(e[0] == "term" for e in lexicon.spoken(tokens[at].word))
    return body and all(e[0] == "taxon" and e[2] not in ("accepted", "scientific") for e in named.entries)


_SHAPES, _NAMING = word_set("round flat"), word_set("a an the is called or and vs")


def any_coloured_fish(named: Named, tokens: Sequence[Token], lexicon: Lexicon) -> bool:
    """True for "gold fish" behind another word for its looks ("a glass-eyed gold fish"): any fish of that colour; and
    for the shape of a fish of some group ("a two-inch round sunfish")."""
    if named.after - named.first != 2:
        return False
    first, last = tokens[named.first].word, tokens[named.after - 1].word
    before = tokens[named.first - 1].word if named.first else ""
    if first in _SHAPES and before not in _NAMING and len({e[1] for e in named.entries}) > 1:
        return True
    looks = before.endswith("ed") or lexicon.head(before) is not None or lexicon.names_part(before)
    return last == "fish" and lexicon.head(first) is not None and looks
