"""Words of a line that tell nothing of a fish though they could, and words that stand for another (layer 4)."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.dialogue.reader.lexicon import Lexicon
from assistant.dialogue.reader.tokens import Token
from assistant.model.stems import stem
from assistant.text import singular, word_set


def says_nothing(tokens: Sequence[Token], i: int, lexicon: Lexicon) -> bool:
    """True for a word that could tell of a fish, and beside its neighbours does not ("the last one", "mud bottom")."""
    word, before = tokens[i].word, tokens[i - 1].word if i else ""
    follows = tokens[i + 1] if i + 1 < len(tokens) else None
    if follows is not None and follows.word in WATERS and follows.clause == tokens[i].clause and _tint(word, lexicon):
        return True
    if _by_the_way(tokens, i, lexicon):
        return True
    match word:
        case "one" | "ones":
            behind = [t.word for t in tokens[i + 1 : i + 3] if t.clause == tokens[i].clause]
            counts = word == "one" and any(stem(w) in lexicon.count_nouns for w in behind)
            return _stands_for_fish(tokens, i) and not counts and not _ones_meant(tokens, i, lexicon)
        case "round":
            return follows is not None and follows.word in _HERE
        case "light":
            return before in _SEEN_BY
        case "bottom":
            return before in _BEDS
        case "w":
            return not _is_letter(tokens, i)
        case "hooked":
            return before in _HOOKERS or (follows is not None and follows.word in _HOOKED)
        case "spinner" | "spinners":
            return True
        case "snake":
            named = i > 0 and tokens[i].typed[:1].isupper() and (tokens[i - 1].typed[:1].isupper() or before == "the")
            return named or "scales" in {t.word for t in tokens[max(0, i - 3) : i]}
        case "scale":
            own = {t.word for t in tokens[max(0, i - 3) : i]}
            return ("on" in own and bool(own & _OWNERS)) or (follows is not None and follows.word in _READS)
    return False


_BEDS = word_set("mud muddy sand sandy rock rocky gravel gravelly weed weedy hard soft silt silty clay lake pond river")
"""Words before a "bottom" that is that of a water."""
WATERS = word_set("river creek lake pond reservoir bayou slough brook swamp mountain mountains hills canyon")
"""Words before which a colour is part of a name or tells of the water ("red river")."""
_POINTING = word_set(
    "this that the second first third other another which each every last next red big small little "
    "bottom top back front lower upper"
)
_SEEN_BY = word_set("bad poor low dim good fading porch lantern lamp dock")
"""Words before a "light" by which a fish was seen."""
_HERE = word_set("here there these my our them its his her any each every")
"""Words after a "round" that means around."""
_OWNERS = word_set("my the our his her a dads buddys brothers boat")
_READS = word_set("says said reads read showed shows went stopped")
"""Words round a "scale" that weighs fish."""
_HOOKERS, _HOOKED = word_set("i we he she they boy kid dad buddy"), word_set("it him her this that one em them into")
"""Words before and after a "hooked" that says how the fish was caught."""
_PALED = word_set("ink label colour color colours colors too since now photo picture has had pattern specimen badly")
"""Words before a "faded" that is said of what happened since, not of a pale fish."""
_STOOD, _APART = word_set("stood came apart picked washed wiped"), word_set("apart through across off into out over")
"""Words beside a "clean" that means wholly ("the fins stood clean apart")."""
_MEASURED = word_set("behind before above below ahead past longer shorter deeper bigger smaller more less over under")
"""What is so little "a hair behind"."""


def _by_the_way(tokens: Sequence[Token], i: int, lexicon: Lexicon) -> bool:
    """True for a word that tells how much or how, or in what state a thing is kept, not what a fish is like ("a hair
    behind", "stood clean apart", "ink faded", "fanning out").
    """
    before, after = tokens[i - 1].word if i else "", tokens[i + 1 : i + 2]
    behind = after[0].word if after and after[0].clause == tokens[i].clause else ""
    match tokens[i].word:
        case "faded":
            return before in _PALED
        case "clean":
            return before in _STOOD or behind in _APART
        case "fanning" | "fan" | "fans":
            return behind == "out"
        case "hair" | "shade" | "touch":
            return before in ("a", "one") and behind in _MEASURED
        case "patch" | "patches":
            return behind == "of" and "scales" in {t.word for t in tokens[i + 2 : i + 5]}
        case "bump" | "bumps" | "lumps":
            return before in ("breeding", "spawning", "little", "white") and tokens[i].word != "bump"
        case "forward" | "back":
            return before in ("further", "farther")
        case "same":
            return before in ("that", "this") and behind not in ("", "as")
        case "little":
            return before == "a" and _tint(behind, lexicon) and not _thing_follows(tokens, i + 2, lexicon)
    return False


def _tint(word: str, lexicon: Lexicon) -> bool:
    """True for a word for a colour."""
    return lexicon.head(word) in lexicon.tints


def _thing_follows(tokens: Sequence[Token], at: int, lexicon: Lexicon) -> bool:
    """True where a word for a part or mark stands next in the clause."""
    same = at < len(tokens) and tokens[at].clause == tokens[at - 1].clause
    return same and any(map(lexicon.names_part, (tokens[at].word, f"{tokens[at].word}s")))


def _stands_for_fish(tokens: Sequence[Token], i: int) -> bool:
    """True for "one" where it is a pronoun ("the second one", "one had worm tracks", "any good for one")."""
    before = tokens[i - 1].word if i else ""
    after = tokens[i + 1].word if i + 1 < len(tokens) else ""
    last = i + 1 == len(tokens) or tokens[i + 1].clause != tokens[i].clause
    if last and i > 1 and tokens[i].word == "one" and tokens[i - 2].word in ("a", "an") and (
            tokens[i - 2].clause == tokens[i].clause):
        return True
    return before in _POINTING or after in _VERBS or (last and before in _OF_ONE)


def _is_letter(tokens: Sequence[Token], i: int) -> bool:
    """True for a "w" that is a shape ("w shaped marks", "like a w"), not short for with."""
    before = tokens[i - 1].word if i else ""
    after = tokens[i + 1].word if i + 1 < len(tokens) else ""
    if tokens[i].typed == "W" or (before in ("and", "or") and i > 1 and len(tokens[i - 2].word) == 1):
        return True
    return after.startswith("shape") or before in ("a", "letter") or (
        after in _SHAPES and (not i or before in _OF_LETTER))


_OF_ONE = word_set("for as like than of from")


_SHAPES = word_set("mark marks marking markings blotch blotches bar bars pattern patterns")
"""What may be shaped like a letter ("w marks")."""
_OF_LETTER = word_set("the like little small dark of has with")
"""Words between which and a shape a "w" is the letter."""
_VERBS = word_set("had has have is was with w looks looked got")


def heard(tokens: Sequence[Token], i: int, lexicon: Lexicon) -> str:
    """The word at a place, or the one it sounds like where only that makes sense ("a read edge", "passed the eye")."""
    word = tokens[i].word
    if word == "passed":
        return "past"
    joined = word == "one" and i > 0 and tokens[i - 1].word in _AND
    if (joined or word in _ANOTHER) and (mark := _mark_before(tokens, i)):
        return mark
    if word == "ones" and (noun := _ones_meant(tokens, i, lexicon)):
        return noun
    if singular(word) in _CROSSWISE and i and _upright(tokens, i):
        return "bars" if word.endswith("s") else "bar"
    if singular(word) == "strip" and _TOOTHED & {t.word for t in tokens if t.clause == tokens[i].clause}:
        return "patches" if word.endswith("s") else "patch"
    after = tokens[i + 1].word if i + 1 < len(tokens) and tokens[i + 1].clause == tokens[i].clause else ""
    coloured = after in _EDGES or lexicon.is_part(after)
    return "red" if word == "read" and after and coloured else word

def _upright(tokens: Sequence[Token], i: int) -> bool:
    """True for a mark told right before as standing up and down ("dark upright bands")."""
    before = [t.word for t in tokens[max(0, i - 4) : i] if t.clause == tokens[i].clause]
    return bool(_UPRIGHT & set(before[-2:])) or before[-3:] == ["up", "and", "down"]


_CROSSWISE = word_set("band stripe line streak")
_UPRIGHT = word_set("upright vertical crosswise")
_TOOTHED = word_set("teeth tooth tongue toothed")
"""Words beside which a strip is a patch of teeth, not a stripe."""


def _ones_meant(tokens: Sequence[Token], i: int, lexicon: Lexicon) -> str:
    """The plural that ends the clause before, for which "ones" stands in the next ("whiskers, white ones")."""
    own = [t for t in tokens[:i] if t.clause == tokens[i].clause]
    before = [t for t in tokens[:i] if t.clause == tokens[i].clause - 1 and t.sentence == tokens[i].sentence]
    if tokens[i].word != "ones" or not 0 < len(own) <= MOST_OF_ONES or not before:
        return ""
    noun = next((t.word for t in reversed(before) if t.word.endswith("s") and lexicon.names_part(t.word)), "")
    return noun if noun and before.index(next(t for t in before if t.word == noun)) >= len(before) - MOST_BEHIND else ""


MOST_OF_ONES, MOST_BEHIND = 2, 4
"""Words before "ones" in its clause; how near to the end of the clause before the thing stands."""


def _mark_before(tokens: Sequence[Token], i: int) -> str:
    """The mark for which "another" stands before a place ("a blotch on the dorsal, another at the tail base")."""
    after = " ".join(t.word for t in tokens[i + 1 : i + 3])
    behind = tokens[i + 1 + (2 if after == "like it" else after.startswith("one")) :][:1] if after else []
    if not behind or behind[0].clause != tokens[i].clause or behind[0].word not in _PLACES:
        return ""
    return next((t.word for t in reversed(tokens[:i]) if t.word in _MARKS and t.sentence == tokens[i].sentence), "")


_ANOTHER, _PLACES = word_set("another nother anuther"), word_set("on at by in near below under behind above beside")
_MARKS = word_set("spot blotch bar band stripe line dot smudge patch streak mark")
_AND = word_set("and n plus")
_EDGES = word_set("edge edges rim rims border spot spots dot dots tip trim patch belly breast throat")


def counts_nothing(tokens: Sequence[Token], first: int, last: int, text: str) -> bool:
    """True for a number that counts nothing on a fish: in a row of figures ("2,5-4,2"), of people ("three of us"), of
    fishes to choose from ("which of the two"), or of pieces ("snapped in two", where no row or line follows).
    """
    before = [t.word for t in tokens[max(0, first - 2) : first]]
    after = [t.word for t in tokens[last + 1 : last + 3]]
    figures = re.search(r"\d,$", text[: tokens[first].start]) or re.match(r",\d", text[tokens[last].end :])
    ends = last + 1 >= len(tokens) or tokens[last + 1].clause != tokens[last].clause
    chosen = before in (["of", "the"], ["of", "these"], ["of", "those"]) or before[-1:] == ["which"]
    pieces = tokens[first].word in ("two", "2") and before[-1:] == ["in"] and (ends or after[0] in _THERE)
    return bool(figures) or after in (["of", "us"], ["of", "you"]) or (ends and chosen) or pieces


_THERE = word_set("down up low near at by over under on in behind before above below")
