"""Where a colour or a build in a line is that of the whole fish, though no word for a part stands by it (layer 4)."""

from __future__ import annotations

from typing import TYPE_CHECKING

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.said_of import listed_on
from assistant.dialogue.reader.spotting import Hit
from assistant.text import key, word_set

if TYPE_CHECKING:
    from assistant.dialogue.reader.claims import Line

WHOLE, COLOUR, BUILD = "whole-fish", "colour", "body shape"
MOST = 2
"""Words of a colour ("slate blue")."""
_ALSO = word_set("and with n plus but")
ONE = word_set("one ones")
_WITH = word_set("with w wi")
_WHOLLY = word_set("all mostly kinda")
_BEING = word_set("its is was be looked looks mostly all kinda")
"""Words before what the whole fish is said to be."""
_ARTICLES = word_set("a an the this that my")
_PATTERNED = word_set("mottled speckled spotted marbled blotchy blotched barred striped")
"""Words before a colour that tell of the whole fish with it ("mottled brown")."""
_THINGS = word_set("thing thang critter creature beast brute scrapper monster specimen bruiser feller fella slab")
"""What a fish not named is called."""


def of_whole_fish(hit: Hit, line: Line) -> bool:
    """True for a colour of the whole fish: before the word for that fish ("brown sunfish", "brown mottled cat"), after
    "it is", as the colour it is said to be of ("bronze colour"), opening a line ("green with pale spots"), or alone in
    its clause after none that speaks of a part ("catfish, slate blue").
    """
    character = line.lexicon.kb.character(hit.phrase.character)
    if character.part == WHOLE and key(character.label) == BUILD and not hit.phrase.denies:
        return _before_tinted(hit, line)
    colour = COLOUR in key(character.label).split() and character.part == WHOLE
    if not colour or not _joined(hit) or hit.phrase.denies:
        return False
    return _before_fish(hit, line) or _coloured(hit, line) or _said(hit, line) or _opening(hit, line)


def _joined(hit: Hit) -> bool:
    return len(set(hit.at)) <= MOST and hit.last - hit.first < len(set(hit.at))


def _before_fish(hit: Hit, line: Line) -> bool:
    """True right before a word for the fish, or with one other describing word between."""
    tokens, last = line.tokens, line.content[hit.last].last
    behind = [t for t in tokens[last + 1 : last + 3] if t.clause == tokens[last].clause]
    if behind and compound(last + 2, line):
        return True
    if not behind or line.lexicon.names_part(behind[0].word) or behind[0].word in ONE:
        return False
    if _is_fish(last + 1, hit.last + 1, line):
        return True
    plain = behind[0].word not in _ALSO | _WITH | _ARTICLES
    return plain and len(behind) > 1 and len(set(hit.at)) == 1 and _is_fish(last + 2, hit.last + 2, line)


def compound(token: int, line: Line) -> bool:
    """True for the second word of one that tells what a fish has ("hump-backed", "big scaled"), a thing behind it."""
    tokens = line.tokens
    if not 0 < token < len(tokens) - 1 or tokens[token + 1].clause != tokens[token].clause:
        return False
    word, behind = tokens[token].word, tokens[token + 1].word
    had = word.endswith("ed") and any(line.lexicon.names_part(w) for w in (word[:-2], word[:-1]))
    return had and not line.lexicon.names_part(behind) and line.lexicon.head(behind) is None


def _before_tinted(hit: Hit, line: Line) -> bool:
    """True for a build before the colour of a fish and the word for it ("a long slate-blue fish")."""
    tokens, at, tints = line.tokens, line.content[hit.last].last + 1, 0
    while at < len(tokens) and tints < MOST and line.lexicon.head(tokens[at].word) in line.lexicon.tints:
        at, tints = at + 1, tints + 1
    same = at < len(tokens) and tokens[at].clause == tokens[at - 1].clause
    position = next((p for p, c in enumerate(line.content) if c.first == at), -1)
    return bool(tints) and same and position >= 0 and _is_fish(at, position, line)


def _is_fish(token: int, position: int, line: Line) -> bool:
    """True where a name, or a word for fishes, stands."""
    named = position in line.talk.walls and line.content[position].first == token
    word = line.tokens[token].word
    return named or word in _THINGS or "fish-word" in line.lexicon.cues(word)


def _coloured(hit: Hit, line: Line) -> bool:
    """True before a word for colour itself ("bronze coloured")."""
    tokens, last = line.tokens, line.content[hit.last].last
    behind = [t for t in tokens[last + 1 : last + 3] if t.clause == tokens[last].clause]
    if not behind or not _names_colour(behind[0].word, line.lexicon):
        return False
    return len(behind) < 2 or behind[1].word in _ALSO or _is_fish(last + 2, hit.last + 2, line)


def _said(hit: Hit, line: Line) -> bool:
    """True after "it is", at the end of a clause that speaks of no part."""
    tokens, first, last = line.tokens, line.content[hit.first].first, line.content[hit.last].last
    ends = last + 1 >= len(tokens) or tokens[last + 1].clause != tokens[last].clause
    if not ends or not first or line.clause(hit) in line.part_clauses or tokens[first - 1].word not in _BEING:
        return False
    wholly = tokens[first - 1].word in _WHOLLY
    return not (wholly and listed_on(line.clause(hit), line.tokens, line.part_clauses))


def _opening(hit: Hit, line: Line) -> bool:
    """True at the head of a line, before "with" or alone, and for a colour alone in its clause after a name."""
    tokens, first, last = line.tokens, line.content[hit.first].first, line.content[hit.last].last
    behind = tokens[last + 1 : last + 2]
    if behind and behind[0].clause == tokens[last].clause:
        return not first and behind[0].word in _WITH
    if not first:
        return True
    clause = line.clause(hit)
    alone = tokens[first - 1].clause != tokens[first].clause
    if not alone:
        patterned = tokens[first - 1].word in _PATTERNED and tokens[first - 2 : first - 1]
        return bool(patterned) and tokens[first - 2].clause != tokens[first].clause
    told_of_fish = clause - 1 not in line.part_clauses
    return told_of_fish and (len(set(hit.at)) == MOST or clause + 1 in line.part_clauses)


def _names_colour(word: str, lexicon: Lexicon) -> bool:
    """True for a word for colour itself ("coloured"): a word family of the base."""
    return any(e[:2] == ("aspect", "aspect-colour") for e in lexicon.spoken(word))
